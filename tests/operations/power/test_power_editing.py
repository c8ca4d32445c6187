"""Laying supplies, circuits and runs: journalled, undone and done again exactly, refused without a trace."""

import pytest

from hwsched.model import errors
from hwsched.operations.power.connecting import connect_openings
from hwsched.operations.power.power_editing import (
    add_circuit,
    add_run,
    add_supply,
    edit_power_row,
    edit_power_text,
    is_power_row,
    power_row_named,
    remove_power_row,
    run_to,
    typed_power_fact,
)
from hwsched.operations.power.power_results import power_result
from hwsched.operations.project.history import redo, undo
from hwsched.operations.survey.editing import remove
from tests.model.backends import furnished
from tests.model.states import in_force, state
from tests.operations.powered import WHO, circuit, closet, doors, fit_all, lines, power, write_catalogue
from tests.wiring.power_rows import volts


@furnished
def present(project):
    """Two openings, a supply and a circuit; identifiers by name."""
    write_catalogue(project)
    made = doors(project, ["1", "2", "3"])
    made["PS1"] = closet(project)
    made["C1"] = circuit(project, made["PS1"])
    return made


def there_and_back(project, verb):
    """A verb is one step that undo takes back and redo does again, to the last fact."""
    before, count = state(project), len(in_force(project))
    found = verb()
    after = state(project)
    assert after != before
    assert len(in_force(project)) == count + 1
    undo(project, who=WHO)
    assert state(project) == before
    redo(project, who=WHO)
    assert state(project) == after
    return found


VERBS = {
    "supply": lambda p, i: add_supply(p, {"name": "PS2", "building": "New", "level": "9", "part": "PSU"}, who=WHO),
    "circuit": lambda p, i: add_circuit(p, i["PS1"], {"name": "C2", "wire": "WIRE", "alarm": "drops"}, who=WHO),
    "run": lambda p, i: add_run(p, i["C1"], {"from_node": "supply", "to_node": "1", "length_m": 4.0}, who=WHO),
    "to a junction": lambda p, i: add_run(p, i["C1"], {"from_node": "supply", "to_node": "J1"}, who=WHO),
    "edit supply": lambda p, i: edit_power_row(p, "supply", i["PS1"], {"level": "2", "standby_hours": 4}, who=WHO),
    "edit circuit": lambda p, i: edit_power_row(p, "circuit", i["C1"], {"at_once": 3, "name": "C9"}, who=WHO),
    "edit text": lambda p, i: edit_power_text(p, "circuit", i["C1"], {"limiter_a": "2 A", "wire": ""}, who=WHO),
    "lift circuit": lambda p, i: remove_power_row(p, "circuit", i["C1"], who=WHO),
    "lift supply": lambda p, i: remove_power_row(p, "supply", i["PS1"], who=WHO),
}


@pytest.mark.parametrize("name", VERBS)
def test_every_verb_is_one_step_there_and_back(project, present, name):
    there_and_back(project, lambda: VERBS[name](project, present))


def test_lifting_takes_what_belongs_and_undo_brings_it_back(project, present):
    connect_openings(project, present["C1"], [present["1"], present["2"]], who=WHO)
    assert len(power(project).runs) == 2
    there_and_back(project, lambda: remove_power_row(project, "supply", present["PS1"], who=WHO))
    assert power(project).runs == ()
    undo(project, who=WHO)
    entity, row = run_to(project, present["C1"], "2")
    there_and_back(project, lambda: remove_power_row(project, entity, row, who=WHO))
    assert lines(project) == [("C1", "supply", "1", 10.0)]


def test_what_was_laid_is_read_back(project, present):
    facts = {"name": "PS2", "building": "Main", "level": "1", "place": "Closet", "x_m": 1.5, "y_m": -2, "rise_m": 3,
             "part": "PSU", "use": "must", "battery": "BAT", "batteries": 2, "standby_hours": 4, "temperature_c": 5,
             "notes": "key at the desk"}  # fmt: skip
    changes, row = add_supply(project, facts, who=WHO)
    assert changes.added[-1] == row
    found = next(s for s in power(project).supplies if s.id == row)
    assert {name: getattr(found, name) for name in facts} == facts
    add_circuit(project, row, {"name": "A", "wire": "WIRE", "temperature_c": 60, "at_once": 1, "limiter_a": 2,
                               "alarm": "stays", "notes": "n"}, who=WHO)  # fmt: skip
    made = power(project).circuits
    assert [(c.name, c.temperature_c, c.at_once, c.limiter_a, c.alarm) for c in made if c.supply_id == row] == [
        ("A", 60.0, 1, 2.0, "stays")
    ]
    add_run(project, present["C1"], {"from_node": "supply", "to_node": "1", "length_m": 4, "gauge": "16 AWG",
                                  "stranding": "solid", "parallel": 2, "extra_ohm": 0.1}, who=WHO)  # fmt: skip
    (run,) = power(project).runs
    assert (run.from_node, run.to_node, run.opening_id) == ("supply", present["1"], present["1"])
    assert (run.length_m, run.gauge, run.stranding, run.parallel, run.extra_ohm) == (4.0, "16 AWG", "solid", 2, 0.1)


