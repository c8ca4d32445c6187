"""A second delivery of the sample's corner is followed to the pick list: nothing is ordered twice, by hand stands."""

from collections import Counter

import pytest
from openpyxl import load_workbook

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.exchange.survey.decisions import read_word
from hwsched.exchange.survey.facts import Decisions
from hwsched.model.project import open_project
from hwsched.model.queries import opening_ids, read_inputs
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.release.lists import pick_lines
from hwsched.operations.survey.answering import answer_questions
from hwsched.operations.survey.deliveries import open_questions
from hwsched.operations.survey.survey_import import import_survey
from hwsched.operations.survey.typed_values import type_in

HEADING = 4
RENAMED = {"M003": "M003-N", "A-02": "ST-2"}
GONE, CLEARED, BY_HAND = "M216", "M005", "M016"
CHANGED = ("M004", "M006", "M007", "M008", "M012")


@pytest.fixture
def delivered(corner_folder, tmp_path):
    """The second delivery: two renamed, one deleted, five other rooms, one room cleared, one that meets a hand."""
    book = load_workbook(corner_folder / "survey.xlsx")
    sheet = book["Door survey"]
    heads = [str(cell.value or "") for cell in sheet[HEADING]]
    room = next(place for place, head in enumerate(heads) if head.casefold().startswith("room to"))
    rows = [list(row) for row in sheet.iter_rows(min_row=HEADING + 1, values_only=True)]
    sheet.delete_rows(HEADING + 1, sheet.max_row)
    for row in rows:
        mark = row[0]
        row[0] = RENAMED.get(mark, mark)
        # Further rows of an opening tell of its existing items.
        if row[room]:
            row[room] = {CLEARED: None, **{each: f"New {each}" for each in (*CHANGED, BY_HAND)}}.get(mark, row[room])
        if mark != GONE:
            sheet.append(row)
    path = tmp_path / "second.xlsx"
    book.save(path)
    return path


def pick(project, openings=None):
    """How much of each part, and for whom, over all buildings and levels."""
    counts, marks = Counter(), Counter()
    for line in pick_lines(project, openings):
        counts[line["part"]] += line["quantity"]
        marks.update((line["part"], mark) for mark in line["marks"])
    return counts, marks


def test_nothing_is_ordered_twice_by_hand_stands_and_the_pick_list_is_right(corner_file, delivered):
    with open_project(str(corner_file)) as project:
        with project.reading() as connection:
            ids = opening_ids(connection)
        type_in(project, "opening", ids[BY_HAND], "room_to", "By hand", who="foreman")
        fit_openings(project, who="tests")
        (before, marks), (alone, _) = pick(project), pick(project, [ids[GONE]])
        assert {mark for _, mark in marks} >= {GONE, *RENAMED}
        import_survey(project, delivered, SurveyOptions(bare_unit="in"), who="surveyor")
        asked = {(each.undecided.kind, each.undecided.mark) for each in open_questions(project)}
        assert asked == {
            ("renamed", "M003-N"), ("renamed", "ST-2"), ("gone", GONE), ("blank", CLEARED), ("by-hand", BY_HAND),
        }  # fmt: skip
        words = ("renamed=file", "gone=file", "blank=held")
        answer_questions(project, Decisions(answers=dict(map(read_word, words))), who="ann")
        fit_openings(project, who="tests")
        after, now = pick(project)
        with project.reading() as connection:
            held = {given.opening.mark: given.opening for given in read_inputs(connection)}
    # What the opening that is gone wanted goes; all else is ordered as before, for the mark that it has now.
    wanted = Counter({key: count for key, count in marks.items() if key[1] != GONE})
    assert now == Counter({(part, RENAMED.get(mark, mark)): count for (part, mark), count in wanted.items()})
    assert alone
    assert {part: after[part] for part in before} == pytest.approx(
        {part: quantity - alone[part] for part, quantity in before.items()}
    )
    assert set(after) <= set(before)
    assert {mark: ids[mark] for mark in ids if mark not in (*RENAMED, GONE)} | {
        new: ids[old] for old, new in RENAMED.items()
    } == {mark: opening.id for mark, opening in held.items()}
    assert {mark: held[mark].room_to for mark in CHANGED} == {mark: f"New {mark}" for mark in CHANGED}
    assert (held[BY_HAND].room_to, bool(held[CLEARED].room_to)) == ("By hand", True)
