"""Where the header of a survey sheet stands, and which column carries which fact.

Here belong the search for the header row, headings merged over several columns, and columns that claim the same fact.
What a single heading means stands in `survey_words`.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final, Generic, TypeVar

from hwsched.attributes import as_text
from hwsched.exchange.problems import CellProblem, column_letter
from hwsched.exchange.survey.another_table import end_of
from hwsched.exchange.survey.company import may_stand_twice, settle_columns
from hwsched.exchange.survey.facts import SurveyOptions
from hwsched.exchange.survey.grid import Grid
from hwsched.exchange.survey.lines import is_rule
from hwsched.exchange.survey.mapping import (
    MARK,
    MappedColumn,
    RememberedMapping,
    SheetMapping,
    Target,
    fingerprint_of,
    header_keys,
    plain_word,
    target_of,
)
from hwsched.exchange.survey.memory import kept_cures, recall
from hwsched.exchange.survey.patterns import filled, places
from hwsched.exchange.survey.two_readings import settle_headings
from hwsched.exchange.survey.words import TYPE, Meaning, Vocabulary, is_neutral, is_of_another, is_unit, split_unit
from hwsched.quantities import BARE_UNITS

_Word = TypeVar("_Word")
_ROWS_SEARCHED: Final = 30
"""Filled rows from the top among which the header is looked for."""
_MEASURES: Final = frozenset({"width_mm", "height_mm", "size"})
_FEWEST_GROUPS: Final = 2
"""Texts in the topmost of three rows of a header."""
SHEET: Final = "sheet"
"""Place of a pattern that the sheet's name fills, where no heading is called so."""
OF_SHEET: Final = -2
_ITEM_KIND: Final = Target("existing_item", "kind")
_NO_LENGTHS: Final = frozenset({"kg", "lbf", "V", "VA", "W", "deg", "degF", "%"})
"""Units that a header of a length cannot mean; (min) or (c) may as well be a remark."""
_OF_LISTS: Final = frozenset({"mark", "building", "level", "room_from", "room_to", "notes", "position"})
"""Facts that a list of items repeats so that a person finds the opening."""
_OF_ITEM: Final = {"position": "leaf", "width_mm": "width_mm", "height_mm": "height_mm", "notes": "item_notes"}
"""What Leaf, Width, Height and Notes mean where a row is an item."""


_DIGIT: Final = re.compile(r"\d")
_LIKELY_MARKS: Final = frozenset(
    map(
        plain_word,
        (
            "number", "opening number", "id", "door id", "opening id", "ref", "reference", "door ref", "door reference",
            "item no", "code", "door code", "name", "door name", "mk", "nr", "door nr", "doors", "openings",
            "dr", "dr no", "dr number", "dr mark", "d no",
        ),
    )
)  # fmt: skip
"""Headings that are the marks' where no other heading is."""


@dataclass(frozen=True, slots=True)
class Header:
    """A header row, or two rows of which the upper groups the lower."""

    first: int
    """Topmost row, from 0."""
    last: int
    texts: tuple[str, ...]
    """Heading of each column, that of the group above it in front."""
    meanings: tuple[Meaning, ...]
    read: tuple[Meaning, ...] = ()
    """What the headings say by themselves, where the user or an earlier import says otherwise."""
    mark: str = ""
    """Pattern of the mark where it is made of several columns: it stands in a column of its own behind the last."""

    @property
    def targets(self) -> frozenset[Target]:
        """Return the facts that the header names."""
        return frozenset(meaning.target for meaning in self.meanings if meaning.target is not None)

    @property
    def has_mark(self) -> bool:
        """Tell whether one of the columns is the mark."""
        return MARK in self.targets

    @property
    def headings(self) -> tuple[str, ...]:
        """Return the headings of the file, without the one of a mark that is made of several columns."""
        return self.texts[:-1] if self.mark else self.texts

    @property
    def fingerprint(self) -> str:
        """Return what this header is known again by."""
        headings = list(self.headings)
        while self.mark and headings and not headings[-1]:
            del headings[-1]
        return fingerprint_of(headings)

    def is_items(self) -> bool:
        """Tell whether the sheet lists existing items, one a row, and says nothing of openings and leaves.

        Width and Height behind the item are the item's; Leaf says on which leaf it is, wherever it stands.
        """
        kind = next((i for i, m in enumerate(self.meanings) if m.target == _ITEM_KIND), None)
        if kind is None:
            return False
        for index, meaning in enumerate(self.meanings):
            target = meaning.target
            if target is None or target.entity == "existing_item" or target.attribute in _OF_LISTS:
                continue
            if target.entity == "opening" or target.slot or target.attribute not in _OF_ITEM or index < kind:
                return False
        return True


