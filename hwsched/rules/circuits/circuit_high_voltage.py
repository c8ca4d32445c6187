"""Rule: no load finds more than its highest voltage."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.rules.wording import short_v
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for circuit in result.circuits:
        for node in circuit.nodes:
            highest = max(node.volts.values(), default=None)
            if node.maximum_v is None or highest is None or highest <= node.maximum_v + 1e-9:
                continue
            yield Verdict(
                f"{node.name} finds {highest:.2f} V; it takes {node.maximum_v:g} V at most, "
                f"{short_v(highest - node.maximum_v)} V too much.",
                values={"arrives_v": highest, "allowed_v": node.maximum_v},
                about=f"circuit {circuit.circuit.name}",
                circuit_id=circuit.circuit.id,
                opening_ids=() if node.opening_id is None else (node.opening_id,),
            )


RULE = Rule(
    subject=SUPPLIES,
    id="circuit-high-voltage",
    title="Highest voltage at every load",
    discipline="power",
    severity="error",
    basis="the makers' declarations; node voltages (Kirchhoff)",
    cure="Take a supply of a lower voltage, or a load that takes this one.",
    judge=_judge,
)
