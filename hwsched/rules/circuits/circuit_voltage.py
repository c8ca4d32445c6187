"""Rule: every load finds its lowest voltage in every state of its circuit."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limit, Limits, Rule, Verdict
from hwsched.rules.wording import run_length, short_v
from hwsched.values.power import CircuitResult, NodeResult, SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    style = next((each.settings.length_style for each in inputs.values()), "mm")
    for circuit in result.circuits:
        for node in circuit.nodes:
            margin = node.margin_v
            if margin is not None and margin < -1e-9:
                yield _short(circuit, node, margin, style)


def _short(circuit: CircuitResult, node: NodeResult, margin: float, style: str) -> Verdict:
    # The worst state alone: a cure for it serves the others too.
    state, volts = min(node.volts.items(), key=lambda pair: pair[1])
    said = state.replace("-", " ")
    works = [offer.text for offer in circuit.cure_offers.get(node.node, ()) if offer.works]
    cure = f"Any of these would do: {'; '.join(works)}." if works else ""
    far = run_length(style, node.distance_m)
    where = f"in the state {said} ({circuit.source_v[state]:g} V at the supply, {far})"
    return Verdict(
        f"{node.name} finds {volts:.2f} V {where}; it needs {node.minimum_v:g} V, short by {short_v(-margin)} V."
        if volts >= 0
        else f"{node.name} finds no voltage {where}: the currents cannot be carried that far; it needs "
        f"{node.minimum_v:g} V, short by {short_v(-margin)} V.",
        cure,
        values={"arrives_v": volts, "needed_v": node.minimum_v or 0.0, "short_v": -margin, "run_m": node.distance_m},
        about=f"circuit {circuit.circuit.name}",
        circuit_id=circuit.circuit.id,
        opening_ids=() if node.opening_id is None else (node.opening_id,),
    )


RULE = Rule(
    subject=SUPPLIES,
    id="circuit-voltage",
    title="Lowest voltage at every load",
    discipline="power",
    severity="error",
    basis="node voltages (Kirchhoff); conductors by IEC 60028, at the highest temperature, the lowest source voltage "
    "and the worst operations at one time (common practice)",
    cure="Thicker conductor, a second run, a nearer supply, or a higher supply voltage.",
    judge=_judge,
    limits=(
        Limit(
            "temperature_c",
            30.0,
            "Of conductors where the circuit does not say.",
            "common practice; 75 C is NEC Table 8",
            unit="C",
            low=-40.0,
            high=105.0,
        ),
        Limit(
            "at_once",
            2.0,
            "Openings that operate at one time where the circuit does not say.",
            "common practice of our own, editable",
            unit="",
            low=1.0,
            high=1000.0,
        ),
    ),
)
