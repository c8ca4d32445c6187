"""A project that is opened is seen before it is judged: looked at, searched, chosen, and nothing is said of it."""

import threading

import pytest
from PySide6.QtCore import Qt

from hwsched.desktop.survey.ahead import Ahead
from hwsched.desktop.window import Window
from hwsched.operations.findings.checking import Checker
from tests.desktop.conftest import idle

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def held(monkeypatch):
    """The first opening is judged when it is let go."""
    go, real = threading.Event(), Checker.judge

    def waiting(self, *given, **named):
        assert go.wait(60)
        return real(self, *given, **named)

    monkeypatch.setattr(Checker, "judge", waiting)
    yield go
    go.set()


@pytest.fixture
def opening(qtbot, held, corner_file):
    """A window in which a project is read and not judged yet."""
    window = Window("tester")
    qtbot.addWidget(window)
    window.resize(1366, 768)
    window.show()
    window.project.open_project(str(corner_file))
    qtbot.waitUntil(lambda: window.openings.register.total() > 0, timeout=30_000)
    assert window.frame.jobs.busy
    return window


def texts(window, column):
    model = window.openings.register
    return [model.index(row, model.place_of(column)).data() for row in range(model.rowCount())]


def test_it_is_looked_at_searched_and_chosen_while_it_is_judged(opening, qtbot, held):
    window, grid = opening, opening.openings.grid
    total = grid.model.total()
    assert set(texts(window, "result.state")) == {"Being checked"}
    assert window.status.counts.text() == f"{total} openings, being checked"
    assert not window.fitting.act_fit.isEnabled()
    assert not window.frame.state.filled
    # Nothing can be edited that a person has seen before it was judged.
    hand = grid.model.index(0, grid.model.place_of("opening.hand"))
    assert not hand.flags() & Qt.ItemFlag.ItemIsEditable
    qtbot.keyClicks(window.openings.search, "m004")
    qtbot.waitUntil(lambda: grid.model.rowCount() == 1)
    at = grid.table.visualRect(grid.model.index(0, 0)).center()
    qtbot.mouseClick(grid.table.viewport(), LEFT, pos=at)
    assert (len(grid.ids), window.frame.state.chosen) == (1, None)
    held.set()
    idle(qtbot, window)
    assert window.frame.state.checked.given.opening.mark == "M004", "what was chosen stays so"
    assert window.sheet.title.text().startswith("M004")
    assert texts(window, "result.state") == ["Fits"]
    assert not [each for each in grid.model.contents.rows if isinstance(each, Ahead)]
    assert grid.model.index(0, hand.column()).flags() & Qt.ItemFlag.ItemIsEditable
    window.openings.search.clear()
    assert (grid.model.total(), grid.model.rowCount()) == (total, total)


def test_stopped_it_leaves_nothing_that_nobody_has_judged(opening, qtbot, held):
    qtbot.mouseClick(opening.status.stop, LEFT)
    held.set()
    idle(qtbot, opening)
    qtbot.waitUntil(lambda: opening.openings.register.total() == 0)
    assert opening.openings.table.empty == "The project was not read to its end; open it again."
    assert opening.status.counts.text() == ""
    assert not opening.frame.state.filled