def find_header(grid: Grid, vocabulary: Vocabulary, options: SurveyOptions | None = None) -> Header | None:
    """Find the header of a sheet: the row, or pair of rows, that names most facts.

    Parameters
    ----------
    grid : Grid
        The sheet.
    vocabulary : Vocabulary
        Headings that are understood.
    options : SurveyOptions, optional
        Facts of columns that the user or an earlier import has given; they count as understood.

    Returns
    -------
    Header or None
        None where no row names at least two facts, or one that the user named.
    """
    options = options or SurveyOptions()
    stated = {plain_word(header) for header, target in options.columns.items() if target}
    asked = options.header_row
    best: tuple[tuple[bool, int, bool, int], Header] | None = None
    filled = [index for index, row in enumerate(grid.rows[: _ROWS_SEARCHED * 8]) if any(_text(cell) for cell in row)]
    for index in filled[:_ROWS_SEARCHED]:
        for found in _candidates(grid, index, vocabulary):
            if asked is not None and found.last + 1 != asked:
                continue
            header = _as_said(grid, found, vocabulary, options)
            by_person = sum(plain_word(text) in stated for text in header.texts)
            named = len(header.targets) + by_person
            # A row that adds nothing but leaves, kinds or units still belongs to the header.
            grouped = header.first != header.last and any(m.target and m.target.slot for m in header.meanings)
            if header.first != header.last and _adds_units(grid, header.last):
                # Never a row of the table, whatever the row above it alone would name.
                grouped, named = True, named + sum(is_unit(_text(cell)) for cell in grid.rows[header.last])
            grouped = grouped or header.last > header.first + 1 or _names_more(grid, header, vocabulary)
            # The higher row among equals: what names as much further down is a header that is repeated, or data.
            key = (header.has_mark, named, grouped, -index)
            # One known word stands in many a title; two in a row make a header, and so does what a person named.
            if (named >= 2 or asked is not None) and (best is None or key > best[0]):
                best = key, header
    return best[1] if best else None


def _as_said(grid: Grid, header: Header, vocabulary: Vocabulary, options: SurveyOptions) -> Header:
    """Return a header with the facts that the user or an earlier import gave its columns."""
    memory = recall(options.remembered, header.texts, options.plan)
    pattern = options.mark or (memory.mark if memory else "")
    composed = pattern if pattern and places_of(pattern, header.texts) else ""
    if not options.columns and memory is None and not composed:
        return replace(header, meanings=tuple(_with_likely_mark(list(header.meanings), header.texts)))
    facts = _Said(options.columns, memory.columns if memory else {})
    meanings = list(header.meanings)
    for index, key in enumerate(header_keys(header.texts)):
        said = facts.of(index, key)
        if said is not None:
            target = _checked_target(said, vocabulary) if said else None
            meanings[index] = replace(meanings[index], target=target)
    meanings = _with_likely_mark(meanings, header.texts)
    if composed:
        kept = [replace(m, target=None) if m.target == MARK else m for m in meanings]
        # Behind the longest row, whose cells beyond the header are told of too.
        blank = max(map(len, grid.rows)) - len(header.texts)
        more = (Meaning(None),) * blank
        texts = (*header.texts, *[""] * blank, composed)
        read = (*header.meanings, *more, Meaning(None))
        return replace(header, texts=texts, meanings=(*kept, *more, Meaning(MARK)), read=read, mark=composed)
    return replace(header, meanings=_giving_way(meanings, header.meanings), read=header.meanings)


def _with_likely_mark(meanings: list[Meaning], texts: Sequence[str]) -> list[Meaning]:
    """Where no heading is surely that of the marks, take one that may be it: Number is often something else's."""
    if any(meaning.target == MARK for meaning in meanings):
        return meanings
    for index, text in enumerate(texts):
        if plain_word(text) in _LIKELY_MARKS and meanings[index].target is None:
            return [*meanings[:index], replace(meanings[index], target=MARK), *meanings[index + 1 :]]
    return meanings


