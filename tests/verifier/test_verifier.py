"""The program against the verifier: what it calls fitted can be installed, what it refuses has no witness.

`EXPECTED_TODAY` says which families are still found, and how great a share of the fitted openings each may spoil. It is
empty: any family fails at once.
"""

import os
import tempfile
from pathlib import Path

import pytest

from tests.verifier.driving import answered
from tests.verifier.fixed_openings import CASES, SHOPS
from tests.verifier.judging import judge, passed
from tests.verifier.run import told, verified

OPENINGS = max(250, int(os.environ.get("HWSCHED_FUZZ", "0")) // 5)
SEED = 1

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
def test_what_is_fitted_can_be_installed():
    report = verified(SEED, OPENINGS)
    shares = {family: report.share(family) for family in report.families}
    shown = told(report)
    over = {family: share for family, share in shares.items() if share > EXPECTED_TODAY.get(family, 0.0)}
    assert over == {}, shown
    refusals = [each for each in report.refusals if each[0] not in KNOWN_EXCEPTIONS]
    assert len(refusals) <= REFUSED_TODAY * (report.fitted_whole + len(refusals)), shown
    assert len(report.unknowns) <= UNKNOWN_TODAY, shown


@pytest.mark.slow
def test_the_verifier_sees_enough_to_judge():
    """A drawn survey of which hardly anything is fitted would let everything pass."""
    report = verified(SEED, 60, searching=False)
    assert report.openings == 60
    assert report.fitted_whole >= 15
    assert report.refused >= 5


def _answers(shop):
    fixed_openings = [fixed for fixed in CASES if fixed.shop == shop]
    with tempfile.TemporaryDirectory(prefix="hwsched-verifier-") as folder:
        parts = SHOPS[shop]()
        answers = answered(Path(folder), parts, [fixed.opening for fixed in fixed_openings])
    return [(fixed, answers[fixed.mark], parts) for fixed in fixed_openings]


@pytest.mark.slow
@pytest.mark.turns(3)
@pytest.mark.parametrize("shop", SHOPS)
def test_fixed_openings(shop):
    """Each is refused, asked about, or fitted so that its family is not found; those in the table are not yet."""
    passing = {
        fixed.mark
        for fixed, answer, parts in _answers(shop)
        if passed(answer) and fixed.family in {each.family for each in judge(fixed.opening, parts, answer)}
    }
    assert passing == {fixed.mark for fixed in CASES if fixed.shop == shop} & CASES_TODAY
