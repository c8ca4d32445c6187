"""Verbs over many openings tell now and then how far they are, and at the end that all are done; any can be stopped."""

import pytest

from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import create_project
from hwsched.model.queries import by_opening, read_inputs
from hwsched.model.tables import OPENING_FIT, OPENING_TABLE
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening.fits_within import FitMemory
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.since_upgrade import since_upgrade
from hwsched.operations.opening.what_if import Question, successors, what_if
from hwsched.operations.parts.fewest_part_numbers import fewest_part_numbers

WHO = "ann"
COUNT = 65
BY_SIXTEEN = [(16, COUNT), (32, COUNT), (48, COUNT), (64, COUNT), (COUNT, COUNT)]
"""Each sixteenth, and the last."""


@pytest.fixture(scope="module")
def crowd(tmp_path_factory):
    """Cabinets of which nothing is surveyed, fitted by an earlier version of the program."""
    made = create_project(tmp_path_factory.mktemp("crowd") / "c.hwsched", "Crowd")
    with made.change("add", "Many", WHO) as change:
        change.insert(OPENING_TABLE, [{"mark": f"M{number}", "form": "cabinet"} for number in range(COUNT)])
    fit_openings(made, who=WHO)
    with made.writing() as connection:
        connection.execute(OPENING_FIT.update().values(engine=None))
    yield made
    made.close()


def solve_supplies(project, **how):
    with project.reading() as connection:
        openings = list(by_opening(read_inputs(connection, None)))
    FitMemory().fits_of(openings, **how)


VERBS = {
    "fit": lambda project, **how: fit_openings(project, who=WHO, **how),
    "what if": lambda project, **how: what_if(project, Question(), **how),
    "successors": successors,
    "since upgrade": since_upgrade,
    "work out": solve_supplies,
}


class Person:
    """Asked before each opening whether to stop; notes how many were begun whenever told how far it is."""

    def __init__(self):
        self.begun = 0
        self.told = []

    def cancelled(self):
        self.begun += 1
        return False

    def progress(self, done, total):
        assert done == self.begun
        self.told.append((done, total))


@pytest.mark.parametrize("name", sorted(VERBS, key=lambda name: name == "fit"))
def test_each_sixteenth_is_told_and_the_last(crowd, name):
    """What fits comes last, since it leaves no fit of an earlier version."""
    person = Person()
    VERBS[name](crowd, progress=person.progress, cancelled=person.cancelled)
    assert person.told == BY_SIXTEEN


def test_checking_tells_each_sixty_fourth_and_the_last(crowd):
    person = Person()
    assert len(check_openings(crowd, progress=person.progress, cancelled=person.cancelled)) == COUNT
    assert person.told == [(64, COUNT), (COUNT, COUNT)]
    nobody = Person()
    check_openings(crowd, [], progress=nobody.progress)
    assert nobody.told == []


def test_alternatives_tell_with_which_opening_they_begin(crowd):
    told = []
    with pytest.raises(ValueRefusedError, match="no opening has an alternative"):
        fewest_part_numbers(crowd, progress=lambda *at: told.append(at))
    assert told == [(f"alternatives of opening {number} of {COUNT}", None) for number in (1, 17, 33, 49, 65)]


def test_a_check_that_is_stopped_gives_what_it_has(crowd):
    asked = []

    def cancelled():
        asked.append(None)
        return len(asked) > 3

    assert [each.given.opening.mark for each in check_openings(crowd, cancelled=cancelled)] == ["M0", "M1", "M2"]
