"""What would mend a low voltage: names what does, and each does when it is laid and solved again in all states."""

import re
from dataclasses import replace

import pytest

from tests.wiring.power_rows import alone, connected, only_circuit, parts, run, said, supply

RUNS = [run("supply", "a", 60.0), run("a", "b", 60.0), run("a", "c", 12.0)]
WIDE = {"supply_high_v": 30.0}
CASES = {
    "constant current": ({}, [run("supply", "a", 60.0), run("a", "b", 60.0), run("a", "c", 12.0)], {}),
    "peak": (
        {"UNIT": {"supply_rest_a": 0.02, "supply_inrush_a": 1.0}},
        [run("supply", "a", 30.0), run("a", "b", 30.0), run("a", "c", 6.0)],
        {},
    ),
    "power": ({"UNIT": {"draws": "power"}}, [run("supply", "a", 40.0), run("a", "b", 25.0)], {}),
    "resistance": ({"UNIT": {"draws": "resistance"}}, RUNS, {}),
    "battery": ({}, [run("supply", "a", 30.0), run("a", "b", 20.0)], {"supplies": [supply(battery="BAT")]}),
    "wide window": ({"UNIT": WIDE}, RUNS, {}),
    "wide window and battery": ({"UNIT": WIDE}, RUNS, {"supplies": [supply(battery="BAT")]}),
    "narrow window": ({"UNIT": {"supply_high_v": 12.3}}, RUNS, {}),
}


def lows(result):
    return {node.node for node in result.nodes if node.margin_v is not None and node.margin_v < -1e-6}


def present(offer, node, runs, changed, more):
    """Lay a mend as a person would who reads its text; returns runs, changed parts and the node to look at."""
    path, at = [], node
    while at != "supply":
        (each,) = [r for r in runs if r.to_node == at]
        path.insert(0, each)
        at = each.from_node
    if offer.kind in ("thicker-run", "thicker-path", "parallel-run", "parallel-path"):
        where = re.search(r"run the supply to (\S+):|run (\S+) to (\S+):", offer.text)
        chosen = path
        if "all" not in offer.text and where:
            # Openings are named by their marks, junctions by their own name.
            end = where[1] or where[3]
            chosen = [r for r in path if r.to_node in (end, end.lower())]
            assert len(chosen) == 1, offer.text
        if offer.kind.startswith("thicker"):
            facts = {"gauge": re.match(r"(.+?) for", offer.text)[1], "stranding": "stranded"}
        else:
            more_of = re.match(r"a second|(\d) more", offer.text)
            facts = {"parallel": 1 + int(more_of[1] or 1)}
        return [replace(r, **facts) if r in chosen else r for r in runs], changed
    if offer.kind == "own-run":
        gauge = re.search(r"m of (.+?) stranded", offer.text)[1]
        length = sum(r.length_m for r in path)
        beyond = [replace(r, from_node=path[-1].from_node) if r.from_node == node else r for r in runs]
        return [
            run("supply", node, length, gauge=gauge, stranding="stranded") if r.to_node == node else r for r in beyond
        ], changed
    if offer.kind == "nearer-supply":
        share = float(re.search(r"within (\S+) m", offer.text)[1]) / sum(r.length_m for r in path)
        return [replace(r, length_m=r.length_m * share) if r in path else r for r in runs], changed
    assert offer.kind in ("source-voltage", "nominal-voltage")
    output = float(re.search(r"of (\S+) V \(now", offer.text)[1])
    matched = more.get("supplies") and offer.kind == "nominal-voltage"
    scaled = {"BAT": {"end_v": 10.5 * output / 12.0}} if matched else {}
    return runs, {**changed, "PSU": {"output_v": output}, **scaled}


@pytest.mark.parametrize("name", CASES)
def test_every_mend_that_works_does_when_it_is_laid(name):
    changed, runs, more = CASES[name]
    found = alone(runs, parts(**changed), **more)
    result = only_circuit(found)
    assert result.cure_offers
    assert set(result.cure_offers) <= lows(result)
    proved = 0
    for node, cure_offers in result.cure_offers.items():
        assert len({offer.text for offer in cure_offers}) == len(cure_offers)
        for offer in cure_offers:
            if not offer.works:
                continue
            if offer.kind == "own-run" and any(r.from_node == node for r in runs):
                # The devices move onto the new run, the wire that went on stays: not to be laid by moving one run.
                continue
            new_runs, new_parts = present(offer, node, runs, changed, more)
            again = only_circuit(alone(new_runs, parts(**new_parts), **more))
            # A cure cures the circuit: what it is offered for, and every other place, each under its own operations.
            assert not lows(again), offer.text
            if offer.kind.endswith("voltage"):
                assert all(n.maximum_v is None or max(n.volts.values()) <= n.maximum_v + 0.011 for n in again.nodes), (
                    offer.text
                )
            # And its number is what arrives.
            told = float(re.search(r": (-?\d+\.\d+) V at", offer.text)[1])
            assert again.node_of(node).lowest_v >= told - 0.011, offer.text
            if offer.kind.startswith(("thicker", "parallel", "own")):
                assert again.node_of(node).lowest_v == pytest.approx(told, abs=0.006), offer.text
            proved += 1
    assert proved >= 3


