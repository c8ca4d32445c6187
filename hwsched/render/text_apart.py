"""Texts of a drawing kept apart: what would stand over another text moves to the nearest free place.

Paper millimetres and upright rectangles only; which texts there are, and in which order they take their places, is said
by `hwsched.render.lower`.
"""

import heapq
from collections.abc import Sequence
from typing import Final

Room = tuple[float, float, float, float]
"""x0, y0, x1, y1."""

AIR_MM: Final = 0.3
"""Between two texts, so that letters do not touch."""
_TRIES: Final = 200


def covers(one: Room, other: Room) -> bool:
    """Tell whether two rectangles share more than an edge.

    Examples
    --------
    >>> covers((0, 0, 10, 2), (9, 1, 12, 3)), covers((0, 0, 10, 2), (10, 0, 12, 2))
    (True, False)
    """
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def moved(room: Room, dx: float, dy: float) -> Room:
    """Return a rectangle that was moved."""
    return room[0] + dx, room[1] + dy, room[2] + dx, room[3] + dy


def _first_covered(room: Room, taken: Sequence[Room]) -> Room | None:
    """Return the first of those that stand which a rectangle would cover."""
    x0, y0, x1, y1 = room
    for each in taken:
        if x0 < each[2] and each[0] < x1 and y0 < each[3] and each[1] < y1:
            return each
    return None


def way_out(room: Room, taken: Sequence[Room], dear_x: float = 1.0, dear_y: float = 1.0) -> tuple[float, float]:
    """Return how far a rectangle has to move so that it covers none of those that stand already.

    Parameters
    ----------
    room : Room
        What is placed.
    taken : sequence of Room
        What stands already.
    dear_x, dear_y : float
        What a millimetre of either way counts: a dimension's words go along their line rather than off it.

    Returns
    -------
    (float, float)
        The nearest way found; none where everything about it is full.

    Examples
    --------
    >>> way_out((0, 0, 10, 2), [(9, 1, 12, 3)])
    (0.0, -1.3)
    """
    if _first_covered(room, taken) is None:
        # Nearly all stand free.
        return 0.0, 0.0
    tried: set[tuple[float, float]] = set()
    waiting: list[tuple[float, float, float]] = [(0.0, 0.0, 0.0)]
    for _ in range(_TRIES):
        if not waiting:
            break
        _, dx, dy = heapq.heappop(waiting)
        here = moved(room, dx, dy)
        inside = _first_covered(here, taken)
        if inside is None:
            return dx, dy
        for x, y in (
            (inside[0] - AIR_MM - room[2], dy),
            (inside[2] + AIR_MM - room[0], dy),
            (dx, inside[1] - AIR_MM - room[3]),
            (dx, inside[3] + AIR_MM - room[1]),
        ):
            place = round(x, 6), round(y, 6)
            if place not in tried:
                tried.add(place)
                heapq.heappush(waiting, (abs(x) * dear_x + abs(y) * dear_y, *place))
    return 0.0, 0.0
