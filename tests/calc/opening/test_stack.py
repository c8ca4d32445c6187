"""Threaded stack: check values, order, limits, bad input, whole enumeration."""

import doctest
import json
import random

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.opening import stack
from hwsched.calc.opening.stack import (
    CYLINDER_STACK,
    THREAD_PITCH_MM,
    StackCollar,
    StackCylinder,
    StackMiss,
    StackRing,
    cylinder_stack,
    projection_mm,
    stacks_by_rings,
)
from tests.calc.oracles import case_count
from tests.calc.oracles import stack as oracle

INCH = 25.4


def test_docs():
    assert doctest.testmod(stack).failed == 0


@pytest.mark.parametrize(
    ("length", "proud"), [(28.575, (6.35, 5.556, 4.7625)), (31.75, (9.525, 8.731, 7.9375))]
)  # common practice
def test_check_values(length, proud):
    for k, value in enumerate(proud):
        assert projection_mm(44.45, 0, length, 0, k) == pytest.approx(value, abs=5e-4)


def test_pitch_is_one_thirty_second_of_an_inch():  # facts 3.3; from memory, unverified
    assert pytest.approx(0.03125 * INCH) == THREAD_PITCH_MM


def test_length_is_rounded_up_to_the_next_eighth():  # facts 3.3: 1.19 in needed, 1-1/4 in taken; from memory
    cylinders = [StackCylinder(f"{n}/8", n * INCH / 8, 0) for n in range(7, 13)]
    collar = StackCollar("flush", 0.0)
    rings = [StackRing("1/64", INCH / 64)]
    got = cylinder_stack(2 * 1.19 * INCH, 0, cylinders, [collar], rings, max_rings=4)
    assert got.fits[0].cylinder == "10/8"
    assert min(fit.projection_mm for fit in got.fits) >= 0


def test_never_recessed_and_flush_is_allowed():
    cylinder = [StackCylinder("C", 28.575, 0)]
    flush = cylinder_stack(44.45, 0, cylinder, [StackCollar("K", 4.7625)], [])
    assert (flush.fits[0].gap_mm, flush.fits[0].turns) == (0.0, 2)
    recessed = cylinder_stack(44.45, 0, cylinder, [StackCollar("K", 6.3501)], [])
    assert recessed.fits == ()
    assert recessed.nearest_miss is not None
    assert recessed.nearest_miss.gap_mm == pytest.approx(-1e-4)
    assert recessed.nearest_miss.distance_mm == pytest.approx(1e-4)


def test_gap_of_exactly_the_tolerance_is_allowed():
    got = cylinder_stack(
        44.45, 0, [StackCylinder("C", 28.575, 0)], [StackCollar("K", 6.35 - 0.79375)], [], max_turns_beyond=0
    )
    assert got.fits[0].gap_mm == pytest.approx(0.79375)


@pytest.mark.parametrize(
    ("collar", "gap"),
    [
        # The head stands 6.35 mm proud. A tenth of a millimetre that nobody can measure may make it seem recessed ...
        (6.44, -0.09), (6.46, None),
        # ... and so much farther out than the pitch of 0.79375 mm: 6.35 - 0.89375 = 5.45625.
        (5.46, 0.89), (5.45, None),
        (6.35, 0.0),
    ],
)  # fmt: skip
def test_what_cannot_be_measured_widens_the_band_on_both_sides(collar, gap):
    got = cylinder_stack(
        44.45, 0, [StackCylinder("C", 28.575, 0)], [StackCollar("K", collar)], [], max_turns_beyond=0, measure_mm=0.1
    )
    assert [fit.gap_mm for fit in got.fits] == ([] if gap is None else [pytest.approx(gap)])
    assert [fit.projection_mm for fit in got.fits] == ([] if gap is None else [pytest.approx(6.35)])


def test_order_is_fewest_rings_then_projection_then_gap():
    got = cylinder_stack(
        44.45, 0,
        [StackCylinder("long", 31.75, 0), StackCylinder("short", 28.575, 0)],
        [StackCollar("low", 4.7625), StackCollar("lower", 4.5)],
        [StackRing("r", 1.5875)],
    )  # fmt: skip
    keys = [(len(f.rings), round(f.projection_mm, 6), round(f.gap_mm, 6)) for f in got.fits]
    assert keys == sorted(keys)
    assert (got.fits[0].cylinder, got.fits[0].collar, got.fits[0].turns) == ("short", "low", 2)


def test_no_collars_is_no_collar():
    got = cylinder_stack(44.45, 0, [StackCylinder("C", 22.225, 0)], [], [])
    assert (got.fits[0].collar, got.fits[0].projection_mm) == (None, 0.0)


def test_nothing_to_choose_from():
    got = cylinder_stack(44.45, 0, [], [StackCollar("K", 3)], [])
    assert (got.fits, got.nearest_miss, got.more) == ((), None, False)


