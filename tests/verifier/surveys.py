"""Draws a catalogue and a survey from a seed: each truth whole, each size from a realistic range, some near the limits.

All is invented. Sizes of leaves, locks and preparations follow common practice as gathered from trade pages; catalogue
sizes are our own.
"""

from collections.abc import Iterator
from random import Random
from typing import Final

from tests.verifier.bodies import circle_meets, rects_meet
from tests.verifier.cells import Cells, Opening
from tests.verifier.standing import footprint

INCH: Final = 25.4
FORMS: Final = (
    ("mortise", 22),
    ("bored", 16),
    ("rim", 12),
    ("narrow", 16),
    ("euro", 8),
    ("exit", 8),
    ("cabinet", 6),
    ("gate", 6),
    ("patch", 3),
    ("wall", 3),
)
"""What kind of opening is drawn, and how often of a hundred."""


def inches(rng: Random, low: float, high: float, parts: int = 16) -> float:
    """Draw a length in whole parts of an inch [mm]."""
    return rng.randint(round(low * parts), round(high * parts)) * INCH / parts


# --- the catalogue --------------------------------------------------------------------------------------------------


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
    for key in (30, 35, 40, 45, 50):
        for inside in (10, 30, 35, 40, 45, 50):
            parts[f"VE{key}{inside}"] = {
                "kind": "euro-cylinder",
                "price": 120 + key + inside,
                "key_half": float(key),
                "inside_half": float(inside),
                "cam_form": "Euro-profile cam",
                "thumb_turn": "no" if inside == 10 else rng.choice(("yes", "yes", "no")),
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
            "lead": 300.0,
            "exposure": "Exterior",
            **plug,
        }
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
    outer = rng.choice((38.1, 41.0, 44.45))
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
    parts.update(_units(rng))
    for long in (152.4, 304.8):
        parts[f"VX{round(long)}"] = {
            "kind": "lead-extension",
            "price": 10 + long / 100,
            "length": long,
            "plug": "wren-4",
            "socket": "wren-4",
        }
    parts.update(_power(rng))
    parts.update(_sundries(rng))
    return parts


def _units(rng: Random) -> dict[str, Cells]:
    high = rng.choice((12.4, 13.0, 14.0, 15.0, 27.0))
    shared: Cells = {
        "cell": "AA-L",
        "cells": 6,
        "coin": "C32",
        "pack_low": 5.4,
        "pack_high": 12.0,
        "standing_ua": rng.choice((20.0, 45.0, 90.0)),
        "operation_ma": rng.choice((80.0, 120.0, 200.0)),
        "operation_s": rng.choice((2.0, 3.0, 5.0)),
        "supply_low": rng.choice((9.0, 10.2, 10.8)),
        "supply_high": high,
        "supply_a": rng.choice((0.2, 0.35, 0.6)),
        "socket": "wren-4",
        "inrush_a": rng.choice((None, 0.8, 1.5)),
    }
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
    bonded = wide | {"price": 298, "screw": None, "screws": 0, "glass": "yes", "listed": "no", "window_y0": 0.0}
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
    found = {"VUW": wide, "VUN": narrow, "VUX": sealed, "VUG": bonded, "VUE": edge}
    return {number: shared | unit for number, unit in found.items()}


