"""A second delivery by command: written out to be decided, decided, looked at whole, taken back; origin of facts."""

import pytest

from hwsched.cli.command import run
from tests.cli.answers import answer

HEADER = "Mark,Level,Room from,Room to,Hand\n"
FIRST = f"{HEADER}101,1,Hall,Office,LH\n102,1,Hall,Store,RH\n103,1,Hall,Plant,RH\n104,1,Hall,Lab,LH\n"
SECOND = f"{HEADER}101,1,Hall,Office,\n102,1,Hall,Store,LH\nS-3,1,Hall,Plant,RH\n"


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
    told = answer(capsys, "survey", "import", project, second, "--write-decisions", str(text), status=1)["result"]
    asked = [(each["kind"], each["mark"], each["known"], each["fact"], each["held"]) for each in told["open"]]
    assert asked == [
        ("renamed", "S-3", "103", None, None), ("gone", "104", None, None, None), ("blank", "101", None, "hand", "LH"),
    ]  # fmt: skip
    listed = answer(capsys, "survey", "questions", project)["result"]
    assert [(each["delivery"], each["kind"]) for each in listed] == [(2, "renamed"), (2, "gone"), (2, "blank")]
    assert run(["survey", "questions", project]) == 0
    assert "3 questions from delivery 2." in capsys.readouterr().out
    text.write_text(text.read_text(encoding="utf-8").replace('"ask"', '"file"'), encoding="utf-8")
    words = ("survey", "decide", project, "--decisions", str(text), "--decide", "blank=held")
    dry = answer(capsys, *words, "--dry-run")
    done = answer(capsys, *words)
    assert (dry["change_set"], dry["result"]) == (None, done["result"])
    assert done["result"] == {
        "answered_count": 3, "new_marks": [], "changed_marks": ["S-3"], "retired_marks": ["104"],
        "restored_marks": [], "open": [],
    }  # fmt: skip
    rows = answer(capsys, "survey", "list", project, "openings")["result"]["rows"]
    assert [(row["mark"], row["hand"]) for row in rows] == [("101", "LH"), ("102", "LH"), ("S-3", "RH")]


def test_the_same_is_decided_as_the_file_is_taken_in(project, tmp_path, capsys):
    words = ("survey", "import", project, str(tmp_path / "second.csv"), "--renamed", "S-3=103", "--decide", "gone=file")
    told = answer(capsys, *words, "--decide", "blank:hand@101=file", "--decide", "changed@102=held")["result"]
    assert (told["retired_marks"], told["open"], told["new_marks"]) == (["104"], [], [])
    rows = answer(capsys, "survey", "list", project, "openings")["result"]["rows"]
    assert [(row["mark"], row["hand"]) for row in rows] == [("101", None), ("102", "RH"), ("S-3", "RH")]


def test_a_delivery_is_looked_at_whole_and_taken_back(project, tmp_path, capsys):
    answer(capsys, "survey", "import", project, str(tmp_path / "second.csv"), "--who", "bob", status=1)
    found = answer(capsys, "survey", "deliveries", project)["result"]
    assert [(each["number"], each["file"], each["open_count"], each["rows"]) for each in found] == [
        (1, "first.csv", 0, []), (2, "second.csv", 3, []),
    ]  # fmt: skip
    (whole,) = answer(capsys, "survey", "deliveries", project, "2")["result"]
    assert whole["rows"] == ["102: changed: Hand RH -> LH (second.csv, second, row 3)"]
    (told,) = answer(capsys, "survey", "origin", project, "102", "hand")["result"]
    assert [told[name] for name in ("value", "delivery", "file", "sheet", "cell", "person")] == [
        "LH", 2, "second.csv", "second", "E3", "bob",
    ]  # fmt: skip
    answer(capsys, "survey", "deliveries", project, "2", "--undo")
    assert [each["number"] for each in answer(capsys, "survey", "deliveries", project)["result"]] == [1]
    (told,) = answer(capsys, "survey", "origin", project, "102", "hand")["result"]
    assert (told["value"], told["delivery"], told["cell"], told["person"]) == ("RH", 1, "E3", "ann")


@pytest.mark.parametrize("word", ["gone", "lost=file", "gone=yes", "renamed=held"])
def test_a_word_that_is_no_decision_is_wrong_usage(project, tmp_path, word):
    assert run(["survey", "import", project, str(tmp_path / "second.csv"), "--decide", word]) == 2


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("decision = 3", "holds something else than entries"),
        (
            '[[decision]]\nkind = "gone"\nanswer = "yes"',
            "decision 1: 'yes' is no answer on gone; accepted: file, held, ask",
        ),
        ('[[decision]]\nkind = "gone"\nwhat = "yes"', "decision 1 says what, which no decision says"),
        ("[[", "is no text of decisions"),
    ],
)
def test_a_text_that_is_none_is_refused_with_its_entry(project, tmp_path, capsys, text, said):
    path = tmp_path / "bad.toml"
    path.write_text(text, encoding="utf-8")
    told = answer(capsys, "survey", "decide", project, "--decisions", str(path), status=3)
    assert said in told["problems"][0]["message"]
