"""`hwsched project backups` and `hwsched project rescue` on the command line."""

import json
import sqlite3
from contextlib import closing
from datetime import date

import pytest

from hwsched.cli.command import run
from tests.cli.answers import answer


@pytest.fixture
def yard(tmp_path, capsys):
    """A project that was worked in yesterday and today."""
    path = tmp_path / "yard.hwsched"
    assert run(["project", "new", str(path)]) == 0
    assert run(["survey", "add", str(path), "M1", "--who", "ann"]) == 0
    with closing(sqlite3.connect(path)) as database, database:
        database.execute("UPDATE change_set SET at = datetime('now', '-1 day') || '+00:00'")
    assert run(["survey", "add", str(path), "M2", "--who", "ann"]) == 0
    capsys.readouterr()
    return path


def openings(path):
    with closing(sqlite3.connect(path)) as database:
        return [mark for (mark,) in database.execute("SELECT mark FROM opening ORDER BY mark")]


def test_copies_are_listed_put_back_and_taken_back(yard, capsys):
    today = date.today().isoformat()
    assert run(["project", "backups", str(yard), "--json"]) == 0
    (copy,) = json.loads(capsys.readouterr().out)["result"]["copies"]
    assert copy["name"] == today
    assert "step 1" in copy["newest"]
    assert run(["project", "backups", str(yard)]) == 0
    assert capsys.readouterr().out.startswith(today)
    assert run(["project", "backups", str(yard), "--restore", today]) == 0
    assert "--restore before-restore-1" in capsys.readouterr().out
    assert openings(yard) == ["M1"]
    assert run(["project", "backups", str(yard), "--restore", "before-restore-1", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["result"]["restored"] == "before-restore-1"
    assert openings(yard) == ["M1", "M2"]
    assert run(["project", "backups", str(yard), "--restore", "yesterday"]) == 3
    assert today in capsys.readouterr().err


@pytest.mark.parametrize(
    ("zone", "told"),
    [("Asia/Kolkata", "2031-02-04T03:35:09+05:30"), ("UTC", "2031-02-03T22:05:09+00:00")],
)
def test_when_a_copy_was_worked_in_is_told_in_the_project_s_zone_with_its_offset(tmp_path, capsys, zone, told):
    path = tmp_path / "yard.hwsched"
    assert run(["project", "new", str(path), "--time-zone", "Europe/Lisbon"]) == 0
    assert run(["survey", "add", str(path), "M1", "--who", "ann"]) == 0
    with closing(sqlite3.connect(path)) as database, database:
        database.execute("UPDATE change_set SET at = '2031-02-03T22:05:09+00:00'")
    assert run(["survey", "add", str(path), "M2", "--who", "ann"]) == 0
    # The zone that the project has now, also where the copy was made under another one.
    assert run(["project", "settings", str(path), "--time-zone", zone]) == 0
    (copy,) = answer(capsys, "project", "backups", str(path))["result"]["copies"]
    assert copy["newest_at"] == told
    minute = f"{told[:16].replace('T', ' ')} {told[-6:]}"
    assert f"step 1, {minute}, ann:" in copy["newest"]
    assert run(["project", "backups", str(path)]) == 0
    assert minute in capsys.readouterr().out
    # Of a project that is lost, the copy's own.
    path.unlink()
    for log in ("-wal", "-shm"):
        path.with_name(path.name + log).unlink(missing_ok=True)
    (copy,) = answer(capsys, "project", "backups", str(path))["result"]["copies"]
    assert copy["newest_at"] == "2031-02-03T22:05:09+00:00"


@pytest.mark.parametrize(
    "change",
    [
        f"UPDATE project SET settings = '{'[' * 20_000}'",
        "UPDATE project SET settings = '[1]'",
        "UPDATE project SET settings = 'none'",
        "DROP TABLE project",
        "DROP TABLE project; CREATE VIEW project AS WITH RECURSIVE n(settings) AS "
        "(SELECT 1 UNION ALL SELECT settings + 1 FROM n) SELECT max(settings) AS settings FROM n",
    ],
    ids=["no-bottom", "no-object", "no-json", "no-table", "a-view-without-end"],
)
def test_copies_of_a_stranger_s_project_are_listed_by_their_own_zones(yard, capsys, change):
    with closing(sqlite3.connect(yard)) as database:
        database.executescript(change)
    (copy,) = answer(capsys, "project", "backups", str(yard))["result"]["copies"]
    assert copy["newest_at"][-6] in "+-"


@pytest.mark.parametrize(
    "words", [["project", "new", "THERE"], ["project", "rescue", "YARD", "THERE"], ["project", "new", "FOLDER"]]
)
def test_what_stands_there_already_is_a_refusal(yard, tmp_path, capsys, words):
    there = tmp_path / "there.hwsched"
    there.write_bytes(b"a letter")
    (tmp_path / "folder.hwsched").mkdir()
    put = {"THERE": str(there), "YARD": str(yard), "FOLDER": str(tmp_path / "folder.hwsched")}
    told = answer(capsys, *(put.get(word, word) for word in words), status=3)
    assert "already there; it was left alone" in told["problems"][0]["message"]
    assert there.read_bytes() == b"a letter"


def test_a_copy_that_cannot_be_made_is_said_after_the_verb(yard, tmp_path, capsys):
    with closing(sqlite3.connect(yard)) as database, database:
        database.execute("UPDATE change_set SET at = datetime('now', '-1 day') || '+00:00'")
    folder = tmp_path / "yard.backups"
    for path in folder.iterdir():
        path.unlink()
    folder.rmdir()
    folder.write_text("in the way")
    assert run(["survey", "add", str(yard), "M3", "--who", "ann"]) == 0
    assert "no copy of" in capsys.readouterr().err
    assert openings(yard) == ["M1", "M2", "M3"]


def test_what_can_be_read_is_saved_and_the_rest_is_named(yard, tmp_path, capsys):
    assert run(["project", "rescue", str(yard), str(tmp_path / "whole.hwsched")]) == 0
    assert openings(tmp_path / "whole.hwsched") == ["M1", "M2"]
    with closing(sqlite3.connect(yard)) as database, database:
        database.execute("CREATE VIEW later AS SELECT 1")
    assert run(["opening", "show", str(yard)]) == 4
    assert f"hwsched project rescue {yard}" in capsys.readouterr().err
    assert run(["project", "rescue", str(yard), str(tmp_path / "new.hwsched")]) == 1
    assert "left out: view later, which is none of a project" in capsys.readouterr().out
    assert run(["project", "rescue", str(yard), str(tmp_path / "new.hwsched"), "--json"]) == 3
    assert run(["opening", "show", str(tmp_path / "new.hwsched"), "--json"]) == 0


def test_a_damaged_project_is_shown_as_far_as_it_can_be_read_and_passes_nothing(sample_file, capsys):
    # A page of the table of openings is overwritten, as a bad disk does.
    with closing(sqlite3.connect(sample_file)) as database:
        database.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        (page,) = database.execute("SELECT rootpage FROM sqlite_master WHERE name = 'ix_opening_level_id'").fetchone()
        (size,) = database.execute("PRAGMA page_size").fetchone()
    content = bytearray(sample_file.read_bytes())
    content[(page - 1) * size : page * size] = b"\xff" * size
    sample_file.write_bytes(content)
    for words in (
        ["survey", "list", "openings"],
        ["opening", "show", "M004"],
        ["findings", "check", "--fail-on", "error"],
    ):
        capsys.readouterr()
        status = run([*words[:2], str(sample_file), *words[2:], "--json"])
        told = json.loads(capsys.readouterr().out)
        assert status == (1 if words[1] == "check" else 4)
        assert told["result"] is not None
        assert "read only" in told["problems"][0]["message"]
    assert run(["survey", "edit", str(sample_file), "M004", "leaf", "thickness_mm", "45 mm"]) == 3
    assert "rescue" in capsys.readouterr().err
    assert sample_file.read_bytes() == bytes(content)


def test_of_a_project_that_is_not_there_and_has_no_copies_that_is_said(tmp_path, capsys):
    told = answer(capsys, "project", "backups", str(tmp_path / "none.hwsched"), status=4)
    assert "none.hwsched, and no copy of it" in told["problems"][0]["message"]
