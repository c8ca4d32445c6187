"""A table that is a text: its encoding, the mark between its cells, quotation marks that are inch marks.

Here belongs how the characters of .csv, .tsv and .txt become rows of cells; what the cells mean stands in `columns`.
"""

import csv
import io
import re
from codecs import BOM_UTF8, BOM_UTF16_BE, BOM_UTF16_LE, BOM_UTF32_BE, BOM_UTF32_LE, lookup
from collections.abc import Iterator
from typing import Final

Rows = list[list[object]]
_USUAL: Final = ",;\t|"
_UNUSUAL: Final = "^~\u00a6\u001f\u00b6:"
"""Marks that cut cells where no usual one does."""
_LONGEST_NOTE: Final = 5_000
"""Characters over several lines that a person types into one cell; beyond, a quotation mark was never closed."""
_SAMPLE: Final = 4096
_MARKS: Final = ((BOM_UTF32_LE, "utf-32"), (BOM_UTF32_BE, "utf-32"), (BOM_UTF16_LE, "utf-16"), (BOM_UTF16_BE, "utf-16"))
_GUARDS: Final = frozenset("='")
_GUARDED: Final = re.compile(r'="([^"]*)"|\'(?=[^\'\s\d]*\d)([^\'"]*)')
"""="0101" and '0101, by which programs keep a spreadsheet from making a number or a date of a text."""
_LINES_LOOKED_AT: Final = 200
_RULES: Final = re.compile(r"\s*[-=_]{2,}(?:\s+[-=_]{2,})+\s*")
"""Under the headings of a report: a rule for each column."""
_FEWEST_LINES: Final = 3
"""Lines from which columns that blanks set apart can be told."""


class TextError(ValueError):
    """A text that is no table.

    Parameters
    ----------
    message, accepted : str
        What is wrong, and what would be taken.
    """

    def __init__(self, message: str, accepted: str) -> None:
        super().__init__(message)
        self.accepted = accepted


def read_table(content: bytes, encoding: str | None = None) -> tuple[Rows, tuple[str, ...]]:
    """Read a text as rows of cells.

    Parameters
    ----------
    content : bytes
        The whole file.
    encoding : str, optional
        Its encoding, where a person says it.

    Returns
    -------
    tuple
        Rows, and how it was read where that is not plain.

    Raises
    ------
    TextError
        Where it is no text, or a quotation never ends.
    """
    text, notes = _decoded(content, encoding)
    delimiter = ""
    if text[:4].casefold() == "sep=" and text[4:5].strip("\r\n "):
        # Spreadsheet programs write such a first line; it stays as an empty row, so that rows keep their numbers.
        delimiter, text = text[4], text[5:]
    mark = delimiter or _delimiter(text)
    if not mark:
        if (columns := _fixed_columns(text)) is not None:
            return columns, (*notes, "cells cut where blanks stand above each other")
        mark = ","
    if mark not in _USUAL and not delimiter:
        notes = (*notes, f"cells cut at {mark if mark.isprintable() else f'U+{ord(mark):04X}'}")
    if (loose := _loose_rows(text, mark)) is not None:
        return _without_guards(loose), notes
    rows: Rows = []
    try:
        for row in _csv_rows(text, mark):
            rows.append(list(row))
            # An inch mark at the beginning of a cell opens a quotation that swallows the rows after it without an
            # error.
            if any(len(cell) > _LONGEST_NOTE and "\n" in cell for cell in row):
                raise csv.Error("a quotation mark is opened and not closed")
    except csv.Error as error:
        raise TextError(f"cannot be read from row {len(rows)} on: {error}", "comma-separated text") from None
    return _without_guards(rows), notes


def _without_guards(rows: Rows) -> Rows:
    """Return rows without the marks that keep a spreadsheet from making a number of a text: ="0101" and '0101."""
    for row in rows:
        for index, cell in enumerate(row):
            if isinstance(cell, str) and cell[:1] in _GUARDS and (match := _GUARDED.fullmatch(cell.strip())):
                row[index] = match[1] if match[1] is not None else match[2]
    return rows


def _decoded(content: bytes, told: str | None) -> tuple[str, tuple[str, ...]]:
    if told is not None:
        try:
            return lookup(told).decode(content)[0].removeprefix("\ufeff"), ()
        except LookupError:
            raise TextError(f"cannot be read as {told}, which is no encoding", "utf-8, cp1252, cp850, utf-16") from None
        except (UnicodeError, TypeError, ValueError):
            raise TextError(f"is no text in {told}", "another encoding, such as cp1252 or cp850") from None
    found = next((name for mark, name in _MARKS if content.startswith(mark)), None) or _without_mark(content)
    try:
        # "Unicode text" of spreadsheet programs is UTF-16; their CSV in UTF-8 begins with a byte order mark, which
        # would become part of the first header.
        text = content.decode(found or "utf-8-sig")
        notes: tuple[str, ...] = ()
    except UnicodeDecodeError:
        text, notes = _of_old_page(content.removeprefix(BOM_UTF8))
    if "\x00" in text:
        raise TextError("is no text", "comma-separated text")
    return text.removeprefix("\ufeff"), notes


def _without_mark(content: bytes) -> str | None:
    """Return UTF-16 where every second byte of a plain text is zero; no other text holds such bytes."""
    start = content[:_SAMPLE]
    if len(start) < 8 or not start.count(0):
        return None
    even, odd = start[0::2].count(0) / len(start[0::2]), start[1::2].count(0) / len(start[1::2])
    return "utf-16-le" if odd > 0.8 > 0.1 > even else "utf-16-be" if even > 0.8 > 0.1 > odd else None


