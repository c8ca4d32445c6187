"""Folders that a program copies to and from elsewhere: told by what lies there, and treated as a network is."""

import errno
import os
import sqlite3
from contextlib import closing
from types import SimpleNamespace

import pytest

from hwsched.model.errors import BusyProjectError
from hwsched.model.file.synchronised_folder import is_placeholder, synchronised_by
from hwsched.model.project import create_project, open_project
from hwsched.model.tables import BUILDING


def leave(path):
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(b"")


@pytest.mark.parametrize(
    "entry",
    [
        ".stfolder",
        ".stignore",
        ".sync/ID",
        ".sync_0a1b2c.db",
        "._sync_0a1b2c.db",
        ".csync_journal.db",
        ".tmp.driveupload",
    ],
)
@pytest.mark.parametrize("below", [".", "jobs/2031"])
def test_what_such_a_program_leaves_tells_in_the_folder_and_above_it(tmp_path, entry, below):
    office = tmp_path / "office"
    leave(office / entry)
    (office / below).mkdir(parents=True, exist_ok=True)
    # The project need not be there yet.
    assert synchronised_by(office / below / "yard.hwsched") == f"{entry} in {office}"
    assert synchronised_by(tmp_path / "yard.hwsched") == ""


@pytest.mark.parametrize("entry", [".sync/other", "sync.db", "a.sync_1.db", ".stfolder.txt", "drive"])
def test_what_only_looks_like_it_tells_nothing(tmp_path, entry):
    leave(tmp_path / entry)
    assert synchronised_by(tmp_path / "yard.hwsched") == ""


def test_a_link_is_followed_to_where_the_project_lies(tmp_path):
    leave(tmp_path / "office" / ".stfolder")
    leave(tmp_path / "office" / "yard.hwsched")
    (tmp_path / "here.hwsched").symlink_to(tmp_path / "office" / "yard.hwsched")
    assert ".stfolder" in synchronised_by(tmp_path / "here.hwsched")


@pytest.mark.skipif(not hasattr(os, "setxattr"), reason="the system has no such attributes")
@pytest.mark.parametrize(
    ("name", "tells"), [("user.somesync.etag", True), ("user.a-cloud.id", True), ("user.xdg.origin.url", False)]
)
@pytest.mark.parametrize("at", ["yard.hwsched", "."])
def test_attributes_of_the_file_or_a_folder_tell(tmp_path, name, tells, at):
    office = tmp_path / "office"
    leave(office / "yard.hwsched")
    try:
        os.setxattr(office / at, name, b"1")
    except OSError as error:
        if error.errno != errno.ENOTSUP:
            raise
        pytest.skip("the file system here has no such attributes")
    told = synchronised_by(office / "yard.hwsched")
    assert told == (f"the attribute {name} of {office / at}" if tells else "")


@pytest.mark.parametrize("folder", ["Library/CloudStorage", "Library/Mobile Documents"])
def test_places_of_such_folders_tell(tmp_path, folder):
    assert folder in synchronised_by(tmp_path / folder / "Any" / "yard.hwsched")
    assert synchronised_by(tmp_path / "My Library" / "CloudStorages" / "yard.hwsched") == ""


@pytest.mark.parametrize(
    ("state", "filled_later"),
    [
        ({"st_file_attributes": 0x20}, False),  # archive: every file
        ({"st_file_attributes": 0x20 | 0x400000}, True),  # recall on data access
        ({"st_file_attributes": 0x20 | 0x1000}, True),  # offline
        ({"st_file_attributes": 0x410, "st_reparse_tag": 0x9000601A}, True),  # a folder of such a program
        ({"st_file_attributes": 0x410, "st_reparse_tag": 0xA0000003}, False),  # a mount point
        ({"st_flags": 0x40000000}, True),  # dataless
        ({"st_flags": 0x8000}, False),  # hidden
        ({}, False),
    ],
)
def test_what_systems_say_of_files_that_are_filled_later(state, filled_later):
    # Numbers from winnt.h, ntifs.h and sys/stat.h, from memory.
    assert is_placeholder(SimpleNamespace(**state)) is filled_later


def built(project, name, who="ann"):
    with project.change("b", "Build", who) as change:
        change.insert(BUILDING, [{"name": name}])


def test_it_is_said_and_one_writes_at_a_time_without_a_write_ahead_log(tmp_path):
    path = tmp_path / "yard.hwsched"
    create_project(path, "Yard").close()
    leave(tmp_path / ".stfolder")
    with open_project(path) as first, open_project(path) as second:
        assert any("copies to and from elsewhere (told by .stfolder in" in notice for notice in first.notices)
        built(first, "Mill")
        assert not path.with_name(f"{path.name}-wal").exists()
        with pytest.raises(BusyProjectError, match="by ann at"):
            built(second, "Annexe", "ben")
        assert second.title == "Yard"
    assert not path.with_name(f"{path.name}.writer").exists()
    with closing(sqlite3.connect(path)) as database:
        assert database.execute("PRAGMA journal_mode").fetchone() == ("delete",)


def test_on_a_disk_of_this_machine_nothing_is_said(tmp_path):
    with create_project(tmp_path / "yard.hwsched", "Yard") as project:
        assert (project.synchronised, project.notices) == ("", ())
        built(project, "Mill")
        assert not (tmp_path / "yard.hwsched.writer").exists()
