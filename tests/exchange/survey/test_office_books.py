"""Invented workbooks as offices keep them: what no cell says is named, two-line rows and sheets of buildings are read.

Written by hand: which openings a person reads, what is asked, what is said.
"""

import pytest
from openpyxl import Workbook
from openpyxl.styles import Font, PatternFill

from hwsched.exchange.survey.answers import answered
from hwsched.exchange.survey.book import SurveyOptions, read_survey
from tests.exchange.surveys import said


def book(folder, sheets, draw=lambda _book: None):
    made = Workbook()
    made.remove(made.active)
    for name, rows in sheets.items():
        sheet = made.create_sheet(name)
        for row in rows:
            sheet.append(row)
    draw(made)
    made.save(folder / "office.xlsx")
    return folder / "office.xlsx"


def widths(found):
    return {each.mark: [round(leaf.facts["width_mm"]) for leaf in each.leaves] for each in found.openings}


def test_rows_of_two_lines_under_merged_marks(tmp_path):
    rows = [
        ["Door", "Leaf", "Width", "Height", "Hardware"],
        ["", "", "mm", "mm", "Set"],
        ["D1", "A", 900, 2100, "H1"],
        [None, "I", 450, 2100, ""],
        ["D2", "", 900, 2100, "H2"],
        [None, "", None, None, "with closer"],
        ["D3", "", 900, 2100, "H1"],
    ]

    def merge(made):
        made["Doors"].merge_cells("A3:A4")
        made["Doors"].merge_cells("A5:A6")

    found = read_survey(book(tmp_path, {"Doors": rows}, merge), SurveyOptions())
    assert (said(found), found.questions) == ("", ())
    assert widths(found) == {"D1": [900, 450], "D2": [900], "D3": [900]}
    assert "sheet Doors, row 6: a further line of D2" in found.passed_over


QUAY = [
    ["Quay 4 - door list, ground floor"],
    ["All dimensions in mm unless noted"],
    [],
    ["Door", "", "Structural opening", "", "Leaf", "", "", "", "Frame", "", "Fire", "Remarks"],
    ["No.", "Room", "W [mm]", "H [mm]", "W [mm]", "H [mm]", "T [mm]", "Material", "Material", "Type", "Class", ""],
    ["T 0.01", "Entrance", 2010, 2135, "2 x 955", 2110, 54, "Aluminium", "Aluminium", "U", "-", "automatic"],
    ["T 0.02", "Office 1", 885, 2135, 860, 2110, 40, "Timber", "Steel", "K", "-", ""],
    ["T 0.03", "Office 2", *'"' * 9, ""],
    ["T 0.04", "Plant", "1 010", 2135, "985", 2110, "65", "Steel", "Steel", "E", "EI2 30-C", "self closing"],
    ["T 0.05", "Stair", "1 010", 2135, "985", 2110, "65", "Steel", "Steel", "E", "T30-RS", ""],
    ["Total: 5 doors"],
    ["1) Fire classes as on the plate"],
]


def test_a_metric_list_under_two_lines_of_merged_headings_with_units(tmp_path):
    def merge(made):
        for cells in ("A1:L1", "A4:B4", "C4:D4", "E4:H4", "I4:J4", "L4:L5"):
            made["GF"].merge_cells(cells)

    found = read_survey(book(tmp_path, {"GF": QUAY}, merge), SurveyOptions())
    # The opening in the wall is no leaf, and which frame E is stands on a drawing.
    assert [each.header for each in found.unmapped] == [
        "Structural opening W [mm]", "Structural opening H [mm]", "Frame Type",
    ]  # fmt: skip
    assert said(found) == ""
    (question,) = found.questions
    assert (question.read, question.kind) == ('"-" (3)', "dash")
    assert widths(found) == {"T 0.01": [955, 955], "T 0.02": [860], "T 0.03": [860], "T 0.04": [985], "T 0.05": [985]}
    told = {each.mark: (each.facts["room_to"], each.facts.get("rating")) for each in found.openings}
    assert told == {
        "T 0.01": ("Entrance", None), "T 0.02": ("Office 1", None), "T 0.03": ("Office 2", None),
        "T 0.04": ("Plant", "30"), "T 0.05": ("Stair", "30"),
    }  # fmt: skip
    leaves = [each.leaves[0].facts for each in found.openings]
    assert [(leaf["thickness_mm"], leaf["height_mm"]) for leaf in leaves] == [
        (54, 2110), (40, 2110), (40, 2110), (65, 2110), (65, 2110),
    ]  # fmt: skip
    assert [leaf["material"] for leaf in leaves] == ["aluminium", "wood", "wood", "hollow-metal", "hollow-metal"]


