"""Columns whose meaning follows from the columns beside them and from what stands in them, not from a heading alone.

Here belong two headings of one fact of which only one holds its words, columns headed by the words of a fact and
ticked, feet and inches in a column each, and numbers of leaves. What a heading says by itself stands in `words`.
"""

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import Final

from hwsched.attributes import Attribute, CellError, CellReader, as_text, unclear_word
from hwsched.attributes.emptiness import is_stroke, marks_emptiness
from hwsched.exchange.survey.grid import Grid
from hwsched.exchange.survey.mapping import MARK, MappedColumn, Target, plain_word
from hwsched.exchange.survey.words import Vocabulary

_FORM: Final = Target("opening", "form")
_TICKED: Final = tuple(
    Target(*names) for names in (
        ("opening", "hand"), ("opening", "rating"), ("opening", "form"), ("opening", "exposure"), ("leaf", "material"),
        ("opening", "frame_material"),
    )
)  # fmt: skip
"""Facts that schedules give by a tick under one of several words: common practice."""
_TICKS: Final = frozenset({"x", "yes", "y", "true", "1", "\u2713", "\u2714", "\u2611", "\u2612", "\u221a", "\u25cf"})
_LEAVES: Final = frozenset(
    map(
        plain_word,
        (
            "no of leaves",
            "number of leaves",
            "nr of leaves",
            "leaf count",
            "leaf qty",
            "leaves",
            "qty leaves",
            "leaf",
            "lf",
            "lvs",
        ),
    )
)
_FORMS: Final = {"1": "Single door", "2": "Pair"}
_MOST_READ, _FEWEST_READ = 0.6, 0.4
"""Shares of the cells of a column from which it holds a fact's words, and up to which it does not."""
_JOINED: Final = frozenset({"notes", "item_notes"})
"""Texts of which several columns say one after the other."""
_FIRST_WORD: Final = frozenset({"building", "level", "room_from", "room_to"})
"""Texts in which the plainer of two headings is read, the other named."""


def settle_columns(
    grid: Grid,
    last: int,
    texts: Sequence[str],
    found: list[MappedColumn],
    vocabulary: Vocabulary,
    said: Collection[int],
) -> list[MappedColumn]:
    """Return the columns that carry facts, settled by their company.

    Parameters
    ----------
    grid : Grid
        The sheet.
    last : int
        Lowest row of its header, from 0.
    texts : sequence of str
        Heading of each column.
    found : list of MappedColumn
        What the headings say.
    vocabulary : Vocabulary
        The declared facts.
    said : collection of int
        Columns, from 0, of which somebody said what they carry.
    """
    below = [row for row in grid.rows[last + 1 :] if any(cell not in ("", None) for cell in row)]
    found = [_with_number_of_leaves(column, below) for column in found]
    found = _feet_and_inches(found, vocabulary)
    by_target: dict[Target, list[MappedColumn]] = {}
    for column in found:
        by_target.setdefault(column.target, []).append(column)
    dropped: set[int] = set()
    for target, claimers in by_target.items():
        if len(claimers) > 1:
            kept = _settled(target, claimers, below, vocabulary, said)
            dropped |= {column.index for column in claimers} - {column.index for column in kept}
    found = [column for column in found if column.index not in dropped]
    ticked = _ticked(below, texts, found, vocabulary, said)
    return sorted((*found, *ticked), key=lambda column: column.index)


def may_stand_twice(columns: Collection[MappedColumn]) -> bool:
    """Tell whether several columns may carry one fact: ticks under its words, and remarks."""
    return all(column.means for column in columns) or all(column.target.attribute in _JOINED for column in columns)


def joins(target: Target) -> bool:
    """Tell whether what several columns say of a fact is joined."""
    return target.attribute in _JOINED


def _at(row: Sequence[object], index: int) -> str:
    return as_text(row[index]).strip() if index < len(row) else ""


def _cells(below: Sequence[Sequence[object]], index: int) -> Counter[str]:
    """Return the different filled cells of a column, with how often each stands there."""
    return Counter(text for row in below if (text := _at(row, index)))


def _with_number_of_leaves(column: MappedColumn, below: Sequence[Sequence[object]]) -> MappedColumn:
    if column.target != _FORM or plain_word(column.header) not in _LEAVES:
        return column
    cells = [text for text in _cells(below, column.index) if not is_stroke(text)]
    return replace(column, means=tuple(_FORMS.items())) if cells and _FORMS.keys() >= set(cells) else column


def _feet_and_inches(found: list[MappedColumn], vocabulary: Vocabulary) -> list[MappedColumn]:
    """Make one column of two that stand side by side and give one length in feet and in inches."""
    settled: list[MappedColumn] = []
    for column in found:
        before = settled[-1] if settled else None
        attribute = vocabulary.attribute(column.target)
        if (
            before is not None
            and attribute is not None
            and attribute.kind == "length"
            and (before.target, before.index + 1) == (column.target, column.index)
            and (before.unit, column.unit) == ("ft", "in")
        ):
            settled[-1] = replace(before, inches=column.index)
        else:
            settled.append(column)
    return settled


