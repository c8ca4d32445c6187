"""Sizes of drills as they are stamped: sixty-fourths of an inch, and the number drills between them.

Here belongs how the size of a hole is named to who has to find its bit; lengths of all else stand in `length_format`.
"""

from typing import Final

from hwsched.quantities.length_format import FINEST, LengthStyle, format_length
from hwsched.quantities.readings import MM_PER_INCH

NUMBER_DRILLS_IN: Final = {
    52: 0.0635, 48: 0.0760, 44: 0.0860, 43: 0.0890, 36: 0.1065, 35: 0.1100, 32: 0.1160, 31: 0.1200, 29: 0.1360,
    28: 0.1405, 27: 0.1440, 25: 0.1495, 21: 0.1590, 20: 0.1610, 18: 0.1695, 16: 0.1770, 10: 0.1935, 7: 0.2010,
}  # fmt: skip
"""Number drills by their number [in] (ANSI B94.11M, copies and shop tables): those that screw tables name."""
_SAME_MM: Final = 0.006
"""Closer than this two sizes are one: drills are made to a few hundredths."""


def drill_number(mm: float) -> int | None:
    """Return the number of the drill of a size [mm]; None where a sixty-fourth names it, or nothing does.

    Examples
    --------
    >>> drill_number(3.4544), drill_number(3.571875), drill_number(20.0)
    (29, None, None)
    """
    fine_mm = MM_PER_INCH / FINEST
    if abs(mm - round(mm / fine_mm) * fine_mm) <= _SAME_MM:
        return None
    return next((number for number, inch in NUMBER_DRILLS_IN.items() if abs(mm - inch * MM_PER_INCH) <= _SAME_MM), None)


def format_drill(mm: float, style: LengthStyle) -> str:
    r"""Name the size of a hole as it stands on its bit.

    Parameters
    ----------
    mm : float
        Diameter [mm], above 0.
    style : LengthStyle
        How the project shows lengths. Fractions of an inch name number drills by their number, for the nearest
        sixty-fourth is another bit; decimal inches and millimetres tell both apart.

    Returns
    -------
    str
        The size.

    Raises
    ------
    ValueError
        Where the diameter is not finite.

    Examples
    --------
    >>> format_drill(12.7, "fraction"), format_drill(3.4544, "fraction"), format_drill(3.4544, "mm")
    ('1/2"', 'No. 29', '3.5 mm')
    """
    number = drill_number(mm) if style == "fraction" else None
    return format_length(mm, style) if number is None else f"No. {number}"
