"""The drawer under the list: jobs with what came of them, and what could not be done; both stay to be read."""

from pathlib import Path
from typing import Any, Final

from PySide6.QtCore import Qt, QUrl, Signal
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QSplitter,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.jobs.jobs import Failure
from hwsched.desktop.jobs.ran import Ran
from hwsched.desktop.looks.tokens import SPACE, scaled, wide
from hwsched.desktop.widgets.buttons import button
from hwsched.desktop.widgets.tabs import TabbedPages
from hwsched.desktop.widgets.wrapping import WrappingList
from hwsched.language import phrase
from hwsched.telling.masking import masked

_PATH: Final = int(Qt.ItemDataRole.UserRole)
_MOST_PROBLEMS: Final = 100


class JobsPage(QWidget):
    """The jobs at the left, the latest on top; what came of the chosen one at the right.

    Parameters
    ----------
    frame : Frame
        Its jobs are shown.
    """

    def __init__(self, frame: Frame) -> None:
        super().__init__()
        self._frame = frame
        self._shown: list[Ran] = []
        self.list = QListWidget()
        self.list.setAccessibleName(phrase("Jobs"))
        self.list.currentRowChanged.connect(lambda _row: self._show_chosen())
        self.said = QLabel(phrase("No job has run yet."))
        self.said.setWordWrap(True)
        self.lines = QTreeWidget()
        self.lines.setAccessibleName(phrase("What was left out, and what was written"))
        self.lines.setHeaderLabels([phrase("What"), phrase("Why, or where")])
        self.lines.setRootIsDecorated(False)
        self.lines.setColumnWidth(0, wide(24))
        self.lines.itemActivated.connect(self._open)
        self.stop = button(
            phrase("Stop"), frame.jobs.cancel, phrase("Ask the job to stop; what it has not finished is not written")
        )
        self.openings = button(
            phrase("Show openings"), self.show_openings, phrase("Select the openings that this job was about")
        )
        self.file = button(phrase("Open file"), self.open_file, phrase("With the program that the system has for it"))
        self.folder = button(phrase("Open folder"), self.open_folder, phrase("In which the job wrote"))
        row = QHBoxLayout()
        row.addWidget(self.said, 1)
        for each in (self.stop, self.openings, self.file, self.folder):
            row.addWidget(each)
        side = QWidget()
        layout = QVBoxLayout(side)
        layout.setContentsMargins(scaled(SPACE.small), 0, 0, 0)
        layout.addLayout(row)
        layout.addWidget(self.lines, 1)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.addWidget(self.list)
        split.addWidget(side)
        split.setStretchFactor(0, 1)
        split.setStretchFactor(1, 2)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(scaled(SPACE.hair), scaled(SPACE.hair), scaled(SPACE.hair), scaled(SPACE.hair))
        whole.addWidget(split)
        frame.jobs.log.changed.connect(self._on_changed)
        frame.state.leaving.connect(lambda: self.openings.setEnabled(False))
        self._show_chosen()

    @property
    def chosen(self) -> Ran | None:
        """The job that is shown."""
        row = self.list.currentRow()
        return self._shown[row] if 0 <= row < len(self._shown) else None

    def show_openings(self) -> None:
        """Select the openings that the chosen job was about, as far as they are still there."""
        ran, workspace = self.chosen, self._frame.state.workspace
        if ran is not None and workspace is not None:
            self._frame.go("openings", tuple(each for each in ran.report.openings if each in workspace.checked))

    def open_file(self) -> None:
        """Open the chosen file, else the first that was written."""
        ran = self.chosen
        item = self.lines.currentItem()
        path = item.data(0, _PATH) if item is not None else None
        if path is None and ran is not None and ran.report.files:
            path = str(ran.report.files[0])
        if path is not None:
            self._open_path(Path(path))

    def open_folder(self) -> None:
        """Open the folder in which the chosen job wrote."""
        ran = self.chosen
        if ran is not None and ran.report.files:
            self._open_path(ran.report.files[0].parent)

    def _open_path(self, path: Path) -> None:
        if not path.exists():
            self._frame.say(phrase("{path} is there no more", path=path))
        elif not QDesktopServices.openUrl(QUrl.fromLocalFile(str(path))):
            self._frame.say(phrase("No program opens {path}", path=path))

    def _open(self, item: QTreeWidgetItem) -> None:
        if item.data(0, _PATH) is not None:
            self.open_file()

    def _on_changed(self) -> None:
        entries, chosen = self._frame.jobs.log.entries, self.chosen
        fresh = entries[:1] != self._shown[:1]
        self._shown = list(entries)
        self.list.blockSignals(True)
        while self.list.count() > len(entries):
            self.list.takeItem(self.list.count() - 1)
        for row, ran in enumerate(entries):
            if row == self.list.count():
                self.list.addItem(QListWidgetItem())
            self.list.item(row).setText(f"{ran.title}: {ran.words}")
        at = 0 if fresh else next((row for row, each in enumerate(entries) if each is chosen), 0)
        self.list.setCurrentRow(at)
        self.list.blockSignals(False)
        self._show_chosen()

    def _show_chosen(self) -> None:
        ran = self.chosen
        report = ran.report if ran is not None else None
        if ran is not None:
            self.said.setText(f"{ran.title}: {ran.words}")
        rows: list[tuple[str, str, Any]] = []
        if report is not None:
            rows += [(what, why, None) for what, why in report.left_out]
            rows += [(path.name, str(path.parent), str(path)) for path in report.files]
        self.lines.clear()
        for what, why, path in rows:
            item = QTreeWidgetItem([what, why])
            item.setToolTip(1, why)
            item.setData(0, _PATH, path)
            self.lines.addTopLevelItem(item)
        self.stop.setVisible(ran is not None and ran.outcome == "running")
        self.stop.setEnabled(ran is not None and not ran.stopping)
        opened = self._frame.state.workspace is not None
        self.openings.setEnabled(opened and report is not None and bool(report.openings))
        self.file.setEnabled(report is not None and bool(report.files))
        self.folder.setEnabled(report is not None and bool(report.files))


