"""The place for power: supplies, circuits and what is connected to them are laid, dragged, judged, drawn and sited."""

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Final

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAction, QKeySequence, QShortcut
from PySide6.QtWidgets import QMenu, QSplitter, QTreeWidgetItem, QWidget

from hwsched.desktop.frame.keyboard_kept import begins_here
from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.jobs.trouble import tell_failure, why_of
from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.power.layout_window import LayoutWindow
from hwsched.desktop.power.move_dialog import MoveDialog
from hwsched.desktop.power.power_edits import PowerEdits
from hwsched.desktop.power.power_facts_form import NewPowerDialog, parts_offered
from hwsched.desktop.power.power_sheet import PowerSheet, PowerShown
from hwsched.desktop.power.power_tree import ID, KIND, PowerTree
from hwsched.desktop.power.power_words import circuits_of, style_of
from hwsched.desktop.power.siting_window import SitingWindow
from hwsched.desktop.widgets.asked_files import file_to_read
from hwsched.desktop.widgets.flow import Flow
from hwsched.language import phrase, to_phrase
from hwsched.operations.power.power_results import opening_levels, power_as_it_stands, power_facts
from hwsched.operations.project.history import newest
from hwsched.survey import CIRCUIT, RUN, SUPPLY
from hwsched.values.power import PowerFacts

_FIRST: Final = to_phrase(
    "Nothing is laid yet. Add a supply, then a circuit of it, and drag openings onto the "
    "circuit; or take in a power workbook; or name places for supplies and let them be sited."
)
_FIRST_OF_ALL: Final = to_phrase(
    "Nothing is laid yet, and there are no openings. First take in a survey and run Fit: "
    "openings that want a supply then stand here. Supplies can be laid already, or come with a power workbook."
)
_MANY: Final = 150
"""From so many runs on they are worked out off the screen's thread: that takes longer than a person notices."""
_ENTITIES: Final = {each.name: each for each in (SUPPLY, CIRCUIT, RUN)}


