"""Reading a survey file into plain values: which sheets are openings, which are lists of items, and what they say.

What a header means stands in `survey_words`, how cells are read in `survey_columns`, how rows become openings in
`survey_rows` and `survey_openings`.
"""

from collections import Counter
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Final

from hwsched.attributes import as_text
from hwsched.exchange.problems import CellProblem, FileProblem, column_letter
from hwsched.exchange.survey.columns import read_columns
from hwsched.exchange.survey.corrections import mend_cells
from hwsched.exchange.survey.counted import Made
from hwsched.exchange.survey.counts import TYPE, quantity_column, read_counts
from hwsched.exchange.survey.facts import (
    Assumption,
    Question,
    SurveyedOpening,
    SurveyOptions,
    SurveyRead,
    UnmappedColumn,
)
from hwsched.exchange.survey.grid import Grid
from hwsched.exchange.survey.header import SHEET, compose_marks, map_columns, places_of
from hwsched.exchange.survey.likely import likely_fact
from hwsched.exchange.survey.looks import say_looks
from hwsched.exchange.survey.mapping import MARK, RememberedMapping, SheetMapping, header_keys, plain_word
from hwsched.exchange.survey.memory import NO_CURES, bare_unit_of, recall
from hwsched.exchange.survey.openings import Taken, finish
from hwsched.exchange.survey.patterns import places
from hwsched.exchange.survey.plausibility import BY_ID, with_oddities
from hwsched.exchange.survey.repeated_marks import ask_about_repeated, ask_about_sheets, refuse_half_marks
from hwsched.exchange.survey.row import rows_of
from hwsched.exchange.survey.rows import gather
from hwsched.exchange.survey.said_of_marks import CURES, ask_of_marks
from hwsched.exchange.survey.sheet import SheetFacts, assume, unread
from hwsched.exchange.survey.sheets import Sheets, choose_sheets
from hwsched.exchange.survey.shifted import CURE, find_shifted, name_shifted
from hwsched.exchange.survey.spelt_alike import ALIKE, ask_of_spellings
from hwsched.exchange.survey.turning import open_grids
from hwsched.exchange.survey.types import Types
from hwsched.exchange.survey.words import TYPE as TYPE_TARGET
from hwsched.exchange.survey.words import Vocabulary
from hwsched.quantities import BareUnit

__all__ = ["SurveyOptions", "SurveyRead", "read_survey"]

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
    vocabulary = Vocabulary(options.own_fields)
    grids, options = open_grids(path, options, vocabulary)
    mended, unmended = mend_cells(grids, options, path.name)
    chosen = choose_sheets(grids, vocabulary, options, path.name)
    passed_over = list(chosen.passed_over)
    sheets: list[tuple[SheetFacts, bool]] = []
    of_types: list[SheetFacts] = []
    of_openings: list[tuple[SheetFacts, SheetMapping]] = []
    mappings: list[SheetMapping] = []
    problems: list[CellProblem | FileProblem] = [*unmended]
    unmapped: list[UnmappedColumn] = []
    for grid, header in (*chosen.types, *chosen.openings, *chosen.lists):
        compose_marks(grid, header)
        mapping, wrong = map_columns(grid, header, vocabulary, options)
        mappings.append(mapping)
        if wrong:
            problems += wrong
            continue
        remembered = recall(options.remembered, header.headings, options.plan)
        sheet = _read_sheet(grid, mapping, vocabulary, bare_unit_of(options, remembered), options)
        say_looks(sheet, mapping)
        unmapped += _unmapped(sheet, mapping, vocabulary)
        _say_recalled(sheet, mapping, vocabulary, options.plan)
        _say_by_cells(sheet, mapping)
        if (grid, header) in chosen.types:
            of_types.append(sheet)
            mappings[-1] = _keyed_by_type(mapping)
        else:
            is_opening = (grid, header) in chosen.openings
            sheets.append((sheet, is_opening))
            if is_opening:
                of_openings.append((sheet, mapping))
                refuse_half_marks(sheet, mapping)
                read_counts(sheet, mapping)
                ask_about_repeated(sheet, mapping)
    problems += _named_nowhere(path.name, mappings, options)
    if (of_sheets := ask_about_sheets(of_openings)) is not None:
        chosen.questions.append(of_sheets)
    pattern = next((mapping.counts for mapping in mappings if mapping.counts), "")
    gathered = _openings(sheets, of_types, chosen, pattern, path.name, only_named=options.sheet is not None)
    openings, rejected, assumed = gathered.openings, gathered.rejected, gathered.assumed
    every = [*of_types, *(sheet for sheet, _ in sheets)]
    passed_over += [line for sheet in every for line in sheet.passed_over]
    passed_over += gathered.passed_over
    notes = [Assumption(each.sheet, "", "", f"cell {each.describe()}", 1) for each in mended]
    notes += [Assumption(grid.sheet, "", "", note, len(grid.rows)) for grid in grids for note in grid.notes]
    problems += [problem for sheet in every for problem in sheet.problems]
    problems += gathered.problems
    if not openings and not rejected and not problems:
        rows = "has no row below its header"
        named = chosen.openings[0][0].sheet if chosen.openings else ""
        problems.append(FileProblem(path.name, rows, named, "rows with a mark and facts"))
    problems += _unknown_cures(path.name, options)
    cures = {*options.cures, *(name for mapping in mappings for name in mapping.cures)}
    spelt, of_spellings = ask_of_spellings(openings, cures)
    apart, of_marks = ask_of_marks(spelt, cures)
    sound, oddities = with_oddities(apart, cures)
    where = sheets[0][0].grid.sheet if sheets else chosen.counts[0].grid.sheet if chosen.counts else ""
    notes += _say_cured(where, openings, apart, sound, cures - options.cures)
    return SurveyRead(
        file=path.name,
        openings=sound,
        rejected=rejected,
        mapping=tuple(mappings),
        assumptions=(*notes, *(a for sheet in every for a in sheet.assumptions), *assumed),
        problems=tuple(problems),
        unmapped=tuple(unmapped),
        passed_over=tuple(passed_over),
        other_sheets=chosen.others,
        questions=_by_letter(
            (*chosen.questions, *(question for sheet in every for question in sheet.questions), *gathered.questions),
            mappings,
        ),
        oddities=(*of_spellings, *of_marks, *oddities),
        corrections=tuple((each.sheet, each.cell, each.was, each.now, each.by) for each in mended),
    )


