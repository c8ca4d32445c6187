"""Painting the scene: what was brought to paper, what is chosen, guides, the measure, and where keys go."""

from typing import Final

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPalette, QPen

from hwsched.desktop.looks.tokens import FOCUS, SPACE, colour, scaled
from hwsched.desktop.opening.drawing_move import Stretch
from hwsched.desktop.opening.scene_handles import paint_handles
from hwsched.desktop.opening.scene_seen import Seen
from hwsched.desktop.widgets.drawing_view import paint_page
from hwsched.render.screen import DARK, LIGHT, Look

_AIR_PX: Final = 4.0
_TINT: Final = 38
_POINT_PX: Final = 4.0


def look_of(palette: QPalette) -> Look:
    """Return how drawings look on the ground of the screen."""
    return DARK if palette.color(QPalette.ColorRole.Base).lightness() < 128 else LIGHT


def paint_scene(painter: QPainter, view: Seen) -> None:
    """Paint all of the view."""
    look = look_of(view.palette())
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.fillRect(view.rect(), QColor.fromRgbF(*look.ground))
    page, camera = view.page(), view.camera
    if page is None or camera is None:
        painter.setPen(QColor.fromRgbF(*look.letters["label"]))
        air = scaled(SPACE.wide)
        within = view.rect().adjusted(air, 0, -air, 0)
        painter.drawText(within, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, view.empty)
    else:
        painter.save()
        painter.translate(*camera.to_screen(0.0, 0.0))
        painter.scale(camera.px_per_mm, camera.px_per_mm)
        paint_page(painter, page, look, backed=not camera.whole)
        painter.restore()
        accent = colour("accent")
        _chosen(painter, view, accent)
        paint_handles(painter, view, accent, QColor.fromRgbF(*look.ground))
        _guides(painter, view, accent)
        _measure(painter, view, look)
    if view.hasFocus():
        painter.setPen(QPen(colour("focus"), FOCUS))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(view.rect().adjusted(1, 1, -1, -1))


def _chosen(painter: QPainter, view: Seen, accent: QColor) -> None:
    tint = QColor(accent)
    tint.setAlpha(_TINT)
    for _, box in view.state.boxes(view.state.chosen):
        painter.setPen(QPen(accent, 1.5))
        painter.setBrush(tint)
        painter.drawRoundedRect(view.scene_rect(box).adjusted(-_AIR_PX, -_AIR_PX, _AIR_PX, _AIR_PX), 3.0, 3.0)


def _guides(painter: QPainter, view: Seen, accent: QColor) -> None:
    move, scene = view.move_, view.state.scene
    standing = scene.standing(move.view) if move is not None and scene is not None else None
    if move is None or standing is None or view.camera is None:
        return
    painter.setPen(QPen(accent, 1.0, Qt.PenStyle.DashLine))
    if isinstance(move, Stretch):
        x0, y0, x1, y1 = move.stretched
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(view.scene_rect((x0 + standing.dx_mm, y0, x1 + standing.dx_mm, y1)))
    if move.upright is not None:
        x, _ = view.camera.to_screen(move.upright[0] + standing.dx_mm, 0.0)
        painter.drawLine(QLineF(x, 0.0, x, float(view.height())))
    if move.level is not None:
        _, y = view.camera.to_screen(0.0, move.level[0])
        painter.drawLine(QLineF(0.0, y, float(view.width()), y))


def _measure(painter: QPainter, view: Seen, look: Look) -> None:
    state, camera = view.state, view.camera
    if not state.measuring or camera is None:
        return
    ink = QColor.fromRgbF(*look.pens["warning"].colour)
    painter.setPen(QPen(ink, 1.5))
    painter.setBrush(ink)
    points = [QPointF(*camera.to_screen(*each)) for each in state.points]
    for each in points:
        painter.drawEllipse(each, _POINT_PX, _POINT_PX)
    measured = state.measured()
    if measured is not None:
        painter.drawLine(points[0], points[1])
        _words(painter, (points[0] + points[1]) / 2, measured.words(state.style), look)
        return
    cross = view.cross
    painter.drawLine(QLineF(cross.x() - 9, cross.y(), cross.x() + 9, cross.y()))
    painter.drawLine(QLineF(cross.x(), cross.y() - 9, cross.x(), cross.y() + 9))
    if points:
        painter.setPen(QPen(ink, 1.0, Qt.PenStyle.DashLine))
        painter.drawLine(points[0], cross)


def _words(painter: QPainter, at: QPointF, words: str, look: Look) -> None:
    metrics = painter.fontMetrics()
    wide, tall = metrics.horizontalAdvance(words) + 12, metrics.height() + 6
    room = painter.viewport()
    # Words stay in sight, wherever the points are.
    left = min(max(at.x() + 8, 2.0), max(room.width() - wide - 2.0, 2.0))
    top = min(max(at.y() - tall - 4, 2.0), max(room.height() - tall - 2.0, 2.0))
    rect = QRectF(left, top, wide, tall)
    painter.setBrush(QColor.fromRgbF(*look.ground))
    painter.drawRoundedRect(rect, 3.0, 3.0)
    painter.setPen(QColor.fromRgbF(*look.letters["label"]))
    painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, words)
