"""One part at a time: read as it is typed, refused with its reason, written as one step, tried before it is taken."""

import re
from decimal import Decimal

import pytest

from hwsched.model.errors import ConflictError, MissingRowError, NotAllowedError, ValueRefusedError
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.opening.what_if import Question, accept_answer, what_if
from hwsched.operations.parts.hardware_sets import Line, make_set
from hwsched.operations.parts.part_edits import edit_part, part_form
from hwsched.operations.parts.part_form import PartEdit, sections, shown_value, value_of
from hwsched.operations.parts.where_used import where_used
from hwsched.operations.project.history import newest, undo
from hwsched.operations.project.people import add_person
from hwsched.operations.shown import ShownOtherwiseError
from hwsched.operations.survey.own_fields import define_field
from tests.model.states import state
from tests.operations.exact import id_of, small

WHO = "ann"


@pytest.fixture
def yard(tmp_path):
    made = small(tmp_path / "y.hwsched", marks="1234")
    yield made
    made.close()


def held(project, number):
    return part_form(project).catalogue.get(number)


def test_a_part_is_changed_by_what_is_typed_and_taken_back(yard):
    before = state(yard)
    edit_part(yard, PartEdit("CYL", {"length_mm": '1 1/4"', "list_price": "84.50", "stock": "12"}), who=WHO)
    part = held(yard, "CYL")
    # 1 1/4 in is 31.75 mm by the definition of the inch.
    assert (part.attributes["length_mm"], part.list_price, part.stock) == (31.75, Decimal("84.50"), 12.0)
    assert part.attributes["cam_fixing"] == "f2"
    edit_part(yard, PartEdit("CYL", {"stock": "", "thread_diameter_mm": ""}), who=WHO)
    assert held(yard, "CYL").stock is None
    assert "thread_diameter_mm" not in held(yard, "CYL").attributes
    undo(yard, who=WHO)
    undo(yard, who=WHO)
    assert state(yard) == before


def test_a_bare_length_is_in_the_projects_unit(yard):
    edit_part(yard, PartEdit("CYL", {"length_mm": "30"}), who=WHO)
    assert held(yard, "CYL").attributes["length_mm"] == 30.0


REFUSED = [
    ("CYL", {"length_mm": "5 kg"}, "Shell length"),
    ("CYL", {"length_mm": ""}, "Shell length must be filled in"),
    ("CYL", {"length_mm": "900"}, "Shell length"),
    ("CYL", {"description": ""}, "Description must be filled in"),
    ("CYL", {"colour": "red"}, "a part of this kind has no 'colour'"),
    ("CYL", {"superseded_by": "NOSUCH"}, "the catalogue has no part 'NOSUCH'"),
    ("CYL", {"superseded_by": "CYL"}, "it would follow itself"),
    ("CYL", {"kit": "NOSUCH"}, "the catalogue has no part 'NOSUCH'"),
    ("CYL", {"kit": "UNIT*many"}, "'UNIT*many' cannot be read"),
    ("CYL", {"kit": "CYL"}, "it would contain itself"),
    ("NOSUCH", {"stock": "1"}, "the catalogue has no part 'NOSUCH'"),
]


def test_what_cannot_be_is_refused_with_its_field_and_nothing_changes(yard):
    before = state(yard)
    for number, typed, said in REFUSED:
        with pytest.raises(ValueRefusedError, match=re.escape(said)):
            edit_part(yard, PartEdit(number, typed), who=WHO)
    assert state(yard) == before


@pytest.mark.parametrize("count", [0.001, 0.5, 1, 1.5, 2, 12, 9999, 9999.5])
def test_what_is_in_a_box_is_shown_as_it_is_typed(yard, count):
    """One alone is not counted; typed in again as it is shown nothing changes."""
    text = f"CAM; UNIT*{count:g}" if count != 1 else "CAM; UNIT"
    edit_part(yard, PartEdit("CYL", {"kit": text}), who=WHO)
    assert held(yard, "CYL").kit == (("CAM", 1.0), ("UNIT", float(count)))
    assert value_of(held(yard, "CYL"), "kit", {}) == text
    assert edit_part(yard, PartEdit("CYL", {"kit": text}), who=WHO).number is None


