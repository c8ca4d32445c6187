"""The cells of a survey sheet read into facts, column by column.

Columns repeat themselves, so each different cell is read once and the rows are filled from that. Here belong refused
cells, assumed units and values that stand apart from their column. How rows become openings stands in `survey_rows`.
"""

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import zip_longest
from typing import Any, Final

from hwsched.attributes import (
    Attribute,
    CellError,
    CellReader,
    Unclear,
    as_text,
    show_value,
    unclear_word,
    within_limits,
)
from hwsched.attributes.emptiness import UNKNOWN, is_stroke
from hwsched.exchange.problems import WITHOUT_UNIT
from hwsched.exchange.survey.column import LEAVES, Column, bare_unit_of, hashable, keep, say_assumed
from hwsched.exchange.survey.company import in_feet_and_inches, meant_by_heading
from hwsched.exchange.survey.ditto import as_above, filled_down
from hwsched.exchange.survey.frame_rating import settle_frame_rating
from hwsched.exchange.survey.grid import Grid
from hwsched.exchange.survey.mapping import MARK, MappedColumn, SheetMapping, Target
from hwsched.exchange.survey.near_words import with_near_words
from hwsched.exchange.survey.pairs import leaf_width, pair_measures, unequal_leaves
from hwsched.exchange.survey.sheet import (
    SheetFacts,
    ask,
    assume,
    fill_merged,
    fill_places,
    refuse,
    refuse_cell,
    refuse_doubtful,
    refuse_header,
    rows_with_content,
)
from hwsched.exchange.survey.signs import settle, shown
from hwsched.exchange.survey.sizes import ask_about_pairs, read_sizes
from hwsched.exchange.survey.words import LOCK_FACTS, Vocabulary
from hwsched.quantities import (
    MM_PER_INCH,
    SHORTHAND,
    BareUnit,
    One,
    Pair,
    ReadingError,
    Size,
    plain_text,
    read_length,
    side_in_digits,
    suspicious_in_column,
)
from hwsched.stopping import ask_stop
from hwsched.survey import LEAF

_WIDTH: Final = LEAF.attribute("width_mm")
_HEIGHT: Final = LEAF.attribute("height_mm")
_NUMERIC: Final = frozenset({"length", "number", "integer"})
_BARE: Final = re.compile(r"[0-9]+(?:\.[0-9]+)?|[0-9]+ [0-9]+/[0-9]+")
_TWO_OF: Final = re.compile(r"2 ?(?:x|no\.?|nr\.?) ?(?P<behind>.+)|(?P<before>.+?) ?x ?2", re.IGNORECASE)
"""Two leaves of a width; as a size it would be 2 wide or 2 high."""
_DECIMAL: Final = re.compile(r"[0-9]+(?:\.[0-9]+)?")
_GROUPS: Final = re.compile(r"[0-9]{1,3}(?:[ \u00a0\u202f][0-9]{3})+(?:[.,][0-9]+)?")
"""Thousands set apart by a blank, as much of the metric world writes them; in inches 1 016 is no number."""
_NUMERAL: Final = re.compile(r"[0-9][0-9.,]*")
_NAMES: Final = frozenset({"building", "level", "room_from", "room_to"})
PLACES: Final = (Target("opening", "building"), Target("opening", "level"))
"""Facts that lists give once for all rows below."""
_NEAR: Final = 4.0
"""Columns whose largest value is within this factor of the smallest hold nothing that stands apart."""


