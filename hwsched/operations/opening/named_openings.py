"""Finding the openings that a person names."""

from collections.abc import Collection, Iterable

from sqlalchemy import select

from hwsched.model.bulk import among
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.queries import opening_ids, read_inputs, read_places, retired_openings
from hwsched.model.tables import OPENING_TABLE
from hwsched.operations.opening.scope import Scope, in_order, narrowed, opening_rows
from hwsched.operations.snapshot import of_one_state
from hwsched.quantities import BARE_UNITS, LengthError, parse_length
from hwsched.telling.nearest import nearest


def openings_of_marks(project: Project, marks: Iterable[str]) -> list[str]:
    """Return identifiers of the openings with these marks, in the order given.

    Capital letters count only where two marks differ in nothing else.

    Raises
    ------
    MissingRowError
        Names the marks that the project does not have, and what is nearly the same.
    """
    with project.reading() as connection:
        known, retired = opening_ids(connection), retired_openings(connection)
    found = {mark: _mark_meant(mark, known) for mark in marks}
    missing = [mark for mark, meant in found.items() if meant is None]
    if missing:
        if resting := [mark for mark in missing if mark in retired]:
            verb = "is" if len(resting) == 1 else "are"
            raise MissingRowError(f"{', '.join(resting)} {verb} retired; to bring back: hwsched survey restore")
        near = dict.fromkeys(name for mark in missing for name in nearest(mark, known, 1))
        raise MissingRowError(
            f"no opening has the mark {', '.join(missing)}" + (f"; nearest: {', '.join(near)}" if near else "")
        )
    return list(dict.fromkeys(known[meant] for meant in found.values() if meant is not None))


def _mark_meant(typed: str, known: Collection[str]) -> str | None:
    if typed in known:
        return typed
    alike = [mark for mark in known if mark.casefold() == typed.strip().casefold()]
    return alike[0] if len(alike) == 1 else None


def marks_of(project: Project, ids: Collection[str]) -> list[str]:
    """Return the marks of those of some openings that are still there, sorted."""
    if not ids:
        return []
    with project.reading() as connection:
        rows = among(connection, select(OPENING_TABLE.c.mark), OPENING_TABLE.c.id, ids)
        return sorted(row.mark for row in rows)


def marks_by_id(project: Project, ids: Collection[str]) -> dict[str, str]:
    """Return the marks of some openings by their identifiers; those that are gone are left out."""
    wanted = set(ids)
    with project.reading() as connection:
        return {opening_id: mark for mark, opening_id in opening_ids(connection).items() if opening_id in wanted}


def openings_of_building(project: Project, building: str) -> list[str]:
    """Return the openings of a building; raises MissingRowError where it has none."""
    with project.reading() as connection:
        rows = opening_rows(connection)
    return [row.id for row in in_order(narrowed(rows, Scope(buildings=(building,)), []))]


@of_one_state
def row_of(project: Project, mark: str, where: str) -> tuple[str, str]:
    """Find what a person names on an opening.

    Parameters
    ----------
    project : Project
        Open project.
    mark : str
        The opening's mark.
    where : str
        ``opening``; ``leaf`` (the lock's leaf) or ``leaf:inactive``; ``lock``; ``item:2`` (the second existing item);
        ``level`` or ``building`` on which the opening stands.

    Returns
    -------
    tuple of str
        Entity and identifier of the row.

    Raises
    ------
    MissingRowError
        When there is none; says what there is.
    """
    opening_id = openings_of_marks(project, [mark])[0]
    with project.reading() as connection:
        given = next(iter(read_inputs(connection, [opening_id], project.catalogue.read(connection))))
        places = read_places(connection, [opening_id])[opening_id]
    rows = {"opening": ("opening", opening_id)}
    for leaf in given.leaves:
        rows[f"leaf:{leaf.position or 'single'}"] = ("leaf", leaf.id)
        if leaf.position != "inactive":
            rows.setdefault("leaf", ("leaf", leaf.id))
    for number, item in enumerate(given.items, start=1):
        rows[f"item:{number}"] = ("existing_item", item.id)
        # A name for the row, not for what is converted: that may be another lock after an edit of this one.
        if item.kind == "lock":
            rows.setdefault("lock", ("existing_item", item.id))
    rows.update((place.entity, (place.entity, place.row_id)) for place in places)
    if where not in rows:
        raise MissingRowError(f"{mark} has no {where}; it has {', '.join(rows)}")
    return rows[where]


def parts_like(project: Project, number: str) -> list[tuple[str, str]]:
    """Return number and description of all parts of the same kind as one."""
    with project.reading() as connection:
        catalogue = project.catalogue.read(connection)
    part = catalogue.get(number)
    return [] if part is None else [(each.number, each.description) for each in catalogue.of_kind(part.kind)]


def typed_length_mm(project: Project, field: str, text: str) -> float:
    """Read a length that a person typed; a bare number takes the project's unit.

    Raises
    ------
    ValueRefusedError
        When it cannot be read; says what is accepted.
    """
    bare = next((unit for unit in BARE_UNITS if unit == project.bare_unit), None)
    try:
        return parse_length(text, bare)
    except LengthError as error:
        raise ValueRefusedError(field, error.message) from error
