"""Hanging openings and taking them off, routes and heights: there and back, lengths by hand, others stay fed."""

import random

import pytest

from hwsched.model import errors
from hwsched.model.power_queries import level_heights
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.power.connecting import (
    beyond,
    connect_openings,
    disconnect_openings,
    set_level_height,
    set_route,
)
from hwsched.operations.power.power_results import power_result
from hwsched.operations.project.history import history, undo
from hwsched.operations.survey.editing import edit_facts
from tests.model.backends import furnished
from tests.model.states import state
from tests.operations.power.test_power_editing import there_and_back
from tests.operations.powered import WHO, circuit, closet, doors, fit_all, heights, lines, power, write_catalogue
from tests.wiring.power_rows import run


@furnished
def present(project):
    """Four openings ten metres apart, two supplies with a circuit each; identifiers by name."""
    write_catalogue(project)
    made = doors(project, ["1", "2", "3", "4"])
    made["PS1"], made["PS2"] = closet(project), closet(project, "PS2", x_m=50.0)
    made["C1"], made["C2"] = circuit(project, made["PS1"]), circuit(project, made["PS2"], "C2")
    return made


def chain(project, present, marks="123", length=5.0, on="C1"):
    begin = "supply"
    for mark in marks:
        connect_openings(project, present[on], [present[mark]], who=WHO, from_node=begin, length_m=length)
        begin = mark


def test_each_hangs_by_a_run_of_its_own(project, present):
    changes = there_and_back(
        project, lambda: connect_openings(project, present["C1"], [present["1"], present["3"]], who=WHO)
    )
    assert changes.openings == {present["1"], present["3"]}
    # Estimated from the plan: 10 and 30 m along it, no rise (by hand).
    assert lines(project) == [("C1", "supply", "1", 10.0), ("C1", "supply", "3", 30.0)]


def test_steps_are_named_by_one_opening_or_by_their_number(project, present):
    both = [present["1"], present["2"]]
    connect_openings(project, present["C1"], both, who=WHO)
    connect_openings(project, present["C2"], both[:1], who=WHO)
    disconnect_openings(project, both[:1], who=WHO)
    connect_openings(project, present["C2"], both[:1], who=WHO)
    disconnect_openings(project, both, who=WHO)
    assert [step.summary for step in history(project)][-5:] == [
        "Connect 2 openings to circuit C1 of PS1",
        "Connect 1 to circuit C2 of PS2",
        "Take 1 off its circuit",
        "Connect 1 to circuit C2 of PS2",
        "Take 2 openings off their circuits",
    ]


def test_lengths_measured_estimated_given_unknown(project, present):
    set_route(project, present["1"], present["PS1"], who=WHO, length_m=17.5)
    connect_openings(project, present["C1"], [present["1"], present["2"]], who=WHO)
    connect_openings(project, present["C1"], [present["3"]], who=WHO, length_m=8)
    connect_openings(project, present["C1"], [present["4"]], who=WHO, from_node="3")
    assert lines(project) == [
        ("C1", "3", "4", None), ("C1", "supply", "1", 17.5), ("C1", "supply", "2", 20.0), ("C1", "supply", "3", 8.0),
    ]  # fmt: skip


def test_beside_its_supply_a_length_is_not_made_up(project, present):
    there = doors(project, ["0"])["0"]
    connect_openings(project, present["C1"], [present["1"]], who=WHO)
    edit_facts(project, "opening", there, {"plan_x_m": 0.0}, who=WHO)
    connect_openings(project, present["C1"], [there], who=WHO)
    assert ("C1", "supply", "0", None) in lines(project)


def test_another_level_and_another_building(project, present):
    far = doors(project, ["21"], level="2")["21"]
    away = doors(project, ["A1"], building="Annex")["A1"]
    connect_openings(project, present["C1"], [far, away], who=WHO)
    assert lines(project) == [("C1", "supply", "21", None), ("C1", "supply", "A1", None)]
    heights(project, l1=0.0, l2=4.0)
    connect_openings(project, present["C1"], [far, away], who=WHO)
    assert lines(project) == [("C1", "supply", "21", 14.0), ("C1", "supply", "A1", None)]


