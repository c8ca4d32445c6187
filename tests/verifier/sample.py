"""Reads the program's own sample: parts, supplies and sizes from its workbooks, openings from what the program shows.

Parts are the cells of the catalogue's workbook, never what was stored of them. Words that the program stores for
choices stand in one table beside the verifier's own; a word that is missing there is an error, so that no opening is
read by half.
"""

import json
import shutil
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any, Final
from unicodedata import numeric

from openpyxl import load_workbook

from tests.verifier.cells import SHEETS, Cells, Opening
from tests.verifier.driving import ROOT, Line
from tests.verifier.standing import CircuitFeed

FOLDER: Final = ROOT / "sample_projects"

OPENING: Final = {
    "form": "form",
    "hand": "hand",
    "rating": "rating",
    "egress": "egress",
    "accessible": "accessible",
    "exposure": "exposure",
    "cold": "temperature_low_c",
    "operations": "operations_per_day",
    "power_wish": "power_wish",
    "distance": "supply_distance_m",
    "way_out": "egress_toward",
    "wall": "wall_build",
    "frame": "frame_material",
    "stop": "frame_stop_mm",
    "group": "occupancy_group",
}
LEAF: Final = {
    "leaf": "position",
    "width": "width_mm",
    "height": "height_mm",
    "thick": "thickness_mm",
    "material": "material",
    "construction": "construction",
    "stile": "stile_mm",
    "undercut": "undercut_mm",
    "core": "core",
    "raceway": "raceway",
}
_PLACED: Final = {"face": "face", "ix": "x_mm", "iy": "y_mm", "iw": "width_mm", "ih": "height_mm"}
LOCK: Final = {
    "lock": "lock_form",
    "function": "function",
    "backset": "backset_mm",
    "y": "cylinder_height_mm",
    "case_height": "case_height_mm",
    "case_depth": "case_depth_mm",
    "case_width": "case_width_mm",
    "case_above": "case_above_mm",
    "case_offset": "case_offset_mm",
    "trim_key": "trim_key_mm",
    "trim_inside": "trim_inside_mm",
    "thumb_turn": "thumb_turn",
    "cross_bore": "cross_bore_mm",
    "edge_bore": "edge_bore_mm",
    "cam": "cam_form",
    **_PLACED,
}
ITEM: Final = {
    "kind": "kind",
    "on_leaf": "leaf",
    "proud": "projection_mm",
    "fate": "disposition",
    "conductors": "conductors",
    "pair_ohm": "loop_ohm",
    "device": "device_form",
    "rod_x": "rod_x_mm",
    "rod_ends": "rod_ends",
    "bolts": "bolt_inset_mm",
    **_PLACED,
}
"""What the verifier calls a fact, and the name under which the program shows it."""

_LEAVES: Final = {"single": "Single", "active": "Active", "inactive": "Inactive"}
WORDS: Final[dict[str, dict[str, str]]] = {
    "form": {
        "single": "Single door",
        "pair": "Pair",
        "cabinet": "Cabinet",
        "gate": "Gate",
        "lift": "Reader at a lift",
        "turnstile": "Reader at a turnstile",
    },
    "hand": {word: word for word in ("LH", "RH", "LHR", "RHR")},
    "rating": {"none": "Not rated", "20": "20 min", "45": "45 min", "90": "90 min"},
    "egress": {
        "none": "Not on an egress path",
        "egress": "On an egress path",
        "panic": "Egress, panic hardware required",
    },
    "exposure": {"interior": "Interior", "exterior": "Exterior"},
    "power_wish": {"supply": "Remote supply"},
    "way_out": {"key": "Towards the key side"},
    "wall": {"masonry": "Masonry or concrete", "hollow": "Board on studs", "steel": "Steel sheet or post"},
    "frame": {"hollow-metal": "Hollow metal", "wood": "Wood", "aluminium": "Aluminium", "none": "No frame"},
    "group": {word: word for word in ("B", "S")},
    "leaf": _LEAVES,
    "material": {
        "wood": "Wood, solid core",
        "mineral-core": "Wood, mineral core",
        "hollow-metal": "Hollow metal",
        "aluminium": "Aluminium",
        "glass": "Glass",
        "steel-gate": "Steel gate",
    },
    "construction": {
        "flush": "Flush",
        "stile-and-rail": "Stile and rail",
        "narrow-stile": "Narrow stile",
        "frameless": "Frameless glass",
    },
    "core": {"solid": "Solid wood or particleboard", "honeycomb": "Honeycomb"},
    "lock": {
        "mortise": "Mortise, threaded cylinder",
        "rim": "Rim, cylinder with tailpiece",
        "bored": "Bored lever or knob",
        "euro-profile": "Euro profile",
        "cabinet": "Cabinet bolt",
        "gate": "Gate lock or latch",
        "reader": "Reader only, no lock",
    },
    "function": {
        "office": "Office or entry",
        "storeroom": "Storeroom",
        "classroom": "Classroom",
        "deadlock": "Deadlock",
        "exit": "Exit device with key outside",
    },
    "cam": {
        "straight": "Straight cam",
        "clover": "Clover cam",
        "flat-tail": "Flat tailpiece",
        "cross-tail": "Cross tailpiece",
        "euro": "Euro-profile cam",
    },
    "kind": {
        "lever": "Lever or knob",
        "trim": "Trim or escutcheon",
        "thumb-turn": "Thumb turn",
        "pull": "Pull",
        "deadbolt": "Deadbolt",
        "exit-device": "Exit device",
        "closer": "Closer",
        "kick-plate": "Kick plate",
        "label": "Fire label",
        "lite": "Lite or vision panel",
        "hinge": "Hinge",
        "flush-bolt": "Flush bolt",
        "electric-strike": "Electric strike",
        "electromagnetic-lock": "Electromagnetic lock",
        "release-sensor": "Release sensor",
        "release-button": "Release button",
    },
    "on_leaf": _LEAVES,
    "face": {"inside": "Inside", "key": "Key side", "both": "Both faces", "edge": "Lock edge", "frame": "Frame"},
    "fate": {"keep": "Keep"},
    "device": {"rim": "Rim, latch on the face"},
}
"""What the program stores for a choice, and the word for it in a workbook."""


