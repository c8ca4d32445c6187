"""What is different between two states: what a person changed, and what followed from it."""

from dataclasses import replace

import pytest

from hwsched.model.errors import MissingRowError
from hwsched.model.power_queries import read_power
from hwsched.model.queries import read_inputs
from hwsched.model.tables import OPENING_TABLE
from hwsched.operations.findings.waivers import waive
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.parts.cost_terms import set_terms
from hwsched.operations.power.connecting import connect_openings
from hwsched.operations.power.power_editing import edit_power_row, remove_power_row
from hwsched.operations.project.history import undo
from hwsched.operations.project.settings import set_settings
from hwsched.operations.release.changed_lines import Changed
from hwsched.operations.release.document_differences import document_differences
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.revision_differences import differences
from hwsched.operations.survey.editing import add_item, edit_facts, remove
from hwsched.values.revision import Scope
from tests.model.states import state
from tests.operations.exact import TODAY, id_of, small
from tests.operations.powered import circuit, closet, door, more_parts
from tests.rules.scenario import catalogue

WHO = "ann"


@pytest.fixture
def yard(tmp_path):
    made = small(tmp_path / "y.hwsched")
    freeze(made, who=WHO, today=TODAY)
    yield made
    made.close()


def compared(project, before="A", after=None):
    return differences(project, before, after, today=TODAY)


def only(found):
    (opening,) = found.openings
    return opening


def test_nothing_is_different(yard):
    found = compared(yard)
    assert (found.before, found.after, found.openings, found.others, found.same) == ("A", "present", (), (), 3)


def test_comparing_writes_nothing(yard):
    edit_facts(yard, "opening", id_of(yard, "1"), {"rating": "90"}, who=WHO)
    before = state(yard)
    assert compared(yard).openings
    assert state(yard) == before


def test_a_fact_and_what_follows_from_it(yard):
    """A rating of 90 min: the fit no longer belongs to the facts, and is told as not worked out."""
    edit_facts(yard, "opening", id_of(yard, "2"), {"rating": "90"}, who=WHO)
    found = compared(yard)
    opening = only(found)
    assert (opening.mark, opening.kind, found.same) == ("2", "changed", 2)
    assert opening.facts == (Changed("Opening: Fire rating", "Not rated", "90 min"),)
    assert Changed("State", "fits", "not worked out") in opening.place
    assert {line.after for line in opening.parts} == {""}


def test_a_part_chosen_by_hand_changes_parts_holes_and_place(yard):
    choose_part(yard, id_of(yard, "1"), "unit", "EDGE", who=WHO)
    fit_openings(yard, who=WHO)
    opening = only(compared(yard))
    assert opening.facts == (Changed("Chosen unit EDGE", "", "1, by hand"),)
    assert Changed("unit UNIT", "1", "") in opening.parts
    assert Changed("unit EDGE", "", "1") in opening.parts
    assert any(line.what == "Unit" and "edge" in line.after for line in opening.place)
    assert any(line.after.startswith("1 × pocket") for line in opening.holes)
    assert opening.findings
    documents = {each.name: each.marks for each in document_differences(yard, compared(yard))}
    # Its own sheets by its mark; what is one for the project counts the other unit, and has no marks.
    assert (documents["packets"], documents["schedule"], documents["pick-list"]) == (("1",), (), ())


def test_a_leaf_an_item_and_the_unknown(yard):
    with yard.reading() as connection:
        given = next(read_inputs(connection, [id_of(yard, "1")]))
    edit_facts(yard, "leaf", given.leaves[0].id, {"thickness_mm": None}, who=WHO)
    remove(yard, "existing_item", given.items[0].id, who=WHO)
    add_item(yard, given.opening.id, {"kind": "closer"}, who=WHO)
    facts = only(compared(yard)).facts
    thickness = next(line for line in facts if line.what.endswith("Leaf thickness"))
    assert (thickness.before, thickness.after) == ("44.5 mm", "unknown")
    assert Changed("Existing item, lock", "there", "") in facts
    assert Changed("Existing item, closer", "", "there") in facts


