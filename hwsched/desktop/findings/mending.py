"""What the desktop can do about a finding for all openings that share its cure: always seen before it is done."""

from collections.abc import Callable, Sequence
from typing import Any, Final, Literal

from PySide6.QtCore import QObject

from hwsched.desktop.findings.finding_lines import FindingLine
from hwsched.desktop.grid.changes_pane import ChangesPane
from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.proposals import Proposal, Reading, proposed
from hwsched.desktop.survey.opening_columns import Beside, opening_columns
from hwsched.desktop.tool_window import Desk
from hwsched.operations.findings.checking import Checked
from hwsched.operations.findings.waiver_book import facts_of, input_of
from hwsched.operations.findings.waivers import unwaive, waivers
from hwsched.operations.survey.many_facts import FactEdit, edit_many
from hwsched.quantities import LENGTH_STYLES, LengthStyle

Kind = Literal["", "fact", "fit", "waiver", "try"]
_FITS: Final = frozenset({"fit-out-of-date"})
_TAKEN_BACK: Final = frozenset({"waiver-unneeded"})
_TRIED: Final = frozenset(
    {"lock-and-cylinder", "placement", "cable", "holes", "fire-door", "accessibility", "catalogue-and-stock", "battery"}
)
"""Disciplines whose findings another part, place or limit can mend."""
_WORDS: Final[dict[Kind, str]] = {
    "": "", "fact": "Fill in", "fit": "Fit again", "waiver": "Take waivers back", "try": "Try otherwise",
}  # fmt: skip


class Mending(QObject):
    """Cures by kind: a fact is filled in, a fit made anew, a waiver taken back, another part tried.

    Parameters
    ----------
    desk : Desk
        Of the page.
    pane : ChangesPane
        Shows what filling in a fact would change.
    """

    def __init__(self, desk: Desk, pane: ChangesPane) -> None:
        super().__init__(pane)
        self._desk = desk
        self._pane = pane
        pane.taken.connect(self._write)

    def kind(self, line: FindingLine) -> Kind:
        """Return what can be done about a line; nothing where only people at the door, or the catalogue, can."""
        if line.need:
            return "fact" if self._column(line.need) is not None else ""
        if line.first.rule in _FITS:
            return "fit"
        if line.first.rule in _TAKEN_BACK:
            return "waiver"
        return "try" if line.first.discipline in _TRIED else ""

    def words(self, line: FindingLine) -> str:
        """Return how that is called."""
        return _WORDS[self.kind(line)]

    def ask_fact(self, need: str, ids: Sequence[str]) -> str:
        """Let one value be typed for a missing fact of openings; returns what is to be said beside it."""
        checked = self._desk.workspace.checked
        contents = self._contents(checked[each] for each in ids if each in checked)
        column = self._column(need)
        if column is None:
            return ""
        # Where it is known of what the column shows, it is missing of another leaf or lock: that is told apart there.
        rows = [row for row in contents.rows if column.value(row) is None]
        if not rows:
            return "It is missing of another leaf or lock of these openings: go to the fact."
        settings = self._desk.workspace.project
        reading = Reading(settings.bare_unit, self._style())

        def propose(name: str, text: str) -> list[Proposal]:
            openings = [row.given.opening for row in rows]
            return [proposed(contents, each.id, name, text, reading, each.mark) for each in openings]

        self._pane.ask([contents.known[column.name]], column.name, rows, propose)
        left = len(contents.rows) - len(rows)
        return f"{left} need it of another leaf or lock and are left out." if left else ""

    def take_back(self, lines: Sequence[FindingLine], edit_seen: Callable[..., None]) -> None:
        """Take back the waivers that nothing needs any more."""
        workspace = self._desk.workspace
        wanted = {(line.opening, each.about) for line in lines for each in line.findings}
        rules = {about for _, about in wanted}
        ids = [
            each.id
            for each in waivers(workspace.project)
            if each.rule in rules and each.opening_id in {opening for opening, _ in wanted} and not self._needed(each)
        ]
        if ids:
            base = min((workspace.checked[line.opening].base or 0) for line in lines)
            edit_seen(lambda base: unwaive(workspace.project, ids, who=workspace.who, base=base), base)

    def _needed(self, waiver: Any) -> bool:
        """Tell whether a waiver still lies over a finding of its opening."""
        checked = self._desk.workspace.checked.get(waiver.opening_id or "")
        if checked is None:
            return True
        return any(
            each.rule == waiver.rule and facts_of(input_of(checked.inputs, each), each) == waiver.facts
            for each in checked.findings
        )

    def _write(self, edits: Sequence[FactEdit]) -> None:
        workspace = self._desk.workspace
        seen = [each.base for each in workspace.checked.values() if each.base is not None]
        self._desk.edit_seen(
            lambda base: edit_many(workspace.project, edits, who=workspace.who, base=base),
            min(seen, default=None),
            asker=self._pane,
        )

    def _contents(self, rows: Any) -> Contents[Checked]:
        made = Contents(opening_columns(Beside(self._style())), lambda each: each.given.opening.id)
        made.load(rows)
        return made

    def _style(self) -> LengthStyle:
        style = self._desk.workspace.project.length_style
        return next((each for each in LENGTH_STYLES if each == style), "fraction")

    def _column(self, need: str) -> Column[Checked] | None:
        """Return the column of a missing fact that openings hold themselves."""
        name = need.removeprefix("existing_")
        return next((each for each in opening_columns(Beside()) if each.name == name and each.target), None)
