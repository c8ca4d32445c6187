"""How the views stay in step with the project: opened, read anew after what is written here or by others, closed.

Here belongs when something is read, and beside what. Which openings a change touches stands in `touched_openings`, how
others' steps are noticed in `watching`, what views share in `project_state`.
"""

from collections.abc import Sequence
from functools import partial
from threading import Event
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Qt, QTimer, Signal, Slot

from hwsched.desktop.frame.loading_judges import load_judges
from hwsched.desktop.jobs.jobs import Cancelled, Failure, Jobs, Progress
from hwsched.desktop.jobs.trouble import Telling
from hwsched.desktop.project.project_state import ProjectState
from hwsched.desktop.project.remains import Remains
from hwsched.desktop.project.touched_openings import touched_openings
from hwsched.desktop.project.watching import Watcher
from hwsched.desktop.project.workspace import Workspace
from hwsched.language import phrase, to_phrase
from hwsched.model.project import Project
from hwsched.operations.changes import Changes
from hwsched.operations.opening.seen_first import ReadOpenings, seen_first
from hwsched.operations.outcome import CLOSED
from hwsched.values import OpeningInput

if TYPE_CHECKING:
    from hwsched.operations.findings.checking import Checker

_HANDFUL = 20
"""So many openings are read anew here and now, more of them in the background."""
_TURNS = 3
"""So often what others wrote is read beside a person's own edits; then the next edit waits for it."""
_SAID_MS = 8000
_SEEN_S = 0.5
"""So long judging waits for openings to be painted: both would take turns, and a person sees only one of them."""
_SILENT = to_phrase("The project does not answer: what others do is not seen until it does.")


