"""What an opening takes from its level or building, and rooms without a way out: who is touched, and what is shown."""

import pytest
from openpyxl import load_workbook

from hwsched.model import errors
from hwsched.model.queries import read_inputs, read_places
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening.asked_openings import asked_openings
from hwsched.operations.opening.named_openings import row_of
from hwsched.operations.opening.scope import Scope
from hwsched.operations.power.power_import import import_power
from hwsched.operations.project.history import redo, undo
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.revisions import read_revision, revisions
from hwsched.operations.survey.editing import add_opening, edit_facts, remove
from hwsched.operations.survey.expected import Expected
from hwsched.operations.survey.places import otherwise_closed, otherwise_placed
from hwsched.operations.survey.survey_forms import write_form
from hwsched.operations.survey.typed_values import type_in
from hwsched.rules import judge, rule_named
from hwsched.values import Fit
from tests.exchange.powers import write_power
from tests.model.backends import furnished
from tests.model.states import state
from tests.operations.release.test_freezing import TODAY, same_both_ways

WHO = "ann"


@furnished
def doors(project):
    """Two on level 1 of the Mill, one on level 2, one in another building, one of which nobody knows the building."""
    places = {"1": ("Mill", "1"), "2": ("Mill", "1"), "3": ("Mill", "2"), "4": ("Store", "1"), "5": (None, None)}
    return {
        mark: add_opening(project, {"mark": mark, "building": building, "level": level}, who=WHO)[1]
        for mark, (building, level) in places.items()
    }


def held(project, name):
    with project.reading() as connection:
        return {given.opening.mark: getattr(given.opening, name) for given in read_inputs(connection)}


def say(project, mark, where, name, text, **more):
    entity, row = row_of(project, mark, where)
    return type_in(project, entity, row, name, text, who=WHO, **more)


def test_a_level_s_word_goes_before_its_building_s_and_an_opening_s_before_both(project, doors):
    changes = say(project, "1", "building", "occupancy_group", "business")
    assert changes.openings == {doors["1"], doors["2"], doors["3"]}
    assert held(project, "occupancy_group") == {"1": "B", "2": "B", "3": "B", "4": None, "5": None}
    assert say(project, "2", "level", "occupancy_group", "Assembly").openings == {doors["1"], doors["2"]}
    assert held(project, "occupancy_group") == {"1": "A", "2": "A", "3": "B", "4": None, "5": None}
    say(project, "2", "opening", "occupancy_group", "S")
    assert held(project, "occupancy_group") == {"1": "A", "2": "S", "3": "B", "4": None, "5": None}
    # A no is a word too, and no gap that a building's yes would fill.
    say(project, "1", "building", "sprinkler", "yes")
    say(project, "3", "opening", "sprinkler", "no")
    assert held(project, "sprinkler") == {"1": True, "2": True, "3": False, "4": None, "5": None}


def test_it_is_taken_back_and_done_again_like_every_fact(project, doors):
    before = state(project)
    say(project, "1", "building", "code", "IBC")
    after = state(project)
    undo(project, who=WHO)
    assert state(project) == before
    assert set(held(project, "code").values()) == {None}
    redo(project, who=WHO)
    assert state(project) == after
    assert held(project, "code")["3"] == "ibc"


def test_an_edit_of_what_another_person_has_said_since_is_a_conflict(project, doors):
    entity, row = row_of(project, "1", "building")
    base = say(project, "1", "building", "occupant_load", "40").number
    say(project, "1", "building", "occupant_load", "60")
    edit_facts(project, entity, row, {"sprinkler": True}, who="ben", base=base)
    with pytest.raises(errors.ConflictError, match="Occupant load of Mill"):
        edit_facts(project, entity, row, {"occupant_load": 10}, who="ben", base=base)


def test_what_is_seen_at_an_opening_is_what_it_takes(project, doors):
    say(project, "1", "building", "code", "IBC")
    entity, row = row_of(project, "1", "opening")
    edit_facts(project, entity, row, {"code": "both"}, who=WHO, was={"code": Expected("IBC", "ibc")})
    assert held(project, "code")["1"] == "both"
    with pytest.raises(errors.ConflictError):
        edit_facts(project, entity, row, {"code": "other"}, who=WHO, was={"code": Expected("IBC", "ibc")})


