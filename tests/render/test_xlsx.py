import time
import zipfile
from dataclasses import replace

import openpyxl
import pytest

from hwsched.render.blocks import Column, Facts, Heading, Paragraph, Table
from hwsched.render.xlsx import render_xlsx
from tests.render.sample import COLUMNS, document, everything, rows


def opened(doc, tmp_path):
    render_xlsx(doc, tmp_path / "a.xlsx")
    return openpyxl.load_workbook(tmp_path / "a.xlsx")


def cells(sheet):
    return [[cell.value for cell in row] for row in sheet.iter_rows()]


def test_a_front_sheet_and_a_sheet_a_table(tmp_path):
    book = opened(
        document(Heading("What goes out"), Facts((("Openings", "12"),)), Table(COLUMNS, rows(3), "Parts")), tmp_path
    )
    assert book.sheetnames == ["Pick list", "Parts"]
    front = [value for row in cells(book["Pick list"]) for value in row if value]
    for words in ("Pick list", "Harbour Works", "B", "2025-03-01", "What goes out", "Openings", "12"):
        assert words in front
    assert cells(book["Parts"])[0][1:] == ["Mark", "Description", "Qty"]
    assert cells(book["Parts"])[2][1:] == ["0001", "part number 1 for the test", 1]


def test_numbers_stay_numbers_and_marks_stay_text(tmp_path):
    sheet = opened(document(Table(COLUMNS, (("", "0012", "9E4", 2.5), ("", "3-4", 7, None)), "Parts")), tmp_path)[
        "Parts"
    ]
    assert sheet["B2"].value == "0012"
    assert sheet["C2"].value == "9E4"
    assert (sheet["D2"].value, sheet["D2"].data_type) == (2.5, "n")
    assert (sheet["C3"].value, sheet["C3"].data_type) == (7, "n")
    assert sheet["D3"].value is None


@pytest.mark.parametrize("text", ["=1+1", "+1", "-x", "@a", '=HYPERLINK("x")', "=", "-"])
def test_what_could_be_a_formula_is_written_as_text(tmp_path, text):
    doc = document(
        Facts(((text, text),)), Paragraph(text), Table((Column(text),), ((text,),), text), title=text, project=text
    )
    book = opened(doc, tmp_path)
    found = 0
    for sheet in book:
        for row in sheet.iter_rows():
            for cell in row:
                assert cell.data_type != "f"
                if cell.value == text:
                    assert cell.data_type == "s"
                    assert cell.quotePrefix
                    found += 1
    assert found >= 4


def test_tables_with_the_same_columns_share_a_sheet_that_names_them(tmp_path):
    doc = document(*(Table(COLUMNS, rows(2), f"Heading {n}") for n in range(1, 4)))
    book = opened(doc, tmp_path)
    assert book.sheetnames == ["Pick list", "Heading"]
    assert [row[0] for row in cells(book["Heading"])] == ["List"] + [f"Heading {n}" for n in (1, 1, 2, 2, 3, 3)]


def test_a_table_may_name_its_sheet(tmp_path):
    doc = document(Table(COLUMNS, rows(1), "a", sheet="Places"), Table(COLUMNS, rows(1), "b", sheet="Places"),
                   Table(COLUMNS, rows(1), "All"))  # fmt: skip
    assert opened(doc, tmp_path).sheetnames == ["Pick list", "Places", "All"]


def test_sheet_names_are_allowed_and_different(tmp_path):
    titles = ["A/b:c*d?[e]\\f", "x" * 40, "X" * 40, "history", "", "'quoted'"]
    doc = document(*(Table((Column(f"C{n}"),), (("v",),), title) for n, title in enumerate(titles)))
    names = opened(doc, tmp_path).sheetnames
    assert len({name.casefold() for name in names}) == len(names) == 7
    for name in names:
        assert 0 < len(name) <= 31
        assert not set(name) & set("[]:*?/\\")
        assert name.casefold() != "history"


def test_sheets_are_ready_to_print(tmp_path):
    sheet = opened(document(Table(COLUMNS, rows(3), "Parts"), project="A & B"), tmp_path)["Parts"]
    assert sheet.freeze_panes == "A2"
    assert sheet.print_title_rows == "$1:$1"
    assert sheet.page_setup.orientation == "landscape"
    assert sheet.sheet_properties.pageSetUpPr.fitToPage
    assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (1, 0)
    assert sheet.oddFooter.right.text == "Page &P of &N"
    assert sheet.oddHeader.left.text == "A && B"
    assert sheet.auto_filter.ref == "A1:D4"
    assert sheet.column_dimensions["C"].width > sheet.column_dimensions["B"].width


def test_a_text_too_long_for_a_cell_goes_on_below(tmp_path):
    text = "".join(f"{n:07d}" for n in range(10_000))
    sheet = opened(document(Table(COLUMNS, ((None, "1", text, 1.0),), "Parts")), tmp_path)["Parts"]
    assert "".join(row[2] for row in cells(sheet)[1:]) == text


def test_controls_and_infinities_do_no_harm(tmp_path):
    doc = document(Table(COLUMNS, (("a\x00", "b\x0b\ud800", float("nan"), float("inf")),), "P\x01"), project="p\x02")
    assert cells(opened(doc, tmp_path)["P"])[1] == ["a ", "b \ufffd", "nan", "inf"]


