"""All findings, of openings and supplies, as one list: by rule, by place, by cure; waived, mended for all alike."""

from collections import Counter
from functools import partial
from typing import Any, Final

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QButtonGroup, QCheckBox, QLabel, QMenu, QPushButton, QToolButton, QWidget

from hwsched.desktop.findings.finding_columns import COLUMNS
from hwsched.desktop.findings.finding_lines import FindingLine, finding_lines
from hwsched.desktop.findings.mending import Mending
from hwsched.desktop.findings.waive_pane import WaivePane
from hwsched.desktop.frame.keyboard_kept import begins_here
from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.grid.changes_pane import ChangesPane
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.kept_views import button
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.grid.query_line import QueryLine
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.looks.severities import severities_in_words
from hwsched.desktop.opening.fit_report import report_of
from hwsched.desktop.survey.askable_names import askable_in
from hwsched.desktop.widgets.empty import NO_OPENINGS
from hwsched.desktop.widgets.flow import Flow
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.operations.collector import collector_paused
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checked_supplies import CheckedSupply, checked_supplies
from hwsched.operations.findings.checking import waiver_book
from hwsched.operations.findings.waivers import waive_several
from hwsched.operations.opening.facts_at_hand import CheckedFacts
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.power.power_results import power_as_it_stands
from hwsched.query import Askable, judge
from hwsched.values import SEVERITIES

_WAYS: Final = (
    ("opening", to_phrase("By opening"), "mark"),
    ("rule", to_phrase("By rule"), "rule"),
    ("cure", to_phrase("By cure"), "cure"),
    ("fact", to_phrase("By missing fact"), "need"),
    ("list", to_phrase("One list"), None),
)
"""How lines stand together: name, words, column."""

HERE: Final = 1000
"""Of so many openings findings are listed here and now; of more beside the window, which would be deaf meanwhile."""


