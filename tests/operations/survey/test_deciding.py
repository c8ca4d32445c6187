"""A person decides on a delivery: for all, by fact, by opening, by cell; what is undecided stays on a list."""

import os
import signal

import pytest
from sqlalchemy import event

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.exchange.survey.deciding import lines_of
from hwsched.exchange.survey.decisions import read_decisions, read_word, written
from hwsched.exchange.survey.facts import Decisions
from hwsched.model.errors import MissingRowError, NotUndoableError
from hwsched.model.journal.chain import broken_links
from hwsched.model.project import open_project
from hwsched.model.queries import read_extra, retired_openings
from hwsched.model.tables import OPENING_TABLE
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.project.history import history, redo, redo_one, undo_one
from hwsched.operations.survey.answering import answer_questions
from hwsched.operations.survey.deliveries import deliveries, lines_of_delivery, open_questions, take_back
from hwsched.operations.survey.editing import add_opening, edit_facts, remove
from hwsched.operations.survey.open_counts import open_counts
from hwsched.operations.survey.origins import origins
from hwsched.operations.survey.own_fields import define_field
from hwsched.operations.survey.survey_import import import_survey, preview_survey
from tests.model.states import state
from tests.once import copied
from tests.operations.survey.test_reconciling import (
    FIRST,
    HEADER,
    PLANT,
    STORE,
    by_hand,
    delivery,
    make,
    openings,
    row,
    with_rows,
)


@pytest.fixture
def project(tmp_path):
    copied("first delivery", tmp_path / "p.hwsched", make)
    with open_project(str(tmp_path / "p.hwsched")) as opened:
        yield opened


@pytest.fixture(scope="module")
def looked_at(tmp_path_factory):
    """The same, for those who only look."""
    path = tmp_path_factory.mktemp("first") / "p.hwsched"
    copied("first delivery", path, make)
    with open_project(str(path)) as opened:
        yield opened


def words(*told):
    return Decisions(answers=dict(map(read_word, told)))


def taken(project, folder, rows, *told, **decided):
    options = SurveyOptions(decisions=Decisions(answers=words(*told).answers, **decided))
    return import_survey(project, delivery(folder, rows), options, who="surveyor").preview


def decide(project, *told, **decided):
    return answer_questions(project, Decisions(answers=words(*told).answers, **decided), who="ann")


def left(project):
    return sorted((each.undecided.kind, each.undecided.mark) for each in open_questions(project))


def retired(project):
    with project.reading() as connection:
        return set(retired_openings(connection))


WIDER = {"101": FIRST[0].replace("36", "38"), "102": FIRST[1].replace("36", "38").replace("45 min", "20 min")}


def facts_of(project, mark):
    given = openings(project)[mark]
    return given.opening.rating, round(given.leaves[0].width_mm / 25.4)


@pytest.mark.parametrize(
    ("told", "rating_102", "width_101", "width_102"),
    [
        ((), "20", 38, 38),
        (("changed=held",), "45", 36, 36),
        (("changed:width_mm=held",), "20", 36, 36),
        (("changed@102=held",), "45", 38, 36),
        (("changed:rating@102=held",), "45", 38, 38),
        # The narrowest word holds.
        (("changed=held", "changed:width_mm=file", "changed:width_mm@102=held"), "45", 38, 36),
        (("any@102=held",), "45", 38, 36),
    ],
)
def test_decided_for_all_by_fact_by_opening_by_cell(looked_at, tmp_path, told, rating_102, width_101, width_102):
    path = delivery(tmp_path, with_rows(**WIDER))
    preview = preview_survey(looked_at, path, SurveyOptions(decisions=words(*told))).preview
    after = {(each.mark, fact.attribute): fact.after for each in preview.changed for fact in each.facts}
    found = [after.get(key, held) for key, held in (
        (("102", "rating"), "45"), (("101", "width_mm"), 36 * 25.4), (("102", "width_mm"), 36 * 25.4),
    )]  # fmt: skip
    assert found == [rating_102, pytest.approx(width_101 * 25.4), pytest.approx(width_102 * 25.4)]
    assert preview.left == ()