def test_a_supply_moves_to_another_level_or_building_and_keeps_the_other(project, present):
    def place():
        (supply,) = power(project).supplies
        return supply.building, supply.level

    assert place() == ("Main", "1")
    edit_power_row(project, "supply", present["PS1"], {"level": "2"}, who=WHO)
    assert place() == ("Main", "2")
    edit_power_row(project, "supply", present["PS1"], {"building": "Annex"}, who=WHO)
    assert place() == ("Annex", "2")
    edit_power_row(project, "supply", present["PS1"], {"building": "Main", "level": "1", "standby_hours": 4}, who=WHO)
    assert place() == ("Main", "1")


def test_a_supply_is_laid_unless_said_otherwise(project, present):
    assert {s.name: s.use for s in power(project).supplies} == {"PS1": "laid"}
    add_supply(project, {"name": "PS2", "use": None}, who=WHO)
    add_supply(project, {"name": "PS3", "use": "candidate"}, who=WHO)
    assert {s.name: s.use for s in power(project).supplies} == {"PS1": "laid", "PS2": "laid", "PS3": "candidate"}


SUPPLIES = {
    "no name": ({"building": "Main"}, "Name"),
    "empty name": ({"name": " "}, "Name"),
    "slash": ({"name": "A/B"}, "no /"),
    "unknown fact": ({"name": "X", "colour": "red"}, "colour"),
    "no such part": ({"name": "X", "part": "NONE"}, "part: the catalogue has no part 'NONE'"),
    "part of the wrong kind": ({"name": "X", "part": "WIRE"}, "part: 'WIRE' is a wire; accepted: a power-supply"),
    "battery of the wrong kind": ({"name": "X", "battery": "CELL"}, "battery: 'CELL' is a primary-battery"),
    "use": ({"name": "X", "use": "maybe"}, "Use"),
    "range": ({"name": "X", "rise_m": -1}, "Up to the cable way"),
    "not finite": ({"name": "X", "x_m": float("nan")}, "Along the plan"),
    "not whole": ({"name": "X", "batteries": 1.5}, "Batteries in series"),
    "too cold": ({"name": "X", "temperature_c": -5}, "Lowest at the battery"),
}


@pytest.mark.parametrize("name", SUPPLIES)
def test_a_supply_that_cannot_be(project, present, name):
    facts, word = SUPPLIES[name]
    before = state(project)
    with pytest.raises(errors.ValueRefusedError, match=word.replace("(", r"\(")):
        add_supply(project, facts, who=WHO)
    assert state(project) == before


RUNS = {
    "zero length": ({"from_node": "supply", "to_node": "1", "length_m": 0}, ("Length, one way", "to 1")),
    "negative length": ({"from_node": "supply", "to_node": "1", "length_m": -3}, ("Length, one way", "-3 m", "to 1")),
    "not finite": ({"from_node": "supply", "to_node": "1", "length_m": float("inf")}, ("Length, one way",)),
    "not a number": ({"from_node": "supply", "to_node": "1", "length_m": float("nan")}, ("Length, one way",)),
    "gauge": ({"from_node": "supply", "to_node": "1", "gauge": "pencil"}, ("Gauge", "to 1", "pencil")),
    "no such wire": ({"from_node": "supply", "to_node": "1", "wire": "NONE"}, ("wire", "NONE")),
    "wire of the wrong kind": ({"from_node": "supply", "to_node": "1", "wire": "PSU"}, ("wire", "power-supply")),
    "stranding": ({"from_node": "supply", "to_node": "1", "stranding": "woven"}, ("Stranding",)),
    "parallel": ({"from_node": "supply", "to_node": "1", "parallel": 0}, ("Conductors in parallel",)),
    "no end": ({"from_node": "supply"}, ("To",)),
    "no begin": ({"to_node": "1"}, ("From",)),
    "to the supply": ({"from_node": "1", "to_node": "supply"}, ("To", "ends at the supply")),
    "to itself": ({"from_node": "1", "to_node": "1"}, ("To", "ends where it begins")),
    "fed already": ({"from_node": "J9", "to_node": "2"}, ("To", "opening 2 is fed already")),
    "junction fed already": ({"from_node": "supply", "to_node": "J1"}, ("To", "J1 is fed already")),
    "loop": ({"from_node": "3", "to_node": "J0"}, ("From", "from 3 to J0", "closes a loop")),
}


