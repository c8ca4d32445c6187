"""How much of a part there is, as people read it on screen and paper: pieces, lengths from a reel, drops from a bottle.

What is edited, counted or sent to machines stays a number.
"""

from math import ceil
from typing import Final

from hwsched.attributes.of_parts import FORM
from hwsched.language import phrase, to_phrase
from hwsched.quantities import METRES_PER_FOOT, LengthStyle, in_run_unit, run_unit
from hwsched.values.opening_input import Part

MEASURES: Final = frozenset({"m", "ft", "in", "mm", "cm", "yd", "l", "ml", "kg", "g", "lb"})
"""Order units of which any part can be cut or poured off."""
_RUNS: Final = {"m": 1.0, "ft": METRES_PER_FOOT}
_LITTLE: Final = {"thread-lock": to_phrase("some drops"), "sealant": to_phrase("a bead")}
"""What one opening takes of a consumable, by its form."""


def little_of(part: Part | None, quantity: float) -> str:
    """Say what one opening takes of something that runs through its container; empty for what is counted or cut.

    Examples
    --------
    >>> little_of(Part("S", "consumable", unit="EA", attributes={"form": "sealant"}), 0.1)
    'a bead'
    >>> little_of(Part("C", "cam", unit="EA"), 1)
    ''
    """
    if part is None or quantity == round(quantity) or part.kind != "consumable" or part.unit.casefold() in MEASURES:
        return ""
    return phrase(_LITTLE.get(part.text_of(FORM) or "", to_phrase("a little")))


def plain_amount(quantity: float) -> int | float:
    """Return whole quantities as whole numbers, others to three places.

    Examples
    --------
    >>> plain_amount(2.0), plain_amount(0.30000000000000004)
    (2, 0.3)
    """
    rounded = round(quantity, 3)
    return int(rounded) if rounded == int(rounded) else rounded


def measured(part: Part | None, quantity: float, style: str) -> tuple[int | float, str]:
    """Return a quantity with its order unit; what is cut from a reel as the project tells runs.

    Box and cuts are read with one tape so.

    Examples
    --------
    >>> measured(Part("W", "wire", unit="M"), 3.048, "fraction"), measured(Part("W", "wire", unit="M"), 3.048, "mm")
    ((10, 'FT'), (3.048, 'M'))
    """
    unit = part.unit if part is not None else ""
    metres = _RUNS.get(unit.casefold())
    if metres is None:
        return plain_amount(quantity), unit
    runs: LengthStyle = "mm" if style == "mm" else "fraction"
    return plain_amount(round(in_run_unit(quantity * metres, runs), 3 if runs == "mm" else 2)), run_unit(runs).upper()


def amount_words(part: Part | None, quantity: float, style: str) -> str:
    """Say how much one opening takes of a part: a number, with its unit where it is no piece, or how little it is.

    Examples
    --------
    >>> bottle = Part("TL", "consumable", unit="EA", attributes={"form": "thread-lock"})
    >>> amount_words(bottle, 0.05, "mm"), amount_words(bottle, 2, "mm"), amount_words(None, 0.5, "mm")
    ('some drops', '2', '0.5')
    >>> amount_words(Part("W", "wire", unit="M"), 3.048, "fraction")
    '10 FT'
    """
    little = little_of(part, quantity)
    if little:
        return little
    number, unit = measured(part, quantity, style)
    return f"{number} {unit}" if unit.casefold() in MEASURES else str(number)


def part_words(number: str, part: Part | None, quantity: float, style: str) -> str:
    """Name a part by its number and say how much of it; one piece is not counted.

    Examples
    --------
    >>> cam, bottle = Part("C", "cam", unit="EA"), Part("TL", "consumable", unit="EA")
    >>> part_words("C", cam, 1, "mm"), part_words("C", cam, 4, "mm"), part_words("TL", bottle, 0.1, "mm")
    ('C', 'C × 4', 'TL: a little')
    """
    little = little_of(part, quantity)
    if little:
        return f"{number}: {little}"
    said = amount_words(part, quantity, style)
    return number if said == "1" else f"{number} × {said}"


def times_words(part: Part | None, quantity: float, style: str) -> str:
    """`amount_words` as they stand behind a part's number in a line of the command line.

    Examples
    --------
    >>> times_words(None, 4, "mm"), times_words(Part("TL", "consumable", unit="EA"), 0.1, "mm")
    ('x4', 'a little')
    """
    return little_of(part, quantity) or f"x{amount_words(part, quantity, style)}"


def whole(quantity: float, unit: str) -> int | float:
    """Return how much of a part is picked: whole pieces, but any length or weight.

    Examples
    --------
    >>> whole(4.75, "EA"), whole(4.75, "M"), whole(1.0000000001, "EA")
    (5, 4.75, 1)
    """
    if unit.casefold() in MEASURES:
        return plain_amount(quantity)
    return ceil(round(quantity, 6))