def test_everything_else_is_put_into_words(tmp_path):
    front = [value for row in cells(opened(everything(), tmp_path)["Install packets"]) for value in row if value]
    assert "STOP: DO NOT INSTALL. The lead is short." in front
    assert "1. Take the cylinder out." in front
    assert "• Drill" in front
    assert "CAUTION: Silica dust at the drill." in front
    assert "2. inside: Put the pack in. [Volts: 9 to 12 V; read ......]" in front


def test_a_row_is_as_high_as_what_wraps_in_it(tmp_path):
    """Columns end at 60 characters: 300 of them are five lines and more, which a row of one line would hide."""
    long = "needs a word " * 23  # 299 characters
    table = Table(COLUMNS, ((None, "1", "short", 1.0), (None, "2", long, 1.0), (None, "3", "a\nb\nc", 1.0)), "Parts")
    sheet = opened(document(table), tmp_path)["Parts"]
    line = 13.0
    assert sheet.row_dimensions[2].height is None
    assert 5 * line < sheet.row_dimensions[3].height < 9 * line
    assert 3 * line < sheet.row_dimensions[4].height < 4.5 * line


def test_a_row_is_no_higher_than_a_spreadsheet_program_makes_it(tmp_path):
    sheet = opened(document(Table(COLUMNS, ((None, "1", "word " * 5000, 1.0),), "Parts")), tmp_path)["Parts"]
    assert sheet.row_dimensions[2].height == 409


def test_a_fact_that_wraps_on_the_front_sheet_is_seen_whole(tmp_path):
    front = opened(document(Facts((("Short", "yes"), ("Long", "word " * 40)))), tmp_path)["Pick list"]
    heights = {row[0].value: front.row_dimensions[row[0].row].height for row in front.iter_rows()}
    assert heights["Short"] is None
    assert heights["Long"] > 3 * 13


def test_a_workbook_says_the_day_of_its_revision(tmp_path):
    book = opened(document(date="2031-05-01"), tmp_path)
    assert book.properties.created.isoformat() == "2031-05-01T00:00:00"


def test_the_same_document_is_the_same_bytes_at_any_time(tmp_path, monkeypatch):
    """The library writes the time of saving; the clock goes two days on between both."""
    doc = document(Heading("What goes out"), Table(COLUMNS, rows(3), "Parts"))
    render_xlsx(doc, tmp_path / "first.xlsx")
    now = time.time()
    monkeypatch.setattr(time, "time", lambda: now + 2 * 86400)
    render_xlsx(doc, tmp_path / "second.xlsx")
    assert (tmp_path / "first.xlsx").read_bytes() == (tmp_path / "second.xlsx").read_bytes()
    with zipfile.ZipFile(tmp_path / "first.xlsx") as archive:
        assert {entry.date_time[:3] for entry in archive.infolist()} == {(2025, 3, 1)}
        assert b"2025-03-01T00:00:00Z</dcterms:modified>" in archive.read("docProps/core.xml")


@pytest.mark.parametrize(("columns", "pages"), [(3, 1), (6, 2), (15, 5)])
def test_what_is_too_wide_for_a_page_stands_on_pages_beside_it_and_can_be_read(tmp_path, columns, pages):
    """Fifteen columns of sixty characters on one page are letters of a millimetre; each page says whose row it is."""
    heads = (Column("Mark"), *(Column(f"C{n}") for n in range(columns)))
    row = ("A-1", *("word " * 12 for _ in range(columns)))
    sheet = opened(document(Table(heads, (row,), "Across")), tmp_path)["Across"]
    assert sheet.page_setup.fitToWidth == pages
    wide = sum(each.width for each in sheet.column_dimensions.values())
    assert wide / pages <= 200.0
    assert (sheet.print_title_cols == "$A:$A") == (pages > 1)
    assert sheet.freeze_panes == ("B2" if pages > 1 else "A2")
    assert sheet.print_title_rows == "$1:$1"


def test_large_letters_have_rows_of_their_height(tmp_path):
    """A title in a row of the usual height is written over the line below it."""
    doc = replace(document(Heading("Totals", 2)), subtitle="121 of 171 openings")
    front = opened(doc, tmp_path)["Pick list"]
    for row in front.iter_rows():
        size = row[0].font.size if row[0].value else 0
        if size > 10:
            assert front.row_dimensions[row[0].row].height >= 1.3 * size, row[0].value


def test_the_front_sheet_says_on_which_sheet_a_table_stands(tmp_path):
    """A heading with nothing under it reads as if there were nothing."""
    first, second = Table(COLUMNS, rows(2), "Parts"), Table((Column("Mark", 1.0),), (("M1",),), "Held")
    render_xlsx(document(Heading("Parts"), first, Heading("Held back"), second), tmp_path / "a.xlsx")
    book = openpyxl.load_workbook(tmp_path / "a.xlsx")
    said = [row[0] for row in book.worksheets[0].iter_rows(values_only=True)]
    assert said[said.index("Parts") + 1] == f"Sheet {book.sheetnames[1]}"
    assert said[said.index("Held back") + 1] == f"Sheet {book.sheetnames[2]}"