def places_of(pattern: str, texts: Sequence[str]) -> dict[str, int]:
    """Return the column, from 0, of each heading that a pattern of the mark names; empty where one is not there.

    The sheet's name stands in no column: `OF_SHEET`.
    """
    keys = header_keys(texts)
    letters = {plain_word(f"column {column_letter(index)}"): index for index in range(len(texts))}
    known = {**letters, **{key: index for index, key in reversed(list(enumerate(keys))) if key}}
    found = {name: known.get(plain_word(name), OF_SHEET if name == SHEET else -1) for name in places(pattern)}
    return found if found and -1 not in found.values() else {}


def compose_marks(grid: Grid, header: Header) -> None:
    """Write the marks that are made of several columns into a column behind the last heading."""
    if not header.mark:
        return
    columns = places_of(header.mark, header.headings)
    width = len(header.headings)
    above = {
        (row, c0): grid.rows[r0][c0]
        for (r0, c0), (r1, _) in grid.merged
        if c0 in columns.values() and r0 < len(grid.rows) and c0 < len(grid.rows[r0])
        for row in range(r0 + 1, r1 + 1)
    }
    for row in range(header.last + 1, len(grid.rows)):
        line = grid.rows[row]
        cells = {
            name: grid.sheet
            if index == OF_SHEET
            else as_text(above.get((row, index), line[index] if index < len(line) else "")).strip()
            for name, index in columns.items()
        }
        line += [""] * (width - len(line))
        # Where one of them is blank there is no mark: half a mark would be that of another door.
        line.append(filled(header.mark, cells.__getitem__) if all(cells.values()) else "")


def _giving_way(said: list[Meaning], read: Sequence[Meaning]) -> tuple[Meaning, ...]:
    """Where a person gave a fact to a column, another that only its heading gives it to is not read."""
    given = {after.target for after, before in zip(said, read, strict=True) if after.target != before.target}
    return tuple(
        replace(after, target=None) if after.target is not None and after == before and after.target in given else after
        for after, before in zip(said, read, strict=True)
    )


def _candidates(grid: Grid, index: int, vocabulary: Vocabulary) -> list[Header]:
    texts = [_text(cell) for cell in grid.rows[index]]
    own = [vocabulary.meaning(text) for text in texts]
    for column, above in enumerate(_parents(grid, index - 1, _above(grid, index), texts) if index else ()):
        # By its row alone W below Clear opening would be the leaf's.
        if column < len(own) and is_of_another(above) and _is_measure(own[column].target):
            own[column] = Meaning(None)
    below = [_text(cell) for cell in grid.rows[index + 1]] if index + 1 < len(grid.rows) else []
    headers = [Header(index, index, tuple(texts), tuple(own))]
    if any(below) and any(texts) and not all(is_rule(text) for text in below if text):
        below += [""] * (len(texts) - len(below))
        parents = _parents(grid, index, texts, below)
        joined = tuple(map(_joined, parents, below))
        meanings = tuple(vocabulary.meaning(c, p) for p, c in zip(parents, below, strict=True))
        headers.append(Header(index, index + 1, joined, meanings))
        headers += _with_units(grid, headers[-1], vocabulary)
        headers += _of_three(grid, index, texts, below, vocabulary)
    return headers


def _is_measure(target: Target | None) -> bool:
    return target is not None and target.entity == "leaf" and target.attribute in _MEASURES


def _above(grid: Grid, index: int) -> list[str]:
    return [_text(cell) for cell in grid.rows[index - 1]]


