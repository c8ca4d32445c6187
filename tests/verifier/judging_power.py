"""Judges the power: volts at both ends of the tolerance, current and its kind, wire, the way to it, cells, cold."""

from collections.abc import Iterable
from math import pi
from typing import Final

from tests.verifier.bodies import TOLERANCE_MM, Rod, meet
from tests.verifier.standing import Standing
from tests.verifier.violation import Found

COPPER_OHM_MM2_M: Final = 1 / 58
"""Resistivity of copper at 20 degC; IEC 60028. The coolest case: a real conductor loses more."""
PULL_MM: Final = 60.0
"""A hole in the hinge edge that is no deeper is one by which a wire is pulled in; a raceway is bored to the lock."""
PULLED_THROUGH: Final = ("Honeycomb", "Empty tube or frame")
NEVER_BORED: Final = ("Foam", "Mineral, temperature rise", "Steel stiffeners")
"""Cores through which a wire is pulled, and such as are left alone on site; field guideline, read."""
LEAST_DAYS: Final = 180.0
"""Between two changes of cells: common practice of the shop, a limit of the project; without any loss from cold."""


def ohm_per_m(gauge: str) -> float:
    """Resistance of one solid copper conductor at 20 degC, from the definition of its gauge (ASTM B258).

    >>> round(ohm_per_m("18 AWG") * 1000, 2)
    20.95
    """
    number = int(gauge.split()[0])
    diameter = 0.127 * 92 ** ((36 - number) / 39)
    return COPPER_OHM_MM2_M / (pi * diameter**2 / 4)


def judged(at: Standing) -> Iterable[Found]:
    """Yield what is wrong with how an opening is fed."""
    if at.unit is None:
        return
    yield from _cold(at)
    if at.power == "battery":
        yield from _battery(at)
    elif at.power == "supply":
        yield from _supply(at)
    else:
        yield ("unit-unfed", {}, "nothing feeds the unit")


def _cold(at: Standing) -> Iterable[Found]:
    low = at.opening.facts.get("cold")
    if low is None or at.unit is None:
        return
    cells = at.part("battery") if at.power == "battery" else None
    for family, part in (("unit-too-cold", at.unit), ("cells-too-cold", cells)):
        if part is not None and part.get("cold") is not None and low < part["cold"]:
            yield (
                family,
                {"opening_c": low, "part_c": part["cold"]},
                f"the opening sees {low:g} degC, the part is declared down to {part['cold']:g}",
            )


def _battery(at: Standing) -> Iterable[Found]:
    unit, cell = at.unit, at.part("battery")
    if unit is None or cell is None or unit.get("cell") is None:
        yield ("cells-missing", {}, "no cells for a unit on batteries")
        return
    count = at.roles["battery"][0][2]
    if cell["designation"] != unit["cell"] or count < unit["cells"]:
        yield ("cells-wrong", {"cells": count}, f"the unit takes {unit['cells']} {unit['cell']}")
    daily = unit["standing_ua"] * 24 / 1000
    daily += at.opening.facts["operations"] * unit["operation_ma"] * unit["operation_s"] / 3600
    daily += cell["mah"] * cell["self_discharge"] / 365.25
    # Where the data sheet says what the cold leaves, no more is there at that temperature.
    cold = at.opening.facts.get("cold")
    stated = cell.get("cold_at") is not None and cold is not None and cold <= cell["cold_at"]
    days = cell["mah"] * cell["usable"] * (cell["cold_left"] if stated else 1.0) / daily
    if days < LEAST_DAYS - 0.5:
        yield (
            "battery-life",
            {"days": days, "mah_per_day": daily},
            f"{cell['mah']:g} mAh, of which {cell['usable']:.0%}, at {daily:.2f} mAh a day last {days:.0f} days",
        )


def _supply(at: Standing) -> Iterable[Found]:
    unit, source, wire = at.unit, at.source, at.wire
    if unit is None or source is None:
        yield ("supply-missing", {}, "no supply for a unit on a supply")
        return
    if unit.get("supply_low") is None:
        yield ("unit-takes-no-supply", {}, "the unit is declared for no supply")
        return
    if source.get("current") != "DC":
        yield ("supply-not-dc", {}, f"the supply's output is declared {source.get('current') or 'not at all'}")
    high = source["volts"] * (1 + source["tolerance"])
    if high > unit["supply_high"] + 1e-6:
        yield (
            "supply-over-voltage",
            {"high_v": high, "unit_v": unit["supply_high"]},
            f"{source['volts']:g} V and {source['tolerance']:.0%} are {high:.2f} V; the unit takes "
            f"{unit['supply_high']:g}",
        )
    peak = max(unit["supply_a"], unit.get("inrush_a") or 0.0)
    drawn = unit["supply_a"] if at.laid is None else at.laid.drawn_a
    if source["amps"] < drawn:
        yield (
            "supply-current",
            {"amps": source["amps"], "drawn_a": drawn},
            f"the supply gives {source['amps']:g} A, what hangs on it draws {drawn:g}",
        )
    if wire is None:
        yield ("wire-missing", {}, "no wire from the supply")
        return
    if wire["conductors"] < 2:
        yield ("wire-one-conductor", {"conductors": wire["conductors"]}, "a circuit needs two conductors")
    yield from _volts(at, peak)
    yield from _across(at)
    yield from _raceway(at)


