"""A damaged project in the desktop: what can be read is shown, to be read only, and can be saved into a new one."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog

from hwsched.desktop.project.copies_window import CopiesWindow
from hwsched.desktop.window import Window
from hwsched.model.project import open_project
from hwsched.operations.survey.editing import edit_facts
from tests.desktop.conftest import idle
from tests.operations.exact import small


@pytest.fixture
def damaged(tmp_path):
    """A yard of three openings with a page of an index overwritten, as a bad disk does, and one row less than told."""
    path = tmp_path / "yard.hwsched"
    small(path).close()
    with closing(sqlite3.connect(path)) as database, database:
        database.execute("DELETE FROM change_entry WHERE entity = 'existing_item'")
        database.execute("DELETE FROM existing_item WHERE rowid = (SELECT min(rowid) FROM existing_item)")
    with closing(sqlite3.connect(path)) as database:
        database.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        (page,) = database.execute("SELECT rootpage FROM sqlite_master WHERE name = 'ix_opening_level_id'").fetchone()
        (size,) = database.execute("PRAGMA page_size").fetchone()
    content = bytearray(path.read_bytes())
    content[(page - 1) * size : page * size] = b"\xff" * size
    path.write_bytes(content)
    return path


@pytest.fixture
def window(qtbot):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    return shown


def press(qtbot, box, words):
    (button,) = [each for each in box.buttons() if each.text() == words]
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)


def marks(window):
    return sorted(each.given.opening.mark for each in window.frame.state.workspace.checked.values())


def test_what_can_be_read_is_shown_and_nothing_is_changed(window, qtbot, damaged):
    before = damaged.read_bytes()
    window.project.open_project(str(damaged))
    idle(qtbot, window)
    said = window.project.damaged
    assert said.text().startswith("yard.hwsched is damaged.")
    assert f"{damaged} is damaged" in said.detailedText()
    assert "nothing can be changed in it" in said.text()
    assert "existing item (1)" in said.text()
    assert said.defaultButton().text() == "Only look at it"
    press(qtbot, said, "Only look at it")
    assert marks(window) == ["1", "2", "3"]
    assert window.remains.isVisible()
    assert window.remains.words.text().startswith("yard.hwsched is damaged.")
    assert window.windowTitle() == "Yard (damaged, to be read only) - hwsched"
    workspace = window.frame.state.workspace
    opening = next(iter(workspace.checked))
    window.frame.edit(lambda: edit_facts(workspace.project, "opening", opening, {"notes": "x"}, who="ann"))
    assert "read only" in window.frame.telling.told.text()
    window.frame.telling.told.close()
    assert damaged.read_bytes() == before


def test_it_is_saved_into_a_new_project_which_is_opened(window, qtbot, damaged, monkeypatch):
    before = damaged.read_bytes()
    proposed = []

    def chosen(_parent, _title, place, _kinds):
        proposed.append(place)
        return str(damaged.with_name("saved.hwsched")), ""

    monkeypatch.setattr(QFileDialog, "getSaveFileName", chosen)
    window.project.open_project(str(damaged))
    idle(qtbot, window)
    kept = Path(window.frame.state.workspace.project.path)
    press(qtbot, window.project.damaged, "Save what can be read…")
    qtbot.waitUntil(lambda: window.project.rescued is not None, timeout=30000)
    idle(qtbot, window)
    assert proposed == [str(damaged.with_name("yard rescued.hwsched"))]
    said = window.project.rescued
    assert f"rows were saved into {damaged.with_name('saved.hwsched')}" in said.text()
    assert "existing item (1)" in said.text()
    assert "its existing_item is lost" in said.detailedText()
    said.close()
    assert window.frame.state.workspace.place == damaged.with_name("saved.hwsched")
    assert (marks(window), window.remains.isVisible()) == (["1", "2", "3"], False)
    assert window.windowTitle() == "Yard - hwsched"
    with open_project(damaged.with_name("saved.hwsched")) as project:
        assert project.read_only == ""
    # What was read of it lay in a folder of its own.
    assert not kept.parent.exists()
    assert damaged.read_bytes() == before


def test_the_line_offers_it_too_and_the_copies_are_those_of_the_damaged_file(window, qtbot, damaged, monkeypatch):
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: ("", ""))
    window.project.open_project(str(damaged))
    idle(qtbot, window)
    press(qtbot, window.project.damaged, "Only look at it")
    qtbot.mouseClick(window.remains.save, Qt.MouseButton.LeftButton)
    assert window.project.rescued is None
    window.beside.acts["copies"].trigger()
    assert window.frame.side.windows[CopiesWindow].place == damaged


def test_where_nothing_can_be_read_that_is_told(window, qtbot, tmp_path):
    path = tmp_path / "gone.hwsched"
    small(path).close()
    content = bytearray(path.read_bytes())
    content[100:] = b"\xff" * (len(content) - 100)
    path.write_bytes(content)
    window.project.open_project(str(path))
    idle(qtbot, window)
    assert window.frame.state.workspace is None
    assert str(path) in window.frame.telling.told.text()
    window.frame.telling.told.close()
