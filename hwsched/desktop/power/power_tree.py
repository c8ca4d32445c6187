"""Supplies, their circuits and what is connected to them, as a tree into which openings are dragged."""

from collections.abc import Mapping, Sequence
from typing import Final

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import (
    QBrush,
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
)
from PySide6.QtWidgets import QAbstractItemView, QTreeWidgetItem

from hwsched.desktop.looks.tokens import colour
from hwsched.desktop.power.power_words import TOUCH_V, digits_of, problems_said, wire_said, worst_place
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.widgets.giving_tree import GivingTree
from hwsched.desktop.widgets.number_columns import to_the_right
from hwsched.drawings.power.power_words import run_length_words
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.quantities import LengthStyle
from hwsched.telling.natural import natural
from hwsched.values.power import CircuitResult, NodeResult, PowerResult, Run, SupplyResult

KIND: Final = int(Qt.ItemDataRole.UserRole)
ID: Final = KIND + 1
_MARKED: Final = KIND + 2
LOOSE: Final = to_phrase("On no circuit yet")
_COLUMNS: Final = (
    to_phrase("Supply, circuit, opening"),
    to_phrase("Run"),
    to_phrase("Volts at worst"),
    to_phrase("Needs"),
    to_phrase("Room"),
)
_NAME, _RUN, _VOLTS, _NEEDS, _ROOM = range(len(_COLUMNS))
_LOADING: Final = "supply-loading"

Key = tuple[str, str]
"""Kind and identifier of a line."""
_USES: Final = {"candidate": to_phrase("may be used"), "must": to_phrase("must be used")}


_LISTED: Final = "application/x-qabstractitemmodeldatalist"
"""As Qt calls what is dragged out of a list."""


