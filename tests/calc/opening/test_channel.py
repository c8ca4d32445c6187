"""Angled channel: check values, both faces and ways, walls, cable's way, bad input, marching."""

import doctest
import json
import random
from dataclasses import replace
from math import cos, pi, radians, sqrt, tan

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.opening import channel as module
from hwsched.calc.opening.bore import Box, LeafSize, Rod
from hwsched.calc.opening.channel import CHANNEL, ChannelInput, channel, lock_pocket
from tests.calc.oracles import bore as bore_oracle
from tests.calc.oracles import case_count
from tests.calc.oracles import channel as oracle

INCH = 25.4
LEAF = LeafSize(900, 2100, 1.75 * INCH)
LOCK = lock_pocket(LEAF, 1000, 150, 1.75 * INCH, INCH, 100)
# Check values, common practice: centre 2 1/2 in above, square for 3/8 in, then about 10 degrees to the face
GIVEN = ChannelInput(LEAF, "inside", 70, 1000 + 2.5 * INCH, LOCK, 0.375 * INCH, 10, 0.25 * INCH)


def test_docs():
    assert doctest.testmod(module).failed == 0


def test_check_values():
    """Pocket top 1.75 in above: the slanted bore runs 0.762 in and enters at 0.507 in from the face (practice)."""
    got = channel(GIVEN)
    assert got.run_mm / INCH == pytest.approx(0.762, abs=5e-4)
    assert got.enters_at_mm is not None
    assert got.enters_at_mm / INCH == pytest.approx(0.507, abs=5e-4)
    assert got.run_mm == pytest.approx(0.75 * INCH / cos(radians(10)))
    assert got.ok
    assert got.square.length_mm == pytest.approx(0.375 * INCH)
    assert got.knee_deg == pytest.approx(80)


@pytest.mark.parametrize(
    ("y", "beside"), [(894.44, False), (894.45, True), (1000, True), (1044.45, True), (1044.46, False)]
)
def test_a_hole_at_the_ends_of_the_case_is_beside_it(y, beside):
    """The case of 150 mm reaches 44.45 mm above the cylinder at 1000 mm."""
    refused = ""
    try:
        channel(replace(GIVEN, hole_y=y))
    except InputError as error:
        refused = error.field
    assert (refused == "hole_above_mm") == beside


def test_key_face_is_the_mirror_image():
    got = channel(replace(GIVEN, face="key"))
    assert got.run_mm == pytest.approx(channel(GIVEN).run_mm)
    assert got.enters_at_mm == pytest.approx(channel(GIVEN).enters_at_mm)
    assert got.slanted.direction[2] < 0
    assert got.path[0][2] == LEAF.thickness_mm


def test_from_below():
    low = LOCK.low[1] - 0.75 * INCH
    got = channel(replace(GIVEN, hole_y=low))
    assert got.slanted.direction[1] > 0
    assert got.run_mm == pytest.approx(0.75 * INCH / cos(radians(10)))
    assert got.slanted.entry is not None
    assert got.slanted.entry[1] == pytest.approx(LOCK.low[1])


def test_lean_goes_toward_the_lock_edge():
    got = channel(replace(GIVEN, lean_deg=30))
    assert got.slanted.entry is not None
    assert 70 - got.slanted.entry[0] == pytest.approx(0.75 * INCH * tan(radians(30)))


def test_angles_that_lead_in():
    got = channel(GIVEN)
    assert got.angles_deg is not None
    low, high = got.angles_deg
    assert low == pytest.approx(0, abs=1e-6)
    assert tan(radians(high)) == pytest.approx((1.375 - 0.375) / 0.75)
    assert channel(replace(GIVEN, angle_deg=high - 0.01)).entry_clear_mm is not None
    assert channel(replace(GIVEN, angle_deg=high + 0.01)).entry_clear_mm is None
    narrow = lock_pocket(LEAF, 1000, 150, 1.75 * INCH, 10, 100, case_offset_mm=10)
    missed = channel(replace(GIVEN, pocket=narrow))
    assert not missed.ok
    assert missed.problems == ("The slanted bore enters the pocket by its side, not by its top.",)
    assert missed.angles_deg is not None
    assert channel(replace(GIVEN, pocket=narrow, angle_deg=sum(missed.angles_deg) / 2)).ok
    steep = channel(replace(GIVEN, angle_deg=80))
    assert not steep.enters
    assert "misses its target" in steep.problems[0]


def test_square_bore_past_the_pocket_has_no_angle():
    got = channel(replace(GIVEN, square_mm=40))
    assert got.angles_deg is None
    assert not got.enters


def test_wall_and_rim():
    got = channel(replace(GIVEN, min_wall_mm=7))
    # the slanted bore at the knee, 3/8 in under the face
    assert got.min_wall_mm == pytest.approx(0.375 * INCH - 0.125 * INCH * cos(radians(10)))
    assert got.problems[0].startswith("Slanted bore: The wall left is 6.40 mm")
    assert got.entry_clear_mm == pytest.approx(0.75 * INCH * tan(radians(10)) - 0.125 * INCH / cos(radians(10)))


