"""A process never closes a file past SQLite that it has open as a project: its locks would be gone, then its log."""

import subprocess
import sys
from pathlib import Path

import pytest

from hwsched.exchange.problems import InputRejected
from hwsched.model.errors import ForeignFileError
from hwsched.model.file.held_files import is_held
from hwsched.model.file.sqlite_file import check_file
from hwsched.model.project import create_project, open_project
from hwsched.model.queries import opening_ids
from hwsched.operations.release.attachments import read_file
from hwsched.operations.survey.editing import add_opening

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="locks of POSIX")
OTHER = """
import sys
from hwsched.model.project import open_project
from hwsched.operations.survey.editing import add_opening
with open_project(sys.argv[1]) as project:
    add_opening(project, {"mark": sys.argv[2]}, who="other")
"""


def another_process(path, mark):
    """Let another process open a project, write into it and leave it."""
    subprocess.run([sys.executable, "-c", OTHER, str(path), mark], check=True, timeout=60)


@pytest.fixture
def yard(tmp_path):
    with create_project(str(tmp_path / "yard.hwsched"), "Yard") as project:
        add_opening(project, {"mark": "FIRST"}, who="t")
        yield project


def again(path):
    """What a window does whose person opens the project that is open, or looks at it twice."""
    check_file(path)
    open_project(str(path)).close()


def attached(path):
    """What is done with a file that is to be attached."""
    with pytest.raises(InputRejected, match="is the project itself"):
        read_file(path)


@pytest.mark.parametrize("look", [again, attached])
@pytest.mark.parametrize("linked", [False, True], ids=["by its name", "by another name"])
def test_what_is_written_after_others_left_is_not_lost(yard, tmp_path, look, linked):
    path = Path(yard.path)
    if linked:
        path = tmp_path / "also.hwsched"
        path.symlink_to(yard.path)
    look(path)
    another_process(yard.path, "SECOND")
    assert Path(f"{yard.path}-wal").exists(), "whoever leaves sees that somebody is still at work"
    add_opening(yard, {"mark": "THIRD"}, who="t")
    another_process(yard.path, "FOURTH")
    with open_project(str(yard.path)) as project, project.reading() as connection:
        assert set(opening_ids(connection)) == {"FIRST", "SECOND", "THIRD", "FOURTH"}


def test_a_file_is_held_as_long_as_a_connection_is_open(tmp_path):
    path = tmp_path / "yard.hwsched"
    assert not is_held(path)
    with create_project(str(path), "Yard") as project:
        add_opening(project, {"mark": "1"}, who="t")
        assert is_held(path)
        with open_project(str(path)) as other:
            assert other.title == "Yard"
        assert is_held(path)
    assert not is_held(path)
    path.write_bytes(b"another file")
    with pytest.raises(ForeignFileError):
        check_file(path)
