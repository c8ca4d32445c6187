"""Ranges, such as the heights at which something may be mounted, and dashes that are asked about."""

import re
from typing import Final

from hwsched.quantities import shorthand
from hwsched.quantities.open_units import unit_for
from hwsched.quantities.readings import LEAST_LEAF_MM, BareUnit, Range, Refusal
from hwsched.quantities.terms import Term, is_rule_fraction, read_term, to_mm

_FROM_TO: Final = re.compile(r" ?(?:-|\bto\b) ?")


def read_range(plain: str, bare_unit: BareUnit | None) -> Range | None:
    """Read a range, or return None where the text is none; a lone 3-4 is asked about."""
    refused: Refusal | None = None
    for cut in _FROM_TO.finditer(plain):
        try:
            high = read_term(plain[cut.end() :], bare_unit)
            low = read_term(plain[: cut.start()], (high and high.unit) or bare_unit)
        except Refusal as refusal:
            refused = refusal
            continue
        # At most one cut leaves a length on both sides: a dash within a length belongs to it.
        if low is not None and high is not None:
            return _range(low, high, bare_unit, is_dash="-" in cut[0])
    if refused:
        raise refused
    return None


def _range(low: Term, high: Term, bare_unit: BareUnit | None, *, is_dash: bool) -> Range:
    # 3-4 is 3 ft 4 in to the door trade, and three to four to everybody else: it is asked.
    if is_dash and high.unit in (None, "in") and low.unit is None:
        side = shorthand.side_in_digits(f"{low.text}-{_digits(high)}")
        if side:
            raise _ask_about_dash(side)
    # 2-914 mm may count two leaves of that width.
    if is_dash and low.text == "2" and high.unit and to_mm(high.value, high.unit) >= LEAST_LEAF_MM:
        raise Refusal(
            f"can be two leaves of {high.text} or a range", f"write 2({high.text}), or the range with both units"
        )
    low_unit, low_assumed = unit_for(low, high, bare_unit)
    high_unit, high_assumed = unit_for(high, low, bare_unit)
    low_mm, high_mm = to_mm(low.value, low_unit), to_mm(high.value, high_unit)
    # A range that goes downward is most often feet and inches read as two numbers.
    if low_mm > high_mm:
        raise Refusal("the range goes downward", f"write {high.text} to {low.text}, or feet and inches with both marks")
    return Range(low_mm, high_mm, low_assumed or high_assumed)


def _ask_about_dash(side: shorthand.Feet) -> Refusal:
    readings, spellings = [str(side)], [str(side)]
    if side.inches > side.feet:
        readings.append(f"a range from {side.feet} to {side.inches:g}")
        spellings.append(f'{side.feet}" to {side.inches:g}"')
    if side.inches == int(side.inches) and is_rule_fraction(side.feet, int(side.inches)):
        readings.append(f"the fraction {side.feet}/{side.inches:g}")
        spellings.append(f'{side.feet}/{side.inches:g}"')
    return Refusal(
        ("can be " if len(readings) > 1 else "is perhaps ") + " or ".join(readings), "write " + " or ".join(spellings)
    )


def _digits(term: Term) -> str:
    return f"{int(term.value)} {term.top}/{term.bottom}" if term.shape == "mixed" else f"{term.value:g}"
