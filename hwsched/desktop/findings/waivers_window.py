"""All waivers of the project; those selected can be taken back."""

from dataclasses import dataclass
from datetime import date
from typing import Final

from PySide6.QtWidgets import QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.looks.moments import day_said
from hwsched.language import phrase, to_phrase
from hwsched.operations.findings.waivers import unwaive, waivers
from hwsched.operations.project.history import newest
from hwsched.rules.saying import rule_said
from hwsched.values.record import SCOPES, Waiver


@dataclass(frozen=True, slots=True)
class WaiverLine:
    """A waiver with the mark of its opening."""

    waiver: Waiver
    mark: str
    over: bool
    """Whether its last day is past."""


def _until(line: WaiverLine) -> date | None:
    return line.waiver.until


COLUMNS: Final[tuple[Column[WaiverLine], ...]] = (
    Column("rule", to_phrase("Rule"), lambda line: rule_said(line.waiver.rule), width=37),
    Column("about", to_phrase("About"), lambda line: line.waiver.about, width=12),
    Column("mark", to_phrase("Opening"), lambda line: line.mark, width=10),
    Column("scope", to_phrase("Holds for"), lambda line: SCOPES[line.waiver.scope], width=14),
    Column("person", to_phrase("Person"), lambda line: line.waiver.person, width=14),
    Column("given", to_phrase("Given"), lambda line: line.waiver.given_on, day_said, width=12),
    Column("until", to_phrase("Until"), _until, lambda day: day_said(day) if day else phrase("no end"), width=12),
    Column("over", to_phrase("Over"), lambda line: line.over, lambda over: phrase("over") if over else "", width=8),
    Column("reason", to_phrase("Reason"), lambda line: line.waiver.reason, width=40),
)


class WaiversWindow(ToolWindow):
    """Rule, opening, who, when, until, why."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Waivers"), parent)
        self.model = GridModel(Contents(COLUMNS, lambda line: line.waiver.id), self)
        none = phrase("No finding is waived. In Findings, Waive… keeps who accepts one, why, and until when.")
        self.grid = Grid(self.model, "waivers", phrase("Waivers"), lambda _id: "", opens=True,
                         empty=none)  # fmt: skip
        self.grid.picked.connect(self.enable)
        self.grid.opened.connect(self._show_opening)
        self.grid.said.connect(self.told.setText)
        self.back = self.button(phrase("Take back the selected"), self.take_back, phrase("Their findings count again"))
        self.rule = self.button(phrase("Show rule"), self._show_rule)
        self.body.addWidget(self.grid)
        self.foot.addWidget(self.rule)
        self.foot.addWidget(self.back)
        self.follow()

    def follow(self) -> None:
        """List the waivers anew."""
        checked, project = self.desk.workspace.checked, self.desk.workspace.project
        self.base = newest(project)
        today = project.today()
        lines = []
        for each in waivers(project):
            opening = checked.get(each.opening_id or "")
            mark = opening.given.opening.mark if opening is not None else ""
            lines.append(WaiverLine(each, mark, each.past(today)))
        self.model.load(lines)
        self.enable()

    def chosen(self) -> list[Waiver]:
        """Return the selected waivers."""
        lines = (self.model.contents.row_of(each) for each in self.grid.ids)
        return [line.waiver for line in lines if line is not None]

    def enable(self) -> None:
        """Something must be selected."""
        chosen = self.chosen()
        self.back.setEnabled(bool(chosen) and self.idle)
        self.rule.setEnabled(bool(chosen))

    def take_back(self) -> None:
        """Take the selected waivers back, as one step."""
        ids, workspace = [each.id for each in self.chosen()], self.desk.workspace
        self.edit_seen(
            lambda base: unwaive(workspace.project, ids, who=workspace.who, base=base),
            self.base,
            lambda _changes: self.follow(),
        )

    def _show_rule(self) -> None:
        for each in self.chosen()[:1]:
            self.desk.show_rule(each.rule)

    def _show_opening(self, identity: str) -> None:
        line = self.model.contents.row_of(identity)
        if line is not None and line.waiver.opening_id:
            self.desk.show_openings([line.waiver.opening_id])
