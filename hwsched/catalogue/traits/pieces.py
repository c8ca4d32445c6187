"""Trait of what is sold by the box: how many pieces an order unit holds."""

from typing import Final

from hwsched.attributes import Attribute

PIECES: Final = Attribute(
    "pieces",
    "Pieces in an order unit",
    "integer",
    synonyms=("pieces per unit", "pack size", "box quantity"),
    low=1,
    high=100000,
    note="Of a box, pack or bag. Empty for what is ordered by the piece.",
)