def test_moving_to_another_circuit_keeps_the_others_fed(project, present):
    chain(project, present)
    there_and_back(project, lambda: connect_openings(project, present["C2"], [present["2"]], who=WHO, length_m=9))
    assert lines(project) == [("C1", "1", "3", 10.0), ("C1", "supply", "1", 5.0), ("C2", "supply", "2", 9.0)]


def test_taking_off_several_in_a_row(project, present):
    chain(project, present, "1234")
    there_and_back(project, lambda: disconnect_openings(project, [present["1"], present["2"], present["3"]], who=WHO))
    assert lines(project) == [("C1", "supply", "4", 20.0)]
    there_and_back(project, lambda: disconnect_openings(project, [present["4"]], who=WHO))
    assert lines(project) == []


def test_taking_off_what_does_not_hang_changes_nothing(project, present):
    before = state(project)
    assert disconnect_openings(project, [present["1"]], who=WHO).number is None
    assert state(project) == before


def test_an_unknown_length_stays_unknown_when_wires_are_joined():
    runs = [run("supply", "a", 5.0), run("a", "b", None), run("b", "c", 7.0), run("b", "J1", 3.0)]
    assert beyond(runs, ["b"]) == {"c:b-c": ("a", None), "c:b-J1": ("a", None)}
    assert beyond(runs, ["a"]) == {"c:a-b": ("supply", None)}
    assert beyond(runs, ["a", "b"]) == {"c:b-c": ("supply", None), "c:b-J1": ("supply", None)}
    assert beyond([run("a", "b"), run("b", "a"), run("a", "c")], ["a", "b"])["c:a-c"][1] == 30.0


def test_hanging_beyond_what_hung_beyond_it(project, present):
    chain(project, present, "12")
    connect_openings(project, present["C1"], [present["1"]], who=WHO, from_node="2", length_m=3)
    assert lines(project) == [("C1", "2", "1", 3.0), ("C1", "supply", "2", 10.0)]


@pytest.mark.parametrize(
    ("what", "word"),
    [
        ({"from_node": "1"}, "From: 1 cannot be fed from itself"),
        ({"from_node": "nowhere"}, "From: circuit C1 has no nowhere; accepted: supply"),
        ({"from_node": "4"}, "From: circuit C1 has no 4"),
        ({"length_m": 0}, "Length, one way: 0 m"),
        ({"length_m": -2.0}, "Length, one way: -2 m"),
        ({"length_m": float("nan")}, "Length, one way"),
    ],
)
def test_what_cannot_hang(project, present, what, word):
    connect_openings(project, present["C2"], [present["4"]], who=WHO)
    before = state(project)
    with pytest.raises(errors.ValueRefusedError) as refused:
        connect_openings(project, present["C1"], [present["1"], present["2"]], who=WHO, **what)
    assert str(refused.value).startswith(word)
    assert state(project) == before


def test_what_is_gone_is_said_to_be(project, present):
    before = state(project)
    for verb in (
        lambda: connect_openings(project, "nobody", [present["1"]], who=WHO),
        lambda: connect_openings(project, present["C1"], ["nobody"], who=WHO),
        lambda: connect_openings(project, present["C1"], [present["1"], "nobody"], who=WHO),
        lambda: disconnect_openings(project, ["nobody"], who=WHO),
        lambda: set_route(project, "nobody", present["PS1"], who=WHO, length_m=3),
        lambda: set_route(project, present["1"], "nobody", who=WHO, length_m=3),
        lambda: set_level_height(project, "Main", "77", 3.0, who=WHO),
        lambda: set_level_height(project, "Nowhere", "1", 3.0, who=WHO),
    ):
        with pytest.raises(errors.MissingRowError):
            verb()
    assert state(project) == before


