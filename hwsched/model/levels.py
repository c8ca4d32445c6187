"""Finding or making the level on which an opening stands."""

from hwsched.model.journal.journal import Change
from hwsched.model.queries import read_levels
from hwsched.model.tables import BUILDING, LEVEL
from hwsched.telling.natural import natural

LevelName = tuple[str | None, str | None]


def levels_for(change: Change, places: set[LevelName]) -> dict[LevelName, str | None]:
    """Return the level of each (building, level), made where it is missing; nothing known is no level."""
    known = read_levels(change.connection)
    unknown: LevelName = (None, None)
    missing = sorted(
        places - known.keys() - {unknown}, key=lambda place: (natural(place[0] or ""), natural(place[1] or ""))
    )
    if missing:
        from_name = {building: None for building, _ in missing if building is not None}
        buildings = buildings_for(change, list(from_name))
        rows = [
            {
                "building_id": buildings.get(building) if building is not None else None,
                "name": level,
                "sort": len(known) + index,
            }
            for index, (building, level) in enumerate(missing)
        ]
        known.update(zip(missing, change.insert(LEVEL, rows), strict=True))
    return {place: known.get(place) for place in places}


def buildings_for(change: Change, names: list[str]) -> dict[str, str]:
    """Return the building of each name, made where it is missing."""
    known = {row.name: row.id for row in change.connection.execute(BUILDING.select())}
    fresh = [name for name in names if name not in known]
    known.update(zip(fresh, change.insert(BUILDING, [{"name": name} for name in fresh]), strict=True))
    return known
