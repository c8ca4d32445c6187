"""Fixed openings, each as small as it can be, for the ways in which an opening that is called fitted cannot be.

Each is one change to a plain opening or to the plain catalogue. What family it belongs to stands beside it; whether the
program still takes it for fitted is the test's to say.
"""

from collections.abc import Callable
from dataclasses import dataclass
from random import Random
from typing import Final

from tests.verifier.cells import Cells, Opening
from tests.verifier.held import FIXED, IN_LEAF, ON_FACE
from tests.verifier.shops import INCH, TEMPLATE, catalogue

Parts = dict[str, Cells]


@dataclass(frozen=True)
class FixedOpening:
    """One opening under one catalogue."""

    family: str
    opening: Opening
    shop: str = "plain"
    """Which catalogue: `SHOPS`."""

    @property
    def mark(self) -> str:
        """The opening's mark."""
        return self.opening.mark


# --- catalogues -----------------------------------------------------------------------------------------------------


def plain() -> Parts:
    """Return a catalogue without anything odd."""
    parts = catalogue(Random("fixed"))
    parts.pop("VGS", None)
    for part in parts.values():
        kind = part["kind"]
        for name in TEMPLATE:
            part.pop(name, None)
        if "lead" in part and kind != "fixed-reader":
            part["lead"] = 228.6
        if "listed" in part and kind != "power-transfer":
            part["listed"] = "yes"
        if kind in ("surface-unit", "edge-unit"):
            part |= {
                "supply_low": 9.0,
                "supply_high": 14.0,
                "supply_a": 0.35,
                "inrush_a": None,
                "draws": "Constant current",
                "cold": -30.0,
            }
            part |= {"standing_ua": 45.0, "operation_ma": 120.0, "operation_s": 3.0}
        if kind == "surface-unit":
            narrow = part["housing"] == "Narrow"
            part |= {"width": 40.0 if narrow else 76.0, "window_y0": 14.0, "exposure": "Exterior"}
        if kind == "collar":
            part["outer"] = 41.0
        if kind == "bored-lever-lock":
            part["trim"] = 88.9
        if kind == "power-supply":
            part |= {"current": "DC", "tolerance": 0.05}
        if kind == "primary-battery":
            part["cold"] = -35.0
        if kind == "power-transfer":
            part |= {"gauge": "22 AWG", "length": 457.2, "conductors": 4}
        if kind == "wire":
            part["conductors"] = 2
        if kind == "gate-lock":
            part |= {"case_width": 50.0, "case_depth": 20.0, "release": "no"}
    for number in [number for number, part in parts.items() if part["kind"] == "fastener"]:
        del parts[number]
    for number, form, size, long, material in (
        ("VDW6", "Wood screw", "#6", 9.525, "Wood, solid core"),
        ("VDW8", "Wood screw", "#8", 9.525, "Wood, solid core"),
        ("VDH6", "Sheet-metal screw", "#6", 9.525, "Hollow metal"),
        ("VDH8", "Sheet-metal screw", "#8", 9.525, "Hollow metal"),
        ("VDA6", "Sheet-metal screw", "#6", 9.525, "Aluminium"),
        ("VDA8", "Sheet-metal screw", "#8", 9.525, "Aluminium"),
        ("VDG6", "Sheet-metal screw", "#6", 25.4, "Steel gate"),
        ("VDG8", "Sheet-metal screw", "#8", 25.4, "Steel gate"),
        ("VDM8", "Through bolt", "M8", 90.0, "Steel gate"),
    ):
        parts[number] = {"kind": "fastener", "form": form, "size": size, "length": long, "material": material}
    parts["VDM8"]["head"] = "Hexagon"
    return parts


def _changed(kind: str, **facts: object) -> Callable[[], Parts]:
    def made() -> Parts:
        parts = plain()
        for part in parts.values():
            if part["kind"] == kind:
                part |= facts
        return parts

    return made


def _without(*numbers: str) -> Callable[[], Parts]:
    def made() -> Parts:
        return {number: part for number, part in plain().items() if number not in numbers}

    return made


