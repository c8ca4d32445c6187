"""Daily copies of a project file: made before the first change of a day, thinned, put back; what can be rescued."""

import random
import sqlite3
from contextlib import closing
from datetime import date, timedelta

import pytest
from sqlalchemy import text

from hwsched.model import errors
from hwsched.model.file import backups
from hwsched.model.file.backups import backups_of, folder_of, thinned
from hwsched.model.file.rescuing import rescue
from hwsched.model.file.schema import HEAD
from hwsched.model.project import create_project, open_project
from hwsched.model.queries import opening_ids
from hwsched.model.tables import OPENING_TABLE
from hwsched.operations.project.backups import list_backups, restore
from hwsched.operations.project.verifying import verify
from hwsched.operations.survey.editing import add_opening
from tests.model.saved_projects import SAVED
from tests.model.saved_projects import restore as restore_dump
from tests.model.states import state


@pytest.fixture
def target(tmp_path):
    path = tmp_path / "yard.hwsched"
    with create_project(path, "Yard") as project:
        add_opening(project, {"mark": "1"}, who="ann")
    return path


def aged(path, days):
    """Let all that was done be done that many days ago."""
    with closing(sqlite3.connect(path)) as database, database:
        database.execute("UPDATE change_set SET at = datetime('now', ?) || '+00:00'", (f"-{days} days",))


def marks(path):
    with open_project(path) as project, project.reading() as connection:
        return sorted(opening_ids(connection))


def names(path):
    return [each.name for each in backups_of(path)]


def add(path, mark):
    with open_project(path) as project:
        add_opening(project, {"mark": mark}, who="ann")
        return project.notices


def today():
    return date.today()


def test_before_the_first_change_of_a_day_a_copy_is_kept_and_only_then(target):
    assert names(target) == []
    add(target, "2")
    assert names(target) == []
    aged(target, 1)
    before = target.read_bytes()
    marks(target)
    assert names(target) == []
    add(target, "3")
    add(target, "4")
    (copy,) = backups_of(target)
    assert (copy.name, copy.path.parent) == (today().isoformat(), target.parent / "yard.backups")
    assert copy.path.name == f"yard.{today()}.hwsched"
    assert marks(copy.path) == ["1", "2"]
    assert "step 2" in copy.newest
    assert len(before) == copy.size


def test_a_change_that_changes_nothing_keeps_no_copy(target):
    aged(target, 1)
    with open_project(target) as project, project.change("add", "Nothing", "ann"):
        pass
    assert names(target) == []


def test_the_work_goes_on_where_no_copy_can_be_made_and_that_is_said(target, monkeypatch):
    aged(target, 1)
    folder_of(target).write_text("in the way")
    notices = add(target, "2")
    assert marks(target) == ["1", "2"]
    assert "no copy of" in notices[-1]


@pytest.mark.parametrize("lack", ["page", "step"])
def test_a_copy_that_is_not_what_was_copied_is_none(target, monkeypatch, lack):
    aged(target, 1)
    back_up = backups.back_up

    def badly(path, draft):
        back_up(path, draft)
        if lack == "page":
            with draft.open("rb+") as file:
                file.seek(-4096, 2)
                file.write(b"\xff" * 100)
        else:
            with closing(sqlite3.connect(draft)) as database, database:
                database.execute("DELETE FROM change_set")

    monkeypatch.setattr(backups, "back_up", badly)
    notices = add(target, "2")
    assert ("is not whole" if lack == "page" else "does not hold what was done last") in notices[-1]
    assert names(target) == []
    assert marks(target) == ["1", "2"]


def test_the_last_seven_days_then_weeks_then_months():
    now = date(2031, 6, 30)
    days = [now - timedelta(days=age) for age in range(400)]
    kept = thinned(days, now)
    ages = sorted((now - day).days for day in kept)
    assert ages[:7] == list(range(7))
    weekly = [age for age in ages if 7 <= age < 62]
    # 30 June 2031 is a Monday: the Sundays before, and of the week that is seven days old in part its first day.
    assert weekly == [7, 8, 15, 22, 29, 36, 43, 50, 57]
    monthly = [day for day in kept if (now - day).days >= 62]
    assert sorted((day.year, day.month) for day in monthly) == [
        (2030, 5), (2030, 6), (2030, 7), (2030, 8), (2030, 9), (2030, 10), (2030, 11), (2030, 12),
        (2031, 1), (2031, 2), (2031, 3), (2031, 4),
    ]  # fmt: skip


