"""One mark that becomes several openings, and several that become one: proposed, asked, and carried on as said."""

import pytest

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.exchange.survey.decisions import read_word
from hwsched.exchange.survey.facts import Decisions
from hwsched.model.project import open_project
from hwsched.operations.project.history import undo
from hwsched.operations.survey.answering import answer_questions
from hwsched.operations.survey.deliveries import open_questions
from hwsched.operations.survey.retiring import retired
from hwsched.operations.survey.survey_import import import_survey, preview_survey
from tests.model.states import state
from tests.once import copied
from tests.operations.survey.test_reconciling import FIRST, STORE, delivery, make, openings, row

PARTS = [*(each for each in FIRST if not each.startswith("102")), row("102B", STORE), row("102A", STORE)]
OTHER_ROOMS = "1,Corridor,Archive,RH,36,1 3/4,45 min"


@pytest.fixture(params=["divided", "joined"])
def project(request, tmp_path):
    """Of the first delivery, or of one that knew 102 as two."""
    copied("first delivery", tmp_path / "p.hwsched", make)
    with open_project(str(tmp_path / "p.hwsched")) as opened:
        if request.param == "joined":
            undo(opened, who="surveyor")
            import_survey(opened, delivery(tmp_path, PARTS), SurveyOptions(), who="surveyor")
        opened.way = request.param
        yield opened


divided = pytest.mark.parametrize("project", ["divided"], indirect=True)
joined = pytest.mark.parametrize("project", ["joined"], indirect=True)


def said(*words, **decided):
    return Decisions(answers=dict(map(read_word, words)), **decided)


def taken(project, folder, rows, *words, **decided):
    options = SurveyOptions(decisions=said(*words, **decided))
    return import_survey(project, delivery(folder, rows), options, who="surveyor").preview


def asked(project):
    return sorted((each.undecided.kind, each.undecided.mark) for each in open_questions(project))


def resting(project):
    return {each.mark: each.why for each in retired(project)}


def rows_for(project):
    return PARTS if project.way == "divided" else FIRST


def test_it_is_asked_with_what_speaks_for_it_and_nothing_comes_in_twice(project, tmp_path):
    before = set(openings(project))
    preview = taken(project, tmp_path, rows_for(project))
    assert set(openings(project)) == before
    assert (preview.new, preview.missing, preview.changed) == ((), (), ())
    expected = {
        "divided": (
            "102B",
            "102",
            "102 may be 102A and 102B now; the same rooms (Corridor, Store), 6 of 6 facts alike",
        ),
        "joined": (
            "102B",
            "102B",
            "102A and 102B may be 102 now; the same rooms (Corridor, Store), 6 of 6 facts alike",
        ),
    }[project.way]
    found = [(each.undecided.mark, each.undecided.known, each.undecided.evidence) for each in open_questions(project)]
    assert sorted(found, reverse=True)[0] == expected
    assert asked(project) == [(project.way, "102A"), (project.way, "102B")]
    # The same file once more asks nothing again, and the first one closes what it asked.
    taken(project, tmp_path, rows_for(project))
    assert asked(project) == [(project.way, "102A"), (project.way, "102B")]
    taken(project, tmp_path, FIRST if project.way == "divided" else PARTS)
    assert asked(project) == []


@divided
@pytest.mark.parametrize("later", [False, True])
def test_the_one_that_is_said_carries_on_and_the_other_is_new(project, tmp_path, later):
    was = openings(project)["102"].opening.id
    words = ("divided=file", "divided@102B=file")
    if later:
        taken(project, tmp_path, PARTS)
        answer_questions(project, said(*words), who="ann")
    else:
        taken(project, tmp_path, PARTS, *words)
    now = openings(project)
    assert (now["102B"].opening.id, "102A" in now, "102" in now, len(now)) == (was, True, False, 7)
    assert (asked(project), resting(project)) == ([], {})
    assert taken(project, tmp_path, PARTS).changed == ()


@divided
def test_all_apart_makes_both_new_and_asks_what_became_of_the_first(project, tmp_path):
    taken(project, tmp_path, PARTS, "divided=apart")
    assert {"102A", "102B", "102"} <= set(openings(project))
    assert asked(project) == [("gone", "102")]


@joined
@pytest.mark.parametrize("later", [False, True])
@pytest.mark.parametrize(
    ("word", "carries", "goes"), [("joined=file", "102A", "102B"), ("joined@102B=file", "102B", "102A")]
)
def test_one_carries_on_under_the_new_mark_and_the_other_rests(project, tmp_path, later, word, carries, goes):
    was = openings(project)[carries].opening.id
    if later:
        taken(project, tmp_path, FIRST)
        answer_questions(project, said(word), who="ann")
    else:
        taken(project, tmp_path, FIRST, word)
    now = openings(project)
    assert (now["102"].opening.id, len(now)) == (was, 6)
    assert (asked(project), resting(project)) == ([], {goes: "one with 102 now"})


@joined
def test_apart_from_all_it_is_new_once_all_were_said(project, tmp_path):
    taken(project, tmp_path, FIRST)
    answer_questions(project, said("joined@102A=apart"), who="ann")
    assert ("102" in openings(project), asked(project)) == (False, [("joined", "102B")])
    answer_questions(project, said("joined@102B=apart"), who="ann")
    assert ({"102", "102A", "102B"} <= set(openings(project)), asked(project)) == (True, [])


def test_what_was_taken_is_taken_back_as_one_step(project, tmp_path):
    before = state(project)
    taken(project, tmp_path, rows_for(project), f"{project.way}=file")
    undo(project, who="surveyor")
    assert state(project) == before


@divided
@pytest.mark.parametrize(
    ("first", "second"),
    [("102A", "103B"), ("102A", "1020"), ("102AA", "102AB"), ("A102", "B102")],
)
def test_marks_that_only_look_alike_are_not_proposed(project, tmp_path, first, second):
    rows = [*(each for each in FIRST if not each.startswith("102")), row(first, OTHER_ROOMS), row(second, OTHER_ROOMS)]
    preview = preview_survey(project, delivery(tmp_path, rows), SurveyOptions()).preview
    assert [each for each in preview.undecided if each.kind in ("divided", "joined")] == []


@divided
def test_other_rooms_speak_against_it(project, tmp_path):
    rows = [*(each for each in FIRST if not each.startswith("102"))]
    rows += [row(mark, "1,Yard,Boiler,RH,36,1 3/4,45 min") for mark in ("102A", "102B")]
    preview = preview_survey(project, delivery(tmp_path, rows), SurveyOptions()).preview
    assert (preview.undecided, preview.missing) == ((), ("102",))
