"""What a unit keeps off on a face: which screws could stand there, and how much the rounding of the survey leaves.

A backset of 2 3/4 in and a height of 39 3/8 in are exact, and so is a unit of 3 by 6 in.
"""

from dataclasses import replace

import pytest

from hwsched.calc.opening.placement import KeepOut, Rect
from hwsched.fitting.keepouts import Surroundings, has_rounding, rounded, screw_gap_mm, screw_keepouts
from hwsched.rules.carried import Carried
from tests.fitting.door import door, part, stock
from tests.rules.scenario import fit, lock

EXACT = lock(cylinder_height_mm=1000.125)
INCHES = stock(UNIT={"plate_width_mm": 76.2, "plate_height_mm": 152.4})
LITE = KeepOut("lite", Rect(200.0, 1200.0, 300.0, 1500.0), 12.7)
ACROSS, UP = ("existing_item.x_mm", 250.5, 1.0), ("existing_item.y_mm", 1350.0, 1.0)


@pytest.mark.parametrize(
    ("carried", "rect"),
    [
        (Carried(), (200.0, 1200.0, 300.0, 1500.0)),
        # 250.5 was read to a tenth: half of it on each side, and nothing up the leaf.
        (Carried((ACROSS,)), (200.05, 1200.0, 299.95, 1500.0)),
        # 1350 was read to a millimetre.
        (Carried((), (UP,)), (200.0, 1200.5, 300.0, 1499.5)),
        (Carried((ACROSS,), (UP,)), (200.05, 1200.5, 299.95, 1499.5)),
    ],
)
def test_a_keep_out_counts_with_less_on_the_sides_that_were_measured_coarsely(carried, rect):
    given = door(lk=EXACT, cat=INCHES)
    found = rounded(given, given.catalogue.get("UNIT"), LITE, carried).rect
    assert (found.x0, found.y0, found.x1, found.y1) == pytest.approx(rect)


@pytest.mark.parametrize(
    "shorter",
    [
        part("OTHER", "fastener", 0.1, form="wood-screw", size="#4", length_mm=3.0, leaf_material="wood"),
        part(
            "STEEL", "fastener", 0.1, form="sheet-metal-screw", size="#6", length_mm=3.0, leaf_material="hollow-metal"
        ),
        part("NO-LENGTH", "fastener", 0.1, form="wood-screw", size="#6", leaf_material="wood"),
    ],
    ids=lambda each: each.number,
)
def test_only_screws_of_the_unit_s_size_and_the_leaf_s_material_may_be_taken(shorter):
    """A case 6 mm below the face: of the screws that serve the least, 9.525 deep, meets it; one of 3 would not."""
    thick = lock(case_width_mm=32.45)
    bare = fit(without=("unit", "fastener"), placement=None, holes=(), cable=None)
    names = {}
    for cat in (stock(), stock(add=[shorter])):
        given = door(lk=thick, cat=cat)
        names[cat] = [(each.name, each.rect) for each in screw_keepouts(given, bare, given.catalogue.get("UNIT"))]
    usual, more = names.values()
    assert any("case" in name for name, _ in usual)
    assert more == usual


def test_a_screw_keeps_off_by_its_whole_diameter():
    """Four of #6, 0.138 in or 3.505 mm thick, 6 mm inside the corners of a plate of 80 by 160 (common practice)."""
    bare = fit(without=("unit", "fastener"), placement=None, holes=(), cable=None)
    given = door(lk=lock(case_width_mm=32.45), cat=stock(UNIT={"screw_places": None}))
    found = [each for each in screw_keepouts(given, bare, given.catalogue.get("UNIT")) if "case" in each.name]
    sizes = {(each.part.x1 - each.part.x0, each.part.y1 - each.part.y0) for each in found}
    assert [size for pair in sizes for size in pair] == pytest.approx([3.505, 3.505] * len(sizes))
    middles = {(round((e.part.x0 + e.part.x1) / 2, 3), round((e.part.y0 + e.part.y1) / 2, 3)) for e in found}
    assert middles == {(6.0, 6.0), (74.0, 6.0), (6.0, 154.0), (74.0, 154.0)}


def test_a_survey_is_rounded_where_any_length_by_which_a_unit_stands_is():
    """All in inches it is exact; a case of 150 mm may be 149.5; a unit made in millimetres owes nothing to inches."""
    inches = {"cylinder_height_mm": 1000.125, "case_above_mm": 44.45, "case_depth_mm": 104.775, "case_width_mm": 25.4}
    exact = lock(case_height_mm=152.4, **inches)
    for held, cat, expected in (
        (exact, INCHES, False),
        (replace(exact, case_height_mm=150.0), INCHES, True),
        (replace(exact, backset_mm=70.0), INCHES, True),
        (replace(exact, case_height_mm=150.0), stock(), False),
    ):
        given = door(lk=held, cat=cat)
        around = Surroundings((), (), ())
        assert has_rounding(given, given.leaves[0], given.catalogue.get("UNIT"), around) is expected


@pytest.mark.parametrize(
    ("size", "gap"),
    [
        # 1/16 in of wood and half of a #6, 0.138 in over its thread (ASME B18.6.4, from memory); no size, no screw.
        ("#6", 1.5875 + 0.069 * 25.4),
        ("", 1.5875),
        (None, 1.5875),
    ],
)
def test_how_far_a_screw_s_centre_keeps_off_a_hole(size, gap):
    given = door(cat=stock(UNIT={"screw_size": size}))
    assert screw_gap_mm(given, fit()) == pytest.approx(gap, abs=1e-3)
    assert screw_gap_mm(given, fit(without=("unit",))) == pytest.approx(1.5875)
