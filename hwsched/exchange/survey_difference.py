"""What a survey file would change in a project: new, changed, unchanged, missing from the file.

A blank cell leaves a known fact alone; it never erases one.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from hwsched.cases import Case, Item, Leaf, Opening
from hwsched.exchange.survey_facts import SurveyedItem, SurveyedLeaf, SurveyedOpening, SurveyRead

_OPENING = frozenset(Opening.__slots__)
_LEAF = frozenset(Leaf.__slots__)
_ITEM = frozenset(Item.__slots__)


@dataclass(frozen=True, slots=True)
class FactChange:
    """One fact that changes."""

    entity: str
    row_id: str
    where: str
    """Opening, Leaf active, Lock ..."""
    attribute: str
    before: Any
    after: Any
    origin: str


@dataclass(frozen=True, slots=True)
class OpeningChange:
    """An opening that is known and changes."""

    mark: str
    opening_id: str
    facts: tuple[FactChange, ...]
    new_leaves: tuple[SurveyedLeaf, ...] = ()
    new_items: tuple[SurveyedItem, ...] = ()


@dataclass(frozen=True, slots=True)
class Preview:
    """Differences between a file and a project."""

    new: tuple[SurveyedOpening, ...]
    changed: tuple[OpeningChange, ...]
    unchanged: tuple[str, ...]
    missing: tuple[str, ...]
    """Marks in the project that the file does not name; they stay."""
    assumptions: tuple[str, ...] = ()
    unmapped: tuple[str, ...] = ()
    own: Mapping[str, frozenset[str]] = field(default_factory=dict)

    def describe(self) -> list[str]:
        """Return the preview in lines for people."""
        lines = [
            f"{len(self.new)} new, {len(self.changed)} changed, {len(self.unchanged)} unchanged, "
            f"{len(self.missing)} in the project but not in the file"
        ]
        lines += [f"read as: {line}" for line in self.assumptions]
        lines += [f"not read: {line}" for line in self.unmapped]
        for opening in self.changed[:50]:
            for change in opening.facts:
                lines.append(f"{opening.mark}: {change.where} {change.attribute}: {change.before} -> {change.after}")
            lines += [f"{opening.mark}: new leaf {leaf.position}" for leaf in opening.new_leaves]
            lines += [f"{opening.mark}: new item {item.facts.get('kind', '')}" for item in opening.new_items]
        return lines


def difference(read: SurveyRead, cases: Iterable[Case], extra: Mapping[str, Mapping[str, Any]]) -> Preview:
    """Compare what was read with a project's openings, matched by mark.

    Parameters
    ----------
    read : SurveyRead
        From the file.
    cases : iterable of Case
        The project's openings.
    extra : mapping
        Values of the project's own fields by row.
    """
    known = {case.opening.mark: case for case in cases}
    new: list[SurveyedOpening] = []
    changed: list[OpeningChange] = []
    unchanged: list[str] = []
    for opening in read.openings:
        case = known.get(opening.mark)
        if case is None:
            new.append(opening)
            continue
        change = _compare(opening, case, extra)
        if change.facts or change.new_leaves or change.new_items:
            changed.append(change)
        else:
            unchanged.append(opening.mark)
    named = {opening.mark for opening in read.openings} | set(read.rejected)
    return Preview(
        tuple(new),
        tuple(changed),
        tuple(unchanged),
        tuple(mark for mark in known if mark not in named),
        tuple(assumption.describe() for assumption in read.assumptions),
        tuple(
            f"sheet {u.sheet}, column {u.column} ({u.header or 'no header'}): {u.filled} cells" for u in read.unmapped
        ),
    )


def _compare(opening: SurveyedOpening, case: Case, extra: Mapping[str, Mapping[str, Any]]) -> OpeningChange:
    held = case.opening
    facts = _facts("opening", held.id, "Opening", opening.facts, held, _OPENING, extra, opening.origin)
    leaves = {leaf.position: leaf for leaf in case.leaves}
    new_leaves: list[SurveyedLeaf] = []
    for leaf in opening.leaves:
        known = leaves.get(leaf.position)
        if known is None:
            new_leaves.append(leaf)
        else:
            facts += _facts("leaf", known.id, f"Leaf {leaf.position}", leaf.facts, known, _LEAF, extra, leaf.origin)
    waiting: dict[tuple[Any, Any], list[Item]] = defaultdict(list)
    for item in case.items:
        waiting[item.kind, item.face].append(item)
    new_items: list[SurveyedItem] = []
    for surveyed in opening.items:
        kind, face = surveyed.facts.get("kind"), surveyed.facts.get("face")
        match = waiting.get((kind, face)) or next(
            (w for key, w in waiting.items() if key[0] == kind and face is None), None
        )
        if not match:
            new_items.append(surveyed)
            continue
        known_item = match.pop(0)
        told = {**{n: v for n, v in surveyed.deduced.items() if getattr(known_item, n) is None}, **surveyed.facts}
        where = str(kind or "item").replace("-", " ").capitalize()
        facts += _facts("existing_item", known_item.id, where, told, known_item, _ITEM, extra, surveyed.origin)
    return OpeningChange(opening.mark, held.id, tuple(facts), tuple(new_leaves), tuple(new_items))


def _facts(
    entity: str,
    row_id: str,
    where: str,
    told: Mapping[str, Any],
    held: Any,
    declared: frozenset[str],
    extra: Mapping[str, Mapping[str, Any]],
    origin: str,
) -> list[FactChange]:
    found = []
    own = extra.get(row_id, {})
    for name, value in told.items():
        before = getattr(held, name) if name in declared else own.get(name)
        if before != value:
            found.append(FactChange(entity, row_id, where, name, before, value, origin))
    return found
