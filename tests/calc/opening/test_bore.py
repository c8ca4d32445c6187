"""Bores: published compound angles, ends of the axis, walls, hits, bad input, marching and surface points."""

import doctest
import json
import random
from math import acos, atan2, cos, degrees, dist, hypot, pi, radians, sin, sqrt, tan

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.opening import bore as module
from hwsched.calc.opening.bore import (
    BORE,
    BoreInput,
    Box,
    LeafSize,
    Rod,
    bore,
    segment_to_box_mm,
    segment_to_segment_mm,
    tilt_and_turn,
)
from tests.calc.oracles import bore as oracle
from tests.calc.oracles import case_count

INCH = 25.4
LEAF = LeafSize(900, 2100, 44.45)
SQUARE = BoreInput(LEAF, (70, 1000, 0), 12.7, "inside", through=True)


def test_docs():
    assert doctest.testmod(module).failed == 0


def test_machinerys_handbook_figure_4():
    """Machinery's Handbook, 31st edition, Compound Angles, Fig. 4, p. 122: R = 36 deg 0.9', C = 53 deg 12'."""
    tilt, turn = tilt_and_turn(47 + 14 / 60, 38 + 10 / 60)
    assert turn == pytest.approx(36 + 0.9 / 60, abs=0.2 / 60)
    assert tilt == pytest.approx(53 + 12 / 60, abs=0.2 / 60)
    assert tan(radians(tilt)) == pytest.approx(1.3367, abs=5e-5)


def test_machinerys_handbook_figure_5():
    """The same, Fig. 5, the block's corner: cot(C)**2 = cot(A)**2 + cot(B)**2, C = 22 deg 38.6', R = 35 deg 2.5'."""
    tilt, turn = tilt_and_turn(90 - 27, 90 - 36)
    assert 90 - tilt == pytest.approx(22 + 38.6 / 60, abs=0.1 / 60)
    assert turn == pytest.approx(35 + 2.5 / 60, abs=0.1 / 60)


def test_machinerys_handbook_figure_6():
    """The same, Fig. 6, p. 121: tan(C1) = tan(B1)/cos(R) = tan(A1)/sin(R), R from the B1 plane."""
    a1, b1 = 20, 35
    tilt, turn = tilt_and_turn(a1, b1)
    r = radians(90 - turn)
    assert tan(radians(tilt)) == pytest.approx(tan(radians(b1)) / cos(r)) == pytest.approx(tan(radians(a1)) / sin(r))


def test_two_angles_through_a_leaf():
    """Facts 8.1: A = 15, B = 10 through 1-3/4 in; reject the picture cos C = cos A * cos B."""
    got = bore(BoreInput(LEAF, (300, 1000, 0), 12.7, "inside", up_deg=10, edge_deg=15, through=True))
    assert [abs(c) for c in got.direction] == pytest.approx([0.255145, 0.167901, 0.952213], abs=5e-7)
    assert got.exit is not None
    assert 300 - got.exit[0] == pytest.approx(11.9103, abs=5e-5)
    assert got.exit[1] - 1000 == pytest.approx(7.8377, abs=5e-5)
    assert got.length_mm == pytest.approx(46.6807, abs=5e-5)
    assert got.exit_ellipse == pytest.approx((0.52509 * INCH, 0.5 * INCH), abs=1e-4)
    tilt, turn = tilt_and_turn(15, 10)
    assert (tilt, turn) == pytest.approx((17.78424, 33.34737), abs=5e-6)
    assert tilt != pytest.approx(degrees(acos(cos(radians(15)) * cos(radians(10)))), abs=0.1)


def test_chair_leg_angles():  # facts 8.1: A = 15.7, B = 7.2
    assert tilt_and_turn(15.7, 7.2) == pytest.approx((17.1278, 24.2006), abs=5e-5)


