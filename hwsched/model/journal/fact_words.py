"""What people call the facts and rows of the journal, and how their values are shown.

Labels come from the survey's declarations where a fact has one; the rest is worded here. Nothing here judges.
"""

from collections.abc import Iterable, Mapping
from typing import Any, Final

from sqlalchemy import Connection, select

from hwsched.attributes import Attribute, said_value
from hwsched.attributes.unknown import unknown_word
from hwsched.language import phrase, to_phrase
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
from hwsched.values.role_words import role_said

Row = Mapping[str, Any]

_DECLARED: Final = {entity.name: entity for entity in (*ENTITIES, *PLACE_ENTITIES, *POWER_ENTITIES)}
_LABELS: Final[Mapping[Path, str]] = {
    ("opening", "level_id"): to_phrase("Building and level"),
    ("opening", "set_id"): to_phrase("Hardware set"),
    ("supply", "level_id"): to_phrase("Building and level"),
    ("project", "name"): to_phrase("Title"),
    ("project", "length_style"): to_phrase("Lengths"),
    ("project", "bare_unit"): to_phrase("Unit of bare lengths"),
    ("project", "prefer"): to_phrase("Ranked first by"),
    ("project", "time_zone"): to_phrase("Time zone"),
    ("level", "height_m"): to_phrase("Height of the floor"),
    ("route", "length_m"): to_phrase("Length of the cable route"),
    ("route", "pinned"): to_phrase("Siting keeps the pair"),
    ("person", "role"): to_phrase("Role"),
    ("assigned_part", "serial"): to_phrase("Serial number"),
}
_NOTHING: Final = {
    "chosen_part": to_phrase("left to the fit"),
    "placed_unit": to_phrase("left to the fit"),
    "run": to_phrase("on no circuit"),
}
_NAMED_BY: Final = {"opening": "mark", "part": "number", "own_field": "label"}
"""Column by which people know a row; the name where none is given."""


def _row_word(entity: str) -> str:
    return entity.replace("_", " ").capitalize()


