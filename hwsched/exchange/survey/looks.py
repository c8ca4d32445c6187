"""What a person sees in a sheet and no cell says: hidden rows and columns, struck letters, colours.

It may mean everything, and it means something else in each office: nothing is made of it, and all of it is named.
"""

from collections.abc import Iterable, Sequence
from typing import Final

from hwsched.exchange.problems import column_letter
from hwsched.exchange.survey.facts import Assumption
from hwsched.exchange.survey.mapping import SheetMapping
from hwsched.exchange.survey.sheet import SheetFacts

_SHOWN: Final = 12
_MOST_COLOURED: Final = 0.5
"""Share of the rows from which colours are how the sheet is drawn, such as every other row grey."""


def say_looks(sheet: SheetFacts, mapping: SheetMapping) -> None:
    """Name the rows and columns that are read and that a person sees otherwise than the others."""
    looks = sheet.grid.looks
    rows = set(sheet.rows)
    columns = {column.index: column for column in mapping.columns}
    hidden = sorted(looks.hidden_rows & rows)
    struck = sorted({row for row, column in looks.struck if row in rows and column in columns})
    coloured = sorted({row for row, column in looks.filled if row in rows and column in columns})
    if len(coloured) > _MOST_COLOURED * len(rows):
        coloured = []
    for found, text in (
        (hidden, "rows hidden in the file read like the others"),
        (struck, "rows with struck letters read like the others"),
        (coloured, "rows with a colour of their own read like the others: colours say nothing here"),
    ):
        if found:
            sheet.assumptions.append(
                Assumption(sheet.grid.sheet, "", "", f"{text}: {_listed(row + 1 for row in found)}", len(found))
            )
    for index in sorted(looks.hidden_columns & columns.keys()):
        text = "a column hidden in the file, read"
        sheet.assumptions.append(
            Assumption(sheet.grid.sheet, column_letter(index), columns[index].header, text, len(sheet.rows))
        )


def _listed(rows: Iterable[int]) -> str:
    every: Sequence[int] = list(rows)
    more = f" and {len(every) - _SHOWN} more" if len(every) > _SHOWN else ""
    return ", ".join(map(str, every[:_SHOWN])) + more
