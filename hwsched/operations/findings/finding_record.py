"""What machines read of a finding, the same wherever one is told."""

from typing import TypedDict

from hwsched.values import Discipline, Finding, Severity


class FindingRecord(TypedDict):
    """One statement of a rule on an opening."""

    mark: str
    rule: str
    discipline: Discipline
    severity: Severity
    message: str
    basis: str
    cure: str
    values: dict[str, float]
    """The numbers, with units in their names."""
    about: str | None
    """What it speaks of: a part number, an item's kind, a hole; null for the opening itself."""
    lock_point: str | None
    """Null for the opening, or where it has only one."""
    needs: list[str]
    """Facts that are missing, as ``entity.attribute``; not empty: nothing was proved."""
    waived: bool
    waived_by: str | None


def finding_record(mark: str, finding: Finding) -> FindingRecord:
    """Return a finding at an opening for machines."""
    return {
        "mark": mark,
        "rule": finding.rule,
        "discipline": finding.discipline,
        "severity": finding.severity,
        "message": finding.message,
        "basis": finding.basis,
        "cure": finding.cure,
        "values": dict(finding.values),
        "about": finding.about or None,
        "lock_point": finding.point or None,
        "needs": list(finding.needs),
        "waived": finding.waived,
        "waived_by": finding.waived_by or None,
    }
