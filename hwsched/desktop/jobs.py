"""Work off the screen's thread: one job at a time, with progress and cancel; plain values come back.

A job gets two callables, progress(done, total) and cancelled(), and opens its own database connection.
"""

import logging
from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QThread, Signal, Slot

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]
Work = Callable[[Progress, Cancelled], Any]

_LOG = logging.getLogger(__name__)


class _Runner(QThread):
    progressed = Signal(int, int)
    done = Signal(object)
    failed = Signal(object)

    def __init__(self, work: Work, parent: QObject) -> None:
        super().__init__(parent)
        self._work = work
        self._stop = False

    def stop(self) -> None:
        self._stop = True

    def run(self) -> None:
        try:
            result = self._work(self.progressed.emit, lambda: self._stop)
        except Exception as error:
            self.failed.emit(error)
        else:
            self.done.emit(result)


class Jobs(QObject):
    """Runs one job after another is done; a second one while one is running is refused."""

    started = Signal(str)
    progressed = Signal(int, int)
    ended = Signal()
    failed = Signal(object)
    """The exception; the window turns it into words."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._runner: _Runner | None = None
        self._then: Callable[[Any], None] | None = None

    @property
    def busy(self) -> bool:
        """Whether a job is running."""
        return self._runner is not None

    def run(self, title: str, work: Work, then: Callable[[Any], None]) -> bool:
        """Start a job; `then` gets its result on the screen's thread. Returns whether it was started."""
        if self._runner is not None:
            return False
        runner = _Runner(work, self)
        self._runner, self._then = runner, then
        runner.progressed.connect(self.progressed)
        runner.done.connect(self._on_done)
        runner.failed.connect(self._on_failed)
        self.started.emit(title)
        runner.start()
        return True

    def cancel(self) -> None:
        """Ask the running job to stop."""
        if self._runner is not None:
            self._runner.stop()

    def wait(self) -> None:
        """Stop the running job and wait for its end; its result is dropped."""
        if self._runner is not None:
            self._then = None
            self._runner.stop()
            self._runner.wait()

    @Slot(object)
    def _on_done(self, result: Any) -> None:
        then = self._close()
        if then is not None:
            then(result)

    @Slot(object)
    def _on_failed(self, error: Exception) -> None:
        self._close()
        self.failed.emit(error)

    def _close(self) -> Callable[[Any], None] | None:
        runner, then = self._runner, self._then
        self._runner = self._then = None
        if runner is not None:
            runner.wait()
            runner.deleteLater()
        self.ended.emit()
        return then