def read_columns(
    grid: Grid,
    mapping: SheetMapping,
    vocabulary: Vocabulary,
    bare_unit: BareUnit | None,
    *,
    as_typed: bool = False,
    last_row: int | None = None,
    decimal: str = "",
    pairs: str = "",
) -> SheetFacts:
    """Read the mapped columns of a sheet.

    Parameters
    ----------
    grid : Grid
        The sheet.
    mapping : SheetMapping
        Which column carries which fact.
    vocabulary : Vocabulary
        The declarations behind the targets.
    bare_unit : {"in", "ft", "mm", "cm", "m"} or None
        Unit of lengths without one, where the header names none.
    as_typed : bool
        Take values that stand apart from their column without asking.
    last_row : int or None
        Last row of the table, where the user says it.
    decimal : {"", "comma", "point"}
        Mark before the decimals of numbers that are texts.
    pairs : {"", "leaf", "both"}
        What widths of pairs are, which do not say it.

    Returns
    -------
    SheetFacts
        With every refused cell by name.
    """
    sheet = rows_with_content(grid, mapping, last_row)
    cells = list(zip_longest(*(grid.rows[row] for row in sheet.rows), fillvalue=""))
    fill_merged(sheet, mapping, cells)
    for column in mapping.columns:
        if column.index >= len(cells):
            continue
        attribute = vocabulary.attribute(column.target)
        is_length = attribute is None or attribute.kind == "length"
        unit = column.unit or (bare_unit if is_length else None)
        numeric = attribute is None or attribute.kind in _NUMERIC
        ask_stop()
        counts = Counter(cells[column.index])
        told = _as_meant(sheet, column, cells, attribute, counts)
        if is_length and unit == "mm" and any(_without_blanks(cell) is not cell for cell in counts):
            told = [_without_blanks(cell) for cell in told]
        if decimal and numeric:
            told = [in_points(cell, decimal) for cell in told]
        reading = Column(sheet, column, told, pairs, counts if told is cells[column.index] else None)
        if attribute is None:
            read_sizes(reading, unit)
        else:
            _read_facts(reading, attribute, unit, as_typed=as_typed)
    refuse_doubtful(sheet, mapping)
    settle_frame_rating(sheet)
    fill_places(sheet)
    return sheet


def _without_blanks(cell: object) -> object:
    if isinstance(cell, str) and _GROUPS.fullmatch(cell.strip()):
        return "".join(cell.split())
    return cell


def _as_meant(
    sheet: SheetFacts,
    column: MappedColumn,
    cells: Sequence[Sequence[object]],
    attribute: Attribute | None,
    different: Iterable[object],
) -> Sequence[object]:
    """Return the cells of a column, each ``different`` one of which is named, as heading, inches and rows above say."""
    told: Sequence[object] = cells[column.index]
    if column.means:
        told, count = meant_by_heading(column, told)
        words = ", ".join(dict.fromkeys(word for _, word in column.means))
        if count:
            assume(sheet, column, f"read by its heading: {words}", count)
        return told
    if column.inches is not None and column.inches < len(cells):
        told = [in_feet_and_inches(feet, inch) for feet, inch in zip(told, cells[column.inches], strict=True)]
        assume(sheet, column, "feet and inches of two columns taken together", sum(1 for cell in told if cell))
    if column.target == MARK:
        # A stroke for a mark is none: the row is no further one of the opening above either.
        strokes = {cell for cell in set(told) if isinstance(cell, str) and not cell[:1].isdigit() and is_stroke(cell)}
        if strokes:
            sheet.apart |= {entry for entry, cell in enumerate(told) if cell in strokes}
            told = ["" if cell in strokes else cell for cell in told]
        told, count = without_decimals(told)
        if count:
            assume(sheet, column, "marks that a program wrote as 101.0 taken as 101", count)
        return told
    if column.target in PLACES:
        told, count = filled_down(told)
        if count:
            assume(sheet, column, "blank cells taken as what stands above them, once for its rows", count)
    # A remark may say "same"; no room and no building is called so.
    in_text = attribute is not None and attribute.kind == "text" and column.target.attribute not in _NAMES
    told, dittos = as_above(told, in_text=in_text, different=different if told is cells[column.index] else None)
    if dittos:
        assume(sheet, column, "ditto marks taken as what stands above them", dittos)
    return told


def without_decimals(cells: Sequence[object]) -> tuple[Sequence[object], int]:
    """Return marks without the .0 that programs write behind whole numbers, where every number among them has it.

    Examples
    --------
    >>> without_decimals(["101.0", "A-3", "102.0"]), without_decimals(["101.0", "102"])
    ((['101', 'A-3', '102'], 2), (['101.0', '102'], 0))
    """
    numbers = {cell for cell in cells if isinstance(cell, str) and cell[:1].isdigit() and _DECIMAL.fullmatch(cell)}
    if not numbers or not all(cell.endswith(".0") for cell in numbers):
        return cells, 0
    told = [cell.removesuffix(".0") if isinstance(cell, str) and cell in numbers else cell for cell in cells]
    return told, sum(1 for cell in cells if cell in numbers)