def test_availability_is_kept():
    rings = [StackRing("r", 1.0, 2)]
    got = cylinder_stack(44.45, 0, [StackCylinder("C", 22.225 + 5, 0)], [], rings, max_rings=5, tolerance_mm=0.5)
    assert got.fits == ()
    assert got.nearest_miss is not None
    assert got.nearest_miss.rings == ("r", "r")


def test_limit_on_fits_keeps_the_best():
    cylinders = [StackCylinder(f"c{i}", 28 + i, 0) for i in range(8)]
    rings = [StackRing(f"r{i}", 1 + i / 8) for i in range(5)]
    everything = cylinder_stack(44.45, 0, cylinders, [], rings, max_fits=100_000)
    some = cylinder_stack(44.45, 0, cylinders, [], rings, max_fits=7)
    assert not everything.more
    assert some.more
    assert some.fits == everything.fits[:7]
    whole = len(everything.fits)
    assert not cylinder_stack(44.45, 0, cylinders, [], rings, max_fits=whole).more
    assert cylinder_stack(44.45, 0, cylinders, [], rings, max_fits=whole - 1).more


def test_heights_as_given_decide_at_the_tolerance():
    """Less than a millionth of a millimetre past it is past it."""
    cylinder = [StackCylinder("C", 22.225 + 2, 0)]
    for height, fits in ((1.5, True), (1.4999999, False)):
        got = cylinder_stack(
            44.45, 0, cylinder, [], [StackRing("r", height, 1)], tolerance_mm=0.5, max_turns_beyond=0, max_rings=1
        )
        assert bool(got.fits) == fits, height


@pytest.mark.parametrize("count", [4, 7, 13])
def test_rings_whose_heights_are_rounded_up_still_make_the_tallest_stack_that_can_be(count):
    """A head 6.35 mm proud, filled flush by so many equal rings: of each height less than a millionth is rounded up."""
    cylinder, ring = [StackCylinder("C", 28.575, 0)], [StackRing("R", 6.35 / count)]
    got = cylinder_stack(44.45, 0, cylinder, [], ring, max_turns_beyond=0, tolerance_mm=6.35, max_rings=count)
    # With any fewer something is left, and without a ring the whole tolerance.
    left = {len(fit.rings): fit.gap_mm for fit in got.fits}
    assert left == pytest.approx({n: 6.35 / count * (count - n) for n in range(count + 1)}, abs=1e-9)


def test_many_rings_do_not_hang():
    rng = random.Random(2)
    cylinders = [StackCylinder(f"c{i}", 22.225 + 3.175 * i, 0) for i in range(10)]
    rings = [StackRing(f"r{i}", rng.uniform(0.5, 5)) for i in range(10)]
    got = cylinder_stack(44.45, 6, cylinders, [], rings, max_rings=8)
    assert got.fits
    with pytest.raises(InputError, match="max_rings"):
        cylinder_stack(
            44.45, 6, cylinders, [], [StackRing(f"r{i}", rng.uniform(0.1, 5)) for i in range(40)], max_rings=30
        )


@pytest.mark.parametrize(("most", "formed"), [(2, True), (1, False)])
def test_as_many_sums_are_formed_as_may_be(monkeypatch, most, formed):
    """One ring, of which one is used at most, makes two sums: none, and its own height."""
    monkeypatch.setattr(stack, "_MAX_SUMS", most)
    asked = 44.45, 0, [StackCylinder("C", 28.575, 0)], [], [StackRing("R", 6.35 + most / 64)]
    if formed:
        assert cylinder_stack(*asked, max_rings=1, tolerance_mm=5.0).fits
    else:
        with pytest.raises(InputError, match="max_rings"):
            cylinder_stack(*asked, max_rings=1, tolerance_mm=5.0)


@pytest.mark.parametrize("measure", [0.0, 0.051])
@pytest.mark.parametrize("most", [5, 1000])
def test_number_of_rings_by_number_of_rings_they_are_the_same(measure, most):
    rng = random.Random(311)
    misses = 0
    for _ in range(200):
        asked = (
            rng.choice([40.0, 44.45, 44.5, 50.8]),
            rng.choice([0.0, 3.175]),
            [StackCylinder("C", 22.225 + 3.175 * rng.randrange(8), 0)],
            [StackCollar(f"K{n}", 1.5875 * (n + 2)) for n in range(rng.randrange(4))],
            [StackRing(f"R{n}", rng.choice([0.5, 0.79375, 1.5875]) + n / 8) for n in range(rng.randrange(3))],
        )
        whole = cylinder_stack(*asked, measure_mm=measure, max_fits=most)
        told = list(stacks_by_rings(*asked, measure_mm=measure, max_fits=most))
        missed = [each for each in told if isinstance(each, StackMiss)]
        assert missed == ([] if whole.nearest_miss is None else [whole.nearest_miss])
        groups = [each for each in told if not isinstance(each, StackMiss)]
        assert [fit for group in groups for fit in group] == list(whole.fits)
        assert all({len(fit.rings) for fit in group} <= {rings} for rings, group in enumerate(groups))
        misses += len(missed)
    assert 20 < misses < 180


