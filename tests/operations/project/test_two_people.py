"""Two people at one project, each with a view of an earlier state: nothing unseen is overwritten in silence."""

import re
from dataclasses import dataclass, field

import pytest

from hwsched.model import errors
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.journal.facts import flat
from hwsched.model.project import Project, open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.findings.waivers import unwaive, waive, waivers
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part, place_unit, release_part, release_unit
from hwsched.operations.opening.named_openings import row_of
from hwsched.operations.parts.cost_terms import set_terms
from hwsched.operations.parts.hardware_sets import (
    Line,
    assign_set,
    change_set_lines,
    hardware_sets,
    make_set,
    remove_set,
)
from hwsched.operations.power.connecting import connect_openings, disconnect_openings, set_route
from hwsched.operations.power.power_editing import add_circuit, add_supply, edit_power_row, remove_power_row, run_to
from hwsched.operations.project.history import newest, undo
from hwsched.operations.project.people import add_person
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.editing import add_item, add_opening, edit_facts, remove
from hwsched.operations.survey.own_fields import define_field, set_own_value
from hwsched.operations.survey.typed_values import type_in
from hwsched.values import Part
from tests.model.backends import furnished
from tests.model.states import state

ANN, BEN = "ann", "ben"


@dataclass
class Two:
    """One project open twice, and the identifiers of its rows by name."""

    ann: Project
    ben: Project
    rows: dict[str, str] = field(default_factory=dict)


@furnished
def yard(project):
    """Openings 1 and 2, a lock, parts, a set, two circuits on a supply, a field of the project's own."""
    with project.change("import-catalogue", "Parts", ANN) as change:
        kinds = {"C-1": "cam", "C-2": "cam", "C-3": "cam", "U-1": "surface-unit", "U-2": "surface-unit"}
        write_parts(change, [Part(number, kind) for number, kind in kinds.items()], "test")
    rows = {}
    for mark in ("1", "2"):
        facts = {"mark": mark, "building": "Mill", "level": "1", "hand": "LH", "frame_stop_mm": 15.875}
        rows[mark] = add_opening(project, facts, who=ANN)[1]
    rows["lock"] = add_item(project, rows["1"], {"kind": "lock", "backset_mm": 69.85}, who=ANN)[1]
    choose_part(project, rows["1"], "cam", "C-1", who=ANN)
    rows["set"] = make_set(project, "HS-1", [Line("cam", "C-1"), Line("unit", "U-1")], who=ANN)[1]
    rows["other set"] = make_set(project, "HS-2", [Line("cam", "C-2")], who=ANN)[1]
    rows["supply"] = add_supply(project, {"name": "PS1", "building": "Mill", "level": "1"}, who=ANN)[1]
    for name in ("A", "B", "C"):
        rows[name] = add_circuit(project, rows["supply"], {"name": name}, who=ANN)[1]
    connect_openings(project, rows["A"], [rows["1"]], who=ANN, length_m=4.0)
    rows["run"] = run_to(project, rows["A"], "1")[1]
    define_field(project, "opening", "key_group", "Key group", "text", who=ANN)
    place_unit(project, rows["1"], leaf="single", face="inside", pattern="above", x_mm=20, y_mm=1000, who=ANN)
    set_settings(project, who=ANN, length_style="fraction")
    waive(project, "reach-height", person=ANN, reason="seen", who=ANN, scope="project")
    rows["waiver"] = waivers(project)[0].id
    for name, role in ((ANN, "specifier"), (BEN, "specifier"), ("cid", "installer")):
        add_person(project, name, role, who=ANN)
    return rows


@pytest.fixture
def two(project, address, yard):
    """The same project, open twice."""
    with open_project(address) as other:
        yield Two(project, other, yard)


def place(project, opening, x_mm, y_mm, **more):
    return place_unit(project, opening, leaf="single", face="inside", pattern="above", x_mm=x_mm, y_mm=y_mm, **more)


