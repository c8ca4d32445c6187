"""What stands in the workbooks: parts and surveyed openings as plain cells, and how they are written as .xlsx.

Names of facts are those of the verifier; the heading under which each is written is the one that the importer takes.
Lengths are written in millimetres with the unit in the heading.
"""

from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, Final

from openpyxl import Workbook

Cells = dict[str, Any]

SHEETS: Final[dict[str, tuple[str, dict[str, str]]]] = {
    "mortise-cylinder": (
        "Mortise cylinders",
        {
            "length": "Shell length [mm]",
            "cam_offset": "Cam plane from rear [mm]",
            "pitch": "Thread pitch [mm]",
            "thread": "Thread diameter [mm]",
            "head": "Head diameter [mm]",
            "fixing": "Cam fixing",
            "lead": "Lead length [mm]",
            "plug": "Plug on the lead",
            "exposure": "Exposure",
            "listed": "Listed for rated leaves",
        },
    ),
    "rim-cylinder": (
        "Rim cylinders",
        {
            "body": "Body length [mm]",
            "tail_form": "Tailpiece form",
            "tail": "Tailpiece length [mm]",
            "step": "Break-off step [mm]",
            "body_diameter": "Body diameter [mm]",
            "head": "Head diameter [mm]",
            "lead": "Lead length [mm]",
            "plug": "Plug on the lead",
            "exposure": "Exposure",
            "listed": "Listed for rated leaves",
        },
    ),
    "euro-cylinder": (
        "Euro cylinders",
        {
            "key_half": "Key half [mm]",
            "inside_half": "Inside half [mm]",
            "cam_form": "Cam",
            "thumb_turn": "Thumb turn inside",
            "lead": "Lead length [mm]",
            "plug": "Plug on the lead",
            "exposure": "Exposure",
            "listed": "Listed for rated leaves",
        },
    ),
    "cabinet-lock": (
        "Cabinet bolts",
        {
            "thread": "Body diameter [mm]",
            "grip_low": "Least panel thickness [mm]",
            "grip": "Greatest panel thickness [mm]",
            "throw": "Bolt throw [mm]",
            "lead": "Lead length [mm]",
            "plug": "Plug on the lead",
        },
    ),
    "fixed-reader": (
        "Fixed readers",
        {
            "hole": "Mounting hole [mm]",
            "depth": "Depth behind the face [mm]",
            "face_width": "Face width [mm]",
            "face_height": "Face height [mm]",
            "lead": "Lead length [mm]",
            "plug": "Plug on the lead",
            "exposure": "Exposure",
        },
    ),
    "bored-lever-lock": (
        "Bored lever locks",
        {
            "backset": "Backset [mm]",
            "cross_bore": "Cross bore [mm]",
            "edge_bore": "Edge bore [mm]",
            "leaf_low": "Least leaf thickness [mm]",
            "leaf_high": "Greatest leaf thickness [mm]",
            "latch": "Latch length [mm]",
            "bolt_hole": "Through-bolt hole [mm]",
            "function": "Function",
            "trim": "Trim diameter [mm]",
            "lead_hole": "Lead hole [mm]",
            "lead_up": "Lead hole, upward [deg]",
            "lead_edge": "Lead hole, toward edge [deg]",
            "lead": "Lead length [mm]",
            "plug": "Plug on the lead",
            "exposure": "Exposure",
            "listed": "Listed for rated leaves",
        },
    ),
    "gate-lock": (
        "Gate locks",
        {
            "mounting": "Mounting",
            "throw": "Bolt throw [mm]",
            "case_width": "Case width [mm]",
            "case_height": "Case height [mm]",
            "case_depth": "Case depth [mm]",
            "release": "Opens freely from the inside",
            "own_unit": "Unit inside",
            "lead": "Lead length [mm]",
            "plug": "Plug on the lead",
            "cell": "Cell",
            "cells": "Cells in series",
            "pack_low": "Lowest pack voltage [V]",
            "pack_high": "Highest pack voltage [V]",
            "coin": "Backup coin cell",
            "standing_ua": "Standing current [uA]",
            "operation_ma": "Current while operating [mA]",
            "operation_s": "Time of an operation [s]",
            "supply_low": "Supply, lowest voltage [V]",
            "supply_high": "Supply, highest voltage [V]",
            "supply_a": "Supply current [A]",
            "inrush_a": "Supply inrush [A]",
            "draws": "Draws",
            "cold": "Lowest temperature [degC]",
            "exposure": "Exposure",
        },
    ),
    "surface-unit": (
        "Surface units",
        {
            "housing": "Housing",
            "width": "Plate width [mm]",
            "height": "Plate height [mm]",
            "depth": "Depth [mm]",
            "window_x0": "Window, left [mm]",
            "window_y0": "Window, bottom [mm]",
            "window_x1": "Window, right [mm]",
            "window_y1": "Window, top [mm]",
            "connector_x": "Connector from left [mm]",
            "connector_y": "Connector from bottom [mm]",
            "socket": "Takes plug",
            "slack": "Slack to open the cover [mm]",
            "cell": "Cell",
            "cells": "Cells in series",
            "pack_low": "Lowest pack voltage [V]",
            "pack_high": "Highest pack voltage [V]",
            "coin": "Backup coin cell",
            "standing_ua": "Standing current [uA]",
            "operation_ma": "Current while operating [mA]",
            "operation_s": "Time of an operation [s]",
            "supply_low": "Supply, lowest voltage [V]",
            "supply_high": "Supply, highest voltage [V]",
            "supply_a": "Supply current [A]",
            "inrush_a": "Supply inrush [A]",
            "draws": "Draws",
            "screw": "Screw size",
            "screws": "Number of screws",
            "seat": "Plate under screw heads [mm]",
            "screw_places": "Screw places",
            "hole_above": "Hole above existing hole [mm]",
            "plate_above": "Plate above existing hole [mm]",
            "hole_from": "Hole from cylinder [mm]",
            "channel_entry": "Channel entry depth [mm]",
            "channel_diameter": "Channel diameter [mm]",
            "channel_angle": "Channel angle [deg]",
            "exposure": "Exposure",
            "cold": "Lowest temperature [degC]",
            "listed": "Listed for rated leaves",
            "glass": "May be bonded to glass",
        },
    ),
    "edge-unit": (
        "In-edge units",
        {
            "pocket_length": "Pocket length [mm]",
            "pocket_depth": "Pocket depth [mm]",
            "pocket_width": "Pocket width [mm]",
            "connector_y": "Connector from the lock's end [mm]",
            "socket": "Takes plug",
            "service": "Hand's allowance [mm]",
            "cell": "Cell",
            "cells": "Cells in series",
            "pack_low": "Lowest pack voltage [V]",
            "pack_high": "Highest pack voltage [V]",
            "coin": "Backup coin cell",
            "standing_ua": "Standing current [uA]",
            "operation_ma": "Current while operating [mA]",
            "operation_s": "Time of an operation [s]",
            "supply_low": "Supply, lowest voltage [V]",
            "supply_high": "Supply, highest voltage [V]",
            "supply_a": "Supply current [A]",
            "inrush_a": "Supply inrush [A]",
            "draws": "Draws",
            "screw": "Screw size",
            "screws": "Number of screws",
            "cold": "Lowest temperature [degC]",
            "listed": "Listed for rated leaves",
        },
    ),
    "cam": ("Cams", {"fits": "Fits cam fixing", "cam_form": "Cam form", "radius": "Radius [mm]"}),
    "tailpiece": (
        "Tailpieces",
        {
            "fits": "Fits cam fixing",
            "tail_form": "Tailpiece form",
            "length": "Length [mm]",
            "step": "Break-off step [mm]",
        },
    ),
    "collar": (
        "Collars",
        {"height": "Height [mm]", "inner": "Inner diameter [mm]", "outer": "Outer diameter [mm]"},
    ),
    "ring": ("Blocking rings", {"height": "Height [mm]", "inner": "Inner diameter [mm]"}),
    "lead-extension": (
        "Lead extensions",
        {"length": "Length [mm]", "plug": "Plug toward the unit", "socket": "Takes plug"},
    ),
    "power-supply": (
        "Power supplies",
        {
            "volts": "Output voltage [V]",
            "amps": "Output current [A]",
            "tolerance": "Tolerance [share]",
            "class_2": "Class 2",
            "regulated": "Regulated",
            "input": "Fed by",
            "current": "Output",
        },
    ),
    "standby-battery": (
        "Standby batteries",
        {"volts": "Voltage [V]", "ah": "Capacity [Ah]", "end": "End voltage [V]"},
    ),
    "primary-battery": (
        "Primary cells",
        {
            "designation": "Designation",
            "volts": "Voltage [V]",
            "mah": "Capacity [mAh]",
            "usable": "Usable share [share]",
            "self_discharge": "Self-discharge a year [share]",
            "end": "Capacity down to [V]",
            "chemistry": "Chemistry",
            "cold": "Lowest temperature [degC]",
            "cold_at": "Cold capacity stated at [degC]",
            "cold_left": "Share left in the cold [share]",
        },
    ),
    "coin-cell": (
        "Coin backup cells",
        {"designation": "Designation", "volts": "Voltage [V]", "mah": "Capacity [mAh]"},
    ),
    "power-transfer": (
        "Power transfers",
        {
            "form": "Form",
            "conductors": "Conductors",
            "gauge": "Gauge",
            "length": "Length [mm]",
            "listed": "Listed for rated leaves",
        },
    ),
    "wire": (
        "Wire",
        {
            "gauge": "Gauge",
            "conductors": "Conductors",
            "stranding": "Stranding",
            "jacket": "Jacket",
            "diameter": "Outside diameter [mm]",
        },
    ),
    "surface-raceway": (
        "Surface raceways",
        {
            "inside": "Clear inside [mm]",
            "width": "Width on the leaf [mm]",
            "glass": "May be bonded to glass",
            "listed": "Listed for rated leaves",
        },
    ),
    "fastener": (
        "Fasteners",
        {
            "form": "Form",
            "size": "Size",
            "length": "Length [mm]",
            "head": "Head",
            "material": "For leaf material",
            "wall": "For wall",
        },
    ),
    "tool": (
        "Jigs, bits and tools",
        {"form": "Form", "diameter": "Diameter [mm]", "reach": "Reach [mm]", "material": "For leaf material"},
    ),
    "consumable": (
        "Consumables",
        {"form": "Form", "material": "For leaf material", "exposure": "Exposure"},
    ),
    "credential": ("Keys and credentials", {"form": "Form"}),
}
"""Kind of part: its sheet, and the heading of each of its facts."""