def _power(rng: Random) -> dict[str, Cells]:
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
        "VSB": supply | {"price": 119, "amps": 5.0, "current": "DC", "tolerance": 0.05},
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
    }
    found["VPA"] = cell
    found["VPF"] = cell | {
        "designation": "AA-F",
        "mah": 3000.0,
        "usable": 0.85,
        "self_discharge": 0.015,
        "chemistry": "lithium-iron-disulfide",
        "cold": rng.choice((-20.0, -35.0)),
    }
    found["VPC"] = {"kind": "coin-cell", "designation": "C32", "volts": 3.0, "mah": 220.0}
    loop: Cells = {
        "kind": "power-transfer",
        "price": 38,
        "form": "Door loop",
        "conductors": rng.choice((2, 4)),
        "gauge": rng.choice(("22 AWG", "28 AWG", "30 AWG")),
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
        "Wood, solid core": (("Wood screw", (12.7, 19.05, 25.4, 31.75)),),
        "Wood, mineral core": (("Wood screw", (25.4, 31.75, 38.1)),),
        "Hollow metal": (("Sheet-metal screw", (12.7, 19.05, 31.75)),),
        "Aluminium": (("Sheet-metal screw", (12.7, 15.875, 25.4)),),
        "Composite": (("Machine screw", (38.1, 50.8)), ("Wood screw", (25.4,))),
        "Steel gate": (("Sheet-metal screw", (19.05, 25.4)),),
    }
    for i, (material, forms) in enumerate(long.items()):
        for form, lengths in forms:
            for size in ("#6", "#8"):
                for n in sorted(rng.sample(lengths, k=min(len(lengths), rng.choice((1, 2))))):
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
            "length": rng.choice((45.0, 70.0)),
            "material": "Steel gate",
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
    for number, form in (("VS1", "Sleeve"), ("VS2", "Grommet"), ("VS3", "Sealant"), ("VS4", "Thread lock")):
        found[number] = {"kind": "consumable", "price": 1, "form": form}
    for number, form in (("VY1", "Electronic key"), ("VY2", "Programming key")):
        found[number] = {"kind": "credential", "price": 10, "form": form}
    return found


# --- the survey -----------------------------------------------------------------------------------------------------


def survey(rng: Random, count: int, first: int = 1, blanks: float = 0.15) -> list[Opening]:
    """Draw openings; a share of them with cells left open."""
    names = [name for name, _ in FORMS]
    weights = [weight for _, weight in FORMS]
    openings = []
    for i in range(count):
        form = rng.choices(names, weights)[0]
        drawn = _DRAW[form](rng, f"{form[:2].upper()}{first + i:05d}")
        drawn.items = list(_possible(drawn))
        if form == "mortise" and not any(item["kind"] == "Lever or knob" for item in drawn.items):
            # Where trim stands nothing would say where it ends.
            drawn.lock["trim_inside"] = drawn.lock["trim_key"] = 0.0
        if rng.random() < blanks:
            _leave_open(rng, drawn)
        openings.append(drawn)
    return openings


def _possible(opening: Opening) -> Iterator[Cells]:
    """Leave out what could not have stood beside the old lock's head or rose, or beside what was drawn before it."""
    x, y = opening.lock.get("backset") or 0.0, opening.lock["y"]
    # Head of an old mortise or rim cylinder 1-3/8 in, rose of an old bored knob 2-5/8 in: trade usage, from memory.
    radius = 1.3125 * INCH if opening.lock["lock"].startswith("Bored") else 0.6875 * INCH
    kept: list[Cells] = []
    for item in opening.items:
        own = item["kind"] in ("Thumb turn", "Trim or escutcheon", "Exit device", "Other")
        if not own and item["face"] != "Inside" and circle_meets(x, y, radius, footprint(item)):
            continue
        if not own and any(_same_face(item, each) and rects_meet(footprint(item), footprint(each)) for each in kept):
            continue
        kept.append(item)
        yield item


def _same_face(a: Cells, b: Cells) -> bool:
    return "Both faces" in (a["face"], b["face"]) or a["face"] == b["face"]


def _leave_open(rng: Random, opening: Opening) -> None:
    choices = [f"lock.{name}" for name, value in opening.lock.items() if name != "lock" and value is not None]
    choices += [f"leaf.{name}" for name in opening.leaf() if name in ("thick", "stile", "undercut", "height")]
    choices += [
        f"opening.{name}" for name in ("stop", "hand", "cold", "distance") if opening.facts.get(name) is not None
    ]
    choices += [
        f"item{i}.{name}" for i, item in enumerate(opening.items) for name in ("iy", "iw", "face") if item.get(name)
    ]
    opening.blank = set(rng.sample(choices, k=min(len(choices), rng.choice((1, 1, 2)))))


