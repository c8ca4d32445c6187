"""Sheets that people fill in: text stays text, headers explain themselves, words can be picked."""

import gc
import resource
import zipfile

import pytest
from openpyxl import Workbook, load_workbook

from hwsched.attributes import Attribute, Choice
from hwsched.exchange.sheet_writing import header, save, write_cell, write_header
from hwsched.exchange.workbook import open_book
from hwsched.writing import UnwritableError

FORM = Attribute(
    "form",
    "Form",
    "choice",
    choices=(Choice("a", "Wood, solid"), Choice("b", 'With "marks"')),
    required=True,
    note="Why.",
)
COLUMNS = (
    Attribute("mark", "Mark", required=True),
    Attribute("x_mm", "Length", "length", "mm", low=1, high=100),
    Attribute("y", "Current", "number", "uA"),
    FORM,
    Attribute("same", "Form again", "choice", choices=FORM.choices),
    Attribute("flag", "Listed", "flag"),
)


@pytest.fixture
def written(tmp_path):
    book = Workbook()
    lists = book.create_sheet("Words")
    write_header(book.active, 1, COLUMNS, "in", lists)
    path = tmp_path / "form.xlsx"
    save(book, path)
    return load_workbook(path)


def test_headers_carry_units():
    assert [header(a, "in") for a in COLUMNS[:4]] == ["Mark", "Length [in]", "Current [uA]", "Form"]


def test_every_header_has_a_note(written):
    notes = [cell.comment.text for cell in written["Sheet"][1]]
    assert len(notes) == len(COLUMNS)
    assert "Must be filled in." in notes[0]
    assert 'from 1 mm (1/16") to 100 mm' in notes[1]
    assert notes[3] == 'Why.\nOne of: Wood, solid; With "marks".\nMust be filled in.'
    assert "yes or no" in notes[5].lower()


def test_words_are_picked_from_lists_that_stand_once(written):
    validations = written["Sheet"].data_validations.dataValidation
    assert {str(v.sqref).split(":")[0]: v.formula1 for v in validations} == {
        "D2": "'Words'!$A$1:$A$2",
        "E2": "'Words'!$A$1:$A$2",
        "F2": "'Words'!$B$1:$B$2",
    }
    assert [c.value for c in written["Words"]["A"]] == ["Wood, solid", 'With "marks"']
    assert [c.value for c in written["Words"]["B"]] == ["yes", "no"]


def test_the_header_stays_in_sight(written):
    assert written["Sheet"].freeze_panes == "B2"


@pytest.mark.parametrize(
    "text", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "0012", "9E4", "3-4", '=HYPERLINK("x")', "TRUE"]
)
def test_text_is_never_a_formula(tmp_path, text):
    path = tmp_path / "a.xlsx"
    book = Workbook()
    write_cell(book.active, 1, 1, text)
    save(book, path)
    with zipfile.ZipFile(path) as file:
        assert b"<f>" not in file.read("xl/worksheets/sheet1.xml")
    assert open_book(path).rows("Sheet") == [[text]]


@pytest.mark.parametrize(("value", "read"), [(True, "yes"), (False, "no"), (1.5, 1.5), (3, 3.0), ("a\x00\x07b", "ab")])
def test_other_values(tmp_path, value, read):
    path = tmp_path / "a.xlsx"
    book = Workbook()
    write_cell(book.active, 1, 1, value)
    write_cell(book.active, 1, 2, None)
    save(book, path)
    assert open_book(path).rows("Sheet") == [[read]]


def test_saving_replaces_whole_or_not_at_all(tmp_path):
    path = tmp_path / "a.xlsx"
    path.write_bytes(b"older")
    with pytest.raises(AttributeError):
        save(None, path)
    assert path.read_bytes() == b"older"
    assert [file.name for file in tmp_path.iterdir()] == ["a.xlsx"]
    save(Workbook(), path)
    assert open_book(path).sheet_names == ("Sheet",)


def test_a_disk_that_takes_no_more_is_told_once_and_leaves_nothing(tmp_path, capfd):
    """An archive that is thrown away unfinished would tell of the same disk again, on the side."""
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (1024, before[1]))
    try:
        with pytest.raises(UnwritableError, match="cannot be written"):
            save(Workbook(), tmp_path / "form.xlsx")
        gc.collect()
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
    assert list(tmp_path.iterdir()) == []
    assert capfd.readouterr().err == ""