def _of_three(
    grid: Grid, index: int, texts: Sequence[str], below: Sequence[str], vocabulary: Vocabulary
) -> list[Header]:
    """Return the header of three rows of names, and of those with a row of units: DOOR over SIZE over W, H, T."""
    third = [_text(cell) for cell in grid.rows[index + 2]] if index + 2 < len(grid.rows) else []
    # One text alone is a title over the table.
    if not any(third) or len({text for text in texts if text}) < _FEWEST_GROUPS:
        return []
    width = max(len(texts), len(below), len(third))
    middle, lowest = ([*row, *[""] * (width - len(row))] for row in (below, third))
    heads = _parents(grid, index, texts, [m or t for m, t in zip(middle, lowest, strict=True)])
    groups = _parents(grid, index + 1, middle, lowest)
    # A heading of the second row goes no further than the one of the first above which it stands.
    for column in range(1, width):
        if not middle[column] and (heads[column] != heads[column - 1] or not groups[column - 1]):
            groups[column] = ""
    names, meanings = [], []
    for head, group, child in zip(heads, groups, lowest, strict=True):
        upper, own = (head, group) if not child else (group, child)
        meaning = vocabulary.meaning(own, upper)
        if child and is_neutral(group):
            meaning = vocabulary.meaning(child, head)
        elif child and meaning.target is None:
            meaning = vocabulary.meaning(child, f"{head} {group}".strip())
        names.append(_joined(head, _joined(group, child)))
        meanings.append(meaning)
    header = Header(index, index + 2, tuple(names), tuple(meanings))
    return [header, *_with_units(grid, header, vocabulary)]


def _with_units(grid: Grid, header: Header, vocabulary: Vocabulary) -> list[Header]:
    """Return the header with the row of units below it, where there is one below two rows of names."""
    row = header.last + 1
    units = [_text(cell) for cell in grid.rows[row]] if row < len(grid.rows) else []
    bare = [text.strip("()[] ") for text in units]
    if not any(bare) or not all(split_unit(f"x ({text})")[1] for text in bare if text):
        return []
    bare += [""] * (len(header.texts) - len(bare))
    texts = tuple(f"{text} ({unit})" if unit else text for text, unit in zip(header.texts, bare, strict=False))
    meanings = tuple(
        replace(meaning, unit=split_unit(text)[1] or meaning.unit)
        for meaning, text in zip(header.meanings, texts, strict=True)
    )
    return [Header(header.first, row, texts, meanings)]


def _names_more(grid: Grid, header: Header, vocabulary: Vocabulary) -> bool:
    """Tell whether the lower of two rows holds headings, most of them known by themselves, and so is no opening."""
    if header.first == header.last:
        return False
    texts = [text for cell in grid.rows[header.last] if (text := _text(cell))]
    known = sum(vocabulary.meaning(text).target is not None for text in texts)
    return known >= _FEWEST_GROUPS and 2 * known > len(texts) and not any(_DIGIT.search(text) for text in texts)


def _adds_units(grid: Grid, row: int) -> bool:
    """Tell whether a row holds units of the names above it, and beside them at most the second halves of some names."""
    texts = [text for cell in grid.rows[row] if (text := _text(cell))]
    units = sum(map(is_unit, texts))
    return 2 * units >= len(texts) and not any(_DIGIT.search(text) for text in texts)


def _joined(parent: str, child: str) -> str:
    """Name a column below a heading: Frame and Material are Frame Material, Leaf and Leaf width are Leaf width."""
    return child if child and plain_word(parent) in plain_word(child) else f"{parent} {child}".strip()


def _parents(grid: Grid, index: int, texts: Sequence[str], below: Sequence[str]) -> list[str]:
    """Give each column the heading above it, spread over the columns that it is merged over or stands in front of."""
    width = max(len(texts), len(below))
    parents = [*texts, *[""] * (width - len(texts))]
    merged = {c0: c1 for (r0, c0), (_, c1) in grid.merged if r0 <= index and c1 > c0 and r0 == index}
    for first, last in merged.items():
        for column in range(first + 1, min(last + 1, width)):
            parents[column] = parents[first]
    if not merged:
        # Files that cannot say what is merged, and headings simply typed over the first of their columns.
        heading = ""
        for column in range(width):
            heading = parents[column] or heading
            if column < len(below) and below[column]:
                parents[column] = heading
    return parents


def _text(cell: object) -> str:
    return " ".join(cell.split()) if isinstance(cell, str) else "" if cell is None else str(cell)


