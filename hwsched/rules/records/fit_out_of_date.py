"""Rule: an opening has a fit that this version of the program has worked out from the facts as they stand."""

from collections.abc import Iterable, Mapping
from typing import Final

from hwsched.rules.rule import RECORDS, Limits, Rule, Verdict
from hwsched.values.record import Record
from hwsched.values.standing import WHY, Standing

_CURES: Final[Mapping[Standing, str]] = {
    "earlier-version": (
        "See what differs, and take it: hwsched opening fit PROJECT --since-upgrade; with --released also where a "
        "packet went out."
    )
}


def _judge(record: Record, limits: Limits) -> Iterable[Verdict]:
    if record.fit is None:
        yield Verdict(f"No fit counts: {WHY[record.standing]}.", _CURES.get(record.standing, ""))


RULE = Rule(
    subject=RECORDS,
    id="fit-out-of-date",
    title="Fit worked out by this version from the facts as they stand",
    discipline="documents",
    severity="warning",
    basis="common practice",
    cure="Fit the opening again.",
    judge=_judge,
)
