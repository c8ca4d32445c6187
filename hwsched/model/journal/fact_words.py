"""What people call the facts and rows of the journal, and how their values are shown.

Labels come from the survey's declarations where a fact has one; the rest is worded here. Nothing here judges.
"""

from collections.abc import Iterable, Mapping
from typing import Any, Final

from sqlalchemy import Connection, select

from hwsched.attributes import Attribute, show_value
from hwsched.model.journal.facts import Path
from hwsched.model.lock_points import name_of_point
from hwsched.model.tables import (
    ASSIGNED_PART,
    BUILDING,
    CIRCUIT_TABLE,
    LEVEL,
    LOCK_POINT,
    OPENING_TABLE,
    OWN_FIELD,
    PROJECT,
    REFERENCES,
    SUPPLY_TABLE,
)
from hwsched.model.tables import JOURNALLED as TABLES
from hwsched.quantities import LENGTH_STYLES, LengthStyle, format_length
from hwsched.survey import ENTITIES, PLACE_ENTITIES, POWER_ENTITIES

Row = Mapping[str, Any]

_DECLARED: Final = {entity.name: entity for entity in (*ENTITIES, *PLACE_ENTITIES, *POWER_ENTITIES)}
_LABELS: Final[Mapping[Path, str]] = {
    ("opening", "level_id"): "Building and level",
    ("opening", "set_id"): "Hardware set",
    ("supply", "level_id"): "Building and level",
    ("project", "name"): "Title",
    ("project", "length_style"): "Lengths",
    ("project", "bare_unit"): "Unit of bare lengths",
    ("project", "prefer"): "Ranked first by",
    ("project", "time_zone"): "Time zone",
    ("level", "height_m"): "Height of the floor",
    ("route", "length_m"): "Length of the cable route",
    ("route", "pinned"): "Siting keeps the pair",
    ("person", "role"): "Role",
    ("assigned_part", "serial"): "Serial number",
}
_NAMED_BY: Final = {"opening": "mark", "part": "number", "own_field": "label"}
"""Column by which people know a row; the name where none is given."""


