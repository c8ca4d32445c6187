"""Survey files of all formats, whole and broken."""

import zipfile

import pytest

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.book import SurveyOptions, read_survey
from hwsched.exchange.survey.grid import read_grids
from tests.exchange.surveys import one, said

INCHES = SurveyOptions(bare_unit="in")


def csv_of(folder, data, name="doors.csv"):
    path = folder / name
    path.write_bytes(data if isinstance(data, bytes) else data.encode())
    return path


@pytest.mark.parametrize(
    ("text", "encoding"),
    [
        ("Mark,Room to,Width\n0012,Café,36\n", "utf-8"),
        ("\ufeffMark,Room to,Width\r\n0012,Café,36\r\n", "utf-8"),
        ("Mark;Room to;Width\n0012;Café;36\n", "cp1252"),
        ("Mark\tRoom to\tWidth\n0012\tCafé\t36\n", "utf-16"),
        ("sep=;\nMark;Room to;Width\n0012;Café;36\n", "utf-8"),
        ("Mark|Room to|Width\n0012|Café|36\n", "utf-8"),
    ],
)
def test_csv_in_the_spellings_of_spreadsheet_programs(tmp_path, text, encoding):
    opening = one(read_survey(csv_of(tmp_path, text.encode(encoding)), INCHES))
    assert (opening.mark, opening.facts["room_to"]) == ("0012", "Café")
    row = 3 if text.startswith("sep") else 2
    assert opening.origin == f"doors.csv, doors, row {row}"


def test_csv_keeps_marks_of_inches_and_feet(tmp_path):
    text = 'Mark,Width,Height,Notes\n9E4,3\'-0",84",it\'s "old"\n3-4,"36""","7\'-0""",\n'
    found = read_survey(csv_of(tmp_path, text), INCHES)
    assert found.problems == ()
    assert [opening.mark for opening in found.openings] == ["9E4", "3-4"]
    assert [opening.leaves[0].facts["width_mm"] for opening in found.openings] == [pytest.approx(914.4)] * 2


def test_csv_with_decimal_commas_and_a_cell_over_two_lines(tmp_path):
    text = 'Mark;Width;Notes\n1;0,91 m;"first\nsecond"\n2;91,4 cm;\n'
    found = read_survey(csv_of(tmp_path, text), INCHES)
    assert [opening.leaves[0].facts["width_mm"] for opening in found.openings] == [910, 914]
    assert found.openings[0].facts["notes"] == "first\nsecond"


def test_csv_rows_of_unequal_length(tmp_path):
    found = read_survey(csv_of(tmp_path, "Mark,Width,Height\n1\n2,36\n3,36,84,odd\n"), INCHES)
    assert [len(opening.leaves[0].facts) for opening in found.openings] == [1, 2, 3]
    assert [(u.column, u.filled) for u in found.unmapped] == [("D", 1)]


@pytest.mark.parametrize(
    ("data", "message"),
    [
        (b"", "holds nothing"),
        (b"\n\n\n", "holds nothing"),
        (b"a,b\nc,d\n", "no row looks like a header"),
        (b"Width,Height\n1,2\n", "has no column of marks"),
        (b"Mark,Width\n", "has no row below its header"),
        (b"Mark,Width\n1,\x0036\n", "is no text"),
        (b"Mark\n" + b'"1\n' + b"2\n" * 3000, "quotation mark"),
    ],
)
def test_csv_that_is_no_survey(tmp_path, data, message):
    path = csv_of(tmp_path, data)
    try:
        text = said(read_survey(path, INCHES))
    except InputRejected as refused:
        text = str(refused)
    assert message in text
    assert "doors.csv" in text


def test_a_quotation_that_is_never_closed_takes_no_other_row_with_it(tmp_path):
    rows = "".join(f"{n},36\n" for n in range(2, 2002))
    found = read_survey(csv_of(tmp_path, f'Mark,Width\n1,"36\n{rows}'), INCHES)
    assert said(found) == ""
    assert len(found.openings) == 2001


@pytest.mark.parametrize("name", ["doors.pdf", "doors", "doors.rtf"])
def test_files_of_another_kind(tmp_path, name):
    with pytest.raises(InputRejected, match=r"\.xlsx, \.xls, \.ods, \.csv"):
        read_grids(csv_of(tmp_path, "Mark,Width\n1,36\n", name))


@pytest.mark.parametrize("name", ["doors.xls", "doors.ods", "doors.xlsx"])
@pytest.mark.parametrize(
    "data", [b"", b"PK\x03\x04nonsense", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\x00" * 600, b"Mark,Width"]
)
def test_damaged_workbooks(tmp_path, name, data):
    with pytest.raises(InputRejected, match=name):
        read_grids(csv_of(tmp_path, data, name))


ODS_CELL = '<table:table-cell office:value-type="{kind}"{more}><text:p>{text}</text:p></table:table-cell>'


def ods(path, rows):
    """Write the least that is an OpenDocument spreadsheet."""

    def cell(value):
        if isinstance(value, float):
            return ODS_CELL.format(kind="float", more=f' office:value="{value}"', text=value)
        return ODS_CELL.format(kind="string", more="", text=value)

    names = "".join(
        f' xmlns:{short}="urn:oasis:names:tc:opendocument:xmlns:{long}:1.0"'
        for short, long in (("office", "office"), ("table", "table"), ("text", "text"))
    )
    lines = "".join(f"<table:table-row>{''.join(map(cell, row))}</table:table-row>" for row in rows)
    content = (
        f'<?xml version="1.0" encoding="UTF-8"?><office:document-content{names} office:version="1.2"><office:body>'
        f'<office:spreadsheet><table:table table:name="Doors">{lines}</table:table></office:spreadsheet></office:body>'
        "</office:document-content>"
    )
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        archive.writestr("content.xml", content)
        manifest = 'xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"'
        entry = '<manifest:file-entry manifest:full-path="/" manifest:media-type="x"/>'
        archive.writestr("META-INF/manifest.xml", f"<manifest:manifest {manifest}>{entry}</manifest:manifest>")
    return path


def test_an_opendocument_spreadsheet(tmp_path):
    path = ods(tmp_path / "doors.ods", [["Mark", "Width", "Height"], ["0012", 36.0, "7'-0&quot;"]])
    opening = one(read_survey(path, INCHES))
    assert (opening.mark, opening.origin) == ("0012", "doors.ods, Doors, row 2")
    assert opening.leaves[0].facts["height_mm"] == pytest.approx(2133.6)
    with pytest.raises(InputRejected, match="has no sheet Lofts; accepted: one of its sheets: Doors"):
        read_survey(path, SurveyOptions(sheet="Lofts"))
