"""Rule: the packet that went out shows the opening as it stands."""

from collections.abc import Iterable

from hwsched.rules.rule import RECORDS, Limits, Rule, Verdict
from hwsched.values.record import Record


def _judge(record: Record, limits: Limits) -> Iterable[Verdict]:
    packet = record.packet
    if packet is not None and packet.shown_key != record.shown_key:
        yield Verdict(f"The packet of {packet.at} ({packet.by}) is older than the facts: something has changed since.")


RULE = Rule(
    subject=RECORDS,
    id="packet-out-of-date",
    title="Issued packet as the opening stands",
    discipline="documents",
    severity="warning",
    basis="common practice",
    cure="Issue the packet again, and take the old one back from the site.",
    judge=_judge,
)
