"""Schematics on the screen as sheets: letters and all enlarged, scrolled, leafed through, with their notes below.

A sheet is as wide as its place, or as large as letters of the text size in force can be read: then it is scrolled.
"""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QKeyEvent, QPainter, QPaintEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QScrollArea, QSizePolicy, QToolButton, QVBoxLayout, QWidget

from hwsched.desktop.looks.tokens import SPACE, dark_now, font, scaled, wide
from hwsched.desktop.widgets.drawing_view import paint_page
from hwsched.desktop.widgets.empty import paint_empty
from hwsched.drawings.drawing import Drawing
from hwsched.language import phrase
from hwsched.render.lower import Letters, OnPaper, lower
from hwsched.render.screen import DARK, LIGHT

_RIM_MM: Final = 4.0
_LEAST_PX: Final = 1.6
"""Screen pixels for one paper millimetre: nobody reads less."""
_MOST_PX: Final = 14.0
_STEP: Final = 1.25
_READ: Final = 0.75
"""Least height of letters at first, as a share of the window's small ones, at the usual text size."""
_KEYS: Final[dict[int, int]] = {Qt.Key.Key_Plus: 1, Qt.Key.Key_Equal: 1, Qt.Key.Key_Minus: -1}
"""Keys that enlarge or make smaller."""


