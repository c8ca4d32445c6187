"""Reads the tables of `resources/practice`: hole sizes, pilots and distances of the trade, each row with its source.

They are constants of the program, read once and kept. What a project may change is a limit of a rule instead.
"""

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Final

from hwsched.paths import RESOURCES

SLEEVE_SLACK_MM: Final = 0.4
"""How far a sleeve may be off the size of its hole [mm], one sixty-fourth of an inch; from memory, unverified."""


@dataclass(frozen=True, slots=True)
class LeadHole:
    """The hole by which the lead passes a leaf of some material."""

    diameter_mm: float
    pilot_mm: float
    bit: str
    """Form of the tool, as the catalogue names it."""
    method: str


@dataclass(frozen=True, slots=True)
class Wanted:
    """Something small that goes with an opening."""

    form: str
    when: str
    leaf_material: str
    """Empty: any."""
    quantity: float
    reason: str


@cache
def rows(table: str) -> tuple[Mapping[str, str], ...]:
    """Return the rows of a table; raises OSError where there is none."""
    with (RESOURCES / "practice" / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))


@cache
def _value(name: str, unit: str) -> float:
    for row in rows("distances"):
        if row["name"] == name and row["unit"] == unit:
            return float(row["value"])
    raise KeyError(f"{name} [{unit}]")


def distance_mm(name: str) -> float:
    """Return a distance of the trade [mm]; raises KeyError."""
    return _value(name, "mm")


def angle_deg(name: str) -> float:
    """Return an angle of the trade [deg]; raises KeyError."""
    return _value(name, "deg")


@cache
def lead_hole(leaf_material: str) -> LeadHole | None:
    """Return the lead's hole in a leaf of that material; None where none is drilled."""
    for row in rows("lead_holes"):
        if row["leaf_material"] == leaf_material:
            return LeadHole(float(row["diameter_mm"]), float(row["pilot_mm"]), row["bit"], row["method"])
    return None


@cache
def screw_pilot_mm(leaf_material: str, size: str) -> float | None:
    """Return the pilot of a screw [mm]; None where the table has none."""
    for row in rows("screw_pilots"):
        if row["leaf_material"] == leaf_material and row["size"] == size:
            return float(row["pilot_mm"])
    return None


@cache
def clearance_hole_mm(size: str) -> float | None:
    """Return the hole through which a bolt of that size passes [mm]; None where the table has none."""
    for row in rows("clearance_holes"):
        if row["size"] == size:
            return float(row["diameter_mm"])
    return None


@cache
def across_flats_mm(size: str) -> float:
    """Return the width across the flats of head and nut [mm]; of a size that the table has not, the widest's."""
    found = {row["size"]: float(row["flats_mm"]) for row in rows("across_flats")}
    return found.get(size, max(found.values()))


@cache
def screw_diameter_mm(size: str) -> float:
    """Return the diameter over the thread of a screw [mm]; of a size that the table has not, the thickest's."""
    found = {row["size"]: float(row["diameter_mm"]) for row in rows("screw_diameters")}
    return found.get(size, max(found.values()))


@cache
def consumables(leaf_material: str) -> tuple[Wanted, ...]:
    """Return what may go with an opening whose leaf is of that material."""
    return tuple(
        Wanted(row["form"], row["when"], row["leaf_material"], float(row["quantity"]), row["reason"])
        for row in rows("consumables")
        if row["leaf_material"] in ("", leaf_material)
    )


@cache
def lock_fasteners(part_kind: str, mounting: str) -> tuple[Wanted, ...]:
    """Return the fasteners that a lock of that kind and mounting wants besides its own."""
    return tuple(
        Wanted(row["form"], "lock", "", float(row["quantity"]), f"the {mounting} lock wants {row['quantity']}")
        for row in rows("lock_fasteners")
        if row["part_kind"] == part_kind and row["mounting"] == mounting
    )


@cache
def pocket_tools(leaf_material: str) -> tuple[str, ...]:
    """Return the forms of tool by which a pocket is cut into a leaf of that material, the usual one first."""
    return tuple(row["form"] for row in rows("pocket_tools") if row["leaf_material"] == leaf_material)


@cache
def wall_fixing(wall_build: str) -> Wanted | None:
    """Return the fixing that holds in a wall; None where the table has none."""
    for row in rows("wall_fixings"):
        if row["wall_build"] == wall_build:
            return Wanted(row["form"], "wall", "", 1.0, row["reason"])
    return None


@cache
def credentials() -> tuple[Wanted, ...]:
    """Return the keys that go with an opening."""
    return tuple(
        Wanted(row["form"], "always", "", float(row["quantity"]), row["reason"]) for row in rows("credentials")
    )
