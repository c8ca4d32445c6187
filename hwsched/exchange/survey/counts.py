"""Rows that stand for several doors: a column of quantities, and the marks that are made of such a row.

A person says whether such a row is one opening, so many openings whose marks follow a pattern, or a type to which the
openings of another table refer. Until then it is one opening, and asked about.
"""

import re
from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import Final

from hwsched.attributes import CellError, as_text
from hwsched.exchange.problems import CellProblem, column_letter
from hwsched.exchange.survey.facts import Question, SurveyedOpening
from hwsched.exchange.survey.mapping import SheetMapping, plain_word
from hwsched.exchange.survey.patterns import Numbering, is_counting
from hwsched.exchange.survey.sheet import SheetFacts
from hwsched.language import to_phrase
from hwsched.quantities import plain_text

ONE: Final = to_phrase("one")
TYPE: Final = to_phrase("type")
OFFERED: Final = (ONE, "{mark}-{n}", "{mark}{letter}", TYPE)
"""Answers to what rows of several doors are; any other pattern that counts is one too."""
_QUANTITY: Final = frozenset(
    {
        "qty", "quantity", "count", "doorcount", "noofdoors", "numberofdoors", "pcs", "quan", "quant", "nos", "qnty",
        "noof", "doorqty", "doorquantity", "qtyofdoors", "numberof",
    }
)  # fmt: skip
_COUNT: Final = re.compile(
    r"(\d{1,6})(?:\.0+)?\s*(?:x|ea\.?|each|no\.?|nos\.?|pcs?\.?|doors?|openings?|sgl\.?|prs?\.?|pairs?)?"
)
_SHOWN: Final = 12
_MOST: Final = 5000
"""Doors of one row; a number beyond is a mark or a price."""


def count_of(cell: object) -> int | None:
    """Return how many doors a cell of quantities says; None where it is no such number.

    Examples
    --------
    >>> [count_of(cell) for cell in ("3", 3.0, "2 EA", "1 pr", "", "12 ft", 2.5, True)]
    [3, 3, 2, 1, None, None, None, None]
    """
    if isinstance(cell, bool):
        return None
    match = _COUNT.fullmatch(plain_text(as_text(cell)).strip().lower())
    count = int(match[1]) if match else None
    return count if count is not None and count <= _MOST else None


def is_answer(counts: str) -> bool:
    """Tell whether a text says how rows of several doors are read."""
    return counts in (ONE, TYPE) or is_counting(counts)


def read_counts(sheet: SheetFacts, mapping: SheetMapping) -> None:
    """Read the column of quantities of a sheet of openings, or ask about it where nothing was said of it."""
    carried = {column.index for column in mapping.columns} | mapping.left_out
    index = quantity_column(mapping.headers, carried)
    if index is None:
        return
    lines = [sheet.grid.rows[row] for row in sheet.rows]
    cells = [line[index] if index < len(line) else "" for line in lines]
    counts = [count_of(cell) for cell in cells]
    if not mapping.counts or mapping.counts == ONE:
        many = [n for n, count in enumerate(counts) if count is not None and count > 1]
        if many and not mapping.counts:
            read = ", ".join(f'"{as_text(cells[n])}"' for n in many[:_SHOWN])
            rows = tuple(sheet.rows[n] + 1 for n in many)
            sheet.questions.append(
                Question(mapping.sheet, column_letter(index), mapping.headers[index], read, rows, OFFERED, "count")
            )
        return
    for entry, (cell, count) in enumerate(zip(cells, counts, strict=True)):
        if count is not None:
            sheet.counts[entry] = count
        elif as_text(cell).strip():
            error = CellError(as_text(cell), "is no number of doors", "a number such as 3")
            letter, place = column_letter(index), (sheet.grid.file, sheet.grid.sheet, sheet.rows[entry] + 1)
            sheet.problems.append(
                CellProblem(*place, letter, mapping.headers[index], error.read, error.message, error.accepted)
            )
            sheet.bad.add(entry)


def quantity_column(headers: Sequence[str], carried: Collection[int]) -> int | None:
    """Return the column of quantities; None where there is none that carries nothing else."""
    return next((i for i, text in enumerate(headers) if plain_word(text) in _QUANTITY and i not in carried), None)


def counted_out(opening: SurveyedOpening, count: int, numbering: Numbering, of_type: str = "") -> list[SurveyedOpening]:
    """Return the openings that a row of several doors stands for."""
    told = {"mark": opening.mark, "type": of_type or opening.mark}
    told |= {name: place_word(str(opening.facts.get(name, ""))) for name in ("level", "building")}
    marks = [numbering.next(told) for _ in range(count)]
    return [replace(opening, mark=mark, facts={**opening.facts, "mark": mark}) for mark in marks]


def place_word(name: str) -> str:
    """Return what a mark takes of the name of a level: its number or its last word.

    Examples
    --------
    >>> place_word("LEVEL 2"), place_word("2nd floor"), place_word("Basement"), place_word("")
    ('2', '2', 'Basement', '')
    """
    words = name.split()
    number = next((match[0] for word in words if (match := re.match(r"[A-Z]?\d+", word))), None)
    return number or (words[-1] if words else "")
