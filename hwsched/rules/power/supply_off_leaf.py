"""Rule: the supply stands off the leaf, its wiring apart from mains wiring."""

from collections.abc import Iterable

from hwsched.rules.reading import leafless
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if fit.power == "supply":
        where = "" if leafless(given) else ", never on the leaf"
        yield Verdict(
            f"The supply is mounted in a place of its own{where}; its conductors share no box or raceway with mains "
            "wiring without a barrier.",
            about="supply",
        )


RULE = Rule(
    id="supply-off-leaf",
    title="Supply off the leaf, wiring apart from mains",
    discipline="power",
    severity="note",
    basis="common practice; NEC 725.136(A) and (D), secondary copies",
    cure="Leave the mains connection to licensed work.",
    judge=_judge,
    defers=True,
)
