"""Every verb of project, power, parts and release answers machines as its own schema says."""

import json
import shutil

import pytest

from hwsched.cli import ROOMS
from hwsched.cli.command import run
from hwsched.documents.documents import DOCUMENTS
from hwsched.operations.project import demonstration
from hwsched.paths import SAMPLE
from tests.cli.answers import answer
from tests.exchange.powers import WHOLE, write_power
from tests.once import made_once
from tests.operations.exact import small

NO_ENVELOPE = {"calc", "completion", "desktop", "manual"}
"""Verbs that print lines of their own, a text, or nothing."""


def make(folder):
    """Make a project of three fitted openings with a supply and a circuit."""
    path = str(folder / "y.hwsched")
    small(path).close()
    for words in (
        ("power", "add", path, "supply", "PS1", "building=Main", "level=1", "x_m=0", "y_m=0", "rise_m=0", "part=PSU"),
        ("power", "add", path, "circuit", "PS1/C1", "wire=WIRE"),
        ("power", "connect", path, "PS1/C1", "1", "--length", "4"),
    ):
        assert run([*words, "--quiet"]) == 0, words


@pytest.fixture(scope="module")
def laid(pytestconfig, tmp_path_factory):
    return made_once(pytestconfig, tmp_path_factory, "laid", make) / "y.hwsched"


@pytest.fixture
def yard(laid, tmp_path):
    """A copy of that project; its path."""
    return shutil.copy(laid, str(tmp_path))


SPOKEN = {
    "project new": ("--time-zone", "Europe/Lisbon"),
    "project upgrade": (),
    "project verify": (),
    "project backups": (),
    "project today": (),
    "project rescue": ("NEW",),
    "project settings": ("--prefer", "holes", "--rule-off", "reach-height"),
    "project people": ("--add", "ann", "--role", "specifier"),
    "project history": ("--last", "2"),
    "project undo": (),
    "project redo": ("--step", "LAST"),
    "power import": ("POWER",),
    "power level": ("Main", "1", "-3.5"),
    "power add": ("run", "PS1/C1", "from_node=supply", "to_node=J1", "length_m=4"),
    "power remove": ("PS1/C1",),
    "power connect": ("PS1/C1", "2", "3"),
    "power route": ("1", "PS1", "33.5", "--pin"),
    "power plan": ("Main",),
    "power layout": ("Main",),
    "power show": (),
    "power goods": (),
    "power margins": (),
    "parts import": (str(SAMPLE / "catalogue.xlsx"),),
    "parts export": ("-o", "OUT/c.xlsx"),
    "parts add": ("CYL-2", "--like", "CYL", "length_mm=30mm"),
    "parts edit": ("CYL", "length_mm=40mm", "--dry-run"),
    "parts withdraw": ("GATE",),
    "parts used": ("UNIT",),
    "parts set": ("make", "HS-1", "unit=UNIT"),
    "parts successors": (),
    "parts fewest": (),
    "parts cost": ("--by", "opening"),
    "parts terms": ("--currency", "USD", "--labour", "84.50", "--discount", "Acme=0.1"),
    "release print": ("schedule", "-o", "OUT"),
    "release revision": ("--freeze",),
    "release gate": (),
    "release labels": ("-o", "OUT"),
    "release office": ("OFFICE",),
    "release transmit": ("PHOTO", "--recipient", "Architect"),
    "release verify": ("00000000",),
    "release attach": ("1", "PHOTO"),
    "release attachments": ("-o", "OUT"),
    "release detach": ("ATTACHED",),
}
"""The words behind the project, for each verb; words in capitals are put in by the test."""


def test_every_verb_of_the_rooms_is_asked():
    rooms = {"project", "power", "parts", "release"}
    there = {each.spelling for room in ROOMS if room.name in rooms for each in room.entries}
    # Lists, batches and the sample have tests of their own.
    apart = {*(f"{room} list" for room in rooms), "project batch", "project sample"}
    assert set(SPOKEN) == there - apart - {f"project {name}" for name in NO_ENVELOPE}


@pytest.mark.parametrize("verb", SPOKEN)
def test_what_a_verb_answers_is_as_its_schema_says(verb, yard, tmp_path, capsys):
    photo = tmp_path / "inside.png"
    photo.write_bytes(b"\x89PNG\r\n\x1a\n rest")
    office = tmp_path / "office.toml"
    office.write_text("format = 1\n")
    put = {
        "NEW": str(tmp_path / "saved.hwsched"),
        "PHOTO": str(photo),
        "OFFICE": str(office),
        "OUT": str(tmp_path / "out"),
        "OUT/c.xlsx": str(tmp_path / "c.xlsx"),
    }
    if verb == "power import":
        put["POWER"] = str(write_power(tmp_path / "power.xlsx", **WHOLE))
        answer(capsys, "power", "connect", yard, "-", "1")
    if verb in ("power plan", "power layout"):
        answer(capsys, "power", "add", yard, "supply", "PS1", "use=candidate")
        answer(capsys, "power", "connect", yard, "-", "1")
        for mark in ("1", "2", "3"):
            answer(capsys, "survey", "edit", yard, mark, "opening", "power_wish", "supply")
            answer(capsys, "power", "route", yard, mark, "PS1", "12")
        assert run(["opening", "fit", yard, "--quiet"]) == 0
    if verb in ("release detach", "release attachments"):
        put["ATTACHED"] = answer(capsys, "release", "attach", yard, "1", str(photo))["result"]["id"]
    if verb == "project redo":
        put["LAST"] = str(answer(capsys, "project", "history", yard)["result"][-1]["number"])
        assert run(["project", "undo", yard]) == 0
    target = str(tmp_path / "new.hwsched") if verb in ("project new", "parts export") else yard
    if verb == "parts export":
        answer(capsys, "project", "new", target)
        answer(capsys, "parts", "import", target, str(SAMPLE / "catalogue.xlsx"))
    told = answer(capsys, *verb.split(), target, *(put.get(word, word) for word in SPOKEN[verb]))
    assert told["result"] is not None
    assert told["problems"] == []


