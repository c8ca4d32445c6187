"""One column of a survey sheet while it is read: its cells, what was kept of them, which units were assumed."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from hwsched.attributes import as_text
from hwsched.exchange.survey.company import joins
from hwsched.exchange.survey.facts import agree
from hwsched.exchange.survey.mapping import MappedColumn, Target
from hwsched.exchange.survey.sheet import SheetFacts, assume, refuse
from hwsched.quantities import BARE_UNITS, SHORTHAND, BareUnit

LEAVES: Final = Target("leaf", "leaves")
"""Not a fact of its own: 2 where a size or width says that it is that of each leaf of a pair."""
_UNIT_WORDS: Final = {
    "in": "inches", "ft": "feet", "mm": "millimetres", "cm": "centimetres", "m": "metres",
    "degC": "degrees Celsius", "degF": "degrees Fahrenheit",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Column:
    """A column while it is read."""

    sheet: SheetFacts
    column: MappedColumn
    cells: Sequence[Any]
    pairs: str = ""
    """What a person said that widths of pairs are, which do not say it."""
    counts: Counter[Any] | None = None
    """How often each different cell stands in it, where that is known already."""


def hashable(cells: Sequence[Any]) -> Sequence[Any]:
    """Replace TRUE and FALSE by their words where numbers stand beside them, since True and 1 are one key."""
    kinds = set(map(type, cells))
    if bool in kinds and (float in kinds or int in kinds):
        return [as_text(cell) if isinstance(cell, bool) else cell for cell in cells]
    return cells


def bare_unit_of(unit: str | None) -> BareUnit | None:
    """Return a unit as one of lengths; None where it is none."""
    return next((known for known in BARE_UNITS if known == unit), None)


def keep(reading: Column, target: Target, values: list[Any]) -> None:
    """Keep the values of a fact; where another column has given some already, both must agree."""
    sheet, column = reading.sheet, reading.column
    before = sheet.columns.get(target)
    if before is None:
        sheet.columns[target] = values
        return
    if joins(target):
        both = zip(before, values, strict=True)
        sheet.columns[target] = ["; ".join(dict.fromkeys(text for text in each if text)) or None for each in both]
        return
    for entry, value in enumerate(values):
        if value is None:
            continue
        # Which of the two was measured nobody here can know: the later column must not win by standing later.
        if before[entry] is not None and not agree(target.attribute, before[entry], value):
            message = "does not agree with what another column of this row says of the same fact"
            refuse(sheet, entry, column, reading.cells[entry], message, "the same in both, or only in one")
        before[entry] = value


def say_assumed(reading: Column, assumed: Mapping[object, str], counts: Mapping[Any, int]) -> None:
    """Note down the units that were assumed in a column, each with the number of its cells."""
    per_unit: Counter[str] = Counter()
    for cell, unit in assumed.items():
        per_unit[unit] += counts[cell]
    for unit, count in per_unit.items():
        if unit == SHORTHAND:
            text = "digits read as the door trade's feet and inches, such as 3-0 or 3068"
        else:
            text = f"numbers without a unit taken as {_UNIT_WORDS.get(unit, unit)}"
        assume(reading.sheet, reading.column, text, count)
