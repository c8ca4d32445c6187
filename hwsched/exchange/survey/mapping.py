"""Which column of a survey sheet carries which fact, as plain values that a project can remember.

How a header is understood stands in `survey_words`, where it stands in the sheet in `survey_header`.
"""

import hashlib
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

_NOT_LETTERS = re.compile(r"[\W_]+")


def plain_word(text: str) -> str:
    """Return a header or word as it is compared: without case, blanks and punctuation.

    Examples
    --------
    >>> plain_word("Door  No."), plain_word("Int/Ext")
    ('doorno', 'intext')
    """
    return _NOT_LETTERS.sub("", text.casefold())


@dataclass(frozen=True, slots=True)
class Target:
    """The fact that a column carries."""

    entity: str
    """opening, leaf, existing_item."""
    attribute: str
    """Name of the attribute or of a project's own field; ``size`` of a leaf is its width and height."""
    slot: str = ""
    """Which one, where the header says: a leaf's position, an item's kind."""

    def text(self) -> str:
        """Return the target as text, for remembering and for options.

        Examples
        --------
        >>> Target("leaf", "width_mm", "inactive").text()
        'leaf.width_mm@inactive'
        """
        return f"{self.entity}.{self.attribute}" + (f"@{self.slot}" if self.slot else "")


def target_of(text: str) -> Target:
    """Return the target that a text names.

    Raises
    ------
    ValueError
        Where it is not of the form entity.attribute or entity.attribute@slot.

    Examples
    --------
    >>> target_of("opening.mark")
    Target(entity='opening', attribute='mark', slot='')
    """
    name, _, slot = text.partition("@")
    entity, point, attribute = name.partition(".")
    if not point or not attribute:
        raise ValueError(f"{text!r} is no target; write it as opening.mark or leaf.width_mm")
    return Target(entity, attribute, slot)


MARK = Target("opening", "mark")
"""By which an opening is known; each other fact is one of the opening that its row's mark names."""


@dataclass(frozen=True, slots=True)
class MappedColumn:
    """A column that is taken in."""

    index: int
    """From 0."""
    header: str
    """As it stands, a merged heading above it in front."""
    target: Target
    unit: str
    """Unit that the header names, or that a person gave; empty where neither did."""
    dash: str = ""
    """What a person said that marks of emptiness mean in it, such as ``unknown`` or ``none``; empty: not said."""
    words: tuple[tuple[str, str], ...] = ()
    """Words whose meaning a person gave, each with the meaning."""
    unit_given: bool = False
    """Whether a person gave the unit."""
    means: tuple[tuple[str, str], ...] = ()
    """What its cells say by its heading: a tick under LHR is LHR, 2 under Leaves a pair; empty: what they hold."""
    said: bool = False
    """Whether somebody said what it carries."""
    inches: int | None = None
    """Column, from 0, that gives the inches of this one's feet."""


@dataclass(frozen=True, slots=True)
class OpenColumn:
    """A column that is not read until somebody says which of the readings of its heading holds."""

    index: int
    """From 0."""
    header: str
    read: str
    """What stands in its cells, each with its count."""
    rows: tuple[int, ...]
    """As the spreadsheet counts."""
    answers: tuple[tuple[str, str], ...]
    """What people call each answer, and the fact; that it is not read first."""


@dataclass(frozen=True, slots=True)
class RememberedMapping:
    """A sheet's mapping as a project keeps it: by header, so that it serves the next file of the same make."""

    columns: Mapping[str, str]
    """Target by header in plain form; empty text where the column is left out."""
    bare_unit: str = ""
    units: Mapping[str, str] = field(default_factory=dict)
    """Unit by header in plain form, where a person gave one."""
    dashes: Mapping[str, str] = field(default_factory=dict)
    """What marks of emptiness mean, by header in plain form."""
    words: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    """Meaning by word, by header in plain form."""
    headers: tuple[str, ...] = ()
    """All headings of the sheet in plain form and in their order; empty where an earlier version kept it."""
    mark: str = ""
    """Pattern of the mark where it stands in several columns."""
    counts: str = ""
    """How rows are read that stand for several doors."""
    corrections: tuple[tuple[str, str, str, str, str], ...] = ()
    """Cells that were mended: sheet, cell, what it held, what it is read as, by whom."""
    gone: tuple[str, ...] = ()
    """Remembered columns, by their plain headings, that the header in hand lacks."""
    decimal: str = ""
    """Mark before the decimals of numbers that are texts: comma or point."""
    pairs: str = ""
    """What widths of pairs are, which do not say it: of each ``leaf``, or of ``both``."""
    tables: str = ""
    """What becomes of a table of types in the sheet of the openings: ``types``, or ``left-out``."""
    openings_in: str = ""
    """Where an opening stands, as a person said it: in ``rows`` or in ``columns``."""
    cures: tuple[str, ...] = ()
    """Oddities of which the cure was wanted, of those that are a habit of the list."""

    def content(self) -> dict[str, Any]:
        """Return it as a project stores it; what says nothing is left out."""
        content: dict[str, Any] = {"columns": dict(self.columns), "bare_unit": self.bare_unit}
        for name, told in (("units", self.units), ("dashes", self.dashes), ("words", self.words)):
            if told:
                content[name] = dict(told)
        if self.headers:
            content["headers"] = list(self.headers)
        for name in ("mark", "counts", "decimal", "pairs", "tables", "openings_in"):
            if text := getattr(self, name):
                content[name] = text
        if self.cures:
            content["cures"] = list(self.cures)
        if self.corrections:
            content["corrections"] = [list(each) for each in self.corrections]
        return content

    @staticmethod
    def of(content: Mapping[str, Any]) -> "RememberedMapping":
        """Return what a project stored; an earlier version stored less."""
        return RememberedMapping(
            content.get("columns", {}),
            content.get("bare_unit", ""),
            content.get("units", {}),
            content.get("dashes", {}),
            content.get("words", {}),
            tuple(content.get("headers", ())),
            content.get("mark", ""),
            content.get("counts", ""),
            tuple((sheet, cell, was, now, by) for sheet, cell, was, now, by in content.get("corrections", ())),
            decimal=content.get("decimal", ""),
            pairs=content.get("pairs", ""),
            tables=content.get("tables", ""),
            openings_in=content.get("openings_in", ""),
            cures=tuple(content.get("cures", ())),
        )