def opening(shown: dict[str, Any]) -> Opening:
    """Return a shown opening as the verifier's; the leaf that has the lock comes first."""
    facts = {"power_wish": "Whatever serves"} | _read(OPENING, shown["facts"])
    leaves = [_read(LEAF, leaf) for leaf in shown["leaves"]]
    locks = [item for item in shown["existing_items"] if item["kind"] == "lock"]
    lock = _read(LOCK, locks[0]) if locks else {}
    if locks and leaves:
        leaves.sort(key=lambda leaf: leaf["leaf"] != _LEAVES[locks[0]["leaf"]])
    items = [_read(ITEM, item) for item in shown["existing_items"] if item["kind"] != "lock"]
    return Opening(shown["mark"], facts, leaves, lock, items)


def _read(names: dict[str, str], shown: dict[str, Any]) -> Cells:
    found: Cells = {}
    for name, theirs in names.items():
        value = shown[theirs]
        if isinstance(value, bool):
            value = "yes" if value else "no"
        elif isinstance(value, str):
            value = WORDS[name][value]
        if value is not None:
            found[name] = value
    return found


@cache
def _sheets(name: str) -> dict[str, list[tuple[Any, ...]]]:
    """Rows of each sheet of one of the sample's workbooks."""
    book = load_workbook(FOLDER / name, read_only=True)
    try:
        return {sheet.title: list(sheet.iter_rows(values_only=True)) for sheet in book.worksheets}
    finally:
        book.close()


def catalogue() -> dict[str, Cells]:
    """Return the parts of the sample's workbook by number; of a kind that the verifier does not judge only the kind."""
    kinds = {title: (kind, headings) for kind, (title, headings) in SHEETS.items()}
    parts: dict[str, Cells] = {}
    for title, (heading, *rows) in _sheets("catalogue.xlsx").items():
        if heading[0] != "Part number" or "List price" not in heading:
            continue
        kind, headings = kinds.get(title, (title, {}))
        columns = {name: heading.index(column) for name, column in headings.items()}
        for row in rows:
            cells = {name: _number(row[at]) for name, at in columns.items() if row[at] is not None}
            parts[str(row[0])] = {"kind": kind, "price": row[heading.index("List price")], **cells}
    return parts


def _number(value: Any) -> Any:
    """Return a cell whose text carries its own unit as the number that its heading asks for."""
    if isinstance(value, str) and value.endswith(" mm"):
        return float(value.removesuffix(" mm"))
    return value


# --- what was surveyed ------------------------------------------------------------------------------------------------

SURVEYED: Final = {
    "Stop (in)": "stop",
    "Thickness (in)": "thick",
    "Stile (in)": "stile",
    "B/S": "backset",
    "Cyl AFF": "y",
    "Case height": "case_height",
    "Case depth": "case_depth",
    "Case thickness": "case_width",
    "Top of case above cylinder": "case_above",
    "Trim outside": "trim_key",
    "Trim inside": "trim_inside",
    "Cross bore": "cross_bore",
    "Edge bore": "edge_bore",
}
"""Columns of lengths in the surveyor's own sheet, and the verifier's name of each."""


