"""Placement: closed form, touching, blockers, hand-placed positions, bad input, sampled positions."""

import doctest
import json
import random
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.opening import placement
from hwsched.calc.opening.placement import (
    PLACEMENT,
    KeepOut,
    Pattern,
    PlacementInput,
    Rect,
    check_position,
    nearest_clearance,
    place,
)
from tests.calc.oracles import case_count
from tests.calc.oracles import placement as oracle

STRAIGHT = Pattern("straight", Rect(70, 1000, 70, 1000), 40, 1)
ABOVE = Pattern("above", Rect(60, 1060, 80, 1100), 90, 2)
GIVEN = PlacementInput(
    leaf_width_mm=900,
    leaf_height_mm=2100,
    edge_margin_mm=5,
    plate_width_mm=60,
    plate_height_mm=100,
    window=Rect(10, 10, 50, 90),
    connector=(30, 50),
    cylinder=(70, 1000),
    keepouts=(),
    patterns=(STRAIGHT, ABOVE),
)


def test_docs():
    assert doctest.testmod(placement).failed == 0


def test_free_leaf_puts_the_connector_over_the_hole():
    best = place(GIVEN).best
    assert best is not None
    assert (best.pattern, best.plate, best.hole, best.cable_mm) == ("straight", (40, 950), (70, 1000), 40)


def test_cost_decides_before_cable():
    dear = replace(STRAIGHT, cost=3)
    result = place(replace(GIVEN, patterns=(dear, ABOVE)))
    assert [p.pattern for p in result.alternatives] == ["above", "straight"]
    assert result.best == result.alternatives[0]
    assert result.alternatives[0].cable_mm > result.alternatives[1].cable_mm


def test_equal_cost_takes_the_shorter_cable():
    result = place(replace(GIVEN, patterns=(replace(ABOVE, cost=1), STRAIGHT)))
    assert result.best is not None
    assert result.best.pattern == "straight"


def test_plate_may_fit_exactly_between_two_keepouts():
    left = KeepOut("left", Rect(10, 800, 35, 1200), 4)  # grown to x = 39
    right = KeepOut("right", Rect(104.1, 800, 200, 1200), 5.1)  # grown to x = 99: 60 mm remain
    result = place(replace(GIVEN, keepouts=(left, right), patterns=(STRAIGHT,)))
    assert result.best is not None
    assert result.best.plate[0] == pytest.approx(39, abs=1e-9)
    tighter = replace(right, clearance_mm=5.101)
    refused = place(replace(GIVEN, keepouts=(left, tighter), patterns=(STRAIGHT,)))
    assert not refused.feasible
    assert refused.blocked_by == ("left",)


def test_plate_may_fit_a_point():
    """Touching four keep-outs at once leaves one single place."""
    around = (
        KeepOut("a", Rect(0, 900, 40, 1100)),
        KeepOut("b", Rect(100, 900, 200, 1100)),
        KeepOut("c", Rect(0, 800, 200, 940)),
        KeepOut("d", Rect(0, 1040, 200, 1100)),
    )
    result = place(replace(GIVEN, keepouts=around, patterns=(STRAIGHT,)))
    assert result.best is not None
    assert result.best.plate == (40, 940)


def test_two_blockers_are_named():
    pair = (KeepOut("trim", Rect(60, 990, 80, 1010)), KeepOut("turn", Rect(60, 985, 90, 1005)))
    result = place(replace(GIVEN, keepouts=(*pair, KeepOut("far", Rect(500, 0, 600, 2000))), patterns=(STRAIGHT,)))
    assert result.blocked_by == ("trim", "turn")
    assert "trim and turn" in result.reason


def test_three_blockers_are_too_many():
    three = tuple(KeepOut(f"k{i}", Rect(60, 990, 80, 1010 + i)) for i in range(3))
    result = place(replace(GIVEN, keepouts=three, patterns=(STRAIGHT,)))
    assert (result.feasible, result.blocked_by) == (False, ())
    assert result.reason == "More than two keep-outs stand in the way."


def test_plate_larger_than_the_leaf_is_said():
    result = place(replace(GIVEN, leaf_width_mm=69, cylinder=(50, 1000)))
    assert result.reason == "The plate is 1.00 mm wider than the leaf less its margins."
    assert result.blocked_by == ()


def test_narrow_stile_common_practice():
    """Hole centre 1 3/8 in above the existing hole on its backset line (common practice).

    The plate stays 3/16 in clear of a thumb turn below it (common practice).
    """
    inch = 25.4
    hole = 1000 + 1.375 * inch
    turn = Rect(70 - inch / 2, 1000 - inch / 2, 70 + inch / 2, 1000 + inch / 2)
    given = replace(
        GIVEN,
        keepouts=(KeepOut("thumb turn", turn, 3 / 16 * inch),),
        window=Rect(30, 0.25 * inch, 30, 0.75 * inch),
        patterns=(Pattern("narrow", Rect(70, hole, 70, hole), 60, 1),),
    )
    best = place(given).best
    assert best is not None
    assert best.plate[1] >= 1000 + inch / 2 + 3 / 16 * inch
    assert best.hole == (70, hole)