LINES = [Line("cam", "C-1"), Line("unit", "U-1")]
SAME_FACT = {
    "fact": (
        lambda p, r, **k: edit_facts(p, "opening", r["1"], {"hand": "RH"}, **k),
        lambda p, r, **k: edit_facts(p, "opening", r["1"], {"hand": "LHR"}, **k),
        ("Hand of 1", "LH", "RH", "LHR"),
    ),
    "length": (
        lambda p, r, **k: edit_facts(p, "existing_item", r["lock"], {"backset_mm": 70.0}, **k),
        lambda p, r, **k: type_in(p, "existing_item", r["lock"], "backset_mm", "2 3/8", **k),
        ("Backset of 1", '2 3/4"', '2 3/4"', '2 3/8"'),
    ),
    "place of an opening": (
        lambda p, r, **k: edit_facts(p, "opening", r["1"], {"building": "Store"}, **k),
        lambda p, r, **k: edit_facts(p, "opening", r["1"], {"level": "2"}, **k),
        ("Building and level of 1", "Mill, 1", "Store, 1", "Store, 2"),
    ),
    "field of the project's own": (
        lambda p, r, **k: set_own_value(p, "opening", r["1"], "key_group", "AA", **k),
        lambda p, r, **k: type_in(p, "opening", r["1"], "key_group", "BB", **k),
        ("Key group of 1", "unknown", "AA", "BB"),
    ),
    "removal of what was edited": (
        lambda p, r, **k: edit_facts(p, "opening", r["1"], {"hand": "RH"}, **k),
        lambda p, r, **k: remove(p, "opening", r["1"], **k),
        ("Hand of 1", "LH", "RH", "removed"),
    ),
    "removal of an opening to which an item was added": (
        lambda p, r, **k: add_item(p, r["1"], {"kind": "closer"}, **k)[0],
        lambda p, r, **k: remove(p, "opening", r["1"], **k),
        ("Existing item of 1", "not there", "there", "removed"),
    ),
    "choice": (
        lambda p, r, **k: choose_part(p, r["1"], "cam", "C-2", **k),
        lambda p, r, **k: choose_part(p, r["1"], "cam", "C-3", **k),
        ("Part for the role cam of 1", "C-1", "C-2", "C-3"),
    ),
    "choice where there was none": (
        lambda p, r, **k: choose_part(p, r["1"], "unit", "U-1", **k),
        lambda p, r, **k: choose_part(p, r["1"], "unit", "U-2", **k),
        ("Part for the role unit of 1", "left to the fit", "U-1", "U-2"),
    ),
    "choice that was released": (
        lambda p, r, **k: release_part(p, r["1"], "cam", **k),
        lambda p, r, **k: choose_part(p, r["1"], "cam", "C-3", quantity=2.0, **k),
        ("Part for the role cam of 1", "C-1", "left to the fit", "C-3 × 2"),
    ),
    "release of a choice that was made anew": (
        lambda p, r, **k: choose_part(p, r["1"], "cam", "C-2", **k),
        lambda p, r, **k: release_part(p, r["1"], "cam", **k),
        ("Part for the role cam of 1", "C-1", "C-2", "left to the fit"),
    ),
    "place of a unit": (
        lambda p, r, **k: place(p, r["1"], 25.4, 1000, **k),
        lambda p, r, **k: place(p, r["1"], 20, 1016, **k),
        (
            "Place of the unit of 1",
            'inside face, 25/32" from the lock edge, 39 3/8" up',
            'inside face, 1" from the lock edge, 39 3/8" up',
            'inside face, 25/32" from the lock edge, 40" up',
        ),
    ),
    "place of a unit that was released": (
        lambda p, r, **k: release_unit(p, r["1"], **k),
        lambda p, r, **k: place(p, r["1"], 25.4, 1016, **k),
        (
            "Place of the unit of 1",
            'inside face, 25/32" from the lock edge, 39 3/8" up',
            "left to the fit",
            'inside face, 1" from the lock edge, 40" up',
        ),
    ),
    "lines of a set": (
        lambda p, r, **k: change_set_lines(p, r["set"], [Line("cam", "C-2"), LINES[1]], was=LINES, **k),
        lambda p, r, **k: change_set_lines(p, r["set"], [Line("cam", "C-3"), LINES[1]], was=LINES, **k),
        ("Lines for the role cam of hardware set HS-1", "C-1", "C-2", "C-3"),
    ),
    "lines of a set of which one was taken out": (
        lambda p, r, **k: change_set_lines(p, r["set"], [LINES[1]], was=LINES, **k),
        lambda p, r, **k: change_set_lines(p, r["set"], [Line("cam", "C-1", 2.0), LINES[1]], was=LINES, **k),
        ("Lines for the role cam of hardware set HS-1", "C-1", "nothing", "C-1 × 2"),
    ),
    "removal of a set that was changed": (
        lambda p, r, **k: change_set_lines(p, r["set"], [Line("cam", "C-2"), LINES[1]], was=LINES, **k),
        lambda p, r, **k: remove_set(p, r["set"], **k),
        ("Lines for the role cam of hardware set HS-1", "C-1", "C-2", "nothing"),
    ),
    "removal of a set that an opening was given": (
        lambda p, r, **k: assign_set(p, r["set"], [r["1"]], **k),
        lambda p, r, **k: remove_set(p, r["set"], **k),
        ("Hardware set of 1", "none", "HS-1", "none"),
    ),
    "set of an opening": (
        lambda p, r, **k: assign_set(p, r["set"], [r["1"]], **k),
        lambda p, r, **k: assign_set(p, r["other set"], [r["1"], r["2"]], **k),
        ("Hardware set of 1", "none", "HS-1", "HS-2"),
    ),
    "limit": (
        lambda p, r, **k: set_settings(p, limits={"battery-life.days": 200.0}, **k),
        lambda p, r, **k: set_settings(p, limits={"battery-life.days": 300.0}, **k),
        ("Limit battery-life.days", "the rule's own", "200", "300"),
    ),
    "title": (
        lambda p, r, **k: set_settings(p, name="Quay", **k),
        lambda p, r, **k: set_settings(p, name="Wharf", **k),
        ("Title", "Yard", "Quay", "Wharf"),
    ),
    "preference": (
        lambda p, r, **k: set_settings(p, prefer="holes", **k),
        lambda p, r, **k: set_settings(p, prefer="stock", **k),
        ("Ranked first by", "unknown", "holes", "stock"),
    ),
    "terms": (
        lambda p, r, **k: set_terms(p, discounts={"North": "0.1"}, **k),
        lambda p, r, **k: set_terms(p, discounts={"North": "0.2"}, **k),
        ("Terms: discounts North", "unknown", "0.1", "0.2"),
    ),
    "what is laid": (
        lambda p, r, **k: edit_power_row(p, "circuit", r["A"], {"at_once": 2}, **k),
        lambda p, r, **k: edit_power_row(p, "circuit", r["A"], {"at_once": 3, "alarm": "drops"}, **k),
        ("Operations at one time of A", "unknown", "2", "3"),
    ),
    "what is taken away": (
        lambda p, r, **k: edit_power_row(p, "circuit", r["A"], {"at_once": 2}, **k),
        lambda p, r, **k: remove_power_row(p, "supply", r["supply"], **k),
        ("Operations at one time of A", "unknown", "2", "removed"),
    ),
    "circuit of an opening": (
        lambda p, r, **k: connect_openings(p, r["B"], [r["1"]], length_m=5.0, **k),
        lambda p, r, **k: connect_openings(p, r["C"], [r["1"]], length_m=6.0, **k),
        ("Circuit of 1", "PS1/A from supply, 4 m", "PS1/B from supply, 5 m", "PS1/C from supply, 6 m"),
    ),
    "circuit off which an opening was taken": (
        lambda p, r, **k: disconnect_openings(p, [r["1"]], **k),
        lambda p, r, **k: connect_openings(p, r["C"], [r["1"]], length_m=6.0, **k),
        ("Circuit of 1", "PS1/A from supply, 4 m", "on no circuit", "PS1/C from supply, 6 m"),
    ),
    "route": (
        lambda p, r, **k: set_route(p, r["1"], r["supply"], length_m=7.0, **k),
        lambda p, r, **k: set_route(p, r["1"], r["supply"], length_m=8.0, **k),
        ("Length of the cable route of 1", "not there", "7", "8"),
    ),
    "role of a person": (
        lambda p, r, **k: add_person(p, "cid", "surveyor", **k),
        lambda p, r, **k: add_person(p, "cid", "viewer", **k),
        ("Role of cid", "installer", "surveyor", "viewer"),
    ),
}
"""What Ann does, what Ben then does with his view of before; the fact, what he saw, what is there, what he wants."""


