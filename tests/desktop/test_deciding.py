"""A second delivery is decided in the preview by mouse and keys, and comes to what the command line comes to."""

import shutil

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from hwsched.cli.command import run
from hwsched.desktop.survey.deliveries_window import DeliveriesWindow
from hwsched.desktop.window import Window
from hwsched.model.project import open_project
from tests.desktop.conftest import idle
from tests.model.states import state
from tests.once import copied
from tests.operations.survey.test_reconciling import FIRST, PLANT, STORE, by_hand, delivery, make, openings, row

LEFT = Qt.MouseButton.LeftButton
SECOND = (
    "101,1,Corridor,Office,LHR,38,1 3/4,90 min",
    row("S-2", STORE.replace("36", "38")),
    row("d-103", PLANT),
    # 104 is gone.
    "105,2,Hall,Library,,34,1 3/4,20 min",
    FIRST[5].replace("36", "34"),
)
"""One renamed, one spelt otherwise, one gone, one blank, one set by hand, three widths, one rating."""
DECIDED = (
    "renamed=file", "spelling=file", "gone@104=file", "blank:Opening.hand@105=held", "changed:width_mm=held",
    "any@106=file",
)  # fmt: skip


@pytest.fixture
def file(tmp_path):
    def made(path):
        make(path)
        with open_project(str(path)) as project:
            by_hand(project, "101", "hand", "RH")

    path = tmp_path / "p.hwsched"
    copied("first delivery, one by hand", path, made)
    shutil.copy(path, tmp_path / "command.hwsched")
    return delivery(tmp_path, SECOND)


@pytest.fixture
def window(qtbot, tmp_path, file):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    shown.project.open_project(str(tmp_path / "p.hwsched"))
    idle(qtbot, shown)
    return shown


def seen(window, qtbot, before=None):
    qtbot.waitUntil(
        lambda: (
            window.survey.preview not in (None, before)
            and window.survey.preview.isVisible()
            and not window.frame.jobs.busy
        ),
        timeout=20000,
    )
    return window.survey.preview


def say(window, qtbot, key, words):
    """Unfold by a click on the mark of a row what stands over a word, and choose it with the keyboard."""
    before = window.survey.preview
    box = before.deciding.boxes[key]
    box.setFocus()
    wanted = box.findText(words)
    assert wanted >= 0, [box.itemText(n) for n in range(box.count())]
    box.showPopup()
    view = box.view()
    view.setCurrentIndex(box.model().index(wanted, 0))
    QTest.keyClick(view, Qt.Key.Key_Return)
    return seen(window, qtbot, before)


def unfold(window, qtbot, *keys):
    """Unfold rows with the keyboard."""
    page = window.survey.preview.deciding
    for key in keys:
        page.tree.setCurrentItem(page._rows[key])
        page.tree.setFocus()
        QTest.keyClick(page.tree, Qt.Key.Key_Right)


def facts(project):
    """All that is known of openings and left open, by mark; identifiers differ from copy to copy."""
    held = state(project)
    marks = {row_id: values["mark"] for (entity, row_id), values in held.items() if entity == "opening"}
    found = []
    for (entity, row_id), values in held.items():
        if entity in ("opening", "leaf", "existing_item", "open_question"):
            told = {name: value for name, value in values.items() if name != "content" and not name.endswith("id")}
            found.append((entity, marks.get(values.get("opening_id") or row_id), str(sorted(told.items()))))
    return sorted(found)


def test_by_mouse_and_keys_as_by_command(window, qtbot, tmp_path, file):
    window.survey.take_survey(file)
    preview = seen(window, qtbot)
    # Renamed, spelt otherwise, gone, blank and by hand are left; two widths and a rating; the third width waits.
    assert preview.pages.tabText(0) == "Decide 8, 5 left"
    say(window, qtbot, ("renamed", "", ""), "the known opening takes the file's mark")
    say(window, qtbot, ("spelling", "", ""), "it is the known opening, which keeps its mark")
    unfold(window, qtbot, ("gone", "", ""))
    say(window, qtbot, ("gone", "104", ""), "the opening is retired")
    unfold(window, qtbot, ("blank", "", ""), ("blank", "", "hand"))
    say(window, qtbot, ("blank", "105", "Opening.hand"), "the fact stays")
    unfold(window, qtbot, ("changed", "", ""))
    # A word is taken back before anything is taken in.
    say(window, qtbot, ("changed", "", "rating"), "the project's value stays")
    say(window, qtbot, ("changed", "", "rating"), "as said above")
    say(window, qtbot, ("changed", "", "width_mm"), "the project's value stays")
    unfold(window, qtbot, ("any", "", ""))
    preview = say(window, qtbot, ("any", "106", ""), "as in the file")
    assert preview.pages.tabText(0).endswith(", 1 left")
    qtbot.mouseClick(preview.take, LEFT)
    idle(qtbot, window)
    words = [word for told in DECIDED for word in ("--decide", told)]
    assert run(["survey", "import", str(tmp_path / "command.hwsched"), str(file), *words]) == 0
    found = []
    for name in ("p.hwsched", "command.hwsched"):
        with open_project(str(tmp_path / name)) as project:
            found.append(facts(project))
    assert found[0] == found[1]
    with open_project(str(tmp_path / "p.hwsched")) as project:
        now = openings(project)
    assert sorted(now) == ["101", "105", "106", "D-103", "S-2"]
    widths = {mark: round(given.leaves[0].width_mm / 25.4) for mark, given in now.items()}
    assert widths == {"101": 36, "105": 34, "106": 34, "D-103": 32, "S-2": 36}
    assert {mark: given.opening.hand for mark, given in now.items()} == {
        "101": "RH", "105": "LH", "106": "RH", "D-103": "RH", "S-2": "RH",
    }  # fmt: skip


