"""How the office's documents look: what is declared, taking a file in, writing it out, taking it away."""

from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.jobs.ran import of_files
from hwsched.desktop.looks.text_size import put_letters
from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.widgets.asked_files import file_to_read, folder_to_write
from hwsched.desktop.widgets.empty import EmptyText
from hwsched.exchange.release.office_file import EXAMPLE
from hwsched.language import phrase
from hwsched.operations.release.office import FILE, clear_office, office_text, set_office, write_office
from hwsched.writing import replacing


class OfficeWindow(ToolWindow):
    """The text as it is kept with the project; it is edited as a file and taken in."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Letterhead and paper"), parent)
        self.resize(wide(95), wide(65))
        self.text = EmptyText(
            phrase(
                "Documents look as by default. Write out… gives a file in which letterhead, paper and numbering can be "
                "declared; Take in… reads it."
            )
        )
        self.text.setAccessibleName(phrase("How the office's documents look"))
        self.body.addWidget(self.text)
        self.take = self.button(phrase("Take in…"), self.ask_file, phrase("A file; its pictures lie beside it"))
        self.write = self.button(
            phrase("Write out…"), self.ask_folder, phrase("The file and its pictures, or one to begin with")
        )
        self.clear = self.button(
            phrase("Take away"), self.take_away, phrase("Documents look as by default; undo brings it back")
        )
        for each in (self.take, self.write, self.clear):
            self.foot.addWidget(each)
        desk.workspace.changed.connect(self.follow_change)
        self.follow()

    def follow(self) -> None:
        """Show what is declared."""
        held = office_text(self.desk.workspace.project)
        # What is declared stands in columns; what is said in its place are words.
        put_letters(self.text, fixed=bool(held))
        self.text.setPlainText(held)
        self.enable()

    def enable(self) -> None:
        """Let away be taken only what is declared."""
        self.take.setEnabled(self.idle)
        self.write.setEnabled(self.idle)
        self.clear.setEnabled(self.idle and bool(self.text.toPlainText()))

    def ask_file(self) -> None:
        """Ask for the file."""
        name = file_to_read(self, phrase("How documents look"), phrase("Declarations (*.toml)"))
        if name:
            self.take_in(Path(name))

    def take_in(self, path: Path) -> None:
        """Take a file in."""
        workspace = self.desk.workspace

        def work(_progress: Progress, _cancelled: Cancelled) -> Any:
            return set_office(workspace.project, path, who=workspace.who)

        self.run(phrase("Taking in"), work, lambda _: self.follow())

    def ask_folder(self) -> None:
        """Ask for a folder."""
        folder = folder_to_write(self, phrase("Write into"))
        if folder:
            self.write_into(Path(folder))

    def write_into(self, folder: Path) -> None:
        """Write what is declared, or a file to begin with."""
        workspace, held = self.desk.workspace, bool(self.text.toPlainText())

        def work(_progress: Progress, _cancelled: Cancelled) -> list[Path]:
            if held:
                return write_office(workspace.project, folder)
            with replacing(folder / FILE) as partial:
                partial.write_text(EXAMPLE, encoding="utf-8")
            return [folder / FILE]

        self.run(
            phrase("Writing"),
            work,
            lambda written: self.told.setText(phrase("{written} written.", written=written[-1])),
            lambda written: of_files(written, folder),
        )

    def take_away(self) -> None:
        """Let documents look as by default."""
        workspace = self.desk.workspace

        def work(_progress: Progress, _cancelled: Cancelled) -> Any:
            return clear_office(workspace.project, who=workspace.who)

        self.run(phrase("Taking away"), work, lambda _: self.follow())
