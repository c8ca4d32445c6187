"""The catalogue as a grid: parts of a kind, or all, that match what is searched; one is chosen, by its number."""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Any, Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from hwsched.attributes import Attribute, said_value
from hwsched.catalogue import kind_of
from hwsched.catalogue.traits.entry import ENTRY, ON_HAND
from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.grid.remembering import arrangement_of
from hwsched.language import phrase
from hwsched.operations.parts.part_form import value_of
from hwsched.quantities import LengthStyle
from hwsched.values import Part

_NUMBERS: Final = frozenset({"length", "number", "integer", "money"})
_WIDTHS: Final = {
    "number": 14, "description": 40, "supplier": 19, "finish": 11, "unit": 11, "list_price": 11, "currency": 10,
}  # fmt: skip
_WIDE, _NARROW = 18, 13
_OF_ALL: Final = frozenset({"number", "description", "list_price", "stock"})
"""What is shown of parts of all kinds as long as nobody chose: more would be scrolled to beside the form."""
Extra = Mapping[str, Mapping[str, Any]]


def columns_of(kind: str, own: Sequence[Attribute], extra: Extra, style: LengthStyle) -> tuple[Column[Part], ...]:
    """Return the columns of a kind of parts, or of all with an empty one."""
    declared = kind_of(kind)
    more = (*declared.attributes, *own) if declared is not None else tuple(own)
    shown = (*ENTRY[:2], *more, *ENTRY[2:], *ON_HAND)
    return tuple(_column(each, extra, style, standard=bool(kind) or each.name in _OF_ALL) for each in shown)


class PartGrid(Grid):
    """The grid; the chosen part stays chosen through order, search and edits."""

    chose = Signal(str)
    """Number of the part that is chosen now; empty where none is."""

    def __init__(self, parent: QWidget | None = None) -> None:
        contents = Contents(columns_of("", (), {}, "fraction"), lambda part: part.number)
        super().__init__(GridModel(contents), "parts", phrase("Parts of the catalogue"), str, parent, opens=True,
                         empty=phrase("No parts yet. Take in a catalogue, or make a part."))  # fmt: skip
        self.model.setParent(self)
        self.number = ""
        """Of the chosen part."""
        self._made_for: object = None
        self.picked.connect(self._on_picked)

    def show_parts(
        self,
        parts: Sequence[Part],
        kind: str,
        own: Sequence[Attribute],
        extra: Extra,
        style: LengthStyle,
        places: Sequence[int] | None,
    ) -> None:
        """Show those of these parts that stand at some places; of one kind with what its parts are like."""
        asked = (kind, tuple(own), style)
        if asked != self._made_for:
            self._made_for = asked
            # Each kind is laid out as the person has it: a cylinder has columns that a wire has not.
            self.place = f"parts-{kind}" if kind else "parts"
            self.model.contents.arrangement = arrangement_of(self.place)
        self.model.declare(columns_of(kind, own, extra, style))
        self.model.load(parts)
        self.model.narrow_to(places)

    def choose(self, number: str) -> None:
        """Choose a part by its number, whether or not it is shown at present."""
        if number != self.number:
            self.number = number
            self.chose.emit(number)
        self.select([number] if number else [])

    @property
    def in_view(self) -> bool:
        """Whether the chosen part is among those shown."""
        return self.model.row_of_id(self.number) is not None

    def _on_picked(self) -> None:
        # A row that goes with what is shown takes no choice along: only a person chooses another part.
        number = self.current
        if number is not None and number != self.number:
            self.number = number
            self.chose.emit(number)


def _column(attribute: Attribute, extra: Extra, style: LengthStyle, *, standard: bool) -> Column[Part]:
    def value(part: Part) -> Any:
        held = value_of(part, attribute.name, extra.get(part.number, {}))
        return tuple(held) if isinstance(held, list) else held

    def text(held: Any) -> str:
        # Amounts below one another have their points below one another; what has more places keeps them.
        if isinstance(held, Decimal) and attribute.kind == "money" and held == round(held, 2):
            return f"{held:.2f}"
        return said_value(attribute, held, style)

    right = attribute.kind in _NUMBERS
    return Column(
        attribute.name, attribute.label, value, text, attribute=None,
        width=_WIDTHS.get(attribute.name, _NARROW if right else _WIDE), right=right, note=attribute.note,
        typed=False, standard=standard,
    )  # fmt: skip
