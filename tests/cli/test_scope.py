"""``--building``, ``--level``, ``--mark`` and ``--where``, as every verb that works on openings takes them."""

import io
import json
import subprocess
import sys

import pytest

from hwsched.cli.command import run

VERBS = (
    "findings check", "opening show", "opening fit", "parts cost", "survey missing", "opening what-if", "parts fewest",
    "release print", "survey form",
)  # fmt: skip


def asked(capsys, *words, status=0):
    """Run a verb; returns what it printed and what it told on standard error."""
    assert run(list(words)) == status, capsys.readouterr().err
    return capsys.readouterr()


def marks(capsys, path, *words):
    shown = asked(capsys, "opening", "show", str(path), *words, "--json")
    return [each["mark"] for each in json.loads(shown.out)["result"]["openings"]], shown.err


def test_the_options_narrow_each_other(sample_file, capsys):
    where = ("--building", "Boat Store", "--mark", "X*,CAB-1", "--where", "mark != X3")
    assert marks(capsys, sample_file, *where) == (["CAB-1", "X1", "X2", "X4", "X5"], "")
    assert marks(capsys, sample_file, *where, "--level", "Loft")[0] == []
    assert marks(capsys, sample_file, "X1", "--mark", "X2..X3")[0] == ["X1", "X2", "X3"]


def test_marks_from_a_file_and_from_standard_input(sample_file, capsys, tmp_path, monkeypatch):
    listed = tmp_path / "marks.txt"
    listed.write_bytes("\ufeffX2\r\n\r\n GATE 1 \r\nx1\r\n".encode())
    found, told = marks(capsys, sample_file, "--mark", f"@{listed}")
    assert sorted(found) == ["GATE 1", "X1", "X2"]
    assert told == "hwsched: 'x1' is taken for X1\n"
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b"B/1\nB/2\n")))
    assert marks(capsys, sample_file, "--mark", "@-")[0] == ["B/1", "B/2"]


def test_an_empty_list_of_marks_is_no_choice_of_all(sample_file, capsys, tmp_path):
    (tmp_path / "none.txt").write_text("\n")
    found, told = marks(capsys, sample_file, "--mark", f"@{tmp_path / 'none.txt'}")
    assert (found, told) == ([], "hwsched: no opening of 171 is asked for\n")


REFUSED = {
    "a mark": (("--mark", "X11"), "no opening has the mark X11; nearest: X1"),
    "a building": (("--building", "Mil House"), "no opening stands in Mil House; nearest: Mill House"),
    "a query": (("--where", "rating = 91"), "read '91': is none of the words for Fire rating"),
    "no file": (("--mark", "@/nowhere/marks"), "/nowhere/marks cannot be read: No such file"),
    "a folder": (("--mark", "@/"), "/ cannot be read: Is a directory"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_what_is_not_there_or_cannot_be_read_is_refused(sample_file, capsys, name):
    words, said = REFUSED[name]
    told = asked(capsys, "findings", "check", str(sample_file), *words, status=3)
    assert told.out == ""
    assert said in told.err


def test_no_text_is_refused_as_a_list_of_marks(sample_file, capsys, tmp_path):
    (tmp_path / "latin").write_bytes(b"T\xfcr 1\n")
    assert (
        "is not UTF-8"
        in asked(capsys, "findings", "check", str(sample_file), "--mark", f"@{tmp_path / 'latin'}", status=3).err
    )
    (tmp_path / "large").write_bytes(b"X1\n" * 4_000_000)
    assert (
        "too large"
        in asked(capsys, "findings", "check", str(sample_file), "--mark", f"@{tmp_path / 'large'}", status=3).err
    )


def test_the_place_of_an_error_stands_under_the_query(sample_file, capsys):
    told = asked(capsys, "findings", "check", str(sample_file), "--where", "stair = yes and rating = 91", status=3).err
    lines = told.splitlines()
    at = next(n for n, line in enumerate(lines) if "^" in line)
    assert lines[at - 1][lines[at].index("^") :] == "91"


def test_verbs_work_on_what_is_asked_for(sample_file, capsys, tmp_path):
    where = ("--building", "Mill House", "--where", "status = does-not-fit")
    wanted, _ = marks(capsys, sample_file, *where)
    assert wanted
    found = json.loads(asked(capsys, "findings", "check", str(sample_file), *where, "--json").out)["result"]
    assert {each["mark"] for each in found["findings"]} == set(wanted)
    outcomes = json.loads(asked(capsys, "opening", "fit", str(sample_file), *where, "--json").out)["result"]
    assert [each["mark"] for each in outcomes["openings"]] == wanted
    fitting = ("--building", "Mill House", "--where", "status = fits and level = 1")
    cost = json.loads(asked(capsys, "parts", "cost", str(sample_file), "--by", "opening", *fitting, "--json").out)[
        "result"
    ]
    openings = {row["key"] for row in cost["lines"] if not row["key"].startswith("supplies ")}
    assert openings == set(marks(capsys, sample_file, *fitting)[0])
    assert openings
    rows = json.loads(asked(capsys, "parts", "cost", str(sample_file), "--building", "Boat Store", "--json").out)[
        "result"
    ]["lines"]
    assert {row["key"] for row in rows} == {"Boat Store"}
    lacking, _ = marks(capsys, sample_file, "--where", "status = to-measure")
    missing = json.loads(
        asked(capsys, "survey", "missing", str(sample_file), "--where", "status = to-measure", "--json").out
    )["result"]
    assert {mark for fact in missing["facts"] for mark in fact["needing_marks"]} <= set(lacking)
    assert missing["facts"]
    form = asked(capsys, "survey", "form", str(sample_file), "-o", str(tmp_path / "f.xlsx"), *where)
    assert f"{len(wanted)} openings filled in" in form.out
    asked(
        capsys,
        "release",
        "print",
        str(sample_file),
        "schedule",
        *where,
        "-o",
        str(tmp_path / "out"),
        "--format",
        "xlsx",
    )
    assert (
        json.loads(asked(capsys, "opening", "what-if", str(sample_file), *where, "--json").out)["result"]["differences"]
        == []
    )


def test_nothing_asked_for_is_said_and_does_nothing(sample_file, capsys):
    told = asked(capsys, "opening", "fit", str(sample_file), "--where", "level = cellar")
    assert told.err == "hwsched: the project has no level cellar\nhwsched: no opening of 171 is asked for\n"
    assert "Nothing to change." in told.out


@pytest.mark.parametrize("verb", VERBS)
def test_every_verb_has_the_same_options(verb, capsys):
    told = asked(capsys, *verb.split(), "--help").out
    for option in ("--building NAME", "--level NAME", "--mark MARKS", "--where QUERY"):
        assert option in told


def test_verbs_that_are_asked_for_all_do_not_load_the_language(sample_file):
    script = "import sys; from hwsched.cli.command import run; run(sys.argv[1:]); print('hwsched.query' in sys.modules)"
    for words in (["findings", "check", "--help"], ["parts", "cost", str(sample_file)]):
        done = subprocess.run([sys.executable, "-c", script, *words], capture_output=True, text=True, check=True)
        assert done.stdout.splitlines()[-1] == "False", words
