"""One page of a document on the screen: leafed through, enlarged, with the words that were searched marked on it."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import QColor, QImage, QKeyEvent, QPainter, QPaintEvent, QPalette, QPen, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QScrollArea, QWidget

from hwsched.desktop.jobs.jobs import Cancelled, Jobs, Progress
from hwsched.desktop.looks.pictures import image_of
from hwsched.desktop.looks.tokens import FOCUS, colour, wide
from hwsched.desktop.widgets.empty import paint_empty
from hwsched.language import phrase
from hwsched.render.pdf_pages import FoundWords, PdfPages
from hwsched.render.screen import LIGHT

_RIM_PX: Final = 12
_LEAST: Final = 0.8
"""Screen pixels for one paper millimetre: nobody reads less."""
_MOST: Final = 24.0
_STEP: Final = 1.25
_MARK_ALPHA: Final = 90


class _Sheet(QWidget):
    """The page itself."""

    def __init__(self) -> None:
        super().__init__()
        self.image: QImage | None = None
        self.page_size = QSizeF()
        """On the screen; a picture that would be too large for the memory is drawn over it."""
        self.marked: tuple[QRectF, ...] = ()
        """Boxes of searched words [screen pixels]."""
        self.words = ""
        self.drawing = False
        """Whether a picture of a page is on its way."""

    def _paper(self) -> QRectF:
        size = self.page_size
        return QRectF((self.width() - size.width()) / 2, float(_RIM_PX), size.width(), size.height())

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paint."""
        painter = QPainter(self)
        if self.image is None and self.drawing:
            painter.fillRect(self._paper(), QColor.fromRgbF(*LIGHT.ground))
            painter.setPen(self.palette().color(QPalette.ColorRole.Mid))
            painter.drawRect(self._paper())
            painter.end()
            return
        if self.image is None:
            paint_empty(painter, self.rect(), self.words)
            painter.end()
            return
        left, top = self._paper().left(), self._paper().top()
        # Paper stays white in the dark theme too: it is what the printer will give.
        painter.drawImage(self._paper(), self.image)
        painter.setPen(self.palette().color(QPalette.ColorRole.Mid))
        painter.drawRect(self._paper())
        tint = QColor(self.palette().color(QPalette.ColorRole.Highlight))
        tint.setAlpha(_MARK_ALPHA)
        # The tint alone is hardly seen on white paper.
        painter.setPen(QPen(colour("focus", dark=False), FOCUS))
        for box in self.marked:
            shown = box.translated(left, top).adjusted(-FOCUS, -FOCUS, FOCUS, FOCUS)
            painter.fillRect(shown, tint)
            painter.drawRect(shown)
        painter.end()