def clash_of(two, first, second):
    """Let Ann and then Ben act, both with the view of before; returns what Ben is told."""
    base = newest(two.ann)
    step = first(two.ann, two.rows, who=ANN).number
    before = state(two.ann)
    with pytest.raises(errors.ConflictError) as caught:
        second(two.ben, two.rows, who=BEN, base=base)
    assert state(two.ann) == before
    assert newest(two.ann) == step == caught.value.base
    return caught.value, step


@pytest.mark.turns(3)
@pytest.mark.parametrize("name", SAME_FACT)
def test_the_same_fact_is_a_question_with_both_values_who_and_when(two, name):
    first, second, (fact, seen, present, wanted) = SAME_FACT[name]
    conflict, step = clash_of(two, first, second)
    [clash] = [each for each in conflict.clashes if each.fact == fact]
    assert (clash.seen, clash.present, clash.wanted) == (seen, present, wanted)
    assert (clash.who, clash.step) == (ANN, step)
    assert re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}\+00:00", clash.when)
    assert fact in str(conflict)
    # Having seen it, Ben may insist.
    changes = second(two.ben, two.rows, who=BEN, base=conflict.base)
    assert changes.number == step + 1
    undo(two.ben, who=BEN)
    assert newest(two.ben) == step + 2


def content(rows):
    """Rows by what they hold: where a row takes the place of another, it is another row."""
    return sorted(repr(sorted((k, v) for k, v in flat(row).items() if k != ("id",))) for row in rows.values())


