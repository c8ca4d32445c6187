"""Which existing items a row of a survey sheet describes: the lock in the opening's own columns, and others.

On the row of an opening the columns of the lock speak of its lock, whatever item stands beside them; on a row that says
nothing of the opening and its leaf they speak of the item of that row.
"""

from collections.abc import Iterator
from typing import Any, Final

from hwsched.exchange.problems import CellProblem
from hwsched.exchange.survey.facts import agree
from hwsched.exchange.survey.row import Row
from hwsched.exchange.survey.told import Draft, Told, row_problem, tell

_KIND: Final = "kind"


def take_items(draft: Draft, row: Row, *, again: bool) -> Iterator[CellProblem]:
    """Take the existing items of a row into its opening; yields what does not fit.

    Parameters
    ----------
    draft : Draft
        The opening.
    row : Row
        What the row says.
    again : bool
        Whether the opening has earlier rows.
    """
    kind = row.item.get(_KIND)
    position = row.position or ""
    for slot, facts in row.item_slots.items():
        draft.items.append((Told(row.place, {**facts, _KIND: slot}), position))
    if kind is None:
        if row.item and not row.lock:
            message = "says something of an existing item, but not what it is"
            yield row_problem(row.place, message, "the item, such as Closer, or Other")
        elif row.lock:
            yield from _take_lock(draft, row, {**row.item, **row.lock}, position)
        return
    own = not again or bool(row.opening or row.leaf)
    if row.lock and kind != "lock" and own:
        # On the opening's own row the columns of the lock speak of the lock, whatever item stands beside it.
        yield from _take_lock(draft, row, dict(row.lock), position)
        draft.items.append((Told(row.place, row.item), position))
        return
    facts = {**row.item, **row.lock}
    if kind == "lock" and (told := _lock_to_complete(draft, facts, position)) is not None:
        told.add(row.place, {name: value for name, value in facts.items() if name not in told.facts})
        return
    if again and (same := _same_again(draft, facts, position)) is not None:
        message = f"is the same existing item as in row {same.place.row}, at the same place"
        yield row_problem(row.place, message, "each item once")
        return
    told = Told(row.place, facts, [(row.place, facts)])
    draft.items.append((told, position))
    if kind == "lock" and own:
        draft.locks.setdefault(position, told)


def _take_lock(draft: Draft, row: Row, facts: dict[str, Any], position: str) -> Iterator[CellProblem]:
    told = draft.locks.get(position)
    if told is not None:
        yield from tell(told, facts, "item", row.place)
        return
    facts = {**facts, _KIND: "lock"}
    told = draft.locks[position] = Told(row.place, facts, [(row.place, facts)])
    draft.items.append((told, position))


def _lock_to_complete(draft: Draft, facts: dict[str, Any], position: str) -> Told | None:
    """Return the lock that the opening's own columns describe, where a row of a lock gives its place."""
    position = position or facts.get("leaf", "")
    told = draft.locks.get(position)
    if told is None and len(draft.locks) == 1 and ("" in draft.locks or position in ("", "single")):
        (told,) = draft.locks.values()
    if told is None or any(name in told.facts for name in ("face", "x_mm", "y_mm")):
        return None
    return told if all(agree(name, told.facts.get(name, value), value) for name, value in facts.items()) else None


def _same_again(draft: Draft, facts: dict[str, Any], position: str) -> Told | None:
    """Return an earlier item that is the same in every fact, its place among them."""
    # Two closers without a place may be two closers; the same item at the same place twice is a slip.
    if "x_mm" not in facts or "y_mm" not in facts:
        return None
    return next((told for told, held in draft.items if held == position and told.facts == facts), None)
