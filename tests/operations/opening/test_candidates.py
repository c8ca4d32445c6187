"""Candidates for a role: each fits or says by how much not, what it costs and what else it changes."""

import shutil
from dataclasses import replace
from decimal import Decimal

import pytest

from hwsched.fitting import fit
from hwsched.model.project import open_project
from hwsched.operations.findings.checking import Checked, check_openings
from hwsched.operations.opening.candidates import candidates, parts_for
from hwsched.values import Catalogue, Chosen


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
