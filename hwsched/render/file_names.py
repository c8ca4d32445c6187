"""File names made of marks: safe on every system, and never the same for two marks."""

import re
import unicodedata
from typing import Final

_LONGEST: Final = 80
"""Bytes: room is left for folders, endings and what a sync program adds."""
_UNSAFE: Final = re.compile(r"[^\w.+=@ ()-]+")
_RESERVED: Final = re.compile(r"(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³]|conin\$|conout\$)(\..*)?", re.IGNORECASE)


def _folded(name: str) -> str:
    """Return what file systems take for the same: letters of any case, composed or not."""
    # Twice: folding the case can put letters together that decompose again.
    return unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", name).casefold())


def _cut(text: str, limit: int) -> str:
    """Cut a text so that it takes no more bytes than a limit."""
    # File systems count bytes, and a cut must not leave half a letter.
    return text.encode("utf-8", "ignore")[:limit].decode("utf-8", "ignore")


def _safe(mark: str) -> str:
    text = unicodedata.normalize("NFC", mark.encode("utf-8", "ignore").decode("utf-8"))
    # Windows drops dots and spaces at the end of a name without a word, and then finds another file.
    text = _UNSAFE.sub("_", text).strip(" .")
    text = _cut(text, _LONGEST).strip(" .")
    if not text.strip("_"):
        text = "unnamed"
    # A leading dash reads like an option on a command line.
    return f"_{text}" if _RESERVED.fullmatch(text) or text[0] in "-=+@~" else text


def safe_file_name(mark: str, taken: set[str]) -> str:
    """Make a file name, without its ending, of a mark.

    Parameters
    ----------
    mark : str
        Anything: ``../../x``, ``CON``, empty, very long.
    taken : set of str
        Names given so far, folded; the new one is added. With the same marks in the same order the names are the same.

    Returns
    -------
    str
        At most 90 bytes; letters and digits of any script, spaces and . _ ( ) + = @ - inside.

    Examples
    --------
    >>> taken = set()
    >>> [safe_file_name(mark, taken) for mark in ("101-A", "101-a", "../../x", "B/1", "B:1", "CON", "")]
    ['101-A', '101-a (2)', '_.._x', 'B_1', 'B_1 (2)', '_CON', 'unnamed']
    """
    base = _safe(mark)
    name, number = base, 1
    while _folded(name) in taken:
        number += 1
        name = f"{base} ({number})"
    taken.add(_folded(name))
    return name
