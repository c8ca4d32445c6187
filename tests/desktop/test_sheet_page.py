"""The page of a sheet alone: what its questions say, and what a click on an answer comes to."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from hwsched.desktop.survey.reading_page import ReadingPage
from hwsched.desktop.survey.sheet_page import SheetPage
from hwsched.exchange.problems import causes
from hwsched.exchange.survey.book import SurveyOptions, read_survey
from hwsched.exchange.survey.outline import outline


def test_a_table_of_types_beside_the_openings_is_answered_by_a_click(qtbot, tmp_path):
    path = tmp_path / "types.csv"
    path.write_text("Type,Width,Height\nA,36,84\nB,30,80\n,,\nNo,Type,Level\n101,A,1\n102,B,1\n", encoding="utf-8")
    options = SurveyOptions(bare_unit="in")
    found = read_survey(path, options)
    (sheet,) = outline(path, options)
    page = SheetPage(sheet, options, found.questions)
    qtbot.addWidget(page)
    said = [label.text() for label in page.findChildren(QLabel)]
    assert "Are the rows of the table A1:C3 (A, B) types of the openings in the other one?" in said
    (button,) = [each for (_, answer), each in page.answers.items() if answer == "types"]
    with qtbot.waitSignal(page.said) as told:
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    again = read_survey(path, told.args[0])
    assert [round(each.leaves[0].facts["width_mm"] / 25.4) for each in again.openings] == [36, 30]


def test_a_heading_of_two_readings_and_a_near_word_are_answered_by_a_click_as_by_the_command(qtbot, tmp_path):
    path = tmp_path / "asked.csv"
    path.write_text("Mark,FR,Leaf material\n1,60,timbr\n2,HM,HM\n", encoding="utf-8")
    words = {"FR": {"60": "unknown"}, "Leaf material": {"timbr": "wood"}}
    by_command = read_survey(path, SurveyOptions(columns={"FR": "opening.frame_material"}, words=words))
    options = SurveyOptions()
    for answer in ("Frame material", "Wood, solid core", "unknown"):
        found = read_survey(path, options)
        (sheet,) = outline(path, options)
        page = SheetPage(sheet, options, found.questions, causes(found.problems))
        qtbot.addWidget(page)
        button = next(each for (_, said), each in page.answers.items() if said == answer)
        with qtbot.waitSignal(page.said) as told:
            qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
        options = told.args[0]
    found = read_survey(path, options)
    assert (found.openings, found.problems, found.questions) == (by_command.openings, (), ())
    assert len(found.openings) == 2


def test_where_an_opening_stands_is_said_on_the_page_of_the_reading(qtbot, tmp_path):
    path = tmp_path / "side.csv"
    path.write_text("Nr of door,101,102\nWidth of leaf,36,30\nHgt.,84,80\n", encoding="utf-8")
    options = SurveyOptions(bare_unit="in")
    page = ReadingPage(outline(path, options), options, ())
    qtbot.addWidget(page)
    with qtbot.waitSignal(page.said) as told:
        page.openings_in.setCurrentIndex(page.openings_in.findText("a column"))
        page.openings_in.activated.emit(page.openings_in.currentIndex())
    (sheet,) = outline(path, told.args[0])
    assert (sheet.name, [column.header for column in sheet.columns]) == (
        "side, turned", ["Nr of door", "Width of leaf", "Hgt."],
    )  # fmt: skip
