"""Findings in the main window: waived and taken back, the reasons behind a result, the rulebook."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.language import phrase, to_phrase
from hwsched.values import Finding, PointFit

if TYPE_CHECKING:
    from hwsched.desktop.findings.waive_dialog import Accepted, WaiveDialog


class FindingActions(Subject):
    """Waivers, reasons and rules, of the chosen opening.

    Parameters
    ----------
    frame : Frame
        Open project, jobs, edits, telling.
    point : callable
        Returns the lock point that the sheet shows.
    """

    def __init__(self, frame: Frame, point: Callable[[], PointFit | None]) -> None:
        super().__init__(frame)
        self._point = point
        self.waiver: WaiveDialog | None = None
        self.act_why = self.action(
            to_phrase("Why this?"),
            to_phrase("The reasons behind parts, place and findings of the chosen opening"),
            lambda: self.show_why(""),
            "openings",
            acts_on="chosen",
            at_present=self._something_to_tell,
        )
        self.act_rulebook, self.act_waivers = self.way_to("rulebook"), self.way_to("waivers")

    def ask_waiver(self, finding: Finding) -> None:
        """Ask who accepts a finding of the chosen opening, and why."""
        from hwsched.desktop.findings.waive_dialog import WaiveDialog
        from hwsched.operations.findings.waiver_book import facts_of, input_of

        checked, workspace = self.state.checked, self.state.workspace
        if checked is None or workspace is None or self.jobs.busy:
            return
        key = facts_of(input_of(checked.inputs, finding), finding)
        same = [
            each
            for each in workspace.checked.values()
            if any(f.rule == finding.rule and f.about == finding.about for f in each.findings)
        ]
        alike = sum(
            any(facts_of(input_of(each.inputs, f), f) == key for f in each.findings if f.rule == finding.rule)
            for each in same
        )
        everywhere = sum(any(f.rule == finding.rule for f in c.findings) for c in workspace.checked.values())
        mark = checked.given.opening.mark
        dialog = WaiveDialog(mark, finding, self.state.who, max(alike, 1), everywhere, self.frame.window)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        opening = checked.given.opening.id
        dialog.wants_waiver.connect(lambda said: self._waive(dialog, opening, finding.rule, said))
        self.waiver = dialog
        dialog.open()

    def _waive(self, dialog: WaiveDialog, opening: str, rule: str, said: Accepted) -> None:
        from hwsched.operations.findings.waivers import waive

        workspace = self.state.workspace
        if workspace is None:
            return
        self.frame.edit(
            lambda: waive(
                workspace.project,
                rule,
                person=said.person,
                reason=said.reason,
                who=workspace.who,
                opening_id=None if said.scope == "project" else opening,
                scope=said.scope,
                about=said.about,
                until=said.until,
            ),
            lambda _changes: dialog.accept(),
            asker=dialog,
        )

    def take_waiver_back(self, finding: Finding) -> None:
        """Take back the waivers by which a finding of the chosen opening is accepted."""
        from hwsched.operations.findings.waiver_book import facts_of, input_of
        from hwsched.operations.findings.waivers import unwaive, waivers

        checked, workspace = self.state.checked, self.state.workspace
        if checked is None or workspace is None:
            return
        facts, opening = facts_of(input_of(checked.inputs, finding), finding), checked.given.opening.id
        ids = [
            each.id
            for each in waivers(workspace.project)
            if each.rule == finding.rule
            and each.about in ("", finding.about)
            and (each.scope == "project" or each.facts == facts)
            and (each.scope != "opening" or each.opening_id == opening)
        ]
        if ids:
            self.frame.edit_seen(
                lambda base: unwaive(workspace.project, ids, who=workspace.who, base=base), checked.base
            )  # fmt: skip

    def _something_to_tell(self) -> tuple[bool, str]:
        checked = self.state.checked
        if checked is None or checked.fit is not None or checked.findings:
            return True, ""
        return False, phrase("Nothing is worked out for this opening yet.")

    def show_why(self, about: str, line: str = "") -> None:
        """Show the chain behind a role, place, holes or rule of the chosen opening; the first of them for none."""
        checked = self.state.checked
        if checked is not None:
            at = self._point()
            point = at.given.point.name if at is not None else ""
            self.frame.go("why", (checked.given.opening.mark, about, line, point))

    def show_why_hole(self, order: int) -> None:
        """Show the chain behind a hole, by its place in the order of drilling."""
        from hwsched.operations.findings.why import HOLES

        self.show_why(HOLES, f"{order}. ")

    def show_rule(self, rule: str) -> None:
        """Show a rule in the rulebook."""
        from hwsched.rules import in_rulebook

        if in_rulebook(rule) is not None:
            self.frame.go("rulebook", rule)