def in_feet_and_inches(feet: object, inches: object) -> object:
    """Return one length of a cell of feet and one of inches.

    Examples
    --------
    >>> [in_feet_and_inches(*cells) for cells in ((3, 0), ("2", "8 1/2"), ("", ""), ("-", 6))]
    ["3' 0 in", "2' 8 1/2 in", '', '6 in']
    """
    told = ["" if is_stroke(cell) else as_text(cell).strip() for cell in (feet, inches)]
    parts = [f"{text}{mark}" for text, mark in zip(told, ("'", " in"), strict=True) if text]
    return " ".join(parts)


def _settled(
    target: Target,
    claimers: list[MappedColumn],
    below: Sequence[Sequence[object]],
    vocabulary: Vocabulary,
    said: Collection[int],
) -> list[MappedColumn]:
    """Return those of several columns that carry a fact: one that a person named, else the one that holds it."""
    told = [column for column in claimers if column.index in said]
    if told:
        return told if len(told) == 1 else claimers
    cells = {column.index: _cells(below, column.index) for column in claimers}
    filled = [column for column in claimers if cells[column.index]]
    if len(filled) < 2:
        return filled or claimers[:1]
    attribute = vocabulary.attribute(target)
    if target == MARK:
        # A type's mark stands in many rows, a door's in one.
        alone = [column for column in filled if max(cells[column.index].values()) == 1]
        most = max(sum(cells[column.index].values()) for column in filled)
        alone = [column for column in alone if sum(cells[column.index].values()) == most]
        return alone if len(alone) == 1 else filled
    if attribute is not None and target.attribute in _FIRST_WORD:
        words = [plain_word(word) for word in (attribute.label, attribute.name, *attribute.synonyms)]
        return [min(filled, key=lambda column: _rank(plain_word(column.header), words))]
    if attribute is None or attribute.kind != "choice":
        return filled
    shares = {column.index: _share_read(attribute, cells[column.index]) for column in filled}
    held = [column for column in filled if shares[column.index] >= _MOST_READ]
    others = [column for column in filled if shares[column.index] <= _FEWEST_READ]
    return held if len(held) == 1 and len(held) + len(others) == len(filled) else filled


def _rank(word: str, words: Sequence[str]) -> int:
    return words.index(word) if word in words else len(words)


def _share_read(attribute: Attribute, cells: Mapping[str, int]) -> float:
    """Return which share of the different words of a column are words of a fact; marks of emptiness are none."""
    read = CellReader(attribute, None).read
    words = [cell for cell in cells if not marks_emptiness(cell)]
    known = 0
    for word in words:
        try:
            known += read(word).value is not None
        except CellError:
            known += unclear_word(attribute, word) is not None
    return known / len(words) if words else 0.0


def _ticked(
    below: Sequence[Sequence[object]],
    texts: Sequence[str],
    found: Sequence[MappedColumn],
    vocabulary: Vocabulary,
    said: Collection[int],
) -> list[MappedColumn]:
    """Return the columns that are headed by words of one fact which no other column carries, and ticked."""
    carried = {column.target for column in found}
    taken = {column.index for column in found} | set(said)
    free = {index: text for index, text in enumerate(texts) if text and index not in taken}
    ticked: list[MappedColumn] = []
    for target in _TICKED:
        attribute = vocabulary.attribute(target)
        if attribute is None or target in carried:
            continue
        words = {index: word for index, text in free.items() if (word := _word_of(attribute, text))}
        words = {index: word for index, word in words.items() if _is_ticked(_cells(below, index))}
        filled = [index for index in words if _cells(below, index)]
        if len(words) < 2 or not filled or len(set(words.values())) < len(words):
            continue
        for index, word in words.items():
            means = tuple((tick, word) for tick in sorted(_TICKS))
            ticked.append(MappedColumn(index, texts[index], target, "", means=means))
            del free[index]
    return ticked


def _word_of(attribute: Attribute, heading: str) -> str:
    """Return the word of a choice that a heading is, behind the fact's own name where that stands above it."""
    read = CellReader(attribute, None).read
    words = heading.split()
    for first in range(len(words)):
        above = plain_word(" ".join(words[:first]))
        if above and above not in {plain_word(each) for each in (attribute.label, *attribute.synonyms)}:
            continue
        text = " ".join(words[first:])
        if not above and text.isdecimal():
            continue
        try:
            value = read(text).value
        except CellError:
            continue
        if value is not None:
            return text
    return ""


def _is_ticked(cells: Collection[str]) -> bool:
    return all(cell.casefold() in _TICKS or is_stroke(cell) or cell.casefold() in ("no", "n", "0") for cell in cells)


def meant_by_heading(column: MappedColumn, cells: Sequence[object]) -> tuple[list[object], int]:
    """Return the cells of a column as its heading says them, and how many it changed.

    Examples
    --------
    >>> column = MappedColumn(3, "LHR", Target("opening", "hand"), "", means=(("x", "LHR"),))
    >>> meant_by_heading(column, ["X", "", "-"])
    (['LHR', '', ''], 1)
    """
    means = dict(column.means)
    told: list[object] = [means.get(as_text(cell).strip().casefold(), "") for cell in cells]
    return told, sum(1 for cell in told if cell)
