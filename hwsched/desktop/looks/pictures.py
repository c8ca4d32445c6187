"""Pictures out of contents that came from anywhere: photographs upright and small enough to be shown at once.

Reading the bytes and showing the picture belong to whoever asks. What cannot be read gives none, never an error: a name
or a beginning may promise a picture that the rest is not.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
from PySide6.QtGui import QImage, QImageReader, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QSizePolicy, QWidget

from hwsched.desktop.looks.tokens import colour, wide
from hwsched.language import phrase

if TYPE_CHECKING:
    from hwsched.render.pdf_pages import PagePicture

LARGEST_PX: Final = 1600
"""Longer side of a picture that is held for showing."""
_MOST_MB: Final = 256
"""Of memory for one picture that cannot be read smaller than it is."""


def image_of(picture: PagePicture) -> QImage:
    """Return a page's pixels as a picture of Qt's, with pixels of its own."""
    form = QImage.Format.Format_RGB32
    return QImage(picture.pixels, picture.width, picture.height, picture.stride, form).copy()


def has_picture(media_type: str) -> bool:
    """Tell whether something of such a file can be shown."""
    return media_type == "application/pdf" or media_type.startswith("image/")


def picture_of(content: bytes, media_type: str, most_px: int = LARGEST_PX) -> QImage | None:
    """Return the picture that a content is, no larger than asked, of a PDF its first page; None where there is none."""
    if media_type == "application/pdf":
        return _first_page(content, most_px)
    if not media_type.startswith("image/"):
        return None
    held = QByteArray(content)
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer)
    reader.setAllocationLimit(_MOST_MB)
    # A photograph taken upright stands upright.
    reader.setAutoTransform(True)
    size = reader.size()
    if size.isValid() and max(size.width(), size.height()) > most_px:
        # Read small at once: a photograph of 50 megapixels is never whole in the memory.
        reader.setScaledSize(size.scaled(QSize(most_px, most_px), Qt.AspectRatioMode.KeepAspectRatio))
    image = reader.read()
    return None if image.isNull() else image


def _first_page(content: bytes, most_px: int) -> QImage | None:
    from hwsched.render.pdf_pages import PdfPages, UnreadablePdfError

    try:
        pages = PdfPages([content])
    except UnreadablePdfError:
        return None
    try:
        if not pages.count:
            return None
        return image_of(pages.picture(0, most_px / max(pages.sizes[0])))
    finally:
        pages.close()


class Picture(QWidget):
    """One picture as large as the place allows, or a sentence where there is none."""

    def __init__(self, words: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words = words
        self.image: QImage | None = None
        self._scaled: QPixmap | None = None
        self.setAccessibleName(phrase("Picture"))
        self.setMinimumSize(wide(12), wide(12))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the size it likes to have."""
        return QSize(wide(30), wide(22))

    def show_picture(self, image: QImage | None, words: str) -> None:
        """Show a picture; the words are what it is, or why there is none."""
        self.image, self.words, self._scaled = image, words, None
        self.setAccessibleDescription(words)
        self.setToolTip(words)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paint."""
        painter = QPainter(self)
        if self.image is None:
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.setPen(colour("soft"))
            painter.drawText(self.rect().adjusted(8, 8, -8, -8), flags, self.words)
            painter.end()
            return
        ratio = self.devicePixelRatioF()
        room = self.size() * ratio
        # No larger than it is: a small picture is not blown up.
        wanted = self.image.size()
        if wanted.width() > room.width() or wanted.height() > room.height():
            wanted = wanted.scaled(room, Qt.AspectRatioMode.KeepAspectRatio)
        if self._scaled is None or self._scaled.size() != wanted:
            smooth = Qt.TransformationMode.SmoothTransformation
            self._scaled = QPixmap.fromImage(self.image.scaled(wanted, Qt.AspectRatioMode.KeepAspectRatio, smooth))
            self._scaled.setDevicePixelRatio(ratio)
        at = self._scaled.deviceIndependentSize()
        painter.drawPixmap(
            round((self.width() - at.width()) / 2), round((self.height() - at.height()) / 2), self._scaled
        )
        painter.end()