@pytest.mark.parametrize("seed", range(20))
def test_thinned_day_by_day_it_stays_within_bounds(seed):
    """Whoever works on some days only has a copy of each of the last 7 days, and never many."""
    rng = random.Random(seed)
    kept, now = set(), date(2031, 1, 1)
    for _ in range(500):
        now += timedelta(days=1)
        if rng.random() < 0.7:
            kept.add(now)
            before = set(kept)
            kept = set(thinned(kept, now))
            assert {day for day in before if (now - day).days < 7} <= kept
            assert now in kept
            months = [(day.year, day.month) for day in kept if (now - day).days >= 62]
            assert len(months) == len(set(months))
        assert len(kept) <= 7 + 10 + 18


def test_only_copies_of_days_are_thinned(target):
    folder = folder_of(target)
    folder.mkdir()
    ours = [folder / f"yard.{today() - timedelta(days=age)}.hwsched" for age in (100, 101, 300)]
    others = [folder / name for name in ("notes.txt", "yard.before-restore-1.hwsched", "other.2020-01-01.hwsched")]
    for path in (*ours, *others):
        path.write_bytes(target.read_bytes())
    aged(target, 1)
    add(target, "2")
    assert all(path.exists() for path in others)
    kept = {path for path in ours if path.exists()}
    assert folder / f"yard.{today() - timedelta(days=300)}.hwsched" in kept
    assert folder / f"yard.{today()}.hwsched" in set(folder.iterdir())


def test_a_copy_is_put_back_and_that_can_be_undone(target):
    aged(target, 1)
    add(target, "2")
    with open_project(target) as project:
        before = state(project)
    found, kept = restore(target, today().isoformat())
    assert found.name == today().isoformat()
    assert marks(target) == ["1"]
    assert kept == folder_of(target) / "yard.before-restore-1.hwsched"
    assert [each.name for each in list_backups(target)] == [today().isoformat(), "before-restore-1"]
    restore(target, "before-restore-1")
    with open_project(target) as project:
        assert state(project) == before
        assert verify(project).tables == ()
    assert names(target)[1:] == ["before-restore-1", "before-restore-2"]


def test_a_damaged_project_is_put_back_and_kept_as_it_was(target):
    aged(target, 1)
    add(target, "2")
    data = bytearray(target.read_bytes())
    data[4096::7] = b"\xff" * len(data[4096::7])
    target.write_bytes(data)
    with pytest.raises(errors.DamagedProjectError, match="hwsched project backups"):
        open_project(target)
    _, kept = restore(target, today().isoformat())
    assert marks(target) == ["1"]
    assert kept.read_bytes() == data


def test_a_project_that_is_gone_is_put_back(target):
    aged(target, 1)
    add(target, "2")
    target.unlink()
    assert restore(target, today().isoformat())[1] is None
    assert marks(target) == ["1"]


def test_one_that_is_open_elsewhere_is_left_alone(target):
    aged(target, 1)
    add(target, "2")
    with open_project(target) as project, project.reading() as connection:
        opening_ids(connection)
        with pytest.raises(errors.BusyProjectError, match="open elsewhere"):
            restore(target, today().isoformat())
    assert marks(target) == ["1", "2"]
    assert names(target) == [today().isoformat()]


def test_what_is_no_copy_is_refused_and_what_there_is_is_named(target):
    with pytest.raises(errors.MissingRowError, match="none yet"):
        restore(target, "2031-01-01")
    aged(target, 1)
    add(target, "2")
    with pytest.raises(errors.MissingRowError, match=str(today())):
        restore(target, "../yard")
    backups_of(target)[0].path.write_bytes(b"SQLite format 3\x00" + bytes(200))
    with pytest.raises(errors.ProjectError):
        restore(target, str(today()))
    assert marks(target) == ["1", "2"]
    with pytest.raises(errors.ValueRefusedError, match="keeper"):
        list_backups("postgresql://a@b/c")


@pytest.fixture
def filled(tmp_path):
    path = tmp_path / "filled.hwsched"
    restore_dump(SAVED / f"{HEAD}.sql", path)
    return path


