"""The frozen values that rules judge and fitting builds: facts, parts, the case of one opening, its fit, findings.

Plain values only: no database, no file, no screen. Nothing here calculates.
"""

from hwsched.cases.case import Case, Catalogue, Chosen, Feed, Part, Placed, Settings, exchange_of
from hwsched.cases.facts import Item, Leaf, Opening
from hwsched.cases.finding import DISCIPLINES, SEVERITIES, Discipline, Finding, Severity
from hwsched.cases.fit import (
    Alternative,
    BatteryLife,
    CablePath,
    Fit,
    FittedPart,
    Hole,
    Need,
    Placement,
    Purpose,
    Refusal,
    Role,
    RunnerUp,
    Source,
    Stack,
    Status,
)

__all__ = [
    "DISCIPLINES",
    "SEVERITIES",
    "Alternative",
    "BatteryLife",
    "CablePath",
    "Case",
    "Catalogue",
    "Chosen",
    "Discipline",
    "Feed",
    "Finding",
    "Fit",
    "FittedPart",
    "Hole",
    "Item",
    "Leaf",
    "Need",
    "Opening",
    "Part",
    "Placed",
    "Placement",
    "Purpose",
    "Refusal",
    "Role",
    "RunnerUp",
    "Settings",
    "Severity",
    "Source",
    "Stack",
    "Status",
    "exchange_of",
]
