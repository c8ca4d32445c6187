"""A name that is nearly one that is known is refused with that one beside it, whatever kind of name it is."""

from pathlib import Path

import pytest

from hwsched.model.project import open_project
from hwsched.model.queries import opening_ids
from tests.cli.answers import answer


@pytest.fixture
def known(corner_file):
    """Path of a project, one of its marks and one of its parts."""
    with open_project(Path(corner_file)) as project, project.reading() as connection:
        marks = opening_ids(connection)
        parts = sorted(project.catalogue.read(connection).parts)
    return str(corner_file), sorted(marks)[0], parts[0]


@pytest.mark.parametrize(
    ("line", "near"),
    [
        ("survey edit {file} {mark} leaf thicknes_mm 45", "thickness_mm"),
        ("survey edit {file} {mark} leaf thickness 45", "thickness_mm"),
        ("survey edit {file} {mark} opening Fire-rating 60", "rating"),
        ("opening choose {file} {mark} cylinder {part}x", "{part}"),
        ("parts withdraw {file} {part}x", "{part}"),
        ("parts used {file} {part}x", "{part}"),
        ("parts edit {file} {part}x list_price=3", "{part}"),
        ("findings waive {file} known-before-ordr {mark} --person A --reason seen", "known-before-order"),
        ("opening what-if {file} --off known-before-ordr", "known-before-order"),
    ],
)
def test_a_slip_is_refused_with_the_name_that_is_near(known, capsys, line, near):
    file, mark, part = known
    words = [word.format(file=file, mark=mark, part=part) for word in line.split()]
    problems = answer(capsys, *words, status=3)["problems"]
    assert f"nearest: {near.format(part=part)}" in problems[0]["message"]
