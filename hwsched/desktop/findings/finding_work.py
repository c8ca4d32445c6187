"""What a person does about findings: waives them, asks why, looks up the rule; and the windows beside the main one."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date
from typing import TypeVar

from PySide6.QtCore import QItemSelection, QItemSelectionModel, Qt
from PySide6.QtGui import QCloseEvent

from hwsched.desktop.findings.rulebook_window import RulebookWindow
from hwsched.desktop.findings.waive_dialog import Accepted, WaiveDialog
from hwsched.desktop.findings.waivers_window import WaiversWindow
from hwsched.desktop.findings.why_window import WhyWindow
from hwsched.desktop.parts.set_book import sets_by_opening
from hwsched.desktop.project.project_work import ProjectWork
from hwsched.desktop.tool_window import Desk, ToolWindow
from hwsched.model.project import Project
from hwsched.operations.changes import Changes
from hwsched.operations.findings.checking import Checked
from hwsched.operations.findings.waiver_book import WaiverBook, facts_of, input_of
from hwsched.operations.findings.waivers import unwaive, waive, waivers
from hwsched.operations.findings.why import HOLES
from hwsched.operations.parts.hardware_sets import hardware_sets
from hwsched.operations.project.reading_settings import settings_of
from hwsched.rules import in_rulebook
from hwsched.values import Finding

Tool = TypeVar("Tool", bound=ToolWindow)


class FindingWork(ProjectWork):
    """Waivers, reasons and rules, from the sheet of the chosen opening.

    Parameters
    ----------
    who : str
        Person at work, for the journal.
    """

    def __init__(self, who: str) -> None:
        super().__init__(who)
        self.desk: Desk | None = None
        self.tools: dict[type[ToolWindow], ToolWindow] = {}
        sheet = self.sheet
        sheet.findings_page.wants_waiver.connect(self.ask_waiver)
        sheet.findings_page.wants_back.connect(self.take_waiver_back)
        sheet.findings_page.wants_why.connect(self.show_why)
        sheet.findings_page.wants_rule.connect(self.show_rule)
        sheet.refused_page.wants_rule.connect(self.show_rule)
        sheet.parts_page.wants_why.connect(self.show_why)
        sheet.holes_page.wants_why.connect(lambda order: self.show_why(HOLES, f"{order}. "))

    def tool(self, kind: type[Tool], make: Callable[[Desk], Tool]) -> Tool | None:
        """Show a window beside the main one: the one that is open already, or a new one."""
        if self.desk is None:
            return None
        held = self.tools.get(kind)
        if not isinstance(held, kind):
            held = make(self.desk)
            held.finished.connect(lambda: self._forget_tool(kind))
            self.tools[kind] = held
        held.show()
        held.raise_()
        held.activateWindow()
        return held

    def _forget_tool(self, kind: type[ToolWindow]) -> None:
        self.tools.pop(kind, None)

    def _close_tools(self) -> None:
        for each in list(self.tools.values()):
            each.close()
        self.tools.clear()

    def select_openings(self, ids: Sequence[str]) -> None:
        """Select openings in the register; where some are narrowed away, all are shown."""
        wanted = set(ids)
        if any(self.register.row_of_id(each) is None for each in wanted):
            for box in (self.search, self.state, self.places):
                box.blockSignals(True)
            self.search.clear()
            self.state.setCurrentIndex(0)
            root = self.places.topLevelItem(0)
            if root is not None:
                self.places.setCurrentItem(root)
            for box in (self.search, self.state, self.places):
                box.blockSignals(False)
            self.register.narrow(words="", state="", place=None)
            self._show_count()
        rows = sorted(row for each in wanted if (row := self.register.row_of_id(each)) is not None)
        chosen, last = QItemSelection(), self.register.columnCount() - 1
        begin = 0
        for place, row in enumerate(rows):
            if place + 1 == len(rows) or rows[place + 1] != row + 1:
                chosen.select(self.register.index(rows[begin], 0), self.register.index(row, last))
                begin = place + 1
        flags = QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
        self.table.selectionModel().select(chosen, flags)
        if rows:
            self.table.scrollTo(self.register.index(rows[0], 0))

    def ask_waiver(self, finding: Finding) -> None:
        """Ask who accepts a finding of the chosen opening, and why."""
        checked = self._shown()
        if checked is None or self.workspace is None or self.jobs.busy:
            return
        key = facts_of(input_of(checked.inputs, finding), finding)
        same = [
            each
            for each in self.workspace.checked.values()
            if any(f.rule == finding.rule and f.about == finding.about for f in each.findings)
        ]
        alike = sum(
            any(facts_of(input_of(each.inputs, f), f) == key for f in each.findings if f.rule == finding.rule)
            for each in same
        )
        everywhere = sum(any(f.rule == finding.rule for f in c.findings) for c in self.workspace.checked.values())
        mark = checked.given.opening.mark
        dialog = WaiveDialog(mark, finding, self.who, max(alike, 1), everywhere, self)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        opening = checked.given.opening.id
        dialog.wants_waiver.connect(lambda said: self._waive(opening, finding.rule, said))
        self.waiver = dialog
        dialog.open()

    def _waive(self, opening: str, rule: str, said: Accepted) -> None:
        workspace, dialog = self.workspace, self.waiver
        if workspace is None:
            return
        self.edit(
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
        checked, workspace = self._shown(), self.workspace
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
            self.edit_seen(
                lambda base: unwaive(workspace.project, ids, who=workspace.who, base=base), checked.base
            )  # fmt: skip

    def show_waivers(self) -> None:
        """Show all waivers."""
        self.tool(WaiversWindow, lambda desk: WaiversWindow(desk, self))

    def show_why(self, about: str, line: str = "") -> None:
        """Show the chain behind a role, place, holes or rule of the chosen opening."""
        checked = self._shown()
        window = self.tool(WhyWindow, lambda desk: WhyWindow(desk, self))
        if window is not None and checked is not None:
            mark = checked.given.opening.mark
            at = self.sheet.shown_point()
            self._guarded(lambda: window.ask(mark, about, line, at.given.point.name if at is not None else ""))

    def show_rulebook(self) -> None:
        """Show the rulebook."""
        self.tool(RulebookWindow, lambda desk: RulebookWindow(desk, self))

    def show_rule(self, rule: str) -> None:
        """Show a rule in the rulebook."""
        if in_rulebook(rule) is not None:
            window = self.tool(RulebookWindow, lambda desk: RulebookWindow(desk, self))
            if window is not None:
                window.choose(rule)

    def _shown(self) -> Checked | None:
        return self.workspace.checked.get(self.chosen) if self.workspace is not None and self.chosen else None

    def _show(self, project: Project) -> None:
        self._close_tools()
        self.desk = None
        super()._show(project)
        if self.workspace is not None:
            self.desk = Desk(
                self.workspace,
                self.jobs,
                self.workspace,
                edit=self.edit,
                edit_seen=self.edit_seen,
                chosen=self._chosen_ids,
                select=self.select_openings,
                show_rule=self.show_rule,
                reload=lambda: self._reload("Checking"),
            )

    def _after(self, changes: Changes, *, beside: bool = False) -> None:
        """Let the openings follow that a waiver or a set touches though no row of theirs changed."""
        workspace = self.workspace
        if workspace is None:
            return
        touched = set(changes.openings)
        if "waiver" in changes.entities:
            book = WaiverBook.of(waivers(workspace.project), settings_of(workspace.project), date.today())
            touched |= {id_ for id_, each in workspace.checked.items() if _waived_otherwise(each, book)}
        if changes.entities & {"hardware_set", "set_line", "opening"}:
            before = set(self.register.sets)
            self._read_sets()
            if changes.entities & {"hardware_set", "set_line"}:
                touched |= before | set(self.register.sets)
        super()._after(replace(changes, openings=frozenset(touched)), beside=beside)

    def _on_reloaded(self) -> None:
        self._read_sets()
        super()._on_reloaded()

    def _read_sets(self) -> None:
        if self.workspace is not None:
            self.register.sets = self.sheet.sets = sets_by_opening(hardware_sets(self.workspace.project))

    def _on_selection(self, now: QItemSelection, before: QItemSelection) -> None:
        super()._on_selection(now, before)
        if self.desk is not None:
            self.desk.selected.emit()

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Close the windows beside this one first."""
        self._close_tools()
        super().closeEvent(event)


def _waived_otherwise(checked: Checked, book: WaiverBook) -> bool:
    """Tell whether other findings of an opening are waived than its sheet shows."""
    bare = [replace(each, waived=False, waived_by="") if each.waived else each for each in checked.findings]
    present = book.lay_over(checked.inputs, bare).findings
    return [each.waived_by for each in present] != [each.waived_by for each in checked.findings]