def test_what_a_place_does_not_say_and_cannot_lose(project, doors):
    with pytest.raises(errors.MissingRowError, match="5 has no building"):
        say(project, "5", "building", "code", "IBC")
    with pytest.raises(errors.ValueRefusedError, match="no such fact"):
        say(project, "1", "building", "hand", "LH")
    with pytest.raises(errors.ValueRefusedError):
        say(project, "1", "building", "code_edition", "85")
    entity, row = row_of(project, "1", "level")
    with pytest.raises(errors.ValueRefusedError, match="goes with its last opening"):
        remove(project, entity, row, who=WHO)


def test_openings_are_asked_for_by_what_holds_there(project, doors):
    say(project, "1", "building", "occupancy_group", "B")
    say(project, "3", "level", "occupancy_group", "A")
    assert asked(project, "occupancy_group = B") == ["1", "2"]
    assert asked(project, "occupancy_group = A") == ["3"]


def asked(project, text):
    return [*asked_openings(project, Scope(where=text)).marks]


def test_a_revision_holds_what_held_then_and_a_later_one_what_holds_then(project, doors):
    say(project, "1", "building", "access_policy", "staff keys")
    first = freeze(project, who=WHO, today=TODAY)
    say(project, "1", "building", "access_policy", "staff keys, events kept")
    second = freeze(project, who=WHO, today=TODAY)
    then = [
        {each.mark: each.given.opening.access_policy for each in read_revision(project, made.letter).openings}
        for made in (first, second)
    ]
    assert [each["3"] for each in then] == ["staff keys", "staff keys, events kept"]
    assert [each["4"] for each in then] == [None, None]


def test_the_form_asks_what_the_building_knows_of_the_building_alone(project, doors, tmp_path):
    say(project, "1", "building", "occupancy_group", "B")
    say(project, "1", "opening", "occupant_load", "12")
    say(project, "1", "opening", "form", "single")
    write_form(project, tmp_path / "form.xlsx", ids=[doors["1"]])
    sheet = load_workbook(tmp_path / "form.xlsx")["Openings"]
    cells = {cell.value: sheet.cell(3, cell.column) for cell in sheet[2]}
    at = {label.split(" [")[0]: cell for label, cell in cells.items() if label}
    assert at["Occupancy group"].value is None
    assert at["Occupancy group"].fill.fill_type == "lightUp"
    assert at["Occupant load"].value == 12
    # No rule reads of a single door which leaf closes first, nor who connects a lift.
    assert at["Leaf that closes first"].fill.fill_type == "lightUp"
    assert at["Who connects the controller"].fill.fill_type == "lightUp"
    assert at["Fire rating"].fill.fill_type is None


BUILDINGS = (
    {"Building": "Mill", "Level": None, "Code in force": "IBC", "Occupancy group": "B", "Occupant load": 40},
    {"Building": "Mill", "Level": "2", "Occupancy group": "assembly"},
    {"Building": "Shed", "Code in force": "NFPA 101"},
)


def test_a_workbook_s_sheet_says_it_of_buildings_and_levels(project, doors, tmp_path):
    path = write_power(tmp_path / "power.xlsx", Buildings=BUILDINGS)
    before = state(project)
    done = import_power(project, path, who=WHO)
    assert done.rows["buildings"] == 3
    assert held(project, "occupancy_group") == {"1": "B", "2": "B", "3": "A", "4": None, "5": None}
    assert held(project, "occupant_load")["3"] == 40
    assert import_power(project, path, who=WHO).changes.number is None
    undo(project, who=WHO)
    assert state(project) == before


def test_places_are_read_in_the_order_in_which_they_are_asked(project, doors):
    with project.reading() as connection:
        places = read_places(connection)
    assert [(each.entity, each.name) for each in places[doors["3"]]] == [("level", "2"), ("building", "Mill")]
    assert places[doors["5"]] == ()


