"""Which sheet of a survey file is what: openings, lists of existing items, tables of types, counts of types by level.

The sheet of openings is the one whose header names most, with those of the same header or one a level; what the others
are follows from their headers and from the names that stand in them.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from hwsched.attributes import CellError, CellReader, as_text
from hwsched.exchange.problems import FileProblem, InputRejected
from hwsched.exchange.survey.count_tables import CountTable, find_counts, levels_beside
from hwsched.exchange.survey.counts import quantity_column
from hwsched.exchange.survey.facts import Question, SurveyOptions
from hwsched.exchange.survey.grid import Grid
from hwsched.exchange.survey.header import Header, find_header
from hwsched.exchange.survey.lines import line_kind
from hwsched.exchange.survey.mapping import MARK, plain_word
from hwsched.exchange.survey.memory import recall
from hwsched.exchange.survey.side_by_side import blocks_of
from hwsched.exchange.survey.two_readings import fits_otherwise
from hwsched.exchange.survey.two_tables import cuts, place_of, question
from hwsched.exchange.survey.words import TYPE, Meaning, Vocabulary, is_of_types

_FEWEST_FACTS: Final = 2
"""Facts beside the mark with which a sheet that is not the best one is worth speaking of."""
_PLACES: Final = frozenset({"level", "building", "room_from", "room_to", "notes", "of_type", "form", "construction"})
"""Facts that a list of openings gives as well, however little it says: they make no table of types."""
_SHARE: Final = 0.6
"""Of the cells of a column of types that must be names of types."""

Found = tuple[Grid, Header]


@dataclass(slots=True)
class Sheets:
    """The sheets of a file by what they are."""

    openings: list[Found]
    lists: list[Found] = field(default_factory=list)
    """Of existing items."""
    types: list[Found] = field(default_factory=list)
    """Tables of types, with the type's name in place of the mark."""
    counts: list[CountTable] = field(default_factory=list)
    passed_over: list[str] = field(default_factory=list)
    others: tuple[str, ...] = ()
    """Names of sheets without anything like openings."""
    said: list[tuple[str, str]] = field(default_factory=list)
    """Sheet and what it was taken as, where that does not follow from its header alone."""
    questions: list[Question] = field(default_factory=list)
    tables: str = ""
    """What becomes of a table of types in the sheet of the openings, now or at an earlier import."""


def choose_sheets(grids: Sequence[Grid], vocabulary: Vocabulary, options: SurveyOptions, file: str) -> Sheets:
    """Choose what each sheet is.

    Raises
    ------
    InputRejected
        Where none has a header with marks, nor types that are counted.
    """
    grids, parted = _in_tables(grids, vocabulary, options)
    found = {grid.sheet: header for grid in grids if (header := find_header(grid, vocabulary, options))}
    headed = [(grid, found[grid.sheet]) for grid in grids if grid.sheet in found]
    marked = [each for each in headed if each[1].has_mark]
    lists = [each for each in marked if each[1].is_items() and each[0].sheet != options.sheet]
    mains = [each for each in marked if each not in lists]
    if not mains and options.sheet is None:
        # A file of items alone tells of openings too, if only their marks.
        mains, lists = lists, []
    types = _tables_of_types(headed, mains, vocabulary, options.sheet)
    held = {grid.sheet for grid, _ in types}
    mains = [each for each in mains if each[0].sheet not in held and options.sheet in (None, each[0].sheet)]
    names = {name for grid, header in types for name in _names(grid, header, MARK)} | parted.names
    said = {plain_word(heading) for heading in (*options.columns, *options.words)}
    mains = [(grid, _referring(grid, header, names, vocabulary, said)) for grid, header in mains]
    used = {grid.sheet for grid, _ in (*mains, *lists, *types)}
    counts = [table for grid in grids if grid.sheet not in used and (table := find_counts(grid, names))]
    counts += [table for grid, header in types if (table := _counts_beside(grid, header))]
    if not mains and not counts:
        raise InputRejected([_no_header(file, grids, found, options)])
    chosen = Sheets([], lists, types, counts, parted.passed_over, questions=parted.questions, tables=parted.tables)
    if mains:
        chosen.openings = [block for grid, header in _alike(mains) for block in blocks_of(grid, header)]
    read = {grid.sheet for grid, _ in (*chosen.openings, *lists, *types)} | {table.grid.sheet for table in counts}
    others = []
    for grid in grids:
        if grid.sheet in read or grid.sheet == options.sheet:
            continue
        header = found.get(grid.sheet)
        if header is not None and header.has_mark and len(header.targets) > _FEWEST_FACTS:
            chosen.passed_over.append(
                f"sheet {grid.sheet}: looks like openings too; not read, its header is another one"
            )
        elif any(any(row) for row in grid.rows):
            others.append(grid.sheet)
    chosen.others = tuple(others)
    chosen.said = [(grid.sheet, "taken as a table of types, one a row") for grid, _ in types]
    chosen.said += [(table.grid.sheet, "taken as counts of types") for table in counts]
    return chosen


