"""Who falls out when one thing fails, who keeps power on the fire alarm; against ways searched apart."""

import random

import pytest

from hwsched.wiring.failure import failures, on_alarm, without_power
from tests.rules.scenario import fp
from tests.wiring.power_rows import BATTERY, alone, circuit, connected, only, parts, run, supply, work


def out(result, what):
    return {each.name: set(each.opening_ids) for each in failures(result) if each.what == what}


def test_a_run_takes_what_hangs_behind_it():
    runs = [run("supply", "J1"), run("J1", "a"), run("J1", "b"), run("b", "c")]
    (result,) = alone(runs).supplies
    assert out(result, "run") == {
        "PS-s/C PS-s to J1": {"a", "b", "c"}, "PS-s/C J1 to A": {"a"}, "PS-s/C J1 to B": {"b", "c"},
        "PS-s/C B to C": {"c"},
    }  # fmt: skip
    assert out(result, "circuit") == {"PS-s/C": {"a", "b", "c"}}
    assert out(result, "supply") == {"PS-s": {"a", "b", "c"}}
    assert out(result, "battery") == {}


def test_a_loop_keeps_power_where_one_of_its_runs_is_cut():
    """By the rules runs are a tree; what is in a loop has two ways all the same, and what is apart has none."""
    runs = [run("supply", "a"), run("a", "b"), run("supply", "b"), run("b", "c"), run("J9", "d")]
    (result,) = alone(runs).supplies
    assert out(result, "run") == {
        "PS-s/C PS-s to A": set(), "PS-s/C A to B": set(), "PS-s/C PS-s to B": set(), "PS-s/C B to C": {"c"},
        "PS-s/C J9 to D": set(),
    }  # fmt: skip


@pytest.mark.parametrize("seed", range(6))
def test_behind_a_run_is_what_no_way_reaches(seed):
    """Each opening is walked back to the supply over its one feeder: it falls out where the cut run is on that way."""
    rng = random.Random(seed)
    runs, nodes = [], ["supply"]
    for i in range(rng.randint(3, 12)):
        end = f"J{i}" if rng.random() < 0.3 else f"o{i}"
        runs.append(run(rng.choice(nodes), end, 2.0))
        nodes.append(end)
    rng.shuffle(runs)
    (result,) = alone(runs).supplies
    feeder = {each.to_node: each for each in runs}

    def way(node):
        return [feeder[node], *way(feeder[node].from_node)] if node in feeder else []

    found = {
        (each.from_node.upper(), each.to_node.upper()): {
            o.to_node for o in runs if o.opening_id and each in way(o.to_node)
        }
        for each in runs
    }
    told = {}
    for each in failures(result):
        if each.what == "run":
            begin, end = each.name.removeprefix("PS-s/C ").split(" to ")
            told["SUPPLY" if begin == "PS-s" else begin, end] = set(each.opening_ids)
    assert told == found


def test_without_mains_they_last_as_long_as_the_battery():
    """0.4 A for 4 h with 1.25 and 1.25 need 2.5 Ah at 25 C; 7 Ah hold the hours asked, 1 Ah two fifths of them."""

    def lasts(**facts):
        cat = parts(add=(BATTERY,), BAT={"capacity_ah": facts.pop("ah", 7.0)})
        found = alone([run("supply", "a")], cat, supplies=[supply(temperature_c=25.0, **facts)])
        (result,) = found.supplies
        return next(each.after_h for each in failures(result) if each.what == "mains")

    asked = {"battery": "BAT", "standby_hours": 4.0}
    assert lasts() == 0.0
    assert lasts(**asked) == 4.0
    assert lasts(ah=1.0, **asked) == pytest.approx(1.6, rel=0.01)
    # Nobody asked for hours: nothing is reckoned, and nothing said.
    assert lasts(battery="BAT") is None


def test_the_alarm_leaves_what_stays():
    cat = parts()
    runs = [run("supply", "a"), run("supply", "b", of="d"), run("supply", "c", of="e")]
    found = work(
        runs, {n: connected(n, cat) for n in "abc"}, cat,
        circuits=[circuit(alarm="drops"), circuit("d", alarm="stays"), circuit("e")],
    )  # fmt: skip
    alarm = on_alarm(found.supplies[0])
    assert (alarm.dropped, alarm.kept, alarm.unknown) == (("a",), ("b",), ("c",))


def test_doors_without_power_stand_as_their_devices_declare():
    cat = parts(STRIKE={"fail": "fail-secure"})
    runs = [run("supply", name) for name in "abc"]
    openings = {"a": only("a", cat, "STRIKE"), "b": only("b", cat, "MAG"), "c": connected("c", cat)}
    (result,) = work(runs, openings, cat).supplies
    assert without_power(result) == {"a": "locked", "b": "released", "c": "unit"}
    both = {"a": connected("a", cat, fp("strike", "STRIKE"), fp("lock", "MAG"))}
    (result,) = work(runs[:1], both, cat).supplies
    assert without_power(result) == {"a": "locked"}
