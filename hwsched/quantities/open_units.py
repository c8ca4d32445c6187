"""The unit of a number, mixed number or fraction that carries none.

Here belongs which unit is taken, from a neighbour or from the column, and which numbers are asked about instead.
"""

from hwsched.quantities import shorthand
from hwsched.quantities.readings import SHORTHAND, BareUnit, One, Refusal, Size
from hwsched.quantities.terms import Term, check_fraction, is_rule_fraction, to_mm
from hwsched.quantities.typography import FRACTION_SLASH


def bare_number(digits: str, number: float, bare_unit: BareUnit | None) -> One | Size:
    """Read a number without unit: in the column's unit, or as the door size that its digits stand for."""
    if bare_unit in (None, "in", "ft") and (sides := shorthand.size_in_digits(digits)):
        width, height = sides
        # 2070 is 2'-0" by 7'-0" to one trade and a leaf's height in mm to another.
        if bare_unit is None and shorthand.is_millimetres_too(digits):
            raise Refusal(
                f"can be the door size {width} x {height} or {digits} mm",
                f"write {width} x {height} or {digits} mm",
            )
        return Size(to_mm(width.total_inches, "in"), to_mm(height.total_inches, "in"), SHORTHAND)
    if bare_unit is None:
        raise _no_unit(digits or f"{number:g}")
    return One(to_mm(number, bare_unit), bare_unit)


def unit_for(term: Term, other: Term | None, bare_unit: BareUnit | None) -> tuple[str, str | None]:
    """Return the unit of a term, and the same again where it had to be assumed."""
    if term.unit:
        return term.unit, None
    if other is not None and other.unit and not other.compound:
        if term.shape in ("mixed", "fraction"):
            if other.unit not in ("in", "ft"):
                raise Refusal(f"{term.text} beside {other.text} mixes fractions and {other.unit}", "write both units")
            check_fraction(term.top, term.bottom)
        return other.unit, None
    # Fractions are of inches, or of feet where the column says so; nobody writes 1 3/4 mm.
    if term.shape == "mixed":
        unit = "ft" if bare_unit == "ft" else "in"
        return unit, unit
    if term.shape == "fraction":
        return _unit_for_fraction(term, bare_unit)
    if other is not None and other.compound and bare_unit not in ("in", "ft"):
        raise Refusal(f"{term.text} has no unit beside {other.text}", f"write {term.text}\" or {term.text}'")
    if bare_unit is None:
        raise _no_unit(term.text)
    # Only millimetres run into the thousands on a door; in other units the space more likely parts two numbers.
    if term.shape == "spaced" and bare_unit != "mm":
        raise Refusal(f"{term.text} are two numbers or one of thousands", "write it without the space, with its unit")
    return bare_unit, bare_unit


def _unit_for_fraction(term: Term, bare_unit: BareUnit | None) -> tuple[str, str | None]:
    """Inches, where a fraction without mark cannot be the trade's feet/inches; else both readings are named."""
    top, bottom = term.top, term.bottom
    if FRACTION_SLASH in term.text:
        check_fraction(top, bottom)
        return "in", "in"
    # 6/8 is six eighths of an inch off a rule or 6 ft 8 in of the door trade: only where the column counts in inches,
    # or no inches of a foot can be meant, is it a fraction.
    if is_rule_fraction(top, bottom) and (bare_unit == "in" or bottom > 11):
        return "in", "in"
    readings, spellings = [], []
    side = shorthand.side_in_digits(term.text)
    sides = shorthand.size_with_slash(term.text)
    if side:
        readings.append(f"{side} (feet/inches)")
        spellings.append(str(side))
    if sides:
        readings.append(f"the door size {sides[0]} x {sides[1]}")
        spellings.append(f"{sides[0]} x {sides[1]}")
    if not readings:
        check_fraction(top, bottom)
    if bottom and top < bottom:
        readings.append(f"the fraction {top}/{bottom} of an inch")
        spellings.append(f'{top}/{bottom}"')
    elif bottom and top >= bottom:
        readings.append(f"{top / bottom:g} inches")
        spellings.append(f'{top / bottom:g}"')
    raise Refusal("can be " + " or ".join(readings), "write " + " or ".join(spellings))


def _no_unit(number: str) -> Refusal:
    number = number.rstrip(".")
    return Refusal(f"{number} has no unit, and none is given for it", f'write {number} mm, {number} cm or {number}"')