def test_what_is_left_open_is_answered_later_without_the_file(project, tmp_path):
    path = tmp_path / "doors.csv"
    taken(project, tmp_path, with_rows(**WIDER), "changed@102=ask")
    path.unlink()
    assert left(project) == [("changed", "102"), ("changed", "102")]
    decide(project, "changed:rating=file", "changed:width_mm=held")
    assert (facts_of(project, "102"), left(project)) == (("20", 36), [])
    # What was held is not asked again as long as the file says the same.
    preview = taken(project, tmp_path, with_rows(**WIDER), "changed=ask")
    assert (preview.left, facts_of(project, "102")) == ((), ("20", 36))


def test_what_a_delivery_did_is_told_row_by_row(project, tmp_path):
    (first,) = deliveries(project)
    lines = lines_of_delivery(project, first)
    # Row 2 of the file, below its heading, is 101: an opening with one leaf. The one sheet of a CSV has its name.
    assert sorted(line for line in lines if line.startswith("101")) == [
        "101 leaf: new (doors.csv, doors, row 2)",
        "101: new (doors.csv, doors, row 2)",
    ]
    taken(project, tmp_path, with_rows(**{"102": FIRST[1].replace("36", "38").replace("45 min", "20 min")}))
    assert sorted(lines_of_delivery(project, deliveries(project)[-1])) == [
        '102 leaf: changed: Leaf width 36" -> 38" (doors.csv, doors, row 3)',
        "102: changed: Fire rating 45 min -> 20 min (doors.csv, doors, row 3)",
    ]
    # What has gone since is still told: the opening by its mark, and its leaf as one of those gone.
    remove(project, "opening", openings(project)["101"].opening.id, who="ann")
    gone = set(lines_of_delivery(project, first)) - set(lines)
    assert gone == {"an opening that is gone: new (doors.csv, doors, row 2)"}
    assert "101: new (doors.csv, doors, row 2)" in lines_of_delivery(project, first)


def test_what_the_file_should_name_is_asked_and_retired_on_a_person_s_word(project, tmp_path):
    preview = taken(project, tmp_path, with_rows(**{"104": None, "106": None}))
    assert left(project) == [("gone", "104"), ("gone", "106")]
    assert "asked: 104: gone: in the project, and not in the file" in preview.describe()
    done = decide(project, "gone@104=file", "gone@106=held")
    assert (done.count, retired(project), left(project)) == (2, {"104"}, [])
    # It was decided that 106 stays.
    assert taken(project, tmp_path, with_rows(**{"104": None, "106": None})).left == ()


def test_gone_openings_are_retired_as_the_file_is_taken_in(project, tmp_path):
    preview = taken(project, tmp_path, with_rows(**{"104": None}), "gone=file")
    assert (preview.retired[0][0], retired(project)) == ("104", {"104"})
    assert history_line(project) == "Take in survey doors.csv: 0 new, 0 changed, 1 retired"


def history_line(project):
    return history(project)[-1].summary


def test_a_retired_opening_that_is_named_again_is_asked_about_and_comes_back_with_what_the_file_says(project, tmp_path):
    was = openings(project)["104"].opening.id
    taken(project, tmp_path, with_rows(**{"104": None}), "gone=file")
    preview = taken(project, tmp_path, with_rows(**{"104": FIRST[3].replace("LH", "RH")}))
    assert (preview.new, left(project)) == ((), [("again", "104")])
    decide(project, "again=file")
    now = openings(project)["104"].opening
    assert (now.id, now.hand, retired(project), left(project)) == (was, "RH", set(), [])


def test_a_file_of_a_part_of_the_building_takes_nothing_for_gone(project, tmp_path):
    # Two of the five openings of level 1.
    preview = taken(project, tmp_path, FIRST[:1])
    assert (preview.gone, left(project)) == ((), [])
    assert preview.part == (
        "the file names 1 of 4 openings of its levels and is taken for a part of them: nothing is taken for gone"
    )
    # The other level was not looked at at all; on a person's word the file is the whole of its own.
    assert [mark for mark, _ in taken(project, tmp_path, FIRST[:1], "gone=ask").gone] == ["102", "104", "D-103"]


def test_a_renamed_opening_waits_on_the_list_with_all_that_the_file_says(project, tmp_path):
    was = openings(project)["102"].opening.id
    by_hand(project, "102", "hand", "LHR")
    rows = with_rows(**{"102": row("S-2", STORE.replace("RH", "LH"))})
    taken(project, tmp_path, rows)
    (asked,) = open_questions(project)
    assert (asked.undecided.kind, asked.undecided.mark, asked.undecided.known) == ("renamed", "S-2", "102")
    decide(project, "renamed=file")
    now = openings(project)
    assert (now["S-2"].opening.id, len(now), "102" in now) == (was, 6, False)
    # What was set by hand stands here too, and is asked.
    assert (now["S-2"].opening.hand, left(project)) == ("LHR", [("by-hand", "S-2")])
    decide(project, "by-hand:hand@S-2=file")
    assert (openings(project)["S-2"].opening.hand, left(project)) == ("LH", [])


