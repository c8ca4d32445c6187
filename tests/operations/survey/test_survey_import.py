"""Surveys into projects: differences, one change set, all or nothing, killed in the middle, undone whole."""

import os
import signal
import subprocess
import sys
import time

import pytest
from openpyxl import Workbook, load_workbook

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project
from hwsched.model.queries import read_inputs
from hwsched.operations.project.history import history, undo
from hwsched.operations.survey.own_fields import define_field
from hwsched.operations.survey.survey_import import import_survey, preview_survey
from hwsched.paths import SAMPLE

HEADER = ["Mark", "Building", "Level", "Hand", "Size", "Thickness", "Lock type", "Backset", "Key group"]


@pytest.fixture
def project(tmp_path):
    made = create_project(tmp_path / "p.hwsched", "P", bare_unit="in")
    yield made
    made.close()


def survey(tmp_path, *rows):
    book = Workbook()
    book.active.append(HEADER)
    for row in rows:
        book.active.append(list(row))
    path = tmp_path / "s.xlsx"
    book.save(path)
    return path


ONE = ("1", "Mill", "1", "LH", "3-0 x 7-0", "1 3/4", "mortise", "2 3/4", "AA")
TWO = ("2", "Mill", "2", "RH", "3-0 x 7-0", "1 3/4", "rim", "2 3/8", "BB")


def openings(project):
    with project.reading() as connection:
        return {given.opening.mark: given for given in read_inputs(connection)}


def test_the_same_file_twice_leaves_no_second_change_set(project, tmp_path):
    path = survey(tmp_path, ONE, TWO)
    first = import_survey(project, path, SurveyOptions(), who="t")
    assert len(first.preview.new) == 2
    second = import_survey(project, path, SurveyOptions(), who="t")
    assert second.changes.number is None
    assert len(second.preview.unchanged) == 2
    assert len(history(project)) == 1


def test_it_tells_how_far_it_is_to_the_end(project, tmp_path):
    """Read, new ones written, changed ones written; a file that changes nothing comes to its end too."""
    path, told = survey(tmp_path, ONE, TWO), []
    for _ in range(2):
        import_survey(project, path, SurveyOptions(), who="t", progress=lambda *at: told.append(at))
        assert told == [(1, 3), (2, 3), (3, 3)]
        told.clear()


def test_preview_writes_nothing(project, tmp_path):
    seen = preview_survey(project, survey(tmp_path, ONE), SurveyOptions())
    assert [opening.mark for opening in seen.preview.new] == ["1"]
    assert openings(project) == {}


def test_differences_are_shown_fact_by_fact_and_blanks_erase_nothing(project, tmp_path):
    import_survey(project, survey(tmp_path, ONE, TWO), SurveyOptions(), who="t")
    changed = ("1", "Mill", "3", "RH", None, "2", None, None, None)
    seen = preview_survey(project, survey(tmp_path, changed), SurveyOptions()).preview
    facts = {(f.where, f.attribute): (f.before, f.after) for f in seen.changed[0].facts}
    assert facts == {
        ("Opening", "level"): ("1", "3"),
        ("Opening", "hand"): ("LH", "RH"),
        ("Leaf single", "thickness_mm"): (44.45, 50.8),
    }
    assert seen.missing == ("2",)
    import_survey(project, survey(tmp_path, changed), SurveyOptions(), who="t")
    given = openings(project)["1"]
    assert (given.opening.level, given.leaves[0].thickness_mm, given.items[0].backset_mm) == ("3", 50.8, 69.85)


def test_one_refused_cell_refuses_all_or_only_its_opening(project, tmp_path):
    path = survey(tmp_path, ONE, ("2", "Mill", "1", "sideways", *TWO[4:]))
    with pytest.raises(InputRejected) as refused:
        import_survey(project, path, SurveyOptions(), who="t")
    assert "row 3, column D (Hand): read 'sideways'" in str(refused.value)
    assert openings(project) == {}
    done = import_survey(project, path, SurveyOptions(), who="t", accept="good-rows")
    assert list(openings(project)) == ["1"]
    assert len(done.problems) == 1


def test_undo_takes_an_import_back_whole(project, tmp_path):
    import_survey(project, survey(tmp_path, ONE, TWO), SurveyOptions(), who="t")
    undo(project, who="t")
    assert openings(project) == {}


