"""Reading a survey file into plain values: which sheets are openings, which are lists of items, and what they say.

What a header means stands in `survey_words`, how cells are read in `survey_columns`, how rows become openings in
`survey_rows` and `survey_openings`.
"""

from pathlib import Path
from typing import Final

from hwsched.attributes import as_text
from hwsched.exchange.problems import CellProblem, FileProblem, InputRejected, column_letter
from hwsched.exchange.survey.columns import read_columns
from hwsched.exchange.survey.facts import (
    Assumption,
    Question,
    SurveyedOpening,
    SurveyOptions,
    SurveyRead,
    UnmappedColumn,
)
from hwsched.exchange.survey.grid import Grid, read_grids
from hwsched.exchange.survey.header import Header, find_header, map_columns
from hwsched.exchange.survey.mapping import RememberedMapping, SheetMapping, header_keys, plain_word
from hwsched.exchange.survey.memory import recall
from hwsched.exchange.survey.openings import Taken, finish
from hwsched.exchange.survey.plausibility import BY_ID, with_oddities
from hwsched.exchange.survey.rows import gather
from hwsched.exchange.survey.sheet import SheetFacts, assume, unread
from hwsched.exchange.survey.words import Vocabulary
from hwsched.quantities import BARE_UNITS, BareUnit

__all__ = ["SurveyOptions", "SurveyRead", "read_survey"]

_FEWEST_FACTS: Final = 2
"""Facts beside the mark with which a sheet that is not the best one is worth speaking of."""

_SHOWN: Final = 12
"""Headings of the file that a message names."""


def read_survey(path: Path, options: SurveyOptions) -> SurveyRead:
    """Read a survey file.

    Parameters
    ----------
    path : Path
        .xlsx, .xls, .ods or .csv.
    options : SurveyOptions
        What the file does not say.

    Returns
    -------
    SurveyRead
        Openings without a problem, marks kept out, and every refused cell by name.

    Raises
    ------
    InputRejected
        Where the file as a whole cannot be read, or no sheet has a header with marks.
    """
    grids = read_grids(path, options.sheet)
    vocabulary = Vocabulary(options.own_fields)
    mains, lists, passed_over, other_sheets = _choose(grids, vocabulary, options, path.name)
    sheets: list[tuple[SheetFacts, bool]] = []
    mappings: list[SheetMapping] = []
    problems: list[CellProblem | FileProblem] = []
    unmapped: list[UnmappedColumn] = []
    for grid, header in (*mains, *lists):
        mapping, wrong = map_columns(grid, header, vocabulary, options)
        mappings.append(mapping)
        if wrong:
            problems += wrong
            continue
        remembered = recall(options.remembered, header.texts, options.plan)
        of_memory = next((unit for unit in BARE_UNITS if remembered and unit == remembered.bare_unit), None)
        # What is said now, then what was said of such a file the last time, then the project's habit.
        bare: BareUnit | None = options.bare_unit or of_memory or options.usual_unit
        sheet = read_columns(grid, mapping, vocabulary, bare, as_typed=options.as_typed, last_row=options.last_row)
        sheets.append((sheet, (grid, header) in mains))
        unmapped += _unmapped(sheet, mapping)
        _ask_about_quantities(sheet, mapping)
        _say_recalled(sheet, mapping, vocabulary, options.plan)
        passed_over += sheet.passed_over
    problems += _named_nowhere(path.name, mappings, options)
    openings, rejected, of_rows, assumed = _openings(sheets, passed_over, only_named=options.sheet is not None)
    problems += [problem for sheet, _ in sheets for problem in sheet.problems]
    problems += of_rows
    if not openings and not rejected and not problems:
        rows = "has no row below its header"
        problems.append(FileProblem(path.name, rows, mains[0][0].sheet, "rows with a mark and facts"))
    problems += _unknown_cures(path.name, options)
    openings, oddities = with_oddities(openings, options.cures)
    return SurveyRead(
        file=path.name,
        openings=openings,
        rejected=rejected,
        mapping=tuple(mappings),
        assumptions=(*(a for sheet, _ in sheets for a in sheet.assumptions), *assumed),
        problems=tuple(problems),
        unmapped=tuple(unmapped),
        passed_over=tuple(passed_over),
        other_sheets=other_sheets,
        questions=tuple(question for sheet, _ in sheets for question in sheet.questions),
        oddities=oddities,
    )


Found = tuple[Grid, Header]


def _choose(
    grids: list[Grid], vocabulary: Vocabulary, options: SurveyOptions, file: str
) -> tuple[list[Found], list[Found], list[str], tuple[str, ...]]:
    """Choose the sheets: of openings the one whose header names most, and those of the same header; all lists of items.

    Returns
    -------
    tuple
        Sheets of openings, lists of items, what is passed over, and sheets without openings.
    """
    found = {grid.sheet: header for grid in grids if (header := find_header(grid, vocabulary, options))}
    marked = [(grid, found[grid.sheet]) for grid in grids if grid.sheet in found and found[grid.sheet].has_mark]
    lists = [each for each in marked if each[1].is_items() and each[0].sheet != options.sheet]
    mains = [each for each in marked if each not in lists]
    if options.sheet is not None:
        mains = [each for each in mains if each[0].sheet == options.sheet]
    if not mains and options.sheet is None:
        # A file of items alone tells of openings too, if only their marks.
        mains, lists = lists, []
    if not mains:
        raise InputRejected([_no_header(file, grids, found, options)])
    best = max(mains, key=lambda each: len(each[1].targets))
    # A book with one sheet a level has the same header on each; another header is another list, and is told, not
    # read.
    alike = [each for each in mains if each[1].fingerprint == best[1].fingerprint]
    read = {grid.sheet for grid, _ in (*alike, *lists)}
    passed_over = []
    others = []
    for grid in grids:
        if grid.sheet in read or grid.sheet == options.sheet:
            continue
        header = found.get(grid.sheet)
        if header is not None and header.has_mark and len(header.targets) > _FEWEST_FACTS:
            passed_over.append(f"sheet {grid.sheet}: looks like openings too; not read, its header is another one")
        elif any(any(row) for row in grid.rows):
            others.append(grid.sheet)
    return alike, lists, passed_over, tuple(others)


