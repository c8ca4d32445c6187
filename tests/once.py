"""What is dear to make, made once a run of tests, or once a worker: whoever needs it first makes it, others copy it."""

import fcntl
import shutil
import tempfile
from collections.abc import Callable
from functools import cache
from itertools import count
from pathlib import Path

import pytest


def made_once(
    config: pytest.Config, factory: pytest.TempPathFactory, name: str, make: Callable[[Path], object]
) -> Path:
    """Return a folder of this worker's own with what `make` puts into an empty one.

    What is made must be the same wherever its folder lies.
    """
    own = factory.mktemp(name)
    if not hasattr(config, "workerinput"):
        make(own)
        return own
    # The workers' folders stand side by side in that of the run.
    shared = factory.getbasetemp().parent / name
    with open(shared.with_suffix(".lock"), "w", encoding="utf-8") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        whole = shared.with_suffix(".whole")
        if not whole.exists():
            # One that failed half-way is made anew, so that each worker tells the failure.
            shutil.rmtree(shared, ignore_errors=True)
            shared.mkdir()
            make(shared)
            whole.touch()
    shutil.copytree(shared, own, dirs_exist_ok=True)
    return own


@cache
def _folder() -> tempfile.TemporaryDirectory[str]:
    """Where this worker keeps what it copies; gone when it ends."""
    return tempfile.TemporaryDirectory(prefix="hwsched-made-")


_MADE: dict[str, Path] = {}
_NUMBERS = count()


def copied(key: str, target: Path | str, make: Callable[[Path], object]) -> None:
    """Put a file at a path: a copy of what `make` made at another path when this worker asked for `key` first.

    What is made must be the same wherever its folder lies, and whoever asks for it; it is whole in the one file.
    """
    if key not in _MADE:
        # What is made may itself begin with a copy.
        path = Path(_folder().name) / f"{next(_NUMBERS)}{Path(target).suffix}"
        make(path)
        _MADE[key] = path
    shutil.copy(_MADE[key], target)
