"""Every limit of a calculator's input at both sides, and every default: sizes are above nothing, shares end at one.

The limits are those of the trade: a diameter of nothing is none, a slack or a wall of nothing may be asked for, a share
of more than the whole is no share. Sizes that are taken may still not fit together; that is said of other fields.
"""

import copy
import re
from typing import Any

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.calculators import CALCULATORS

OF = {calculator.name: calculator for calculator in CALCULATORS}

SIZE = ((-1, -0.001, 0), (0.001, 0.5, 1.5))
"""Refused; taken."""
ALLOWANCE = ((-1, -0.001), (0, 0.001, 0.5))
SHARE = ((-1, 0, 1.001, 2), (0.001, 0.5, 1))
ONE_OR_MORE = ((-1, 0, 0.999), (1, 1.001, 1.5))
PEUKERT = ((0, 0.999, 2.001), (1, 1.5, 2))
COUNT = ((-1,), (0, 1, 2))
COUNTED = ((-1, 0), (1, 2))

LIMITS: dict[str, dict[str, Any]] = {
    "battery-life": {
        "capacity_mah": SIZE,
        "usable_share": SHARE,
        "temperature_factor": SHARE,
        "self_discharge_per_year": ALLOWANCE,
        "standing_ua": ALLOWANCE,
        "operation_ma": ALLOWANCE,
        "operation_s": ALLOWANCE,
        "operations_per_day": ALLOWANCE,
        "shelf_life_years": SIZE,
    },
    "bore": {
        "leaf.width_mm": SIZE,
        "leaf.height_mm": SIZE,
        "leaf.thickness_mm": SIZE,
        "diameter_mm": SIZE,
        "depth_mm": SIZE,
        "min_wall_mm": ALLOWANCE,
        "avoid.0.diameter_mm": SIZE,
    },
    "bored-prep": {
        "tolerance_mm": ALLOWANCE,
        "min_edge_wall_mm": ALLOWANCE,
        "wanted.cross_bore_mm": SIZE,
        "wanted.edge_bore_mm": SIZE,
        "wanted.leaf_low_mm": SIZE,
        "wanted.leaf_high_mm": ((-1, 0, 40.999), (41, 41.001)),
        "wanted.latches.0.backset_low_mm": SIZE,
        "wanted.bolt_holes.0.diameter_mm": SIZE,
        "found.leaf_mm": SIZE,
        "found.cross_bore_mm": ALLOWANCE,
        "found.edge_bore_mm": ALLOWANCE,
        "found.backset_mm": ((-1, -0.001, 0), (60.325, 69.85)),
    },
    "cable": {"bend_radius_mm": ALLOWANCE, "slack_mm": ALLOWANCE},
    "channel": {
        "leaf.width_mm": SIZE,
        "leaf.height_mm": SIZE,
        "leaf.thickness_mm": SIZE,
        "case.height_mm": SIZE,
        "case.width_mm": SIZE,
        "case.depth_mm": SIZE,
        "square_mm": SIZE,
        "diameter_mm": SIZE,
        "square_diameter_mm": SIZE,
        "bend_radius_mm": ALLOWANCE,
        "min_wall_mm": ALLOWANCE,
    },
    "circuit": {
        "source_v": SIZE,
        "source_ohm": ALLOWANCE,
        "runs.0.length_m": SIZE,
        "runs.0.extra_ohm": ALLOWANCE,
        "runs.0.conductors_in_parallel": COUNTED,
        "loads.0.value": ALLOWANCE,
        "loads.0.minimum_v": ALLOWANCE,
        "loads.0.maximum_v": ALLOWANCE,
    },
    "euro-halves": {
        "leaf_mm": SIZE,
        "key_trim_mm": ALLOWANCE,
        "inside_trim_mm": ALLOWANCE,
        "key_limit_mm": ALLOWANCE,
        "inside_limit_mm": ALLOWANCE,
        "blind_mm": SIZE,
        "sizes.0.a_mm": SIZE,
        "sizes.0.b_mm": SIZE,
    },
    "cylinder-stack": {
        "leaf_mm": SIZE,
        "trim_mm": ALLOWANCE,
        "tolerance_mm": ALLOWANCE,
        "pitch_mm": SIZE,
        "max_turns_beyond": ((-1, 101), (0, 1, 100)),
        "max_rings": ((-1, 101), (0, 1, 100)),
        "max_fits": COUNTED,
        "cylinders.0.length_mm": SIZE,
        "collars.0.height_mm": ALLOWANCE,
        "rings.0.height_mm": SIZE,
        "rings.0.available": COUNT,
    },
    "pocket": {
        "leaf_mm": SIZE,
        "leaf_height_mm": SIZE,
        "stile_mm": SIZE,
        "pocket.length_mm": SIZE,
        "pocket.depth_mm": SIZE,
        "pocket.width_mm": SIZE,
        "lead_mm": SIZE,
        "bridge_mm": ALLOWANCE,
        "side_wall_mm": ALLOWANCE,
        "back_wall_mm": ALLOWANCE,
        "lock.y0": ALLOWANCE,
        "items.0.clearance_mm": ALLOWANCE,
    },
    "siting": {
        "supplies.0.amps": ALLOWANCE,
        "openings.0.maximum_m": ALLOWANCE,
        "distances_m.0.0": ALLOWANCE,
        "maximum_m": ALLOWANCE,
        "time_limit_s": ((-1, -0.001, 0), (0.5, 1, 1.5)),
    },
    "standby": {
        "loads.0.amps": ALLOWANCE,
        "loads.0.hours": ALLOWANCE,
        "margin": ((0, 0.999, 10.001), (1, 1.001, 10)),
        "ageing_factor": ((0, 0.999, 10.001), (1, 1.001, 10)),
        "sizes_ah.0": SIZE,
        "peukert.rated_hours": SIZE,
        "peukert.exponent": PEUKERT,
    },
    "tailpiece": {
        "leaf_mm": SIZE,
        "case_gap_mm": ALLOWANCE,
        "tailpiece_mm": SIZE,
        "minimum_engagement_mm": SIZE,
        "maximum_engagement_mm": ((-1, 9.5), (9.525, 9.6)),
    },
}
EXAMPLES = {
    "standby": {**OF["standby"].example, "peukert": {"form": "stated-hours", "rated_hours": 20, "exponent": 1.25}},
    "battery-life": {**OF["battery-life"].example, "installed_on": "2031-05-01"},
}
"""Where the calculator's own does not have all."""