_INSTEAD: Final = "Superseded by"

OPENING: Final = {
    "mark": "Mark",
    "form": "Opening form",
    "hand": "Hand",
    "rating": "Fire rating",
    "egress": "Egress role",
    "accessible": "Accessible route",
    "exposure": "Exposure",
    "cold": "Lowest temperature [degC]",
    "operations": "Operations a day",
    "power_wish": "Power wish",
    "distance": "Distance to a supply [m]",
    "way_out": "Direction of egress",
    "wall": "Wall",
    "frame": "Frame material",
    "stop": "Frame stop on the leaf [mm]",
    "building": "Building",
    "level": "Level",
    "room": "Room to",
}
LEAF: Final = {
    "leaf": "Leaf",
    "width": "Leaf width [mm]",
    "height": "Leaf height [mm]",
    "thick": "Leaf thickness [mm]",
    "material": "Leaf material",
    "construction": "Leaf construction",
    "stile": "Lock stile width [mm]",
    "undercut": "Undercut [mm]",
    "core": "Leaf core",
    "raceway": "Way for a wire across the leaf",
}
LOCK: Final = {
    "lock": "Lock form",
    "function": "Lock function",
    "backset": "Backset [mm]",
    "y": "Cylinder above floor [mm]",
    "case_height": "Lock case height [mm]",
    "case_depth": "Lock case depth [mm]",
    "case_width": "Lock case thickness [mm]",
    "case_above": "Case top above cylinder [mm]",
    "case_offset": "Case off centre [mm]",
    "trim_key": "Trim thickness, key side [mm]",
    "trim_inside": "Trim thickness, inside [mm]",
    "thumb_turn": "Thumb turn inside",
    "cross_bore": "Cross bore [mm]",
    "edge_bore": "Edge bore [mm]",
    "cam": "Cam or tailpiece",
    "ix": "From lock edge [mm]",
    "iy": "Above floor [mm]",
    "iw": "Footprint width [mm]",
    "ih": "Footprint height [mm]",
}
ITEM: Final = {
    "kind": "Item",
    "on_leaf": "On leaf",
    "face": "Face",
    "ix": "From lock edge [mm]",
    "iy": "Above floor [mm]",
    "iw": "Footprint width [mm]",
    "ih": "Footprint height [mm]",
    "proud": "Projection [mm]",
    "fate": "What happens to it",
    "conductors": "Free conductors",
    "pair_ohm": "Resistance of a pair [ohm]",
    "device": "Kind of exit device",
    "rod_x": "Rods from lock edge [mm]",
    "rod_ends": "Rods lead",
    "bolts": "Fixings from its ends [mm]",
}


