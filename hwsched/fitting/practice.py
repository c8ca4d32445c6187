"""Reads the tables of `resources/practice`: hole sizes, pilots and distances of the trade, each row with its source."""

import csv
from collections.abc import Mapping
from functools import cache

from hwsched.paths import RESOURCES


@cache
def _rows(table: str) -> tuple[Mapping[str, str], ...]:
    with (RESOURCES / "practice" / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))


@cache
def distance_mm(name: str) -> float:
    """Return a distance of the trade; raises KeyError."""
    for row in _rows("distances"):
        if row["name"] == name:
            return float(row["value_mm"])
    raise KeyError(name)


@cache
def lead_hole(leaf_material: str) -> tuple[float, float, str] | None:
    """Return diameter and pilot [mm] and the form of bit for the lead's hole; None where none is drilled."""
    for row in _rows("lead_holes"):
        if row["leaf_material"] == leaf_material:
            return float(row["diameter_mm"]), float(row["pilot_mm"]), row["bit"]
    return None


@cache
def screw_pilot_mm(leaf_material: str, size: str) -> float | None:
    """Return the pilot of a screw [mm]; None where the table has none."""
    for row in _rows("screw_pilots"):
        if row["leaf_material"] == leaf_material and row["size"] == size:
            return float(row["pilot_mm"])
    return None
