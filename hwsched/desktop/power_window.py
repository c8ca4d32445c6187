"""The place for power: supplies and circuits are laid, volts are seen at every opening, openings are dragged."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QFileDialog,
    QHBoxLayout,
    QInputDialog,
    QMenu,
    QSplitter,
    QTabWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.cases.power import PowerFacts, PowerWork
from hwsched.desktop.drawing_view import DrawingView
from hwsched.desktop.laid_form import LaidForm, NewLaid
from hwsched.desktop.lines import Lines
from hwsched.desktop.part_box import catalogue_of
from hwsched.desktop.power_tree import PowerTree
from hwsched.desktop.siting_window import SitingWindow
from hwsched.desktop.tool_window import Desk, ToolWindow
from hwsched.drawings.riser import risers
from hwsched.drawings.voltage_plot import voltage_plot
from hwsched.drawings.wiring_sheet import wiring_sheet
from hwsched.operations import hanging, laying
from hwsched.operations.changes import Changes
from hwsched.operations.power_import import import_power
from hwsched.operations.powering import opening_levels, power_facts, power_work
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.survey import CIRCUIT, RUN, SUPPLY

_FIRST = (
    "Nothing is laid yet. Add a supply, then a circuit of it, and drag openings onto the circuit; or take in a power "
    "workbook; or name places for supplies and let them be sited."
)


class PowerWindow(ToolWindow):
    """Tree on the left; facts, findings and drawings of what is chosen on the right."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, "Supplies and circuits", parent)
        self.resize(1240, 660)
        self.work = PowerWork()
        self.facts = PowerFacts()
        self.siting: SitingWindow | None = None
        self.tree = PowerTree()
        self.tree.moved.connect(self.carry)
        self.tree.currentItemChanged.connect(lambda *_: self._show_chosen())
        self.tree.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        self.tree.customContextMenuRequested.connect(self._menu)
        self.form = LaidForm()
        self.form.edited.connect(self._edit_fact)
        self.found = Lines(("Severity", "Finding", "Cure"), 1, {0: 70})
        self.riser, self.wiring, self.plot = DrawingView(), DrawingView(), DrawingView()
        self.pages = QTabWidget()
        for page, title in (
            (self.form, "Facts"), (self.found, "Findings"), (self.riser, "Riser"), (self.wiring, "Wiring"),
            (self.plot, "Voltages"),
        ):  # fmt: skip
            self.pages.addTab(page, title)
        self.pages.currentChanged.connect(lambda _index: self._draw())
        self.add_supply = self.button("Add supply…", lambda: self.ask_new("supply"))
        self.add_circuit = self.button("Add circuit…", lambda: self.ask_new("circuit"), "Of the chosen supply")
        self.add_run = self.button("Add run…", lambda: self.ask_new("run"), "Of the chosen circuit")
        self.move_to = self.button("Move to circuit…", self.ask_move, "The selected openings")
        self.take_away = self.button("Take away", self.take_chosen_away, "The chosen supply, circuit or run")
        self.read = self.button("Take in workbook…", self.ask_workbook)
        self.site = self.button("Site supplies…", self.show_siting, "Fewest supplies, then least wire")
        row = QHBoxLayout()
        for each in (
            self.add_supply, self.add_circuit, self.add_run, self.move_to, self.take_away, self.read, self.site,
        ):  # fmt: skip
            row.addWidget(each)
        row.addStretch(1)
        left = QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.tree, 1)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.addWidget(left)
        split.addWidget(self.pages)
        split.setSizes([600, 640])
        self.body.addLayout(row)
        self.body.addWidget(split, 1)
        self.follow()

    def follow(self) -> None:
        """Work out anew what is laid, and show it."""
        self.facts = power_facts(self.desk.workspace.project)
        self.work = power_work(self.desk.workspace.project)
        fed = self.facts.fed()
        loose = {
            id_: each.case.opening.mark
            for id_, each in self.desk.workspace.checked.items()
            if id_ not in fed and each.fit is not None and each.fit.power == "supply"
        }
        self.tree.blockSignals(True)
        self.tree.show_work(self.work, loose)
        self.tree.blockSignals(False)
        self.told.setText("" if self.work.supplies else _FIRST)
        self._show_chosen()

    def enable(self) -> None:
        """Let what is possible with the chosen line be done."""
        kind, _ = self.tree.chosen()
        for each in (self.add_supply, self.read):
            each.setEnabled(self.idle)
        self.add_circuit.setEnabled(self.idle and kind in ("supply", "circuit"))
        self.add_run.setEnabled(self.idle and kind in ("circuit", "opening") and bool(self._circuit_id()))
        self.move_to.setEnabled(self.idle and bool(self.tree.chosen_openings()) and bool(self.facts.circuits))
        self.take_away.setEnabled(self.idle and kind in ("supply", "circuit", "opening"))
        self.site.setEnabled(self.idle and bool(self._buildings()))

    def carry(self, openings: list[str], circuit_id: str) -> None:
        """Hang openings on a circuit, or take them off every one."""
        project, who = self.desk.workspace.project, self.desk.workspace.who
        if circuit_id:
            self._do(lambda: hanging.hang(project, circuit_id, openings, who=who))
        else:
            self._do(lambda: hanging.unhang(project, openings, who=who))

    def ask_new(self, kind: str) -> None:
        """Ask for the facts of a new supply, circuit or run, and lay it."""
        entity = {"supply": SUPPLY, "circuit": CIRCUIT, "run": RUN}[kind]
        owner = {"supply": "", "circuit": self._supply_id(), "run": self._circuit_id()}[kind]
        about = {"supply": "", "circuit": "Of supply ", "run": "Of circuit "}[kind] + self._name(owner)
        dialog = NewLaid(entity, about, catalogue_of(self.desk.workspace), self)
        dialog.accepted.connect(lambda: self.lay(kind, owner, dialog.texts()))
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.asked = dialog
        dialog.open()

    def lay(self, kind: str, owner: str, texts: dict[str, str]) -> None:
        """Lay a supply, a circuit of a supply, or a run of a circuit from what was typed."""
        project, who = self.desk.workspace.project, self.desk.workspace.who

        def act() -> Changes:
            facts = laying.typed_laid(kind, texts)
            if kind == "supply":
                return laying.lay_supply(project, facts, who=who)[0]
            lay: Callable[..., Any] = laying.lay_circuit if kind == "circuit" else laying.lay_run
            changes: Changes = lay(project, owner, facts, who=who)[0]
            return changes

        self._do(act)

    def ask_move(self) -> None:
        """Ask for a circuit and move the selected openings onto it."""
        names = {self._name(circuit.id): circuit.id for circuit in self.facts.circuits}
        names["(off every circuit)"] = ""
        name, sure = QInputDialog.getItem(self, "Move to circuit", "Circuit", list(names), 0, False)
        if sure:
            self.carry(self.tree.chosen_openings(), names[name])

    def take_chosen_away(self) -> None:
        """Take away the chosen supply or circuit, or take the chosen openings off theirs."""
        kind, identifier = self.tree.chosen()
        project, who = self.desk.workspace.project, self.desk.workspace.who
        if kind == "opening":
            openings = self.tree.chosen_openings()
            self._do(lambda: hanging.unhang(project, openings, who=who))
        elif kind in ("supply", "circuit"):
            self._do(lambda: laying.lift(project, kind, identifier, who=who))

    def ask_workbook(self) -> None:
        """Ask for a power workbook and take it in."""
        name, _ = QFileDialog.getOpenFileName(self, "Power workbook", str(Path.home()), "Workbooks (*.xlsx)")
        if name:
            self.take_in(Path(name))

    def take_in(self, path: Path) -> None:
        """Take in a power workbook."""
        project, who = self.desk.workspace.project, self.desk.workspace.who
        self._do(lambda: import_power(project, path, who=who).changes)

    def show_siting(self) -> None:
        """Show the siting of supplies; one window of it at a time."""
        if self.siting is None:
            self.siting = SitingWindow(self.desk, self._buildings(), self)
            self.siting.finished.connect(self._forget_siting)
        self.siting.show()
        self.siting.raise_()

    def done(self, result: int) -> None:
        """Close the siting with it."""
        if self.siting is not None:
            self.siting.close()
        super().done(result)

    def _forget_siting(self) -> None:
        self.siting = None

    def _do(self, act: Callable[[], Changes]) -> None:
        if self.desk.edit(act) and self.idle:
            self.follow()

    def _edit_fact(self, entity: str, row: str, attribute: str, text: str) -> None:
        project, who = self.desk.workspace.project, self.desk.workspace.who
        self._do(lambda: laying.edit_laid_text(project, entity, row, {attribute: text}, who=who))

    def _menu(self, at: Any) -> None:
        menu = QMenu(self)
        move = QAction("Move to circuit…", menu)
        move.triggered.connect(lambda _checked=False: self.ask_move())
        move.setEnabled(self.move_to.isEnabled())
        away = QAction("Take away", menu)
        away.triggered.connect(lambda _checked=False: self.take_chosen_away())
        away.setEnabled(self.take_away.isEnabled())
        menu.addActions([move, away])
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.popup(self.tree.viewport().mapToGlobal(at))

    def _show_chosen(self) -> None:
        kind, identifier = self.tree.chosen()
        marks = {id_: each.case.opening.mark for id_, each in self.desk.workspace.checked.items()}
        entries: list[tuple[str, Any, str, Any, dict[str, str]]] = []
        for supply in self.facts.supplies:
            if kind == "supply" and supply.id == identifier:
                entries.append((f"Supply {supply.name}", SUPPLY, supply.id, supply, {}))
        for circuit in self.facts.circuits:
            if kind == "circuit" and circuit.id == identifier:
                entries.append((f"Circuit {self._name(circuit.id)}", CIRCUIT, circuit.id, circuit, {}))
        for run in self.facts.runs:
            mine = {"circuit": run.circuit_id, "opening": run.opening_id}.get(kind)
            if mine is not None and mine == identifier:
                ends = f"{marks.get(run.from_node, run.from_node)} to {marks.get(run.to_node, run.to_node)}"
                entries.append((f"Run {ends}", RUN, run.id, run, marks))
        self.form.show_laid(entries)
        self._show_findings(kind, identifier)
        self._draw()
        self.enable()

    def _show_findings(self, kind: str, identifier: str) -> None:
        rows = []
        for each in self.work.findings:
            mine = {"supply": each.supply_id == identifier, "circuit": each.circuit_id == identifier}
            if mine.get(kind, kind == "opening" and identifier in each.opening_ids) or kind in ("", "place"):
                rows.append((each.finding.severity, each.finding.message, each.finding.cure))
        self.found.show_rows(rows)
        self.pages.setTabText(1, f"Findings {len(rows)}" if rows else "Findings")

    def _draw(self) -> None:
        page = self.pages.currentWidget()
        style = self._style()
        opening = self.tree.chosen()[1] if self.tree.chosen()[0] == "opening" else ""
        if page is self.riser:
            building = self._building()
            levels = opening_levels(self.desk.workspace.project)
            drawn = risers(self.work, building, levels, style) if building is not None else ()
            self.riser.show_drawings(drawn[:1], "Choose a building, supply or circuit.")
        elif page is self.wiring:
            held = self.work.circuit_of(opening) if opening else None
            sheets = [wiring_sheet(*held, opening, style)] if held is not None else []
            self.wiring.show_drawings(sheets, "Choose an opening on a circuit.")
        elif page is self.plot:
            circuit_id = self._circuit_id()
            plots = [
                voltage_plot(supply, circuit, style)
                for supply in self.work.supplies
                for circuit in supply.circuits
                if circuit.circuit.id == circuit_id
            ]
            self.plot.show_drawings(plots, "Choose a circuit.")

    def _style(self) -> LengthStyle:
        held = self.desk.workspace.project.length_style
        return next((style for style in LENGTH_STYLES if style == held), "fraction")

    def _chain(self) -> list[QTreeWidgetItem]:
        item, found = self.tree.currentItem(), []
        while item is not None:
            found.append(item)
            item = item.parent()
        return found

    def _of_kind(self, kind: str) -> str:
        from_chain = (item for item in self._chain() if item.data(0, Qt.ItemDataRole.UserRole) == kind)
        item = next(from_chain, None)
        return str(item.data(0, int(Qt.ItemDataRole.UserRole) + 1)) if item is not None else ""

    def _supply_id(self) -> str:
        return self._of_kind("supply")

    def _circuit_id(self) -> str:
        return self._of_kind("circuit")

    def _building(self) -> str | None:
        supply = next((s for s in self.facts.supplies if s.id == self._supply_id()), None)
        if supply is not None:
            return supply.building or ""
        place = self._of_kind("place")
        return place or (self._buildings()[0] if self._buildings() else None)

    def _buildings(self) -> list[str]:
        return list(dict.fromkeys(s.building for s in self.facts.supplies if s.building))

    def _name(self, identifier: str) -> str:
        names = {supply.id: supply.name for supply in self.facts.supplies}
        for circuit in self.facts.circuits:
            names[circuit.id] = f"{names.get(circuit.supply_id, '')}/{circuit.name}"
        return names.get(identifier, "")
