"""What a part's template says goes before the practice of the trade; what is taken from practice is said."""

from dataclasses import replace

import pytest

from hwsched.attributes.of_parts import NumberName
from hwsched.catalogue import kind_of
from hwsched.fitting import fit
from hwsched.model.project import open_project
from hwsched.model.queries import read_inputs
from hwsched.rules.judging import check
from hwsched.rules.practice import rows
from hwsched.rules.solid.templates import TEMPLATES
from hwsched.values import Catalogue


@pytest.fixture(scope="module")
def inputs(corner_folder):
    with open_project(corner_folder / "corner.hwsched") as project, project.reading() as connection:
        return list(read_inputs(connection, None, project.catalogue.read(connection)))


def told(given, kinds, **attributes):
    """The same opening; all parts of some kinds have a template that says this."""
    parts = {
        number: replace(part, attributes={**part.attributes, **attributes}) if part.kind in kinds else part
        for number, part in given.catalogue.parts.items()
    }
    return replace(given, catalogue=Catalogue(parts, "told"))


def first_with(inputs, wanted):
    for given in inputs:
        found = fit(given)
        if found.status == "fits" and wanted(given, found):
            return given, found
    raise AssertionError("no opening of the corner is of that kind")


def test_every_template_distance_stands_in_the_table_and_in_a_kind():
    named = {row["name"] for row in rows("distances")}
    assert TEMPLATES.keys() <= named
    kinds = ("surface-unit", "edge-unit", "bored-lever-lock", "gate-lock", "mortise-cylinder")
    declared = {each.name for kind in kinds for each in kind_of(kind).attributes}
    assert set(TEMPLATES.values()) <= declared


def test_a_channel_is_drilled_as_the_units_template_says(inputs):
    def by_channel(given, found):
        return any(hole.purpose == "channel" for hole in found.holes) and found.placement.face == "inside"

    given, _ = first_with(inputs, by_channel)
    practice = fit(told(given, ("surface-unit",), channel_entry_mm=None))
    entry = next(hole for hole in practice.holes if hole.purpose == "cable")
    assert entry.depth_mm == pytest.approx(9.525)  # 3/8 in, common practice
    found = fit(told(given, ("surface-unit",), channel_entry_mm=8.0, channel_diameter_mm=8.0))
    square, along = (next(h for h in found.holes if h.purpose == purpose) for purpose in ("cable", "channel"))
    # The square bore ends where the channel begins.
    assert (square.depth_mm, along.from_depth_mm, along.diameter_mm) == (8.0, 8.0, 8.0)


def test_the_hole_stands_as_far_from_the_cylinder_as_the_template_says(inputs):
    def by_channel(given, found):
        return found.placement.pattern == "above" and any(hole.purpose == "channel" for hole in found.holes)

    given, practice = first_with(inputs, by_channel)
    up = practice.placement.hole_y_mm - given_cylinder(given)
    found = fit(told(given, ("surface-unit",), hole_from_cylinder_mm=up + 12.0))
    assert found.placement.hole_y_mm - given_cylinder(given) >= up + 12.0 - 1e-6


def given_cylinder(given):
    return next(item.cylinder_height_mm for item in given.items if item.cylinder_height_mm is not None)


def test_what_is_taken_from_practice_is_said_and_what_the_template_says_is_not(inputs):
    given, _ = first_with(inputs, lambda given, found: found.part("unit") and found.cable)
    bare = told(given, ("surface-unit",), screw_places=None)
    bare_fit = fit(bare)
    said = [each for each in check(bare, bare_fit) if each.rule == "template-known"]
    unit = bare_fit.part("unit").part
    assert any(each.about == unit and "screw places" in each.message for each in said)
    assert all(each.severity == "note" for each in said)
    whole = dict.fromkeys(map(str, TEMPLATES.values()), 30.0) | {"screw_places": "6, 6; 30, 60"}
    part = replace(bare.catalogue.get(unit), attributes={**bare.catalogue.get(unit).attributes, **whole})
    full = replace(bare, catalogue=Catalogue({**bare.catalogue.parts, unit: part}, "whole"))
    assert not [each for each in check(full, bare_fit) if each.rule == "template-known" and each.about == unit]


@pytest.mark.parametrize(
    ("kind", "name", "low", "high"),
    [("surface-unit", "channel_angle_deg", 1.0, 60.0), ("bored-lever-lock", "lead_hole_up_deg", 10.0, 80.0)],
)
def test_angles_of_a_template_have_bounds(kind, name, low, high):
    attribute = kind_of(kind).attribute(NumberName(name))
    assert (attribute.low, attribute.high) == (low, high)
