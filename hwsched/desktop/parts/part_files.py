"""Pictures and data sheets of the chosen part: attached, shown, opened, taken off."""

from pathlib import Path

from hwsched.desktop.frame.tool_window import ToolWindow
from hwsched.desktop.release.files_page import FilesPage
from hwsched.desktop.release.written_out import WrittenOut, opened_by_system
from hwsched.desktop.widgets.asked_files import files_to_read
from hwsched.language import phrase, to_phrase
from hwsched.model.tables import PART
from hwsched.operations.release.attachments import Attached, attach, attachments_of, detach, fetch
from hwsched.operations.survey.things import Thing


class PartFiles(FilesPage):
    """Files at a part, within the window that makes the edits."""

    def __init__(self, window: ToolWindow) -> None:
        super().__init__(to_phrase("part"))
        self._window = window
        self._written = WrittenOut()
        self._part = ""
        self.read = self._content
        self.wants_file.connect(self.ask_file)
        self.wants_files.connect(self.attach_files)
        self.wants_look.connect(self.look_at_file)
        self.wants_off.connect(self.take_file_off)
        window.finished.connect(lambda: self._written.forget())

    def show_part(self, number: str, row: str) -> None:
        """Show the files of a part; of one that is not in the project yet there are none."""
        self._part = row
        self.setEnabled(bool(row))
        self.table.empty.say(self.invited if row else phrase("Files can be added once the part is in the catalogue."))
        project = self._window.desk.workspace.project
        self.show_files(attachments_of(project, Thing(str(PART.name), row)) if row else ())
        self.setAccessibleName(phrase("Files of {number}", number=number))

    def ask_file(self) -> None:
        """Ask for files and attach them."""
        paths = files_to_read(self, phrase("Attach pictures and data sheets"))
        if paths:
            self.attach_files([Path(path) for path in paths])

    def attach_files(self, paths: list[Path]) -> None:
        """Attach files to the part, each as a step."""
        for path in paths if self._part else ():
            self._attach(path)

    def _attach(self, path: Path) -> None:
        workspace, row = self._window.desk.workspace, self._part
        self._window.edit(lambda: attach(workspace.project, str(PART.name), row, path, who=workspace.who))

    def look_at_file(self, attached: Attached) -> None:
        """Write a file out and open it with the program that the system has for it."""
        write = self._written.writing(self._window.desk.workspace.project, attached)

        def then(written: list[Path]) -> None:
            if not opened_by_system(written[0]):
                self._window.told.setText(phrase("No program opens {written}", written=written[0]))

        self._window.edit(write, then)

    def take_file_off(self, attached: Attached) -> None:
        """Take a file off the part; undo brings it back."""
        workspace = self._window.desk.workspace
        self._window.edit(lambda: detach(workspace.project, [attached.id], who=workspace.who))

    def _content(self, attached: Attached) -> bytes:
        return fetch(self._window.desk.workspace.project, attached.id)
