"""Draws the catalogue of one shop from a seed: each part whole, sizes and prices of our own.

What varies from shop to shop is what decides: lengths, currents, temperatures, listings, what is kept in stock.
"""

from random import Random
from typing import Final

from tests.verifier.cells import Cells

INCH: Final = 25.4
_LASTING_DAYS: Final = 190.0
"""A little more than half a year, which is what a project asks of its cells."""


def catalogue(rng: Random) -> dict[str, Cells]:
    """Draw the parts of one shop."""
    parts: dict[str, Cells] = {}
    plug = {"plug": "wren-4"}
    lead = rng.choice((180.0, 203.2, 228.6, 254.0, 304.8))
    head = rng.choice((31.75, 33.0, 35.0))
    for i, eighths in enumerate(range(7, 17)):
        for weather in ("Interior", "Exterior"):
            parts[f"VM{eighths:02d}{weather[0]}"] = {
                "kind": "mortise-cylinder",
                "price": 150 + i + (30 if weather == "Exterior" else 0),
                "length": eighths * INCH / 8,
                "cam_offset": 0.0,
                "pitch": INCH / 32,
                "thread": 29.21,
                "head": head,
                "fixing": "pair-2",
                "lead": lead,
                "exposure": weather,
                "listed": rng.choice(("yes", "yes", "no")),
                **plug,
            }
    for tail in (63.5, 76.2, 88.9, 114.3):
        for form in ("Flat tailpiece", "Cross tailpiece"):
            parts[f"VR{round(tail)}{form[0]}"] = {
                "kind": "rim-cylinder",
                "price": 140 + tail / 10,
                "body": 25.4,
                "tail_form": form,
                "tail": tail,
                "step": 3.175,
                "body_diameter": 29.0,
                "head": head,
                "lead": lead,
                "exposure": "Exterior",
                "listed": "yes",
                **plug,
            }
    for key in (25, 30, 35, 40, 45, 50):
        for inside in (10, 30, 35, 40, 45, 50):
            parts[f"VE{key}{inside}"] = {
                "kind": "euro-cylinder",
                "price": 120 + key + inside,
                "key_half": float(key),
                "inside_half": float(inside),
                "cam_form": "Euro-profile cam",
                "thumb_turn": "no" if inside == 10 or rng.random() < 0.06 else "yes",
                "lead": 250.0,
                "exposure": "Exterior",
                "listed": "yes",
                **plug,
            }
    for grip in (22.225, 31.75, 44.45):
        parts[f"VC{round(grip)}"] = {
            "kind": "cabinet-lock",
            "price": 90 + grip / 10,
            "thread": 19.05,
            "grip_low": 12.7,
            "grip": grip,
            "throw": 15.0,
            "lead": 200.0,
            **plug,
        }
    for i, long in enumerate((600.0, 1500.0)):
        parts[f"VF{i}"] = {
            "kind": "fixed-reader",
            "price": 80 + 10 * i,
            "hole": 28.575,
            "depth": 32.0,
            "face_width": 44.0,
            "face_height": 44.0,
            "lead": long,
            "exposure": "Exterior",
            **plug,
        }
    for backset, name in ((60.325, "60"), (69.85, "70")):
        for function in ("Office or entry", "Storeroom", "Classroom", "Passage", "Privacy"):
            parts[f"VB{name}{function[:2].upper()}"] = {
                "kind": "bored-lever-lock",
                "price": 300,
                "backset": backset,
                "cross_bore": 53.975,
                "edge_bore": 25.4,
                "leaf_low": 34.925,
                "leaf_high": 57.15,
                "latch": backset + 8,
                "bolt_hole": 7.9375,
                "function": function,
                "trim": rng.choice((76.2, 82.55, 88.9)),
                "lead": max(lead, 228.6),
                "exposure": "Exterior",
                "listed": "yes",
                **plug,
            }
    for mounting in ("Bolted on", "Welded on"):
        parts[f"VG{mounting[0]}"] = {
            "kind": "gate-lock",
            "price": 340 if mounting == "Bolted on" else 365,
            "mounting": mounting,
            "throw": 22.0,
            "case_width": rng.choice((50.0, 70.0, 95.0)),
            "case_height": 160.0,
            "case_depth": rng.choice((20.0, 25.0)),
            "release": rng.choice(("yes", "yes", "no")),
            "lead": 300.0,
            "exposure": "Exterior",
            **plug,
        }
    own = parts["VGB"] | {
        "price": 590,
        "own_unit": "yes",
        "lead": None,
        "plug": None,
        "cold": rng.choice((-30.0, -10.0)),
    }
    parts["VGS"] = own | {"case_width": 80.0, "case_height": 220.0, "case_depth": 40.0, "release": "yes"}
    for form, radius in (("Straight cam", 14.0), ("Clover cam", 13.0), ("Hooked cam", 15.5)):
        parts[f"VK{form[0]}"] = {"kind": "cam", "fits": "pair-2", "cam_form": form, "radius": radius}
    for form in ("Flat tailpiece", "Cross tailpiece"):
        parts[f"VT{form[0]}"] = {
            "kind": "tailpiece",
            "fits": "pair-2",
            "tail_form": form,
            "length": 76.2,
            "step": 3.175,
        }
    outer = rng.choice((38.1, 38.1, 38.1, 38.1, 38.1, 41.0, 44.45))
    for height in (4, 6, 8, 10, 12):
        parts[f"VL{height:02d}"] = {
            "kind": "collar",
            "price": 5.5,
            "height": height * INCH / 32,
            "inner": 29.5,
            "outer": outer,
        }
    for height in (1, 2, 4):
        parts[f"VN{height}"] = {"kind": "ring", "price": 1.9, "height": height * INCH / 32, "inner": 29.5}
    units = _units(rng)
    # A gate lock with its unit inside draws what the shop's other units draw.
    parts["VGS"] = units.pop("VGS") | {"cell": "AA-F"} | parts["VGS"]
    parts.update(units)
    if rng.random() < 0.5:
        del parts["VGS"]
    for long in (152.4, 304.8):
        parts[f"VX{round(long)}"] = {
            "kind": "lead-extension",
            "price": 10 + long / 100,
            "length": long,
            "plug": "wren-4",
            "socket": "wren-4",
        }
    parts.update(_power(rng, parts))
    if (parts["VUW"]["inrush_a"] or 0.0) > 0.8 and rng.random() < 0.9:
        # Who sells what draws so much at first sells hinges and loops that carry it.
        parts["VQL"]["gauge"], parts["VQH"]["gauge"] = "22 AWG", "24 AWG"
    parts.update(_sundries(rng))
    _templates(rng, parts)
    _turned(parts)
    return parts


