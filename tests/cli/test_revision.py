"""Revisions on the command line: frozen, listed, shown, compared."""

import pytest

from hwsched.cli.command import run
from hwsched.model.project import open_project
from hwsched.model.queries import opening_ids
from hwsched.operations.survey.editing import edit_facts
from tests.cli.answers import result
from tests.operations.exact import small


@pytest.fixture
def yard(tmp_path):
    small(tmp_path / "y.hwsched").close()
    return str(tmp_path / "y.hwsched")


def told(capsys, *words):
    capsys.readouterr()
    assert run(["release", "revision", *words]) == 0
    return capsys.readouterr().out


def answered(capsys, *words):
    """Return what was asked for; the others of the answer are null."""
    found = result(capsys, "release", "revision", *words)
    (asked,) = (each for each in found.values() if each is not None)
    return asked


def rate(yard, mark):
    with open_project(yard) as project:
        with project.reading() as connection:
            opening = opening_ids(connection)[mark]
        edit_facts(project, "opening", opening, {"rating": "90"}, who="ann")


def test_freeze_list_show_compare(yard, capsys):
    assert "No revision yet" in told(capsys, yard)
    made = answered(capsys, yard, "--freeze", "--purpose", "for approval", "--who", "ann")
    assert (made["letter"], made["opening_count"]) == ("A", 3)
    assert made["content_count"] > 3
    rate(yard, "2")
    assert "Revision C: 1 opening frozen" in told(capsys, yard, "--freeze", "c", "--mark", "2")
    first, second = answered(capsys, yard)
    assert (first["letter"], first["who"], first["purpose"]) == ("A", "ann", "for approval")
    assert first["scope"] == {"building": None, "level": None, "marks": []}
    assert (second["letter"], second["purpose"]) == ("C", None)
    assert second["scope"] == {"building": None, "level": None, "marks": ["2"]}
    shown = told(capsys, yard)
    assert "the whole project · for approval" in shown
    assert "openings 2" in shown
    then = answered(capsys, yard, "--show", "A", "2")
    assert (then["opening"]["rating"], then["points"][0]["fit"]["status"]) == ("none", "fits")
    assert answered(capsys, yard, "--show", "C", "2")["opening"]["rating"] == "90"
    assert "rating none" in told(capsys, yard, "--show", "A", "2")
    found = answered(capsys, yard, "--compare", "A")
    assert [each["mark"] for each in found["openings"]] == ["2"]
    assert (found["before"], found["after"], found["same_count"]) == ("A", "present", 2)
    assert found["openings"][0]["facts"] == [{"what": "Opening: Fire rating", "before": "Not rated", "after": "90 min"}]
    shown = told(capsys, yard, "--compare", "A")
    assert "1 opening is otherwise, 2 are the same" in shown
    assert "Opening: Fire rating: Not rated -> 90 min" in shown
    assert run(["project", "undo", yard]) == 0
    assert [each["letter"] for each in answered(capsys, yard)] == ["A"]


def test_without_a_revision_the_list_is_empty_and_not_missing(yard, capsys):
    assert result(capsys, "release", "revision", yard)["revisions"] == []


@pytest.mark.parametrize(
    "words",
    [
        ["--compare", "A", "B", "C"],
        ["--purpose", "for approval"],
        ["--mark", "1"],
        ["--freeze", "--level", "1"],
        ["--freeze", "--show", "A", "1"],
        ["--show", "A"],
    ],
)
def test_wrong_usage(yard, words):
    assert run(["release", "revision", yard, *words]) == 2


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--freeze", "O"], "letter"),
        (["--freeze", "--building", "Nowhere"], "no opening in Nowhere"),
        (["--show", "Z", "1"], "there are: A"),
        (["--show", "A", "99"], "has no opening 99"),
        (["--compare", "B"], "no revision B"),
    ],
)
def test_what_there_is_not(yard, words, said, capsys):
    assert run(["release", "revision", yard, "--freeze"]) == 0
    capsys.readouterr()
    assert run(["release", "revision", yard, *words]) == 3
    assert said in capsys.readouterr().err