class FactWords:
    """Words for one moment of one project.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    gone : mapping, optional
        Rows that the transaction removed, by table and identifier: they keep their names.
    """

    def __init__(self, connection: Connection, gone: Mapping[tuple[str, str], Row] | None = None) -> None:
        self._connection = connection
        self._gone = gone or {}
        held = connection.execute(select(PROJECT.c.length_style)).scalar_one()
        self.style: LengthStyle = next((style for style in LENGTH_STYLES if style == held), "fraction")
        """How the project shows lengths."""

    def fact(self, entity: str, path: Path, row: Row) -> str:
        """Return what people call one fact of a row."""
        whose = self.whose(entity, row)
        return f"{self._label(entity, path)} of {whose}" if whose else self._label(entity, path)

    def row(self, entity: str, row: Row) -> str:
        """Return what people call a row."""
        what, whose = entity.replace("_", " ").capitalize(), self.whose(entity, row)
        return f"{what} {whose}" if self._own_name(entity, row) else f"{what} of {whose}" if whose else what

    def whose(self, entity: str, row: Row) -> str:
        """Return the name of a row, or of what it belongs to; empty for the project."""
        own = self._own_name(entity, row)
        if own:
            return own
        if entity == ASSIGNED_PART.name:
            return f"{row['role']} {row['part']} of {self.name(OPENING_TABLE.name, row['opening_id'])}"
        for column, target in REFERENCES[entity].items():
            if row.get(column) is not None:
                return self.name(target, row[column])
        return ""

    def value(self, entity: str, path: Path, value: Any) -> str:
        """Return a value as the project shows it."""
        target = REFERENCES[entity].get(path[0])
        if target is not None:
            return "none" if value is None else self.name(target, value)
        if path[:2] == ("settings", "rules_off"):
            return "off" if value else "on"
        if path[:2] == ("settings", "limits"):
            return "the rule's own" if value is None else f"{value:g}"
        attribute = self.attribute(entity, path)
        if attribute is not None:
            if attribute.name in ("from_node", "to_node") and value is not None:
                return self.name(OPENING_TABLE.name, value) or str(value)
            return show_value(attribute, value, self.style, unknown="unknown")
        if value is None:
            return "unknown"
        return {True: "yes", False: "no"}[value] if isinstance(value, bool) else f"{value:.12g}" if isinstance(
            value, float
        ) else str(value)  # fmt: skip

    def attribute(self, entity: str, path: Path) -> Attribute | None:
        """Return the declaration of a fact, where it has one."""
        declared = _DECLARED.get(entity)
        if declared is None or len(path) > 1:
            return None
        return next((each for each in declared.attributes if each.name == path[0]), None)

    def slot(self, entity: str, key: Path) -> str:
        """Return what people call a place that rows of a table take in turn."""
        words = {
            "chosen_part": "Part for the role {2} of {0}{1}",
            "placed_unit": "Place of the unit of {0}{1}",
            "set_line": "Lines for the role {1} of hardware set {0}",
            "route": "Cable route between {0} and {1}",
            "run": "Circuit of {0}",
        }
        owners = {"set_line": ("hardware_set",), "route": ("opening", "supply"), "run": ("opening",)}
        at = owners.get(entity, ("opening", LOCK_POINT.name))
        names = [self.name(owner, part) for owner, part in zip(at, key, strict=False)]
        if at[-1] == LOCK_POINT.name and names[1]:
            names[1] = f", {names[1]}"
        return words[entity].format(*names, *key[len(names) :])

    def content(self, entity: str, rows: Iterable[Row]) -> str:
        """Return what stands in such a place."""
        texts = sorted(self._content(entity, row) for row in rows)
        nothing = {"chosen_part": "left to the fit", "placed_unit": "left to the fit", "run": "on no circuit"}
        return ", ".join(texts) or nothing.get(entity, "nothing")

    def name(self, entity: str, row_id: str) -> str:
        """Return the name of a row by its identifier; empty where there is none any more."""
        if (entity, row_id) in self._gone:
            return self._own_name(entity, self._gone[entity, row_id])
        if entity == LEVEL.name:
            query = select(BUILDING.c.name, LEVEL.c.name).select_from(LEVEL).outerjoin(
                BUILDING, LEVEL.c.building_id == BUILDING.c.id
            )  # fmt: skip
            found = self._connection.execute(query.where(LEVEL.c.id == row_id)).first()
            return "" if found is None else ", ".join(each or "unknown" for each in found)
        if entity == CIRCUIT_TABLE.name:
            circuit = select(SUPPLY_TABLE.c.name, CIRCUIT_TABLE.c.name).join(
                CIRCUIT_TABLE, CIRCUIT_TABLE.c.supply_id == SUPPLY_TABLE.c.id
            )  # fmt: skip
            found = self._connection.execute(circuit.where(CIRCUIT_TABLE.c.id == row_id)).first()
            return "" if found is None else "/".join(found)
        if entity == LOCK_POINT.name:
            return name_of_point(self._connection, row_id)
        table = TABLES[entity]
        column = table.c.get(_NAMED_BY.get(entity, "name"))
        if column is None:
            return ""
        return str(self._connection.execute(select(column).where(table.c.id == row_id)).scalar() or "")

    def _own_name(self, entity: str, row: Row) -> str:
        return "" if entity == PROJECT.name else str(row.get(_NAMED_BY.get(entity, "name")) or "")

    def _label(self, entity: str, path: Path) -> str:
        attribute = self.attribute(entity, path)
        if attribute is not None:
            return attribute.label
        if path[0] == "extra" and len(path) > 1:
            query = select(OWN_FIELD.c.label).where(OWN_FIELD.c.entity == entity, OWN_FIELD.c.name == path[1])
            return str(self._connection.execute(query).scalar() or path[1])
        if path[0] == "settings" and len(path) > 1:
            first = {"limits": "Limit", "rules_off": "Rule", "terms": "Terms:"}.get(path[1])
            if first is not None:
                return " ".join((first, *path[2:])).replace("_", " " if first == "Terms:" else "_")
            path = path[1:]
        return _LABELS.get((entity, *path), " ".join(path).replace("_", " ").capitalize())

    def _content(self, entity: str, row: Row) -> str:
        if entity == "placed_unit":
            x, y = (format_length(row[name], self.style) for name in ("x_mm", "y_mm"))
            return f"{row['face']} face, {x} from the lock edge, {y} up"
        if entity == "run":
            length = "length unknown" if row.get("length_m") is None else f"{row['length_m']:g} m"
            begin = self.name(OPENING_TABLE.name, row["from_node"]) or row["from_node"]
            return f"{self.name(CIRCUIT_TABLE.name, row['circuit_id'])} from {begin}, {length}"
        if entity == "route":
            length = "not measured" if row.get("length_m") is None else f"{row['length_m']:g} m"
            return f"{length}, kept by the siting" if row.get("pinned") else length
        return str(row["part"]) if row["quantity"] == 1 else f"{row['part']} × {row['quantity']:g}"
