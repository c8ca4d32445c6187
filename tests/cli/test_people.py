"""Several people at the command line: what was read off goes with an edit, undo goes by person, roles, who did what."""

import re

import pytest

from hwsched.cli.command import run
from hwsched.model.project import open_project
from tests.cli.answers import answer, result
from tests.model.states import state


@pytest.fixture
def yard(tmp_path, capsys):
    """A project with two openings of Ann's; its path."""
    path = str(tmp_path / "y.hwsched")
    told(capsys, "project", "new", path, "--name", "Yard", "--bare-unit", "in")
    for mark in ("1", "2"):
        told(capsys, "survey", "add", path, mark, "hand=LH", "--who", "ann")
    return path


def told(capsys, *words, status=0):
    """Run a command; returns what it printed."""
    assert run(list(words)) == status, capsys.readouterr().err
    return capsys.readouterr().out


def refused(capsys, *words):
    assert run(list(words)) == 3
    shown = capsys.readouterr()
    assert shown.out == ""
    return shown.err


def rows(path):
    with open_project(path) as project:
        return state(project)


def hands(path):
    return {row["mark"]: row["hand"] for (table, _), row in rows(path).items() if table == "opening"}


def test_an_edit_says_what_was_read_off(yard, capsys):
    told(capsys, "survey", "edit", yard, "1", "opening", "hand", "RH", "--was", "LH", "--who", "ben")
    assert hands(yard)["1"] == "RH"
    before = rows(yard)
    said = refused(capsys, "survey", "edit", yard, "1", "opening", "hand", "LHR", "--was", "left hand", "--who", "cid")
    assert re.search(
        r"Hand of 1: seen as left hand, now RH \(ben, \d{4}-\d\d-\d\d \d\d:\d\d [+-]\d\d:\d\d, step 3\); wanted: LHR",
        said,
    )
    assert "Nothing was changed in the project." in said
    assert rows(yard) == before
    # Without it, a script writes as it always did; an equal value merges.
    told(capsys, "survey", "edit", yard, "1", "opening", "hand", "LHR", "--who", "cid")
    assert "Nothing to change" in told(capsys, "survey", "edit", yard, "1", "opening", "hand", "LHR", "--was", "RH")
    told(capsys, "survey", "edit", yard, "1", "leaf", "thickness_mm", "1 3/4", "--was", "", "--who", "ben")
    told(capsys, "survey", "edit", yard, "1", "leaf", "thickness_mm", "50 mm", "--was", "44.45 mm")


def test_a_conflict_is_told_to_machines(yard, capsys):
    told(capsys, "survey", "edit", yard, "1", "opening", "hand", "RH", "--who", "ben")
    refusal = answer(capsys, "survey", "edit", yard, "1", "opening", "hand", "LHR", "--was", "LH", status=3)
    [clash] = refusal["result"]["conflicts"]
    when = clash.pop("when")
    assert re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}[+-]\d\d:\d\d", when)
    assert clash == {
        "fact": "Hand of 1", "seen": "LH", "present": "RH", "wanted": "LHR", "who": "ben", "change_set": 3,
    }  # fmt: skip
    assert "somebody else changed this meanwhile" in refusal["problems"][0]["message"]


def test_undo_and_redo_go_by_person(yard, capsys):
    told(capsys, "survey", "edit", yard, "1", "opening", "hand", "RH", "--who", "ann")
    told(capsys, "survey", "edit", yard, "2", "opening", "hand", "RH", "--who", "ben")
    told(capsys, "project", "undo", yard, "--who", "ann")
    assert hands(yard) == {"1": "LH", "2": "RH"}
    told(capsys, "project", "redo", yard, "--who", "ann")
    told(capsys, "project", "undo", yard, "--who", "ben")
    assert hands(yard) == {"1": "RH", "2": "LH"}
    assert "cid has no step to take back" in refused(capsys, "project", "undo", yard, "--who", "cid")
    # Chosen by its number, anybody's step goes, and comes back.
    told(capsys, "project", "undo", yard, "--step", "3", "--who", "cid")
    assert hands(yard) == {"1": "LH", "2": "LH"}
    told(capsys, "project", "redo", yard, "--step", "4", "--who", "cid")
    assert hands(yard) == {"1": "LH", "2": "RH"}
    said = refused(capsys, "project", "undo", yard, "--step", "2", "--who", "cid")
    assert re.search(r"later steps depend on it: 4 of ben \(Edit hand of 2\)", said)


def test_the_history_tells_machines_where_a_step_comes_from(yard, capsys):
    found = result(capsys, "project", "history", yard)
    assert [step["base"] for step in found] == [0, 1]
    assert len({step["uuid"] for step in found}) == 2
    assert len({step["session"] for step in found}) == 2
    assert all(step["device"] for step in found)
    assert [step["row_count"] > 0 for step in found] == [True, True]
    assert re.search(r"\d{4}-\d\d-\d\d \d\d:\d\d:\d\d [+-]\d\d:\d\d  ann ", told(capsys, "project", "history", yard))


def test_people_are_listed_get_roles_and_go(yard, capsys):
    assert "open to all" in told(capsys, "project", "people", yard)
    said = refused(capsys, "project", "people", yard, "--add", "ben", "--role", "viewer")
    assert "the first person is a specifier" in said
    told(capsys, "project", "people", yard, "--add", "ann", "--role", "specifier", "--who", "ann")
    shown = told(capsys, "project", "people", yard, "--add", "ben", "--role", "viewer", "--who", "ann")
    assert [line.split() for line in shown.splitlines()] == [["specifier", "ann"], ["viewer", "ben"]]
    assert result(capsys, "project", "people", yard) == [
        {"name": "ann", "role": "specifier"},
        {"name": "ben", "role": "viewer"},
    ]
    for who, word in (("ben", "ben is viewer in this project, who changes nothing"), ("cid", "cid is not among")):
        assert word in refused(capsys, "survey", "edit", yard, "1", "opening", "hand", "RH", "--who", who)
    # Whoever may change nothing may look.
    told(capsys, "project", "history", yard, "--who", "ben")
    told(capsys, "findings", "check", yard, "--who", "cid")
    told(capsys, "project", "people", yard, "--remove", "ben", "--who", "ann")
    assert "must be a specifier" not in told(capsys, "project", "people", yard, "--remove", "ann", "--who", "ann")
    told(capsys, "survey", "edit", yard, "1", "opening", "hand", "RH", "--who", "cid")


@pytest.mark.parametrize("words", [["--add", "ann"], ["--role", "viewer"], ["--add", "ann", "--remove", "ben"]])
def test_wrong_usage(yard, capsys, words):
    assert run(["project", "people", yard, *words]) == 2