class Following(QObject):
    """Lets what is written reach the views.

    Parameters
    ----------
    state : ProjectState
        What the views observe.
    jobs : Jobs
        The work that a person waits for.
    telling : Telling
        Says what could not be read.
    """

    may_close = Signal()
    """What kept the project from being closed is over."""
    said = Signal(str, int)
    """A line for the status bar and how long it stands [ms]; 0: until the next one."""

    _read = Signal(object, object)
    """A workspace with its openings as they were read, before they are judged, and what is set once they are seen."""

    def __init__(self, state: ProjectState, jobs: Jobs, telling: Telling, parent: QObject) -> None:
        super().__init__(parent)
        self._state, self._jobs, self._telling = state, jobs, telling
        self.reading = Jobs(self)
        """Reads what others wrote, beside the work that a person waits for."""
        self.reading.failed.connect(self._tell_of_others)
        self._reader: Checker | None = None
        self.watcher: Watcher | None = None
        self.closing = False
        """Whether it was asked to close and waits for what is running."""
        self._told_before = 0
        self._ahead = False
        """Whether openings are shown that are not judged yet."""
        self._read.connect(self._on_read)
        jobs.ended.connect(self._on_ended)
        jobs.changed.connect(self._on_changed)
        telling.theirs_kept.connect(self._on_changed)

    def show(self, project: Project, remains: Remains | None = None) -> None:
        """Close what was open, and show a project; remains: it is what can be read of a damaged one."""
        self._leave()
        self.watcher = Watcher(project, lambda: not self._jobs.busy, self)
        self.watcher.changed.connect(self._on_others)
        self.watcher.said.connect(lambda said: self.said.emit(said, _SAID_MS))
        self.watcher.answers.connect(lambda answers: self.said.emit("" if answers else phrase(_SILENT), 0))
        self.watcher.failed.connect(self._tell_of_others)
        self._state.take(Workspace(project, self._state.who, self, remains))
        self.reload(phrase("Reading the project"))

    def close(self) -> bool:
        """Close the project, unless there is something to tell first, or something is still running.

        What is running is asked to stop and edits are made; `may_close` tells when that is done. The screen does not
        wait for it.
        """
        if not self.closing:
            self._told_before = self._telling.times
        for each in self._works():
            if not each.wait(each.closing_ms):
                self.closing = True
                each.ended.connect(self._on_stopped, Qt.ConnectionType.SingleShotConnection)
                return False
        self.closing = False
        if self._telling.times != self._told_before:
            return False
        self._leave()
        return True

    def stop(self) -> None:
        """Stop what is running and make the edits that wait, however long that takes."""
        for each in self._works():
            each.wait()

    def _works(self) -> list[Jobs]:
        return [
            self._jobs,
            *self._jobs.besides,
            self.reading,
            *([self.watcher.jobs] if self.watcher is not None else []),
        ]

    def _on_stopped(self) -> None:
        # Its result is handed over first, and what waits begins.
        QTimer.singleShot(0, self, self.may_close.emit)

    def reload(self, title: str = "Checking") -> None:
        """Read and check everything anew."""
        workspace = self._state.workspace
        if workspace is None:
            return

        first, project = not workspace.turn, workspace.project

        def work(progress: Progress, _cancelled: Cancelled) -> Any:
            def judged(read: ReadOpenings | None = None) -> Any:
                load_judges()
                from hwsched.operations.findings.checking import check_openings

                # Stopped it takes nothing over: some of the openings are not all of them.
                found = check_openings(project, checker=workspace.checker, progress=progress, read=read)
                return found, workspace.read_beside()

            # A project that has just been opened is seen before it is judged, and before what judges it is loaded.
            return seen_first(project, partial(self._tell_read, workspace), judged) if first else judged()

        def take(found: Any) -> None:
            if workspace is self._state.workspace:
                workspace.take(*found)

        self._jobs.run(title, work, take, kept=False)

    def _tell_read(self, workspace: Workspace, openings: Sequence[OpeningInput]) -> None:
        """Hand over what was read, from where it is read, and let it be painted before the work goes on."""
        seen = Event()
        self._read.emit((workspace, openings), seen)
        seen.wait(_SEEN_S)

    @Slot(object, object)
    def _on_read(self, found: tuple[Workspace, Sequence[OpeningInput]], seen: Event) -> None:
        workspace, openings = found
        if workspace is self._state.workspace and not workspace.turn:
            self._ahead = True
            self._state.ahead.emit(openings)
        QTimer.singleShot(0, self, seen.set)

    def _on_ended(self) -> None:
        """Let go of what was shown ahead where nothing came of judging it: it was stopped, or it failed."""
        # What it came to is handed over after it was told that it has ended.
        QTimer.singleShot(0, self, self._end_ahead)

    def _end_ahead(self) -> None:
        workspace = self._state.workspace
        if self._ahead and not self._jobs.busy:
            self._ahead = False
            if workspace is not None and not workspace.turn:
                self._state.ahead.emit([])

    def _reload_beside(self, turns: int = _TURNS) -> None:
        """Read all anew beside the work of the person, who may edit meanwhile: then once more, so that it is shown."""
        workspace = self._state.workspace
        if workspace is None:
            return
        if not turns:
            self.reload(phrase("Reading what others did"))
            return
        from hwsched.operations.findings.checking import Checker, check_openings

        turn = workspace.turn
        reader = self._reader = self._reader or Checker()
        reader.before = workspace.checked

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            found = check_openings(workspace.project, checker=reader, progress=progress, cancelled=cancelled)
            return None if cancelled() else (found, workspace.read_beside())

        def take(found: Any) -> None:
            if workspace is not self._state.workspace or found is None:
                return
            if workspace.turn == turn:
                workspace.take(*found)
            else:
                self._reload_beside(turns - 1)

        if not self.reading.run("", work, take):
            # What is being read is older than what is asked for.
            workspace.turn += 1

    def _on_changed(self, changes: Changes) -> None:
        # Reading what was touched may fail as any reading may.
        self._telling.guarded(lambda: self._follow(changes, beside=False))

    def _on_others(self, changes: Changes) -> None:
        self._telling.guarded(lambda: self._follow(changes, beside=True))

    def _follow(self, changes: Changes, *, beside: bool) -> None:
        """Read anew what was touched: a handful here and now, more in the background; then tell of the change itself.

        Beside: the person goes on working meanwhile, since it was somebody else's.
        """
        workspace = self._state.workspace
        if workspace is None:
            return
        settings = bool(changes.entities & {"project", "own_field"})
        if settings:
            self._state.settle()
        # What of very many is touched besides takes longer to find than the screen may wait.
        every = settings or bool(changes.parts) or len(changes.openings) > _HANDFUL
        touched = set() if every else touched_openings(workspace, changes)
        if not every and len(touched) <= _HANDFUL:
            workspace.refresh(touched)
        elif beside:
            self._reload_beside()
        else:
            self.reload()
        workspace.changed.emit(changes)

    def _tell_of_others(self, failure: Failure) -> None:
        """Tell a mistake of the program; a project that does not answer is tried again by itself."""
        if not isinstance(failure.error, CLOSED):
            self._telling.tell(failure)

    def _leave(self) -> None:
        """Close the open project, and what watches it."""
        workspace = self._state.give_up()
        self._reader = None
        if self.watcher is not None:
            self.watcher.close()
            self.watcher.deleteLater()
            self.watcher = None
        self.reading.wait()
        if workspace is not None:
            workspace.close()
            workspace.deleteLater()
