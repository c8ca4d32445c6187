"""Openings that the building has no more: out of fit, check, lists, counts and prints, and back with one command."""

from datetime import date

import pytest

from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import open_project
from hwsched.model.queries import opening_ids, read_inputs
from hwsched.model.record_queries import read_packets, read_waivers
from hwsched.model.tables import RUN_TABLE, WAIVER
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.listing import list_rows
from hwsched.operations.lists import LISTS
from hwsched.operations.opening.asked_openings import asked_openings
from hwsched.operations.opening.named_openings import openings_of_marks
from hwsched.operations.opening.scope import Scope
from hwsched.operations.project.history import undo
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.revisions import read_revision
from hwsched.operations.survey.editing import add_opening
from hwsched.operations.survey.retiring import restore_openings, retire_openings, retired_of_marks
from tests.model.states import state

MARK = "M116"
"""On a supply of Mill House, with a fit."""


@pytest.fixture
def project(corner_file):
    with open_project(str(corner_file)) as opened:
        yield opened


def id_of(project, mark=MARK):
    with project.reading() as connection:
        return opening_ids(connection)[mark]


def retire(project, *marks, why=""):
    ids = openings_of_marks(project, marks)
    return retire_openings(project, ids, who="tests", why=why)


def runs(project):
    with project.reading() as connection:
        return {row.id: dict(row._mapping, version=0) for row in connection.execute(RUN_TABLE.select())}


def test_nothing_that_works_on_openings_sees_a_retired_one(project):
    opening = id_of(project)
    view = project_view(project)
    parts = {line.part for each in view.openings if each.mark == MARK for line in each.points[0].fit.parts}
    assert parts
    said = {"scope": "opening", "facts": "f", "person": "keeper", "reason": "seen", "given_on": "2026-01-02"}
    with project.change("waive", "Waive", "tests") as change:
        change.insert(WAIVER, [{"opening_id": opening, "rule": "hand-known", **said}])
    done = retire(project, MARK, why="walled up")
    assert done.openings >= {opening}
    assert [each for each in check_openings(project) if each.given.opening.id == opening] == []
    assert MARK not in {each.mark for each in project_view(project).openings}
    assert MARK not in asked_openings(project, Scope()).marks
    with project.reading() as connection:
        assert MARK not in opening_ids(connection)
        assert list(read_inputs(connection, [opening])) == []
        assert [each for each in read_waivers(connection) if each.opening_id == opening] == []
        assert opening not in read_packets(connection)


def test_no_list_but_its_own_names_a_retired_one(project):
    retire(project, MARK, why="walled up")
    for kind in LISTS:
        # Those that are worked out begin with the same inputs, so that two of them do.
        if kind.by_opening and (kind.query or kind.name in ("fits", "routes")):
            rows = list_rows(kind, str(project.path), lambda: open_project(str(project.path)), ())
            named = [row for row in rows if row.get("mark") == MARK or MARK in (row.get("marks") or ())]
            assert bool(named) == (kind.name == "retired"), kind.name
            if named:
                assert named[0]["reason"] == "walled up"


def test_one_command_brings_it_back_with_all_that_was_decided(project):
    before, laid = project_view(project), runs(project)
    retire(project, MARK)
    assert len(runs(project)) == len(laid) - 1
    restore_openings(project, retired_of_marks(project, [MARK]), who="tests")
    assert runs(project) == laid
    after = project_view(project)
    assert [each.mark for each in after.openings] == [each.mark for each in before.openings]
    was, now = (next(each for each in view.openings if each.mark == MARK) for view in (before, after))
    assert [point.fit for point in was.points] == [point.fit for point in now.points]


def test_undo_takes_it_back_whole(project):
    before = state(project)
    retire(project, MARK, "M016")
    undo(project, who="tests")
    assert state(project) == before


def test_a_revision_leaves_a_retired_opening_out_and_the_one_before_keeps_it(project):
    day = date(2031, 2, 3)
    freeze(project, who="tests", today=day)
    retire(project, MARK)
    freeze(project, who="tests", today=day)
    first, second = ({each.mark for each in read_revision(project, letter).openings} for letter in "AB")
    assert first - second == {MARK}
    assert second < first


def test_a_retired_mark_is_not_given_anew_and_the_refusal_says_how_it_comes_back(project):
    retire(project, MARK)
    with pytest.raises(ValueRefusedError, match=r"is retired; bring it back with: hwsched survey restore"):
        add_opening(project, {"mark": MARK}, who="tests")
    with pytest.raises(MissingRowError, match=r"M116 is retired; to bring back: hwsched survey restore"):
        openings_of_marks(project, [MARK])
    with pytest.raises(MissingRowError, match="M016 is not retired"):
        retired_of_marks(project, ["M016"])