def test_a_sound_project_is_rescued_whole(filled, tmp_path):
    before = filled.read_bytes()
    found = rescue(filled, tmp_path / "new.hwsched")
    assert found.whole
    assert filled.read_bytes() == before
    with open_project(filled) as old, open_project(tmp_path / "new.hwsched") as new:
        assert state(new) == state(old)
        assert new.notices == ()


def test_of_a_damaged_project_all_that_can_be_read_is_saved_and_the_rest_is_named(target, tmp_path):
    with open_project(target) as project, project.change("add", "Add", "ann") as change:
        change.insert(OPENING_TABLE, [{"mark": f"n{number:04}", "notes": "x" * 300} for number in range(400)])
    data = bytearray(target.read_bytes())
    size = int.from_bytes(data[16:18], "big")
    # Leaves of tables begin with 13 (sqlite.org/fileformat2.html, section 1.6); the journal's hold names of columns.
    leaves = [
        at
        for at in range(size, len(data), size)
        if data[at] == 13 and b"n02" in data[at : at + size] and b"xxx" in data[at : at + size]
        and b'"mark"' not in data[at : at + size]
    ]  # fmt: skip
    assert len(leaves) > 2
    for at in leaves[:2]:
        data[at : at + 8] = b"\xff" * 8
    target.write_bytes(data)
    with pytest.raises(errors.DamagedProjectError, match="hwsched project rescue"):
        open_project(target)
    found = rescue(target, tmp_path / "new.hwsched")
    openings = next(each for each in found.tables if each.table == "opening")
    # The journal tells of each how it came.
    assert (openings.rows, openings.lost) == (401, 0)
    assert openings.from_journal > 0
    assert len(marks(tmp_path / "new.hwsched")) == 401
    with open_project(tmp_path / "new.hwsched") as project:
        assert not verify(project)


def test_what_is_lost_for_good_is_counted(filled, tmp_path):
    with closing(sqlite3.connect(filled)) as database, database:
        database.execute("DELETE FROM waiver")
        database.execute("DELETE FROM change_entry WHERE entity = 'waiver'")
    found = rescue(filled, tmp_path / "new.hwsched")
    assert not found.whole
    assert {each.table: each.lost for each in found.tables if each.lost} == {"waiver": 1}


def test_what_is_none_of_a_project_is_left_out_and_named(filled, tmp_path):
    with closing(sqlite3.connect(filled)) as database, database:
        database.execute("CREATE TRIGGER wipe AFTER UPDATE ON opening BEGIN UPDATE opening SET rating = NULL; END")
        database.execute("CREATE VIEW later AS SELECT 1")
        database.execute("CREATE TABLE notes (text)")
        database.execute("UPDATE leaf SET thickness_mm = 'thick' WHERE position = 'active'")
        database.execute("UPDATE opening SET notes = CAST(x'61ff' AS TEXT) WHERE mark = '0012'")
    found = rescue(filled, tmp_path / "new.hwsched")
    said = "; ".join(found.left_out)
    for part in (
        "trigger wipe",
        "view later",
        "table notes",
        "'thick' where a number belongs",
        "bytes that were no text",
    ):
        assert part in said
    with open_project(tmp_path / "new.hwsched") as project, project.reading() as connection:
        rows = connection.execute(text("SELECT thickness_mm FROM leaf WHERE position = 'active'")).scalars().all()
    assert set(rows) == {None}


def test_a_project_of_an_earlier_version_is_rescued_as_one(tmp_path):
    path = tmp_path / "old.hwsched"
    restore_dump(SAVED / "0001.sql", path)
    found = rescue(path, tmp_path / "new.hwsched")
    assert found.revision == "0001"
    with pytest.raises(errors.NeedsUpgradeError):
        open_project(tmp_path / "new.hwsched")


def test_nothing_is_overwritten_and_what_cannot_be_read_at_all_is_told(filled, tmp_path):
    (tmp_path / "new.hwsched").write_bytes(b"precious")
    with pytest.raises(errors.ExistingProjectError):
        rescue(filled, tmp_path / "new.hwsched")
    filled.write_bytes(b"SQLite format 3\x00" + b"\xff" * 5000)
    with pytest.raises(errors.DamagedProjectError, match="nothing can be read"):
        rescue(filled, tmp_path / "other.hwsched")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["filled.hwsched", "new.hwsched"]
