"""Long work happens before the lock is taken, what it stands on is seen to within it: one step, whole or not at all."""

from contextlib import contextmanager
from dataclasses import replace

import pytest
from sqlalchemy import event

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model import project as project_module
from hwsched.model.journal.touched import Touched
from hwsched.model.project import open_project
from hwsched.model.state_memory import WRITING
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening import fits_within, fitting_openings
from hwsched.operations.opening.fits_within import FitMemory, and_fit, change_and_fit
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.opening.what_if import Question, accept_answer, what_if
from hwsched.operations.parts.fewest_part_numbers import accept_fewest, fewest_part_numbers
from hwsched.operations.power.siting_accepting import accept_siting
from hwsched.operations.power.supply_siting import propose_siting
from hwsched.operations.prepared import ATTEMPTS, NotReadyError, change_prepared, concern
from hwsched.operations.project.history import history, redo, undo
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.editing import edit_facts
from hwsched.operations.survey.survey_import import import_survey
from hwsched.values import Chosen
from tests.model.backends import furnished
from tests.model.states import state
from tests.operations.exact import id_of
from tests.operations.powered import WHO, closet, doors, fit_all, more_parts
from tests.wiring.power_rows import parts

MARKS = "123456"


@furnished
def yard(project):
    """Six openings that differ, all fitted; a place for a supply."""
    more_parts(project, *(replace(part, list_price=part.list_price or 1.0) for part in parts().parts.values()))
    made = doors(project, MARKS)
    for number, opening in enumerate(made.values()):
        edit_facts(project, "opening", opening, {"operations_per_day": 10.0 + number}, who=WHO)
    made["PA"] = closet(project, "PA", use="candidate")
    made["PB"] = closet(project, "PB", x_m=35.0, use="candidate")
    fit_all(project)
    return made


@pytest.fixture
def other(project, address, yard):
    with open_project(address) as opened:
        yield opened


def of_survey(project, folder):
    path = folder / "s.csv"
    # A fact that every fit reads: one that nobody read would have nothing fitted again.
    path.write_text("Mark,Thickness (mm)\n" + "".join(f"{mark},44.{mark}\n" for mark in MARKS))
    return lambda **how: import_survey(project, path, SurveyOptions(), who=WHO, fit_too=True, **how)


def of_question(project, _folder):
    answer = what_if(project, Question(limits={"battery-life.days": 301.0}, choices=(Chosen("unit", "UNIT"),)))
    # As if it had been asked long ago: nothing is remembered.
    known = type(answer.basis.known)()
    answer = replace(answer, basis=replace(answer.basis, known=known))
    return lambda **how: accept_answer(project, answer, who=WHO, **how)


def of_fewest(project, _folder):
    # On batteries: nothing hangs on a supply that is not laid yet.
    for mark in MARKS:
        edit_facts(project, "opening", id_of(project, mark), {"power_wish": None}, who=WHO)
    fit_all(project)
    found = fewest_part_numbers(project)
    # The yard's openings take the cheapest already: what they would choose for themselves is chosen by hand.
    lines = {point: offers[0][3] for point, offers in found.basis.offers.items()}
    found = replace(found, choices=lines, opening_of=dict.fromkeys(lines, "") | {each: each for each in lines})
    return lambda **how: accept_fewest(project, found, who=WHO, **how)


def of_siting(project, _folder):
    proposal = propose_siting(project, "Main")
    return lambda **how: accept_siting(project, proposal, who=WHO, **how)


def of_settings(project, _folder):
    return lambda **how: and_fit(
        project, lambda: with_openings(project, set_settings(project, who=WHO, prefer="holes")), verb="set-settings",
        who=WHO, **how,
    )  # fmt: skip


def with_openings(project, changes):
    return replace(changes, openings=frozenset(each.given.opening.id for each in check_openings(project)))


def of_fit(project, _folder):
    set_settings(project, who=WHO, prefer="holes")
    return lambda **how: fit_openings(project, who=WHO, **how)


VERBS = {
    "survey": of_survey, "what if": of_question, "fewest kinds": of_fewest, "siting": of_siting,
    "settings": of_settings, "fit": of_fit,
}  # fmt: skip


@contextmanager
def at_each_fit(act):
    """Do something whenever an opening is fitted by a verb."""
    real = fits_within.fit_with_facts

    def fit(given, slots):
        act()
        return real(given, slots)

    fits_within.fit_with_facts = fit
    try:
        yield
    finally:
        fits_within.fit_with_facts = real


@pytest.mark.parametrize("name", VERBS)
def test_it_is_one_step_that_undo_takes_back_whole(project, yard, tmp_path, name):
    act = VERBS[name](project, tmp_path)
    before, count = state(project), len(history(project))
    act()
    after = state(project)
    assert after != before
    assert len(history(project)) == count + 1
    assert fit_openings(project, who=WHO)[0].number is None
    undo(project, who=WHO)
    assert state(project) == before
    redo(project, who=WHO)
    assert state(project) == after


@pytest.mark.parametrize("name", VERBS)
def test_others_write_while_fits_are_worked_out(project, yard, other, tmp_path, monkeypatch, name):
    monkeypatch.setattr(project_module, "BUSY_MS", 200)
    act = VERBS[name](project, tmp_path)
    monkeypatch.setattr(fits_within, "FEW", 0)
    written = []

    def write():
        # Once: each writing of somebody else has what is shown compared anew.
        if not written:
            written.append(edit_facts(other, "opening", yard["1"], {"room_to": "Hall"}, who="ben"))

    with at_each_fit(write):
        act()
    assert len(written) == 1
    assert {each.given.opening.room_to for each in check_openings(project, [yard["1"]])} == {"Hall"}
    assert fit_openings(project, who=WHO)[0].number is None


