"""Shows neutral drawings on the screen, fitted into the view, in the light or dark look."""

import math
from collections.abc import Mapping, Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFocusEvent,
    QFont,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
    QPolygonF,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from hwsched.drawings.drawing import Drawing
from hwsched.render.lower import Bow, Disc, Letters, OnPaper, Stroke, lower
from hwsched.render.screen import DARK, LIGHT, Colour, Look

_PX_PER_MM = 3.0
"""Screen pixels for one paper millimetre: letters of 2.5 mm are then as high as ordinary screen text."""
_GAP_MM = 6.0
_ARROWS: Mapping[Qt.Key, tuple[int, int]] = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
}


def _colour(colour: Colour) -> QColor:
    return QColor.fromRgbF(*colour)


class DrawingView(QWidget):
    """Views side by side, as large as fits; a shape that may be moved is dragged with the mouse, or by arrow keys.

    An arrow moves it by a millimetre, with Shift by ten; Enter lets go of it, Escape takes it back.
    """

    dragged = Signal(float, float)
    """How far the shape was moved so far, right and up [mm of the thing drawn]."""
    dropped = Signal(float, float)
    taken_back = Signal()
    """What keys have moved stays where it was."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._drawings: tuple[Drawing, ...] = ()
        self._lowered: tuple[OnPaper, ...] = ()
        self._size = QSize()
        self._empty = "Choose an opening in the register."
        self._movable = ""
        self._origins: list[tuple[float, float]] = []
        self._factor = 1.0
        self._scale = 0.0
        self._grip: tuple[QPointF, float] | None = None
        self._by_keys = (0.0, 0.0)
        """How far the shape was moved by keys so far."""
        self.setAccessibleName("Drawing")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(220, 200)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the size it likes to have."""
        return QSize(520, 380)

    def show_drawings(self, drawings: Sequence[Drawing], empty: str = "") -> None:
        """Show these views, or a sentence where there are none."""
        self._drawings = tuple(drawings)
        self._empty = empty or self._empty
        self._lowered = ()
        self.update()

    def set_movable(self, name: str) -> None:
        """Name the shape that may be dragged; empty for none."""
        self._movable = name
        self._by_keys = (0.0, 0.0)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus if name else Qt.FocusPolicy.NoFocus)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Move the shape by arrow keys, let go of it or take it back."""
        way = _ARROWS.get(Qt.Key(event.key()))
        if not self._movable or (way is None and self._by_keys == (0.0, 0.0)):
            super().keyPressEvent(event)
        elif way is not None:
            step = 10.0 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1.0
            self._by_keys = (self._by_keys[0] + step * way[0], self._by_keys[1] + step * way[1])
            self.dragged.emit(*self._by_keys)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            moved, self._by_keys = self._by_keys, (0.0, 0.0)
            self.dropped.emit(*moved)
        elif event.key() == Qt.Key.Key_Escape:
            self._by_keys = (0.0, 0.0)
            self.taken_back.emit()
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Show that keys come here."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Take back what was moved and not let go of: a place is only set on purpose."""
        super().focusOutEvent(event)
        if self._by_keys != (0.0, 0.0):
            self._by_keys = (0.0, 0.0)
            self.taken_back.emit()
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Take hold of the movable shape when the mouse is pressed in it."""
        for page, (left, top) in zip(self._lowered, self._origins, strict=False):
            x, y = (event.position().x() - left) / self._factor, (top - event.position().y()) / self._factor
            for shape in page.primitives:
                if isinstance(shape, Stroke) and self._movable and shape.name == self._movable:
                    xs, ys = [p[0] for p in shape.points], [p[1] for p in shape.points]
                    if min(xs) - 1 <= x <= max(xs) + 1 and min(ys) - 1 <= y <= max(ys) + 1:
                        self._grip = (event.position(), self._factor * page.scale)
                        self.setCursor(Qt.CursorShape.ClosedHandCursor)
                        return

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Tell how far the shape is dragged."""
        if self._grip is not None:
            self.dragged.emit(*self._moved(event))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Let go of the shape."""
        if self._grip is not None:
            moved = self._moved(event)
            self._grip = None
            self.unsetCursor()
            self.dropped.emit(*moved)

    def _moved(self, event: QMouseEvent) -> tuple[float, float]:
        if self._grip is None:
            return 0.0, 0.0
        start, px_per_mm = self._grip
        way = event.position() - start
        return way.x() / px_per_mm, -way.y() / px_per_mm

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint."""
        dark = self.palette().color(QPalette.ColorRole.Base).lightness() < 128
        look = DARK if dark else LIGHT
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), _colour(look.ground))
        if not self._drawings:
            painter.setPen(_colour(look.letters["label"]))
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, self._empty)
            painter.end()
            return
        self._fit()
        widths = [page.extent[2] - page.extent[0] for page in self._lowered]
        tall = max(page.extent[3] - page.extent[1] for page in self._lowered)
        total = sum(widths) + _GAP_MM * (len(widths) - 1)
        shrink = min(
            1.0, self.width() / ((total + 2 * _GAP_MM) * _PX_PER_MM), self.height() / ((tall + 8) * _PX_PER_MM)
        )
        factor = _PX_PER_MM * shrink
        x_px = (self.width() - total * factor) / 2
        self._factor, self._origins = factor, []
        for page, width in zip(self._lowered, widths, strict=True):
            painter.save()
            top = (self.height() - (page.extent[3] - page.extent[1]) * factor) / 2
            self._origins.append((x_px - page.extent[0] * factor, top + page.extent[3] * factor))
            painter.translate(*self._origins[-1])
            painter.scale(factor, factor)
            paint_page(painter, page, look)
            painter.restore()
            x_px += (width + _GAP_MM) * factor
        if self.hasFocus():
            painter.setPen(QPen(self.palette().color(QPalette.ColorRole.Highlight), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
        painter.end()

    def _fit(self) -> None:
        """Find the scale at which all views fill the widget; texts keep their size, so it is found by a few tries."""
        if self._lowered and self._size == self.size():
            return
        if self._grip is not None and self._scale:
            # While a shape is dragged the views keep their scale, so that it stays under the mouse.
            self._lowered = tuple(lower(drawing, _scale_of(drawing, self._scale)) for drawing in self._drawings)
            return
        self._size = self.size()
        wide, tall = self.width() / _PX_PER_MM - 2 * _GAP_MM, self.height() / _PX_PER_MM - 8
        across = sum(max(d.bounds[2] - d.bounds[0], 1.0) for d in self._drawings)
        up = max(max(d.bounds[3] - d.bounds[1], 1.0) for d in self._drawings)
        scale = max(min(wide / across, tall / up), 1e-4)
        for _ in range(6):
            pages = tuple(lower(drawing, _scale_of(drawing, scale)) for drawing in self._drawings)
            need_w = sum(p.extent[2] - p.extent[0] for p in pages) + _GAP_MM * (len(pages) - 1)
            need_h = max(p.extent[3] - p.extent[1] for p in pages)
            if need_w <= wide and need_h <= tall:
                break
            scale *= max(0.5, 0.97 * min(wide / need_w, tall / need_h))
        self._lowered = pages
        self._scale = scale


def _scale_of(drawing: Drawing, scale: float) -> float:
    """Return the scale of a drawing among others: a schematic is set as it is, and shrunk letters and all."""
    return 1.0 if drawing.schematic else scale


def paint_page(painter: QPainter, page: OnPaper, look: Look) -> None:
    """Paint what was brought to paper, a painter's unit being a paper millimetre."""
    for shape in page.primitives:
        if isinstance(shape, Letters):
            _letters(painter, shape, look)
            continue
        pen_look = look.pens[shape.pen]
        pen = QPen(_colour(pen_look.colour), pen_look.width_mm)
        if pen_look.dash_mm:
            pen.setDashPattern([dash / pen_look.width_mm for dash in pen_look.dash_mm])
        painter.setPen(pen)
        if isinstance(shape, Stroke):
            points = QPolygonF([QPointF(x, -y) for x, y in shape.points])
            if shape.closed:
                painter.setBrush(_brush(shape.fill, shape.pen, look))
                painter.drawPolygon(points)
            else:
                painter.drawPolyline(points)
        elif isinstance(shape, Disc):
            painter.setBrush(_brush(shape.fill, shape.pen, look))
            painter.drawEllipse(QPointF(shape.x, -shape.y), shape.diameter / 2, shape.diameter / 2)
        elif isinstance(shape, Bow):
            box = QRectF(shape.x - shape.radius, -shape.y - shape.radius, 2 * shape.radius, 2 * shape.radius)
            painter.drawArc(box, round(shape.start_deg * 16), round((shape.end_deg - shape.start_deg) * 16))


def _brush(fill: str, pen: str, look: Look) -> QBrush:
    if fill == "ink":
        return QBrush(_colour(look.pens[pen].colour))  # type: ignore[index]
    colour = look.fills[fill]  # type: ignore[index]
    return QBrush(Qt.BrushStyle.NoBrush) if colour is None else QBrush(_colour(colour))


def _letters(painter: QPainter, shape: Letters, look: Look) -> None:
    # Fonts are sized in whole pixels by Qt: letters are painted large and scaled down, so that they keep their measure.
    font = QFont("DejaVu Sans")
    font.setPixelSize(100)
    font.setBold(shape.role in look.bold)
    metrics = QFontMetricsF(font)
    factor = shape.height_mm / metrics.capHeight()
    width = metrics.horizontalAdvance(shape.text)
    left = {"left": 0.0, "centre": -width / 2, "right": -width}[shape.anchor]
    painter.save()
    painter.translate(shape.x, -shape.y)
    if not math.isclose(shape.angle_deg, 0.0):
        painter.rotate(-shape.angle_deg)
    painter.scale(factor, factor)
    painter.setFont(font)
    painter.setPen(_colour(look.letters[shape.role]))
    painter.drawText(QPointF(left, 0.0), shape.text)
    painter.restore()
