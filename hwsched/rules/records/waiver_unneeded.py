"""Rule: every waiver has a finding that needs it."""

from collections.abc import Iterable

from hwsched.rules.rule import RECORDS, Limits, Rule, Verdict
from hwsched.rules.rule_titles import title_of
from hwsched.values.record import Record


def _judge(record: Record, limits: Limits) -> Iterable[Verdict]:
    for waiver in record.unneeded:
        yield Verdict(
            f"No finding needs the waiver of '{title_of(waiver.rule)}' any more; it was given by {waiver.words}.",
            about=waiver.rule,
        )


RULE = Rule(
    subject=RECORDS,
    id="waiver-unneeded",
    title="Waiver that nothing needs",
    discipline="documents",
    severity="note",
    basis="common practice",
    cure="Take the waiver back.",
    judge=_judge,
)
