"""`hwsched survey retire` and `restore`: out of every list, and back with one command."""

from hwsched.cli.command import run
from tests.cli.answers import answer


def marks(capsys, project, what="openings"):
    return [row["mark"] for row in answer(capsys, "survey", "list", project, what)["result"]["rows"]]


def test_retired_and_brought_back(tmp_path, capsys):
    project = str(tmp_path / "p.hwsched")
    assert run(["project", "new", project]) == 0
    for mark in ("101", "102"):
        assert run(["survey", "add", project, mark]) == 0
    told = answer(capsys, "survey", "retire", project, "101", "--why", "walled up")
    assert told["result"]["marks"] == ["101"]
    assert (marks(capsys, project), marks(capsys, project, "retired")) == (["102"], ["101"])
    refused = answer(capsys, "survey", "edit", project, "101", "opening", "hand", "LH", status=3)
    assert "101 is retired" in refused["problems"][0]["message"]
    told = answer(capsys, "survey", "restore", project, "101")
    assert told["result"]["marks"] == ["101"]
    assert (marks(capsys, project), marks(capsys, project, "retired")) == (["101", "102"], [])
    assert (
        answer(capsys, "survey", "restore", project, "101", status=3)["problems"][0]["message"] == "101 is not retired"
    )
