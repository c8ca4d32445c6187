"""What went out in a packet keeps what it was released with, where only the program has changed since."""

from collections.abc import Sequence

from hwsched.operations.opening.fit_differences import differences
from hwsched.operations.opening.lock_points import PointResult, standing_of
from hwsched.operations.release.packet_key import packet_key
from hwsched.values import Fit, PointFit
from hwsched.values.record import Packet


def as_stored(points: Sequence[PointResult]) -> tuple[PointFit, ...]:
    """Return the lock points of an opening with what is stored for them, whether it counts or not."""
    return tuple(PointFit(each.at.given, each.held.fit if each.held is not None else None) for each in points)


def released_otherwise(points: Sequence[PointResult], packet: Packet | None) -> bool:
    """Tell whether a packet went out of what an earlier version worked out, and this version says otherwise.

    Parameters
    ----------
    points : sequence of PointResult
        Lock points of the opening, worked out by this version where what is stored does not count.
    packet : Packet or None
        The last that went out for it.
    """
    if packet is None or standing_of(points) != "earlier-version":
        return False
    was, now = as_stored(points), [each.at for each in points]
    if any(
        differences(old.fit or Fit("to-measure"), new.fit or Fit("to-measure"))
        for old, new in zip(was, now, strict=True)
    ):
        return True
    return packet_key(was) != packet_key(now)
