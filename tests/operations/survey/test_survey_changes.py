"""Surveys that come again: what they change, what they leave, what the project remembers of them."""

import gc

import pytest
from openpyxl import Workbook

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.exchange.survey.form import write_survey_form
from hwsched.model.project import create_project
from hwsched.model.queries import read_extra, read_inputs
from hwsched.model.tables import OPENING_TABLE
from hwsched.operations.project.history import history, redo, undo
from hwsched.operations.survey.editing import edit_facts
from hwsched.operations.survey.own_fields import define_field
from hwsched.operations.survey.survey_import import import_survey, preview_survey
from hwsched.paths import SAMPLE

SHOWN = SurveyOptions()


@pytest.fixture
def project(tmp_path):
    made = create_project(tmp_path / "p.hwsched", "P", bare_unit="in")
    yield made
    made.close()


def survey(tmp_path, *rows, name="s.xlsx"):
    book = Workbook()
    for row in rows:
        book.active.append(list(row))
    book.save(tmp_path / name)
    return tmp_path / name


def inputs(project):
    with project.reading() as connection:
        return {given.opening.mark: given for given in read_inputs(connection)}


def facts(project):
    return {mark: (given.opening, given.leaves, given.items) for mark, given in inputs(project).items()}


def take(project, path, options=SHOWN, **more):
    return import_survey(project, path, options, who="t", **more)


def test_a_field_defined_later_is_read_though_the_header_is_remembered(project, tmp_path):
    path = survey(tmp_path, ["Mark", "Width", "Key group"], ["1", 36, "AA"])
    take(project, path)
    define_field(project, "opening", "key_group", "Key group", "text", who="t")
    take(project, path)
    with project.reading() as connection:
        assert list(read_extra(connection, OPENING_TABLE).values()) == [{"key_group": "AA"}]
    assert take(project, path).changes.number is None


def test_columns_and_the_unit_asked_for_are_remembered(project, tmp_path):
    rows = (["Mark", "Breite", "Hand", "Notes"], ["1", 915, "LH", "x"])
    options = SurveyOptions(bare_unit="mm", columns={"Breite": "leaf.width_mm", "Notes": ""})
    take(project, survey(tmp_path, *rows), options)
    seen = preview_survey(project, survey(tmp_path, *rows), SHOWN).preview
    assert seen.unchanged == ("1",)
    assert take(project, survey(tmp_path, *rows)).changes.number is None
    take(project, survey(tmp_path, rows[0], ["2", 762, "RH", "y"]))
    given = inputs(project)["2"]
    assert (given.leaves[0].width_mm, given.opening.notes) == (762, None)
    # What is said anew is remembered anew, and undoing the import forgets it with everything else.
    take(project, survey(tmp_path, rows[0], ["3", 762, "RH", "y"]), SurveyOptions(columns={"Notes": "opening.notes"}))
    assert inputs(project)["3"].opening.notes == "y"
    take(project, survey(tmp_path, rows[0], ["4", 762, "RH", "z"]))
    assert inputs(project)["4"].opening.notes == "z"


def test_openings_move_to_other_levels_in_one_go(project, tmp_path):
    header = ["Mark", "Building", "Level", "Hand"]
    take(project, survey(tmp_path, header, *([f"{n}", "Mill", f"{n % 3}", "LH"] for n in range(30))))
    moved = survey(tmp_path, header, *([f"{n}", None, "9" if n % 2 else None, None] for n in range(30)))
    done = take(project, moved)
    assert len(done.preview.changed) == 15
    found = inputs(project)
    assert {found[f"{n}"].opening.level for n in range(1, 30, 2)} == {"9"}
    assert {found[f"{n}"].opening.building for n in range(30)} == {"Mill"}
    assert take(project, moved).changes.number is None
    undo(project, who="t")
    assert {given.opening.level for given in inputs(project).values()} == {"0", "1", "2"}


def test_own_fields_of_an_opening_are_kept_beside_those_that_change(project, tmp_path):
    for name in ("key_group", "colour"):
        define_field(project, "opening", name, name.replace("_", " ").capitalize(), "text", who="t")
    take(project, survey(tmp_path, ["Mark", "Hand", "Key group", "Colour"], ["1", "LH", "AA", "red"]))
    take(project, survey(tmp_path, ["Mark", "Hand", "Key group", "Colour"], ["1", "LH", "BB", None]))
    with project.reading() as connection:
        assert list(read_extra(connection, OPENING_TABLE).values()) == [{"key_group": "BB", "colour": "red"}]


def test_leaves_and_items_that_come_later_stand_behind_those_known(project, tmp_path):
    header = ["Mark", "Type", "Leaf", "Width", "Item", "Face"]
    take(project, survey(tmp_path, header, ["1", "single", None, 36, "closer", "key"]))
    rows = (["1", "pair", "active", 36, "closer", "key"], ["1", None, "inactive", 24, "viewer", "both"])
    done = take(project, survey(tmp_path, header, *rows))
    given = inputs(project)["1"]
    assert [(leaf.position, leaf.width_mm) for leaf in given.leaves] == [
        ("active", pytest.approx(914.4)),
        ("inactive", pytest.approx(609.6)),
    ]
    assert [(item.kind, item.leaf) for item in given.items] == [("closer", "active"), ("viewer", "inactive")]
    assert done.preview.kept == ()
    assert take(project, survey(tmp_path, header, *rows)).changes.number is None