def map_columns(
    grid: Grid,
    header: Header,
    vocabulary: Vocabulary,
    options: SurveyOptions,
) -> tuple[SheetMapping, list[CellProblem]]:
    """Decide which column carries which fact.

    Parameters
    ----------
    grid : Grid
        The sheet.
    header : Header
        Its header.
    vocabulary : Vocabulary
        Headings that are understood.
    options : SurveyOptions
        What the user said of columns: their facts, units, signs, words.

    Returns
    -------
    tuple
        The mapping, and what is wrong with it: two columns for one fact, a target that does not exist.
    """
    remembered = recall(options.remembered, header.headings, options.plan)
    memory = remembered or RememberedMapping({})
    facts = _Said(options.columns, memory.columns)
    units, dashes = _Said(options.units, memory.units), _Said(options.dashes, memory.dashes)
    words = _Said(options.words, memory.words)
    meanings = _of_items(header) if header.is_items() else list(header.meanings)
    problems: list[CellProblem] = []
    found: list[MappedColumn] = []
    left_out: list[int] = []
    told: set[int] = set()
    recalled: set[int] = set()
    for index, (key, text, meaning) in enumerate(zip(header_keys(header.texts), header.texts, meanings, strict=True)):
        said = facts.of(index, key) if index < len(header.headings) else None
        target = meaning.target
        if target == MARK and said == TYPE.text():
            # The key of a table of types: what is said of it was said of the openings that refer to it.
            said = None
        if said == "":
            left_out.append(index)
        if said is not None:
            recalled.add(index)
        if said == "" or (said is not None and (options.plan is not None or facts.by_person(index, key))):
            told.add(index)
        if said is not None:
            target = _checked_target(said, vocabulary) if said else None
            if said and target is None:
                message = f"is to be taken as '{said}', which is no fact of a survey"
                problems.append(_header_problem(grid, header, index, message, "such as opening.mark or leaf.width_mm"))
        if target is not None:
            given = units.of(index, key) or ""
            unit = given or meaning.unit or (split_unit(text)[1] if said else "")
            meant = tuple((words.of(index, key) or {}).items())
            found.append(
                MappedColumn(
                    index, text, target, unit, dashes.of(index, key) or "", meant, bool(given), said=bool(said)
                )
            )
    person = {
        index for index, key in enumerate(header_keys(header.headings)) if facts.by_person(index, key) is not None
    }
    # What stands in a table below says nothing of these columns.
    own = replace(grid, rows=grid.rows[: end_of(grid.rows, header.last + 1)])
    settled = settle_headings(
        own, header.last, header.headings, _items_beside_items(found), vocabulary, person, recalled
    )
    found = settle_columns(own, header.last, header.headings, settled.columns, vocabulary, told)
    problems += _claimed_twice(grid, header, found, vocabulary)
    found, odd = _without_odd_units(grid, header, found, vocabulary)
    problems += odd
    mapping = SheetMapping(
        grid.sheet,
        header.last + 1,
        tuple(found),
        header.fingerprint,
        header.headings,
        frozenset(left_out),
        frozenset(_recalled(grid, header, vocabulary, options, found))
        if remembered and options.plan is None
        else frozenset(),
        memory.gone,
        header.mark,
        options.counts or memory.counts,
        options.decimal or memory.decimal,
        options.pairs or memory.pairs,
        options.tables or memory.tables,
        openings_in=options.openings_in or memory.openings_in,
        cures=kept_cures(options.cures, memory.cures),
        asked=tuple(settled.asked),
        by_cells=tuple(settled.notes),
    )
    return mapping, problems


def _recalled(
    grid: Grid, header: Header, vocabulary: Vocabulary, options: SurveyOptions, found: list[MappedColumn]
) -> list[int]:
    """Return the columns that would carry another fact, or none, if nothing were remembered."""
    fresh = replace(options, remembered={}, plan=None)
    by_heading = replace(header, meanings=header.read or header.meanings, read=())
    plain, _ = map_columns(grid, _as_said(grid, by_heading, vocabulary, fresh), vocabulary, fresh)
    targets = {column.index: column.target for column in plain.columns}
    return [column.index for column in found if targets.get(column.index) != column.target]


