"""Rule: every waiver has a finding that needs it."""

from collections.abc import Iterable

from hwsched.rules.record_rule import RecordRule
from hwsched.rules.rule import Verdict
from hwsched.values.record import Record


def _judge(record: Record) -> Iterable[Verdict]:
    for waiver in record.unneeded:
        yield Verdict(
            f"No finding needs the waiver of {waiver.rule} any more; it was given by {waiver.words}.", about=waiver.rule
        )


RULE = RecordRule(
    id="waiver-unneeded",
    title="Waiver that nothing needs",
    discipline="documents",
    severity="note",
    basis="common practice",
    cure="Take the waiver back.",
    judge=_judge,
)
