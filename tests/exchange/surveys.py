"""Small survey files for the tests of reading."""

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from openpyxl import Workbook

from hwsched.exchange.survey.book import SurveyOptions, read_survey
from hwsched.exchange.survey.facts import SurveyedOpening, SurveyRead


def write(path: Path, sheets: dict[str, Sequence[Sequence[Any]]], merged: Iterable[str] = ()) -> Path:
    """Write a workbook; merged ranges are those of its first sheet."""
    book = Workbook()
    book.remove(book.active)
    for name, rows in sheets.items():
        page = book.create_sheet(name)
        for row in rows:
            page.append(list(row))
    for cells in merged:
        book.worksheets[0].merge_cells(cells)
    book.save(path)
    return path


def read(folder: Path, *rows: Sequence[Any], merged: Iterable[str] = (), **options: Any) -> SurveyRead:
    """Write one sheet and read it; bare numbers are inches."""
    path = write(folder / "survey.xlsx", {"Doors": rows}, merged)
    return read_survey(path, SurveyOptions(**{"bare_unit": "in", **options}))


def one(found: SurveyRead) -> SurveyedOpening:
    """Return the only opening of a file that has nothing refused."""
    assert [problem.describe() for problem in found.problems] == []
    (opening,) = found.openings
    return opening


def said(found: SurveyRead) -> str:
    """Return all problems in lines."""
    return "\n".join(problem.describe() for problem in found.problems)