@pytest.mark.parametrize(
    ("face", "start", "end", "exit_face", "exit_at"),
    [
        ("inside", (450, 1050, 0), (450, 1050, 20), "key", (450, 1050, 44.45)),
        ("key", (450, 1050, 44.45), (450, 1050, 24.45), "inside", (450, 1050, 0)),
        ("lock-edge", (0, 1050, 22), (20, 1050, 22), "hinge-edge", (900, 1050, 22)),
        ("hinge-edge", (900, 1050, 22), (880, 1050, 22), "lock-edge", (0, 1050, 22)),
        ("top", (450, 2100, 22), (450, 2080, 22), "bottom", (450, 0, 22)),
        ("bottom", (450, 0, 22), (450, 20, 22), "top", (450, 2100, 22)),
    ],
)
def test_a_bore_without_angles_goes_straight_into_every_face(face, start, end, exit_face, exit_at):
    """Into a leaf of 900 x 2100 x 44.45 mm: 20 mm deep, and through to the plane that is opposite."""
    assert bore(BoreInput(LEAF, start, 6, face, depth_mm=20)).end == pytest.approx(end)
    through = bore(BoreInput(LEAF, start, 6, face, through=True))
    assert (through.exit_face, through.exit) == (exit_face, pytest.approx(exit_at))
    # 22 mm from the nearest face, or, into a face itself, 450 mm from the edges.
    assert through.min_wall_mm == pytest.approx((450 if face in ("inside", "key") else 22) - 3)


def test_square_hole():
    got = bore(SQUARE)
    assert (got.direction, got.length_mm, got.exit) == ((0, 0, 1), 44.45, (70, 1000, 44.45))
    assert (got.exit_face, got.exit_ellipse) == ("key", (12.7, 12.7))
    assert got.min_wall_mm == pytest.approx(70 - 6.35)
    assert got.problems == ()


def test_wall_from_edge_to_bore_is_backset_less_radius():
    """160 and 161 preparations (LIST/ALOA): 1.3125 in and 1.6875 in left (facts 3.2)."""
    for backset, left in ((2.375, 1.3125), (2.75, 1.6875)):
        got = bore(BoreInput(LEAF, (backset * INCH, 1000, 0), 2.125 * INCH, "inside", through=True))
        assert got.min_wall_mm == pytest.approx(left * INCH)


def test_edge_bore_leaves_three_eighths_each_side():  # facts 3.2: 1 in bore centred in 1-3/4 in
    got = bore(BoreInput(LEAF, (0, 1000, 22.225), INCH, "lock-edge", depth_mm=60))
    assert got.min_wall_mm == pytest.approx(0.375 * INCH)
    assert got.exit is None


def test_bored_lever_lock_cable_hole():
    """3/8 in, 45 degrees upward and about 15 toward the edge (common practice)."""
    pocket = Box((40, 1010, 12), (100, 1040, 32))
    got = bore(BoreInput(LEAF, (80, 1000, 0), 9.525, "inside", up_deg=45, edge_deg=15, depth_mm=40, target=pocket))
    assert got.enters_target
    assert got.entry == pytest.approx((80 - 12 * tan(radians(15)), 1012, 12))
    assert degrees(atan2(got.direction[1], got.direction[2])) == pytest.approx(45)


def test_axis_ends_at_the_target_whatever_the_depth():
    target = Box((60, 990, 30), (80, 1010, 40))
    for depth in (5.0, 30.0, 100.0):
        got = bore(BoreInput(LEAF, (70, 1000, 0), 10, "inside", depth_mm=depth, target=target))
        assert (got.enters_target, got.length_mm, got.entry, got.exit) == (True, 30, (70, 1000, 30), None)


def test_missed_target_is_said_and_the_depth_counts():
    target = Box((60, 1005, 30), (80, 1010, 40))
    got = bore(BoreInput(LEAF, (70, 1000, 0), 4, "inside", depth_mm=35, target=target))
    assert (got.enters_target, got.length_mm, got.entry) == (False, 35, None)
    assert got.problems == ("The bore misses its target by 5.00 mm.",)


def test_touching_the_target_is_entering_it():
    target = Box((60, 1000, 30), (80, 1010, 40))
    assert bore(BoreInput(LEAF, (70, 1000, 0), 4, "inside", depth_mm=35, target=target)).enters_target


def test_depth_past_the_leaf_leaves_it():
    for depth, leaves in ((44.4, False), (44.45, True), (60.0, True)):
        got = bore(BoreInput(LEAF, (70, 1000, 44.45), 10, "key", depth_mm=depth))
        assert (got.exit is not None) is leaves
        assert got.length_mm == min(depth, 44.45)


