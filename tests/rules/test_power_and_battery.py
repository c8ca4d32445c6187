"""Rules of power and batteries."""

from dataclasses import replace

import pytest

from hwsched.rules import judge, rule_named
from hwsched.rules.network import across_leaf
from hwsched.rules.network.pack_life import pack_life
from hwsched.values import BatteryLife
from hwsched.values.opening_input import SupplyLink
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import catalogue, chosen, fit, fp, given, hole, item, leaf, lock, opening, part, place

SUPPLY = fit(power="supply")
NEAR = opening(supply_distance_m=20.0)
OUTSIDE = opening(exposure="exterior", temperature_low_c=-10.0)


ACROSS = hole(
    9.525, "raceway", name="way for the wire across the leaf", face="hinge-edge", x_mm=22.2, y_mm=1000.0, depth_mm=809.4
)
"""Bored from the hinge edge of a leaf 914.4 wide to the pocket of a case 105 deep."""
PULLED = hole(
    9.525, "raceway", name="way for the wire across the leaf", face="hinge-edge", x_mm=22.2, y_mm=1000.0, depth_mm=50.8
)
PAIR = (leaf(position="active"), replace(leaf(position="inactive"), id="m"))
BORED_FIT, PULLED_FIT = fit(power="supply", holes=(hole(), ACROSS)), fit(power="supply", holes=(hole(), PULLED))
CHANNEL = part("CHANNEL", "surface-raceway", inside_mm=10.0, width_mm=16.0, fire_listed=False)
OVER = catalogue(add=[CHANNEL])
OVER_FIT = fit(fp("raceway", "CHANNEL", 0.91, "surface-raceway"), power="supply")
STEEL = leaf(material="hollow-metal", core="honeycomb")
MADE = leaf(raceway=True)


def kept_transfer(**facts):
    """A power transfer that stays."""
    return item("power-transfer", face="edge", **{"conductors": 4, **facts})


KEPT_FIT = fit(power="supply", without=("power-transfer",))


def strike(**facts):
    """An electric strike that stays, with what its label says."""
    usual = {"rated_v": 12.0, "rated_a": 0.35, "current_form": "dc", "fail": "fail-secure"}
    return item("electric-strike", face="frame", **{**usual, **facts})


TOLD_UNIT = catalogue(UNIT={"draws": "current", "supply_rest_a": 0.1, "supply_inrush_a": 0.5, "supply_conductors": 2})
"""A unit of which everything is stated."""


def linked(opening_input):
    """The same on a circuit."""
    return replace(opening_input, supply_link=SupplyLink("PSU"))


def days(number):
    return fit(battery=BatteryLife(number, 6.44, 2500.0, 0.8))


# 12 V less 5 % is 11.4 V; the unit takes 10 V: 1.4 V may be lost. 18 AWG stranded at 30 C:
# 1000 / 58 / 0.8230 x (1 + 0.00393 x 10) x 1.02 = 22.21 ohm/km, 22 AWG (0.3255 mm2) 56.15 ohm/km (formula and
# constants: shared facts 1.1 and 1.2, IEC 60028 and ASTM B258). The loop of 0.4572 m has 0.05135 ohm there and back.
# At 0.4 A: 2 x L x 0.4 x 22.21 / 1000 = 1.4 - 0.0205 V at L = 77.64 m. With 1.2144 m of wire across the leaf,
# 0.05394 ohm: 76.43 m.
SCREWED_OVER_WAY = replace(BORED_FIT, placement=place(x=60.0, y=994.0))


def pull_bolted_at(y_mm):
    """A pull of 60 by 200, its lower bolt 30 from its end."""
    return item("pull", 300.0, y_mm + 70.0, 60.0, 200.0, face="key", bolt_inset_mm=30.0)


