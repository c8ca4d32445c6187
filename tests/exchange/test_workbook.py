"""Workbooks that are whole, broken, hostile or merely odd: rows as they stand, or one clear refusal."""

import datetime as dt
import io
import random
import re
import zipfile

import pytest
from openpyxl import Workbook
from openpyxl.styles import Font
from python_calamine import CalamineError

from hwsched.exchange import container, second_reader, workbook
from hwsched.exchange.problems import InputRejected
from hwsched.exchange.sheet_scan import column_index, glance, inspect, last_named_row
from hwsched.exchange.survey.grid import read_grids
from hwsched.exchange.workbook import Merged, open_book

HEAD = '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'


@pytest.fixture
def path(tmp_path):
    return tmp_path / "survey.xlsx"


def save(path, rows, title="Doors"):
    book = Workbook()
    book.active.title = title
    for row in rows:
        book.active.append(row)
    book.save(path)
    return path


def repack(path, change):
    """Write the file's parts again, after a change of some."""
    with zipfile.ZipFile(path) as old:
        parts = {name: old.read(name) for name in old.namelist()}
    change(parts)
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new:
        for name, content in parts.items():
            new.writestr(name, content)
    return path


def with_sheet(path, xml):
    save(path, [["x"]])
    return repack(path, lambda parts: parts.update({"xl/worksheets/sheet1.xml": xml.encode()}))


def refusal(path, sheet=None):
    def read():
        book = open_book(path)
        return book.rows(sheet or book.sheet_names[0])

    with pytest.raises(InputRejected) as caught:
        read()
    (problem,) = caught.value.problems
    assert problem.file == path.name
    assert str(path.parent) not in problem.describe()
    return problem.describe()


class TestRows:
    def test_cells_stand_where_they_stand(self, path):
        book = Workbook()
        sheet = book.active
        sheet["B3"], sheet["D4"], sheet["D5"] = "0012", 12, True
        sheet["D6"], sheet["D7"], sheet["D8"] = dt.date(2024, 3, 4), dt.time(1, 30), dt.timedelta(hours=30)
        book.save(path)
        rows = open_book(path).rows("Sheet")
        assert rows[0] == ["", "", "", ""]
        assert rows[2][1] == "0012"
        assert [row[3] for row in rows[3:]] == [12.0, True, dt.date(2024, 3, 4), dt.time(1, 30), dt.timedelta(hours=30)]

    def test_text_stays_text(self, path):
        texts = ["0012", "9E4", "3-4", "=1+1", "+2", "-3", "@x", "1¾”", "TRUE", "  x ", "日本"]
        book = Workbook()
        for n, text in enumerate(texts, start=1):
            book.active.cell(n, 1, text).data_type = "s"
        book.save(path)
        assert [row[0] for row in open_book(path).rows("Sheet")] == texts

    def test_numbers_shown_with_zeros_come_as_shown(self, path):
        book = Workbook()
        for n, (value, code) in enumerate([(12, "0000"), (7, "000"), (12, "0"), (12.5, "0000"), (0.25, "0%")], start=1):
            book.active.cell(n, 1, value).number_format = code
        book.save(path)
        assert [row[0] for row in open_book(path).rows("Sheet")] == ["0012", "007", 12.0, 12.5, 0.25]

    def test_200_columns_and_more(self, path):
        save(path, [[f"h{n}" for n in range(250)], list(range(250))])
        rows = open_book(path).rows("Doors")
        assert [len(row) for row in rows] == [250, 250]
        assert rows[1][249] == 249.0

    def test_an_empty_sheet_has_no_rows(self, path):
        save(path, [])
        book = open_book(path)
        assert book.rows("Doors") == []
        assert book.merged("Doors") == ()
        assert book.doubtful("Doors") == {}

    def test_sheets_in_order_hidden_ones_marked_charts_left_out(self, path):
        book = Workbook()
        book.active.title = "B"
        book.create_sheet("A & <C>").sheet_state = "hidden"
        book.create_chartsheet("Chart")
        book.save(path)
        read = open_book(path)
        assert read.sheet_names == ("B", "A & <C>")
        assert read.hidden == {"A & <C>"}
        assert read.rows("A & <C>") == []

    def test_merged_cells_are_named(self, path):
        book = Workbook()
        book.active["A5"] = "x"
        book.active.merge_cells("A5:C6")
        book.active.merge_cells("A1:B1")
        book.save(path)
        read = open_book(path)
        assert read.merged("Sheet") == (Merged(0, 0, 0, 1), Merged(4, 0, 5, 2))
        assert [row[0] for row in read.rows("Sheet")][4:] == ["x"]

    def test_the_file_is_left_alone_and_read_once(self, path):
        save(path, [["x"]])
        before = path.read_bytes()
        book = open_book(path)
        path.unlink()
        assert book.rows("Doors") == [["x"]]
        path.write_bytes(before)
        open_book(path).rows("Doors")
        assert path.read_bytes() == before