def test_a_spelling_that_was_told_once_is_known_at_later_deliveries(project, tmp_path):
    rows = [*(each for each in FIRST if not each.startswith("D-103")), row("d-103", PLANT)]
    taken(project, tmp_path, rows)
    assert left(project) == [("spelling", "d-103")]
    decide(project, "spelling=file")
    preview = taken(project, tmp_path, rows)
    assert (preview.left, preview.new, preview.missing, len(openings(project))) == ((), (), (), 6)


def test_an_opening_waits_while_a_question_about_it_is_left(project, tmp_path):
    def waiting():
        return {each.given.opening.mark for each in check_openings(project) if each.waits}

    assert waiting() == set()
    by_hand(project, "101", "hand", "RH")
    taken(project, tmp_path, with_rows(**{"101": FIRST[0].replace("LH", "LHR"), "104": "104,1,Hall,Stair,,36,,90 min"}))
    assert left(project) == [("blank", "104"), ("blank", "104"), ("by-hand", "101")]
    assert waiting() == {"101", "104"}
    decide(project, "by-hand=held")
    assert waiting() == {"104"}
    decide(project, "blank=held")
    assert waiting() == set()


def test_by_hand_and_blank_are_asked_and_answered_by_cell(project, tmp_path):
    by_hand(project, "101", "hand", "RH")
    rows = with_rows(**{"101": FIRST[0].replace("LH", "LHR"), "104": "104,1,Hall,Stair,,36,,90 min"})
    taken(project, tmp_path, rows)
    assert left(project) == [("blank", "104"), ("blank", "104"), ("by-hand", "101")]
    decide(project, "blank:hand@104=file", "blank@104=held", "by-hand=held")
    now = openings(project)
    assert (now["104"].opening.hand, now["104"].leaves[0].thickness_mm, now["101"].opening.hand) == (None, 44.45, "RH")
    assert (left(project), taken(project, tmp_path, rows).left) == ([], ())


@pytest.mark.parametrize(
    ("decided", "facts", "asked"),
    [
        ({"emptied": frozenset({"hand"})}, (None, 44.45, "RH"), ["blank", "by-hand"]),
        ({"emptied": frozenset({"all"})}, (None, None, "RH"), ["by-hand"]),
        ({"over_hand": frozenset({"hand"})}, ("LH", 44.45, "LHR"), ["blank", "blank"]),
        ({"over_hand": frozenset({"all"})}, ("LH", 44.45, "LHR"), ["blank", "blank"]),
        # Of facts that nobody set by hand, and that are not blank.
        ({"over_hand": frozenset({"thickness_mm"})}, ("LH", 44.45, "RH"), ["blank", "blank", "by-hand"]),
        ({"emptied": frozenset({"rating"})}, ("LH", 44.45, "RH"), ["blank", "blank", "by-hand"]),
    ],
)
def test_by_hand_and_blank_are_answered_by_fact_or_all_at_once(project, tmp_path, decided, facts, asked):
    by_hand(project, "101", "hand", "RH")
    taken(project, tmp_path, with_rows(**{"101": FIRST[0].replace("LH", "LHR"), "104": "104,1,Hall,Stair,,36,,90 min"}))
    decide(project, **decided)
    now = openings(project)
    assert (now["104"].opening.hand, now["104"].leaves[0].thickness_mm, now["101"].opening.hand) == facts
    assert [kind for kind, _ in left(project)] == asked


@pytest.mark.parametrize(("answer", "held"), [("file", "BB"), ("held", "AA")])
def test_a_field_of_the_project_s_own_is_answered_later_too(project, tmp_path, answer, held):
    define_field(project, "opening", "key_group", "Key group", "text", who="ann")
    header = "Mark,Level,Key group"
    for group, told in (("AA", "new=file"), ("BB", "changed=ask")):
        options = SurveyOptions(decisions=words(told))
        import_survey(project, delivery(tmp_path, [f"101,1,{group}"], header), options, who="surveyor")
    assert ("changed", "101") in left(project)
    decide(project, f"changed:key_group@101={answer}")
    one = openings(project)["101"].opening.id
    with project.reading() as connection:
        assert read_extra(connection, OPENING_TABLE)[one] == {"key_group": held}
    assert left(project) == []


