"""Openings beside one another: what they share, what is mixed, what an edit of many changes, how two differ."""

from dataclasses import replace

import pytest

from hwsched.operations.findings.checked import Checked
from hwsched.operations.opening.side_by_side import compared, edits_of, shared_facts, value_words
from hwsched.operations.survey.fact_edit import FactEdit
from hwsched.values import Finding
from tests.drawings.openings import FIT, GIVEN, ITEMS, LEAF, OPENING, fit_part


def opening(number, *, thick=44.45, hand="LH", items=ITEMS, **more):
    given = replace(
        GIVEN,
        opening=replace(OPENING, id=f"o{number}", mark=f"M{number}", hand=hand),
        leaves=(replace(LEAF, id=f"l{number}", thickness_mm=thick),),
        items=tuple(replace(item, id=f"{item.id}-{number}") for item in items),
    )
    return Checked(given, FIT, (), **more)


THREE = (opening(1), opening(2, thick=50.8), opening(3, thick=None, hand="RH", items=ITEMS[:1]))


def fact(section, label, openings=THREE):
    return next(each for each in shared_facts(openings) if (each.section, each.attribute.label) == (section, label))


def test_a_fact_that_all_hold_alike_is_one_value_and_another_is_mixed():
    material, thick = fact("Leaf", "Leaf material"), fact("Leaf", "Leaf thickness")
    assert not material.mixed
    assert value_words(material, "fraction") == "Wood, solid core"
    assert thick.mixed
    assert value_words(thick, "fraction") == 'mixed: 1 3/4", 2", unknown'
    assert value_words(thick, "fraction", 1) == 'mixed: 1 3/4" and 2 more'


def test_a_fact_of_what_only_some_have_is_of_those():
    assert [each.mark for each in fact("Closer", "Footprint width").held] == ["M1", "M2"]
    assert [each.mark for each in fact("Lock", "Backset").held] == ["M1", "M2", "M3"]


def test_the_second_of_a_kind_stands_apart_from_the_first():
    two = opening(4, items=(*ITEMS, replace(ITEMS[2], id="second", width_mm=111.0)))
    assert fact("Closer 2", "Footprint width", (two,)).values == (111.0,)
    assert fact("Closer", "Footprint width", (two,)).values == (260.0,)


def test_an_edit_of_many_leaves_alone_those_that_hold_it():
    changed, edits = edits_of(fact("Leaf", "Leaf thickness"), 50.8, "2 in")
    assert [each.mark for each in changed] == ["M1", "M3"]
    assert edits == (
        FactEdit("leaf", "l1", "thickness_mm", "2 in"),
        FactEdit("leaf", "l3", "thickness_mm", "2 in"),
    )
    unknown, _ = edits_of(fact("Leaf", "Leaf thickness"), None, "")
    assert [each.mark for each in unknown] == ["M1", "M2"]


def test_of_two_openings_what_differs_stands_first():
    other = replace(THREE[1], fit=replace(FIT, parts=(fit_part("cylinder", "TC-125"),), placement=None))
    lines = compared(THREE[0], other, "fraction")
    first_alike = next(at for at, each in enumerate(lines) if not each.differs)
    assert all(each.differs for each in lines[:first_alike])
    assert not any(each.differs for each in lines[first_alike:])
    said = {(each.section, each.label): (each.left, each.right) for each in lines}
    assert said["Leaf", "Leaf thickness"] == ('1 3/4"', '2"')
    assert said["Fit", "Unit"] == ("SU-W", "none")
    assert said["Fit", "Cylinder"] == ("TC-125", "TC-125")
    assert said["Fit", "Place of the unit"][1] == "none"
    assert ("Opening", "Mark") not in said, "they are named above"


@pytest.mark.parametrize("side", [0, 1])
def test_what_one_has_and_the_other_not_is_said(side):
    found = Finding("lead-reaches", "cable", "error", "The lead is 12 mm short.", "", "")
    pair = [THREE[0], THREE[2]]
    # Two rules that say the same are heard once.
    pair[side] = replace(pair[side], findings=(found, replace(found, rule="bend-radius")))
    said = {(each.section, each.label): (each.left, each.right) for each in compared(*pair, "fraction")}
    assert said["Closer", "Footprint width"][1] == "none there"
    assert said["Fit", "Errors"][side] == "The lead is 12 mm short."
    assert said["Fit", "Errors"][1 - side] == "none"


def test_what_no_fit_says_is_not_said_to_be_none():
    """None is an answer: of an opening without a fit that counts nobody has one."""
    lines = compared(THREE[0], replace(THREE[1], fit=None), "fraction")
    said = {each.label: (each.left, each.right) for each in lines if each.section == "Fit"}
    assert said["Holes"][0].isdigit()
    assert {said[label][1] for label in ("State", "Place of the unit", "Holes", "Unit")} == {"no fit counts"}
    measured = compared(THREE[0], replace(THREE[1], fit=replace(FIT, status="to-measure", holes=())), "fraction")
    assert next(each.right for each in measured if each.label == "Holes") == "none"
