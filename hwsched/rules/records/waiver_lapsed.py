"""Rule: a waiver holds for the facts that it was given for, and for no others."""

from collections.abc import Iterable

from hwsched.rules.rule import RECORDS, Limits, Rule, Verdict
from hwsched.rules.rule_titles import title_of
from hwsched.values.record import Record


def _judge(record: Record, limits: Limits) -> Iterable[Verdict]:
    for waiver in record.lapsed:
        yield Verdict(
            f"The waiver of '{title_of(waiver.rule)}' has lapsed: the facts that it was given for have changed. "
            f"It was given by {waiver.words}.",
            about=waiver.rule,
        )


RULE = Rule(
    subject=RECORDS,
    id="waiver-lapsed",
    title="Waiver lapsed",
    discipline="documents",
    severity="warning",
    basis="common practice",
    cure="Look at the finding again: mend it, or give the waiver anew.",
    judge=_judge,
)
