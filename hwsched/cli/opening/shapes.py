"""What verbs of this room answer machines, where it is made of the records of operations.

Apart from the verbs, since their help must not wait for what the records are made of.
"""

from typing import Any, Literal, NotRequired, TypedDict

from hwsched.operations.findings.finding_record import FindingRecord
from hwsched.operations.opening.showing import FittedPoint


class FittedOpening(TypedDict):
    """One opening as it was worked out."""

    mark: str
    status: Literal["fits", "does-not-fit", "to-measure"]
    kept: bool
    """Its packet went out, and it keeps what an earlier version worked out, though this one says otherwise."""
    lock_points: list[FittedPoint]


class DifferingValue(TypedDict):
    """One value that this version works out otherwise; lengths in mm."""

    what: str
    before: str | float | bool | list[Any] | dict[str, Any] | None
    after: str | float | bool | list[Any] | dict[str, Any] | None
    unit: str | None


class DifferingOpening(TypedDict):
    """An opening of which this version says otherwise."""

    mark: str
    released: bool
    kept: bool
    differs: list[DifferingValue]


class UpgradeDifferences(TypedDict):
    """What an earlier version has worked out, beside what this one says."""

    openings: list[DifferingOpening]
    looked_at_count: int
    alike_count: int
    changed: list[str]
    """Parts of the program that changed since."""


class FittedOpenings(TypedDict):
    """What was worked out."""

    openings: list[FittedOpening]
    fits_count: int
    does_not_fit_count: int
    to_measure_count: int


class _AnyOpening(TypedDict):
    mark: str
    kept: bool
    status: NotRequired[Literal["fits", "does-not-fit", "to-measure"]]
    lock_points: NotRequired[list[FittedPoint]]
    released: NotRequired[bool]
    differs: NotRequired[list[DifferingValue]]


class FitAnswer(TypedDict):
    """`FittedOpenings`, or `UpgradeDifferences` with --since-upgrade: msgspec's schemas tell no two objects apart."""

    openings: list[_AnyOpening]
    fits_count: NotRequired[int]
    does_not_fit_count: NotRequired[int]
    to_measure_count: NotRequired[int]
    looked_at_count: NotRequired[int]
    alike_count: NotRequired[int]
    changed: NotRequired[list[str]]


class DifferenceRecord(TypedDict):
    """What would be different at one opening; money as exact decimal strings in the project's currency."""

    mark: str
    before: Literal["fits", "does-not-fit", "to-measure"]
    after: Literal["fits", "does-not-fit", "to-measure"]
    gone: list[str]
    new: list[str]
    cost_before: str | None
    cost_after: str | None
    currency: str | None
    hole_count_before: int
    hole_count_after: int
    findings_gone: list[FindingRecord]
    findings_new: list[FindingRecord]
    why: str | None


class WhatIf(TypedDict):
    """What would be different, and whether it was made so."""

    differences: list[DifferenceRecord]
    asked_count: int
    accepted: bool
    shown: str


Successors = list[DifferenceRecord]
