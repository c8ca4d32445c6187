"""Rule: that nobody has measured a power transfer that stays is said."""

from collections.abc import Iterable

from hwsched.rules.network.leaf_runs import UNMEASURED_OHM, unmeasured
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput, PointFit


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if unmeasured(PointFit(given, fit)):
        yield Verdict(
            "Nobody has measured the power transfer that stays: whatever it has there and back, from nothing to "
            f"{UNMEASURED_OHM:g} ohm, is reckoned with.",
            values={"most_ohm": UNMEASURED_OHM},
            about="power-transfer",
        )


RULE = Rule(
    id="transfer-resistance",
    title="Resistance of a power transfer that stays",
    discipline="power",
    severity="note",
    basis="circuit theory: thin conductors and joints take volts; the most is what the survey takes at all. Where it "
    "decides, the voltage at the end of the wires is unknown and asks for it",
    cure="Measure a pair of its conductors there and back, joined at the leaf.",
    judge=_judge,
)