@pytest.mark.turns(3)
@pytest.mark.parametrize("name", [name for name in SAME_FACT if not name.startswith("removal")])
def test_an_equal_value_merges(two, name):
    first = SAME_FACT[name][0]
    base = newest(two.ann)
    first(two.ann, two.rows, who=ANN)
    before = content(state(two.ann))
    first(two.ben, two.rows, who=BEN, base=base)
    assert content(state(two.ann)) == before


DIFFERENT_FACTS = {
    "facts of one opening": (
        lambda p, r, **k: edit_facts(p, "opening", r["1"], {"hand": "RH"}, **k),
        lambda p, r, **k: edit_facts(p, "opening", r["1"], {"rating": "45", "room_to": "Vault"}, **k),
    ),
    "fields of the project's own": (
        lambda p, r, **k: set_own_value(p, "opening", r["1"], "key_group", "AA", **k),
        lambda p, r, **k: edit_facts(p, "opening", r["1"], {"hand": "RH"}, **k),
    ),
    "the same fact of two openings": (
        lambda p, r, **k: edit_facts(p, "opening", r["1"], {"hand": "RH"}, **k),
        lambda p, r, **k: edit_facts(p, "opening", r["2"], {"hand": "LHR"}, **k),
    ),
    "choices for two roles": (
        lambda p, r, **k: choose_part(p, r["1"], "cam", "C-2", **k),
        lambda p, r, **k: choose_part(p, r["1"], "unit", "U-2", **k),
    ),
    "lines of two roles": (
        lambda p, r, **k: change_set_lines(p, r["set"], [Line("cam", "C-2"), LINES[1]], was=LINES, **k),
        lambda p, r, **k: change_set_lines(
            p, r["set"], [LINES[0], Line("unit", "U-2"), Line("tailpiece", "C-3")], was=LINES, **k
        ),
    ),
    "two limits": (
        lambda p, r, **k: set_settings(p, limits={"battery-life.days": 200.0}, rules_off={"trim-clear": True}, **k),
        lambda p, r, **k: set_settings(
            p, limits={"trim-clear.clearance_mm": 9.0}, rules_off={"reach-height": True}, prefer="holes", **k
        ),
    ),
    "terms and settings": (
        lambda p, r, **k: set_terms(p, discounts={"North": "0.1"}, **k),
        lambda p, r, **k: set_terms(p, discounts={"South": "0.2"}, labour_per_hour="60", **k),
    ),
    "length and wire of a run": (
        lambda p, r, **k: edit_power_row(p, "run", r["run"], {"length_m": 5.0}, **k),
        lambda p, r, **k: edit_power_row(p, "run", r["run"], {"gauge": "18 AWG"}, **k),
    ),
    "circuits of two openings": (
        lambda p, r, **k: connect_openings(p, r["B"], [r["1"]], length_m=5.0, **k),
        lambda p, r, **k: connect_openings(p, r["B"], [r["2"]], length_m=6.0, **k),
    ),
    "a fit and the removal of its opening": (
        lambda p, r, **k: fit_openings(p, [r["1"]], **k),
        lambda p, r, **k: remove(p, "opening", r["1"], **k),
    ),
    "the removal of another opening": (
        lambda p, r, **k: edit_facts(p, "opening", r["1"], {"hand": "RH"}, **k),
        lambda p, r, **k: remove(p, "opening", r["2"], **k),
    ),
}


