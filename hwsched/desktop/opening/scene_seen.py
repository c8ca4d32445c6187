"""What painting and keys of the drawing may ask of the view, so that neither has to know it."""

from typing import Protocol

from PySide6.QtCore import QPointF, QRect, QRectF
from PySide6.QtGui import QPalette

from hwsched.desktop.opening.drawing_camera import Camera
from hwsched.desktop.opening.drawing_move import Move
from hwsched.desktop.opening.drawing_state import DrawingState
from hwsched.drawings.things import Box
from hwsched.render.lower import OnPaper


class Seen(Protocol):
    """The view, as those see it who paint it."""

    state: DrawingState
    camera: Camera | None
    move_: Move | None
    cross: QPointF
    empty: str

    def page(self) -> OnPaper | None:
        """Return what is seen, brought to paper."""

    def scene_rect(self, box: Box) -> QRectF:
        """Return a box of the scene as it is on the screen."""

    def palette(self) -> QPalette:
        """Return its colours."""

    def rect(self) -> QRect:
        """Return its size."""

    def width(self) -> int:
        """Return its width [px]."""

    def height(self) -> int:
        """Return its height [px]."""

    def hasFocus(self) -> bool:  # noqa: N802
        """Tell whether keys come here."""


class Keyed(Protocol):
    """The view, as keys work in it."""

    state: DrawingState
    camera: Camera | None
    move_: Move | None
    cross: QPointF

    def look(self) -> Camera | None:
        """Return how the scene is looked at."""

    def look_at(self, name: str) -> None:
        """Look at one view or thing."""

    def see_all(self) -> None:
        """Look at all of it."""

    def zoom(self, ways: int) -> None:
        """Go nearer by steps, or farther."""

    def begin_move(self, thing: str) -> bool:
        """Take hold of a thing."""

    def tell_move(self) -> None:
        """Tell how far it was moved."""

    def drop_move(self) -> None:
        """Take back what is on its way."""

    def let_go(self) -> None:
        """Leave what is on its way where it is."""

    def take_point(self, at: QPointF) -> None:
        """Take a point of a measure."""

    def repaint_soon(self) -> None:
        """Show what was changed."""
