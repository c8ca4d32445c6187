"""A page for one kind of work on the open project; it follows the project's changes while it is in sight."""

from collections.abc import Callable, Sequence
from typing import Any, Final, Protocol

from PySide6.QtCore import QObject, Qt, Signal, SignalInstance
from PySide6.QtGui import QCloseEvent, QShowEvent
from PySide6.QtWidgets import QLabel, QProgressBar, QPushButton, QVBoxLayout, QWidget

from hwsched.desktop.jobs.jobs import Cancelled, Jobs, Progress, Work
from hwsched.desktop.jobs.ran import Report
from hwsched.desktop.looks.text_size import in_figures
from hwsched.desktop.project.workspace import Workspace
from hwsched.desktop.widgets.flow import Foot
from hwsched.language import phrase, to_phrase
from hwsched.stopping import StopAskedError

CHANGED: Final = to_phrase(
    "The project has changed since: what this stands on is compared once more when you accept it."
)
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
        lost: Callable[[BaseException], object] | None = None,
    ) -> None:
        """Call an operation with the newest step when what it is about was shown."""


class Desk(QObject):
    """What a page may see and do of the window.

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
    go : callable
        Goes to a place by its name, to show a thing.
    show_fact : callable
        Shows a fact of the chosen opening, by ``entity.attribute``, beside the register.
    open_project : callable
        Opens another project, or the same one anew.
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
        go: Callable[..., None],
        show_fact: Callable[[str], None],
        open_project: Callable[[str], None],
    ) -> None:
        super().__init__(parent)
        self.workspace, self.jobs = workspace, jobs
        self.edit, self.edit_seen, self.chosen, self.select = edit, edit_seen, chosen, select
        self.show_rule, self.reload, self.go, self.open_project = show_rule, reload, go, open_project
        self.show_fact = show_fact

    def show_openings(self, ids: Sequence[str]) -> None:
        """Go to openings in the register: to select them where nobody sees it would do nothing."""
        if ids:
            self.go("openings", tuple(ids))


class ToolWindow(QWidget):
    """Body above, one row with progress and buttons below; closing it asks its own job to stop.

    Here belongs how such a page follows the project, runs its own job and lets go of it; what it shows and asks
    belongs to the page of a subject. Out of sight it does not follow; it catches up when it is seen again.
    """

    finished = Signal()
    """It was closed."""

    def __init__(self, desk: Desk, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.desk = desk
        self._working = False
        self._behind = False
        """Whether something was changed while the page was out of sight."""
        self._heard: list[tuple[SignalInstance, Callable[..., Any]]] = []
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.bar = QProgressBar()
        in_figures(self.bar, maximumWidth=24)
        self.stop = self.button(phrase("Cancel"), desk.jobs.cancel)
        self.foot = Foot()
        self.foot.addWidget(self.told)
        self.foot.addWidget(self.bar)
        self.foot.addWidget(self.stop)
        self.bar.hide()
        self.stop.hide()
        self.body = QVBoxLayout()
        layout = QVBoxLayout(self)
        layout.addLayout(self.body, 1)
        layout.addLayout(self.foot)
        self.listen(desk.jobs.started, self._on_started)
        self.listen(desk.jobs.progressed, self._on_progress)
        self.listen(desk.jobs.ended, self._on_ended)
        self.listen(desk.workspace.reloaded, self._on_reloaded)
        self.listen(desk.workspace.touched, self._on_touched)
        self.listen(desk.selected, self._on_selected)

    def heightForWidth(self, width: int) -> int:  # noqa: N802
        """Return how high it must be: as high as it likes to be it would be scrolled, its buttons out of sight."""
        layout = self.layout()
        return layout.minimumHeightForWidth(width) if layout is not None else super().heightForWidth(width)

    def listen(self, signal: SignalInstance, slot: Callable[..., Any]) -> None:
        """Hear a signal until the page is closed."""
        signal.connect(slot)
        self._heard.append((signal, slot))

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

    def run(
        self,
        title: str,
        work: Work,
        then: Callable[[Any], None],
        tells: Callable[[Any], Report] | None = None,
    ) -> bool:
        """Start a job of this window; stopped before it had an answer, the page says so.

        What `tells` says of the answer stays to be read among the jobs, with ways to what was made.
        """
        self._working = self.idle

        def until_stopped(progress: Progress, cancelled: Cancelled) -> Any:
            try:
                return work(progress, cancelled)
            except StopAskedError as stopped:
                return stopped

        def answered(result: Any) -> None:
            if isinstance(result, StopAskedError):
                self.show_stopped()
            else:
                then(result)

        def told(result: Any) -> Report:
            return Report() if tells is None or isinstance(result, StopAskedError) else tells(result)

        if not self.desk.jobs.run(title, until_stopped, answered, asker=self, tells=told):
            return False
        self.told.setText(title)
        self.bar.setRange(0, 0)
        self.bar.show()
        self.stop.show()
        return True

    def show_stopped(self) -> None:
        """Say that the page's job was stopped before its end, where it says what came of it."""
        said = getattr(self, "said", self.told)
        said.setText(phrase("Stopped; what was not finished was not written."))
        self.enable()

    def edit(self, act: Callable[[], Any], then: Callable[[Any], None] | None = None) -> None:
        """Make an edit; `then` gets what the operation returns, as long as this window is there."""
        self.desk.edit(act, then, asker=self)

    def edit_seen(
        self,
        act: Callable[[int | None], Any],
        base: int | None,
        then: Callable[[Any], None] | None = None,
        lost: Callable[[BaseException], object] | None = None,
    ) -> None:
        """Make an edit of what was shown when a step was the newest; what was typed is kept by `lost`."""
        self.desk.edit_seen(act, base, then, asker=self, lost=lost)

    def enable(self) -> None:
        """Let what is possible at present be done."""

    def follow(self) -> None:
        """Show the project as it now stands."""
        self.enable()

    def follow_in_sight(self) -> None:
        """Follow now where the page is in sight, else as soon as it is."""
        self._behind = not self.isVisible()
        if not self._behind:
            self.follow()

    def follow_change(self, _changes: object) -> None:
        """Follow an edit of what is no opening."""
        self.follow_in_sight()

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802
        """Catch up with what was changed out of sight."""
        super().showEvent(event)
        if self._behind:
            self._behind = False
            self.follow()
        else:
            self.enable()

    def let_go(self) -> None:
        """Hear of nothing more; what the page's own work has written, or still writes, reaches the other views."""
        heard, self._heard = self._heard, []
        for signal, slot in heard:
            signal.disconnect(slot)
        self.desk.jobs.leave(self)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Let go of the window's work."""
        self.let_go()
        super().closeEvent(event)
        self.finished.emit()

    def _on_reloaded(self) -> None:
        self.follow_in_sight()

    def _on_touched(self, _ids: object) -> None:
        self.follow_in_sight()

    def _on_selected(self) -> None:
        if self.isVisible():
            self.enable()

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
