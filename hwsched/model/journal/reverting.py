"""Taking steps back and doing them again: a change set's entries applied the other way round, as a new change set.

To do a step again is to take back what took it back; so nothing is ever removed from the journal, and versions rise.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import groupby
from typing import Any

from sqlalchemy import Connection, Table, func, select

from hwsched.model.bulk import rows_by_id
from hwsched.model.errors import (
    DuplicateValueError,
    MissingRowError,
    NothingToUndoError,
    NotUndoableError,
    StillUsedError,
)
from hwsched.model.journal.dependence import dependents
from hwsched.model.journal.facts import differing, flat, turned_back
from hwsched.model.journal.history import Entry, Standing, entries_of, spoken_of, standing, turns
from hwsched.model.journal.journal import Change
from hwsched.model.roles import BATCH, OTHERS_BATCH
from hwsched.model.tables import BLANK, CHANGE_SET, JOURNALLED

_NAMED = 12
"""So many later steps are named; the rest is counted."""


def last_done(connection: Connection, who: str) -> int:
    """Return the edit that a person takes back next: the own one in force that came into force last by the own hand.

    Raises
    ------
    NothingToUndoError
        Where no edit of that person is in force.
    """
    own, edit = CHANGE_SET.alias(), CHANGE_SET.alias()
    number = func.coalesce(own.c.target, own.c.number)
    turn = turns(lambda _, target: target == number, own)
    last = select(turn.c.kind).order_by(turn.c.number.desc()).limit(1).scalar_subquery()
    maker = select(edit.c.who).where(edit.c.number == number).scalar_subquery()
    query = (
        select(number)
        .where(own.c.who == who, own.c.kind != "undo", maker == who, func.coalesce(last, "redo") == "redo")
        .order_by(own.c.number.desc())
        .limit(1)
    )
    found = connection.execute(query).scalar()
    if found is None:
        raise NothingToUndoError(f"{who} has no step to take back; steps of others are taken back in the history")
    return int(found)


def last_undone(connection: Connection, who: str) -> int:
    """Return the edit that a person brings back next: taken back last by the own hand, since the last own edit.

    Raises
    ------
    NothingToUndoError
        Where there is none.
    """
    own, edit = CHANGE_SET.alias(), CHANGE_SET.alias()
    turn = turns(lambda _, target: target == own.c.target, own)
    last = select(func.max(turn.c.number)).scalar_subquery()
    edited = select(func.max(edit.c.number)).where(edit.c.who == who, edit.c.kind == "edit").scalar_subquery()
    query = (
        select(own.c.target)
        .where(
            own.c.who == who, own.c.kind == "undo", own.c.number == last, own.c.number > func.coalesce(edited, 0)
        )
        .order_by(own.c.number.desc())
        .limit(1)
    )  # fmt: skip
    found = connection.execute(query).scalar()
    if found is None:
        raise NothingToUndoError(f"{who} has nothing to do again: nothing was taken back since the last own edit")
    return int(found)


def revert(change: Change, number: int, *further: int) -> None:
    """Write the rows as they were before an edit came into force, or before it was taken back.

    Edits that were taken back, or done again, as one go as one from then on.

    Parameters
    ----------
    change : Change
        The undo or redo in the making; what it speaks of and its summary are set here.
    number : int
        Of the edit.
    *further : int
        Of edits that go with it, as one.

    Raises
    ------
    NotUndoableError
        Where later steps depend on them, which are named with their persons; where one is no edit in force, or none
        that was taken back; where the rows are not as the edits left them. Nothing is changed then.
    NotAllowedError
        Where the person may not do what one of the steps did.
    """
    steps = _steps(change, [number, *further])
    named = [step.edit for step in steps]
    for step in steps:
        change.require(OTHERS_BATCH if step.verb == BATCH and step.who != change.who else step.verb)
    change.target, change.further = named[0], named[1:]
    what = f"step {named[0]}" if len(named) == 1 else f"steps {', '.join(map(str, named))}"
    change.summary = f"{'Take back' if change.kind == 'undo' else 'Do again'} {what}: {steps[0].summary}"
    # The last first: what was written later may stand on what was written earlier.
    turns = sorted({step.last for step in steps}, reverse=True)
    entries = {turn: entries_of(change.connection, turn) for turn in turns}
    # Before anything is written, so that a refusal names who has to be asked and leaves no trace.
    _check_alone(change, what, steps, entries)
    for turn in turns:
        _write_back(change, what, entries[turn][::-1])


def later_steps(connection: Connection, steps: Sequence[Standing], entries: Mapping[int, Sequence[Entry]]) -> list[int]:
    """Return the later steps that depend on steps which go as one, ascending.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    steps : sequence of Standing
        That go.
    entries : mapping of int to sequence of Entry
        Of the change sets that brought them where they stand.
    """
    own = {step.edit for step in steps} | entries.keys()
    return sorted({each for turn, held in entries.items() for each in dependents(connection, turn, held)} - own)


def _steps(change: Change, numbers: Sequence[int]) -> list[Standing]:
    """Return how edits stand, ascending, with those that went as one with them before."""
    back = change.kind == "undo"
    found: dict[int, Standing] = {}
    waiting = list(numbers)
    while waiting:
        number = waiting.pop()
        if number in found:
            continue
        step = standing(change.connection, number)
        if step is None or step.in_force != back:
            said = "an edit in force" if back else "an edit that is taken back"
            raise NotUndoableError(f"step {number} is not {said}")
        found[number] = step
        waiting += spoken_of(change.connection, step.last)
    return [found[number] for number in sorted(found)]


def _write_back(change: Change, what: str, entries: Sequence[Entry]) -> None:
    try:
        for table, action, group in _runs(entries):
            _check_columns(what, table, group)
            if action == "insert":
                _take_out(change, what, table, group)
            elif action == "delete":
                change.restore(table, [entry.before for entry in group if entry.before is not None])
            else:
                change.update(table, _turned_back(change.connection, what, table, group))
    except (DuplicateValueError, MissingRowError, StillUsedError) as error:
        raise NotUndoableError(f"{what} cannot be taken back any more: {error}") from error


def _check_alone(change: Change, what: str, steps: Sequence[Standing], entries: Mapping[int, Sequence[Entry]]) -> None:
    """Refuse where later steps depend on them, and name those with their persons."""
    later = later_steps(change.connection, steps, entries)
    if not later:
        return
    query = select(CHANGE_SET.c.number, CHANGE_SET.c.who, CHANGE_SET.c.summary)
    rows = list(change.connection.execute(query.where(CHANGE_SET.c.number.in_(later[:_NAMED])).order_by("number")))
    named = "; ".join(f"{row.number} of {row.who} ({row.summary})" for row in rows)
    more = f"; and {len(later) - _NAMED} more" if len(later) > _NAMED else ""
    done = "taken back" if change.kind == "undo" else "done again"
    raise NotUndoableError(
        f"{what} ({steps[0].summary}) cannot be {done} alone, later steps depend on it: {named}{more}", later
    )


def _take_out(change: Change, what: str, table: Table, group: list[Entry]) -> None:
    gone = {row["id"]: row for row in change.take_out(table, [entry.row_id for entry in group])}
    # Columns that a migration added since hold what a new row holds.
    blank = {name: value for name, value in BLANK[table.name].items() if value not in (None, {})}
    for entry in group:
        row = gone.get(entry.row_id)
        # Both without their versions, which rise with every step there and back.
        if row is None or {**row, "version": 0} != {**blank, **(entry.after or {}), "version": 0}:
            raise _changed(what, table)


def _turned_back(
    connection: Connection, what: str, table: Table, group: list[Entry]
) -> list[tuple[str, dict[str, Any]]]:
    """Return the earlier values of rows that are as the entries left them: what was written since is never lost."""
    names = sorted({name for entry in group for name in entry.after or ()})
    rows = rows_by_id(connection, table, [table.c[name] for name in names], [entry.row_id for entry in group])
    edits = []
    for entry in group:
        before, after, row = entry.before or {}, entry.after or {}, rows.get(entry.row_id)
        if row is None:
            raise _changed(what, table)
        present = dict(zip(names, row[1:], strict=True))
        # Fact by fact within what a column holds: another fact of the same mapping may have changed since, and stays.
        if any(flat(present).get(path) != flat(after).get(path) for path in differing(before, after)):
            raise _changed(what, table)
        edits.append((entry.row_id, {name: turned_back(present[name], after[name], before[name]) for name in after}))
    return edits


def _check_columns(what: str, table: Table, group: list[Entry]) -> None:
    for entry in group:
        for values in (entry.before, entry.after):
            if values and not values.keys() <= BLANK[table.name].keys():
                # A migration dropped or renamed a column without rewriting the journal.
                unknown = ", ".join(sorted(values.keys() - BLANK[table.name].keys()))
                raise NotUndoableError(f"{what}: this version does not know facts that it holds: {unknown}")


def _changed(what: str, table: Table) -> NotUndoableError:
    named = str(table.name).replace("_", " ")
    return NotUndoableError(f"{what} cannot be taken back: its {named} has changed since")


def _runs(entries: Iterable[Entry]) -> Iterator[tuple[Table, str, list[Entry]]]:
    """Cut entries into runs of the same table and action, a row at most once in each."""
    # Only neighbours are put together: sorting them by table would break the order in which rows stand on each other.
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
