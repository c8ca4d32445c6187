"""Rule: what was assumed for a power transfer that stays is said."""

from collections.abc import Iterable

from hwsched.rules.leaf_runs import ASSUMED_OHM
from hwsched.rules.reading import in_role, leafless, transfers_kept, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    kept = transfers_kept(given)
    if fit.power != "supply" or unit_part(given, fit) is None or leafless(given) or not kept:
        return
    if in_role(given, fit, "power-transfer") is None and all(item.loop_ohm is None for item in kept):
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
