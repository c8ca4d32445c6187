"""Work at one opening and at two: why, another part, a place by drag and nudge, compared, an old step taken back."""

import pytest
from PySide6.QtWidgets import QApplication

from hwsched.drawings.layers import UNIT
from hwsched.operations.project.history import history
from tests.desktop.conftest import checked_of
from tests.desktop.walk.hands import ALT, KEY, Mouse


def line_of(at_work, mark):
    grid = at_work.openings.grid
    id_ = checked_of(at_work, mark).given.opening.id
    return grid.table, grid.model.index(grid.model.row_of_id(id_), 0)


def cell(table, row, column=0):
    return table.model().index(row, column)


def row_of(table, text, column=0):
    return next(row for row in range(table.rowCount()) if table.item(row, column).text() == text)


def test_why_another_part_and_a_place_by_hand(hands, at_work):
    hands.line(*line_of(at_work, "M004"))
    sheet = at_work.sheet
    hands.page(sheet.pages, "Parts")
    parts = sheet.parts_page
    hands.line(parts.table, cell(parts.table, row_of(parts.table, "unit")))
    hands.press(parts.buttons["Why this part?"])
    why = at_work.frame.pages.widgets["why"]
    assert why.isVisible()
    assert why.chain().about == "unit"
    assert why.tree.topLevelItemCount() > 1
    hands.command("Back")
    # Another part, of those that fit.
    before = next(part.part for part in checked_of(at_work, "M004").fit.parts if part.role == "unit")
    hands.line(parts.table, cell(parts.table, row_of(parts.table, "unit")))
    hands.press(parts.buttons["Choose…"])
    hands.done()
    pane = sheet.candidates
    wanted = row_of(pane.table, "fits")
    part = pane.table.item(wanted, 1).text()
    hands.line(pane.table, cell(pane.table, wanted, 1))
    hands.press(pane.take)
    hands.done()
    assert not pane.isVisible()
    assert sheet.isAncestorOf(QApplication.focusWidget()), "one goes on where one was"
    now = {each.part for each in checked_of(at_work, "M004").fit.parts}
    assert part in now
    assert before not in now
    hands.undo()
    # The unit is moved on the drawing, and taken back.
    hands.page(sheet.pages, "Drawing")
    view, place = sheet.view, checked_of(at_work, "M004").fit.placement
    if isinstance(hands, Mouse):
        hands.double(view, view.place_of(UNIT, "inside").toPoint())
        for _ in range(6):
            hands.press(tool(sheet.drawing, "+"))
        start = view.place_of(UNIT, "inside").toPoint()
        hands.drag(view, start, start + hands.px(view, 2.0, 0.0), ALT)
    else:
        hands.to(view)
        hands.key(KEY.Key_PageDown)
        hands.key(KEY.Key_Right, times=2)
        assert sheet.state.text().startswith("Fits here")
        hands.key(KEY.Key_Return)
    hands.done()
    moved = checked_of(at_work, "M004").given.placed
    assert moved is not None
    assert moved.x_mm < place.x_mm
    hands.undo()
    assert checked_of(at_work, "M004").given.placed is None


def test_what_was_done_at_the_bench_is_written_down_per_piece(hands, at_work):
    hands.line(*line_of(at_work, "M004"))
    sheet = at_work.sheet
    hands.page(sheet.pages, "Parts")
    hands.page(sheet.folded, "Pieces")
    page, role = sheet.pieces_page, 1
    hands.line(page.table, cell(page.table, row_of(page.table, "battery", role), role))
    assert not page.buttons["Programmed"].isEnabled()
    hands.line(page.table, cell(page.table, row_of(page.table, "cylinder", role), role))
    assert (page.buttons["Built"].isEnabled(), page.buttons["Tested"].isEnabled()) == (True, False)
    hands.line(page.table, cell(page.table, row_of(page.table, "unit", role), role))
    hands.press(page.buttons["Programmed"])
    hands.done()

    def state():
        return page.table.item(row_of(page.table, "unit", role), 7).text()

    assert state() == "planned, programmed"
    hands.line(page.table, cell(page.table, row_of(page.table, "unit", role), role))
    assert page.buttons["Programmed"].isChecked()
    hands.press(page.buttons["Tested"])
    hands.done()
    assert state() == "planned, programmed, tested"
    hands.line(page.table, cell(page.table, row_of(page.table, "unit", role), role))
    hands.press(page.buttons["Programmed"])
    hands.done()
    assert state() == "planned, tested"
    hands.undo()
    assert state() == "planned, programmed, tested"


def test_two_are_compared_and_an_old_step_is_taken_back_with_its_values_seen(hands, at_work):
    hands.line(*line_of(at_work, "M004"))
    hands.more(*line_of(at_work, "M116"))
    several = at_work.several.several
    assert several.isVisible()
    assert {"M004", "M116"} == set(several.title.text().split(" and "))
    table = several.compare.table
    marks = [table.item(row, 0).text() for row in range(table.rowCount())]
    assert marks[0] == "≠"
    hands.press(several.compare.only)
    assert 0 < table.rowCount() == marks.count("≠") < len(marks)
    # Two facts of one opening are typed, and the older step is taken back alone.
    hands.line(*line_of(at_work, "M004"))
    sheet = at_work.sheet
    hands.page(sheet.pages, "Facts")
    steps = len(history(at_work.frame.state.workspace.project))
    thick = checked_of(at_work, "M004").given.leaves[0].thickness_mm
    for label, text in (("Leaf thickness", "1 7/8"), ("Undercut", "7/8")):
        hands.line(sheet.facts, fact(sheet.facts, label))
        hands.edit(text)
    leaf = checked_of(at_work, "M004").given.leaves[0]
    assert (leaf.thickness_mm, leaf.undercut_mm) == pytest.approx((47.625, 22.225))
    hands.page(sheet.pages, "History")
    page = sheet.past_page
    seen = page.tree.topLevelItem(1).child(0)
    assert [seen.text(column) for column in (1, 2)] == ['1 3/4"', '1 7/8"']
    hands.line(page.tree, page.tree.topLevelItem(1))
    hands.press(page.back)
    hands.done()
    leaf = checked_of(at_work, "M004").given.leaves[0]
    assert (leaf.thickness_mm, leaf.undercut_mm) == pytest.approx((thick, 22.225))
    assert len(history(at_work.frame.state.workspace.project)) == steps + 3


def tool(page, text):
    return next(each for each in page.tools.children() if getattr(each, "text", str)() == text)


def fact(form, label):
    found = [
        form.topLevelItem(n).child(k)
        for n in range(form.topLevelItemCount())
        for k in range(form.topLevelItem(n).childCount())
        if form.topLevelItem(n).child(k).text(0) == label
    ]
    return form.indexFromItem(found[0], 1)