@pytest.mark.parametrize("name", RUNS)
def test_a_run_that_cannot_be(project, present, name):
    for begin, end in (("J0", "J1"), ("J1", "2"), ("2", "3")):
        add_run(project, present["C1"], {"from_node": begin, "to_node": end, "length_m": 5}, who=WHO)
    facts, words = RUNS[name]
    before = state(project)
    with pytest.raises(errors.ValueRefusedError) as refused:
        add_run(project, present["C1"], facts, who=WHO)
    assert str(refused.value).startswith(words[0])
    for word in words[1:]:
        assert word in str(refused.value)
    assert all(row not in str(refused.value) for row in present.values())
    assert state(project) == before


def test_an_opening_hangs_on_one_circuit_only(project, present):
    other = circuit(project, present["PS1"], "C2")
    connect_openings(project, present["C1"], [present["1"]], who=WHO)
    with pytest.raises(errors.ValueRefusedError, match="opening 1 is fed already"):
        add_run(project, other, {"from_node": "supply", "to_node": "1"}, who=WHO)


def test_names_are_unique_where_they_must_be(project, present):
    before = state(project)
    with pytest.raises(errors.DuplicateValueError):
        add_supply(project, {"name": "PS1"}, who=WHO)
    with pytest.raises(errors.DuplicateValueError):
        circuit(project, present["PS1"], "C1")
    assert state(project) == before
    circuit(project, closet(project, "PS2"), "C1")


def test_what_is_gone_is_said_to_be(project, present):
    before = state(project)
    for verb in (
        lambda: add_circuit(project, "nobody", {"name": "X"}, who=WHO),
        lambda: add_run(project, present["PS1"], {"from_node": "supply", "to_node": "1"}, who=WHO),
        lambda: edit_power_row(project, "supply", "nobody", {"name": "X"}, who=WHO),
        lambda: remove_power_row(project, "run", "nobody", who=WHO),
        lambda: run_to(project, present["C1"], "1"),
        lambda: power_row_named(project, "PS7"),
    ):
        with pytest.raises(errors.MissingRowError):
            verb()
    with pytest.raises(errors.ValueRefusedError, match="opening"):
        remove_power_row(project, "opening", present["1"], who=WHO)
    assert state(project) == before


@pytest.mark.parametrize(
    ("values", "word"),
    [
        ({"length_m": 0}, "Length, one way: 0 m of the run from 1 to 2"),
        ({"gauge": "pencil"}, "Gauge: of the run from 1 to 2"),
        ({"from_node": "3"}, "From: the run from 3 to 2 closes a loop"),
        ({"to_node": "3"}, "To: opening 3 is fed already"),
        ({"to_node": "1"}, "To: the run from 1 to 1"),
        ({"to_node": ""}, "To"),
    ],
)
def test_an_edit_that_cannot_be_names_field_and_opening(project, present, values, word):
    for begin, end in (("supply", "1"), ("1", "2"), ("2", "3")):
        add_run(project, present["C1"], {"from_node": begin, "to_node": end, "length_m": 5}, who=WHO)
    before = state(project)
    row = run_to(project, present["C1"], "2")[1]
    with pytest.raises(errors.ValueRefusedError) as refused:
        edit_power_row(project, "run", row, values, who=WHO)
    assert str(refused.value).startswith(word)
    assert state(project) == before


def test_a_run_is_led_elsewhere(project, present):
    add_run(project, present["C1"], {"from_node": "supply", "to_node": "1", "length_m": 5}, who=WHO)
    row = run_to(project, present["C1"], "1")[1]
    there_and_back(project, lambda: edit_power_row(project, "run", row, {"to_node": "2", "length_m": 7}, who=WHO))
    (run,) = power(project).runs
    assert (run.opening_id, run.length_m) == (present["2"], 7.0)
    edit_power_row(project, "run", row, {"to_node": "J1"}, who=WHO)
    assert power(project).runs[0].opening_id is None


def test_names_are_checked_when_they_are_edited(project, present):
    for entity, name in (("supply", "PS1"), ("circuit", "C1")):
        with pytest.raises(errors.ValueRefusedError, match="no /"):
            edit_power_row(project, entity, present[name], {"name": "A/B"}, who=WHO)
        with pytest.raises(errors.ValueRefusedError, match="Name"):
            edit_power_row(project, entity, present[name], {"name": None}, who=WHO)


