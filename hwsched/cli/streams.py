"""Standard output and error of a process of its own: whatever is printed arrives, or it is said why not.

A character that the console does not have is written out; one that steers the screen is escaped; a reader that goes
away takes nothing more and changes nothing of what is done; a full disk is told once, not met again at the end.
"""

from __future__ import annotations

import io
import os
import sys

from hwsched.telling.characters import escaped

TYPE_CHECKING = False
if TYPE_CHECKING:
    from pathlib import Path
    from typing import TextIO

    from _typeshed import ReadableBuffer


_LONG = 1000
"""Letters from which on it is worth looking whether an error repeats more of what was typed than anybody reads."""


class OutputLostError(Exception):
    """Standard output cannot be written; its message is for people."""


class _Raw(io.RawIOBase):
    """A descriptor that is written to as long as it takes anything."""

    def __init__(self, descriptor: int | None, told: bool) -> None:
        self.reader_gone = False
        self._descriptor = descriptor
        self._told = told
        self._lost = False

    def writable(self) -> bool:
        return True

    def fileno(self) -> int:
        if self._descriptor is None:
            raise io.UnsupportedOperation("closed by whoever started this")
        return self._descriptor

    def isatty(self) -> bool:
        return self._descriptor is not None and os.isatty(self._descriptor)

    def write(self, data: ReadableBuffer) -> int:
        size = memoryview(data).nbytes
        if self.reader_gone or self._lost:
            return size
        try:
            if self._descriptor is None:
                raise OSError("it is closed")
            return os.write(self._descriptor, data)
        # Whoever reads has had enough, such as `head`: that is no fault of anybody, and nothing is said of it.
        except BrokenPipeError:
            self.reader_gone = True
        except OSError as error:
            self._lost = True
            if self._told:
                raise OutputLostError(f"standard output cannot be written: {error.strerror or error}") from error
        return size


class Shown(io.TextIOWrapper):
    """Text for people and machines; what steers a terminal is escaped, and no error shows a password."""

    def __init__(self, stream: TextIO | None, descriptor: int, *, told: bool) -> None:
        encoding = getattr(stream, "encoding", None) or "utf-8"
        self.end = _Raw(None if stream is None else descriptor, told)
        self._masks = not told
        super().__init__(
            io.BufferedWriter(self.end),
            encoding=encoding,
            # A mark that the console cannot show is written out, and must not end the verb in the middle of its list.
            errors="backslashreplace",
            line_buffering=not told or self.end.isatty(),
        )

    def write(self, text: str) -> int:
        """Write a text; returns how long it was."""
        shown = text
        # A usage error repeats what was typed, be it an address in the wrong place.
        if self._masks and "://" in text:
            from hwsched.telling.masking import masked

            shown = masked(text)
        if self._masks and len(text) > _LONG:
            from hwsched.telling.shortening import shortened

            shown = shortened(shown)
        super().write(escaped(shown))
        return len(text)


def reader_gone() -> bool:
    """Tell whether nobody reads standard output any more: endless work for it can stop."""
    return isinstance(sys.stdout, Shown) and sys.stdout.end.reader_gone


def write_out(path: Path) -> None:
    """Write a file's bytes to standard output as they are."""
    import shutil

    # What was printed before must stand before the bytes that go round the text layer.
    sys.stdout.flush()
    with path.open("rb") as file:
        shutil.copyfileobj(file, sys.stdout.buffer)
    sys.stdout.buffer.flush()


def take_over() -> None:
    """Put such streams in the place of this process's own; to be called once, before anything is printed."""
    closed = [sys.stdout is None, sys.stderr is None]
    for descriptor in range(3):
        try:
            os.fstat(descriptor)
        except OSError:
            # Else the next file that is opened, the project perhaps, would become the standard output of a library.
            os.open(os.devnull, os.O_RDWR)
    if closed[0] or isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout = Shown(sys.stdout, 1, told=True)
    if closed[1] or isinstance(sys.stderr, io.TextIOWrapper):
        sys.stderr = Shown(sys.stderr, 2, told=False)
