"""Places of a plate's screws: as the catalogue writes them, and where the trade puts them."""

import doctest

import pytest

from hwsched.catalogue.traits import screw_places as module
from hwsched.catalogue.traits.screw_places import read_places
from hwsched.rules.solid.screws import places_given, screw_places
from tests.rules.scenario import catalogue


def test_docs():
    assert doctest.testmod(module).failed == 0


@pytest.mark.parametrize("text", ["6, 6; 64, 6", " 6,6 ;64 x 6", "6.0X6.0;64,6.00"])
def test_ways_of_writing_them(text):
    assert read_places(text) == ((6.0, 6.0), (64.0, 6.0))


def test_left_of_the_plate_is_a_place_too():
    assert read_places("-4.5, 20") == ((-4.5, 20.0),)


@pytest.mark.parametrize("text", ["", "6", "6, 6;", "6, six", "6, 6, 6", "6 6", "1e3, 2"])
def test_what_is_no_place_is_named(text):
    with pytest.raises(ValueError, match="is no place: mm from the plate's lower left, such as 6, 6; 64, 6"):
        read_places(text)


@pytest.mark.parametrize(
    ("count", "size", "places"),
    [
        # 6 mm inside the edges (common practice): corners, or the middle of the short sides.
        (0, (80.0, 160.0), []),
        (1, (80.0, 160.0), [(40.0, 80.0)]),
        (2, (80.0, 160.0), [(40.0, 6.0), (40.0, 154.0)]),
        (2, (160.0, 80.0), [(6.0, 40.0), (154.0, 40.0)]),
        (3, (80.0, 160.0), [(6.0, 154.0), (74.0, 154.0), (40.0, 6.0)]),
        (4, (80.0, 160.0), [(6.0, 6.0), (74.0, 6.0), (6.0, 154.0), (74.0, 154.0)]),
        # The fifth and sixth in the middle of the long sides, 6 + 148 / 2.
        (6, (80.0, 160.0), [(6.0, 6.0), (74.0, 6.0), (6.0, 154.0), (74.0, 154.0), (6.0, 80.0), (74.0, 80.0)]),
        (5, (80.0, 160.0), [(6.0, 6.0), (74.0, 6.0), (6.0, 154.0), (74.0, 154.0), (6.0, 80.0)]),
    ],
)
def test_where_the_trade_puts_them(count, size, places):
    unit = catalogue(UNIT={"screws": count, "screw_places": None}).get("UNIT")
    assert sorted(screw_places(unit, *size)) == sorted(places)
    assert not places_given(unit)


def test_the_catalogue_s_places_go_before_the_trade_s():
    unit = catalogue(UNIT={"screws": 2, "screw_places": "10, 20; 30, 140"}).get("UNIT")
    assert screw_places(unit, 80.0, 160.0) == ((10.0, 20.0), (30.0, 140.0))
    assert places_given(unit)
