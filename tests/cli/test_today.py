"""`hwsched project today`: what is to be done next, for people and for machines."""

import json

import pytest

from hwsched.cli.command import run


@pytest.fixture
def yard(tmp_path, capsys):
    path = str(tmp_path / "yard.hwsched")
    assert run(["project", "new", path]) == 0
    for mark in ("M1", "M2"):
        assert run(["survey", "add", path, mark, "--who", "ann"]) == 0
    capsys.readouterr()
    return path


def test_people_read_the_counts_by_who_does_it(yard, capsys):
    assert run(["project", "today", yard]) == 0
    told = capsys.readouterr().out.splitlines()
    assert [line for line in told if line[:1].isalpha()] == [
        "Surveyor", "Specifier", "Storekeeper", "Installer", "Levels", "Nothing was released under a letter yet",
    ]  # fmt: skip
    assert told[told.index("Specifier") + 1].split(None, 1) == ["2", "openings to work out"]
    assert "  no building, no level: 2 not worked out" in told


def test_machines_get_what_stands_behind_each_count(yard, capsys):
    assert run(["project", "today", yard, "--json"]) == 0
    result = json.loads(capsys.readouterr().out)["result"]
    (task,) = [each for each in result["tasks"] if each["name"] == "not-worked-out"]
    assert (task["person"], task["count"], task["openings"]) == ("specifier", 2, ["M1", "M2"])
    assert result["since"] is None
    assert run(["release", "revision", yard, "--freeze", "--who", "ann"]) == 0
    assert run(["survey", "add", yard, "M3", "--who", "ann"]) == 0
    capsys.readouterr()
    assert run(["project", "today", yard, "--json"]) == 0
    since = json.loads(capsys.readouterr().out)["result"]["since"]
    assert (since["letter"], since["new"], since["changed"]) == ("A", ["M3"], [])