def surveyed() -> dict[str, Cells]:
    """Return the cells of the survey's first row of each opening, by heading."""
    rows = [row for row in _sheets("survey.xlsx")["Door survey"] if sum(cell is not None for cell in row) > 1]
    found: dict[str, Cells] = {}
    for row in rows[1:]:
        cells = {str(heading): cell for heading, cell in zip(rows[0], row, strict=True) if cell is not None}
        found.setdefault(str(cells["Mark"]), cells)
    return found


def length_mm(cell: Any) -> float:
    """Read a length as a surveyor types it, in inches where nothing else is written.

    >>> [round(length_mm(cell), 3) for cell in ("2 1/8", '1¾"', "3'-4", "4,5 cm", "45mm", 0)]
    [53.975, 44.45, 1016.0, 45.0, 45.0, 0.0]
    """
    text = str(cell).replace(",", ".").replace("in.", "").replace("in", "").strip()
    for unit, mm in (("mm", 1.0), ("cm", 10.0)):
        if text.endswith(unit):
            return float(text.removesuffix(unit)) * mm
    feet, _, inches = text.rpartition("'")
    spelt = "".join(f" {Fraction(numeric(c))}" if not c.isascii() else c for c in inches.strip('" -'))
    return float(sum(Fraction(each) for each in spelt.replace("-", " ").split()) + 12 * Fraction(feet or 0)) * 25.4


# --- what is laid -----------------------------------------------------------------------------------------------------


def _rows(title: str) -> list[Cells]:
    headings, *rows = _sheets("power.xlsx")[title]
    return [dict(zip(map(str, headings), row, strict=True)) for row in rows]


def run_m(mark: str, supply: Cells, facts: Cells) -> float:
    """Length of the wire from a supply: as measured, else up to the cable way, square across the plan, floors, down."""
    for route in _rows("Routes"):
        if (route["Mark"], route["Supply"]) == (mark, supply["Name"]):
            return float(route["Length, one way [m]"])
    place = next(row for row in _rows("Places") if row["Mark"] == mark)
    axes = ("Along the plan [m]", "Across the plan [m]")
    floors = {(row["Building"], row["Level"]): row["Height of the floor [m]"] for row in _rows("Levels")}
    across = sum(abs(place[axis] - supply[axis]) for axis in axes)
    rises = place["Up to the cable way [m]"] + supply["Up to the cable way [m]"]
    up = floors[facts["building"], facts["level"]] - floors[supply["Building"], supply["Level"]]
    return float(across + rises + abs(up))


def circuits(answers: dict[str, Any], wires: list[Cells], parts: dict[str, Cells]) -> dict[str, CircuitFeed]:
    """Return what laid circuits bring to each opening that hangs on one."""
    on = {mark: answer["circuit"] for mark, answer in answers.items() if answer["circuit"] is not None}
    supplies = {row["Name"]: row for row in _rows("Supplies")}
    wire_of = {(each["supply"], each["name"]): each["wire"] for each in wires}
    drawn: dict[str, float] = {}
    for mark, circuit in on.items():
        units = [each["part"] for each in answers[mark]["lock_points"][0]["parts"] if each["role"] == "unit"]
        drawn[circuit["supply"]] = drawn.get(circuit["supply"], 0.0) + sum(parts[unit]["supply_a"] for unit in units)
    found = {}
    for mark, circuit in on.items():
        supply = supplies[circuit["supply"]]
        battery = supply["Standby battery"]
        found[mark] = CircuitFeed(
            parts[supply["Power supply"]],
            parts[wire_of[circuit["supply"], circuit["circuit"]]],
            run_m(mark, supply, answers[mark]["facts"]),
            parts[battery]["end"] if battery is not None else None,
            drawn[circuit["supply"]],
        )
    return found


# --- all of it --------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Sample:
    """The finished sample: what is there, what can be bought, and what the program shows of each opening."""

    parts: dict[str, Cells]
    openings: dict[str, Opening]
    answers: dict[str, Any]
    laid: dict[str, CircuitFeed]


def read(project: Path, folder: Path) -> Sample:
    """Ask the command line for everything in a finished project, by a copy in a folder of one's own."""
    copy = shutil.copy(project, folder)
    line = Line(folder)
    try:
        shown = json.loads(line.run("opening", "show", str(copy), "--json"))["result"]["openings"]
        wires = json.loads(line.run("power", "list", str(copy), "circuits", "--format", "json"))
    finally:
        line.end()
    answers = {answer["mark"]: answer for answer in shown}
    parts = catalogue()
    openings = {mark: opening(answer) for mark, answer in answers.items()}
    return Sample(parts, openings, answers, circuits(answers, wires, parts))
