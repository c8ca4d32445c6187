"""Rule: what was taken by common practice of an opening with a supply of its own is said."""

from collections.abc import Iterable

from hwsched.rules.network.own_circuit import devices_of_opening, taken_of_own
from hwsched.rules.reading import supply_part, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    supply = supply_part(given, fit)
    if fit.power != "supply" or given.supply_link is not None or unit_part(given, fit) is None or supply is None:
        # On a circuit the rule circuit-assumed says it of all that hang there.
        return
    devices, _ = devices_of_opening(given, fit)
    taken = [f"{device.part}: {each}" for device in devices for each in device.assumed]
    taken += taken_of_own(given, fit)
    if taken:
        yield Verdict(
            f"Taken by common practice, since nothing is stated: {'; '.join(dict.fromkeys(taken))}.",
            about=supply.number,
        )


RULE = Rule(
    id="supply-assumed",
    title="What was taken of an opening's own supply",
    discipline="power",
    severity="note",
    basis="common practice",
    cure="State it in the catalogue, or write down what its label says.",
    judge=_judge,
)
