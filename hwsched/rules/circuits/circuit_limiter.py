"""Rule: every circuit has a fuse or limiter that carries its current and protects its wire."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limit, Limits, Rule, Verdict
from hwsched.values.power import CircuitResult, SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for circuit in result.circuits:
        if circuit.held_a is None:
            continue
        # What is unknown may draw nothing at all: what is too little then is too little for sure.
        held, most = circuit.held_a
        margin, laid_a = limits["margin"], circuit.circuit.limiter_a
        if laid_a is None:
            if circuit.devices:
                yield _none_laid(circuit, margin, held, most)
            continue
        if laid_a < margin * held - 1e-9:
            least = "at least " if most > held else ""
            text = f"The {laid_a:g} A limiter has less than {margin:g} times the {least}{held:.3g} A that are held."
            yield _said(circuit, text, load_a=held, limiter_a=laid_a)
        elif laid_a < margin * most - 1e-9:
            yield Verdict(
                f"Unknown: whether the {laid_a:g} A limiter has {margin:g} times what is held; {held:.3g} to "
                f"{most:.3g} A are.",
                values={"load_a": held, "most_a": most, "limiter_a": laid_a},
                about=f"circuit {circuit.circuit.name}",
                circuit_id=circuit.circuit.id,
                needs=tuple(dict.fromkeys(need for each in circuit.problems for need in each.needs)),
            )
        if circuit.devices and result.rated_a is not None and laid_a > result.rated_a + 1e-9:
            text = f"The {laid_a:g} A limiter is above the {result.rated_a:g} A that the supply gives."
            yield _said(circuit, text, limiter_a=laid_a, rated_a=result.rated_a)
        # A fuse bears a moment above its rating, so that this is a matter of its curve, and not of its size.
        first = circuit.known_inrush_a
        if first is not None and first > laid_a + 1e-9:
            least = "" if circuit.inrush_a is not None else "At least "
            text = (
                f"{least}{first:.3g} A flow in the first moment, above the {laid_a:g} A limiter: it "
                "must be a slow one, its curve decides."
            )
            yield _said(circuit, text, inrush_a=first, limiter_a=laid_a)


def _none_laid(circuit: CircuitResult, margin: float, least: float, most: float) -> Verdict:
    held = circuit.holding_a
    if held is None:
        much = f"{least:.3g} to {most:.3g} A" if most > least else f"{least:.3g} A"
        text = f"No fuse or limiter is laid; {much} are held of what is known so far."
        return _said(circuit, text, load_a=least, most_a=most)
    if circuit.limiter_a is None:
        return _said(circuit, f"No limiter that carries {margin * held:.3g} A is allowed on this supply.", load_a=held)
    text = f"No fuse or limiter is laid; {circuit.limiter_a:g} A would do for {held:.3g} A held."
    return _said(circuit, text, load_a=held, proposed_a=circuit.limiter_a)


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
