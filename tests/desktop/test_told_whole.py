"""What a list, a drop-down or a page has no room for, or has nothing of yet, is told all the same."""

from itertools import pairwise

import pytest
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QFont, QHelpEvent
from PySide6.QtWidgets import QApplication, QTreeWidget, QTreeWidgetItem

from hwsched.desktop.looks import told_whole
from hwsched.desktop.looks.letters import use_own_letters
from hwsched.desktop.looks.plain_words import keep_words_plain
from hwsched.desktop.looks.tokens import STATES, TARGET, colour, scaled
from hwsched.desktop.opening.past_page import PastPage
from hwsched.desktop.project import today_rows
from hwsched.desktop.project.calculators import CalculatorsPage
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.project.today_rows import LevelRow
from hwsched.desktop.widgets.drawing_view import DrawingView
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.empty import Empty, empty_place
from hwsched.desktop.widgets.spin import AmountBox
from hwsched.operations.findings.waivers import waive
from hwsched.operations.opening.past import PastFact, PastStep
from hwsched.operations.project.today import LevelProgress
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.transmittals import transmit
from hwsched.operations.survey.editing import edit_fact_text
from tests.desktop.conftest import checked_of, idle, look_put_on

LONG = "Northern Repair and Refitting Yard for Vessels of Every Kind and Size, Third Extension"


@pytest.fixture
def look(qapp):
    """The look with the letters of the package, as it is seen."""
    before = QFont(qapp.font())
    assert use_own_letters(qapp)
    with look_put_on(qapp, Preferences()):
        yield
    qapp.setFont(before)


def painted(view):
    for _ in range(3):
        QApplication.processEvents()
    return view.grab().toImage()


def colours(image):
    return {image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height())}


class Told:
    """Keeps what would be shown as a tip."""

    said: list[str]

    def __init__(self):
        self.said = []

    def showText(self, _at, text, _view):  # noqa: N802 (as Qt has it)
        self.said.append(text)


def point_at(view, item, column):
    """Point at a cell."""
    at = view.visualItemRect(item).center()
    at.setX(view.columnViewportPosition(column) + 12)
    help_ = QHelpEvent(QEvent.Type.ToolTip, at, view.viewport().mapToGlobal(QPoint(at)))
    QApplication.sendEvent(view.viewport(), help_)


def test_a_list_tells_the_whole_of_what_it_cuts_and_of_nothing_else(look, qtbot, monkeypatch):
    tips = Told()
    monkeypatch.setattr(told_whole, "QToolTip", tips)
    keep_words_plain()
    view = QTreeWidget()
    qtbot.addWidget(view)
    view.setHeaderLabels(["To", "Purpose"])
    Empty(view, "Nothing yet.")
    bare, told = QTreeWidgetItem(view, [LONG, "short"]), QTreeWidgetItem(view, [LONG, LONG])
    told.setToolTip(1, "What it is for")
    told.setToolTip(0, f"Whole: {LONG}")
    view.setColumnWidth(0, 200)
    view.resize(460, 200)
    view.show()
    QApplication.processEvents()
    for item, column in ((bare, 0), (bare, 1), (told, 1), (told, 0)):
        point_at(view, item, column)
    # Another tip stays, below what was cut, and what it tells already is not told twice.
    assert tips.said == [LONG, f"{LONG}\nWhat it is for"]


def test_a_drop_down_without_entries_says_so_and_takes_its_first_one(look, qtbot):
    box = DropDown()
    qtbot.addWidget(box)
    box.resize(300, box.sizeHint().height())
    box.show()
    left = painted(box).copy(0, 0, 200, box.height())
    inner = {left.pixelColor(x, y).name() for x in range(6, 200) for y in range(5, left.height() - 5)}
    assert colour("soft").name() in inner
    box.addItems(["Mill House", "Boat Store"])
    assert box.currentText() == "Mill House"


def test_what_will_be_seen_in_a_place_is_said_as_quietly_as_in_a_list(look, qtbot):
    for made in (DrawingView(), empty_place("Choose a part, or make a new one.")):
        qtbot.addWidget(made)
        made.resize(500, 300)
        made.show()
        seen = colours(painted(made))
        assert colour("soft").name() in seen
        assert colour("text").name() not in seen


def test_each_state_of_a_level_keeps_its_shape_as_long_as_it_has_any_room(look, qtbot, monkeypatch):
    shapes = []
    monkeypatch.setattr(today_rows, "paint_icon", lambda _painter, _place, shape, _role: shapes.append(shape))
    states = dict.fromkeys(STATES, 0) | {"fits": 18, "held": 1, "to-measure": 1}
    row = LevelRow(LevelProgress("Mill House", "2", {today_rows_state(each): n for each, n in states.items()}, ()))
    qtbot.addWidget(row)
    row.resize(880, row.sizeHint().height())
    row.show()
    painted(row)
    assert set(shapes) == {STATES[each].shape for each, count in states.items() if count}


def today_rows_state(look_name):
    """The state of a level that looks like this."""
    return next(state for state, held in today_rows.LOOKS.items() if held == look_name)


