"""Every verb of survey, opening and findings answers machines as its schema says, found or not found, done or not."""

import shutil

import pytest

from hwsched.cli import ENTRIES
from hwsched.cli.command import run
from tests.cli.answers import answer, schema
from tests.cli.test_deliveries import FIRST, SECOND
from tests.once import made_once
from tests.operations.exact import small

SURVEY = "Mark,Hand,Room\n1,RH,Hall\n9,LH,Store\n"
WORDS = {
    "survey import": (("YARD", "SURVEY"), ("YARD", "SURVEY", "--dry-run"), ("YARD", "SURVEY", "--fit")),
    "survey form": (
        ("-o", "OUT.xlsx"),
        ("YARD", "-o", "OUT.xlsx", "--mark", "1"),
        ("YARD", "-o", "OUT.pdf", "--mark", "2"),
    ),
    "survey add": (("YARD", "7", "hand=LH"), ("YARD", "1", "--item", "kind=lock")),
    "survey edit": (("YARD", "1", "leaf", "thickness_mm", "44"), ("YARD", "1", "opening", "room_to", "")),
    "survey remove": (("YARD", "1"), ("YARD", "2", "lock")),
    "survey plan": ((), ("PLAN",), ("PLAN", "--column", "Wd.=leaf.width_mm", "--copy", "OUT.toml")),
    "survey retire": (("YARD", "1", "--why", "walled up"),),
    "survey restore": (("DELIVERED", "102"),),
    "survey questions": (("YARD",), ("DELIVERED",)),
    "survey decide": (("DELIVERED", "--decide", "blank=file"),),
    "survey deliveries": (("YARD",), ("DELIVERED", "2")),
    "survey origin": (("DELIVERED", "101"), ("YARD", "1", "hand")),
    "survey field": (("YARD", "opening", "key_group", "Key group"), ("YARD", "part", "shelf")),
    "survey missing": (("YARD",), ("UNKNOWN", "-o", "OUT")),
    "opening fit": (("YARD",), ("UNKNOWN",), ("YARD", "--since-upgrade", "--dry-run")),
    "opening show": (("YARD",), ("UNKNOWN", "1")),
    "opening choose": (("YARD", "1", "unit", "EDGE"), ("YARD", "1", "unit", "EDGE", "--fit")),
    "opening place": (("YARD", "1", "60 mm", "1000 mm"),),
    "opening unchoose": (("YARD", "1", "unit"), ("YARD", "1", "place")),
    "opening what-if": (("YARD", "--choose", "unit=EDGE"), ("YARD", "--prefer", "holes", "--accept")),
    "opening draw": (("YARD", "1", "inside", "-o", "OUT.svg"),),
    "opening pieces": (("YARD", "1"), ("UNKNOWN", "1"), ("YARD", "1", "--serial", "unit=S-1")),
    "findings check": (("YARD",), ("UNKNOWN",), ("UNKNOWN", "--fit")),
    "findings why": (("YARD", "2"), ("YARD", "2", "stair-re-entry")),
    "findings waive": (("YARD", "stair-re-entry", "2", "--reason", "alarm"),),
    "findings waivers": (("YARD",), ("WAIVED",)),
    "findings rules": ((), ("battery-life",)),
}
"""Words behind each verb; in capital letters what is made for them."""
ROOMS = ("survey", "opening", "findings")
RUNS = [(verb, words) for verb, every in WORDS.items() for words in every]


def make(folder):
    for name in "yuw":
        small(folder / f"{name}.hwsched", m2={"stair": True}).close()
    (folder / "s.csv").write_text(SURVEY)
    delivered = str(folder / "d.hwsched")
    for name, text in (("first.csv", FIRST), ("second.csv", SECOND)):
        (folder / name).write_text(text)
    (folder / "p.toml").write_text('plan = "yard"\n\n[[column]]\nheader = "Q"\nfact = "opening.mark"\n')
    unknown, waived = str(folder / "u.hwsched"), str(folder / "w.hwsched")
    assert run(["project", "new", delivered, "--quiet"]) == 0
    for words in (
        ("survey", "import", delivered, str(folder / "first.csv")),
        ("survey", "import", delivered, str(folder / "second.csv")),
        ("survey", "retire", delivered, "102"),
        ("survey", "edit", unknown, "1", "leaf", "thickness_mm", ""),
        ("opening", "fit", unknown, "--mark", "2", "--mark", "3"),
        ("findings", "waive", waived, "stair-re-entry", "2", "--reason", "alarm"),
    ):
        # Two deliveries leave something to decide, which is told by a status of its own.
        assert run([*words, "--quiet"]) in ((0, 1) if words[1] == "import" else (0,)), words


@pytest.fixture(scope="module")
def made_folder(pytestconfig, tmp_path_factory):
    return made_once(pytestconfig, tmp_path_factory, "answering", make)


@pytest.fixture
def made(made_folder, tmp_path):
    """What the words in capital letters stand for: copies of what is made once a run."""
    shutil.copytree(made_folder, tmp_path, dirs_exist_ok=True)
    return {
        "YARD": str(tmp_path / "y.hwsched"),
        "UNKNOWN": str(tmp_path / "u.hwsched"),
        "WAIVED": str(tmp_path / "w.hwsched"),
        "DELIVERED": str(tmp_path / "d.hwsched"),
        "SURVEY": str(tmp_path / "s.csv"),
        "PLAN": str(tmp_path / "p.toml"),
        "OUT.toml": str(tmp_path / "out.toml"),
        "OUT": str(tmp_path / "out"),
        "OUT.xlsx": str(tmp_path / "out.xlsx"),
        "OUT.pdf": str(tmp_path / "out.pdf"),
        "OUT.svg": str(tmp_path / "out.svg"),
    }


def test_every_verb_of_the_rooms_is_run():
    """What a room lists is tested by list."""
    assert set(WORDS) == {each.spelling for each in ENTRIES if each.room in ROOMS and each.name != "list"}


@pytest.mark.parametrize(("verb", "words"), RUNS, ids=lambda each: each if isinstance(each, str) else " ".join(each))
def test_a_verb_answers_as_its_schema_says(made, capsys, verb, words):
    told = answer(capsys, *verb.split(), *(made.get(word, word) for word in words))
    assert told["result"] is not None
    assert told["problems"] == []


@pytest.mark.parametrize("verb", WORDS)
def test_a_schema_names_every_field_and_never_an_opening_by_another_word_than_mark(capsys, verb):
    def fields(part):
        if isinstance(part, dict):
            yield from part.get("properties", {})
            for each in part.values():
                yield from fields(each)
        elif isinstance(part, list):
            for each in part:
                yield from fields(each)

    declared = set(fields(schema(capsys, *verb.split())))
    assert {"ok", "result", "problems", "change_set", "version"} < declared
    assert not declared & {"opening", "change_sets"}


@pytest.mark.parametrize("verb", [verb for verb, every in WORDS.items() if every[0][:1] == ("YARD",)])
def test_a_refusal_has_the_same_envelope(made, capsys, verb):
    made["YARD"] = "none.hwsched"
    told = answer(capsys, *verb.split(), *(made.get(word, word) for word in WORDS[verb][0]), status=4)
    assert (told["ok"], told["result"], told["change_set"]) == (False, None, None)
    assert "none.hwsched" in told["problems"][0]["message"]
