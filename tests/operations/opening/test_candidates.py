"""Candidates for a role: each fits or says by how much not, what it costs and what else it changes."""

import shutil
from dataclasses import replace
from decimal import Decimal
from types import SimpleNamespace

import pytest

from hwsched.fitting import fit
from hwsched.model.project import open_project
from hwsched.operations.findings.checking import Checked, check_openings
from hwsched.operations.opening.candidates import candidates, parts_for
from hwsched.values import Catalogue, Chosen, PointFit
from tests.rules import scenario


@pytest.fixture(scope="module")
def openings(corner_folder, tmp_path_factory):
    path = shutil.copy(corner_folder / "corner.hwsched", tmp_path_factory.mktemp("candidates") / "c.hwsched")
    with open_project(path) as project:
        return {each.given.opening.mark: each for each in check_openings(project)}


@pytest.fixture(scope="module")
def cylinders(openings):
    return candidates(openings["M004"], "cylinder", "fraction")


def test_those_that_fit_stand_first_and_the_cheapest_before_others(cylinders):
    fits = [each.fits for each in cylinders]
    assert fits == sorted(fits, reverse=True)
    costs = [each.cost for each in cylinders if each.fits]
    assert costs == sorted(costs)
    assert [each.present for each in cylinders].count(True) == 1


def test_what_does_not_fit_says_by_how_much(openings, cylinders):
    """A cylinder a sixteenth of an inch shorter than what stands right lies that much deeper: 1.6 mm."""
    short = next(each for each in cylinders if each.part == "ARC-M16")
    assert not short.fits
    assert short.short_mm == pytest.approx(25.4 / 16, abs=0.01)
    assert "below the rim" in short.reasons[0]
    # The next one, a quarter of an inch in all shorter than ARC-M18, lies an eighth deeper than this.
    assert next(each for each in cylinders if each.part == "ARC-M14").short_mm == pytest.approx(25.4 * 3 / 16, abs=0.01)


def test_what_it_costs_and_changes_is_what_choosing_it_brings(openings, cylinders):
    """Against the fit that is built with the part chosen by hand."""
    at = openings["M004"].points[0]
    for each in cylinders:
        if each.fits and not each.present:
            made = fit(replace(at.given, chosen=(*at.given.chosen, Chosen("cylinder", each.part))))
            assert each.cost_change == made.cost - at.fit.cost
            new = {p.part for p in made.parts} - {p.part for p in at.fit.parts} - {each.part}
            assert all(any(part in words for words in each.changes) for part in new)
    assert any(each.cost_change > Decimal(0) for each in cylinders if each.fits)


def test_a_missing_fact_leaves_a_part_unknown(openings):
    found = candidates(openings["GL-5"], "cylinder", "fraction")
    unknown = [each for each in found if each.unknown]
    assert unknown
    assert not any(each.fits for each in found)
    assert all(each.reasons[0].startswith("needs ") for each in unknown)


def test_units_of_both_kinds_are_tried_and_withdrawn_parts_are_not(openings):
    at = openings["M004"].points[0]
    kinds = {part.kind for part in parts_for(at.given, at.fit, "unit")}
    assert kinds == {"surface-unit", "edge-unit"}
    # One that has a successor is offered only while it stands there.
    part = at.given.catalogue.get("ARC-UX")
    catalogue = Catalogue({**at.given.catalogue.parts, "ARC-UX": replace(part, superseded_by="X")}, "other")
    given = replace(at.given, catalogue=catalogue)
    assert "ARC-UX" not in {each.number for each in parts_for(given, at.fit, "unit")}


def test_trying_is_ended_early_and_tells_how_far_it_is(openings):
    told = []
    found = candidates(
        openings["M004"], "unit", "mm", progress=lambda *far: told.append(far), cancelled=lambda: len(told) == 2
    )
    assert len(found) == 2
    assert told == [(1, 6), (2, 6)]
    assert isinstance(openings["M004"], Checked)


SHORT, LONG = scenario.fit(), scenario.fit(lock_number="LONG")
"""Two cylinders, each with a fit of its own around it; the longer one's has neither cam nor collar."""
MOVED = replace(LONG, parts=(*LONG.parts, *(each for each in SHORT.parts if each.role in ("cam", "collar"))))
"""The longer cylinder with all that stands around the shorter one."""
FEW = replace(SHORT, parts=SHORT.parts[:1])
UNPLACED = replace(SHORT, placement=None)


def placed(*at, **facts):
    return replace(MOVED, placement=scenario.place(*at, **facts))


@pytest.mark.parametrize(
    ("now", "tried", "changes"),
    [
        (SHORT, MOVED, ()),
        (SHORT, LONG, ("no longer CAM, COL",)),
        (FEW, FEW, ()),
        # Five are new, of which four are named.
        (FEW, scenario.fit(without=("coin-cell", "collar")), ("also CAM, UNIT, SCREW, CELL",)),
        (FEW, scenario.fit(without=("collar",)), ("also CAM, UNIT, SCREW, CELL and 1 more",)),
        # Four screws on one line, and two on another.
        (SHORT, replace(MOVED, parts=(*MOVED.parts, scenario.fp("fastener", "SCREW", 2))), ("6 instead of 4 SCREW",)),
        (UNPLACED, replace(MOVED, placement=None), ()),
        (SHORT, replace(MOVED, placement=None), ("no unit is placed",)),
        (UNPLACED, MOVED, ("a unit is placed",)),
        (SHORT, placed(face="key"), ("the unit stands on the key face, straight",)),
        (SHORT, placed(pattern="above"), ("the unit stands on the inside face, above",)),
        (SHORT, placed(30.1), ("the unit stands 30.1 mm from the lock edge, 1010 mm above the floor",)),
        (SHORT, placed(30.0, 1000.0), ("the unit stands 30 mm from the lock edge, 1000 mm above the floor",)),
        # Nobody measures four hundredths of a millimetre.
        (SHORT, placed(30.04, 1009.96), ()),
        (SHORT, replace(MOVED, holes=(*SHORT.holes, scenario.hole(3.0, "fixing", count=4))), ("5 holes instead of 1",)),
        # 228.6 - 200 mm are to spare.
        (SHORT, replace(MOVED, cable=scenario.cable(210.0)), ("lead 18.6 mm to spare instead of 28.6 mm",)),
        (SHORT, replace(MOVED, cable=scenario.cable(200.0, 250.0)), ("lead 50 mm to spare instead of 28.6 mm",)),
        (SHORT, replace(MOVED, cable=scenario.cable(200.4)), ()),
        (SHORT, replace(MOVED, cable=None), ()),
    ],
)
def test_what_else_is_otherwise_is_told_of_two_fits(monkeypatch, now, tried, changes):
    """From the shorter cylinder to the longer one, the fit with it being given."""
    catalogue = scenario.catalogue(add=[scenario.part("LONG", "mortise-cylinder", length_mm=31.75)])
    monkeypatch.setattr("hwsched.operations.opening.candidates.fit", lambda _asked: tried_for)
    monkeypatch.setattr("hwsched.operations.opening.candidates.check", lambda _given, _fit: ())
    kept = [each for each in tried.parts if each.role != "cylinder"]
    tried_for = replace(tried, parts=(scenario.fp("cylinder", "LONG"), *kept))
    checked = SimpleNamespace(point=lambda _number: PointFit(scenario.given(cat=catalogue), now))
    (found,) = (each for each in candidates(checked, "cylinder", "mm") if each.part == "LONG")
    assert found.fits
    assert found.changes == changes
