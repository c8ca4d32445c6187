"""Asks for files and folders: each question begins where the last one of its kind was answered.

What is read and what is written often lie apart, so each of both is remembered by itself; the first question begins
beside the project that was open last.
"""

from collections.abc import Sequence
from pathlib import Path
from typing import Literal

from PySide6.QtWidgets import QFileDialog, QWidget

from hwsched.desktop.project.preferences import Preferences

Way = Literal["read", "written"]
"""Whether files are taken in or made."""


def first_folder(way: Way) -> Path:
    """Return the folder in which a question begins; the person's own where nothing is known of one that is there."""
    kept = Preferences()
    known = (kept.folder(way), *(str(Path(each).parent) for each in kept.recent if Path(each).is_file()))
    return next((Path(each) for each in known if each and Path(each).is_dir()), Path.home())


def file_to_read(parent: QWidget, title: str, kinds: str = "", *, at: str = "") -> str:
    """Ask for a file that is there; empty where none was chosen. At: the one that is chosen at present."""
    path, _ = QFileDialog.getOpenFileName(parent, title, at or str(first_folder("read")), kinds)
    return _remembered("read", path)


def files_to_read(parent: QWidget, title: str) -> Sequence[str]:
    """Ask for files that are there; none where none was chosen."""
    paths, _ = QFileDialog.getOpenFileNames(parent, title, str(first_folder("read")))
    for each in paths[:1]:
        _remembered("read", each)
    return paths


def file_to_write(parent: QWidget, title: str, name: str, kinds: str) -> str:
    """Ask under which name a file is written; a name with a folder begins there. Empty where none was chosen."""
    path, _ = QFileDialog.getSaveFileName(parent, title, str(first_folder("written") / name), kinds)
    return _remembered("written", path)


def folder_to_write(parent: QWidget, title: str, *, at: str = "") -> str:
    """Ask for a folder into which files are written; empty where none was chosen."""
    folder = QFileDialog.getExistingDirectory(parent, title, at or str(first_folder("written")))
    if folder:
        written_into(folder)
    return folder


def written_into(folder: str) -> None:
    """Remember into which folder files are written."""
    Preferences().keep_folder("written", folder)


def _remembered(way: Way, path: str) -> str:
    if path:
        Preferences().keep_folder(way, str(Path(path).parent))
    return path
