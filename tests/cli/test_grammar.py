"""One grammar: rooms, verbs, where the project is said, quiet and loud words, completion, the manual page."""

import json
import os
import re
import shutil
import subprocess
import sys

import pytest

from hwsched.cli import ENTRIES, ROOMS
from hwsched.cli.command import run
from hwsched.cli.completing import SHELLS
from hwsched.paths import RESOURCES


@pytest.mark.parametrize(
    "words",
    [
        ["survey", "list", "P", "buildings"],
        ["survey", "list", "-p", "P", "buildings"],
        ["survey", "list", "buildings", "--project", "P"],
        ["survey", "list", "buildings", "--project=P"],
        ["-q", "survey", "list", "P", "buildings"],
        ["survey", "list", "P", "buildings", "-q"],
    ],
    ids=" ".join,
)
def test_the_project_is_said_in_each_of_these_ways(words, sample_file, capsys):
    assert run([word.replace("P", str(sample_file)) if word in ("P", "--project=P") else word for word in words]) == 0
    assert "Mill House" in capsys.readouterr().out


def test_what_is_said_on_the_line_counts_before_the_environment(sample_file, capsys, monkeypatch):
    monkeypatch.setenv("HWSCHED_PROJECT", "/nowhere/else.hwsched")
    assert run(["survey", "list", str(sample_file), "buildings"]) == 0
    assert run(["survey", "list", "-p", str(sample_file), "buildings"]) == 0
    assert run(["survey", "list", "buildings"]) == 4


def test_an_earlier_spelling_takes_the_project_behind_another_word(sample_file, capsys, tmp_path):
    assert run(["print", "pick-list", str(sample_file), "--to", str(tmp_path / "out"), "--format", "xlsx"]) == 0
    told = capsys.readouterr()
    assert "'print' is spelled 'release print' now" in told.err
    assert (tmp_path / "out" / "pick-list.xlsx").is_file()
    assert run(["history", str(sample_file), "-q"]) == 0
    assert capsys.readouterr().err == ""


def test_a_room_s_name_that_was_a_verb_s_still_is_one(sample_file, capsys):
    assert run(["power", str(sample_file), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["ok"]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["survey", "edti"], "perhaps hwsched survey edit"),
        (["findigns"], "perhaps hwsched findings"),
        (["chekc"], "perhaps hwsched findings check"),
        (["opening", "nonsense"], "it has fit, show"),
    ],
)
def test_a_slip_is_answered_with_what_was_meant(words, said, capsys):
    assert run(words) == 2
    assert said in capsys.readouterr().err


def test_wrong_usage_is_told_to_machines_too(capsys):
    for words in (
        ["survey", "edit", "--json"],
        ["nonsense", "--json"],
        ["survey", "list", "x.hwsched", "poems", "--json"],
    ):
        assert run(words) == 2
        told = json.loads(capsys.readouterr().out)
        assert (told["ok"], told["result"], told["change_set"]) == (False, None, None)
        assert told["problems"][0]["message"]


def test_options_are_not_abbreviated(sample_file, capsys):
    assert run(["findings", "check", str(sample_file), "--fail", "error"]) == 2


def test_every_verb_says_its_room_in_its_file():
    for entry in ENTRIES:
        module = sys.modules[entry.load().run.__module__] if not hasattr(entry.load().run, "func") else None
        if module is not None and module.__doc__:
            assert f"`hwsched {entry.spelling}`" in module.__doc__, entry.spelling
    assert {room.name for room in ROOMS} <= {
        "survey",
        "opening",
        "power",
        "parts",
        "findings",
        "release",
        "stock",
        "site",
        "project",
    }


def completed(line, tmp_path):
    """What a shell gets for a line that is typed to its end."""
    told = tmp_path / "told"
    environment = {
        **os.environ, "_ARGCOMPLETE": "1", "_ARGCOMPLETE_STDOUT_FILENAME": str(told), "COMP_LINE": line,
        "COMP_POINT": str(len(line)), "_ARGCOMPLETE_IFS": "\n", "_ARGCOMPLETE_SUPPRESS_SPACE": "1",
    }  # fmt: skip
    subprocess.run([sys.executable, "-m", "hwsched"], env=environment, capture_output=True, check=True)
    return [word.strip() for word in told.read_text().splitlines()]


def test_a_shell_completes_rooms_verbs_options_and_choices(tmp_path):
    assert completed("hwsched sur", tmp_path) == ["survey"]
    assert set(completed("hwsched project un", tmp_path)) == {"undo"}
    assert "--fail-on" in completed("hwsched findings check --f", tmp_path)
    assert completed("hwsched findings check --fail-on w", tmp_path) == ["warning"]
    assert set(completed("hwsched survey list x.hwsched l", tmp_path)) >= {"leaves"}


@pytest.mark.parametrize("shell", SHELLS)
def test_each_shell_gets_lines_that_name_the_program(shell, capsys):
    assert run(["project", "completion", shell]) == 0
    assert "hwsched" in capsys.readouterr().out


def test_the_manual_page_names_every_verb(tmp_path, capsys):
    page = tmp_path / "hwsched.1"
    assert run(["project", "manual", "-o", str(page)]) == 0
    text = page.read_text(encoding="utf-8").replace("\\-", "-")
    assert text.startswith(".TH HWSCHED")
    for entry in ENTRIES:
        assert f"hwsched {entry.spelling}" in text
    if shutil.which("groff"):
        done = subprocess.run(["groff", "-man", "-Tutf8", "-ww", str(page)], capture_output=True, text=True, check=True)
        assert "waive" in done.stdout


def test_the_handbook_lists_every_earlier_spelling():
    page = (RESOURCES / "handbook" / "command-line.md").read_text(encoding="utf-8")
    rows = [tuple(row) for row in re.findall(r"^\| `([^`]+)` \| `([^`]+)` \|$", page, re.M)]
    assert rows == [(earlier, entry.spelling) for entry in ENTRIES for earlier in entry.earlier]
