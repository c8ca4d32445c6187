"""Attached files written out to be opened by the programs that the system has for them; gone with the program."""

import tempfile
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices

from hwsched.model.project import Project
from hwsched.operations.release.attachments import Attached, fetch_into


class WrittenOut:
    """A folder of our own, made when the first file is written."""

    def __init__(self) -> None:
        self._folder: tempfile.TemporaryDirectory[str] | None = None

    def writing(self, project: Project, attached: Attached) -> Callable[[], list[Path]]:
        """Return what writes a file out; it touches no widget."""
        if self._folder is None:
            self._folder = tempfile.TemporaryDirectory(prefix="hwsched-")
        folder = Path(self._folder.name) / attached.id
        return lambda: fetch_into(project, [attached], folder)

    def forget(self) -> None:
        """Remove what was written out."""
        if self._folder is not None:
            self._folder.cleanup()
            self._folder = None


def opened_by_system(path: Path) -> bool:
    """Open a file with the program that the system has for it; returns whether there is one."""
    return bool(QDesktopServices.openUrl(QUrl.fromLocalFile(str(path))))
