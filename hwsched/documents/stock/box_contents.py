"""What lies in the box of a part: its kit, what is inside that, and how much of each there is in all."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from hwsched.attributes.of_parts import FORM
from hwsched.documents import words
from hwsched.language import phrase, to_phrase
from hwsched.quantities import METRES_PER_FOOT, LengthStyle, in_run_unit, run_unit
from hwsched.render.blocks import Cell
from hwsched.values import Catalogue, Part


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
        return words.quantity(self.quantity)


MEASURES: Final = frozenset({"m", "ft", "in", "mm", "cm", "yd", "l", "ml", "kg", "g", "lb"})
"""Order units of which any part can be cut or poured off."""
_RUNS: Final = {"m": 1.0, "ft": METRES_PER_FOOT}
_LITTLE: Final = {"thread-lock": to_phrase("some drops"), "sealant": to_phrase("a bead")}
"""What one opening takes of a consumable, by its form."""


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
    unit = part.unit if part is not None else ""
    metres = _RUNS.get(unit.casefold())
    if metres is not None:
        return (
            words.quantity(round(in_run_unit(quantity * metres, style), 2 if style != "mm" else 3)),
            run_unit(style).upper(),
            "",
        )
    little = little_of(part, quantity)
    return ("-", "", phrase(": {little}", little=little)) if little else (words.quantity(quantity), unit, "")


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