@dataclass(slots=True)
class _Parted:
    """What became of sheets with two tables."""

    passed_over: list[str] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)
    names: set[str] = field(default_factory=set)
    """Of the types, in plain form."""
    tables: str = ""


def _in_tables(grids: Sequence[Grid], vocabulary: Vocabulary, options: SurveyOptions) -> tuple[Sequence[Grid], _Parted]:
    """Cut sheets that hold a table of types beside the openings that refer to it."""
    parted = _Parted()
    if options.header_row is not None or options.last_row is not None:
        # A person says where the table is.
        return grids, parted
    whole: list[Grid] = []
    for grid in grids:
        found = _two_tables(grid, vocabulary, options)
        if found is None:
            whole.append(grid)
            continue
        (types, of_types), (openings, header) = found
        memory = recall(options.remembered, header.texts, options.plan)
        parted.tables = options.tables or (memory.tables if memory else "")
        whole.append(openings)
        parted.names |= _names(types, of_types, MARK)
        if parted.tables == "types":
            whole.append(replace(types, sheet=f"{grid.sheet}, {place_of(types)}"))
            continue
        names = list(dict.fromkeys(_cells(types, of_types, _place(of_types, MARK))))
        parted.passed_over.append(f"sheet {grid.sheet}, {place_of(types)}: a table of types, not read")
        if not parted.tables:
            parted.questions.append(question(types, names, of_types.last))
    return whole, parted


def _two_tables(grid: Grid, vocabulary: Vocabulary, options: SurveyOptions) -> tuple[Found, Found] | None:
    """Return the table of types and that of openings of a sheet that holds both."""
    for halves in cuts(grid):
        one, other = (replace(half, sheet=name) for half, name in zip(halves, ("1", "2"), strict=True))
        headed = [(half, header) for half in (one, other) if (header := find_header(half, vocabulary, options))]
        if len(headed) < 2:
            continue
        mains = [each for each in headed if each[1].has_mark]
        for table, of_types in _tables_of_types(headed, mains, vocabulary, None):
            openings = next((each for each in mains if each[0].sheet != table.sheet), None)
            names = _names(table, of_types, MARK)
            if openings is not None and _column_of(*openings, names) is not None:
                at = grid.sheet
                return (replace(table, sheet=at), of_types), (replace(openings[0], sheet=at), openings[1])
    return None


def _place(header: Header, target: object) -> int:
    return next(index for index, meaning in enumerate(header.meanings) if meaning.target == target)


def _alike(mains: list[Found]) -> list[Found]:
    best = max(mains, key=lambda each: len(each[1].targets))
    level = _is_level(best[0].sheet)
    # A book with one sheet a level has the same header on each, or nearly; another header is another list, and is
    # told, not read.
    return [
        each for each in mains if each[1].fingerprint == best[1].fingerprint or (level and _is_level(each[0].sheet))
    ]


def _is_level(sheet: str) -> bool:
    found = line_kind([sheet], 0, below=False, digits=False)
    return found is not None and found.kind == "level"


def _tables_of_types(headed: list[Found], mains: list[Found], vocabulary: Vocabulary, named: str | None) -> list[Found]:
    """Return the tables of types, their names in place of marks."""
    tables: list[Found] = []
    for grid, header in headed:
        facts = {target for target in header.targets if target.attribute not in _PLACES}
        if header.has_mark or len(facts) < _FEWEST_FACTS:
            continue
        key = _key(grid, header, vocabulary)
        if key is not None:
            tables.append((grid, _with(header, key, MARK)))
    # By content: another sheet has a column of types in which the marks of this one stand, and none of its marks.
    referring = [each for each in mains if any(is_of_types(text) for text in each[1].texts)]
    for grid, header in mains if len(mains) > 1 else ():
        if grid.sheet == named:
            continue
        names = _names(grid, header, MARK)
        if any(
            other is not grid
            and _column_of(other, seen, names) is not None
            and names.isdisjoint(_names(other, seen, MARK))
            for other, seen in referring
        ):
            tables.append((grid, header))
    return tables


def _key(grid: Grid, header: Header, vocabulary: Vocabulary) -> int | None:
    """Return the column of a sheet without marks in which each row has another type."""
    for index, text in enumerate(header.texts):
        meaning = header.meanings[index]
        if not is_of_types(text) or (meaning.target not in (None, TYPE) and _reads(grid, header, index, vocabulary)):
            continue
        cells = _cells(grid, header, index)
        if cells and len(set(cells)) == len(cells):
            return index
    return None


def _reads(grid: Grid, header: Header, index: int, vocabulary: Vocabulary) -> bool:
    """Tell whether the cells of a column are words of the fact that its heading names."""
    target = header.meanings[index].target
    attribute = vocabulary.attribute(target) if target is not None else None
    if attribute is None:
        return False
    read = CellReader(attribute, None).read
    # One letter alone is a type's name as well as an abbreviation: F is flush, and type F.
    return any(len(cell) > 1 and _is_read(read, cell) for cell in dict.fromkeys(_cells(grid, header, index)))