def test_pull_wire_goes_face_knee_entry_connector():
    got = channel(replace(GIVEN, connector=(70, 1000, 22)))
    assert len(got.path) == 4
    assert got.path[-1] == (70, 1000, 22)
    sharp = channel(GIVEN)
    assert sharp.path_mm == pytest.approx(0.375 * INCH + sharp.run_mm)
    bent = channel(replace(GIVEN, bend_radius_mm=6))
    turn = radians(80)
    assert bent.path_mm == pytest.approx(sharp.path_mm - 12 * tan(turn / 2) + 6 * turn)
    tight = channel(replace(GIVEN, bend_radius_mm=12))
    assert tight.tight_bends == (1,)


@pytest.mark.parametrize("end", ["low", "high"])
@pytest.mark.parametrize("axis", [0, 1, 2])
def test_a_connector_may_be_at_the_walls_of_the_pocket_and_not_in_them(axis, end):
    middle = [(a + b) / 2 for a, b in zip(LOCK.low, LOCK.high, strict=True)]
    wall, outward = (LOCK.low[axis], -0.001) if end == "low" else (LOCK.high[axis], 0.001)
    at = tuple(wall if i == axis else middle[i] for i in range(3))
    assert channel(replace(GIVEN, connector=at)).path[-1] == at
    beyond = tuple(v + outward if i == axis else v for i, v in enumerate(at))
    with pytest.raises(InputError, match=rf"connector\[{axis}\]"):
        channel(replace(GIVEN, connector=beyond))


def test_what_is_in_the_way_is_hit():
    rod = Rod((0, 1000 + 2.1 * INCH, 12), (200, 1000 + 2.1 * INCH, 12), 3)
    got = channel(replace(GIVEN, avoid=(rod,)))
    assert got.slanted.hits == (0,)
    assert got.square.hits == ()
    assert "Slanted bore: The bore runs into avoid[0]." in got.problems


def test_edge_pocket_of_a_mortise_lock():
    """86 edge preparation 1-1/4 x 8 in leaves 0.250 in each side of 1-3/4 in (A115.1 / A156.115, facts 3.2)."""
    box = lock_pocket(LEAF, 1000, 8 * INCH, 100, 1.25 * INCH, 100)
    assert isinstance(box, Box)
    assert box.low[2] == pytest.approx(0.25 * INCH)
    assert LEAF.thickness_mm - box.high[2] == pytest.approx(0.25 * INCH)
    assert box.high[1] - box.low[1] == pytest.approx(203.2)


LOCK_IN = CHANNEL.example["case"]
BAD = [
    ({"leaf": {"width_mm": 900, "height_mm": 2100, "thickness_mm": -1}}, "leaf.thickness_mm"),
    ({"cylinder": {"x": 901, "y": 1000}}, "cylinder.x"),
    ({"case": {**LOCK_IN, "width_mm": 50}}, "case.width_mm"),
    ({"case": {**LOCK_IN, "width_mm": 40, "offset_mm": 3}}, "case.width_mm"),
    ({"case": {**LOCK_IN, "depth_mm": 0}}, "case.depth_mm"),
    ({"case": {**LOCK_IN, "depth_mm": CHANNEL.example["leaf"]["width_mm"] + 1}}, "case.depth_mm"),
    ({"case": {**LOCK_IN, "top_above_mm": -990}}, "case.top_above_mm"),
    ({"case": {**LOCK_IN, "top_above_mm": 1200}}, "case.top_above_mm"),
    ({"face": "top"}, "face"),
    ({"hole_above_mm": 40}, "hole_above_mm"),
    ({"hole_above_mm": 1200}, "hole_above_mm"),
    ({"hole_above_mm": None}, "hole_above_mm"),
    ({"hole_x_mm": -2}, "hole_x_mm"),
    ({"square_mm": 44.45}, "square_mm"),
    ({"square_mm": 0}, "square_mm"),
    ({"angle_deg": 0}, "angle_deg"),
    ({"angle_deg": 90}, "angle_deg"),
    ({"angle_deg": float("nan")}, "angle_deg"),
    ({"lean_deg": -90}, "lean_deg"),
    ({"diameter_mm": 0}, "diameter_mm"),
    ({"square_diameter_mm": 0}, "square_diameter_mm"),
    ({"bend_radius_mm": -1}, "bend_radius_mm"),
    ({"connector": [70, 1000, 2]}, "connector[2]"),
    ({"avoid": [{"min": [0, 0, 0], "max": [0, 1, 1]}]}, "avoid[0].max[0]"),
    ({"min_wall_mm": -1}, "min_wall_mm"),
]


@pytest.mark.parametrize(("change", "field"), BAD)
def test_bad_input_names_its_field(change, field):
    with pytest.raises(InputError) as caught:
        CHANNEL.run({**CHANNEL.example, **change})
    assert caught.value.field == field


