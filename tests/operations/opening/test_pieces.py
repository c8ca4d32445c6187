"""Pieces: what a fit has in hand, what is written down of each, and what stays on record of those that are gone.

By hand, as in `test_lock_points`: of the usual fit the cylinder, the cam, the collar and the unit are told apart; the
six cells of the unit are a lot, and what is brought along is no piece.
"""

import pytest

from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.opening.pieces import piece_named, pieces, pieces_by_opening, record_piece, write_issued
from hwsched.operations.parts.where_used import where_used
from hwsched.operations.project.history import history, undo
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.editing import remove
from hwsched.values.piece import ISSUED, PLANNED
from tests.model.states import state
from tests.operations.exact import id_of, small
from tests.operations.locked import points_of
from tests.operations.locked import yard as locked_yard
from tests.operations.powered import WHO


@pytest.fixture
def yard(tmp_path):
    with small(tmp_path / "y.hwsched", marks="12") as made:
        yield made


def of(project, mark="1"):
    return pieces(project, id_of(project, mark))


def record(project, name, mark="1", **what):
    return record_piece(project, id_of(project, mark), piece_named(of(project, mark), name).id, who=WHO, **what)


def issue(project, *marks):
    checked = check_openings(project, [id_of(project, mark) for mark in marks])
    with project.change("issue", "Packets", WHO) as change:
        write_issued(change, [(each.given.opening.id, each.points) for each in checked])


def test_pieces_follow_from_the_fit(yard):
    found = {(each.role, each.part): each for each in of(yard)}
    assert {("cylinder", "CYL"), ("cam", "CAM"), ("unit", "UNIT"), ("battery", "CELL")} <= set(found)
    assert not [role for role, _ in found if role == "tool"]
    assert (found["battery", "CELL"].quantity, found["unit", "UNIT"].quantity) == (6, 1)
    for each in found.values():
        assert (each.number, each.serial, each.lot, each.state, each.in_fit, each.version) == (
            1,
            "",
            "",
            PLANNED,
            True,
            0,
        )
    assert not {each.id for each in of(yard)} & {each.id for each in of(yard, "2")}


def test_serial_number_and_lot_are_written_down_and_taken_back(yard):
    before = state(yard)
    changes = record(yard, "unit", serial=" SN  7 ")
    assert (changes.openings, changes.entities) == ({id_of(yard, "1")}, {"assigned_part"})
    assert changes.number == history(yard)[-1].number
    assert history(yard)[-1].summary == "Record UNIT, unit of 1"
    record(yard, "unit", lot="L1")
    unit = piece_named(of(yard), "unit")
    assert (unit.serial, unit.lot, unit.state) == ("SN 7", "L1", PLANNED)
    # What is left out stays; an empty text takes it away, and of what nothing is known no row is kept.
    record(yard, "unit", serial="")
    assert (piece_named(of(yard), "unit").serial, piece_named(of(yard), "unit").lot) == ("", "L1")
    record(yard, "unit", lot="")
    assert state(yard) == before
    assert record(yard, "unit", lot=" ").number is None
    undo(yard, who=WHO)
    assert piece_named(of(yard), "unit").lot == "L1"


def test_a_serial_number_is_given_once_a_part(yard):
    record(yard, "unit", serial="7")
    before = state(yard)
    with pytest.raises(ValueRefusedError, match="7 is the serial number of the unit UNIT of 1 already"):
        record(yard, "unit", mark="2", serial="7")
    assert state(yard) == before
    # Another part may have it, and the piece itself may be told the same again.
    record(yard, "cylinder", mark="2", serial="7")
    assert record(yard, "unit", serial="7").number is None
    record(yard, "unit", mark="2", serial="8")


def test_what_the_fit_has_no_longer_stays_on_record(yard):
    record(yard, "unit", serial="7")
    choose_part(yard, id_of(yard, "1"), "unit", "EDGE", who=WHO)
    fit_openings(yard, who=WHO)
    units = {each.part: each for each in of(yard) if each.role == "unit"}
    assert set(units) == {"UNIT", "EDGE"}
    assert (units["UNIT"].in_fit, units["UNIT"].serial, units["EDGE"].in_fit) == (False, "7", True)
    assert of(yard)[-1] == units["UNIT"]
    record(yard, "unit/UNIT", serial="")
    assert [each.part for each in of(yard) if each.role == "unit"] == ["EDGE"]


