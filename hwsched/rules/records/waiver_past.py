"""Rule: no waiver is past its last day."""

from collections.abc import Iterable

from hwsched.rules.rule import RECORDS, Limits, Rule, Verdict
from hwsched.rules.rule_titles import title_of
from hwsched.values.record import Record


def _judge(record: Record, limits: Limits) -> Iterable[Verdict]:
    for waiver in record.past:
        until = waiver.until.isoformat() if waiver.until else ""
        days = (record.today - waiver.until).days if waiver.until else 0
        yield Verdict(
            f"The waiver of '{title_of(waiver.rule)}' ended on {until}, {days} days ago; it was given by "
            f"{waiver.words}.",
            values={"days": float(days)},
            about=waiver.rule,
        )


RULE = Rule(
    subject=RECORDS,
    id="waiver-past",
    title="Waiver past its last day",
    discipline="documents",
    severity="warning",
    basis="common practice",
    cure="Mend what it was given for, or give it again.",
    judge=_judge,
)
