"""The page of a sheet alone: what its questions say, and what a click on an answer comes to."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from hwsched.desktop.survey.sheet_page import SheetPage
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
    assert "Are the rows of the table A1 to C3 (A, B) types of the openings in the other one?" in said
    (button,) = [each for (_, answer), each in page.answers.items() if answer == "types"]
    with qtbot.waitSignal(page.said) as told:
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    again = read_survey(path, told.args[0])
    assert [round(each.leaves[0].facts["width_mm"] / 25.4) for each in again.openings] == [36, 30]
