"""Writing the sheets of many openings, shared out to processes beside this one: one a further core.

This process takes openings from the front, the others from the back, a few at a time. Whatever could not be done beside
is done here, where its error is told: nothing hangs on the others.
"""

import logging
import subprocess
import threading
from collections import deque
from collections.abc import Callable, Sequence
from types import TracebackType
from typing import Final, Self

from hwsched.fingerprint import engine
from hwsched.language import spoken
from hwsched.operations.beside import Receiver, Sender, command_of, cores, start
from hwsched.operations.release.opening_sheets import Files, OpeningSheet, Printing, write_sheet
from hwsched.writing import StoppedWritingError, UnwritableError

_LOG: Final = logging.getLogger(__name__)
COMMAND: list[str] = command_of("hwsched.operations.release.sheet_worker")
"""Starts a process that writes sheets."""
_CHUNK: Final = 6
_EACH: Final = 60
"""Sheets for which one more process is started: it takes most of a second before it writes its first."""
_MOST: Final = 7
_LOOK_S: Final = 0.1
"""How often whoever waits for the others looks whether it shall stop."""


def write_sheets(
    printing: Printing,
    sheets: Sequence[OpeningSheet],
    *,
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
    workers: int | None = None,
) -> Files:
    """Write the sheets of openings.

    Parameters
    ----------
    printing : Printing
        What they have in common.
    sheets : sequence of OpeningSheet
        One an opening.
    progress : callable, optional
        Told how many are done, of how many.
    cancelled : callable, optional
        Asked before each; what is begun is ended.
    workers : int, optional
        Processes beside this one; by default one a further core where there are many sheets.

    Returns
    -------
    Files
        In the order of the sheets.

    Raises
    ------
    StoppedWritingError
        For a folder that cannot be written, a disk that is full; says what was written before.
    """
    if workers is None:
        workers = min(cores() - 1, len(sheets) // _EACH, _MOST)
    found = Files()
    turns = SheetsBeside(printing, sheets, workers)
    try:
        with turns:
            while not (cancelled is not None and cancelled()) and turns.one_more():
                if progress is not None:
                    progress(turns.done, len(sheets))
    except UnwritableError as error:
        raise StoppedWritingError(error, [path for each in turns.files.values() for path in each.written]) from error
    for place in sorted(turns.files):
        found.add(turns.files[place])
    return found


class SheetsBeside:
    """Sheets that wait, are being written, and are written; a context: processes that were started end with it."""

    def __init__(self, printing: Printing, sheets: Sequence[OpeningSheet], workers: int) -> None:
        self._printing, self._sheets = printing, sheets
        self._waiting = deque(range(len(sheets)))
        self._failed: list[int] = []
        """What could not be written beside."""
        self._beside = 0
        """How many the others are at."""
        self._turn = threading.Condition()
        self._ended = False
        self.files: dict[int, Files] = {}
        """Of each sheet that is done, by its place."""
        self._busy: set[int] = set()
        """Processes that are at some."""
        self.processes: list[subprocess.Popen[bytes]] = []
        """Those that were started."""
        self._threads = [threading.Thread(target=self._feed, daemon=True) for _ in range(workers)]

    def __enter__(self) -> Self:
        for thread in self._threads:
            thread.start()
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        # What is begun is ended: a process that is killed at it would leave a part of a file.
        with self._turn:
            self._ended = True
            for process in self.processes:
                if process.pid not in self._busy:
                    process.kill()
        for thread in self._threads:
            thread.join()

    @property
    def done(self) -> int:
        """How many sheets are done."""
        return len(self.files)

    def one_more(self) -> bool:
        """Write the next sheet, or wait a moment for the others; False when there is nothing left to do."""
        with self._turn:
            if not self._waiting and not self._failed and self._beside:
                self._turn.wait(_LOOK_S)
            if not self._waiting and not self._failed:
                return self._beside > 0
            place = self._waiting.popleft() if self._waiting else self._failed.pop()
        files = write_sheet(self._printing, self._sheets[place])
        with self._turn:
            self.files[place] = files
        return True

    def _taken(self, process: int) -> list[int]:
        """Take a few from the back; fewer toward the end, so that nobody waits long for the last."""
        with self._turn:
            many = min(_CHUNK, len(self._waiting) // (len(self._threads) + 1))
            places = [] if self._ended else [self._waiting.pop() for _ in range(many)]
            self._beside += len(places)
            (self._busy.add if places else self._busy.discard)(process)
        return places

    def _feed(self) -> None:
        """Give a process of its own some sheets after the other, from the back."""
        places: list[int] = []
        process: subprocess.Popen[bytes] | None = None
        try:
            with self._turn:
                if self._ended:
                    return
                process = start(COMMAND)
                self.processes.append(process)
            assert process.stdin is not None
            assert process.stdout is not None
            if Receiver(process.stdout).receive() != engine().key:
                raise RuntimeError("it is another version of the program")
            Sender(process.stdin).send((spoken(), self._printing))
            while places := self._taken(process.pid):
                Sender(process.stdin).send([self._sheets[place] for place in places])
                self._keep(places, Receiver(process.stdout).receive())
                places = []
        except Exception as error:
            # The work is done here then; a person need not know, the log does.
            if not self._ended:
                _LOG.warning("a process that writes sheets beside this one failed: %r", error)
            self._keep(places, [None] * len(places))
        finally:
            if process is not None:
                process.kill()
                process.communicate()

    def _keep(self, places: Sequence[int], made: Sequence[Files | None]) -> None:
        with self._turn:
            for place, files in zip(places, made, strict=True):
                if files is None:
                    self._failed.append(place)
                else:
                    self.files[place] = files
            self._beside -= len(places)
            self._turn.notify_all()