def _facts(rng: Random, **more: object) -> Cells:
    facts: Cells = {
        "form": "Single door",
        "hand": rng.choice(("LH", "RH", "LHR", "RHR")),
        "rating": rng.choice(("Not rated", "Not rated", "Not rated", "20 min", "45 min", "90 min")),
        "egress": rng.choice(("Not on an egress path", "Not on an egress path", "On an egress path")),
        "accessible": rng.choice(("yes", "no")),
        "exposure": "Interior",
        "operations": rng.choice((5, 20, 40, 60, 150, 600)),
        "power_wish": rng.choice(("Whatever serves", "Battery", "Remote supply")),
        "distance": rng.choice((5.0, 18.0, 40.0, 90.0)),
        "frame": "Hollow metal",
        "stop": rng.choice((12.7, 15.875, 19.05)),
        "cold": 18.0,
        "way_out": "Towards the key side",
        "wall": "Masonry or concrete",
        "building": "Verify House",
        "level": "1",
        "room": "Store",
    }
    if rng.random() < 0.2:
        facts["exposure"] = "Exterior"
        facts["cold"] = rng.choice((-25.0, -15.0, -5.0, 5.0))
    facts.update(more)
    if facts["egress"] == "Not on an egress path":
        facts.pop("way_out")
    return facts


def _leaf(rng: Random, **more: object) -> Cells:
    leaf: Cells = {
        "leaf": "Single",
        "width": rng.choice((32, 34, 36, 42)) * INCH,
        "height": rng.choice((80, 84, 96)) * INCH,
        "thick": rng.choice((1.375, 1.75, 1.75, 1.75, 2.25)) * INCH,
        "material": rng.choice(("Wood, solid core", "Wood, solid core", "Hollow metal", "Hollow metal", "Composite")),
        "construction": "Flush",
        "undercut": rng.choice((0.0, 6.35, 12.7)),
    }
    leaf.update(more)
    if leaf["material"] == "Wood, solid core" and rng.random() < 0.2:
        leaf["construction"] = "Stile and rail"
        leaf["stile"] = inches(rng, 3.5, 5.5)
    leaf["core"] = _CORES.get(str(leaf["material"]), "Empty tube or frame")
    return leaf


_CORES: Final = {
    "Wood, solid core": "Solid wood or particleboard",
    "Hollow metal": "Honeycomb",
    "Composite": "Foam",
    "Mineral core": "Mineral, temperature rise",
}


def _item(kind: str, face: str, x: float, y: float, w: float, h: float, proud: float, fate: str = "Keep") -> Cells:
    return {
        "kind": kind,
        "on_leaf": "Single",
        "face": face,
        "ix": x,
        "iy": y,
        "iw": w,
        "ih": h,
        "proud": proud,
        "fate": fate,
    }


def _others(rng: Random, leaf: Cells, x: float, y: float, reach: float) -> list[Cells]:
    """Draw what else stands on a leaf, some of it near the lock, which reaches so far from its edge."""
    found: list[Cells] = []
    wide, high = leaf["width"], leaf["height"] + leaf["undercut"]
    if rng.random() < 0.15:
        found.append(_item("Closer", "Inside", wide - 5 * INCH, high - 2 * INCH, 10 * INCH, 2.5 * INCH, 60.0))
    if rng.random() < 0.15:
        found.append(_item("Kick plate", "Key side", wide / 2, leaf["undercut"] + 6 * INCH, wide - 50, 250.0, 1.5))
    if rng.random() < 0.15:
        # Beside the case or the bore that is there, or above it.
        near = max(reach + inches(rng, 0.125, 2.5), leaf.get("stile") or 0.0) + 2.5 * INCH
        found.append(_item("Lite or vision panel", "Both faces", near, y + inches(rng, 0, 14), 127.0, 500.0, 6.0))
    if rng.random() < 0.12:
        up = inches(rng, 4.5, 7)
        found.append(_item("Deadbolt", "Both faces", x, y + up, 63.5, 63.5, 20.0))
    if rng.random() < 0.12:
        found.append(_item("Pull", "Key side", x + inches(rng, -0.5, 2), y + inches(rng, -4, 8), 50.8, 203.2, 50.0))
    if rng.random() < 0.1:
        found.append(_item("Fire label", "Inside", x + inches(rng, 0, 2), y + inches(rng, 4, 10), 50.8, 25.4, 0.5))
    return found