def _turned(parts: dict[str, Cells]) -> None:
    """Let some shops say what turns a bolt's nut, and some sell screws with a hexagon.

    From what they sell alone, so that what else is drawn stays as it was.
    """
    rng = Random(f"turned {sorted(parts)}")
    said = (None, None, "Socket", "Open spanner", "Open spanner", "Ring spanner")
    for number, part in parts.items():
        if number == "VDM8":
            part["turned_by"] = rng.choice(said)
        elif part["kind"] == "fastener" and part["form"] in ("Sheet-metal screw", "Wood screw") and rng.random() < 0.15:
            part["head"], part["turned_by"] = "Hexagon", rng.choice(said)


TEMPLATE: Final = (
    *("screw_places", "hole_above", "plate_above", "hole_from", "channel_entry", "channel_diameter", "channel_angle"),
    *("lead_hole", "lead_up", "lead_edge"),
)
"""What makers may leave blank: then the practice of the trade is taken."""


def _templates(rng: Random, parts: dict[str, Cells]) -> None:
    """Let makers say, or leave blank, where their parts' holes and screws belong."""
    for unit in parts.values():
        if unit["kind"] == "surface-unit":
            if unit["screws"] and rng.random() < 0.6:
                across = rng.choice((6.0, 7.0)) if unit["housing"] == "Narrow" else rng.choice((7.0, 9.0, 14.0))
                up = rng.choice((5.0, 9.0, 16.0))
                spots = [(x, y) for y in (up, unit["height"] - up) for x in (across, unit["width"] - across)]
                unit["screw_places"] = "; ".join(f"{x:g}, {y:g}" for x, y in spots)
            if rng.random() < 0.5:
                hole = rng.choice((30.0, 34.925, 40.0))
                # The window of the plate lies over the hole.
                unit |= {"hole_above": hole, "plate_above": hole - rng.choice((15.875, 18.0))}
            if rng.random() < 0.5:
                unit |= {
                    "hole_from": rng.choice((57.15, 66.0, 76.2)),
                    "channel_entry": rng.choice((8.0, 9.525, 12.7)),
                    "channel_diameter": rng.choice((7.9375, 9.525)),
                    "channel_angle": rng.choice((8.0, 12.0, 15.0)),
                }
        elif unit["kind"] == "bored-lever-lock" and rng.random() < 0.5:
            unit |= {
                "lead_hole": rng.choice((7.9375, 9.525)),
                "lead_up": rng.choice((35.0, 45.0, 50.0)),
                "lead_edge": rng.choice((10.0, 15.0, 20.0)),
            }


