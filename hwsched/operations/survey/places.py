"""Which openings stand otherwise than when they were looked at: by what their place says, or by doors of their rooms.

Both follow from rows of others, so that no change set names these openings.
"""

from collections.abc import Collection, Mapping

from sqlalchemy import select

from hwsched.model.bulk import among
from hwsched.model.project import Project
from hwsched.model.queries import read_places
from hwsched.model.rooms import closed_rooms_on
from hwsched.model.tables import BUILDING, LEVEL, OPENING_TABLE
from hwsched.operations.findings.checked import Checked
from hwsched.telling.natural import upward


def otherwise_placed(project: Project, known: Mapping[str, Checked]) -> set[str]:
    """Return the openings whose level or building says something else than when they were looked at."""
    with project.reading() as connection:
        places = read_places(connection)
    return {each for each, held in places.items() if each in known and known[each].places != held}


def levels_upward(project: Project) -> dict[tuple[str | None, str | None], tuple[bool, float, int]]:
    """Return by building and level what levels are put in order by: their height, as one walks."""
    query = select(BUILDING.c.name, LEVEL.c.name, LEVEL.c.height_m, LEVEL.c.sort).select_from(LEVEL)
    with project.reading() as connection:
        rows = connection.execute(query.outerjoin(BUILDING, LEVEL.c.building_id == BUILDING.c.id)).all()
    return {(building, level): upward(height_m, sort) for building, level, height_m, sort in rows}


def otherwise_closed(project: Project, known: Mapping[str, Checked], touched: Collection[str]) -> set[str]:
    """Return the openings of whose rooms something else is true of the ways out, since some openings were touched.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    known : mapping of str to Checked
        As they were last looked at.
    touched : collection of str
        What change sets wrote to; what is gone included.
    """
    # Those that they left, and those on which they stand now.
    levels = {_level_of(known[each]) for each in touched if each in known}
    with project.reading() as connection:
        stands = select(OPENING_TABLE.c.id, OPENING_TABLE.c.level_id)
        levels.update(row[1] for row in among(connection, stands, OPENING_TABLE.c.id, touched))
        closed = closed_rooms_on(connection, levels)
    return {
        opening_id
        for opening_id, each in known.items()
        if _level_of(each) in levels and each.given.closed_rooms != closed.get(opening_id, ())
    }


def _level_of(checked: Checked) -> str | None:
    return next((place.row_id for place in checked.places if place.entity == LEVEL.name), None)
