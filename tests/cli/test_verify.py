"""`hwsched project verify`: what another program changed is shown, told at opening, and taken as it is on wish."""

import json
import sqlite3
from contextlib import closing

import pytest

from hwsched.cli.command import run


@pytest.fixture
def yard(tmp_path, capsys):
    path = tmp_path / "yard.hwsched"
    assert run(["project", "new", str(path)]) == 0
    assert run(["survey", "add", str(path), "M1", "--who", "ann"]) == 0
    capsys.readouterr()
    return path


def spoil(path, statement):
    with closing(sqlite3.connect(path)) as database, database:
        database.execute(statement)


def test_a_project_as_it_should_be(yard, capsys):
    assert run(["project", "verify", str(yard)]) == 0
    told = capsys.readouterr()
    assert told.out == f"{yard}: tables and journal are as the change sets left them.\n"
    assert told.err == ""
    assert run(["project", "verify", str(yard), "--accept", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["result"] == {
        "tables": [], "change_sets": [], "contents": [], "accepted": False,
    }  # fmt: skip


def test_a_foreign_edit_is_told_by_every_verb_shown_taken_and_taken_back(yard, capsys):
    spoil(yard, "UPDATE opening SET hand = 'LH'")
    assert run(["project", "history", str(yard)]) == 0
    told = capsys.readouterr().err
    assert "changed past the journal: table opening, since change set 1: M1: hand nothing -> LH" in told
    assert "--accept" in told
    assert run(["project", "verify", str(yard), "--json"]) == 1
    (table,) = json.loads(capsys.readouterr().out)["result"]["tables"]
    (row,) = table["rows"]
    assert (table["table"], table["since_change_set"], table["all_told"]) == ("opening", 1, True)
    assert (row["label"], row["before"], row["now"]) == ("M1", {"hand": None}, {"hand": "LH"})
    assert run(["project", "verify", str(yard), "--accept", "--who", "ann"]) == 0
    assert "Taken as it is: change set 2 written." in capsys.readouterr().out
    assert run(["project", "verify", str(yard)]) == 0
    assert run(["project", "undo", str(yard), "--who", "ann"]) == 0
    assert run(["project", "verify", str(yard)]) == 0
    assert capsys.readouterr().err == ""
    with closing(sqlite3.connect(yard)) as database:
        assert database.execute("SELECT hand FROM opening").fetchall() == [(None,)]


def test_only_a_specifier_takes_it_as_it_is(yard, capsys):
    assert run(["project", "people", str(yard), "--add", "ann", "--role", "specifier", "--who", "ann"]) == 0
    assert run(["project", "people", str(yard), "--add", "ben", "--role", "surveyor", "--who", "ann"]) == 0
    spoil(yard, "UPDATE opening SET hand = 'LH'")
    assert run(["project", "verify", str(yard), "--accept", "--who", "ben"]) == 3
    assert "surveyor" in capsys.readouterr().err


def test_a_file_that_might_act_by_itself_cannot_be_opened(yard, capsys):
    spoil(yard, "CREATE TRIGGER wipe AFTER INSERT ON leaf BEGIN UPDATE opening SET rating = NULL; END")
    for words in (
        ["findings", "check", str(yard)],
        ["project", "verify", str(yard)],
        ["project", "upgrade", str(yard)],
    ):
        assert run(words) == 4
        assert "trigger wipe on leaf" in capsys.readouterr().err
