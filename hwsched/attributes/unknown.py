"""How it is said that nobody knows a value: by a word, wherever it is shown.

Here belongs what is shown; which words of a cell are read as unknown stands in `reading`.
"""

from typing import Final

from hwsched.language import phrase

_TYPED: Final = "?"
"""Many type it for the word; it is shown nowhere."""


def unknown_word() -> str:
    """Return the word in the language in force."""
    return phrase("unknown")


def says_nothing(text: str) -> bool:
    """Tell whether what stands in a field says that nobody knows: nothing, a question mark, or the word.

    Examples
    --------
    >>> [says_nothing(text) for text in ("", " ? ", "Unknown", "none", "0")]
    [True, True, True, False, False]
    """
    said = text.strip()
    return said in ("", _TYPED) or said.casefold() == unknown_word().casefold()
