"""Taking steps back and doing them again: a change set's entries applied the other way round, as a new change set.

To do a step again is to take back what took it back; so nothing is ever removed from the journal, and versions rise.
"""

from collections.abc import Iterable, Iterator
from itertools import groupby

from sqlalchemy import Connection, Table, select

from hwsched.model.bulk import rows_by_id
from hwsched.model.dependence import dependents
from hwsched.model.errors import (
    DuplicateValueError,
    MissingRowError,
    NothingToUndoError,
    NotUndoableError,
    StillUsedError,
)
from hwsched.model.history import Entry, entries_among, entries_of, stack
from hwsched.model.journal import Change
from hwsched.model.tables import BLANK, CHANGE_SET, JOURNALLED


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

    Parameters
    ----------
    connection : Connection
        In the transaction that will take it back.
    number : int
        Of an edit.

    Raises
    ------
    NotUndoableError
        Names the later steps; or says that the step is no edit in force.
    """
    steps = stack(connection)
    if number not in steps.done:
        raise NotUndoableError(f"step {number} is not an edit in force")
    later = steps.done[steps.done.index(number) + 1 :]
    if not later:
        return
    edits = {steps.last[each]: each for each in later}
    found = dependents(entries_of(connection, steps.last[number]), entries_among(connection, edits))
    if found:
        edited = sorted(edits[each] for each in found)
        named = "; ".join(f"{each} ({summary_of(connection, each)})" for each in edited)
        raise NotUndoableError(f"step {number} cannot be taken back alone, later steps depend on it: {named}", edited)


def revert(change: Change, number: int) -> None:
    """Write the rows as they were before an edit came into force, or before it was taken back.

    Parameters
    ----------
    change : Change
        The undo or redo in the making.
    number : int
        Of the edit.

    Raises
    ------
    NotUndoableError
        Where the rows are not as the edit left them; nothing is changed then.
    """
    entries = entries_of(change.connection, stack(change.connection).last[number])
    entries.reverse()
    try:
        for table, action, group in _runs(entries):
            _check_columns(number, table, group)
            if action == "insert":
                _take_out(change, number, table, group)
            elif action == "delete":
                change.restore(table, [entry.before for entry in group if entry.before is not None])
            else:
                _check_values(change.connection, number, table, group)
                change.update(table, [(entry.row_id, entry.before) for entry in group if entry.before is not None])
    except (DuplicateValueError, MissingRowError, StillUsedError) as error:
        raise NotUndoableError(f"step {number} cannot be taken back any more: {error}") from error


def _take_out(change: Change, number: int, table: Table, group: list[Entry]) -> None:
    gone = {row["id"]: row for row in change.take_out(table, [entry.row_id for entry in group])}
    # Columns that a migration added since hold what a new row holds.
    blank = {name: value for name, value in BLANK[table.name].items() if value not in (None, {})}
    for entry in group:
        row = gone.get(entry.row_id)
        # Both without their versions, which rise with every step there and back.
        if row is None or {**row, "version": 0} != {**blank, **(entry.after or {}), "version": 0}:
            raise _changed(number, table)


def _check_values(connection: Connection, number: int, table: Table, group: list[Entry]) -> None:
    """See that every row is as the entries left it: what was written since must never be lost in silence."""
    names = sorted({name for entry in group for name in entry.after or ()})
    rows = rows_by_id(connection, table, [table.c[name] for name in names], [entry.row_id for entry in group])
    at = {name: index + 1 for index, name in enumerate(names)}
    for entry in group:
        row = rows.get(entry.row_id)
        if row is None or any(row[at[name]] != value for name, value in (entry.after or {}).items()):
            raise _changed(number, table)


def _check_columns(number: int, table: Table, group: list[Entry]) -> None:
    for entry in group:
        for values in (entry.before, entry.after):
            if values and not values.keys() <= BLANK[table.name].keys():
                # A migration dropped or renamed a column without rewriting the journal.
                unknown = ", ".join(sorted(values.keys() - BLANK[table.name].keys()))
                raise NotUndoableError(f"step {number} holds facts that this version does not know: {unknown}")


def _changed(number: int, table: Table) -> NotUndoableError:
    what = str(table.name).replace("_", " ")
    return NotUndoableError(f"step {number} cannot be taken back: its {what} has changed since")


def _runs(entries: Iterable[Entry]) -> Iterator[tuple[Table, str, list[Entry]]]:
    """Cut entries into runs of the same table and action, a row at most once in each."""
    for (entity, action), group in groupby(entries, key=lambda entry: (entry.entity, entry.action)):
        run: list[Entry] = []
        seen: set[str] = set()
        for entry in group:
            if entry.row_id in seen:
                yield JOURNALLED[entity], action, run
                run, seen = [], set()
            run.append(entry)
            seen.add(entry.row_id)
        yield JOURNALLED[entity], action, run