def _referring(grid: Grid, header: Header, names: set[str], vocabulary: Vocabulary, said: set[str]) -> Header:
    """Let a column of names of types refer to them, though its heading names a fact."""
    index = _column_of(grid, header, names) if names else _column_above(grid, header, vocabulary)
    if index is None:
        index = _column_of_names(grid, header, vocabulary, said)
    return header if index is None else _with(header, index, TYPE)


def _column_of_names(grid: Grid, header: Header, vocabulary: Vocabulary, said: set[str]) -> int | None:
    """Return a column of types whose cells are no words of the fact that its heading names: of types told elsewhere.

    Drawing programs and offices that keep their types on a drawing write it so: A, B, C, or Flush-Single 36 x 84.
    """
    for index, text in enumerate(header.texts):
        target = header.meanings[index].target
        if target is None or target in (MARK, TYPE) or not is_of_types(text) or plain_word(text) in said:
            continue
        attribute = vocabulary.attribute(target)
        cells = dict.fromkeys(_cells(grid, header, index))
        if attribute is None or attribute.kind != "choice" or _reads(grid, header, index, vocabulary):
            continue
        read = CellReader(attribute, None).read
        if not all(_is_read(read, cell) for cell in cells) and not fits_otherwise(text, cells, target, vocabulary):
            return index
    return None


def _is_read(read: Callable[[object], object], cell: str) -> bool:
    try:
        read(cell)
    except CellError:
        return False
    return True


def _column_of(grid: Grid, header: Header, names: set[str]) -> int | None:
    for index, text in enumerate(header.texts):
        target = header.meanings[index].target
        if target == MARK or (not is_of_types(text) and target != TYPE):
            continue
        cells = [plain_word(cell) for cell in _cells(grid, header, index)]
        if cells and sum(cell in names for cell in cells) >= _SHARE * len(cells):
            return index
    return None


def _column_above(grid: Grid, header: Header, vocabulary: Vocabulary) -> int | None:
    """Return a column of types that is filled just where there is no mark: the rows below are openings of that type."""
    mark = next((index for index, meaning in enumerate(header.meanings) if meaning.target == MARK), None)
    if mark is None:
        return None
    of_types = [index for index, text in enumerate(header.texts) if index != mark and is_of_types(text)]
    rows = grid.rows[header.last + 1 :] if of_types else []
    rows = [row for row in rows if any(as_text(cell).strip() for cell in row)]
    for index in of_types:
        both = [(bool(_cell(row, index)), bool(_cell(row, mark))) for row in rows]
        if (True, False) in both and (True, True) not in both and not _reads(grid, header, index, vocabulary):
            return index
    return None


def _counts_beside(grid: Grid, header: Header) -> CountTable | None:
    key = _place(header, MARK)
    carried = [index for index, meaning in enumerate(header.meanings) if meaning.target is not None]
    quantity = quantity_column(header.texts, carried)
    return levels_beside(grid, header.last + 1, header.texts, key, carried, quantity)


def _with(header: Header, index: int, target: object) -> Header:
    """Return a header with a column that carries a mark or a type, and no other one that does."""
    wanted = MARK if target == MARK else TYPE
    meanings = [replace(m, target=None) if m.target == wanted else m for m in header.meanings]
    meanings[index] = Meaning(wanted)
    return replace(header, meanings=tuple(meanings), read=header.read or header.meanings)


def _names(grid: Grid, header: Header, target: object) -> set[str]:
    index = next((i for i, meaning in enumerate(header.meanings) if meaning.target == target), None)
    return {plain_word(cell) for cell in _cells(grid, header, index)} if index is not None else set()


def _cells(grid: Grid, header: Header, index: int) -> list[str]:
    rows = grid.rows[header.last + 1 :]
    return [
        text for row in rows if line_kind(row, index, below=False, digits=False) is None and (text := _cell(row, index))
    ]


def _cell(row: Sequence[object], index: int) -> str:
    return as_text(row[index]).strip() if index < len(row) else ""


def _no_header(file: str, grids: Sequence[Grid], found: dict[str, Header], options: SurveyOptions) -> FileProblem:
    accepted = "a header row among the first 30 filled rows, such as Mark, Level, Width, Height, Thickness"
    if options.sheet is not None:
        grids = [grid for grid in grids if grid.sheet == options.sheet]
    if not any(any(row) for grid in grids for row in grid.rows):
        return FileProblem(file, "holds nothing", options.sheet or "", accepted)
    without_mark = next((grid.sheet for grid in grids if grid.sheet in found), None)
    if without_mark is not None:
        row = found[without_mark].last + 1
        message = f"row {row} looks like a header, but has no column of marks"
        return FileProblem(file, message, without_mark, "a column headed Mark, Door no or Opening")
    return FileProblem(file, "no row looks like a header with a column of marks", options.sheet or "", accepted)
