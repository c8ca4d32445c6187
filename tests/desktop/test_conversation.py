"""A stranger's list is told to the program by mouse and keys alone, and the clicks and keys are counted."""

import pytest
from PySide6.QtCore import QEvent, QObject, QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QInputDialog, QLabel

from hwsched.desktop.window import Window
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project, open_project
from hwsched.model.queries import read_inputs
from hwsched.operations.survey.survey_import import import_survey
from tests.desktop.conftest import idle

LEFT = Qt.MouseButton.LeftButton
LIST = """Door schedule of the yard,,,,,,
DOOR,,,,FRAME,FIRE,
NO.,WIDTH,HEIGHT,MATERIAL,MATERIAL,RATING,EGRESS
,(in),(in),,,(min),
LEVEL 1,,,,,,
101,36,84,aluminim,HM,-,-
102,36,84,HM,HM,90,YES
103,32,84,blockboard,WD,-,-
Sub-total: 3,,,,,,
LEVEL 2,,,,,,
201,36,84,HM,HM,-,YES
202,36,80,blockboard,HM,90,-
Sub-total: 2,,,,,,
Grand total: 5,,,,,,
"""
AS_TOLD = SurveyOptions(
    dashes={"column F": "none", "column G": "none"},
    words={"column D": {"aluminim": "aluminium", "blockboard": "wood"}},
)
MOST = 12
"""Clicks and keys, apart from typing, within which such a list goes in."""


class Counter(QObject):
    """Counts what a person's hands do: buttons pressed and keys that write nothing."""

    def __init__(self):
        super().__init__()
        self.done = set()

    @property
    def count(self):
        return len(self.done)

    def eventFilter(self, watched, event):  # noqa: N802
        kind = event.type()
        if watched.isWidgetType() and kind in (QEvent.Type.MouseButtonPress, QEvent.Type.KeyPress):
            # What a widget leaves to the one around it comes again, with the same time.
            is_typed = kind == QEvent.Type.KeyPress and event.text().isprintable() and event.text()
            if not is_typed:
                what = event.key() if kind == QEvent.Type.KeyPress else event.globalPosition().toTuple()
                self.done.add((kind, event.timestamp(), what))
        return False


@pytest.fixture
def window(qtbot, tmp_path, monkeypatch):
    monkeypatch.setenv("HWSCHED_PLANS", str(tmp_path / "plans"))
    create_project(str(tmp_path / "p.hwsched"), "Yard").close()
    (tmp_path / "list.csv").write_text(LIST, encoding="utf-8")
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(tmp_path / "list.csv"), ""))
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    shown.project.open_project(str(tmp_path / "p.hwsched"))
    idle(qtbot, shown)
    return shown


@pytest.fixture
def counter():
    found = Counter()
    QApplication.instance().installEventFilter(found)
    yield found
    QApplication.instance().removeEventFilter(found)


def seen(window, qtbot, before=None):
    """Wait until the file was read, and return what is shown of it."""
    qtbot.waitUntil(
        lambda: (
            window.survey.preview is not before and window.survey.preview is not None
            and window.survey.preview.isVisible() and not window.frame.jobs.busy
        ),
        timeout=20000,
    )  # fmt: skip
    return window.survey.preview


def click(window, qtbot, about, answer):
    """Click the answer of the question that has these words."""
    before = window.survey.preview
    (button,) = [each for (said, text), each in before.sheet.answers.items() if about in said and text == answer]
    before.sheet.area.ensureWidgetVisible(button)
    qtbot.mouseClick(button, LEFT)
    return seen(window, qtbot, before)


def start(window, qtbot):
    QTest.keyClick(window, Qt.Key.Key_I, Qt.KeyboardModifier.ControlModifier)
    return seen(window, qtbot)


def facts(path):
    with open_project(str(path)) as project, project.reading() as connection:
        return {
            given.opening.mark: (
                given.opening.level, given.opening.rating, given.opening.egress, given.opening.frame_material,
                given.leaves[0].width_mm, given.leaves[0].height_mm, given.leaves[0].material,
            )
            for given in read_inputs(connection)
        }  # fmt: skip


