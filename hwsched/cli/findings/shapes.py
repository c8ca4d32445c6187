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


class SupplyReason(TypedDict):
    """Why a supply cannot be worked out; circuit null: all of its circuits, mark null: no opening in particular."""

    circuit: str | None
    mark: str | None
    message: str
    needs: list[str]
    """Facts that are missing, as ``entity.attribute``."""


class SupplyNotJudged(TypedDict):
    """A supply that does not pass whatever the rules say."""

    supply: str
    reasons: list[SupplyReason]


class SupplyFinding(TypedDict):
    """One statement of a rule on a supply that concerns no opening in particular; the others stand at the openings."""

    supply: str
    rule: str
    discipline: Discipline
    severity: Severity
    message: str
    basis: str
    cure: str
    values: dict[str, float]
    about: str | None
    needs: list[str]
    waived: bool
    waived_by: str | None


class Check(TypedDict):
    """What the rules say, and of which openings and supplies they cannot."""

    findings: list[FindingRecord]
    not_judged: list[NotJudged]
    supply_findings: list[SupplyFinding]
    supplies_not_judged: list[SupplyNotJudged]
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