def _units(rng: Random) -> dict[str, Cells]:
    high = rng.choice((12.4, 13.0, 13.0, 14.0, 14.0, 15.0, 15.0, 27.0))
    shared: Cells = {
        "cell": "AA-L",
        "cells": 6,
        "coin": "C32",
        "pack_low": 5.4,
        "pack_high": 12.0,
        "standing_ua": rng.choice((20.0, 20.0, 45.0, 45.0, 90.0)),
        "operation_ma": rng.choice((80.0, 80.0, 120.0, 200.0)),
        "operation_s": rng.choice((2.0, 2.0, 3.0, 5.0)),
        "supply_low": rng.choice((9.0, 10.2, 10.8)),
        "supply_high": high,
        "supply_a": rng.choice((0.2, 0.35, 0.6)),
        "socket": "wren-4",
        "inrush_a": rng.choice((None, 0.8, 1.5)),
        "draws": "Constant current",
    }
    if (shared["inrush_a"] or 0.0) > 0.8 and rng.random() < 0.9:
        # Makers let a unit sag whose solenoid draws so much at first.
        shared["supply_low"] = 9.0
    low = rng.choice((-30.0, -20.0, 0.0, 12.0))
    deep = rng.choice((28.0, 32.0, 38.0))
    wide: Cells = {
        "kind": "surface-unit",
        "price": 265,
        "housing": "Wide",
        "width": rng.choice((70.0, 76.0, 84.0)),
        "height": 152.0,
        "depth": deep,
        "window_x0": 12.0,
        "window_y0": rng.choice((0.0, 8.0, 14.0)),
        "window_x1": 58.0,
        "window_y1": 70.0,
        "connector_x": 35.0,
        "connector_y": 92.0,
        "slack": 60.0,
        "screw": "#6",
        "screws": 4,
        "seat": 3.0,
        "exposure": "Interior",
        "cold": -10.0,
        "listed": "yes",
        "glass": "no",
    }
    narrow = wide | {
        "price": 279,
        "housing": "Narrow",
        "width": rng.choice((36.0, 40.0, 44.0)),
        "height": 232.0,
        "window_x0": 9.0,
        "window_y0": low,
        "window_x1": 31.0,
        "window_y1": 60.0,
        "connector_x": 20.0,
        "connector_y": 80.0,
        "slack": 50.0,
    }
    sealed = wide | {"price": 318, "exposure": "Exterior", "cold": -30.0, "cell": "AA-F", "screw": "#8", "listed": "no"}
    slim = narrow | {"price": 335, "exposure": "Exterior", "cold": -30.0, "listed": rng.choice(("yes", "no"))}
    slim["cell"] = "AA-F"
    bonded = wide | {
        "price": 298,
        "screw": None,
        "screws": 0,
        "seat": None,
        "glass": "yes",
        "listed": "no",
        "window_y0": 0.0,
    }
    edge: Cells = {
        "kind": "edge-unit",
        "price": 250 if rng.random() < 0.4 else 334,
        "pocket_length": 349.25,
        "pocket_depth": 44.45,
        "pocket_width": 17.4625,
        "connector_y": 20.0,
        "service": 30.0,
        "screw": "#8",
        "screws": 2,
        "cold": -10.0,
        "listed": rng.choice(("yes", "no")),
    }
    found = {"VGS": {}, "VUW": wide, "VUN": narrow, "VUX": sealed, "VUZ": slim, "VUG": bonded, "VUE": edge}
    drawn = {number: shared | unit for number, unit in found.items()}
    drawn["VGS"].pop("socket")
    return drawn


