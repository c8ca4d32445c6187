"""What is made once a run or a worker and used by tests of several floors: the sample, a server, projects to copy."""

import gc
import os
import shutil
import signal
import tempfile
from pathlib import Path

import pytest

from hwsched.operations import collector
from tests.once import made_once
from tests.turns import not_their_turn

if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
    # Started in the background of a shell: processes that tests start and interrupt would inherit that they ignore it.
    signal.signal(signal.SIGINT, signal.default_int_handler)
if signal.getsignal(getattr(signal, "SIGHUP", signal.SIGINT)) is signal.SIG_IGN:
    # Started by nohup: the same of being hung up on.
    signal.signal(signal.SIGHUP, signal.SIG_DFL)
# What is collected stays, and what a test leaves is mostly rubbish: looked for by the ten thousand, not by the hundred.
USUAL_THRESHOLD = gc.get_threshold()
"""How often Python itself looks for garbage: so it is where ratios are measured."""
gc.set_threshold(50_000, 20, 50)
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
# Commands that are run as processes keep their log away from the person's own.
os.environ.setdefault("HWSCHED_LOG", tempfile.mkdtemp(prefix="hwsched-log-"))
# What a person has chosen on this machine decides nothing here, and is not changed.
os.environ["XDG_CONFIG_HOME"] = tempfile.mkdtemp(prefix="hwsched-chosen-")


LONGEST = ("verifier",)
"""Folders whose tests take longest: begun first, so that at the end no worker waits for another one's last test."""


def pytest_collection_modifyitems(config, items):
    """Leave out the cases whose turn it is not, and put the longest first."""
    unsteady = [item.nodeid for item in items if has_unsteady_name(item)]
    if unsteady:
        raise pytest.UsageError("a set in the name of a case stands otherwise in each worker: " + unsteady[0])
    waiting = not_their_turn(items, " ".join(config.args))
    if waiting:
        config.hook.pytest_deselected(items=waiting)
        out = set(waiting)
        items[:] = [item for item in items if item not in out]
    items.sort(key=lambda item: item.path.parent.name not in LONGEST)


def has_unsteady_name(item):
    """Whether a case is named by the words of a set, whose order each process has of its own."""
    given = getattr(item, "callspec", None)
    sets = [each for each in given.params.values() if isinstance(each, (set, frozenset))] if given else ()
    return any(str(each) in item.nodeid for each in sets if len(each) > 1)


def pytest_collection_finish():
    """Take what was loaded by now out of every later search for garbage, and for what a test left behind."""
    gc.collect()
    gc.freeze()
    collector.SET_ASIDE = True


@pytest.fixture(scope="session")
def sample_folder(pytestconfig, tmp_path_factory):
    """Folder of a finished demonstration: project, schedule, pick list, packets.

    HWSCHED_SAMPLE names one that is there already: changed lines that it does not run need not make it again.
    """
    if "HWSCHED_SAMPLE" in os.environ:
        return Path(os.environ["HWSCHED_SAMPLE"])
    # Only here, so that tests of one floor load no more than that floor.
    from hwsched.operations.project.demonstration import demonstrate

    return made_once(pytestconfig, tmp_path_factory, "sample", lambda folder: demonstrate(folder, who="tests"))


@pytest.fixture(scope="session")
def postgres_url():
    """URL of an empty PostgreSQL cluster, one a worker."""
    from tests.model.backends import cluster

    with cluster() as url:
        yield url


@pytest.fixture(scope="session")
def templates(tmp_path_factory):
    """The projects that this worker copies."""
    from tests.model.backends import Templates

    return Templates(tmp_path_factory.mktemp("templates"))


@pytest.fixture(scope="session")
def corner_folder(pytestconfig, tmp_path_factory):
    """Folder of a small project: some openings of the sample, fitted and with their power laid."""
    from tests.corner import make

    return made_once(pytestconfig, tmp_path_factory, "corner", make)


@pytest.fixture
def corner_file(corner_folder, tmp_path):
    """A copy of that project's file."""
    return shutil.copy(corner_folder / "corner.hwsched", tmp_path / "corner.hwsched")


@pytest.fixture
def sample_file(sample_folder, tmp_path):
    """A copy of the sample's project file."""
    return shutil.copy(sample_folder / "quayside-works.hwsched", tmp_path / "sample.hwsched")
