"""The return visit: what is missing and where, a workbook a building that comes back without a difference."""

from dataclasses import replace

import pytest
from openpyxl import load_workbook
from pypdf import PdfReader

from hwsched.documents.survey.return_visit import RETURN_VISIT, to_visit
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import open_project
from hwsched.model.queries import read_inputs
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.editing import add_item, edit_facts
from hwsched.operations.survey.own_fields import define_field
from hwsched.operations.survey.return_visit import issue_return_visit
from hwsched.operations.survey.survey_forms import write_form
from hwsched.operations.survey.survey_import import import_survey, preview_survey
from hwsched.render.blocks import Table
from hwsched.rules.missing import missing_facts, needs_of
from tests.operations.exact import id_of, small

WHO = "ann"
RATING, THICK = "opening.rating", "leaf.thickness_mm"


@pytest.fixture
def yard(tmp_path):
    """1 lacks the rating; 2 rating and thickness; 3 and 4 the thickness; 5 nothing. 4 stands in the annexe."""
    made = small(
        tmp_path / "y.hwsched", marks="12345", m1={"rating": None}, m2={"rating": None}, m4={"building": "Annexe"}
    )
    for mark in "12345":
        with made.reading() as connection:
            (given,) = read_inputs(connection, [id_of(made, mark)])
        # As an import has it: the lock's row names its leaf.
        edit_facts(made, "existing_item", given.items[0].id, {"leaf": "single"}, who=WHO)
        if mark in "234":
            edit_facts(made, "leaf", given.leaves[0].id, {"thickness_mm": None}, who=WHO)
    fit_openings(made, who=WHO)
    yield made
    made.close()


def missing(project):
    return missing_facts((each.given.opening.mark, each.fit, each.findings) for each in check_openings(project))


def test_ranked_by_hand(yard):
    assert [(each.fact, set(each.alone), set(each.needed)) for each in missing(yard)] == [
        (THICK, {"3", "4"}, {"2", "3", "4"}), (RATING, {"1"}, {"1", "2"}),
    ]  # fmt: skip


def test_the_sheet_says_what_to_find_where(yard):
    view = project_view(yard)
    assert {each.mark for each in to_visit(view)} == {"1", "2", "3", "4"}
    document = RETURN_VISIT.build(view, None)
    text = str(document)
    assert len(document.sections) == 3
    assert "leaf: Leaf thickness" in text
    assert "'Openings to visit', '4'" in text
    main = next(
        section for section in document.sections if "'Main'" in str(section) or "Main" in str(section.blocks[0])
    )
    rows = [row for block in main.blocks for row in getattr(block, "rows", ())]
    assert [(row[0], row[3]) for row in rows] == [
        ("1", "opening: Fire rating"), ("2", "leaf: Leaf thickness"), ("", "opening: Fire rating"),
        ("3", "leaf: Leaf thickness"),
    ]  # fmt: skip


def test_a_lock_s_fact_is_asked_of_what_is_converted(yard):
    """Without a lock the exit device is converted, and its form is wanted; a closer has none to be asked for."""
    opening = id_of(yard, "5")
    with yard.reading() as connection:
        (given,) = read_inputs(connection, [opening])
    edit_facts(yard, "existing_item", given.items[0].id, {"kind": "exit-device", "lock_form": None}, who=WHO)
    add_item(yard, opening, {"kind": "closer", "leaf": "single"}, who=WHO)
    fit_openings(yard, who=WHO)
    document = RETURN_VISIT.build(project_view(yard), None)
    rows = [
        row for section in document.sections for block in section.blocks for row in getattr(block, "rows", ())
        if "Lock form" in str(row)
    ]  # fmt: skip
    assert [row[4] for row in rows if row[0] == "5"] == ["Exit device"]


def test_its_workbooks_come_back_without_a_difference_and_filled_they_unblock(yard, tmp_path):
    files = issue_return_visit(yard, tmp_path / "out")
    assert sorted(path.name for path in files) == [
        "return-visit Annexe.xlsx", "return-visit Main.xlsx", "return-visit.pdf",
    ]  # fmt: skip
    assert "Leaf thickness" in " ".join(
        page.extract_text() for page in PdfReader(tmp_path / "out/return-visit.pdf").pages
    )
    for path in files:
        if path.suffix == ".xlsx":
            shown = preview_survey(yard, path, SurveyOptions())
            assert (shown.problems, shown.preview.new, shown.preview.changed) == ((), (), ()), path
            assert import_survey(yard, path, SurveyOptions(), who=WHO).changes.number is None
    annexe = tmp_path / "out/return-visit Annexe.xlsx"
    book = load_workbook(annexe)
    filled = 0
    for sheet in book:
        for head in (cell for row in sheet.iter_rows(max_row=2) for cell in row):
            if str(head.value).startswith("Leaf thickness") or str(head.value).startswith("Thickness"):
                sheet.cell(head.row + 1, head.column).value = "44.45 mm"
                filled += 1
    assert filled == 1
    book.save(annexe)
    done = import_survey(yard, annexe, SurveyOptions(), who=WHO)
    assert done.changes.openings == {id_of(yard, "4")}
    fit_openings(yard, who=WHO)
    (four,) = check_openings(yard, [id_of(yard, "4")])
    assert four.fit.status == "fits"
    assert needs_of(four.fit, four.findings) == ()
    assert [(each.fact, set(each.alone), set(each.needed)) for each in missing(yard)] == [
        (THICK, {"3"}, {"2", "3"}), (RATING, {"1"}, {"1", "2"}),
    ]  # fmt: skip