def test_what_went_out_keeps_its_quantity(yard):

    def screws(count):
        choose_part(yard, id_of(yard, "1"), "consumable", "SCREW", quantity=count, who=WHO)
        fit_openings(yard, who=WHO)
        return piece_named(of(yard), "consumable/SCREW").quantity

    assert (screws(3.0), screws(4.0)) == (3.0, 4.0)
    issue(yard, "1")
    assert {each.state for each in of(yard)} == {ISSUED}
    assert {each.state for each in of(yard, "2")} == {PLANNED}
    assert screws(5.0) == 4.0
    issue(yard, "1")
    assert piece_named(of(yard), "consumable/SCREW").quantity == 5.0
    # It went out: that is known of it, though no number is.
    record(yard, "unit", serial="7")
    record(yard, "unit", serial="")
    assert piece_named(of(yard), "unit").state == ISSUED


def test_of_many_openings_as_of_one(yard):
    record(yard, "unit", serial="7")
    checked = check_openings(yard)
    assert pieces_by_opening(yard, checked) == {id_of(yard, mark): of(yard, mark) for mark in "12"}


def test_pieces_are_named_by_role_part_number_and_lock(tmp_path):
    with locked_yard(tmp_path) as project:
        found, points = of(project, "101"), points_of(project, "101")
        for name in ("unit", " unit / UNIT ", "unit/UNIT#1", "unit#1"):
            assert piece_named(found, name).point_id == points["lock"]
            assert piece_named(found, name, points["deadbolt"]).point_id == points["deadbolt"]
        for name in ("unit#2", "unit/EDGE", "hat", ""):
            with pytest.raises(ValueRefusedError, match=r"'.*' is (none|more than one) of .*unit/UNIT#1"):
                piece_named(found, name)
        with pytest.raises(ValueRefusedError, match="none of no piece"):
            piece_named((), "unit")


def test_what_there_is_not(yard):
    opening = id_of(yard, "1")
    with pytest.raises(MissingRowError, match="no such piece"):
        record_piece(yard, opening, piece_named(of(yard, "2"), "unit").id, who=WHO, serial="7")
    remove(yard, "opening", opening, who=WHO)
    with pytest.raises(MissingRowError, match="not in the project any more"):
        pieces(yard, opening)


# --- what was done at the bench -------------------------------------------------------------------------------------


def piece(project, name, mark="1"):
    return piece_named(of(project, mark), name)


def test_bench_work_is_on_record_per_piece_and_taken_back_by_undo(yard):
    before = state(yard)
    record(yard, "unit", done=("tested", "programmed"))
    # In the order in which it is done, whatever the order in which it is told.
    assert piece(yard, "unit").done == ("programmed", "tested")
    assert piece(yard, "unit", "2").done == ()
    assert piece(yard, "cylinder").done == ()
    record(yard, "unit", done=("built",))
    assert piece(yard, "unit").done == ("built",)
    undo(yard, who=WHO)
    assert piece(yard, "unit").done == ("programmed", "tested")
    undo(yard, who=WHO)
    assert state(yard) == before


def test_bench_work_and_serial_number_do_not_touch_each_other(yard):
    record(yard, "unit", done=("built",))
    record(yard, "unit", serial="S-1")
    assert (piece(yard, "unit").done, piece(yard, "unit").serial) == (("built",), "S-1")
    record(yard, "unit", done=())
    assert (piece(yard, "unit").done, piece(yard, "unit").serial) == ((), "S-1")
    record(yard, "unit", serial="")
    assert piece(yard, "unit").version == 0  # nothing is known of it any more


def test_what_went_out_keeps_what_was_done_to_it(yard):
    record(yard, "unit", done=("built", "programmed", "tested"))
    issue(yard, "1")
    assert (piece(yard, "unit").state, piece(yard, "unit").done) == (ISSUED, ("built", "programmed", "tested"))
    assert piece(yard, "battery").state == ISSUED
    assert where_used(yard, "UNIT").issued == 1


@pytest.mark.parametrize(
    ("name", "work"), [("cam", "built"), ("cylinder", "programmed"), ("battery", "tested"), ("unit", "polished")]
)
def test_what_is_not_done_to_such_a_piece_is_refused(yard, name, work):
    with pytest.raises(ValueRefusedError, match=work):
        record(yard, name, done=(work,))
    assert piece(yard, name).done == ()


def test_the_view_says_what_was_done_by_lock_point(yard):
    record(yard, "unit", done=("programmed",))
    record(yard, "cylinder", mark="2", done=("built",))
    views = {each.mark: each for each in project_view(yard).openings}
    points = {mark: views[mark].given.point.id for mark in views}
    assert views["1"].bench == {(points["1"], "unit", "programmed")}
    assert views["2"].bench == {(points["2"], "cylinder", "built")}
