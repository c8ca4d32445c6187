"""What is dear to make, made once a run of tests: the worker that needs it first makes it, the others copy it."""

import fcntl
import shutil
from collections.abc import Callable
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
