"""Each named fault is put into a copy of the package, and the tests that must catch it are run there."""

import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from tests.house.named_faults import FAULTS, Fault

ROOT = Path(__file__).resolve().parents[2]
COPIED = ("hwsched", "resources", "migrations", "sample_projects", "tests")
FAILED = 1
"""Exit status of pytest when tests ran and some failed; a fault that breaks the import is another one."""

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(not hasattr(os, "fork"), reason="a process is forked on POSIX alone"),
]


@pytest.fixture(scope="module")
def copy(tmp_path_factory, sample_folder) -> Path:
    """A copy of package, tables and tests, with what is compiled already, and the sample as this run has it."""
    folder = tmp_path_factory.mktemp("copy")
    shutil.copytree(sample_folder, folder / "made")
    for name in COPIED:
        shutil.copytree(ROOT / name, folder / name)
    shutil.copy2(ROOT / "pyproject.toml", folder)
    return folder


@contextmanager
def put_in(copy: Path, fault: Fault) -> Iterator[None]:
    path = copy / "hwsched" / fault.file
    sound = path.read_text(encoding="utf-8")
    stat = path.stat()
    assert sound.count(fault.old) == 1, f"fault no longer applies: update {fault.name!r} of tests/house/named_faults.py"
    path.write_text(sound.replace(fault.old, fault.new), encoding="utf-8")
    # Never the time of a file that is compiled already.
    os.utime(path, (stat.st_atime, stat.st_mtime + 10))
    try:
        yield
    finally:
        path.write_text(sound, encoding="utf-8")
        os.utime(path, ns=(stat.st_atime_ns, stat.st_mtime_ns))


FORKING = """
import json, sys
from pathlib import Path
from tests.mutants.forking import run_forked
for line in sys.stdin:
    folder, words, environment = json.loads(line)
    print(json.dumps(run_forked(Path(folder), words, environment, 240.0)), flush=True)
"""
"""A process of its own: what others in this one fork from has the program loaded."""


@pytest.fixture(scope="module")
def run(copy: Path) -> Iterator[Callable[[tuple[str, ...]], tuple[int, str]]]:
    """Runs tests on the copy, and on nothing of this run; returns pytest's exit status and what it wrote."""
    env = {name: value for name, value in os.environ.items() if not name.startswith(("PYTEST_", "COV_"))}
    env |= {"PYTHONPATH": str(copy), "PYTHONDONTWRITEBYTECODE": "1", "QT_QPA_PLATFORM": "offscreen"}
    # No fault is one that must be seen as the sample is made.
    env["HWSCHED_SAMPLE"] = str(copy / "made")
    with subprocess.Popen(
        [sys.executable, "-c", FORKING], cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as process:
        assert process.stdin is not None
        assert process.stdout is not None
        asking, answering = process.stdin, process.stdout

        def asked(tests: tuple[str, ...]) -> tuple[int, str]:
            words = ["-q", "-x", "--assert=plain", "-p", "no:cacheprovider", *tests]
            print(json.dumps([str(copy), words, env]), file=asking, flush=True)
            code, text = json.loads(answering.readline())
            return code, text

        yield asked
        asking.close()


def test_without_a_fault_all_of_them_pass(run):
    code, text = run(tuple(dict.fromkeys(test for fault in FAULTS for test in fault.caught_by)))
    assert code == 0, text


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.name.replace(" ", "-"))
def test_a_fault_is_caught(copy, run, fault):
    with put_in(copy, fault):
        code, text = run(fault.caught_by)
    assert code == FAILED, f"not caught: {fault.name}\n{text}"
    assert re.search(r"\b\d+ failed\b", text)
    assert not re.search(r"\b\d+ errors?\b", text), text


def test_no_fault_is_named_twice():
    assert len({fault.name for fault in FAULTS}) == len(FAULTS)