def routes(project):
    return sorted((r.length_m, r.pinned) for r in power(project).routes)


def test_a_route_is_measured_and_pinned_one_fact_at_a_time(project, present):
    there_and_back(project, lambda: set_route(project, present["1"], present["PS1"], who=WHO, length_m=12))
    there_and_back(project, lambda: set_route(project, present["1"], present["PS1"], who=WHO, pinned=True))
    assert routes(project) == [(12.0, True)]
    set_route(project, present["1"], present["PS1"], who=WHO, length_m=13)
    assert routes(project) == [(13.0, True)]
    # At two supplies it cannot be kept.
    there_and_back(project, lambda: set_route(project, present["1"], present["PS2"], who=WHO, pinned=True))
    assert sorted((r.supply_id == present["PS2"], r.pinned) for r in power(project).routes) == [
        (False, False), (True, True),
    ]  # fmt: skip
    there_and_back(project, lambda: set_route(project, present["1"], present["PS2"], who=WHO, pinned=False))


def test_a_route_that_cannot_be(project, present):
    before = state(project)
    for facts in ({}, {"length_m": 0}, {"length_m": -1}, {"length_m": float("inf")}):
        with pytest.raises(errors.ValueRefusedError, match="Length, one way"):
            set_route(project, present["1"], present["PS1"], who=WHO, **facts)
    assert state(project) == before


def test_heights_of_levels(project, present):
    there_and_back(project, lambda: set_level_height(project, "Main", "1", -3.5, who=WHO))
    with project.reading() as connection:
        assert level_heights(connection)["Main", "1"] == -3.5
    there_and_back(project, lambda: set_level_height(project, "Main", "1", None, who=WHO))
    for wrong in (float("nan"), float("inf"), 1001.0, -201.0):
        with pytest.raises(errors.ValueRefusedError, match="Height of the floor"):
            set_level_height(project, "Main", "1", wrong, who=WHO)


def test_a_fit_is_out_of_date_once_its_opening_hangs(project, present):
    fit_all(project)
    connect_openings(project, present["C1"], [present["1"]], who=WHO)
    (checked,) = check_openings(project, [present["1"]])
    assert checked.fit is None
    stored = power_result(project, fresh=False)
    assert [f.finding.needs for f in stored.findings if f.finding.rule == "circuit-known"] == [("opening.fit",)]
    # For those who look at it, what hangs there is fitted on the spot.
    assert not [f for f in power_result(project).findings if f.finding.rule == "circuit-known"]
    fit_all(project)
    (checked,) = check_openings(project, [present["1"]])
    assert checked.fit.power == "supply"
    undo(project, who=WHO)
    undo(project, who=WHO)
    (checked,) = check_openings(project, [present["1"]])
    assert checked.fit is not None


def reference(runs, gone):
    """Take openings off one after the other, by plain bookkeeping: node to feeder and length."""
    feeder = {r.to_node: (r.from_node, r.length_m) for r in runs}
    for opening in gone:
        if opening not in feeder:
            continue
        near, length = feeder.pop(opening)
        for node, (begin, own) in list(feeder.items()):
            if begin == opening:
                feeder[node] = (near, None if own is None or length is None else own + length)
    return feeder


def test_taking_off_any_of_a_random_tree_agrees_with_one_after_the_other():
    rng = random.Random(4)
    for _ in range(200):
        nodes = [f"J{i}" if rng.random() < 0.3 else f"o{i}" for i in range(rng.randint(1, 12))]
        runs = [
            run(rng.choice(["supply", *nodes[:i]]), node, rng.choice([None, 1.0, 2.0, 4.0, 8.0]))
            for i, node in enumerate(nodes)
        ]
        gone = [n for n in nodes if n[0] == "o" and rng.random() < 0.5]
        moved = beyond(runs, gone)
        left = {r.to_node: moved.get(r.id, (r.from_node, r.length_m)) for r in runs if r.to_node not in gone}
        assert left == reference(runs, rng.sample(gone, len(gone)))