def _power(rng: Random, parts: dict[str, Cells]) -> dict[str, Cells]:
    supply: Cells = {
        "kind": "power-supply",
        "price": 84,
        "volts": 12.0,
        "amps": rng.choice((1.0, 2.5)),
        "tolerance": rng.choice((0.02, 0.05, 0.1)),
        "class_2": "yes",
        "regulated": "yes",
        "input": "Mains",
        "current": rng.choice(("DC", "DC", "AC", None)),
    }
    found: dict[str, Cells] = {
        "VSA": supply,
        "VSB": supply
        | {
            "price": 119,
            "amps": 5.0,
            "current": "DC",
            "tolerance": 0.05 if parts["VUW"]["supply_high"] > 12.6 else 0.02,
        },
        "VSC": supply | {"price": 126, "volts": 24.0, "amps": 4.0, "current": "DC"},
    }
    cell: Cells = {
        "kind": "primary-battery",
        "designation": "AA-L",
        "volts": 1.5,
        "mah": rng.choice((1800.0, 2200.0, 2600.0)),
        "usable": 0.8,
        "self_discharge": 0.03,
        "end": 0.9,
        "chemistry": "alkaline",
        "cold": rng.choice((-10.0, -20.0)),
        "cold_at": -20.0,
        "cold_left": 0.25,
    }
    found["VPA"] = cell
    found["VPF"] = cell | {
        "designation": "AA-F",
        "mah": 3000.0,
        "usable": 0.85,
        "self_discharge": 0.015,
        "chemistry": "lithium-iron-disulfide",
        "cold": rng.choice((-20.0, -35.0, -35.0)),
        "cold_at": -40.0,
        "cold_left": 0.5,
    }
    found["VPC"] = {"kind": "coin-cell", "designation": "C32", "volts": 3.0, "mah": 220.0}
    loop: Cells = {
        "kind": "power-transfer",
        "price": 38,
        "form": "Door loop",
        "conductors": rng.choice((2, 4)),
        "gauge": rng.choice(("22 AWG", "22 AWG", "28 AWG", "30 AWG")),
        "length": rng.choice((457.2, 900.0, 1500.0)),
        "listed": "no",
    }
    found["VQL"] = loop
    found["VQH"] = loop | {
        "price": 142,
        "form": "Transfer hinge",
        "gauge": rng.choice(("24 AWG", "28 AWG")),
        "listed": "yes",
    }
    for gauge, price in (("22 AWG", 0.3), ("18 AWG", 0.62), ("16 AWG", 0.86)):
        found[f"VW{gauge[:2]}"] = {
            "kind": "wire",
            "price": price,
            "gauge": gauge,
            "conductors": 1 if gauge == "18 AWG" and rng.random() < 0.3 else 2,
            "stranding": "Stranded",
            "jacket": "CL2",
            "diameter": 5.2,
        }
    return found


