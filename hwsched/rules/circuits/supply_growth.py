"""Rule: every circuit bears the later openings that are asked."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limit, Limits, Rule, Verdict
from hwsched.rules.rule_titles import title_of
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    for each in result.growth:
        if each.borne:
            continue
        many = f"{each.count} later opening{'' if each.count == 1 else 's'}"
        why = each.why.rstrip(".")
        yield Verdict(
            f"{many} on circuit {each.circuit} are not borne, as the rule '{title_of(each.rule)}' says: {why}."
            if each.borne is False
            else f"Unknown: whether circuit {each.circuit} bears {many}: {why}.",
            values={"asked": float(each.count)},
            about=f"circuit {each.circuit}",
            circuit_id=each.circuit_id,
            needs=() if each.borne is False else result.needs,
        )


RULE = Rule(
    subject=SUPPLIES,
    id="supply-growth",
    title="Room for later openings",
    discipline="power",
    severity="warning",
    basis="common practice of our own: as if so many were laid, each drawing as much as the most there, at the place "
    "with the least room",
    cure="Take a larger supply or a thicker conductor now, or ask for fewer later openings.",
    judge=_judge,
    limits=(
        Limit(
            "openings",
            0.0,
            "Later openings that each circuit is to bear; 0: none are asked.",
            "common practice of our own, editable",
            unit="",
            low=0.0,
            high=64.0,
        ),
    ),
)
