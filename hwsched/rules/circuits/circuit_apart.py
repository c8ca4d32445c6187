"""Rule: low-voltage wiring keeps apart from mains, and no mains goes onto a leaf."""

from collections.abc import Iterable

from hwsched.calc.power.power_limits import caution
from hwsched.rules.rule import SUPPLIES, Inputs, Limits, Rule, Verdict
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    yield Verdict(f"{caution('mains-on-leaf')} {caution('separation')}", about=result.supply.name)
    if len(result.circuits) > 1:
        yield Verdict(caution("parallel-outputs"), about=result.supply.name)


RULE = Rule(
    subject=SUPPLIES,
    id="circuit-apart",
    title="Wiring apart from mains",
    discipline="power",
    severity="note",
    basis="common practice; NEC 725.124 and 725.136, secondary copies",
    cure="Leave the mains connection to licensed work.",
    judge=_judge,
    defers=True,
)