def test_a_list_of_three_header_lines_goes_in_within_twelve_clicks(window, qtbot, counter, tmp_path):
    dialog = start(window, qtbot)
    assert not dialog.take.isEnabled()
    assert dialog.pages.currentWidget() is dialog.sheet
    click(window, qtbot, "aluminim", "Aluminium")
    # No word is near: what it means is chosen from all.
    before = window.survey.preview
    box = before.sheet.meanings["blockboard"]
    before.sheet.area.ensureWidgetVisible(box)
    qtbot.mouseClick(box, LEFT)
    QTest.keyClicks(box.view(), "Wood, s")
    QTest.keyClick(box.view(), Qt.Key.Key_Return)
    seen(window, qtbot, before)
    click(window, qtbot, "FIRE RATING", "none")
    dialog = click(window, qtbot, "EGRESS", "none")
    qtbot.mouseClick(dialog.take, LEFT)
    idle(qtbot, window)
    inch = 25.4
    assert facts(tmp_path / "p.hwsched") == {
        "101": (
            "LEVEL 1",
            "none",
            "none",
            "hollow-metal",
            pytest.approx(36 * inch),
            pytest.approx(84 * inch),
            "aluminium",
        ),
        "102": (
            "LEVEL 1",
            "90",
            "egress",
            "hollow-metal",
            pytest.approx(36 * inch),
            pytest.approx(84 * inch),
            "hollow-metal",
        ),
        "103": ("LEVEL 1", "none", "none", "wood", pytest.approx(32 * inch), pytest.approx(84 * inch), "wood"),
        "201": (
            "LEVEL 2",
            "none",
            "egress",
            "hollow-metal",
            pytest.approx(36 * inch),
            pytest.approx(84 * inch),
            "hollow-metal",
        ),
        "202": ("LEVEL 2", "90", "none", "hollow-metal", pytest.approx(36 * inch), pytest.approx(80 * inch), "wood"),
    }
    # The file asked for, four questions answered, of which one from a list, and taken in.
    assert 7 <= counter.count <= MOST, counter.count
    with create_project(str(tmp_path / "command.hwsched"), "Yard") as other:
        import_survey(other, tmp_path / "list.csv", AS_TOLD, who="t")
    assert facts(tmp_path / "command.hwsched") == facts(tmp_path / "p.hwsched")


ROWS = "Mark,Width,Height,Remarks\n101-103,36,84,\n104,32,80,DELETED\n105,NOT USED,,\n106,30.5,84,\n"


def test_one_unit_for_all_columns_several_doors_and_a_deleted_one_take_three_clicks(window, qtbot, tmp_path):
    (tmp_path / "list.csv").write_text(ROWS, encoding="utf-8")
    start(window, qtbot)
    click(window, qtbot, "has no unit", "in")
    dialog = window.survey.preview
    assert dialog.sheet.sheet.passed == {4: "105, not used"}
    click(window, qtbot, "several-marks", "Mend them: each mark becomes an opening of its own")
    dialog = click(window, qtbot, "said-deleted", "Mend them: they are left out")
    qtbot.mouseClick(dialog.take, LEFT)
    idle(qtbot, window)
    assert sorted(facts(tmp_path / "p.hwsched")) == ["101", "102", "103", "106"]


