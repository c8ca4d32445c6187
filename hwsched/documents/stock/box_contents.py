"""What lies in the box of a part: its kit, what is inside that, and how much of each there is in all."""

from collections.abc import Iterator
from dataclasses import dataclass

from hwsched.language import phrase
from hwsched.quantities import LengthStyle
from hwsched.render.blocks import Cell
from hwsched.values import Catalogue, Part
from hwsched.values.amounts import little_of, measured, plain_amount


@dataclass(frozen=True, slots=True)
class Content:
    """One part that lies in another one's box."""

    number: str
    quantity: float
    """In all: what one box holds, times the boxes around it."""
    unit: str
    text: str
    """What a list says of it."""

    @property
    def shown(self) -> Cell:
        """Quantity as it is printed."""
        return plain_amount(self.quantity)


def in_box(part: Part | None, quantity: float, style: LengthStyle) -> tuple[Cell, str, str]:
    """Say how much of a part lies in a box: quantity, unit, and what is carried instead of put in.

    What runs through a bottle is no piece of it: a crew carries the bottle, and one opening takes a little. What is cut
    from a reel is told as the project tells runs, so that box and cuts are read with one tape.

    Examples
    --------
    >>> bottle = Part("TL", "consumable", unit="EA", attributes={"form": "thread-lock"})
    >>> in_box(bottle, 0.05, "fraction"), in_box(bottle, 2, "fraction")
    (('-', '', ': some drops'), (2, 'EA', ''))
    >>> in_box(Part("W", "wire", unit="M"), 3.048, "fraction"), in_box(Part("W", "wire", unit="M"), 3.048, "mm")
    ((10, 'FT', ''), (3.048, 'M', ''))
    """
    little = little_of(part, quantity)
    return ("-", "", phrase(": {little}", little=little)) if little else (*measured(part, quantity, style), "")


def contents(catalogue: Catalogue, number: str, quantity: float) -> Iterator[Content]:
    """Yield what so many pieces of a part hold, each content followed by its own contents.

    Parameters
    ----------
    catalogue : Catalogue
        Kits of all parts; one that is not in it holds nothing.
    number : str
        Catalogue number of the outer part, itself left out.
    quantity : float
        Pieces of it.

    Examples
    --------
    >>> from hwsched.values import Part
    >>> parts = [Part("UNIT", "unit", kit=(("PACK", 2),)), Part("PACK", "fastener", kit=(("SCREW", 4),))]
    >>> [(each.number, each.quantity) for each in contents(Catalogue({p.number: p for p in parts}, ""), "UNIT", 1)]
    [('PACK', 2), ('SCREW', 8)]
    """
    yield from _inside(catalogue, number, quantity, (number,))


def _inside(catalogue: Catalogue, number: str, quantity: float, around: tuple[str, ...]) -> Iterator[Content]:
    outer = catalogue.get(number)
    for held, each in outer.kit if outer is not None else ():
        part = catalogue.get(held)
        text = phrase("contains: {description}", description=part.description or held if part is not None else held)
        if len(around) > 1:
            text += phrase(", inside {number}", number=number)
        yield Content(held, each * quantity, part.unit if part is not None else "", text)
        # Two imports can close a circle that neither of them shows.
        if held not in around:
            yield from _inside(catalogue, held, each * quantity, (*around, held))
