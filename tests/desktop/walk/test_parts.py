"""Work at the parts: where one is used, an edit with what it changes, a set, what all of it costs."""

from decimal import Decimal

from hwsched.operations.parts.hardware_sets import set_named
from hwsched.operations.parts.part_edits import part_form
from tests.desktop.conftest import checked_of
from tests.desktop.walk.hands import KEY
from tests.desktop.walk.test_opening import line_of

CABINET = "ARC-C22"
"""Only the cabinet's fit stands on parts of its kind."""


def part_line(window, number):
    return window.grid.table, window.grid.model.index(window.grid.model.row_of_id(number), 0)


def test_where_a_part_is_used_an_edit_of_it_and_what_it_costs(hands, at_work):
    hands.command("Catalogue")
    parts = at_work.frame.pages.widgets["catalogue"]
    hands.field(parts.search, "cabinet 22")
    hands.field(parts.search, CABINET)
    hands.line(*part_line(parts, CABINET))
    uses = {
        each.given.opening.mark
        for each in at_work.frame.state.workspace.checked.values()
        if each.fit and CABINET in {part.part for part in each.fit.parts}
    }
    hands.page(parts.pages, "Where used")
    hands.done()
    group = parts.use.tree.topLevelItem(0)
    assert {group.child(n).text(0) for n in range(group.childCount())} == uses
    hands.page(parts.pages, "Facts")
    hands.field(parts.facts.lines["list_price"].field, "250")
    assert "1 edit not taken yet" in parts.heading.text()
    hands.press(parts.look)
    hands.done()
    lines = parts.differences
    assert {lines.topLevelItem(n).text(0) for n in range(lines.topLevelItemCount())} == uses
    held = part_form(at_work.frame.state.workspace.project).catalogue.get(CABINET).list_price
    assert held != Decimal(250), "nothing is written before it was seen"
    hands.press(parts.take)
    hands.done()
    assert part_form(at_work.frame.state.workspace.project).catalogue.get(CABINET).list_price == Decimal(250)
    hands.command("Cost")
    hands.done()
    cost = at_work.frame.pages.widgets["cost"]
    table = cost.tables["building"].grid.table
    assert Decimal(table.model().index(0, 2).data().replace(",", "")) > 0
    assert cost.tables["building"].total.text().startswith("Total ")
    hands.page(cost.pages, "By opening")
    lines = cost.tables["opening"]
    mark = lines.model.contents.row_at(3).key
    hands.open(lines.grid.table, lines.model.index(3, 0))
    assert at_work.frame.state.checked.given.opening.mark == mark
    hands.command("Cost")
    hands.done()
    hands.page(cost.pages, "Terms")
    hands.field(cost.terms.labour, "80")
    hands.press(cost.set)
    hands.done()
    assert "labour unknown" not in cost.said.text()


def test_a_set_is_made_of_openings_given_and_looked_at_before_it_is_changed(hands, at_work):
    hands.line(*line_of(at_work, "M004"))
    hands.more(*line_of(at_work, "M005"))
    hands.command("Hardware sets")
    sets = at_work.frame.pages.widgets["sets"]
    hands.press(sets.new)
    dialog = sets.new_set
    hands.wake()
    hands.field(dialog.name, "Corridor")
    hands.press(dialog.ok)
    hands.done()
    project = at_work.frame.state.workspace.project
    assert set_named(project, "Corridor").marks == ("M004", "M005")
    lines = sets.lines
    row = next(n for n in range(lines.table.rowCount()) if lines.table.cellWidget(n, 0).currentText() == "unit")
    box = lines.table.cellWidget(row, 1)
    before = box.number()
    hands.field(box.lineEdit(), "ARC-UN")
    hands.key(KEY.Key_Tab)
    hands.press(sets.look)
    hands.done()
    effects = sets.effects.model
    assert {effects.index(n, 0).data() for n in range(effects.rowCount())} == {"M004", "M005"}
    assert before in {line.part for line in set_named(project, "Corridor").lines}
    hands.line(sets.effects.table, effects.index(1, 0))
    hands.press(sets.take)
    hands.done()
    assert "ARC-UN" in {part.part for part in checked_of(at_work, "M004").fit.parts}
    hands.undo()
    assert before in {part.part for part in checked_of(at_work, "M004").fit.parts}
