"""Rule: an opening has a fit for its facts as they stand."""

from collections.abc import Iterable

from hwsched.cases.record import Record
from hwsched.rules.record_rule import RecordRule
from hwsched.rules.rule import Verdict


def _judge(record: Record) -> Iterable[Verdict]:
    if record.fit is None:
        yield Verdict(
            "No fit is stored for the facts as they stand: it was never made, or something has changed since."
        )


RULE = RecordRule(
    id="fit-out-of-date",
    title="Fit stored for the facts as they stand",
    discipline="documents",
    severity="warning",
    basis="common practice",
    cure="Fit the opening again.",
    judge=_judge,
)
