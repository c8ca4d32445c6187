"""`hwsched survey edit --also`: one fact of several openings as one step."""

from pathlib import Path

import pytest

from hwsched.model.project import create_project, open_project
from hwsched.model.queries import read_inputs
from hwsched.operations.survey.editing import add_opening
from tests.cli.answers import answer, result


@pytest.fixture
def yard(tmp_path):
    """Openings 1, 2 and 3; its path."""
    with create_project(tmp_path / "y.hwsched", "Yard", length_style="fraction", bare_unit="in") as project:
        for mark in "123":
            add_opening(project, {"mark": mark}, who="ann")
    return str(tmp_path / "y.hwsched")


def thick(path):
    with open_project(Path(path)) as project, project.reading() as connection:
        return {each.opening.mark: each.leaves[0].thickness_mm for each in read_inputs(connection)}


def test_a_fact_of_several_is_one_step_and_one_undo(yard, capsys):
    edit = ("survey", "edit", yard, "1", "leaf", "thickness_mm", "2", "--also", "3", "--also", "1")
    assert sorted(result(capsys, *edit)["marks"]) == ["1", "3"]
    assert thick(yard) == {"1": 50.8, "2": None, "3": 50.8}
    result(capsys, "project", "undo", yard)
    assert thick(yard) == {"1": None, "2": None, "3": None}


def test_one_that_is_not_there_leaves_all_as_it_was_and_was_is_of_one(yard, capsys):
    edit = ("survey", "edit", yard, "1", "leaf", "thickness_mm", "2", "--also")
    assert not answer(capsys, *edit, "9", status=3)["ok"]
    assert answer(capsys, *edit, "2", "--was", "", status=2)["ok"] is False
    assert set(thick(yard).values()) == {None}
