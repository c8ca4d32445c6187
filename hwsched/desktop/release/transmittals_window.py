"""Transmittals: what went to whom; writing one down, and fetching its files as they went out."""

from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QHeaderView,
    QLineEdit,
    QTreeWidget,
    QTreeWidgetItem,
    QWidget,
)

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.jobs.ran import of_files
from hwsched.desktop.looks.moments import moment_said
from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.widgets.asked_files import files_to_read, folder_to_write
from hwsched.desktop.widgets.buttons import let_lead
from hwsched.desktop.widgets.empty import Empty
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.release.transmittals import fetch_transmittal, transmit, transmittals
from hwsched.values.transmittal import Transmittal


class TransmittalDialog(QDialog):
    """To whom some files went, what for, and which revision they show."""

    def __init__(self, files: list[Path], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase_of_count("{count} file went to", "{count} files went to", len(files)))
        self.files = files
        self.recipient, self.purpose, self.note, self.revision = QLineEdit(), QLineEdit(), QLineEdit(), QLineEdit()
        self.revision.setPlaceholderText(phrase("none: the project as it stands"))
        form = QFormLayout(self)
        for label, field in (
            (phrase("To"), self.recipient),
            (phrase("Purpose"), self.purpose),
            (phrase("Note"), self.note),
            (phrase("Revision"), self.revision),
        ):
            form.addRow(label, field)
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        form.addRow(self.buttons)
        self.recipient.textChanged.connect(self._enable)
        self._enable()

    def _enable(self) -> None:
        self.buttons.button(QDialogButtonBox.StandardButton.Ok).setEnabled(bool(self.recipient.text().strip()))


class TransmittalsWindow(ToolWindow):
    """All transmittals with their files."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Transmittals"), parent)
        self.resize(wide(102), wide(57))
        self.list = QTreeWidget()
        self.list.setAccessibleName(phrase("What went out"))
        self.list.setHeaderLabels([phrase("No."), phrase("Sent"), phrase("To"), phrase("Purpose"), phrase("By")])
        header = self.list.header()
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header.setStretchLastSection(False)
        # Whom it went to, and what for, share what the others leave; who sent it stays in sight.
        for column in (2, 3):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.Stretch)
        self.list.itemSelectionChanged.connect(self.enable)
        Empty(self.list, phrase("Nothing is written down as sent. Write down… keeps what went out, when, and to whom."))
        self.body.addWidget(self.list)
        self.fetch = self.button(
            phrase("Fetch…"), self.ask_fetch, phrase("Write the files of the selected one as they went out")
        )
        self.make = self.button(
            phrase("Write down…"), self.ask_files, phrase("Choose files that went out, and to whom")
        )
        self.foot.addWidget(self.fetch)
        self.foot.addWidget(self.make)
        let_lead(self.make)
        desk.workspace.changed.connect(self.follow_change)
        self.follow()

    def follow(self) -> None:
        """List them anew."""
        chosen = self.chosen()
        self.list.clear()
        for each in transmittals(self.desk.workspace.project):
            item = QTreeWidgetItem([str(each.number), moment_said(each.at), each.recipient, each.purpose, each.person])
            item.addChildren(_files(each))
            self.list.addTopLevelItem(item)
            item.setSelected(each.number == chosen)
        self.enable()

    def chosen(self) -> int | None:
        """Return the number of the selected one."""
        items = self.list.selectedItems()
        return int((items[0].parent() or items[0]).text(0)) if items else None

    def enable(self) -> None:
        """One can be fetched when it is selected."""
        self.fetch.setEnabled(self.idle and self.chosen() is not None)
        self.make.setEnabled(self.idle)

    def ask_files(self) -> None:
        """Ask for the files, then to whom they went."""
        names = files_to_read(self, phrase("Files that went out"))
        if not names:
            return
        dialog = TransmittalDialog([Path(each) for each in names], self)
        dialog.accepted.connect(lambda: self._answered(dialog))
        dialog.open()

    def _answered(self, dialog: TransmittalDialog) -> None:
        said = (dialog.recipient.text(), dialog.purpose.text(), dialog.note.text(), dialog.revision.text().strip())
        self.write_down(dialog.files, *said)

    def write_down(
        self, files: list[Path], recipient: str, purpose: str = "", note: str = "", letter: str = ""
    ) -> None:
        """Write down that files went to somebody; undo takes it back."""
        workspace = self.desk.workspace

        def work(_progress: Progress, _cancelled: Cancelled) -> Any:
            return transmit(
                workspace.project,
                recipient,
                files,
                who=workspace.who,
                purpose=purpose,
                note=note,
                revision=letter or None,
            )

        def then(_made: object) -> None:
            self.follow()
            self.told.setText(
                phrase_of_count(
                    "{count} file to {recipient} written down.",
                    "{count} files to {recipient} written down.",
                    len(files),
                    recipient=recipient,
                )
            )

        self.run(phrase("Writing down"), work, then)

    def ask_fetch(self) -> None:
        """Ask for a folder."""
        number = self.chosen()
        folder = folder_to_write(self, phrase("Write the files into")) if number is not None else ""
        if folder and number is not None:
            self.fetch_into(number, Path(folder))

    def fetch_into(self, number: int, folder: Path) -> None:
        """Write the files of a transmittal into a folder."""
        workspace = self.desk.workspace

        def work(_progress: Progress, _cancelled: Cancelled) -> list[Path]:
            return fetch_transmittal(workspace.project, number, folder)

        self.run(
            phrase("Fetching"),
            work,
            lambda written: self.told.setText(
                phrase_of_count(
                    "{count} file written into {folder}",
                    "{count} files written into {folder}",
                    len(written),
                    folder=folder,
                )
            ),
            partial(of_files, folder=folder),
        )


def _files(sent: Transmittal) -> list[QTreeWidgetItem]:
    return [
        QTreeWidgetItem(
            [
                "",
                "",
                each.name,
                phrase("revision {revision}", revision=each.revision) if each.revision else phrase("as it stood"),
                "",
            ]
        )
        for each in sent.files
    ]
