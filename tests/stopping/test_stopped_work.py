"""Every job asks whether to stop, often enough; stopped anywhere, it has changed nothing."""

import sys
import time

import pytest

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project, open_project
from hwsched.operations.findings.checking import Checker, check_openings
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.project.history import newest
from hwsched.operations.release.issued_documents import issue_by_name
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.survey_import import import_survey
from hwsched.paths import SAMPLE
from hwsched.stopping import StopAskedError, stoppable

OFTEN_S = 0.2 if sys.gettrace() is None else 1.0
"""Of work, at most, between two times that it is asked; each line costs more where it is traced for coverage."""


class Asked:
    """Counts how often work asks and how much it works in between; tells it to stop at some time."""

    def __init__(self, stop_at=None):
        self.times, self.longest, self.stop_at = 0, 0.0, stop_at
        self.last = time.thread_time()

    def __call__(self):
        now = time.thread_time()
        self.longest, self.last = max(self.longest, now - self.last), now
        self.times += 1
        return self.stop_at is not None and self.times >= self.stop_at


def schedule(project, folder):
    issue_by_name(project_view(project, checker=Checker()), "schedule", folder)


def check(project, _folder):
    check_openings(project, checker=Checker())


def fit(project, _folder):
    fit_openings(project, who="ann")


def survey(project, _folder):
    import_survey(project, SAMPLE / "survey.xlsx", SurveyOptions(), who="ann", accept="good-rows")


@pytest.fixture
def project(corner_file):
    with open_project(corner_file) as opened:
        yield opened


@pytest.fixture
def fresh(tmp_path):
    with create_project(tmp_path / "fresh.hwsched", "Fresh", bare_unit="in") as made:
        yield made


@pytest.mark.parametrize("job", [schedule, check, fit, survey], ids=lambda job: job.__name__)
def test_a_job_asks_often_and_stopped_has_changed_nothing(request, tmp_path, job):
    on = request.getfixturevalue("fresh" if job is survey else "project")
    openings, folder, before = 20, tmp_path / "out", newest(on)
    folder.mkdir()
    asked = Asked(stop_at=openings)
    with stoppable(asked), pytest.raises(StopAskedError):
        job(on, folder)
    assert asked.longest < OFTEN_S
    assert newest(on) == before
    assert not list(folder.rglob("*"))
    asked = Asked()
    with stoppable(asked):
        job(on, folder)
    asked()
    assert asked.times > openings
    assert asked.longest < OFTEN_S