def said_words() -> tuple[str, ...]:
    """Return the words that are made of names of tables and of their columns, for the list of all texts."""
    plain = (each.name.replace("_", " ").capitalize() for table in TABLES.values() for each in table.c)
    return tuple(dict.fromkeys((*map(_row_word, TABLES), *plain)))


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
        label = self._label(entity, path)
        return phrase("{fact} of {whose}", fact=label, whose=whose) if whose else label

    def row(self, entity: str, row: Row) -> str:
        """Return what people call a row."""
        what, whose = phrase(_row_word(entity)), self.whose(entity, row)
        if self._own_name(entity, row):
            return f"{what} {whose}"
        return phrase("{fact} of {whose}", fact=what, whose=whose) if whose else what

    def whose(self, entity: str, row: Row) -> str:
        """Return the name of a row, or of what it belongs to; empty for the project."""
        own = self._own_name(entity, row)
        if own:
            return own
        if entity == ASSIGNED_PART.name:
            opening = self.name(OPENING_TABLE.name, row["opening_id"])
            return phrase("{fact} of {whose}", fact=f"{role_said(row['role'])} {row['part']}", whose=opening)
        for column, target in REFERENCES[entity].items():
            if row.get(column) is not None:
                return self.name(target, row[column])
        return ""

    def value(self, entity: str, path: Path, value: Any) -> str:
        """Return a value as the project shows it."""
        target = REFERENCES[entity].get(path[0])
        if target is not None:
            return phrase("none") if value is None else self.name(target, value)
        if path[:2] == ("settings", "rules_off"):
            return phrase("off" if value else "on")
        if path[:2] == ("settings", "limits"):
            return phrase("the rule's own") if value is None else f"{value:g}"
        attribute = self.attribute(entity, path)
        if attribute is not None:
            if attribute.name in ("from_node", "to_node") and value is not None:
                return self.name(OPENING_TABLE.name, value) or str(value)
            return said_value(attribute, value, self.style, unknown=unknown_word())
        if value is None:
            return unknown_word()
        if isinstance(value, bool):
            return phrase("yes" if value else "no")
        return f"{value:.12g}" if isinstance(value, float) else str(value)

    def attribute(self, entity: str, path: Path) -> Attribute | None:
        """Return the declaration of a fact, where it has one."""
        declared = _DECLARED.get(entity)
        if declared is None or len(path) > 1:
            return None
        return next((each for each in declared.attributes if each.name == path[0]), None)

    def slot(self, entity: str, key: Path) -> str:
        """Return what people call a place that rows of a table take in turn."""
        owners = {"set_line": ("hardware_set",), "route": ("opening", "supply"), "run": ("opening",)}
        at = owners.get(entity, ("opening", LOCK_POINT.name))
        names = [self.name(owner, part) for owner, part in zip(at, key, strict=False)]
        if at[-1] == LOCK_POINT.name and names[1]:
            names[1] = f", {names[1]}"
        said = (*names, *key[len(names) :])
        if entity == "chosen_part":
            return phrase(
                "Part for the role {role} of {opening}{point}", opening=said[0], point=said[1], role=role_said(said[2])
            )
        if entity == "placed_unit":
            return phrase("Place of the unit of {opening}{point}", opening=said[0], point=said[1])
        if entity == "set_line":
            return phrase("Lines for the role {role} of hardware set {name}", name=said[0], role=role_said(said[1]))
        if entity == "route":
            return phrase("Cable route between {opening} and {supply}", opening=said[0], supply=said[1])
        return phrase("Circuit of {opening}", opening=said[0])

    def content(self, entity: str, rows: Iterable[Row]) -> str:
        """Return what stands in such a place."""
        texts = sorted(self._content(entity, row) for row in rows)
        return ", ".join(texts) or phrase(_NOTHING.get(entity, to_phrase("nothing")))

    def name(self, entity: str, row_id: str) -> str:
        """Return the name of a row by its identifier; empty where there is none any more."""
        if (entity, row_id) in self._gone:
            return self._own_name(entity, self._gone[entity, row_id])
        if entity == LEVEL.name:
            query = select(BUILDING.c.name, LEVEL.c.name).select_from(LEVEL).outerjoin(
                BUILDING, LEVEL.c.building_id == BUILDING.c.id
            )  # fmt: skip
            found = self._connection.execute(query.where(LEVEL.c.id == row_id)).first()
            return "" if found is None else ", ".join(each or unknown_word() for each in found)
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
            return phrase(attribute.label)
        if path[0] == "extra" and len(path) > 1:
            query = select(OWN_FIELD.c.label).where(OWN_FIELD.c.entity == entity, OWN_FIELD.c.name == path[1])
            return str(self._connection.execute(query).scalar() or path[1])
        if path[0] == "settings" and len(path) > 1:
            rest = " ".join(path[2:])
            if path[1] == "limits":
                return phrase("Limit {name}", name=rest)
            if path[1] == "rules_off":
                return phrase("Rule {name}", name=rest)
            if path[1] == "terms":
                return phrase("Terms: {name}", name=rest.replace("_", " "))
            path = path[1:]
        return phrase(_LABELS.get((entity, *path), " ".join(path).replace("_", " ").capitalize()))

    def _content(self, entity: str, row: Row) -> str:
        if entity == "placed_unit":
            x, y = (format_length(row[name], self.style) for name in ("x_mm", "y_mm"))
            return phrase("{face} face, {x} from the lock edge, {y} up", face=phrase(row["face"]), x=x, y=y)
        if entity == "run":
            length = phrase("length unknown") if row.get("length_m") is None else f"{row['length_m']:g} m"
            begin = self.name(OPENING_TABLE.name, row["from_node"]) or row["from_node"]
            circuit = self.name(CIRCUIT_TABLE.name, row["circuit_id"])
            return phrase("{circuit} from {begin}, {length}", circuit=circuit, begin=begin, length=length)
        if entity == "route":
            length = phrase("not measured") if row.get("length_m") is None else f"{row['length_m']:g} m"
            return phrase("{length}, kept by the siting", length=length) if row.get("pinned") else length
        return str(row["part"]) if row["quantity"] == 1 else f"{row['part']} × {row['quantity']:g}"
