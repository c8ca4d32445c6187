"""Rule: on the fire alarm a rated opening stays latched."""

from collections.abc import Iterable

from hwsched.rules.reading import rated
from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for circuit in result.circuits:
        if circuit.circuit.alarm != "drops":
            continue
        for device in dict.fromkeys(circuit.devices):
            given = inputs.get(device.opening_id)
            carries = rated(given) if given is not None else None
            if device.role != "strike" or device.fail != "fail-safe" or carries is False:
                continue
            yield Verdict(
                f"{device.part} is a fail-safe strike: on the fire alarm the rated opening loses its latch."
                if carries
                else f"Unknown: whether the opening is rated; {device.part} lets go of its latch on the fire alarm.",
                about=device.part,
                needs=() if carries else ("opening.rating",),
                circuit_id=circuit.circuit.id,
                opening_ids=(device.opening_id,),
            )


RULE = Rule(
    subject=SUPPLIES,
    id="alarm-latching",
    title="Rated opening latched on the fire alarm",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80 commentary: positive latching; fail-safe strikes are not listed for it (secondary copies)",
    cure="Take a fail-secure strike that is listed for the rating, or an electrified lock that stays latched.",
    judge=_judge,
    defers=True,
)