@dataclass
class Opening:
    """One opening: its own facts, its leaves, the lock that is converted, and what else stands there."""

    mark: str
    facts: Cells
    leaves: list[Cells]
    lock: Cells
    items: list[Cells] = field(default_factory=list)
    blank: set[str] = field(default_factory=set)
    """Facts that the surveyor left open, as `lock.case_offset`; the truth stays in the cells above."""

    def leaf(self) -> Cells:
        """The leaf that has the lock; empty for a reader at a wall."""
        return self.leaves[0] if self.leaves else {}

    def written(self) -> list[Cells]:
        """Return its rows as the surveyor leaves them, by heading."""
        first = _row("opening", OPENING, self.facts, self.blank) | {"Mark": self.mark}
        if self.leaves:
            first |= _row("leaf", LEAF, self.leaves[0], self.blank)
        first |= _row("lock", LOCK, self.lock, self.blank)
        rows = [first]
        rows += [{"Mark": self.mark} | _row("leaf2", LEAF, leaf, set()) for leaf in self.leaves[1:]]
        return rows

    def written_items(self) -> list[Cells]:
        """Return the rows of what else stands there."""
        return [{"Mark": self.mark} | _row(f"item{i}", ITEM, item, self.blank) for i, item in enumerate(self.items)]


def in_millimetres(opening: Opening, digits: int) -> Opening:
    """Return an opening as one surveys it who reads every length in millimetres, with so many decimals."""

    def read(headings: dict[str, str], facts: Cells) -> Cells:
        of_lengths = {name for name, heading in headings.items() if heading.endswith("[mm]")}
        return {
            name: round(value, digits) if name in of_lengths and isinstance(value, float) else value
            for name, value in facts.items()
        }

    return replace(
        opening,
        facts=read(OPENING, opening.facts),
        leaves=[read(LEAF, leaf) for leaf in opening.leaves],
        lock=read(LOCK, opening.lock),
        items=[read(ITEM, item) for item in opening.items],
    )


