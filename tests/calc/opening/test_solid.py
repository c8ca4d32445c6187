"""Distances of solids: values by hand, and against nearest points and strewn points that know of no kinds of solid."""

import doctest
import random
from math import dist, hypot, sqrt

import pytest

from hwsched.calc.opening import solid as module
from hwsched.calc.opening.bore import Box, Rod
from hwsched.calc.opening.solid import apart_mm, bounds, within_mm
from tests.calc.oracles import case_count
from tests.calc.oracles import solid as oracle

CASES = 2000
AXES = ((1, 0, 0), (0, 1, 0), (0, 0, 1))


def test_docs():
    assert doctest.testmod(module).failed == 0


@pytest.mark.parametrize(
    ("a", "b", "apart"),
    [
        # 3, 4, 12 and 13.
        (Box((0, 0, 0), (1, 1, 1)), Box((4, 5, 13), (5, 6, 14)), 13.0),
        # Side by side, touching, and one 2 into the other where it is least deep.
        (Box((0, 0, 0), (10, 10, 10)), Box((10, 0, 0), (20, 10, 10)), 0.0),
        (Box((0, 0, 0), (10, 10, 10)), Box((8, 1, 2), (20, 9, 8)), -2.0),
        # A screw of 1 in before a case that begins 3/8 in behind the face: 25.4 - 9.525.
        (Rod((36, 946, 0), (36, 946, 25.4), 3.5), Box((0, 894.45, 9.525), (105, 1044.45, 34.925)), -15.875),
        (Rod((36, 946, 0), (36, 946, 9.525), 3.5), Box((0, 894.45, 9.525), (105, 1044.45, 34.925)), 0.0),
        # Past the case's corner: 3 beyond its side, 4 above it, 5 in all, less half of 4.
        (Rod((108, 1048.45, 0), (108, 1048.45, 20), 4), Box((0, 894.45, 9.525), (105, 1044.45, 34.925)), 3.0),
        # Flat ends: a screw that ends 2 before a round bore across it, and one beside it that is longer.
        (Rod((50, 0, 0), (50, 0, 8), 4), Rod((0, 0, 22.5), (100, 0, 22.5), 25), 2.0),
        (Rod((50, 20, 0), (50, 20, 30), 4), Rod((0, 0, 22.5), (100, 0, 22.5), 25), 20 - 2 - 12.5),
        # Two bores side by side, 30 from axis to axis; one behind the other, 5 between their ends.
        (Rod((0, 0, 0), (0, 0, 40), 20), Rod((30, 0, 10), (30, 0, 50), 25), 30 - 22.5),
        (Rod((0, 0, 0), (0, 0, 40), 20), Rod((3, 4, 45), (3, 4, 50), 25), 5.0),
        # A slanted bore counts with a rounded end: its axis ends at (3, 4), 5 before the box, less half of 2.
        (Rod((0, 0, 0), (3, 4, 0), 2), Box((8, 4, -1), (9, 9, 1)), 4.0),
    ],
)
def test_by_hand(a, b, apart):
    assert apart_mm(a, b) == pytest.approx(apart)
    assert apart_mm(b, a) == pytest.approx(apart)


def test_what_holds_a_solid():
    assert bounds(Box((1, 2, 3), (4, 5, 6))) == Box((1, 2, 3), (4, 5, 6))
    # Along z its ends are flat; the other way round it is the same body.
    assert bounds(Rod((10, 20, 5), (10, 20, 0), 6)) == Box((7, 17, 0), (13, 23, 5))
    assert bounds(Rod((0, 0, 0), (10, 5, 0), 2)) == Box((-1, -1, -1), (11, 6, 1))


def test_what_sticks_out_of_a_box():
    leaf = Box((0, 0, 0), (900, 2100, 44.45))
    assert within_mm(Rod((69.85, 1000, 0), (69.85, 1000, 44.45), 53.975), leaf) == 0.0
    assert within_mm(Box((5, 5, 5), (6, 6, 41.45)), leaf) == pytest.approx(3.0)
    assert within_mm(Rod((20, 1000, 10), (20, 1000, 20), 50), leaf) == pytest.approx(-5.0)


def a_box(rng):
    low = [rng.uniform(-20, 20) for _ in range(3)]
    return Box(tuple(low), tuple(at + rng.uniform(0.5, 25) for at in low))


def a_rod(rng, axis=None):
    """A rod along an axis, or along any line."""
    start = [rng.uniform(-20, 20) for _ in range(3)]
    if axis is None:
        return Rod(tuple(start), tuple(rng.uniform(-20, 20) for _ in range(3)), rng.uniform(0.5, 15))
    end = list(start)
    end[axis] += rng.choice((-1, 1)) * rng.uniform(0.5, 30)
    return Rod(tuple(start), tuple(end), rng.uniform(0.5, 15))


