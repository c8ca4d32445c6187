"""How much paper a text needs, estimated: for schematics that place their texts themselves.

The letters themselves are measured by `hwsched.render`, a floor above. The estimates here are never narrower than the
bundled letters for Latin text. No drawing stands here.
"""

from collections.abc import Iterable
from typing import Final

from hwsched.drawings.conventions import LETTER_HEIGHT_MM, LINE_SPACING
from hwsched.drawings.drawing import TextRole
from hwsched.quantities.adding import added

_SHARES: Final = (
    ("ijl'", 0.30),
    (" .,:;IJ·-", 0.37),
    ("ftr!|()[]/²", 0.43),
    ("°–", 0.51),
    ("szcxvykTLE1aehnbdpquogFY0PS23456789?_", 0.66),
    ("→×−+<>=≥≤±Ω#^~÷", 0.85),
    ("mwMW@%…ÆæŒœŴŵĦŉ", 1.08),
)
"""Width over font size of the bundled letters, rounded up (measured with `hwsched.render.fonts`)."""
_WIDTHS: Final = {letter: share for letters, share in _SHARES for letter in letters}
_CAPITAL: Final = 0.80
_OTHER: Final = 1.0
_BOLD: Final = 1.16
_BOLD_ROLES: Final = frozenset({"title", "warning"})
_CAPITAL_SHARE: Final = 0.729
"""Height of capitals over font size."""
_DESCENT: Final = 0.33
"""Depth under the base line over the height of capitals."""


def text_room_mm(text: str, role: TextRole = "small") -> float:
    """Return the width that a text needs on paper [mm].

    Examples
    --------
    >>> round(text_room_mm("18 AWG"), 1)
    10.8
    """
    share = added(_share(letter) for letter in text)
    return share * LETTER_HEIGHT_MM[role] / _CAPITAL_SHARE * (_BOLD if role in _BOLD_ROLES else 1.0)


def widest_mm(lines: Iterable[str], role: TextRole = "small") -> float:
    """Return the width of the widest of some lines [mm]; 0 where there are none."""
    return max((text_room_mm(line, role) for line in lines), default=0.0)


def lines_tall_mm(count: int, role: TextRole = "small") -> float:
    """Return the height of so many lines, from the capitals' top to under the last base line [mm]."""
    height = LETTER_HEIGHT_MM[role]
    return 0.0 if count == 0 else height * ((count - 1) * LINE_SPACING + 1.0 + _DESCENT)


def line_step_mm(role: TextRole = "small") -> float:
    """Return the distance from base line to base line [mm]."""
    return LETTER_HEIGHT_MM[role] * LINE_SPACING


def broken(text: str, width_mm: float, role: TextRole = "small") -> tuple[str, ...]:
    """Break a text into lines no wider than a width, at spaces, else anywhere; nothing is left out.

    Examples
    --------
    >>> broken("Stair 2 north closet", 20.0)
    ('Stair 2 north', 'closet')
    >>> broken("", 20.0)
    ()
    """
    lines: list[str] = []
    for word in text.split():
        joined = f"{lines[-1]} {word}" if lines else word
        if lines and text_room_mm(joined, role) <= width_mm:
            lines[-1] = joined
            continue
        lines.append("")
        for letter in word:
            if lines[-1] and text_room_mm(lines[-1] + letter, role) > width_mm:
                lines.append("")
            lines[-1] += letter
    return tuple(lines)


def _share(letter: str) -> float:
    found = _WIDTHS.get(letter)
    if found is not None:
        return found
    if "A" <= letter <= "Z" or "a" <= letter <= "z":
        return _CAPITAL
    return _CAPITAL if letter.isascii() or "À" <= letter <= "ſ" else _OTHER