def _mortise(rng: Random, mark: str) -> Opening:
    leaf = _leaf(rng)
    x, y = inches(rng, 2.5, 2.75, 4), inches(rng, 38, 44)
    turn = rng.random() < 0.3
    lock: Cells = {
        "lock": "Mortise, threaded cylinder",
        "function": rng.choice(("Office or entry", "Storeroom", "Classroom", "Deadlock")),
        "backset": x,
        "y": y,
        "case_height": inches(rng, 5.75, 6.25),
        "case_depth": inches(rng, 4, 4.25),
        "case_width": rng.choice((22.225, 25.4)),
        "case_above": inches(rng, 1, 2.5),
        "case_offset": rng.choice((0.0, 0.0, 0.0, 1.5875, -1.5875)),
        "trim_key": rng.choice((0.0, 1.5875, 3.175, 6.35)),
        # Of trim whose reach nobody measured the program asks: here none stands proud on the inside.
        "trim_inside": 0.0,
        "thumb_turn": "yes" if turn else "no",
        "cam": rng.choice(("Straight cam", "Clover cam")),
    }
    items = []
    below = inches(rng, 1.75, 3.75)
    items.append(_item("Lever or knob", "Both faces", x, y - below, 127.0, 2.25 * INCH, 60.0))
    if turn:
        up = rng.choice((0.0, 0.0, inches(rng, 2.5, 4)))
        items.append(_item("Thumb turn", "Inside", x, y + up, 25.4, 2 * INCH, 25.0))
    items += _others(rng, leaf, x, y, lock["case_depth"])
    return _paired(rng, Opening(mark, _facts(rng), [leaf], lock, items))


def _paired(rng: Random, opening: Opening) -> Opening:
    """Make some a pair, with a transfer that stays on one leaf or the other."""
    if rng.random() < 0.85:
        return opening
    leaf = opening.leaves[0]
    leaf["leaf"] = "Active"
    opening.facts["form"] = "Pair"
    opening.leaves.append(leaf | {"leaf": "Inactive"})
    for item in opening.items:
        item["on_leaf"] = "Active"
    if rng.random() < 0.5:
        transfer = _item("Power transfer", "Lock edge", leaf["width"] - 10.0, 1000.0, 25.4, 228.6, 0.0)
        opening.items.append(transfer | {"on_leaf": rng.choice(("Active", "Inactive"))})
    return opening


def _narrow(rng: Random, mark: str) -> Opening:
    x = rng.choice((31 / 32, 1.125, 1.125, 1.5)) * INCH
    # Behind the centre of its cylinder an old lock of 1-1/2 in had its head and a part of its case.
    stile = rng.choice((2.5, 3.5) if x > 30.0 else (2.0, 2.125, 2.125, 2.5)) * INCH
    leaf = _leaf(
        rng, material="Aluminium", construction="Narrow stile", stile=stile, thick=rng.choice((1.75, 1.75, 2.0)) * INCH
    )
    y = inches(rng, 38, 44)
    lock: Cells = {
        "lock": "Mortise, threaded cylinder",
        "function": "Deadlock",
        "backset": x,
        "y": y,
        "case_height": inches(rng, 5.5, 6),
        "case_depth": x + inches(rng, 0.5, 0.875),
        "case_width": rng.choice((22.225, 25.4)),
        "case_above": inches(rng, 1.25, 1.75),
        "case_offset": 0.0,
        "trim_key": 0.0,
        "trim_inside": 0.0,
        "thumb_turn": "yes" if rng.random() < 0.8 else "no",
        "cam": "Straight cam",
    }
    items = []
    if lock["thumb_turn"] == "yes":
        items.append(_item("Thumb turn", "Inside", x, y, 25.4, 38.1, 25.0))
    if rng.random() < 0.3:
        items.append(_item("Pull", "Key side", x + inches(rng, 0, 0.5), y + inches(rng, -4, 6), 25.4, 228.6, 50.0))
    facts = _facts(rng, frame="Aluminium", rating="Not rated", stop=rng.choice((9.525, 12.7, 15.875)))
    if facts["hand"] in ("LH", "RH"):
        # The stop stands on the key face, and the old head of 1-3/8 in had its place beside it.
        facts["stop"] = (x - 0.6875 * INCH) * rng.choice((0.5, 0.8, 0.95))
    return Opening(mark, facts, [leaf], lock, items)


