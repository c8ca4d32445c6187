"""Fits of very many openings that all differ, shared out to processes beside this one: one a further core.

Openings come in their order; this process takes them from the front, the others from the back, a few dozen at a time.
Whatever goes wrong beside is worked out here: nothing hangs on the others.
"""

import logging
import subprocess
import threading
from collections import deque
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from types import TracebackType
from typing import Any, Final, Self

from hwsched.model.queries import StoredFit
from hwsched.operations.beside import Receiver, Sender, command_of, cores, start
from hwsched.operations.opening.fit_worker import Made
from hwsched.operations.opening.fits_within import FitMemory
from hwsched.values import OpeningInput

_LOG: Final = logging.getLogger(__name__)
COMMAND: list[str] = command_of("hwsched.operations.opening.fit_worker")
"""Starts a process that works out fits."""
_CHUNK: Final = 48
_WATCHED: Final = 64
"""Openings by whose differing it is told whether the rest differ too."""
_SHARE: Final = 0.75
_FIRST: Final = 512
"""Openings that go before: what a process takes to start is no sooner won back, and kinds may come again by then."""
_LEFT: Final = 1000
"""Openings that must be left: a process takes most of a second to start."""
_MOST: Final = 7

_Opening = Sequence[OpeningInput]


class SeveralCores:
    """Openings in their order; those that were worked out beside are in the memory when their turn comes.

    A context: processes that were started end with it.

    Parameters
    ----------
    openings : sequence
        Each by its lock points.
    memory : FitMemory
        Gets what others worked out.
    workers : int, optional
        Processes beside this one, from the start on; by default one a further core, once openings prove to differ.
    """

    def __init__(self, openings: Sequence[_Opening], memory: FitMemory, workers: int | None = None) -> None:
        self._openings, self._memory = openings, memory
        self._chunks = deque(range(0, len(openings), _CHUNK))
        self._turn = threading.Condition()
        self._taken: set[int] = set()
        """What the others are at, by its first opening."""
        self.processes: list[subprocess.Popen[bytes]] = []
        """Those that were started."""
        self._threads: list[threading.Thread] = []
        self._asked = workers
        self._ended = False

    def __enter__(self) -> Self:
        if self._asked:
            self._start(self._asked)
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self._ended = True
        for process in list(self.processes):
            process.kill()
        for thread in self._threads:
            thread.join()

    def __iter__(self) -> Iterator[_Opening]:
        made_before = 0
        for place, inputs in enumerate(self._openings):
            if place % _CHUNK == 0:
                self._take(place)
            if self._asked is None and place and place % _WATCHED == 0:
                differ = self._memory.count - made_before >= _SHARE * _WATCHED
                if differ and place >= _FIRST and len(self._openings) - place >= _LEFT:
                    self._asked = min(cores() - 1, _MOST)
                    self._start(self._asked)
                made_before = self._memory.count
            yield inputs

    def _take(self, first: int) -> None:
        """Take a chunk, or what another has made of it."""
        with self._turn:
            if self._chunks and self._chunks[0] == first:
                self._chunks.popleft()
                return
            while first in self._taken:
                self._turn.wait()

    def _keep(self, found: Sequence[Sequence[Made]]) -> bool:
        """Remember what another has made, for whoever is like it, at once; returns whether there was anything new."""
        new = False
        engine = self._memory.standings.engine
        for key, made in (each for opening in found for each in opening):
            if made is not None:
                input_key, fit, read = made
                self._memory.keep(key, StoredFit(input_key, fit, engine, read))
                new = True
        return new

    def _start(self, count: int) -> None:
        self._threads = [threading.Thread(target=self._feed, daemon=True) for _ in range(count)]
        for thread in self._threads:
            thread.start()

    def _feed(self) -> None:
        """Give a process of its own one chunk after the other, from the back."""
        first: int | None = None
        process: subprocess.Popen[bytes] | None = None
        try:
            process = start(COMMAND)
            self.processes.append(process)
            assert process.stdin is not None
            assert process.stdout is not None
            if self._ended:
                process.kill()
            target, source = Sender(process.stdin), Receiver(process.stdout)
            if source.receive() != self._memory.standings.engine.key:
                raise RuntimeError("it is another version of the program")
            target.send(self._openings[0][0].catalogue)
            while True:
                with self._turn:
                    # The front belongs to this process, which is at it now.
                    if len(self._chunks) < 2:
                        break
                    first = self._chunks.pop()
                    self._taken.add(first)
                target.send([_stripped(each) for each in self._openings[first : first + _CHUNK]])
                new = self._keep(source.receive())
                with self._turn:
                    self._taken.discard(first)
                    self._turn.notify_all()
                first = None
                if not new:
                    # What is left is like what is known: to send it costs more than to look it up.
                    break
        except Exception as error:
            # The work is done here then; a person need not know, the log does.
            if not self._ended:
                _LOG.warning("a process that works out fits beside this one failed: %r", error)
            with self._turn:
                if first is not None:
                    self._taken.discard(first)
                self._turn.notify_all()
        finally:
            if process is not None:
                process.kill()
                process.communicate()


def in_turn(openings: Iterable[_Opening], memory: FitMemory) -> SeveralCores:
    """Return openings in their order, with the help of other processes where very many differ."""
    return SeveralCores(list(openings), memory)


_NOTHING: Final[Any] = None


def _stripped(inputs: _Opening) -> list[OpeningInput]:
    """Return inputs without the catalogue, which the other has already."""
    return [replace(each, catalogue=_NOTHING) for each in inputs]
