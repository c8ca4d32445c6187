"""What goes out of 10,000 openings of 400 kinds, schedule, pick list, freezing: ratios to openpyxl's bare reading.

By the time of the process, so that other work on the machine counts little.
"""

import time

import pytest
from pypdf import PdfReader

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project
from hwsched.operations.findings.checking import Checker, check_openings
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.parts.catalogue_import import import_catalogue
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.issued_documents import issue_by_name
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.editing import edit_facts
from hwsched.operations.survey.survey_import import import_survey
from hwsched.paths import SAMPLE
from tests.benchmarks.survey_workbook import read_bare, write_survey

pytestmark = pytest.mark.bench


def clocked(work):
    start = time.process_time()
    found = work()
    return time.process_time() - start, found


@pytest.fixture(scope="module")
def campus(tmp_path_factory):
    """Seconds of a bare reading, and the project with its openings fitted."""
    folder = tmp_path_factory.mktemp("release")
    path = folder / "survey.xlsx"
    write_survey(path)

    def bare():
        read_bare(path)

    bare_s = min(clocked(bare)[0] for _ in range(2))
    project = create_project(folder / "p.hwsched", "P", bare_unit="in")
    import_catalogue(project, SAMPLE / "catalogue.xlsx", who="b")
    import_survey(project, path, SurveyOptions(), who="b")
    fit_openings(project, who="b")
    yield bare_s, project, folder
    project.close()


def test_schedule_and_pick_list_within_two_readings(campus):
    bare_s, project, folder = campus
    view_s, view = clocked(lambda: project_view(project))
    took = {name: clocked(lambda name=name: issue_by_name(view, name, folder)) for name in ("schedule", "pick-list")}
    pages = {name: len(PdfReader(files[0]).pages) for name, (_, files) in took.items()}
    ratios = {name: seconds / bare_s for name, (seconds, _) in took.items()}
    print(f"\nR {bare_s:.2f} s; view {view_s / bare_s:.2f} R; {ratios}; pages {pages}")
    assert sum(ratios.values()) <= 2
    assert sum(pages.values()) < 700


def test_freezing_what_is_checked_within_three_tenths_and_again_within_a_twentieth(campus):
    bare_s, project, folder = campus
    checker = Checker()
    checked = check_openings(project, checker=checker)
    first_s, _ = clocked(lambda: freeze(project, who="b", checker=checker))
    size = sum(path.stat().st_size for path in folder.glob("p.hwsched*") if path.is_file())
    for each in checked[:100]:
        edit_facts(project, "opening", each.given.opening.id, {"room_to": "Other"}, who="b")
    grown = sum(path.stat().st_size for path in folder.glob("p.hwsched*") if path.is_file())
    again_s, _ = clocked(lambda: freeze(project, who="b", checker=checker))
    more = sum(path.stat().st_size for path in folder.glob("p.hwsched*") if path.is_file()) - grown
    print(
        f"\nfreeze {first_s / bare_s:.2f} R (at most 0.3), again {again_s / bare_s:.3f} R "
        f"(at most 0.05); edits {(grown - size) / 1e6:.2f} MB, second freeze {more / 1e6:.2f} MB (at most 1)"
    )
    assert first_s <= 0.3 * bare_s
    assert again_s <= 0.05 * bare_s
    assert more <= 1e6