def _bored(rng: Random, mark: str) -> Opening:
    leaf = _leaf(rng)
    x, y = rng.choice((60.325, 69.85)), inches(rng, 36, 42)
    lock: Cells = {
        "lock": "Bored lever or knob",
        "function": rng.choice(("Office or entry", "Storeroom", "Classroom", "Passage")),
        "backset": x,
        "y": y,
        "cross_bore": rng.choice((53.975, 53.975, 38.1, 50.8)),
        "edge_bore": rng.choice((25.4, 22.225)),
    }
    items = _others(rng, leaf, x, y, x + lock["cross_bore"] / 2)
    if rng.random() < 0.06:
        items.append(
            _item("Exit device", "Inside", leaf["width"] / 2, y + inches(rng, -3, 3), leaf["width"] - 60, 70.0, 70.0)
        )
    if rng.random() < 0.06:
        items.append(_item("Lever or knob", "Both faces", x, y + inches(rng, 3, 5), 127.0, 57.15, 60.0))
    return Opening(mark, _facts(rng), [leaf], lock, items)


def _rim(rng: Random, mark: str) -> Opening:
    leaf = _leaf(rng)
    x, y = inches(rng, 2.25, 2.75), inches(rng, 40, 48)
    lock: Cells = {
        "lock": "Rim, cylinder with tailpiece",
        "function": rng.choice(("Storeroom", "Deadlock")),
        "backset": x,
        "y": y,
        "case_height": inches(rng, 3, 4),
        "case_depth": x + inches(rng, 0.5, 1.25),
        "case_width": inches(rng, 0.375, 1.125),
        "case_above": inches(rng, 1.25, 2),
        "trim_key": rng.choice((0.0, 1.5875, 3.175)),
        "trim_inside": 0.0,
        "thumb_turn": "yes",
        "cam": rng.choice(("Flat tailpiece", "Cross tailpiece")),
    }
    items = _others(rng, leaf, x, y, lock["case_depth"])
    if rng.random() < 0.4:
        items.append(_item("Lever or knob", "Both faces", 69.85, y - inches(rng, 3, 6), 127.0, 57.15, 60.0))
    return Opening(mark, _facts(rng), [leaf], lock, items)


def _exit(rng: Random, mark: str) -> Opening:
    leaf = _leaf(rng)
    x, y = rng.choice((60.325, 69.85)), inches(rng, 38, 44)
    lock: Cells = {
        "lock": "Rim, cylinder with tailpiece",
        "function": "Exit device with key outside",
        "backset": x,
        "y": y,
        "case_height": 203.2,
        "case_depth": 76.2,
        "case_width": inches(rng, 1, 2),
        "case_above": inches(rng, 2, 3),
        "trim_key": 3.175,
        "trim_inside": 0.0,
        "thumb_turn": "no",
        "cam": "Flat tailpiece",
    }
    wide = leaf["width"]
    items = [_item("Exit device", "Inside", wide / 2, y - inches(rng, 0, 3), wide - 2 * INCH, 70.0, 75.0)]
    items += _others(rng, leaf, x, y, lock["case_depth"])
    return Opening(mark, _facts(rng, egress="Egress, panic hardware required"), [leaf], lock, items)


def _euro(rng: Random, mark: str) -> Opening:
    leaf = _leaf(
        rng, thick=rng.choice((40.0, 44.0, 54.0, 68.0)), material=rng.choice(("Wood, solid core", "Hollow metal"))
    )
    x, y = rng.choice((55.0, 65.0)), rng.choice((978.0, 1000.0, 1050.0))
    lock: Cells = {
        "lock": "Euro profile",
        "function": rng.choice(("Office or entry", "Storeroom", "Deadlock")),
        "backset": x,
        "y": y,
        "case_height": 165.0,
        "case_depth": x + 34.0,
        "case_width": rng.choice((14.0, 15.0)),
        "case_above": rng.choice((100.0, 118.0)),
        "case_offset": 0.0,
        "trim_key": rng.choice((2.0, 8.0, 10.0)),
        "trim_inside": 0.0,
        "thumb_turn": rng.choice(("yes", "yes", "no")),
        "cam": "Euro-profile cam",
    }
    items = [_item("Lever or knob", "Both faces", x, y + 72.0, 140.0, 52.0, 55.0)]
    items.append(_item("Trim or escutcheon", "Both faces", x, y + 36.0, 40.0, 230.0, 8.0))
    return Opening(mark, _facts(rng, rating="Not rated"), [leaf], lock, items)


