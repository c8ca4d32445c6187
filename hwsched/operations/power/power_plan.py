"""What a power workbook would lay, worked out in plain values: so that all of it is written in a few statements.

Here belong the rows as they stand and as they would stand. What a sheet's row means is said in `power_import`.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from sqlalchemy import Connection, Table, select

from hwsched.model.bulk import new_ids
from hwsched.model.journal.journal import Change
from hwsched.model.levels import LevelName, buildings_for, levels_for
from hwsched.model.queries import opening_ids
from hwsched.model.tables import BUILDING, CIRCUIT_TABLE, LEVEL, OPENING_TABLE, PART, ROUTE, RUN_TABLE, SUPPLY_TABLE

Row = dict[str, Any]


class PowerPlan:
    """Rows that are laid, with what is to be inserted and set.

    Parameters
    ----------
    connection : Connection
        In a transaction; it is read once.
    """

    def __init__(self, connection: Connection) -> None:
        self.marks: Mapping[str, str] = opening_ids(connection)
        """Identifiers of the openings."""
        self.openings = frozenset(self.marks.values())
        self.kinds: Mapping[str, str] = {
            row.number: row.kind for row in connection.execute(select(PART.c.number, PART.c.kind))
        }
        """Kind of each part."""
        places = select(LEVEL.c.id, BUILDING.c.name, LEVEL.c.name).outerjoin(
            BUILDING, LEVEL.c.building_id == BUILDING.c.id
        )
        self._places = {level_id: (building, level) for level_id, building, level in connection.execute(places)}
        self._supplies = self._read(connection, SUPPLY_TABLE)
        circuits = self._read(connection, CIRCUIT_TABLE)
        self.supply_named: dict[str, str] = {row["name"]: row["id"] for row in self._supplies.values()}
        self.circuit_named: dict[tuple[str, str], str] = {
            (row["supply_id"], row["name"]): row["id"] for row in circuits.values()
        }
        self.routes: dict[str, dict[str, str]] = {}
        """Opening to its measured routes by supply."""
        for row in self._read(connection, ROUTE).values():
            self.routes.setdefault(row["opening_id"], {})[row["supply_id"]] = row["id"]
        self._runs: dict[str, dict[str, Row]] = {}
        self._to: dict[str, dict[str, Row]] = {}
        for run in self._read(connection, RUN_TABLE).values():
            self._keep_run(run)
        self._heights: dict[LevelName, tuple[float | None, str]] = {}
        self._facts: dict[LevelName, list[tuple[Mapping[str, Any], str]]] = {}
        self._levels: dict[LevelName, None] = {}
        self._at: dict[str, LevelName] = {}
        """Supply to the place that it is to have."""
        self._inserts: dict[str, dict[str, tuple[Row, str]]] = {}
        self._edits: dict[str, dict[str, tuple[Row, str | None]]] = {}

    @staticmethod
    def _read(connection: Connection, table: Table) -> dict[str, Row]:
        return {row.id: dict(row._mapping) for row in connection.execute(select(table))}

    def insert(self, table: Table, values: Mapping[str, Any], origin: str) -> str:
        """Note a row that is new; returns its identifier."""
        row = {"id": new_ids(1)[0], **values}
        self._inserts.setdefault(table.name, {})[row["id"]] = (row, origin)
        return str(row["id"])

    def edit(self, table: Table, row_id: str, values: Mapping[str, Any], origin: str | None) -> None:
        """Note what a row is to hold, one that was just put in included."""
        new = self._inserts.get(table.name, {}).get(row_id)
        if new is not None:
            new[0].update(values)
            return
        before, earlier = self._edits.setdefault(table.name, {}).get(row_id, ({}, None))
        self._edits[table.name][row_id] = ({**before, **values}, origin or earlier)

    def level(self, place: LevelName, height_m: float | None, origin: str) -> None:
        """Note a level with its height."""
        self._levels[place] = None
        self._heights[place] = (height_m, origin)

    def facts_of(self, place: LevelName, facts: Mapping[str, Any], origin: str) -> None:
        """Note what a building says, or one of its levels, and the openings there take from it."""
        if place[1] is not None:
            self._levels[place] = None
        self._facts.setdefault(place, []).append((facts, origin))

    def stand(self, supply_id: str, place: LevelName) -> None:
        """Note where a supply is to stand."""
        self._levels[place] = None
        self._at[supply_id] = place

    def place_of(self, supply_id: str) -> LevelName:
        """Return building and level of a supply, as they would be."""
        if supply_id in self._at:
            return self._at[supply_id]
        return self._places.get(self._supplies[supply_id]["level_id"], (None, None))

    def runs_of(self, circuit_id: str) -> Iterable[Row]:
        """Return the runs of a circuit, as they would be."""
        return self._runs.get(circuit_id, {}).values()

    def others(self, circuit_id: str, opening_id: str | None, run_id: str | None) -> list[Row]:
        """Return the other runs of a circuit, and those that end at an opening."""
        ending = self._to.get(opening_id, {}).values() if opening_id is not None else ()
        found = {row["id"]: row for row in (*self.runs_of(circuit_id), *ending)}
        return [row for row in found.values() if row["id"] != run_id]

    def run(self, row: Mapping[str, Any], origin: str, run_id: str | None) -> None:
        """Note a run, new or as it is to be."""
        if run_id is None:
            self._keep_run({**row, "id": self.insert(RUN_TABLE, row, origin)})
            return
        held = next(each for each in self._runs[row["circuit_id"]].values() if each["id"] == run_id)
        self._to[held["to_node"]].pop(run_id)
        self._keep_run({**held, **row})
        self.edit(RUN_TABLE, run_id, row, origin)

    def _keep_run(self, run: Row) -> None:
        self._runs.setdefault(run["circuit_id"], {})[run["id"]] = run
        self._to.setdefault(run["to_node"], {})[run["id"]] = run

    def _write_facts(self, change: Change, levels: Mapping[LevelName, str | None]) -> None:
        buildings = buildings_for(change, [name for name, level in self._facts if level is None and name is not None])
        for (building, level), told in self._facts.items():
            row_id = levels[building, level] if level is not None else buildings[building or ""]
            table = LEVEL if level is not None else BUILDING
            if row_id is not None:
                # One after the other: of two rows on one place the later one says what it says last.
                for facts, origin in told:
                    change.update(table, [(row_id, facts)], [origin])

    def write(self, change: Change) -> None:
        """Write all that was noted."""
        levels: dict[LevelName, str | None] = {}
        for place in self._levels:
            # One after the other: new levels stand in the order in which the book names them.
            levels |= levels_for(change, {place})
        heights = [
            (level_id, {"height_m": height}, origin)
            for place, (height, origin) in self._heights.items()
            if (level_id := levels[place]) is not None
        ]
        change.update(LEVEL, [(row_id, row) for row_id, row, _ in heights], [origin for _, _, origin in heights])
        self._write_facts(change, levels)
        for supply_id, place in self._at.items():
            self.edit(SUPPLY_TABLE, supply_id, {"level_id": levels[place]}, None)
        for table in (OPENING_TABLE, SUPPLY_TABLE, CIRCUIT_TABLE, RUN_TABLE, ROUTE):
            new = list(self._inserts.get(table.name, {}).values())
            change.insert(table, [row for row, _ in new], [origin for _, origin in new])
            held = self._edits.get(table.name, {})
            change.update(
                table, [(row_id, row) for row_id, (row, _) in held.items()], [origin for _, origin in held.values()]
            )
