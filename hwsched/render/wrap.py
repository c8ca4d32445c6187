"""Text broken into lines that fit a width; nothing is ever cut off.

Breaks at spaces, then behind - / , ; : _ . in long words, then anywhere.
"""

import re
import unicodedata
from functools import lru_cache
from typing import Final

from hwsched.render.fonts import width_per_size

_BREAK: Final = re.compile(r"(?<=[-/;:_])|(?<=[.,])(?!\d)")
"""Where a long word may be broken; not inside 1.25."""


@lru_cache(maxsize=50_000)
def printable(text: str) -> str:
    """Return a text without what no page can show: controls become spaces, broken halves of characters a mark.

    Line feeds stay.
    """
    if text.isprintable():
        return text
    shown = []
    for letter in text.replace("\r\n", "\n").replace("\r", "\n"):
        category = unicodedata.category(letter)
        if letter == "\n" or category not in {"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"}:
            shown.append(letter)
        elif category == "Cs":
            shown.append("\ufffd")
        elif category in {"Zl", "Zp"}:
            shown.append("\n")
        elif category != "Cf":
            shown.append(" ")
    return "".join(shown)


def wrap(text: str, width: float, size: float, bold: bool = False, narrow: bool = False) -> tuple[str, ...]:
    """Break a text into lines no wider than a width.

    Parameters
    ----------
    text : str
        Line feeds are kept as breaks.
    width : float
        In the unit of ``size``; a single character wider than it still gets a line of its own.
    size : float
        Font size.
    bold, narrow : bool
        Which font it is set in.

    Returns
    -------
    tuple of str
        At least one line.

    Examples
    --------
    >>> wrap("drill from both faces", 60, 10)
    ('drill from', 'both faces')
    """
    # By the width over the size: one memory serves all sizes, and rounding lets widths meet that differ in their last
    # bits.
    return _wrap(printable(text), round(width / size, 4), bold, narrow)


@lru_cache(maxsize=20_000)
def _wrap(text: str, room: float, bold: bool, narrow: bool) -> tuple[str, ...]:
    lines: list[str] = []
    for paragraph in text.split("\n"):
        if width_per_size(paragraph, bold, narrow) <= room:
            lines.append(paragraph)
        else:
            _wrap_paragraph(paragraph, room, bold, narrow, lines)
    return tuple(lines)


def _wrap_paragraph(paragraph: str, room: float, bold: bool, narrow: bool, lines: list[str]) -> None:
    space = width_per_size(" ", bold, narrow)
    line, used = "", 0.0
    for word in paragraph.split():
        wide = width_per_size(word, bold, narrow)
        if line and used + space + wide <= room:
            line, used = f"{line} {word}", used + space + wide
            continue
        if line:
            lines.append(line)
        # Nothing is cut off: a catalogue number longer than its column is broken, since half of it orders another
        # part.
        if wide > room:
            *full, word = _break_word(word, room, bold, narrow)
            lines.extend(full)
            wide = width_per_size(word, bold, narrow)
        line, used = word, wide
    lines.append(line)


def _break_word(word: str, room: float, bold: bool, narrow: bool) -> list[str]:
    parts: list[str] = []
    line, used = "", 0.0
    for piece in _BREAK.split(word):
        wide = width_per_size(piece, bold, narrow)
        if used + wide <= room:
            line, used = line + piece, used + wide
            continue
        if line:
            parts.append(line)
            line, used = "", 0.0
        if wide <= room:
            line, used = piece, wide
            continue
        for letter in piece:
            wide = width_per_size(letter, bold, narrow)
            if line and used + wide > room:
                parts.append(line)
                line, used = "", 0.0
            line, used = line + letter, used + wide
    if line:
        parts.append(line)
    return parts