ROWS = [
    passes("unit-fed", given(), fit()),
    speaks("unit-fed", given(), fit(power="none"), severity="error"),
    speaks("unit-fed", given(cat=catalogue(UNIT={"cell": None})), fit()),
    speaks("unit-fed", given(cat=catalogue(UNIT={"supply_low_v": None})), SUPPLY),
    boundary("unit-fed", given(cat=catalogue(UNIT={"cell": None})), SUPPLY),
    passes("power-as-wished", given(opening(power_wish="battery")), fit()),
    speaks("power-as-wished", given(opening(power_wish="supply")), fit(), severity="error"),
    boundary("power-as-wished", given(opening(power_wish="any")), fit()),
    passes("busy-on-supply", given(), fit()),
    passes("busy-on-supply", given(opening(operations_per_day=900.0)), SUPPLY),
    speaks("busy-on-supply", given(opening(operations_per_day=201.0)), fit(), operations=201, severity="warning"),
    speaks("busy-on-supply", given(items=[item("electric-strike", face="frame")]), fit()),
    boundary("busy-on-supply", given(opening(operations_per_day=200.0)), fit()),
    unknown("busy-on-supply", given(opening(operations_per_day=None)), fit(), "opening.operations_per_day"),
    passes("supply-voltage", given(), SUPPLY),
    speaks("supply-voltage", given(cat=catalogue(PSU={"output_v": 24.0})), SUPPLY, supply_v=24.0, severity="error"),
    speaks("supply-voltage", given(cat=catalogue(PSU={"regulated": False})), SUPPLY),
    speaks("supply-voltage", given(), fit(power="supply", without=("supply",))),
    # At 5 % over: 13.33 V are 13.9965 V, 13.34 V are 14.007 V.
    boundary("supply-voltage", given(cat=catalogue(PSU={"output_v": 13.33})), SUPPLY),
    boundary("supply-voltage", given(cat=catalogue(PSU={"output_v": 13.34})), SUPPLY, says=1, supply_v=14.007),
    speaks("supply-voltage", given(cat=catalogue(UNIT={"supply_high_v": 12.5})), SUPPLY, supply_v=12.6, high_v=12.5),
    speaks("supply-voltage", given(cat=catalogue(PSU={"current": "ac"})), SUPPLY, severity="error", about="PSU"),
    unknown("supply-voltage", given(cat=catalogue(PSU={"current": None})), SUPPLY, "part PSU.current"),
    # A strike for 24 V takes 20.4 V at the least (85 %, NFPA 72, secondary copy).
    speaks(
        "supply-voltage",
        given(cat=catalogue(STRIKE={"supply_v": 24.0})),
        fit(fp("strike", "STRIKE"), power="supply"),
        low_v=20.4,
    ),
    speaks("supply-voltage", given(items=[strike(current_form="ac")]), SUPPLY, severity="error"),
    unknown("supply-voltage", given(items=[strike(rated_a=None)]), SUPPLY, "existing_item.rated_a"),
    unknown("supply-voltage", given(cat=catalogue(PSU={"regulated": None})), SUPPLY, "part PSU.regulated"),
    # 2.5 A supply, 80 %: 2.0 A usable (shared facts 2.2).
    passes("supply-share", given(), SUPPLY),
    speaks("supply-share", given(cat=catalogue(UNIT={"supply_a": 2.1})), SUPPLY, usable_a=2.0, severity="error"),
    boundary("supply-share", given(cat=catalogue(UNIT={"supply_a": 2.0})), SUPPLY),
    # The unit's 1.7 A and a strike's 0.35 A: 2.05 A. Its first moment of 1.0 A: 1.6 + 1.0 = 2.6 A, over the rating.
    speaks(
        "supply-share",
        given(cat=catalogue(UNIT={"supply_a": 1.7})),
        fit(fp("strike", "STRIKE"), power="supply"),
        load_a=2.05,
    ),
    speaks(
        "supply-share",
        given(cat=catalogue(UNIT={"supply_a": 1.6}, STRIKE={"inrush_a": 1.0})),
        fit(fp("strike", "STRIKE"), power="supply"),
        load_a=2.6,
    ),
    speaks("supply-share", given(cat=catalogue(UNIT={"supply_a": 1.7}), items=[strike()]), SUPPLY, load_a=2.05),
    boundary("supply-share", given(cat=catalogue(UNIT={"supply_a": 1.65}), items=[strike()]), SUPPLY),
    unknown("supply-share", given(cat=catalogue(UNIT={"supply_a": None})), SUPPLY, "part UNIT.supply_a"),
    # 24 V x 4 A = 96 VA passes, 24 V x 5 A = 120 VA fails (NEC Ch. 9 Table 11, commentary; shared facts 2.1).
    passes("supply-class-2", given(cat=catalogue(PSU={"output_v": 24.0, "output_a": 4.0})), SUPPLY),
    speaks(
        "supply-class-2",
        given(cat=catalogue(PSU={"output_v": 24.0, "output_a": 5.0})),
        SUPPLY,
        power_va=120.0,
        severity="warning",
    ),
    speaks("supply-class-2", given(cat=catalogue(PSU={"class_2": False})), SUPPLY),
    boundary("supply-class-2", given(cat=catalogue(PSU={"output_v": 25.0, "output_a": 4.0})), SUPPLY),
    speaks("supply-class-2", given(cat=catalogue(PSU={"output_v": 25.1, "output_a": 4.0})), SUPPLY, power_va=100.4),
    unknown("supply-class-2", given(cat=catalogue(PSU={"class_2": None})), SUPPLY, "part PSU.class_2"),
    passes("supply-off-leaf", given(), fit()),
    speaks("supply-off-leaf", given(), SUPPLY, severity="note"),
    boundary("supply-off-leaf", given(opening(form="lift"), lk=lock("reader"), leaves=()), SUPPLY, says=1),
    passes("supply-distance-known", given(NEAR), SUPPLY),
    speaks("supply-distance-known", given(), SUPPLY),
    boundary("supply-distance-known", given(), fit()),
    passes("supply-drop", given(NEAR), SUPPLY),
    speaks(
        "supply-drop", given(opening(supply_distance_m=90.0)), SUPPLY, severity="error", run_m=90.0, arrives_v=9.780
    ),
    speaks("supply-drop", given(NEAR), fit(power="supply", without=("wire",))),
    boundary("supply-drop", given(opening(supply_distance_m=77.6)), SUPPLY),
    boundary("supply-drop", given(opening(supply_distance_m=77.7)), SUPPLY, says=1),
    boundary("supply-drop", given(opening(supply_distance_m=76.4)), BORED_FIT),
    boundary("supply-drop", given(opening(supply_distance_m=76.5)), BORED_FIT, says=1),
    # 3 m of rise are wire too.
    boundary("supply-drop", given(opening(supply_distance_m=74.6, rise_m=3.0)), SUPPLY),
    boundary("supply-drop", given(opening(supply_distance_m=74.7, rise_m=3.0)), SUPPLY, says=1),
    # A door loop of 28 AWG and 5 m: 0.0810 mm2, 225.6 ohm/km, 2.256 ohm, 0.90 V at 0.4 A; with 40 m (0.71 V) too much.
    boundary("supply-drop", given(opening(supply_distance_m=40.0)), SUPPLY),
    speaks(
        "supply-drop",
        given(opening(supply_distance_m=40.0), cat=catalogue(LOOP={"gauge": "28 AWG", "length_mm": 5000.0})),
        SUPPLY,
        arrives_v=9.787,
    ),
    unknown("supply-drop", given(NEAR, cat=catalogue(LOOP={"length_mm": None})), SUPPLY, "part LOOP.length_mm"),
    # A transfer that stays: measured 0.05 ohm it costs next to nothing, 1 ohm costs 0.4 V: 55.07 m instead of 77.59.
    boundary(
        "supply-drop", given(opening(supply_distance_m=55.0), MADE, items=[kept_transfer(loop_ohm=1.0)]), KEPT_FIT
    ),
    # Unmeasured it has from nothing to 100 ohm, the most that the survey takes: 40 V for 0.4 A, 0.5 V for 5 mA.
    unknown(
        "supply-drop",
        given(opening(supply_distance_m=1.0), MADE, items=[kept_transfer()]),
        KEPT_FIT,
        "existing_item.loop_ohm",
    ),
    boundary(
        "supply-drop",
        given(opening(supply_distance_m=1.0), MADE, items=[kept_transfer()], cat=catalogue(UNIT={"supply_a": 0.005})),
        KEPT_FIT,
    ),
    boundary(
        "supply-drop", given(opening(supply_distance_m=55.2), MADE, items=[kept_transfer(loop_ohm=0.05)]), KEPT_FIT
    ),
    boundary(
        "supply-drop",
        given(opening(supply_distance_m=55.2), MADE, items=[kept_transfer(loop_ohm=1.0)]),
        KEPT_FIT,
        says=1,
        arrives_v=9.998,
    ),
    boundary("supply-drop", given(opening(supply_distance_m=77.7), MADE, items=[kept_transfer()]), KEPT_FIT, says=1),
    # A strike of 10.2 V and 0.35 A that the unit switches: the run carries 0.75 A; loop, leaf and 3.4816 m in the
    # frame are 0.2599 ohm in its way. 33.2 m: 11.4 - 0.75 x 1.4746 - 0.0910 = 10.203 V; 33.4 m: 10.197 V.
    boundary("supply-drop", given(opening(supply_distance_m=33.2), items=[strike()]), BORED_FIT),
    boundary(
        "supply-drop",
        given(opening(supply_distance_m=33.4), items=[strike()]),
        BORED_FIT,
        says=1,
        arrives_v=10.197,
        needed_v=10.2,
    ),
    unknown("supply-drop", given(NEAR, items=[strike(current_form=None)]), SUPPLY, "existing_item.current_form"),
    unknown(
        "supply-drop", given(NEAR, cat=catalogue(PSU={"tolerance_share": None})), SUPPLY, "part PSU.tolerance_share"
    ),
    unknown("supply-drop", given(NEAR, cat=catalogue(WIRE={"gauge": None})), SUPPLY, "part WIRE.gauge"),
    passes("power-crosses-hinge", given(), SUPPLY),
    speaks("power-crosses-hinge", given(), fit(power="supply", without=("power-transfer",)), severity="error"),
    speaks("power-crosses-hinge", given(cat=catalogue(LOOP={"conductors": 1})), SUPPLY, conductors=1),
    boundary(
        "power-crosses-hinge",
        given(items=[kept_transfer()]),
        KEPT_FIT,
    ),
    unknown("power-crosses-hinge", given(items=[kept_transfer(conductors=None)]), KEPT_FIT, "existing_item.conductors"),
    speaks("power-crosses-hinge", given(items=[kept_transfer(conductors=1)]), KEPT_FIT, conductors=1),
    # Plus and minus, and a pair for the strike that the unit switches.
    speaks(
        "power-crosses-hinge",
        given(items=[kept_transfer(conductors=2), strike()]),
        KEPT_FIT,
        needed_conductors=4,
    ),
    speaks("power-crosses-hinge", given(cat=catalogue(UNIT={"supply_conductors": 6})), SUPPLY, needed_conductors=6),
    # One that stays on the other leaf carries nothing here; on which leaf it stands has to be known.
    speaks(
        "power-crosses-hinge",
        given(opening(form="pair"), leaves=PAIR, items=[kept_transfer(leaf="inactive")]),
        KEPT_FIT,
        severity="error",
    ),
    boundary(
        "power-crosses-hinge",
        given(opening(form="pair"), leaves=PAIR, items=[kept_transfer(leaf="active")]),
        KEPT_FIT,
    ),
    unknown(
        "power-crosses-hinge",
        given(opening(form="pair"), leaves=PAIR, items=[kept_transfer()]),
        KEPT_FIT,
        "existing_item.leaf",
    ),
    boundary("power-crosses-hinge", given(cat=catalogue(LOOP={"conductors": 2})), SUPPLY),
    # Plus and minus also where a unit is declared with one.
    speaks(
        "power-crosses-hinge",
        given(cat=catalogue(LOOP={"conductors": 1}, UNIT={"supply_conductors": 1})),
        SUPPLY,
        needed_conductors=2,
    ),
    unknown("power-crosses-hinge", given(cat=catalogue(LOOP={"conductors": None})), SUPPLY, "part LOOP.conductors"),
    passes("wire-conductors", given(), SUPPLY),
    speaks("wire-conductors", given(cat=catalogue(WIRE={"conductors": 1})), SUPPLY, severity="error", conductors=1),
    speaks("wire-conductors", given(cat=catalogue(UNIT={"supply_conductors": 3})), SUPPLY, needed_conductors=3),
    boundary("wire-conductors", given(cat=catalogue(WIRE={"conductors": 2})), SUPPLY),
    unknown("wire-conductors", given(cat=catalogue(WIRE={"conductors": None})), SUPPLY, "part WIRE.conductors"),
    passes("transfer-resistance", given(items=[kept_transfer(loop_ohm=0.3)]), KEPT_FIT),
    speaks("transfer-resistance", given(items=[kept_transfer()]), KEPT_FIT, severity="note", most_ohm=100.0),
    boundary("transfer-resistance", given(items=[kept_transfer()]), fit()),
    # On a circuit it is said just so.
    speaks("transfer-resistance", linked(given(items=[kept_transfer()])), KEPT_FIT, severity="note"),
    passes("supply-assumed", given(cat=TOLD_UNIT), SUPPLY),
    speaks("supply-assumed", given(), SUPPLY, severity="note"),
    boundary("supply-assumed", linked(given()), SUPPLY),
    passes("release-powered", given(items=[strike()]), SUPPLY),
    speaks("release-powered", given(items=[strike()]), fit(), severity="error"),
    speaks("release-powered", given(chosen=[chosen("strike", "MAG")]), fit(), severity="error"),
    boundary("release-powered", given(items=[strike(disposition="remove")]), fit()),
    # A way of 3/8 in at 1000; the lower bolt of a pull, 5/16 in, beside it: 4.7625 + 3.96875 + 3.175 = 11.90625 apart.
    passes("way-clear", given(items=[pull_bolted_at(1011.91)]), BORED_FIT),
    speaks("way-clear", given(items=[pull_bolted_at(1011.3)]), BORED_FIT, short_mm=0.60625, severity="error"),
    # The cylinder's height was read to a millimetre: half of one is left open.
    speaks("way-clear", given(items=[pull_bolted_at(1011.8)]), BORED_FIT, off_mm=0.10625, severity="note"),
    speaks("way-clear", given(items=[pull_bolted_at(1000.0)]), BORED_FIT, needed_mm=3.175),
    boundary("way-clear", given(items=[pull_bolted_at(1011.86)]), BORED_FIT),
    passes("way-clear", given(items=[pull_bolted_at(1000.0)]), SUPPLY),
    # Its plate's lower screws at 1000: one of 3/8 in ends 22.2 - 4.7625 - 9.525 = 7.9125 before the way, 3/4 in in it.
    passes("way-clear", given(), SCREWED_OVER_WAY),
    speaks("way-clear", given(cat=catalogue(SCREW={"length_mm": 19.05})), SCREWED_OVER_WAY, about="SCREW"),
    passes("wire-across-leaf", given(), BORED_FIT),
    passes("wire-across-leaf", given(lf=MADE), SUPPLY),
    passes("wire-across-leaf", given(lf=STEEL), PULLED_FIT),
    passes("wire-across-leaf", given(cat=OVER), OVER_FIT),
    boundary("wire-across-leaf", given(), fit()),
    boundary("wire-across-leaf", given(opening(form="lift"), lk=lock("reader"), leaves=()), SUPPLY),
    speaks("wire-across-leaf", given(), SUPPLY, severity="error", about="UNIT"),
    unknown("wire-across-leaf", given(lf=leaf(width_mm=None)), SUPPLY, "leaf.width_mm"),
    # On a rated leaf nothing is bored or pulled on site; what is there already, or listed and over the face, may be.
    speaks("wire-across-leaf", given(opening(rating="45")), BORED_FIT, severity="error"),
    speaks("wire-across-leaf", given(opening(rating="45"), STEEL), PULLED_FIT, severity="error"),
    unknown("wire-across-leaf", given(opening(rating=None)), BORED_FIT, "opening.rating"),
    boundary("wire-across-leaf", given(opening(rating="45"), MADE), SUPPLY),
    speaks("wire-across-leaf", given(opening(rating="45"), cat=OVER), OVER_FIT, about="CHANNEL"),
    boundary(
        "wire-across-leaf",
        given(opening(rating="45"), cat=catalogue(add=[CHANNEL], CHANNEL={"fire_listed": True})),
        OVER_FIT,
    ),
    # Cores (field guideline): honeycomb is pulled through, foam not, steel-stiffened at the factory only.
    unknown("wire-across-leaf", given(lf=leaf(material="hollow-metal")), PULLED_FIT, "leaf.core"),
    speaks("wire-across-leaf", given(lf=leaf(material="hollow-metal", core="foam")), PULLED_FIT),
    speaks("wire-across-leaf", given(lf=leaf(material="hollow-metal", core="steel-stiffened")), PULLED_FIT),
    speaks("wire-across-leaf", given(lf=leaf(material="mineral-core")), BORED_FIT),
    speaks("wire-across-leaf", given(lf=leaf(material="glass", thickness_mm=12.0)), BORED_FIT),
    # A clamp fixture takes leaves up to 48 in (trade article): 1219.2 mm.
    boundary("wire-across-leaf", given(lf=leaf(width_mm=1219.2)), BORED_FIT),
    speaks("wire-across-leaf", given(lf=leaf(width_mm=1220.0)), BORED_FIT, short_mm=0.8),
    # 9.525 mm in the middle of 22.225 mm leave 6.35 mm to each face.
    boundary("wire-across-leaf", given(lf=leaf(thickness_mm=22.225)), BORED_FIT),
    speaks("wire-across-leaf", given(lf=leaf(thickness_mm=21.225)), BORED_FIT, short_mm=0.5),
    # 53 % of a bore of 9.525 mm: a cable of 6.934 mm.
    boundary("wire-across-leaf", given(cat=catalogue(WIRE={"outside_diameter_mm": 6.93})), BORED_FIT),
    speaks("wire-across-leaf", given(cat=catalogue(WIRE={"outside_diameter_mm": 6.95})), BORED_FIT, about="WIRE"),
    unknown(
        "wire-across-leaf",
        given(cat=catalogue(WIRE={"outside_diameter_mm": None})),
        BORED_FIT,
        "part WIRE.outside_diameter_mm",
    ),
    speaks("wire-across-leaf", given(cat=catalogue(add=[CHANNEL], CHANNEL={"inside_mm": 5.0})), OVER_FIT),
    # A lite at the height of the lock bars a bore; one far above does not.
    speaks("wire-across-leaf", given(items=[item("lite", 450.0, 1000.0, 300.0, 300.0, face="both")]), BORED_FIT),
    boundary("wire-across-leaf", given(items=[item("lite", 450.0, 1600.0, 300.0, 300.0, face="both")]), BORED_FIT),
    # Over the face nothing may stand between the unit, centre 1090 above the floor, and the hinge edge.
    speaks("wire-across-leaf", given(items=[item("pull", 500.0, 1090.0, 40.0, 200.0)], cat=OVER), OVER_FIT),
    boundary("wire-across-leaf", given(items=[item("pull", 500.0, 1500.0, 40.0, 200.0)], cat=OVER), OVER_FIT),
    # Six alkaline cells fresh from the pack: 6 x 1.65 V = 9.9 V; lithium iron disulfide 6 x 1.83 V = 10.98 V (data
    # books, from memory, unverified).
    passes("battery-fresh-voltage", given(cat=catalogue(UNIT={"pack_high_v": 12.0})), fit()),
    boundary("battery-fresh-voltage", given(cat=catalogue(UNIT={"pack_high_v": 9.9})), fit()),
    speaks(
        "battery-fresh-voltage", given(cat=catalogue(UNIT={"pack_high_v": 9.8})), fit(), severity="error", fresh_v=9.9
    ),
    speaks(
        "battery-fresh-voltage",
        given(cat=catalogue(UNIT={"pack_high_v": 10.0}, CELL={"chemistry": "lithium-iron-disulfide"})),
        fit(),
        fresh_v=10.98,
    ),
    # Alkaline cells of its nominal voltage a unit is made for; livelier ones are asked about.
    boundary("battery-fresh-voltage", given(), fit()),
    unknown(
        "battery-fresh-voltage",
        given(cat=catalogue(CELL={"chemistry": "lithium-iron-disulfide"})),
        fit(),
        "part UNIT.pack_high_v",
    ),
    unknown(
        "battery-fresh-voltage",
        given(cat=catalogue(UNIT={"pack_high_v": 10.0}, CELL={"chemistry": None})),
        fit(),
        "part CELL.chemistry",
    ),
    boundary(
        "battery-fresh-voltage", given(cat=catalogue(UNIT={"pack_high_v": 11.0}, CELL={"chemistry": None})), fit()
    ),
    boundary("battery-fresh-voltage", given(cat=catalogue(UNIT={"pack_high_v": 9.0})), SUPPLY),
    passes("battery-life", given(), days(300.0)),
    # Six cells in series share 5.4 V: 0.9 V a cell (common practice); IEC 60086 states capacity to an end voltage.
    passes(
        "battery-end-voltage",
        given(cat=catalogue(UNIT={"pack_low_v": 5.4, "cells": 6}, CELL={"end_v": 0.9})),
        days(300.0),
    ),
    speaks(
        "battery-end-voltage",
        given(cat=catalogue(UNIT={"pack_low_v": 6.6, "cells": 6}, CELL={"end_v": 0.9})),
        days(300.0),
        severity="warning",
        end_v=0.9,
        needed_v=1.1,
    ),
    boundary("battery-end-voltage", given(), days(300.0)),
    unknown(
        "battery-end-voltage",
        given(cat=catalogue(UNIT={"pack_low_v": 5.4, "cells": 6})),
        days(300.0),
        "part CELL.end_v",
    ),
    speaks("battery-life", given(), days(170.0), days=170.0, severity="error"),
    # 180 days are asked; a tenth over them it is told.
    boundary("battery-life", given(), days(180.0), says=1, severity="warning"),
    boundary("battery-life", given(), days(197.9), says=1, severity="warning"),
    boundary("battery-life", given(), days(198.0)),
    unknown("battery-life", given(opening(temperature_low_c=None)), fit(battery=None), "opening.temperature_low_c"),
    # Its chemistry is told, and the table of defaults has nothing of it: only what is left in the cold is asked.
    unknown(
        "battery-life",
        given(opening(temperature_low_c=-5.0), cat=catalogue(CELL={"chemistry": "lithium-manganese-dioxide"})),
        fit(battery=None),
        "part CELL.cold_c",
        "part CELL.cold_share",
    ),
    # So many operations that it is too short before the cold takes anything.
    speaks(
        "battery-life",
        given(
            opening(temperature_low_c=-5.0, operations_per_day=1000),
            cat=catalogue(CELL={"chemistry": "lithium-manganese-dioxide"}),
        ),
        fit(battery=None),
        severity="error",
    ),
    unknown("battery-life", given(opening(operations_per_day=None)), fit(battery=None), "opening.operations_per_day"),
    # A unit that stands without current at a door that nobody opens: no life comes out, and that is said.
    speaks(
        "battery-life",
        given(
            opening(operations_per_day=0.0),
            cat=catalogue(UNIT={"standing_ua": 0.0}, CELL={"self_discharge_share": 0.0}),
        ),
        fit(battery=None),
        severity="warning",
    ),
    passes("battery-cold", given(OUTSIDE), fit()),
    speaks(
        "battery-cold", given(opening(exposure="exterior", temperature_low_c=-25.0)), fit(), says=2, opening_c=-25.0
    ),
    boundary("battery-cold", given(opening(exposure="exterior", temperature_low_c=-20.0)), fit()),
    unknown(
        "battery-cold",
        given(opening(exposure="exterior", temperature_low_c=None)),
        fit(),
        "opening.temperature_low_c",
    ),
    # A cold store stands indoors.
    speaks("battery-cold", given(opening(temperature_low_c=-25.0)), fit(), says=2, opening_c=-25.0, severity="error"),
    speaks("battery-cold", given(opening(temperature_low_c=-25.0)), SUPPLY, opening_c=-25.0),
    unknown("battery-cold", given(opening(temperature_low_c=None)), fit(), "opening.temperature_low_c"),
    boundary(
        "battery-cold",
        given(
            opening(temperature_low_c=None),
            cat=catalogue(UNIT={"temperature_low_c": None}, CELL={"temperature_low_c": None}),
        ),
        fit(),
    ),
    boundary(
        "battery-cold", given(opening(temperature_low_c=0.0), cat=catalogue(UNIT={"temperature_low_c": None})), fit()
    ),
    unknown(
        "battery-cold",
        given(opening(temperature_low_c=-1.0), cat=catalogue(UNIT={"temperature_low_c": None})),
        fit(),
        "part UNIT.temperature_low_c",
    ),
    passes("cell-stocked", given(), fit()),
    speaks("cell-stocked", given(), fit(without=("battery",)), severity="error"),
    boundary("cell-stocked", given(), fit(power="supply")),
    passes("cell-count", given(), fit()),
    speaks("cell-count", given(), fit(fp("battery", "CELL", 1)), cells=7, severity="error"),
    speaks("cell-count", given(cat=catalogue(CELL={"designation": "AAA"})), fit()),
    boundary("cell-count", given(cat=catalogue(UNIT={"cells": 7})), fit(fp("battery", "CELL", 1))),
    unknown("cell-count", given(cat=catalogue(UNIT={"cells": None})), fit(), "part UNIT.cells"),
    passes("coin-cell-stocked", given(), fit()),
    speaks("coin-cell-stocked", given(), fit(without=("coin-cell",)), severity="warning"),
    boundary("coin-cell-stocked", given(cat=catalogue(UNIT={"coin_cell": None})), fit(without=("coin-cell",))),
]

