"""Characters that steer a screen or turn the direction of text: shown escaped, never sent to a terminal as they are."""

from __future__ import annotations

TYPE_CHECKING = False
if TYPE_CHECKING:
    # `hwsched --help` needs this module and is measured: typing alone would double it.
    from typing import Final

_TURNING: Final = frozenset((0x061C, 0x200E, 0x200F, *range(0x202A, 0x202F), *range(0x2066, 0x206A)))
# Unicode Standard Annex #9, explicit and implicit directional formatting characters (from memory, unverified).
_BREAKING: Final = frozenset((0x2028, 0x2029))


def _is_hidden(code: int) -> bool:
    steering = code < 0x20 and code not in (0x09, 0x0A)
    return steering or 0x7F <= code < 0xA0 or 0xD800 <= code < 0xE000 or code in _TURNING or code in _BREAKING


class _Escapes(dict[int, str]):
    """What is written for each character, worked out when it is met."""

    def __missing__(self, code: int) -> str:
        if not _is_hidden(code):
            raise LookupError
        self[code] = f"\\u{code:04x}"
        return self[code]


_ESCAPES: Final = _Escapes()


def escaped(text: str) -> str:
    r"""Return a text with every character that steers or turns written out; line ends and tabs stay.

    The form is JSON's, so that JSON that is escaped on its way out still says the same.

    Examples
    --------
    >>> escaped("101\x1b[31m"), escaped("A\u202e1"), escaped("two\nlines")
    ('101\\u001b[31m', 'A\\u202e1', 'two\nlines')
    """
    # Nearly all texts are printable, and asking that is many times as quick as translating.
    return text if text.isprintable() else text.translate(_ESCAPES)


def hidden_in(text: str) -> str:
    r"""Return the first character that steers or turns, as ``U+202E``; empty where there is none.

    Examples
    --------
    >>> hidden_in("A\u202e1"), hidden_in("A-101")
    ('U+202E', '')
    """
    return next((f"U+{ord(each):04X}" for each in text if _is_hidden(ord(each))), "")
