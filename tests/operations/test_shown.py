"""What was shown is what is accepted: bound to the file and to what was used of the project, and to nothing else."""

import sys
import time
from dataclasses import dataclass, field, replace

import pytest

from hwsched.exchange.file_key import file_key, read_with_key
from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.errors import ChangeError, ValueRefusedError
from hwsched.model.project import open_project
from hwsched.model.queries import read_inputs
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.opening.what_if import Question, accept_answer, what_if
from hwsched.operations.parts import catalogue_import
from hwsched.operations.parts.cost_terms import set_terms
from hwsched.operations.parts.fewest_part_numbers import accept_fewest, fewest_part_numbers
from hwsched.operations.power.connecting import set_route
from hwsched.operations.power.power_editing import edit_power_row
from hwsched.operations.power.siting_accepting import accept_siting
from hwsched.operations.power.supply_siting import propose_siting
from hwsched.operations.project.history import undo
from hwsched.operations.project.settings import set_settings
from hwsched.operations.shown import ShownOtherwiseError, changed_meanwhile, check_shown, shown_key
from hwsched.operations.survey.editing import add_opening, edit_facts, remove
from hwsched.operations.survey.own_fields import define_field
from hwsched.operations.survey.survey_import import import_survey, preview_survey
from hwsched.values import Chosen
from tests.model.states import state
from tests.operations.exact import id_of, small
from tests.operations.opening.test_what_if import edited
from tests.operations.powered import WHO, closet, doors, fit_all, more_parts, power, write_catalogue
from tests.rules.scenario import catalogue


@pytest.fixture
def yard(tmp_path):
    """1 to 3 alike; 4 to a stair."""
    made = small(tmp_path / "y.hwsched", marks="1234", m4={"stair": True})
    yield made
    made.close()


@pytest.fixture
def other(yard, tmp_path):
    """The same project, open in another process."""
    with open_project(tmp_path / "y.hwsched") as opened:
        yield opened


def edit(project, mark, /, **facts):
    return edit_facts(project, "opening", id_of(project, mark), facts, who="ben")


def refused(project, act, error=ShownOtherwiseError):
    """What refuses it; nothing is changed."""
    before = state(project)
    with pytest.raises(error) as told:
        act()
    assert state(project) == before
    return told.value


# --- a survey -------------------------------------------------------------------------------------------------------

ROWS = "Mark,Room to,Stair\n1,Hall,no\n2,Store,yes\n9,Attic,no\n"
AS_READ = {"1": ("Hall", False), "2": ("Store", True), "9": ("Attic", False)}
AS_TYPED = SurveyOptions(bare_unit="in")


@pytest.fixture
def survey(tmp_path):
    path = tmp_path / "s.csv"
    path.write_text(ROWS)
    return path


def taken_in(project, survey, seen, **more):
    return import_survey(project, survey, AS_TYPED, who=WHO, seen=seen, **more)


def facts(project):
    with project.reading() as connection:
        return {given.opening.mark: (given.opening.room_to, given.opening.stair) for given in read_inputs(connection)}


def test_a_survey_is_taken_in_as_it_was_shown_though_others_work_elsewhere(yard, other, survey):
    seen = preview_survey(yard, survey, AS_TYPED)
    edit(other, "3", room_to="Cellar")
    add_opening(other, {"mark": "5"}, who="ben")
    set_terms(other, who="ben", currency="USD")
    # What the file does not name of an opening that it names changes nothing that was shown.
    edit(other, "1", room_from="Yard")
    done = taken_in(yard, survey, seen).preview
    assert (done.new, done.changed) == (seen.preview.new, seen.preview.changed)
    assert {mark: facts(yard)[mark] for mark in "129"} == AS_READ
    assert facts(yard)["3"][0] == "Cellar"


def test_what_others_do_at_openings_that_the_file_does_not_name_leaves_it_as_shown(yard, other, survey):
    seen = preview_survey(yard, survey, AS_TYPED)
    edit(other, "3", room_to="Cellar")
    assert taken_in(yard, survey, seen).preview == seen.preview
    assert {mark: facts(yard)[mark] for mark in "129"} == AS_READ
    assert facts(yard)["3"][0] == "Cellar"


MEANWHILE = {
    "a fact of the file": (lambda p: edit(p, "2", stair=True), ["2"]),
    "taken out": (lambda p: remove(p, "opening", id_of(p, "1"), who="ben"), ["1"]),
    "put in": (lambda p: add_opening(p, {"mark": "9", "room_to": "Roof"}, who="ben"), ["9"]),
    "renamed": (lambda p: edit(p, "1", mark="1a"), ["1"]),
    "named so": (lambda p: edit(p, "3", mark="9"), ["9"]),
}


