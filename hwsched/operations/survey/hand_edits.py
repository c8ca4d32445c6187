"""Which facts that a file would change were set by hand since a file gave them, and what becomes of these.

A file that says what it said before has no news: what was set by hand stands, and nothing is asked. One that says
something new is shown beside what was set by hand, which stands unless the person says otherwise. What was entered by
hand altogether, of which no file ever spoke, takes what the file says, and it is shown whose word that replaces.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Any, Final

from sqlalchemy.engine import Connection

from hwsched.exchange.survey.difference import FactChange, OpeningChange, Preview
from hwsched.exchange.survey.facts import Decisions, is_same
from hwsched.model.history import RowChange, changes_of_rows
from hwsched.model.queries import read_levels

_FROM_FILES: Final = "import-survey"
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
    wanted = [each for each in preview.blank if _is_named(each[1], decisions.emptied)]
    rows = {fact.row_id for opening in preview.changed for fact in opening.facts if fact.before is not None}
    rows |= {fact.row_id for _, fact in wanted}
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
            hand, said = _told(history.get((fact.entity, fact.row_id), ()), fact.attribute, levels)
            if hand is None or fact.before is None:
                facts.append(fact)
                continue
            of_hand = replace(fact, source=f"{hand.who}, {hand.when}")
            if _is_named(fact, decisions.over_hand) or not _came_from_file(history[fact.entity, fact.row_id]):
                facts.append(of_hand)
            # A file that says what it said before has no news.
            elif said is None or not is_same(said, fact.after):
                stays.append((opening.mark, of_hand))
        if facts or opening.new_leaves or opening.new_items:
            changed.append(opening if list(opening.facts) == facts else replace(opening, facts=tuple(facts)))
        else:
            unchanged.append(opening.mark)
    emptied = {
        mark: [fact for _, fact in facts]
        for mark, facts in groupby(
            (
                each
                for each in wanted
                # What was set by hand no blank cell takes.
                if _told(history.get((each[1].entity, each[1].row_id), ()), each[1].attribute, levels)[0] is None
            ),
            key=lambda each: each[0],
        )
    }
    done = {(fact.row_id, fact.attribute) for facts in emptied.values() for fact in facts}
    return replace(
        preview,
        changed=tuple(_with_emptied(changed, emptied)),
        unchanged=tuple(mark for mark in unchanged if mark not in emptied),
        blank=tuple(each for each in preview.blank if (each[1].row_id, each[1].attribute) not in done),
        by_hand=tuple(stays),
    )


def _came_from_file(changes: Sequence[RowChange]) -> bool:
    return changes[0].verb == _FROM_FILES


def _is_named(fact: FactChange, names: Collection[str]) -> bool:
    return "all" in names or fact.attribute in names


@dataclass(frozen=True, slots=True)
class _State:
    """A fact at one time: its value, the edit by hand that gave it (None: a file did), and what a file said last."""

    value: Any
    hand: RowChange | None
    said: Any


def _told(
    changes: Iterable[RowChange], name: str, levels: Mapping[str, tuple[Any, Any]]
) -> tuple[RowChange | None, Any]:
    """Return the edit by hand that gave a fact its value, None where a file did, and what a file said last."""
    states = [_State(None, None, None)]
    for change in changes:
        found, value = _value_in(change, name, levels)
        if not found:
            continue
        if change.kind != "edit":
            # Taken back or brought back: it stands again as it stood when it held this value last.
            states.append(next((each for each in reversed(states[:-1]) if is_same(each.value, value)), states[0]))
        elif change.verb == _FROM_FILES:
            states.append(_State(value, None, value))
        else:
            states.append(_State(value, change, states[-1].said))
    return states[-1].hand, states[-1].said


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
