"""How it is said that nobody knows a value: by a word, and in the narrow cell of a grid by a mark.

Here belongs what is shown; which words of a cell are read as unknown stands in `reading`.
"""

from typing import Final

from hwsched.language import phrase

MARK: Final = "?"
"""Stands in a cell of a grid alone, whose tip and spoken text say the word."""


def unknown_word() -> str:
    """Return the word in the language in force."""
    return phrase("unknown")


def says_nothing(text: str) -> bool:
    """Tell whether what stands in a field says that nobody knows: nothing, the mark, or the word.

    Examples
    --------
    >>> [says_nothing(text) for text in ("", " ? ", "Unknown", "none", "0")]
    [True, True, True, False, False]
    """
    said = text.strip()
    return said in ("", MARK) or said.casefold() == unknown_word().casefold()


def in_words(text: str) -> str:
    """Return what a cell shows as it is said where there is room for words.

    Examples
    --------
    >>> in_words("?"), in_words("wood"), in_words("")
    ('unknown', 'wood', '')
    """
    return unknown_word() if text == MARK else text
