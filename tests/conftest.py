"""The sample, worked out once a worker and copied for each test that needs it."""

import os
import shutil
import signal
import tempfile
from pathlib import Path

import pytest

if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
    # Started in the background of a shell: processes that tests start and interrupt would inherit that they ignore it.
    signal.signal(signal.SIGINT, signal.default_int_handler)
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
# Commands that are run as processes keep their log away from the person's own.
os.environ.setdefault("HWSCHED_LOG", tempfile.mkdtemp(prefix="hwsched-log-"))


@pytest.fixture(scope="session")
def sample_folder(tmp_path_factory):
    """Folder of a finished demonstration: project, schedule, pick list, packets.

    HWSCHED_SAMPLE names one that is there already: changed lines that it does not run need not make it again.
    """
    if "HWSCHED_SAMPLE" in os.environ:
        return Path(os.environ["HWSCHED_SAMPLE"])
    # Only here, so that tests of one floor load no more than that floor.
    from hwsched.operations.project.demonstration import demonstrate

    folder = tmp_path_factory.mktemp("sample")
    demonstrate(folder, who="tests")
    return folder


@pytest.fixture
def sample_file(sample_folder, tmp_path):
    """A copy of the sample's project file."""
    return shutil.copy(sample_folder / "quayside-works.hwsched", tmp_path / "sample.hwsched")
