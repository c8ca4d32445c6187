"""What an edit of many cells would change, before it does: what stands there, what comes, why not. No widgets.

Texts are read by the same readers as cells of a survey; what cannot be read is named and left out, the rest is taken.
"""

import csv
import io
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.attributes.unknown import says_nothing, unknown_word
from hwsched.desktop.grid.column import Column, Row, Target
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.widgets.typed import plain_word, understood, with_unit
from hwsched.language import phrase
from hwsched.quantities import LengthStyle

_QUOTED: Final = '"'


@dataclass(frozen=True, slots=True)
class Reading:
    """How texts are read and shown in a project."""

    bare_unit: str | None = None
    style: LengthStyle = "fraction"


@dataclass(frozen=True, slots=True)
class Proposal:
    """One cell as it would become."""

    thing: str
    """By which the row is called."""
    fact: str
    before: str
    after: str
    text: str = ""
    """As it is to be written."""
    target: Target | None = None
    refused: str = ""
    """Why not; empty where it can be taken."""

    @property
    def changes(self) -> bool:
        """Whether taking it would change something."""
        return not self.refused and self.target is not None and self.before != self.after


def proposed(
    contents: Contents[Row],
    identity: str,
    name: str,
    text: str,
    reading: Reading,
    thing: str,
) -> Proposal:
    """Return what a text in a cell would change.

    Parameters
    ----------
    contents : Contents
        Of the grid.
    identity, name : str
        Row and column.
    text : str
        As typed or pasted; empty or a question mark: unknown.
    reading : Reading
        Of the project.
    thing : str
        By which the row is called.
    """
    column, row = contents.known[name], contents.row_of(identity)
    before = _in_words(column, column.value(row)) if row is not None else ""
    target = column.target(row) if row is not None and column.target is not None else None
    attribute = column.attribute
    if row is None or target is None or attribute is None:
        if row is not None and text.strip() == column.text(column.value(row)).strip():
            # A block is copied with what is worked out in it: where that is still so, nobody wants to change it.
            return Proposal(thing, phrase(column.title), before, before)
        why = _why_not(column, row)
        return Proposal(thing, phrase(column.title), before, text, refused=why)
    typed = "" if says_nothing(text) else with_unit(attribute, plain_word(attribute, text.strip()), reading.style)
    said = understood(attribute, typed, reading.bare_unit, reading.style)
    if said.refused:
        return Proposal(thing, phrase(column.title), before, text, refused=said.words)
    if said.value is None and attribute.required:
        return Proposal(thing, phrase(column.title), before, text, refused=phrase("cannot be unknown"))
    return Proposal(thing, phrase(column.title), before, _in_words(column, said.value), typed, target)


def _in_words(column: Column[Row], value: object) -> str:
    """Return a value as it is said beside another one: an empty cell there would say nothing at all."""
    said = column.text(value)
    return said or (unknown_word() if value is None and column.target is not None else said)


def _why_not(column: Column[Row], row: Row | None) -> str:
    if row is None:
        return phrase("this row is gone")
    return phrase("there is none here") if column.target is not None else phrase("is worked out, not typed")


def cells_of(text: str) -> list[list[str]]:
    r"""Cut a pasted text into lines of cells, as spreadsheets hand them over.

    Examples
    --------
    >>> cells_of('1 3/4"\tRHR\r\n2"\t"two\nlines"\r\n')
    [['1 3/4"', 'RHR'], ['2"', 'two\nlines']]
    """
    if f"\t{_QUOTED}" not in f"\t{text}" and f"\n{_QUOTED}" not in text:
        # An inch mark at the end of a cell is no quote of a spreadsheet.
        return [line.split("\t") for line in text.replace("\r\n", "\n").rstrip("\n").split("\n")]
    found = list(csv.reader(io.StringIO(text.replace("\r\n", "\n")), delimiter="\t"))
    return [line or [""] for line in found]


def text_of(lines: Iterable[Sequence[str]]) -> str:
    r"""Write cells as spreadsheets take them.

    Examples
    --------
    >>> text_of([["a", 'two\nlines'], ['1 3/4"', ""]])
    'a\t"two\nlines"\n1 3/4"\t'
    """
    return "\n".join("\t".join(map(_cell, line)) for line in lines)


def _cell(text: str) -> str:
    if any(character in text for character in "\t\n\r") or text.startswith(_QUOTED):
        return _QUOTED + text.replace(_QUOTED, _QUOTED * 2) + _QUOTED
    return text


def spread(
    cells: Sequence[Sequence[str]], ids: Sequence[str], start: int, names: Sequence[str], chosen: Sequence[str]
) -> tuple[list[tuple[str, str, str]], int]:
    """Lay pasted cells over rows and columns.

    Parameters
    ----------
    cells : sequence of sequence of str
        Pasted.
    ids : sequence of str
        Shown rows in order.
    start : int
        Of the first of them that gets a line.
    names : sequence of str
        Shown columns from the one on that gets the first cell.
    chosen : sequence of str
        Selected rows: one line is laid over all of them.

    Returns
    -------
    laid : list of tuple
        Row, column, text.
    left : int
        Cells for which there was no place.
    """
    lines: list[tuple[str, Sequence[str]]]
    if len(cells) == 1 and len(chosen) > 1:
        lines = [(each, cells[0]) for each in chosen]
        over = 0
    else:
        lines = list(zip(ids[start : start + len(cells)], cells, strict=False))
        over = sum(map(len, cells[len(lines) :]))
    laid = [(each, name, text) for each, line in lines for name, text in zip(names, line, strict=False)]
    return laid, over + sum(max(0, len(line) - len(names)) for _, line in lines)