class TestDoubtful:
    def test_formulas_without_value_and_errors_are_told_from_empty_cells(self, path):
        book = Workbook()
        sheet = book.active
        sheet.append(["=1+1", None, "#N/A", "plain", 5])
        sheet["C1"].data_type = "e"
        book.save(path)
        read = open_book(path)
        doubts = read.doubtful("Sheet")
        assert set(doubts) == {(0, 0), (0, 2)}
        assert "formula without a stored value" in doubts[0, 0]
        assert "#N/A" in doubts[0, 2]
        assert read.rows("Sheet")[0] == ["", "", "", "plain", 5.0]

    def test_stored_results_are_values(self, path):
        cells = (
            '<c r="A1"><f>1+1</f><v>2</v></c><c r="B1" t="str"><f>"a"&amp;"b"</f><v>ab</v></c>'
            '<c r="C1" t="str"><f>""</f><v></v></c><c r="D1" t="e"><f>1/0</f><v>#DIV/0!</v></c>'
            '<c r="E1"><f/></c>'
        )
        with_sheet(path, f'{HEAD}<sheetData><row r="1">{cells}</row></sheetData></worksheet>')
        read = open_book(path)
        assert read.rows("Doors")[0][:3] == [2.0, "ab", ""]
        doubts = read.doubtful("Doors")
        assert set(doubts) == {(0, 3), (0, 4)}
        assert "#DIV/0!" in doubts[0, 3]

    def test_elements_with_a_prefix(self, path):
        xml = (
            '<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData>'
            '<x:row r="1"><x:c r="A1"><x:v>5</x:v></x:c><x:c r="B1"><x:f>1+1</x:f></x:c></x:row>'
            "</x:sheetData></x:worksheet>"
        )
        with_sheet(path, xml)
        assert set(open_book(path).doubtful("Doors")) == {(0, 1)}

    def test_cells_that_do_not_say_where_they_stand(self, path):
        row = '<row><c t="inlineStr"><is><t>a</t></is></c><c><f>1+1</f></c></row>'
        with_sheet(path, f"{HEAD}<sheetData>{row}{row}</sheetData></worksheet>")
        assert set(open_book(path).doubtful("Doors")) == {(0, 1), (1, 1)}


class TestFarCells:
    def test_a_million_empty_rows(self, path):
        rows = "".join(f'<row r="{n}"/>' for n in range(2, 1_048_577))
        cell = '<row r="1"><c r="A1" t="inlineStr"><is><t>Mark</t></is></c></row>'
        with_sheet(path, f"{HEAD}<sheetData>{cell}{rows}</sheetData></worksheet>")
        assert open_book(path).rows("Doors") == [["Mark"]]

    def test_empty_cells_with_a_style_far_out_are_no_contents(self, path):
        book = Workbook()
        book.active["A1"] = "Mark"
        for place in ("XFD3", "A1048576", "XFD1048576"):
            book.active[place].font = Font(bold=True)
        book.save(path)
        assert open_book(path).rows("Sheet") == [["Mark"]]

    def test_contents_far_out_are_refused_before_they_are_read(self, path):
        book = Workbook()
        book.active["A1"], book.active["A1048576"], book.active["XFD1"] = "Mark", " ", "x"
        book.save(path)
        assert "reaches from A1 to XFD1048576, which are 17,179,869,184 cells" in refusal(path)

    @pytest.mark.parametrize("reference", ["XFE1", "A1048577", "AAAA1", "A99999999", "1A", "A0"])
    def test_places_that_no_sheet_has(self, path, reference):
        xml = f'{HEAD}<sheetData><row r="1"><c r="{reference}"><v>1</v></c></row></sheetData></worksheet>'
        try:
            rows = open_book(with_sheet(path, xml)).rows("Doors")
        except InputRejected as rejected:
            assert len(rejected.problems) == 1  # noqa: PT017 (either outcome is right, nothing else is)
        else:
            assert sum(map(len, rows)) <= workbook.MOST_CELLS

    def test_far_cells_in_every_spelling_are_seen(self, path):
        for cells in (
            '<row r="1"><c r="A1"><v>1</v></c><c r="XFD1048576"><v>1</v></c></row>',
            "<row r='1'><c r='A1'><v>1</v></c><c r='XFD1048576'><v>1</v></c></row>",
            '<row r="1"><c t="n" r="A1"><v>1</v></c><c\tr="XFD1048576"><v>1</v></c></row>',
            '<row r="1048576">' + "<c><v>1</v></c>" * 16384 + "</row>",
        ):
            with_sheet(path, f"{HEAD}<sheetData>{cells}</sheetData></worksheet>")
            assert "17,179,869,184" in refusal(path)

    def test_many_rows_of_few_columns_are_read(self, path):
        rows = "".join(f'<row r="{n}"><c r="A{n}"><v>{n}</v></c></row>' for n in range(1, 120_001))
        with_sheet(path, f"{HEAD}<sheetData>{rows}</sheetData></worksheet>")
        assert len(open_book(path).rows("Doors")) == 120_000