def test_hand_placed_position():
    given = replace(GIVEN, keepouts=(KeepOut("trim", Rect(40, 900, 100, 955), 4.7625),))
    good = check_position(given, STRAIGHT, 40, 960)
    assert good.ok
    assert (good.reasons, good.hole, good.cable_mm) == ((), (70, 1000), 40 + 10)
    low = check_position(given, STRAIGHT, 40, 958)
    assert not low.ok
    assert low.reasons[0].name == "trim"
    assert low.reasons[0].short_mm == pytest.approx(1.7625)
    assert low.cable_mm == pytest.approx(48)  # shown while it is dragged, though refused
    off = check_position(given, STRAIGHT, 2, 1011)
    assert {r.name for r in off.reasons} == {"lock edge", "access hole"}
    assert off.hole is None
    assert off.cable_mm is None


@pytest.mark.parametrize(
    ("x", "y", "off_mm"),
    # The window spans 10 to 50 and 10 to 90 of the plate; the hole is at 70, 1000.
    [(62, 950, 2), (15, 950, 5), (40, 993, 3), (40, 903, 7), (63, 994, 5)],
)
def test_how_far_the_access_hole_is_off(x, y, off_mm):
    found = check_position(GIVEN, STRAIGHT, x, y)
    assert [(reason.name, reason.short_mm) for reason in found.reasons] == [("access hole", pytest.approx(off_mm))]
    assert found.reasons[0].text == f"does not cover its access hole: {off_mm:.2f} mm off"
    assert (found.ok, found.hole, found.cable_mm) == (False, None, None)


def test_a_keepout_grows_on_all_sides():
    assert KeepOut("trim", Rect(40, 900, 100, 955), 5).grown() == (35, 895, 105, 960)


def test_clearances_are_sorted_by_what_is_left():
    given = replace(GIVEN, keepouts=(KeepOut("trim", Rect(40, 900, 100, 955), 4.7625),))
    got = nearest_clearance(given, (40, 960))
    assert got[0] == ("trim", 5, 4.7625)
    assert ("lock edge", 40, 5) in got


def test_more_keepouts_never_make_it_better():
    rng = random.Random(7)
    for _ in range(300):
        data = oracle.random_input(rng)
        cables = []
        for count in range(len(data["keepouts"]) + 1):
            out = PLACEMENT.run({**data, "keepouts": data["keepouts"][:count], "patterns": data["patterns"][:1]})
            cables.append(out["best"]["cable_mm"] if out["feasible"] else float("inf"))
        assert all(a <= b + 1e-9 for a, b in pairwise(cables))


def test_every_size_above_nothing_is_taken():
    tiny = PlacementInput(0.9, 0.9, 0, 0.5, 0.5, Rect(0, 0, 0.5, 0.5), (0, 0), (0.9, 0.9), (), (STRAIGHT,))
    assert place(tiny).reason.startswith("Nowhere on the leaf")
    assert place(replace(tiny, patterns=(Pattern("there", Rect(0.4, 0.4, 0.4, 0.4), 0, 0),))).best is not None
    corner = replace(tiny, cylinder=(0, 0), keepouts=(KeepOut("a", Rect(0, 0, 0.1, 0.1), 0),))
    assert not place(corner).feasible


@pytest.mark.parametrize(("x", "y", "field"), [(float("nan"), 0, "plate_x"), (0, float("inf"), "plate_y")])
def test_a_position_that_is_no_number(x, y, field):
    with pytest.raises(InputError) as caught:
        check_position(GIVEN, STRAIGHT, x, y)
    assert caught.value.field == field


BAD = [
    ({"leaf": {"width_mm": 0, "height_mm": 2000}}, "leaf.width_mm"),
    ({"leaf": {"width_mm": 900}}, "leaf.height_mm"),
    ({"leaf": 3}, "leaf"),
    ({"edge_margin_mm": -1}, "edge_margin_mm"),
    ({"edge_margin_mm": float("nan")}, "edge_margin_mm"),
    ({"plate": {"width_mm": -70, "height_mm": 110}}, "plate.width_mm"),
    ({"window": {"x0": 10, "y0": 8, "x1": 5, "y1": 40}}, "window.x1"),
    ({"window": {"x0": 10, "y0": 8, "x1": 71, "y1": 40}}, "window"),
    ({"cylinder": {"x": 70, "y": 2101}}, "cylinder.y"),
    ({"cylinder": {"x": float("inf"), "y": 1000}}, "cylinder.x"),
    ({"connector": {"x": 3}}, "connector.y"),
    ({"keepouts": [{"x0": 1, "y0": 1, "x1": 1, "y1": 2, "clearance_mm": 0, "name": "a"}]}, "keepouts[0].x1"),
    ({"keepouts": [{"x0": 1, "y0": 1, "x1": 2, "y1": 0, "clearance_mm": 0, "name": "a"}]}, "keepouts[0].y1"),
    ({"keepouts": [{"x0": 1, "y0": 1, "x1": 2, "y1": 2, "clearance_mm": -1}]}, "keepouts[0].clearance_mm"),
    ({"keepouts": [{"x0": 1, "y0": 1, "x1": 2, "clearance_mm": 1}]}, "keepouts[0].y1"),
    ({"patterns": [{"name": "a", "hole": {"x0": 1, "y0": 1, "x1": 0, "y1": 2}, "base_mm": 1, "cost": 1}]},
     "patterns[0].hole.x1"),
    ({"patterns": [{"name": "a", "hole": {"x0": 1, "y0": 1, "x1": 2, "y1": 2}, "base_mm": -1, "cost": 1}]},
     "patterns[0].base_mm"),
    ({"patterns": [{"name": "a", "hole": [1, 2], "base_mm": 1, "cost": 1}]}, "patterns[0].hole"),
]  # fmt: skip


