"""Where a hole may be under a unit's plate, by geometry alone; numbers from the plate's lower left corner [mm]."""

from types import SimpleNamespace

import pytest

from hwsched.calc.opening.placement import Rect
from hwsched.fitting import surface

HOUSING = SimpleNamespace(window=Rect(10.0, 15.0, 70.0, 155.0), size=(80.0, 160.0))
"""A plate of 80 by 160; the window reaches up to 5 under its upper edge."""


def window_for(radius, plate_above_mm=None):
    way = SimpleNamespace(plate_above_mm=plate_above_mm)
    return tuple(surface._window(way, HOUSING, Rect(-radius, -radius, radius, radius)))


@pytest.mark.parametrize(
    ("radius", "found"),
    [
        # A small hole is covered wherever the window is.
        (4.0, (10.0, 15.0, 70.0, 155.0)),
        # One of 24 has to stand 12 from each edge of the plate: above that is nearer than the window's end.
        (12.0, (12.0, 15.0, 68.0, 148.0)),
        # One wider than the plate is covered nowhere: the window is left, and a rule says by how much.
        (41.0, (10.0, 15.0, 70.0, 155.0)),
    ],
)
def test_what_is_cut_stays_under_the_plate(radius, found):
    assert window_for(radius) == found


@pytest.mark.parametrize(
    ("below", "found"),
    [
        (60.0, (10.0, 60.0, 70.0, 60.0)),
        # The window's own ends count as in it; what lies beyond is no place for the hole.
        (15.0, (10.0, 15.0, 70.0, 15.0)),
        (155.0, (10.0, 155.0, 70.0, 155.0)),
        (14.0, (10.0, 15.0, 70.0, 155.0)),
        (156.0, (10.0, 15.0, 70.0, 155.0)),
    ],
)
def test_where_the_trade_fixes_the_plate_above_the_hole(below, found):
    assert window_for(4.0, -below) == found


@pytest.mark.parametrize(
    ("other", "inside"),
    [
        (Rect(5.0, 5.0, 15.0, 15.0), True),
        (Rect(10.0, 0.0, 20.0, 10.0), False),
        (Rect(-10.0, 0.0, 0.0, 10.0), False),
        (Rect(0.0, 10.0, 10.0, 20.0), False),
        (Rect(0.0, -10.0, 10.0, 0.0), False),
    ],
)
def test_what_only_touches_is_not_in_it(other, inside):
    square = Rect(0.0, 0.0, 10.0, 10.0)
    assert surface._strictly_in(square, other) is inside
    assert surface._strictly_in(other, square) is inside


def test_past_a_round_rim_lies_as_far_between_two_axes_as_along_one():
    """By Pythagoras: the shares of a way between two axes make the whole of it."""
    assert [across**2 + up**2 for across, up in surface._PAST] == pytest.approx([1.0, 1.0, 1.0])
    assert tuple(surface._grown(Rect(-4.0, -4.0, 4.0, 4.0), (50.0, 60.0), 6.0, 1.0, 1.0)) == (40.0, 50.0, 60.0, 70.0)


@pytest.mark.parametrize(
    ("taken", "free"),
    [
        ([], [(0.0, 10.0)]),
        ([(3.0, 5.0)], [(0.0, 3.0), (5.0, 10.0)]),
        # In whatever order they are told, one within another, and past the ends.
        ([(6.0, 8.0), (1.0, 3.0), (1.5, 2.0)], [(0.0, 1.0), (3.0, 6.0), (8.0, 10.0)]),
        ([(-5.0, 2.0), (9.0, 15.0)], [(2.0, 9.0)]),
        # Each is open: a place at its very end is free, and so is one between two that meet.
        ([(0.0, 4.0), (4.0, 10.0)], [(0.0, 0.0), (4.0, 4.0), (10.0, 10.0)]),
        ([(-1.0, 11.0)], []),
        ([(12.0, 15.0)], [(0.0, 10.0)]),
    ],
)
def test_what_of_a_stretch_is_free(taken, free):
    assert [stretch for stretch in surface._free(0.0, 10.0, taken) if stretch[0] <= stretch[1]] == free


def test_what_a_screw_keeps_off_is_told_from_the_housing_s_corner():
    """A housing whose window reaches 10 past the plate's left edge and 20 under it begins there."""
    assert tuple(surface._moved(Rect(1.0, 2.0, 3.0, 4.0), (-10.0, -20.0))) == (11.0, 22.0, 13.0, 24.0)
    assert surface._moved(None, (-10.0, -20.0)) is None
