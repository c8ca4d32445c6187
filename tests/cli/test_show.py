"""`hwsched opening show`: what a machine reads of openings."""

import json
from dataclasses import replace
from math import cos, isclose, radians, sqrt, tan

import pytest
from jsonschema import Draft202012Validator

from hwsched.cli.command import run
from hwsched.operations.opening.showing import hole_record
from hwsched.values import Catalogue, Fit, FitPart, Hole, Leaf, Opening, Part
from hwsched.values.fit import Placement
from hwsched.values.opening_input import OpeningInput
from tests.house.schemas import show_schema


@pytest.fixture
def shown(sample_file, capsys):
    def show(*marks):
        assert run(["opening", "show", str(sample_file), *marks, "--json"]) == 0
        return json.loads(capsys.readouterr().out)

    return show


def test_the_whole_sample_is_as_its_schema_says(shown):
    told = shown()
    Draft202012Validator(show_schema()).validate(told)
    assert (told["ok"], told["problems"], told["change_set"], told["version"]) == (True, [], None, 1)
    assert len(told["result"]["openings"]) == 171


def test_the_schema_refuses_what_is_not_of_its_shape(shown):
    told = shown("M004")
    del told["result"]["openings"][0]["lock_points"][0]["status"]
    assert list(Draft202012Validator(show_schema()).iter_errors(told))


def test_facts_are_the_survey_in_mm(shown):
    # Survey row of M004: leaf 3'-0" by 7'-0" = 914.4 by 2133.6 mm, 1 3/4 in = 44.45 mm thick.
    opening = shown("M004")["result"]["openings"][0]
    assert opening["mark"] == opening["facts"]["mark"] == "M004"
    assert [leaf["width_mm"] for leaf in opening["leaves"]] == [914.4]
    assert isclose(opening["leaves"][0]["thickness_mm"], 44.45)
    assert {item["kind"] for item in opening["existing_items"]} >= {"lock"}


def test_only_the_marks_that_are_asked_come_and_an_unknown_one_is_refused(shown, sample_file, capsys):
    assert {each["mark"] for each in shown("M004", "B/1")["result"]["openings"]} == {"B/1", "M004"}
    assert run(["opening", "show", str(sample_file), "M004x"]) == 3
    assert "M004x" in capsys.readouterr().err


def test_what_is_shown_for_people_names_status_parts_and_findings(sample_file, capsys):
    assert run(["opening", "show", str(sample_file), "M004"]) == 0
    told = capsys.readouterr().out
    assert "M004" in told
    assert "unit" in told


def test_the_schema_is_printed(capsys):
    assert run(["opening", "show", "--schema"]) == 0
    assert json.loads(capsys.readouterr().out) == json.loads(json.dumps(show_schema()))


def test_without_a_project_it_is_wrong_usage(capsys):
    assert run(["opening", "show"]) == 2
    assert "project" in capsys.readouterr().err


@pytest.fixture
def door():
    return OpeningInput(Opening("o", "M1"), (Leaf("l", "single", thickness_mm=45.0),), (), Catalogue({}, ""))


@pytest.mark.parametrize(
    ("face", "start", "direction"),
    [
        # x from the lock edge, y up, z from the inside face: a hole from the inside goes toward +z, from the key side
        # toward -z from the leaf's thickness; one in the lock edge goes toward +x, its own x counting from the inside.
        ("inside", [60.0, 1000.0, 0.0], [0, 0, 1]),
        ("key", [60.0, 1000.0, 45.0], [0, 0, -1]),
        ("lock-edge", [0.0, 1000.0, 60.0], [1, 0, 0]),
        ("wall", [60.0, 1000.0, 0.0], [0, 0, 1]),
        ("frame", [0.0, 1000.0, 60.0], [-1, 0, 0]),
    ],
)
def test_a_square_hole_goes_straight_in(door, face, start, direction):
    made = hole_record(door, Hole("h", "single", face, 60.0, 1000.0, 10.0))
    assert list(made.start_mm) == start
    assert list(made.direction) == direction


def test_a_leaning_hole_has_its_angles():
    # 45 degrees up, 15 toward the lock edge (x falls): for every mm in, tan 45 = 1 up and tan 15 = 0.268 to the edge.
    given = OpeningInput(Opening("o", "M1"), (Leaf("l", "single", thickness_mm=45.0),), (), Catalogue({}, ""))
    x, y, z = hole_record(given, Hole("h", "single", "inside", 60.0, 900.0, 8.0, up_deg=45.0, edge_deg=15.0)).direction
    assert isclose(y / z, tan(radians(45)))
    assert isclose(x / z, -tan(radians(15)))
    assert isclose(sqrt(x * x + y * y + z * z), 1.0)
    assert isclose(z, 1 / sqrt(1 + 1 + tan(radians(15)) ** 2))
    assert z < cos(radians(45))


def test_a_channel_starts_below_its_face(door):
    made = hole_record(door, Hole("c", "single", "key", 60.0, 900.0, 9.5, up_deg=70.0, from_depth_mm=9.5))
    assert made.start_mm == (60.0, 900.0, 35.5)


def test_the_start_of_a_hole_from_the_key_side_is_unknown_without_a_thickness():
    given = OpeningInput(Opening("o", "M1"), (Leaf("l", "single"),), (), Catalogue({}, ""))
    assert hole_record(given, Hole("h", "single", "key", 60.0, 900.0, 8.0)).start_mm == (60.0, 900.0, None)


def held(door, unit):
    """A door with a unit, whose plate of 40 x 120 mm has its lower left corner at 20, 1000."""
    plate = Placement("single", "inside", "above", 20.0, 1000.0, 40.0, 120.0, 40.0, 1060.0)
    fit = Fit("fits", parts=(FitPart("unit", "U", unit.kind, 1.0, ""),), placement=plate)
    return replace(door, catalogue=Catalogue({"U": unit}, "")), fit


FOUR = Hole("s", "single", "inside", 40.0, 1060.0, 2.8, count=4, purpose="fixing", by_template=True)


@pytest.mark.parametrize(
    ("places", "stand"),
    [
        # 6 mm inside each corner (common practice, unverified).
        ({}, {(26.0, 1006.0, 0.0), (54.0, 1006.0, 0.0), (26.0, 1114.0, 0.0), (54.0, 1114.0, 0.0)}),
        # From the plate's lower left corner, as the catalogue says: there the rules have proved them.
        (
            {"screw_places": "9, 11; 31, 11; 9, 100; 31, 100"},
            {(29.0, 1011.0, 0.0), (51.0, 1011.0, 0.0), (29.0, 1100.0, 0.0), (51.0, 1100.0, 0.0)},
        ),
    ],
)
def test_a_plates_screws_stand_where_the_catalogue_says_else_inside_its_corners(door, places, stand):
    given, fit = held(door, Part("U", "surface-unit", attributes={"screws": 4.0, **places}))
    assert set(hole_record(given, FOUR, fit).places_mm) == stand


def test_where_only_the_part_tells_no_place_is_made_up(door):
    given, fit = held(door, Part("U", "surface-unit", attributes={"screws": 4.0}))
    bolts = Hole("b", "single", "key", 70.0, 1000.0, 8.0, count=2, purpose="bolt", by_template=True)
    assert hole_record(given, bolts, fit).places_mm is None
    assert hole_record(given, FOUR).places_mm is None
    assert hole_record(door, Hole("h", "single", "key", 70.0, 1000.0, 8.0)).places_mm == ((70.0, 1000.0, 45.0),)
