"""A font of the PDF library that takes plain letters whole; apart, since only what writes PDF loads the library."""

from collections.abc import Sequence
from typing import Any

from reportlab.pdfbase.ttfonts import TTFont


class PdfFont(TTFont):  # type: ignore[misc]
    """As the library's, with the same result: most of what a schedule says it would look up letter by letter."""

    def __init__(self, name: str, path: str) -> None:
        super().__init__(name, path, asciiReadable=True)
        self.plain = all(code in self.face.charToGlyph for code in range(32, 127))
        """Whether it has all plain letters."""

    def splitString(self, text: str, doc: Any, encoding: str = "utf-8") -> Sequence[tuple[int, bytes]]:  # noqa: N802 (the library's name)
        """Return the parts of a text with the number of the subset in which each is coded."""
        # Readable: the first subset of a document begins with these letters at their own places.
        if self.plain and text and doc in self.state and text.isascii() and text.isprintable():
            return [(0, text.encode())]
        parts: Sequence[tuple[int, bytes]] = super().splitString(text, doc, encoding)
        return parts
