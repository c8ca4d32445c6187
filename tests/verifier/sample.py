"""Reads the program's own sample: parts from the workbook that came with it, openings from what the program shows.

Parts are the cells of the catalogue's workbook, never what was stored of them. Words that the program stores for choices
stand in one table beside the verifier's own; a word that is missing there is an error, so that no opening is read by half.
"""

from collections.abc import Iterable
from pathlib import Path
from typing import Any, Final

from openpyxl import load_workbook

from tests.verifier.cells import SHEETS, Cells, Opening
from tests.verifier.driving import ROOT
from tests.verifier.standing import Laid

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


def catalogue() -> dict[str, Cells]:
    """Return the parts of the sample's workbook by number; of a kind that the verifier does not judge only the kind."""
    book = load_workbook(FOLDER / "catalogue.xlsx", read_only=True)
    kinds = {title: (kind, headings) for kind, (title, headings) in SHEETS.items()}
    parts: dict[str, Cells] = {}
    for sheet in book.worksheets:
        rows = sheet.iter_rows(values_only=True)
        heading = next(rows)
        if heading[0] != "Part number" or "List price" not in heading:
            continue
        kind, headings = kinds.get(sheet.title, (sheet.title, {}))
        columns = {name: heading.index(title) for name, title in headings.items()}
        for row in rows:
            cells = {name: _number(row[at]) for name, at in columns.items() if row[at] is not None}
            parts[str(row[0])] = {"kind": kind, "price": row[heading.index("List price")], **cells}
    return parts


def _number(value: Any) -> Any:
    """Return a cell whose text carries its own unit as the number that its heading asks for."""
    if isinstance(value, str) and value.endswith(" mm"):
        return float(value.removesuffix(" mm"))
    return value
