"""Small circuits of invented openings, laid piece by piece; the parts are those of `tests.rules.scenario`."""

from hwsched.values import Settings
from hwsched.values.power import Circuit, PowerFacts, Run, Supply
from hwsched.wiring import ConnectedOpening, solve_supplies
from tests.rules.scenario import catalogue, fit, fp, given, opening, part

LOOP_MM = 500.0
USUAL = {"LOOP": {"length_mm": LOOP_MM}, "WIRE": {"reel_m": 100.0}}
"""What circuits need beside the usual parts."""
BATTERY = part("BAT", "standby-battery", voltage_v=12.0, capacity_ah=7.0, end_v=10.5)


def parts(*, drop=(), add=(BATTERY,), **changed):
    """The usual parts with what circuits need, changed attribute by attribute."""
    merged = {name: {**USUAL.get(name, {}), **changed.get(name, {})} for name in {**USUAL, **changed}}
    return catalogue(drop=drop, add=add, **merged)


def connected(name, cat, *more, without=("power-transfer",), **facts):
    """An opening with a unit that its circuit feeds; with `without=()` through the usual door loop."""
    return ConnectedOpening(
        given(opening(id=name, mark=name.upper(), **facts), cat=cat), fit(*more, power="supply", without=without)
    )


def only(name, cat, number="STRIKE", quantity=1.0, **facts):
    """An opening with a strike and no unit."""
    return connected(name, cat, fp("strike", number, quantity), without=("unit", "power-transfer"), **facts)


def supply(name="s", **facts):
    return Supply(name, f"PS-{name}", **{"part": "PSU", "use": "laid", **facts})


def circuit(name="c", of="s", **facts):
    return Circuit(name, of, name.upper(), **{"wire": "WIRE", **facts})


def run(begin, end, length_m=10.0, of="c", **facts):
    """A run; its far end is an opening unless it begins with J."""
    there = None if end[0] == "J" else end
    return Run(f"{of}:{begin}-{end}", of, begin, end, **{"opening_id": there, "length_m": length_m, **facts})


def work(runs, openings, cat, *, supplies=None, circuits=None, settings=None, wanted=None):
    """Work out what is laid."""
    facts = PowerFacts(tuple(supplies or (supply(),)), tuple(circuits or (circuit(),)), tuple(runs))
    return solve_supplies(facts, openings, cat, settings or Settings(length_style="mm"), wanted)


def alone(runs, cat=None, *, openings=None, **more):
    """Work out the runs of one circuit, whose openings are all alike unless they are given."""
    cat = cat or parts()
    openings = openings or {r.opening_id: connected(r.opening_id, cat) for r in runs if r.opening_id}
    return work(runs, openings, cat, **more)


def only_circuit(found):
    """Return the circuit of a work that has just one."""
    ((one,),) = (supply.circuits for supply in found.supplies)
    return one


def volts(result, node, state="normal"):
    """Return the voltage of a node in a state."""
    return next(each for each in result.nodes if each.node == node).volts[state]


def said(found, rule):
    """Return what a rule says."""
    return [each.finding for each in found.findings if each.finding.rule == rule]
