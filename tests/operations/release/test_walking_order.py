"""The order of a walk: place by place, within each by mark or as the survey went."""

import re

import pytest
from pypdf import PdfReader

from hwsched.cli.command import run
from hwsched.model.project import open_project
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.walking_order import in_walking_order

# As somebody walked: along the corridor of level 1, up, and at last back to a door of level 1 that was overlooked.
WALKED = (("M10", "1"), ("M2", "1"), ("U7", "2"), ("U3", "2"), ("M5", "1"))


@pytest.fixture
def yard(tmp_path):
    path = tmp_path / "yard.hwsched"
    assert run(["project", "new", str(path)]) == 0
    for mark, level in WALKED:
        words = ["survey", "add", str(path), mark, "building=Yard", f"level={level}", "--who", "ann"]
        assert run(words) == 0
    with open_project(path) as project:
        yield project


@pytest.mark.parametrize(
    ("walk", "marks"),
    [("mark", ["M2", "M5", "M10", "U3", "U7"]), ("surveyed", ["M10", "M2", "M5", "U7", "U3"])],
)
def test_within_a_level_by_mark_or_as_the_survey_went(yard, walk, marks):
    view = in_walking_order(yard, project_view(yard), walk)
    assert [each.mark for each in view.openings] == marks


def test_some_of_them(yard):
    some = [each.given.opening.id for each in project_view(yard).openings if each.mark in ("M2", "M10")]
    view = in_walking_order(yard, project_view(yard, some), "surveyed")
    assert [each.mark for each in view.openings] == ["M10", "M2"]


def test_a_later_edit_changes_no_order(yard):
    assert run(["survey", "edit", str(yard.path), "M10", "opening", "room_to", "Loft", "--who", "ann"]) == 0
    assert [each.mark for each in in_walking_order(yard, project_view(yard), "surveyed").openings][:2] == ["M10", "M2"]


def test_the_command_line_prints_in_the_order_that_is_asked(yard, tmp_path, capsys):
    words = ["release", "print", str(yard.path), "bound-packets", "--to"]
    assert run([*words, str(tmp_path / "by-mark")]) == 0
    assert run([*words, str(tmp_path / "as-surveyed"), "--walk", "surveyed"]) == 0
    assert run(["release", "print", str(yard.path), "schedule", "--walk", "surveyed", "--to", str(tmp_path)]) == 2
    assert "--walk goes with bound-packets" in capsys.readouterr().err
    read = {}
    for name in ("by-mark", "as-surveyed"):
        first = PdfReader(tmp_path / name / "bound-packets.pdf").pages[0].extract_text()
        read[name] = re.findall(r"\b[MU]\d+\b", first)
    assert read == {"by-mark": ["M2", "M5", "M10", "U3", "U7"], "as-surveyed": ["M10", "M2", "M5", "U7", "U3"]}
