"""Rule: every circuit has a fuse or limiter that carries its current and protects its wire."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limit, Limits, Rule, Verdict
from hwsched.values.power import CircuitResult, SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for circuit in result.circuits:
        held = circuit.holding_a
        if held is None or not circuit.devices:
            continue
        if circuit.limiter_a is None:
            text = f"No limiter that carries {limits['margin'] * held:.3g} A is allowed on this supply."
            yield _said(circuit, text, load_a=held)
            continue
        if circuit.circuit.limiter_a is None:
            text = f"No fuse or limiter is laid; {circuit.limiter_a:g} A would do for {held:.3g} A held."
            yield _said(circuit, text, load_a=held, proposed_a=circuit.limiter_a)
        elif circuit.limiter_a < limits["margin"] * held - 1e-9:
            text = (
                f"The {circuit.limiter_a:g} A limiter has less than {limits['margin']:g} times the {held:.3g} A that "
                "are held."
            )
            yield _said(circuit, text, load_a=held, limiter_a=circuit.limiter_a)
        if result.rated_a is not None and circuit.limiter_a > result.rated_a + 1e-9:
            text = f"The {circuit.limiter_a:g} A limiter is above the {result.rated_a:g} A that the supply gives."
            yield _said(circuit, text, limiter_a=circuit.limiter_a, rated_a=result.rated_a)
        # A fuse bears a moment above its rating, so that this is a matter of its curve, and not of its size.
        if circuit.inrush_a is not None and circuit.inrush_a > circuit.limiter_a + 1e-9:
            text = (
                f"{circuit.inrush_a:.3g} A flow in the first moment, above the {circuit.limiter_a:g} A limiter: it "
                "must be a slow one, its curve decides."
            )
            yield _said(circuit, text, inrush_a=circuit.inrush_a, limiter_a=circuit.limiter_a)


def _said(circuit: CircuitResult, text: str, **values: float) -> Verdict:
    return Verdict(text, values=values, about=f"circuit {circuit.circuit.name}", circuit_id=circuit.circuit.id)


RULE = Rule(
    subject=SUPPLIES,
    id="circuit-limiter",
    title="Fuse or limiter of a circuit",
    discipline="power",
    severity="warning",
    basis="trade practice: 1.25 times the continuous current; Class 2 limits bound it (NEC Chapter 9 Table 11)",
    cure="Lay a fuse or limiter for the circuit, not above what the supply's class and the wire allow.",
    judge=_judge,
    limits=(
        Limit("margin", 1.25, "Limiter over the continuous current.", "trade practice", unit="", low=1.0, high=5.0),
    ),
    defers=True,
)
