"""What-if, successors and fewest different parts by real clicks and keys, in the background, accepted or left."""

import shutil

import pytest
from openpyxl import load_workbook
from PySide6.QtCore import Qt

from hwsched.desktop.opening.question_form import CATALOGUE, LIMIT, PART, PREFER, SWITCH
from hwsched.desktop.opening.what_if_window import WhatIfWindow
from hwsched.desktop.parts.fewest_window import FewestWindow
from hwsched.model.project import open_project
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.project.history import history
from hwsched.operations.project.reading_settings import settings_of
from hwsched.paths import SAMPLE
from tests.desktop.conftest import checked_of, choose, idle

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def what_if(at_work):
    choose(at_work, "M004", "M005")
    at_work.fitting.act_what_if.trigger()
    return at_work.frame.side.windows[WhatIfWindow]


def steps(window):
    return len(history(window.frame.state.workspace.project))


def test_another_part_is_compared_left_and_accepted(at_work, qtbot, what_if):
    before = steps(at_work)
    assert not what_if.work.isEnabled()
    what_if.question.kind.setCurrentIndex(PART)
    what_if.question.role.setCurrentText("unit")
    qtbot.keyClicks(what_if.question.part.lineEdit(), "ARC-UN")
    qtbot.mouseClick(what_if.question.plus, LEFT)
    assert what_if.question.list.item(0).text() == "unit ARC-UN"
    assert what_if.scope.currentText() == "Selected in the register: 2"
    qtbot.mouseClick(what_if.work, LEFT)
    assert at_work.frame.jobs.busy
    assert what_if.stop.isVisible()
    idle(qtbot, at_work)
    assert what_if.said.text().startswith("2 of 2 openings would be different")
    line = what_if.differences.topLevelItem(0)
    assert "ARC-UW" in line.text(2)
    assert "ARC-UN" in line.text(3)
    assert "→" in line.text(4)
    assert {line.child(n).text(0) for n in range(line.childCount())} >= {"− unit ARC-UW", "+ unit ARC-UN"}
    assert steps(at_work) == before
    qtbot.mouseClick(what_if.take, LEFT)
    idle(qtbot, at_work)
    assert checked_of(at_work, "M004").stored
    assert "ARC-UN" in {part.part for part in checked_of(at_work, "M004").fit.parts}
    assert steps(at_work) == before + 1
    assert not what_if.take.isEnabled()
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert "ARC-UW" in {part.part for part in checked_of(at_work, "M004").fit.parts}


def test_limit_rule_and_preference_are_asked_together_and_accepted(at_work, qtbot, what_if):
    form = what_if.question
    form.kind.setCurrentIndex(LIMIT)
    form.limit.setCurrentIndex(form.limit.findData("trim-clear.clearance_mm"))
    form.value.selectAll()
    qtbot.keyClicks(form.value, "x")
    qtbot.mouseClick(form.plus, LEFT)
    assert form.list.count() == 0
    form.value.selectAll()
    qtbot.keyClicks(form.value, "60")
    qtbot.keyClick(form.value, Qt.Key.Key_Return)
    form.kind.setCurrentIndex(SWITCH)
    form.rule.setCurrentIndex(form.rule.findData("coin-cell-drain"))
    qtbot.mouseClick(form.plus, LEFT)
    form.kind.setCurrentIndex(PREFER)
    form.prefer.setCurrentIndex(form.prefer.findData("holes"))
    qtbot.mouseClick(form.plus, LEFT)
    form.prefer.setCurrentIndex(form.prefer.findData("stock"))
    qtbot.mouseClick(form.plus, LEFT)
    assert [form.list.item(n).text() for n in range(3)] == [
        "Unit clear of trim: Least distance of the unit from trim, lock, push plate or pull [mm]: 60",
        "Coin cell spared until the unit is fed: off", "What is in stock first",
    ]  # fmt: skip
    what_if.scope.setCurrentIndex(what_if.scope.count() - 1)
    qtbot.mouseClick(what_if.work, LEFT)
    idle(qtbot, at_work)
    assert what_if.differences.topLevelItemCount() > 10
    assert not settings_of(at_work.frame.state.workspace.project).limits
    qtbot.mouseClick(what_if.take, LEFT)
    idle(qtbot, at_work)
    held = settings_of(at_work.frame.state.workspace.project)
    assert (dict(held.limits), held.rules_off, held.prefer) == (
        {"trim-clear.clearance_mm": 60.0}, {"coin-cell-drain"}, "stock",
    )  # fmt: skip
    assert form.rule.itemText(form.rule.findData("coin-cell-drain")).endswith("(off now)")


