"""Rule: a busy opening, or one with electric release, is better fed from a supply than from batteries."""

from collections.abc import Iterable

from hwsched.rules.reading import electric_release
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if fit.power != "battery":
        return
    operations = given.opening.operations_per_day
    if operations is None:
        yield unknown(("opening.operations_per_day",), "battery")
    # Charge goes by the operation: a busy opening would need its cells changed too often.
    elif operations > limits["operations"]:
        yield Verdict(
            f"{operations:g} operations a day on batteries; above {limits['operations']:g} a supply serves better.",
            values={"operations": operations, "limit_operations": limits["operations"]},
            about="battery",
        )
    if electric_release(given):
        yield Verdict(
            "An electric strike or electromagnetic lock is on this opening; it needs a supply anyway.", about="battery"
        )


RULE = Rule(
    id="busy-on-supply",
    title="Busy opening on a supply",
    discipline="power",
    severity="warning",
    basis="common practice; the limit is from memory, unverified",
    cure="Feed the unit from a 12 V DC supply, and survey the distance to it.",
    judge=_judge,
    slot="power",
    each_anew=True,
    limits=(
        Limit(
            "operations",
            200.0,
            "Operations a day that batteries are used for.",
            "from memory, unverified",
            unit="",
            low=1.0,
            high=10000.0,
        ),
    ),
)
