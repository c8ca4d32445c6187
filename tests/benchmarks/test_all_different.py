"""10,000 openings that all differ, as ratios to openpyxl's bare reading of their workbook, all in one run."""

import time

import pytest

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.parts.catalogue_import import import_catalogue
from hwsched.operations.survey.survey_import import import_survey
from hwsched.paths import SAMPLE
from tests.benchmarks.survey_workbook import read_bare, write_survey

pytestmark = pytest.mark.bench


def clocked(work):
    start = time.perf_counter()
    found = work()
    return time.perf_counter() - start, found


def bare(path):
    read_bare(path)


@pytest.mark.parametrize(
    ("differs", "fit_most", "check_most", "mb_most"), [("duty", 2, 1, 60), ("geometry", 12, 2, 60)]
)
def test_all_different(tmp_path, differs, fit_most, check_most, mb_most):
    path = tmp_path / "survey.xlsx"
    write_survey(path, differs=differs)
    bare_s = min(clocked(lambda: bare(path))[0] for _ in range(2))
    with create_project(tmp_path / "p.hwsched", "P", bare_unit="in") as project:
        import_catalogue(project, SAMPLE / "catalogue.xlsx", who="b")
        import_survey(project, path, SurveyOptions(), who="b")
        fit_s, (_, outcomes) = clocked(lambda: fit_openings(project, who="b"))
        check_s, _ = clocked(lambda: check_openings(project))
    mb = (tmp_path / "p.hwsched").stat().st_size / 1e6
    fit_r, check_r = fit_s / bare_s, check_s / bare_s
    print(f"\n{differs}: R {bare_s:.2f} s; fit {fit_r:.2f} R (at most {fit_most}), check {check_r:.2f} R")
    print(f"(at most {check_most}), file {mb:.0f} MB (at most {mb_most})")
    assert sum(each.fit.status == "fits" for each in outcomes) > 1000
    assert fit_r <= fit_most
    assert check_r <= check_most
    assert mb <= mb_most
