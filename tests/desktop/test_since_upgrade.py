"""The window on a project of an earlier version: it says so, shows what differs, takes it, undoes it."""

import pytest
from PySide6.QtCore import Qt

from hwsched.desktop.opening.upgrade_window import UpgradeWindow
from hwsched.desktop.window import Window
from tests.desktop.conftest import choose, idle
from tests.operations.opening.test_since_upgrade import BEHIND, BOLTS, DIFFER, older_yard


@pytest.fixture
def older(qtbot, tmp_path):
    target = tmp_path / "yard.hwsched"
    older_yard(target)
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    shown.project.open_project(str(target))
    idle(qtbot, shown)
    return shown


def compared(qtbot, window):
    """Ask by the line over the register what differs."""
    qtbot.mouseClick(window.openings.earlier.show_them, Qt.MouseButton.LeftButton)
    idle(qtbot, window)
    return window.frame.side.windows[UpgradeWindow]


def lines(window):
    """The openings listed, each with its differences."""
    tops = [window.tree.topLevelItem(at) for at in range(window.tree.topLevelItemCount())]
    return {
        top.text(0): [tuple(top.child(i).text(column) for column in range(3)) for i in range(top.childCount())]
        for top in tops
    }


def states(window):
    return {
        window.openings.register.data(window.openings.register.index(row, 1))
        for row in range(window.openings.register.rowCount())
    }


def test_a_project_of_this_version_says_nothing(at_work):
    assert at_work.openings.earlier.isHidden()


def test_it_says_how_many_and_no_one_of_them_counts(older):
    assert older.openings.earlier.isVisible()
    assert older.openings.earlier.words.text().startswith("Worked out by an earlier version: 14 openings may differ.")
    assert states(older) == {"Earlier version"}
    choose(older, "GATE 1")
    assert "earlier version" in older.sheet.state.text()
    # What it worked out stays to be seen.
    assert older.sheet.parts.rowCount() > 5


def test_differences_are_shown_taken_and_undone(older, qtbot):
    window = compared(qtbot, older)
    found = lines(window)
    kept = "GATE 3   released 2026-01-09, older: kept"
    assert [mark.split("   ")[0] for mark in found] == DIFFER
    assert kept in found
    # The lock's case is bolted on from the key side, and there its lead goes in: the same hole of 3/4 in, through the
    # wall of 1/4 in of the stile, in the other face. Depth is reckoned from the inside face; the stile has 2 in, so
    # the lead begins at 50.8 mm and not at 0, and is led as before from the stile's middle, 25.4 mm.
    lead = "count 1, diameter 19.1 mm, depth 6.4 mm, x 63.5 mm, y 914.4 mm, tool step-drill"
    then = "63.5 mm, 914.4 mm, 25.4 mm, 63.5 mm, 1015.2 mm, 25.4 mm, 63.5 mm, 1015.2 mm, 0 mm, 59.6 mm, 1095.2 mm, 0 mm"
    assert found["GATE 1"] == [
        (f"inside face, {BEHIND}", lead, "none"),
        (f"key face, {BEHIND}", "none", lead),
        (BOLTS, "none", "count 4, diameter 9 mm, x 63.5 mm, y 914.4 mm, tool twist-drill"),
        ("cable: points", f"63.5 mm, 914.4 mm, 0 mm, {then}", f"63.5 mm, 914.4 mm, 50.8 mm, {then}"),
    ]
    assert ("State", "Fits", "Does not fit") in found["GATE 4"]
    assert states(older) == {"Earlier version"}, "nothing is changed by looking"
    qtbot.mouseClick(window.take, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: states(older) != {"Earlier version"}, timeout=30000)
    idle(qtbot, older)
    assert older.openings.earlier.words.text().startswith("Worked out by an earlier version: 2 openings may differ.")
    assert "Taken" in window.said.text()
    older.history.act_undo.trigger()
    idle(qtbot, older)
    assert states(older) == {"Earlier version"}
    window.close()


def test_released_ones_too_when_a_person_says_so(older, qtbot):
    window = compared(qtbot, older)
    window.released.click()
    idle(qtbot, older)
    assert "GATE 3   released 2026-01-09, older" in lines(window)
    qtbot.mouseClick(window.take, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: older.openings.earlier.isHidden(), timeout=30000)
    idle(qtbot, older)
    window.close()


def test_what_was_compared_is_forgotten_when_the_project_changes(older, qtbot):
    window = compared(qtbot, older)
    assert window.take.isEnabled()
    choose(older, "B/1")
    older.opening.add_item("closer")
    idle(qtbot, older)
    assert not window.take.isEnabled()
    assert "has changed" in window.said.text()
    window.close()


def test_a_double_click_goes_to_the_opening(older, qtbot):
    window = compared(qtbot, older)
    window.tree.itemActivated.emit(window.tree.topLevelItem(DIFFER.index("GATE 2")).child(0), 0)
    assert older.sheet.title.text().startswith("GATE 2")
    window.close()


def test_fit_says_what_it_kept(older, qtbot):
    older.fitting.act_fit.trigger()
    qtbot.waitUntil(lambda: states(older) != {"Earlier version"}, timeout=30000)
    idle(qtbot, older)
    assert "2 released openings keep what an earlier version worked out" in older.statusBar().currentMessage()