NORTH = [["Door", "Width", "Height"], ["101", 36, 84], ["102", 36, 84]]
SOUTH = [["Door", "Width", "Height"], ["101", 30, 80], ["103", 36, 84]]


def test_a_sheet_for_each_building_with_marks_that_stand_in_both(tmp_path):
    path = book(tmp_path, {"North Block": NORTH, "South Block": SOUTH, "Notes": [["Widths as on the frame"]]})
    options = SurveyOptions(bare_unit="in")
    found = read_survey(path, options)
    assert {each.mark: each.facts["building"] for each in found.openings} == {
        "102": "North Block",
        "103": "South Block",
    }
    (asked,) = found.questions
    assert (asked.kind, asked.read, asked.answers) == ("mark", '"101"', ("all of it", "{sheet}-{Door}"))
    found = read_survey(path, answered(options, asked, asked.answers[1]))
    assert (said(found), found.questions) == ("", ())
    assert widths(found) == {
        "North Block-101": [914], "North Block-102": [914], "South Block-101": [762], "South Block-103": [914],
    }  # fmt: skip


def test_sheets_whose_marks_differ_ask_nothing(tmp_path):
    found = read_survey(
        book(tmp_path, {"North Block": NORTH, "East wing": [SOUTH[0], SOUTH[2]]}), SurveyOptions(bare_unit="in")
    )
    assert (said(found), found.questions, len(found.openings)) == ("", (), 3)


DOORS = [["Door", "Width", "Height"], *([str(100 + n), 36, 84] for n in range(1, 7))]


def looks(folder, draw):
    found = read_survey(book(folder, {"Doors": DOORS}, lambda made: draw(made["Doors"])), SurveyOptions(bare_unit="in"))
    assert (said(found), len(found.openings)) == ("", 6)
    return [each.describe() for each in found.assumptions if "unit" not in each.text]


def test_hidden_rows_and_columns_are_read_and_named(tmp_path):
    def draw(sheet):
        sheet.row_dimensions[4].hidden = sheet.row_dimensions[5].hidden = True
        sheet.row_dimensions[40].hidden = True
        sheet.column_dimensions["C"].hidden = True

    assert looks(tmp_path, draw) == [
        "sheet Doors: rows hidden in the file read like the others: 4, 5 (2)",
        "sheet Doors, column C (Height): a column hidden in the file, read (6)",
    ]


RED, GREY, WHITE = (PatternFill("solid", fgColor=colour) for colour in ("FFFF0000", "FFDDDDDD", "FFFFFFFF"))


def test_struck_letters_and_colours_are_named_and_mean_nothing(tmp_path):
    def draw(sheet):
        for cell in (*sheet[1], *sheet[3]):
            cell.fill = RED
        sheet["A6"].font = Font(strike=True)
        sheet["B5"].fill = WHITE

    assert looks(tmp_path, draw) == [
        "sheet Doors: rows with struck letters read like the others: 6 (1)",
        "sheet Doors: rows with a colour of their own read like the others: colours say nothing here: 3 (1)",
    ]


@pytest.mark.parametrize("rows", [range(2, 8), ()])
def test_a_sheet_that_is_drawn_in_colours_is_no_list_of_exceptions(tmp_path, rows):
    def draw(sheet):
        for row in rows:
            for cell in sheet[row]:
                cell.fill = GREY

    assert looks(tmp_path, draw) == []
