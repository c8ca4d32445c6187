"""What is chosen keeps its colours: a state and a severity are told there as anywhere else."""

from dataclasses import replace
from decimal import Decimal

import pytest
from PySide6.QtGui import QColor, QImage
from PySide6.QtWidgets import QHBoxLayout, QWidget

from hwsched.desktop.findings.rule_page import RulePage
from hwsched.desktop.looks.severities import COLOURS, severity_word
from hwsched.desktop.looks.tokens import colour
from hwsched.desktop.parts.part_table import columns_of
from hwsched.desktop.widgets.buttons import button, let_lead
from hwsched.desktop.widgets.fact_line import FactLine
from hwsched.desktop.widgets.lines import Lines
from hwsched.rules import in_rulebook
from hwsched.survey import LEAF
from tests.desktop.conftest import choose, look_put_on


@pytest.fixture
def looked(at_work, qapp):
    """The window with the look put on."""
    with look_put_on(qapp, at_work.frame.preferences):
        at_work.resize(1366, 768)
        yield at_work


def holds(image: QImage, wanted: QColor) -> bool:
    """Whether a colour is in a picture, as it is said and not mixed with another one."""
    return any(
        image.pixelColor(x, y).rgb() == wanted.rgb() for x in range(image.width()) for y in range(image.height())
    )


def cell_of(view, index):
    return view.viewport().grab(view.visualRect(index)).toImage()


def test_the_state_of_a_chosen_opening_has_its_colour_and_shape(looked, qtbot):
    grid = looked.openings.grid
    looked.frame.go("openings")
    place = grid.model.place_of("result.state")
    mark = next(each.given.opening.mark for each in looked.frame.state.workspace.checked.values() if not each.kept_back
                and each.fit is not None and each.fit.status == "fits")  # fmt: skip
    choose(looked, mark)
    qtbot.wait(0)
    index = grid.table.selectionModel().selectedRows()[0].siblingAtColumn(place)
    assert grid.table.selectionModel().isSelected(index)
    grid.table.scrollTo(index)
    shown = cell_of(grid.table, index)
    assert holds(shown, colour("tint")), "nothing is chosen there"
    assert holds(shown, colour("fits"))


@pytest.mark.parametrize("severity", ["error", "warning"])
def test_a_severity_is_coloured_in_small_lists_chosen_or_not(looked, qtbot, severity):
    lines = Lines(("Severity", "Finding"), 1)
    qtbot.addWidget(lines)
    lines.resize(400, 200)
    lines.show_rows([(severity_word(severity), "said")], inks=[COLOURS[severity]])
    lines.show()
    index = lines.model().index(0, 0)
    # Letters are painted with soft edges; the middle of a stem has the colour as it is said.
    near = [colour(COLOURS[severity]), colour("text")]
    for chosen in (False, True):
        lines.clearSelection()
        if chosen:
            lines.selectRow(0)
        shown = cell_of(lines, index)
        told = [far(shown, each) for each in near]
        assert told[0] < told[1], (chosen, told)


def far(image: QImage, wanted: QColor) -> int:
    """How far the nearest pixel of a picture is from a colour."""
    pixels = [image.pixelColor(x, y) for x in range(image.width()) for y in range(image.height())]
    return min(
        abs(each.red() - wanted.red()) + abs(each.green() - wanted.green()) + abs(each.blue() - wanted.blue())
        for each in pixels
    )


def test_one_button_of_a_pane_has_the_accent_and_hands_it_on(looked, qtbot):
    panel = QWidget()
    qtbot.addWidget(panel)
    row = QHBoxLayout(panel)
    look, take = button("Look", lambda: None), button("Accept", lambda: None)
    for each in (look, take):
        row.addWidget(each)
    let_lead(look, take)
    panel.show()
    qtbot.wait(0)
    assert [holds(each.grab().toImage(), colour("accent")) for each in (look, take)] == [True, False]
    let_lead(take, look)
    qtbot.wait(0)
    assert [holds(each.grab().toImage(), colour("accent")) for each in (look, take)] == [False, True]
    take.setEnabled(False)
    qtbot.wait(0)
    assert not holds(take.grab().toImage(), colour("accent")), "what cannot be pressed leads nowhere"


def test_a_flat_button_has_no_box_until_the_hand_is_on_it(looked, qtbot):
    edge = colour("edge")
    assert not holds(looked.centre.own.grab().toImage(), edge)
    boxed = button("Boxed", lambda: None)
    qtbot.addWidget(boxed)
    boxed.show()
    assert holds(boxed.grab().toImage(), edge)


def test_a_number_has_its_unit_beside_it_unless_it_says_one(looked, qtbot):
    thickness = LEAF.attribute("thickness_mm")
    line = FactLine(thickness, '1 3/4"', "fraction", "in")
    qtbot.addWidget(line)
    line.show()
    assert not line.unit.isVisible()
    line.put("2")
    assert line.unit.isVisible()
    assert line.unit.text() == "in"
    line.put("44 mm")
    assert not line.unit.isVisible()


def test_a_page_of_a_rule_takes_none_of_its_words_for_markup(looked, qtbot):
    rule = in_rulebook("trim-clear")
    marked = replace(rule, title="Unit <b>clear</b> of trim & lock", basis="what <i>is</i> said")
    page = RulePage()
    qtbot.addWidget(page)
    page.show_rule(marked, rule.declared, off=True)
    said = page.toPlainText()
    assert marked.title in said
    assert marked.basis in said
    assert "Switched off" in said
    assert all(limit.text in said and f"{limit.value:g} {limit.unit}" in said for limit in rule.limits)


def test_prices_below_one_another_have_their_points_below_one_another(looked):
    held = next(each for each in columns_of("", (), {}, "fraction") if each.name == "list_price")
    assert [held.text(Decimal(each)) for each in ("309", "205.5", "4.20", "0.125")] == [
        "309.00", "205.50", "4.20", "0.125",
    ]  # fmt: skip
    assert held.text(None) == ""
