"""The one way in which the desktop runs an operation: off the screen's thread, one at a time, in the order asked for.

Work gets two callables, progress(done, total) and cancelled(), opens its own database connection and hands back plain
values. What it wrote reaches the views whoever asked for it and however it ended; what went wrong is told with it.
"""

import logging
import time
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final

from PySide6.QtCore import QObject, Qt, QThread, QTimer, Signal, Slot
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from hwsched.desktop.jobs.job_log import JobLog
from hwsched.desktop.jobs.ran import Ran, Report
from hwsched.model.errors import ConflictError
from hwsched.model.journal.written import Written, noting
from hwsched.operations.outcome import changes_of
from hwsched.stopping import StopAskedError, stoppable
from hwsched.telling.masking import masked

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]
Work = Callable[[Progress, Cancelled], Any]

_LOG: Final = logging.getLogger(__name__)
_PROGRESS_S: Final = 0.05
"""So often is told how far work is [s]: oftener nobody sees it, and each time holds the screen and the work."""


@dataclass(frozen=True, slots=True)
class Failure:
    """Work that did not come to its end."""

    title: str
    """What was asked, for people."""
    error: BaseException
    written: tuple[Written, ...] | None = ()
    """What it had written by then, and what stands; None where nobody knows."""
    asker: QWidget | None = None
    """Where it was asked for."""
    once_more: Callable[[], object] | None = None
    """Does the same again, for what may be otherwise in a moment."""
    ask_again: Callable[[], object] | None = None
    """Lets the person choose anew, for what was chosen wrong."""
    doing: str = ""
    """The program's own name for it."""


@dataclass(slots=True)
class _Job:
    title: str
    work: Work
    then: Callable[[Any], None] | None
    asker: QWidget | None
    once_more: Callable[[], object]
    ask_again: Callable[[], object] | None
    doing: str
    ran: Ran | None = None
    """Where it is one that is kept to be read."""
    tells: Callable[[Any], Report] | None = None
    may_stop: bool = False
    """Whether it is long work that can be stopped, and no edit."""
    lost: Callable[[BaseException], object] | None = None
    """Keeps what was typed where it could not be written."""


class _Runner(QThread):
    progressed = Signal(int, int)

    def __init__(self, work: Work, may_stop: bool, parent: QObject) -> None:
        super().__init__(parent)
        self._work, self._may_stop = work, may_stop
        self._stop = False
        self._told = 0.0
        self.result: Any = None
        self.error: BaseException | None = None
        self.written: tuple[Written, ...] = ()

    @Slot()
    def begin(self) -> None:
        """Start, unless it has."""
        if not self.isRunning() and not self.isFinished():
            self.start()

    def stop(self) -> None:
        """Ask long work to stop; an edit is always made."""
        self._stop = self._may_stop

    @property
    def stopped(self) -> bool:
        return self._stop

    def run(self) -> None:
        with noting() as written, stoppable(lambda: self._stop):
            try:
                self.result = self._work(self._tell, lambda: self._stop)
            except BaseException as error:
                # Whatever it is: a thread that dies of it would leave the window waiting for ever.
                self.error = error
        self.written = tuple(written)

    def _tell(self, done: int, total: int) -> None:
        now = time.monotonic()
        if done >= total or now - self._told >= _PROGRESS_S:
            self._told = now
            self.progressed.emit(done, total)


