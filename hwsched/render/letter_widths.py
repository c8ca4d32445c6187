"""Widths of the letters of a TrueType font, read from its file.

Whoever only measures a text, as a window that draws does, needs no PDF library for it. Here belongs what the bundled
fonts need: a table of letters in format 4 or 12 (OpenType specification, chapters cmap, head, hhea and hmtx).
"""

import struct
from array import array
from dataclasses import dataclass
from pathlib import Path
from sys import byteorder

_NO_BREAK, _SPACE = 0xA0, 0x20


@dataclass(frozen=True, slots=True)
class LetterWidths:
    """Widths in thousandths of the font size."""

    widths: dict[int, float]
    """By code point."""
    missing: float
    """Of a letter that the font lacks."""


def letter_widths(path: Path) -> LetterWidths:
    """Read the widths of a font's letters.

    Raises
    ------
    ValueError
        For a table of letters in a format that the bundled fonts do not use.
    """
    content = path.read_bytes()
    tables = {
        tag: offset
        for tag, _sum, offset, _length in struct.iter_unpack(
            ">4sLLL", content[12 : 12 + 16 * int.from_bytes(content[4:6])]
        )
    }
    (units,) = struct.unpack_from(">H", content, tables[b"head"] + 18)
    (measured,) = struct.unpack_from(">H", content, tables[b"hhea"] + 34)
    pairs = _shorts(content, tables[b"hmtx"], 2 * measured)
    share = 1000.0 / units
    advance = [each * share for each in pairs[::2]]
    last = len(advance) - 1
    widths = {letter: advance[min(glyph, last)] for letter, glyph in _glyphs(content, tables[b"cmap"]).items()}
    if _SPACE in widths:
        widths[_NO_BREAK] = widths[_SPACE]
    return LetterWidths(widths, advance[0])


def _shorts(content: bytes, offset: int, count: int) -> "array[int]":
    found = array("H", content[offset : offset + 2 * count])
    if byteorder == "little":
        found.byteswap()
    return found


def _glyphs(content: bytes, cmap: int) -> dict[int, int]:
    """Return the glyph of each letter, from the last of the font's tables that is Unicode's."""
    (count,) = struct.unpack_from(">H", content, cmap + 2)
    found = [
        offset
        for platform, encoding, offset in struct.iter_unpack(">HHL", content[cmap + 4 : cmap + 4 + 8 * count])
        if platform == 3 or (platform == 0 and encoding != 5)
    ]
    start = cmap + found[-1]
    (form,) = struct.unpack_from(">H", content, start)
    if form == 12:
        (groups,) = struct.unpack_from(">L", content, start + 12)
        return {
            letter: glyph + letter - first
            for first, end, glyph in struct.iter_unpack(">LLL", content[start + 16 : start + 16 + 12 * groups])
            for letter in range(first, end + 1)
        }
    if form == 4:
        return _segments(content, start)
    raise ValueError(f"a table of letters in format {form} cannot be read")


def _segments(content: bytes, start: int) -> dict[int, int]:
    (twice,) = struct.unpack_from(">H", content, start + 6)
    count = twice // 2
    ends = _shorts(content, start + 14, count)
    rest = start + 16 + twice
    firsts, deltas, ranges = (_shorts(content, rest + part * twice, count) for part in range(3))
    glyphs: dict[int, int] = {}
    for at, (first, end, delta, away) in enumerate(zip(firsts, ends, deltas, ranges, strict=True)):
        for letter in range(first, end + 1):
            if not away:
                glyphs[letter] = (letter + delta) & 0xFFFF
                continue
            (glyph,) = struct.unpack_from(">H", content, rest + 2 * twice + 2 * at + away + 2 * (letter - first))
            glyphs[letter] = (glyph + delta) & 0xFFFF if glyph else 0
    return glyphs
