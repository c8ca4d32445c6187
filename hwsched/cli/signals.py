"""Being told to stop: by Ctrl-C, by the system, by a terminal that goes away. What is half written is cleared away."""

from __future__ import annotations

import _thread
import os
import signal
import sys
import time

from hwsched.cli.verb import HUNG_UP, INTERRUPTED, TERMINATED

TYPE_CHECKING = False
if TYPE_CHECKING:
    from types import FrameType
    from typing import Any


class Stopped(BaseException):
    """The process was told to stop; carries the exit status."""

    def __init__(self, status: int) -> None:
        super().__init__(status)
        self.status = status


_STATUSES = {"SIGINT": INTERRUPTED, "SIGTERM": TERMINATED, "SIGHUP": HUNG_UP}
_told: list[int] = []


def _stop(number: int, _frame: FrameType | None) -> None:
    status = _STATUSES[signal.Signals(number).name]
    _told.append(status)
    raise Stopped(status)


def watch_signals() -> None:
    """Let each of them raise Stopped, so that everything that is open is closed in order."""
    for name in _STATUSES:
        number = getattr(signal, name, None)
        # What whoever started us wants ignored (nohup, a shell's background job) stays ignored.
        if number is not None and signal.getsignal(number) is not signal.SIG_IGN:
            signal.signal(number, _stop)
    sys.unraisablehook = _not_lost


_MOMENT_S = 0.01


def _not_lost(dropped: Any) -> None:
    """Stop a moment later where the signal fell into a place whose exceptions Python drops.

    The end of a weak reference is one, and each import has some: the verb would go on as if nobody had said a word.
    """
    if not isinstance(dropped.exc_value, Stopped):
        sys.__unraisablehook__(dropped)
        return
    status = dropped.exc_value.status
    number = next(getattr(signal, name) for name, means in _STATUSES.items() if means == status)

    def again() -> None:
        time.sleep(_MOMENT_S)
        _thread.interrupt_main(number)

    _thread.start_new_thread(again, ())


def status_told() -> int | None:
    """Return the exit status of the first signal that came; None where none did.

    A library may have made something else of the exception on its way.
    """
    return _told[0] if _told else None


def leave_at_once(status: int) -> None:
    """From here on a signal ends the process as it stands: all is done, only the interpreter is still tidying up."""
    for name in _STATUSES:
        number = getattr(signal, name, None)
        if number is not None and signal.getsignal(number) is not signal.SIG_IGN:
            signal.signal(number, lambda *_: os._exit(status))
