"""What leaves the house, in the main window: documents printed, revisions, files at the chosen opening."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QInputDialog

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.jobs.ran import Report
from hwsched.desktop.release.files_page import FilesPage
from hwsched.desktop.release.written_out import WrittenOut, opened_by_system
from hwsched.desktop.widgets.asked_files import file_to_read, folder_to_write
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.model.tables import OPENING_TABLE
from hwsched.quantities import LengthStyle, format_length
from hwsched.stopping import ask_stop

if TYPE_CHECKING:
    from hwsched.documents.view import Format
    from hwsched.operations.release.attachments import Attached
    from hwsched.render.labels import LabelSheet


class ReleaseActions(Subject):
    """Prints, revisions and files.

    Parameters
    ----------
    frame : Frame
        Open project, jobs, edits, telling.
    files : FilesPage
        Asks for files at the chosen opening.
    show_files : callable
        Shows the files at the chosen opening.
    in_view : callable
        Returns the openings that the register shows, in order.
    """

    def __init__(
        self,
        frame: Frame,
        files: FilesPage,
        show_files: Callable[[tuple[Attached, ...]], None],
        in_view: Callable[[], list[str]],
    ) -> None:
        super().__init__(frame)
        self._show_files, self._in_view = show_files, in_view
        self._written = WrittenOut()
        self.act_print = self.action(
            to_phrase("Print"),
            to_phrase("Schedule, pick list, install packets"),
            self.ask_print,
            "openings",
            QKeySequence.StandardKey.Print,
            icon="print",
        )
        self.act_labels = self.action(
            to_phrase("Labels…"),
            to_phrase("A label for the box of each shown opening, on a sheet of labels"),
            self.ask_labels,
            "openings",
            acts_on="in view",
        )
        self.act_revisions = self.way_to("revisions")
        files.read = self._content
        files.wants_file.connect(self.ask_file)
        files.wants_files.connect(self.attach_files)
        files.wants_look.connect(self.look_at_file)
        files.wants_off.connect(self.take_file_off)
        self.state.shown.connect(self._read_files)

    def ask_print(self) -> None:
        """Ask what to print and where to."""
        from hwsched.desktop.release.print_dialog import PrintDialog

        dialog = PrintDialog(len(self._in_view()), len(self.state.ids), self.frame.window)
        dialog.accepted.connect(lambda: self.print_documents(*dialog.answer()))
        dialog.open()

    def print_documents(
        self,
        names: list[str],
        scope: str,
        folder: Path,
        paper: str,
        formats: frozenset[Format] | None = None,
        went_out: bool = False,
        walk: str = "mark",
    ) -> None:
        """Issue documents of all, the shown or the chosen openings; on wish write down that the packets went out."""
        workspace = self.state.workspace
        if workspace is None:
            return
        ids = {"all": None, "shown": self._in_view(), "chosen": list(self.state.ids)}[scope]

        kept_back: list[str] = []

        def work(progress: Progress, cancelled: Cancelled) -> list[Path]:
            from hwsched.documents.release.bound_packets import BOUND_PACKETS
            from hwsched.documents.release.packet import PACKET
            from hwsched.operations.release.issued_documents import PRINTS
            from hwsched.operations.release.issued_packets import write_down_packets
            from hwsched.operations.release.printed_set import print_set
            from hwsched.operations.release.printed_view import printed_view
            from hwsched.operations.release.project_view import project_view

            view = project_view(workspace.project, ids, checker=workspace.checker, progress=progress)
            wanted = {
                name: [each for each in has if formats is None or each in formats]
                for name, _, has in PRINTS
                if name in names
            }
            printed = print_set(
                view,
                {name: some for name, some in wanted.items() if some},
                folder,
                dressed=lambda shown, name: printed_view(workspace.project, shown, name, walk),
                paper=paper,
                progress=progress,
                cancelled=cancelled,
            )
            # What was not printed to the end did not go out; what another document lacks does not matter.
            if went_out and printed.went_out(PACKET.name, BOUND_PACKETS.name):
                ask_stop()
                write_down_packets(workspace.project, view, who=workspace.who)
                kept_back.extend(each.mark for each in view.openings if not each.ready)
            return printed.all_written()

        def then(written: list[Path]) -> None:
            held_back = (
                phrase("; held, see Release gate: {kept_back}", kept_back=", ".join(kept_back[:8])) if kept_back else ""
            )
            more = phrase(" and {count} more", count=len(kept_back) - 8) if len(kept_back) > 8 else ""
            self.frame.say(
                phrase_of_count(
                    "{count} file written into {folder}{held_back}{more}",
                    "{count} files written into {folder}{held_back}{more}",
                    len(written),
                    folder=folder,
                    held_back=held_back,
                    more=more,
                ),
                15000,
            )

        def tells(written: list[Path]) -> Report:
            return Report(
                phrase_of_count(
                    "{count} file written into {folder}",
                    "{count} files written into {folder}",
                    len(written),
                    folder=folder,
                ),
                tuple((mark, phrase("held, its packet did not go out: see Release gate")) for mark in kept_back),
                tuple(written),
                tuple(ids) if ids is not None else tuple(workspace.checked),
            )

        self.jobs.run(phrase("Printing"), work, then, ask_again=self.ask_print, tells=tells)

    def ask_labels(self) -> None:
        """Ask for the label sheet, its first free label and a folder."""
        from hwsched.render.labels import label_sheets

        window = self.frame.window
        sheets = {_sheet_said(sheet, self.state.style_of_lengths): sheet for sheet in label_sheets()}
        said, stated = QInputDialog.getItem(
            window, phrase("Labels"), phrase("Label sheet: paper and labels a sheet"), list(sheets), 0, False
        )
        if not stated:
            return
        start, stated = QInputDialog.getInt(
            window, phrase("Labels"), phrase("First free label of the first sheet"), 1, 1, sheets[said].count
        )
        folder = folder_to_write(window, phrase("Write labels into")) if stated else ""
        if folder:
            self.write_labels(sheets[said].name, start, Path(folder))

    def write_labels(self, sheet: str, start: int, folder: Path) -> None:
        """Write labels of the openings that the register shows."""
        from hwsched.operations.release.issued_labels import issue_labels
        from hwsched.operations.release.project_view import project_view

        workspace = self.state.workspace
        if workspace is None:
            return
        ids = self._in_view()

        def work(_progress: Progress, _cancelled: Cancelled) -> list[Path]:
            view = project_view(workspace.project, ids, checker=workspace.checker)
            return issue_labels(view, folder, sheet, start=start)

        self.jobs.run(
            phrase("Writing labels"),
            work,
            lambda written: self.frame.say(phrase("{written} written", written=written[0]), 15000),
            tells=lambda written: Report(
                phrase_of_count("{count} file written", "{count} files written", len(written)),
                files=tuple(written),
                openings=tuple(ids),
            ),
        )

    def ask_file(self) -> None:
        """Ask for a file and attach it to the chosen opening."""
        path = file_to_read(self.frame.window, phrase("Attach a file"))
        if path:
            self.attach_file(Path(path))

    def attach_file(self, path: Path) -> None:
        """Attach a file to the chosen opening."""
        from hwsched.operations.release.attachments import attach

        workspace, opening = self.state.workspace, self.state.chosen
        if workspace is not None and opening is not None:
            self.frame.edit(
                lambda: attach(workspace.project, str(OPENING_TABLE.name), opening, path, who=workspace.who)
            )

    def attach_files(self, paths: list[Path]) -> None:
        """Attach files to the chosen opening, each as a step."""
        for path in paths:
            self.attach_file(path)

    def look_at_file(self, attached: Attached) -> None:
        """Write a file out and open it with the program that the system has for it."""
        workspace = self.state.workspace
        if workspace is None:
            return
        write = self._written.writing(workspace.project, attached)

        def then(written: list[Path]) -> None:
            if not opened_by_system(written[0]):
                self.frame.say(phrase("No program opens {written}", written=written[0]), 15000)

        self.jobs.edit(phrase("Writing"), write, then)

    def take_file_off(self, attached: Attached) -> None:
        """Take a file off the chosen opening; undo brings it back."""
        from hwsched.operations.release.attachments import detach

        workspace = self.state.workspace
        if workspace is not None:
            self.frame.edit(lambda: detach(workspace.project, [attached.id], who=workspace.who))

    def forget_files(self) -> None:
        """Remove what was written out to be looked at."""
        self._written.forget()

    def _content(self, attached: Attached) -> bytes:
        from hwsched.operations.release.attachments import fetch

        workspace = self.state.workspace
        return fetch(workspace.project, attached.id) if workspace is not None else b""

    def _read_files(self) -> None:
        from hwsched.operations.release.attachments import attachments_of

        workspace, opening = self.state.workspace, self.state.chosen
        if workspace is not None and opening is not None:
            self.frame.telling.guarded(lambda: self._show_files(attachments_of(workspace.project, opening_id=opening)))


def _sheet_said(sheet: LabelSheet, style: LengthStyle) -> str:
    """Say a label sheet as it stands on its pack: the paper, how many labels, and how large."""
    size = {"width": format_length(sheet.width_mm, style), "height": format_length(sheet.height_mm, style)}
    if sheet.paper == "a4":
        return phrase_of_count(
            "A4, {count} label of {width} × {height}", "A4, {count} labels of {width} × {height}", sheet.count, **size
        )
    return phrase_of_count(
        "Letter, {count} label of {width} × {height}",
        "Letter, {count} labels of {width} × {height}",
        sheet.count,
        **size,
    )
