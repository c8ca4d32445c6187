"""What nobody caught: exceptions out of slots, threads and destructors, Qt's own messages, signals of the system.

They go into the log; a failure is told to the person once. Here belong the hooks; what is told stands in `trouble`.
"""

import contextlib
import logging
import os
import signal
import socket
import sys
import threading
import traceback
from collections.abc import Callable, Iterator
from types import FrameType, TracebackType
from typing import Final

from PySide6.QtCore import QMessageLogContext, QObject, QSocketNotifier, QtMsgType, Signal, Slot, qInstallMessageHandler

_LOG: Final = logging.getLogger(__name__)
_QT_LOG: Final = logging.getLogger("qt")
_LEVELS: Final = {
    QtMsgType.QtDebugMsg: logging.DEBUG,
    QtMsgType.QtInfoMsg: logging.INFO,
    QtMsgType.QtWarningMsg: logging.WARNING,
    QtMsgType.QtCriticalMsg: logging.ERROR,
    QtMsgType.QtFatalMsg: logging.CRITICAL,
}


@contextlib.contextmanager
def qt_messages_logged(when_fatal: Callable[[str], None]) -> Iterator[None]:
    """Send Qt's messages to the log.

    Parameters
    ----------
    when_fatal : callable
        Gets Qt's last words before it would abort the process; it is expected to end the process in another way.
    """
    words: list[str] = []

    def handle(kind: QtMsgType, _context: QMessageLogContext, message: str) -> None:
        _QT_LOG.log(_LEVELS.get(kind, logging.WARNING), "%s", message)
        if kind in (QtMsgType.QtWarningMsg, QtMsgType.QtFatalMsg):
            words.append(message)
            del words[:-2]
        if kind == QtMsgType.QtFatalMsg:
            when_fatal(words[0])

    before = qInstallMessageHandler(handle)
    try:
        yield
    finally:
        qInstallMessageHandler(before)


class LastResort(QObject):
    """Catches what nobody caught and hands it to the window, each kind once."""

    came = Signal(object)
    """The exception, on the screen's thread."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._told: set[str] = set()

    @contextlib.contextmanager
    def in_force(self) -> Iterator[None]:
        """Stand in Python's hooks until the block ends."""
        before = sys.excepthook, threading.excepthook, sys.unraisablehook
        sys.excepthook = self._on_exception
        threading.excepthook = lambda args: self._on_exception(args.exc_type, args.exc_value, args.exc_traceback)
        sys.unraisablehook = lambda args: self._on_exception(args.exc_type, args.exc_value, args.exc_traceback)
        try:
            yield
        finally:
            sys.excepthook, threading.excepthook, sys.unraisablehook = before

    def _on_exception(
        self, kind: type[BaseException], error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if error is None or issubclass(kind, SystemExit):
            return
        _LOG.error("nobody caught this", exc_info=(kind, error, trace))
        # A slot that is called at every repaint would tell the same at every repaint.
        key = f"{kind.__name__} {traceback.extract_tb(trace)[-1:]}"
        if key not in self._told:
            self._told.add(key)
            self.came.emit(error)


class Signals(QObject):
    """Signals of the system, as they reach a process that waits in Qt's event loop."""

    came = Signal(int)
    """Exit status that it asks for."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._inside, self._outside = socket.socketpair()
        for end in (self._inside, self._outside):
            end.setblocking(False)
        self._notifier = QSocketNotifier(self._inside.fileno(), QSocketNotifier.Type.Read, self)
        self._notifier.activated.connect(self._on_wakeup)

    @contextlib.contextmanager
    def in_force(self) -> Iterator[None]:
        """Stand in the place of Python's handlers until the block ends; only on the main thread."""
        before: dict[signal.Signals, object] = {}
        for name in ("SIGINT", "SIGTERM", "SIGHUP"):
            number = getattr(signal, name, None)
            if number is not None and signal.getsignal(number) is not signal.SIG_IGN:
                before[number] = signal.signal(number, self._on_signal)
        wakeup = signal.set_wakeup_fd(self._outside.fileno(), warn_on_full_buffer=False)
        try:
            yield
        finally:
            signal.set_wakeup_fd(wakeup)
            for number, handler in before.items():
                signal.signal(number, handler)  # type: ignore[arg-type]
            self._notifier.setEnabled(False)
            self._inside.close()
            self._outside.close()

    def _on_signal(self, number: int, _frame: FrameType | None) -> None:
        self.came.emit(128 + number)

    @Slot()
    def _on_wakeup(self) -> None:
        # The byte has done its work: Python runs the handler as soon as Python runs at all.
        with contextlib.suppress(BlockingIOError):
            os.read(self._inside.fileno(), 64)
