"""A file appears whole or not at all, through links and devices, and what killed writers left is cleared away."""

import errno
import os
import signal
import subprocess
import sys
import threading

import pytest

from hwsched.writing import UnwritableError, check_ending, made_folder, part_beside, remove_parts, replacing


def test_the_file_appears_when_all_is_written(tmp_path):
    path = tmp_path / "a.txt"
    with replacing(path) as beside:
        beside.write_text("new")
        assert beside.parent == tmp_path
        assert not path.exists()
    assert path.read_text() == "new"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("error", [ValueError, KeyboardInterrupt])
def test_a_failure_keeps_the_old_file_and_nothing_else(tmp_path, error):
    path = tmp_path / "a.txt"
    path.write_text("old")

    def fail():
        with replacing(path) as beside:
            beside.write_text("half")
            raise error

    with pytest.raises(error):
        fail()
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("place", ["no/a.txt", ".", "/"])
def test_a_place_that_cannot_hold_a_file_is_refused_with_its_name(tmp_path, place):
    with pytest.raises(UnwritableError, match="cannot be written"), replacing(tmp_path / place) as beside:
        beside.write_text("x")
    assert list(tmp_path.iterdir()) == []


def test_a_link_stays_a_link_and_what_it_points_to_is_replaced(tmp_path):
    kept = tmp_path / "share" / "real.txt"
    kept.parent.mkdir()
    kept.write_text("old")
    link = tmp_path / "link.txt"
    link.symlink_to(kept)
    with replacing(link) as beside:
        beside.write_text("new")
    assert link.is_symlink()
    assert kept.read_text() == "new"


def test_who_may_read_a_file_stays_as_it_was(tmp_path):
    path = tmp_path / "a.txt"
    path.write_text("old")
    path.chmod(0o640)
    with replacing(path) as beside:
        beside.write_text("new")
    assert path.stat().st_mode & 0o777 == 0o640


def test_a_pipe_is_written_through_and_stays_a_pipe(tmp_path):
    pipe = tmp_path / "pipe.svg"
    os.mkfifo(pipe)
    came = []
    reader = threading.Thread(target=lambda: came.append(pipe.read_bytes()))
    reader.start()
    with replacing(pipe) as beside:
        beside.write_text("drawing")
    reader.join(10)
    assert came == [b"drawing"]
    assert pipe.is_fifo()
    check_ending(pipe, ".xlsx", "a workbook")


def test_a_full_disk_is_told_and_the_old_file_stays(tmp_path):
    path = tmp_path / "a.txt"
    path.write_text("old")

    def fill():
        with replacing(path) as beside:
            beside.write_text("half")
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with pytest.raises(UnwritableError, match=r"a\.txt cannot be written: No space left"):
        fill()
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]


# No test here names a device of the machine as its target: a program that is wrong would replace it, as root.


def test_an_ending_that_says_something_else_is_refused(tmp_path):
    with pytest.raises(UnwritableError, match=r"\.xlsx"):
        check_ending(tmp_path / "form.docx", ".xlsx", "a workbook")
    check_ending(tmp_path / "FORM.XLSX", ".xlsx", "a workbook")


def test_a_folder_below_a_file_is_refused(tmp_path):
    (tmp_path / "file").write_text("x")
    with pytest.raises(UnwritableError, match="file"):
        made_folder(tmp_path / "file" / "below")


LEFT_BEHIND = """
import os, signal, sys
from pathlib import Path
from hwsched.writing import part_beside
folder = Path(sys.argv[1])
part_beside(folder / "a.pdf").write_text("half")
work = part_beside(folder / "demo"); work.mkdir(); (work / "inside").write_text("half")
Path(str(part_beside(folder / "p.hwsched")) + "-wal").write_text("half")
os.kill(os.getpid(), signal.SIGKILL)
"""


def test_what_a_killed_writer_left_is_removed_by_the_next_and_nothing_else(tmp_path):
    subprocess.run([sys.executable, "-c", LEFT_BEHIND, str(tmp_path)], check=False)
    assert len(list(tmp_path.iterdir())) == 3
    mine = part_beside(tmp_path / "b.pdf")
    mine.write_text("being written")
    own = tmp_path / ".notes.part"
    own.write_text("a person's")
    remove_parts(tmp_path)
    assert sorted(tmp_path.iterdir()) == sorted([mine, own])


def test_a_part_of_another_machine_stays_until_it_is_old(tmp_path):
    part = tmp_path / ".a.pdf.0badcafe-1-00000000.part"
    part.write_text("half")
    remove_parts(tmp_path)
    assert part.exists()
    os.utime(part, (0, 0))
    remove_parts(tmp_path)
    assert not part.exists()


def test_what_a_killed_writer_left_in_the_folder_for_scratch_goes_with_the_next(tmp_path):
    code = (
        "import os, signal, tempfile\n"
        f"tempfile.tempdir = {str(tmp_path)!r}\n"
        "from hwsched.writing import scratch_folder\n"
        "with scratch_folder() as folder:\n"
        "    (folder / 'half.xlsx').write_text('half')\n"
        "    os.kill(os.getpid(), signal.SIGKILL)\n"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == -signal.SIGKILL
    (left,) = tmp_path.iterdir()
    # Another process, since each looks once.
    again = code.replace("    os.kill(os.getpid(), signal.SIGKILL)\n", "    print(len(os.listdir(tempfile.tempdir)))\n")
    done = subprocess.run([sys.executable, "-c", again], check=True, capture_output=True, text=True)
    assert done.stdout.strip() == "1"
    assert not left.exists()
    assert list(tmp_path.iterdir()) == []