def _long_screws() -> Parts:
    parts = plain()
    for number in ("VDH6", "VDH8"):
        parts[number]["length"] = 44.45
    return parts


def _short_bolts() -> Parts:
    parts = plain()
    # Only the lock that is bolted on.
    del parts["VGW"]
    # Gate of 50.8 and case of 20 leave no room for a nut.
    parts["VDM8"]["length"] = 70.0
    return parts


def _hole_below() -> Parts:
    parts = plain()
    for number in ("VUN", "VUZ"):
        parts[number] |= {"window_y0": -30.0, "price": 100}
    return parts


def _short_lead() -> Parts:
    parts = {number: part for number, part in plain().items() if part["kind"] != "lead-extension"}
    for part in parts.values():
        if part["kind"] == "mortise-cylinder":
            part["lead"] = 214.0
    for number in ("VUN", "VUZ"):
        parts[number]["window_y0"] = -30.0
    return parts


def _high_unit() -> Parts:
    parts = plain()
    for part in parts.values():
        if part["kind"] in ("surface-unit", "edge-unit"):
            part["supply_high"] = 12.3
    return parts


SHOPS: Final[dict[str, Callable[[], Parts]]] = {
    "plain": plain,
    "long screws": _long_screws,
    "hole below the plate": _hole_below,
    "short lead": _short_lead,
    "in the edge": _without("VUW", "VUN", "VUX", "VUG", "VUZ"),
    "no gate bolts": _without("VDM8"),
    "short gate bolts": _short_bolts,
    "AC": _changed("power-supply", current="AC"),
    "undeclared output": _changed("power-supply", current=None),
    "12.3 V at most": _high_unit,
    "one conductor": _changed("wire", conductors=1),
    "thin loop": _changed("power-transfer", gauge="30 AWG", length=3000.0),
    "mild units": _changed("surface-unit", cold=5.0),
    "mild cells": _changed("primary-battery", cold=5.0),
}


_SUPPLIED: Final[Cells] = {"power_wish": "Remote supply"}
_HOLLOW: Final[Cells] = {"material": "Hollow metal"}

# --- openings -------------------------------------------------------------------------------------------------------


def _facts(**more: object) -> Cells:
    return {
        "form": "Single door",
        "hand": "RHR",
        "rating": "Not rated",
        "egress": "Not on an egress path",
        "accessible": "no",
        "exposure": "Interior",
        "operations": 20,
        "power_wish": "Battery",
        "distance": 10.0,
        "frame": "Hollow metal",
        "stop": 15.875,
        **more,
    }


def _leaf(**more: object) -> Cells:
    return {
        "leaf": "Single",
        "width": 914.4,
        "height": 2133.6,
        "thick": 44.45,
        "material": "Wood, solid core",
        "construction": "Flush",
        "undercut": 0.0,
        **more,
    }


def existing_item(kind: str, face: str, x: float, y: float, w: float, h: float, **more: object) -> Cells:
    return {
        "kind": kind,
        "on_leaf": "Single",
        "face": face,
        "ix": x,
        "iy": y,
        "iw": w,
        "ih": h,
        "proud": 20.0,
        "fate": "Keep",
        # Nothing of it enters the leaf but what a case says.
        **({"bolts": 0.0} if kind in FIXED else {}),
        **({"device": "Rim, latch on the face"} if kind == "Exit device" else {}),
        **more,
    }


def _mortise_lock(**more: object) -> Cells:
    return {
        "lock": "Mortise, threaded cylinder",
        "function": "Storeroom",
        "backset": 69.85,
        "y": 1016.0,
        "case_height": 152.4,
        "case_depth": 107.95,
        "case_width": 25.4,
        "case_above": 44.45,
        "case_offset": 0.0,
        "trim_key": 3.175,
        "trim_inside": 0.0,
        "thumb_turn": "no",
        "cam": "Straight cam",
        **more,
    }