def test_an_empty_cell_beside_what_was_only_ever_said_by_hand_is_no_question(project, tmp_path):
    given = openings(project)["101"].opening
    edit_facts(project, "opening", given.id, {"exposure": "interior"}, who="ann")
    rows = [f"{each}," for each in FIRST]
    path = delivery(tmp_path, rows, f"{HEADER},Exposure")
    assert import_survey(project, path, SurveyOptions(), who="surveyor").preview.left == ()


PAIRS = "Mark,Level,Form,Hand,Width,Thickness"


def pairs(project, folder, rows, *told):
    return import_survey(
        project, delivery(folder, rows, PAIRS), SurveyOptions(decisions=words(*told)), who="surveyor"
    ).preview


def test_single_to_pair_and_back_is_decided_as_one(project, tmp_path):
    first = ("201,3,single,LH,36,1 3/4", "202,3,pair,LH,36,1 3/4")
    pairs(project, tmp_path, first)
    assert [len(openings(project)[mark].leaves) for mark in ("201", "202")] == [1, 2]
    turned = ("201,3,pair,LH,36,1 3/4", "202,3,single,LH,36,1 3/4")
    preview = pairs(project, tmp_path, turned, "split=ask")
    assert (left(project), preview.changed) == ([("merged", "202"), ("split", "201")], ())
    assert [openings(project)[mark].opening.form for mark in ("201", "202")] == ["single", "pair"]
    decide(project, "merged=file", "split=file")
    now = openings(project)
    assert [(now[mark].opening.form, [leaf.position for leaf in now[mark].leaves]) for mark in ("201", "202")] == [
        ("pair", ["active", "inactive"]),
        ("single", ["single"]),
    ]
    again = pairs(project, tmp_path, turned)
    assert (again.left, again.changed) == ((), ())


SPELT = {
    "as it is": ("D-{}", (), "D-{}"),
    "another spelling": ("d-{}", ("spelling=file",), "D-{}"),
    "a mark that it takes": ("d-{}", ("spelling=renamed",), "d-{}"),
}


@pytest.mark.parametrize("since", [False, True])
@pytest.mark.parametrize("name", SPELT)
def test_what_is_decided_later_is_of_the_same_opening_whatever_it_is_called(project, tmp_path, name, since):
    """A pair and a single turn round; how the file spells them is told at once, or a person gives them new marks."""
    spelt, told, mark = SPELT[name]
    pairs(project, tmp_path, ("D-201,3,single,LH,36,1 3/4", "D-202,3,pair,LH,36,1 3/4"))
    ids = {openings(project)[each].opening.id: each[-3:] for each in ("D-201", "D-202")}
    turned = (f"{spelt.format(201)},3,pair,LH,36,1 3/4", f"{spelt.format(202)},3,single,LH,36,1 3/4")
    pairs(project, tmp_path, turned, *told, "split=ask", "merged=ask")
    assert [kind for kind, _ in left(project)] == ["merged", "split"]
    if since:
        mark = "new {}"
        for row_id, number in ids.items():
            edit_facts(project, "opening", row_id, {"mark": mark.format(number)}, who="ann")
    decide(project, "merged=file", "split=file")
    now = {given.opening.mark: given for given in openings(project).values() if given.opening.level == "3"}
    assert {key: (each.opening.id in ids, each.opening.form, len(each.leaves)) for key, each in now.items()} == {
        mark.format(201): (True, "pair", 2),
        mark.format(202): (True, "single", 1),
    }
    assert left(project) == []