def test_bore_out_of_the_edge():
    got = bore(BoreInput(LEAF, (10, 1000, 0), 6, "inside", edge_deg=45, through=True))
    assert got.exit_face == "lock-edge"
    assert got.exit == pytest.approx((0, 1000, 10))
    assert got.exit_ellipse == pytest.approx((6 * sqrt(2), 6))


def test_wall_is_refused_only_under_the_least():
    given = BoreInput(LEAF, (16.35, 1000, 0), 12.7, "inside", through=True, min_wall_mm=10)
    assert bore(given).problems == ()
    assert len(bore(BoreInput(LEAF, (16.34, 1000, 0), 12.7, "inside", through=True, min_wall_mm=10)).problems) == 1


def test_hits_are_strict():
    touching = Rod((70, 1000 + 10.35, -5), (70, 1000 + 10.35, 50), 8)
    near = Rod((70, 1000 + 10.34, -5), (70, 1000 + 10.34, 50), 8)
    lite = Box((76.34, 900, 0), (200, 1100, 44.45))
    assert bore(BoreInput(LEAF, (70, 1000, 0), 12.7, "inside", through=True, avoid=(touching, near, lite))).hits == (
        1,
        2,
    )


def test_start_inside_without_a_face():
    got = bore(BoreInput(LEAF, (70, 1000, 20), 6, direction=(0, -2, 0), depth_mm=15))
    assert (got.direction, got.end) == ((0, -1, 0), (70, 985, 20))
    on_face = bore(BoreInput(LEAF, (70, 1000, 0), 6, direction=(0, 0, 1), depth_mm=15))
    assert on_face.min_wall_mm == pytest.approx(44.45 - 15)  # the plane it starts on does not count


def test_distances():
    assert segment_to_segment_mm((0, 0, 0), (1, 0, 0), (3, 0, 0), (5, 0, 0)) == 2
    assert segment_to_segment_mm((0, 0, 0), (10, 0, 0), (0, 4, 0), (10, 4, 0)) == 4
    # skew axes, facts 8.1: |(p2 - p1) . (v1 x v2)| / |v1 x v2|
    assert segment_to_segment_mm((-50, 0, 0), (50, 0, 0), (-50, -50, 7), (50, 50, 7)) == pytest.approx(7)
    box = Box((0, 0, 0), (1, 1, 1))
    assert segment_to_box_mm((-1, 0.5, 0.5), (2, 0.5, 0.5), box) == 0
    assert segment_to_box_mm((-1, 2, 0.5), (3, 2, 0.5), box) == 1
    assert segment_to_box_mm((-1, 1.5, 1.5), (0, 3, 3), box) == pytest.approx(hypot(1, 0.5, 0.5))


A_BOX = {"min": [0, 900, 15], "max": [100, 1035, 30]}
BAD = [
    ({"leaf": {"width_mm": 900, "height_mm": 2100, "thickness_mm": 0}}, "leaf.thickness_mm"),
    ({"start": [70, 1050]}, "start"),
    ({"start": [70, 1050, 3]}, "start"),
    ({"start": [-1, 1050, 0]}, "start[0]"),
    ({"start": [70, float("nan"), 0]}, "start[1]"),
    ({"face": "front"}, "face"),
    ({"face": "inside", "up_deg": 90}, "up_deg"),
    ({"edge_deg": -95}, "edge_deg"),
    ({"direction": [0, 0, 1]}, "direction"),
    ({"up_deg": 0, "edge_deg": 0, "direction": [0, 0, -1]}, "direction"),
    ({"up_deg": 0, "edge_deg": 0, "direction": [0, 0, 0]}, "direction"),
    ({"up_deg": 0, "edge_deg": 0, "face": None}, "direction"),
    ({"face": "lock-edge", "start": [0, 1050, 20]}, "edge_deg"),
    ({"face": "top", "start": [70, 2100, 20]}, "up_deg"),
    ({"diameter_mm": 0}, "diameter_mm"),
    ({"depth_mm": -1}, "depth_mm"),
    ({"depth_mm": None, "target": None}, "depth_mm"),
    ({"through": "yes"}, "through"),
    ({"target": {"min": [0, 900, 15], "max": [100, 900, 30]}}, "target.max[1]"),
    ({"target": {"min": [0, 900, 15], "max": [100, 1035, 45]}}, "target"),
    ({"target": {"min": [0, 900, 15]}}, "target.max"),
    ({"avoid": [A_BOX, {"from": [0, 0, 0], "to": [0, 0, 0], "diameter_mm": 3}]}, "avoid[1].to"),
    ({"avoid": [{"from": [0, 0, 0], "to": [0, 0, 9]}]}, "avoid[0].diameter_mm"),
    ({"avoid": [{"from": [0, 0, 0], "to": [0, 0, 9], "diameter_mm": -2}]}, "avoid[0].diameter_mm"),
    ({"min_wall_mm": -1}, "min_wall_mm"),
]