def _sundries(rng: Random) -> dict[str, Cells]:
    found: dict[str, Cells] = {}
    long = {
        "Wood, solid core": (("Wood screw", (9.525, 12.7, 19.05, 25.4, 31.75)),),
        "Wood, mineral core": (("Wood screw", (25.4, 31.75, 38.1)),),
        "Hollow metal": (("Sheet-metal screw", (12.7, 19.05, 31.75)),),
        "Aluminium": (("Sheet-metal screw", (12.7, 15.875, 25.4)),),
        "Composite": (("Machine screw", (38.1, 50.8)), ("Wood screw", (25.4,))),
        "Steel gate": (("Sheet-metal screw", (19.05, 25.4)),),
    }
    for i, (material, forms) in enumerate(long.items()):
        for form, lengths in forms:
            for size in ("#6", "#8"):
                # The shortest always: a shop that has none for what it hangs on doors would be none.
                for n in sorted({lengths[0], *rng.sample(lengths, k=min(len(lengths), rng.choice((1, 2))))}):
                    found[f"VD{i}{form[0]}{size[1]}{round(n)}"] = {
                        "kind": "fastener",
                        "price": rng.choice((0.1, 0.12, 0.15)),
                        "form": form,
                        "size": size,
                        "length": n,
                        "material": material,
                    }
    if rng.random() < 0.75:
        found["VDM8"] = {
            "kind": "fastener",
            "price": 0.5,
            "form": "Through bolt",
            "size": "M8",
            "length": rng.choice((70.0, 90.0, 90.0)),
            "head": rng.choice(("Hexagon", "Hexagon", "Hexagon", "Round, with a square neck")),
            "material": "Steel gate",
        }
    for number, form, wall in (
        ("VDWM", "Screw with plug", "Masonry or concrete"),
        ("VDWH", "Hollow-wall anchor", "Board on studs"),
        ("VDWS", "Machine screw", "Steel sheet or post"),
        ("VDWW", "Wood screw", "Wood"),
    ):
        if rng.random() < 0.95:
            for size in ("#6", "#8"):
                found[f"{number}{size[1]}"] = {
                    "kind": "fastener",
                    "form": form,
                    "size": size,
                    "length": 30.0,
                    "wall": wall,
                }
    if rng.random() < 0.9:
        found["VRR"] = {
            "kind": "surface-raceway",
            "price": 2.5,
            "inside": 10.0,
            "width": 15.0,
            "glass": rng.choice(("yes", "yes", "no")),
            "listed": rng.choice(("yes", "yes", "no")),
        }
    found["VDA"] = {"kind": "fastener", "price": 7.5, "form": "Adhesive pad", "size": "pad", "material": "Glass"}
    for number, form, diameter in (
        ("VJ1", "Drilling jig", None),
        ("VJ14", "Twist drill", 6.35),
        ("VJ38", "Twist drill", 9.525),
        ("VJ516", "Twist drill", 7.9375),
        ("VJ12", "Hole saw", 12.7),
        ("VJ34", "Step drill", 19.05),
        ("VJ218", "Hole saw", 53.975),
        ("VJ118", "Hole saw", 28.575),
        ("VJM", "Mortiser", None),
    ):
        found[number] = {"kind": "tool", "price": 5, "form": form, "diameter": diameter}
    found["VJ38"]["reach"] = rng.choice((304.8, 457.2))
    for number, form in (("VS1", "Sleeve"), ("VS2", "Grommet"), ("VS3", "Sealant"), ("VS4", "Thread lock")):
        found[number] = {"kind": "consumable", "price": 1, "form": form}
    for number, form in (("VY1", "Electronic key"), ("VY2", "Programming key")):
        found[number] = {"kind": "credential", "price": 10, "form": form}
    return found


def most_operations(parts: dict[str, Cells], warm: bool) -> int:
    """Return how many operations a day the shop's common cells surely stand for the time that is asked of them."""
    unit, cell = parts["VUW"], parts["VPA"]
    left = cell["usable"] * (1.0 if warm else cell["cold_left"])
    daily = cell["mah"] * (left / _LASTING_DAYS - cell["self_discharge"] / 365.25) - unit["standing_ua"] * 0.024
    return max(2, int(daily / (unit["operation_ma"] * unit["operation_s"] / 3600)))
