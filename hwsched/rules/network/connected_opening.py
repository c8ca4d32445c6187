"""An opening that a circuit feeds, by its lock points."""

from collections.abc import Sequence
from dataclasses import dataclass

from hwsched.rules.reading import leaf_name, lock_leaf
from hwsched.values import Fit, OpeningInput, PointFit
from hwsched.values.fit import together


@dataclass(frozen=True, slots=True)
class ConnectedOpening:
    """An opening that a circuit feeds: its facts and its fit."""

    given: OpeningInput
    """Of its first lock point."""
    fit: Fit | None
    """Of all its lock points together."""
    points: tuple[PointFit, ...] = ()
    """Its lock points in their order; an opening with one need not name it."""

    def __post_init__(self) -> None:
        if not self.points:
            object.__setattr__(self, "points", (PointFit(self.given, self.fit),))

    @classmethod
    def of(cls, points: Sequence[PointFit]) -> "ConnectedOpening":
        """Return an opening by its lock points."""
        return cls(points[0].given, together([each.fit for each in points]), tuple(points))

    def leaf_of(self, at: PointFit) -> str:
        """Name the leaf of a lock point where the opening's points are on several; empty where they are on one."""
        if len(self.points) == 1:
            return ""
        leaves = [lock_leaf(each.given) for each in self.points]
        here = lock_leaf(at.given)
        return leaf_name(here) if here is not None and any(leaf is not here for leaf in leaves) else ""