class TestRefusals:
    def test_missing_folder_and_empty(self, tmp_path):
        assert "does not exist" in refusal(tmp_path / "gone.xlsx")
        assert "is a folder" in refusal(tmp_path)
        (tmp_path / "empty.xlsx").touch()
        assert "is empty" in refusal(tmp_path / "empty.xlsx")

    @pytest.mark.parametrize(
        ("content", "says"),
        [
            (b"%PDF-1.7 ...", "PDF"),
            (b"Mark,Width\n1,36\n", "text file (such as CSV)"),
            (b"<html><table>", "web page"),
            (b"{\\rtf1", "text document"),
            (b"SQLite format 3\x00", "database"),
            (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\x00" * 600, "old kind"),
            (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + "EncryptedPackage".encode("utf-16-le"), "password"),
            (b"PK\x03\x04 but nothing more", "damaged"),
            (b"\x00\x01\x02", "not a workbook"),
        ],
    )
    def test_other_files(self, path, content, says):
        path.write_bytes(content)
        assert says in refusal(path)

    @pytest.mark.parametrize(
        ("part", "says"),
        [
            ("word/document.xml", "text document"),
            ("ppt/presentation.xml", "presentation"),
            ("content.xml", "OpenDocument"),
            ("xl/workbook.bin", "binary workbook"),
            ("readme.txt", "without a workbook"),
        ],
    )
    def test_other_archives(self, path, part, says):
        with zipfile.ZipFile(path, "w") as file:
            file.writestr(part, "x")
        assert says in refusal(path)

    def test_missing_sheet(self, path):
        save(path, [["x"]])
        assert "has no sheet Windows; accepted: one of its sheets: Doors" in refusal(path, "Windows")

    @pytest.mark.parametrize("share", [0.1, 0.5, 0.9, 0.99])
    def test_a_file_that_breaks_off(self, path, share):
        save(path, [["Mark", "Width"]] * 200)
        path.write_bytes(path.read_bytes()[: int(path.stat().st_size * share)])
        assert "is damaged" in refusal(path)

    def test_damage_within_the_sheet_is_found_by_its_check_sum(self, path):
        save(path, [["Mark", n] for n in range(500)])
        with zipfile.ZipFile(path) as file:
            info = file.getinfo("xl/worksheets/sheet1.xml")
            start = info.header_offset + 30 + len(info.filename)
        content = bytearray(path.read_bytes())
        for n in range(start + 40, start + 60):
            content[n] ^= 0x55
        path.write_bytes(content)
        assert "is damaged" in refusal(path)

    def test_protected_by_password(self, path):
        save(path, [["x"]])
        content = bytearray(path.read_bytes())
        for mark, offset in ((b"PK\x01\x02", 8), (b"PK\x03\x04", 6)):
            at = content.find(mark)
            content[at + offset] |= 1
        path.write_bytes(content)
        assert "password" in refusal(path)

    def test_a_part_that_is_missing(self, path):
        save(path, [["x"]])
        repack(path, lambda parts: parts.pop("xl/worksheets/sheet1.xml"))
        assert "xl/worksheets/sheet1.xml is missing" in refusal(path)

    def test_no_worksheet(self, path):
        save(path, [["x"]])

        def drop(parts):
            parts["xl/workbook.xml"] = re.sub(rb"<sheets>.*</sheets>", b"<sheets/>", parts["xl/workbook.xml"])

        repack(path, drop)
        assert "holds no worksheet" in refusal(path)

    def test_broken_xml(self, path):
        assert "cannot be read" in refusal(with_sheet(path, f'{HEAD}<sheetData><row r="1"><c r="A1"><v>1</c></row>'))

    def test_entities_of_its_own(self, path):
        xml = '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>' + HEAD + "<sheetData/></worksheet>"
        assert "entities of its own" in refusal(with_sheet(path, xml))

    def test_other_encodings(self, path):
        save(path, [["x"]])
        text = f"{HEAD}<sheetData/></worksheet>".encode("utf-16")
        repack(path, lambda parts: parts.update({"xl/worksheets/sheet1.xml": text}))
        assert "another encoding" in refusal(path)

    def test_two_parts_of_one_name(self, path):
        save(path, [["x"]])
        with zipfile.ZipFile(path, "a") as file, pytest.warns(UserWarning, match="Duplicate name"):
            file.writestr("xl/worksheets/sheet1.xml", f"{HEAD}<sheetData/></worksheet>")
        assert "two parts of one name" in refusal(path)

    def test_a_bomb_by_its_stated_size(self, path, monkeypatch):
        monkeypatch.setattr(container, "LARGEST_UNPACKED", 100_000)
        with_sheet(path, HEAD + " " * 1_000_000 + "<sheetData/></worksheet>")
        assert path.stat().st_size < 10_000
        assert "unpacks to" in refusal(path)

    def test_a_bomb_that_states_a_small_size(self, path):
        with_sheet(path, HEAD + " " * 1_000_000 + "<sheetData/></worksheet>")
        content = path.read_bytes()
        with zipfile.ZipFile(io.BytesIO(content)) as file:
            size = file.getinfo("xl/worksheets/sheet1.xml").file_size
        path.write_bytes(content.replace(size.to_bytes(4, "little"), (500).to_bytes(4, "little")))
        assert "is damaged" in refusal(path)

    def test_a_file_too_large(self, path, monkeypatch):
        monkeypatch.setattr(container, "LARGEST_FILE", 1000)
        save(path, [["x"]])
        assert "is larger than" in refusal(path)

    def test_flipped_bytes_never_end_in_anything_but_rows_or_a_refusal(self, path):
        save(path, [[f"D-{n}", n / 3, n % 2 == 0, "1 3/4"] for n in range(50)])
        whole = path.read_bytes()
        chance = random.Random(5)
        refused = 0
        for _ in range(150):
            content = bytearray(whole)
            for _ in range(chance.choice([1, 1, 3, 30])):
                content[chance.randrange(len(content))] = chance.randrange(256)
            path.write_bytes(content)
            try:
                book = open_book(path)
                for sheet in book.sheet_names:
                    book.rows(sheet)
                    book.doubtful(sheet)
                    book.merged(sheet)
            except InputRejected:
                refused += 1
        assert refused > 50

    def test_changed_sheets_never_end_in_anything_but_rows_or_a_refusal(self, path):
        save(path, [[f"D-{n}", n / 3, n % 2 == 0, "=1+1"] for n in range(10)])
        with zipfile.ZipFile(path) as file:
            parts = {name: file.read(name) for name in file.namelist()}
        chance = random.Random(6)
        names = ["xl/worksheets/sheet1.xml", "xl/workbook.xml", "xl/styles.xml", "xl/_rels/workbook.xml.rels"]
        for _ in range(200):
            name = chance.choice(names)
            content = bytearray(parts[name])
            at = chance.randrange(len(content))
            content[at : at + chance.choice([0, 1, 5])] = chance.choice([b"<", b">", b'"', b"9", b"", b"\xff", b"ZZ"])
            with zipfile.ZipFile(path, "w") as file:
                for part, whole in parts.items():
                    file.writestr(part, bytes(content) if part == name else whole)
            try:
                book = open_book(path)
                for sheet in book.sheet_names:
                    book.rows(sheet)
                    book.doubtful(sheet)
                    book.merged(sheet)
            except InputRejected as rejected:
                assert rejected.problems  # noqa: PT017 (either outcome is right, nothing else is)


class TestScan:
    def test_pieces_of_any_size_say_the_same(self):
        rows = "".join(
            f'<row r="{n}"><c r="A{n}" t="s"><v>{n}</v></c><c r="AB{n}" t="e"><v>#N/A</v></c></row>'
            for n in range(1, 40)
        )
        text = f"{HEAD}<sheetData>{rows}</sheetData></worksheet>".encode()
        whole = glance([text])
        assert (whole.columns, whole.row_digits, whole.odd, whole.formulas, whole.errors) == (28, 2, False, False, True)
        for size in (1, 2, 3, 7, 64):
            pieces = [text[n : n + size] for n in range(0, len(text), size)]
            assert glance(pieces) == whole
            assert last_named_row(pieces) == 39
            assert inspect(pieces) == inspect([text])

    def test_columns(self):
        assert [column_index(letters) for letters in ("A", "Z", "AA", "XFD")] == [0, 25, 26, 16383]


class TestBounds:
    """What a file names is measured before anything is allocated for it."""

    @pytest.mark.parametrize(
        "row",
        [
            '<row r="3"><c r="ZZZZZZ3"><v>1</v></c></row>',
            '<row r="A3"><c r="ZZZZZZ3"><v>1</v></c></row>',
            '<row r="3"><c s="0" r="ZZZZZZ3"><v>1</v></c></row>',
            '<row r="3"><c r = "XFE3"><v>1</v></c></row>',
            '<row r="3"><c r="A99999999"><v>1</v></c></row>',
        ],
    )
    def test_a_cell_that_no_sheet_has(self, path, row):
        with_sheet(path, f'{HEAD}<sheetData><row r="1"><c r="A1"><v>1</v></c></row>{row}</sheetData></worksheet>')
        assert "names a cell that no sheet has" in refusal(path)

    def test_many_sheets_that_are_one_part(self, path):
        save(path, [["x"]])

        def change(parts):
            book = parts["xl/workbook.xml"].decode()
            (entry,) = re.findall(r"<sheet [^>]*/>", book)
            many = "".join(entry.replace('name="Doors"', f'name="D{n}"') for n in range(3000))
            parts["xl/workbook.xml"] = book.replace(entry, many).encode()

        repack(path, change)
        assert "two sheets are one and the same part" in refusal(path)

    def test_too_many_sheets(self, path, monkeypatch):
        monkeypatch.setattr(container, "MOST_SHEETS", 2)
        book = Workbook()
        for n in range(2):
            book.create_sheet(f"S{n}")
        book.save(path)
        assert "has more than 2 sheets" in refusal(path)

    def test_megabytes_of_blanks(self, path):
        blanks = " " * (9 << 20)
        with_sheet(path, f"{HEAD}<sheetData>{blanks}</sheetData></worksheet>")
        assert "holds a text of more than 4 MB without a cell" in refusal(path)

    def test_all_sheets_together(self, path, monkeypatch):
        monkeypatch.setattr(workbook, "MOST_CELLS", 100)
        book = Workbook()
        for n in range(3):
            book.create_sheet(f"S{n}").cell(10, 5, "x")
        book.save(path)
        opened = open_book(path)
        opened.rows("S0"), opened.rows("S1")
        with pytest.raises(InputRejected, match="holds 150 cells in 3 sheets; 100 are read"):
            opened.rows("S2")

    def test_merged_cells_over_each_other(self, path):
        many = '<mergeCell ref="A1:A1048576"/>' * 9
        with_sheet(
            path,
            f'{HEAD}<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>'
            f'<mergeCells count="9">{many}</mergeCells></worksheet>',
        )
        with pytest.raises(InputRejected, match="merged cells that lie over each other"):
            open_book(path).merged("Doors")


def test_what_one_reader_cannot_open_another_reads(path, monkeypatch):
    def fails(_stream, **_more):
        raise CalamineError("an unknown record")

    save(path, [["Mark", "Qty"], ["0012", 3]])
    monkeypatch.setattr(workbook.CalamineWorkbook, "from_filelike", fails)
    (grid,) = read_grids(path)
    assert grid.rows == [["Mark", "Qty"], ["0012", 3.0]]
    assert "second reader" in grid.notes[0]

    # What neither reads is refused as the first reader says.
    def fails_too(_stream, **_more):
        raise KeyError("no part of that name")

    monkeypatch.setattr(second_reader, "load_workbook", fails_too)
    with pytest.raises(InputRejected, match="cannot be read: an unknown record"):
        read_grids(path)


@pytest.mark.parametrize("ending", [".xls", ".ods", ".csv", ".xlsm", ".xlsx"])
def test_a_workbook_is_read_as_what_it_is(path, tmp_path, ending):
    named = save(path, [["Mark", "Width"]]).rename(tmp_path / f"doors{ending}")
    (grid,) = read_grids(named)
    assert grid.rows == [["Mark", "Width"]]
    assert bool(grid.notes) == (ending not in (".xlsx", ".xlsm"))
