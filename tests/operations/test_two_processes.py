"""Two people in two processes at one project at once: edits, undo, imports, fits, accepted what-ifs and choices.

The journal is played anew, in the order of its numbers, by an account written apart: each step must find what it says
was there before it, and the end must be the project as it stands. So the end is that of some order one after the other,
and nothing was lost. Then each edit is held against what others did after what its maker had seen.
"""

import json
import os
import subprocess
import sys
from collections import Counter
from pathlib import Path

import pytest
from sqlalchemy import select

from hwsched.exchange.parts.catalogue_sheets import write_catalogue
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project, open_project
from hwsched.model.tables import CHANGE_ENTRY, CHANGE_SET, JOURNALLED
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.parts.catalogue_import import import_catalogue
from hwsched.operations.survey.survey_import import import_survey
from tests.documents.quay import HEADINGS, ROWS, parts, write
from tests.model.backends import address, backend, empty_place

__all__ = ["address", "backend", "empty_place"]

STEPS = max(25, int(os.environ.get("HWSCHED_FUZZ", "0")) // 200)
PEOPLE = ("ann", "ben")


def said(value):
    """A value as the journal holds it."""
    return json.loads(json.dumps(value, default=str))


def known(row):
    return {name: said(value) for name, value in row.items() if value is not None and value != {} and name != "version"}


def surveys(folder):
    """The small survey, and the same a second time with changed cells."""
    for number, changed in enumerate(({}, {"Thickness (in)": "1 7/8"}, {"Ops/day": 55, "Hand": "RH"}), start=1):
        rows = [
            row | ({k: v for k, v in changed.items() if k in row} if i % 3 == 0 else {}) for i, row in enumerate(ROWS)
        ]
        write(
            folder / f"survey{number}.xlsx",
            {"Doors": [HEADINGS, *([row.get(heading) for heading in HEADINGS] for row in rows)]},
        )


@pytest.fixture
def quay(empty_place, tmp_path):
    surveys(tmp_path)
    write_catalogue(tmp_path / "catalogue.xlsx", parts())
    with create_project(empty_place, "Quay", bare_unit="in") as project:
        import_catalogue(project, tmp_path / "catalogue.xlsx", who="ann")
        import_survey(project, tmp_path / "survey1.xlsx", SurveyOptions(bare_unit="in"), who="ann")
        fit_openings(project, who="ann")
    return empty_place


def at_once(place, folder, seed):
    """Let both work; returns what each told."""
    command = [sys.executable, "-m", "tests.operations.busy_person", place]
    root = Path(__file__).parents[2]
    environment = {**os.environ, "PYTHONPATH": str(root)}
    working = [
        subprocess.Popen(
            [*command, who, str(seed), str(STEPS), str(folder)],
            stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, cwd=root, env=environment,
        )
        for who in PEOPLE
    ]  # fmt: skip
    told = [each.communicate(timeout=600) for each in working]
    for process, (_, wrong) in zip(working, told, strict=True):
        assert process.returncode == 0, wrong
    return [json.loads(out) for out, _ in told]


def played(entries):
    """Play the journal: each entry must find what it says was there."""
    rows = {}
    for entry in entries:
        at = (entry.entity, entry.row_id)
        before = json.loads(entry.before) if entry.before is not None else None
        after = json.loads(entry.after) if entry.after is not None else None
        if entry.action == "insert":
            assert at not in rows, f"step {entry.change_set} adds {at} a second time"
            rows[at] = known(after)
        elif entry.action == "delete":
            assert rows.pop(at) == known(before), f"step {entry.change_set} removes another {at} than stood there"
        else:
            there = rows[at]
            for name, value in before.items():
                found = there.get(name, {} if value == {} else None)
                assert found == said(value), f"step {entry.change_set} found {at} {name} {found!r}, says {value!r}"
            rows[at] = known({**there, **after})
    return rows


def overwritten_unseen(steps, entries):
    """Edits of single facts that replace what somebody else wrote after what their maker had seen."""
    touched = {}
    for entry in entries:
        if entry.action == "update":
            for name, value in json.loads(entry.after).items():
                touched.setdefault((entry.entity, entry.row_id, name), []).append((entry.change_set, value))
    wrong = []
    for entry in entries:
        step = steps[entry.change_set]
        if entry.action != "update" or step.verb != "edit-facts" or step.kind != "edit" or step.base is None:
            continue
        for name in json.loads(entry.after):
            for number, _ in touched[entry.entity, entry.row_id, name]:
                if step.base < number < entry.change_set and steps[number].session != step.session:
                    wrong.append((entry.change_set, number, entry.entity, name))
    return wrong


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(1))
def test_the_end_is_that_of_some_order_and_nothing_is_overwritten_unseen(quay, tmp_path, seed):
    told = at_once(quay, tmp_path, seed)
    done = sum((Counter(each["done"]) for each in told), Counter())
    assert sum(done.values()) > STEPS / 2
    with open_project(quay) as project, project.reading() as connection:
        steps = {row.number: row for row in connection.execute(select(CHANGE_SET))}
        order = (CHANGE_ENTRY.c.change_set, CHANGE_ENTRY.c.sequence)
        entries = connection.execute(select(CHANGE_ENTRY).order_by(*order)).all()
        stands = {
            (name, row.id): known(dict(row._mapping))
            for name, table in JOURNALLED.items()
            if name != "project"
            for row in connection.execute(select(table))
        }
    assert sorted(steps) == list(range(1, len(steps) + 1))
    assert len({step.session for step in steps.values()}) >= 3
    rows = {at: row for at, row in played([e for e in entries if e.entity != "project"]).items() if at[0] != "project"}
    assert rows == stands
    assert overwritten_unseen(steps, entries) == []