class PageView(QScrollArea):
    """Pages one at a time, as wide as the place, whole, or larger; drawn off the screen's thread.

    Parameters
    ----------
    jobs : Jobs
        Beside which pages are drawn.
    asker : QWidget
        The page of the window that holds it.
    """

    turned = Signal(int)
    """Another page is shown, from 0."""

    def __init__(self, jobs: Jobs, asker: QWidget) -> None:
        super().__init__()
        self._drawing, self._asker = jobs.beside(asker), asker
        self._wanted: tuple[PdfPages, int, float] | None = None
        """Pages, page and pixels for a millimetre of the picture that is to be shown."""
        self.pages: PdfPages | None = None
        self.page = 0
        self.found: dict[int, FoundWords] = {}
        self._scale: float | None = None
        """Screen pixels for one paper millimetre; None: as the fit says."""
        self.whole = True
        """Fit the whole page, else its width."""
        self.sheet = _Sheet()
        self.setWidget(self.sheet)
        self.setWidgetResizable(False)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.setBackgroundRole(QPalette.ColorRole.Window)
        self.setAccessibleName(phrase("Page"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the size it likes to have."""
        return QSize(wide(70), wide(80))

    def show_pages(self, pages: PdfPages | None, words: str = "") -> None:
        """Show other pages from the first on, or a sentence where there are none."""
        if self.pages is not None and self.pages is not pages:
            self.pages.close()
        self.pages, self.page, self.found = pages, 0, {}
        self.sheet.words = words
        self._show()

    def turn(self, page: int) -> None:
        """Show another page; beyond the ends nothing happens."""
        if self.pages is not None and 0 <= page < self.pages.count and page != self.page:
            self.page = page
            self._show()
            self.verticalScrollBar().setValue(0)

    def mark(self, found: Sequence[FoundWords]) -> None:
        """Mark words that were found."""
        self.found = {each.page: each for each in found}
        self._show()

    def zoom(self, way: int) -> None:
        """Show the page larger or smaller by a step."""
        self._scale = min(max(self.scale * _STEP**way, _LEAST), _MOST)
        self._show()

    def fit(self, *, whole: bool) -> None:
        """Show the page whole, or as wide as the place."""
        self._scale, self.whole = None, whole
        self._show()

    @property
    def scale(self) -> float:
        """Screen pixels for one paper millimetre."""
        if self._scale is not None or self.pages is None or not self.pages.count:
            return self._scale or 1.0
        wide, tall = self.pages.sizes[self.page]
        bar = self.verticalScrollBar().sizeHint().width()
        across = (self.width() - bar - 2 * _RIM_PX) / wide
        down = (self.height() - bar - 2 * _RIM_PX) / tall
        return min(max(min(across, down) if self.whole else across, _LEAST), _MOST)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Follow the size of the place."""
        super().resizeEvent(event)
        if self._scale is None:
            self._show()

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802
        """Enlarge while Ctrl is held."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(1 if event.angleDelta().y() > 0 else -1)
            event.accept()
        else:
            super().wheelEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Leaf with the page keys, zoom with plus and minus."""
        last = self.pages.count - 1 if self.pages is not None else 0
        turns = {
            Qt.Key.Key_PageDown: self.page + 1,
            Qt.Key.Key_PageUp: self.page - 1,
            Qt.Key.Key_Home: 0,
            Qt.Key.Key_End: last,
        }
        zooms = {Qt.Key.Key_Plus: 1, Qt.Key.Key_Equal: 1, Qt.Key.Key_Minus: -1}
        key = Qt.Key(event.key())
        if key in turns:
            self.turn(turns[key])
        elif key in zooms:
            self.zoom(zooms[key])
        else:
            super().keyPressEvent(event)

    def _show(self) -> None:
        if self.pages is None or not self.pages.count:
            self.sheet.image, self.sheet.marked, self._wanted = None, (), None
            self.sheet.drawing = False
            self.sheet.resize(max(self.viewport().width(), wide(25)), max(self.viewport().height(), wide(15)))
            self.sheet.update()
            self.turned.emit(0)
            return
        ratio, scale = self.devicePixelRatioF(), self.scale
        found = self.found.get(self.page)
        self.sheet.marked = tuple(
            QRectF(left * scale, top * scale, (right - left) * scale, (low - top) * scale)
            for left, top, right, low in (found.boxes if found is not None else ())
        )
        across, tall = self.pages.sizes[self.page]
        self.sheet.page_size = size = QSizeF(across * scale, tall * scale)
        rims = _RIM_PX + _RIM_PX
        self.sheet.resize(max(round(size.width()) + rims, self.viewport().width()), round(size.height()) + rims)
        self._want(self.pages, self.page, scale * ratio)
        self.sheet.update()
        self.turned.emit(self.page)

    def _want(self, pages: PdfPages, page: int, px_per_mm: float) -> None:
        """Let a picture be drawn: until it is there the same page stands in the size before, another one empty."""
        wanted, before = (pages, page, px_per_mm), self._wanted
        if wanted == before:
            return
        if before is None or before[:2] != wanted[:2]:
            self.sheet.image = None
        self._wanted, self.sheet.drawing = wanted, True
        self._draw()

    def _draw(self) -> None:
        wanted = self._wanted
        if wanted is None or self._drawing.busy:
            # What is drawn now is looked at once it is done: the last wish counts.
            return

        def work(_progress: Progress, _cancelled: Cancelled) -> QImage | None:
            try:
                return image_of(wanted[0].picture(wanted[1], wanted[2]))
            except IndexError:
                # Closed meanwhile: there are no pages any more.
                return None

        def then(image: QImage | None) -> None:
            if wanted == self._wanted:
                self.sheet.image = image
                self.sheet.update()
            else:
                self._draw()

        self._drawing.run("", work, then, asker=self._asker, kept=False)
