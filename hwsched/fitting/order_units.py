"""In which unit a part is ordered, and how much of what is counted it holds: pieces of a box, metres of a reel.

What a part costs stands in `costing`.
"""

from decimal import Context, Decimal
from math import ceil
from typing import Final

from hwsched.attributes.of_parts import PIECES, REEL_M
from hwsched.catalogue import kind_of
from hwsched.quantities.money import Exact, exact_decimal
from hwsched.values import Part

BY_THE_METRE: Final = ("wire", "surface-raceway")
"""Kinds that are counted in metres."""
_ONE: Final = frozenset({"", "EA", "EACH", "PC", "PCS", "PIECE", "M", "METRE", "METER", "SET", "KIT", "PAIR", "PR"})
"""Units of one of what is counted."""
_FEET: Final = frozenset({"FT", "FOOT", "FEET"})
_FOOT_M: Final = Decimal("0.3048")
_PRICE_STEP: Final = Decimal("0.000001")
"""To which the price of a piece is taken from that of its box: shares of it have no end otherwise."""
_DIGITS: Final = Context(prec=40)


def held_by(part: Part) -> Decimal | None:
    """Return how many pieces or metres an order unit holds; None where nobody has said."""
    unit = part.unit.strip().upper()
    if unit in _ONE:
        return Decimal(1)
    by_metre = part.kind in BY_THE_METRE
    if by_metre and unit in _FEET:
        return _FOOT_M
    held = part.number_of(REEL_M if by_metre else PIECES)
    return None if held is None else exact_decimal(held)


def lacking(part: Part) -> str:
    """Return the fact that says what an order unit holds, as it is asked for."""
    name = REEL_M if part.kind in BY_THE_METRE else PIECES
    kind = kind_of(part.kind)
    known = kind is not None and any(each.name == name for each in kind.attributes)
    # A kind that is not packed by the piece has its price by the piece.
    return f"part {part.number}.{name if known else 'unit'}"


def price_of_one(part: Part, held: Decimal) -> Decimal | None:
    """Return the list price of one piece or metre; None where none is known."""
    if part.list_price is None or held == 1:
        return part.list_price
    return _DIGITS.divide(part.list_price, held).quantize(_PRICE_STEP)


def price_told(part: Part) -> Decimal | None:
    """Return the list price of one piece or metre; None without a price, and for a box of nobody knows how many."""
    # Asked thousands of times a fit, and nearly all parts come one by one.
    if part.unit in _ONE:
        return part.list_price
    held = held_by(part)
    return None if held is None else price_of_one(part, held)


def order_units(quantity: Exact, held: Decimal) -> int:
    """Return how many whole units are ordered for a quantity.

    Examples
    --------
    >>> order_units(310, Decimal(152)), order_units("304.0", Decimal(152))
    (3, 2)
    """
    return ceil(_DIGITS.divide(exact_decimal(quantity), held))
