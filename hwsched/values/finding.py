"""What a rule has to say of an opening or a project."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

Severity = Literal["error", "warning", "note"]
SEVERITIES: Final[tuple[Severity, ...]] = ("error", "warning", "note")
"""Worst first."""

Discipline = Literal[
    "survey",
    "lock-and-cylinder",
    "placement",
    "cable",
    "holes",
    "fire-door",
    "egress",
    "accessibility",
    "power",
    "battery",
    "catalogue-and-stock",
    "documents",
    "commissioning",
]
DISCIPLINES: Final[Mapping[Discipline, str]] = {
    "survey": "Survey completeness",
    "lock-and-cylinder": "Lock and cylinder",
    "placement": "Placement",
    "cable": "Cable",
    "holes": "Holes",
    "fire-door": "Fire door",
    "egress": "Egress",
    "accessibility": "Accessibility",
    "power": "Power",
    "battery": "Battery",
    "catalogue-and-stock": "Catalogue and stock",
    "documents": "Documents",
    "commissioning": "Credentials and commissioning",
}


@dataclass(frozen=True, slots=True)
class Finding:
    """One statement of a rule, with its numbers, its basis and its cure."""

    rule: str
    """Identifier of the rule, kebab-case."""
    discipline: Discipline
    severity: Severity
    message: str
    """A sentence with the numbers in it; never the opening's mark, so that openings alike share it."""
    basis: str
    cure: str
    values: Mapping[str, float] = field(default_factory=dict)
    """The numbers, with units in their names."""
    about: str = ""
    """What it speaks of: a part number, an item's kind, a hole; empty for the opening itself."""
    needs: tuple[str, ...] = ()
    """Facts that are missing, as ``entity.attribute``; not empty means: unknown, nothing was proved."""
    waived: bool = False
    waived_by: str = ""
    """Who waived it, why and until when, for print."""
    point: str = ""
    """Name of the lock point that it speaks of; empty for the opening, or where there is only one."""