def _row(entity: str, headings: dict[str, str], facts: Cells, blank: set[str]) -> Cells:
    unknown = set(facts) - set(headings)
    if unknown:
        raise KeyError(f"no heading for {sorted(unknown)}")
    return {headings[name]: value for name, value in facts.items() if f"{entity}.{name}" not in blank}


def write_catalogue(path: Path, parts: dict[str, Cells]) -> None:
    """Write the catalogue's workbook."""
    book = Workbook()
    book.remove(book.active)
    for kind, (title, headings) in SHEETS.items():
        here = {number: part for number, part in parts.items() if part["kind"] == kind}
        if not here:
            continue
        sheet = book.create_sheet(title)
        sheet.append(
            ["Part number", "Description", "Order unit", "List price", "Currency", *headings.values(), _INSTEAD]
        )
        for number, part in here.items():
            unknown = set(part) - set(headings) - {"kind", "price", "instead"}
            if unknown:
                raise KeyError(f"{number}: no heading for {sorted(unknown)}")
            facts = [part.get(name) for name in (*headings, "instead")]
            unit = "M" if kind == "wire" else "EA"
            sheet.append([number, f"{kind} {number}", unit, part.get("price", 1.0), "USD", *facts])
    book.save(path)


def write_survey(path: Path, openings: list[Opening]) -> None:
    """Write the survey's workbook: one row an opening, what else stands there on a sheet of its own."""
    book = Workbook()
    book.remove(book.active)
    sheet = book.create_sheet("Openings")
    headings = [*OPENING.values(), *LEAF.values(), *LOCK.values()]
    sheet.append(headings)
    for opening in openings:
        for row in opening.written():
            sheet.append([row.get(heading) for heading in headings])
    items = book.create_sheet("Existing items")
    headings = ["Mark", *ITEM.values()]
    items.append(headings)
    for opening in openings:
        for row in opening.written_items():
            items.append([row.get(heading) for heading in headings])
    book.save(path)