class PowerTree(GivingTree):
    """Building, supply, circuit, opening; openings are dragged onto another circuit, or off every one."""

    moved = Signal(list, str)
    """Openings, and the circuit onto which they were dragged; empty: off every circuit."""

    def __init__(self) -> None:
        super().__init__([phrase(each) for each in _COLUMNS], (_NEEDS, _RUN))
        self._marks: Mapping[str, str] = {}
        self._style: LengthStyle = "fraction"
        self.empty = Empty(self)
        """Says what to do first where nothing is laid."""
        to_the_right(self, range(1, len(_COLUMNS)))
        self.setAlternatingRowColors(True)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.setDropIndicatorShown(True)
        self.setAutoExpandDelay(600)
        self.setUniformRowHeights(True)

    def show_result(
        self,
        work: PowerResult,
        loose: Mapping[str, str],
        runs: Sequence[Run],
        marks: Mapping[str, str],
        style: LengthStyle,
    ) -> None:
        """Show what is worked out; what was folded, selected and in sight stays so.

        Parameters
        ----------
        work : PowerResult
            Of the whole project.
        loose : mapping
            Openings that want a supply and are on no circuit: identifier to mark.
        runs : sequence of Run
            As laid: what is fed through a junction or an opening stands below it.
        marks : mapping
            Of all openings, by identifier.
        style : LengthStyle
            How the project shows lengths.
        """
        self._marks, self._style = marks, style
        chosen, sight = self.chosen(), self.verticalScrollBar().value()
        selected = {_key(item) for item in self.selectedItems()}
        folded = {_key(item) for item in self.lines() if item.childCount() and not item.isExpanded()}
        self.clear()
        if loose or work.supplies:
            top = self._top(phrase(LOOSE), "loose")
            top.setText(
                _RUN,
                phrase_of_count("{count} opening", "{count} openings", len(loose))
                if len(loose) > 1
                else phrase("1 opening")
                if loose
                else phrase("none"),
            )
            top.setToolTip(_NAME, phrase("Openings that want a supply; drag onto a circuit, or here to take them off"))
            for opening, mark in loose.items():
                top.addChild(_item(mark, "opening", opening))
        heavy = {each.supply_id: each.finding.severity for each in work.findings if each.finding.rule == _LOADING}
        of_circuit: dict[str, list[Run]] = {}
        for run in sorted(runs, key=lambda run: natural(marks.get(run.to_node, run.to_node))):
            of_circuit.setdefault(run.circuit_id, []).append(run)
        places: dict[str, QTreeWidgetItem] = {}
        for supply in work.supplies:
            building = supply.supply.building or phrase("No building given")
            if building not in places:
                places[building] = self._top(building, "place")
            item = self._supply(supply, heavy.get(supply.supply.id, ""))
            places[building].addChild(item)
            for circuit in supply.circuits:
                line = self._circuit(circuit)
                item.addChild(line)
                self._show_runs(line, circuit, of_circuit.get(circuit.circuit.id, []))
        for line in self.lines():
            self.tell(line, line.toolTip(_NAME))
        self.expandAll()
        self._restore(chosen, selected, folded)
        self.share()
        self.verticalScrollBar().setValue(sight)

    def chosen(self) -> Key:
        """Return kind and identifier of the current line; empty where there is none."""
        item = self.currentItem()
        return _key(item) if item is not None else ("", "")

    def choose(self, key: Key) -> None:
        """Choose a line by kind and identifier, where it is there."""
        item = next((each for each in self.lines() if _key(each) == key), None)
        if item is not None:
            self.setCurrentItem(item)

    def chosen_openings(self) -> list[str]:
        """Return the selected openings, each once."""
        found = [str(item.data(0, ID)) for item in self.selectedItems() if item.data(0, KIND) == "opening"]
        return list(dict.fromkeys(found))

    def above(self, kind: str) -> str:
        """Return the identifier of the nearest line of a kind from the current one upwards; empty where none is."""
        item = self.currentItem()
        while item is not None:
            if item.data(0, KIND) == kind:
                return str(item.data(0, ID))
            item = item.parent()
        return ""

    def circuit_of(self, item: QTreeWidgetItem | None) -> str | None:
        """Return the circuit onto which a line leads, empty for the loose ones; None where it is not clear which."""
        while item is not None:
            kind = item.data(0, KIND)
            if kind == "circuit":
                return str(item.data(0, ID))
            if kind == "loose":
                return ""
            if kind == "supply":
                only = item.child(0) if item.childCount() == 1 else None
                return str(only.data(0, ID)) if only is not None else None
            item = item.parent()
        return None

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:  # noqa: N802
        """Take what is dragged out of a list, as long as openings are selected here."""
        super().dragEnterEvent(event)
        if event.mimeData().hasFormat(_LISTED) and self.chosen_openings():
            event.accept()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:  # noqa: N802
        """Take openings over circuits only."""
        super().dragMoveEvent(event)
        if self.circuit_of(self.itemAt(event.position().toPoint())) is None:
            event.ignore()
        else:
            event.accept()

    def dropEvent(self, event: QDropEvent) -> None:  # noqa: N802
        """Tell which openings were dragged where; the tree itself is shown anew after the edit."""
        circuit = self.circuit_of(self.itemAt(event.position().toPoint()))
        openings = self.chosen_openings()
        event.setDropAction(Qt.DropAction.IgnoreAction)
        event.accept()
        if circuit is not None and openings:
            self.moved.emit(openings, circuit)

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802
        """Colour what is marked for the look in force."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            for item in self.lines():
                if item.data(0, _MARKED):
                    self._mark(item)

    def _restore(self, chosen: Key, selected: set[Key], folded: set[Key]) -> None:
        for item in self.lines():
            key = _key(item)
            if key in folded:
                item.setExpanded(False)
            if key == chosen:
                self.setCurrentItem(item)
        for item in self.lines():
            if _key(item) in selected:
                item.setSelected(True)

    def _top(self, text: str, kind: str) -> QTreeWidgetItem:
        top = _item(text, kind, text)
        font = top.font(_NAME)
        font.setBold(True)
        top.setFont(_NAME, font)
        self.addTopLevelItem(top)
        return top

    def _supply(self, supply: SupplyResult, heavy: str) -> QTreeWidgetItem:
        facts = supply.supply
        words = [facts.name, facts.part or phrase("no supply chosen"), facts.level or ""]
        item = _item(" · ".join(word for word in words if word), "supply", facts.id)
        if facts.place:
            item.setToolTip(_NAME, f"{item.text(_NAME)}\n{facts.place}")
        if supply.openings and supply.share is not None:
            over = {"error": "OVER: ", "": ""}.get(heavy, "HIGH: ")
            item.setText(_ROOM, phrase("{over}{share:.0%} used", over=over, share=supply.share))
            item.setToolTip(_ROOM, phrase("Share of its rating that is held, everything on at once"))
            if heavy:
                self._mark(item)
        elif supply.openings:
            item.setText(_ROOM, phrase("share unknown"))
            item.setToolTip(_ROOM, problems_said(supply.problems))
        else:
            item.setText(_ROOM, phrase(_USES.get(facts.use or "", to_phrase("unused"))))
        return item

    def _circuit(self, circuit: CircuitResult) -> QTreeWidgetItem:
        item = _item(phrase("Circuit {name}", name=circuit.circuit.name), "circuit", circuit.circuit.id)
        item.setText(_RUN, wire_said(circuit.wire))
        item.setToolTip(_RUN, wire_said(circuit.wire))
        worst = worst_place(circuit.nodes)
        if circuit.collapsed:
            item.setText(_VOLTS, phrase("collapses"))
            item.setToolTip(_VOLTS, "\n".join(circuit.collapsed.values()))
            self._mark(item)
        elif circuit.problems:
            item.setText(_VOLTS, phrase("not worked out") if worst is None else phrase("in part"))
            item.setToolTip(_VOLTS, problems_said(circuit.problems))
        if worst is not None and not circuit.collapsed:
            self._volts(item, worst, needs=False)
        if circuit.circuit.alarm == "drops":
            item.setText(_NEEDS, phrase("off on alarm"))
        return item

    def _show_runs(self, circuit_line: QTreeWidgetItem, circuit: CircuitResult, runs: Sequence[Run]) -> None:
        """Add a circuit's runs: what is fed through a node stands below it."""
        placed: dict[str, QTreeWidgetItem] = {}
        waiting = list(runs)
        while waiting:
            ends = {run.to_node for run in waiting}
            ready = [run for run in waiting if run.from_node in placed or run.from_node not in ends]
            for run in ready or waiting:  # Runs in a ring wait for one another: they all are on the circuit.
                line = self._run(run, circuit)
                placed.get(run.from_node, circuit_line).addChild(line)
                placed.setdefault(run.to_node, line)
            done = {run.id for run in ready or waiting}
            waiting = [run for run in waiting if run.id not in done]

    def _run(self, run: Run, circuit: CircuitResult) -> QTreeWidgetItem:
        if run.opening_id is None:
            line = _item(phrase("Junction {to_node}", to_node=run.to_node), "run", run.id)
        else:
            line = _item(self._marks.get(run.opening_id, run.to_node), "opening", run.opening_id)
        line.setText(
            _RUN, run_length_words(run.length_m, self._style) if run.length_m is not None else phrase("length unknown")
        )
        node = (
            worst_place([each for each in circuit.nodes if each.opening_id == run.opening_id])
            if run.opening_id
            else None
        )
        problems = [each for each in circuit.problems if each.opening_id and each.opening_id == run.opening_id]
        if node is not None:
            self._volts(line, node)
        elif problems:
            line.setText(_VOLTS, phrase("unknown"))
            line.setToolTip(_VOLTS, problems_said(problems))
        elif run.opening_id is not None:
            line.setText(_VOLTS, phrase("unknown"))
        return line

    def _volts(self, line: QTreeWidgetItem, node: NodeResult, *, needs: bool = True) -> None:
        """Fill in the volts of the worst place of a line, and how much room they leave."""
        low, margin, most = node.lowest_v, node.margin_v, max(node.volts.values(), default=0.0)
        if low is None or margin is None:
            return
        if not line.text(_VOLTS):
            line.setText(_VOLTS, f"{low:.2f} V")
        if needs:
            line.setText(_NEEDS, f"{node.minimum_v:g} V")
        line.setToolTip(
            _ROOM,
            phrase(
                "At {name}, {distance} from the supply",
                name=node.name,
                distance=run_length_words(node.distance_m, self._style),
            ),
        )
        if margin < -TOUCH_V:
            line.setText(_ROOM, phrase("LOW by {digits} V", digits=digits_of(-margin)))
            self._mark(line)
        elif node.maximum_v is not None and most > node.maximum_v + TOUCH_V:
            line.setText(_ROOM, phrase("HIGH by {digits} V", digits=digits_of(most - node.maximum_v)))
            self._mark(line)
        else:
            line.setText(_ROOM, f"{margin:.2f} V")

    def _mark(self, item: QTreeWidgetItem) -> None:
        item.setData(0, _MARKED, True)
        for column in range(len(_COLUMNS)):
            item.setForeground(column, QBrush(colour("refused")))


def _key(item: QTreeWidgetItem) -> Key:
    return str(item.data(0, KIND) or ""), str(item.data(0, ID) or "")


def _item(text: str, kind: str, identifier: str) -> QTreeWidgetItem:
    item = QTreeWidgetItem([text])
    item.setToolTip(_NAME, text)
    item.setData(0, KIND, kind)
    item.setData(0, ID, identifier)
    flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemIsDropEnabled
    item.setFlags(flags | Qt.ItemFlag.ItemIsDragEnabled if kind == "opening" else flags)
    for column in range(1, len(_COLUMNS)):
        item.setTextAlignment(column, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
    return item
