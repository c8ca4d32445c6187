"""Handles at what is chosen in the drawing: by its edges and corners an existing item is made larger or smaller."""

from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from hwsched.desktop.opening.drawing_move import EDGES
from hwsched.desktop.opening.scene_seen import Seen
from hwsched.drawings.layers import UNIT

_REACH_PX: Final = 9.0
_HALF_PX: Final = 4.0
_LEAST_PX: Final = 36.0
"""A thing that is seen smaller has no handles: it could not be taken hold of beside them."""
CURSORS: Final = {
    (1, 1): Qt.CursorShape.SizeHorCursor,
    (1, 0): Qt.CursorShape.SizeVerCursor,
    (2, 1): Qt.CursorShape.SizeBDiagCursor,
    (0, 1): Qt.CursorShape.SizeFDiagCursor,
}
"""By how far both ways add up, and whether one goes across."""


def handles(view: Seen) -> dict[tuple[int, int], QPointF]:
    """Return where the handles of what is chosen are on the screen; none where it cannot be sized here."""
    thing = view.state.chosen_thing()
    # A unit is as large as its maker made it.
    if thing is None or not thing.movable or thing.name == UNIT:
        return {}
    for standing, box in view.state.boxes(thing.name):
        if standing.view.name == thing.view:
            seen = view.scene_rect(box)
            if min(seen.width(), seen.height()) < _LEAST_PX:
                return {}
            middle = seen.center()
            return {
                (x, y): QPointF(middle.x() + x * seen.width() / 2, middle.y() - y * seen.height() / 2) for x, y in EDGES
            }
    return {}


def handle_at(view: Seen, at: QPointF) -> tuple[int, int] | None:
    """Return the edge or corner that is taken hold of at a place of the screen."""
    near = {edges: (place - at).manhattanLength() for edges, place in handles(view).items()}
    found = min(near, key=lambda edges: near[edges], default=None)
    return found if found is not None and near[found] <= _REACH_PX else None


def paint_handles(painter: QPainter, view: Seen, accent: QColor, ground: QColor) -> None:
    """Paint the handles of what is chosen."""
    painter.setPen(QPen(accent, 1.5))
    painter.setBrush(ground)
    for place in handles(view).values():
        painter.drawRect(QRectF(place.x() - _HALF_PX, place.y() - _HALF_PX, 2 * _HALF_PX, 2 * _HALF_PX))