TWO_PACKS = fit(fp("battery", "CELL", 1))
NO_CELL = catalogue(drop=("CELL",))
COMPOSITE = leaf(material="composite")
STRIKE_ALONE = catalogue(PSU={"tolerance_share": None})
# What is said, of several things each, and of what nobody told.
ROWS += [
    boundary("battery-cold", given(opening(temperature_low_c=None)), fit(unit="GONE")),
    boundary(
        "battery-cold",
        given(opening(temperature_low_c=-15.0), cat=catalogue(CELL={"temperature_low_c": -10.0})),
        SUPPLY,
    ),
    unknown(
        "battery-cold",
        given(opening(temperature_low_c=None), cat=catalogue(CELL={"temperature_low_c": None})),
        fit(),
        "opening.temperature_low_c",
    ),
    unknown(
        "battery-end-voltage",
        given(cat=catalogue(UNIT={"pack_low_v": 5.4, "cells": None}, CELL={"end_v": 0.9})),
        fit(),
        "part UNIT.cells",
    ),
    boundary("battery-fresh-voltage", given(cat=catalogue(UNIT={"cells": None, "pack_high_v": 5.0})), fit()),
    boundary("battery-fresh-voltage", given(cat=catalogue(UNIT={"pack_high_v": 5.0}, CELL={"voltage_v": None})), fit()),
    boundary("battery-life", given(opening(operations_per_day=None)), fit(power="supply")),
    boundary("battery-life", given(opening(operations_per_day=None)), fit(unit="GONE", battery=None)),
    # Whatever a life follows from and is not told is asked, of the cell and of the unit.
    *(
        unknown("battery-life", given(cat=catalogue(CELL={name: None})), fit(battery=None), f"part CELL.{name}")
        for name in ("capacity_mah", "usable_share", "self_discharge_share")
    ),
    *(
        unknown("battery-life", given(cat=catalogue(UNIT={name: None})), fit(battery=None), f"part UNIT.{name}")
        for name in ("standing_ua", "operation_ma", "operation_s")
    ),
    boundary("battery-life", given(), fit(battery=None)),
    speaks(
        "battery-life",
        given(),
        days(170.0),
        needed_days=180.0,
        words=("The pack lasts about 170 days at 6.44 mAh a day; 180 days are asked, short by 10.",),
    ),
    speaks("battery-life", given(), days(179.0), words=("short by 1.",)),
    speaks("battery-life", given(), days(178.5), words=("short by 2.",)),
    speaks("battery-life", given(), days(179.5), words=("short by less than one.",)),
    speaks("cell-count", given(), TWO_PACKS, about="CELL", words=("The pack has 7 cells; the unit takes 6",)),
    boundary("cell-count", given(cat=catalogue(UNIT={"cells": 5})), fit(), says=1),
    boundary("cell-stocked", given(cat=catalogue(UNIT={"cell": None})), fit(without=("battery",))),
    # Batteries of a supply, and a supply of batteries: neither is asked of the other.
    speaks("supply-off-leaf", given(), SUPPLY, words=("in a place of its own, never on the leaf;",)),
    speaks(
        "supply-off-leaf",
        given(opening(form="lift"), lk=lock("reader"), leaves=()),
        SUPPLY,
        words=("in a place of its own;",),
    ),
    speaks("supply-share", given(cat=catalogue(UNIT={"supply_a": 2.1})), SUPPLY, words=("The unit draws 2.1 A",)),
    speaks(
        "supply-share",
        given(cat=catalogue(UNIT={"supply_a": 1.7}), items=[strike()]),
        SUPPLY,
        words=("All that is connected at the opening draws 2.05 A",),
    ),
    unknown("supply-share", given(cat=catalogue(PSU={"output_a": None})), SUPPLY, "part PSU.output_a"),
    unknown("supply-share", given(cat=catalogue(PSU={"output_v": None})), SUPPLY, "part PSU.output_v"),
    # 1.5 A and a first moment of 1.0 A are the 2.5 A of the rating.
    boundary(
        "supply-share",
        given(cat=catalogue(UNIT={"supply_a": 1.5}, STRIKE={"inrush_a": 1.0})),
        fit(fp("strike", "STRIKE"), power="supply"),
    ),
    boundary("supply-share", linked(given(cat=catalogue(UNIT={"supply_a": 9.0}))), SUPPLY),
    speaks(
        "supply-voltage",
        given(cat=catalogue(PSU={"output_v": 24.0})),
        SUPPLY,
        words=("gives 24 V; the unit takes 10 to 14 V",),
    ),
    speaks(
        "supply-voltage",
        given(cat=catalogue(STRIKE={"supply_v": 24.0})),
        fit(fp("strike", "STRIKE"), power="supply"),
        words=("gives 12 V; STRIKE takes 20.4 to",),
    ),
    unknown("supply-voltage", given(cat=catalogue(PSU={"output_v": None})), SUPPLY, "part PSU.output_v"),
    unknown("supply-voltage", given(cat=catalogue(PSU={"tolerance_share": None})), SUPPLY, "part PSU.tolerance_share"),
    speaks(
        "supply-voltage", given(cat=catalogue(PSU={"tolerance_share": None, "output_v": 24.0})), SUPPLY, supply_v=24.0
    ),
    # 10 V and 14 V are within 10 to 14 V, where nothing rises over them; 12.5 V and 12 % are 14 V.
    *(
        boundary("supply-voltage", given(cat=catalogue(PSU={"output_v": volts, "tolerance_share": share})), SUPPLY)
        for volts, share in ((10.0, 0.0), (14.0, 0.0), (12.5, 0.12))
    ),
    boundary("supply-voltage", linked(given(cat=catalogue(drop=("PSU",)))), SUPPLY),
    # Who gets too little, and how much.
    speaks(
        "supply-drop",
        given(opening(supply_distance_m=90.0)),
        SUPPLY,
        short_v=0.220,
        words=("and what leads onto the leaf 9.78 V of 11.40 V arrive; the unit needs 10 V, short by 0.22",),
    ),
    unknown(
        "supply-drop",
        given(NEAR, cat=catalogue(PSU={"output_v": None, "tolerance_share": None})),
        SUPPLY,
        "part PSU.output_v",
        "part PSU.tolerance_share",
    ),
    boundary("supply-drop", linked(given(opening(supply_distance_m=900.0))), SUPPLY),
    boundary("supply-drop", given(), SUPPLY),
    # Of two that stay the better counts, and one that nobody read is no worse than none.
    boundary("power-crosses-hinge", given(items=[kept_transfer(conductors=None), kept_transfer()]), KEPT_FIT),
    boundary("power-crosses-hinge", given(items=[kept_transfer(conductors=1), kept_transfer()]), KEPT_FIT),
    boundary("power-crosses-hinge", given(items=[kept_transfer(conductors=2)]), KEPT_FIT),
    speaks(
        "power-crosses-hinge",
        given(items=[kept_transfer(conductors=1), kept_transfer(conductors=None)]),
        KEPT_FIT,
        conductors=1,
        words=("It has one conductor; 2 are needed.",),
    ),
    speaks(
        "power-crosses-hinge",
        given(items=[kept_transfer(conductors=0)]),
        KEPT_FIT,
        conductors=0,
        words=("It has 0 conductors; 2 are needed.",),
    ),
    boundary(
        "power-crosses-hinge",
        given(opening(form="pair"), leaves=PAIR, items=[kept_transfer(), kept_transfer(leaf="active")]),
        KEPT_FIT,
    ),
    speaks("power-crosses-hinge", given(), KEPT_FIT, words=("from the frame onto the leaf.",)),
    speaks(
        "power-crosses-hinge",
        given(opening(form="pair"), leaves=PAIR, items=[item("pull"), kept_transfer(leaf="inactive")]),
        KEPT_FIT,
        words=("onto the leaf: the power transfer that stays leads onto the other leaf.",),
    ),
    speaks(
        "power-crosses-hinge",
        given(items=[kept_transfer(conductors=2), strike()]),
        KEPT_FIT,
        words=("4 are needed, 2 of them for the unit, the others",),
    ),
    # A strike that the unit switches wants a second pair across the leaf: two cables of two, 31 % of the bore.
    # 9.525 x sqrt(0.31 / 2) = 3.750 each.
    boundary("wire-across-leaf", given(items=[strike()], cat=catalogue(WIRE={"outside_diameter_mm": 3.74})), BORED_FIT),
    speaks(
        "wire-across-leaf",
        given(items=[strike()], cat=catalogue(WIRE={"outside_diameter_mm": 3.76})),
        BORED_FIT,
        short_mm=0.010,
        words=("holds 2 cables up to",),
    ),
    speaks(
        "wire-across-leaf",
        given(cat=catalogue(WIRE={"outside_diameter_mm": 6.95})),
        BORED_FIT,
        short_mm=0.016,
        words=("holds a cable up to",),
    ),
    # Beside each other in a raceway of 10: 5 each.
    boundary(
        "wire-across-leaf",
        given(items=[strike()], cat=catalogue(add=[CHANNEL], WIRE={"outside_diameter_mm": 5.0})),
        OVER_FIT,
    ),
    speaks(
        "wire-across-leaf",
        given(items=[strike()], cat=catalogue(add=[CHANNEL], WIRE={"outside_diameter_mm": 5.01})),
        OVER_FIT,
        short_mm=0.02,
        about="CHANNEL",
    ),
    speaks("wire-across-leaf", given(cat=catalogue(add=[CHANNEL], CHANNEL={"inside_mm": 5.0})), OVER_FIT, short_mm=0.2),
    unknown(
        "wire-across-leaf",
        given(cat=catalogue(add=[CHANNEL], CHANNEL={"inside_mm": None})),
        OVER_FIT,
        "part CHANNEL.inside_mm",
    ),
    unknown(
        "wire-across-leaf",
        given(cat=catalogue(add=[CHANNEL], WIRE={"outside_diameter_mm": None})),
        OVER_FIT,
        "part WIRE.outside_diameter_mm",
    ),
    unknown("wire-across-leaf", given(opening(rating=None), cat=OVER), OVER_FIT, "opening.rating"),
    unknown(
        "wire-across-leaf",
        given(opening(rating="45"), cat=catalogue(add=[CHANNEL], CHANNEL={"fire_listed": None})),
        OVER_FIT,
        "part CHANNEL.fire_listed",
    ),
    # On glass only what is made to be bonded there; a way inside is none.
    speaks(
        "wire-across-leaf", given(lf=leaf(material="glass", thickness_mm=12.0), cat=OVER), OVER_FIT, about="CHANNEL"
    ),
    boundary(
        "wire-across-leaf",
        given(
            lf=leaf(material="glass", thickness_mm=12.0), cat=catalogue(add=[CHANNEL], CHANNEL={"glass_mount": True})
        ),
        OVER_FIT,
    ),
    speaks(
        "wire-across-leaf", given(lf=leaf(material="glass", thickness_mm=12.0)), BORED_FIT, words=("never drilled",)
    ),
    # A solid core of a bored leaf is what is bored; a composite leaf's has to be told.
    boundary("wire-across-leaf", given(lf=leaf(core="solid")), BORED_FIT),
    speaks("wire-across-leaf", given(lf=leaf(core="foam")), BORED_FIT, words=("a foam core",)),
    unknown("wire-across-leaf", given(lf=COMPOSITE), BORED_FIT, "leaf.core"),
    boundary("wire-across-leaf", given(lf=replace(COMPOSITE, core="solid")), BORED_FIT),
    unknown("wire-across-leaf", given(lf=leaf(thickness_mm=None)), BORED_FIT, "leaf.thickness_mm"),
    # Tubes of aluminium and of a gate have no core; a flush leaf of aluminium may.
    boundary("wire-across-leaf", given(lf=leaf(material="aluminium", construction="narrow-stile")), PULLED_FIT),
    boundary("wire-across-leaf", given(lf=leaf(material="steel-gate")), PULLED_FIT),
    unknown("wire-across-leaf", given(lf=leaf(material="aluminium")), PULLED_FIT, "leaf.core"),
    unknown(
        "wire-across-leaf",
        given(lf=leaf(material="hollow-metal", construction="stile-and-rail")),
        PULLED_FIT,
        "leaf.core",
    ),
    # A lite of which nobody told the height may be in the way of a bore.
    unknown(
        "wire-across-leaf",
        given(items=[item("lite", 450.0, None, 300.0, 300.0, face="both")]),
        BORED_FIT,
        "existing_item.y_mm",
    ),
    boundary(
        "wire-across-leaf", given(lf=STEEL, items=[item("lite", 450.0, None, 300.0, 300.0, face="both")]), PULLED_FIT
    ),
    # A raceway lies at the middle of the plate, 1010 + 80 up, 1/2 in to each side (from memory): a pull ends there.
    speaks(
        "wire-across-leaf", given(items=[item("pull", 500.0, 1090.0 + 12.7 + 99.5, 40.0, 200.0)], cat=OVER), OVER_FIT
    ),
    boundary(
        "wire-across-leaf", given(items=[item("pull", 500.0, 1090.0 + 12.7 + 100.5, 40.0, 200.0)], cat=OVER), OVER_FIT
    ),
    unknown(
        "wire-across-leaf",
        given(items=[item("pull", None, 1090.0, 40.0, 200.0)], cat=OVER),
        OVER_FIT,
        "existing_item.x_mm",
    ),
]


