"""What is asked of the units of a survey file's numbers, and how a cell is understood, in words. No widgets."""

import re
from collections.abc import Sequence
from typing import Final

from hwsched.attributes import Attribute
from hwsched.desktop.project.units import UNITS
from hwsched.desktop.survey.column_words import DECLARED
from hwsched.desktop.widgets.typed import understood
from hwsched.exchange.problems import WITHOUT_UNIT, Cause, CellProblem
from hwsched.exchange.survey.outline import ColumnOutline
from hwsched.language import phrase, phrase_of_count
from hwsched.quantities import BareUnit, LengthStyle

_NAMED: Final = 4
"""Columns that a question names."""
_BARE: Final = re.compile(r"\d+([.,]\d+)?")


def lacks_unit(problem: object) -> bool:
    """Tell whether a cell is refused because nothing says its unit."""
    return isinstance(problem, CellProblem) and problem.message == WITHOUT_UNIT


def is_doubtful(problem: object, column: ColumnOutline | None) -> bool:
    """Tell whether a cell holds a mere number that cannot be true in the unit that it was taken in."""
    attribute = _length(column)
    return (
        isinstance(problem, CellProblem)
        and column is not None
        and attribute is not None
        and not column.unit
        and _BARE.fullmatch(problem.read.strip()) is not None
    )


def asked_unit(problems: Sequence[CellProblem]) -> str:
    """Ask once for the unit of all numbers that have none, in however many columns they stand."""
    columns = ", ".join(f"{each.column} ({' '.join(each.header.split())})" for each in problems[:_NAMED])
    more = phrase(" and {count} more", count=len(problems) - _NAMED) if len(problems) > _NAMED else ""
    return phrase_of_count(
        "In which unit are the numbers without one, in column {columns}{more}?",
        "In which unit are the numbers without one, in columns {columns}{more}?",
        len(problems),
        columns=columns,
        more=more,
    )


def doubted_unit(refused: Sequence[Cause], unit: BareUnit) -> str:
    """Ask once for the unit where numbers without one are refused by their size."""
    return phrase_of_count(
        "{count} cell cannot be true: numbers without a unit are taken in {unit}. In which unit are they?",
        "{count} cells cannot be true: numbers without a unit are taken in {unit}. In which unit are they?",
        sum(len(cause.rows) for cause in refused),
        unit=phrase(UNITS[unit]),
    )


def understood_cell(column: ColumnOutline | None, text: str, bare_unit: BareUnit | None, style: LengthStyle) -> str:
    """Say how a length is understood; nothing of other cells."""
    attribute = _length(column)
    if column is None or attribute is None or not text.strip():
        return ""
    return phrase("understood as {words}", words=understood(attribute, text, column.unit or bare_unit, style).words)


def _length(column: ColumnOutline | None) -> Attribute | None:
    attribute = DECLARED.get(column.target.partition("@")[0]) if column is not None else None
    return attribute if attribute is not None and attribute.kind == "length" else None
