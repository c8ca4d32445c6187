"""Openings that the building has no more: retired, and brought back.

A retired opening keeps its facts, choices, waivers, places, files and history, and nothing that works on openings sees
it: no fit, check, list, count or print. Its cable run is taken off, as it is of one that is removed, and laid again
when it comes back.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Any, Final

from sqlalchemy import select

from hwsched.calc.power.circuit_tree import SUPPLY as AT_SUPPLY
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.journal.history import RowChange, changes_of, entries_of
from hwsched.model.journal.journal import Change
from hwsched.model.project import Project
from hwsched.model.queries import opening_ids, retired_openings
from hwsched.model.tables import BUILDING, CIRCUIT_TABLE, IN_USE, LEVEL, OPENING_TABLE, RUN_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.power.connecting import take_off
from hwsched.operations.survey.accepted_values import row_there
from hwsched.telling.natural import natural
from hwsched.telling.nearest import nearest

_NAMED: Final = 8
"""Marks that the name of a step says."""
NO_REASON: Final = "the building has it no more"


def retire_openings(
    project: Project, ids: Sequence[str], *, who: str, why: str = "", base: int | None = None
) -> Changes:
    """Retire openings, as one step.

    Parameters
    ----------
    project : Project
        Open project.
    ids : sequence of str
        Openings that the building has no more.
    who : str
        For the journal.
    why : str
        Reason, for people.
    base : int, optional
        The newest change set that was seen.

    Raises
    ------
    MissingRowError, ConflictError
        And nothing is changed.
    """
    with project.change("retire", "Retire openings", who, base=base) as change:
        marks = [row_there(change, OPENING_TABLE, each).mark for each in ids]
        change.summary = f"Retire {_named(marks)}"
        retire(change, ids, why)
    return Changes.of(change)


def retire(change: Change, ids: Collection[str], why: str = "") -> None:
    """Retire openings in a change set that is open."""
    take_off(change, list(ids))
    change.update(OPENING_TABLE, [(each, {"retired": why.strip() or NO_REASON}) for each in ids])


def restore_openings(project: Project, ids: Sequence[str], *, who: str, base: int | None = None) -> Changes:
    """Bring retired openings back as they were, with their cable runs where the circuit is still there; one step.

    Raises
    ------
    MissingRowError, ConflictError, ValueRefusedError
        And nothing is changed.
    """
    with project.change("restore", "Bring openings back", who, base=base) as change:
        marks = [row_there(change, OPENING_TABLE, each).mark for each in ids]
        change.summary = f"Bring back {_named(marks)}"
        restore(change, ids)
    return Changes.of(change)


def restore(change: Change, ids: Collection[str]) -> None:
    """Bring retired openings back in a change set that is open; raises ValueRefusedError for one that is there."""
    for each in ids:
        row = row_there(change, OPENING_TABLE, each)
        if row.retired is None:
            raise ValueRefusedError("opening", f"{row.mark} is not retired")
    change.update(OPENING_TABLE, [(each, {"retired": None}) for each in ids])
    _lay_again(change, ids)


@dataclass(frozen=True, slots=True)
class Retired:
    """An opening that rests."""

    id: str
    mark: str
    building: str | None
    level: str | None
    why: str


def retired(project: Project) -> list[Retired]:
    """Return the openings that rest, in the order in which people count."""
    query = (
        select(
            OPENING_TABLE.c.id, OPENING_TABLE.c.mark, BUILDING.c.name, LEVEL.c.name.label("level"),
            OPENING_TABLE.c.retired,
        )
        .outerjoin(LEVEL, OPENING_TABLE.c.level_id == LEVEL.c.id)
        .outerjoin(BUILDING, LEVEL.c.building_id == BUILDING.c.id)
        .where(~IN_USE)
    )  # fmt: skip
    with project.reading() as connection:
        found = [Retired(*row) for row in connection.execute(query)]
    return sorted(found, key=lambda each: (each.building or "", each.level or "", natural(each.mark)))


def retired_of_marks(project: Project, marks: Sequence[str]) -> list[str]:
    """Return identifiers of the retired openings with these marks; raises MissingRowError."""
    with project.reading() as connection:
        known, there = retired_openings(connection), opening_ids(connection)
    missing = [mark for mark in marks if mark not in known]
    if missing:
        near = dict.fromkeys(name for mark in missing for name in nearest(mark, known, 1))
        present = [mark for mark in missing if mark in there]
        said = f"{', '.join(present)} is not retired" if present else f"no opening {', '.join(missing)} is retired"
        raise MissingRowError(said + (f"; nearest: {', '.join(near)}" if near and not present else ""))
    return list(dict.fromkeys(known[mark] for mark in marks))


def _named(marks: Sequence[str]) -> str:
    named = sorted(marks, key=natural)
    more = f" and {len(named) - _NAMED} more" if len(named) > _NAMED else ""
    return ("opening " if len(named) == 1 else f"{len(named)} openings ") + ", ".join(named[:_NAMED]) + more


def _lay_again(change: Change, ids: Collection[str]) -> None:
    """Lay the cable runs again that went as openings were retired; wire beyond them that was moved moves back."""
    steps: dict[int, set[str]] = {}
    for each in ids:
        last = _retired_in(changes_of(change.connection, each, str(OPENING_TABLE.name)))
        if last is not None:
            steps.setdefault(last, set()).add(each)
    circuits = set(change.connection.execute(select(CIRCUIT_TABLE.c.id)).scalars())
    for step, here in steps.items():
        entries = [each for each in entries_of(change.connection, step) if each.entity == RUN_TABLE.name]
        went = [each.before or {} for each in entries if each.action == "delete"]
        back = [row for row in went if row.get("opening_id") in here and row.get("circuit_id") in circuits]
        if not back:
            continue
        nodes = _nodes(change) | {row["to_node"] for row in back}
        change.restore(RUN_TABLE, [row for row in back if row["from_node"] in nodes])
        if len(back) < len(went):
            # Others of that step stay away: what was laid past all of them cannot tell which it passed.
            continue
        runs = {row.id: row._mapping for row in change.connection.execute(select(RUN_TABLE))}
        moved = [
            (each.row_id, dict(each.before or {}))
            for each in entries
            if each.action == "update" and each.row_id in runs and _still(runs[each.row_id], each.after or {})
        ]
        change.update(RUN_TABLE, moved)


def _nodes(change: Change) -> set[str]:
    return {AT_SUPPLY, *change.connection.execute(select(RUN_TABLE.c.to_node)).scalars()}


def _still(row: Any, after: Any) -> bool:
    return all(row[name] == value for name, value in after.items())


def _retired_in(changes: Sequence[RowChange]) -> int | None:
    """Return the step in which an opening was retired last."""
    found = [each for each in changes if (each.after or {}).get("retired") is not None]
    return found[-1].change_set if found else None
