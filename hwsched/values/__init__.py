"""The frozen values that rules judge and fitting builds: facts, parts, the case of a lock point, its fit, findings.

Plain values only: no database, no file, no screen. Nothing here calculates.
"""

from hwsched.values.facts import Item, Leaf, Opening
from hwsched.values.finding import DISCIPLINES, SEVERITIES, Discipline, Finding, Severity
from hwsched.values.fit import (
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
from hwsched.values.opening_input import (
    Beside,
    Case,
    Catalogue,
    Chosen,
    Feed,
    LockPoint,
    Part,
    Placed,
    PointFit,
    Settings,
    exchange_of,
)

__all__ = [
    "DISCIPLINES",
    "SEVERITIES",
    "Alternative",
    "BatteryLife",
    "Beside",
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
    "LockPoint",
    "Need",
    "Opening",
    "Part",
    "Placed",
    "Placement",
    "PointFit",
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
