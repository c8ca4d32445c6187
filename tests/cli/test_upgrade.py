"""A project of an earlier version on the command line: a file is upgraded after a copy, by any verb or by its own."""

import json
import sqlite3
from contextlib import closing

import pytest

from hwsched.cli.command import run
from tests.cli.answers import result
from tests.model.saved_projects import SAVED, restore


@pytest.fixture
def old(tmp_path):
    restore(SAVED / "0001.sql", tmp_path / "old.hwsched")
    return tmp_path / "old.hwsched"


def test_a_file_is_brought_up_to_date_after_a_copy_and_that_is_said(old, capsys):
    assert run(["opening", "show", str(old), "--json"]) == 0
    told = capsys.readouterr()
    assert json.loads(told.out)["ok"]
    assert "schema 0001" in told.err
    copy = old.parent / "old.before-0001.hwsched"
    assert str(copy) in told.err
    with closing(sqlite3.connect(copy)) as connection:
        assert connection.execute("SELECT version_num FROM alembic_version").fetchone() == ("0001",)
    assert run(["opening", "show", str(old), "--json"]) == 0
    assert "schema" not in capsys.readouterr().err


def test_upgrade_says_where_the_copy_is(old, capsys):
    assert run(["project", "upgrade", str(old)]) == 0
    copy = old.parent / "old.before-0001.hwsched"
    assert str(copy) in capsys.readouterr().out
    # The copy is a project of the earlier version still.
    assert result(capsys, "project", "upgrade", str(copy))["before"] == "0001"
    assert run(["project", "upgrade", str(old)]) == 0
    assert "nothing was changed" in capsys.readouterr().out


def test_upgrade_for_machines(old, capsys):
    told = result(capsys, "project", "upgrade", str(old))
    assert told["before"] == "0001"
    assert told["copy"] == str(old.parent / "old.before-0001.hwsched")
    assert told["compared_row_count"] > 50
    assert result(capsys, "project", "upgrade", str(old))["copy"] is None


def test_what_is_no_project_is_told_as_ever(tmp_path, capsys):
    assert run(["project", "upgrade", str(tmp_path / "none.hwsched")]) == 4
    assert "there is no project" in capsys.readouterr().err