def mortise(mark: str, facts: Cells | None = None, leaf: Cells | None = None, lock: Cells | None = None) -> Opening:
    """Return a mortise lock with its lever in a wood leaf."""
    items = [existing_item("Lever or knob", "Both faces", 69.85, 920.0, 127.0, 57.15)]
    return Opening(mark, _facts(**(facts or {})), [_leaf(**(leaf or {}))], _mortise_lock(**(lock or {})), items)


def narrow(mark: str, facts: Cells | None = None, **lock: object) -> Opening:
    """Return a deadlock with its thumb turn in an aluminium stile of 2-1/8 in."""
    leaf = _leaf(material="Aluminium", construction="Narrow stile", stile=2.125 * INCH)
    has = _mortise_lock(
        function="Deadlock",
        backset=28.575,
        case_height=149.225,
        case_depth=47.625,
        case_above=38.1,
        trim_key=0.0,
        thumb_turn="yes",
    )
    turn = existing_item("Thumb turn", "Inside", 28.575, 1016.0, 25.4, 38.1)
    return Opening(mark, _facts(frame="Aluminium", stop=9.525, **(facts or {})), [leaf], has | lock, [turn])


def bored(mark: str, facts: Cells | None = None, leaf: Cells | None = None, **lock: object) -> Opening:
    """Return a bored lock in a wood leaf."""
    has: Cells = {
        "lock": "Bored lever or knob",
        "function": "Storeroom",
        "backset": 69.85,
        "y": 965.2,
        "cross_bore": 53.975,
        "edge_bore": 25.4,
    }
    return Opening(mark, _facts(**(facts or {})), [_leaf(**(leaf or {}))], has | lock, [])


def rim(mark: str, facts: Cells | None = None, leaf: Cells | None = None, **lock: object) -> Opening:
    """Return a rim lock on a wood leaf."""
    has: Cells = {
        "lock": "Rim, cylinder with tailpiece",
        "function": "Storeroom",
        "backset": 60.325,
        "y": 1117.6,
        "case_height": 88.9,
        "case_depth": 76.2,
        "case_width": 25.4,
        "case_above": 38.1,
        "trim_key": 3.175,
        "trim_inside": 0.0,
        "thumb_turn": "yes",
        "cam": "Flat tailpiece",
    }
    return Opening(mark, _facts(**(facts or {})), [_leaf(**(leaf or {}))], has | lock, [])


def gate(mark: str, **facts: object) -> Opening:
    """Return a lock on a gate of steel tube."""
    leaf = _leaf(
        width=1000.0, height=1500.0, thick=50.8, material="Steel gate", construction="Stile and rail", undercut=50.0
    )
    leaf["stile"] = 120.0
    lock: Cells = {"lock": "Gate lock or latch", "function": "Storeroom", "backset": 50.8, "y": 950.0}
    has = _facts(form="Gate", frame="No frame", stop=0.0, exposure="Exterior", cold=5.0)
    return Opening(mark, has | facts, [leaf], lock, [])


def cabinet(mark: str, **leaf: object) -> Opening:
    """Return a cabinet's door."""
    door = _leaf(width=450.0, height=700.0, thick=19.05, undercut=700.0) | leaf
    lock: Cells = {
        "lock": "Cabinet bolt",
        "function": "Deadlock",
        "backset": 31.75,
        "y": 1000.0,
        "thumb_turn": "no",
    }
    facts = _facts(form="Cabinet", frame="Wood")
    facts.pop("stop")
    return Opening(mark, facts, [door], lock, [])


def wall(mark: str) -> Opening:
    """Return a reader at a turnstile."""
    facts = _facts(form="Reader at a turnstile", frame="No frame", power_wish="Remote supply")
    for name in ("hand", "stop"):
        facts.pop(name)
    return Opening(mark, facts, [], {"lock": "Reader only, no lock", "y": 1016.0}, [])


def _with(opening: Opening, *items: Cells) -> Opening:
    opening.items += items
    return opening


