"""One sheet of a catalogue workbook as rows of values, with every cell that is refused.

Here belongs what is equal for all sheets of the book: the header row, units in headers, merged cells, formulas. What
rows mean stands in `catalogue_book`.
"""

import difflib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

from hwsched.attributes import Attribute, CellError, CellReader, Value, accepted_by, as_text, normal, split_unit
from hwsched.exchange.problems import CellProblem, column_letter, problem_of
from hwsched.exchange.workbook import Book, Merged

_HEADER_WITHIN: Final = 30
"""Rows from the top among which the headers are sought."""
_HEADERS_AT_LEAST: Final = 2


@dataclass(frozen=True, slots=True)
class Row:
    """One row below the headers."""

    place: int
    """From 0."""
    values: Mapping[str, Value]
    """Values by attribute; what was refused is left out, what is unknown is None."""
    refused: bool
    """A cell of it was refused."""


@dataclass(slots=True)
class Table:
    """A sheet's rows, and what was wrong with it."""

    file: str
    sheet: str
    header_row: int = -1
    """From 0; -1 where there is none."""
    headers: dict[str, tuple[int, str]] = field(default_factory=dict)
    """Column from 0 and header as it stands, by attribute."""
    rows: list[Row] = field(default_factory=list)
    problems: list[CellProblem] = field(default_factory=list)

    def problem(self, place: int, name: str, read: object, message: str, accepted: str = "") -> CellProblem:
        """Return the refusal of a row's cell; the column stays open where the sheet has none for it."""
        column, header = self.headers.get(name, (-1, ""))
        letters = column_letter(column) if column >= 0 else ""
        return CellProblem(self.file, self.sheet, place + 1, letters, header, as_text(read), message, accepted)


def read_table(book: Book, sheet: str, attributes: Sequence[Attribute]) -> Table:
    """Read a sheet of the catalogue workbook.

    Parameters
    ----------
    book : Book
        Opened workbook.
    sheet : str
        Name of one of its sheets.
    attributes : sequence of Attribute
        Columns that the sheet can have.

    Returns
    -------
    Table
        Without rows where it has no header row or lacks a column that must be there.

    Raises
    ------
    InputRejected
        Where the sheet is damaged or too large.
    """
    cells = book.rows(sheet)
    table = Table(book.file, sheet)
    words = _words(attributes)
    table.header_row = _header_row(cells, words)
    if table.header_row < 0:
        filled = next((n for n, row in enumerate(cells) if any(map(_holds, row))), None)
        if filled is not None:
            labels = ", ".join(attribute.label for attribute in attributes if attribute.required)
            message = "has no row of headers that are known"
            table.problems.append(CellProblem(book.file, sheet, filled + 1, "", "", "", message, f"headers {labels}"))
        return table
    readers = _columns(table, cells, words, attributes)
    below = any(_holds(cell) for row in cells[table.header_row + 1 :] for cell in row)
    lacking = [
        attribute.label for attribute in attributes if attribute.required and attribute.name not in table.headers
    ]
    if lacking and below:
        message = f"has no column {', '.join(lacking)}"
        table.problems.append(table.problem(table.header_row, "", "", message, "every column that must be filled in"))
        return table
    if below or readers:
        _read_rows(table, cells, readers, book.doubtful(sheet), book.merged(sheet))
    return table


def _holds(cell: object) -> bool:
    return cell is not None and (not isinstance(cell, str) or bool(cell.strip()))


def _words(attributes: Sequence[Attribute]) -> dict[str, Attribute]:
    """Return the attribute by each spelling of its header; labels win over names, and both over synonyms."""
    words: dict[str, Attribute] = {}
    for spellings in (
        lambda attribute: (attribute.label,),
        lambda attribute: (attribute.name,),
        lambda attribute: attribute.synonyms,
    ):
        for attribute in attributes:
            for spelling in spellings(attribute):
                words.setdefault(normal(spelling), attribute)
    return words


def _header_row(cells: list[list[object]], words: Mapping[str, Attribute]) -> int:
    for place, row in enumerate(cells[:_HEADER_WITHIN]):
        known = {found.name for cell in row if isinstance(cell, str) and (found := _meaning(cell, words)[0])}
        if len(known) >= _HEADERS_AT_LEAST:
            return place
    return -1


