"""A stranger's list behind a cover is found and told by keys, and what was said of it outlives a slip of a key."""

import pytest
from openpyxl import Workbook
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel

from hwsched.desktop.window import Window
from hwsched.exchange.survey.facts import SurveyOptions
from hwsched.model.project import create_project
from tests.desktop.conftest import idle

LEFT, ALT, CONTROL = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ControlModifier
TITLES = ("Tuernr.", "Haus", "Blattdicke", "Breite", "Bemerkung")
ROWS = (("T1", "Nord", 42, 860, "klemmt"), ("T2", "Sued", 45.5, 985, None), ("T3", "Nord", 58, 860, None))


@pytest.fixture
def window(qtbot, tmp_path, monkeypatch):
    monkeypatch.setenv("HWSCHED_PLANS", str(tmp_path / "plans"))
    create_project(str(tmp_path / "p.hwsched"), "Yard").close()
    book = Workbook()
    book.active.title = "Deckblatt"
    book.active.append(("Bestandsaufnahme",))
    book.active.append(("Stand: Mai",))
    sheet = book.create_sheet("Liste")
    for row in (("Liste",), (), TITLES, *ROWS):
        sheet.append(row)
    book.save(tmp_path / "list.xlsx")
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.resize(1366, 768)
    shown.show()
    shown.project.open_project(str(tmp_path / "p.hwsched"))
    idle(qtbot, shown)
    return shown


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


def look(window, qtbot, tmp_path, before=None):
    window.survey.take_survey(tmp_path / "list.xlsx")
    return seen(window, qtbot, before)


def press_cell(qtbot, dialog, row, column):
    """Click a cell of the sheet, as counted from 0."""
    table = dialog.sheet.table
    at = table.visualRect(table.model().index(row, column)).center()
    qtbot.mouseClick(table.viewport(), LEFT, pos=at)


def carries(qtbot, window, dialog, column, typed):
    """Say by keys alone what the column in hand carries: go to the list, type, take."""
    press_cell(qtbot, dialog, 3, column)
    QTest.keyClick(dialog, Qt.Key.Key_A, ALT)
    box = dialog.sheet.fact
    assert box.hasFocus()
    for letter in typed:
        QTest.keyClick(box.view() if box.view().isVisible() else box, letter)
        QApplication.processEvents()
        assert window.survey.preview is dialog, "a letter on the way was taken for the answer"
        assert not window.frame.jobs.busy
    assert box.view().isVisible()
    QTest.keyClick(box.view(), Qt.Key.Key_Return)
    return seen(window, qtbot, dialog)


def texts(widget):
    return [label.text() for label in widget.findChildren(QLabel) if label.isVisible()]


def test_the_list_is_shown_though_a_cover_comes_first(window, qtbot, tmp_path):
    dialog = look(window, qtbot, tmp_path)
    assert dialog.sheet.sheet.name == "Liste"
    assert dialog.sheet.sheet.header_row == 3


def test_letters_look_for_a_word_and_only_enter_takes_it(window, qtbot, tmp_path):
    dialog = look(window, qtbot, tmp_path)
    press_cell(qtbot, dialog, 3, 0)
    QTest.keyClick(dialog, Qt.Key.Key_M, ALT)
    dialog = seen(window, qtbot, dialog)
    dialog = carries(qtbot, window, dialog, 2, "thickness")
    assert dialog.sheet.options.columns == {"column A": "opening.mark", "column C": "leaf.thickness_mm"}
    # An arrow goes from word to word in the list and takes none either; Escape leaves all as it was.
    box = dialog.sheet.unit
    box.setFocus()
    QTest.keyClick(box, Qt.Key.Key_Down)
    assert box.view().isVisible()
    QTest.keyClick(box.view(), Qt.Key.Key_Down)
    QTest.keyClick(box.view(), Qt.Key.Key_Escape)
    assert window.survey.preview is dialog
    assert not window.frame.jobs.busy
    assert box.currentData() is None


def test_what_is_not_read_is_said_where_nothing_is_asked(window, qtbot, tmp_path):
    dialog = look(window, qtbot, tmp_path)
    press_cell(qtbot, dialog, 3, 0)
    QTest.keyClick(dialog, Qt.Key.Key_M, ALT)
    dialog = seen(window, qtbot, dialog)
    (said,) = [text for text in texts(dialog.sheet) if "not read" in text]
    assert "Haus, Blattdicke, Breite, Bemerkung" in said
    assert not [text for text in texts(dialog.sheet) if "Nothing is asked" in text]