def test_the_finding_names_what_works_and_only_that():
    found = alone(RUNS)
    result = only_circuit(found)
    for finding in said(found, "circuit-voltage"):
        node = next(n for n in result.nodes if finding.message.startswith(f"{n.name} finds"))
        for offer in result.cure_offers[node.node]:
            assert (offer.text in finding.cure) == offer.works, offer.text


def test_a_higher_voltage_that_is_too_much_in_another_state_does_not_do():
    # What lifts the lowest mains to 12.3 V lifts the normal output over it: 12.3 / 11.4 x 12 = 12.95 V.
    result = only_circuit(alone(RUNS, parts(UNIT={"supply_high_v": 12.3})))
    for cure_offers in result.cure_offers.values():
        (higher,) = [offer for offer in cure_offers if offer.kind == "source-voltage"]
        assert not higher.works
        (nominal,) = [offer for offer in cure_offers if offer.kind == "nominal-voltage"]
        assert not nominal.works


def test_a_nominal_voltage_counts_from_its_lowest():
    # A 24 V supply of 5 % gives 22.8 V at its lowest, not 24 V.
    result = only_circuit(alone([run("supply", "a", 90.0)], parts(UNIT=WIDE)))
    (nominal,) = [offer for offer in result.cure_offers["a"] if offer.kind == "nominal-voltage"]
    told = float(re.search(r": (\d+\.\d+) V at", nominal.text)[1])
    # 22.8 - 2 x 90 x 0.4 x 0.022207 = 21.20 V (as in test_work)
    assert told == pytest.approx(22.8 - 1.5989, abs=0.006)
    assert nominal.works


def test_a_higher_output_does_not_mend_what_the_battery_ends_at():
    battery = {"supplies": [supply(battery="BAT")]}
    result = only_circuit(alone([run("supply", "a", 60.0)], parts(UNIT=WIDE), **battery))
    by_kind = {offer.kind: offer for offer in result.cure_offers["a"]}
    assert not by_kind["source-voltage"].works
    assert "in the state standby end" in by_kind["source-voltage"].text
    assert by_kind["nominal-voltage"].works
    assert by_kind["nominal-voltage"].text.endswith("with a standby battery to match")


def test_the_gauge_of_a_door_loop_is_no_cure():
    """It is bought as a part: what is laid leads to the frame, and the loop stays behind it."""
    cat = parts()
    found = only_circuit(alone([run("supply", "a", 80.0)], cat, openings={"a": connected("a", cat, without=())}))
    offers = found.cure_offers["a/leaf"]
    assert {offer.kind for offer in offers if offer.works} >= {"thicker-run", "own-run", "nearer-supply"}
    for offer in offers:
        assert "A to A (leaf)" not in offer.text
        assert not re.search(r"within 0 m", offer.text)
    own = next(offer for offer in offers if offer.kind == "own-run")
    assert "80 m of" in own.text


def test_what_a_cure_leaves_low_is_said():
    """A run of its own for b leaves a behind 90 m: 11.4 - 2 x 90 x 0.4 x 0.022207 = 9.80 V of the 10 V it needs."""
    found = only_circuit(alone([run("supply", "J1", 60.0), run("J1", "a", 30.0), run("J1", "b", 31.0)]))
    (own,) = [offer for offer in found.cure_offers["b"] if offer.kind == "own-run"]
    assert (own.works, own.text.endswith("but low remains A")) == (False, True)


def test_nothing_low_nothing_mended():
    assert only_circuit(alone([run("supply", "a")])).cure_offers == {}


def test_three_nodes_are_tried_and_what_cures_the_circuit_is_offered_at_all():
    result = only_circuit(alone([run("supply", "a", 60.0), *(run("a", n, 30.0) for n in "bcdef")], parts()))
    assert set(result.cure_offers) == lows(result)
    assert len(lows(result)) > 3
    works = {offer.text for offers in result.cure_offers.values() for offer in offers if offer.works}
    assert works
    ordered = sorted((n for n in result.nodes if n.node in lows(result)), key=lambda n: n.margin_v)
    first, second, third, *others = (result.cure_offers[n.node] for n in ordered)
    assert all({offer.text for offer in offers} == works for offers in others)
    assert all(any(not offer.works for offer in offers) for offers in (first, second, third))