def _exit_device(mark: str, **device: object) -> Opening:
    opening = rim(mark, {"egress": "Egress, panic hardware required"}, {"material": "Hollow metal"})
    opening.lock |= {
        "function": "Exit device with key outside",
        "y": 1016.0,
        "case_height": 203.2,
        "case_width": 50.8,
        "case_above": 63.5,
        "thumb_turn": "no",
    }
    return _with(opening, existing_item("Exit device", "Inside", 457.2, 990.0, 863.6, 70.0, proud=75.0, **device))


def _deadbolt_beside(mark: str) -> Opening:
    opening = mortise(mark, leaf=_HOLLOW)
    # The lever leaves no room straight behind the cylinder; the deadbolt shows on the key side only.
    opening.items = [existing_item("Lever or knob", "Inside", 69.85, 985.0, 127.0, 57.15)]
    return _with(opening, existing_item("Deadbolt", "Key side", 69.85, 1094.0, 50.0, 50.0))


def _other_leaf(mark: str) -> Opening:
    opening = mortise(mark, _SUPPLIED | {"form": "Pair"}, {"leaf": "Active"})
    for item in opening.items:
        item["on_leaf"] = "Active"
    opening.leaves.append(_leaf(leaf="Inactive"))
    transfer = existing_item("Power transfer", "Lock edge", 900.0, 1100.0, 25.0, 200.0, on_leaf="Inactive")
    return _with(opening, transfer)