class PowerWindow(ToolWindow):
    """Tree on the left; facts, findings and drawings of what is chosen on the right."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Supplies and circuits"), parent)
        self.resize(1330, 690)
        self.present = PowerShown()
        self._reading = desk.jobs.beside(self)
        self._reading.failed.connect(lambda failure: tell_failure(failure, self))
        self._again = False
        self.edits = PowerEdits(self)
        self.tree = PowerTree()
        self.tree.setAccessibleName(phrase("Supplies, circuits and openings"))
        begins_here(self.tree)
        self.tree.moved.connect(self.carry)
        self.tree.itemSelectionChanged.connect(self.enable)
        self.tree.currentItemChanged.connect(lambda *_: self._show_chosen())
        self.tree.itemActivated.connect(self._show_in_register)
        self.tree.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        self.tree.customContextMenuRequested.connect(self._menu)
        self.sheet = PowerSheet()
        self.form, self.found, self.pages = self.sheet.form, self.sheet.found, self.sheet.pages
        self.form.edited.connect(self._edit_fact)
        self.sheet.found_page.wants_rule.connect(desk.show_rule)
        self.add_supply = self.button(
            phrase("Add supply…"), lambda: self.ask_new("supply"), phrase("A supply, or a place for one")
        )
        self.add_circuit = self.button(
            phrase("Add circuit…"), lambda: self.ask_new("circuit"), phrase("Of the chosen supply")
        )
        self.add_run = self.button(phrase("Add run…"), lambda: self.ask_new("run"), phrase("Of the chosen circuit"))
        self.move_to = self.button(
            phrase("Move to circuit…"), self.ask_move, phrase("The selected openings (or drag them)")
        )
        self.take_away = self.button(
            phrase("Take away"),
            self.take_chosen_away,
            phrase("The chosen supply, circuit or junction; openings off their circuit"),
        )
        self.read = self.button(
            phrase("Take in workbook…"), self.ask_workbook, phrase("Levels, supplies, circuits, runs, routes")
        )
        QShortcut(QKeySequence.StandardKey.Delete, self.tree, self._delete, context=_ONLY_THERE)
        row = Flow()
        for each in (self.add_supply, self.add_circuit, self.add_run, self.move_to, self.take_away, self.read):
            row.addWidget(each)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.addWidget(self.tree)
        split.addWidget(self.sheet)
        split.setSizes([wide(77), wide(57)])
        split.setStretchFactor(0, 2)
        split.setStretchFactor(1, 3)
        self.body.addLayout(row)
        self.body.addWidget(split, 1)
        self.listen(desk.workspace.changed, self.follow_change)
        self.follow()

    def follow(self) -> None:
        """Work out anew what is laid, and show it."""
        workspace = self.desk.workspace
        project, checked, base = workspace.project, dict(workspace.checked), newest(workspace.project)

        def read() -> PowerShown:
            facts, solved, catalogue, style = power_as_it_stands(project)
            return PowerShown(
                facts, solved, cache(lambda: opening_levels(project)), checked, catalogue, style_of(style), base
            )

        if len(power_facts(project).runs) < _MANY:
            self._take(read())
        elif not self._reading.run("", lambda _progress, _cancelled: read(), self._take, asker=self, kept=False):
            self._again = True

    def tell(self, supply: object) -> None:
        """Show the supply for which somebody came, by its identifier."""
        if isinstance(supply, str) and supply:
            self.tree.choose(("supply", supply))

    def enable(self) -> None:
        """Let what is possible with the chosen line be done."""
        kind, _ = self.tree.chosen()
        idle = self.idle
        for each in (self.add_supply, self.read):
            each.setEnabled(idle)
        self.add_circuit.setEnabled(idle and bool(self.tree.above("supply")))
        self.add_run.setEnabled(idle and bool(self.tree.above("circuit")))
        openings = self.tree.chosen_openings()
        self.move_to.setEnabled(idle and bool(openings) and bool(self.present.facts.circuits))
        connected = self.present.facts.connected()
        self.take_away.setEnabled(idle and (kind in _ENTITIES or any(each in connected for each in openings)))
        self.tree.setDragEnabled(idle)
        self.form.setEditTriggers(_EDITS if idle else PowerTree.EditTrigger.NoEditTriggers)

    @property
    def facts(self) -> PowerFacts:
        """All that is laid."""
        return self.present.facts

    def carry(
        self,
        openings: list[str],
        circuit_id: str,
        begin: str = "supply",
        length: str = "",
        then: Callable[[], None] | None = None,
        base: int | None = None,
    ) -> None:
        """Put openings on a circuit, or take them off every one; `then` is called once it is done.

        Base is the newest step when the person saw where they are; as the tree shows it when left out.
        """
        connected = self.present.facts.connected()
        if circuit_id or any(each in connected for each in openings):
            seen = self.present.base if base is None else base
            self.edits.connect(openings, circuit_id, begin, length, seen, then)

    def ask_new(self, kind: str) -> None:
        """Ask for the facts of a new supply, circuit or run, and lay it."""
        owner = {"supply": "", "circuit": self.tree.above("supply"), "run": self.tree.above("circuit")}[kind]
        about = {"supply": "", "circuit": "Of supply ", "run": "Of circuit "}[kind] + self._name(owner)
        offers, stated = dict(parts_offered(self.present.catalogue)), dict[str, str]()
        if kind == "supply":
            about = phrase("One that is laid, or a place where one may stand. What is left empty is unknown.")
            places = [each.given.opening for each in self.present.checked.values()]
            offers["building"] = sorted({each.building for each in places if each.building})
            offers["level"] = sorted({each.level for each in places if each.level})
            stated["building"] = (self._building() or "") if self.tree.chosen()[0] else ""
        elif kind == "run":
            connected = self.present.facts.connected()
            offers["from_node"] = self.present.nodes(owner)
            offers["to_node"] = [mark for id_, mark in self.present.marks().items() if id_ not in connected]
            stated["from_node"] = "supply"
        dialog = NewPowerDialog(
            _ENTITIES[kind],
            about,
            offers,
            lambda texts, then: self.add_power_row(kind, owner, texts, then),
            stated,
            style=self.present.style,
            parent=self,
        )
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.asked = dialog
        dialog.open()

    def add_power_row(
        self, kind: str, owner: str, texts: dict[str, str], then: Callable[[], None] | None = None
    ) -> None:
        """Lay a supply, a circuit of a supply, or a run of a circuit from what was typed; `then` is called after it."""

        def done(identifier: str) -> None:
            self.tree.choose((kind, identifier))
            if then is not None:
                then()

        self.edits.add(kind, owner, texts, done)

    def ask_move(self) -> None:
        """Ask for a circuit and move the selected openings onto it."""
        openings, marks = self.tree.chosen_openings(), self.present.marks()
        named = ", ".join(marks.get(each, each) for each in openings[:8])
        about = (
            named if len(openings) <= 8 else phrase("{named} and {count} more", named=named, count=len(openings) - 8)
        )
        circuits = {circuit.id: self._name(circuit.id) for circuit in self.present.facts.circuits}
        base = self.present.base
        dialog = MoveDialog(
            about, circuits, self.present.nodes,
            lambda circuit, begin, length, then: self.carry(openings, circuit, begin, length, then, base),
            self.tree.above("circuit"), style=self.present.style, parent=self,
        )  # fmt: skip
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.asked_where = dialog
        dialog.open()

    def take_chosen_away(self) -> None:
        """Take away the chosen supply, circuit or junction, or take the selected openings off their circuits."""
        kind, identifier = self.tree.chosen()

        def then() -> None:
            if self.present.work.supplies:
                self.told.setText(phrase("Taken away. Undo brings it back."))

        if kind == "opening":
            self.carry(self.tree.chosen_openings(), "", then=then)
        elif kind in _ENTITIES:
            self.edits.remove(kind, identifier, self.present.base, then)

    def ask_workbook(self) -> None:
        """Ask for a power workbook and take it in."""
        name = file_to_read(self, phrase("Power workbook"), phrase("Workbooks (*.xlsx)"))
        if name:
            self.take_in(Path(name))

    def take_in(self, path: Path) -> None:
        """Take in a power workbook."""
        self.edits.take_in(path)

    def siting_page(self) -> SitingWindow:
        """Return a page that sites supplies, beginning with what is chosen here."""
        return SitingWindow(self.desk, self.present.buildings(), self.present.catalogue, self._building())

    def layout_page(self) -> LayoutWindow:
        """Return a page that plans supplies and runs, beginning with what is chosen here."""
        circuits = circuits_of(self.present.facts)
        chosen = self.tree.above("circuit") or self._building()
        return LayoutWindow(self.desk, self.present.buildings(), circuits, chosen)

    def _on_touched(self, _ids: object) -> None:
        """Wait for the change itself, which follows."""

    def _take(self, present: PowerShown) -> None:
        if self._again:
            self._again = False
            self.follow()
            return
        self.present = present
        connected = present.facts.connected()
        loose = {
            id_: each.given.opening.mark
            for id_, each in present.checked.items()
            if id_ not in connected
            and ((each.fit is not None and each.fit.power == "supply") or each.given.opening.power_wish == "supply")
        }
        first = "" if present.work.supplies else phrase(_FIRST if present.checked else _FIRST_OF_ALL)
        self.tree.empty.say(first)
        self.tree.blockSignals(True)
        self.tree.show_result(present.work, loose, present.facts.runs, present.marks(), present.style)
        self.tree.blockSignals(False)
        self.told.clear()
        self.tree.setAccessibleDescription(first)
        self._show_chosen()

    def _edit_fact(self, entity: str, row: str, attribute: str, text: str) -> None:
        key = entity, row, attribute
        self.form.refused.forget(key)

        def keep(error: BaseException) -> None:
            self.form.refused.keep(key, text, why_of(error), again=True)
            self.follow()

        self.edits.type_fact(entity, row, attribute, text, self.form.seen, keep)

    def _delete(self) -> None:
        if self.take_away.isEnabled():
            self.take_chosen_away()

    def _menu(self, at: QPoint) -> None:
        menu = QMenu(self)
        for button in (self.add_circuit, self.add_run, self.move_to, self.take_away):
            made = menu.addAction(button.text())
            made.setEnabled(button.isEnabled())
            made.triggered.connect(button.click)
        keep = self._keep(menu)
        if keep is not None:
            menu.addAction(keep)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.popup(self.tree.viewport().mapToGlobal(at))

    def _keep(self, menu: QMenu) -> QAction | None:
        """Return the action by which the siting is told to leave the chosen opening on its supply."""
        kind, opening = self.tree.chosen()
        supply = self.tree.above("supply")
        if kind != "opening" or not supply:
            return None
        routes, seen = self.present.facts.routes, self.present.base
        pinned = any(each.pinned for each in routes if (each.opening_id, each.supply_id) == (opening, supply))
        made = QAction(phrase("Siting keeps it at {name}", name=self._name(supply)), menu)
        made.setCheckable(True)
        made.setChecked(pinned)
        made.setEnabled(self.idle)

        made.triggered.connect(lambda on: self.edits.keep(opening, supply, bool(on), seen))
        return made

    def _show_in_register(self, item: QTreeWidgetItem) -> None:
        if item.data(0, KIND) == "opening":
            self.desk.show_openings([str(item.data(0, ID))])

    def _show_chosen(self) -> None:
        self.sheet.show_chosen(self.present, self.tree.chosen(), self.tree.above("circuit"), self._building())
        self.enable()

    def _building(self) -> str | None:
        """Return the building of what is chosen, else the first in which something is laid."""
        supply = self.present.supply(self.tree.above("supply"))
        if supply is not None:
            return supply.supply.building or ""
        kind, identifier = self.tree.chosen()
        if kind == "opening" and identifier in self.present.checked:
            return self.present.checked[identifier].given.opening.building
        place, held = self.tree.above("place"), self.present.buildings()
        if place:
            return place if place in held else ""
        return held[0] if held else "" if self.present.work.supplies else None

    def _name(self, identifier: str) -> str:
        names = {supply.id: supply.name for supply in self.present.facts.supplies}
        for circuit in self.present.facts.circuits:
            names[circuit.id] = f"{names.get(circuit.supply_id, '')}/{circuit.name}"
        return names.get(identifier, "")


_EDITS: Final = (
    PowerTree.EditTrigger.DoubleClicked | PowerTree.EditTrigger.EditKeyPressed | PowerTree.EditTrigger.AnyKeyPressed
)
_ONLY_THERE: Final = Qt.ShortcutContext.WidgetShortcut
