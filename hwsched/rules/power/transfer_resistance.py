"""Rule: what was assumed for a power transfer that stays is said."""

from collections.abc import Iterable

from hwsched.rules.leaf_runs import ASSUMED_OHM, unmeasured
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput, PointFit


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if unmeasured(PointFit(given, fit)):
        yield Verdict(
            f"Nobody has measured the power transfer that stays: {ASSUMED_OHM:g} ohm there and back is assumed.",
            values={"assumed_ohm": ASSUMED_OHM},
            about="power-transfer",
        )


RULE = Rule(
    id="transfer-resistance",
    title="Resistance of a power transfer that stays",
    discipline="power",
    severity="note",
    basis="common practice: 0.1 ohm a joint, thin conductors; the figure assumed is of our own, unverified. Where it "
    "decides, the voltage at the end of the wires is unknown and asks for it",
    cure="Measure a pair of its conductors there and back, joined at the leaf.",
    judge=_judge,
)
