"""A document that another program has open does not keep the others from being written; it is named at the end."""

import os

import pytest

from hwsched.cli.command import run
from hwsched.writing import HeldFilesError, replacing


@pytest.fixture
def held(monkeypatch):
    """Names of files that cannot be replaced, as on Windows while a viewer has them open."""
    names = set()
    replace = os.replace

    def refuse(source, target):
        if os.path.basename(target) in names:
            raise PermissionError(13, "Permission denied")
        replace(source, target)

    monkeypatch.setattr(os, "replace", refuse)
    return names


def test_the_others_are_written_and_the_held_ones_named(sample_file, tmp_path, capsys, held):
    out = tmp_path / "out"
    words = [
        "release",
        "print",
        str(sample_file),
        "packets",
        "-o",
        str(out),
        "--mark",
        "B/1",
        "--mark",
        "B/2",
        "--mark",
        "B/3",
    ]
    assert run(words) == 0
    before = (out / "packets" / "B_2.pdf").read_bytes()
    for path in (out / "packets").iterdir():
        path.write_bytes(path.read_bytes() + b"old")
    held.add("B_2.pdf")
    capsys.readouterr()
    assert run(words) == 3
    said = capsys.readouterr().err
    assert "B_2.pdf" in said
    assert "2 other files were written" in said
    assert (out / "packets" / "B_2.pdf").read_bytes() == before + b"old"
    assert not (out / "packets" / "B_1.pdf").read_bytes().endswith(b"old")
    assert not (out / "packets" / "B_3.pdf").read_bytes().endswith(b"old")
    assert len(list((out / "packets").iterdir())) == 3


def test_packets_are_not_written_down_as_given_out_where_one_is_held(sample_file, tmp_path, capsys, held):
    words = ["release", "print", str(sample_file), "packets", "-o", str(tmp_path / "out"), "--mark", "B/1", "--issue"]
    held.add("B_1.pdf")
    (tmp_path / "out" / "packets").mkdir(parents=True)
    (tmp_path / "out" / "packets" / "B_1.pdf").write_bytes(b"old")
    assert run(words) == 3
    capsys.readouterr()
    assert run(["release", "list", str(sample_file), "packets"]) == 0
    assert "No rows" in capsys.readouterr().out


def test_several_are_counted_and_the_first_named(tmp_path):
    error = HeldFilesError([tmp_path / f"{n}.pdf" for n in range(9)], [])
    assert "9 files" in str(error)
    assert "and 4 more" in str(error)


def test_one_file_that_is_held_says_so(tmp_path, held):
    held.add("x.txt")
    (tmp_path / "x.txt").write_text("old")
    with pytest.raises(Exception, match="another program has it open"), replacing(tmp_path / "x.txt") as path:
        path.write_text("new")
    assert [each.name for each in tmp_path.iterdir()] == ["x.txt"]