@dataclass(frozen=True, slots=True)
class SheetMapping:
    """How one sheet was understood."""

    sheet: str
    header_row: int
    """Lowest row of the header, as the spreadsheet counts."""
    columns: tuple[MappedColumn, ...]
    fingerprint: str
    headers: tuple[str, ...]
    """All headers of the sheet, mapped or not."""
    left_out: frozenset[int] = frozenset()
    """Columns, from 0, that the user leaves out on purpose, now or at an earlier import."""
    recalled: frozenset[int] = frozenset()
    """Columns, from 0, whose fact an earlier import says and the heading does not."""
    gone: tuple[str, ...] = ()
    """Columns of the earlier import of such a file that this one lacks, by their plain headings."""
    mark: str = ""
    """Pattern of which its marks are made, in a column behind the last one; empty where a column holds them."""
    counts: str = ""
    """How rows are read that stand for several doors, now or at an earlier import."""
    decimal: str = ""
    """Mark before the decimals of numbers that are texts, now or at an earlier import."""
    pairs: str = ""
    """What widths of pairs are, which do not say it, now or at an earlier import."""
    tables: str = ""
    """What becomes of a table of types in the sheet of the openings, now or at an earlier import."""
    openings_in: str = ""
    """Where an opening stands, as a person says now or said at an earlier import."""
    cures: tuple[str, ...] = ()
    """Oddities that are mended in it, now or as at an earlier import, of those that are a habit of the list."""
    asked: tuple[OpenColumn, ...] = ()
    """Columns whose heading has several readings, of which the cells do not say which."""
    by_cells: tuple[tuple[int, str], ...] = ()
    """Columns, from 0, whose heading has several readings, and what the cells made of it."""

    def remembered(self, bare_unit: str = "") -> RememberedMapping:
        """Return what a project keeps of it.

        A column without a meaning is not kept, so that it is read once there is a fact or a field of that name.

        Parameters
        ----------
        bare_unit : str
            Unit that the user asked for; empty where none was.
        """
        keys = header_keys(self.headers)
        # A mark that is made of several columns stands behind the last of them, and is told by its pattern.
        # A tick says by its heading what it says, and is found so in the next file too.
        columns = [
            column for column in self.columns if column.index < len(keys) and not (column.means and not column.said)
        ]
        said = dict.fromkeys(self.left_out, "") | {column.index: column.target.text() for column in columns}
        named = [(keys[column.index], column) for column in columns if keys[column.index]]
        return RememberedMapping(
            {keys[i]: said[i] for i in sorted(said) if keys[i]},
            bare_unit,
            {key: column.unit for key, column in named if column.unit_given},
            {key: column.dash for key, column in named if column.dash},
            {key: dict(column.words) for key, column in named if column.words},
            tuple(plain_word(header) for header in self.headers),
            self.mark,
            self.counts,
            decimal=self.decimal,
            pairs=self.pairs,
            tables=self.tables,
            openings_in=self.openings_in,
            cures=self.cures,
        )


def header_keys(headers: Iterable[str]) -> list[str]:
    """Return each header in plain form; one that stands there again is numbered, an empty one stays empty.

    Examples
    --------
    >>> header_keys(["Mark", "Notes", "", "notes"])
    ['mark', 'notes', '', 'notes#2']
    """
    seen: dict[str, int] = {}
    keys = []
    for header in headers:
        key = plain_word(header)
        seen[key] = seen.get(key, 0) + 1
        # Width stands twice in many files, once of the leaf and once of the lite: by its word alone one would take
        # the other's place.
        keys.append(f"{key}#{seen[key]}" if key and seen[key] > 1 else key)
    return keys


def fingerprint_of(headers: Iterable[str]) -> str:
    """Return the mark by which a header is known again: the same words in the same order give the same.

    Examples
    --------
    >>> fingerprint_of(["Mark", "Width"]) == fingerprint_of(["MARK ", "width"]), len(fingerprint_of([]))
    (True, 32)
    """
    joined = "\n".join(plain_word(header) for header in headers)
    return hashlib.sha256(joined.encode()).hexdigest()[:32]
