"""Facts of a building on the desktop: edited below the opening's own, and every opening there follows."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit

from hwsched.desktop.window import Window
from tests.desktop.test_window import choose


@pytest.fixture
def window(qtbot, sample_file):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    shown.project.open_project(str(sample_file))
    qtbot.waitUntil(lambda: not shown.frame.jobs.busy and shown.openings.register.total() > 100, timeout=20000)
    yield shown
    shown.close()


def line(window, section, label):
    (found,) = window.sheet.facts.findItems(section, Qt.MatchFlag.MatchExactly, 0)
    (item,) = [found.child(at) for at in range(found.childCount()) if found.child(at).text(0) == label]
    return item


def labels(window, section):
    (found,) = window.sheet.facts.findItems(section, Qt.MatchFlag.MatchExactly, 0)
    return [found.child(at).text(0) for at in range(found.childCount())]


def loads(window):
    checked = window.frame.state.workspace.checked.values()
    return {each.given.opening.mark: each.given.opening.occupant_load for each in checked}


def test_a_building_s_fact_is_edited_once_for_all_its_openings_and_undone(window, qtbot):
    choose(window, "M004")
    window.sheet.pages.show_page(window.sheet.facts)
    mill = "Building Mill House, for all its openings"
    assert line(window, mill, "Occupant load").text(1) == "40"
    assert line(window, "Level Ground, for all its openings", "Occupant load").text(1) == "unknown"
    assert line(window, "Opening", "Occupant load").text(1) == "40"
    window.sheet.facts.editItem(line(window, mill, "Occupant load"), 1)
    editor = window.sheet.facts.findChild(QLineEdit)
    editor.clear()
    qtbot.keyClicks(editor, "77")
    qtbot.keyClick(editor, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: loads(window)["M316"] == 77, timeout=20000)
    assert loads(window)["A-01"] == 30
    assert line(window, "Opening", "Occupant load").text(1) == "77"
    window.history.act_undo.trigger()
    qtbot.waitUntil(lambda: loads(window)["M316"] == 40, timeout=20000)


def test_only_what_a_rule_reads_of_the_form_is_asked(window):
    choose(window, "M004")
    assert "Leaf that closes first" not in labels(window, "Opening")
    assert "Who connects the controller" not in labels(window, "Opening")
    assert "Unused holes" in labels(window, "Leaf")
    choose(window, "LIFT-1")
    assert "Who connects the controller" in labels(window, "Opening")
    assert "Gasket or smoke seal" not in labels(window, "Opening")
    choose(window, "M017")
    assert "Leaf that closes first" in labels(window, "Opening")
    assert "Form of the bolt" in labels(window, "Flush bolt")
    assert "Backset" not in labels(window, "Flush bolt")