def test_typed_facts(project):
    texts = {"x_m": "3 ft", "standby_hours": "4 h", "use": "possible", "notes": "", "y_m": "12", "rise_m": "2.5"}
    assert typed_power_fact("supply", texts) == {
        "x_m": pytest.approx(0.9144), "standby_hours": 4.0, "use": "candidate", "notes": None, "y_m": 12.0,
        "rise_m": 2.5,
    }  # fmt: skip
    # Bare numbers are in the fact's own unit.
    assert typed_power_fact("supply", {"standby_hours": "4", "temperature_c": "5"}) == {
        "standby_hours": 4.0, "temperature_c": 5.0,
    }  # fmt: skip
    assert typed_power_fact("run", {"length_m": "30", "extra_ohm": "0.1"}) == {"length_m": 30.0, "extra_ohm": 0.1}
    assert typed_power_fact("circuit", {"limiter_a": "2"}) == {"limiter_a": 2.0}
    for entity, texts, word in (
        ("run", {"length_m": "long"}, "Length, one way"),
        ("run", {"colour": "red"}, "no such fact; accepted: from_node"),
        ("supply", {"use": "perhaps"}, "Use"),
        ("leaf", {}, "there is no 'leaf' to lay"),
    ):
        with pytest.raises(errors.ValueRefusedError, match=word):
            typed_power_fact(entity, texts)


def test_what_people_name(project, present):
    assert power_row_named(project, "PS1") == ("supply", present["PS1"])
    assert power_row_named(project, "PS1/C1") == ("circuit", present["C1"])
    assert is_power_row(project, "PS1/C1")
    assert not is_power_row(project, "PS1/C2")
    with pytest.raises(errors.MissingRowError, match="there is PS1, PS1/C1"):
        power_row_named(project, "C1")


def test_an_opening_marked_supply_is_no_supply(project, present):
    """The word at the end of a run is the supply itself, whatever an opening is called."""
    doors(project, ["supply"])
    add_run(project, present["C1"], {"from_node": "supply", "to_node": "1", "length_m": 5}, who=WHO)
    assert power(project).runs[0].from_node == "supply"


def test_a_node_that_nothing_feeds_is_found(project, present):
    add_run(project, present["C1"], {"from_node": "J7", "to_node": "1", "length_m": 5}, who=WHO)
    fit_all(project)
    (finding,) = [f.finding for f in power_result(project).findings if f.finding.rule == "circuit-sound"]
    assert "from J7 to 1" in finding.message
    assert "J7 is not fed" in finding.message


def test_a_run_that_begins_where_nothing_hangs_is_named_by_its_mark(project, present):
    add_run(project, present["C1"], {"from_node": "2", "to_node": "1", "length_m": 5}, who=WHO)
    fit_all(project)
    for work in (power_result(project), power_result(project, [present["1"]])):
        (finding,) = [f.finding for f in work.findings if f.finding.rule == "circuit-sound"]
        assert finding.message == "Run from 2 to 1, from: node 2 is not fed from the supply."


def test_a_junction_stays_one_though_an_opening_gets_its_name(project, present):
    add_run(project, present["C1"], {"from_node": "supply", "to_node": "J1", "length_m": 5}, who=WHO)
    doors(project, ["J1"])
    add_run(project, present["C1"], {"from_node": "J1", "to_node": "1", "length_m": 5}, who=WHO)
    connect_openings(project, present["C1"], [present["2"]], who=WHO, from_node="J1", length_m=2)
    fit_all(project)
    assert {(r.from_node, r.opening_id) for r in power(project).runs} == {
        ("supply", None), ("J1", present["1"]), ("J1", present["2"]),
    }  # fmt: skip
    assert not [f for f in power_result(project).findings if f.finding.rule == "circuit-sound"]


def test_volts_of_what_is_laid(project, present):
    add_run(project, present["C1"], {"from_node": "supply", "to_node": "J1", "length_m": 20}, who=WHO)
    add_run(project, present["C1"], {"from_node": "J1", "to_node": "1", "length_m": 10}, who=WHO)
    fit_all(project)
    ((result,),) = (s.circuits for s in power_result(project).supplies)
    # 30 m of 18 AWG at 0.4 A: 0.53297 V (by hand in tests.wiring.test_supply_results).
    assert volts(result, present["1"]) == pytest.approx(12.0 - 0.53297, abs=1e-3)


def test_removing_an_opening_within_a_chain_keeps_the_others_fed(project, present):
    for begin, end, length in (("supply", "1", 5), ("1", "2", 6), ("2", "3", 7), ("2", "J1", 8)):
        add_run(project, present["C1"], {"from_node": begin, "to_node": end, "length_m": length}, who=WHO)
    there_and_back(project, lambda: remove(project, "opening", present["2"], who=WHO))
    assert lines(project) == [("C1", "1", "3", 13.0), ("C1", "1", "J1", 14.0), ("C1", "supply", "1", 5.0)]
    fit_all(project)
    assert not [f for f in power_result(project).findings if f.finding.rule == "circuit-sound"]