def test_what_reads_alike_is_told_to_the_last_digit(yard):
    """Shown is a tenth of a millimetre; 0.02 mm more is another backset all the same, and the holes move with it."""
    with yard.reading() as connection:
        given = next(read_inputs(connection, [id_of(yard, "1")]))
    edit_facts(yard, "leaf", given.leaves[0].id, {"width_mm": 914.44}, who=WHO)
    edit_facts(yard, "existing_item", given.items[0].id, {"backset_mm": 69.87}, who=WHO)
    fit_openings(yard, who=WHO)
    opening = only(compared(yard))
    told = {line.what: (line.before, line.after) for line in opening.lines}
    assert told["Leaf: Leaf width"] == ("914.4 mm", "914.44 mm")
    assert told["Existing item, lock: Backset"] == ("69.85 mm", "69.87 mm")
    assert told["1. access hole for the lead: x mm"] == ("69.85", "69.87")
    assert all(line.before != line.after for line in opening.lines)


def test_a_waiver_is_a_difference_of_its_finding(yard):
    waive(yard, "case-offset-taken", person="p", reason="seen", who=WHO, opening_id=id_of(yard, "3"), today=TODAY)
    opening = only(compared(yard))
    (line,) = opening.findings
    assert line.what == "Lock case taken as centred, lock"
    assert line.before.startswith("note: ")
    assert line.after.startswith(line.before)
    assert "waived by p" in line.after
    assert (opening.facts, opening.parts, opening.place, opening.holes) == ((), (), (), ())


def test_openings_that_came_and_went(yard):
    door(yard, "4", power_wish=None)
    remove(yard, "opening", id_of(yard, "1"), who=WHO)
    edit_facts(yard, "opening", id_of(yard, "2"), {"mark": "22"}, who=WHO)
    found = compared(yard)
    assert {(each.mark, each.kind) for each in found.openings} == {("1", "gone"), ("22", "changed"), ("4", "new")}
    assert found.same == 1
    renamed = next(each for each in found.openings if each.mark == "22")
    assert renamed.facts == (Changed("Opening: Mark", "2", "22"),)


def test_what_is_one_for_the_whole_project(yard):
    set_settings(yard, who=WHO, limits={"battery-life.days": 400.0}, rules_off={"tool-known": True})
    set_terms(yard, who=WHO, currency="USD", labour_per_hour="80")
    more_parts(yard, replace(catalogue().get("CAM"), list_price=12), replace(catalogue().get("CAM"), number="CAM-9"))
    others = {line.what: (line.before, line.after) for line in compared(yard).others}
    assert others["Limit battery-life.days"] == ("", "400")
    assert others["Rules off"] == ("", "tool-known")
    assert others["Currency"] == ("", "USD")
    assert others["Part CAM: List price"] == ("10", "12")
    assert others["Part CAM-9"] == ("", "there")
    assert len(others) == 6


def test_circuits(yard):
    supply = closet(yard)
    connect_openings(yard, circuit(yard, supply), [id_of(yard, "1")], who=WHO, length_m=9.0)
    found = compared(yard)
    assert Changed("Supply PS1", "", "there") in found.others
    assert any(line.what == "Fed by" for line in only(found).facts)
    (new,) = found.circuits
    assert (new.name, new.kind) == ("PS1 · C1", "new")


def test_what_a_circuit_feeds_and_its_runs(yard):
    supply = closet(yard)
    line = circuit(yard, supply)
    connect_openings(yard, line, [id_of(yard, "1")], who=WHO, length_m=9.0)
    freeze(yard, who=WHO, today=TODAY)
    connect_openings(yard, line, [id_of(yard, "2")], who=WHO, length_m=12.0)
    found = compared(yard, "B")
    (otherwise,) = found.circuits
    lines = {each.what: (each.before, each.after) for each in otherwise.lines}
    assert lines["Opening 2"] == ("", "on it")
    # Its conductor is that of the circuit.
    assert lines["Run supply to 2"] == ("", "12 m, 18 AWG str, WIRE")
    assert "Opening 1" not in lines
    assert found.openings[0].mark == "2"
    # What it feeds now has no fit either; nothing else is otherwise with the supply itself.
    assert [line.what for line in found.others] == ["Supply PS1: finding: Facts of a circuit known"]
    assert compared(yard, "A").others == (Changed("Supply PS1", "", "there"),)