def test_what_cannot_be_taken_is_refused_before_anything_is_told():
    with pytest.raises(InputError, match="leaf_mm"):
        next(stacks_by_rings(0, 0, [StackCylinder("C", 28.575, 0)]))
    many = [StackRing(f"r{i}", 0.1 + i * i / 97) for i in range(40)]
    with pytest.raises(InputError, match="max_rings"):
        next(stacks_by_rings(44.45, 6, [StackCylinder("C", 60.0, 0)], [], many, max_rings=30))


BAD = [
    ({"leaf_mm": 0}, "leaf_mm"),
    ({"leaf_mm": float("nan")}, "leaf_mm"),
    ({"leaf_mm": None}, "leaf_mm"),
    ({"leaf_mm": "44"}, "leaf_mm"),
    ({"trim_mm": -1}, "trim_mm"),
    ({"case_offset_mm": 30}, "case_offset_mm"),
    ({"pitch_mm": 0}, "pitch_mm"),
    ({"tolerance_mm": -0.1}, "tolerance_mm"),
    ({"max_turns_beyond": -1}, "max_turns_beyond"),
    ({"max_turns_beyond": 1.5}, "max_turns_beyond"),
    ({"max_rings": -1}, "max_rings"),
    ({"cylinders": {}}, "cylinders"),
    ({"cylinders": [{"part": "a", "length_mm": -3, "cam_offset_mm": 0}]}, "cylinders[0].length_mm"),
    ({"cylinders": [{"part": "a", "length_mm": 3}]}, "cylinders[0].cam_offset_mm"),
    ({"cylinders": [{"length_mm": 3, "cam_offset_mm": 0}]}, "cylinders[0].part"),
    ({"collars": [{"part": "a", "height_mm": -1}]}, "collars[0].height_mm"),
    ({"rings": [{"part": "a", "height_mm": 0}]}, "rings[0].height_mm"),
    ({"rings": [{"part": "a", "height_mm": 1, "available": -1}]}, "rings[0].available"),
    ({"rings": [{"part": "a", "height_mm": 1}, {"part": "a", "height_mm": 2}]}, "rings[1].part"),
    ({"rings": [3]}, "rings[0]"),
    ({"leaf_mm": 1e300}, "leaf_mm"),
]


@pytest.mark.parametrize(("change", "field"), BAD)
def test_bad_input_names_its_field(change, field):
    with pytest.raises(InputError) as caught:
        CYLINDER_STACK.run({**CYLINDER_STACK.example, **change})
    assert caught.value.field == field


def test_calculator_declares_what_it_gives():
    out = CYLINDER_STACK.run(json.loads(json.dumps(CYLINDER_STACK.example)))
    assert [f.name for f in CYLINDER_STACK.outputs] == list(json.loads(json.dumps(out, allow_nan=False)))
    assert {f.name for f in CYLINDER_STACK.inputs} >= set(CYLINDER_STACK.example)


@pytest.mark.fuzz
def test_agrees_with_whole_enumeration():
    rng = random.Random(301)
    suited = 0
    for _ in range(case_count()):
        unit, given = oracle.random_input(rng)
        out = CYLINDER_STACK.run(oracle.to_input(unit, given))
        every = oracle.enumerate_all(given)
        suits = {e[:4]: e for e in every if oracle.band_distance(given, e[5]) == 0}
        got = [(f["cylinder"], f["collar"], tuple(f["rings"]), f["turns"]) for f in out["fits"]]
        assert len(got) == len(set(got))
        assert set(got) == set(suits)
        keys = []
        for name, fit in zip(got, out["fits"], strict=True):
            proud, gap = suits[name][4:]
            assert fit["projection_mm"] == pytest.approx(proud * unit, abs=1e-7)
            assert fit["gap_mm"] == pytest.approx(gap * unit, abs=1e-7)
            assert fit["gap_mm"] >= 0
            keys.append((len(name[2]), proud, gap))
        assert keys == sorted(keys)
        suited += bool(got)
        miss = out["nearest_miss"]
        if got or not every:
            assert miss is None
            continue
        least = min(oracle.band_distance(given, e[5]) for e in every)
        named = next(
            e for e in every if e[:4] == (miss["cylinder"], miss["collar"], tuple(miss["rings"]), miss["turns"])
        )
        assert oracle.band_distance(given, named[5]) == least
        assert miss["gap_mm"] == pytest.approx(named[5] * unit, abs=1e-7)
    assert suited > case_count() / 10


def test_what_is_no_number_is_refused_though_its_equal_was_answered():
    parts = [StackCylinder("C", 28.575, 0.0)], [StackCollar("K", 3.175)], [StackRing("R", 1.5875)]
    assert cylinder_stack(44.45, 0.0, *parts, pitch_mm=1.0).fits
    with pytest.raises(InputError, match="pitch_mm"):
        cylinder_stack(44.45, 0.0, *parts, pitch_mm=True)