@pytest.mark.parametrize("name", MEANWHILE)
def test_what_others_changed_of_it_is_shown_and_asked_again(yard, other, survey, name):
    act, marks = MEANWHILE[name]
    seen = preview_survey(yard, survey, AS_TYPED)
    act(other)
    told = refused(yard, lambda: taken_in(yard, survey, seen))
    assert str(told) == changed_meanwhile(marks)
    assert told.now == preview_survey(yard, survey, AS_TYPED)
    taken_in(yard, survey, told.now)
    assert {mark: facts(yard)[mark] for mark in "129"} == AS_READ


def test_taken_back_meanwhile_it_holds_again(yard, other, survey):
    seen = preview_survey(yard, survey, AS_TYPED)
    edit(other, "2", stair=True)
    undo(other, who="ben")
    assert taken_in(yard, survey, seen).preview == seen.preview


def test_how_the_file_is_read_may_have_changed(yard, other, tmp_path):
    path = tmp_path / "own.csv"
    path.write_text("Mark,Room to,Clerk\n1,Hall,Doe\n")
    seen = preview_survey(yard, path, AS_TYPED)
    define_field(other, "opening", "clerk", "Clerk", "text", who="ben")
    told = refused(yard, lambda: taken_in(yard, path, seen))
    assert str(told) == changed_meanwhile(["1"])
    assert [fact.attribute for each in told.now.preview.changed for fact in each.facts] == ["room_to", "clerk"]
    taken_in(yard, path, told.now)


def test_another_file_under_the_same_name_is_refused(yard, survey):
    seen = preview_survey(yard, survey, AS_TYPED)
    survey.write_text(ROWS.replace("Hall", "Roof"))
    told = refused(yard, lambda: taken_in(yard, survey, seen), ValueRefusedError)
    assert "s.csv is not what was shown any more" in str(told)
    survey.unlink()
    refused(yard, lambda: taken_in(yard, survey, seen), ValueRefusedError)
    # Written again it is the same file, whatever its time says.
    time.sleep(0.01)
    survey.write_text(ROWS)
    assert taken_in(yard, survey, seen).preview == seen.preview


def test_what_nobody_was_shown_is_taken_in_as_it_is_now(yard, other, survey, monkeypatch):
    edit(other, "2", stair=True)
    done = import_survey(yard, survey, AS_TYPED, who=WHO)
    assert [each.mark for each in done.preview.changed] == ["1", "2"]


def test_a_survey_is_fitted_in_the_same_step(yard, survey):
    before = state(yard)
    done = taken_in(yard, survey, preview_survey(yard, survey, AS_TYPED), fit_too=True)
    assert "opening_fit" in done.changes.entities
    assert fit_openings(yard, who=WHO)[0].number is None
    undo(yard, who=WHO)
    assert state(yard) == before


# --- a what-if ------------------------------------------------------------------------------------------------------


def test_a_what_if_holds_though_others_work_elsewhere(yard, other):
    ids = [id_of(yard, "1"), id_of(yard, "2")]
    answer = what_if(yard, Question(choices=(Chosen("unit", "EDGE"),)), ids)
    edit(other, "3", stair=True)
    edit(other, "1", room_from="Yard")
    accept_answer(yard, answer, who=WHO)
    units = {each.given.opening.mark: each.fit and each.fit.part("unit").part for each in check_openings(yard, ids)}
    assert units == {"1": "EDGE", "2": "EDGE"}


@pytest.mark.parametrize("name", ["fact", "choice", "terms"])
def test_a_what_if_that_would_differ_otherwise_is_shown_again(yard, other, name):
    answer = what_if(yard, Question(choices=(Chosen("unit", "EDGE"),)))
    {
        "fact": lambda: edit(other, "2", rating="90"),
        "choice": lambda: choose_part(other, id_of(other, "2"), "unit", "EDGE", who="ben"),
        "terms": lambda: set_terms(other, who="ben", labour_per_hour="80"),
    }[name]()
    told = refused(yard, lambda: accept_answer(yard, answer, who=WHO))
    assert "look at it again" in str(told)
    assert told.now == what_if(yard, answer.question)
    accept_answer(yard, told.now, who=WHO)
    assert what_if(yard, answer.question).differences == ()


def test_a_what_if_is_bound_to_its_catalogue_s_file(yard, tmp_path):
    path = edited(yard, tmp_path / "c.xlsx", ("UNIT", "List price", 150))
    question = Question(catalogue=path)
    answer = what_if(yard, question)
    content = path.read_bytes()
    edited(yard, path, ("UNIT", "List price", 160))
    told = refused(yard, lambda: accept_answer(yard, answer, who=WHO), ValueRefusedError)
    assert "c.xlsx is not what was shown any more" in str(told)
    path.write_bytes(content)
    accept_answer(yard, answer, who=WHO)
    assert what_if(yard, question).differences == ()


