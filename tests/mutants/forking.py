"""Runs pytest in processes forked from one that has loaded what every run loads: a third of the time of a new process.

Nothing of the program or its tests is loaded before the fork, so that each run reads them from its own tree.
"""

import multiprocessing
import os
import signal
import sys
from collections.abc import Mapping, Sequence
from functools import cache
from multiprocessing import forkserver
from multiprocessing.process import BaseProcess
from pathlib import Path

_CONTEXT = multiprocessing.get_context("forkserver") if hasattr(os, "fork") else multiprocessing.get_context("spawn")
_LOADED = (
    *("pytest", "_pytest.python", "hypothesis", "hypothesis.strategies", "_hypothesis_pytestplugin"),
    *("xdist.plugin", "pytest_cov.plugin", "pytestqt.plugin", "PySide6.QtWidgets", "PySide6.QtTest"),
    *("numpy", "highspy", "msgspec", "pint", "platformdirs", "tqdm", "openpyxl", "python_calamine"),
    *("sqlalchemy.orm", "sqlalchemy.dialects.sqlite", "alembic.command"),
    *("reportlab.platypus", "reportlab.pdfbase.ttfonts"),
)


@cache
def _server() -> forkserver.ForkServer:
    """Return a server of our own: that of the process has the program loaded, for tests that fork it."""
    server = forkserver.ForkServer()
    server.set_forkserver_preload(list(_LOADED))
    return server


def _started(process: BaseProcess) -> None:
    if not hasattr(os, "fork"):
        process.start()
        return
    held = forkserver.connect_to_new_process
    forkserver.connect_to_new_process = _server().connect_to_new_process
    try:
        process.start()
    finally:
        forkserver.connect_to_new_process = held


TIME_WAS_UP = "\nFAILED time was up"


def run_forked(folder: Path, words: Sequence[str], environment: Mapping[str, str], limit_s: float) -> tuple[int, str]:
    """Run pytest in a tree; returns its exit status (1 where time was up) and what it wrote."""
    written = folder / "written.txt"
    process = _CONTEXT.Process(target=_run, args=(str(folder), list(words), dict(environment), str(written)))
    _started(process)
    process.join(limit_s)
    if process.exitcode is None:
        try:
            os.killpg(process.pid or 0, signal.SIGKILL)
        except ProcessLookupError:  # it has just ended, or has no group of its own yet
            process.kill()
        process.join()
        return 1, written.read_text(encoding="utf-8", errors="replace") + TIME_WAS_UP
    return process.exitcode, written.read_text(encoding="utf-8", errors="replace")


def _run(folder: str, words: list[str], environment: dict[str, str], written: str) -> None:
    os.setsid()
    out = os.open(written, os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
    os.dup2(out, 1)
    os.dup2(out, 2)
    sys.stdout = os.fdopen(1, "w", closefd=False)
    sys.stderr = os.fdopen(2, "w", closefd=False)
    os.environ.clear()
    os.environ.update(environment)
    os.chdir(folder)
    home = str(Path(__file__).parents[2])
    # This module came from the tree that is measured: from here on all comes from the copy.
    for name in [each for each in sys.modules if each.split(".")[0] in ("tests", "hwsched")]:
        del sys.modules[name]
    sys.path[:] = [folder, *(each for each in sys.path if each not in ("", folder, home))]
    sys.dont_write_bytecode = True
    import pytest  # from the process that was forked

    code = int(pytest.main(words))
    sys.stdout.flush()
    sys.stderr.flush()
    # Threads and processes that a changed line has left behind are not waited for.
    os._exit(code)
