"""Reading a survey file into plain values: which sheets, which header, which cells.

How rows become openings stands in `survey_rows`; what a header means in `survey_words`.
"""

from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

from hwsched.attributes import CellError, CellReader
from hwsched.exchange.problems import CellProblem, FileProblem, InputRejected, column_letter, problem_of
from hwsched.exchange.survey_facts import Assumption, SurveyOptions, SurveyRead, UnmappedColumn
from hwsched.exchange.survey_grid import Grid, read_grids
from hwsched.exchange.survey_header import Header, find_header, map_columns
from hwsched.exchange.survey_mapping import MappedColumn, RememberedMapping, SheetMapping, Target
from hwsched.exchange.survey_rows import RowFacts, gather
from hwsched.exchange.survey_words import Vocabulary
from hwsched.quantities import LengthError, One, Pair, PairSize, Size, read_length, suspicious_in_column
from hwsched.quantities.readings import BareUnit

__all__ = ["SurveyOptions", "SurveyRead", "read_survey"]

_UNIT_WORDS: Final = {"in": "inches", "ft": "feet", "mm": "millimetres", "cm": "centimetres", "m": "metres"}
_WATCHED: Final = frozenset(
    {
        ("leaf", "width_mm"),
        ("leaf", "height_mm"),
        ("leaf", "thickness_mm"),
        ("existing_item", "backset_mm"),
        ("existing_item", "cylinder_height_mm"),
    }
)
"""Facts whose bare numbers are compared with their column: a lost digit costs a door."""


@dataclass
class _Sheet:
    """What is found while a sheet is read."""

    grid: Grid
    mapping: SheetMapping
    rows: dict[int, RowFacts] = field(default_factory=dict)
    problems: list[CellProblem] = field(default_factory=list)
    assumptions: list[Assumption] = field(default_factory=list)


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
    grids = read_grids(path)
    vocabulary = Vocabulary(options.own_fields)
    chosen = _choose(grids, vocabulary, options, path.name)
    sheets: list[_Sheet] = []
    problems: list[CellProblem | FileProblem] = []
    unmapped: list[UnmappedColumn] = []
    for grid, header in chosen:
        remembered = options.remembered.get(header.fingerprint)
        mapping, wrong = map_columns(grid, header, vocabulary, options.columns, remembered)
        problems += wrong
        if wrong:
            continue
        sheet = _read_sheet(grid, mapping, vocabulary, options, remembered)
        sheets.append(sheet)
        unmapped += _unmapped(grid, header, mapping, remembered)
    gathered = gather([(sheet.grid, sheet.rows) for sheet in sheets], [p for s in sheets for p in s.problems])
    problems += gathered.problems
    names = {grid.sheet for grid, _ in chosen}
    return SurveyRead(
        file=path.name,
        openings=gathered.openings,
        rejected=gathered.rejected,
        mapping=tuple(sheet.mapping for sheet in sheets),
        assumptions=tuple(a for sheet in sheets for a in sheet.assumptions),
        problems=tuple(problems),
        unmapped=tuple(unmapped),
        passed_over=tuple(f"sheet {grid.sheet}: no openings in it" for grid in grids if grid.sheet not in names),
    )


def _choose(grids: list[Grid], vocabulary: Vocabulary, options: SurveyOptions, file: str) -> list[tuple[Grid, Header]]:
    if options.sheet is not None:
        named = [grid for grid in grids if grid.sheet == options.sheet]
        if not named:
            sheets = ", ".join(grid.sheet for grid in grids)
            raise InputRejected(
                [FileProblem(file, f"has no sheet {options.sheet}", accepted=f"one of its sheets: {sheets}")]
            )
        grids = named
    found = [(grid, header) for grid in grids if (header := find_header(grid, vocabulary, options.columns)) is not None]
    marked = [(grid, header) for grid, header in found if header.has_mark]
    mains = sorted((each for each in marked if not each[1].is_items()), key=lambda each: -len(each[1].targets))
    if not mains:
        what = "no sheet has a header row with a column of marks" if grids else "holds no sheet"
        accepted = "a header row within the first 30, such as Mark, Level, Width, Height, Thickness"
        raise InputRejected([FileProblem(file, what, accepted=accepted)])
    return [mains[0], *(each for each in marked if each[1].is_items())]


def _read_sheet(
    grid: Grid,
    mapping: SheetMapping,
    vocabulary: Vocabulary,
    options: SurveyOptions,
    remembered: RememberedMapping | None,
) -> _Sheet:
    sheet = _Sheet(grid, mapping)
    bare = options.bare_unit or (remembered.bare_unit if remembered and remembered.bare_unit else None)
    first = mapping.header_row
    for column in mapping.columns:
        attribute = vocabulary.attribute(column.target)
        unit = column.unit or (bare if attribute is None or attribute.kind == "length" else None)
        if attribute is None:
            _read_sizes(sheet, column, unit)
            continue
        _read_column(sheet, column, CellReader(attribute, unit), first, options.as_typed)
    for (row, index), message in grid.doubtful.items():
        known = next((c for c in mapping.columns if c.index == index), None)
        if known is not None and row >= first:
            sheet.problems.append(
                CellProblem(grid.file, grid.sheet, row + 1, column_letter(index), known.header, "", message)
            )
    return sheet


