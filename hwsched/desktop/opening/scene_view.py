"""The drawing on the screen: both faces, edge and section, looked at and worked in by mouse and keys."""

from dataclasses import replace
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QFontInfo,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.opening.drawing_camera import PX_PER_MM, STEP, Camera, whole_of
from hwsched.desktop.opening.drawing_move import Move, Stretch
from hwsched.desktop.opening.drawing_state import DrawingState
from hwsched.desktop.opening.scene_handles import CURSORS, handle_at
from hwsched.desktop.opening.scene_keys import press
from hwsched.desktop.opening.scene_painting import paint_scene
from hwsched.drawings.layers import UNIT
from hwsched.drawings.things import lines_for
from hwsched.language import phrase
from hwsched.render.lower import OnPaper
from hwsched.render.scene import on_paper

_MARGIN_PX: Final = 14
_REACH_PX: Final = 7.0
"""So near to a line or a corner what is moved or measured goes on to it."""
_REACH_MM: Final = 8.0
"""From afar, where a pixel is many millimetres, it goes on no farther than that."""
_CLICK_PX: Final = 3.0
"""Whoever moves the mouse less has clicked."""
_ORDINARY_PX: Final = 12
"""Height of ordinary letters for which drawings are set."""
_ROOM_MM: Final = 150.0
"""Room for all views of an opening with their names [paper mm]: letters grow no further where they would take it."""
_ALT: Final = Qt.KeyboardModifier.AltModifier


