"""Characters that steer a screen or turn the direction of text: shown escaped, never sent to a terminal as they are."""

import re
from typing import Final

_STEERING: Final = "\x00-\x08\x0b-\x1f\x7f-\x9f"
_TURNING: Final = "\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069"
# Unicode Standard Annex #9, table of explicit and implicit directional formatting characters (from memory, unverified).
_HIDDEN: Final = re.compile(f"[{_STEERING}{_TURNING}\u2028\u2029\ud800-\udfff]")


def escaped(text: str) -> str:
    r"""Return a text with every character that steers or turns written out; line ends and tabs stay.

    The form is JSON's, so that JSON that is escaped on its way out still says the same.

    Examples
    --------
    >>> escaped("101\x1b[31m"), escaped("A\u202e1"), escaped("two\nlines")
    ('101\\u001b[31m', 'A\\u202e1', 'two\nlines')
    """
    return _HIDDEN.sub(lambda found: f"\\u{ord(found[0]):04x}", text)


def hidden_in(text: str) -> str:
    r"""Return the first character that steers or turns, as ``U+202E``; empty where there is none.

    Examples
    --------
    >>> hidden_in("A\u202e1"), hidden_in("A-101")
    ('U+202E', '')
    """
    found = _HIDDEN.search(text)
    return f"U+{ord(found[0]):04X}" if found else ""
