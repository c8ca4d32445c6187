"""What verbs of this room answer machines, where it is made of the records of operations.

Apart from the verbs, since their help must not wait for what the records are made of.
"""

from typing import TypedDict

from hwsched.operations.findings.finding_record import FindingRecord
from hwsched.operations.findings.verdict import Counts, Unjudged
from hwsched.values import Discipline, Severity


class NotJudged(TypedDict):
    """An opening that does not pass whatever the rules say."""

    mark: str
    why: Unjudged


class Check(TypedDict):
    """What the rules say, and of which openings they cannot."""

    findings: list[FindingRecord]
    not_judged: list[NotJudged]
    counts: Counts


class LimitRecord(TypedDict):
    """A number of a rule that a project may change, within its bounds; unit null: a mere number."""

    name: str
    value: float
    unit: str | None
    low: float
    high: float
    text: str
    source: str


class RuleRecord(TypedDict):
    """What a rule declares."""

    id: str
    title: str
    discipline: Discipline
    severity: Severity
    basis: str
    limits: list[LimitRecord]
    cure: str


Rules = list[RuleRecord]