class SceneView(QWidget):
    """A scene with what is chosen in it; what may be moved is moved by mouse or by arrow keys.

    An arrow moves by a millimetre, with Shift by ten, with Ctrl on to the next centre line or height; Enter lets go,
    Escape takes back. Where nothing that may be moved is chosen, arrows move along the drawing.
    """

    moving = Signal(object)
    """The Move, at each step of it."""
    moved = Signal(object)
    """The Move that was let go of."""
    taken_back = Signal()

    def __init__(self, state: DrawingState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.state = state
        self.camera: Camera | None = None
        self.move_: Move | None = None
        self.empty = phrase("Choose an opening in the register.")
        self.cross = QPointF(0.0, 0.0)
        """Where the next point of a measure is taken by key."""
        self._page: tuple[object, OnPaper] | None = None
        self._pressed: tuple[QPointF, Camera, str] | None = None
        state.changed.connect(self._on_changed)
        self.setAccessibleName(phrase("Drawing of the opening"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(wide(28), wide(23))

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the size it likes to have."""
        return QSize(wide(72), wide(49))

    def page(self) -> OnPaper | None:
        """Return what is seen, brought to paper."""
        scene, camera = self.state.scene, self.look()
        if scene is None or camera is None:
            return None
        within = None if camera.whole else camera.region
        asked = (id(scene), camera.scale, self.state.layers, within)
        if self._page is None or self._page[0] != asked:
            self._page = asked, on_paper(scene, camera.scale, self.state.layers, within)
        return self._page[1]

    def place_of(self, thing: str, view: str) -> QPointF | None:
        """Return where the middle of a thing is on the screen, in one of the views."""
        camera = self.look()
        for standing, (x0, y0, x1, y1) in self.state.boxes(thing):
            if camera is not None and standing.view.name == view:
                return QPointF(*camera.to_screen((x0 + x1) / 2, (y0 + y1) / 2))
        return None

    def zoom(self, ways: int, at: QPointF | None = None) -> None:
        """Go nearer by steps, or farther; what is at this point stays there."""
        camera = self.look()
        if camera is not None:
            self.camera = camera.zoomed(STEP**ways, *((at.x(), at.y()) if at is not None else (None, None)))
            self.update()

    def see_all(self) -> None:
        """Look at all of it."""
        self.camera = None
        self.update()

    def look_at(self, name: str) -> None:
        """Look at one view; or, for what is chosen, at that."""
        camera, scene = self.look(), self.state.scene
        if camera is None or scene is None:
            return
        boxes = self.state.boxes(name)
        standing = scene.standing(name)
        if standing is not None:
            x0, y0, x1, y1 = standing.view.drawing.bounds
            dx, dy = standing.dx_mm, standing.dy_mm
            self.camera = camera.at((x0 + dx, y0 + dy, x1 + dx, y1 + dy))
        elif boxes:
            x0, y0, x1, y1 = boxes[0][1]
            around = max(x1 - x0, y1 - y0, 60.0)
            self.camera = camera.at((x0 - around, y0 - around, x1 + around, y1 + around))
        self.update()

    def drop_move(self) -> None:
        """Take back what is on its way."""
        if self.move_ is not None:
            self.move_ = None
            self.taken_back.emit()
            self.update()

    def begin_move(self, thing: str, view: str = "") -> bool:
        """Take hold of a thing in the view in which it may be moved."""
        known = next((each for each in self.state.things if each.name == thing and each.movable), None)
        for standing, box in self.state.boxes(thing) if known is not None else ():
            if known is not None and standing.view.name == known.view and view in ("", known.view):
                own = (box[0] - standing.dx_mm, box[1], box[2] - standing.dx_mm, box[3])
                self.move_ = Move(thing, standing.view.name, own, lines_for(standing.view.drawing, thing))
                return True
        return False

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Move, look, measure and choose by keys."""
        if not press(self, event):
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Show that keys come here."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Take back what was moved and not let go of: a place is only set on purpose."""
        super().focusOutEvent(event)
        if self._pressed is None and self.move_ is not None:
            self.drop_move()
        self.update()

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802
        """Go nearer or farther at the pointer."""
        if event.angleDelta().y():
            self.zoom(1 if event.angleDelta().y() > 0 else -1, event.position())
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Take hold of what may be moved, or of the drawing itself."""
        camera, at = self.look(), event.position()
        if camera is None or event.button() not in (Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton):
            super().mousePressEvent(event)
            return
        if self.state.measuring and event.button() == Qt.MouseButton.LeftButton:
            self.take_point(at)
            return
        x, y = camera.to_scene(at.x(), at.y())
        thing = self.state.thing_at(x, y, _CLICK_PX / camera.factor)
        self._pressed = at, camera, thing
        edges = handle_at(self, at) if event.button() == Qt.MouseButton.LeftButton else None
        if edges is not None and self.begin_move(self.state.chosen) and self.move_ is not None:
            whole = self.move_
            self.move_ = Stretch(whole.thing, whole.view, whole.box, whole.lines, edges=edges)
            self._pressed = at, camera, whole.thing
            return
        standing = self.state.scene.at(x, y) if self.state.scene is not None else None
        # The unit is what people come to move; what stands there is moved once it was chosen.
        if event.button() == Qt.MouseButton.LeftButton and self._under(x, y) and standing is not None:
            held = self._under(x, y)
            self.drop_move()
            if self.begin_move(held, standing.view.name):
                self._pressed = at, camera, held
                self.setCursor(Qt.CursorShape.ClosedHandCursor)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Tell how far it is dragged."""
        at = event.position()
        if self._pressed is None:
            self.cross = at
            edges = None if self.state.measuring else handle_at(self, at)
            if edges is not None:
                self.setCursor(CURSORS[abs(edges[0] + edges[1]), abs(edges[0])])
            else:
                self.unsetCursor()
            if self.state.measuring:
                self.update()
            return
        start, camera, _ = self._pressed
        dx, dy = (at.x() - start.x()) / camera.factor, (start.y() - at.y()) / camera.factor
        if self.move_ is not None:
            reach = 0.0 if event.modifiers() & _ALT else min(_REACH_PX / camera.factor, _REACH_MM)
            self.move_.to(dx, dy, reach)
            self.moving.emit(self.move_)
        elif (at - start).manhattanLength() > _CLICK_PX:
            self.camera = camera.moved(-dx, -dy)
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Let go; who only clicked has chosen."""
        if self._pressed is None:
            return
        (start, _, thing), self._pressed = self._pressed, None
        self.unsetCursor()
        if (event.position() - start).manhattanLength() < _CLICK_PX:
            self.move_ = None
            self.state.choose(thing)
        elif self.move_ is not None:
            self.let_go()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Look at what was clicked; on the ground beside all things, at all."""
        camera, at = self.look(), event.position()
        if camera is not None:
            x, y = camera.to_scene(at.x(), at.y())
            thing = self._under(x, y) or self.state.thing_at(x, y, _CLICK_PX / camera.factor)
            self.state.choose(thing)
            if thing:
                self.look_at(thing)
            else:
                self.see_all()
        event.accept()

    def _under(self, x: float, y: float) -> str:
        """Return what may be moved and is taken hold of at a place."""
        reach = _CLICK_PX / self.camera.factor if self.camera is not None else 0.0
        for thing in dict.fromkeys((self.state.chosen, UNIT)):
            known = next((each for each in self.state.things if each.name == thing and each.movable), None)
            for standing, (x0, y0, x1, y1) in self.state.boxes(thing) if known is not None else ():
                inside = x0 - reach <= x <= x1 + reach and y0 - reach <= y <= y1 + reach
                if known is not None and standing.view.name == known.view and inside:
                    return thing
        return ""

    def tell_move(self) -> None:
        """Tell how far it was moved by now."""
        self.moving.emit(self.move_)
        self.update()

    def repaint_soon(self) -> None:
        """Show what was changed."""
        self.update()

    def let_go(self) -> None:
        """Leave what is on its way where it is."""
        move, self.move_ = self.move_, None
        if move is not None and move.moved:
            self.moved.emit(move)
        self.update()

    def take_point(self, at: QPointF) -> None:
        """Take a point of a measure where the screen shows it."""
        camera = self.look()
        if camera is not None:
            self.state.measure_point(*camera.to_scene(at.x(), at.y()), _REACH_PX / camera.factor)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Keep all in sight where all was, else the place that is looked at."""
        super().resizeEvent(event)
        camera = self.camera
        near = camera is not None and not camera.whole
        self.camera = replace(camera, wide_px=self.width(), tall_px=self.height()) if near and camera else None

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint."""
        painter = QPainter(self)
        paint_scene(painter, self)
        painter.end()

    def scene_rect(self, box: tuple[float, float, float, float]) -> QRectF:
        """Return a box of the scene as it is on the screen."""
        camera = self.look()
        if camera is None:
            return QRectF()
        (x0, y1), (x1, y0) = camera.to_screen(box[0], box[3]), camera.to_screen(box[2], box[1])
        return QRectF(x0, y1, x1 - x0, y0 - y1)

    def px_per_mm(self, *, whole: bool = True) -> float:
        """Return screen pixels for one paper millimetre: as large as letters are set, where there is room for that.

        Where all of it is seen there may be none for large letters; whoever looks nearer has them.
        """
        usual = PX_PER_MM * max(QFontInfo(self.font()).pixelSize(), 6) / _ORDINARY_PX
        return min(usual, max(PX_PER_MM, self.width() / _ROOM_MM)) if whole else usual

    def look(self) -> Camera | None:
        """Return how the scene is looked at; None where there is none."""
        if self.camera is not None and self.state.scene is not None and self.camera.ends == self.state.scene.ends:
            self.camera = self.camera.lettered(self.px_per_mm(whole=self.camera.whole))
            return self.camera
        px = self.px_per_mm()
        wide, tall = max(self.width() - 2 * _MARGIN_PX, 40), max(self.height() - 2 * _MARGIN_PX, 40)
        # While something is moved the views keep their places, so that it stays under the hand.
        if self.move_ is None:
            self.state.fit_room(wide / px, tall / px)
        scene = self.state.scene
        if scene is None:
            return None
        self.camera = whole_of(scene.ends, scene.scale, self.width(), self.height(), px)
        return self.camera

    def _on_changed(self) -> None:
        self.update()
