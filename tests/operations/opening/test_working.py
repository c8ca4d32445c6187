"""Fitting, checking and printing as verbs: stored once, out of date when a fact changes, whole or not at all."""

import pytest
from openpyxl import load_workbook
from sqlalchemy import event

from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import open_project
from hwsched.model.queries import read_fits, read_inputs
from hwsched.operations.findings.checking import Checker, check_openings, look_again
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.project.history import undo
from hwsched.operations.project.settings import set_settings
from hwsched.operations.release.issued_documents import document_kind, issue
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.editing import edit_facts
from hwsched.values.input_key import input_key
from hwsched.writing import UnwritableError

MOST_ASKED = 28
"""Statements of one edit of a leaf and of what the rules say of it."""


@pytest.fixture
def project(sample_file):
    opened = open_project(sample_file)
    yield opened
    opened.close()


def of_mark(project, mark):
    with project.reading() as connection:
        return next(given for given in read_inputs(connection) if given.opening.mark == mark)


def test_fitting_again_changes_nothing(project):
    changes, fit_part = fit_openings(project, who="t")
    assert changes.number is None
    assert len(fit_part) > 150


def test_an_edit_and_what_is_said_of_it_ask_the_database_little(project):
    """Nothing is read twice: an edit is waited for. Counted is the second, when what seldom changes is known."""
    given, checker, asked = of_mark(project, "M004"), Checker(), []
    event.listen(project.engine, "before_cursor_execute", lambda *told: asked.append(f"{told[2]} {told[3]}"))
    for thick in (57.15, 44.45):
        asked.clear()
        edit_facts(project, "leaf", given.leaves[0].id, {"thickness_mm": thick}, who="t")
        look_again(project, [given.opening.id], checker=checker)
    assert len(asked) <= MOST_ASKED, "\n".join(asked)
    assert len(set(asked)) == len(asked)


def test_openings_alike_share_one_fit(project):
    with project.reading() as connection:
        fits = read_fits(connection)
        keys = {given.opening.id: input_key(given) for given in read_inputs(connection)}
    by_key = {}
    for opening, stored in fits.items():
        assert by_key.setdefault(keys[opening], stored).pointer == stored.pointer
    assert len(by_key) < len(fits)


def test_a_changed_fact_puts_the_fit_out_of_date_until_it_is_fitted_again(project):
    given = of_mark(project, "M004")
    edit_facts(project, "leaf", given.leaves[0].id, {"thickness_mm": 57.15}, who="t")
    (checked,) = check_openings(project, [given.opening.id])
    assert checked.fit is None
    assert checked.findings[0].rule == "fit-out-of-date"
    (looked,) = look_again(project, [given.opening.id], checker=Checker())
    assert looked.fit is not None
    assert not looked.stored
    fit_openings(project, [given.opening.id], who="t")
    (fresh,) = check_openings(project, [given.opening.id])
    assert fresh.fit == looked.fit
    undo(project, who="t")
    undo(project, who="t")
    (back,) = check_openings(project, [given.opening.id])
    assert back.fit is not None


def test_one_check_equals_the_whole_check(project):
    whole = {each.given.opening.id: each.findings for each in check_openings(project)}
    checker = Checker()
    for opening in list(whole)[::7]:
        (one,) = check_openings(project, [opening], checker=checker)
        assert one.findings == whole[opening]


def test_a_rule_switched_off_and_a_changed_limit_show(project):
    before = {f.rule for each in check_openings(project) for f in each.findings}
    assert "battery-life" in before or "coin-cell-drain" in before
    rule = "coin-cell-drain" if "coin-cell-drain" in before else "battery-life"
    set_settings(project, who="t", rules_off={rule: True})
    fit_openings(project, who="t")
    assert rule not in {f.rule for each in check_openings(project) for f in each.findings}
    assert rule in project_view(project).rules_off


def test_cancelled_fitting_stores_nothing(project):
    set_settings(project, who="t", prefer="holes")
    changes, fit_part = fit_openings(project, who="t", cancelled=lambda: True)
    assert (changes.number, fit_part) == (None, [])


def test_unknown_documents_formats_and_folders_are_refused(project, tmp_path):
    view = project_view(project, [])
    with pytest.raises(ValueRefusedError, match="schedule"):
        document_kind("poem")
    with pytest.raises(ValueRefusedError, match="pdf"):
        issue(view, document_kind("packets"), tmp_path, ["xlsx"])
    (tmp_path / "file").write_text("x")
    with pytest.raises(UnwritableError, match="cannot be written"):
        issue(view, document_kind("schedule"), tmp_path / "file")


def test_text_that_looks_like_a_formula_stays_text(project, tmp_path):
    given = of_mark(project, "M004")
    edit_facts(project, "opening", given.opening.id, {"mark": "=1+1", "room_to": "@home"}, who="t")
    issue(project_view(project), document_kind("schedule"), tmp_path, ["xlsx"])
    book = load_workbook(tmp_path / "schedule.xlsx")
    cells = [cell for sheet in book for row in sheet for cell in row if cell.value is not None]
    assert any(cell.value == "=1+1" and cell.data_type == "s" for cell in cells)
    assert not any(cell.data_type == "f" for cell in cells)


def test_no_two_marks_share_a_file(project, tmp_path):
    with project.reading() as connection:
        inputs = list(read_inputs(connection))[:4]
    for given, mark in zip(inputs, ("../../x", "a/b", "a:b", "A_b"), strict=True):
        edit_facts(project, "opening", given.opening.id, {"mark": mark}, who="t")
    files = issue(project_view(project, [c.opening.id for c in inputs]), document_kind("packets"), tmp_path)
    assert len({str(path).casefold() for path in files}) == 4
    assert all(path.parent == tmp_path / "packets" and path.is_file() for path in files)


def test_templates_hold_for_openings_alike_and_name_their_marks(project, tmp_path):
    from pypdf import PdfReader

    from hwsched.operations.release.issued_documents import issue_by_name
    from hwsched.operations.release.issued_templates import templates

    view = project_view(project)
    drawn = templates(view)
    drilled = [o for o in view.openings if o.fit and o.fit.status == "fits" and o.fit.holes and o.lock_leaf]
    assert 1 < len(drawn) < len(drilled)
    (path,) = issue_by_name(view, "templates", tmp_path)
    text = " ".join(page.extract_text() for page in PdfReader(path).pages)
    assert all(opening.mark in text for opening in drilled)
    with pytest.raises(ValueRefusedError, match="no opening"):
        issue_by_name(project_view(project, []), "templates", tmp_path)


@pytest.mark.parametrize("dark", [False, True])
def test_every_view_is_drawn_as_svg(project, tmp_path, dark):
    from xml.etree import ElementTree

    from hwsched.operations.opening.drawing_views import VIEWS, draw

    for view in VIEWS:
        (path,) = draw(project, "M006", view, tmp_path / f"{view}.svg", dark=dark)
        assert ElementTree.parse(path).getroot().tag.endswith("svg")
    with pytest.raises(ValueRefusedError, match="section"):
        draw(project, "M006", "ceiling", tmp_path / "x.svg")
