"""A window beside the main one, for one kind of work on the open project; it follows the project's changes."""

from collections.abc import Callable, Sequence
from typing import Any, Final, Protocol

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QProgressBar, QPushButton, QVBoxLayout, QWidget

from hwsched.desktop.jobs import Jobs, Work
from hwsched.desktop.workspace import Workspace

CHANGED: Final = "The project has changed since: what this stands on is compared once more when you accept it."
"""Said of what was shown before it is accepted."""


class Edit(Protocol):
    """Makes an edit off the screen's thread, tells what went wrong, lets all views follow."""

    def __call__(
        self, act: Callable[[], Any], then: Callable[[Any], None] | None = None, *, asker: QWidget | None = None
    ) -> None:
        """Call an operation; `then` gets what it returns once it is made, unless the asker is gone."""


class EditSeen(Protocol):
    """Makes an edit of what was shown; asks where somebody else changed it meanwhile; otherwise as `Edit`."""

    def __call__(
        self,
        act: Callable[[int | None], Any],
        base: int | None,
        then: Callable[[Any], None] | None = None,
        *,
        asker: QWidget | None = None,
    ) -> None:
        """Call an operation with the newest step when what it is about was shown."""


class Desk(QObject):
    """What a window beside the main one may see and do of it.

    Parameters
    ----------
    workspace : Workspace
        The open project.
    jobs : Jobs
        Work off the screen's thread.
    edit, edit_seen : callable
        Make an edit: one of what is new, one of what was shown at a step.
    chosen : callable
        Returns the openings selected in the register.
    select : callable
        Selects openings in the register.
    show_rule : callable
        Shows a rule in the rulebook.
    reload : callable
        Reads and checks everything anew, after a job that wrote.
    """

    selected = Signal()
    """Other openings are selected in the register."""

    def __init__(
        self,
        workspace: Workspace,
        jobs: Jobs,
        parent: QObject,
        *,
        edit: Edit,
        edit_seen: EditSeen,
        chosen: Callable[[], list[str]],
        select: Callable[[Sequence[str]], None],
        show_rule: Callable[[str], None],
        reload: Callable[[], None],
    ) -> None:
        super().__init__(parent)
        self.workspace, self.jobs = workspace, jobs
        self.edit, self.edit_seen, self.chosen, self.select = edit, edit_seen, chosen, select
        self.show_rule, self.reload = show_rule, reload


class ToolWindow(QDialog):
    """Body above, one row with progress and buttons below; closing it asks its own job to stop.

    Here belongs how such a window follows the project, runs its own job and lets go of it; what it shows and asks
    belongs to the window of a subject.
    """

    def __init__(self, desk: Desk, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.desk = desk
        self._working = False
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.bar = QProgressBar()
        self.bar.setMaximumWidth(200)
        self.stop = self.button("Cancel", desk.jobs.cancel)
        self.foot = QHBoxLayout()
        self.foot.addWidget(self.told, 1)
        self.foot.addWidget(self.bar)
        self.foot.addWidget(self.stop)
        self.bar.hide()
        self.stop.hide()
        self.body = QVBoxLayout()
        layout = QVBoxLayout(self)
        layout.addLayout(self.body, 1)
        layout.addLayout(self.foot)
        desk.jobs.started.connect(self._on_started)
        desk.jobs.progressed.connect(self._on_progress)
        desk.jobs.ended.connect(self._on_ended)
        desk.workspace.reloaded.connect(self.follow)
        desk.workspace.touched.connect(self._on_touched)
        desk.selected.connect(self.enable)

    def button(self, text: str, slot: Callable[[], Any], tip: str = "") -> QPushButton:
        """Make a button that Return in a field does not press."""
        made = QPushButton(text)
        made.setAutoDefault(False)
        made.setToolTip(tip)
        made.clicked.connect(lambda _checked=False: slot())
        return made

    @property
    def idle(self) -> bool:
        """Whether no job is running, of this window or any other."""
        return not self.desk.jobs.busy

    def run(self, title: str, work: Work, then: Callable[[Any], None]) -> bool:
        """Start a job of this window."""
        self._working = self.idle
        if not self.desk.jobs.run(title, work, then, asker=self):
            return False
        self.told.setText(title)
        self.bar.setRange(0, 0)
        self.bar.show()
        self.stop.show()
        return True

    def edit(self, act: Callable[[], Any], then: Callable[[Any], None] | None = None) -> None:
        """Make an edit; `then` gets what the operation returns, as long as this window is there."""
        self.desk.edit(act, then, asker=self)

    def edit_seen(
        self, act: Callable[[int | None], Any], base: int | None, then: Callable[[Any], None] | None = None
    ) -> None:
        """Make an edit of what was shown when a step was the newest; otherwise as `edit`."""
        self.desk.edit_seen(act, base, then, asker=self)

    def enable(self) -> None:
        """Let what is possible at present be done."""

    def follow(self) -> None:
        """Show the project as it now stands."""
        self.enable()

    def follow_change(self, _changes: object) -> None:
        """Follow an edit of what is no opening; Qt lets go of a method with its window, of a function it would not."""
        self.follow()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Keep Return to the field: Qt would press a button even of a question that the field has just opened."""
        if event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)

    def done(self, result: int) -> None:
        """Let go of the window's own work: what it has written, or still writes, reaches the other views."""
        self.desk.jobs.leave(self)
        super().done(result)

    def _on_touched(self, _ids: object) -> None:
        self.follow()

    def _on_started(self, _title: str) -> None:
        self.enable()

    def _on_progress(self, done: int, total: int) -> None:
        if self._working:
            self.bar.setRange(0, max(total, 1))
            self.bar.setValue(done)

    def _on_ended(self) -> None:
        if self._working:
            self._working = False
            self.told.clear()
            self.bar.hide()
            self.stop.hide()
        self.enable()