@pytest.mark.parametrize("since", [None, "Plant 3"])
@pytest.mark.parametrize(("word", "mark"), [("spelling=file", "D-103"), ("spelling=renamed", "d-103")])
def test_a_spelling_is_of_the_opening_that_was_asked_about_whatever_it_is_called_since(
    project, tmp_path, word, mark, since
):
    """Its hand was set by hand, and the file says another one: that is asked about under the mark that it has.

    So is the mark itself, where the file's was to be taken and a person has given another one.
    """
    row_id = openings(project)["D-103"].opening.id
    by_hand(project, "D-103", "hand", "LH")
    said = row("d-103", PLANT.replace("RH", "LHR"))
    taken(project, tmp_path, [*(each for each in FIRST if not each.startswith("D-103")), said])
    assert left(project) == [("spelling", "d-103")]
    if since:
        edit_facts(project, "opening", row_id, {"mark": since}, who="ann")
    decide(project, word)
    now = since or mark
    assert len(openings(project)) == len(FIRST)
    assert (openings(project)[now].opening.id, openings(project)[now].opening.hand) == (row_id, "LH")
    facts = sorted(each.undecided.fact.attribute for each in open_questions(project))
    assert facts == (["hand", "mark"] if since and word == "spelling=renamed" else ["hand"])
    assert {each.undecided.opening_id for each in open_questions(project)} == {row_id}


def test_a_new_opening_that_somebody_has_added_meanwhile_is_that_one(project, tmp_path):
    """Added as a pair, and single in the file: whether its second leaf goes is asked, as of any other."""
    assert [each.mark for each in pairs(project, tmp_path, ("203,3,single,LH,36,1 3/4",), "new=ask").left] == ["203"]
    row_id = add_opening(project, {"mark": "203", "form": "pair"}, leaves=2, who="ann")[1]
    decide(project, "new@203=file")
    now = openings(project)["203"]
    assert (now.opening.id, now.opening.hand, len(now.leaves)) == (row_id, "LH", 2)
    assert left(project) == [("merged", "203")]
    decide(project, "merged=file")
    assert [leaf.width_mm for leaf in openings(project)["203"].leaves] == [914.4]


def test_the_same_delivery_twice_leaves_no_second_trace(project, tmp_path):
    rows = with_rows(**{"104": None, "101": WIDER["101"]})
    taken(project, tmp_path, rows)
    before, count = state(project), len(deliveries(project))
    taken(project, tmp_path, rows)
    assert (state(project), len(deliveries(project)), open_counts(project)) == (before, count, {2: 1})


def test_a_later_delivery_that_names_it_closes_the_question(project, tmp_path):
    taken(project, tmp_path, with_rows(**{"104": None}))
    assert left(project) == [("gone", "104")]
    taken(project, tmp_path, FIRST)
    assert left(project) == []


def test_a_delivery_is_looked_at_whole_and_taken_back_whole(project, tmp_path):
    before = state(project)
    taken(project, tmp_path, with_rows(**WIDER, **{"104": None}))
    decide(project, "gone=file")
    second = deliveries(project)[-1]
    assert (second.number, second.file, second.person, second.open) == (2, "doors.csv", "surveyor", 0)
    assert (second.counts["changed"], second.columns["doors"]["leaf.width_mm"], len(second.decided)) == (2, "F", 1)
    take_back(project, 2, who="ann")
    assert (state(project), [each.number for each in deliveries(project)]) == (before, [1])


def decided_twice(project, folder):
    """A second delivery of which two questions are decided one after the other; returns the state before it."""
    by_hand(project, "D-103", "hand", "LH")
    before = state(project)
    taken(project, folder, with_rows(**WIDER, **{"104": None}), "changed:rating=ask")
    decide(project, "changed:rating=file")
    decide(project, "gone=file")
    assert len(deliveries(project)[-1].decided) == 2
    return before


def test_a_delivery_and_its_decisions_are_taken_back_and_brought_back_as_one_step(project, tmp_path):
    before = decided_twice(project, tmp_path)
    after, count = state(project), len(history(project))
    assert take_back(project, 2, who="ann").openings
    steps = history(project)
    assert (len(steps), state(project)) == (count + 1, before)
    assert [each.undone for each in steps[-4:]] == [True, True, True, False]
    # What was there before stands alone again: the edit by hand is taken back as if nothing had come between.
    undo_one(project, count - 3, who="foreman")
    redo_one(project, count - 3, who="foreman")
    redo(project, who="ann")
    assert (state(project), len(deliveries(project)[-1].decided)) == (after, 2)
    # What came back as one goes as one, whichever of its steps is named.
    undo_one(project, count - 1, who="ann")
    assert state(project) == before
    with project.reading() as connection:
        assert not broken_links(connection)