def _read_sheet(
    grid: Grid, mapping: SheetMapping, vocabulary: Vocabulary, bare: BareUnit | None, options: SurveyOptions
) -> SheetFacts:
    def read() -> SheetFacts:
        return read_columns(
            grid, mapping, vocabulary, bare,
            as_typed=options.as_typed, last_row=options.last_row, decimal=mapping.decimal,
            pairs=mapping.pairs,
        )  # fmt: skip

    sheet = read()
    found = find_shifted(sheet, mapping, vocabulary, bare)
    if found and CURE in options.cures:
        for shifted in found:
            grid.rows[shifted.row] = list(shifted.line)
        sheet = read()
        rows = ", ".join(str(shifted.row + 1) for shifted in found)
        text = f"values that stood one column too far moved to their headings, rows {rows}"
        sheet.assumptions.append(Assumption(grid.sheet, "", "", text, len(found)))
    elif found:
        name_shifted(sheet, found)
    return sheet


@dataclass(slots=True)
class _Gathered:
    """What became of the rows."""

    openings: tuple[SurveyedOpening, ...] = ()
    rejected: tuple[str, ...] = ()
    problems: list[CellProblem | FileProblem] = field(default_factory=list)
    assumed: list[Assumption] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)
    passed_over: list[str] = field(default_factory=list)


def _openings(
    sheets: list[tuple[SheetFacts, bool]],
    of_types: list[SheetFacts],
    chosen: Sheets,
    pattern: str,
    file: str,
    *,
    only_named: bool,
) -> _Gathered:
    found = _Gathered()
    types = Types()
    for sheet in of_types:
        for _, row in rows_of(sheet):
            if row.mark is not None:
                types.add(row.mark, row)
    drafts, of_rows, skipped = gather(
        sheets, only_named=only_named, types=types, rows_are_types=pattern == TYPE
    )  # fmt: skip
    found.problems += of_rows
    if skipped:
        found.passed_over.append(f"{skipped} rows in lists of items: their openings stand on another sheet")
    made = Made(pattern, {draft.mark for draft in drafts})
    drafts += made.drafts_of(chosen.counts, types)
    taken = Taken()
    openings: list[SurveyedOpening] = []
    rejected: list[str] = []
    problems: list[CellProblem] = []
    for draft in drafts:
        opening = finish(draft, taken, problems)
        if draft.bad:
            rejected.append(draft.mark)
        else:
            openings += made.openings_of(opening, draft)
    found.problems += [*problems, *made.problems]
    found.questions += made.questions
    found.openings, found.rejected = tuple(openings), tuple(rejected)
    name = sheets[0][0].grid.sheet if sheets else chosen.counts[0].grid.sheet if chosen.counts else ""
    found.assumed = [
        Assumption(name, "", "", text, count) for text, count in (*taken.lines(), *types.lines(), *made.lines())
    ]
    found.assumed += [Assumption(sheet, "", "", text, 1) for sheet, text in chosen.said]
    found.passed_over += [
        f"type {name}, to which {count} row{'s refer' if count > 1 else ' refers'}: no table and no row says what it is"
        for name, count in types.lacking.items()
    ]
    return found


def _keyed_by_type(mapping: SheetMapping) -> SheetMapping:
    """Return the mapping of a table of types as it is remembered: its first column is no mark."""
    columns = tuple(
        replace(column, target=TYPE_TARGET) if column.target == MARK else column for column in mapping.columns
    )
    return replace(mapping, columns=columns)


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