@pytest.mark.parametrize(
    ("size", "field"),
    [
        ((0, 25.4, 100), "case.height_mm"),
        ((150, 0, 100), "case.width_mm"),
        ((150, 25.4, 0), "case.depth_mm"),
    ],
)
def test_a_case_without_a_size(size, field):
    height, width, depth = size
    with pytest.raises(InputError) as caught:
        lock_pocket(LEAF, 1000, height, 44.45, width, depth)
    assert caught.value.field == field
    tiny = lock_pocket(LEAF, 1000, height or 0.5, 0.5, width or 0.5, depth or 0.5)
    assert all(high > low for low, high in zip(tiny.low, tiny.high, strict=True))


def test_a_case_may_fill_the_leaf():
    assert lock_pocket(LEAF, 1000, 2100, 1100, LEAF.thickness_mm, LEAF.width_mm) == Box(
        (0.0, 0.0, 0.0), (LEAF.width_mm, 2100.0, LEAF.thickness_mm)
    )


def test_a_face_that_there_is_not():
    with pytest.raises(InputError, match="must be inside or key") as caught:
        channel(replace(GIVEN, face="top"))
    assert caught.value.field == "face"


def test_calculator_declares_what_it_gives():
    out = CHANNEL.run(json.loads(json.dumps(CHANNEL.example)))
    assert [f.name for f in CHANNEL.outputs] == list(json.loads(json.dumps(out, allow_nan=False)))
    assert {f.name for f in CHANNEL.inputs} >= set(CHANNEL.example)


@pytest.mark.fuzz
def test_agrees_with_marching():
    rng = random.Random(309)
    entered = by_top = hits = false_refusals = 0
    for _ in range(case_count()):
        data = oracle.random_input(rng)
        out = CHANNEL.run(data)
        hole, knee, direction = oracle.geometry(data)
        assert out["knee"] == pytest.approx(list(knee))
        assert out["direction"] == pytest.approx(list(direction), abs=1e-12)
        seen, last = oracle.march(data)
        end = knee + out["run_mm"] * direction
        low, high = oracle.lock_box(data)
        leaves = None
        if out["enters"]:
            entered += 1
            assert ((end >= low - 1e-6) & (end <= high + 1e-6)).all()
            assert seen is None or seen >= out["run_mm"] - 1e-9  # never in the pocket before
            assert abs(end[2] - hole[2]) == pytest.approx(out["enters_at_mm"])
            assert out["entry"] == pytest.approx(list(end))
        else:
            assert seen is None, data
            assert last - 1e-9 <= out["run_mm"] <= last + 2 * oracle.STEP
            far = [data["leaf"][k] for k in ("width_mm", "height_mm", "thickness_mm")]
            names = (("lock-edge", "hinge-edge"), ("bottom", "top"), ("inside", "key"))
            leaves = next(
                names[i][j]
                for i in range(3)
                for j, plane in enumerate((0, far[i]))
                if abs(end[i] - plane) < 1e-6
            )  # fmt: skip
        sampled = oracle.least_wall(data, out["run_mm"], leaves)
        assert out["min_wall_mm"] <= sampled + 1e-7
        assert out["min_wall_mm"] == pytest.approx(sampled, abs=0.01)
        if out["entry_clear_mm"] is not None:
            by_top += 1
            assert out["entry_clear_mm"] <= oracle.rim_clear(data) + 1e-7
            assert out["entry_clear_mm"] == pytest.approx(oracle.rim_clear(data), abs=0.02)
            assert out["angles_deg"][0] - 1e-6 <= data["angle_deg"] <= out["angles_deg"][1] + 1e-6
        elif out["angles_deg"] and data["square_mm"] < abs(low[2] - hole[2]):
            assert not out["angles_deg"][0] <= data["angle_deg"] <= out["angles_deg"][1]
        for item in data.get("avoid", []):
            apart = [
                bore_oracle.distance(item, list(a), list(b)) for a, b in ((hole, knee), (knee, end))
            ]  # fmt: skip
            reach = (data["diameter_mm"] + item["diameter_mm"]) / 2
            if out["hits"]:
                hits += 1
                false_refusals += all(away >= reach + step / 2 for away, step in apart)
            else:
                assert all(away >= reach - 1e-8 for away, _ in apart), data
        bad = out["entry_clear_mm"] is None or bool(out["hits"]) or out["min_wall_mm"] < data["min_wall_mm"] - 1e-9
        assert out["ok"] is not bad
    assert min(entered, by_top, case_count() - entered, hits) > case_count() / 50
    assert false_refusals == 0


def test_oracle_turns_as_the_task_describes():
    """The oracle's own direction: 10 degrees to the face means a slope of tan(10), lean a slope in the plane."""
    data = {**CHANNEL.example, "lean_deg": 0}
    _, _, direction = oracle.geometry(data)
    assert direction[2] / -direction[1] == pytest.approx(tan(radians(10)))
    _, _, leaned = oracle.geometry({**data, "lean_deg": 45})
    assert leaned[0] == pytest.approx(leaned[1])
    assert sqrt((leaned**2).sum()) == pytest.approx(1)
    assert pi / 18 == pytest.approx(radians(10))