def test_a_step_of_an_opening_is_read_whole_with_who_made_it(look, qtbot):
    page = PastPage()
    qtbot.addWidget(page)
    page.resize(480, 500)
    changed = (PastFact("Opening", "Operations a day", "10", LONG),)
    page.show_past(
        [PastStep(7, "2031-02-03T14:05:09+00:00", "B. Ferry", f"Attach {LONG} to 0012", "edit", False, changed)]
    )
    page.show()
    for _ in range(3):
        QApplication.processEvents()
    head = page.tree.topLevelItem(0)
    line = page.tree.fontMetrics().lineSpacing()
    # What was done needs two rows of words at least, who did it one.
    assert page.tree.visualItemRect(head).height() >= 3 * line
    fact = page.tree.visualItemRect(head.child(0))
    room = page.tree.columnWidth(2)
    needed = page.tree.fontMetrics().boundingRect(0, 0, room - 14, 9999, 0x1000, LONG).height()
    assert fact.height() >= needed > 2 * line
    assert page.back.height() == page.again.height()


def test_names_of_calculators_are_as_high_as_their_words(look, qtbot):
    page = CalculatorsPage()
    qtbot.addWidget(page)
    page.resize(1270, 640)
    page.show()
    page.activateWindow()
    page.names.setFocus()
    view, high = page.names, page.names.fontMetrics().height()
    for wide in range(1180, 1300, 4):
        page.resize(wide, 640)
        image = painted(view.viewport())
        rows = [view.visualItemRect(view.item(at)) for at in range(view.count())]
        for at, row in enumerate(rows):
            inked = [
                y
                for y in range(row.top(), row.bottom())
                if any(image.pixelColor(x, y).lightness() < 120 for x in range(row.left() + 4, row.right() - 4))
            ]
            two = inked[-1] - inked[0] > 1.2 * high
            assert (row.height() > scaled(TARGET)) is two, (wide, view.item(at).text())
        gaps = {below.top() - above.bottom() for above, below in pairwise(rows)}
        assert len(gaps) == 1, (wide, gaps)


def test_an_amount_has_the_decimals_that_it_needs(qtbot):
    box = AmountBox()
    qtbot.addWidget(box)
    box.setRange(0.01, 9999)
    said = []
    for value in (1, 2.5, 0.25, 120):
        box.setValue(value)
        said.append(box.text())
    assert said == ["1", "2.5", "0.25", "120"]
    assert box.value() == 120


def test_who_sent_a_transmittal_is_in_sight_however_long_its_purpose_is(look, qtbot, at_work, tmp_path):
    file = tmp_path / "packets.txt"
    file.write_text("What went out.", encoding="utf-8")
    project = at_work.frame.state.workspace.project
    transmit(project, f"Joiners of the {LONG}", [file], who="A. Quay", purpose=f"approval of the {LONG}")
    at_work.resize(1366, 768)
    at_work.frame.go("transmittals")
    idle(qtbot, at_work)
    for _ in range(3):
        QApplication.processEvents()
    view = at_work.frame.pages.widgets["transmittals"].list
    assert view.topLevelItem(0).text(4) == "A. Quay"
    assert view.horizontalScrollBar().maximum() == 0
    assert view.columnViewportPosition(4) + view.columnWidth(4) <= view.viewport().width()


def test_what_became_of_an_opening_stands_under_after(look, qtbot, at_work):
    project = at_work.frame.state.workspace.project
    freeze(project, who="A. Quay", purpose="For approval")
    opening = checked_of(at_work, "M016").given.opening.id
    edit_fact_text(project, "opening", opening, "room_to", "Chart room", who="A. Quay")
    at_work.frame.go("revisions")
    idle(qtbot, at_work)
    page = at_work.frame.pages.widgets["revisions"]
    page.list.setCurrentItem(page.list.topLevelItem(0))
    qtbot.mouseClick(page.compare, Qt.MouseButton.LeftButton)
    idle(qtbot, at_work)
    titles = [page.found.headerItem().text(column) for column in range(3)]
    line = next(
        item for at in range(page.found.topLevelItemCount()) if (item := page.found.topLevelItem(at)).text(0) == "M016"
    )
    assert dict(zip(titles, (line.text(column) for column in range(3)), strict=True)) == {
        "What is otherwise": "M016",
        "Before": "",
        "After": "changed",
    }


def test_days_of_waivers_are_said_as_all_days_are(look, qtbot, at_work):
    held = checked_of(at_work, "M016")
    project, of = at_work.frame.state.workspace.project, {"opening_id": held.given.opening.id}
    waive(project, held.findings[0].rule, person="B. Ferry", reason="Seen", who="t", until="2099-12-31", **of)
    at_work.frame.go("waivers")
    idle(qtbot, at_work)
    page = at_work.frame.pages.widgets["waivers"]
    shown = {
        str(page.model.headerData(column, Qt.Orientation.Horizontal)): page.model.index(0, column).data()
        for column in range(page.model.columnCount())
    }
    assert shown["Until"] == "31 Dec 2099"
