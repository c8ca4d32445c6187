"""Supplies, their circuits and what hangs on them, as a tree into which openings are dragged."""

from collections.abc import Mapping, Sequence
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QBrush, QColor, QDropEvent, QPalette
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTreeWidget, QTreeWidgetItem, QWidget

from hwsched.cases.power import PowerWork, WorkedCircuit, WorkedNode, WorkedSupply

KIND: Final = int(Qt.ItemDataRole.UserRole)
ID: Final = KIND + 1
LOOSE: Final = "On no circuit yet"
_COLUMNS: Final = ("Supply, circuit, opening", "Run", "Volts at worst", "Needs", "Room")


class PowerTree(QTreeWidget):
    """Building, supply, circuit, opening; openings are dragged onto another circuit, or off every one."""

    moved = Signal(list, str)
    """Openings, and the circuit onto which they were dragged; empty: off every circuit."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setHeaderLabels(list(_COLUMNS))
        self.setAlternatingRowColors(True)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.setDropIndicatorShown(True)
        header = self.header()
        header.setStretchLastSection(False)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        for column in range(1, len(_COLUMNS)):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.ResizeToContents)

    def show_work(self, work: PowerWork, loose: Mapping[str, str]) -> None:
        """Show what is worked out.

        Parameters
        ----------
        work : PowerWork
            Of the whole project.
        loose : mapping
            Openings that want a supply and hang on no circuit: identifier to mark.
        """
        chosen = self.chosen()
        self.clear()
        places: dict[str, QTreeWidgetItem] = {}
        for supply in work.supplies:
            building = supply.supply.building or "No building given"
            if building not in places:
                places[building] = self._top(building)
            places[building].addChild(self._supply(supply))
        if loose:
            top = self._top(LOOSE)
            top.setData(0, KIND, "loose")
            for opening, mark in loose.items():
                top.addChild(_item(mark, "opening", opening))
        self.expandAll()
        self._choose(chosen)

    def chosen(self) -> tuple[str, str]:
        """Return kind and identifier of the current line; empty where there is none."""
        item = self.currentItem()
        return (str(item.data(0, KIND) or ""), str(item.data(0, ID) or "")) if item is not None else ("", "")

    def chosen_openings(self) -> list[str]:
        """Return the selected openings, each once."""
        found = [str(item.data(0, ID)) for item in self.selectedItems() if item.data(0, KIND) == "opening"]
        return list(dict.fromkeys(found))

    def circuit_of(self, item: QTreeWidgetItem | None) -> str | None:
        """Return the circuit to which a line belongs, empty for the loose ones; None where it is neither."""
        while item is not None:
            if item.data(0, KIND) == "circuit":
                return str(item.data(0, ID))
            if item.data(0, KIND) == "loose":
                return ""
            item = item.parent()
        return None

    def dropEvent(self, event: QDropEvent) -> None:  # noqa: N802
        """Tell which openings were dragged where; the tree itself is shown anew after the edit."""
        circuit = self.circuit_of(self.itemAt(event.position().toPoint()))
        openings = self.chosen_openings()
        event.setDropAction(Qt.DropAction.IgnoreAction)
        event.accept()
        if circuit is not None and openings:
            self.moved.emit(openings, circuit)

    def _top(self, text: str) -> QTreeWidgetItem:
        top = _item(text, "place", text)
        font = top.font(0)
        font.setBold(True)
        top.setFont(0, font)
        self.addTopLevelItem(top)
        return top

    def _supply(self, supply: WorkedSupply) -> QTreeWidgetItem:
        facts = supply.supply
        state = {"candidate": "may be used", "must": "must be used"}.get(facts.use or "", "")
        words = [facts.name, facts.part or "no supply chosen", facts.level or "", state if not supply.openings else ""]
        item = _item(" · ".join(word for word in words if word), "supply", facts.id)
        if supply.share is not None and supply.openings:
            item.setText(4, f"{supply.share:.0%} used")
        for circuit in supply.circuits:
            item.addChild(self._circuit(circuit))
        return item

    def _circuit(self, circuit: WorkedCircuit) -> QTreeWidgetItem:
        item = _item(f"Circuit {circuit.circuit.name}", "circuit", circuit.circuit.id)
        item.setText(1, circuit.wire)
        if circuit.problems:
            item.setText(2, "not worked out")
            item.setToolTip(2, "\n".join(problem.message for problem in circuit.problems))
        elif circuit.collapsed:
            item.setText(2, "collapses")
            self._mark(item, True)
        if circuit.circuit.alarm == "drops":
            item.setText(3, "off on alarm")
        lengths = {run.to_node: run.length_m for run in circuit.runs if not run.transfer}
        worst: dict[str, WorkedNode] = {}
        for node in circuit.nodes:
            if node.opening_id is None or node.margin_v is None:
                continue
            held = worst.get(node.opening_id)
            if held is None or (held.margin_v or 0.0) > node.margin_v:
                worst[node.opening_id] = node
        for opening, mark in zip(circuit.openings, circuit.marks, strict=True):
            line = _item(mark, "opening", opening)
            if opening in lengths:
                line.setText(1, f"{lengths[opening]:.1f} m")
            found = worst.get(opening)
            if found is not None and found.lowest_v is not None and found.margin_v is not None:
                line.setText(2, f"{found.lowest_v:.2f} V")
                line.setText(3, f"{found.minimum_v:g} V")
                low = found.margin_v < -1e-9
                line.setText(4, f"LOW by {-found.margin_v:.2f} V" if low else f"{found.margin_v:.2f} V")
                self._mark(line, low)
            item.addChild(line)
        return item

    def _mark(self, item: QTreeWidgetItem, low: bool) -> None:
        if not low:
            return
        dark = self.palette().color(QPalette.ColorRole.Base).lightness() < 128
        for column in range(len(_COLUMNS)):
            item.setForeground(column, QBrush(QColor("#ff9d8a" if dark else "#a3200d")))

    def _choose(self, wanted: tuple[str, str]) -> None:
        stack: Sequence[QTreeWidgetItem | None] = [self.topLevelItem(i) for i in range(self.topLevelItemCount())]
        while stack:
            item, *stack = stack
            if item is None:
                continue
            if (item.data(0, KIND), item.data(0, ID)) == wanted:
                self.setCurrentItem(item)
                return
            stack = [*stack, *(item.child(i) for i in range(item.childCount()))]


def _item(text: str, kind: str, identifier: str) -> QTreeWidgetItem:
    item = QTreeWidgetItem([text])
    item.setToolTip(0, text)
    item.setData(0, KIND, kind)
    item.setData(0, ID, identifier)
    flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemIsDropEnabled
    item.setFlags(flags | Qt.ItemFlag.ItemIsDragEnabled if kind == "opening" else flags)
    for column in range(1, len(_COLUMNS)):
        item.setTextAlignment(column, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
    return item