class FindingsWindow(ToolWindow):
    """The list, how its lines stand together, and what can be done with the selected ones."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Findings"), parent)
        self.model = GridModel(Contents(COLUMNS, lambda line: line.id), self)
        self.grid = Grid(self.model, "findings", phrase("Findings"), self._mark, opens=True,
                         empty=phrase(NO_OPENINGS))  # fmt: skip
        self.grid.picked.connect(self.enable)
        self.grid.opened.connect(lambda _line: self.go_to_fact())
        self.pane = ChangesPane()
        self.waive_pane = WaivePane()
        self.waive_pane.given.connect(self._waive)
        self.mending = Mending(desk, self.pane)
        self.ask = QueryLine(phrase("Find findings, or ask for openings:  building = Mill House"))
        self.ask.askable = lambda: self._askable
        self.ask.asked.connect(lambda _found: self._narrow())
        self.ask.done.connect(lambda: self.grid.table.setFocus())
        self._askable = Askable()
        self._reading, self._listing = desk.jobs.beside(self), desk.jobs.beside(self)
        self._lines: list[FindingLine] = []
        self._shown_lines: list[FindingLine] = []
        self._wanted: object = None
        """The rule for whose findings somebody came, until they are listed."""
        self._supplies: tuple[CheckedSupply, ...] = ()
        self._read_at = -1
        """The version of the project whose supplies were read."""
        self.with_waived = QCheckBox(phrase("With waived ones"))
        self.with_waived.toggled.connect(lambda _on: self._show_wanted())
        self.count = QLabel()
        self.ways: dict[str, QToolButton] = {}
        self._group = QButtonGroup(self)
        top = Flow()
        for name, words, column in _WAYS:
            made = button(
                phrase(words),
                phrase("Let findings stand together: {words}", words=phrase(words).lower()),
                partial(self._stand, column),
            )
            made.setCheckable(True)
            self._group.addButton(made)
            self.ways[name] = made
            top.addWidget(made)
        self.count.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        top.addWidget(self.count)
        top.stretched = self.count
        top.gaps.add(top.count())
        top.addWidget(self.with_waived)
        self.body.addWidget(self.ask)
        self.body.addLayout(top)
        self.body.addWidget(self.grid, 1)
        begins_here(self.grid.table)
        self.body.addWidget(self.pane)
        self.body.addWidget(self.waive_pane)
        self.fact = self.button(
            phrase("Go to the fact"), self.go_to_fact, phrase("Select the opening, and show what mends it")
        )
        self.mend = self.button(
            phrase("Mend for all…"), self.mend_all, phrase("The cure of this line for all that share it")
        )
        self.waive = self.button(
            phrase("Waive…"), self.ask_waiver, phrase("Accept the selected findings, by name and with a reason")
        )
        self.rule = self.button(phrase("Show rule"), self._show_rule, phrase("What the rule asks, and why"))
        self.buttons: list[QPushButton] = [self.fact, self.mend, self.waive, self.rule]
        for each in self.buttons:
            self.foot.addWidget(each)
        self.grid.said.connect(self.told.setText)
        if self.model.contents.arrangement == type(self.model.contents.arrangement)():
            self.model.group("mark")
        self._mark_way()
        self.listen(desk.workspace.changed, lambda _changes: self._read_supplies())
        self.follow()

    def follow(self) -> None:
        """List what is found now."""
        if self.grid.put_off(self.follow):
            return
        self._read_supplies()
        self._show_lines()

    def _read_supplies(self) -> None:
        """Have the supplies worked out anew where something has changed, off the screen's thread."""
        workspace = self.desk.workspace
        if self._read_at == workspace.version or self._reading.busy:
            return
        version, project = workspace.version, workspace.project

        def work(_progress: Progress, _cancelled: Cancelled) -> tuple[CheckedSupply, ...]:
            return checked_supplies(power_as_it_stands(project)[1], waiver_book(project, project.today()))

        def then(found: tuple[CheckedSupply, ...]) -> None:
            self._read_at, self._supplies = version, found
            self._show_lines()
            self._read_supplies()

        self._reading.run("", work, then, asker=self, kept=False)

    def _show_lines(self) -> None:
        """List what is found: a few here and now, very many once they were put together beside the window."""
        if self.grid.put_off(self._show_lines):
            return
        workspace, supplies = self.desk.workspace, self._supplies
        checked = list(workspace.checked.values())
        if len(checked) <= HERE:
            self._show(finding_lines(checked, supplies))
        elif not self._listing.busy:
            turn = workspace.turn

            def then(lines: list[FindingLine]) -> None:
                if (turn, supplies) == (workspace.turn, self._supplies):
                    if not self.grid.put_off(self._show_lines):
                        self._show(lines)
                else:
                    # Something was read anew meanwhile.
                    self._show_lines()

            self._listing.run("", lambda *_: _put_together(checked, supplies), then, asker=self, kept=False)

    def _show(self, lines: list[FindingLine]) -> None:
        self._lines = lines
        self._show_wanted()

    def _show_wanted(self) -> None:
        """Show the lines, with waived ones on wish; and the rule for whose findings somebody came."""
        self._shown_lines = (
            self._lines if self.with_waived.isChecked() else [line for line in self._lines if not line.waived]
        )
        self._askable = askable_in(self.desk.workspace)
        places = self._asked_for()
        held = bool(self.desk.workspace.checked)
        self.grid.table.empty = phrase("No rule has anything to say." if held else NO_OPENINGS)
        self.model.load(self._shown_lines, places)
        self._say_narrowed(places)
        self._select_wanted()

    def _narrow(self) -> None:
        places = self._asked_for()
        self.model.narrow_to(places)
        self._say_narrowed(places)

    def _asked_for(self) -> list[int] | None:
        """Return the places of findings that hold all words, or of those of openings that are asked for; None: all."""
        asked, lines = self.ask.understood, self._shown_lines
        if asked.query is not None:
            checked = list(self.desk.workspace.checked.values())
            true = judge(asked.query, CheckedFacts(checked)).true
            openings = {checked[place].given.opening.id for place in true}
            return [place for place, line in enumerate(lines) if line.opening in openings]
        words = asked.words.casefold().split()
        if not words:
            return None
        return [place for place, line in enumerate(lines) if all(word in line.text for word in words)]

    def _say_narrowed(self, places: list[int] | None) -> None:
        lines = self._shown_lines
        counted = Counter(line.first.severity for line in (lines if places is None else map(lines.__getitem__, places)))
        words = severities_in_words({each: counted[each] for each in SEVERITIES})
        self.count.setText(", ".join(words) if words or not lines else phrase("Nothing is found."))
        self.enable()

    def chosen(self) -> list[FindingLine]:
        """Return the selected lines."""
        rows = (self.model.contents.row_of(each) for each in self.grid.ids)
        return [row for row in rows if row is not None]

    def _shown(self) -> list[FindingLine]:
        """Return the lines that are shown: a cure is for those, and for no opening that nobody sees."""
        contents = self.model.contents
        return [row for each in contents.kept_ids() if (row := contents.row_of(each)) is not None]

    def enable(self) -> None:
        """Let what is possible with the selected lines be done."""
        lines, idle = self.chosen(), self.idle
        self.fact.setEnabled(bool(lines))
        self.rule.setEnabled(bool(lines))
        self.waive.setEnabled(idle and any(line.spoken for line in lines))
        cures = self._cures()
        self.mend.setEnabled(idle and bool(cures))
        if len(cures) == 1:
            how, count = self.mending.words(cures[0])
            self.mend.setText(phrase("{how} for {count}…", how=how, count=count))
        elif cures:
            self.mend.setText(phrase("Mend: {count} cures…", count=len(cures)))
        else:
            self.mend.setText(phrase("Mend for all…"))

    def tell(self, thing: object) -> None:
        """Show what somebody came for: the findings of a rule, by its identifier; with an opening, that one's."""
        self._stand("rule")
        self._wanted = thing
        self._select_wanted()

    def _select_wanted(self) -> None:
        for line in self.model.contents.rows:
            if self._wanted in (line.first.rule, (line.first.rule, line.opening)):
                self._wanted = None
                self.grid.select([line.id])
                self.enable()
                break

    def go_to_fact(self) -> None:
        """Select the openings of the selected lines in the register."""
        lines = self.chosen()
        openings = list(dict.fromkeys(line.opening for line in lines if line.opening))
        if lines and not openings:
            self.desk.go("power", lines[0].supply)
        elif lines:
            self.desk.go("openings", openings)
            self.desk.show_fact(next((line.need for line in lines if line.need), ""))

    def mend_all(self) -> None:
        """Begin with the cure of the selected lines, for all that share it; of several, the person chooses one."""
        cures = self._cures() if self.idle else []
        if len(cures) == 1:
            self._mend(cures[0])
        elif cures:
            self.menu = menu = QMenu(self)
            for share in cures:
                menu.addAction(self.mending.said(share).replace("&", "&&"), partial(self._mend, share))
            menu.popup(self.mend.mapToGlobal(self.mend.rect().topLeft() - QPoint(0, menu.sizeHint().height())))

    menu: QMenu | None = None
    """The cures of selected lines that no single one mends."""

    def _cures(self) -> list[list[FindingLine]]:
        chosen = self.chosen()
        return self.mending.cures(self._shown(), chosen) if chosen else []

    def _mend(self, share: list[FindingLine]) -> None:
        """Show what a cure would do to all lines that share it."""
        self.waive_pane.hide()
        share = [line for line in share if line.opening]
        ids = list(dict.fromkeys(line.opening for line in share))
        kind = self.mending.kind(share)
        if kind == "fact":
            self.told.setText(self.mending.ask_fact(share))
        elif kind == "fit":
            rows = [
                (line.mark, phrase("Fit"), line.said, phrase("worked out anew from the facts as they are"))
                for line in share
            ]
            self.pane.ask_plain(
                rows,
                phrase_of_count("Fit {count} opening again", "Fit {count} openings again", len(ids)),
                partial(self._fit, ids),
            )
        elif kind == "waiver":
            rows = [(line.mark, phrase("Waiver"), line.said, phrase("taken back")) for line in share]
            back = partial(self.mending.take_back, share, self.edit_seen)
            self.pane.ask_plain(
                rows,
                phrase_of_count(
                    "Take back waivers of {count} opening", "Take back waivers of {count} openings", len(ids)
                ),
                back,
            )
        elif kind == "try":
            self.desk.select(ids)
            self.desk.go("what-if")

    def _fit(self, ids: list[str]) -> None:
        workspace = self.desk.workspace

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            return fit_openings(workspace.project, ids, who=workspace.who, progress=progress, cancelled=cancelled)

        self.run(
            phrase_of_count("Fitting {count} opening", "Fitting {count} openings", len(ids)),
            work,
            lambda _done: self.follow(),
            report_of,
        )

    def ask_waiver(self) -> None:
        """Ask who accepts the selected findings, and why."""
        lines = [line for line in self.chosen() if line.spoken]
        if lines and self.idle:
            self.pane.hide()
            count = len({each for line in lines for each in line.spoken})
            self.waive_pane.ask(count, _places(lines), self.desk.workspace.who)

    def _waive(self, person: str, reason: str, until: str | None) -> None:
        workspace = self.desk.workspace
        spoken = list(dict.fromkeys(each for line in self.chosen() for each in line.spoken))
        self.edit(
            lambda: waive_several(
                workspace.project, spoken, person=person, reason=reason, who=workspace.who, until=until
            ),
            lambda _changes: self.waive_pane.hide(),
        )

    def _stand(self, column: str | None) -> None:
        if column is not None and self.model.place_of(column) < 0:
            names = (*self.model.shown_names(), column)
            self.grid.lay_columns(names)
        self.grid.group(column)
        self._mark_way()

    def _mark_way(self) -> None:
        group = self.model.contents.arrangement.group
        for name, _words, column in _WAYS:
            self.ways[name].setChecked(column == group)

    def _show_rule(self) -> None:
        for line in self.chosen()[:1]:
            self.desk.show_rule(line.first.rule)

    def _mark(self, identity: str) -> str:
        line = self.model.contents.row_of(identity)
        return line.mark if line is not None else ""


def _put_together(checked: list[Checked], supplies: tuple[CheckedSupply, ...]) -> list[FindingLine]:
    with collector_paused():
        return finding_lines(checked, supplies)


def _places(lines: list[FindingLine]) -> str:
    """Say at how many openings and supplies lines are."""
    openings, supplies = ({getattr(line, name) for line in lines} - {""} for name in ("opening", "supply"))
    counts = (
        phrase_of_count("one opening", "{count} openings", len(openings)) if openings else "",
        phrase_of_count("one supply", "{count} supplies", len(supplies)) if supplies else "",
    )
    return phrase(" and ").join(filter(None, counts))
