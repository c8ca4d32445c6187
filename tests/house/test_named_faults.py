"""Each named fault is put into a copy of the package, and the tests that must catch it are run there."""

import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from tests.house.named_faults import FAULTS, Fault

ROOT = Path(__file__).resolve().parents[2]
COPIED = ("hwsched", "resources", "migrations", "sample_projects", "tests")
FAILED = 1
"""Exit status of pytest when tests ran and some failed; a fault that breaks the import is another one."""

pytestmark = pytest.mark.slow


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


def run(copy: Path, tests: tuple[str, ...]) -> subprocess.CompletedProcess[str]:
    """Run tests on the copy, and on nothing of this run."""
    env = {name: value for name, value in os.environ.items() if not name.startswith(("PYTEST_", "COV_"))}
    env |= {"PYTHONPATH": str(copy), "PYTHONDONTWRITEBYTECODE": "1", "QT_QPA_PLATFORM": "offscreen"}
    # No fault is one that must be seen as the sample is made.
    env["HWSCHED_SAMPLE"] = str(copy / "made")
    return subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", *tests],
        cwd=copy,
        env=env,
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
    )


def test_without_a_fault_all_of_them_pass(copy):
    done = run(copy, tuple(dict.fromkeys(test for fault in FAULTS for test in fault.caught_by)))
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.name.replace(" ", "-"))
def test_a_fault_is_caught(copy, fault):
    with put_in(copy, fault):
        done = run(copy, fault.caught_by)
    assert done.returncode == FAILED, f"not caught: {fault.name}\n{done.stdout}{done.stderr}"
    assert re.search(r"\b\d+ failed\b", done.stdout)
    assert not re.search(r"\b\d+ errors?\b", done.stdout), done.stdout


def test_no_fault_is_named_twice():
    assert len({fault.name for fault in FAULTS}) == len(FAULTS)