@pytest.mark.parametrize("name", DIFFERENT_FACTS)
def test_different_facts_do_not_meet(two, name):
    """Whoever is first, the same comes of it, and each takes back the own step alone."""
    first, second = DIFFERENT_FACTS[name]
    base, before = newest(two.ann), state(two.ann)
    first(two.ann, two.rows, who=ANN)
    second(two.ben, two.rows, who=BEN, base=base)
    both = content(state(two.ann))
    if "removal of its" in name:
        return
    undo(two.ann, who=ANN)
    undo(two.ben, who=BEN)
    assert content(state(two.ann)) == content(before)
    base = newest(two.ann)
    second(two.ben, two.rows, who=BEN)
    first(two.ann, two.rows, who=ANN, base=base)
    assert content(state(two.ann)) == both


def test_both_values_are_there_when_facts_differ(two):
    base = newest(two.ann)
    edit_facts(two.ann, "opening", two.rows["1"], {"hand": "RH"}, who=ANN, base=base)
    edit_facts(two.ben, "opening", two.rows["1"], {"rating": "45"}, who=BEN, base=base)
    row = state(two.ann)["opening", two.rows["1"]]
    assert (row["hand"], row["rating"]) == ("RH", "45")
    change_set_lines(two.ann, two.rows["set"], [Line("cam", "C-2"), LINES[1]], was=LINES, who=ANN, base=base)
    wanted = [LINES[0], Line("unit", "U-2"), Line("tailpiece", "C-3")]
    change_set_lines(two.ben, two.rows["set"], wanted, was=LINES, who=BEN, base=base)
    [held] = [each for each in hardware_sets(two.ann) if each.name == "HS-1"]
    assert {(line.role, line.part) for line in held.lines} == {("cam", "C-2"), ("unit", "U-2"), ("tailpiece", "C-3")}


def test_what_a_person_did_in_the_same_window_was_seen(two):
    """The view of an own edit may be older than that edit: it is nobody else's."""
    base = newest(two.ann)
    edit_facts(two.ann, "opening", two.rows["1"], {"hand": "RH"}, who=ANN, base=base)
    edit_facts(two.ann, "opening", two.rows["1"], {"hand": "LHR"}, who=ANN, base=base)
    assert state(two.ann)["opening", two.rows["1"]]["hand"] == "LHR"
    # The same person in another window sees what that one shows.
    with pytest.raises(errors.ConflictError) as caught:
        edit_facts(two.ben, "opening", two.rows["1"], {"hand": "RHR"}, who=ANN, base=base)
    assert [(each.seen, each.present) for each in caught.value.clashes] == [("LH", "LHR")]


def test_what_was_changed_and_taken_back_is_as_it_was_seen(two):
    base = newest(two.ann)
    edit_facts(two.ann, "opening", two.rows["1"], {"hand": "RH"}, who=ANN)
    undo(two.ann, who=ANN)
    edit_facts(two.ben, "opening", two.rows["1"], {"hand": "LHR"}, who=BEN, base=base)
    assert state(two.ann)["opening", two.rows["1"]]["hand"] == "LHR"


def test_a_script_without_a_view_writes_as_it_always_did(two):
    edit_facts(two.ann, "opening", two.rows["1"], {"hand": "RH"}, who=ANN)
    edit_facts(two.ben, "opening", two.rows["1"], {"hand": "LHR"}, who=BEN)
    assert state(two.ann)["opening", two.rows["1"]]["hand"] == "LHR"


def test_several_facts_are_told_at_once_and_nothing_is_half_done(two):
    base = newest(two.ann)
    edit_facts(two.ann, "opening", two.rows["1"], {"hand": "RH", "frame_stop_mm": 20.0}, who=ANN)
    before = state(two.ann)
    wanted = {"hand": "LHR", "frame_stop_mm": 25.4, "rating": "45"}
    with pytest.raises(errors.ConflictError) as caught:
        edit_facts(two.ben, "opening", two.rows["1"], wanted, who=BEN, base=base)
    assert {(each.seen, each.present, each.wanted) for each in caught.value.clashes} == {
        ("LH", "RH", "LHR"),
        ('5/8"', '25/32"', '1"'),
    }
    assert (caught.value.entities, caught.value.openings) == ({"opening"}, {two.rows["1"]})
    assert state(two.ann) == before


def test_what_is_gone_says_who_took_it_out(two):
    base = newest(two.ann)
    step = remove(two.ann, "opening", two.rows["1"], who=ANN).number
    unwaive(two.ann, [two.rows["waiver"]], who=ANN)
    for late in (
        lambda **k: edit_facts(two.ben, "opening", two.rows["1"], {"hand": "RH"}, **k),
        lambda **k: choose_part(two.ben, two.rows["1"], "cam", "C-2", **k),
        lambda **k: remove(two.ben, "existing_item", two.rows["lock"], **k),
    ):
        with pytest.raises(errors.MissingRowError, match=rf"ann took it out in step {step}, \d{{4}}-"):
            late(who=BEN, base=base)
    with pytest.raises(errors.MissingRowError, match=r"waiver is not .*: ann took it out"):
        unwaive(two.ben, [two.rows["waiver"]], who=BEN, base=base)


