"""Sizes: width by height, with units on one, both or neither, or in the door trade's digits."""

import re
from typing import Final

from hwsched.quantities import shorthand
from hwsched.quantities.open_units import unit_for
from hwsched.quantities.readings import LEAST_LEAF_MM, SHORTHAND, BareUnit, Refusal, Size
from hwsched.quantities.terms import read_term, to_mm

_TIMES: Final = re.compile(r" ?(?:x|\*|\bby\b) ?")
_SIDE_LETTER: Final = re.compile(r"(.*[^a-z ]) ?\b([wh])(?:ide|igh)?\.?|(.*[^a-z ])([wh])")


def read_size(plain: str, bare_unit: BareUnit | None) -> Size | None:
    """Read width by height, or return None where the text is no size."""
    parts = _TIMES.split(plain)
    if len(parts) < 2:
        return None
    if len(parts) > 2:
        if all(read_term(part, "mm") or shorthand.side_in_digits(part) for part in parts):
            raise Refusal(
                f"{len(parts)} measures where a size has two", "write width x height, and the thickness apart"
            )
        return None
    letters = [_SIDE_LETTER.fullmatch(part) for part in parts]
    if all(letters):
        found = [match[2] or match[4] for match in letters if match]
        parts = [match[1] or match[3] for match in letters if match]
        if found == ["h", "w"]:
            parts.reverse()
        # Letters may stand either way round, and then decide over the order.
        elif found != ["w", "h"]:
            raise Refusal("both sides carry the same letter", "write width x height")
    width, height = parts
    return _size_in_digits(width, height) or _size_of_terms(width, height, bare_unit)


def _size_in_digits(width: str, height: str) -> Size | None:
    """Size written in the trade's digits on both sides, or on one beside full feet and inches."""
    sides, fractions = [], 0
    for part in (width, height):
        side = shorthand.side_in_digits(part)
        if side is None:
            term = read_term(part, "mm")  # only feet with inches matter here; no question about 2,100
            if term is None or not term.compound:
                return None
            side = shorthand.Feet(0, term.value)
        fractions += side.is_fraction_too
        sides.append(side)
    if not any(side.separator for side in sides):
        return None
    # 3/4 x 6/8 is a strip of wood in one trade and a door in the other.
    if fractions == sum(side.separator == "/" for side in sides) == 2:
        raise Refusal(
            f"can be {sides[0]} x {sides[1]} (feet/inches) or fractions of an inch",
            f'write {sides[0]} x {sides[1]} or {width}" x {height}"',
        )
    return _checked_size(to_mm(sides[0].total_inches, "in"), to_mm(sides[1].total_inches, "in"), SHORTHAND)


def _size_of_terms(width: str, height: str, bare_unit: BareUnit | None) -> Size | None:
    second = read_term(height, bare_unit)
    first = read_term(width, (second and second.unit) or bare_unit)
    if first is None or second is None:
        return None
    second_unit, second_assumed = unit_for(second, first, bare_unit)
    second_mm = to_mm(second.value, second_unit)
    # 2 x 914 mm is two leaves as often as a size.
    if first.text == "2" and second.unit and second_mm >= LEAST_LEAF_MM:
        raise Refusal(f"can be two leaves of {height} or a size 2 x {height}", f"write 2({height}), or both units")
    first_unit, first_assumed = unit_for(first, second, bare_unit)
    return _checked_size(to_mm(first.value, first_unit), second_mm, first_assumed or second_assumed)


def _checked_size(width_mm: float, height_mm: float, assumed: str | None) -> Size:
    if width_mm <= 0 or height_mm <= 0:
        raise Refusal("a size has no side of zero")
    return Size(width_mm, height_mm, assumed)