def test_a_what_if_follows_what_others_changed_in_the_catalogue(yard, other, tmp_path):
    path = edited(yard, tmp_path / "c.xlsx", ("UNIT", "List price", 150))
    answer = what_if(yard, Question(catalogue=path))
    # A part that no opening takes: nothing that was shown is otherwise.
    more_parts(other, catalogue().get("HALF"))
    more_parts(other, replace(catalogue().get("KEY"), number="KEY-X"))
    accept_answer(yard, answer, who=WHO)
    assert what_if(yard, Question(catalogue=path)).differences == ()


def survey_again(project, folder):
    path = folder / "s.csv"
    path.write_text(ROWS)
    seen = preview_survey(project, path, AS_TYPED)
    return lambda: taken_in(project, path, seen)


def what_if_again(project, folder):
    answer = what_if(project, Question(prefer="holes"))
    return lambda: accept_answer(project, answer, who=WHO)


def fewest_again(project, folder):
    found = fewest_part_numbers(project)
    return lambda: accept_fewest(project, found, who=WHO)


AGAIN = {
    "survey": (survey_again, "survey.survey_import._look"),
    "what if": (what_if_again, "opening.what_if._answered"),
    "fewest kinds": (fewest_again, "parts.fewest_part_numbers._offered"),
}
"""What is accepted, and the function that looks at it again."""


@pytest.mark.parametrize("name", AGAIN)
def test_looking_again_holds_nobody_up_and_is_done_once(yard, other, tmp_path, monkeypatch, name):
    """While it is looked at again others can write, and what it has seen by then it does not look at once more."""
    begin, looks = AGAIN[name]
    accept = begin(yard, tmp_path)
    edit(other, "3", room_to="Cellar")
    module, _, function = looks.rpartition(".")
    real, calls = getattr(sys.modules[f"hwsched.operations.{module}"], function), []

    def looked(*asked):
        calls.append(None)
        edit(other, "3", room_to="Loft")
        return real(*asked)

    monkeypatch.setattr(f"hwsched.operations.{looks}", looked)
    accept()
    assert facts(yard)["3"][0] == "Loft"
    assert len(calls) == 1


def test_a_catalogue_is_read_again_while_others_can_write(yard, other, tmp_path, monkeypatch):
    """Somebody gives parts a field of their own after the file was read: it is read again, and nobody is held up."""
    path = edited(yard, tmp_path / "c.xlsx", ("UNIT", "List price", 150))
    real, calls = catalogue_import.read_catalogue_file, []

    def read(*asked):
        calls.append(None)
        if len(calls) == 2:
            edit(other, "3", room_to="Loft")
        found = real(*asked)
        if len(calls) == 1:
            define_field(other, "part", "shelf", "Shelf", "text", who="ben")
        return found

    monkeypatch.setattr(catalogue_import, "read_catalogue_file", read)
    catalogue_import.import_catalogue(yard, path, who=WHO)
    assert len(calls) == 2
    assert facts(yard)["3"][0] == "Loft"


# --- fewest kinds ---------------------------------------------------------------------------------------------------


@pytest.fixture
def dear(yard):
    more_parts(yard, replace(catalogue().get("UNIT"), number="U-2", list_price=150.0))
    choose_part(yard, id_of(yard, "2"), "unit", "UNIT", who=WHO)
    fit_openings(yard, who=WHO)
    return yard


def test_fewest_kinds_hold_though_others_work_elsewhere(dear, other):
    found = fewest_part_numbers(dear)
    assert found.choices
    edit(other, "3", room_to="Cellar")
    add_opening(other, {"mark": "5"}, who="ben")
    accept_fewest(dear, found, who=WHO)
    assert fewest_part_numbers(dear, list(found.marks)).choices == {}


def test_fewest_kinds_are_asked_again_where_what_was_chosen_among_changed(dear, other):
    found = fewest_part_numbers(dear)
    edit(other, "3", rating="90")
    told = refused(dear, lambda: accept_fewest(dear, found, who=WHO))
    assert "3 changed meanwhile" in str(told)
    undo(other, who="ben")
    accept_fewest(dear, found, who=WHO)


# --- siting ---------------------------------------------------------------------------------------------------------


@pytest.fixture
def places(project):
    write_catalogue(project)
    made = doors(project, ["1", "2", "3"])
    made |= {name: closet(project, name, x_m=x, use="candidate") for name, x in (("PA", 0.0), ("PB", 35.0))}
    made |= doors(project, ["A1"], building="Annex")
    made["PX"] = closet(project, "PX", building="Annex")
    fit_all(project)
    return made


@pytest.fixture
def elsewhere(project, address):
    with open_project(address) as opened:
        yield opened