# Without a distance this rule can only name what is missing.
ROWS = [row for row in ROWS if not (row.rule == "supply-distance-known" and row.kind == "speaks")]
ROWS.append(unknown("supply-distance-known", given(lf=leaf()), SUPPLY, "opening.supply_distance_m"))


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_rule(row):
    run(row)


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        (given(NEAR, cat=TOLD_UNIT), "no resistance at the terminations of its run"),
        (given(NEAR, cat=TOLD_UNIT), "one conductor each way, none in parallel, in its run"),
        (given(NEAR, cat=TOLD_UNIT), "no resistance inside PSU"),
        (given(NEAR, cat=TOLD_UNIT), "no way up from the hinges"),
        (given(cat=TOLD_UNIT, items=[strike(fail=None)]), "held all the time"),
        (given(cat=TOLD_UNIT, items=[strike()]), "the existing electric strike: no more in the first moment"),
        (given(cat=catalogue(UNIT={"supply_rest_a": None})), "UNIT: current at rest taken as the supply current"),
    ],
)
def test_what_is_taken_of_an_own_supply_is_said(asked, words):
    (verdict,) = judge(rule_named("supply-assumed"), asked, SUPPLY, settings=asked.settings)
    assert words in verdict.message
    assert ("held all the time" in verdict.message) == (words == "held all the time")


