"""Which later steps stand on an earlier one, so that it cannot be taken back alone.

Here belongs the search for them. It goes by the indexes over rows and openings, so that it costs what depends on the
step, however much was done since; taking back stands in `reverting`.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from sqlalchemy import Connection, select

from hwsched.model.bulk import among, chunks
from hwsched.model.journal.facts import Path, differing
from hwsched.model.journal.history import Entry, entries_after, newest, turns
from hwsched.model.tables import (
    CHANGE_ENTRY,
    CHANGE_REFERENCE,
    JOURNALLED,
    NAMED,
    OPENING_TABLE,
    REFERENCES,
    UNIQUE,
)

Row = tuple[str, str]
"""Table and identifier."""
Taken = tuple[str, tuple[str, ...], tuple[Any, ...]]
"""Table, columns that no two rows share, and their values."""


def dependents(connection: Connection, number: int, step: Sequence[Entry]) -> list[int]:
    """Find the later change sets that depend on a step.

    A later one depends on it when it touched the same fact of the same row, or a row that the step made or removed,
    or what belongs to an opening that it made; when it made a row stand on one that the step made, or ended that; when
    it removed a row that the step's earlier values stand on; and when it took a mark, number or name that the step had
    set free and still holds it. A step that was taken back since counts as never done.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    number : int
        Change set that is to be taken back.
    step : sequence of Entry
        Its entries.

    Returns
    -------
    list of int
        Numbers of change sets, ascending; of an edit that was done again, the edit's own.
    """
    if newest(connection) == number:
        return []
    facts: dict[Row, set[Path]] = {}
    whole: set[Row] = set()
    made: set[Row] = set()
    needed: set[Row] = set()
    freed: set[Taken] = set()
    for entry in step:
        row = (entry.entity, entry.row_id)
        if entry.action == "update":
            facts.setdefault(row, set()).update(differing(entry.before, entry.after))
        else:
            whole.add(row)
            if entry.action == "insert":
                made.add(row)
        needed.update(_stands_on(entry.entity, entry.before))
        freed.update(_unique_values(entry.entity, entry.before))
    touched = {row_id for rows in (facts, whole, needed) for _, row_id in rows}
    found: set[int] = set()
    for entry in entries_after(connection, number, CHANGE_ENTRY.c.row_id, touched):
        row = (entry.entity, entry.row_id)
        updated = entry.action == "update"
        met = row in facts and (not updated or not facts[row].isdisjoint(differing(entry.before, entry.after)))
        if met or row in whole or (row in needed and entry.action == "delete"):
            found.add(entry.change_set)
    found |= _on_made(connection, number, made)
    holders = _holders(connection, freed)
    for entry in entries_after(connection, number, CHANGE_ENTRY.c.row_id, holders):
        if not freed.isdisjoint(_unique_values(entry.entity, entry.after)):
            found.add(entry.change_set)
    return _counting(connection, number, found)


def _on_made(connection: Connection, number: int, made: Iterable[Row]) -> set[int]:
    """Find the change sets after one that made rows stand on those made by it, or ended that."""
    openings = {row_id for entity, row_id in made if entity == OPENING_TABLE.name}
    others = {row_id for entity, row_id in made if entity != OPENING_TABLE.name}
    of_openings = select(CHANGE_ENTRY.c.change_set).distinct().where(CHANGE_ENTRY.c.change_set > number)
    references = select(CHANGE_REFERENCE.c.change_set).distinct().where(CHANGE_REFERENCE.c.change_set > number)
    return {
        *(row[0] for row in among(connection, of_openings, CHANGE_ENTRY.c.opening_id, openings)),
        *(row[0] for row in among(connection, references, CHANGE_REFERENCE.c.row_id, others)),
    }


def _holders(connection: Connection, freed: Iterable[Taken]) -> set[str]:
    """Return the rows that hold now what was set free."""
    groups: dict[tuple[str, tuple[str, ...]], set[tuple[Any, ...]]] = {}
    for entity, group, values in freed:
        groups.setdefault((entity, group), set()).add(values)
    found: set[str] = set()
    for (entity, group), wanted in groups.items():
        table = JOURNALLED[entity]
        query = select(table.c.id, *(table.c[name] for name in group))
        rows = among(connection, query, table.c[group[0]], {values[0] for values in wanted})
        found.update(row[0] for row in rows if tuple(row[1:]) in wanted)
    return found


def _counting(connection: Connection, number: int, found: Iterable[int]) -> list[int]:
    """Leave out change sets that took each other back since: done and taken back after the step is as if never done."""
    said: dict[int, list[int]] = {turn: [] for turn in found}
    for chunk in chunks(said):
        of_these = turns(lambda turn, _, chunk=chunk: turn.in_(chunk))  # type: ignore[misc]
        for row in connection.execute(select(of_these)):
            said[row.number].append(row.target)
    edits = {edit for turn, targets in said.items() for edit in targets or [turn]}
    own: dict[int, list[tuple[int, str]]] = {edit: [(edit, "edit")] if edit > number else [] for edit in edits}
    for chunk in chunks(edits):
        of_them = turns(lambda turn, target, chunk=chunk: (turn > number) & target.in_(chunk))  # type: ignore[misc]
        for turn, kind, _, target in connection.execute(select(of_them).order_by(of_them.c.number)):
            own[target].append((turn, kind))
    return sorted(
        {turn[-1][0] if turn[-1][1] == "undo" else edit for edit, turn in own.items() if len(turn) % 2}
    )  # fmt: skip


def _stands_on(entity: str, values: Mapping[str, Any] | None) -> list[Row]:
    if values is None:
        return []
    found = [
        (target, values[column])
        for column, target in REFERENCES.get(entity, {}).items()
        if values.get(column) is not None
    ]
    if entity in NAMED and NAMED[entity][1] in values:
        target, row_id = (values[column] for column in NAMED[entity])
        found.append((target, row_id))
    return found


def _unique_values(entity: str, values: Mapping[str, Any] | None) -> list[Taken]:
    """Values that no two rows share, as far as the entry holds all of a group; the rest is left to the database."""
    if values is None:
        return []
    return [
        (entity, group, tuple(values[name] for name in group))
        for group in UNIQUE.get(entity, ())
        if all(values.get(name) is not None for name in group)
    ]
