"""A project that can only be read: whatever only reads does so, whatever writes says why not and ends with 3."""

import sqlite3
from contextlib import closing

import pytest

from hwsched.cli.command import run
from hwsched.model import sqlite_file

READING = (
    "check", "show", "why MARK", "missing", "history", "power", "cost", "waivers", "attachments", "pieces MARK",
    "settings", "people", "terms", "revision", "successors", "verify", "draw MARK inside out.svg",
    "fit --since-upgrade --preview",
    "print schedule", "print pick-list", "print packets", "print cost-estimate", "what-if --prefer cost",
)  # fmt: skip
WRITING = (
    "fit", "add NEW", "edit MARK opening hand LH", "remove MARK", "undo", "choose MARK unit X",
    "settings --prefer cost",
    "people --add ann --role specifier", "revision --freeze", "verify --accept", "import survey SURVEY",
)  # fmt: skip


@pytest.fixture
def locked(sample_file, monkeypatch):
    """The sample as somebody has it who may not write; SQLite is told so too, and refuses whatever would be written."""
    with closing(sqlite3.connect(sample_file)) as database:
        database.execute("PRAGMA journal_mode = DELETE")
        (mark,) = database.execute("SELECT min(mark) FROM opening").fetchone()
    monkeypatch.setattr(sqlite_file, "_writable", lambda path: False)
    return sample_file, mark


def words_of(line, path, mark, folder):
    words = [{"MARK": mark}.get(word, word) for word in line.split()]
    words = [str(folder / word) if word.endswith(".svg") else word for word in words]
    if words[0] == "print":
        return [words[0], words[1], str(path), "--to", str(folder)]
    return [words[0], str(path), *words[1:]]


@pytest.mark.parametrize("line", READING)
def test_what_only_reads_needs_no_right_to_write(locked, tmp_path, capsys, line):
    path, mark = locked
    before = path.read_bytes()
    (tmp_path / "out").mkdir()
    words = words_of(line, path, mark, tmp_path / "out")
    assert run(words) in (0, 1)
    told = capsys.readouterr()
    if words[0] != "verify" and "--preview" not in line:
        assert "opened to be read only: you have no permission to write" in told.err
    assert path.read_bytes() == before
    assert [each.name for each in path.parent.iterdir() if each.name.startswith(path.name)] == [path.name]


@pytest.mark.parametrize("line", WRITING)
def test_what_writes_says_why_not(locked, tmp_path, capsys, line):
    path, mark = locked
    before = path.read_bytes()
    words = words_of(line, path, mark, tmp_path)
    if words[0] == "import":
        survey = tmp_path / "doors.csv"
        survey.write_text("Mark,Hand\nA1,LH\n")
        words = ["import", "survey", str(path), str(survey)]
    assert run(words) == 3
    said = capsys.readouterr().err
    assert "read only: you have no permission to write" in said
    assert "Nothing was changed in the project." in said
    assert path.read_bytes() == before