def test_deliveries_are_answered_looked_at_and_taken_back_in_their_window(window, qtbot, tmp_path, file):
    window.survey.take_survey(file)
    qtbot.mouseClick(seen(window, qtbot).take, LEFT)
    idle(qtbot, window)
    assert window.openings.questions.words.text().startswith("5 questions from delivery 2: ")
    qtbot.mouseClick(window.openings.questions.show_them, LEFT)
    beside = window.frame.side.windows[DeliveriesWindow]
    assert (beside.pages.tabText(0), beside.told.text()) == ("To decide 5", "5 questions from delivery 2")
    assert not beside.answer.isEnabled()
    for key, words in (
        (("renamed", "", ""), "the known opening takes the file's mark"),
        (("gone", "", ""), "the opening is retired"),
        (("by-hand", "", ""), "the file's value is taken"),
    ):
        box = beside.deciding.boxes[key]
        box.setFocus()
        QTest.keyClick(box, words[0])
        QTest.keyClicks(box.view(), words[1:20])
        QTest.keyClick(box.view(), Qt.Key.Key_Return)
    qtbot.mouseClick(beside.answer, LEFT)
    idle(qtbot, window)
    assert (beside.pages.tabText(0), beside.pages.tabText(2)) == ("To decide 2", "Retired openings 1")
    assert window.openings.questions.words.text().startswith("2 questions from delivery 2: ")
    assert marks_shown(window) == ["101", "105", "106", "D-103", "S-2"]
    beside.pages.setCurrentIndex(2)
    pick_row(qtbot, beside.resting, 0)
    qtbot.mouseClick(beside.bring, LEFT)
    idle(qtbot, window)
    assert marks_shown(window) == ["101", "104", "105", "106", "D-103", "S-2"]
    beside.pages.setCurrentIndex(3)
    window.openings.select_openings([openings_by_mark(window)["101"]])
    told = [
        [beside.facts.data(beside.facts.index(n, column)) for column in (1, 2, 3)]
        for n in range(beside.facts.rowCount())
    ]
    said = {fact: (value, origin) for fact, value, origin in told}
    assert said["Hand"][1] == "delivery 2: doors.csv, sheet doors, cell E2; taken in by tester"
    assert said["Mark"] == ("101", "delivery 1: doors.csv, sheet doors, cell A2; taken in by surveyor")
    # The delivery is looked at whole, and taken back whole once the opening that came back rests again.
    window.history.act_undo.trigger()
    idle(qtbot, window)
    beside.pages.setCurrentIndex(1)
    pick_row(qtbot, beside.list, 1)
    rows = [beside.rows.item(n, 0).text().partition(" (")[0] for n in range(beside.rows.rowCount())]
    assert set(rows) == {
        '101 leaf: changed: Leaf width 36" -> 38"', "105: changed: Fire rating Not rated -> 20 min",
        '106 leaf: changed: Leaf width 36" -> 34"', "S-2: changed: Mark 102 -> S-2",
        'S-2 leaf: changed: Leaf width 36" -> 38"', "101: changed: Hand RH -> LHR",
        "104: changed: Retired unknown -> not in doors.csv",
    }  # fmt: skip
    qtbot.mouseClick(beside.back, LEFT)
    idle(qtbot, window)
    assert (beside.files.rowCount(), beside.pages.tabText(0)) == (1, "To decide 0")
    assert window.openings.questions.isHidden()
    assert marks_shown(window) == ["101", "102", "104", "105", "106", "D-103"]


def marks_shown(window):
    return sorted(openings_by_mark(window))


def openings_by_mark(window):
    return {each.given.opening.mark: id_ for id_, each in window.frame.state.workspace.checked.items()}


def pick_row(qtbot, grid, place):
    QApplication.processEvents()
    where = grid.table.visualRect(grid.model.index(place, 0)).center()
    qtbot.mouseClick(grid.table.viewport(), LEFT, pos=where)
