"""What the desktop can do about a finding for all openings that share its cure: always seen before it is done."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final, Literal

from PySide6.QtCore import QObject

from hwsched.attributes import said_value
from hwsched.attributes.unknown import unknown_word
from hwsched.desktop.findings.finding_lines import FindingLine, shares
from hwsched.desktop.frame.tool_window import Desk
from hwsched.desktop.grid.changes_pane import ChangesPane
from hwsched.desktop.grid.column import Column, Target
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.proposals import Proposal, Reading, proposed
from hwsched.language import phrase, to_phrase
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.waiver_book import facts_of, input_of
from hwsched.operations.findings.waivers import unwaive, waivers
from hwsched.operations.survey.fact_edit import FactEdit
from hwsched.operations.survey.many_facts import edit_many
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.rules.saying import label_said
from hwsched.survey import ENTITIES, ITEM, LEAF, OPENING
from hwsched.values import Item, Leaf, Opening
from hwsched.values.lock_points import is_lock

Kind = Literal["", "fact", "fit", "waiver", "try"]
_FITS: Final = frozenset({"fit-out-of-date"})
_TAKEN_BACK: Final = frozenset({"waiver-unneeded"})
_TRIED: Final = frozenset(
    {"lock-and-cylinder", "placement", "cable", "holes", "fire-door", "accessibility", "catalogue-and-stock", "battery"}
)
"""Disciplines whose findings another part, place or limit can mend."""
_WORDS: Final[dict[Kind, str]] = {
    "": "",
    "fact": to_phrase("Fill in"),
    "fit": to_phrase("Fit again"),
    "waiver": to_phrase("Take waivers back"),
    "try": to_phrase("Try otherwise"),
}


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

    def kind(self, lines: Sequence[FindingLine]) -> Kind:
        """Return what can be done about lines that share a cure; nothing where only people at the door can."""
        # What is said of a supply is mended in the place for power.
        lines = [line for line in lines if not line.supply]
        if not lines:
            return ""
        first = lines[0]
        if first.need:
            return "fact" if self._fillable(lines) else ""
        if first.first.rule in _FITS:
            return "fit"
        if first.first.rule in _TAKEN_BACK:
            return "waiver"
        return "try" if first.first.discipline in _TRIED else ""

    def words(self, lines: Sequence[FindingLine]) -> tuple[str, int]:
        """Return how that is called, and at how many openings it can be done."""
        kind = self.kind(lines)
        done = self._fillable(lines) if kind == "fact" else lines
        return phrase(_WORDS[kind]), len({line.opening for line in done if line.opening})

    def cures(self, shown: Sequence[FindingLine], chosen: Sequence[FindingLine]) -> list[list[FindingLine]]:
        """Return what can be done about chosen lines: for each cure all shown lines that it mends."""
        return [share for share in shares(shown, chosen) if self.kind(share)]

    def said(self, lines: Sequence[FindingLine]) -> str:
        """Return what one of several cures would do, and about what."""
        how, count = self.words(lines)
        first = lines[0]
        what = label_said(first.need) if first.need else first.title
        return phrase("{how} for {count}: {what}…", how=how, count=count, what=what)

    def _fillable(self, lines: Sequence[FindingLine]) -> list[FindingLine]:
        checked = self._desk.workspace.checked
        return [line for line in lines if line.opening in checked and lacking(checked[line.opening], line) is not None]

    def ask_fact(self, lines: Sequence[FindingLine]) -> str:
        """Let one value be typed for a fact that is missing at openings; returns what is to be said beside it."""
        checked = self._desk.workspace.checked
        known = {line.opening: line for line in lines if line.opening in checked}
        column = _column_of(lines[0].need, known, self._style())
        if column is None:
            return ""
        rows = [checked[each] for each in known if lacking(checked[each], known[each]) is not None]
        contents = Contents((column,), lambda each: each.given.opening.id)
        contents.load(rows)
        reading = Reading(self._desk.workspace.project.bare_unit, self._style())

        def propose(name: str, text: str) -> list[Proposal]:
            openings = [row.given.opening for row in rows]
            return [proposed(contents, each.id, name, text, reading, each.mark) for each in openings]

        self._pane.ask([column], column.name, rows, propose)
        left = len(known) - len(rows)
        return (
            phrase("At {left} it is not told of which thing it is missing: go to the fact.", left=left) if left else ""
        )

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

    def _style(self) -> LengthStyle:
        style = self._desk.workspace.project.length_style
        return next((each for each in LENGTH_STYLES if each == style), "fraction")


def lacking(checked: Checked, line: FindingLine) -> Opening | Leaf | Item | None:
    """Return the one thing of an opening that lacks the fact of a line; None where there is none, or several may."""
    entity, _, name = line.need.partition(".")
    given = checked.given
    if entity == OPENING.name:
        return given.opening if getattr(given.opening, name, "") is None else None
    if entity == LEAF.name:
        leaves = [each for each in given.leaves if getattr(each, name, "") is None]
        return leaves[0] if len(leaves) == 1 else None
    if entity != ITEM.name:
        return None
    kinds = {each.about for each in line.findings} & {choice.value for choice in ITEM.attribute("kind").choices}
    # A finding says of what kind of thing it speaks, or it speaks of the lock.
    lack = [each for each in given.items if getattr(each, name, "") is None]
    items = [each for each in lack if (each.kind in kinds if kinds else is_lock(each))]
    return items[0] if len(items) == 1 else None


def _column_of(need: str, lines: Mapping[str, FindingLine], style: LengthStyle) -> Column[Checked] | None:
    """Return a missing fact as a column over the openings of its lines."""
    entity_name, _, name = need.partition(".")
    entity = next((each for each in ENTITIES if each.name == entity_name), None)
    attribute = next((each for each in entity.attributes if each.name == name), None) if entity is not None else None
    if attribute is None:
        return None

    def target(each: Checked) -> Target | None:
        thing = lacking(each, lines[each.given.opening.id])
        return Target(entity_name, thing.id, name) if thing is not None else None

    def text(value: Any) -> str:
        return said_value(attribute, value, style, unknown=unknown_word())

    return Column(need, attribute.label, lambda _each: None, text, attribute=attribute, target=target)
