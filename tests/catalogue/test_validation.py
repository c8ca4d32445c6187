"""The attributes of a part against its kind."""

import doctest

import pytest

from hwsched.catalogue import KINDS, kind_of, validation
from hwsched.catalogue.validation import ORDERED, TOGETHER, problems_of


def value_of(attribute):
    if attribute.kind == "choice":
        return attribute.choices[0].value
    if attribute.kind == "flag":
        return True
    if attribute.kind in ("length", "number"):
        return attribute.low if attribute.low is not None else 1.0
    return int(attribute.low or 1) if attribute.kind == "integer" else "text"


def good(kind):
    found = {attribute.name: value_of(attribute) for attribute in kind.attributes}
    if "screw_places" not in found:
        return found
    # One place on the plate for each screw, and a window that lies over the hole: 35 - 19 = 16 above the plate's edge.
    plate = {"plate_width_mm": 70.0, "plate_height_mm": 150.0, "window_y0_mm": 0.0, "window_y1_mm": 40.0}
    above = {"hole_above_existing_mm": 35.0, "plate_above_existing_mm": 19.0}
    return {**found, **plate, **above, "screws": 2, "screw_places": "6, 6; 64, 6.5"}


def said(attributes, kind):
    return [(problem.attribute, problem.message) for problem in problems_of(attributes, kind)]


def test_examples():
    assert doctest.testmod(validation).failed == 0


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
class TestEveryKind:
    def test_a_whole_part_passes(self, kind):
        assert problems_of(good(kind), kind) == []

    def test_what_need_not_be_known_may_be_missing(self, kind):
        required = {a.name for a in kind.attributes if a.required}
        assert problems_of({n: v for n, v in good(kind).items() if n in required}, kind) == []
        assert problems_of({n: v if n in required else None for n, v in good(kind).items()}, kind) == []

    def test_each_required_attribute_is_missed(self, kind):
        for attribute in kind.attributes:
            if attribute.required:
                for nothing in (None, ""):
                    found = said({**good(kind), attribute.name: nothing}, kind)
                    assert (attribute.name, f"{attribute.label} must be filled in") in found

    def test_limits_choices_and_sorts(self, kind):
        for attribute in kind.attributes:
            wrong = {"text": [3.0, True], "flag": ["yes", 1], "choice": ["no such word", 1.0]}.get(
                attribute.kind, ["12", True, float("nan"), float("inf")]
            )
            if attribute.low is not None:
                wrong.append(type(value_of(attribute))(attribute.low - 1))
            if attribute.high is not None:
                wrong.append(type(value_of(attribute))(attribute.high + 1))
            if attribute.kind == "integer":
                wrong.append(1.5)
            for value in wrong:
                found = [n for n, _ in said({**good(kind), attribute.name: value}, kind)]
                assert attribute.name in found, (attribute.name, value)

    def test_what_is_not_declared_is_named(self, kind):
        (problem,) = problems_of({**good(kind), "colour": "red"}, kind)
        assert problem.attribute == "colour"
        assert kind.label in str(problem)


def test_order_and_company_speak_of_declared_attributes():
    declared = {attribute.name for kind in KINDS for attribute in kind.attributes}
    assert {name for pair in (*ORDERED, *TOGETHER) for name in pair} <= declared


@pytest.mark.parametrize(
    ("kind", "changed", "attribute", "says"),
    [
        ("bored-lever-lock", {"leaf_low_mm": 50.0, "leaf_high_mm": 45.0}, "leaf_high_mm", "(45 mm) is less than"),
        ("surface-unit", {"supply_low_v": 24.0, "supply_high_v": 12.0}, "supply_high_v", "(12 V) is less than"),
        ("surface-unit", {"window_x0_mm": 30.0, "window_x1_mm": 20.0}, "window_x1_mm", "is less than"),
        ("surface-unit", {"screw_places": "6, 6; upper right"}, "screw_places", "'upper right' is no place"),
        ("surface-unit", {"screw_places": "6, 6; 64, 6; 6, 150"}, "screw_places", "places are 3, but Screws is 2"),
        ("surface-unit", {"screw_places": "6, 6; 70.5, 6"}, "screw_places", "the screw at 70.5, 6 stands beside"),
        ("surface-unit", {"screw_places": "6, 6; 6, 150.5"}, "screw_places", "the screw at 6, 150.5 stands beside"),
        ("surface-unit", {"screw_places": "6, 6; -0.5, 6"}, "screw_places", "the screw at -0.5, 6 stands beside"),
        ("surface-unit", {"window_y0_mm": 16.5}, "plate_above_existing_mm", "would lie 16 mm above the plate's"),
        ("surface-unit", {"window_y1_mm": 15.5}, "plate_above_existing_mm", "window from 0 to 15.5"),
        ("edge-unit", {"cell": "AA", "cells": None}, "cells", "Cells in series is empty, but Cell is filled in"),
        ("edge-unit", {"supply_low_v": None, "supply_high_v": 12.0}, "supply_low_v", "is empty, but"),
    ],
)
def test_attributes_that_contradict(kind, changed, attribute, says):
    (problem,) = problems_of({**good(kind_of(kind)), **changed}, kind_of(kind))
    assert problem.attribute == attribute
    assert says in problem.message


def test_equal_bounds_are_in_order():
    kind = kind_of("surface-unit")
    at_bounds = {"screw_places": "0, 0; 70, 150", "window_y0_mm": 16.0, "window_y1_mm": 16.0}
    assert problems_of({**good(kind), **at_bounds}, kind) == []
    kind = kind_of("bored-lever-lock")
    assert problems_of({**good(kind), "leaf_low_mm": 45.0, "leaf_high_mm": 45.0}, kind) == []


@pytest.mark.parametrize("nothing", [None, ""])
def test_no_places_of_screws_are_no_problem(nothing):
    kind = kind_of("surface-unit")
    assert problems_of({**good(kind), "screw_places": nothing, "screws": 4}, kind) == []
