"""`hwsched release gate`: what may go out, and what is missing at what may not."""

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


def test_the_gate_says_what_is_missing(yard, capsys):
    assert run(["release", "gate", yard]) == 0
    told = capsys.readouterr().out.splitlines()
    assert told[0] == "0 of 2 openings may be picked for and installed"
    assert told[1] == "M1: held"
    assert told[2].startswith("  no fit counts: ")
    assert run(["release", "gate", yard, "--mark", "M2", "--json"]) == 0
    (only,) = json.loads(capsys.readouterr().out)["result"]
    assert (only["mark"], only["free"]) == ("M2", False)
    assert only["missing"]


def test_what_is_held_does_not_go_out_and_is_named(yard, capsys, tmp_path):
    assert run(["release", "print", yard, "packets", "--to", str(tmp_path), "--issue", "--who", "ann"]) == 0
    told = capsys.readouterr().out
    assert "Written down as given out: 0 packets" in told
    assert "Held, see hwsched release gate: M1, M2" in told