def test_what_the_file_does_not_name_stays_and_is_said(project, tmp_path):
    header = ["Mark", "Hand", "Item", "Face"]
    take(project, survey(tmp_path, header, ["1", "LH", "closer", "key"], ["2", "LH", None, None]))
    done = take(project, survey(tmp_path, header, ["1", "LH", "viewer", "both"]))
    assert done.preview.kept == ("1, closer key",)
    assert done.preview.missing == ("2",)
    assert [item.kind for item in inputs(project)["1"].items] == ["closer", "viewer"]
    assert "2" in inputs(project)


def test_a_leaf_set_by_hand_is_not_set_back_by_what_is_only_deduced(project, tmp_path):
    path = survey(tmp_path, ["Mark", "Type", "Lock type"], ["1", "pair", "mortise"])
    take(project, path)
    edit_facts(project, "existing_item", inputs(project)["1"].items[0].id, {"leaf": "inactive"}, who="t")
    assert take(project, path).changes.number is None
    assert inputs(project)["1"].items[0].leaf == "inactive"


def test_the_sample_goes_out_as_a_form_and_comes_back_without_a_change(project, tmp_path):
    take(project, SAMPLE / "survey.xlsx", accept="good-rows")
    known = inputs(project)
    write_survey_form(tmp_path / "form.xlsx", openings=list(known.values()))
    done = take(project, tmp_path / "form.xlsx")
    assert (done.changes.number, len(done.preview.unchanged), done.problems) == (None, len(known), ())


def test_undo_and_redo_take_an_import_back_and_again(project, tmp_path):
    path = survey(tmp_path, ["Mark", "Building", "Hand", "Item"], ["1", "Mill", "LH", "closer"])
    take(project, path)
    before = facts(project)
    undo(project, who="t")
    assert inputs(project) == {}
    redo(project, who="t")
    assert facts(project) == before
    assert take(project, path).changes.number is None


def bad(book, name):
    """Fill a workbook with one of the things that go wrong."""
    page = book.active
    page.title = "Doors"
    header = ["Mark", "Hand", "Width", "Thickness"]
    good = ["1", "LH", 36, 1.75]
    rows = {
        "no header": [["a", "b"], ["c", "d"]],
        "no mark": [header[1:], good[1:]],
        "nothing": [],
        "no rows": [header],
        "formulas": [header, ["1", "LH", 36, "=1+0.75"]],
        "dates": [header, ["1", "LH", 36, __import__("datetime").datetime(2026, 3, 4)]],
        "duplicates": [header, good, ["2", *good[1:]], good],
        "merged": [header, ["1", "LH", 36, None]],
        "two columns": [[*header, "Swing"], [*good, "RH"]],
        "unit": [["Mark", "Width (kg)"], ["1", 36]],
        "nobody's item": [header, good, [], [None, None, None, 2]],
    }[name]
    for row in rows:
        page.append(row)
    if name == "merged":
        page.merge_cells("C2:D2")


@pytest.mark.parametrize(
    ("name", "message"),
    [
        ("no header", "no row looks like a header"),
        ("no mark", "has no column of marks"),
        ("nothing", "holds nothing"),
        ("no rows", "has no row below its header"),
        ("formulas", "row 2, column D (Thickness): empty; holds a formula without a stored value"),
        ("dates", "row 2, column D (Thickness): read '2026-03-04'; is a date: a spreadsheet turned 3-4 or 3/4"),
        ("duplicates", "row 4: is a second row of the mark 1, which stands in row 2 already"),
        ("merged", "row 2, column C (Width): read '36'; is merged over columns C to D"),
        ("two columns", "column E (Swing): read 'Swing'; two columns carry the same fact, Hand"),
        ("unit", "is a length, but the header gives it in kg"),
        ("nobody's item", "row 4: has no mark"),
    ],
)
def test_what_is_refused_is_named_and_changes_nothing(project, tmp_path, name, message):
    path = survey(tmp_path, ["Mark", "Hand"], ["0", "LH"], name="before.xlsx")
    take(project, path)
    before = facts(project)
    book = Workbook()
    bad(book, name)
    book.save(tmp_path / "bad.xlsx")
    with pytest.raises(InputRejected) as refused:
        take(project, tmp_path / "bad.xlsx")
    assert message in str(refused.value)
    assert "bad.xlsx" in str(refused.value)
    assert facts(project) == before
    assert len(history(project)) == 1
    assert gc.isenabled()


def test_good_rows_leave_out_whole_openings(project, tmp_path):
    book = Workbook()
    bad(book, "duplicates")
    book.save(tmp_path / "bad.xlsx")
    done = take(project, tmp_path / "bad.xlsx", accept="good-rows")
    assert list(inputs(project)) == ["2"]
    assert len(done.problems) == 1


def test_progress_is_told(project, tmp_path):
    told = []
    path = survey(tmp_path, ["Mark", "Hand"], ["0", "LH"])
    take(project, path, progress=lambda done, total: told.append((done, total)))
    assert told == [(1, 3), (2, 3), (3, 3)]