class ProblemsPage(QWidget):
    """What could not be done, the latest on top, with the ways to go on.

    Parameters
    ----------
    frame : Frame
        What it tells is kept here.
    """

    counted = Signal()
    """There are more or fewer."""

    def __init__(self, frame: Frame) -> None:
        super().__init__()
        self._held: list[Failure] = []
        self.list = WrappingList()
        self.list.setAccessibleName(phrase("Problems"))
        self.list.currentRowChanged.connect(lambda _row: self._enable())
        self.again = button(phrase("Try again"), self._try_again, phrase("Do the same once more"))
        self.anew = button(phrase("Choose again…"), self._choose_again, phrase("Choose another file or place"))
        self.forget = button(phrase("Forget"), self._forget, phrase("Take the chosen problem off this list"))
        row = QHBoxLayout()
        row.addStretch(1)
        for each in (self.again, self.anew, self.forget):
            row.addWidget(each)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(scaled(SPACE.hair), scaled(SPACE.hair), scaled(SPACE.hair), scaled(SPACE.hair))
        layout.addWidget(self.list, 1)
        layout.addLayout(row)
        frame.telling.told_of.connect(lambda failure, _told: self._keep(failure))
        frame.state.leaving.connect(self.clear)
        self._enable()

    @property
    def count(self) -> int:
        """How many there are."""
        return len(self._held)

    def clear(self) -> None:
        """Forget all: they are of a project that is left."""
        self._held.clear()
        self.list.clear()
        self._enable()

    def _keep(self, failure: Failure) -> None:
        self._held.insert(0, failure)
        words = masked(str(failure.error)) or type(failure.error).__name__
        self.list.insertItem(0, f"{failure.title}: {words}" if failure.title else words)
        while len(self._held) > _MOST_PROBLEMS:
            self._held.pop()
            self.list.takeItem(self.list.count() - 1)
        self.list.setCurrentRow(0)
        self._enable()

    def _chosen(self) -> Failure | None:
        row = self.list.currentRow()
        return self._held[row] if 0 <= row < len(self._held) else None

    def _enable(self) -> None:
        failure = self._chosen()
        self.again.setEnabled(failure is not None and failure.once_more is not None)
        self.anew.setEnabled(failure is not None and failure.ask_again is not None)
        self.forget.setEnabled(failure is not None)
        self.counted.emit()

    def _try_again(self) -> None:
        failure = self._chosen()
        if failure is not None and failure.once_more is not None:
            self._forget()
            failure.once_more()

    def _choose_again(self) -> None:
        failure = self._chosen()
        if failure is not None and failure.ask_again is not None:
            self._forget()
            failure.ask_again()

    def _forget(self) -> None:
        row = self.list.currentRow()
        if 0 <= row < len(self._held):
            del self._held[row]
            self.list.takeItem(row)
        self._enable()


class Drawer(TabbedPages):
    """Problems and jobs."""

    def __init__(self, frame: Frame, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.jobs, self.problems = JobsPage(frame), ProblemsPage(frame)
        self.setDocumentMode(True)
        self.addTab(self.jobs, phrase("Jobs"))
        self.addTab(self.problems, phrase("Problems"))
        self._frame = frame
        frame.jobs.log.changed.connect(self._title)
        self.problems.counted.connect(self._title)

    def turn(self) -> None:
        """Open it, or shut it."""
        self.setVisible(self.isHidden())
        if self.isVisible():
            self.currentWidget().setFocus()

    def _title(self) -> None:
        jobs, problems = len(self._frame.jobs.log.entries), self.problems.count
        self.setTabText(0, phrase("Jobs {jobs}", jobs=jobs) if jobs else phrase("Jobs"))
        self.setTabText(1, phrase("Problems {problems}", problems=problems) if problems else phrase("Problems"))