def _no_header(file: str, grids: list[Grid], found: dict[str, Header], options: SurveyOptions) -> FileProblem:
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


def _openings(
    sheets: list[tuple[SheetFacts, bool]], passed_over: list[str], *, only_named: bool
) -> tuple[tuple[SurveyedOpening, ...], tuple[str, ...], list[CellProblem], list[Assumption]]:
    drafts, problems, skipped = gather(sheets, only_named=only_named)
    if skipped:
        passed_over.append(f"{skipped} rows in lists of items: their openings stand on another sheet")
    taken = Taken()
    openings: list[SurveyedOpening] = []
    rejected: list[str] = []
    for draft in drafts:
        opening = finish(draft, taken, problems)
        if draft.bad:
            rejected.append(draft.mark)
        else:
            openings.append(opening)
    name = sheets[0][0].grid.sheet if sheets else ""
    assumed = [Assumption(name, "", "", text, count) for text, count in taken.lines()]
    return tuple(openings), tuple(rejected), problems, assumed


_QUANTITY: Final = frozenset({"qty", "quantity", "count", "doorcount", "noofdoors", "numberofdoors", "pcs", "quan"})


def _ask_about_quantities(sheet: SheetFacts, mapping: SheetMapping) -> None:
    """Ask about rows that stand for several doors: each is one opening until they are listed one by one."""
    carried = {column.index for column in mapping.columns} | mapping.left_out
    for index, header in enumerate(mapping.headers):
        if plain_word(header) not in _QUANTITY or index in carried:
            continue
        lines = [sheet.grid.rows[row] for row in sheet.rows]
        cells = [line[index] if index < len(line) else "" for line in lines]
        many = [n for n, cell in enumerate(cells) if _several(cell)]
        if many:
            read = ", ".join(f'"{as_text(cells[n])}"' for n in many[:_SHOWN])
            rows = tuple(sheet.rows[n] + 1 for n in many)
            answers = ("one opening a row", "as many openings: list each with a mark of its own")
            sheet.questions.append(Question(mapping.sheet, column_letter(index), header, read, rows, answers))


def _several(cell: object) -> bool:
    try:
        return float(as_text(cell)) > 1
    except ValueError:
        return False


def _say_recalled(
    sheet: SheetFacts, mapping: SheetMapping, vocabulary: Vocabulary, plan: RememberedMapping | None
) -> None:
    """Say which columns are read as at an earlier import, and which of that one are not there."""
    for column in mapping.columns:
        if column.index in mapping.recalled:
            attribute = vocabulary.attribute(column.target)
            label = attribute.label if attribute else "Size"
            (count,) = unread(sheet, [column.index]).values()
            assume(sheet, column, f"taken as {label}, as at an earlier import", count)
    who = "an earlier file of this kind had" if plan is None else "the plan names"
    sheet.passed_over += [
        f"sheet {mapping.sheet}: a column {key.partition('#')[0]}, which {who}, is not there" for key in mapping.gone
    ]
    if plan is not None:
        beside = recall({}, mapping.headers, plan)
        known = beside.columns if beside else {}
        carried = {column.index for column in mapping.columns}
        sheet.passed_over += [
            f"sheet {mapping.sheet}, column {column_letter(index)} ({mapping.headers[index]}): "
            f"not covered by the plan, {'read by its heading' if index in carried else 'not read'}"
            for index, key in enumerate(header_keys(mapping.headers))
            if key and key not in known
        ]


def _named_nowhere(file: str, mappings: list[SheetMapping], options: SurveyOptions) -> list[FileProblem]:
    """Refuse what is said of a column that no sheet has: it is a slip of the pen, and would else do nothing."""
    known = {key for mapping in mappings for key in header_keys(mapping.headers)}
    known |= {plain_word(f"column {column_letter(i)}") for mapping in mappings for i in range(len(mapping.headers))}
    told = dict.fromkeys((*options.columns, *options.units, *options.dashes, *options.words))
    headers = list(dict.fromkeys(header for mapping in mappings for header in mapping.headers if header))
    accepted = ", ".join(headers[:_SHOWN]) + (" ..." if len(headers) > _SHOWN else "")
    return [
        FileProblem(file, f"has no column {header}, of which something is said", accepted=accepted)
        for header in told
        if plain_word(header) not in {plain_word(key) for key in known}
    ]


def _unknown_cures(file: str, options: SurveyOptions) -> list[FileProblem]:
    curable = ", ".join(kind.id for kind in BY_ID.values() if kind.cure)
    return [
        FileProblem(file, f"has nothing that {name} would cure", accepted=curable)
        for name in sorted(options.cures)
        if name not in BY_ID or not BY_ID[name].cure
    ]


def _unmapped(sheet: SheetFacts, mapping: SheetMapping) -> list[UnmappedColumn]:
    taken = {column.index for column in mapping.columns}
    width = max((len(mapping.headers), *(len(sheet.grid.rows[row]) for row in sheet.rows)), default=0)
    filled = unread(sheet, [index for index in range(width) if index not in taken])
    found = []
    for index, count in filled.items():
        header = mapping.headers[index] if index < len(mapping.headers) else ""
        if header or count:
            left_out = index in mapping.left_out
            found.append(UnmappedColumn(sheet.grid.sheet, column_letter(index), header, count, left_out))
    return found
