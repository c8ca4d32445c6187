"""Projects on a network: told from the table of mounts, one writer at a time, no write-ahead log."""

import json
import os
import sqlite3
import subprocess
import sys
from contextlib import closing

import pytest

from hwsched.cli.command import run
from hwsched.model import project as project_module
from hwsched.model.errors import BusyProjectError, ProjectError
from hwsched.model.file.shared_folder import NETWORK, network_of
from hwsched.model.file.write_lock import WriteLock
from hwsched.model.project import create_project, open_project, place_of
from hwsched.model.tables import BUILDING

TABLE = """/dev/sda1 / ext4 rw 0 0
server:/doors {folder}/office nfs4 rw 0 0
//server/hall {folder}/the\\040hall cifs rw 0 0
/dev/sdb1 {folder}/office/disk ext4 rw 0 0
tmpfs {folder}/officer tmpfs rw 0 0
broken
"""


@pytest.fixture
def mounts(tmp_path):
    path = tmp_path / "mounts"
    path.write_text(TABLE.format(folder=tmp_path))
    return path


@pytest.mark.parametrize(
    ("place", "kind"),
    [
        ("office/yard.hwsched", "nfs4"), ("office/deep/er/yard.hwsched", "nfs4"), ("the hall/yard.hwsched", "cifs"),
        ("office/disk/yard.hwsched", ""), ("officer/yard.hwsched", ""), ("elsewhere/yard.hwsched", ""),
    ],
)  # fmt: skip
def test_the_nearest_mount_decides(tmp_path, mounts, place, kind):
    assert network_of(tmp_path / place, mounts) == kind
    assert kind in NETWORK | {""}


def test_without_a_table_of_mounts_nothing_is_claimed(tmp_path):
    assert network_of(tmp_path / "yard.hwsched", tmp_path / "none") == ""


@pytest.fixture
def share(tmp_path, monkeypatch):
    """A project that lies on a network, as far as the program can tell."""
    path = tmp_path / "yard.hwsched"
    create_project(path, "Yard").close()
    monkeypatch.setattr(project_module, "network_of", lambda path: "nfs4")
    return path


def built(project, name, who="ann"):
    with project.change("b", "Build", who) as change:
        change.insert(BUILDING, [{"name": name}])


def test_no_write_ahead_log_lies_on_a_network_and_it_is_said(share):
    with open_project(share) as project:
        assert any("lies on a network (nfs4)" in notice for notice in project.notices)
        built(project, "Mill")
        assert not share.with_name(f"{share.name}-wal").exists()
    with closing(sqlite3.connect(share)) as database:
        assert database.execute("PRAGMA journal_mode").fetchone() == ("delete",)


def test_one_writes_at_a_time_and_the_others_read_and_are_told_who(share):
    lock = share.with_name(f"{share.name}.writer")
    with open_project(share) as first, open_project(share) as second:
        built(first, "Mill")
        held = json.loads(lock.read_text())
        assert (held["who"], held["process"]) == ("ann", os.getpid())
        with pytest.raises(BusyProjectError, match=f"by ann at {held['machine']} since"):
            built(second, "Annexe", "ben")
        assert second.title == "Yard"
        built(first, "Annexe")
    assert not lock.exists()
    with open_project(share) as third:
        built(third, "Store", "ben")


def test_what_a_dead_process_of_this_machine_left_is_taken_over_and_nothing_else(share):
    gone = subprocess.run(
        [sys.executable, "-c", "import os; print(os.getpid())"], capture_output=True, text=True, check=True
    )
    lock = WriteLock(share)
    lock.take("ann")
    held = json.loads(lock.path.read_text())
    lock.path.write_text(json.dumps({**held, "process": int(gone.stdout)}))
    WriteLock(share).take("ben")
    assert json.loads(lock.path.read_text())["who"] == "ben"
    for other in ({**held, "machine": "another", "process": int(gone.stdout)}, {**held, "process": 1}):
        lock.path.write_text(json.dumps(other))
        with pytest.raises(BusyProjectError, match="by ann"):
            WriteLock(share).take("ben")
    lock.path.write_text("no JSON")
    with pytest.raises(BusyProjectError, match="elsewhere"):
        WriteLock(share).take("ben")


def test_reading_takes_no_lock(share, capsys):
    assert run(["findings", "check", str(share)]) in (0, 5)
    assert not share.with_name(f"{share.name}.writer").exists()


@pytest.mark.skipif(os.name == "nt", reason="there it is a path")
def test_a_share_as_windows_writes_it_is_no_file_name_here(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(ProjectError, match="share as Windows writes it"):
        place_of("\\\\server\\share\\x.hwsched")
    assert run(["project", "new", "\\\\server\\share\\x.hwsched"]) == 4
    assert not list(tmp_path.iterdir())


def test_capital_endings_and_names_at_the_system_s_limit(tmp_path, capsys):
    assert run(["project", "new", str(tmp_path / "YARD.HWSCHED")]) == 0
    assert run(["survey", "list", str(tmp_path / "YARD.HWSCHED"), "openings"]) == 0
    for name in ("n" * 300, "n" * 240, "/".join("n" * 200 for _ in range(30))):
        capsys.readouterr()
        status = run(["project", "new", str(tmp_path / f"{name}.hwsched")])
        said = capsys.readouterr().err
        assert status in (0, 4)
        assert "Traceback" not in said
        assert bool(said) == (status == 4)


@pytest.mark.parametrize(
    "line",
    [
        "survey import P LONG.xlsx", "parts import P LONG.xlsx", "power import P LONG.xlsx", "survey form -o LONG.xlsx",
        "parts export P -o LONG.xlsx", "release print P schedule -o LONG", "opening draw P M004 inside -o LONG.svg",
        "release attach P M004 LONG.jpg", "survey list P openings -o LONG.csv", "project batch P LONG.jsonl",
        "findings check P --mark @LONG", "project rescue P LONG.hwsched", "opening what-if P --catalogue LONG.xlsx",
    ],
)  # fmt: skip
def test_a_name_longer_than_the_system_takes_is_a_sentence(line, sample_file, tmp_path, capsys):
    long = str(tmp_path / ("n" * 300))
    names = {"P": str(sample_file)}
    assert run([names.get(word, word.replace("LONG", long)) for word in line.split()]) in (3, 4)
    said = capsys.readouterr().err
    assert "n" * 20 in said
    assert "report" not in said


@pytest.mark.parametrize(
    ("kind", "shared"),
    [
        ("fuse.some-client", True), ("fuse", True), ("fuse.sshfs", True), ("fuse.mergerfs", False), ("fuseblk", False),
        ("fuse.fuse-overlayfs", False), ("fusectl", False), ("ext4", False),
    ],
)  # fmt: skip
def test_what_a_program_keeps_may_lie_anywhere(tmp_path, kind, shared):
    mounts = tmp_path / "mounts"
    mounts.write_text(f"x {tmp_path} {kind} rw 0 0\n")
    assert network_of(tmp_path / "yard.hwsched", mounts) == (kind if shared else "")
