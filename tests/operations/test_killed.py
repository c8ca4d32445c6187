"""A fit or a print that is killed in the middle leaves project and files as before or after, never between."""

import os
import signal
import subprocess
import sys
import time

import pytest
from pypdf import PdfReader

from hwsched.model.project import open_project
from hwsched.model.queries import read_fits
from hwsched.operations.project.history import history
from hwsched.operations.project.settings import set_settings

FIT = """
import sys, time
from hwsched.model.journal import journal
from hwsched.model.project import open_project
from hwsched.operations.opening.fitting_openings import fit_openings
real = journal.Change.update
def slow(self, table, edits, origins=None):
    found = real(self, table, edits, origins)
    print("written", flush=True)
    time.sleep(1)
    return found
journal.Change.update = slow
fit_openings(open_project(sys.argv[1]), who="k")
"""


def test_a_killed_fit_leaves_the_fits_as_they_were(sample_file):
    project = open_project(sample_file)
    set_settings(project, who="t", prefer="holes")
    with project.reading() as connection:
        before = read_fits(connection)
    steps = len(history(project))
    process = subprocess.Popen([sys.executable, "-c", FIT, str(sample_file)], stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    assert process.stdout.readline().strip() == "written"
    os.kill(process.pid, signal.SIGKILL)
    process.wait()
    process.stdout.close()
    time.sleep(0.05)
    with project.reading() as connection:
        assert read_fits(connection) == before
    assert len(history(project)) == steps
    project.close()


@pytest.mark.slow
def test_a_killed_print_leaves_only_whole_files(sample_file, tmp_path):
    out = tmp_path / "out"
    command = [sys.executable, "-m", "hwsched", "release", "print", str(sample_file), "packets", "--to", str(out)]
    process = subprocess.Popen(command)
    deadline = time.monotonic() + 60
    while len(list(out.glob("packets/*.pdf"))) < 5 and time.monotonic() < deadline:
        time.sleep(0.002)
    os.kill(process.pid, signal.SIGKILL)
    process.wait()
    files = [path for path in (out / "packets").iterdir() if not path.name.startswith(".")]
    assert files
    for path in files:
        assert len(PdfReader(path).pages) >= 1
