"""Every text that a person can see in any place comes through the catalogue: widgets, lists, headings, menus, tips."""

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QApplication, QStackedWidget, QTabWidget

from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.grid.grid import Grid
from hwsched.rules import RULEBOOK
from hwsched.rules.page import page_of
from tests.desktop.conftest import choose, idle
from tests.desktop.seen_texts import faults, headings, unsaid_cells, written
from tests.language.plainness import unsaid


def pages_of(part):
    """Show each page of what stands behind tabs, one after the other, and yield once for each."""
    held = [each for each in part.findChildren(QTabWidget) if each.isVisible()]
    if not held:
        yield
        return
    for tabs in held:
        for at in range(tabs.count()):
            tabs.setCurrentIndex(at)
            yield


def columns_of(part, data):
    """Tell each text of every column that a grid offers, shown or not, that did not come through the catalogue."""
    for grid in part.findChildren(Grid):
        contents = grid.model.contents
        for column in contents.known.values():
            texts = {column.text(value) for value in contents.values(column.name)} | {column.told()}
            yield from (f"{column.name}: {left!r} in {text!r}" for text in texts if (left := unsaid(text, data)))


def all_of(part, data):
    """Tell whatever of a part of the window did not come through the catalogue."""
    for _ in range(4):
        QApplication.processEvents()
    yield from faults(part, data)
    yield from unsaid_cells(part, data)
    yield from (f"heading {left!r} in {text!r}" for text in headings(part) if (left := unsaid(text, data)))


def gone_to(window, qtbot, place):
    """Go to a place, and wait until all of it is shown."""
    window.frame.go(place)
    idle(qtbot, window)
    reading = getattr(window.frame.pages.widgets.get("today"), "_reading", None)
    qtbot.waitUntil(lambda: reading is None or not reading.busy)
    return window.frame.pages.widgets[place]


def test_whatever_stands_in_any_place_comes_through_the_catalogue(whole, qtbot):
    data, found, seen = written(whole), {}, 0
    for place in PLACES:
        whole.frame.go(place.name)
        idle(qtbot, whole)
        reading = getattr(whole.frame.pages.widgets.get("today"), "_reading", None)
        qtbot.waitUntil(lambda reading=reading: reading is None or not reading.busy)
        for _ in pages_of(whole.centre):
            idle(qtbot, whole)
            seen += 1
            for fault in all_of(whole.centre, data):
                found.setdefault(fault, place.name)
        for fault in columns_of(whole.centre, data):
            found.setdefault(fault, place.name)
    for fault in all_of(whole, data):
        found.setdefault(fault, "frame")
    assert seen > 50
    assert not found, "\n".join(f"{where}: {what}" for what, where in found.items())


def test_whatever_stands_beside_chosen_openings_comes_through_the_catalogue(whole, qtbot):
    data, found, seen = written(whole), {}, 0
    whole.frame.go("openings")
    marks = [each.given.opening.mark for each in whole.frame.state.workspace.checked.values()]
    for chosen in (marks[:1], marks[4:5], marks[1:3], marks[2:9]):
        choose(whole, *chosen)
        idle(qtbot, whole)
        for _ in pages_of(whole.inspector):
            idle(qtbot, whole)
            seen += 1
            for fault in all_of(whole.inspector, data):
                found.setdefault(fault, ", ".join(chosen))
    assert seen > 12
    assert not found, "\n".join(f"{where}: {what}" for what, where in found.items())


def test_every_command_comes_through_the_catalogue(whole):
    data, acts = written(whole), [each for each in whole.findChildren(QAction) if each.text()]
    assert len(acts) > 80
    found = [
        f"{left!r} in {text!r}"
        for each in acts
        for text in (each.text(), each.toolTip(), each.statusTip())
        if (left := unsaid(text, data))
    ]
    assert not found, "\n".join(found)


def test_what_if_names_roles_preferences_and_what_is_asked_through_the_catalogue(whole, qtbot):
    form = gone_to(whole, qtbot, "what-if").question
    stack = form.findChild(QStackedWidget)
    form.part.set_number(form.part.itemText(0).split("  ")[0])
    form.file.setText("P-1.xlsx")
    for kind in range(form.kind.count()):
        form.kind.setCurrentIndex(kind)
        stack.setCurrentIndex(kind)
        form.add()
    assert form.list.count() == form.kind.count()
    found = [*all_of(form, [*written(whole), "P-1.xlsx"])]
    assert not found, "\n".join(found)
    # As it is said it is shown, and as it is declared it is asked.
    form.role.set_role("lead-extension")
    assert (form.role.role(), unsaid(form.role.currentText())) == ("lead-extension", "")
    form.add()
    asked = form.question()
    assert [choice.role for choice in asked.choices] == ["cylinder", "lead-extension"]
    assert asked.prefer == form.prefer.itemData(0)


def test_every_rule_tells_its_limits_and_their_bounds_through_the_catalogue(whole, qtbot):
    data, found = written(whole), []
    page = gone_to(whole, qtbot, "rulebook")
    for rule in RULEBOOK:
        page.choose(rule.id)
        said = page.page.toPlainText()
        assert said == page_of(rule)
        found += [f"{rule.id}: {left!r}" for left in (unsaid(said, data),) if left]
        found += [f"{rule.id}: {fault}" for fault in all_of(page.form_area, data)]
    assert not found, "\n".join(found)
    assert any(limit.unit == "days" for rule in RULEBOOK for limit in rule.limits)