@pytest.mark.parametrize(
    ("form", "facts", "made", "end"),
    [
        ("mortise", {}, {}, (105.0, 1000.0)),
        # The case's depth nobody told: behind the unit on the face, or in its pocket, 44.45 deep, at its middle.
        ("mortise", {"case_depth_mm": None}, {}, (69.85, 1030.0)),
        ("mortise", {"case_depth_mm": None}, {"unit": "EDGE"}, (44.45, 1063.5 + 349.25 / 2)),
        ("bored", {}, {}, (69.85, 1000.0)),
        ("bored", {"backset_mm": None}, {}, (69.85, 1030.0)),
        ("rim", {"case_depth_mm": 60.0}, {}, (69.85, 1030.0)),
        ("rim", {}, {"placement": None}, None),
    ],
)
def test_where_a_way_across_the_leaf_ends(form, facts, made, end):
    if made.get("unit") == "EDGE":
        made = {**made, "placement": place(13.5, 1063.5, face="edge", width_mm=17.4625, height_mm=349.25)}
    assert across_leaf.target(given(lk=lock(form, **facts)), fit(power="supply", **made)) == end


@pytest.mark.parametrize(("off", "mah_per_day"), [(None, 18.312), (100.0, 18.312), (40.0, 15.455), (0.0, 13.550)])
def test_on_days_off_a_pack_gives_what_those_days_take(off, mah_per_day):
    """100 operations of 150 mA for 4 s on five days and fewer on two, a mean over seven: 0.16667 mAh each.

    Besides 60 uA in 24 h, 1.44 mAh, and 3 % of 2500 mAh in 365.25 days, 0.2053 mAh (arithmetic).
    """
    asked = given(opening(operations_per_day=100.0, operations_day_off=off))
    found = pack_life(asked, asked.catalogue.get("UNIT"), asked.catalogue.get("CELL"))
    assert found.mah_per_day == pytest.approx(mah_per_day, abs=0.001)
    assert found.days == pytest.approx(2000.0 / mah_per_day, rel=0.001)


@pytest.mark.parametrize(
    ("asked", "worked_out", "words"),
    [
        # Rows of the rule have both distances by hand: the strike starves while the unit's 10 V still arrive.
        (given(opening(supply_distance_m=33.4), items=[strike()]), BORED_FIT, "the strike needs 10.2 V"),
        (given(opening(supply_distance_m=78.0)), SUPPLY, "the unit needs 10 V"),
    ],
)
def test_who_gets_too_little_is_named(asked, worked_out, words):
    (verdict,) = judge(rule_named("supply-drop"), asked, worked_out, settings=asked.settings)
    assert words in verdict.message
