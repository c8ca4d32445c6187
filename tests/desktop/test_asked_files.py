"""Questions for files begin where the last one of their kind was answered, and the first beside the project."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog, QWidget

from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.release.print_dialog import PrintDialog
from hwsched.desktop.widgets.asked_files import (
    file_to_read,
    file_to_write,
    files_to_read,
    first_folder,
    folder_to_write,
)


@pytest.fixture
def asked(qtbot, monkeypatch, tmp_path):
    """Folders and files of a person, and where each question began."""
    kept = Preferences()
    for way in ("read", "written"):
        kept.keep_folder(way, "")
    for each in kept.recent:
        kept.forget(each)
    for name in ("yard", "lists", "out"):
        (tmp_path / name).mkdir()
    (tmp_path / "yard" / "yard.hwsched").touch()
    parent, began = QWidget(), []
    qtbot.addWidget(parent)

    def answering(name, answer):
        def ask(_parent, _title, at="", *_):
            began.append(at)
            return answer

        monkeypatch.setattr(QFileDialog, name, ask)

    yield parent, began, answering, tmp_path
    for way in ("read", "written"):
        kept.keep_folder(way, "")


def test_the_first_question_begins_beside_the_project_that_was_open_last(asked):
    _, _, _, folder = asked
    assert first_folder("read") == Path.home()
    Preferences().opened("postgresql://server/yard")
    Preferences().opened(str(folder / "gone" / "gone.hwsched"))
    assert first_folder("read") == Path.home()
    Preferences().opened(str(folder / "yard" / "yard.hwsched"))
    assert first_folder("read") == first_folder("written") == folder / "yard"


def test_the_next_begins_where_the_last_was_answered_and_what_is_written_lies_apart(asked):
    parent, began, answering, folder = asked
    answering("getOpenFileName", (str(folder / "lists" / "doors.csv"), ""))
    answering("getOpenFileNames", ([str(folder / "lists" / "photo.jpg")], ""))
    answering("getSaveFileName", (str(folder / "out" / "form.xlsx"), ""))
    answering("getExistingDirectory", str(folder / "out"))
    home = str(Path.home())
    assert file_to_read(parent, "Take in") == str(folder / "lists" / "doors.csv")
    assert files_to_read(parent, "Attach") == [str(folder / "lists" / "photo.jpg")]
    assert file_to_write(parent, "Write", "form.xlsx", "") == str(folder / "out" / "form.xlsx")
    assert folder_to_write(parent, "Into") == str(folder / "out")
    assert file_to_write(parent, "Write", str(folder / "yard" / "as named.hwsched"), "")
    assert began == [
        home, str(folder / "lists"), str(Path.home() / "form.xlsx"), str(folder / "out"),
        str(folder / "yard" / "as named.hwsched"),
    ]  # fmt: skip


def test_who_chooses_nothing_changes_nothing_and_a_folder_that_is_gone_is_passed_over(asked):
    parent, began, answering, folder = asked
    Preferences().keep_folder("read", str(folder / "lists"))
    answering("getOpenFileName", ("", ""))
    assert file_to_read(parent, "Take in") == ""
    assert first_folder("read") == folder / "lists"
    (folder / "lists").rmdir()
    assert file_to_read(parent, "Take in") == ""
    assert began == [str(folder / "lists"), str(Path.home())]


def test_what_is_printed_goes_next_where_it_went_last(asked, qtbot):
    _, _, _, folder = asked
    dialog = PrintDialog(3, 1)
    qtbot.addWidget(dialog)
    assert dialog.folder.text() == str(Path.home())
    dialog.folder.setText(str(folder / "out"))
    dialog.accept()
    again = PrintDialog(3, 1)
    qtbot.addWidget(again)
    assert again.folder.text() == str(folder / "out")
