"""An opening with its fit and what the rules say of it: what a check hands over. How it is judged stands in `checking`.

What only shows openings needs this and not the rules, which take longer to load than openings take to be read.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.attributes import Attribute, Value
from hwsched.model.queries import HeldPlace
from hwsched.values import Finding, Fit, OpeningInput, PointFit
from hwsched.values.fit import together
from hwsched.values.standing import Standing

WILL_NOT_LAST: Final = frozenset({"battery-life", "battery-cold", "battery-end-voltage"})
"""Rules whose warnings say that what is installed will not last: a person decides, by accepting them."""


def holds_back(finding: Finding) -> bool:
    """Tell whether an opening may not go out while this is said of it: an error, a missing fact, or what will not last.

    Examples
    --------
    >>> unknown = Finding("M1", "wall-fixings", "holes", "warning", "Unknown.", "", "", needs=("opening.wall_build",))
    >>> holds_back(unknown)
    True
    """
    if finding.waived:
        return False
    if finding.severity == "warning":
        return bool(finding.needs) or finding.rule in WILL_NOT_LAST
    return finding.severity == "error"


@dataclass(frozen=True, slots=True)
class OwnValue:
    """What a field of the project's own holds on an opening or an existing item; None where it is empty."""

    entity: str
    row_id: str
    attribute: Attribute
    value: Value


@dataclass(frozen=True, slots=True, weakref_slot=True)
class Checked:
    """One opening with its fit and what the rules say. Here belongs what is read of it, not how a view shows it."""

    given: OpeningInput
    """Of its first lock point."""
    fit: Fit | None
    """Of all its lock points together; None when of one nothing is stored that counts: it belongs to other facts, or is
    an earlier version's."""
    findings: tuple[Finding, ...]
    stored: bool = True
    """False for a fit that was worked out on the spot and is not stored."""
    own: tuple[OwnValue, ...] = ()
    """Fields of the project's own, those of the opening first."""
    points: tuple[PointFit, ...] = ()
    """Its lock points in their order; an opening with one need not name it."""
    base: int | None = None
    """The newest change set when it was read: what an edit of what is shown here has seen."""
    standing: Standing = "current"
    """How what is stored stands."""
    held: tuple[PointFit, ...] = ()
    """Its lock points with what is stored for them, whether it counts or not."""
    places: tuple[HeldPlace, ...] = ()
    """Its level and its building, with what they say of the facts that it takes from them."""
    waits: bool = False
    """Whether its circuit keeps it back, or a question that a delivery of the survey left about it."""

    def __post_init__(self) -> None:
        if not self.points:
            object.__setattr__(self, "points", (PointFit(self.given, self.fit),))

    @classmethod
    def of(
        cls,
        points: Sequence[PointFit],
        findings: tuple[Finding, ...],
        *,
        stored: bool = True,
        own: tuple[OwnValue, ...] = (),
        base: int | None = None,
        places: tuple[HeldPlace, ...] = (),
    ) -> "Checked":
        """Return an opening by its lock points."""
        fit = together([each.fit for each in points])
        return cls(points[0].given, fit, findings, stored, own, tuple(points), base, places=places)

    def point(self, number: int) -> PointFit:
        """Return the lock point of that number; the first where there is none of it."""
        return next((each for each in self.points if each.given.point.number == number), self.points[0])

    def shown(self, number: int) -> PointFit:
        """Return the lock point of that number as it is shown: while no fit counts, as an earlier version left it."""
        at = self.point(number)
        if at.fit is None and self.standing == "earlier-version":
            return next((each for each in self.held if each.given.point == at.given.point), at)
        return at

    @property
    def kept_back(self) -> bool:
        """Whether it fits and yet may not be picked for and installed; why is told by the release gate."""
        fits = self.fit is not None and self.fit.status == "fits"
        return fits and (self.waits or any(map(holds_back, self.findings)))

    @property
    def inputs(self) -> tuple[OpeningInput, ...]:
        """Cases of its lock points."""
        return tuple(each.given for each in self.points)
