"""Revisions in the desktop, by clicks: frozen, compared with now, undone."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QInputDialog

from hwsched.desktop.release.revisions_window import RevisionsWindow
from hwsched.operations.release.revisions import revisions
from hwsched.operations.survey.editing import edit_facts
from tests.desktop.conftest import checked_of, empty_words, idle

LEFT = Qt.MouseButton.LeftButton


def freeze(at_work, qtbot, monkeypatch, purpose):
    window = at_work.frame.side.windows[RevisionsWindow]
    monkeypatch.setattr(QInputDialog, "getText", lambda *_, **__: (purpose, True))
    qtbot.mouseClick(window.make, LEFT)
    idle(qtbot, at_work)
    return window


def test_freeze_compare_and_undo(at_work, qtbot, monkeypatch):
    at_work.release.act_revisions.trigger()
    window = at_work.frame.side.windows[RevisionsWindow]
    assert "No revision yet" in empty_words(window.list)
    assert not window.compare.isEnabled()
    freeze(at_work, qtbot, monkeypatch, "for approval")
    (row,) = (window.list.topLevelItem(number) for number in range(window.list.topLevelItemCount()))
    assert (row.text(0), row.text(2), row.text(3), row.text(4)) == ("A", "tester", "the whole project", "for approval")
    project, opening = at_work.frame.state.workspace.project, checked_of(at_work, "M004").given.opening.id
    at_work.frame.edit(lambda: edit_facts(project, "opening", opening, {"notes": "seen again"}, who="tester"))
    idle(qtbot, at_work)
    window.list.topLevelItem(0).setSelected(True)
    qtbot.mouseClick(window.compare, LEFT)
    idle(qtbot, at_work)
    assert "1 opening differs" in window.told.text()
    item = window.found.topLevelItem(0)
    assert (item.text(0), item.text(2), item.child(0).text(2)) == ("M004", "changed", "seen again")
    window.found.itemActivated.emit(item.child(0), 0)
    assert at_work.frame.state.chosen == opening
    # One is taken to it, and comes back.
    assert at_work.frame.trail.here.place == "openings"
    at_work.frame.go("revisions")
    freeze(at_work, qtbot, monkeypatch, "")
    assert window.list.topLevelItemCount() == 2
    # The letter that is taken back leaves the list.
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert [each.letter for each in revisions(project)] == ["A"]
    assert window.list.topLevelItemCount() == 1