class Jobs(QObject):
    """Runs one piece of work after another; results are held until they are handed over on the screen's thread."""

    started = Signal(str)
    progressed = Signal(int, int)
    ended = Signal()
    changed = Signal(object)
    """What work has written: its Changes, also where it failed after that, or the window that asked is gone."""
    wrote = Signal(object)
    """The change sets themselves, each Written, oldest first; told once the views have followed."""
    failed = Signal(object)
    """A Failure; the window turns it into words."""

    patience_ms = 300
    """So long an edit may hold the screen: nearly every one is made by then, and nobody sees it come and go."""

    closing_ms = 0
    """So long closing holds the screen for what was asked to stop: it goes on by itself once that has."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._runner: _Runner | None = None
        self._job: _Job | None = None
        self._waiting: deque[_Job] = deque()
        self._told = False
        self.log = JobLog(self)
        """Long work, kept to be read after it ended."""
        self._beside: list[tuple[QWidget, Jobs]] = []

    @property
    def busy(self) -> bool:
        """Whether something is running."""
        return self._runner is not None

    @property
    def besides(self) -> "list[Jobs]":
        """What reads beside this, for a page of its own; whoever closes the project waits for it, too."""
        return [each for _, each in self._beside]

    def beside(self, asker: QWidget) -> "Jobs":
        """Return what runs work that only reads beside this, for one page; it goes once the page has left."""
        made = Jobs(self)
        self._beside.append((asker, made))
        return made

    def run(
        self,
        title: str,
        work: Work,
        then: Callable[[Any], None] | None = None,
        *,
        asker: QWidget | None = None,
        ask_again: Callable[[], object] | None = None,
        tells: Callable[[Any], Report] | None = None,
        kept: bool = True,
    ) -> bool:
        """Start long work, unless something is running.

        Parameters
        ----------
        title : str
            For people.
        work : callable
            Runs off the screen's thread; gets progress and cancelled.
        then : callable, optional
            Gets its result on the screen's thread, unless the asker is gone or has left.
        asker : QWidget, optional
            The window in which it was asked for: errors are told there.
        ask_again : callable, optional
            Where what was chosen is refused: asks anew.
        tells : callable, optional
            Says of its result what came of it, for the page that stays.
        kept : bool
            Whether it is kept to be read after it ended, as what only reads is not.

        Returns
        -------
        bool
            Whether it was started.
        """
        if self._runner is not None:
            return False

        def once_more() -> None:
            self.run(title, work, then, asker=asker, ask_again=ask_again, tells=tells, kept=kept)

        ran = Ran(title) if kept else None
        self._start(_Job(title, work, then, asker, once_more, ask_again, _name(work), ran, tells, may_stop=True), 0)
        return True

    def edit(
        self,
        title: str,
        act: Callable[[], Any],
        then: Callable[[Any], None] | None = None,
        *,
        asker: QWidget | None = None,
        ask_again: Callable[[], object] | None = None,
        lost: Callable[[BaseException], object] | None = None,
    ) -> None:
        """Make an edit, or write one file: at once where nothing holds it up, else as soon as it can be, in order.

        Parameters
        ----------
        title, then, asker, ask_again
            As in `run`.
        act : callable
            Runs off the screen's thread.
        lost : callable, optional
            Gets what went wrong before it is told, to keep what was typed; of a conflict the person is asked instead.
        """

        def once_more() -> None:
            self.edit(title, act, then, asker=asker, ask_again=ask_again, lost=lost)

        work: Work = lambda _progress, _cancelled: act()  # noqa: E731
        job = _Job(title, work, then, asker, once_more, ask_again, _name(act), lost=lost)
        if self._runner is not None:
            self._waiting.append(job)
        else:
            self._start(job, self.patience_ms)

    def cancel(self) -> None:
        """Ask the running work to stop; an edit is made to its end."""
        if self._runner is not None:
            self._runner.stop()
            if self._job is not None and self._job.ran is not None:
                self._job.ran.stopping = True
                self.log.go_on(self._job.ran)

    def leave(self, asker: QWidget) -> None:
        """Let an asker go: its long work is asked to stop, its edits are made; it hears of neither, the views do."""
        for job in (self._job, *self._waiting):
            if job is not None and job.asker is asker:
                job.then = job.asker = job.lost = None
                if job is self._job:
                    self.cancel()
        for whose, each in list(self._beside):
            if whose is asker:
                each.leave(asker)
                self._dismiss(whose, each)

    def _dismiss(self, whose: QWidget, beside: "Jobs") -> None:
        """Let go of what reads beside this, now or once it has stopped: the screen does not wait for it."""
        if beside.busy:
            beside.ended.connect(lambda: self._dismiss(whose, beside), Qt.ConnectionType.SingleShotConnection)
            return
        self._beside.remove((whose, beside))
        beside.deleteLater()

    def wait(self, within_ms: int | None = None) -> bool:
        """Stop the running work, make the edits that wait, and come back when all is handed over.

        Parameters
        ----------
        within_ms : int, optional
            So long each piece of work is waited for at most; as long as it takes when left out.

        Returns
        -------
        bool
            Whether all is handed over; otherwise `ended` tells when what was asked to stop has.
        """
        while self._runner is not None:
            self.cancel()
            self._runner.begin()
            if within_ms is None:
                self._runner.wait()
            elif not self._runner.wait(within_ms):
                return False
            self._hand_over(self._runner)
        return True

    def _start(self, job: _Job, patience_ms: int) -> None:
        runner = _Runner(job.work, job.may_stop, self)
        self._runner, self._job, self._told = runner, job, False
        runner.progressed.connect(self._on_progressed)
        runner.finished.connect(self._on_finished)
        if patience_ms:
            runner.start()
            if runner.wait(patience_ms):
                self._hand_over(runner)
                return
        else:
            # What asked for it is seen first: beside the work a page would take twice as long to come.
            QTimer.singleShot(0, runner, runner.begin)
        self._told = True
        if job.ran is not None:
            self.log.begin(job.ran)
        self.started.emit(job.title)

    @Slot(int, int)
    def _on_progressed(self, done: int, total: int) -> None:
        if self._job is not None and self._job.ran is not None:
            self._job.ran.done, self._job.ran.total = done, total
            self.log.go_on(self._job.ran)
        self.progressed.emit(done, total)

    @Slot()
    def _on_finished(self) -> None:
        # What was handed over already says so once more: the news was on its way.
        runner = self._runner
        if runner is not None and runner.isFinished():
            self._hand_over(runner)

    def _hand_over(self, runner: _Runner) -> None:
        job = self._job
        if runner is not self._runner or job is None:
            return
        self._runner = self._job = None
        runner.wait()
        runner.deleteLater()
        if job.ran is not None:
            self._conclude(job, job.ran, runner)
        if self._told:
            self.ended.emit()
        try:
            if runner.written:
                self.changed.emit(changes_of(runner.written))
                self.wrote.emit(runner.written)
            if runner.stopped and isinstance(runner.error, StopAskedError):
                _LOG.info(f"{job.doing} was stopped")
            elif runner.error is not None:
                self._fail(job, runner.error, runner.written)
            elif job.then is not None and (job.asker is None or isValid(job.asker)):
                job.then(runner.result)
        finally:
            # What was asked for by now has begun already, or begins here.
            if self._runner is None and self._waiting:
                self._start(self._waiting.popleft(), self.patience_ms)

    def _conclude(self, job: _Job, ran: Ran, runner: _Runner) -> None:
        """Write down what came of a job that is kept."""
        if isinstance(runner.error, StopAskedError):
            ran.end("stopped")
        elif runner.error is not None:
            ran.trouble = (masked(str(runner.error)).splitlines() or [type(runner.error).__name__])[0]
            ran.end("stopped" if runner.stopped else "failed")
        else:
            if job.tells is not None:
                ran.report = job.tells(runner.result)
            ran.end("stopped" if runner.stopped else "done")
        self.log.end(ran)

    def _fail(self, job: _Job, error: BaseException, written: tuple[Written, ...]) -> None:
        _LOG.info(f"{job.doing} did not come to its end: {type(error).__name__}")
        asker = job.asker if job.asker is not None and isValid(job.asker) else None
        if job.lost is not None and job.asker is asker and not isinstance(error, ConflictError):
            job.lost(error)
        self.failed.emit(Failure(job.title, error, written, asker, job.once_more, job.ask_again, job.doing))


def _name(work: Callable[..., Any]) -> str:
    """Return the program's own name for some work."""
    return str(getattr(work, "__qualname__", type(work).__name__))