class _Said(Generic[_Word]):
    """What was said of columns: by letter before by header, by this person before by memory."""

    def __init__(self, by_user: Mapping[str, _Word], by_memory: Mapping[str, _Word]) -> None:
        self._by_user = {plain_word(header): word for header, word in by_user.items()}
        self._by_memory = by_memory

    def of(self, index: int, key: str) -> _Word | None:
        """Return what was said of a column; None where nothing was."""
        said = self.by_person(index, key)
        return said if said is not None else self._by_memory.get(key)

    def by_person(self, index: int, key: str) -> _Word | None:
        """Return what this person said of a column; None where nothing was."""
        by_letter = self._by_user.get(plain_word(f"column {column_letter(index)}"))
        return by_letter if by_letter is not None else self._by_user.get(key)


def _checked_target(text: str, vocabulary: Vocabulary) -> Target | None:
    try:
        target = target_of(text)
    except ValueError:
        # In the words that people see: Leaf width.
        return vocabulary.meaning(text).target
    return target if vocabulary.knows(target) else None


def _as_item(target: Target) -> Target | None:
    if target.entity == "existing_item" or target.attribute not in _OF_ITEM:
        return None
    return Target("existing_item", _OF_ITEM[target.attribute])


def _of_items(header: Header) -> list[Meaning]:
    """In a list of items read Leaf, Width, Height and Notes as the item's, unless the item has such a column too."""
    taken = header.targets
    meanings = []
    for meaning in header.meanings:
        item = _as_item(meaning.target) if meaning.target else None
        meanings.append(replace(meaning, target=item) if item is not None and item not in taken else meaning)
    return meanings


def _items_beside_items(found: list[MappedColumn]) -> list[MappedColumn]:
    """Where Width stands twice, once among the columns of an item, that one is the item's."""
    by_target: dict[Target, list[int]] = {}
    for place, column in enumerate(found):
        by_target.setdefault(column.target, []).append(place)
    settled = list(found)
    for target, found_at in by_target.items():
        item = _as_item(target)
        if len(found_at) != 2 or item is None or item in by_target:
            continue
        beside = [place for place in found_at if _beside_item(found, place)]
        if len(beside) == 1:
            settled[beside[0]] = replace(found[beside[0]], target=item)
    return settled


def _beside_item(found: list[MappedColumn], place: int) -> bool:
    """Tell whether a column belongs to a run that has an item's own columns in it, none of a leaf."""
    run = place
    while run > 0 and found[run - 1].target.attribute in _OF_ITEM:
        run -= 1
    before = found[run - 1].target if run else None
    return before is not None and before.entity == "existing_item" and before.attribute in (
        "kind", "face", "leaf", "x_mm", "y_mm", "projection_mm", "disposition",
    )  # fmt: skip


def _claimed_twice(grid: Grid, header: Header, found: list[MappedColumn], vocabulary: Vocabulary) -> list[CellProblem]:
    problems = []
    first: dict[Target, MappedColumn] = {}
    for column in found:
        earlier = first.setdefault(column.target, column)
        if earlier is column or may_stand_twice((earlier, column)):
            continue
        attribute = vocabulary.attribute(column.target)
        fact = attribute.label if attribute else "Size"
        message = (
            f"two columns carry the same fact, {fact}: column {column_letter(earlier.index)} ({earlier.header}) too"
        )
        problems.append(
            _header_problem(grid, header, column.index, message, "one column; rename or leave out the other")
        )
    return problems


def _without_odd_units(
    grid: Grid, header: Header, found: list[MappedColumn], vocabulary: Vocabulary
) -> tuple[list[MappedColumn], list[CellProblem]]:
    """Name the columns of lengths whose header carries the unit of something else; pass over what may be a remark."""
    problems: list[CellProblem] = []
    kept = list(found)
    for place, column in enumerate(found):
        attribute = vocabulary.attribute(column.target)
        is_length = attribute is None or attribute.kind == "length"
        if (
            not column.unit
            or column.unit in BARE_UNITS
            or not (is_length or (attribute and attribute.kind == "choice"))
        ):
            continue
        kept[place] = replace(column, unit="")
        if is_length and column.unit in _NO_LENGTHS:
            message = f"is a length, but the header gives it in {column.unit}"
            problems.append(_header_problem(grid, header, column.index, message, ", ".join(BARE_UNITS)))
    return kept, problems


def _header_problem(grid: Grid, header: Header, index: int, message: str, accepted: str) -> CellProblem:
    text = header.texts[index]
    return CellProblem(grid.file, grid.sheet, header.last + 1, column_letter(index), text, text, message, accepted)