@pytest.mark.parametrize(
    "words",
    [
        ("propose",),
        ("list",),
        ("change", "HS-1", "unit=UNIT*2", "--dry-run"),
        ("assign", "HS-1", "1", "2"),
        ("free", "1"),
        ("remove", "HS-1"),
    ],
)
def test_every_action_on_sets_has_one_shape(words, yard, capsys):
    answer(capsys, "parts", "set", yard, "make", "HS-1", "unit=UNIT")
    told = answer(capsys, "parts", "set", yard, *words)["result"]
    assert set(told) == {"sets", "marks", "effects"}
    if words[0] == "assign":
        assert told["sets"][0]["marks"] == ["1", "2"]


def test_of_a_revision_the_opening_then_is_of_the_schema_too(yard, capsys):
    answer(capsys, "release", "revision", yard, "--freeze")
    for words in ((), ("--show", "A", "1"), ("--compare", "A")):
        answer(capsys, "release", "revision", yard, *words)


def test_of_a_cost_what_changed_since_a_revision_is_of_the_schema_too(yard, capsys):
    answer(capsys, "opening", "fit", yard)
    answer(capsys, "release", "revision", yard, "--freeze")
    none = answer(capsys, "parts", "cost", yard, "--since", "A")["result"]
    assert [each["key"] for each in none["changes"]] == ["whole"]
    # The scenario's cylinder costs 100.
    answer(capsys, "parts", "edit", yard, "CYL", "list_price=250")
    answer(capsys, "opening", "fit", yard)
    told = answer(capsys, "parts", "cost", yard, "--by", "opening", "--since", "A", "--mark", "1")["result"]
    assert [(each["key"], float(each["change"])) for each in told["changes"]] == [("1", 150.0), ("whole", 150.0)]
    assert float(told["whole"]["total"]) == float(told["changes"][-1]["now"])


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("project", "people", "--add", "ann"), "--role"),
        (("project", "settings", "--limit", "3"), "ID.LIMIT=NUMBER"),
        (("parts", "set", "make"), "needs the name of a set"),
        (("parts", "export"), "-o FILE"),
        (("release", "print", "schedule", "--issue"), "--issue goes with packets"),
        (("release", "print", "schedule", "--with-templates"), "--with-templates goes with packets"),
        (("release", "revision", "--level", "1"), "--freeze"),
        (("release", "attach", "file.png"), "name a thing and a file"),
    ],
)
def test_wrong_words_reach_machines_too(words, said, yard, capsys):
    told = answer(capsys, *words[:2], yard, *words[2:], status=2)
    assert said in told["problems"][0]["message"]
    assert told["result"] is None


def test_quiet_leaves_out_what_is_no_result(yard, tmp_path, capsys):
    for words in (
        ("power", "level", yard, "Main", "1", "-3.5"),
        ("release", "print", yard, "schedule", "-o", str(tmp_path), "--format", "pdf"),
        ("release", "revision", yard, "--freeze"),
        ("project", "undo", yard),
    ):
        capsys.readouterr()
        assert run([*words, "--quiet"]) == 0
        assert capsys.readouterr().out == ""
    assert (tmp_path / "schedule.pdf").exists()


def test_calculators_are_described_for_machines(capsys):
    assert run(["project", "calc", "--json"]) == 0
    all_of_them = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert run(["project", "calc", "--help", "length", "--json"]) == 0
    (length,) = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert length in all_of_them
    assert {field["name"] for field in length["inputs"]} >= set(length["example"])


def test_the_sample_leaves_a_project_alone_until_it_is_told(sample_folder, tmp_path, capsys):
    there = tmp_path / "quayside-works.hwsched"
    shutil.copy(sample_folder / there.name, there)
    before = there.read_bytes()
    told = answer(capsys, "project", "sample", "-o", str(tmp_path), status=3)
    assert "already there; it was left alone" in told["problems"][0]["message"]
    assert "--again" in told["problems"][0]["message"]
    assert there.read_bytes() == before
    assert list(tmp_path.iterdir()) == [there]


@pytest.mark.slow
def test_the_sample_told_again_answers_as_its_schema_says(sample_folder, tmp_path, capsys, monkeypatch):
    # What it prints is looked at elsewhere.
    monkeypatch.setattr(demonstration, "DOCUMENTS", DOCUMENTS[:1])
    there = tmp_path / "quayside-works.hwsched"
    shutil.copy(sample_folder / there.name, there)
    assert run(["survey", "add", str(there), "MINE", "--quiet"]) == 0
    told = answer(capsys, "project", "sample", "-o", str(tmp_path), "--again")
    # The survey's sheet has 171 openings; what it refuses stands among the problems.
    assert told["result"]["opening_count"] == sum(told["result"]["status_counts"].values()) == 171
    assert told["result"]["kept"] == str(tmp_path / "quayside-works.kept-1.hwsched")
    assert told["result"]["project"] == str(there)
    assert told["problems"]
    assert all(each["file"] == "survey.xlsx" for each in told["problems"])