def looked(project):
    return {each.given.opening.id: each for each in check_openings(project)}


def test_openings_are_looked_at_again_when_their_place_says_something_else(project, doors):
    known = looked(project)
    assert otherwise_placed(project, known) == set()
    say(project, "3", "level", "sprinkler", "yes")
    assert otherwise_placed(project, known) == {doors["3"]}


ROOM = {"form": "single", "egress": "none", "room_to": "Store", "room_from": "Hall"}


def closed(project):
    with project.reading() as connection:
        every = list(read_inputs(connection))
        # Of one opening alone it is told from fewer doors.
        alone = [each for given in every for each in read_inputs(connection, [given.opening.id])]
        assert [each.closed_rooms for each in alone] == [given.closed_rooms for given in every]
    return {g.opening.mark: g.closed_rooms for g in every if g.closed_rooms}


def test_a_room_without_a_way_out_is_found_on_its_own_level(project, doors):
    edit_facts(project, "opening", doors["1"], ROOM, who=WHO)
    assert closed(project) == {"1": ("room_to", "room_from")}
    # A second door of the room, on the same level, through which people leave.
    edit_facts(project, "opening", doors["2"], {**ROOM, "room_from": "Yard", "egress": "egress"}, who=WHO)
    assert closed(project) == {"1": ("room_from",)}
    # Of a door whose role nobody knows it is not said that it is no way out.
    edit_facts(project, "opening", doors["2"], {"egress": None}, who=WHO)
    assert closed(project) == {"1": ("room_from",)}
    # A room of that name on another level, or in another building, is another room.
    edit_facts(project, "opening", doors["2"], {"egress": "none", "level": "2"}, who=WHO)
    edit_facts(project, "opening", doors["4"], {**ROOM, "egress": "egress"}, who=WHO)
    assert closed(project) == {"1": ("room_to", "room_from"), "2": ("room_to", "room_from")}
    edit_facts(project, "opening", doors["1"], {"form": "cabinet"}, who=WHO)
    assert closed(project) == {"2": ("room_to", "room_from")}
    (only,) = [g for g in looked(project).values() if g.given.opening.mark == "2"]
    assert "opening.no_exit_confirmed" not in {need for f in only.findings for need in f.needs}


def test_the_only_door_of_a_room_is_asked_about(project, doors):
    edit_facts(project, "opening", doors["5"], ROOM, who=WHO)
    with project.reading() as connection:
        (given,) = read_inputs(connection, [doors["5"]])
    (said,) = judge(rule_named("room-way-out"), given, Fit("to-measure"), settings=given.settings)
    assert said.needs == ("opening.no_exit_confirmed",)


@pytest.mark.parametrize(
    "edit",
    [
        {"egress": "egress"},
        {"room_to": "Elsewhere"},
        {"level": "2"},
        {"building": "Store"},
        {"form": "cabinet"},
    ],
)
def test_openings_are_looked_at_again_when_a_neighbour_decides_on_their_room(project, doors, edit):
    """Whatever makes the others otherwise is found by what the neighbour was and is; so is a revision's."""
    for mark in ("1", "2"):
        edit_facts(project, "opening", doors[mark], {**ROOM, "room_from": f"Hall {mark}"}, who=WHO)
    edit_facts(project, "opening", doors["3"], {**ROOM, "level": "1", "egress": "egress", "room_from": "Yard"}, who=WHO)
    freeze(project, who=WHO, today=TODAY)
    (base,) = revisions(project)
    known = looked(project)
    turned = {"egress": "none"} if edit == {"egress": "egress"} else edit
    changes = edit_facts(project, "opening", doors["3"], turned, who=WHO)
    found = otherwise_closed(project, known, changes.openings)
    now = looked(project)
    truly = {each for each in known if now[each].given.closed_rooms != known[each].given.closed_rooms}
    assert truly >= {doors["1"], doors["2"]}
    assert found == truly
    same_both_ways(project, base)