@pytest.mark.parametrize("commits", [0, 1])
def test_a_kill_leaves_a_delivery_whole_or_taken_back_whole(project, tmp_path, commits):
    path = tmp_path / "p.hwsched"
    before = decided_twice(project, tmp_path)
    states = (state(project), before)
    project.close()
    child = os.fork()
    if child == 0:
        try:
            with open_project(str(path)) as opened:
                # Just before the first of them is committed, and just after it.
                _kill_at(opened, commits)
                take_back(opened, 2, who="ann")
        finally:
            os._exit(1)
    assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == -signal.SIGKILL
    with open_project(str(path)) as opened:
        assert state(opened) == states[commits]


def _kill_at(project, commits):
    wrote = []

    def note(_connection, _cursor, statement, *_):
        wrote.extend(["a step"] if statement.startswith("INSERT INTO change_set ") else [])

    def kill(*_):
        if wrote:
            os.kill(os.getpid(), signal.SIGKILL)

    event.listen(project.engine, "before_cursor_execute", note)
    event.listen(*((project.engine, "commit") if commits == 0 else (project.engine.pool, "checkin")), kill)


def test_a_delivery_on_which_something_stands_is_not_taken_back(project, tmp_path):
    taken(project, tmp_path, with_rows(**WIDER), "changed:rating=ask")
    given = openings(project)["102"]
    decide(project, "changed:rating=file")
    edit_facts(project, "opening", given.opening.id, {"rating": "60"}, who="foreman")
    before = state(project)
    with pytest.raises(NotUndoableError, match="foreman"):
        take_back(project, 2, who="ann")
    assert state(project) == before
    with pytest.raises(MissingRowError, match="no delivery has the number 7; there are 2"):
        take_back(project, 7, who="ann")


def test_decisions_are_an_open_text_that_is_written_filled_in_and_read(project, tmp_path):
    taken(project, tmp_path, with_rows(**{"104": None, "102": row("S-2", STORE)}))
    path = tmp_path / "decisions.toml"
    text = written(lines_of(each.undecided for each in open_questions(project)), "delivery 2")
    assert text.count('answer = "ask"') == 2
    path.write_text(text.replace('"ask"', '"file"'), encoding="utf-8")
    answer_questions(project, read_decisions(path, Decisions()), who="ann")
    assert (retired(project), "S-2" in openings(project), left(project)) == ({"104"}, True, [])


def test_each_fact_says_its_file_sheet_cell_delivery_and_person(project, tmp_path):
    taken(project, tmp_path, with_rows(**WIDER), "changed:rating=ask")
    decide(project, "changed=file")
    by_hand(project, "102", "hand", "LH")
    found = {(each.where, each.fact): each for each in origins(project, openings(project)["102"].opening.id)}
    told = {
        fact: (each.delivery, each.file, each.sheet, each.cell, each.person)
        for (_, fact), each in found.items()
        if fact in ("mark", "level", "rating", "width_mm", "thickness_mm")
    }
    assert told == {
        "mark": (1, "doors.csv", "doors", "A3", "surveyor"),
        "level": (1, "doors.csv", "doors", "B3", "surveyor"),
        "width_mm": (2, "doors.csv", "doors", "F3", "surveyor"),
        "thickness_mm": (1, "doors.csv", "doors", "G3", "surveyor"),
        # Its question was decided by somebody else.
        "rating": (2, "doors.csv", "doors", "H3", "ann"),
    }
    hand = found["Opening", "hand"]
    assert (hand.value, hand.person, hand.file, hand.said) == (
        "LH",
        "foreman",
        "",
        f"set by foreman in step {hand.step}",
    )
    assert found["Opening", "mark"].said == "delivery 1: doors.csv, sheet doors, cell A3; taken in by surveyor"


def test_of_a_pair_each_leaf_has_the_cell_of_its_own_column(project, tmp_path):
    header = "Mark,Level,Active leaf width,Inactive leaf width,Thickness"
    path = delivery(tmp_path, ["P-1,1,36,24,1 3/4"], header)
    import_survey(project, path, SurveyOptions(), who="surveyor")
    found = origins(project, openings(project)["P-1"].opening.id)
    cells = {
        (each.where, each.fact): (each.shown, each.cell) for each in found if each.fact in ("width_mm", "thickness_mm")
    }
    assert cells == {
        ("Leaf active", "width_mm"): ('36"', "C2"),
        ("Leaf inactive", "width_mm"): ('24"', "D2"),
        # One column for both.
        ("Leaf active", "thickness_mm"): ('1 3/4"', "E2"),
        ("Leaf inactive", "thickness_mm"): ('1 3/4"', "E2"),
    }
