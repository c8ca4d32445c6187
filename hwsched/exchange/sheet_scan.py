"""A look at the raw text of a sheet: how far it reaches, and cells that a fast reader does not show as they are.

Here belongs what is found without building the sheet. The fast look goes over bytes; the slow one over every cell is
taken only where the fast one saw a reason.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from operator import itemgetter
from typing import Final
from xml.parsers import expat

LAST_ROW: Final = 1_048_576
LAST_COLUMN: Final = 16_384
_LETTERS: Final = re.compile(rb"""<c r=["']([A-Z]{1,3})[0-9]{1,7}["']""")
_REFERENCE: Final = re.compile(rb"""r=["']([A-Z]{1,3})([0-9]{1,9})""")
_LONGER_ROW: Final = tuple(re.compile(rb"""r=["'][A-Z]{1,3}[0-9]{%d}""" % (digits + 1)) for digits in range(8))
_FORMULA: Final = (b"<f>", b"<f ")
_ERROR: Final = b't="e"'
_OTHER_CELLS: Final = (b"<c>", b"<c/", b":c ", b":c>", b":c/")


@dataclass(slots=True)
class Glance:
    """What a fast look at a sheet saw."""

    columns: int = 0
    """Last column that a cell names; cells that are empty but for their style count as well."""
    row_digits: int = 0
    """Digits of the greatest row that a cell names."""
    odd: bool = False
    """Cells that do not say where they stand, or are written in another way than usual: nothing is sure."""
    formulas: bool = False
    errors: bool = False
    hidden_rows: set[int] = field(default_factory=set)
    hidden_columns: set[int] = field(default_factory=set)
    """From 0."""


@dataclass(slots=True)
class Inspection:
    """What a look at every cell of a sheet found; places counted from 0 as (row, column)."""

    last_row: int = -1
    last_column: int = -1
    """Outermost cells that hold something."""
    beyond: bool = False
    """A cell names a place that no sheet has."""
    errors: dict[tuple[int, int], str] = field(default_factory=dict)
    uncalculated: set[tuple[int, int]] = field(default_factory=set)
    """Formulas without a stored value."""
    styled: dict[tuple[int, int], int] = field(default_factory=dict)
    """Style of the cells that have one of the styles asked for."""


def column_index(letters: str) -> int:
    """Return the column that letters name, from 0.

    Examples
    --------
    >>> column_index("A"), column_index("AA"), column_index("XFD")
    (0, 26, 16383)
    """
    index = 0
    for letter in letters:
        index = index * 26 + ord(letter) - 64
    return index - 1


def glance(chunks: Iterable[bytes]) -> Glance:
    """Look over the bytes of a sheet.

    Parameters
    ----------
    chunks : iterable of bytes
        The sheet's XML in pieces.

    Returns
    -------
    Glance
        Never less than what is there. It takes 0.1 s for 300,000 cells (measured), half of what reading them takes.
    """
    seen = Glance()
    columns: set[bytes] = set()
    named = cells = 0
    plain = False
    for text in _between_tags(chunks):
        # Where elements carry a prefix, what is looked for below is not found.
        plain = plain or b"<sheetData" in text
        with_blank = text.count(b"<c ")
        # One look for what all of them begin with: nearly no sheet has it.
        if b":c" in text or text.count(b"<c") != with_blank:
            seen.odd = seen.odd or any(mark in text for mark in _OTHER_CELLS)
        found = _LETTERS.findall(text)
        columns.update(found)
        named += len(found)
        cells += with_blank
        while seen.row_digits < len(_LONGER_ROW) and _LONGER_ROW[seen.row_digits].search(text):
            seen.row_digits += 1
        seen.formulas = seen.formulas or (b"<f" in text and any(mark in text for mark in _FORMULA))
        seen.errors = seen.errors or _ERROR in text
        if _HIDDEN in text:
            _look_for_hidden(text, seen)
    seen.columns = max((column_index(letters.decode()) + 1 for letters in columns), default=0)
    # Cells that do not say where they stand follow from the ones before: only the slow look can count them.
    seen.odd = seen.odd or not plain or named != cells
    return seen


def _look_for_hidden(text: bytes, seen: Glance) -> None:
    for tag in _ROW_OR_COLUMN.findall(text):
        told = {name: int(value) for name, value in _PLACES_OF_TAG.findall(tag)}
        if _HIDDEN not in tag:
            continue
        if b"r" in told:
            seen.hidden_rows.add(told[b"r"] - 1)
        elif b"min" in told:
            seen.hidden_columns.update(range(told[b"min"] - 1, min(told.get(b"max", told[b"min"]), LAST_COLUMN)))


_HIDDEN: Final = b' hidden="1"'
_ROW_OR_COLUMN: Final = re.compile(rb"<(?:row|col) [^>]{1,400}>")
_PLACES_OF_TAG: Final = re.compile(rb""" (r|min|max)="([0-9]{1,7})\"""")


def cells_of_styles(chunks: Iterable[bytes], styles: frozenset[int]) -> list[tuple[int, int]]:
    """Return the cells that have one of some styles, as row and column from 0; those written as usual."""
    if not styles:
        return []
    wanted = re.compile(
        rb'<c r="([A-Z]{1,3})([0-9]{1,7})" s="(?:' + b"|".join(str(style).encode() for style in sorted(styles)) + rb')"'
    )
    return [
        (int(row) - 1, column_index(letters.decode()))
        for text in _between_tags(chunks)
        for letters, row in wanted.findall(text)
    ]


def last_named_row(chunks: Iterable[bytes]) -> int:
    """Return the last row that a cell names, from 1; 0 where none does."""
    rows: set[bytes] = set()
    for text in _between_tags(chunks):
        rows.update(map(itemgetter(1), _REFERENCE.findall(text)))
    return max(map(int, rows), default=0)


def _between_tags(chunks: Iterable[bytes]) -> Iterator[bytes]:
    """Yield pieces that are cut between tags, so that nothing is counted twice or missed."""
    tail = b""
    for chunk in chunks:
        text = tail + chunk
        cut = text.rfind(b"<")
        yield text[: max(cut, 0)]
        tail = text[max(cut, 0) :]
    yield tail


def inspect(chunks: Iterable[bytes], styles: frozenset[int] = frozenset()) -> Inspection:
    """Look at every cell of a sheet.

    Parameters
    ----------
    chunks : iterable of bytes
        The sheet's XML in pieces.
    styles : frozenset of int
        Indices of cell styles whose cells are wanted.

    Raises
    ------
    xml.parsers.expat.ExpatError
        Where it is no XML.
    """
    seen = Inspection()
    scan = _Scan(seen, styles)
    parser = expat.ParserCreate()
    # Without it expat hands over a text in pieces wherever its own buffer ends.
    parser.buffer_text = True
    parser.StartElementHandler = scan.start
    parser.EndElementHandler = scan.end
    parser.CharacterDataHandler = scan.text
    for chunk in chunks:
        parser.Parse(chunk, False)
    parser.Parse(b"", True)
    return seen


_PLACE: Final = re.compile(r"\$?([A-Z]{1,3})\$?([0-9]{1,7})")


class _Scan:
    """State of the slow look: where it is, and what the cell holds so far."""

    def __init__(self, seen: Inspection, styles: frozenset[int]) -> None:
        self.seen = seen
        self.styles = styles
        self.row = -1
        self.column = -1
        self.kind = ""
        self.formula = False
        self.in_value = False
        self.value: list[str] = []

    def start(self, name: str, attributes: dict[str, str]) -> None:
        name = name.rpartition(":")[2]
        if name == "row":
            place = attributes.get("r", "")
            # The format lets a row or a cell leave out where it stands: then it comes after the one before.
            self.row = int(place) - 1 if place.isdecimal() else self.row + 1
            self.column = -1
        elif name == "c":
            self._place(attributes.get("r"))
            self.kind = attributes.get("t", "")
            self.formula = False
            self.value = []
            style = attributes.get("s", "")
            if self.styles and style.isdecimal() and int(style) in self.styles:
                self.seen.styled[self.row, self.column] = int(style)
        elif name == "f":
            self.formula = True
        elif name in ("v", "t"):
            self.in_value = True

    def _place(self, reference: str | None) -> None:
        match = _PLACE.fullmatch(reference) if reference else None
        if match:
            self.row, self.column = int(match[2]) - 1, column_index(match[1])
        else:
            self.column += 1
        beyond = self.row >= LAST_ROW or self.column >= LAST_COLUMN or (reference is not None and match is None)
        self.seen.beyond = self.seen.beyond or beyond

    def text(self, data: str) -> None:
        if self.in_value:
            self.value.append(data)

    def end(self, name: str) -> None:
        name = name.rpartition(":")[2]
        if name in ("v", "t"):
            self.in_value = False
        elif name == "c":
            value = "".join(self.value)
            place = self.row, self.column
            if value or self.formula:
                self.seen.last_row = max(self.seen.last_row, self.row)
                self.seen.last_column = max(self.seen.last_column, self.column)
            if self.kind == "e":
                self.seen.errors[place] = value
            # A formula whose result is an empty text is calculated; one without any result was never opened in a
            # spreadsheet program.
            elif self.formula and not value and self.kind != "str":
                self.seen.uncalculated.add(place)
