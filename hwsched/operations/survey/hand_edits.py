"""Which facts that a file would change were set by hand since a file gave them, and what becomes of these.

A file that says what it said before has no news: what was set by hand stands, and nothing is asked. One that says
something new is shown beside what was set by hand, which stands unless the person says otherwise. What was entered by
hand altogether, of which no file ever spoke, takes what the file says, and it is shown whose word that replaces.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

from sqlalchemy.engine import Connection

from hwsched.exchange.survey.decisions import answered
from hwsched.exchange.survey.difference import FactChange, OpeningChange, Preview
from hwsched.exchange.survey.facts import Decisions, is_same
from hwsched.model.journal.history import RowChange, changes_of_rows
from hwsched.model.queries import read_levels
from hwsched.model.time_zone import second_of

_FROM_FILES: Final = frozenset({"import-survey", "decide-survey"})
"""Steps in which a file's word is taken; a person's word on it makes it no word of the person."""
_PLACE: Final = ("building", "level")


def settle_by_hand(connection: Connection, preview: Preview, decisions: Decisions) -> Preview:
    """Take out of a preview what was set by hand and stands, and put in what blank cells shall empty.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    preview : Preview
        As the file and the project differ.
    decisions : Decisions
        In which facts the file goes before what was set by hand, and which facts blank cells empty.
    """
    rows = {fact.row_id for opening in preview.changed for fact in opening.facts if fact.before is not None}
    rows |= {fact.row_id for _, fact in preview.blank}
    if not rows:
        return preview
    history: dict[tuple[str, str], list[RowChange]] = {}
    for change in changes_of_rows(connection, rows):
        history.setdefault((change.entity, change.row_id), []).append(change)
    levels = {level_id: place for place, level_id in read_levels(connection).items()}
    changed: list[OpeningChange] = []
    unchanged = list(preview.unchanged)
    stays: list[tuple[str, FactChange]] = []
    for opening in preview.changed:
        facts: list[FactChange] = []
        for fact in opening.facts:
            state = last_state(history.get((fact.entity, fact.row_id), ()), fact.attribute, levels)
            hand, said = state.hand, state.said
            if hand is None or fact.before is None:
                origin = state.source.origin if state.source is not None and fact.before is not None else None
                facts.append(replace(fact, given=origin) if origin else fact)
                continue
            of_hand = replace(fact, source=f"{hand.who}, {second_of(hand.when)}")
            if _over_hand(decisions, opening.mark, fact) or not _came_from_file(history[fact.entity, fact.row_id]):
                facts.append(of_hand)
            # A file that says what it said before has no news.
            elif said is None or not is_same(said, fact.after):
                stays.append((opening.mark, of_hand))
        if facts or opening.new_leaves or opening.new_items:
            changed.append(opening if list(opening.facts) == facts else replace(opening, facts=tuple(facts)))
        else:
            unchanged.append(opening.mark)
    # A cell that was never filled is no news beside what was set by hand, and what was no blank cell takes.
    blank = [
        (mark, fact)
        for mark, fact in preview.blank
        if _told(history.get((fact.entity, fact.row_id), ()), fact.attribute, levels)[0] is None
    ]
    emptied: dict[str, list[FactChange]] = {}
    for mark, fact in blank:
        if _empties(decisions, mark, fact):
            emptied.setdefault(mark, []).append(fact)
    return replace(
        preview,
        changed=tuple(_with_emptied(changed, emptied)),
        unchanged=tuple(mark for mark in unchanged if mark not in emptied),
        blank=tuple(each for each in blank if not _empties(decisions, *each)),
        by_hand=tuple(stays),
    )


def _came_from_file(changes: Sequence[RowChange]) -> bool:
    return changes[0].verb in _FROM_FILES


def _is_named(fact: FactChange, names: Collection[str]) -> bool:
    return "all" in names or fact.attribute in names


def _over_hand(decisions: Decisions, mark: str, fact: FactChange) -> bool:
    said = answered(decisions, "by-hand", mark, fact.attribute, fact.where)
    return said == "file" if said is not None else _is_named(fact, decisions.over_hand)


def _empties(decisions: Decisions, mark: str, fact: FactChange) -> bool:
    said = answered(decisions, "blank", mark, fact.attribute, fact.where)
    return said == "file" if said is not None else _is_named(fact, decisions.emptied)


@dataclass(frozen=True, slots=True)
class FactState:
    """A fact at one time."""

    value: Any
    source: RowChange | None
    """The step that gave it this value; None while nothing did."""
    said: Any
    """What a file said last."""

    @property
    def hand(self) -> RowChange | None:
        """Return the edit by hand that gave it; None where a file did."""
        return None if self.source is None or self.source.verb in _FROM_FILES else self.source


def _told(
    changes: Iterable[RowChange], name: str, levels: Mapping[str, tuple[Any, Any]]
) -> tuple[RowChange | None, Any]:
    """Return the edit by hand that gave a fact its value, None where a file did, and what a file said last."""
    last = last_state(changes, name, levels)
    return last.hand, last.said


def last_state(changes: Iterable[RowChange], name: str, levels: Mapping[str, tuple[Any, Any]]) -> FactState:
    """Return how a fact stands, from all that happened to its row, the oldest first.

    Parameters
    ----------
    changes : iterable of RowChange
        To the row.
    name : str
        Of the fact; building and level of an opening included.
    levels : mapping of str to (str, str)
        Building and level by the level's identifier.
    """
    states = [FactState(None, None, None)]
    for change in changes:
        found, value = _value_in(change, name, levels)
        if not found:
            continue
        if change.kind != "edit":
            # Taken back or brought back: it stands again as it stood when it held this value last.
            states.append(next((each for each in reversed(states[:-1]) if is_same(each.value, value)), states[0]))
        elif change.verb in _FROM_FILES:
            states.append(FactState(value, change, value))
        else:
            states.append(FactState(value, change, states[-1].said))
    return states[-1]


def _value_in(change: RowChange, name: str, levels: Mapping[str, tuple[Any, Any]]) -> tuple[bool, Any]:
    after, before = change.after or {}, change.before or {}
    if name in after:
        return True, after[name]
    if name in _PLACE and change.entity == "opening" and "level_id" in after:
        return True, levels.get(after["level_id"], (None, None))[_PLACE.index(name)]
    now, was = (each.get("extra") or {} for each in (after, before))
    if "extra" in after and (name in now or name in was) and now.get(name) != was.get(name):
        return True, now.get(name)
    return False, None


def _with_emptied(changed: list[OpeningChange], emptied: dict[str, list[FactChange]]) -> Iterable[OpeningChange]:
    left = dict(emptied)
    for opening in changed:
        more = left.pop(opening.mark, [])
        yield replace(opening, facts=(*opening.facts, *more)) if more else opening
    for mark, facts in left.items():
        opening_id = next((fact.row_id for fact in facts if fact.entity == "opening"), "")
        yield OpeningChange(mark, opening_id, tuple(facts))