def test_a_supply_that_differs_by_a_hair_and_one_that_is_gone(yard):
    supply = closet(yard)
    connect_openings(yard, circuit(yard, supply), [id_of(yard, "1")], who=WHO, length_m=9.0)
    fit_openings(yard, who=WHO)
    freeze(yard, who=WHO, today=TODAY)
    with yard.reading() as connection:
        (run,) = read_power(connection).runs
    # A millionth of a metre more of wire: no page shows it, and it is not the same.
    edit_power_row(yard, "run", run.id, {"length_m": 9.000001}, who=WHO)
    found = compared(yard, "B")
    assert (found.others, found.circuits) == (
        (Changed("Supply PS1", "as it was", "otherwise, below what is shown"),), (),
    )  # fmt: skip
    remove_power_row(yard, "supply", supply, who=WHO)
    found = compared(yard, "B")
    assert found.others == (Changed("Supply PS1", "there", ""),)
    assert [(each.name, each.kind) for each in found.circuits] == [("PS1 · C1", "gone")]


def leaf_of(project, mark):
    with project.reading() as connection:
        (given,) = read_inputs(connection, [id_of(project, mark)])
    return given.leaves[0].id


def test_which_documents_say_something_else(yard):
    assert document_differences(yard, compared(yard)) == ()
    edit_facts(yard, "leaf", leaf_of(yard, "1"), {"undercut_mm": 7.0}, who=WHO)
    fit_openings(yard, who=WHO)
    documents = {each.name: each.marks for each in document_differences(yard, compared(yard))}
    # The leaf is drawn, with its hole's height; no part is picked otherwise for its undercut.
    assert documents["packets"] == ("1",)
    assert "pick-list" not in documents
    freeze(yard, who=WHO, today=TODAY)
    assert document_differences(yard, compared(yard, "B")) == ()
    # Two revisions, whatever the project says now.
    edit_facts(yard, "leaf", leaf_of(yard, "2"), {"undercut_mm": 9.0}, who=WHO)
    between = {each.name: each.marks for each in document_differences(yard, compared(yard, "A", "B"))}
    assert between["packets"] == ("1",)


def test_a_part_that_is_otherwise_is_looked_for_on_every_sheet(yard):
    catalogue_then = compared(yard)
    assert not catalogue_then.on_every_page
    set_settings(yard, length_style="fraction", who=WHO)
    found = compared(yard)
    assert found.on_every_page
    documents = {each.name: each.marks for each in document_differences(yard, found)}
    assert documents["packets"] == ("1", "2", "3")


def test_two_revisions_whatever_came_after(yard):
    edit_facts(yard, "opening", id_of(yard, "1"), {"notes": "first"}, who=WHO)
    freeze(yard, who=WHO, today=TODAY)
    edit_facts(yard, "opening", id_of(yard, "1"), {"notes": "second"}, who=WHO)
    edit_facts(yard, "opening", id_of(yard, "2"), {"notes": "second"}, who=WHO)
    assert only(compared(yard, "A", "B")).facts == (Changed("Opening: Notes", "unknown", "first"),)
    assert only(compared(yard, "B", "A")).facts == (Changed("Opening: Notes", "first", "unknown"),)
    assert {each.mark for each in compared(yard, "B").openings} == {"1", "2"}
    for _ in range(2):
        undo(yard, who=WHO)
    assert compared(yard, "B").openings == ()


def test_a_part_of_the_project_is_compared_with_the_same_part(yard):
    door(yard, "4", building="Annexe", power_wish=None)
    freeze(yard, who=WHO, today=TODAY, scope=Scope("Annexe"))
    edit_facts(yard, "opening", id_of(yard, "1"), {"notes": "elsewhere"}, who=WHO)
    edit_facts(yard, "opening", id_of(yard, "4"), {"notes": "here"}, who=WHO)
    assert only(compared(yard, "B")).mark == "4"


def test_many_openings_in_chunks_of_other_sizes(yard):
    with yard.change("add", "Many", WHO) as change:
        ids = change.insert(OPENING_TABLE, [{"mark": f"M{number}", "form": "cabinet"} for number in range(200)])
    found = compared(yard)
    assert (len(found.openings), found.same) == (200, 3)
    freeze(yard, who=WHO, today=TODAY)
    edit_facts(yard, "opening", ids[7], {"notes": "seen"}, who=WHO)
    found = compared(yard, "B")
    assert (only(found).mark, found.same) == ("M7", 202)


def test_letters_that_there_are_not(yard):
    with pytest.raises(MissingRowError, match="there are: A"):
        compared(yard, "B")
    with pytest.raises(MissingRowError):
        compared(yard, "A", "B")
