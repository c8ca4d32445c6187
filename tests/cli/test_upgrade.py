"""A project of an earlier version on the command line: told, never changed unasked; upgraded by its own verb."""

import json

import pytest

from hwsched.cli.command import run
from tests.model.saved_projects import SAVED, restore


@pytest.fixture
def old(tmp_path):
    restore(SAVED / "0001.sql", tmp_path / "old.hwsched")
    return tmp_path / "old.hwsched"


def test_every_other_verb_refuses_and_says_how(old, capsys):
    before = old.read_bytes()
    assert run(["check", str(old)]) == 4
    told = capsys.readouterr().err
    assert "schema 0001" in told
    assert f"hwsched upgrade {old}" in told
    assert run(["cost", str(old), "--json"]) == 4
    assert capsys.readouterr().out == ""
    assert old.read_bytes() == before
    assert len(list(old.parent.glob("*.hwsched"))) == 1


def test_upgrade_says_where_the_copy_is(old, capsys):
    assert run(["upgrade", str(old)]) == 0
    copy = old.parent / "old.before-0001.hwsched"
    assert str(copy) in capsys.readouterr().out
    assert run(["check", str(old)]) == 0
    # The copy is a project of the earlier version still.
    assert run(["check", str(copy)]) == 4
    assert run(["upgrade", str(old)]) == 0
    assert "nothing was changed" in capsys.readouterr().out


def test_upgrade_for_machines(old, capsys):
    assert run(["upgrade", str(old), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["before"] == "0001"
    assert told["copy"] == str(old.parent / "old.before-0001.hwsched")
    assert told["rows_compared"] > 50
    assert run(["upgrade", str(old), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["copy"] is None


def test_what_is_no_project_is_told_as_ever(tmp_path, capsys):
    assert run(["upgrade", str(tmp_path / "none.hwsched")]) == 4
    assert "there is no project" in capsys.readouterr().err