def test_fields_of_the_projects_own_are_taken_in(project, tmp_path):
    path = survey(tmp_path, ONE)
    assert any("Key group" in line for line in preview_survey(project, path, SurveyOptions()).preview.unmapped)
    define_field(project, "opening", "key_group", "Key group", "text", who="t")
    import_survey(project, path, SurveyOptions(), who="t")
    seen = preview_survey(project, path, SurveyOptions()).preview
    assert (seen.unmapped, len(seen.unchanged)) == ((), 1)


def test_the_file_itself_is_left_alone(project, tmp_path):
    path = survey(tmp_path, ONE)
    before = path.read_bytes()
    import_survey(project, path, SurveyOptions(), who="t")
    assert path.read_bytes() == before


def test_where_a_fact_came_from(project, tmp_path):
    from hwsched.model.journal.history import changes_of

    import_survey(project, survey(tmp_path, ONE), SurveyOptions(), who="ann")
    opening = openings(project)["1"].opening.id
    with project.reading() as connection:
        change = changes_of(connection, opening)[0]
    assert (change.who, change.origin) == ("ann", "s.xlsx, Sheet, row 2")


def test_a_filled_in_form_comes_in_without_problems(project, tmp_path):
    from hwsched.exchange.survey.form import write_survey_form

    path = tmp_path / "form.xlsx"
    write_survey_form(path)
    book = load_workbook(path)
    titles = {str(cell.value).split(" [")[0]: cell.column for cell in book["Openings"][2]}
    values = {
        "Mark": "0012",
        "Building": "Mill",
        "Opening form": "Single door",
        "Hand": "LH",
        "Leaf width": 36,
        "Leaf thickness": "1 3/4",
        "Leaf material": "Hollow metal",
        "Lock form": "Mortise, threaded cylinder",
        "Backset": 2.75,
    }
    for title, value in values.items():
        book["Openings"].cell(3, titles[title]).value = value
    items = {str(cell.value).split(" [")[0]: cell.column for cell in book["Existing items"][2]}
    for title, value in {"Mark": "0012", "Item": "Closer", "Face": "Inside", "From lock edge": 30}.items():
        book["Existing items"].cell(3, items[title]).value = value
    book.save(path)
    done = import_survey(project, path, SurveyOptions(), who="t")
    assert done.problems == ()
    given = openings(project)["0012"]
    assert [item.kind for item in given.items] == ["lock", "closer"]
    assert (given.leaves[0].width_mm, given.items[1].x_mm) == (pytest.approx(914.4), pytest.approx(762))


KILLED = """
import sys
from pathlib import Path
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import open_project
from hwsched.model.journal import journal
from hwsched.operations.survey.survey_import import import_survey
real = journal.Change.insert
def slow(self, table, rows, origins=None):
    found = real(self, table, rows, origins)
    print(table.name, flush=True)
    import time; time.sleep(0.4)
    return found
journal.Change.insert = slow
project = open_project(sys.argv[1])
import_survey(project, Path(sys.argv[2]), SurveyOptions(bare_unit="in"), who="k", accept="good-rows")
print("done", flush=True)
"""


@pytest.mark.parametrize("table", ["opening", "leaf", "existing_item"])
def test_killed_in_the_middle_of_an_import_the_project_is_as_before(project, tmp_path, table):
    command = [sys.executable, "-c", KILLED, str(tmp_path / "p.hwsched"), str(SAMPLE / "survey.xlsx")]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    for line in process.stdout:
        if line.strip() == table:
            os.kill(process.pid, signal.SIGKILL)
            break
    else:
        pytest.fail("it was not killed")
    process.wait()
    process.stdout.close()
    time.sleep(0.05)
    assert openings(project) == {}
    assert history(project) == []


def test_a_mapping_outlives_one_more_column(project, tmp_path):
    """Two facts that a person mapped change in a file that has a column more: both are seen, and taken in."""

    def file(*rows):
        path = tmp_path / "list.csv"
        path.write_text("\n".join(",".join(row) for row in rows), encoding="utf-8")
        return path

    told = SurveyOptions(columns={"Nominal": "leaf.width_mm", "Tall": "leaf.height_mm"}, bare_unit="in")
    first = (("Mark", "Nominal", "Tall"), ("1", "36", "84"), ("2", "36", "84"))
    import_survey(project, file(*first), told, who="t")
    second = (("Mark", "Wing", "Nominal", "Tall"), ("1", "N", "32", "84"), ("2", "N", "36", "80"))
    seen = preview_survey(project, file(*second), SurveyOptions()).preview
    changed = {opening.mark: [(f.attribute, round(f.after)) for f in opening.facts] for opening in seen.changed}
    assert changed == {"1": [("width_mm", 813)], "2": [("height_mm", 2032)]}