def test_answers_are_taken_back_cells_mended_columns_told_and_the_plan_kept(window, qtbot, tmp_path, monkeypatch):
    dialog = start(window, qtbot)
    assert not dialog.take_back.isEnabled()
    dialog = click(window, qtbot, "FIRE RATING", "none")
    assert dialog.sheet.options.dashes == {"FIRE RATING (min)": "none"}
    QTest.keyClick(dialog, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    dialog = seen(window, qtbot, dialog)
    assert dialog.sheet.options == SurveyOptions()
    # A cell is clicked and mended: C6 held 84.
    table = dialog.sheet.table
    index = dialog.sheet.model.index(5, 2)
    table.scrollTo(index)
    qtbot.mouseClick(table.viewport(), LEFT, pos=table.visualRect(index).center())
    assert dialog.sheet.cell.text() == "84"
    dialog.sheet.cell.setFocus()
    dialog.sheet.cell.selectAll()
    QTest.keyClicks(dialog.sheet.cell, "80")
    QTest.keyClick(dialog.sheet.cell, Qt.Key.Key_Return)
    dialog = seen(window, qtbot, dialog)
    assert dialog.sheet.options.corrections == {"list!C6": "80"}
    assert dialog.sheet.column == 2
    # The heading of a column is clicked, and the column left out.
    header = dialog.sheet.table.horizontalHeader()
    x = header.sectionViewportPosition(4) + header.sectionSize(4) // 2
    qtbot.mouseClick(header.viewport(), LEFT, pos=header.viewport().rect().center().__class__(x, 5))
    box = dialog.sheet.fact
    assert box.currentText() == "as the heading says: Frame material"
    # An arrow opens the list; what it goes over on the way is not taken.
    for key in (Qt.Key.Key_Down, Qt.Key.Key_Down, Qt.Key.Key_Return):
        QTest.keyClick(box.view() if box.view().isVisible() else box, key)
    dialog = seen(window, qtbot, dialog)
    assert dialog.sheet.options.columns == {"column E": ""}
    monkeypatch.setattr(QInputDialog, "getText", lambda *_: ("yard", True))
    qtbot.mouseClick(dialog.to_plan, LEFT)
    idle(qtbot, window)
    assert 'fact = ""' in (tmp_path / "plans" / "yard.toml").read_text(encoding="utf-8")
    for _ in range(2):
        qtbot.mouseClick(dialog.take_back, LEFT)
        dialog = seen(window, qtbot, dialog)
    assert dialog.sheet.options == SurveyOptions()
    monkeypatch.setattr(QInputDialog, "getItem", lambda *_: ("yard", True))
    qtbot.mouseClick(dialog.by_plan, LEFT)
    dialog = seen(window, qtbot, dialog)
    assert dialog.sheet.options.plan is not None
    assert dialog.sheet.model.headerData(4, Qt.Orientation.Horizontal) == "E\nnot read"
    dialog.reject()


STRANGE = """Liste Haus Nord;;;;
;;;;
Tür;Lage;;Blatt;
Nr.;Geschoß;Raum;Breite;Höhe
T001;EG;Büro 1;885;2010
T002;1.OG;Büro 2;885;2010
"""


def test_headings_in_another_tongue_are_told_column_by_column_under_the_row_that_is_seen_as_header(
    window, qtbot, monkeypatch, tmp_path
):
    """The only answer that is offered where no heading is known, that a column is the mark's, is taken at once."""
    (tmp_path / "list.csv").write_text(STRANGE, encoding="cp1252")
    preview = start(window, qtbot)
    assert "No column is that of the marks" in " ".join(each.text() for each in preview.findChildren(QLabel))
    assert preview.sheet.sheet.header_row == 4

    def column(letter):
        header = window.survey.preview.sheet.table.horizontalHeader()
        at = "ABCDE".index(letter)
        qtbot.mouseClick(header.viewport(), LEFT, pos=QPoint(header.sectionViewportPosition(at) + 5, 5))

    def carries(letter, words):
        before = window.survey.preview
        column(letter)
        assert QApplication.focusWidget() is before.sheet.fact
        qtbot.keyClick(before.sheet.fact, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
        qtbot.keyClicks(before.sheet.fact.view(), words)
        qtbot.keyClick(before.sheet.fact.view(), Qt.Key.Key_Return)
        assert before.sheet.fact.currentText() == words
        return seen(window, qtbot, before)

    column("A")
    qtbot.mouseClick(preview.sheet.is_mark, LEFT)
    preview = seen(window, qtbot, preview)
    words = " ".join(each.text() for each in preview.findChildren(QLabel))
    assert "No column is that of the marks" not in words
    assert "2 new, 0 changed" in words
    preview = carries("B", "Opening: Level")
    assert preview.sheet.sheet.header_row == 4
    qtbot.mouseClick(preview.take, LEFT)
    idle(qtbot, window)
    assert {mark: level for mark, (level, *_) in facts(tmp_path / "p.hwsched").items()} == {
        "T001": "EG", "T002": "1.OG"
    }  # fmt: skip


def test_a_card_says_which_rows_it_speaks_of_and_an_empty_sheet_asks_for_no_column(window, qtbot, tmp_path):
    (tmp_path / "list.csv").write_text("mark,level,hand\n1,A,LH\n2,A,RH\n1,A,LH\n", encoding="utf-8")
    preview = start(window, qtbot)
    said = [each.text() for each in preview.sheet.area.findChildren(QLabel)]
    assert any(each.startswith("Row 4: is a") and "second row of the mark 1" in each for each in said), said
    QTest.keyClick(preview, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: not preview.isVisible())
    (tmp_path / "list.csv").write_text("", encoding="utf-8")
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    QTest.keyClick(window, Qt.Key.Key_I, Qt.KeyboardModifier.ControlModifier)
    preview = seen(window, qtbot, preview)
    assert [each.text() for each in preview.sheet.area.findChildren(QLabel)] == ["Nothing stands in this sheet."]
    assert not preview.take.isEnabled()
    QTest.keyClick(preview, Qt.Key.Key_Escape)
