"""Which later steps stand on an earlier one, so that it cannot be taken back alone.

Here belongs the judgement over journal entries only; taking back stands in `reverting`.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from hwsched.model.history import Entry
from hwsched.model.tables import REFERENCES, UNIQUE

Row = tuple[str, str]
"""Table and identifier."""


def dependents(step: Sequence[Entry], later: Iterable[Entry]) -> list[int]:
    """Find the later change sets that depend on a step.

    A later one depends on it when it touched the same column of the same row, or a row that the step made or removed;
    when it made a row stand on one that the step made; when it removed a row that the step's earlier values stand on;
    and when it took a mark, number or name that the step had set free.

    Parameters
    ----------
    step : sequence of Entry
        Entries of the step that is to be taken back.
    later : iterable of Entry
        Entries of all steps that came into force after it.

    Returns
    -------
    list of int
        Numbers of change sets, ascending.
    """
    columns: dict[Row, set[str]] = {}
    whole: set[Row] = set()
    made: set[Row] = set()
    needed: set[Row] = set()
    freed: set[tuple[str, tuple[str, ...], tuple[Any, ...]]] = set()
    for entry in step:
        row = (entry.entity, entry.row_id)
        if entry.action == "update":
            columns.setdefault(row, set()).update(entry.after or ())
        else:
            whole.add(row)
            if entry.action == "insert":
                made.add(row)
        needed.update(_stands_on(entry.entity, entry.before))
        freed.update(_unique_values(entry.entity, entry.before))
    found: set[int] = set()
    for entry in later:
        row = (entry.entity, entry.row_id)
        if (
            row in whole
            or (row in columns and (entry.action != "update" or not columns[row].isdisjoint(entry.after or ())))
            or not made.isdisjoint(_stands_on(entry.entity, entry.after))
            or not made.isdisjoint(_stands_on(entry.entity, entry.before))
            or (entry.action == "delete" and row in needed)
            or not freed.isdisjoint(_unique_values(entry.entity, entry.after))
        ):
            found.add(entry.change_set)
    return sorted(found)


def _stands_on(entity: str, values: Mapping[str, Any] | None) -> list[Row]:
    if values is None:
        return []
    return [
        (target, values[column])
        for column, target in REFERENCES.get(entity, {}).items()
        if values.get(column) is not None
    ]


def _unique_values(entity: str, values: Mapping[str, Any] | None) -> list[tuple[str, tuple[str, ...], tuple[Any, ...]]]:
    """Values that no two rows share, as far as the entry holds all of a group; the rest is left to the database."""
    if values is None:
        return []
    return [
        (entity, group, tuple(values[name] for name in group))
        for group in UNIQUE.get(entity, ())
        if all(values.get(name) is not None for name in group)
    ]