@pytest.mark.parametrize("count", ["0", "-1", "10000", "10000.5", "1e9", "inf", "nan", ""])
def test_a_box_has_more_than_none_and_less_than_ten_thousand_of_a_part(yard, count):
    with pytest.raises(ValueRefusedError, match=re.escape(f"'UNIT*{count}' cannot be read")):
        edit_part(yard, PartEdit("CYL", {"kit": f"UNIT*{count}"}), who=WHO)


def test_what_has_nothing_in_its_box_shows_nothing(yard):
    assert value_of(held(yard, "CYL"), "kit", {}) is None


def test_a_circle_of_successors_is_refused_where_it_would_close(yard):
    edit_part(yard, PartEdit("CYL", {"superseded_by": "RIM"}), who=WHO)
    with pytest.raises(ValueRefusedError, match="it would follow itself"):
        edit_part(yard, PartEdit("RIM", {"superseded_by": "CYL"}), who=WHO)


def test_a_copy_keeps_what_is_known_but_not_what_is_the_others(yard):
    define_field(yard, "part", "shelf", "Shelf", "text", who=WHO)
    edit_part(yard, PartEdit("CYL", {"superseded_by": "RIM", "stock": "7", "shelf": "B4", "kit": "CAM*2"}), who=WHO)
    edit_part(yard, PartEdit("CYL-2", {"length_mm": "30mm"}, like="CYL"), who=WHO)
    first, copy = held(yard, "CYL"), held(yard, "CYL-2")
    assert first.kit == (("CAM", 2.0),)
    assert (copy.kind, copy.kit, copy.list_price) == (first.kind, first.kit, first.list_price)
    assert (copy.superseded_by, copy.stock, copy.attributes["length_mm"]) == ("", None, 30.0)
    assert part_form(yard).extra["CYL-2"] == {"shelf": "B4"}
    with pytest.raises(ValueRefusedError, match="CYL-2 is in the catalogue already"):
        edit_part(yard, PartEdit("CYL-2", like="CYL"), who=WHO)


def test_a_new_part_needs_what_its_kind_needs(yard):
    with pytest.raises(ValueRefusedError, match="Height must be filled in"):
        edit_part(yard, PartEdit("RING-9", {"description": "Collar 3 mm"}, kind="collar"), who=WHO)
    with pytest.raises(ValueRefusedError, match="there is no kind of part 'wheel'"):
        edit_part(yard, PartEdit("W-1", {"description": "Wheel"}, kind="wheel"), who=WHO)


def test_a_part_that_others_name_is_not_withdrawn_and_says_who_names_it(yard):
    make_set(yard, "HS-1", [Line("unit", "UNIT")], who=WHO)
    edit_part(yard, PartEdit("RIM", {"superseded_by": "UNIT", "kit": "UNIT"}), who=WHO)
    with pytest.raises(ValueRefusedError) as refused:
        edit_part(yard, PartEdit("UNIT", withdrawn=True), who=WHO)
    for words in ("in the box of RIM", "the successor of RIM", "in the hardware set HS-1"):
        assert words in str(refused.value)
    with pytest.raises(MissingRowError):
        edit_part(yard, PartEdit("NOSUCH", withdrawn=True), who=WHO)


def test_withdrawing_is_taken_back_whole(yard):
    before = state(yard)
    edit_part(yard, PartEdit("GATE", withdrawn=True), who=WHO)
    assert held(yard, "GATE") is None
    undo(yard, who=WHO)
    assert state(yard) == before


def test_two_people_at_one_fact_of_a_part_meet_and_at_two_do_not(yard):
    seen = newest(yard)
    edit_part(yard, PartEdit("CYL", {"length_mm": "30"}), who="bob", base=seen)
    edit_part(yard, PartEdit("CYL", {"cam_offset_mm": "2"}), who=WHO, base=seen)
    with pytest.raises(ConflictError):
        edit_part(yard, PartEdit("CYL", {"length_mm": "35"}), who=WHO, base=seen)
    assert held(yard, "CYL").attributes["length_mm"] == 30.0