def refuses(name, path, value):
    """Whether a calculator refuses a value and says that it is this one."""
    data = copy.deepcopy(dict(EXAMPLES.get(name, OF[name].example)))
    *way, last = [int(key) if key.isdigit() else key for key in path.split(".")]
    at = data
    for key in way:
        at = at[key]
    at[last] = value
    try:
        OF[name].run(data)
    except InputError as error:
        return error.field == re.sub(r"\.(\d+)", r"[\1]", path)
    return False


@pytest.mark.parametrize(("name", "path"), [(name, path) for name, limits in LIMITS.items() for path in limits])
def test_limits_hold_at_both_sides(name, path):
    refused, taken = LIMITS[name][path]
    assert [value for value in refused if not refuses(name, path, value)] == []
    assert [value for value in taken if refuses(name, path, value)] == []


DEFAULTS = [
    (calculator.name, each.name, float(each.default))
    for calculator in CALCULATORS
    for each in calculator.inputs
    if re.fullmatch(r"-?\d+(\.\d+)?", each.default)
]


@pytest.mark.parametrize(("name", "field", "default"), DEFAULTS)
def test_what_is_left_out_is_what_is_shown_as_its_default(name, field, default):
    stated = dict(OF[name].example)
    stated.pop(field, None)
    value = int(default) if default.is_integer() else default
    assert OF[name].run(stated) == OF[name].run(stated | {field: value})


def test_there_are_limits_and_defaults_to_look_at():
    assert set(LIMITS) <= set(OF)
    assert len(DEFAULTS) > 20