def _read_column(sheet: _Sheet, column: MappedColumn, reader: CellReader, first: int, as_typed: bool) -> None:
    index, target, rows = column.index, column.target, sheet.rows
    grid = sheet.grid
    read = reader.read
    bare: list[tuple[int, float]] = []
    known: list[float] = []
    assumed: dict[str, int] = {}
    watched = (target.entity, target.attribute) in _WATCHED
    for place in range(first, len(grid.rows)):
        line = grid.rows[place]
        if index >= len(line):
            continue
        cell = line[index]
        if cell == "" or cell is None:
            continue
        try:
            found = read(cell)
        except CellError as error:
            sheet.problems.append(
                problem_of(error, file=grid.file, sheet=grid.sheet, row=place + 1, column=index, header=column.header)
            )
            rows.setdefault(place, {})
            continue
        value = found.value
        if found.assumed_unit is not None:
            assumed[found.assumed_unit] = assumed.get(found.assumed_unit, 0) + 1
        if value is None:
            continue
        if watched and isinstance(value, float):
            known.append(value)
            if found.assumed_unit is not None:
                bare.append((place, value))
        facts = rows.get(place)
        if facts is None:
            rows[place] = {target: value}
        else:
            facts[target] = value
    for unit, count in assumed.items():
        text = f"numbers without a unit taken as {_UNIT_WORDS.get(unit, unit)}"
        sheet.assumptions.append(Assumption(grid.sheet, column_letter(index), column.header, text, count))
    if bare and not as_typed:
        _ask_about_strays(sheet, column, bare, known)


def _ask_about_strays(sheet: _Sheet, column: MappedColumn, bare: list[tuple[int, float]], known: list[float]) -> None:
    strays = {known[index] for index in suspicious_in_column(known)}
    for place, value in bare:
        if value not in strays:
            continue
        text = str(sheet.grid.rows[place][column.index])
        sheet.problems.append(
            CellProblem(
                sheet.grid.file, sheet.grid.sheet, place + 1, column_letter(column.index), column.header, text,
                "stands far apart from the rest of its column: perhaps a digit was lost, or a unit is missing",
                "the number as measured, with its unit",
            )
        )  # fmt: skip


def _read_sizes(sheet: _Sheet, column: MappedColumn, unit: str | None) -> None:
    grid = sheet.grid
    bare = _bare(unit)
    slot = column.target.slot
    memo: dict[object, dict[Target, Any]] = {}
    for place in range(sheet.mapping.header_row, len(grid.rows)):
        line = grid.rows[place]
        cell = line[column.index] if column.index < len(line) else ""
        if cell == "" or cell is None:
            continue
        facts = memo.get(cell)
        if facts is None:
            try:
                facts = memo[cell] = _size_facts(cell, bare, slot)
            except LengthError as error:
                sheet.problems.append(
                    CellProblem(
                        grid.file, grid.sheet, place + 1, column_letter(column.index), column.header, str(cell),
                        error.message, "width by height, such as 3-0 x 7-0, 36\" x 84\", 910 x 2110 mm",
                    )
                )  # fmt: skip
                sheet.rows.setdefault(place, {})
                continue
        sheet.rows.setdefault(place, {}).update(facts)


def _bare(unit: str | None) -> BareUnit | None:
    return next((known for known in ("in", "ft", "mm", "cm", "m") if known == unit), None)


def _size_facts(cell: object, bare: BareUnit | None, slot: str) -> dict[Target, Any]:
    read = read_length(cell, bare)
    if isinstance(read, Size):
        return {Target("leaf", "width_mm", slot): read.width_mm, Target("leaf", "height_mm", slot): read.height_mm}
    if isinstance(read, PairSize):
        return {
            Target("leaf", name, leaf): value
            for leaf in ("active", "inactive")
            for name, value in (("width_mm", read.width_mm), ("height_mm", read.height_mm))
        }
    if isinstance(read, Pair):
        return {Target("leaf", "width_mm", leaf): read.leaf_mm for leaf in ("active", "inactive")}
    if isinstance(read, One):
        raise LengthError(str(cell), "is one length, and a size has two", "width by height")
    raise LengthError(str(cell), "is a range, and a size has two lengths", "width by height")


def _unmapped(
    grid: Grid, header: Header, mapping: SheetMapping, remembered: RememberedMapping | None
) -> list[UnmappedColumn]:
    taken = {column.index for column in mapping.columns}
    found = []
    for index, text in enumerate(header.texts):
        if index in taken:
            continue
        filled = sum(1 for row in grid.rows[mapping.header_row :] if index < len(row) and row[index] not in ("", None))
        if text or filled:
            found.append(UnmappedColumn(grid.sheet, column_letter(index), text, filled, remembered is not None))
    return found
