"""Small circuits of invented openings, laid piece by piece; the parts are those of `tests.rules.scenario`."""

from dataclasses import replace

from hwsched.cases import Settings
from hwsched.cases.power import Circuit, PowerFacts, Run, Supply
from hwsched.wiring import Fed, work_out
from tests.rules.scenario import case, catalogue, fit, fp, opening

LOOP_MM = 500.0
FED = {"LOOP": {"length_mm": LOOP_MM}, "WIRE": {"reel_m": 100.0}}
"""What circuits need beside the usual parts."""


def parts(*, drop=(), add=(), **changed):
    """The usual parts with what circuits need, changed attribute by attribute."""
    merged = {name: {**FED.get(name, {}), **changed.get(name, {})} for name in {**FED, **changed}}
    return catalogue(drop=drop, add=add, **merged)


def fed(name, cat, *more, without=("power-transfer",), **facts):
    """An opening with a unit that its circuit feeds; with `without=()` through the usual door loop."""
    return Fed(case(opening(id=name, mark=name.upper(), **facts), cat=cat), fit(*more, power="supply", without=without))


def strike(number="STRIKE"):
    return fp("strike", number)


def supply(name="s", **facts):
    return Supply(name, name.upper(), **{"part": "PSU", "use": "laid", **facts})


def circuit(name="c", of="s", **facts):
    return Circuit(name, of, name.upper(), **{"wire": "WIRE", **facts})


def run(begin, end, length_m, of="c", **facts):
    """A run; its far end is an opening unless it begins with J."""
    return Run(
        f"{of}:{begin}-{end}", of, begin, end, **{"opening_id": None if end[0] == "J" else end, "length_m": length_m, **facts}
    )


def work(runs, openings, cat, *, supplies=None, circuits=None, settings=None, only=None):
    """Work out what is laid."""
    facts = PowerFacts(tuple(supplies or (supply(),)), tuple(circuits or (circuit(),)), tuple(runs))
    return work_out(facts, openings, cat, settings or Settings(length_style="mm"), only)


def alone(runs, cat=None, *, names=None, openings=None, **more):
    """Work out one circuit of openings that are all alike; returns supply and circuit."""
    cat = cat or parts()
    names = names or [r.to_node for r in runs if r.opening_id]
    found = work(runs, openings or {n: fed(n, cat) for n in names}, cat, **more)
    return found, found.supplies[0].circuits[0]


def volts(worked, node, state):
    """Voltage of a node in a state."""
    return next(n for n in worked.nodes if n.node == node).volts[state]


def said(work, rule):
    """Findings of a rule."""
    return [each for each in work.findings if each.finding.rule == rule]


__all__ = ["alone", "circuit", "fed", "parts", "replace", "run", "said", "strike", "supply", "volts", "work"]