CASES: Final[tuple[FixedOpening, ...]] = (
    FixedOpening("screw-in-case", mortise("S1", leaf=_HOLLOW), "long screws"),
    FixedOpening(
        "screw-through-leaf",
        mortise("S2", leaf=_HOLLOW | {"thick": 34.925}, lock={"case_width": 22.225}),
        "long screws",
    ),
    FixedOpening("screw-through-leaf", cabinet("S3", material="Hollow metal"), "long screws"),
    FixedOpening("rose-in-stop", bored("B1", {"stop": 19.05}, backset=60.325)),
    FixedOpening("rose-off-stile", bored("B2", leaf={"construction": "Stile and rail", "stile": 107.95})),
    FixedOpening(
        "rose-on-lite",
        _with(bored("B3"), existing_item("Lite or vision panel", "Both faces", 164.0, 1000.0, 120.0, 500.0)),
    ),
    FixedOpening("rose-on-item", _with(bored("B4"), existing_item("Exit device", "Inside", 457.2, 960.0, 863.6, 70.0))),
    FixedOpening(
        "rose-on-item", _with(bored("B5"), existing_item("Lever or knob", "Both faces", 69.85, 1030.0, 127.0, 57.15))
    ),
    FixedOpening(
        "bore-off-stile",
        bored("B6", leaf={"construction": "Stile and rail", "stile": 85.0}, backset=60.325, cross_bore=38.1),
    ),
    FixedOpening(
        "bore-in-lite",
        _with(
            bored("B7", backset=60.325, cross_bore=38.1),
            existing_item("Louvre", "Both faces", 144.0, 965.2, 120.0, 500.0),
        ),
    ),
    FixedOpening("lead-hole-cuts-item", _deadbolt_beside("H1")),
    FixedOpening("lead-hole-uncovered", narrow("H2"), "hole below the plate"),
    FixedOpening(
        "channel-through-spindle",
        _with(
            rim("H3"),
            existing_item("Lever or knob", "Key side", 60.325, 1049.0, 120.0, 50.0),
            existing_item("Other", "Inside", 160.0, 1330.0, 300.0, 330.0),
        ),
    ),
    FixedOpening("bore-undrillable", rim("H4", leaf={"thick": 34.925})),
    FixedOpening("bit-binds-in-square-hole", rim("H5")),
    FixedOpening("unit-on-exit-device", _exit_device("X1")),
    FixedOpening("unit-on-rod", _exit_device("X2", device=ON_FACE, rod_x=60.325, rod_ends="Up and down")),
    FixedOpening("screw-in-item", _exit_device("X3", device=IN_LEAF, rod_x=38.1, rod_ends="Up only")),
    FixedOpening(
        "channel-through-item",
        _with(rim("X4"), existing_item("Pull", "Key side", 60.325, 1270.0, 50.8, 203.2, bolts=12.7)),
    ),
    FixedOpening("collar-on-item", _with(mortise("K1"), existing_item("Pull", "Key side", 69.85, 1090.0, 50.8, 110.0))),
    FixedOpening("head-in-stop", narrow("K2", {"hand": "LH"})),
    FixedOpening(
        "unit-on-nut",
        _with(mortise("K3"), existing_item("Pull", "Key side", 69.85, 1175.0, 30.0, 240.0, bolts=20.0)),
    ),
    FixedOpening(
        "unit-in-turn",
        _with(mortise("K4"), existing_item("Thumb turn", "Inside", 20.0, 1080.0, 12.0, 50.0)),
    ),
    FixedOpening(
        "gate-case-on-item", _with(gate("G3"), existing_item("Pull", "Key side", 50.8, 960.0, 25.0, 160.0, bolts=0.0))
    ),
    FixedOpening(
        "gate-nut-under-item", _with(gate("G4"), existing_item("Pull", "Inside", 50.8, 1010.0, 50.0, 160.0, bolts=0.0))
    ),
    FixedOpening(
        "pocket-meets-lite",
        _with(mortise("E1"), existing_item("Lite or vision panel", "Both faces", 90.0, 1300.0, 100.0, 300.0)),
        "in the edge",
    ),
    FixedOpening(
        "pocket-meets-item",
        _with(mortise("E2"), existing_item("Pull", "Key side", 40.0, 1250.0, 25.4, 228.6, bolts=12.7)),
        "in the edge",
    ),
    FixedOpening("tail-bottoms", rim("R1", case_width=9.525)),
    FixedOpening("gate-bolt-missing", gate("G1"), "no gate bolts"),
    FixedOpening("gate-bolt-short", gate("G2"), "short gate bolts"),
    FixedOpening("case-deeper-than-stile", mortise("C1", leaf={"construction": "Stile and rail", "stile": 101.6})),
    FixedOpening("case-off-leaf", mortise("C2", leaf={"height": 1500.0, "undercut": 1000.0}, lock={"y": 1060.0})),
    FixedOpening(
        "lite-over-lock",
        _with(mortise("C3"), existing_item("Lite or vision panel", "Both faces", 150.0, 1016.0, 100.0, 40.0)),
    ),
    FixedOpening("unit-unfixed", wall("W1")),
    FixedOpening("narrow-stile-plate-place", narrow("N1"), "hole below the plate"),
    FixedOpening("narrow-stile-hole-place", narrow("N2", case_above=60.0)),
    FixedOpening("narrow-lead-through-case", narrow("N3")),
    FixedOpening("narrow-lead-short", narrow("N4"), "short lead"),
    FixedOpening("supply-not-dc", mortise("P1", _SUPPLIED), "AC"),
    FixedOpening("supply-not-dc", mortise("P2", _SUPPLIED), "undeclared output"),
    FixedOpening("supply-over-voltage", mortise("P3", _SUPPLIED), "12.3 V at most"),
    FixedOpening("wire-one-conductor", mortise("P4", _SUPPLIED), "one conductor"),
    FixedOpening("drop-in-transfer", mortise("P5", _SUPPLIED | {"distance": 60.0}), "thin loop"),
    FixedOpening("transfer-on-other-leaf", _other_leaf("P6")),
    FixedOpening("no-wire-across-leaf", mortise("P7", _SUPPLIED)),
    FixedOpening("unit-too-cold", mortise("T1", {"exposure": "Exterior", "cold": -5.0}), "mild units"),
    FixedOpening("cells-too-cold", mortise("T2", {"exposure": "Exterior", "cold": -5.0}), "mild cells"),
    FixedOpening("battery-life", mortise("T3", {"operations": 1000})),
    FixedOpening("egress-locked", gate("O1", egress="On an egress path")),
)
"""What each case is called fitted for although it cannot be; the same family may have several."""
