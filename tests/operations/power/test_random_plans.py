"""Cures and plans offered for random supplies, applied: no opening is low on what they touch, in any state."""

import random
import re
from dataclasses import replace

import pytest

from hwsched.calc.power.planning.plan import plan_power
from hwsched.calc.power.planning.question import AIMS
from hwsched.model.errors import ValueRefusedError
from hwsched.operations.opening.fits_within import FitMemory
from hwsched.operations.opening.lock_points import point_results
from hwsched.operations.power.building_planning import Asked, BuildingPlanning
from hwsched.operations.power.planned_runs import with_laying
from hwsched.rules.network.connected_opening import ConnectedOpening
from hwsched.values import Settings, SupplyLink
from hwsched.values.power import PowerFacts
from hwsched.values.terms import CostTerms
from hwsched.wiring import solve_supplies
from tests.calc.oracles import case_count
from tests.rules.scenario import given, opening, part
from tests.wiring.power_rows import alone, circuit, connected, only_circuit, parts, run, supply
from tests.wiring.test_cures import lows, present

CASES = min(case_count(4), 500)
WIRES = (
    part("W16", "wire", 0.8, gauge="16 AWG", conductors=2, stranding="stranded", outside_diameter_mm=6.0),
    part("W14", "wire", 1.3, gauge="14 AWG", conductors=2, stranding="stranded", outside_diameter_mm=7.0),
)
BATTERY = part("BAT", "standby-battery", voltage_v=12.0, capacity_ah=7.0, end_v=10.8, inside_ohm=0.03)


def random_parts(rng):
    """A unit of any law, a supply of any tolerance, three wires."""
    held = rng.uniform(0.1, 0.4)
    unit = {
        "draws": rng.choice(("current", "power", "resistance")), "supply_a": held,
        "supply_low_v": rng.uniform(9.4, 10.2), "supply_rest_a": rng.choice((None, held * rng.random())),
        "supply_inrush_a": rng.choice((None, held * rng.uniform(1, 3))), "supply_high_v": 14.0,
    }  # fmt: skip
    source = {"output_a": rng.uniform(2.0, 6.0), "tolerance_share": rng.uniform(0.01, 0.06),
              "inside_ohm": rng.choice((None, rng.uniform(0.01, 0.2)))}  # fmt: skip
    return {"UNIT": {k: v for k, v in unit.items() if v is not None},
            "PSU": {k: v for k, v in source.items() if v is not None}}  # fmt: skip


def building(rng):
    """Two or three places, up to eight openings of which some hang by hand; what is planned of it."""
    cat = parts(add=(BATTERY, *WIRES), **random_parts(rng))
    supplies = [
        supply(f"s{i}", building="B", level="1", level_m=0.0, x_m=rng.uniform(0, 40), y_m=rng.uniform(0, 15),
               rise_m=1.0, use=rng.choice(("candidate", "laid")), battery=rng.choice((None, "BAT")))
        for i in range(rng.randint(2, 3))
    ]  # fmt: skip
    marks = [f"o{i}" for i in range(rng.randint(2, 8))]
    openings = {
        mark: ConnectedOpening(
            given(opening(id=mark, mark=mark.upper(), building="B", level="1", power_wish="supply",
                          plan_x_m=rng.uniform(0, 40), plan_y_m=rng.uniform(0, 15), rise_m=rng.uniform(0, 2)), cat=cat),
            None)
        for mark in marks
    }  # fmt: skip
    circuits = [circuit("c", "s0", at_once=rng.choice((None, 0, 1, 3)))]
    hanging = [mark for mark in marks if rng.random() < 0.4]
    runs = [
        run(rng.choice(("supply", *hanging[:i])), mark, rng.uniform(2, 30)) for i, mark in enumerate(hanging)
    ]  # fmt: skip
    facts = PowerFacts(tuple(supplies), tuple(circuits) if runs else (), tuple(runs))
    kept = hanging[: rng.randint(0, len(hanging))]
    return cat, facts, openings, kept


def linked(openings, memory, number="PSU"):
    """Openings as they are fitted once they hang on a supply."""

    found = {}
    for mark, each in openings.items():
        points = [replace(each.given, supply_link=SupplyLink(number))]
        found[mark] = ConnectedOpening.of([p.at for p in point_results(points, {}, memory.of)])
    return found