@pytest.mark.usefixtures("sample_file")
def test_a_building_is_cancelled_and_nothing_changes(at_work, qtbot, what_if):
    what_if.question.kind.setCurrentIndex(PREFER)
    qtbot.mouseClick(what_if.question.plus, LEFT)
    at = what_if.scope.findText("Mill House", Qt.MatchFlag.MatchStartsWith)
    what_if.scope.setCurrentIndex(at)
    assert len(what_if.scope.ids()) == 80
    qtbot.mouseClick(what_if.work, LEFT)
    qtbot.mouseClick(what_if.stop, LEFT)
    idle(qtbot, at_work)
    assert what_if.said.text().startswith("Stopped")
    assert what_if.answer is None
    assert not what_if.take.isEnabled()
    assert not what_if.stop.isVisible()


@pytest.mark.usefixtures("sample_file")
def test_closing_the_window_stops_its_work(at_work, qtbot, what_if):
    what_if.question.kind.setCurrentIndex(PREFER)
    qtbot.mouseClick(what_if.question.plus, LEFT)
    what_if.scope.setCurrentIndex(what_if.scope.count() - 1)
    qtbot.mouseClick(what_if.work, LEFT)
    assert at_work.frame.jobs.busy
    qtbot.mouseClick(at_work.centre.leave, LEFT)
    idle(qtbot, at_work)
    assert WhatIfWindow not in at_work.frame.side.windows


@pytest.fixture
def other_unit(at_work, qtbot, what_if):
    """The answer to another unit at two openings."""
    what_if.question.kind.setCurrentIndex(PART)
    what_if.question.role.setCurrentText("unit")
    qtbot.keyClicks(what_if.question.part.lineEdit(), "ARC-UN")
    qtbot.mouseClick(what_if.question.plus, LEFT)
    qtbot.mouseClick(what_if.work, LEFT)
    idle(qtbot, at_work)
    return what_if.answer


def test_an_answer_is_bound_to_what_it_compared_and_to_nothing_else(at_work, qtbot, what_if, other_unit):
    at_work.sheet.edited.emit("opening", other_unit.asked[0], "notes", "looked at")
    assert "changed since" in what_if.said.text()
    before = steps(at_work)
    qtbot.mouseClick(what_if.take, LEFT)
    idle(qtbot, at_work)
    assert what_if.said.text().startswith("Accepted")
    assert steps(at_work) == before + 1


def test_an_answer_that_would_be_another_one_is_shown_again(at_work, qtbot, what_if, other_unit, corner_file):
    with open_project(corner_file) as other:
        choose_part(other, other_unit.asked[0], "unit", "ARC-UN", who="ben")
    before = steps(at_work)
    qtbot.mouseClick(what_if.take, LEFT)
    idle(qtbot, at_work)
    assert what_if.said.text().startswith("Not done: what was shown no longer holds, M004 changed meanwhile")
    assert steps(at_work) == before
    assert [each.mark for each in what_if.answer.differences] == ["M005"]
    assert what_if.differences.topLevelItemCount() == 1
    qtbot.mouseClick(what_if.take, LEFT)
    idle(qtbot, at_work)
    assert what_if.said.text().startswith("Accepted")
    assert "ARC-UN" in {part.part for part in checked_of(at_work, "M005").fit.parts}