def test_nothing_to_visit(yard, tmp_path):
    with yard.reading() as connection:
        inputs = list(read_inputs(connection))
    for given in inputs:
        edit_facts(yard, "opening", given.opening.id, {"rating": "none"}, who=WHO)
        edit_facts(yard, "leaf", given.leaves[0].id, {"thickness_mm": 44.45}, who=WHO)
    fit_openings(yard, who=WHO)
    assert missing(yard) == ()
    with pytest.raises(ValueRefusedError, match="no opening needs"):
        issue_return_visit(yard, tmp_path / "out")
    assert "Nothing is missing." in str(RETURN_VISIT.build(project_view(yard), None))


def test_the_sample_s_workbooks_come_back_without_a_difference(sample_file, tmp_path):
    with open_project(sample_file) as project:
        files = issue_return_visit(project, tmp_path / "out", paper="a4")
        visited = to_visit(project_view(project))
        assert visited
        books = [path for path in files if path.suffix == ".xlsx"]
        assert len(books) == len({each.given.opening.building for each in visited})
        for path in books:
            shown = preview_survey(project, path, SurveyOptions())
            assert (shown.problems, shown.preview.new, shown.preview.changed) == ((), (), ()), path


def test_the_place_of_a_thumb_turn_is_asked_for_and_not_that_of_its_lock(yard):
    """The lock's row says that it has a turn, and no row says where: it is the turn that somebody has to measure."""
    opening = id_of(yard, "5")
    with yard.reading() as connection:
        (given,) = read_inputs(connection, [opening])
    edit_facts(yard, "existing_item", given.items[0].id, {"thumb_turn": True}, who=WHO)
    fit_openings(yard, who=WHO)
    document = RETURN_VISIT.build(project_view(yard), None)
    rows = [row for section in document.sections for block in section.blocks for row in getattr(block, "rows", ())]
    asked = {row[4] for row in rows if str(row[3]).endswith(("From lock edge", "Above floor", "Footprint width"))}
    assert asked == {"Thumb turn of the lock"}


def test_paper_sheets_of_chosen_openings_or_blank_ones(yard, tmp_path):
    """Two pages an opening; 4 stands in the annexe, and nobody measured how thick its leaf is."""
    define_field(yard, "opening", "alarm_zone", "Alarm zone", "text", who=WHO)
    assert write_form(yard, tmp_path / "a.pdf", ids=[id_of(yard, "1"), id_of(yard, "4")], paper="a4") == 2
    pages = PdfReader(tmp_path / "a.pdf").pages
    assert [round(float(each)) for each in pages[0].mediabox[2:]] == [595, 842]
    assert len(pages) == 4
    first, _, fourth, _ = (page.extract_text() for page in pages)
    assert "Opening 1" in first
    assert "Annexe" in fourth
    assert "Alarm zone" in fourth
    assert "Leaf thickness\n44.5\n" in first
    assert "Leaf thickness\nmm\n" in fourth
    assert write_form(yard, tmp_path / "b.PDF", bare_unit="mm") == 0
    blank = PdfReader(tmp_path / "b.PDF").pages[0].extract_text()
    assert "Mark" in blank
    assert "Alarm zone" in blank
    assert "mm" in blank.split()
    assert "in" not in blank.split()


def test_beside_a_reader_there_is_no_leaf_and_the_wall_is_measured(yard):
    """4 is a reader at a lift: what the lead goes through there is the wall."""
    view = project_view(yard)
    reader = next(each for each in view.openings if each.mark == "4")
    given = replace(reader.given, opening=replace(reader.given.opening, form="lift"))
    changed = tuple(replace(each, given=given, points=()) if each.mark == "4" else each for each in view.openings)
    document = RETURN_VISIT.build(replace(view, openings=changed), None)
    tables = [block for section in document.sections for block in section.blocks if isinstance(block, Table)]
    ranked, *places = tables
    wall, leaf = "wall: Thickness of wall or enclosure", "leaf: Leaf thickness"
    assert ranked.rows[0][0] == f"{leaf}; {wall}"
    found = {(row[0], row[3]) for each in places for row in each.rows}
    assert {("4", wall), ("3", leaf)} <= found
    assert ("4", leaf) not in found
    alone = RETURN_VISIT.build(replace(view, openings=tuple(each for each in changed if each.mark == "4")), None)
    assert [row[0] for row in alone.sections[0].blocks[2].rows] == [wall]