def _say_by_cells(sheet: SheetFacts, mapping: SheetMapping) -> None:
    """Say what became of columns whose heading has several readings, and ask where the cells do not say which."""
    counts = unread(sheet, [index for index, _ in mapping.by_cells])
    sheet.assumptions += [
        Assumption(sheet.grid.sheet, column_letter(index), mapping.headers[index], text, counts[index])
        for index, text in mapping.by_cells
    ]
    for each in mapping.asked:
        labels, facts = zip(*each.answers, strict=True)
        letter = column_letter(each.index)
        sheet.questions.append(
            Question(sheet.grid.sheet, letter, each.header, each.read, each.rows, labels, "column", "", facts)
        )


def _by_letter(questions: Iterable[Question], mappings: Iterable[SheetMapping]) -> tuple[Question, ...]:
    """Let questions of a column whose heading stands over another one too name it by its letter."""
    again = {
        (mapping.sheet, word)
        for mapping in mappings
        for word, count in Counter(map(plain_word, mapping.headers)).items()
        if count > 1
    }
    return tuple(
        replace(each, by_letter=True) if (each.sheet, plain_word(each.header)) in again else each for each in questions
    )


def _named_nowhere(file: str, mappings: list[SheetMapping], options: SurveyOptions) -> list[FileProblem]:
    """Refuse what is said of a column that no sheet has: it is a slip of the pen, and would else do nothing."""
    known = {key for mapping in mappings for key in header_keys(mapping.headers)}
    known |= {plain_word(f"column {column_letter(i)}") for mapping in mappings for i in range(len(mapping.headers))}
    told = dict.fromkeys((*options.columns, *options.units, *options.dashes, *options.words, *places(options.mark)))
    told.pop(SHEET, None)
    headers = list(dict.fromkeys(header for mapping in mappings for header in mapping.headers if header))
    accepted = ", ".join(headers[:_SHOWN]) + (" ..." if len(headers) > _SHOWN else "")
    plain = {plain_word(key) for key in known}
    problems = [
        FileProblem(file, f"has no column {header}, of which something is said", accepted=accepted)
        for header in told
        if plain_word(header) not in plain
    ]
    if options.mark and not places(options.mark):
        wanted = "headings in braces, such as {Level}-{No}"
        problems.append(FileProblem(file, f"has no mark made as {options.mark}", accepted=wanted))
    return problems


def _say_cured(
    sheet: str,
    read: Sequence[SurveyedOpening],
    named: Sequence[SurveyedOpening],
    mended: Sequence[SurveyedOpening],
    earlier: Collection[str],
) -> list[Assumption]:
    """Say how many openings are otherwise than the list has them, since a person asked for the cure of what is odd."""
    told = [
        (sum(one is not other for one, other in zip(named, mended, strict=True)), "measures mended"),
        (len({each.mark for each in read} - {each.mark for each in named}), "marks that are none, or several, mended"),
    ]
    whose = f" ({', '.join(sorted(earlier))} as at an earlier import; --cure none leaves it)" if earlier else ""
    return [Assumption(sheet, "", "", f"{text}, as was asked{whose}", count) for count, text in told if count]


def _unknown_cures(file: str, options: SurveyOptions) -> list[FileProblem]:
    known = (*(kind.id for kind in BY_ID.values() if kind.cure), CURE, *CURES, ALIKE, NO_CURES)
    curable = ", ".join(known)
    return [
        FileProblem(file, f"has nothing that {name} would cure", accepted=curable)
        for name in sorted(options.cures)
        if name not in known
    ]


def _unmapped(sheet: SheetFacts, mapping: SheetMapping, vocabulary: Vocabulary) -> list[UnmappedColumn]:
    taken = {column.index for column in mapping.columns}
    taken |= {column.inches for column in mapping.columns if column.inches is not None}
    if mapping.mark:
        taken |= set(places_of(mapping.mark, mapping.headers).values())
    if mapping.counts and (index := quantity_column(mapping.headers, taken | mapping.left_out)) is not None:
        taken.add(index)
    width = max((len(mapping.headers), *(len(sheet.grid.rows[row]) for row in sheet.rows)), default=0)
    filled = unread(sheet, [index for index in range(width) if index not in taken])
    found = []
    for index, count in filled.items():
        header = mapping.headers[index] if index < len(mapping.headers) else ""
        if header or count:
            left_out = index in mapping.left_out
            likely = "" if left_out or not header else _likely(sheet, index, mapping, vocabulary)
            found.append(UnmappedColumn(sheet.grid.sheet, column_letter(index), header, count, left_out, likely))
    return found


def _likely(sheet: SheetFacts, index: int, mapping: SheetMapping, vocabulary: Vocabulary) -> str:
    lines = (sheet.grid.rows[row] for row in sheet.rows)
    cells = Counter(as_text(line[index]).strip() for line in lines if index < len(line))
    del cells[""]
    target = likely_fact(mapping.headers[index], cells, vocabulary, {column.target for column in mapping.columns})
    attribute = vocabulary.attribute(target) if target is not None else None
    return attribute.label if attribute is not None else ""