def test_the_underlined_letter_takes_an_answer_back_as_its_keys_do(window, qtbot, tmp_path):
    dialog = look(window, qtbot, tmp_path)
    for key, modifier in ((Qt.Key.Key_B, ALT), (Qt.Key.Key_Z, CONTROL)):
        press_cell(qtbot, dialog, 3, 0)
        QTest.keyClick(dialog, Qt.Key.Key_M, ALT)
        dialog = seen(window, qtbot, dialog)
        assert dialog.take.isEnabled()
        QTest.keyClick(dialog, key, modifier)
        dialog = seen(window, qtbot, dialog)
        assert dialog.sheet.options == SurveyOptions()


def test_what_was_said_outlives_the_preview_until_the_file_is_taken_in(window, qtbot, tmp_path):
    dialog = look(window, qtbot, tmp_path)
    press_cell(qtbot, dialog, 3, 0)
    QTest.keyClick(dialog, Qt.Key.Key_M, ALT)
    dialog = seen(window, qtbot, dialog)
    dialog = carries(qtbot, window, dialog, 1, "building")
    said = dialog.sheet.options
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: window.survey.preview is None)
    dialog = look(window, qtbot, tmp_path)
    assert dialog.sheet.options == said
    assert any("said of this file before is kept" in text for text in texts(dialog))
    # It can still be taken back, one by one.
    QTest.keyClick(dialog, Qt.Key.Key_Z, CONTROL)
    dialog = seen(window, qtbot, dialog)
    assert dialog.sheet.options.columns == {"column A": "opening.mark"}
    qtbot.mouseClick(dialog.take, LEFT)
    idle(qtbot, window)
    # Taken in: nothing is left to be kept.
    dialog = look(window, qtbot, tmp_path)
    assert not any("said of this file before is kept" in text for text in texts(dialog))


def test_what_was_said_is_not_laid_over_another_file_of_the_name(window, qtbot, tmp_path):
    dialog = look(window, qtbot, tmp_path)
    press_cell(qtbot, dialog, 3, 0)
    QTest.keyClick(dialog, Qt.Key.Key_M, ALT)
    dialog = seen(window, qtbot, dialog)
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: window.survey.preview is None)
    book = Workbook()
    book.active.append(("Z", *TITLES))
    book.active.append((1, *ROWS[0]))
    book.save(tmp_path / "list.xlsx")
    dialog = look(window, qtbot, tmp_path)
    assert dialog.sheet.options == SurveyOptions()


def test_lists_of_columns_fill_their_cells(window, qtbot, tmp_path):
    dialog = look(window, qtbot, tmp_path)
    bar = dialog.pages.tabBar()
    place = dialog.pages.indexOf(dialog.reading)
    qtbot.mouseClick(bar, LEFT, pos=bar.tabRect(place).center())
    table = dialog.reading.columns
    qtbot.waitUntil(lambda: table.cellWidget(0, 4) is not None)

    def in_place():
        return all(
            table.cellWidget(row, column).geometry() == table.visualRect(table.model().index(row, column))
            for row in range(table.rowCount())
            for column in (2, 3, 4)
        )

    # Longer than a box waits before it takes the size of its entries.
    qtbot.wait(200)
    qtbot.waitUntil(in_place)


def test_keys_stay_where_they_were_when_an_answer_is_taken(window, qtbot, tmp_path):
    dialog = look(window, qtbot, tmp_path)
    # By keys alone: they begin in the sheet, go to the list, and are there again for the next word.
    assert dialog.sheet.table.hasFocus()
    QTest.keyClick(dialog.sheet.table, Qt.Key.Key_M, ALT)
    dialog = seen(window, qtbot, dialog)
    QTest.keyClick(dialog.focusWidget(), Qt.Key.Key_Right)
    QTest.keyClick(dialog.focusWidget(), Qt.Key.Key_A, ALT)
    QTest.keyClicks(dialog.sheet.fact, "b")
    QTest.keyClicks(dialog.sheet.fact.view(), "uilding")
    QTest.keyClick(dialog.sheet.fact.view(), Qt.Key.Key_Return)
    dialog = seen(window, qtbot, dialog)
    assert dialog.sheet.options.columns == {"column A": "opening.mark", "column B": "opening.building"}
    assert dialog.sheet.fact.hasFocus()
