"""A second delivery by command: written out to be decided, decided, looked at whole, taken back; origin of facts."""

import json

import pytest

from hwsched.cli.command import run
from tests.cli.answers import answer

HEADER = "Mark,Level,Room from,Room to,Hand\n"
FIRST = f"{HEADER}101,1,Hall,Office,LH\n102,1,Hall,Store,RH\n103,1,Hall,Plant,RH\n104,1,Hall,Lab,LH\n"
SECOND = f"{HEADER}101,1,Hall,Office,\n102,1,Hall,Store,LH\nS-3,1,Hall,Plant,RH\n"


def told(capsys, *words):
    """What a verb tells machines; its schema is held against it elsewhere."""
    capsys.readouterr()
    assert run([*words, "--json"]) in (0, 1), capsys.readouterr().err
    return json.loads(capsys.readouterr().out)["result"]


@pytest.fixture
def project(tmp_path):
    path = str(tmp_path / "p.hwsched")
    assert run(["project", "new", path]) == 0
    for name, text in (("first.csv", FIRST), ("second.csv", SECOND)):
        (tmp_path / name).write_text(text, encoding="utf-8")
    assert run(["survey", "import", path, str(tmp_path / "first.csv"), "--who", "ann"]) == 0
    return path


def test_what_is_left_is_written_filled_in_and_decided(project, tmp_path, capsys):
    text = tmp_path / "decisions.toml"
    second = str(tmp_path / "second.csv")
    left = answer(capsys, "survey", "import", project, second, "--write-decisions", str(text), status=1)["result"]
    asked = [(each["kind"], each["mark"], each["known"], each["fact"], each["held"]) for each in left["open"]]
    assert asked == [
        ("renamed", "S-3", "103", None, None), ("gone", "104", None, None, None), ("blank", "101", None, "hand", "LH"),
    ]  # fmt: skip
    listed = answer(capsys, "survey", "questions", project)["result"]
    assert [(each["delivery"], each["kind"]) for each in listed] == [(2, "renamed"), (2, "gone"), (2, "blank")]
    assert run(["survey", "questions", project]) == 0
    assert "3 questions from delivery 2." in capsys.readouterr().out
    text.write_text(text.read_text(encoding="utf-8").replace('"ask"', '"file"'), encoding="utf-8")
    words = ("survey", "decide", project, "--decisions", str(text), "--decide", "blank=held")
    dry = {"result": told(capsys, *words, "--dry-run")}
    done = answer(capsys, *words)
    assert dry["result"] == done["result"]
    assert done["result"] == {
        "answered_count": 3, "new_marks": [], "changed_marks": ["S-3"], "retired_marks": ["104"],
        "restored_marks": [], "open": [],
    }  # fmt: skip
    rows = told(capsys, "survey", "list", project, "openings")["rows"]
    assert [(row["mark"], row["hand"]) for row in rows] == [("101", "LH"), ("102", "LH"), ("S-3", "RH")]


def test_the_same_is_decided_as_the_file_is_taken_in(project, tmp_path, capsys):
    words = ("survey", "import", project, str(tmp_path / "second.csv"), "--renamed", "S-3=103", "--decide", "gone=file")
    done = told(capsys, *words, "--decide", "blank:hand@101=file", "--decide", "changed@102=held")
    assert (done["retired_marks"], done["open"], done["new_marks"]) == (["104"], [], [])
    rows = told(capsys, "survey", "list", project, "openings")["rows"]
    assert [(row["mark"], row["hand"]) for row in rows] == [("101", None), ("102", "RH"), ("S-3", "RH")]


def test_a_delivery_is_looked_at_whole_and_taken_back(project, tmp_path, capsys):
    told(capsys, "survey", "import", project, str(tmp_path / "second.csv"), "--who", "bob")
    found = answer(capsys, "survey", "deliveries", project)["result"]
    assert [(each["number"], each["file"], each["open_count"], each["rows"]) for each in found] == [
        (1, "first.csv", 0, []), (2, "second.csv", 3, []),
    ]  # fmt: skip
    (whole,) = told(capsys, "survey", "deliveries", project, "2")
    assert whole["rows"] == ["102: changed: Hand RH -> LH (second.csv, second, row 3)"]
    (hand,) = answer(capsys, "survey", "origin", project, "102", "hand")["result"]
    assert [hand[name] for name in ("value", "delivery", "file", "sheet", "cell", "person")] == [
        "LH", 2, "second.csv", "second", "E3", "bob",
    ]  # fmt: skip
    told(capsys, "survey", "deliveries", project, "2", "--undo")
    assert [each["number"] for each in told(capsys, "survey", "deliveries", project)] == [1]
    (hand,) = told(capsys, "survey", "origin", project, "102", "hand")
    assert (hand["value"], hand["delivery"], hand["cell"], hand["person"]) == ("RH", 1, "E3", "ann")


def test_a_word_that_is_no_decision_is_wrong_usage_and_a_text_that_is_none_is_refused(project, tmp_path, capsys):
    assert run(["survey", "decide", project, "--decide", "gone=yes"]) == 2
    assert "'yes' is no answer on gone; accepted: file, held, ask" in capsys.readouterr().err
    path = tmp_path / "bad.toml"
    path.write_text("[[", encoding="utf-8")
    assert run(["survey", "decide", project, "--decisions", str(path), "--json"]) == 3
    assert "is no text of decisions" in json.loads(capsys.readouterr().out)["problems"][0]["message"]
