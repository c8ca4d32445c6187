"""Whatever verb is killed wherever: the project is as before or as after, never between, and the journal with it.

A bounded share of the points by default, all three hundred by ``HWSCHED_FUZZ=300``.
"""

import os
import random
import shutil
import signal
from collections import Counter

import pytest

from hwsched.cli import ENTRIES
from hwsched.model.project import open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.project.history import undo
from tests.model.states import state
from tests.operations.command_lines import ELSEWHERE, WRITING, furnish, words_of
from tests.operations.killing import alike, rows, run_verb, state_of

POINTS = min(max(35, int(os.environ.get("HWSCHED_FUZZ", "0"))), 300)

pytestmark = [pytest.mark.slow, pytest.mark.skipif(not hasattr(os, "fork"), reason="kill -9 needs POSIX")]


def test_every_verb_has_its_place():
    writing, elsewhere = ({" ".join(line.split()[:2]) for line in lines.values()} for lines in (WRITING, ELSEWHERE))
    assert writing | elsewhere == {entry.spelling for entry in ENTRIES}
    assert not writing & elsewhere


@pytest.fixture(scope="module")
def yard(tmp_path_factory):
    return furnish(tmp_path_factory.mktemp("killed"))


def fresh(yard, tmp_path, name):
    folder = tmp_path / name
    shutil.copytree(yard, folder)
    return folder


@pytest.mark.parametrize("name", WRITING)
def test_killed_it_leaves_what_was_or_what_is_to_be(yard, tmp_path, name):
    place = list(WRITING).index(name)
    points = POINTS // len(WRITING) + (place < POINTS % len(WRITING))
    rng = random.Random(f"{name} {os.environ.get('HWSCHED_SEED', 0)}")
    before = state_of(yard / "yard.hwsched")
    whole = fresh(yard, tmp_path, "whole")
    code, steps, seconds = run_verb(words_of(WRITING[name], whole))
    assert code == 0
    after = alike(state_of(whole / "yard.hwsched"))
    assert after != alike(before)
    seen: Counter[str] = Counter()
    for number in range(points):
        folder = fresh(yard, tmp_path, str(number))
        words = words_of(WRITING[name], folder)
        # Every other time between two words to the database, else at any moment.
        killed_at = {"at": rng.randint(1, steps)} if number % 2 == 0 else {"after_s": rng.uniform(0, 0.8 * seconds)}
        code, _, _ = run_verb(words, **killed_at)
        seen["ended by itself"] += code != -signal.SIGKILL
        found = state_of(folder / "yard.hwsched")
        if found == before:
            seen["before"] += 1
        else:
            assert alike(found) == after, f"{name} killed at {killed_at} ended with {code} between before and after"
            seen["after"] += 1
            check_journal(folder / "yard.hwsched", before)
        shutil.rmtree(folder)
    print(name, dict(seen))


def check_journal(path, before):
    """The one step that was written tells all of its rows, and undo takes it back whole."""
    with open_project(path) as project:
        held = rows(project)
        steps = [row for key, row in held.items() if key[0] == "change_set"]
        last = max(steps, key=lambda row: row["number"])
        assert len(steps) == sum(key[0] == "change_set" for key in before) + 1
        entries = [row for key, row in held.items() if key[0] == "change_entry" and row["change_set"] == last["number"]]
        assert sorted(row["sequence"] for row in entries) == list(range(last["entries"]))
        # What is left of it can be worked on.
        assert check_openings(project)
        if last["kind"] == "edit":
            undo(project, who=last["who"])
            # Rows that came back have a risen version.
            plain = {
                key: {name: value for name, value in row.items() if name != "version"}
                for key, row in before.items()
                if key[0] not in ("change_set", "change_entry")
            }
            assert state(project) == plain