def in_points(cell: object, decimal: str) -> object:
    """Return a text with the decimals of its numbers behind a point and no mark between thousands.

    Examples
    --------
    >>> told = (("1.219,5 mm", "comma"), ("1,219.5", "point"), ("1,219", "comma"), (3.5, "point"))
    >>> [in_points(cell, decimal) for cell, decimal in told]
    ['1219.5 mm', '1219.5', '1.219', 3.5]
    """
    if not isinstance(cell, str):
        return cell
    groups, mark = (".", ",") if decimal == "comma" else (",", ".")
    return _NUMERAL.sub(lambda match: match[0].replace(groups, "").replace(mark, "."), cell)


def _read_facts(reading: Column, attribute: Attribute, unit: str | None, *, as_typed: bool) -> None:
    sheet, column = reading.sheet, reading.column
    read = CellReader(attribute, unit).read
    cells = hashable(reading.cells)
    counts = reading.counts if reading.counts is not None and cells is reading.cells else Counter(cells)
    memo: dict[object, Any] = {}
    errors: dict[object, CellError] = {}
    assumed: dict[object, str] = {}
    about: list[object] = []
    two_leaves: set[object] = set()
    unclear: dict[object, Unclear] = {}
    of_pairs: list[object] = []
    unequal: dict[object, tuple[float, float]] = {}
    try:
        signs = settle(attribute, column, counts, lambda cell: read(cell).value)
    except CellError as error:
        # An answer that the fact cannot have is the column's fault, not that of each of its cells.
        refuse_header(sheet, column, error)
        return
    # Each different cell is read once: a column of ten thousand openings has some tens of values.
    for cell in counts:
        if cell in signs.values:
            memo[cell] = signs.values[cell]
            continue
        try:
            found = read(cell)
        except CellError as error:
            if _is_width(attribute, column.target) and (each := unequal_leaves(cell, bare_unit_of(unit))) is not None:
                memo[cell], unequal[cell] = None, each
                two_leaves.add(cell)
                continue
            leaf_mm = _leaf_of_pair(cell, attribute, column.target, unit)
            pair = pair_measures(cell, bare_unit_of(unit)) if _is_width(attribute, column.target) else None
            if pair is not None:
                leaf_mm = leaf_width(pair[0], reading.pairs)
            memo[cell] = leaf_mm
            if leaf_mm is not None or pair is not None:
                two_leaves.add(cell)
                if leaf_mm is None:
                    of_pairs.append(cell)
            elif (feet := _trade_digits(cell, attribute)) is not None:
                memo[cell], assumed[cell] = feet, SHORTHAND
            elif (word := unclear_word(attribute, cell)) is not None and word.readings:
                unclear[cell] = word
            else:
                errors[cell] = error
            continue
        memo[cell] = found.value
        if found.assumed_unit is not None:
            assumed[cell] = found.assumed_unit
        if found.approximate:
            about.append(cell)
    values = list(map(memo.__getitem__, cells))
    keep(reading, column.target, values)
    for place, slot in enumerate(("active", "inactive") if unequal else ()):
        told = [unequal[cell][place] if cell in unequal else None for cell in cells]
        keep(reading, replace(column.target, slot=slot), told)
    if two_leaves:
        keep(reading, LEAVES, [2 if cell in two_leaves else None for cell in cells])
    if errors:
        errors = {
            cell: with_near_words(_without_unit(error, attribute, unit), attribute) for cell, error in errors.items()
        }
        for entry, cell in enumerate(cells):
            if (error_of := errors.get(cell)) is not None:
                refuse_cell(sheet, entry, column, error_of)
    say_assumed(reading, assumed, counts)
    if signs.asked:
        doubtful = set(signs.asked)
        entries = [entry for entry, cell in enumerate(cells) if cell in doubtful]
        ask(sheet, column, shown(signs.asked, counts), entries, signs.answers)
    _ask_about_words(reading, unclear, counts)
    ask_about_pairs(reading, of_pairs)
    for name in dict.fromkeys(name for also in signs.also.values() for name, _ in also):
        said_of = {cell: value for cell, also in signs.also.items() for each, value in also if each == name}
        target = Target(column.target.entity, name, column.target.slot)
        keep(reading, target, [said_of.get(cell) for cell in cells])
    for cell in signs.answered:
        said = show_value(attribute, memo[cell]) if memo[cell] is not None else UNKNOWN
        said += "".join(f", {name} {value}" for name, value in signs.also.get(cell, ()))
        assume(sheet, column, f'"{as_text(cell).strip()}" taken as {said}, as was said', counts[cell])
    if about:
        assume(sheet, column, "measures said to be approximate taken as they are", sum(counts[c] for c in about))
    if not as_typed and _is_watched(attribute, column.target):
        _ask_about_strays(reading, values, memo, assumed)


