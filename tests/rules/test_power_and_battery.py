"""Rules of power and batteries."""

import pytest

from hwsched.values import BatteryLife
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import catalogue, fit, fp, given, item, leaf, lock, opening

SUPPLY = fit(power="supply")
NEAR = opening(supply_distance_m=20.0)
OUTSIDE = opening(exposure="exterior", temperature_low_c=-10.0)


def days(number):
    return fit(battery=BatteryLife(number, 6.44, 2500.0, 0.8))


# 12 V less 5 % is 11.4 V; the unit takes 10 V: 1.4 V may be lost. 18 AWG stranded at 30 C:
# 1000 / 58 / 0.8230 x (1 + 0.00393 x 10) x 1.02 = 22.21 ohm/km; 0.4 A: 2 x L x 0.4 x 22.21 / 1000 = 1.4 V at L = 78.8 m
# (formula and constants: shared facts 1.1 and 1.2, IEC 60028 and ASTM B258).
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
    boundary("supply-voltage", given(cat=catalogue(PSU={"output_v": 14.0})), SUPPLY),
    unknown("supply-voltage", given(cat=catalogue(PSU={"regulated": None})), SUPPLY, "part PSU.regulated"),
    # 2.5 A supply, 80 %: 2.0 A usable (shared facts 2.2).
    passes("supply-share", given(), SUPPLY),
    speaks("supply-share", given(cat=catalogue(UNIT={"supply_a": 2.1})), SUPPLY, usable_a=2.0, severity="error"),
    boundary("supply-share", given(cat=catalogue(UNIT={"supply_a": 2.0})), SUPPLY),
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
    unknown("supply-class-2", given(cat=catalogue(PSU={"class_2": None})), SUPPLY, "part PSU.class_2"),
    passes("supply-off-leaf", given(), fit()),
    speaks("supply-off-leaf", given(), SUPPLY, severity="note"),
    boundary("supply-off-leaf", given(opening(form="lift"), lk=lock("reader"), leaves=()), SUPPLY, says=1),
    passes("supply-distance-known", given(NEAR), SUPPLY),
    speaks("supply-distance-known", given(), SUPPLY),
    boundary("supply-distance-known", given(), fit()),
    passes("supply-drop", given(NEAR), SUPPLY),
    speaks(
        "supply-drop", given(opening(supply_distance_m=90.0)), SUPPLY, severity="error", run_m=90.0, arrives_v=9.801
    ),
    speaks("supply-drop", given(NEAR), fit(power="supply", without=("wire",))),
    boundary("supply-drop", given(opening(supply_distance_m=78.7)), SUPPLY),
    boundary("supply-drop", given(opening(supply_distance_m=78.9)), SUPPLY, says=1),
    unknown(
        "supply-drop", given(NEAR, cat=catalogue(PSU={"tolerance_share": None})), SUPPLY, "part PSU.tolerance_share"
    ),
    unknown("supply-drop", given(NEAR, cat=catalogue(WIRE={"gauge": None})), SUPPLY, "part WIRE.gauge"),
    passes("power-crosses-hinge", given(), SUPPLY),
    speaks("power-crosses-hinge", given(), fit(power="supply", without=("power-transfer",)), severity="error"),
    speaks("power-crosses-hinge", given(cat=catalogue(LOOP={"conductors": 1})), SUPPLY, conductors=1),
    boundary(
        "power-crosses-hinge",
        given(items=[item("power-transfer", face="edge")]),
        fit(power="supply", without=("power-transfer",)),
    ),
    boundary("power-crosses-hinge", given(cat=catalogue(LOOP={"conductors": 2})), SUPPLY),
    unknown("power-crosses-hinge", given(cat=catalogue(LOOP={"conductors": None})), SUPPLY, "part LOOP.conductors"),
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
    speaks("battery-life", given(), days(170.0), days=170.0, severity="warning"),
    boundary("battery-life", given(), days(180.0)),
    unknown("battery-life", given(opening(operations_per_day=None)), fit(battery=None), "opening.operations_per_day"),
    passes("battery-cold", given(OUTSIDE), fit()),
    speaks(
        "battery-cold", given(opening(exposure="exterior", temperature_low_c=-25.0)), fit(), says=2, opening_c=-25.0
    ),
    boundary("battery-cold", given(opening(exposure="exterior", temperature_low_c=-20.0)), fit()),
    unknown("battery-cold", given(opening(exposure="exterior")), fit(), "opening.temperature_low_c"),
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
# Without a distance this rule can only name what is missing.
ROWS = [row for row in ROWS if not (row.rule == "supply-distance-known" and row.kind == "speaks")]
ROWS.append(unknown("supply-distance-known", given(lf=leaf()), SUPPLY, "opening.supply_distance_m"))


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_rule(row):
    run(row)
