"""The frozen values that rules judge and fitting builds: facts, parts, the input of a lock point, its fit, findings.

Plain values only: no database, no file, no screen. Nothing here calculates.
"""

from hwsched.values.facts import Item, Leaf, Opening
from hwsched.values.finding import DISCIPLINES, SEVERITIES, Discipline, Finding, Severity
from hwsched.values.fit import (
    Alternative,
    BatteryLife,
    CablePath,
    Fit,
    FitPart,
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
    Catalogue,
    Chosen,
    HandPlacement,
    LockPoint,
    OpeningInput,
    Part,
    PointFit,
    Settings,
    SupplyLink,
    exchange_of,
)

__all__ = [
    "DISCIPLINES",
    "SEVERITIES",
    "Alternative",
    "BatteryLife",
    "Beside",
    "CablePath",
    "Catalogue",
    "Chosen",
    "Discipline",
    "Finding",
    "Fit",
    "FitPart",
    "HandPlacement",
    "Hole",
    "Item",
    "Leaf",
    "LockPoint",
    "Need",
    "Opening",
    "OpeningInput",
    "Part",
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
    "SupplyLink",
    "exchange_of",
]