def _ask_about_words(reading: Column, unclear: Mapping[object, Unclear], counts: Mapping[Any, int]) -> None:
    """Ask what each word of several meanings means, once however many cells hold it, with all that it may mean."""
    cells = hashable(reading.cells)
    by_word: dict[str, list[object]] = {}
    for cell, word in unclear.items():
        by_word.setdefault(word.word, []).append(cell)
    for of_word in by_word.values():
        held = set(of_word)
        entries = [entry for entry, cell in enumerate(cells) if cell in held]
        answers = (UNKNOWN, *(each.label for each in unclear[of_word[0]].readings))
        text = as_text(of_word[0]).strip()
        ask(reading.sheet, reading.column, shown(of_word, counts), entries, answers, "word", text)


def _leaf_of_pair(cell: object, attribute: Attribute, target: Target, unit: str | None) -> float | None:
    """Return the width of one leaf where the column of widths says 2(3'-0"), or 2 x 915, which as a size is none."""
    if not _is_width(attribute, target) or not isinstance(cell, str):
        return None
    bare = bare_unit_of(unit)
    try:
        found = read_length(cell, bare)
    except ReadingError:
        found = None
    if isinstance(found, Pair):
        return found.leaf_mm if within_limits(_WIDTH, found.leaf_mm) else None
    told = _TWO_OF.fullmatch(plain_text(cell).strip())
    if told is None or (isinstance(found, Size) and _of_a_leaf(found)):
        return None
    try:
        inner = read_length(told["before"] or told["behind"], bare)
    except ReadingError:
        return None
    return inner.mm if isinstance(inner, One) and within_limits(_WIDTH, inner.mm) else None


def _of_a_leaf(size: Size) -> bool:
    return within_limits(_WIDTH, size.width_mm) and within_limits(_HEIGHT, size.height_mm)


def _without_unit(error: CellError, attribute: Attribute, unit: str | None) -> CellError:
    """Return the refusal of a number for want of a unit as that of its column: it is one question, not one a number."""
    if unit is not None or attribute.kind != "length" or not _BARE.fullmatch(error.read.strip()):
        return error
    accepted = "a unit for all of them, or one in each cell, such as 914 mm or 36 in"
    return CellError(error.read, WITHOUT_UNIT, accepted)


def _trade_digits(cell: object, attribute: Attribute) -> float | None:
    """Return the length in mm of 3-0 or 6/8 where nothing else than feet and inches can be as long as a leaf."""
    if attribute not in (_WIDTH, _HEIGHT) or not isinstance(cell, str):
        return None
    side = side_in_digits(plain_text(cell).strip())
    mm = side.total_inches * MM_PER_INCH if side is not None else None
    return mm if mm is not None and within_limits(attribute, mm) else None


def _is_width(attribute: Attribute, target: Target) -> bool:
    return attribute is _WIDTH and not target.slot


def _is_watched(attribute: Attribute, target: Target) -> bool:
    """Tell whether a column holds lengths of one kind of thing: a lost digit stands out and costs a door."""
    if attribute.kind != "length" or attribute.low is None or attribute.low <= 0 or target.slot:
        return False
    return target.entity in ("opening", "leaf") or attribute.name in LOCK_FACTS


def _ask_about_strays(
    reading: Column, values: list[Any], memo: Mapping[object, Any], assumed: Mapping[object, str]
) -> None:
    """Ask about bare numbers far from the rest of their column; one with its unit typed is taken at its word."""
    known = {memo[cell] for cell in memo if memo[cell] is not None}
    # The look at the whole column is dear, and a column without spread has nothing that stands apart.
    if not assumed or not known or min(known) <= 0 or max(known) <= _NEAR * min(known):
        return
    # Only bare numbers are asked about: one typed with its unit was meant as it stands.
    strays = {values[entry] for entry in suspicious_in_column(values)}
    cells = hashable(reading.cells)
    for entry, value in enumerate(values):
        if value in strays and cells[entry] in assumed:
            message = "stands far apart from the rest of its column: perhaps a digit was lost, or a unit is missing"
            accepted = "the number as measured, with its unit"
            refuse(reading.sheet, entry, reading.column, reading.cells[entry], message, accepted)