def _cabinet(rng: Random, mark: str) -> Opening:
    leaf = _leaf(
        rng,
        width=rng.choice((300.0, 450.0, 600.0)),
        height=rng.choice((400.0, 700.0)),
        thick=rng.choice((12.7, 15.875, 19.05, 25.4)),
        undercut=700.0,
        material=rng.choice(("Wood, solid core", "Wood, solid core", "Hollow metal")),
        construction="Flush",
    )
    leaf.pop("stile", None)
    leaf["construction"] = "Flush"
    y = leaf["undercut"] + rng.choice((80.0, leaf["height"] / 2, leaf["height"] - 80.0))
    lock: Cells = {
        "lock": "Cabinet bolt",
        "function": "Deadlock",
        "backset": inches(rng, 1, 1.5),
        "y": y,
        "thumb_turn": "no",
    }
    facts = _facts(
        rng, form="Cabinet", rating="Not rated", egress="Not on an egress path", power_wish="Battery", frame="Wood"
    )
    facts.pop("stop")
    return Opening(mark, facts, [leaf], lock, [])


def _gate(rng: Random, mark: str) -> Opening:
    leaf = _leaf(
        rng,
        width=rng.choice((900.0, 1100.0)),
        height=rng.choice((1000.0, 1800.0)),
        thick=rng.choice((40.0, 50.8)),
        material="Steel gate",
        construction="Stile and rail",
        stile=rng.choice((60.0, 101.6, 120.0)),
        undercut=rng.choice((50.0, 100.0)),
    )
    lock: Cells = {
        "lock": "Gate lock or latch",
        "function": "Storeroom",
        "backset": rng.choice((30.0, 50.8)),
        "y": rng.choice((900.0, 950.0, 1000.0)),
    }
    facts = _facts(
        rng, form="Gate", rating="Not rated", frame="No frame", stop=0.0, exposure="Exterior", power_wish="Battery"
    )
    facts["cold"] = rng.choice((-25.0, -10.0, 5.0))
    return Opening(mark, facts, [leaf], lock, [])


def _patch(rng: Random, mark: str) -> Opening:
    leaf = _leaf(rng, thick=rng.choice((10.0, 12.0)), material="Glass", construction="Frameless glass")
    leaf.pop("stile", None)
    leaf["construction"] = "Frameless glass"
    lock: Cells = {
        "lock": "Euro profile",
        "function": "Deadlock",
        "backset": 55.0,
        "y": leaf["undercut"] + rng.choice((80.0, 1000.0)),
        "case_height": 160.0,
        "case_depth": 100.0,
        "case_width": 10.0,
        "case_above": 50.0,
        "case_offset": 0.0,
        "trim_key": 12.0,
        "trim_inside": 12.0,
        "thumb_turn": "yes",
        "cam": "Euro-profile cam",
    }
    facts = _facts(rng, rating="Not rated", frame="No frame", stop=0.0)
    return Opening(mark, facts, [leaf], lock, [_item("Other", "Both faces", 80.0, lock["y"], 160.0, 160.0, 12.0)])


def _wall(rng: Random, mark: str) -> Opening:
    form = rng.choice(("Reader at a lift", "Reader at a turnstile"))
    facts = _facts(rng, form=form, rating="Not rated", egress="Not on an egress path", frame="No frame")
    for name in ("hand", "stop"):
        facts.pop(name)
    lock: Cells = {"lock": "Reader only, no lock", "y": inches(rng, 36, 48)}
    return Opening(mark, facts, [], lock, [])


_DRAW: Final = {
    "mortise": _mortise,
    "narrow": _narrow,
    "bored": _bored,
    "rim": _rim,
    "exit": _exit,
    "euro": _euro,
    "cabinet": _cabinet,
    "gate": _gate,
    "patch": _patch,
    "wall": _wall,
}
