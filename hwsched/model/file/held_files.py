"""Which files this process has open as projects: it opens none of them a second time past SQLite.

A process that closes a file lets go of all locks that it has on it (POSIX), those of SQLite with them, which goes on as
if it had them. The next process that leaves the project would then take itself for the last one and clear its log
away, and what is written into that log afterwards would be lost. sqlite.org/howtocorrupt.html, 2.2
"""

from collections import Counter
from pathlib import Path
from threading import Lock
from typing import Final

Held = tuple[int, int]
"""Device and number of a file: it may have several names."""
_HELD: Final[Counter[Held]] = Counter()
_COUNTING: Final = Lock()


def hold(path: Path) -> Held | None:
    """Remember that a connection to a file was opened; None where the file is gone."""
    held = _identity(path)
    if held is not None:
        with _COUNTING:
            _HELD[held] += 1
    return held


def let_go(held: Held | None) -> None:
    """Remember that a connection was closed."""
    if held is not None:
        with _COUNTING:
            _HELD[held] -= 1


def is_held(path: Path) -> bool:
    """Tell whether this process has a file open as a project, under whatever name."""
    return _HELD[held] > 0 if (held := _identity(path)) is not None else False


def _identity(path: Path) -> Held | None:
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino
