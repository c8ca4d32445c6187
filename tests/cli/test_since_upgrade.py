"""The command line on a project that an earlier version has worked out."""

import pytest
from pypdf import PdfReader

from hwsched.cli.command import run
from tests.cli.answers import answer
from tests.operations.opening.test_since_upgrade import DIFFER, older_yard

SENTENCE = (
    "Worked out by an earlier version: 14 openings may differ; hwsched opening fit PROJECT --since-upgrade --dry-run"
)


@pytest.fixture
def yard(tmp_path):
    target = tmp_path / "yard.hwsched"
    older_yard(target)
    return str(target)


def told(capsys, *words, status=0):
    capsys.readouterr()
    assert run([*words]) == status
    return capsys.readouterr()


def listed(capsys, *words):
    """Return what differs, and the change set."""
    found = answer(capsys, "opening", "fit", *words, "--since-upgrade")
    return {**found["result"], "change_set": found["change_set"]}


@pytest.mark.parametrize(
    "verb",
    [
        ("findings", "check"),
        ("findings", "why", "M116"),
        ("survey", "missing"),
        ("project", "history"),
        ("parts", "cost"),
        ("power", "show"),
    ],
)
def test_every_verb_that_opens_it_says_so_once_beside_its_results(yard, capsys, verb):
    room, name, *more = verb
    shown = told(capsys, room, name, yard, *more)
    assert shown.err.count(SENTENCE) == 1
    assert SENTENCE not in shown.out


def test_no_stale_opening_passes(yard, capsys):
    # What is found wins over what is not judged: the survey of A-10 contradicts itself, whatever is stored for it.
    failed = told(capsys, "findings", "check", yard, "--fail-on", "error", status=1)
    assert "14 openings do not pass: worked out by an earlier version: " in failed.err
    assert failed.out.splitlines()[-1].endswith("; not judged: 14 worked out by an earlier version")
    assert told(capsys, "findings", "check", yard).out


def test_preview_lists_and_changes_nothing_then_one_step_takes_it_and_undo_gives_it_back(yard, capsys):
    preview = listed(capsys, yard, "--dry-run")
    assert [each["mark"] for each in preview["openings"]] == DIFFER
    for each in preview["openings"]:
        for differs in each["differs"]:
            assert set(differs) == {"what", "before", "after", "unit"}
            assert differs["before"] != differs["after"]
    assert (preview["change_set"], preview["looked_at_count"], preview["alike_count"]) == (None, 14, 2)
    assert listed(capsys, yard, "--dry-run") == preview
    taken = listed(capsys, yard)
    assert taken["openings"] == preview["openings"]
    assert taken["change_set"] == 5
    left = listed(capsys, yard, "--dry-run")
    assert [(each["mark"], each["kept"]) for each in left["openings"]] == [("0011", True), ("GATE 3", True)]
    assert "2 openings may differ" in told(capsys, "project", "undo", yard).err
    assert listed(capsys, yard, "--dry-run") == preview


def test_people_read_old_and_new_in_the_project_s_lengths(yard, capsys):
    run(["project", "settings", yard, "--lengths", "fraction"])
    shown = told(capsys, "opening", "fit", yard, "--since-upgrade", "--dry-run").out
    assert "GATE 3: released, kept by the packet of 2026-01-09 (older)" in shown
    assert "status: fits -> does-not-fit" in shown
    assert 'none -> count 4, diameter 23/64", x 2 1/2", y 36"' in shown


def test_released_ones_are_taken_when_they_are_asked_for(yard, capsys):
    shown = told(capsys, "opening", "fit", yard)
    assert (
        "Released, kept as an earlier version worked them out, though this one says otherwise: 0011, GATE 3"
        in shown.err
    )
    assert "earlier version: 2 openings " in told(capsys, "findings", "check", yard).err
    taken = listed(capsys, yard, "--released")
    assert [(each["mark"], each["released"], each["kept"]) for each in taken["openings"]] == [
        ("0011", True, False),
        ("GATE 3", True, False),
    ]
    assert told(capsys, "findings", "check", yard).err == ""
    assert (
        "Nothing was worked out by an earlier version." in told(capsys, "opening", "fit", yard, "--since-upgrade").out
    )


def test_preview_alone_is_wrong_usage(yard, capsys):
    assert "--dry-run goes with --since-upgrade" in told(capsys, "opening", "fit", yard, "--dry-run", status=2).err


def test_a_packet_says_why_it_is_none(yard, capsys, tmp_path):
    shown = told(capsys, "release", "print", yard, "packets", "--to", str(tmp_path), "--mark", "GATE 1", "--issue")
    assert SENTENCE in shown.err
    (path,) = (tmp_path / "packets").iterdir()
    text = " ".join(" ".join(page.extract_text().split()) for page in PdfReader(path).pages)
    assert "DO NOT INSTALL. No fit of this opening counts: it was worked out by an earlier version" in text
    assert "drill" not in text.casefold()
    assert (
        "issue-packets"
        not in told(capsys, "project", "history", yard, "--json").out.partition('"Give out 2 packets"')[2]
    )
