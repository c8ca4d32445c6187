"""Reading what is laid to feed openings: supplies, circuits, runs, routes."""

from dataclasses import fields
from typing import Any, Final

from sqlalchemy import Connection, select

from hwsched.model.tables import (
    BUILDING,
    CIRCUIT_TABLE,
    IN_USE,
    LEVEL,
    OPENING_TABLE,
    ROUTE,
    RUN_TABLE,
    SUPPLY_TABLE,
)
from hwsched.telling.natural import natural
from hwsched.values.power import Circuit, PowerFacts, Route, Run, Supply

_OF_LEVEL: Final = ("building", "level", "level_m")
_SUPPLY: Final = [field.name for field in fields(Supply) if field.name not in _OF_LEVEL]
_CIRCUIT: Final = [field.name for field in fields(Circuit)]
_RUN: Final = [field.name for field in fields(Run)]
_ROUTE: Final = [field.name for field in fields(Route)]


def read_power(connection: Connection) -> PowerFacts:
    """Return all that is laid, by name in the order in which people count; runs from the supply's order of laying."""
    query = (
        select(
            BUILDING.c.name, LEVEL.c.name, LEVEL.c.height_m, *(SUPPLY_TABLE.c[name] for name in _SUPPLY)
        )
        .select_from(SUPPLY_TABLE)
        .outerjoin(LEVEL, SUPPLY_TABLE.c.level_id == LEVEL.c.id)
        .outerjoin(BUILDING, LEVEL.c.building_id == BUILDING.c.id)
    )  # fmt: skip
    supplies = []
    for row in connection.execute(query):
        building, level, height, *facts = row
        values: dict[str, Any] = dict(zip(_SUPPLY, facts, strict=True))
        supplies.append(Supply(**values, building=building, level=level, level_m=height))
    if not supplies:
        return PowerFacts()
    supplies.sort(key=lambda supply: (natural(supply.building or ""), natural(supply.name)))
    circuits = [Circuit(*row) for row in connection.execute(select(*(CIRCUIT_TABLE.c[name] for name in _CIRCUIT)))]
    circuits.sort(key=lambda circuit: natural(circuit.name))
    runs = [Run(*row) for row in connection.execute(select(*(RUN_TABLE.c[n] for n in _RUN)).order_by(RUN_TABLE.c.id))]
    measured = select(*(ROUTE.c[name] for name in _ROUTE)).join(OPENING_TABLE, ROUTE.c.opening_id == OPENING_TABLE.c.id)
    routes = [Route(*row) for row in connection.execute(measured.where(IN_USE))]
    return PowerFacts(tuple(supplies), tuple(circuits), tuple(runs), tuple(routes))


def level_heights(connection: Connection) -> dict[tuple[str | None, str | None], float | None]:
    """Return (building, level) to the height of its floor [m]; None while unknown."""
    query = select(BUILDING.c.name, LEVEL.c.name, LEVEL.c.height_m).select_from(LEVEL).outerjoin(
        BUILDING, LEVEL.c.building_id == BUILDING.c.id
    )  # fmt: skip
    return {(building, level): height for building, level, height in connection.execute(query)}
