"""Where a cylinder ends, where its case begins, and what is cut off the tailpiece between them.

A leaf of 44.45; a rim cylinder's body is 25.4, a mortise cylinder's cam plane lies in the leaf's middle, 22.225, or
turns of 25.4 / 32 beyond. A case's sheet is 1.5 (from memory).
"""

import pytest

from hwsched.rules.solid.tails import reach_off, tail_size, tail_way
from tests.rules.scenario import catalogue, given, leaf, lock

SHEET = 1.5


@pytest.mark.parametrize(
    ("number", "form", "facts", "part", "turns", "begins", "back", "room", "open_by"),
    [
        # A rim case stands on the inside face: from 44.45 on; trim of 3 lifts the body by as much. 22 mm may be 21.5.
        ("RIM", "rim", {"case_width_mm": 22.0}, {}, 0, 44.45, 25.4, 20.5, 0.5),
        ("RIM", "rim", {"case_width_mm": 22.0, "trim_key_mm": 3.0}, {}, 0, 44.45, 22.4, 20.5, 0.5),
        ("RIM", "rim", {"case_width_mm": 22.225}, {}, 0, 44.45, 25.4, 20.725, 0.0),
        # Behind a mortise cylinder the half of the case beyond its plane is left: 12.5 of 25, less the sheet, and half
        # of what 25 mm may be off. Two turns more take 1.5875 of it; an offset of the case takes all along.
        ("CYL", "mortise", {"case_width_mm": 25.0}, {}, 0, 22.225, 22.225, 11.0, 0.25),
        ("CYL", "mortise", {"case_width_mm": 25.0}, {}, 2, 23.8125, 23.8125, 9.4125, 0.25),
        ("CYL", "mortise", {"case_width_mm": 25.0, "case_offset_mm": 2.0}, {}, 0, 20.225, 20.225, 11.0, 0.25),
        # A shell that ends 19.05 before its cam plane ends before the case, which is then open over all its thickness.
        ("CYL", "mortise", {"case_width_mm": 25.0}, {"cam_offset_mm": 19.05}, 0, 9.725, 3.175, 23.5, 0.5),
        # And one that ends 3.175 before it, in the case.
        ("CYL", "mortise", {"case_width_mm": 25.0}, {"cam_offset_mm": 3.175}, 0, 19.05, 19.05, 14.175, 0.25),
    ],
)
def test_the_way_of_a_tailpiece(number, form, facts, part, turns, begins, back, room, open_by):
    there = given(lk=lock(form, **facts), cat=catalogue(**{number: part}))
    way, needs = tail_way(there, there.catalogue.get(number), turns, SHEET)
    assert needs == ()
    assert (way.case_mm, way.back_mm, way.room_mm) == pytest.approx((begins, back, room))
    assert way.open_by.mm == pytest.approx(open_by)


@pytest.mark.parametrize(
    ("number", "form", "facts", "lf", "part", "needs"),
    [
        ("RIM", "rim", {"trim_key_mm": None}, {}, {}, ("existing_item.trim_key_mm",)),
        ("RIM", "rim", {"case_width_mm": None}, {}, {}, ("existing_item.case_width_mm",)),
        ("RIM", "rim", {}, {"thickness_mm": None}, {}, ("leaf.thickness_mm",)),
        ("RIM", "rim", {}, {}, {"body_length_mm": None}, ("part RIM.body_length_mm",)),
        ("CYL", "mortise", {"case_width_mm": None, "trim_key_mm": None}, {}, {}, ("existing_item.case_width_mm",)),
        ("CYL", "mortise", {}, {"thickness_mm": None}, {}, ("leaf.thickness_mm",)),
        ("CYL", "mortise", {}, {}, {"cam_offset_mm": None}, ("part CYL.cam_offset_mm",)),
        ("CYL", "mortise", {}, {}, {"thread_pitch_mm": None}, ("part CYL.thread_pitch_mm",)),
    ],
)
def test_what_of_the_way_is_missing(number, form, facts, lf, part, needs):
    there = given(lf=leaf(**lf), lk=lock(form, **facts), cat=catalogue(**{number: part}))
    assert tail_way(there, there.catalogue.get(number), 0, SHEET) == (None, needs)


def test_how_long_a_tailpiece_is():
    cat = catalogue(TAIL={"step_mm": None})
    assert tail_size(cat.get("RIM"), None) == (76.2, 3.175, "part RIM.tail_length_mm")
    assert tail_size(cat.get("RIM"), cat.get("TAIL")) == (76.2, None, "part TAIL.length_mm")
    assert tail_size(cat.get("CYL"), None) == (None, None, "part CYL.tail_length_mm")


@pytest.mark.parametrize(
    ("number", "lf", "facts", "off"),
    [
        # All of a leaf's thickness counts behind a rim cylinder, half of it behind a mortise cylinder; all of a trim.
        ("RIM", 44.0, {}, 0.5),
        ("CYL", 44.0, {}, 0.25),
        ("RIM", 44.45, {"trim_key_mm": 3.0}, 0.5),
        ("CYL", 44.45, {"trim_key_mm": 3.0}, 0.5),
        ("RIM", 44.45, {}, 0.0),
    ],
)
def test_what_the_way_to_the_case_may_be_off(number, lf, facts, off):
    there = given(lf=leaf(thickness_mm=lf), lk=lock("rim", **facts))
    assert reach_off(there, there.catalogue.get(number), 76.2).mm == pytest.approx(off)
    # Of a tailpiece that is made in millimetres nothing is open.
    assert reach_off(there, there.catalogue.get(number), 76.0).mm == 0.0