def _meaning(header: str, words: Mapping[str, Attribute]) -> tuple[Attribute | None, str]:
    name, unit = split_unit(header)
    return (words.get(normal(name)) or words.get(normal(header))) if normal(header) else None, unit


def _columns(
    table: Table, cells: list[list[object]], words: Mapping[str, Attribute], attributes: Sequence[Attribute]
) -> dict[int, CellReader]:
    readers: dict[int, CellReader] = {}
    width = max(len(row) for row in cells)
    for column in range(width):
        cell = cells[table.header_row][column] if column < len(cells[table.header_row]) else ""
        header = as_text(cell).strip()
        found, unit = _meaning(header, words)
        filled = next(
            (n for n in range(table.header_row + 1, len(cells)) if column < len(cells[n]) and _holds(cells[n][column])),
            None,
        )
        if found is not None and found.name not in table.headers:
            table.headers[found.name] = column, header
            readers[column] = CellReader(found, (unit or "mm") if found.kind == "length" else (unit or None))
        elif filled is not None or found is not None:
            # An empty column more loses nothing; whatever is filled in must not vanish without a word.
            place = table.header_row if header else filled or 0
            read = header or as_text(cells[place][column])
            message = (
                "has no header above it" if not header else "stands twice" if found else "is no column of this sheet"
            )
            letters = column_letter(column)
            accepted = _nearest(header, attributes)
            table.problems.append(
                CellProblem(table.file, table.sheet, place + 1, letters, header, read, message, accepted)
            )
    return readers


def _nearest(header: str, attributes: Sequence[Attribute]) -> str:
    labels = {normal(attribute.label): attribute.label for attribute in attributes}
    near = difflib.get_close_matches(normal(split_unit(header)[0]), labels, n=1, cutoff=0.75)
    return labels[near[0]] if near else ", ".join(labels.values())


def _read_rows(
    table: Table,
    cells: list[list[object]],
    readers: Mapping[int, CellReader],
    doubtful: Mapping[tuple[int, int], str],
    merged: Sequence[Merged],
) -> None:
    spoilt = dict(_merged_problems(table, readers, merged, len(cells)))
    doubtful_rows = {place for place, column in doubtful if column in readers}
    for place in range(table.header_row + 1, len(cells)):
        row = cells[place]
        if place in spoilt:
            table.problems += spoilt[place]
        if not any(map(_holds, row)) and place not in doubtful_rows:
            continue
        values: dict[str, Value] = {}
        refused = place in spoilt
        for column, reader in readers.items():
            cell = row[column] if column < len(row) else ""
            attribute = reader.attribute
            try:
                if (place, column) in doubtful:
                    raise CellError("", doubtful[place, column])
                value = reader(cell)
                if attribute.required and value in (None, ""):
                    raise CellError(as_text(cell), "must be filled in", attribute.note or accepted_by(attribute))
                values[attribute.name] = value
            except CellError as error:
                header = table.headers[attribute.name][1]
                where = {"file": table.file, "sheet": table.sheet, "header": header}
                table.problems.append(problem_of(error, row=place + 1, column=column, **where))
                refused = True
        table.rows.append(Row(place, values, refused))


def _merged_problems(
    table: Table, readers: Mapping[int, CellReader], merged: Sequence[Merged], rows: int
) -> Iterator[tuple[int, list[CellProblem]]]:
    """Yield the rows that merged cells reach into; the problem is named once, at the first of them."""
    spoilt: dict[int, list[CellProblem]] = {}
    for cells in merged:
        first, last = max(cells.first_row, table.header_row + 1), min(cells.last_row, rows - 1)
        reached = [column for column in readers if cells.first_column <= column <= cells.last_column]
        if first > last or not reached:
            continue
        column = min(reached)
        message = f"is merged ({cells.describe()}); only its first cell holds a value"
        problem = CellProblem(
            table.file,
            table.sheet,
            first + 1,
            column_letter(column),
            table.headers[readers[column].attribute.name][1],
            "",
            message,
            "a value in each cell, none merged",
        )
        for place in range(first, last + 1):
            spoilt.setdefault(place, [])
        spoilt[first].append(problem)
    yield from spoilt.items()