@pytest.mark.fuzz
def test_every_plan_that_is_offered_proves_when_it_is_laid():
    rng = random.Random("plans")
    offered = 0
    for _ in range(CASES):
        cat, facts, bare, kept = building(rng)
        settings, memory = Settings(length_style="mm"), FitMemory()
        openings = linked(bare, memory)
        # What lies on the way to what is kept is kept with it: hands lay from the supply outward.
        planned = {mark: each for mark, each in openings.items() if mark not in kept}
        if not planned:
            continue
        before = solve_supplies(facts, openings, cat, settings)
        aim = rng.choice(AIMS)
        work = BuildingPlanning(
            facts, facts.supplies, cat, settings, CostTerms(currency="USD", labour_per_hour="80"), {("B", "1"): 0.0},
            planned, before, Asked("B", None, aim, None, tuple(kept)), {mark: mark.upper() for mark in openings},
            openings, (), memory,
        )  # fmt: skip
        try:
            plan, laying, _ = work.proved(lambda question, aim=aim: plan_power(question, aim))
        except ValueRefusedError:
            continue
        offered += 1
        laid = with_laying(facts, laying)
        touched = set(work.touched(laying))
        then = solve_supplies(laid, openings, cat, settings, touched)
        assert {o for s in then.supplies for o in s.openings} >= set(planned)
        assert not set(laying.taken_up) & {r.id for r in laid.runs}
        least = float("inf")
        for each in (c for s in then.supplies for c in s.circuits):
            assert not each.collapsed
            assert not lows(each)
            assert {proof.standing for proof in each.proofs} <= {"proved"}
            assert not any(p.kind == "unsound" for p in each.problems)
            for node in each.nodes:
                assert node.maximum_v is None or max(node.volts.values()) <= node.maximum_v + 1e-9
                if node.opening_id in planned and node.margin_v is not None:
                    least = min(least, node.margin_v)
        # What is told is what is found.
        assert plan.margin_v == pytest.approx(least, abs=1e-9)
        for s in then.supplies:
            fed_here = [o for o in s.openings if o in planned]
            assert not fed_here or s.held_a[1] <= 0.8 * s.rated_a + 1e-6 or not laying.runs
    print(f"plans offered {offered} of {CASES}")
    assert offered > CASES / 3


def low_circuit(rng):
    """A circuit of up to seven openings, its wire too thin or too long for some."""
    changed = random_parts(rng)
    changed["PSU"]["output_a"] = 20.0
    count = rng.randint(1, 7)
    nodes = [f"J{i}" if i and rng.random() < 0.2 else f"o{i}" for i in range(count)]
    runs = [
        run(rng.choice(("supply", *nodes[:i])), node, rng.uniform(5, 45), stranding="stranded",
            gauge=rng.choice(("22 AWG", "20 AWG", "18 AWG")))
        for i, node in enumerate(nodes)
    ]  # fmt: skip
    more = {"supplies": [supply(battery=rng.choice((None, "BAT")))], "circuits": [circuit(at_once=rng.randint(0, 3))]}
    return changed, runs, more


@pytest.mark.fuzz
def test_every_cure_that_is_offered_leaves_no_opening_low_when_it_is_laid():
    rng = random.Random("cures")
    low = offered = 0
    while low < CASES:
        changed, runs, more = low_circuit(rng)
        # Half of the openings have their unit beyond a door loop, which is bought as it is.
        loops = {r.opening_id: rng.random() < 0.5 for r in runs if r.opening_id}

        def solved(laid, changed, loops=loops, more=more):
            cat = parts(add=(BATTERY,), **changed)
            hung = {o: connected(o, cat, without=() if loop else ("power-transfer",)) for o, loop in loops.items()}
            return only_circuit(alone(laid, cat, openings=hung, **more))

        result = solved(runs, changed)
        if not result.cure_offers:
            continue
        low += 1
        # Every load that is low has a cure tried for it.
        assert set(result.cure_offers) >= lows(result)
        for offers in result.cure_offers.values():
            for offer in offers:
                # What cures the whole circuit is offered for its other places too, in the words of the one it is for.
                told_at = re.search(r"V at (O\d+)", offer.text)
                frame = told_at[1].lower() if told_at else ""
                if not offer.works or (offer.kind == "own-run" and any(r.from_node == frame for r in runs)):
                    continue
                new_runs, new_parts = present(offer, frame, runs, changed, more)
                again = solved(new_runs, {**changed, **{k: {**changed.get(k, {}), **v} for k, v in new_parts.items()}})
                assert not again.collapsed, offer.text
                assert not lows(again), (offer.text, runs)
                told = float(re.search(r": (-?\d+\.\d+) V at", offer.text)[1])
                assert again.node_of_devices(frame).lowest_v >= told - 0.011, offer.text
                assert " 0 m" not in offer.text
                offered += 1
    print(f"cures offered {offered} for {low} circuits that are low")
    assert offered >= low
