"""What would mend a low voltage: names what does, and each does when it is laid and solved again in all states."""

import re
from dataclasses import replace

import pytest

from tests.wiring.laid import alone, only_circuit, parts, run, said, supply

RUNS = [run("supply", "a", 60.0), run("a", "b", 60.0), run("a", "c", 12.0)]
WIDE = {"supply_high_v": 30.0}
CASES = {
    "constant current": ({}, [run("supply", "a", 60.0), run("a", "b", 60.0), run("a", "c", 12.0)], {}),
    "peak": ({"UNIT": {"supply_rest_a": 0.02, "supply_inrush_a": 1.0}}, RUNS, {}),
    "power": ({"UNIT": {"draws": "power"}}, [run("supply", "a", 40.0), run("a", "b", 25.0)], {}),
    "resistance": ({"UNIT": {"draws": "resistance"}}, RUNS, {}),
    "battery": ({}, [run("supply", "a", 30.0), run("a", "b", 20.0)], {"supplies": [supply(battery="BAT")]}),
    "wide window": ({"UNIT": WIDE}, RUNS, {}),
    "wide window and battery": ({"UNIT": WIDE}, RUNS, {"supplies": [supply(battery="BAT")]}),
    "narrow window": ({"UNIT": {"supply_high_v": 12.3}}, RUNS, {}),
}


def lows(worked):
    return {node.node for node in worked.nodes if node.margin_v is not None and node.margin_v < -1e-6}


def laid(mend, node, runs, changed, more):
    """Lay a mend as a person would who reads its text; returns runs, changed parts and the node to look at."""
    path, at = [], node
    while at != "supply":
        (each,) = [r for r in runs if r.to_node == at]
        path.insert(0, each)
        at = each.from_node
    if mend.kind in ("thicker-run", "thicker-path", "parallel-run", "parallel-path"):
        where = re.search(r"run the supply to (\S+):|run (\S+) to (\S+):", mend.text)
        chosen = path
        if "all" not in mend.text and where:
            end = (where[1] or where[3]).lower()
            chosen = [r for r in path if r.to_node == end]
            assert len(chosen) == 1, mend.text
        if mend.kind.startswith("thicker"):
            facts = {"gauge": re.match(r"(.+?) for", mend.text)[1], "stranding": "stranded"}
        else:
            more_of = re.match(r"a second|(\d) more", mend.text)
            facts = {"parallel": 1 + int(more_of[1] or 1)}
        return [replace(r, **facts) if r in chosen else r for r in runs], changed
    if mend.kind == "own-run":
        gauge = re.search(r"m of (.+?) stranded", mend.text)[1]
        length = sum(r.length_m for r in path)
        beyond = [replace(r, from_node=path[-1].from_node) if r.from_node == node else r for r in runs]
        return [
            run("supply", node, length, gauge=gauge, stranding="stranded") if r.to_node == node else r for r in beyond
        ], changed
    if mend.kind == "nearer-supply":
        share = float(re.search(r"within (\S+) m", mend.text)[1]) / sum(r.length_m for r in path)
        return [replace(r, length_m=r.length_m * share) if r in path else r for r in runs], changed
    assert mend.kind in ("source-voltage", "nominal-voltage")
    output = float(re.search(r"of (\S+) V \(now", mend.text)[1])
    matched = more.get("supplies") and mend.kind == "nominal-voltage"
    scaled = {"BAT": {"end_v": 10.5 * output / 12.0}} if matched else {}
    return runs, {**changed, "PSU": {"output_v": output}, **scaled}


@pytest.mark.parametrize("name", CASES)
def test_every_mend_that_works_does_when_it_is_laid(name):
    changed, runs, more = CASES[name]
    found = alone(runs, parts(**changed), **more)
    worked = only_circuit(found)
    assert worked.mends
    assert set(worked.mends) <= lows(worked)
    proved = 0
    for node, mends in worked.mends.items():
        assert len({mend.text for mend in mends}) == len(mends)
        for mend in mends:
            if not mend.works:
                continue
            if mend.kind == "own-run" and any(r.from_node == node for r in runs):
                # The devices move onto the new run, the wire that went on stays: not to be laid by moving one run.
                continue
            new_runs, new_parts = laid(mend, node, runs, changed, more)
            again = only_circuit(alone(new_runs, parts(**new_parts), **more))
            assert node not in lows(again), mend.text
            if mend.kind.endswith("voltage"):
                assert all(n.maximum_v is None or max(n.volts.values()) <= n.maximum_v + 0.011 for n in again.nodes), (
                    mend.text
                )
            # And its number is what arrives.
            told = float(re.search(r": (-?\d+\.\d+) V at", mend.text)[1])
            assert again.node_of(node).lowest_v >= told - 0.011, mend.text
            proved += 1
    assert proved >= 3


def test_the_finding_names_what_works_and_only_that():
    found = alone(RUNS)
    worked = only_circuit(found)
    for finding in said(found, "circuit-voltage"):
        node = next(n for n in worked.nodes if finding.message.startswith(f"{n.name} finds"))
        for mend in worked.mends[node.node]:
            assert (mend.text in finding.cure) == mend.works, mend.text


def test_a_higher_voltage_that_is_too_much_in_another_state_does_not_do():
    # What lifts the lowest mains to 12.3 V lifts the normal output over it: 12.3 / 11.4 x 12 = 12.95 V.
    worked = only_circuit(alone(RUNS, parts(UNIT={"supply_high_v": 12.3})))
    for mends in worked.mends.values():
        (higher,) = [mend for mend in mends if mend.kind == "source-voltage"]
        assert not higher.works
        (nominal,) = [mend for mend in mends if mend.kind == "nominal-voltage"]
        assert not nominal.works


def test_a_nominal_voltage_counts_from_its_lowest():
    # A 24 V supply of 5 % gives 22.8 V at its lowest, not 24 V.
    worked = only_circuit(alone([run("supply", "a", 90.0)], parts(UNIT=WIDE)))
    (nominal,) = [mend for mend in worked.mends["a"] if mend.kind == "nominal-voltage"]
    told = float(re.search(r": (\d+\.\d+) V at", nominal.text)[1])
    # 22.8 - 2 x 90 x 0.4 x 0.022207 = 21.20 V (as in test_work)
    assert told == pytest.approx(22.8 - 1.5989, abs=0.006)
    assert nominal.works


def test_a_higher_output_does_not_mend_what_the_battery_ends_at():
    battery = {"supplies": [supply(battery="BAT")]}
    worked = only_circuit(alone([run("supply", "a", 60.0)], parts(UNIT=WIDE), **battery))
    by_kind = {mend.kind: mend for mend in worked.mends["a"]}
    assert not by_kind["source-voltage"].works
    assert "in the state standby end" in by_kind["source-voltage"].text
    assert by_kind["nominal-voltage"].works
    assert by_kind["nominal-voltage"].text.endswith("with a standby battery to match")


def test_nothing_low_nothing_mended():
    assert only_circuit(alone([run("supply", "a")])).mends == {}


def test_at_most_three_nodes_are_mended():
    worked = only_circuit(alone([run("supply", "a", 60.0), *(run("a", n, 30.0) for n in "bcdef")], parts()))
    assert len(lows(worked)) > 3
    assert len(worked.mends) == 3
