"""PDF pages as pixels for a screen or a printer, and where words stand on them. No Qt here: plain bytes and numbers.

Here belongs reading a PDF that was made by us or attached by somebody. The library keeps state of its own for the whole
process, so one call at a time is let into it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from threading import RLock
from typing import Final

import pypdfium2

from hwsched.render.fonts import POINT_MM

_LOCK: Final = RLock()
_LARGEST_PX: Final = 5_000
"""Longer side of a picture of a page; more would fill the memory."""


class UnreadablePdfError(ValueError):
    """The bytes are no PDF that can be read."""


@dataclass(frozen=True, slots=True)
class PagePicture:
    """A page as rows of pixels: blue, green, red and one byte that says nothing."""

    width: int
    height: int
    stride: int
    """Bytes a row."""
    pixels: bytes


@dataclass(frozen=True, slots=True)
class FoundWords:
    """Where searched words stand: the page from 0, and boxes on it."""

    page: int
    boxes: tuple[tuple[float, float, float, float], ...]
    """Left, top, right, bottom [mm from the page's top left]."""


class PdfPages:
    """An opened PDF.

    Parameters
    ----------
    contents : sequence of bytes
        One or several PDFs, whose pages follow one another.

    Raises
    ------
    UnreadablePdfError
        For bytes that are no PDF, or one that asks for a password.
    """

    def __init__(self, contents: Sequence[bytes]) -> None:
        self._documents: list[pypdfium2.PdfDocument] = []
        self._pages: list[tuple[pypdfium2.PdfDocument, int]] = []
        self.sizes: list[tuple[float, float]] = []
        """Width and height of each page [mm]."""
        with _LOCK:
            try:
                for content in contents:
                    document = pypdfium2.PdfDocument(content)
                    self._documents.append(document)
                    for number in range(len(document)):
                        self._pages.append((document, number))
                        wide, tall = document.get_page_size(number)
                        self.sizes.append((wide * POINT_MM, tall * POINT_MM))
            except pypdfium2.PdfiumError as error:
                self.close()
                raise UnreadablePdfError("this PDF cannot be read") from error

    @property
    def count(self) -> int:
        """How many pages there are."""
        return len(self._pages)

    def picture(self, page: int, px_per_mm: float) -> PagePicture:
        """Return a page as pixels; a page that would be larger than fits the memory is drawn smaller."""
        scale = px_per_mm * POINT_MM
        with _LOCK:
            document, number = self._pages[page]
            held = document[number]
            longest = max(held.get_size()) * scale
            scale *= min(1.0, _LARGEST_PX / max(longest, 1.0))
            bitmap = held.render(scale=scale, force_bitmap_format=pypdfium2.raw.FPDFBitmap_BGRx)
            made = PagePicture(bitmap.width, bitmap.height, bitmap.stride, bytes(bitmap.buffer))
            bitmap.close()
            held.close()
        return made

    def text(self, page: int) -> str:
        """Return the words of a page."""
        document, number = self._pages[page]
        with _LOCK:
            held = document[number]
            words = held.get_textpage()
            found = str(words.get_text_bounded())
            words.close()
            held.close()
        return found

    def find(self, words: str) -> list[FoundWords]:
        """Return where words stand, whatever their case, page by page."""
        if not words.strip():
            return []
        return [found for page in range(self.count) if (found := self._on(page, words.strip())).boxes]

    def close(self) -> None:
        """Let go of the PDF."""
        with _LOCK:
            for document in self._documents:
                document.close()
            self._documents, self._pages, self.sizes = [], [], []

    def _on(self, page: int, words: str) -> FoundWords:
        document, number = self._pages[page]
        tall = self.sizes[page][1]
        boxes: list[tuple[float, float, float, float]] = []
        with _LOCK:
            held = document[number]
            text = held.get_textpage()
            search = text.search(words)
            while (found := search.get_next()) is not None:
                start, count = found
                for n in range(text.count_rects(start, count)):
                    left, low, right, high = (each * POINT_MM for each in text.get_rect(n))
                    boxes.append((left, tall - high, right, tall - low))
            search.close()
            text.close()
            held.close()
        return FoundWords(page, tuple(boxes))