def test_a_siting_holds_though_others_work_elsewhere(project, elsewhere, places):
    found = propose_siting(project, "Main")
    edit_facts(elsewhere, "opening", places["A1"], {"plan_x_m": 99.0}, who="ben")
    edit_power_row(elsewhere, "supply", places["PX"], {"x_m": 7.0}, who="ben")
    edit_facts(elsewhere, "opening", places["1"], {"room_to": "Hall"}, who="ben")
    set_terms(elsewhere, who="ben", currency="USD")
    accept_siting(project, found, who=WHO)
    assert {run.opening_id for run in power(project).runs} == {places[mark] for mark in "123"}


AT_SITING = {
    "an opening's place": lambda p, made: edit_facts(p, "opening", made["1"], {"plan_x_m": 11.0}, who="ben"),
    "a supply's place": lambda p, made: edit_power_row(p, "supply", made["PB"], {"x_m": 36.0}, who="ben"),
    "a wish": lambda p, made: edit_power_row(p, "supply", made["PB"], {"use": "must"}, who="ben"),
    "a route": lambda p, made: set_route(p, made["1"], made["PA"], who="ben", length_m=3.0),
    "a pin": lambda p, made: set_route(p, made["1"], made["PB"], who="ben", pinned=True),
    "an opening more": lambda p, made: doors(p, ["4"]),
    "an opening less": lambda p, made: remove(p, "opening", made["2"], who="ben"),
    "a limit": lambda p, made: set_settings(p, who="ben", limits={"supply-loading.share": 0.4}),
}


@pytest.mark.parametrize("name", AT_SITING)
def test_a_siting_is_asked_again_where_what_it_used_changed(project, elsewhere, places, name):
    found = propose_siting(project, "Main")
    AT_SITING[name](elsewhere, places)
    told = refused(project, lambda: accept_siting(project, found, who=WHO), ChangeError)
    assert "meanwhile" in str(told) or "not fitted for the facts as they stand" in str(told)


def test_a_siting_whose_volts_alone_differ_is_shown_again(project, elsewhere, places):
    found = propose_siting(project, "Main")
    edit_power_row(elsewhere, "supply", found.siting.open[0], {"standby_hours": 4.0}, who="ben")
    told = refused(project, lambda: accept_siting(project, found, who=WHO))
    assert told.now is not None
    assert told.now.siting == found.siting
    accept_siting(project, told.now, who=WHO)


# --- keys -----------------------------------------------------------------------------------------------------------


def test_the_key_of_what_was_shown_is_that_of_its_content(yard, other):
    question = Question(choices=(Chosen("unit", "EDGE"),))
    assert shown_key(what_if(yard, question)) == shown_key(what_if(other, question))
    assert shown_key(what_if(yard, question)) != shown_key(what_if(yard, question, [id_of(yard, "1")]))
    check_shown("", "x")
    check_shown("x", "x")
    with pytest.raises(ShownOtherwiseError, match="is y, not x as it was shown"):
        check_shown("x", "y")


def test_a_file_written_while_it_is_read_is_refused(tmp_path):
    path = tmp_path / "s.csv"
    path.write_text("one")
    assert read_with_key(path, path.read_text) == ("one", file_key(path))
    assert file_key(tmp_path / "none.csv") == ""
    with pytest.raises(InputRejected, match="written while it was read"):
        read_with_key(path, lambda: path.write_text("two"))


def test_many_marks_are_counted():
    assert changed_meanwhile(list("1234567")).count(",") == 5
    assert "and 2 more changed" in changed_meanwhile(list("1234567"))


@dataclass(frozen=True)
class Seen:
    what: object
    basis: object = field(default=0, compare=False)


@dataclass(frozen=True)
class Other:
    what: object


def test_a_key_tells_apart_what_is_not_the_same():
    one = shown_key(Seen(1))
    # What a person is not shown does not count, nor does the order in which a set happens to be.
    assert shown_key(Seen(1, basis=2)) == one
    assert shown_key(Seen({"b", "a"})) == shown_key(Seen({"a", "b"}))
    assert shown_key(Seen({"a": 1, "b": 2})) == shown_key(Seen({"b": 2, "a": 1}))
    assert shown_key(Seen((1, 2))) != shown_key(Seen((2, 1)))
    others = (Seen(2), Seen("1"), Seen(None), Seen((1,)), Seen({"a": 1}), Other(1), Seen(Seen(1)), Seen(True))
    keys = {shown_key(each) for each in others}
    assert len(keys) == len(others)
    assert one not in keys
    check_shown("", one)
    check_shown(one, one)
    with pytest.raises(ShownOtherwiseError, match=f"is {one}, not "):
        check_shown(shown_key(Seen(2)), one)
