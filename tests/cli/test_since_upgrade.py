"""The command line on a project that an earlier version has worked out."""

import json

import pytest
from pypdf import PdfReader

from hwsched.cli.command import run
from tests.operations.opening.test_since_upgrade import older_yard

SENTENCE = "Worked out by an earlier version: 14 openings may differ; hwsched fit PROJECT --since-upgrade --preview"


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
    return json.loads(told(capsys, "fit", *words, "--since-upgrade", "--json").out)


@pytest.mark.parametrize("verb", [("check",), ("why", "M116"), ("missing",), ("history",), ("cost",), ("power",)])
def test_every_verb_that_opens_it_says_so_once_beside_its_results(yard, capsys, verb):
    name, *more = verb
    shown = told(capsys, name, yard, *more)
    assert shown.err.count(SENTENCE) == 1
    assert SENTENCE not in shown.out


def test_no_stale_opening_passes(yard, capsys):
    failed = told(capsys, "check", yard, "--fail-on", "error", status=1)
    assert "14 openings do not pass: not judged, since no fit of them counts" in failed.err
    assert told(capsys, "check", yard).out


def test_preview_lists_and_changes_nothing_then_one_step_takes_it_and_undo_gives_it_back(yard, capsys):
    preview = listed(capsys, yard, "--preview")
    assert [each["mark"] for each in preview["openings"]] == ["GATE 1", "GATE 2", "GATE 3", "GATE 4"]
    for each in preview["openings"]:
        for differs in each["differs"]:
            assert set(differs) == {"what", "before", "after", "unit"}
            assert differs["before"] != differs["after"]
    assert (preview["change_set"], preview["looked_at"], preview["alike"]) == (None, 14, 10)
    assert listed(capsys, yard, "--preview") == preview
    taken = listed(capsys, yard)
    assert taken["openings"] == preview["openings"]
    assert taken["change_set"] == 5
    left = listed(capsys, yard, "--preview")
    assert [(each["mark"], each["kept"]) for each in left["openings"]] == [("GATE 3", True)]
    assert "1 opening may differ" in told(capsys, "undo", yard).err
    assert listed(capsys, yard, "--preview") == preview


def test_people_read_old_and_new_in_the_project_s_lengths(yard, capsys):
    run(["project", "settings", yard, "--lengths", "fraction"])
    shown = told(capsys, "fit", yard, "--since-upgrade", "--preview").out
    assert "GATE 3: released, kept by the packet of 2026-01-09 (older)" in shown
    assert "status: fits -> does-not-fit" in shown
    assert 'none -> count 4, diameter 23/64", x 2 1/2", y 36"' in shown


def test_released_ones_are_taken_when_they_are_asked_for(yard, capsys):
    shown = told(capsys, "fit", yard)
    assert "Released, kept as an earlier version worked them out, though this one says otherwise: GATE 3" in shown.err
    assert "earlier version: 1 opening " in told(capsys, "check", yard).err
    taken = listed(capsys, yard, "--released")
    assert [(each["mark"], each["released"], each["kept"]) for each in taken["openings"]] == [("GATE 3", True, False)]
    assert told(capsys, "check", yard).err == ""
    assert "Nothing was worked out by an earlier version." in told(capsys, "fit", yard, "--since-upgrade").out


def test_preview_alone_is_wrong_usage(yard, capsys):
    assert "--preview goes with --since-upgrade" in told(capsys, "fit", yard, "--preview", status=2).err


def test_a_packet_says_why_it_is_none(yard, capsys, tmp_path):
    shown = told(capsys, "print", "packets", yard, "--to", str(tmp_path), "--mark", "GATE 1", "--issue")
    assert SENTENCE in shown.err
    (path,) = (tmp_path / "packets").iterdir()
    text = " ".join(" ".join(page.extract_text().split()) for page in PdfReader(path).pages)
    assert "DO NOT INSTALL. No fit of this opening counts: it was worked out by an earlier version" in text
    assert "drill" not in text.casefold()
    assert "issue-packets" not in told(capsys, "history", yard, "--json").out.partition('"Give out 2 packets"')[2]
