"""What a plan lays and takes up: junctions with names of their own, and what lies as planned stays as it is."""

from dataclasses import replace

import pytest

from hwsched.calc.power.planning.question import Leg, Plan, PlannedRun
from hwsched.operations.power.planned_runs import laying_of, told_runs, with_laying
from hwsched.operations.power.supply_siting import CIRCUIT_NAME
from hwsched.values.power import PowerFacts
from tests.wiring.power_rows import circuit, run, supply

FORKED = Leg(
    "s", "junctions", "WIRE", ("a", "b"), (None, "a", "b"),
    (PlannedRun(-1, 0, 10.0), PlannedRun(0, 1, 5.0), PlannedRun(0, 2, 4.0)), 19.0, 9.5, 1.0,
)  # fmt: skip
"""From the supply 10 m to a junction, and from there 5 m to A and 4 m to B."""


def plan_of(*legs):
    return Plan(legs, {"s": "PSU"}, 1, 9.5, 19.0, None, 0.0, 9.5)


def laid(*runs):
    return PowerFacts((supply("s"), supply("t")), (circuit("c", "s"), circuit("d", "t")), runs)


def laying(facts, *legs, onto=(("s", "c"),), parts=(("s", "PSU"),)):
    return laying_of(facts, plan_of(*(legs or (FORKED,))), {"a", "b"}, dict(onto), dict(parts))


def told(found):
    return [(run.circuit_id, run.from_node, run.to_node, run.opening_id, run.length_m) for run in found]


@pytest.mark.parametrize(
    ("there", "junction"),
    [
        ((), "J1"),
        # One that leads to what stays has the name; so have two.
        ((run("supply", "J1"), run("J1", "kept")), "J2"),
        ((run("supply", "J1"), run("J1", "J2"), run("J2", "kept")), "J3"),
        # Of another circuit it may be the same.
        ((run("supply", "J1", of="d"), run("J1", "kept", of="d")), "J1"),
        # One that is taken up with what hangs behind it leaves its name.
        ((run("supply", "J1"), run("J1", "a")), "J1"),
    ],
)
def test_a_junction_has_a_name_that_its_circuit_has_not(there, junction):
    found = laying(laid(*there))
    assert {each.from_node for each in found.runs if each.opening_id is not None} == {junction}
    assert ("c", "supply", junction, None, 10.0) in told(with_laying(laid(*there), found).runs)


def test_what_lies_as_planned_stays_and_the_rest_is_taken_up():
    lies = (run("supply", "J1", 10.0), run("J1", "a", 5.0), run("J1", "b", 6.0))
    found = laying(laid(*lies))
    # B's is 4 m by plan, and the rest lies so.
    assert told(found.runs) == [("c", "J1", "b", "b", 4.0)]
    assert found.taken_up == (lies[2].id,)
    assert found.circuits == ()
    assert found.parts == {}


@pytest.mark.parametrize(
    "otherwise",
    [
        {"length_m": 5.01},
        {"gauge": "16 AWG"},
        {"parallel": 2},
        {"extra_ohm": 0.1},
        {"wire": "THICK"},
        {"length_m": None},
    ],
)
def test_what_lies_otherwise_is_laid_anew(otherwise):
    lies = (run("supply", "J1", 10.0), replace(run("J1", "a", 5.0), **otherwise), run("J1", "b", 4.0))
    found = laying(laid(*lies))
    assert told(found.runs) == [("c", "J1", "a", "a", 5.0)]
    assert found.taken_up == (lies[1].id,)


def test_a_supply_without_a_circuit_for_it_gets_one_and_its_part():
    found = laying(laid(), onto=(), parts=())
    (fresh,) = found.circuits
    assert (fresh.supply_id, fresh.name, fresh.wire) == ("s", CIRCUIT_NAME, "WIRE")
    assert {each.circuit_id for each in found.runs} == {fresh.id}
    assert (found.parts, found.used) == ({"s": "PSU"}, ("s",))
    after = with_laying(replace(laid(), supplies=(supply("s", use="candidate"), supply("t", use="candidate"))), found)
    assert [(each.id, each.use) for each in after.supplies] == [("s", "laid"), ("t", "candidate")]


def test_what_is_taken_up_is_told_in_the_names_that_people_give():
    facts = laid(run("supply", "a", 9.5), run("a", "J1", None), run("J1", "b", 10.0), run("supply", "b", 3.0, of="d"))
    marks = {"a": "A-2", "b": "A-10"}
    gone = {each.id for each in facts.runs} - {facts.runs[2].id}
    assert told_runs(facts, gone, marks, "mm") == (
        "the run from A-2 to J1, of unknown length, circuit C of PS-s",
        "the run from PS-s to A-2, 9.5 m, circuit C of PS-s",
        "the run from PS-t to A-10, 3 m, circuit D of PS-t",
    )
    in_inches = told_runs(facts, gone, marks, "fraction")
    assert in_inches[-1] == "the run from PS-t to A-10, 9.8 ft, circuit D of PS-t", "as runs are shown there"