def _of_old_page(content: bytes) -> tuple[str, tuple[str, ...]]:
    """Decode what spreadsheet programs of western Europe and America wrote before they wrote UTF-8."""
    try:
        return content.decode("cp1252"), ()
    except UnicodeDecodeError:
        # It has bytes that Windows gives no letter: the code page of its command line gives one to each.
        return content.decode("cp850"), ("letters beyond ASCII read by code page 850; --encoding says another",)


def _csv_rows(text: str, delimiter: str) -> Iterator[list[str]]:
    # No guessing of quotation marks: 3'-0" and 36" would be taken for some.
    return csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)


def _loose_rows(text: str, mark: str) -> Rows | None:
    """Return the rows line by line, where inch marks were written without quoting them; None where the file is sound.

    An inch mark at the end of a cell, or one that opens it, swallows what comes after it; read line by line, such a
    file has rows of one width, and read by the rules it has not.
    """
    if '"' not in text:
        return None
    lines = text.splitlines()
    try:
        strict = [len(row) for row in _csv_rows(text, mark) if row]
    except csv.Error:
        strict = []
    loose: Rows = [[_unquoted(cell) for cell in _cells(line, mark)] for line in lines]
    widths = [len(row) for row, line in zip(loose, lines, strict=True) if line.strip()]
    # A row of several lines counts by its lines: that they fall apart shows only there.
    return loose if _usual_share(widths, len(widths)) > _usual_share(strict, len(widths)) else None


def _usual_share(widths: list[int], lines: int) -> float:
    usual = max(set(widths), key=widths.count, default=0)
    return sum(1 for width in widths if width == usual) / max(lines, 1) if usual > 1 else 0.0


def _cells(line: str, mark: str) -> list[str]:
    """Cut a line at its marks; a cell is quoted only where a quotation ends just before the next mark."""
    quoted = re.compile(rf'".*?"(?={re.escape(mark)}|$)')
    cells, place = [], 0
    while True:
        match = quoted.match(line, place)
        end = match.end() if match else line.find(mark, place)
        end = len(line) if end < 0 else end
        cells.append(line[place:end])
        if end >= len(line):
            return cells
        place = end + 1


def _unquoted(cell: str) -> str:
    text = cell.strip()
    if len(text) > 1 and text[0] == text[-1] == '"':
        return text[1:-1].replace('""', '"')
    # A quotation that was opened and never closed.
    return text[1:] if text.startswith('"') else text


def _delimiter(text: str) -> str:
    """Return the mark that cuts the first lines into most cells, as many in most lines; empty where none does."""
    head = "\n".join(text[:65536].splitlines()[:40])
    for marks in (_USUAL, _UNUSUAL):
        best, most = "", 0
        for mark in marks:
            if mark not in head:
                continue
            widths = [len(row) for row in _csv_rows(head, mark) if any(row)]
            # Title lines above the table have other widths: the width that most lines share is the table's.
            usual = max(set(widths), key=lambda width: (widths.count(width), width), default=1)
            cells = widths.count(usual) * (usual - 1)
            if cells > most and (marks == _USUAL or widths.count(usual) > len(widths) / 2):
                best, most = mark, cells
        if best:
            return best
    return ""


def _ruled_columns(lines: list[str]) -> list[tuple[int, int | None]] | None:
    """Return where the cells of a report begin and end, as the rules under its headings tell; None without such."""
    rules = [line for line in lines if _RULES.fullmatch(line)]
    if not rules:
        return None
    starts = [match.start() for match in re.finditer(r"[-=_]+", max(rules, key=lambda line: len(line.split())))]
    # What stands left of its rule, as a number may, belongs to the cell whose rule ends before it.
    return list(zip([0, *starts[1:]], [*starts[1:], None], strict=True))


def _cut(line: str, columns: list[tuple[int, int | None]]) -> list[object]:
    """Cut a line into its cells; one that runs over the columns, as titles do, stays whole in the first."""
    if any(first < len(line) and not line[first - 1].isspace() for first, _ in columns[1:]):
        return [line.strip(), *[""] * (len(columns) - 1)]
    return [line[first:last].strip() for first, last in columns]


def _fixed_columns(text: str) -> Rows | None:
    """Return the cells of a text whose columns are set apart by blanks above each other; None for another."""
    lines = [line.expandtabs() for line in text.splitlines()]
    if (ruled := _ruled_columns(lines)) is not None:
        return [_cut(line, ruled) for line in lines]
    looked = [line for line in lines[:_LINES_LOOKED_AT] if len(re.findall(r"\S(?:\s?\S)*", line)) > 1]
    if len(looked) < _FEWEST_LINES:
        return None
    width = max(map(len, looked))
    blank = [all(place >= len(line) or line[place] == " " for line in looked) for place in range(width)]
    starts = [p for p in range(1, width) if not blank[p] and blank[p - 1]]
    # One blank may as well stand between two words that each line has.
    cuts = [0, *(p for p in starts if p < 2 or blank[p - 2] or p == 1)]
    if len(cuts) < 2:
        return None
    return [[line[first:last].strip() for first, last in zip(cuts, [*cuts[1:], None], strict=True)] for line in lines]
