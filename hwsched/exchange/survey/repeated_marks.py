"""Marks of two columns: asked about where marks stand there again on each level, refused where they are half.

How such a mark is made stands in `patterns`.
"""

from collections import Counter
from collections.abc import Sequence
from typing import Final

from hwsched.attributes import as_text
from hwsched.exchange.problems import column_letter
from hwsched.exchange.survey.facts import Question
from hwsched.exchange.survey.header import SHEET, places_of
from hwsched.exchange.survey.mapping import MARK, MappedColumn, SheetMapping
from hwsched.exchange.survey.sheet import SheetFacts, refuse
from hwsched.language import to_phrase

_BESIDE: Final = ("level", "building", "room_from", "room_to")
"""Facts that may tell two doors of one number apart, the likeliest first."""
_SEVERAL_ROWS: Final = frozenset({"position", "kind"})
"""Facts of lists in which an opening has several rows."""
_SHOWN: Final = 6
AS_IT_STANDS: Final = to_phrase("all of it")


def ask_about_repeated(sheet: SheetFacts, mapping: SheetMapping) -> None:
    """Ask whether the mark is made of two columns, where it repeats itself and beside another column does not."""
    by_name = {column.target.attribute: column for column in mapping.columns if not column.target.slot}
    mark = by_name.get("mark")
    if mark is None or mapping.mark or _SEVERAL_ROWS & by_name.keys():
        return
    marks = _cells(sheet, mark)
    again = [name for name, count in Counter(marks).items() if name and count > 1]
    if not again:
        return
    for name in _BESIDE:
        column = by_name.get(name)
        if column is None:
            continue
        beside = _cells(sheet, column)
        both = [pair for pair in zip(beside, marks, strict=True) if all(pair)]
        if len(both) == len(marks) - marks.count("") and len(set(both)) == len(both):
            rows = tuple(row + 1 for row, of in zip(sheet.rows, marks, strict=True) if of in set(again))
            read = ", ".join(f'"{each}"' for each in again[:_SHOWN]) + (" ..." if len(again) > _SHOWN else "")
            pattern = f"{{{_named(column, mapping)}}}-{{{_named(mark, mapping)}}}"
            letter = column_letter(mark.index)
            answers = (AS_IT_STANDS, pattern)
            sheet.questions.append(Question(mapping.sheet, letter, mark.header, read, rows, answers, "mark"))
            return


def ask_about_sheets(sheets: Sequence[tuple[SheetFacts, SheetMapping]]) -> Question | None:
    """Ask whether the sheet is part of the mark, where marks of one sheet stand on another too, as of two buildings."""
    named = [(sheet, mapping, _mark_of(mapping)) for sheet, mapping in sheets]
    marked = [(sheet, mapping, mark) for sheet, mapping, mark in named if mark is not None and not mapping.mark]
    if len(marked) < 2 or len(marked) < len(named):
        return None
    own: list[tuple[SheetFacts, list[str]]] = []
    for sheet, mapping, mark in marked:
        marks = _cells(sheet, mark)
        known = [each for each in marks if each]
        if len(set(known)) < len(known) or _SEVERAL_ROWS & {column.target.attribute for column in mapping.columns}:
            # Within one sheet they stand there again as well: that is another question.
            return None
        own.append((sheet, marks))
    count = Counter(mark for _, marks in own for mark in marks if mark)
    again = [mark for mark, times in count.items() if times > 1]
    if not again:
        return None
    last, marks = own[-1]
    _, mapping, mark = marked[-1]
    rows = tuple(row + 1 for row, of in zip(last.rows, marks, strict=True) if count[of] > 1)
    read = ", ".join(f'"{each}"' for each in again[:_SHOWN]) + (" ..." if len(again) > _SHOWN else "")
    answers = (AS_IT_STANDS, f"{{{SHEET}}}-{{{_named(mark, mapping)}}}")
    return Question(mapping.sheet, column_letter(mark.index), mark.header, read, rows, answers, "mark")


def _mark_of(mapping: SheetMapping) -> MappedColumn | None:
    return next((column for column in mapping.columns if column.target == MARK), None)


def refuse_half_marks(sheet: SheetFacts, mapping: SheetMapping) -> None:
    """Refuse rows in which the last of several columns that make the mark is filled and another is not."""
    columns = places_of(mapping.mark, mapping.headers) if mapping.mark else {}
    mark = next((column for column in mapping.columns if column.target == MARK), None)
    if not columns or mark is None:
        return
    last = max(columns.values())
    for entry, row in enumerate(sheet.rows):
        line = sheet.grid.rows[row]
        if not line[mark.index] and last < len(line) and (cell := as_text(line[last]).strip()):
            refuse(sheet, entry, mark, cell, "is half a mark: another column of it is blank", "all columns of the mark")


def _named(column: MappedColumn, mapping: SheetMapping) -> str:
    plain = mapping.headers.count(column.header) == 1 and not set("{}") & set(column.header)
    return column.header if plain else f"column {column_letter(column.index)}"


def _cells(sheet: SheetFacts, column: MappedColumn) -> list[str]:
    index = column.index
    lines = [sheet.grid.rows[row] for row in sheet.rows]
    return [as_text(line[index]).strip() if index < len(line) else "" for line in lines]
