"""One of two people at random work on one project, as a process: ``python -m tests.operations.busy_person``.

Arguments: project, name, seed, steps, folder with surveys. Prints a JSON object with how often each verb did something.
"""

import json
import random
import sys
from collections import Counter
from pathlib import Path

from sqlalchemy import select

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model import errors
from hwsched.model.journal.history import newest
from hwsched.model.project import open_project
from hwsched.model.tables import ITEM_TABLE, LEAF_TABLE, OPENING_TABLE
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.what_if import Question, accept_answer, what_if
from hwsched.operations.parts.fewest_part_numbers import accept_fewest, fewest_part_numbers
from hwsched.operations.project.history import redo, undo
from hwsched.operations.survey.editing import add_item, add_opening, edit_facts, remove
from hwsched.operations.survey.survey_import import import_survey

EDITS = {
    "opening": (OPENING_TABLE, {"hand": ["LH", "RH", None], "operations_per_day": [10.0, 90.0], "notes": ["a", "b"]}),
    "leaf": (LEAF_TABLE, {"thickness_mm": [44.45, 44.5, 45.0], "undercut_mm": [9.525, 12.7]}),
    "existing_item": (ITEM_TABLE, {"backset_mm": [69.85, 70.0], "trim_key_mm": [0.0, 3.175]}),
}  # fmt: skip


def pick(project, rng, table):
    with project.reading() as connection:
        base = newest(connection)
        ids = sorted(connection.execute(select(table.c.id)).scalars())
    return (rng.choice(ids) if ids else None), base


def edit(project, rng, who):
    entity = rng.choice(sorted(EDITS))
    table, facts = EDITS[entity]
    row, base = pick(project, rng, table)
    fact = rng.choice(sorted(facts))
    return edit_facts(project, entity, row, {fact: rng.choice(facts[fact])}, who=who, base=base).number


def add(project, rng, who):
    return add_opening(project, {"mark": f"{who}-{rng.randrange(6)}"}, who=who)[0].number


def found(project, rng, who):
    opening, _ = pick(project, rng, OPENING_TABLE)
    return add_item(project, opening, {"kind": rng.choice(["pull", "viewer", "kick-plate"])}, who=who)[0].number


def gone(project, rng, who):
    row, base = pick(project, rng, ITEM_TABLE)
    return remove(project, "existing_item", row, who=who, base=base).number


def survey(project, rng, who):
    path = rng.choice(sorted(Path(sys.argv[5]).glob("survey*.xlsx")))
    options = SurveyOptions(bare_unit="in")
    taken = import_survey(project, path, options, who=who, accept="good-rows", fit_too=rng.random() < 0.5)
    return taken.changes.number


def solve_supplies(project, rng, who):
    return fit_openings(project, who=who)[0].number


def asked(project, rng, who):
    answer = what_if(project, Question(prefer=rng.choice(["cost", "holes"])))
    return accept_answer(project, answer, who=who).number


def fewest(project, rng, who):
    return accept_fewest(project, fewest_part_numbers(project, most=40, time_limit_s=5), who=who).number


def back(project, rng, who):
    return undo(project, who=who).number


def again(project, rng, who):
    return redo(project, who=who).number


VERBS = [
    *[edit] * 10,
    add,
    found,
    gone,
    survey,
    solve_supplies,
    solve_supplies,
    asked,
    fewest,
    *[back] * 4,
    *[again] * 2,
]


def main():
    place, who, seed, steps = sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4])
    rng = random.Random(f"{who}{seed}")
    done, refused = Counter(), Counter()
    with open_project(place) as project:
        for _ in range(steps):
            verb = rng.choice(VERBS)
            try:
                done[verb.__name__] += verb(project, rng, who) is not None
            except (errors.ChangeError, InputRejected) as error:
                refused[type(error).__name__] += 1
    print(json.dumps({"done": done, "refused": refused}))


if __name__ == "__main__":
    main()
