"""Rule: a supply on the frame reaches a unit on the leaf over a power transfer."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CONDUCTORS
from hwsched.rules.reading import carries_power, in_role, leafless, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if fit.power != "supply" or unit is None or leafless(given):
        return
    transfer = in_role(given, fit, "power-transfer")
    if transfer is None:
        if not carries_power(given):
            yield Verdict("Nothing carries the supply from the frame onto the leaf.", about=unit.number)
        return
    conductors = transfer.number_of(CONDUCTORS)
    if conductors is None:
        yield unknown((f"part {transfer.number}.conductors",), transfer.number)
    elif conductors < limits["conductors"]:
        yield Verdict(
            f"It has {conductors:g} conductors; {limits['conductors']:g} are needed.",
            values={"conductors": conductors, "needed_conductors": limits["conductors"]},
            about=transfer.number,
        )


RULE = Rule(
    id="power-crosses-hinge",
    title="Power transfer onto the leaf",
    discipline="power",
    severity="error",
    basis="common practice",
    cure="Add a door loop or transfer hinge, listed where the opening is rated.",
    judge=_judge,
    slot="power",
    limits=(
        Limit("conductors", 2.0, "Conductors that the unit needs.", "common practice", unit="", low=1.0, high=40.0),
    ),
)
