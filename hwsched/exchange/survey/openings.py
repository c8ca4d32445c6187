"""How leaves and existing items follow from the rows gathered for an opening.

Here belongs what the trade takes as said: a size of a pair is that of each leaf, the lock of a pair is in its active
leaf, a single door's items are on its leaf. What remains open stays unknown.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Final

from hwsched.exchange.problems import CellProblem
from hwsched.exchange.survey.facts import SurveyedItem, SurveyedLeaf, SurveyedOpening, agree
from hwsched.exchange.survey.told import Draft, FileRow, Told, contradiction, row_problem, tell
from hwsched.stopping import ask_stop

_LEAFLESS: Final = ("lift", "turnstile")
_UNNAMED: Final = frozenset({""})
_PAIR: Final = ("active", "inactive")
_WIDEST_OF_PAIR_MM: Final = 1400.0
"""Leaves of a pair are at most 4 ft (1219 mm), common practice; a wider measure may be that of both leaves together."""
_OF_THE_LOCK: Final = frozenset({"lock", "trim", "thumb-turn", "lever"})
"""Items that are where the lock is, as long as a pair has only one lock."""


@dataclass(slots=True)
class Taken:
    """How often something was taken as said, for the preview."""

    both_leaves: int = 0
    lock_in_active: int = 0
    pair_from_leaves: int = 0

    def add(self, other: "Taken") -> None:
        """Add what was counted for one opening."""
        self.both_leaves += other.both_leaves
        self.lock_in_active += other.lock_in_active
        self.pair_from_leaves += other.pair_from_leaves

    def lines(self) -> list[tuple[str, int]]:
        """Return each in words with its number of openings, those that happened only."""
        lines = [
            ("pairs whose one measure is taken for each of both leaves", self.both_leaves),
            ("pairs whose lock and its trim are taken to be on the active leaf", self.lock_in_active),
            ("openings without a form taken as pairs, since their leaves say so", self.pair_from_leaves),
        ]
        return [(text, count) for text, count in lines if count]


def finish(draft: Draft, taken: Taken, problems: list[CellProblem]) -> SurveyedOpening:
    """Turn the rows of an opening into the opening with its leaves and items.

    Parameters
    ----------
    draft : Draft
        All its rows.
    taken : Taken
        Counts what was taken as said.
    problems : list of CellProblem
        What does not fit is added here, and the draft marked as bad.
    """
    ask_stop()
    before = len(problems)
    facts: dict[str, Any] = {"mark": draft.mark, **draft.told.facts}
    pair = _is_pair(draft)
    form = facts.get("form")
    if not pair and (plain := _plain(draft, facts, form)) is not None:
        return plain
    counted = Taken()
    if pair and form is None:
        facts["form"] = "pair"
        counted.pair_from_leaves += 1
    elif pair and form != "pair":
        problems.append(_not_a_pair(draft, form))
    leaves = _pair_leaves(draft, counted, problems) if pair else _one_leaf(draft, form, problems)
    positions = [leaf.position for leaf in leaves]
    items = tuple(_items(draft, positions, counted, problems))
    draft.bad = draft.bad or len(problems) > before
    if not draft.bad:
        taken.add(counted)
    return SurveyedOpening(draft.mark, facts, leaves, items, draft.told.place.origin)


def _plain(draft: Draft, facts: dict[str, Any], form: object) -> SurveyedOpening | None:
    """Return an opening of one row, with one leaf and items that name none, as nearly all are; None for another."""
    place = draft.told.place
    if form in _LEAFLESS or len(draft.told.rows) != 1 or draft.leaves.keys() != _UNNAMED:
        return None
    if any(position or told.place is not place or "leaf" in told.facts for told, position in draft.items):
        return None
    origin = place.origin
    leaf = SurveyedLeaf("single", {**draft.leaves[""].facts, "position": "single"}, origin)
    items = tuple([SurveyedItem(dict(told.facts), {"leaf": "single"}, origin) for told, _ in draft.items])
    return SurveyedOpening(draft.mark, facts, (leaf,), items, origin)


def _is_pair(draft: Draft) -> bool:
    if draft.told.facts.get("form") == "pair" or draft.two_leaves is not None:
        return True
    if not draft.leaves:
        return False
    # Under a heading of the active leaf stand single doors too; the inactive leaf makes a pair.
    if "inactive" in draft.leaves:
        return True
    return "active" in draft.typed and draft.told.facts.get("form") is None


def _not_a_pair(draft: Draft, form: object) -> CellProblem:
    inactive = draft.leaves.get("inactive")
    place = draft.two_leaves or (inactive.place if inactive else draft.told.place)
    message = f"speaks of two leaves, but the form of the opening {draft.mark} is {form}"
    return row_problem(place, message, "the form Pair, or one leaf")


def _one_leaf(draft: Draft, form: object, problems: list[CellProblem]) -> tuple[SurveyedLeaf, ...]:
    """Return the leaf of an opening that is no pair: whatever its rows call it, there is only one."""
    if not draft.leaves:
        return () if form in _LEAFLESS else (_leaf("single", {}, draft.told.place),)
    found = [draft.leaves[name] for name in ("", "single", "active") if name in draft.leaves]
    if not found:
        return (_leaf("single", {}, draft.told.place),)
    first, *others = found
    for other in others:
        problems += tell(first, other.facts, "leaf", other.place)
    return (_leaf("single", first.facts, first.place),)


def _leaf(position: str, facts: dict[str, Any], place: FileRow) -> SurveyedLeaf:
    return SurveyedLeaf(position, {**facts, "position": position}, place.origin)


def _pair_leaves(draft: Draft, taken: Taken, problems: list[CellProblem]) -> tuple[SurveyedLeaf, ...]:
    shared = draft.leaves.get("")
    if single := draft.leaves.get("single"):
        problems.append(_single_in_pair(draft, single.place))
    described = [name for name in _PAIR if name in draft.leaves and draft.leaves[name].facts]
    if shared is not None and described == ["inactive"] and draft.two_leaves is None:
        # One row tells the inactive leaf by name: the other one is the active leaf.
        return (
            _leaf("active", shared.facts, shared.place),
            _leaf("inactive", draft.leaves["inactive"].facts, draft.leaves["inactive"].place),
        )
    if shared is not None and shared.facts:
        taken.both_leaves += draft.two_leaves is None
        width_mm = shared.facts.get("width_mm")
        # Files give a pair the width of one leaf or of the opening; beyond what a leaf can be it is asked, and below
        # it is told as assumed.
        if draft.two_leaves is None and width_mm is not None and width_mm > _WIDEST_OF_PAIR_MM:
            message = f"gives a pair a width of {width_mm:.6g} mm, which can be one leaf or both together"
            problems.append(row_problem(shared.place_of("width_mm"), message, "2(3'-0\") with the width of one leaf"))
    found = []
    for name in _PAIR:
        told = draft.leaves.get(name) or Told(shared.place if shared else draft.told.place)
        facts = dict(told.facts)
        for attribute, value in (shared.facts if shared else {}).items():
            if not agree(attribute, facts.setdefault(attribute, value), value) and shared is not None:
                problems.append(contradiction(shared, attribute, facts[attribute], "leaf", told.place_of(attribute)))
        found.append(_leaf(name, facts, told.place))
    return tuple(found)


def _single_in_pair(draft: Draft, place: FileRow) -> CellProblem:
    return row_problem(place, f"says leaf Single, but {draft.mark} is a pair", "Active or Inactive")


def _items(draft: Draft, positions: list[str], taken: Taken, problems: list[CellProblem]) -> Iterator[SurveyedItem]:
    pair = len(positions) == len(_PAIR)
    locks = [told for told, _ in draft.items if told.facts.get("kind") == "lock"]
    for told, row_position in draft.items:
        facts = dict(told.facts)
        deduced: dict[str, Any] = {}
        said = facts.get("leaf") or row_position or None
        if not positions:
            pass
        elif not pair:
            if said == "inactive":
                problems.append(row_problem(told.place, "says leaf Inactive, but there is one leaf only", "Single"))
            if "leaf" in facts:
                facts["leaf"] = positions[0]
            else:
                deduced["leaf"] = positions[0]
        elif said == "single":
            problems.append(_single_in_pair(draft, told.place))
        elif said is not None:
            facts["leaf"] = said
        # A pair's only lock is on the active leaf, by common practice: the inactive one is held by its bolts.
        elif facts.get("kind") in _OF_THE_LOCK and len(locks) <= 1:
            deduced["leaf"] = "active"
            taken.lock_in_active += facts["kind"] == "lock"
        yield SurveyedItem(facts, deduced, told.place.origin)
