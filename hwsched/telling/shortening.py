"""Messages that repeat what was typed or read, kept to a length that somebody reads."""

from __future__ import annotations

_LONGEST = 1000
"""Letters of a line; no message of ours is longer by itself."""
_HEAD, _TAIL = 600, 300


def shortened(text: str) -> str:
    """Return a text without the middle of each line that is longer than anybody reads; how much is left out is said.

    Its end is kept: that is where a message says what is accepted.

    Examples
    --------
    >>> shortened("there is no opening M1")
    'there is no opening M1'
    """
    if len(text) <= _LONGEST:
        return text
    return "\n".join(_line(line) for line in text.split("\n"))


def _line(line: str) -> str:
    if len(line) <= _LONGEST:
        return line
    return f"{line[:_HEAD]} ... ({len(line) - _HEAD - _TAIL} letters left out) ... {line[-_TAIL:]}"
