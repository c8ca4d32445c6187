"""The program's log: a file in the person's own folder, on wish the screen too, and the last lines kept for a report.

A line says which verb, which step, how many, which kind of failure. What is put into a message is the program's own
word; what goes along as an argument may be a person's (a mark, a name, a path): a report leaves it out, save numbers.
"""

import faulthandler
import logging
import os
import sys
import warnings
from collections import deque
from collections.abc import Iterator
from contextlib import contextmanager
from logging.handlers import RotatingFileHandler
from pathlib import Path
from typing import Final

from platformdirs import user_log_path

from hwsched.telling.masking import masked

FOLDER_VARIABLE: Final = "HWSCHED_LOG"
"""Names another folder for log and reports than the person's own."""
_FILE: Final = "hwsched.log"
_LARGEST: Final = 1_000_000
_KEPT_FILES: Final = 3
_KEPT_LINES: Final = 60
_LAYOUT: Final = "%(asctime)s %(process)d %(levelname)s %(name)s: %(message)s"


def log_folder() -> Path:
    """Return where log and reports lie; it may not be there yet."""
    named = os.environ.get(FOLDER_VARIABLE)
    return Path(named) if named else user_log_path("hwsched", appauthor=False)


def log_file() -> Path:
    """Return where the log lies."""
    return log_folder() / _FILE


class _Masked(logging.Formatter):
    """Takes passwords out of the whole line, the traceback included."""

    def format(self, record: logging.LogRecord) -> str:
        return masked(super().format(record))


class _File(RotatingFileHandler):
    """A log that cannot be written must never be why something else fails."""

    def handleError(self, record: logging.LogRecord) -> None:  # noqa: N802
        """Say nothing: the disk may be full, or another program may hold the file as it is turned over."""

    def doRollover(self) -> None:  # noqa: N802
        """Turn the file over, unless another process of ours holds it."""
        try:
            super().doRollover()
        except OSError:
            self.stream = self._open()


class LastLines(logging.Handler):
    """The last lines, without what a person typed: for a report that is sent."""

    def __init__(self) -> None:
        super().__init__(logging.INFO)
        self._lines: deque[str] = deque(maxlen=_KEPT_LINES)
        self._clock = logging.Formatter()

    def emit(self, record: logging.LogRecord) -> None:
        """Keep a line."""
        stated = record.args if isinstance(record.args, tuple) else ()
        # Only numbers of what was put in: texts may be marks, names or paths, and the report is sent.
        shown = tuple(each if isinstance(each, int | float) else "..." for each in stated)
        try:
            words = str(record.msg) % shown if shown else str(record.msg)
        except (TypeError, ValueError):
            words = str(record.msg)
        when = self._clock.formatTime(record)
        self._lines.append(masked(f"{when} {record.levelname} {record.name}: {words}"))

    def lines(self) -> list[str]:
        """Return what is kept, oldest first."""
        return list(self._lines)


_LAST: Final = LastLines()


def last_lines() -> list[str]:
    """Return the last lines of the log, without what a person typed."""
    return _LAST.lines()


@contextmanager
def faults_logged() -> Iterator[None]:
    """Let a fault below Python, which ends the process at once, leave its place in a file beside the log."""
    try:
        file = (log_folder() / "faults.log").open("a", encoding="utf-8")
    except OSError:
        yield
        return
    with file:
        faulthandler.enable(file)
        try:
            yield
        finally:
            faulthandler.disable()


def start_log(*, verbose: bool = False) -> None:
    """Let everything be logged from here on: for a process of its own, not for a library that is imported.

    Parameters
    ----------
    verbose : bool
        On the screen too.
    """
    root = logging.getLogger()
    if _LAST in root.handlers:
        return
    root.setLevel(logging.INFO)
    logging.getLogger("hwsched").setLevel(logging.DEBUG if verbose else logging.INFO)
    layout = _Masked(_LAYOUT)
    handlers: list[logging.Handler] = [_LAST]
    try:
        log_folder().mkdir(parents=True, exist_ok=True)
        # Opened at the first line only: a verb that logs nothing leaves no file.
        handlers.append(_File(log_file(), maxBytes=_LARGEST, backupCount=_KEPT_FILES, encoding="utf-8", delay=True))
    except OSError as error:
        if verbose:
            sys.stderr.write(f"hwsched: no log is kept: {log_folder()}: {error.strerror or error}\n")
    if verbose:
        handlers.append(logging.StreamHandler(sys.stderr))
    for handler in handlers:
        handler.setFormatter(layout)
        root.addHandler(handler)
    logging.captureWarnings(True)
    if not verbose:
        # A person at work has nothing of them; the log has.
        warnings.simplefilter("default")
