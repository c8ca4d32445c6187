"""Finding the openings that a person names."""

from collections.abc import Iterable

from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.queries import opening_ids, read_inputs
from hwsched.operations.opening.scope import Scope, in_order, missing_words, narrowed, opening_rows
from hwsched.operations.snapshot import of_one_state
from hwsched.quantities import BARE_UNITS, LengthError, parse_length


def openings_of_marks(project: Project, marks: Iterable[str]) -> list[str]:
    """Return identifiers of the openings with these marks, in the order given.

    Raises
    ------
    MissingRowError
        Names the marks that the project does not have, and those that are nearly the same.
    """
    wanted = list(dict.fromkeys(marks))
    with project.reading() as connection:
        known = opening_ids(connection)
    missing = [mark for mark in wanted if mark not in known]
    if missing:
        raise MissingRowError(missing_words(missing, known))
    return [known[mark] for mark in wanted]


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
        ``opening``; ``leaf`` (the lock's leaf) or ``leaf:inactive``; ``lock``; ``item:2`` (the second existing item).

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