@pytest.mark.parametrize("name", VERBS)
def test_stopped_nothing_is_changed(project, yard, tmp_path, monkeypatch, name):
    act = VERBS[name](project, tmp_path)
    monkeypatch.setattr(fits_within, "FEW", 0)
    before = state(project)
    act(cancelled=lambda: True)
    assert state(project) == before


@pytest.mark.parametrize("name", VERBS)
def test_what_fails_at_the_last_leaves_nothing_behind(project, yard, tmp_path, monkeypatch, name):
    act = VERBS[name](project, tmp_path)
    before = state(project)

    def broken(change, fits):
        real(change, fits)
        raise ZeroDivisionError

    real = fits_within.store_fits
    monkeypatch.setattr(fits_within, "store_fits", broken)
    monkeypatch.setattr(fitting_openings, "store_fits", broken)
    with pytest.raises(ZeroDivisionError):
        act()
    assert state(project) == before


@contextmanager
def between_reading_and_writing(project, act, times=1):
    """Do something after each reading of stored fits that is not within a change set."""
    left = times

    def hear(connection, cursor, statement, parameters, context, many):
        nonlocal left
        if left and "FROM opening_fit" in statement and not connection.get_execution_options().get(WRITING):
            left -= 1
            act()

    event.listen(project.engine, "after_cursor_execute", hear)
    try:
        yield
    finally:
        event.remove(project.engine, "after_cursor_execute", hear)


def test_a_fit_belongs_to_the_facts_as_they_are_when_it_is_stored(project, yard, other):
    set_settings(project, who=WHO, prefer="holes")
    told = []

    def meanwhile():
        edit_facts(other, "opening", yard["2"], {"operations_per_day": 77.0}, who="ben")

    with between_reading_and_writing(project, meanwhile), at_each_fit(lambda: told.append(1)):
        _, done = fit_openings(project, who=WHO)
    assert {each.given.opening.operations_per_day for each in done} >= {77.0}
    assert all(each.fit is not None for each in check_openings(project))
    # Six, and the one that changed once more.
    assert len(told) == len(MARKS) + 1


def test_what_others_wrote_elsewhere_costs_nothing(project, yard, other):
    ids = [yard[mark] for mark in "12"]
    set_settings(project, who=WHO, prefer="holes")
    began = []

    def meanwhile():
        began.append(edit_facts(other, "opening", yard["5"], {"operations_per_day": 77.0}, who="ben"))

    with between_reading_and_writing(project, meanwhile, times=9):
        fit_openings(project, ids, who=WHO)
    assert len(began) == 1


def test_however_busy_the_others_are_it_comes_to_an_end(project, yard, other):
    set_settings(project, who=WHO, prefer="holes")
    turns = []

    def meanwhile():
        turns.append(1)
        edit_facts(other, "opening", yard["2"], {"operations_per_day": 40.0 + len(turns)}, who="ben")

    with between_reading_and_writing(project, meanwhile, times=99):
        fit_openings(project, who=WHO)
    assert len(turns) == ATTEMPTS
    assert all(each.fit is not None for each in check_openings(project))


def test_a_write_that_never_is_ready_is_a_mistake(project):
    def never(change, last):
        raise NotReadyError(lambda: None)

    with pytest.raises(RuntimeError, match="last attempt"):
        change_prepared(project, "never", "Never", WHO, never)


def test_openings_alike_cost_once_and_an_attempt_that_begins_anew_nothing(project, yard, monkeypatch):
    monkeypatch.setattr(fits_within, "FEW", 0)
    ids = [yard[mark] for mark in MARKS]
    told, tried = [], []

    def write(change, last):
        tried.append(last)
        set_settings(project, who=WHO, prefer="holes")
        for opening in ids:
            edit_facts(project, "opening", opening, {"operations_per_day": 55.0, "plan_x_m": 1.0}, who=WHO)
        return ids

    with at_each_fit(lambda: told.append(1)):
        change_and_fit(project, "edit-facts", "All alike", WHO, write, memory=FitMemory())
    assert (len(told), tried) == (1, [False, False])


def test_a_choice_and_its_fit_are_one_step(project, yard):
    before = state(project)
    changes = and_fit(
        project, lambda: choose_part(project, yard["1"], "unit", "UNIT", who=WHO), verb="choose-part", who=WHO
    )
    assert changes.openings == {yard["1"]}
    assert history(project)[-1].summary == "Choose UNIT as unit of 1; fit 1 opening"
    assert fit_openings(project, who=WHO)[0].number is None
    assert id_of(project, "1") == yard["1"]
    undo(project, who=WHO)
    assert state(project) == before


def test_what_concerns_openings():
    of_one = Touched(7, frozenset({"a"}), frozenset(), frozenset({"leaf"}))
    of_part = Touched(8, frozenset(), frozenset({"P"}), frozenset({"part"}))
    of_file = Touched(9, frozenset(), frozenset(), frozenset({"import_mapping"}))
    assert not concern([], None)
    assert concern([of_one], None)
    assert concern([of_one], ["a", "b"])
    assert not concern([of_one, of_file], ["b"])
    assert concern([of_part], ["b"])
    assert not concern([of_file], None)
