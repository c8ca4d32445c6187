"""Cases for tests of the fitting, on the small catalogue of tests/rules/scenario.py and some parts more."""

from tests.rules.scenario import INCH, catalogue, given, item, leaf, lock, opening, part

SUPPLY_LINK = {
    "standing_ua": 60.0,
    "operation_ma": 150.0,
    "operation_s": 4.0,
    "supply_low_v": 10.0,
    "supply_high_v": 14.0,
    "supply_a": 0.4,
    "cell": "AA",
    "cells": 6,
    "coin_cell": "K32",
    "temperature_low_c": -20.0,
    "fire_listed": True,
    "mates_with": "p4",
}
MORE = [
    # A narrow housing: its plate begins 5/8 in below the hole, which is 1 3/8 in above the old one (practice).
    part(
        "NARROW",
        "surface-unit",
        220.0,
        housing="narrow",
        plate_width_mm=40.0,
        plate_height_mm=230.0,
        depth_mm=30.0,
        window_x0_mm=9.0,
        window_y0_mm=12.0,
        window_x1_mm=31.0,
        window_y1_mm=50.0,
        connector_x_mm=20.0,
        connector_y_mm=70.0,
        slack_mm=50.0,
        exposure="interior",
        glass_mount=False,
        screw_size="#6",
        screws=4,
        **SUPPLY_LINK,
    ),
    part(
        "BOND",
        "surface-unit",
        240.0,
        housing="wide",
        plate_width_mm=80.0,
        plate_height_mm=150.0,
        depth_mm=34.0,
        window_x0_mm=0.0,
        window_y0_mm=0.0,
        window_x1_mm=80.0,
        window_y1_mm=20.0,
        connector_x_mm=40.0,
        connector_y_mm=30.0,
        slack_mm=40.0,
        exposure="interior",
        glass_mount=True,
        screw_size="",
        screws=0,
        **SUPPLY_LINK,
    ),
    part(
        "SEALED",
        "surface-unit",
        280.0,
        housing="wide",
        plate_width_mm=80.0,
        plate_height_mm=160.0,
        depth_mm=38.0,
        window_x0_mm=10.0,
        window_y0_mm=15.0,
        window_x1_mm=70.0,
        window_y1_mm=60.0,
        connector_x_mm=40.0,
        connector_y_mm=80.0,
        slack_mm=60.0,
        exposure="exterior",
        glass_mount=False,
        screw_size="#6",
        screws=4,
        **SUPPLY_LINK,
    ),
    part("LONG", "fastener", 0.1, form="wood-screw", size="#6", length_mm=25.4, leaf_material="wood"),
    part("THIN", "fastener", 0.1, form="sheet-metal-screw", size="#6", length_mm=9.525, leaf_material="hollow-metal"),
    part("SHEET", "fastener", 0.1, form="sheet-metal-screw", size="#6", length_mm=19.05, leaf_material="hollow-metal"),
    part("STILE", "fastener", 0.1, form="sheet-metal-screw", size="#6", length_mm=15.875, leaf_material="aluminium"),
    part("TUBE", "fastener", 0.1, form="sheet-metal-screw", size="#6", length_mm=25.4, leaf_material="steel-gate"),
    part("SHORT", "fastener", 0.2, form="wood-screw", size="#6", length_mm=12.7, leaf_material="wood"),
    part(
        "BOLT",
        "fastener",
        0.9,
        form="through-bolt",
        size="M8",
        length_mm=100.0,
        head="hexagon",
        leaf_material="steel-gate",
    ),
    part("SLEEVE", "consumable", 0.5, form="sleeve", hole_mm=12.7),
    part("SLEEVE38", "consumable", 0.5, form="sleeve", hole_mm=9.525),
    part("SLEEVE34", "consumable", 0.6, form="sleeve", hole_mm=19.05),
    part("GROMMET", "consumable", 0.4, form="grommet", hole_mm=12.7),
    part("GROMMET34", "consumable", 0.5, form="grommet", hole_mm=19.05),
    part("LOCKER", "consumable", 6.0, form="thread-lock"),
    part("SEAL", "consumable", 8.0, form="sealant"),
    part("GASKET", "mounting", 3.0, form="gasket", for_part="SEALED"),
    part("JIG", "tool", 60.0, form="drilling-jig"),
    part("BOREJIG", "tool", 110.0, form="drilling-jig", diameter_mm=53.975),
    part("STEP", "tool", 20.0, form="step-drill", diameter_mm=19.05),
    part("PILOT16", "tool", 2.0, form="twist-drill", diameter_mm=1.5875),
]
USUAL = catalogue(add=MORE)


def stock(**changed):
    """The catalogue with changed attributes, or with parts dropped."""
    drop = changed.pop("drop", ())
    add = changed.pop("add", ())
    return catalogue(add=[*MORE, *add], drop=drop, **changed)


def door(o=None, lf=None, lk=None, items=(), cat=None, **more):
    return given(o, lf, lk, items, cat=cat or USUAL, **more)


__all__ = ["INCH", "USUAL", "door", "item", "leaf", "lock", "opening", "part", "stock"]
