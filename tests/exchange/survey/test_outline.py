"""A file is laid open before it can be read: sheets, columns, samples, and what each would carry."""

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.exchange.survey.outline import outline
from tests.exchange.surveys import write


def test_a_sheet_whose_words_nobody_knows_is_laid_open_too(tmp_path):
    path = write(
        tmp_path / "s.xlsx",
        {"Doors": [["list of the yard"], ["Q", "R", "Width"], ["D-1", 7, 36], ["D-2", 7, 32]], "Empty": []},
    )
    doors, empty = outline(path, SurveyOptions())
    assert (doors.header_row, empty.columns) == (2, ())
    assert [(c.header, c.samples, c.target) for c in doors.columns] == [
        ("Q", ("D-1", "D-2"), ""), ("R", ("7",), ""), ("Width", ("36", "32"), "leaf.width_mm"),
    ]  # fmt: skip


def test_what_was_said_of_a_column_is_what_it_carries(tmp_path):
    path = write(tmp_path / "s.xlsx", {"Doors": [["Q", "Width (mm)"], ["D-1", 915]]})
    (doors,) = outline(path, SurveyOptions(columns={"Q": "opening.mark", "column B": ""}))
    assert [(c.target, c.unit) for c in doors.columns] == [("opening.mark", ""), ("", "")]


def test_what_a_sheet_is_by_its_content_is_shown_so(tmp_path):
    path = tmp_path / "types.csv"
    path.write_text("Type,Width,Height\nA,36,84\nB,30,80\n,,\nNo,Type,Level\n101,A,1\n102,B,1\n", encoding="utf-8")
    (sheet,) = outline(path, SurveyOptions())
    assert (sheet.header_row, [column.target for column in sheet.columns]) == (
        5,
        ["opening.mark", "opening.of_type", "opening.level"],
    )
