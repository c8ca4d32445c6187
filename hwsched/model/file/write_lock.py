"""A file beside a project on a network that says who writes into it: one person at a time, the others read.

It is taken before the first change and given back when the project is closed. It holds who, on which machine, in which
process and since when; one that a process of this machine left behind by dying is taken over, any other is not.
"""

import json
import os
import platform
from datetime import datetime
from pathlib import Path
from typing import Any

from hwsched.model.errors import BusyProjectError, ForbiddenProjectError
from hwsched.writing import runs


class WriteLock:
    """The right to write into one project file, once it is taken.

    Parameters
    ----------
    project : Path
        The project file.
    """

    def __init__(self, project: Path) -> None:
        self.path = project.with_name(f"{project.name}.writer")
        self._taken = False

    def take(self, who: str) -> None:
        """Take it, if this one does not have it yet.

        Raises
        ------
        BusyProjectError
            Says who has it, where and since when.
        ForbiddenProjectError
            Where the folder takes no file.
        """
        if self._taken:
            return
        told = {"who": who, "machine": _machine(), "process": os.getpid(), "since": _now()}
        for _ in range(2):
            try:
                descriptor = os.open(self.path, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o644)
            except FileExistsError:
                held = self._held()
                if not _left_behind(held):
                    raise BusyProjectError(self._words(held)) from None
                self.path.unlink(missing_ok=True)
                continue
            except OSError as error:
                raise ForbiddenProjectError(f"{self.path} cannot be made: {error.strerror or error}") from error
            with os.fdopen(descriptor, "w", encoding="utf-8") as file:
                json.dump(told, file)
                file.flush()
                os.fsync(file.fileno())
            self._taken = True
            return
        raise BusyProjectError(self._words(self._held()))

    def give_back(self) -> None:
        """Give it back; nothing where it was not taken."""
        if self._taken:
            self.path.unlink(missing_ok=True)
            self._taken = False

    def _held(self) -> dict[str, Any]:
        try:
            held = json.loads(self.path.read_text(encoding="utf-8"))
        except (OSError, ValueError):
            return {}
        return held if isinstance(held, dict) else {}

    def _words(self, held: dict[str, Any]) -> str:
        words = (("by", "who"), ("at", "machine"), ("since", "since"))
        by = " ".join(f"{word} {held[name]}" for word, name in words if held.get(name))
        return (
            f"the project is open for writing {by or 'elsewhere'}; it can be read meanwhile. If nobody has it open any "
            f"more, remove {self.path}"
        )


def _machine() -> str:
    return platform.node() or "an unnamed machine"


def _now() -> str:
    return datetime.now().astimezone().isoformat(timespec="seconds")


def _left_behind(held: dict[str, Any]) -> bool:
    """Tell whether the one who took it was a process of this machine that runs no more."""
    process = held.get("process")
    if held.get("machine") != _machine() or not isinstance(process, int) or process <= 0:
        return False
    if process == os.getpid():
        # Another handle of ours.
        return False
    return not runs(process)