@pytest.mark.parametrize(("change", "field"), BAD)
def test_bad_input_names_its_field(change, field):
    with pytest.raises(InputError) as caught:
        BORE.run({**BORE.example, **change})
    assert caught.value.field == field


def test_a_face_that_there_is_not():
    with pytest.raises(InputError, match="must be one of") as caught:
        bore(BoreInput(LEAF, (0, 1000, 22.225), INCH, "front", depth_mm=60))
    assert caught.value.field == "face"


def test_calculator_declares_what_it_gives():
    out = BORE.run(json.loads(json.dumps(BORE.example)))
    assert [f.name for f in BORE.outputs] == list(json.loads(json.dumps(out, allow_nan=False)))
    assert {f.name for f in BORE.inputs} >= set(BORE.example)


@pytest.mark.fuzz
def test_agrees_with_marching_and_surface_points():
    rng = random.Random(304)
    entered = left = hit = checks = false_refusals = 0
    for _ in range(case_count()):
        data = oracle.random_input(rng)
        out = BORE.run(data)
        assert out["direction"] == pytest.approx(list(oracle.aim(data)), abs=1e-12)
        t, _, inside, target = oracle.march(data)
        step = t[1]
        length = out["length_mm"]
        end = [s + length * d for s, d in zip(data["start"], out["direction"], strict=True)]
        if out["enters_target"]:
            entered += 1
            assert out["entry"] == pytest.approx(end, abs=1e-7)
            box = data["target"]
            assert all(a - 1e-6 <= p <= b + 1e-6 for p, a, b in zip(end, box["min"], box["max"], strict=True))
            assert not (target & (t < length - 1e-9)).any()  # it was not in the target before
            assert out["exit"] is None
        else:
            assert not (target & inside).any(), data  # no sample of the way through the leaf lies in the target
            assert out["entry"] is None
            last = t[inside].max()
            leaves = last if data.get("through") else min(last, data["depth_mm"])
            assert leaves - 1e-9 <= length <= leaves + step
            if out["exit"] is not None:
                left += 1
                assert last - 1e-9 <= length <= last + step
                assert out["exit"] == pytest.approx(end, abs=1e-7)
                axis, sign = oracle.INWARD[out["exit_face"]]
                far = [data["leaf"][k] for k in ("width_mm", "height_mm", "thickness_mm")][axis]
                assert end[axis] == pytest.approx(0 if sign > 0 else far, abs=1e-7)
                long = data["diameter_mm"] / abs(out["direction"][axis])
                assert out["exit_ellipse"] == pytest.approx([long, data["diameter_mm"]])
            else:
                assert length == data["depth_mm"]
        sampled = oracle.wall(data, (data["start"], end), {data["face"], out["exit_face"]})
        assert out["min_wall_mm"] == pytest.approx(sampled, abs=data["diameter_mm"] / 2 * (1 - cos(pi / 180)) + 1e-7)
        assert out["min_wall_mm"] <= sampled + 1e-7  # never promises more wall than there is
        for i, item in enumerate(data["avoid"]):
            checks += 1
            away, gap = oracle.distance(item, data["start"], end)
            reach = (data["diameter_mm"] + item.get("diameter_mm", 0)) / 2
            if i in out["hits"]:
                hit += 1
                false_refusals += away >= reach + gap / 2
            else:
                assert away >= reach - 1e-8, data  # no false pass
        problems = len(out["hits"]) + (out["min_wall_mm"] < data["min_wall_mm"] - 1e-9)
        problems += bool(data.get("target")) and not out["enters_target"]
        assert len(out["problems"]) == problems
        assert dist(data["start"], end) == pytest.approx(length)
    assert min(entered, left, hit) > case_count() / 20
    assert false_refusals == 0, checks
