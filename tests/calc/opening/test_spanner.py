"""How far a spanner is swung, against a count of its places and by what geometry says of simple cases."""

from math import asin, atan, cos, degrees, hypot, radians, sin
from random import Random

import pytest

from hwsched.calc.opening.placement import Rect
from hwsched.calc.opening.spanner import widest_swing_deg

REACH = 100.0


def test_it_goes_all_round_where_nothing_is_near():
    assert widest_swing_deg(0.0, 0.0, REACH, 5.0, []) == 360.0
    assert widest_swing_deg(0.0, 0.0, REACH, 5.0, [Rect(105.1, -50.0, 200.0, 50.0)]) == 360.0


def test_it_is_not_swung_where_something_lies_on_its_nut():
    assert widest_swing_deg(0.0, 0.0, REACH, 5.0, [Rect(-50.0, 4.9, 50.0, 20.0)]) == 0.0


@pytest.mark.parametrize("off", [5.1, 20.0, 55.0, 90.0])
def test_beside_a_wall_it_leaves_out_what_the_wall_covers(off):
    """From where its side meets the wall until it leaves it: all but twice the angle of which the cosine is the way."""
    wall = Rect(off, -500.0, off + 10.0, 500.0)
    expected = 180.0 + 2.0 * degrees(asin((off - 5.0) / REACH))
    assert widest_swing_deg(0.0, 0.0, REACH, 5.0, [wall]) == pytest.approx(expected)


def test_of_two_gaps_the_wider_counts():
    bars = [Rect(20.0, -1.0, 40.0, 1.0), Rect(-40.0, -1.0, -20.0, 1.0), Rect(-1.0, 20.0, 1.0, 40.0)]
    # Below there are 180 degrees, less half of what each bar to the side covers.
    assert widest_swing_deg(0.0, 0.0, REACH, 0.0, bars) == pytest.approx(180.0 - 2.0 * degrees(atan(1.0 / 20.0)))


def test_random_places_against_a_count_of_all_directions():
    rng = Random(5)
    for _ in range(300):
        rects = []
        for _ in range(rng.randint(1, 4)):
            x, y = rng.uniform(-120.0, 120.0), rng.uniform(-120.0, 120.0)
            rects.append(Rect(x, y, x + rng.uniform(1.0, 150.0), y + rng.uniform(1.0, 150.0)))
        found = widest_swing_deg(0.0, 0.0, REACH, 0.0, rects)
        assert found == pytest.approx(_counted(rects), abs=1.6)


def _counted(rects):
    """The longest run of directions, half a degree each, in which no point of the line lies in a rectangle."""
    free = [not any(_on(rect, radians(step / 2)) for rect in rects) for step in range(720)]
    if all(free):
        return 360.0
    longest = run = 0
    for each in free * 2:
        run = run + 1 if each else 0
        longest = max(longest, run)
    return longest / 2


def _on(rect, angle):
    """Whether the line from the middle meets a rectangle: clipped to its slabs, which is another way to ask."""
    low, high = 0.0, REACH
    for along, a, b in ((cos(angle), rect.x0, rect.x1), (sin(angle), rect.y0, rect.y1)):
        if abs(along) < 1e-12:
            if a > 0 or b < 0:
                return False
            continue
        first, last = sorted((a / along, b / along))
        low, high = max(low, first), min(high, last)
    return low <= high


def test_the_reach_is_measured_along_the_spanner():
    # A corner at 60, 80 is 100 away.
    assert hypot(60.0, 80.0) == REACH
    assert widest_swing_deg(0.0, 0.0, REACH - 0.01, 0.0, [Rect(60.0, 80.0, 90.0, 120.0)]) == 360.0
    assert widest_swing_deg(0.0, 0.0, REACH + 1.0, 0.0, [Rect(60.0, 80.0, 90.0, 120.0)]) < 360.0