def exactly(rng):
    """Two solids of which the distance is told exactly."""
    axis = rng.randrange(3)
    return rng.choice(
        (
            (a_box(rng), a_box(rng)),
            (a_rod(rng, axis), a_box(rng)),
            (a_rod(rng, axis), a_rod(rng, axis)),
        )
    )


def directions(rng, a, b):
    """Directions in which a solid may be pushed out of another: along the axes, from middle to middle, and any."""
    yield from AXES
    gone = [q - p for p, q in zip(oracle.middle(a), oracle.middle(b), strict=True)]
    # Rods along an axis are pushed apart across it.
    for flat in AXES:
        across = [0.0 if on else g for g, on in zip(gone, flat, strict=True)]
        if hypot(*across) > 1e-9:
            yield tuple(each / hypot(*across) for each in across)
    near = oracle.nearest(b, oracle.middle(a))
    for solid, other in ((a, near), (b, oracle.nearest(a, oracle.middle(b)))):
        for flat in AXES:
            off = [0.0 if on else p - q for p, q, on in zip(oracle.middle(solid), other, flat, strict=True)]
            if hypot(*off) > 1e-9:
                yield tuple(each / hypot(*off) for each in off)
    for _ in range(6):
        any_way = [rng.gauss(0, 1) for _ in range(3)]
        yield tuple(each / hypot(*any_way) for each in any_way)


def test_the_distance_is_that_of_the_nearest_points():
    rng = random.Random(1)
    seen = {"apart": 0, "into": 0}
    for _ in range(case_count(CASES)):
        a, b = exactly(rng)
        said, found = apart_mm(a, b), oracle.apart(a, b)
        assert apart_mm(b, a) == pytest.approx(said, abs=1e-9)
        if said > 1e-3:
            seen["apart"] += 1
            assert said == pytest.approx(found, abs=2e-3), (a, b)
        else:
            seen["into"] += 1
            assert found < 0.02, (a, b)
    assert min(seen.values()) > 100


def test_how_deep_one_is_in_the_other_is_the_least_way_out():
    rng = random.Random(2)
    tried = 0
    while tried < case_count(CASES) / 10:
        a, b = exactly(rng)
        deep = -apart_mm(a, b)
        if deep < 0.1:
            continue
        tried += 1
        ways = [tuple(sign * each for each in way) for way in directions(rng, a, b) for sign in (1, -1)]
        # No shorter way leads out, and one so long does.
        assert all(oracle.apart(a, oracle.moved(b, [0.98 * deep * w for w in way])) < 0.01 for way in ways), (a, b)
        gone = [oracle.apart(a, oracle.moved(b, [(deep + 0.05) * w for w in way])) for way in ways]
        assert max(gone) > 0.04, (a, b)


def test_no_two_solids_are_told_farther_apart_than_they_are():
    """Slanted rods and rods across each other too: points strewn over both come no nearer than is said."""
    rng = random.Random(3)
    makes = (a_box, a_rod, *(lambda rng, axis=axis: a_rod(rng, axis) for axis in range(3)))
    for _ in range(case_count(CASES) // 4):
        a, b = rng.choice(makes)(rng), rng.choice(makes)(rng)
        said = apart_mm(a, b)
        strewn = [(p, oracle.nearest(b, p)) for p in oracle.points(a, rng, 40)]
        assert said <= min(dist(p, q) for p, q in strewn) + 1e-9, (a, b)
        assert said <= oracle.apart(a, b) + 1e-9, (a, b)
        # And no more than rounded ends nearer: half of each diameter along the axes, all round.
        ends = sum(each[2] / 2 * sqrt(2) for each in (a, b) if isinstance(each, Rod))
        assert said >= oracle.apart(a, b) - ends - max(0.0, -said) - 1e-2, (a, b)


def test_rods_across_each_other_end_flat():
    rng = random.Random(4)
    tried = 0
    while tried < 200:
        along, across = rng.sample(range(3), 2)
        a, b = a_rod(rng, along), a_rod(rng, across)
        low, high = sorted((a.start[along], a.end[along]))
        # The one ends straight before the other's side.
        gap = max(b.start[along] - b.diameter_mm / 2 - high, low - b.start[along] - b.diameter_mm / 2)
        third = 3 - along - across
        ends = sorted((b.start[across], b.end[across]))
        if gap <= 0 or a.start[third] != pytest.approx(b.start[third], abs=a.diameter_mm / 2):
            continue
        if not ends[0] < a.start[across] < ends[1]:
            continue
        tried += 1
        assert apart_mm(a, b) == pytest.approx(gap)
        assert oracle.apart(a, b) == pytest.approx(gap, abs=1e-2)