@pytest.mark.parametrize(("change", "field"), BAD)
def test_bad_input_names_its_field(change, field):
    with pytest.raises(InputError) as caught:
        PLACEMENT.run({**PLACEMENT.example, **change})
    assert caught.value.field == field


@pytest.mark.parametrize(
    ("given", "field"),
    [
        (replace(GIVEN, keepouts=(KeepOut("a", Rect(0, 0, float("inf"), 1)),)), "keepouts[0].x1"),
        (replace(GIVEN, patterns=(replace(ABOVE, cost=float("nan")),)), "patterns[0].cost"),
        (replace(GIVEN, connector=(float("nan"), 1.0)), "connector.x"),
        (replace(GIVEN, connector=(1.0, float("nan"))), "connector.y"),
        (replace(GIVEN, keepouts=(KeepOut("a", Rect(0, float("-inf"), 1, 1)),)), "keepouts[0].y0"),
        (replace(GIVEN, keepouts=(KeepOut("a", Rect(0, 0, 1, 1), float("inf")),)), "keepouts[0].clearance_mm"),
        (replace(GIVEN, window=Rect(10, 10, 50, 101)), "window"),
        (replace(GIVEN, window=Rect(10, -1, 50, 90)), "window"),
        (replace(GIVEN, window=Rect(-1, 10, 50, 90)), "window"),
        (replace(GIVEN, patterns=(replace(ABOVE, base_mm=float("inf")),)), "patterns[0].base_mm"),
    ],
)
def test_values_from_python_are_checked_too(given, field):
    with pytest.raises(InputError) as caught:
        place(given)
    assert caught.value.field == field


def test_calculator_declares_what_it_gives():
    out = PLACEMENT.run(json.loads(json.dumps(PLACEMENT.example)))
    assert [f.name for f in PLACEMENT.outputs] == list(json.loads(json.dumps(out, allow_nan=False)))
    assert {f.name for f in PLACEMENT.inputs} == set(PLACEMENT.example)


def test_oracle_mirror_against_a_grid_of_holes():
    rng = random.Random(11)
    seen = 0
    while seen < 8:
        data = oracle.random_input(rng)
        pattern = data["patterns"][0]
        corners = oracle._critical(data, pattern)
        if corners is None:
            continue
        x, y = float(corners[0][0]), float(corners[1][-1])
        exact = pattern["base_mm"] + float(oracle._bars(data, pattern, np.array([x]), np.array([y]))[0])
        grid = oracle.shortest_by_grid(data, pattern, x, y, 120)
        assert exact <= grid + 1e-9
        assert grid == pytest.approx(exact, abs=0.2)
        seen += 1


@pytest.mark.fuzz
def test_agrees_with_sampled_positions():
    rng = random.Random(302)
    feasible = blocked = compared = 0
    for _ in range(case_count()):
        data = oracle.random_input(rng)
        out = PLACEMENT.run(data)
        possible = {p["name"]: oracle.possible(data, p) for p in data["patterns"]}
        assert {a["pattern"] for a in out["alternatives"]} == {n for n, yes in possible.items() if yes}, data
        assert out["feasible"] == any(possible.values())
        if not out["feasible"]:
            size = oracle.smallest_blockers(data)
            assert len(out["blocked_by"]) == (size or 0), data
            if size:
                without = [int(name[1:]) for name in out["blocked_by"]]
                assert any(oracle.possible(data, p, without) for p in data["patterns"])
                blocked += 1
            assert out["best"] is None
            assert out["reason"]
            continue
        feasible += 1
        cost = {p["name"]: p["cost"] for p in data["patterns"]}
        ranks = [(cost[a["pattern"]], a["cable_mm"]) for a in out["alternatives"]]
        assert ranks == sorted(ranks)
        assert out["best"] == out["alternatives"][0]
        for found in out["alternatives"]:
            assert oracle.breaks(data, found) == [], (data, found)
            pattern = next(p for p in data["patterns"] if p["name"] == found["pattern"])
            sampled = oracle.shortest_sampled(data, pattern)
            if sampled is not None:
                compared += 1
                assert found["cable_mm"] <= sampled + 1e-6, (data, found, sampled)
    assert min(feasible, blocked, compared) > case_count() / 20
