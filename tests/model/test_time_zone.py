"""One calendar: days and hours of a project are those of its own zone, whatever the machine's is."""

from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from hwsched.model import time_zone
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import create_project
from hwsched.model.tables import PROJECT
from hwsched.operations.findings.waivers import waive
from hwsched.operations.project.history import history
from hwsched.operations.project.settings import set_settings
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.revisions import revisions
from tests.operations.exact import small

KIRITIMATI, PAGO = "Pacific/Kiritimati", "Pacific/Pago_Pago"
"""14 h before and 11 h behind UTC all year round (IANA time zone database): never the same day."""


@pytest.fixture
def at_noon(monkeypatch):
    """The moment is noon of 3 February 2031 in UTC."""

    class Moment(datetime):
        @classmethod
        def now(cls, tz=None):
            return datetime(2031, 2, 3, 12, 0, tzinfo=UTC).astimezone(tz)

    for module in ("hwsched.model.time_zone", "hwsched.model.journal.journal", "hwsched.operations.release.freezing"):
        monkeypatch.setattr(f"{module}.datetime", Moment)


def test_a_project_has_the_zone_of_the_machine_that_made_it(tmp_path, monkeypatch):
    monkeypatch.setattr(time_zone, "get_localzone_name", lambda: "Asia/Kolkata")
    with create_project(tmp_path / "a.hwsched", "Yard") as project:
        assert project.time_zone == "Asia/Kolkata"
    with create_project(tmp_path / "b.hwsched", "Yard", time_zone="europe/lisbon") as project:
        assert project.time_zone == "Europe/Lisbon"
        set_settings(project, who="t", time_zone="UTC")
        assert project.time_zone == "UTC"
        with pytest.raises(ValueRefusedError, match="there is no 'Mars'"):
            set_settings(project, who="t", time_zone="Mars")
        assert project.time_zone == "UTC"


def test_a_project_made_before_it_was_asked_has_this_machines(tmp_path, monkeypatch, at_noon):
    with create_project(tmp_path / "a.hwsched", "Yard") as project:
        with project.writing() as connection:
            connection.execute(PROJECT.update().values(settings={}))
        for zone, day in ((KIRITIMATI, date(2031, 2, 4)), (PAGO, date(2031, 2, 3))):
            monkeypatch.setattr(time_zone, "get_localzone", lambda zone=zone: ZoneInfo(zone))
            assert (project.time_zone, project.today()) == (None, day)


def test_a_machine_that_does_not_tell_its_zone(tmp_path, monkeypatch):
    for told in (None, "No/Where"):
        monkeypatch.setattr(time_zone, "get_localzone_name", lambda told=told: told)
        assert time_zone.system_zone() is None


# Noon of 3 February in UTC is 2 h of the 4th at +14:00, and 1 h of the 3rd at -11:00.
@pytest.mark.parametrize(
    ("zone", "day", "hour"),
    [
        (KIRITIMATI, "2031-02-04", "2031-02-04T02:00:00.000+14:00"),
        (PAGO, "2031-02-03", "2031-02-03T01:00:00.000-11:00"),
    ],
)
def test_documents_waivers_and_moments_have_one_calendar(tmp_path, at_noon, zone, day, hour):
    with small(tmp_path / "y.hwsched") as project:
        set_settings(project, who="t", time_zone=zone)
        assert project.today().isoformat() == day
        assert project_view(project).date == day
        assert history(project)[-1].when == hour
        freeze(project, who="t")
        assert revisions(project)[0].at == hour.replace(".000", "")
        # The last day counts to its end; the day before it is over.
        words = {"scope": "project", "person": "Ann", "reason": "seen", "who": "t"}
        waive(project, "reach-height", **words, until=day)
        before = (date.fromisoformat(day) - timedelta(days=1)).isoformat()
        with pytest.raises(ValueRefusedError, match="is over already"):
            waive(project, "reach-height", **words, until=before)
