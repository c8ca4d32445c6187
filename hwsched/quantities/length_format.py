"""Lengths written for people: inches with fractions, feet and inches, decimal inches, or millimetres.

Rounding happens here and nowhere else; what is written reads back to within half its last step.
"""

from decimal import ROUND_HALF_UP, Decimal
from math import floor, isfinite
from typing import Final, Literal, get_args

from hwsched.quantities.readings import MM_PER_INCH

LengthStyle = Literal["fraction", "decimal-inch", "mm"]
"""How a project shows its lengths."""

LENGTH_STYLES: Final[tuple[LengthStyle, ...]] = get_args(LengthStyle)
FINEST: Final = 64
_DENOMINATORS: Final = (1, 2, 4, 8, 16, 32, 64)
_SURE: Final = 8
"""Decimals of which a reckoned length is sure: halves stand on one side of a step wherever they are shown."""
_DECIMALS: Final[dict[str, Decimal]] = {"mm": Decimal("0.1"), "decimal-inch": Decimal("0.0001")}


def format_length(mm: float, style: LengthStyle, denominator: int = FINEST, *, with_unit: bool = True) -> str:
    r"""Write a length as the project shows lengths.

    Parameters
    ----------
    mm : float
        Length [mm]; negative for a shortfall.
    style : LengthStyle
        Inches with fractions, decimal inches (to 0.0001 in), or millimetres (to 0.1 mm).
    denominator : int
        Finest fraction of an inch, a power of two from 1 to 64: 16 for heights of hardware.
    with_unit : bool
        Whether the mark or unit follows; without it for columns whose heading says it.

    Returns
    -------
    str
        The nearest length in that style, without zeros that say nothing.

    Raises
    ------
    ValueError
        Where the length is not finite or the denominator is none of a rule.

    Examples
    --------
    >>> format_length(44.45, "fraction"), format_length(44.45, "decimal-inch"), format_length(915, "mm")
    ('1 3/4"', '1.75"', '915 mm')
    >>> format_length(15.999 * 25.4, "fraction")
    '16"'
    """
    if style == "fraction":
        sign, ticks = _ticks(mm, denominator)
        text, unit = sign + _inches(ticks, denominator), '"'
    elif style == "decimal-inch":
        text, unit = _decimal(mm / MM_PER_INCH, _DECIMALS[style]), '"'
    else:
        text, unit = _decimal(mm, _DECIMALS[style]), " mm"
    return text + unit if with_unit else text


def shown_steps(mm: float, style: LengthStyle) -> int:
    """Return a length in whole steps of what is shown: lengths that are shown alike have the same number.

    Parameters
    ----------
    mm : float
        Length [mm].
    style : LengthStyle
        As in `format_length`: steps of 1/64 in, of 0.0001 in or of 0.1 mm.

    Raises
    ------
    ValueError
        Where the length is not finite.

    Examples
    --------
    >>> shown_steps(44.45, "fraction"), shown_steps(44.5, "fraction"), shown_steps(44.5, "mm")
    (112, 112, 445)
    """
    if style == "fraction":
        sign, ticks = _ticks(mm, FINEST)
        return -ticks if sign else ticks
    step = _DECIMALS[style]
    return int(_rounded(mm / MM_PER_INCH if style == "decimal-inch" else mm, step) / step)


def format_feet_inches(mm: float, denominator: int = FINEST) -> str:
    r"""Write a length in feet and inches, as sizes of doors are written.

    Parameters
    ----------
    mm : float
        Length [mm]; negative for a shortfall.
    denominator : int
        Finest fraction of an inch, a power of two from 1 to 64.

    Returns
    -------
    str
        Feet always, inches always.

    Raises
    ------
    ValueError
        Where the length is not finite or the denominator is none of a rule.

    Examples
    --------
    >>> print(format_feet_inches(914.4), format_feet_inches(2044.7))
    3'-0" 6'-8 1/2"
    """
    sign, ticks = _ticks(mm, denominator)
    feet, rest = divmod(ticks, 12 * denominator)
    # 3'-0 1/2", not 3'-1/2": the zero keeps a misplaced dash from being read as a fraction of a foot.
    zero = "0 " if 0 < rest < denominator else ""
    return f"{sign}{feet}'-{zero}{_inches(rest, denominator)}\""


def _ticks(mm: float, denominator: int) -> tuple[str, int]:
    """Sign and whole steps of the finest fraction; the carry from 15 64/64 to 16 happens by itself in whole steps."""
    if denominator not in _DENOMINATORS:
        raise ValueError(f"the denominator must be one of {', '.join(map(str, _DENOMINATORS))}; got {denominator}")
    if not isfinite(mm):
        raise ValueError(f"no finite length: {mm}")
    # Halves up and not to even, as Python's own rounding would have it: whoever reads a tape rounds one way.
    ticks = floor(_settled(abs(mm) / MM_PER_INCH * denominator) + 0.5)
    # A hair under zero is printed as 0, and not as -0.
    return ("-" if mm < 0 and ticks else ""), ticks


def _inches(ticks: int, denominator: int) -> str:
    whole, top = divmod(ticks, denominator)
    if not top:
        return str(whole)
    shift = (top & -top).bit_length() - 1  # both are halved as long as the numerator is even
    fraction = f"{top >> shift}/{denominator >> shift}"
    return f"{whole} {fraction}" if whole else fraction


def _settled(number: float) -> float:
    """Return a number without what sums of binary fractions leave at its far end: 29.849999999999994 is 29.85."""
    return round(number, _SURE)


def _decimal(number: float, step: Decimal) -> str:
    text = f"{_rounded(number, step):f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def _rounded(number: float, step: Decimal) -> Decimal:
    if not isfinite(number):
        raise ValueError(f"no finite length: {number}")
    # From the shortest text of the float, so that 44.45 is rounded as it is read, not as binary holds it.
    return Decimal(repr(_settled(float(number)))).quantize(step, ROUND_HALF_UP)
