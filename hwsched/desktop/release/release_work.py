"""What a person does about files at openings and revisions: attaches, opens and takes files off; freezes, compares."""

import tempfile
from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QCloseEvent, QDesktopServices
from PySide6.QtWidgets import QFileDialog

from hwsched.desktop.parts.specify_work import SpecifyWork
from hwsched.desktop.release.revisions_window import RevisionsWindow
from hwsched.model.tables import OPENING_TABLE
from hwsched.operations.release.attachments import Attached, attach, attachments_of, detach, fetch_into


class ReleaseWork(SpecifyWork):
    """Files at the chosen opening, and revisions.

    Parameters
    ----------
    who : str
        Person at work, for the journal.
    """

    def __init__(self, who: str) -> None:
        super().__init__(who)
        self._written: tempfile.TemporaryDirectory[str] | None = None
        files = self.sheet.files_page
        files.wants_file.connect(self.ask_file)
        files.wants_look.connect(self.look_at_file)
        files.wants_off.connect(self.take_file_off)

    def ask_file(self) -> None:
        """Ask for a file and attach it to the chosen opening."""
        path, _ = QFileDialog.getOpenFileName(self, "Attach a file")
        if path:
            self.attach_file(Path(path))

    def attach_file(self, path: Path) -> None:
        """Attach a file to the chosen opening."""
        workspace, opening = self.workspace, self.chosen
        if workspace is not None and opening is not None:
            self.edit(lambda: attach(workspace.project, str(OPENING_TABLE.name), opening, path, who=workspace.who))

    def look_at_file(self, attached: Attached) -> None:
        """Write a file out and open it with the program that the system has for it."""
        workspace = self.workspace
        if workspace is None:
            return
        if self._written is None:
            self._written = tempfile.TemporaryDirectory(prefix="hwsched-")
        folder = Path(self._written.name) / attached.id

        def then(written: list[Path]) -> None:
            if not QDesktopServices.openUrl(QUrl.fromLocalFile(str(written[0]))):
                self.statusBar().showMessage(f"No program opens {written[0]}", 15000)

        self.jobs.edit("Writing", lambda: fetch_into(workspace.project, [attached], folder), then)

    def take_file_off(self, attached: Attached) -> None:
        """Take a file off the chosen opening; undo brings it back."""
        workspace = self.workspace
        if workspace is not None:
            self.edit(lambda: detach(workspace.project, [attached.id], who=workspace.who))

    def show_revisions(self) -> None:
        """Show the revisions."""
        self.tool(RevisionsWindow, lambda desk: RevisionsWindow(desk, self))

    def _show_sheet(self) -> None:
        super()._show_sheet()
        workspace, opening = self.workspace, self.chosen
        if workspace is not None and opening is not None:
            self._guarded(lambda: self.sheet.show_files(attachments_of(workspace.project, opening_id=opening)))

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Remove what was written out to be looked at."""
        if self._written is not None:
            self._written.cleanup()
            self._written = None
        super().closeEvent(event)
