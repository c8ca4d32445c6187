"""Openings that are made of counts: of rows that stand for several doors, and of tables that count types by level.

How the counts are read stands in `counts` and `count_tables`; here belong the marks that are made of them, and what is
asked and refused of those.
"""

from collections import Counter
from collections.abc import Iterable
from typing import Final

from hwsched.exchange.problems import CellProblem, FileProblem
from hwsched.exchange.survey.count_tables import CountTable
from hwsched.exchange.survey.counts import ONE, counted_out, is_answer
from hwsched.exchange.survey.facts import Question, SurveyedOpening
from hwsched.exchange.survey.patterns import Numbering, is_counting
from hwsched.exchange.survey.row import Row
from hwsched.exchange.survey.rows import draft_of
from hwsched.exchange.survey.told import Draft, FileRow, row_problem
from hwsched.exchange.survey.types import Types
from hwsched.language import to_phrase

_OF_TABLES: Final = (to_phrase("not taken in"), "{type}-{level}-{n}", "{type}-{n}", "{level}-{type}{nn}")
_SHOWN: Final = 6


class Made:
    """The openings that are made of counts.

    Parameters
    ----------
    counts : str
        What a person said of rows of several doors; empty: nothing.
    held : set of str
        Marks that stand in the file.
    """

    def __init__(self, counts: str, held: set[str]) -> None:
        self.problems: list[CellProblem | FileProblem] = []
        self.questions: list[Question] = []
        self._counts = counts
        self._held = held
        self._numbering = Numbering(counts) if is_counting(counts) else None
        self._made: Counter[str] = Counter()
        self._out = 0
        if counts and not is_answer(counts):
            accepted = "one, type, or a pattern that counts, such as {mark}-{n} or {type}-{level}-{n}"
            self.problems.append(FileProblem("--counts", f"says {counts}, by which no marks can be made", "", accepted))

    def drafts_of(self, tables: Iterable[CountTable], types: Types) -> list[Draft]:
        """Return an opening for each type and place of tables of counts, with the number of its doors."""
        drafts: list[Draft] = []
        for table in tables:
            for name in table.totals:
                place = FileRow(table.grid.file, table.grid.sheet, table.header_row)
                message = f"counts of type {name} do not add up to its total"
                self.problems.append(row_problem(place, message, "counts that add up to their total"))
            if self._numbering is None:
                self._ask(table)
                continue
            for cell in table.cells:
                place = FileRow(table.grid.file, table.grid.sheet, cell.row + 1)
                opening = {"level": cell.place} if cell.place else {}
                blank = Row(
                    place, f"{cell.of_type} {cell.place}", None, False, opening, {}, {}, {}, {}, {}, cell.of_type
                )
                draft, found = draft_of(types.opening(blank))
                draft.count, draft.of_type = cell.count, cell.of_type
                self.problems += found
                drafts.append(draft)
        return drafts

    def _ask(self, table: CountTable) -> None:
        count = sum(cell.count for cell in table.cells)
        kinds = ", ".join(list(dict.fromkeys(cell.of_type for cell in table.cells))[:_SHOWN])
        rows = tuple(dict.fromkeys(cell.row + 1 for cell in table.cells))
        read = f"{count} doors of the types {kinds}"
        self.questions.append(Question(table.grid.sheet, "", "", read, rows, _OF_TABLES, "count"))
        if self._counts != ONE:
            message = f"counts {read}; how their marks are made is not said"
            accepted = "a pattern of marks, such as {type}-{level}-{n}"
            self.problems.append(FileProblem(table.grid.file, message, table.grid.sheet, accepted))

    def openings_of(self, opening: SurveyedOpening, draft: Draft) -> list[SurveyedOpening]:
        """Return the openings for which one stands: itself, or as many as it counts."""
        if draft.count is None or self._numbering is None:
            return [opening]
        if draft.count == 0:
            self._out += 1
            return []
        if draft.count == 1 and opening.mark in self._held and "{mark}" in self._counts:
            return [opening]
        found = counted_out(opening, draft.count, self._numbering, draft.of_type)
        for each in found:
            if each.mark in self._held:
                message = f"would make the mark {each.mark}, which stands in the file already"
                self.problems.append(row_problem(draft.told.place, message, "another pattern of marks"))
            self._held.add(each.mark)
        self._made[self._counts] += len(found)
        return found

    def lines(self) -> list[tuple[str, int]]:
        """Return in words what was made, each with its number of openings."""
        lines = [(f"openings made of counts, with marks as {pattern}", count) for pattern, count in self._made.items()]
        return [*lines, ("rows that count no door left out", self._out)] if self._out else lines
