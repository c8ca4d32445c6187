"""Processes beside this one: on how many cores, how one is started, how messages go to it and come back.

Who starts one feeds it through its standard input and reads its answers from its standard output; it ends when there is
nothing more to read. Here belongs nothing of what is worked out there.
"""

import io
import os
import pickle
import signal
import subprocess
import sys
from pathlib import Path
from typing import IO, Any, Final

import hwsched

_LENGTH: Final = 8


class Sender:
    """Writes messages into a stream; what was in an earlier one is named only, as what fits share is most of them."""

    def __init__(self, stream: IO[bytes]) -> None:
        self._stream = stream
        self._buffer = io.BytesIO()
        self._pickler = pickle.Pickler(self._buffer, protocol=pickle.HIGHEST_PROTOCOL)

    def send(self, message: object) -> None:
        """Write one message; nothing of it may be changed from then on."""
        self._buffer.seek(0)
        self._buffer.truncate()
        self._pickler.dump(message)
        content = self._buffer.getvalue()
        self._stream.write(len(content).to_bytes(_LENGTH, "big") + content)
        self._stream.flush()


class Receiver:
    """Reads what a `Sender` has written, one message after the other from the first on."""

    def __init__(self, stream: IO[bytes]) -> None:
        self._stream = stream
        self._buffer = io.BytesIO()
        # Only what our own process wrote into a pipe that nobody else has comes this way.
        self._unpickler = pickle.Unpickler(self._buffer)

    def receive(self) -> Any:
        """Read one message; raises EOFError where the other side has ended."""
        head = self._stream.read(_LENGTH)
        if len(head) < _LENGTH:
            raise EOFError
        self._buffer.seek(0)
        self._buffer.truncate()
        self._buffer.write(self._stream.read(int.from_bytes(head, "big")))
        self._buffer.seek(0)
        return self._unpickler.load()


def command_of(module: str) -> list[str]:
    """Return what starts a module of the program as a process."""
    return [sys.executable, "-m", module]


def start(command: list[str]) -> "subprocess.Popen[bytes]":
    """Start a process that is fed and read through pipes."""
    around = os.environ.copy()
    # Where the program is imported from is not always where Python looks by itself.
    root = str(Path(hwsched.__file__).parent.parent)
    around["PYTHONPATH"] = os.pathsep.join(filter(None, (root, around.get("PYTHONPATH", ""))))
    return subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, env=around)


def answer_streams() -> tuple[IO[bytes], IO[bytes]]:
    """Return, in a process that was started so, where it reads and where it answers; what is printed goes elsewhere."""
    # An interrupt at the terminal reaches this process too; it ends with the one who started it.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    streams = sys.stdin.buffer, sys.stdout.buffer
    # What anybody prints must not come between the messages.
    sys.stdout = sys.stderr
    return streams


def cores() -> int:
    """Return how many cores this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
