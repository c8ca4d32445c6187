"""Rule: what happens to a circuit on the fire alarm is decided, and people still get out."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.values.power import CircuitResult, Device, SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for circuit in result.circuits:
        # Two equal strikes of a pair behave alike: it is said once.
        for device in dict.fromkeys(circuit.devices):
            if device.fail:
                given = inputs.get(device.opening_id)
                egress = given.opening.egress if given is not None else None
                yield from _of_device(circuit, device, egress, given is not None and given.opening.stair is True)


def _of_device(circuit: CircuitResult, device: Device, egress: str | None, stair: bool) -> Iterable[Verdict]:
    alarm = circuit.circuit.alarm
    if alarm is None:
        yield _said(
            circuit, device, f"Unknown: whether {device.part} loses power on the fire alarm.", ("circuit.alarm",)
        )
        return
    free = device.fail == "fail-safe"
    lets = "lets go" if free else "stays locked"
    if alarm == "drops":
        yield _said(circuit, device, f"{device.part} loses power on the fire alarm and {lets}: {device.fail}.")
        if stair and not free:
            yield _said(
                circuit,
                device,
                "Stair door: without power it stays locked on the stair side, so re-entry is not given.",
            )
    # Unknown counts as an egress path: fail-safe is worth nothing while the power stays on.
    elif free and egress != "none":
        yield _said(
            circuit,
            device,
            f"{device.part} keeps its power on the fire alarm and holds the opening shut, which is "
            f"{'on an egress path' if egress else 'not known to be off an egress path'}.",
        )
    elif free:
        yield _said(circuit, device, f"{device.part} keeps its power on the fire alarm and holds the opening shut.")


def _said(circuit: CircuitResult, device: Device, text: str, needs: tuple[str, ...] = ()) -> Verdict:
    return Verdict(
        text, about=device.part, needs=needs, circuit_id=circuit.circuit.id, opening_ids=(device.opening_id,)
    )


RULE = Rule(
    subject=SUPPLIES,
    id="alarm-release",
    title="Release on the fire alarm",
    discipline="egress",
    severity="warning",
    basis="IBC 1010.2.7, 1010.2.11 and 1010.2.12 (2021); NFPA 101, 7.2.1.6.2 and 7.2.1.5.8, secondary copies",
    cure="Have the tie-in with the fire alarm decided by the authority, and say what the circuit does.",
    judge=_judge,
    defers=True,
)