def test_the_view_of_an_opening_says_up_to_where_it_has_seen(two):
    before = check_openings(two.ben)
    step = edit_facts(two.ann, "opening", two.rows["1"], {"hand": "RH"}, who=ANN).number
    assert {each.base for each in before} == {step - 1}
    assert {each.base for each in check_openings(two.ben)} == {step}


# What the command line hands over: the value that a person read off.


@pytest.mark.parametrize(
    ("where", "fact", "old"),
    [
        ("opening", "hand", "LH"),
        ("opening", "hand", "left hand"),
        ("lock", "backset_mm", "2 3/4"),
        ("lock", "backset_mm", "69.85 mm"),
        ("lock", "backset_mm", '2 3/4"'),
        ("lock", "backset_mm", "6.985 cm"),
        ("opening", "rating", ""),
        ("opening", "building", "Mill"),
        ("opening", "level", "1"),
        ("opening", "key_group", ""),
    ],
)
def test_an_edit_is_made_where_the_fact_is_as_said(two, where, fact, old):
    entity, row = row_of(two.ben, "1", where)
    value = {"hand": "RH", "backset_mm": "60 mm", "rating": "45"}.get(fact, "new")
    assert type_in(two.ben, entity, row, fact, value, who=BEN, was=old).number is not None


def test_a_length_as_it_is_shown_counts_as_read_off(two):
    """Shown to a 64th, the text is not exactly the value: whoever copies it has seen the value."""
    edit_facts(two.ann, "existing_item", two.rows["lock"], {"backset_mm": 70.0}, who=ANN)
    type_in(two.ben, "existing_item", two.rows["lock"], "backset_mm", "60 mm", who=BEN, was='2 3/4"')
    assert state(two.ann)["existing_item", two.rows["lock"]]["backset_mm"] == 60.0


@pytest.mark.parametrize(
    ("where", "fact", "old", "value", "told"),
    [
        ("opening", "hand", "RHR", "RH", ("Hand of 1", "RHR", "LH", "RH")),
        ("opening", "rating", "20", "45", ("Fire rating of 1", "20", "unknown", "45 min")),
        ("lock", "backset_mm", "60 mm", "70 mm", ("Backset of 1", "60 mm", '2 3/4"', '2 3/4"')),
        ("opening", "level", "2", "3", ("Level of 1", "2", "1", "3")),
        ("opening", "key_group", "AA", "BB", ("Key group of 1", "AA", "unknown", "BB")),
    ],
)
def test_an_edit_is_refused_where_the_fact_is_otherwise(two, where, fact, old, value, told):
    entity, row = row_of(two.ben, "1", where)
    before = state(two.ann)
    with pytest.raises(errors.ConflictError) as caught:
        type_in(two.ben, entity, row, fact, value, who=BEN, was=old)
    [clash] = caught.value.clashes
    assert (clash.fact, clash.seen, clash.present, clash.wanted, clash.who) == (*told, ANN)
    assert state(two.ann) == before


def test_an_equal_value_merges_whatever_was_read_off(two):
    assert type_in(two.ben, "opening", two.rows["1"], "hand", "LH", who=BEN, was="RH").number is None


def test_who_set_a_fact_is_who_set_that_fact(two):
    """Later changes of other facts of the row are not the ones that are told."""
    step = set_own_value(two.ann, "opening", two.rows["1"], "key_group", "AA", who=BEN).number
    edit_facts(two.ann, "opening", two.rows["1"], {"hand": "RH"}, who=ANN)
    for name, who, at in (("key_group", BEN, step), ("hand", ANN, step + 1)):
        with pytest.raises(errors.ConflictError) as caught:
            type_in(two.ben, "opening", two.rows["1"], name, "RHR", who=BEN, was="LHR")
        assert [(each.who, each.step) for each in caught.value.clashes] == [(who, at)]


def test_a_value_that_cannot_be_is_said_to_be_none(two):
    with pytest.raises(errors.ValueRefusedError, match="wide"):
        type_in(two.ben, "existing_item", two.rows["lock"], "backset_mm", "60 mm", who=BEN, was="wide")
