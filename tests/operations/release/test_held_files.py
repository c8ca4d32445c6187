"""A document that another program has open does not keep the others from being written; it is named at the end."""

import errno
import os

import pytest
from pypdf import PdfReader

from hwsched.cli.command import run
from hwsched.operations.release import opening_sheets
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


def words_of(path):
    return " ".join(" ".join(page.extract_text() for page in PdfReader(path).pages).split())


@pytest.mark.parametrize("document", ["packets", "bound-packets", "type-sheets"])
def test_templates_that_a_viewer_holds_keep_the_rest_from_nothing(sample_file, tmp_path, capsys, held, document):
    """The file is named with its cure, all else is written and names no page of the one that was not."""
    out = tmp_path / "out"
    words = ["release", "print", str(sample_file), document, "--with-templates", "-o", str(out)]
    words += ["--mark", "B/1", "--mark", "B/2"]
    out.mkdir()
    (out / "templates.pdf").write_bytes(b"old")
    held.add("templates.pdf")
    issue = ["--issue"] if document != "type-sheets" else []
    assert run([*words, *issue]) == 3
    said = capsys.readouterr().err
    assert f"1 file could not be replaced, since another program has it open or it is protected: {out}" in said
    assert "templates.pdf; close it there and do it again" in said
    assert ("2 other files were written" if document == "packets" else "1 other file was written") in said
    assert (out / "templates.pdf").read_bytes() == b"old"
    written = [path for path in out.rglob("*") if path.is_file() and path.name != "templates.pdf"]
    assert len(written) == (2 if document == "packets" else 1), "no part of a file is left behind"
    assert not any("page 2 of templates.pdf" in words_of(path) for path in written)
    # Packets that were printed to the end went out all the same, and that is said.
    assert ("change set" in said.casefold()) == bool(issue)
    assert run(["release", "list", str(sample_file), "packets", "--json"]) == 0
    assert ('"B/1"' in capsys.readouterr().out) == bool(issue)
    held.clear()
    assert run(words) == 0
    assert (out / "templates.pdf").read_bytes() != b"old"


def test_where_nothing_is_drilled_by_a_template_packets_are_printed_all_the_same(sample_file, tmp_path, capsys):
    out = tmp_path / "out"
    words = ["release", "print", str(sample_file), "packets", "--with-templates", "-o", str(out), "--mark", "0099"]
    assert run(words) == 3
    assert "no opening fits with a hole to be drilled" in capsys.readouterr().err
    assert [path.name for path in out.rglob("*.pdf")] == ["0099.pdf"]


def test_a_disk_that_is_full_half_way_leaves_whole_files_and_says_how_many(sample_file, tmp_path, capsys, monkeypatch):
    real = opening_sheets.render_pdf

    def full(document, path, paper):
        if path.name == "B_2.pdf":
            with replacing(path) as partial:
                partial.write_bytes(b"half")
                raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        return real(document, path, paper)

    monkeypatch.setattr(opening_sheets, "render_pdf", full)
    out = tmp_path / "out"
    words = ["release", "print", str(sample_file), "packets", "--with-templates", "--issue", "-o", str(out)]
    assert run([*words, "--mark", "B/1..B/3"]) == 3
    said = capsys.readouterr().err
    assert "B_2.pdf cannot be written: No space left on device. 2 other files were written before" in said
    there = {path.relative_to(out).as_posix() for path in out.rglob("*") if path.is_file()}
    assert there == {"packets/B_1.pdf", "templates.pdf"}
    assert all(PdfReader(out / name).pages for name in there)
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
