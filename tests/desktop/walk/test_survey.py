"""A list in millimetres is taken in where inches are usual: asked for its unit once, and told as understood before."""

import pytest
from PySide6.QtWidgets import QApplication, QFileDialog, QLineEdit

from tests.desktop.conftest import checked_of
from tests.desktop.walk.hands import KEY

LIST = "Mark,Width,Height,Thickness,Backset\nN-1,915,2134,45,60\nN-2,815,2034,40,55\n"


def preview_after(hands, before):
    """Wait until the file was read, and return what is shown of it."""
    survey = hands.window.survey
    hands.qtbot.waitUntil(
        lambda: survey.preview is not None and survey.preview is not before and survey.preview.isVisible(),
        timeout=20_000,
    )
    hands.done()
    hands.wake()
    return survey.preview


def answer_to(preview, about, text):
    (button,) = [each for (said, answer), each in preview.sheet.answers.items() if about in said and answer == text]
    return button


def test_a_list_in_millimetres_is_asked_for_its_unit_and_told_as_understood(hands, at_work, tmp_path):
    path = tmp_path / "list.csv"
    path.write_text(LIST, encoding="utf-8")

    def named(asked):
        assert isinstance(asked, QFileDialog)
        assert isinstance(QApplication.focusWidget(), QLineEdit)
        hands.over(str(path))
        hands.key(KEY.Key_Return)

    hands.answer(named)
    hands.command("Take in survey")
    before = preview_after(hands, None)
    assert not before.take.isEnabled(), "915 inches are no door"
    # Doubted once for all columns, however many cells it is.
    hands.press(answer_to(before, "8 cells cannot be true", "mm"))
    preview = preview_after(hands, before)
    hands.page(preview.pages, "Read as")
    read = preview.pages.currentWidget()
    lines = [read.topLevelItem(n).text(0) for n in range(read.topLevelItemCount())]
    assert [line for line in lines if "millimetres" in line] == lines
    assert len(lines) == 4
    hands.page(preview.pages, "The sheet")
    sheet = preview.sheet
    hands.line(sheet.table, sheet.model.index(1, 3))
    assert sheet.echo.text() == 'understood as 1 49/64", 45 mm'
    # What is typed over it is echoed while it is typed, and in any unit that it names.
    hands.field(sheet.cell, "1 3/4 in")
    assert sheet.echo.text() == 'understood as 1 3/4", 44.45 mm'
    hands.key(KEY.Key_Return)
    preview = preview_after(hands, preview)
    hands.press(preview.take)
    hands.done()
    leaves = {mark: checked_of(at_work, mark).given.leaves[0] for mark in ("N-1", "N-2")}
    assert (leaves["N-1"].width_mm, leaves["N-1"].height_mm) == (915.0, 2134.0)
    assert leaves["N-1"].thickness_mm == pytest.approx(44.45)
    assert leaves["N-2"].thickness_mm == 40.0
    hands.undo()
    assert not {"N-1", "N-2"} & {e.given.opening.mark for e in at_work.frame.state.workspace.checked.values()}
