"""A random walk of laying, hanging, removing, undoing: one check equals the whole check after every step."""

import os
import random

import pytest
from sqlalchemy import select

from hwsched.model import errors
from hwsched.model.project import create_project
from hwsched.model.tables import OPENING_TABLE
from hwsched.operations.findings.checking import Checker, check_openings, look_again
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.power.connecting import connect_openings, disconnect_openings, set_route
from hwsched.operations.power.power_editing import add_circuit, add_run, edit_power_row, remove_power_row
from hwsched.operations.power.power_results import power_result
from hwsched.operations.project.history import redo, undo
from hwsched.operations.survey.editing import edit_facts, remove
from tests.model.states import state
from tests.operations.powered import WHO, circuit, closet, doors, power, write_catalogue

STEPS = int(os.environ.get("HWSCHED_POWER_STEPS", "25"))
FIRM = (errors.ValueRefusedError, errors.MissingRowError, errors.DuplicateValueError)


class Walk:
    """A project and the edits that can come next."""

    def __init__(self, project, rng):
        self.project, self.rng = project, rng
        self.number = 0

    def ids(self):
        with self.project.reading() as connection:
            rows = connection.execute(select(OPENING_TABLE.c.id, OPENING_TABLE.c.mark)).all()
        return {row.id: row.mark for row in sorted(rows, key=lambda row: row.mark)}

    def some(self, of, most=3):
        of = list(of)
        return self.rng.sample(of, min(len(of), self.rng.randint(1, most)))

    def node(self, marks):
        return self.rng.choice(["supply", "supply", "J1", "J2", *marks.values()])

    def step(self):
        facts, marks, rng = power(self.project), self.ids(), self.rng
        circuits, one = [c.id for c in facts.circuits], list(marks)
        metres = rng.choice([None, 3.0, 25.0, 60.0])
        edits = {
            "hang": lambda: connect_openings(self.project, rng.choice(circuits), self.some(one), who=WHO,
                                 from_node=self.node(marks), length_m=metres),
            "unhang": lambda: disconnect_openings(self.project, self.some(one), who=WHO),
            "remove": lambda: remove(self.project, "opening", rng.choice(one), who=WHO),
            "run": lambda: add_run(self.project, rng.choice(circuits), {
                "from_node": self.node(marks), "to_node": rng.choice(["J1", "J2", *marks.values()]), "length_m": metres,
            }, who=WHO),
            "lift run": lambda: remove_power_row(self.project, "run", rng.choice(facts.runs).id, who=WHO),
            "lift circuit": lambda: remove_power_row(self.project, "circuit", rng.choice(circuits), who=WHO),
            "circuit": lambda: add_circuit(self.project, rng.choice(facts.supplies).id, {
                "name": f"C{rng.randint(1, 4)}", "wire": rng.choice(["WIRE", None]),
            }, who=WHO),
            "edit": lambda: edit_power_row(
                self.project, "run", rng.choice(facts.runs).id, {"length_m": metres}, who=WHO),
            "supply": lambda: edit_power_row(self.project, "supply", rng.choice(facts.supplies).id, {
                "part": rng.choice(["PSU", None]), "standby_hours": rng.choice([None, 4.0]),
            }, who=WHO),
            "route": lambda: set_route(self.project, rng.choice(one), rng.choice(facts.supplies).id, who=WHO,
                                       length_m=metres, pinned=rng.choice([None, True])),
            "facts": lambda: edit_facts(self.project, "opening", rng.choice(one),
                                        {"stair": rng.choice([True, False, None])}, who=WHO),
            "fit": lambda: fit_openings(self.project, who=WHO),
            "undo": lambda: undo(self.project, who=WHO),
            "redo": lambda: redo(self.project, who=WHO),
        }  # fmt: skip
        weights = {"hang": 5, "undo": 3, "fit": 4, "remove": 1, "lift circuit": 1}
        name = rng.choices(list(edits), [weights.get(each, 2) for each in edits])[0]
        before = state(self.project)
        try:
            edits[name]()
        except (*FIRM, errors.NothingToUndoError):
            # What is refused leaves no trace.
            assert state(self.project) == before, name
        except IndexError:
            # Nothing to choose from.
            assert not (circuits and one and facts.runs)
        return name


def seen(checked):
    return {each.given.opening.id: (each.fit, each.findings) for each in checked}


@pytest.mark.turns(3)
@pytest.mark.parametrize("seed", range(3))
def test_one_check_equals_the_whole_check(tmp_path, seed):
    rng = random.Random(seed)
    with create_project(str(tmp_path / "walk.hwsched"), "Walk") as project:
        write_catalogue(project)
        made = doors(project, ["1", "2", "3", "4", "5"])
        for name, x in (("PS1", 0.0), ("PS2", 60.0)):
            connect_openings(
                project, circuit(project, closet(project, name, x_m=x)), [made["1" if x else "2"]], who=WHO
            )
        fit_openings(project, who=WHO)
        walk = Walk(project, rng)
        taken = set()
        spoken = set()
        for _ in range(STEPS):
            taken.add(walk.step())
            whole = seen(check_openings(project))
            work = power_result(project, fresh=False)
            for opening, (fit, findings) in whole.items():
                (alone,) = check_openings(project, [opening], checker=Checker())
                assert (alone.fit, alone.findings) == (fit, findings)
                # What the rules of circuits say of it is among its findings, and a part of the work says the same.
                of_result = work.of_opening(opening)
                assert {f.rule for f in of_result} <= {f.rule for f in findings}
                assert power_result(project, [opening], fresh=False).of_opening(opening) == of_result
                spoken |= {f.rule for f in of_result}
            pair = rng.sample(list(whole), min(2, len(whole)))
            assert seen(check_openings(project, pair)) == {each: whole[each] for each in whole if each in pair}
            fresh = look_again(project, pair, checker=Checker())
            assert {each.given.opening.id for each in fresh} == set(pair)
            with project.reading() as connection:
                assert connection.exec_driver_sql("PRAGMA foreign_key_check").all() == []
            # No run ends at an opening twice, and none at one that is gone.
            ends = [run.opening_id for run in power(project).runs if run.opening_id]
            assert len(set(ends)) == len(ends)
            assert set(ends) <= set(whole)
        assert len(taken) > 8
        assert {"circuit-known", "circuit-sound"} & spoken


def test_undone_to_the_beginning_and_done_again(tmp_path):
    rng = random.Random("there and back")
    with create_project(str(tmp_path / "walk.hwsched"), "Walk") as project:
        write_catalogue(project)
        made = doors(project, ["1", "2", "3", "4"])
        start = state(project)
        connect_openings(project, circuit(project, closet(project)), list(made.values()), who=WHO)
        walk = Walk(project, rng)
        for _ in range(25):
            walk.step()
        end = state(project)
        steps = 0
        while state(project) != start:
            undo(project, who=WHO)
            steps += 1
            assert steps < 60
        for _ in range(steps):
            redo(project, who=WHO)
        assert state(project) == end