class _Canvas(QWidget):
    """One sheet, or a sentence where there is none."""

    zoomed = Signal(int)
    """The wheel was turned with Ctrl held: up or down."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.page: OnPaper | None = None
        self.notes: tuple[str, ...] = ()
        self.words = ""
        self.px_per_mm = 3.0
        self._seen = 0
        """How wide the place is in which the sheet is seen [px]."""

    def wide_mm(self) -> float:
        """Return the width of the sheet [paper mm]."""
        return (self.page.extent[2] - self.page.extent[0] if self.page is not None else 0.0) + 2 * _RIM_MM

    def read_px_per_mm(self) -> float:
        """Return the scale at which its smallest letters are read in the text size in force [px/mm]."""
        letters = [each.height_mm for each in self.page.primitives if isinstance(each, Letters)] if self.page else []
        if not letters:
            return _LEAST_PX
        # Whoever chose larger letters reads none that are smaller than the window's own.
        share = min(max(_READ * scaled(100) / 100, _READ), 1.0)
        return share * QFontMetricsF(font("small")).capHeight() / min(letters)

    def fit_size(self, width: int) -> None:
        """Take as much room as the sheet and its notes need, at least so much width; notes are as wide as is seen."""
        self._seen = width
        if self.page is None:
            self.setFixedSize(width, wide(16))
            return
        across = max(round(self.wide_mm() * self.px_per_mm), 10)
        tall = round((self.page.extent[3] - self.page.extent[1] + 2 * _RIM_MM) * self.px_per_mm)
        self.setFixedSize(max(across, width), tall + self._notes_tall())
        self.update()

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802
        """Enlarge while Ctrl is held."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoomed.emit(1 if event.angleDelta().y() > 0 else -1)
            event.accept()
        else:
            super().wheelEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint."""
        look = DARK if dark_now() else LIGHT
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), _ground())
        painter.setPen(QColor.fromRgbF(*look.letters["label"]))
        if self.page is None:
            paint_empty(painter, self.rect(), self.words)
            painter.end()
            return
        left, low, _, high = self.page.extent
        painter.save()
        painter.scale(self.px_per_mm, self.px_per_mm)
        painter.translate(_RIM_MM - left, _RIM_MM + high)
        paint_page(painter, self.page, look)
        painter.restore()
        top = round((high - low + 2 * _RIM_MM) * self.px_per_mm)
        room = self._notes_room()
        painter.drawText(room.translated(0, top), int(_WRAPPED), self._said())
        painter.end()

    def _said(self) -> str:
        return "\n".join(self.notes)

    def _notes_room(self) -> QRect:
        rim = scaled(SPACE.middle)
        return QRect(rim, 0, max(self._seen - 2 * rim, wide(10)), 10_000)

    def _notes_tall(self) -> int:
        if not self.notes:
            return 0
        room = QFontMetricsF(self.font()).boundingRect(self._notes_room(), int(_WRAPPED), self._said())
        return round(room.height()) + scaled(SPACE.middle)


class _Area(QScrollArea):
    """What the sheet does not reach has its ground; keys scroll, enlarge, make smaller and show the whole width."""

    zoomed = Signal(int)
    widened = Signal()
    """The whole width is asked for."""

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Enlarge, make smaller or fit the width by keys; others scroll."""
        if event.key() in _KEYS:
            self.zoomed.emit(_KEYS[event.key()])
        elif event.key() == Qt.Key.Key_0:
            self.widened.emit()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint."""
        painter = QPainter(self.viewport())
        painter.fillRect(event.rect(), _ground())
        painter.end()


def _ground() -> QColor:
    return QColor.fromRgbF(*(DARK if dark_now() else LIGHT).ground)


_WRAPPED: Final = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap


class _Title(QLabel):
    """A line that ends in dots where it is too long for the place; its tip has the whole."""

    def __init__(self) -> None:
        super().__init__()
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """Paint."""
        painter = QPainter(self)
        text = self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, self.width())
        painter.drawText(self.rect(), int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter), text)
        painter.end()


class SheetView(QWidget):
    """Sheets with their title; as wide as the place, or larger, with Ctrl and the wheel or the buttons."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sheets: tuple[Drawing, ...] = ()
        self._at = 0
        self._px: float | None = None
        """Screen pixels for one paper millimetre, as the person chose; None: as wide as the place."""
        self._read = True
        """Whether letters are kept large enough to be read, while the person has chosen nothing else."""
        self.title = _Title()
        self.canvas = _Canvas()
        self.canvas.zoomed.connect(self.zoom)
        self.area = _Area()
        self.area.setWidget(self.canvas)
        self.area.setFrameShape(QScrollArea.Shape.NoFrame)
        self.area.zoomed.connect(self.zoom)
        self.area.widened.connect(self.fit_width)
        self.back = self._button("◀", phrase("The sheet before"), lambda: self._leaf(-1))
        self.ahead = self._button("▶", phrase("The next sheet"), lambda: self._leaf(1))
        self.smaller = self._button("−", phrase("Smaller (−, or Ctrl and wheel)"), lambda: self.zoom(-1))
        self.larger = self._button("+", phrase("Larger (+, or Ctrl and wheel)"), lambda: self.zoom(1))
        self.whole = self._button(phrase("Width"), phrase("As wide as the place (0)"), self.fit_width)
        row = QHBoxLayout()
        row.setContentsMargins(SPACE.hair, SPACE.hair // 2, SPACE.hair, 0)
        row.addWidget(self.title, 1)
        for each in (self.back, self.ahead, self.smaller, self.larger, self.whole):
            row.addWidget(each)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(SPACE.hair // 2)
        layout.addLayout(row)
        layout.addWidget(self.area, 1)
        self.show_drawings(())

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the size it likes to have."""
        return QSize(wide(75), wide(43))

    def show_drawings(self, drawings: Sequence[Drawing], empty: str = "") -> None:
        """Show these sheets, one at a time, or a sentence where there are none; zoom and sheet stay as they are."""
        same = [each.title for each in drawings] == [each.title for each in self._sheets]
        self._sheets = tuple(drawings)
        self._at = min(self._at, max(len(self._sheets) - 1, 0)) if same else 0
        self.canvas.words = empty or self.canvas.words
        self._show()
        if not same:
            self.area.verticalScrollBar().setValue(0)

    def zoom(self, way: int) -> None:
        """Show the sheet larger or smaller by a step."""
        self._px = min(max(self.canvas.px_per_mm * _STEP**way, _LEAST_PX), _MOST_PX)
        self._set_size()

    def fit_width(self) -> None:
        """Show the sheet as wide as the place."""
        self._px, self._read = None, False
        self._set_size()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Follow the place's width."""
        super().resizeEvent(event)
        self._set_size()

    def _show(self) -> None:
        sheet = self._sheets[self._at] if self._sheets else None
        self.canvas.page = lower(sheet, 1.0) if sheet is not None else None
        self.canvas.notes = sheet.notes if sheet is not None else ()
        several = len(self._sheets) > 1
        self.title.setText(phrase(sheet.title) if sheet is not None else "")
        self.title.setToolTip(self.title.text())
        for button in (self.back, self.ahead):
            button.setVisible(several)
        self.back.setEnabled(self._at > 0)
        self.ahead.setEnabled(self._at + 1 < len(self._sheets))
        for button in (self.smaller, self.larger, self.whole):
            button.setEnabled(sheet is not None)
        self._set_size()

    def _set_size(self) -> None:
        # Room for the bar at the side is kept, so that it does not come and go with the height of the notes.
        bar = self.area.verticalScrollBar().sizeHint().width()
        width = max(self.area.width() - bar, 60)
        least = max(self.canvas.read_px_per_mm(), _LEAST_PX) if self._read else _LEAST_PX
        usual = min(max(width / self.canvas.wide_mm(), least), _MOST_PX)
        self.canvas.px_per_mm = usual if self._px is None else self._px
        self.canvas.fit_size(width)

    def _leaf(self, way: int) -> None:
        self._at = min(max(self._at + way, 0), len(self._sheets) - 1)
        self._show()
        self.area.verticalScrollBar().setValue(0)

    def _button(self, text: str, tip: str, slot: object) -> QToolButton:
        made = QToolButton()
        made.setText(text)
        made.setToolTip(tip)
        made.clicked.connect(slot)
        return made
