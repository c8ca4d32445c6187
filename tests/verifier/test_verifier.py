"""The program against the verifier: what it calls fitted can be installed, what it refuses has no witness.

`EXPECTED_TODAY` says which families are still found, and how great a share of the fitted openings each may spoil. It is
empty: any family fails at once.
"""

import os
import re

import pytest

from tests.verifier.driving import project
from tests.verifier.fixed_openings import CASES, SHOPS
from tests.verifier.judging import judge, passed
from tests.verifier.leaving_open import false_refusals
from tests.verifier.run import told, verified
from tests.verifier.surveys import FORMS

SEEDS = range(1, 5)
OPENINGS = max(500, int(os.environ.get("HWSCHED_FUZZ", "0")) // 20)
"""Of each seed, so that the parts run beside each other: 2,000 in all, of which every second seed takes its turn."""
FITTED = 0.7
"""Share of the drawn openings that fits, at least: what is refused says nothing of what is called fitted."""

EXPECTED_TODAY: dict[str, float] = {}
"""Family to the share of fitted openings, of which every cell was given, that it spoils at most."""
REFUSED_TODAY = 0.005
"""Share of what can be fitted, every cell given, that the program refuses all the same, at most."""
UNKNOWN_TODAY = 0
"""Openings of which every cell was given that are called to measure, at most."""

KNOWN_EXCEPTIONS: frozenset[str] = frozenset()
"""Marks that nobody need explain."""

CASES_TODAY: frozenset[str] = frozenset()
"""Marks of the fixed openings that the program calls fitted although they cannot be."""


@pytest.mark.slow
@pytest.mark.turns(2)
@pytest.mark.parametrize("seed", SEEDS)
def test_what_is_fitted_can_be_installed(seed):
    """In one test a seed, so that one process draws: what is found, and that enough is fitted to say something."""
    report = verified(seed, OPENINGS)
    shares = {family: report.share(family) for family in report.families}
    shown = told(report)
    over = {family: share for family, share in shares.items() if share > EXPECTED_TODAY.get(family, 0.0)}
    assert over == {}, shown
    refusals = [each for each in report.refusals if each[0] not in KNOWN_EXCEPTIONS]
    assert len(refusals) <= REFUSED_TODAY * (report.fitted_whole + len(refusals)), shown
    assert len(report.unknowns) <= UNKNOWN_TODAY, shown
    _sees_enough(report, shown)


@pytest.mark.slow
def test_what_was_read_in_millimetres_is_refused_for_no_rounding():
    """Drawn in inches and written to the millimetre: what is fitted can be installed, or it is said what to measure."""
    report = verified(int(os.environ.get("HWSCHED_SEED", "6")), OPENINGS // 2, digits=0)
    shown = told(report)
    assert report.families == {}, shown
    assert report.rounded > 0, shown
    refusals = len(report.refusals) + len(report.rounded_off)
    assert refusals <= REFUSED_TODAY * (report.fitted_whole + refusals), shown
    assert len(report.unknowns) <= UNKNOWN_TODAY, shown


@pytest.mark.slow
@pytest.mark.parametrize("seed", SEEDS[:1])
def test_what_fits_is_not_refused_with_cells_left_open(seed):
    """What could make it fit is asked for: a refusal says that nothing would."""
    asked, found = false_refusals(seed, OPENINGS // 4)
    assert not found, "\n".join(map(str, found))
    assert asked >= FITTED * OPENINGS // 4


def _sees_enough(report, shown):
    """A drawn survey of which hardly anything is fitted would let everything pass."""
    assert report.openings == OPENINGS
    assert report.passed >= FITTED * OPENINGS, shown
    assert set(report.forms) == {form[:2].upper() for form, _ in FORMS}
    for form, became in report.forms.items():
        assert 0 < became["fitted"] < sum(became.values()), f"{form}\n{shown}"
    assert {power for _, power in report.ways} == {"battery", "supply"}, shown
    # All draws of a seed are one shop's, which may have a housing that serves none of its doors.
    assert len({unit for unit, _ in report.ways} & {"VUW", "VUN", "VUX", "VUZ", "VUG", "VUE"}) >= 5, shown


@pytest.fixture(scope="module")
def yard():
    """One project with all fixed openings, that one shop after the other sells to."""
    with project() as made:
        made.stock(SHOPS["plain"]())
        made.survey([fixed.opening for fixed in CASES])
        yield made


@pytest.mark.slow
@pytest.mark.parametrize("shop", SHOPS)
def test_fixed_openings(shop, yard):
    """Each is refused, asked about, or fitted so that its family is not found; those in the table are not yet."""
    here = [fixed for fixed in CASES if fixed.shop == shop]
    parts = SHOPS[shop]()
    yard.stock(parts)
    answers = yard.answers(*(fixed.mark for fixed in here))
    reasons = [each["reason"] for answer in answers.values() for p in answer["lock_points"] for each in p["refused"]]
    assert not [reason for reason in reasons if re.search(r"short by 0(?![.\d])", reason)]
    passing = {
        fixed.mark
        for fixed in here
        if passed(answers[fixed.mark])
        and fixed.family in {each.family for each in judge(fixed.opening, parts, answers[fixed.mark])}
    }
    assert passing == {fixed.mark for fixed in here} & CASES_TODAY
