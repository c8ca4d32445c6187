"""Reads the tables of `resources` (those of `power` by default): the one module of `calc` that opens files.

Everything else in `calc` takes plain values and opens nothing. The tables are constants of the program (published
limits, defaults with their source), read once and kept. Here belongs only the reading; what a table means stands in
the module that uses it.
"""

import csv
from dataclasses import dataclass
from functools import lru_cache

from hwsched.paths import RESOURCES


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a table, by column name."""

    table: str
    cells: dict[str, str]

    def text(self, column: str) -> str:
        """Cell as it stands; empty where nothing is known."""
        return self.cells[column]

    def number(self, column: str) -> float:
        """Cell as a number; raises ValueError where it is empty or no number."""
        return float(self.cells[column])

    def optional_number(self, column: str) -> float | None:
        """Cell as a number, or None where it is empty."""
        cell = self.cells[column]
        return float(cell) if cell else None

    @property
    def source(self) -> str:
        """Publication, "common practice" or "from memory"."""
        return self.cells["source"]

    @property
    def verified(self) -> bool:
        """False where the value is wholly or in part from memory: an editable default, printed as unverified."""
        return self.cells["verified"] == "yes"


@lru_cache(maxsize=64)
def rows(table: str, folder: str = "power") -> tuple[Row, ...]:
    """Rows of a table of `resources`.

    Parameters
    ----------
    table : str
        Name of the file without its ending, such as ``nec_table_8``.
    folder : str
        Of `resources`, in which it stands.

    Returns
    -------
    tuple of Row
        In the order of the file.

    Raises
    ------
    ValueError
        Where a row has more or fewer cells than the heading.
    OSError
        Where there is no such table.

    Examples
    --------
    >>> rows("iec_60228")[0].number("class_1_2_ohm_per_km")
    36.0
    """
    with (RESOURCES / folder / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        heading, *lines = csv.reader(file)
    # A comma in a text without quotation marks would move every later cell by one column.
    wrong = next((i for i, line in enumerate(lines, start=2) if len(line) != len(heading)), None)
    if wrong is not None:
        raise ValueError(f"{table}.csv line {wrong}: {len(heading)} cells expected")
    return tuple(Row(table, dict(zip(heading, line, strict=True))) for line in lines)


def row(table: str, column: str, value: str) -> Row:
    """First row of a table that has the value in the column.

    Parameters
    ----------
    table, column, value : str
        Table, its column and the text looked for.

    Raises
    ------
    KeyError
        Where there is none.

    Examples
    --------
    >>> row("conductor_constants", "name", "temperature_coefficient").number("value")
    0.00393
    """
    for each in rows(table):
        if each.cells[column] == value:
            return each
    raise KeyError(f"{table}: no row with {column} {value!r}")