def test_storekeepers_edit_parts_and_surveyors_do_not(yard):
    for name, role in (("ann", "specifier"), ("sam", "storekeeper"), ("sue", "surveyor")):
        add_person(yard, name, role, who="ann")
    edit_part(yard, PartEdit("CYL", {"stock": "3"}), who="sam")
    with pytest.raises(NotAllowedError):
        edit_part(yard, PartEdit("CYL", {"stock": "4"}), who="sue")


def test_what_an_edit_changes_is_shown_and_taken_as_one_step(yard):
    """A shell of 110 mm is longer than any leaf is thick: the one cylinder of the catalogue fits no opening then."""
    asked = PartEdit("CYL", {"length_mm": "110"})
    answer = what_if(yard, Question(part=asked))
    assert {(each.mark, each.before, each.after) for each in answer.differences} == {
        (mark, "fits", "does-not-fit") for mark in "1234"
    }
    assert all("CYL" in each.why for each in answer.differences)
    assert held(yard, "CYL").attributes["length_mm"] == 25.4
    steps = newest(yard)
    accept_answer(yard, answer, who=WHO)
    assert held(yard, "CYL").attributes["length_mm"] == 110.0
    assert newest(yard) == steps + 1
    assert not what_if(yard, Question(part=asked)).differences


def test_what_somebody_else_typed_meanwhile_is_not_overwritten_unseen(yard):
    answer = what_if(yard, Question(part=PartEdit("CYL", {"stock": "3"})))
    edit_part(yard, PartEdit("CYL", {"stock": "5"}), who="bob")
    with pytest.raises(ShownOtherwiseError, match="somebody else changed part CYL"):
        accept_answer(yard, answer, who=WHO)
    assert held(yard, "CYL").stock == 5.0


def test_a_price_changes_no_fit_but_what_it_costs(yard):
    (*_, last) = what_if(yard, Question(part=PartEdit("CYL", {"list_price": "250"}))).differences
    assert (last.before, last.after, last.gone, last.new) == ("fits", "fits", (), ())
    # The scenario's cylinder costs 100.
    assert last.cost_after.total - last.cost_before.total == Decimal(150)


def test_what_is_asked_that_cannot_be_is_refused_before_anything_is_worked_out(yard):
    with pytest.raises(ValueRefusedError, match="Shell length"):
        what_if(yard, Question(part=PartEdit("CYL", {"length_mm": ""})))


def test_where_a_part_is_used_by_fits_choices_sets_and_boxes(yard):
    make_set(yard, "HS-1", [Line("unit", "UNIT", 2.0)], who=WHO)
    edit_part(yard, PartEdit("RIM", {"kit": "UNIT*3", "superseded_by": "UNIT"}), who=WHO)
    choose_part(yard, id_of(yard, "2"), "unit", "UNIT", who=WHO)
    use = where_used(yard, "UNIT")
    assert [(each.mark, each.role, each.quantity) for each in use.openings] == [(mark, "unit", 1.0) for mark in "1234"]
    assert [each.by_hand for each in use.openings] == [False, True, False, False]
    # What is chosen for 2 waits for its fit: three openings need one each until then.
    assert [each.in_fit for each in use.openings] == [True, False, True, True]
    assert use.needed == 3.0
    assert (use.sets, use.boxes, use.follows) == ((("HS-1", "unit", 2.0),), (("RIM", 3.0),), ("RIM",))
    assert not where_used(yard, "NOSUCH").used


def test_a_form_asks_each_declared_fact_once_and_shows_what_is_held(yard):
    form = part_form(yard)
    part = form.catalogue.get("CYL")
    asked = [each.name for _, attributes in sections(part.kind, form.own) for each in attributes]
    assert len(asked) == len(set(asked))
    assert {*part.attributes, "list_price", "kit", "superseded_by", "stock", "preferred"} <= set(asked)
    (length,) = (each for _, every in sections(part.kind, ()) for each in every if each.name == "length_mm")
    assert shown_value(part, length, {}, "fraction") == '1"'
