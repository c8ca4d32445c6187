"""What is selected is things and not rows: it outlives sorting and narrowing, or it is said that it left the view."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QInputDialog, QMessageBox

from hwsched.desktop.survey.register import COLUMNS
from tests.desktop.conftest import choose, idle

LEFT = Qt.MouseButton.LeftButton
FINDINGS = COLUMNS.index("Findings")


def marks(window):
    """Marks of what is selected, as the shared state and as the table have it."""
    checked = window.frame.state.workspace.checked
    told = [checked[each].given.opening.mark for each in window.frame.state.ids]
    rows = sorted(index.row() for index in window.openings.table.selectionModel().selectedRows())
    seen = [window.openings.register.data(window.openings.register.index(row, 0)) for row in rows]
    assert told == seen
    return told


def sort_by(qtbot, window, column):
    header = window.openings.table.horizontalHeader()
    at = header.sectionViewportPosition(column) + header.sectionSize(column) // 2
    qtbot.mouseClick(header.viewport(), LEFT, pos=header.rect().center().__class__(at, header.height() // 2))


def search(qtbot, window, words):
    window.openings.search.setFocus()
    window.openings.search.selectAll()
    if words:
        qtbot.keyClicks(window.openings.search, words)
    else:
        qtbot.keyClick(window.openings.search, Qt.Key.Key_Delete)
    qtbot.waitUntil(lambda: window.openings.register.words == words, timeout=3000)


def press(qtbot, question, text):
    button = next(each for each in question.buttons() if each.text() == text)
    qtbot.mouseClick(button, LEFT)


def test_sorting_takes_neither_the_selection_nor_the_sheet_to_another_opening(at_work, qtbot):
    choose(at_work, "M004")
    for _ in range(2):
        sort_by(qtbot, at_work, FINDINGS)
        assert marks(at_work) == ["M004"]
        assert at_work.sheet.title.text().startswith("M004")


def test_what_narrowing_hides_is_said_comes_back_and_is_not_removed(at_work, qtbot):
    choose(at_work, "M004", "M005")
    total = at_work.openings.register.total()
    search(qtbot, at_work, "m004")
    assert marks(at_work) == ["M004"]
    assert at_work.openings.left.text().startswith("M005 is selected and not in this view")
    at_work.opening.act_remove.trigger()
    assert at_work.opening.removal.text() == "Remove M004 with all its facts?"
    press(qtbot, at_work.opening.removal, "Keep")
    search(qtbot, at_work, "no such words anywhere")
    assert at_work.openings.register.rowCount() == 0
    at_work.opening.removal = None
    at_work.opening.act_remove.trigger()
    assert at_work.opening.removal is None
    assert not at_work.opening.act_remove.isEnabled()
    assert at_work.opening.act_remove.toolTip().endswith("no opening is selected")
    assert at_work.openings.register.total() == total
    search(qtbot, at_work, "")
    assert marks(at_work) == ["M004", "M005"]
    assert not at_work.openings.left.isVisible()


def test_several_are_removed_by_name_and_number_as_one_step(at_work, qtbot):
    choose(at_work, "M004", "M005")
    total = at_work.openings.register.total()
    at_work.opening.act_remove.trigger()
    question = at_work.opening.removal
    assert isinstance(question, QMessageBox)
    assert question.text() == "Remove 2 openings with all their facts?"
    assert "M004, M005" in question.informativeText()
    press(qtbot, question, "Remove 2 openings")
    idle(qtbot, at_work)
    assert at_work.openings.register.total() == total - 2
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert at_work.openings.register.total() == total


@pytest.mark.parametrize(
    ("words", "column", "wanted"),
    [("rated", "Rating", None), ("not rated", "Rating", "Not rated"), ("fits", "State", "Fits")],
)
def test_a_search_does_not_find_what_is_denied(at_work, qtbot, words, column, wanted):
    search(qtbot, at_work, words)
    register, place = at_work.openings.register, COLUMNS.index(column)
    found = {register.data(register.index(row, place)) for row in range(register.rowCount())}
    assert "Not rated" not in found or wanted == "Not rated"
    assert wanted is None or found == {wanted}


def test_thickness_and_parts_are_found(at_work, qtbot):
    checked = at_work.frame.state.workspace.checked
    part = next(p.part for each in checked.values() if each.fit for p in each.fit.parts if p.role == "unit")
    search(qtbot, at_work, part)
    register = at_work.openings.register
    found = {register.id_at(row) for row in range(register.rowCount())}
    assert found == {id_ for id_, each in checked.items() if each.fit and any(p.part == part for p in each.fit.parts)}
    search(qtbot, at_work, "thick 1 3/4")
    found = {register.id_at(row) for row in range(register.rowCount())}
    thick = {id_ for id_, each in checked.items() if any(leaf.thickness_mm == 44.45 for leaf in each.given.leaves[:1])}
    assert thick
    assert thick <= found


def test_another_project_begins_with_nothing_narrowed_and_no_history(at_work, qtbot, tmp_path):
    search(qtbot, at_work, "m004")
    at_work.history.act_history.trigger()
    shown = at_work.frame.pages.widgets["history"]
    assert shown.isVisible()
    closed = []
    shown.destroyed.connect(lambda: closed.append(shown))
    at_work.project.new_project(str(tmp_path / "other.hwsched"), "Other")
    idle(qtbot, at_work)
    qtbot.waitUntil(lambda: bool(closed))
    assert "history" not in at_work.frame.pages.widgets
    assert (at_work.openings.search.text(), at_work.openings.register.words) == ("", "")
    assert at_work.openings.register.place is None


def test_selected_openings_are_retired_as_one_step(at_work, qtbot, monkeypatch):
    window = at_work
    choose(window, "M116", "M016")
    total = window.openings.register.total()
    asked = []
    monkeypatch.setattr(
        QInputDialog, "getText", lambda _parent, _title, words: asked.append(words) or ("walled up", True)
    )
    window.opening.act_retire.trigger()
    idle(qtbot, window)
    assert asked == ["Why the building has M016, M116 no more (may stay empty):"]
    assert window.openings.register.total() == total - 2
    window.history.act_undo.trigger()
    idle(qtbot, window)
    assert window.openings.register.total() == total