def _volts(at: Standing, peak: float) -> Iterable[Found]:
    unit, source, wire = at.unit, at.source, at.wire
    run = at.opening.facts.get("distance") if at.laid is None else at.laid.run_m
    if unit is None or source is None or wire is None or run is None:
        return
    ohm = 2 * run * ohm_per_m(wire["gauge"])
    transfer = at.part("power-transfer")
    over = 0.0
    if transfer is not None:
        over = 2 * transfer["length"] / 1000 * ohm_per_m(transfer["gauge"])
    low = source["volts"] * (1 - source["tolerance"])
    if at.laid is not None and at.laid.end_v is not None:
        # Without mains the battery feeds it until it is empty.
        low = min(low, at.laid.end_v)
    for family, amps in (("supply-drop", unit["supply_a"]), ("supply-drop-inrush", peak)):
        left = low - amps * (ohm + over)
        if left < unit["supply_low"] - 0.005:
            without = low - amps * ohm
            if family == "supply-drop" and without >= unit["supply_low"]:
                family = "drop-in-transfer"
            yield (
                family,
                {"left_v": left, "needs_v": unit["supply_low"], "amps": amps, "ohm": ohm + over},
                f"{low:.2f} V less {amps:g} A over {ohm:.2f} ohm of wire and {over:.2f} of loop or hinge leave "
                f"{left:.2f} V; the unit needs {unit['supply_low']:g}",
            )
            return


def _raceway(at: Standing) -> Iterable[Found]:
    """Judge how the wire comes across the leaf: what may be bored or pulled on site, and what lies over its face."""
    rated = at.opening.facts.get("rating") not in (None, "Not rated")
    core = at.leaf.get("core")
    for bore in at.bores:
        if bore.purpose != "raceway" or not isinstance(bore.body, Rod):
            continue
        if rated:
            yield ("raceway-in-rated-leaf", {}, "on site no raceway is made in a rated leaf without its listing")
        bored = bore.body.length > PULL_MM
        tube = at.leaf["material"] == "Aluminium" or at.leaf["material"] == "Steel gate"
        if core in NEVER_BORED or (not bored and not tube and core not in PULLED_THROUGH):
            yield ("raceway-in-core", {"deep_mm": bore.body.length}, f"no wire comes through a core of {core}")
        for kind, body in at.bodies() if bored else ():
            if meet(bore.body, body):
                yield ("raceway-cuts-item", {"deep_mm": bore.body.length}, f"the raceway meets the {kind.lower()}")
    over, wire = at.part("raceway"), at.part("wire")
    if over is None or wire is None:
        return
    if rated and over.get("listed") != "yes":
        yield ("rated-unlisted", {}, "the raceway over a rated leaf has no listing for it")
    if at.leaf["material"] == "Glass" and over.get("glass") != "yes":
        yield ("raceway-on-glass", {}, "a raceway that may not be bonded stands on glass")
    if wire["diameter"] > over["inside"] + TOLERANCE_MM:
        yield ("raceway-too-small", {"wire_mm": wire["diameter"]}, "the wire is thicker than the raceway is open")


def _across(at: Standing) -> Iterable[Found]:
    """Judge the way from the frame to the unit: over the hinge edge, then across the leaf."""
    if not at.leaf:
        return
    transfer = at.part("power-transfer")
    there = [item for item in at.opening.items if item["kind"] == "Power transfer" and item.get("fate") == "Keep"]
    own = [item for item in there if item["on_leaf"] == at.leaf["leaf"]]
    if transfer is None and not own:
        family = "transfer-on-other-leaf" if there else "transfer-missing"
        yield (family, {}, "nothing carries the power onto the leaf that has the unit")
    if transfer is not None and transfer["conductors"] < 2:
        yield ("transfer-conductors", {"conductors": transfer["conductors"]}, "it carries fewer than two conductors")
    # From the hinge edge to the unit: a raceway, or wire that is longer than the run to the frame by that way.
    width = at.leaf["width"]
    hinge = max((b.body.bounds().high[0] for b in at.bores if b.purpose in ("cable", "channel")), default=0.0)
    run = at.opening.facts.get("distance") or 0.0
    wired = sum(count for _, _, count in at.roles.get("wire", []))
    place = at.place.get("x_mm") or 0.0
    if any(bore.purpose == "raceway" for bore in at.bores) or at.part("raceway") is not None:
        return
    if at.leaf.get("raceway") == "yes":
        return
    if hinge < width - 50.0:
        yield (
            "no-wire-across-leaf",
            {"leaf_mm": width, "unit_x_mm": place, "wire_m": wired, "run_m": run},
            f"from the hinge edge at {width:.0f} mm to the unit at {place:.0f} mm neither raceway nor surface way is "
            "printed",
        )
