"""Taking steps back and doing them again: the entries of a change set applied the other way round."""

from collections.abc import Iterable
from itertools import groupby

from sqlalchemy import Connection, select

from hwsched.model.bulk import among
from hwsched.model.errors import MissingRowError, NothingToUndoError, NotUndoableError
from hwsched.model.history import Entry, entries_of, stack
from hwsched.model.journal import Change
from hwsched.model.tables import CHANGE_ENTRY, CHANGE_SET, JOURNALLED


def last_done(connection: Connection) -> int:
    """Return the edit that undo takes back; raises NothingToUndoError."""
    done = stack(connection).done
    if not done:
        raise NothingToUndoError("there is nothing to take back")
    return done[-1]


def last_undone(connection: Connection) -> int:
    """Return the edit that redo brings back; raises NothingToUndoError."""
    undone = stack(connection).undone
    if not undone:
        raise NothingToUndoError("there is nothing to do again")
    return undone[-1]


def summary_of(connection: Connection, number: int) -> str:
    """Return the sentence of a step; raises MissingRowError."""
    found = connection.execute(select(CHANGE_SET.c.summary).where(CHANGE_SET.c.number == number)).scalar()
    if found is None:
        raise MissingRowError(f"there is no step {number}")
    return str(found)


def check_undoable(connection: Connection, number: int) -> None:
    """Refuse to take back a step on which later ones depend.

    A later step in force depends on it when it touched the same row: the same column of it, or the row as a whole.

    Raises
    ------
    NotUndoableError
        Names the later steps; or says that the step is no edit in force.
    """
    in_force = stack(connection).done
    if number not in in_force:
        raise NotUndoableError(f"step {number} is not an edit in force")
    mine = {entry.row_id: entry for entry in entries_of(connection, number)}
    later = [done for done in in_force if done > number]
    if not later:
        return
    dependents: set[int] = set()
    query = select(CHANGE_ENTRY.c.row_id, CHANGE_ENTRY.c.change_set, CHANGE_ENTRY.c.action, CHANGE_ENTRY.c.after).where(
        CHANGE_ENTRY.c.change_set.in_(later)
    )
    for row in among(connection, query, CHANGE_ENTRY.c.row_id, list(mine)):
        entry = mine[row.row_id]
        if (
            "update" not in (entry.action, row.action)
            or entry.action != row.action
            or (
                entry.after is not None
                and row.after is not None
                and any(f'"{name}":' in row.after for name in entry.after)
            )
        ):
            dependents.add(row.change_set)
    inserted = {entry.row_id for entry in mine.values() if entry.action == "insert"}
    if inserted:
        owned = select(CHANGE_ENTRY.c.opening_id, CHANGE_ENTRY.c.change_set).where(CHANGE_ENTRY.c.change_set.in_(later))
        dependents |= {row.change_set for row in among(connection, owned, CHANGE_ENTRY.c.opening_id, list(inserted))}
    if dependents:
        steps = ", ".join(str(step) for step in sorted(dependents))
        raise NotUndoableError(
            f"step {number} cannot be taken back alone: later steps depend on it: {steps}", sorted(dependents)
        )


def apply_backwards(change: Change, number: int) -> None:
    """Write the rows as they were before a step."""
    entries = entries_of(change.connection, number)
    entries.reverse()
    for entity, action, group in _runs(entries):
        table = JOURNALLED[entity]
        if action == "insert":
            change.delete(table, [entry.row_id for entry in group])
        elif action == "delete":
            change.restore(table, [entry.before for entry in group if entry.before is not None])
        else:
            change.update(table, [(entry.row_id, entry.before) for entry in group if entry.before is not None])


def apply_again(change: Change, number: int) -> None:
    """Write the rows as they were after a step."""
    for entity, action, group in _runs(entries_of(change.connection, number)):
        table = JOURNALLED[entity]
        if action == "insert":
            change.restore(table, [entry.after for entry in group if entry.after is not None])
        elif action == "delete":
            change.delete(table, [entry.row_id for entry in group])
        else:
            change.update(table, [(entry.row_id, entry.after) for entry in group if entry.after is not None])


def _runs(entries: Iterable[Entry]) -> Iterable[tuple[str, str, list[Entry]]]:
    """Cut entries into runs of the same table and action, a row at most once in each."""
    for (entity, action), group in groupby(entries, key=lambda entry: (entry.entity, entry.action)):
        run: list[Entry] = []
        seen: set[str] = set()
        for entry in group:
            if entry.row_id in seen:
                yield entity, action, run
                run, seen = [], set()
            run.append(entry)
            seen.add(entry.row_id)
        yield entity, action, run
