"""What forms say comes through the catalogue: the facts of a part of each kind, each calculator with its answer."""

from PySide6.QtCore import Qt

from hwsched.calc.calculators import CALCULATORS
from tests.desktop.conftest import idle
from tests.desktop.seen_texts import cells, faults, headings, unsaid_cells, written
from tests.language.plainness import longest_first, unsaid

LEFT = Qt.MouseButton.LeftButton
UNITS = (" [in]", "mA", "mAh", "Ah")


def test_what_is_asked_of_a_part_of_each_kind_comes_through_the_catalogue(whole, qtbot):
    data, found, seen = longest_first({*written(whole), *UNITS}), {}, set()
    whole.frame.go("catalogue")
    idle(qtbot, whole)
    page = whole.frame.pages.widgets["catalogue"]
    for _ in range(1, page.kinds.count()):
        qtbot.keyClick(page.kinds, Qt.Key.Key_Down)
        table = page.grid.table
        if not table.model().rowCount():
            continue
        qtbot.mouseClick(table.viewport(), LEFT, pos=table.visualRect(table.model().index(0, 0)).center())
        qtbot.wait(0)
        seen.add(page.kinds.currentData())
        found |= dict.fromkeys(faults(page.facts, data), page.kinds.currentText())
    assert len(seen) > 20
    assert not found, "\n".join(f"{where}: {what}" for what, where in found.items())


def texts_in(held):
    """Every text that stands in an example of a calculator: it is what a person would type."""
    if isinstance(held, dict):
        held = [*held, *held.values()]
    if isinstance(held, (list, tuple)):
        return {text for each in held for text in texts_in(each)}
    return {held} if isinstance(held, str) else set()


def test_each_calculator_and_its_answer_come_through_the_catalogue(whole, qtbot):
    whole.frame.go("calculators")
    page, found, named = whole.frame.pages.widgets["calculators"], {}, set()
    page.names.setFocus()
    for at, calculator in enumerate(CALCULATORS):
        if at:
            qtbot.keyClick(page.names, Qt.Key.Key_Down)
        qtbot.mouseClick(page.example, LEFT)
        qtbot.waitUntil(lambda: bool(page.answer.basis.text()))
        data = longest_first({*texts_in(calculator.example), *UNITS})
        said = [*faults(page, data), *unsaid_cells(page.answer, data)]
        said += [each for table in page.form.tables.values() for each in headings(table) if unsaid(each, data)]
        found |= dict.fromkeys(said, calculator.name)
        # What was typed, as names of parts are, stays as it was typed.
        shown = "\n".join((page.answer.said.text(), *cells(page.answer)))
        names = {
            each for each in texts_in(calculator.example) & texts_in(calculator.run(calculator.example)) if " " in each
        }
        assert all(each in shown for each in names), calculator.name
        named |= names
    assert named
    assert not found, "\n".join(f"{where}: {what}" for what, where in found.items())
