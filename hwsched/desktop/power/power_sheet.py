"""What is chosen in the place for power: its facts above, its findings and drawings below."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel, QSplitter, QVBoxLayout, QWidget

from hwsched.desktop.looks.severities import COLOURS, severity_order, severity_word
from hwsched.desktop.power.power_facts_form import PowerFactsForm, parts_offered
from hwsched.desktop.power.power_tree import Key
from hwsched.desktop.power.power_words import buildings_of, circuit_line, opening_line, supply_line
from hwsched.desktop.widgets.lines import Lines, LinesPage
from hwsched.desktop.widgets.sheet_view import SheetView
from hwsched.desktop.widgets.tabs import TabbedPages
from hwsched.drawings.power.riser import risers
from hwsched.drawings.power.riser_strings import Levels
from hwsched.drawings.power.voltage_plot import voltage_plot
from hwsched.drawings.power.wiring_sheet import wiring_sheet
from hwsched.drawings.power.wiring_way import leaves_of
from hwsched.language import phrase
from hwsched.operations.findings.checked import Checked
from hwsched.quantities import LengthStyle
from hwsched.rules.saying import cure_of, message_of
from hwsched.survey import CIRCUIT, RUN, SUPPLY, Entity
from hwsched.values import Catalogue, Finding
from hwsched.values.power import CircuitResult, PowerFacts, PowerResult, Run, SupplyResult

_OF_POWER: Final = frozenset({"power", "battery"})
_LONGEST: Final = 20

Entry = tuple[str, Entity, str, Any, Mapping[str, str]]


@dataclass(frozen=True, slots=True)
class PowerShown:
    """All that the place for power shows, as plain values."""

    facts: PowerFacts = field(default_factory=PowerFacts)
    work: PowerResult = field(default_factory=PowerResult)
    levels: Callable[[], Levels] = dict
    """Level and height of every opening; read when they are drawn."""
    checked: Mapping[str, Checked] = field(default_factory=dict)
    catalogue: Catalogue = field(default_factory=lambda: Catalogue({}, "empty"))
    style: LengthStyle = "fraction"
    base: int | None = None
    """The newest step when it was read."""

    def marks(self) -> dict[str, str]:
        """Return the marks of all openings by identifier."""
        return {id_: each.given.opening.mark for id_, each in self.checked.items()}

    def supply(self, supply_id: str) -> SupplyResult | None:
        """Return a supply."""
        return next((each for each in self.work.supplies if each.supply.id == supply_id), None)

    def circuit(self, circuit_id: str) -> tuple[SupplyResult, CircuitResult] | None:
        """Return a circuit with its supply."""
        return next(
            ((s, c) for s in self.work.supplies for c in s.circuits if c.circuit.id == circuit_id),
            None,
        )

    def run(self, key: Key) -> Run | None:
        """Return the run that a line stands for: that of an opening, or that to a junction."""
        kind, identifier = key
        return next(
            (
                run
                for run in self.facts.runs
                if (kind == "opening" and run.opening_id == identifier) or (kind == "run" and run.id == identifier)
            ),
            None,
        )

    def buildings(self) -> list[str]:
        """Return the buildings in which something is laid."""
        return buildings_of(self.facts)

    def nodes(self, circuit_id: str) -> list[str]:
        """Return where a run of a circuit may begin, as people name it."""
        marks = self.marks()
        ends = [run.to_node for run in self.facts.runs if run.circuit_id == circuit_id]
        return ["supply", *dict.fromkeys(marks.get(end, end) for end in ends)]


class FoundPage(LinesPage):
    """Findings with their cures."""

    wants_rule = Signal(str)

    def __init__(self) -> None:
        super().__init__(Lines((phrase("Severity"), phrase("Finding"), phrase("Cure")), 1, {0: 76}))
        self.table.empty.say(phrase("No rule says anything here."))
        self.act_rule = self.offer(phrase("Show rule"), phrase("The rule's page in the rulebook"))
        self.act_rule.triggered.connect(self._ask)
        self.table.cellDoubleClicked.connect(lambda *_: self._ask())
        self._findings: list[tuple[str, Finding]] = []

    def show_found(self, findings: list[tuple[str, Finding]]) -> None:
        """Show findings, each with the name of what it speaks of, empty where that is what is chosen."""
        self._findings = findings = sorted(findings, key=lambda each: severity_order(each[1]))
        rows = [
            (
                severity_word(finding.severity, waived=finding.waived),
                f"{name}: {said}" if name else said,
                cure_of(finding),
            )
            for name, finding in findings
            for said in (message_of(finding),)
        ]
        self.table.clearSelection()
        self.table.show_rows(
            rows,
            aside={at for at, (_, finding) in enumerate(findings) if finding.waived},
            inks=[COLOURS[finding.severity] for _, finding in findings],
        )
        self.enable()

    def enable(self) -> None:
        """Let the rule of the selected finding be looked up."""
        self.act_rule.setEnabled(self.table.chosen_row() >= 0)

    def _ask(self) -> None:
        row = self.table.chosen_row()
        if 0 <= row < len(self._findings):
            self.wants_rule.emit(self._findings[row][1].rule)


class PowerSheet(QWidget):
    """Everything about the chosen supply, circuit, run or opening."""

    def __init__(self) -> None:
        super().__init__()
        self.present = PowerShown()
        self._key: Key = ("", "")
        self._circuit = ""
        self._building: str | None = None
        self.title = QLabel()
        self.title.setTextFormat(Qt.TextFormat.PlainText)
        self.title.setWordWrap(True)
        font = self.title.font()
        font.setBold(True)
        self.title.setFont(font)
        self.line = QLabel()
        self.line.setTextFormat(Qt.TextFormat.PlainText)
        self.line.setWordWrap(True)
        self.line.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.form = PowerFactsForm()
        self.found_page = FoundPage()
        self.found = self.found_page.table
        self.riser, self.wiring, self.plot = SheetView(), SheetView(), SheetView()
        self.pages = TabbedPages()
        for page, title in (
            (self.found_page, phrase("Findings")),
            (self.riser, phrase("Riser")),
            (self.wiring, phrase("Wiring")),
            (self.plot, phrase("Voltages")),
        ):
            self.pages.addTab(page, title)
        self.pages.currentChanged.connect(lambda _index: self._draw())
        split = QSplitter(Qt.Orientation.Vertical)
        split.addWidget(self.form)
        split.addWidget(self.pages)
        split.setSizes([190, 400])
        split.setStretchFactor(0, 1)
        split.setStretchFactor(1, 3)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(4, 0, 0, 0)
        layout.addWidget(self.title)
        layout.addWidget(self.line)
        layout.addWidget(split, 1)

    def show_chosen(self, present: PowerShown, key: Key, circuit_id: str, building: str | None) -> None:
        """Show what is chosen.

        Parameters
        ----------
        present : PowerShown
            All there is.
        key : tuple of str
            Kind and identifier of what is chosen.
        circuit_id : str
            Circuit to which it belongs; empty where to none.
        building : str or None
            Building whose riser is drawn; None where there is none.
        """
        self.present, self._key, self._circuit, self._building = present, key, circuit_id, building
        entries = self._entries()
        offers: dict[str, list[str]] = dict(parts_offered(present.catalogue))
        if circuit_id:
            offers["from_node"] = present.nodes(circuit_id)
            offers["to_node"] = sorted(present.marks().values())
        self.form.show_facts(entries, offers, present.base, style=present.style)
        self.form.setVisible(bool(entries))
        title, line = self._words()
        self.title.setText(title)
        self.line.setText(line)
        self.line.setVisible(bool(line))
        findings = self._findings()
        self.found_page.show_found(findings)
        self.pages.setTabText(0, phrase("Findings {count}", count=len(findings)) if findings else phrase("Findings"))
        self._draw()

    def _entries(self) -> list[Entry]:
        kind, identifier = self._key
        present, marks = self.present, self.present.marks()
        if kind == "supply":
            return [
                (phrase("Supply"), SUPPLY, each.id, each, {})
                for each in present.facts.supplies
                if each.id == identifier
            ]
        if kind == "circuit":
            return [
                (phrase("Circuit"), CIRCUIT, each.id, each, {})
                for each in present.facts.circuits
                if each.id == identifier
            ]
        run = present.run(self._key)
        if run is None:
            return []
        ends = " to ".join(_short(marks.get(end, end)) for end in (run.from_node, run.to_node))
        return [(phrase("Run {ends}", ends=ends), RUN, run.id, run, marks)]

    def _words(self) -> tuple[str, str]:
        kind, identifier = self._key
        present, held = self.present, self.present.circuit(self._circuit)
        if kind == "supply" and (supply := present.supply(identifier)) is not None:
            where = " · ".join(word for word in (supply.supply.building, supply.supply.level) if word)
            return phrase("Supply {name}", name=supply.supply.name) + (f"   {where}" if where else ""), supply_line(
                supply
            )
        if kind == "circuit" and held is not None:
            return phrase(
                "Circuit {name} of {name_2}", name=held[1].circuit.name, name_2=held[0].supply.name
            ), circuit_line(held[1])
        if kind == "opening":
            return self._opening_words(identifier)
        if kind == "run" and (run := present.run(self._key)) is not None:
            return phrase("Junction {to_node}", to_node=run.to_node), ""
        if kind == "place":
            return identifier, ""
        if kind == "loose":
            return phrase("On no circuit yet"), phrase(
                "Openings that want a supply: drag them onto a circuit, or let them be sited."
            )
        return phrase("Nothing chosen"), phrase("Choose a supply, a circuit or an opening in the list.")

    def _opening_words(self, opening_id: str) -> tuple[str, str]:
        checked, held = self.present.checked.get(opening_id), self.present.work.circuit_of(opening_id)
        if checked is None:
            return "", ""
        opening = checked.given.opening
        where = " · ".join(word for word in (opening.building, opening.level, opening.room_to) if word)
        line = (
            opening_line(held[1], opening_id) if held is not None else phrase("It wants a supply and is on no circuit.")
        )
        return f"{opening.mark}   {where}", line

    def _findings(self) -> list[tuple[str, Finding]]:
        kind, identifier = self._key
        work = self.present.work
        names = {each.supply.id: each.supply.name for each in work.supplies}
        if kind == "opening":
            of_circuit = list(work.of_opening(identifier))
            checked = self.present.checked.get(identifier)
            if checked is None:
                return [("", finding) for finding in of_circuit]
            # What a circuit says stands among the opening's own findings, waived or not; it is not said twice.
            said = {(f.rule, f.about, f.message) for f in of_circuit}
            own = [f for f in checked.findings if f.discipline in _OF_POWER or (f.rule, f.about, f.message) in said]
            held = {(f.rule, f.about, f.message) for f in own}
            return [("", f) for f in (*own, *(f for f in of_circuit if (f.rule, f.about, f.message) not in held))]
        if kind in ("supply", "circuit"):
            return [
                ("", each.finding)
                for each in work.findings
                if identifier in (each.supply_id if kind == "supply" else "", each.circuit_id)
            ]
        if kind == "place":
            here = {each.supply.id for each in work.supplies if (each.supply.building or "") == self._building}
            return [(names.get(each.supply_id, ""), each.finding) for each in work.findings if each.supply_id in here]
        return [] if kind else [(names.get(each.supply_id, ""), each.finding) for each in work.findings]

    def _draw(self) -> None:
        """Draw what is in sight only."""
        page, present = self.pages.currentWidget(), self.present
        kind, identifier = self._key
        if page is self.riser:
            drawn = (
                risers(present.work, self._building, present.levels(), present.style)
                if self._building is not None
                else ()
            )
            self.riser.show_drawings(drawn, phrase("No supply is laid here."))
        elif page is self.wiring:
            held = present.work.circuit_of(identifier) if kind == "opening" else None
            leaves = leaves_of(held[1], identifier) if held is not None else ()
            sheets = [wiring_sheet(*held, identifier, present.style, leaf=leaf) for leaf in leaves if held is not None]
            self.wiring.show_drawings(sheets, phrase("Choose an opening that is on a circuit to see how it is wired."))
        elif page is self.plot:
            circuit = present.circuit(self._circuit)
            plots = [voltage_plot(*circuit, present.style)] if circuit is not None else []
            self.plot.show_drawings(
                plots, phrase("Choose a circuit, or an opening on one, to see the voltage along it.")
            )


def _short(name: str) -> str:
    """Cut a long name of a node: the whole stands among the facts."""
    return name if len(name) <= _LONGEST else f"{name[: _LONGEST - 1]}…"
