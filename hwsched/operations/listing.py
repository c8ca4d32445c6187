"""Reading the rows of a list: of all openings or of those that are asked, sorted as people count."""

from __future__ import annotations

from functools import cache

from hwsched.model.errors import DamagedProjectError
from hwsched.model.file.plain_reading import plain_rows, told
from hwsched.operations.collector import collector_paused
from hwsched.operations.lists import FROM_PLACE, OF_BUILDING, OF_LEVEL, OPENING_ID, SORTED, ListKind
from hwsched.telling.natural import natural

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable, Collection
    from contextlib import AbstractContextManager
    from typing import Any

    from hwsched.model.project import Project


def list_rows(
    kind: ListKind,
    address: str,
    opened: Callable[[], AbstractContextManager[Project]],
    names: Collection[str] = (),
    scope: Callable[[Project], Collection[str] | None] | None = None,
) -> list[dict[str, Any]]:
    """Return the rows of a list.

    Parameters
    ----------
    kind : ListKind
        Which.
    address : str
        Of the project.
    opened : callable
        Opens it as usual, where the driver alone does not do.
    names : collection of str
        Rows of these names only, in the kind's key; empty: all.
    scope : callable, optional
        From the project to the identifiers of the openings that are asked.

    Raises
    ------
    ProjectError
        Where the project cannot be opened.
    """
    with collector_paused():
        return _list_rows(kind, address, opened, names, scope)


def _list_rows(
    kind: ListKind,
    address: str,
    opened: Callable[[], AbstractContextManager[Project]],
    names: Collection[str],
    scope: Callable[[Project], Collection[str] | None] | None,
) -> list[dict[str, Any]]:
    if kind.query:
        try:
            found = plain_rows(address, kind.query) if scope is None else None
        except DamagedProjectError:
            # Opened as usual, which shows what can be read.
            found = None
        if found is None:
            with opened() as project:
                found = _stored(project, kind.query, scope(project) if scope else None)
        rows = sorted(found, key=lambda row: (row.get(SORTED) or 0, _order(row, kind)))
        shown = told(_in_force(rows))
    else:
        with opened() as project:
            shown = list(kind.computed(project, scope(project) if scope else None))
    if names:
        wanted = set(names)
        shown = [row for row in shown if str(row.get(kind.key)) in wanted]
    return shown


def _in_force(rows: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Put in the place of what a row does not say what its level says, or else its building."""
    if rows and f"{OF_BUILDING}{FROM_PLACE[0]}" in rows[0]:
        for row in rows:
            for name in FROM_PLACE:
                if row[name] is None:
                    level = row.get(f"{OF_LEVEL}{name}")
                    row[name] = level if level is not None else row[f"{OF_BUILDING}{name}"]
    return rows


def _order(row: dict[str, Any], kind: ListKind) -> tuple[Any, ...]:
    return (
        str(row.get("building") or ""),
        _level_order(str(row.get("level") or "")),
        natural(str(row.get(kind.key) or "")),
    )


@cache
def _level_order(level: str) -> tuple[Any, ...]:
    # A building has few levels and many openings.
    return natural(level)


def _stored(project: Project, query: str, openings: Collection[str] | None) -> list[dict[str, Any]]:
    with project.reading() as connection:
        rows = [dict(row._mapping) for row in connection.exec_driver_sql(query)]
    return rows if openings is None else [row for row in rows if row.get(OPENING_ID) in openings]