@pytest.mark.usefixtures("sample_file")
def test_another_catalogue_and_its_successors_are_compared(at_work, qtbot, what_if, tmp_path):
    path = tmp_path / "next year.xlsx"
    shutil.copy(SAMPLE / "catalogue.xlsx", path)
    book = load_workbook(path)
    sheet = book["Surface units"]
    heads = {cell.value: cell.column for cell in sheet[1]}
    (row,) = (cell.row for cell in sheet["A"] if cell.value == "ARC-UW")
    sheet.cell(row, heads["List price"]).value = 999
    sheet.cell(row, heads["Superseded by"]).value = "ARC-UN"
    book.save(path)
    what_if.question.kind.setCurrentIndex(CATALOGUE)
    qtbot.keyClicks(what_if.question.file, str(path))
    qtbot.mouseClick(what_if.question.plus, LEFT)
    qtbot.mouseClick(what_if.work, LEFT)
    idle(qtbot, at_work)
    assert what_if.said.text().startswith("2 of 2")
    what_if.question.take_out()
    at_work.parts.take_catalogue(path)
    idle(qtbot, at_work)
    qtbot.mouseClick(what_if.last, LEFT)
    idle(qtbot, at_work)
    assert "use a superseded part" in what_if.said.text()
    assert what_if.differences.topLevelItemCount() > 10
    assert what_if.differences.topLevelItem(0).text(2).endswith("unit ARC-UW")
    assert not what_if.take.isEnabled()


@pytest.fixture
def fewest(at_work):
    at_work.beside.acts["fewest"].trigger()
    return at_work.frame.side.windows[FewestWindow]


def test_few_different_parts_are_found_left_and_accepted(at_work, qtbot, fewest):
    before = steps(at_work)
    qtbot.mouseClick(fewest.work, LEFT)
    assert at_work.frame.jobs.busy
    idle(qtbot, at_work)
    found = fewest.found
    assert len(found.after_kinds) < len(found.before_kinds)
    assert f"different parts: {len(found.before_kinds)} → {len(found.after_kinds)}" in fewest.said.text()
    assert "proven best" in fewest.said.text()
    assert fewest.list.topLevelItem(0).text(2) == str(len(found.after_kinds))
    assert steps(at_work) == before
    opening, lines = next(iter(found.choices.items()))
    qtbot.mouseClick(fewest.take, LEFT)
    idle(qtbot, at_work)
    assert steps(at_work) == before + 1
    checked = at_work.frame.state.workspace.checked[opening]
    assert checked.stored
    assert {(line.role, line.part) for line in lines} <= {(part.role, part.part) for part in checked.fit.parts}


def test_a_price_or_a_number_of_parts_is_wanted(at_work, qtbot, fewest):
    fewest.by_price.click()
    assert not fewest.work.isEnabled()
    qtbot.keyClicks(fewest.price, "0")
    qtbot.mouseClick(fewest.work, LEFT)
    idle(qtbot, at_work)
    at_nothing = len(fewest.found.after_kinds)
    fewest.by_most.click()
    fewest.most.setValue(at_nothing)
    qtbot.mouseClick(fewest.work, LEFT)
    idle(qtbot, at_work)
    assert len(fewest.found.after_kinds) <= at_nothing
    fewest.most.setValue(1)
    assert fewest.found is None
    qtbot.mouseClick(fewest.work, LEFT)
    idle(qtbot, at_work)
    assert at_work.frame.telling.told.isVisible()
    at_work.frame.telling.told.close()
    assert fewest.found is None


@pytest.mark.usefixtures("sample_file")
def test_looking_for_few_parts_is_cancelled(at_work, qtbot, fewest):
    qtbot.mouseClick(fewest.work, LEFT)
    qtbot.mouseClick(fewest.stop, LEFT)
    idle(qtbot, at_work)
    assert fewest.said.text().startswith("Stopped")
    assert fewest.found is None
