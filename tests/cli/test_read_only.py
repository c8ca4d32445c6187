"""A project that can only be read: whatever only reads does so, whatever writes says why not and ends with 3."""

import sqlite3
from contextlib import closing

import pytest

from hwsched.cli.command import run
from hwsched.model.file import sqlite_file

READING = (
    "findings check", "opening show", "findings why MARK", "survey missing", "survey questions",
    "survey deliveries", "survey origin MARK", "project history", "power show",
    "power goods", "power margins", "parts cost", "findings waivers", "release attachments", "opening pieces MARK",
    "project today", "project settings",
    "project people", "parts terms", "release revision", "parts successors", "project verify",
    "opening draw MARK inside out.svg", "opening fit --since-upgrade --dry-run", "release print schedule",
    "release print pick-list", "release print packets", "release print cost-estimate",
    "opening what-if --prefer cost",
)  # fmt: skip
WRITING = (
    "opening fit", "survey add NEW", "survey edit MARK opening hand LH", "survey remove MARK", "survey retire MARK",
    "project undo",
    "opening choose MARK unit X", "project settings --prefer cost", "project people --add ann --role specifier",
    "release revision --freeze", "project verify --accept", "survey import SURVEY",
)  # fmt: skip


@pytest.fixture
def locked(corner_file, monkeypatch):
    """A project as somebody has it who may not write; SQLite is told so too, and refuses whatever would be written."""
    with closing(sqlite3.connect(corner_file)) as database:
        database.execute("PRAGMA journal_mode = DELETE")
        (mark,) = database.execute("SELECT min(mark) FROM opening").fetchone()
    monkeypatch.setattr(sqlite_file, "_writable", lambda path: False)
    return corner_file, mark


def words_of(line, path, mark, folder):
    words = [{"MARK": mark}.get(word, word) for word in line.split()]
    words = [str(folder / word) if word.endswith(".svg") else word for word in words]
    if words[1] == "print":
        return [*words[:2], str(path), *words[2:], "-o", str(folder)]
    return [*words[:2], str(path), *words[2:]]


@pytest.mark.parametrize("line", READING)
def test_what_only_reads_needs_no_right_to_write(locked, tmp_path, capsys, line):
    path, mark = locked
    before = path.read_bytes()
    (tmp_path / "out").mkdir()
    words = words_of(line, path, mark, tmp_path / "out")
    assert run(words) in (0, 1)
    told = capsys.readouterr()
    if words[1] != "verify" and "--dry-run" not in line:
        assert "opened to be read only: you have no permission to write" in told.err
    assert path.read_bytes() == before
    assert [each.name for each in path.parent.iterdir() if each.name.startswith(path.name)] == [path.name]


@pytest.mark.parametrize("line", WRITING)
def test_what_writes_says_why_not(locked, tmp_path, capsys, line):
    path, mark = locked
    before = path.read_bytes()
    words = words_of(line, path, mark, tmp_path)
    if words[1] == "import":
        survey = tmp_path / "doors.csv"
        survey.write_text("Mark,Hand\nA1,LH\n")
        words = ["survey", "import", str(path), str(survey)]
    assert run(words) == 3
    said = capsys.readouterr().err
    assert "read only: you have no permission to write" in said
    assert "Nothing was changed in the project." in said
    assert path.read_bytes() == before
