"""Workbooks that are no .xlsx: read as they stand, or refused before anything is allocated."""

import struct

import pytest
from python_calamine import CalamineError

from hwsched.exchange import second_reader
from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey import grid
from hwsched.exchange.survey.book import SurveyOptions, read_survey
from hwsched.exchange.survey.grid import read_grids
from tests.exchange.old_files import ods, xls, xlsb

ROWS = [["Mark", "Width", "Thickness"], ["0012", "36", "1 3/4"]]
CELLS = [(row, column, text) for row, line in enumerate(ROWS) for column, text in enumerate(line)]


@pytest.mark.parametrize(
    ("write", "what", "name"), [(xls, CELLS, "a.xls"), (xlsb, CELLS, "a.xlsb"), (ods, ROWS, "a.ods")]
)
def test_each_kind_is_read(tmp_path, write, what, name):
    path = write(tmp_path / name, what)
    assert read_grids(path)[0].rows == ROWS
    (opening,) = read_survey(path, SurveyOptions(bare_unit="in")).openings
    assert (opening.mark, opening.leaves[0].facts["width_mm"]) == ("0012", pytest.approx(914.4))


FAR = {
    "far.xls": lambda path: xls(path, [*CELLS, (65535, 65535, 1.0)]),
    "wide.xls": lambda path: xls(path, [*CELLS, (65535, 255, 1.0)]),
    "far.xlsb": lambda path: xlsb(path, [*CELLS, (9, 0xFFFFFFF0, 1.0)]),
    "low.xlsb": lambda path: xlsb(path, [*CELLS, (0xFFFFFFF0, 3, 1.0)]),
    "far.ods": lambda path: ods(path, ROWS, repeated=(100_000, 16_384)),
    "wide.ods": lambda path: ods(path, ROWS, repeated=(1, 4_000_000_000)),
}


@pytest.mark.parametrize("name", FAR)
def test_a_cell_far_out_is_refused_before_the_rectangle_is_allocated(tmp_path, name):
    path = FAR[name](tmp_path / name)
    with pytest.raises(InputRejected, match=r"cells; 5,000,000 are read|a cell that no sheet has") as caught:
        read_grids(path)
    assert "saved as .xlsx" in str(caught.value)


def test_empty_cells_that_are_repeated_to_the_end_of_the_sheet_are_no_cells(tmp_path):
    path = ods(tmp_path / "a.ods", [*ROWS, ["", ""]], repeated=(1_048_570, 16_384))
    assert read_grids(path)[0].rows[:2] == ROWS


def test_entities_of_its_own_are_refused(tmp_path):
    path = ods(tmp_path / "a.ods", ROWS, prologue='<!DOCTYPE x [<!ENTITY a "aaaa">]>')
    with pytest.raises(InputRejected, match="entities of its own"):
        read_grids(path)


@pytest.mark.parametrize("cut", [0.01, 0.1, 0.3, 0.6, 0.9])
@pytest.mark.parametrize("name", ["a.xls", "a.xlsb", "a.ods"])
def test_a_file_cut_off_is_refused(tmp_path, name, cut):
    path = tmp_path / name
    {"a.xls": xls, "a.xlsb": xlsb}.get(name, lambda at, _cells: ods(at, ROWS))(path, CELLS)
    path.write_bytes(path.read_bytes()[: int(path.stat().st_size * cut)])
    with pytest.raises(InputRejected):
        read_grids(path)


NUMBERS: list[list[object]] = [
    ["Mark", "Width", "Height"],
    ["101", 36.5, 84.0],
    ["102", 1.0 / 3.0, ""],
    ["103", 914.4, 1e-3],
]
PLACED = [(row, column, cell) for row, line in enumerate(NUMBERS) for column, cell in enumerate(line) if cell != ""]
KINDS = {
    "a.xls": lambda path: xls(path, PLACED),
    "a.xlsb": lambda path: xlsb(path, PLACED, span=(4, 3)),
    "a.ods": lambda path: ods(path, NUMBERS),
}


def as_read(path):
    return [[*row] + [""] * (3 - len(row)) for row in read_grids(path)[0].rows]


@pytest.mark.parametrize("name", KINDS)
def test_both_readers_read_the_same_and_the_second_alone_reads_it_too(tmp_path, name, monkeypatch):
    path = KINDS[name](tmp_path / name)
    assert (as_read(path), read_grids(path)[0].doubtful, read_grids(path)[0].notes) == (NUMBERS, {}, ())

    def fails(_stream):
        raise CalamineError("an unknown record")

    monkeypatch.setattr(grid.CalamineWorkbook, "from_filelike", fails)
    (found,) = read_grids(path)
    assert as_read(path) == NUMBERS
    assert "second reader" in found.notes[0]


@pytest.mark.parametrize("name", KINDS)
def test_a_number_that_two_readers_read_differently_is_named_and_not_taken(tmp_path, name, monkeypatch):
    path = KINDS[name](tmp_path / name)
    kind, other = name[1:], [list(row) for row in NUMBERS]
    other[1][1], other[2][2], other[3][1] = 3.65, 80.0, "914,4"
    monkeypatch.setitem(second_reader._READERS, kind, lambda _content: [("Doors", False, other)])
    found = read_survey(path, SurveyOptions(bare_unit="mm"))
    told = {(problem.row, problem.column): problem.message.partition(" by two") for problem in found.problems}
    assert {place: readings for place, (readings, by_two, _) in told.items() if by_two} == {
        (2, "B"): "is read as 36.5 and 3.65",
        (3, "C"): "is read as nothing and 80",
        (4, "B"): 'is read as 914.4 and "914,4"',
    }
    assert found.openings == ()


def test_a_row_far_down_in_which_nothing_stands_is_no_row(tmp_path):
    path = xlsb(tmp_path / "a.xlsb", PLACED, span=(4, 3), empty_row=0xFFFFFFF0)
    assert [rows for _, _, rows in second_reader.read_old_again(path.read_bytes(), ".xlsb")] == [NUMBERS]
    assert as_read(path) == NUMBERS


def test_a_sheet_that_says_it_is_wider_than_it_can_be_is_read_by_the_first_alone(tmp_path):
    path = xlsb(tmp_path / "a.xlsb", PLACED, span=(4, 1_000_000))
    assert second_reader.read_old_again(path.read_bytes(), ".xlsb") is None
    assert as_read(path) == NUMBERS


def test_what_only_breaks_the_second_reader_is_read_by_the_first_alone(tmp_path, monkeypatch):
    def fails(_content):
        raise struct.error("cut off")

    def slips(_content):
        raise NameError("a fault of ours")

    path = xls(tmp_path / "a.xls", PLACED)
    monkeypatch.setitem(second_reader._READERS, ".xls", fails)
    assert as_read(path) == NUMBERS
    monkeypatch.setitem(second_reader._READERS, ".xls", slips)
    with pytest.raises(NameError):
        read_grids(path)


def test_sectors_that_run_in_a_circle_are_refused(tmp_path):
    path = xls(tmp_path / "a.xls", CELLS)
    content = bytearray(path.read_bytes())
    struct.pack_into("<I", content, 512 + 4 * 5, 3)
    path.write_bytes(content)
    with pytest.raises(InputRejected, match="circle"):
        read_grids(path)
