"""What a person chooses for themselves, keys, help without a network, the ways to begin, the tour."""

import re
import shutil
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QTextCursor, QTextFormat, QTextTable
from PySide6.QtWidgets import QAbstractItemView, QApplication, QFileDialog, QInputDialog, QPushButton

from hwsched.desktop.frame.place import Place
from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.project.help_topics import linked, place_topic, text_of, topics
from hwsched.desktop.project.help_way import topic_here
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.project.tour import STEPS
from hwsched.desktop.window import Window
from hwsched.paths import RESOURCES, SAMPLE
from hwsched.rules import RULEBOOK
from tests.desktop.conftest import idle, look_put_on


@pytest.fixture
def window(qtbot):
    """A window in which nothing is open."""
    shown = Window("login")
    qtbot.addWidget(shown)
    shown.show()
    return shown


def type_keys(qtbot, window, keys):
    """Press keys where the keyboard is."""
    qtbot.keyClick(QApplication.focusWidget() or window, *keys)


def press(qtbot, parent, text):
    (button,) = [each for each in parent.findChildren(QPushButton) if each.text() == text and not each.isHidden()]
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)


def test_settings_are_reached_without_a_project_and_hold_at_once(window, qtbot):
    assert window.stack.currentWidget() is window.welcome
    window.frame.commands["go-preferences"].act.trigger()
    page = window.frame.pages.page("preferences")
    assert page.isVisible()
    page.theme.setFocus()
    qtbot.keyClick(page.theme, Qt.Key.Key_End)
    qtbot.keyClick(page.text_size, Qt.Key.Key_Home)
    assert (window.frame.preferences.theme, window.frame.preferences.text_size) == ("dark", 80)
    qtbot.mouseClick(page.name, Qt.MouseButton.LeftButton)
    qtbot.keyClicks(page.name, "Ann  Quay")
    qtbot.keyClick(page.name, Qt.Key.Key_Return)
    again = Preferences()
    assert (again.theme, again.text_size, again.name) == ("dark", 80, "Ann Quay")
    assert window.frame.state.who == "Ann Quay"
    press(qtbot, window.centre, "Close")
    assert window.stack.currentWidget() is window.welcome


def test_the_page_of_keys_tells_every_command_and_finds_it_by_words(window, qtbot):
    window.frame.go("keys")
    page = window.frame.pages.page("keys")
    told = {page.table.item(at, 0).text(): page.table.item(at, 1).text() for at in range(page.table.rowCount())}
    assert {each.title for each in window.frame.commands} == set(told)
    assert told["Find anything"] == "Ctrl+K"
    qtbot.keyClicks(page.words, "f1")
    assert [page.table.item(at, 0).text() for at in range(page.table.rowCount())][:1] == ["Help on this place"]


def test_every_place_has_a_page_of_help_and_every_rule(qapp):
    names = {each.name for each in topics()}
    for place in PLACES:
        assert isinstance(place, Place)
        topic = place_topic((place.name, place.within))
        assert topic in names
        if place.rail:
            assert topic == f"places/{place.name}"
    assert {f"rules/{rule.id}" for rule in RULEBOOK} <= names
    for each in topics():
        text = text_of(each.name)
        assert each.title
        assert text.strip()
        if each.group == "Places":
            # Links lead to pages that are there, and nothing leads out of the machine.
            assert "://" not in text
            for mark, target in re.findall(r"(!?)\[[^\]]*\]\(([^)]+)\)", text):
                if mark:
                    assert (RESOURCES / "handbook" / "places" / target).is_file(), (each.name, target)
                else:
                    assert linked(each.name, target) in names, (each.name, target)


def test_commands_that_help_names_are_there():
    from hwsched.cli import ENTRIES, ROOMS

    known = {f"hwsched {room.name} {entry.name}" for room in ROOMS for entry in room.entries}
    assert len(known) == len(ENTRIES)
    for path in (RESOURCES / "handbook" / "places").glob("*.md"):
        named = set(re.findall(r"`(hwsched [a-z-]+ [a-z-]+)", path.read_text(encoding="utf-8")))
        assert named <= known, path.name


def test_f1_tells_about_the_place_and_the_rule_that_is_shown(at_work, qtbot):
    frame = at_work.frame
    qtbot.keyClick(at_work, Qt.Key.Key_F1)
    page = frame.pages.page("help")
    assert page.isVisible()
    assert page.name == "places/openings"
    assert "Openings" in page.page.toPlainText()
    qtbot.keyClick(at_work, Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert frame.trail.here.place == "openings"
    frame.go("rulebook", "reach-height")
    assert topic_here(frame) == "rules/reach-height"
    qtbot.keyClick(at_work, Qt.Key.Key_F1)
    assert "reach-height" in page.page.toPlainText()
    # Found by words that only the page holds, and by "find anything".
    qtbot.keyClicks(page.words, "what its columns were taken for")
    shown = [name for name, line in page._lines.items() if not line.isHidden()]
    assert shown[0] == "places/survey"
    assert len(shown) < 5
    assert any(each.kind == "Help" for each in frame.finder.find("release"))


def test_the_page_of_a_rule_is_set_as_other_pages_are(at_work, qtbot):
    frame = at_work.frame
    frame.go("help", "places/openings")
    page = frame.pages.page("help").page

    def heading():
        first = page.document().firstBlock()
        letters = first.begin().fragment().charFormat()
        return (
            first.blockFormat().headingLevel(),
            letters.fontWeight(),
            letters.property(QTextFormat.FontSizeAdjustment),
        )

    of_place = heading()
    frame.go("help", "rules/reach-height")
    assert heading() == of_place
    assert page.document().defaultFont().family() == QApplication.font().family()
    assert not page.document().defaultFont().fixedPitch()
    assert page.document().defaultFont().featureValue(QFont.Tag("tnum")) == 1
    text = page.toPlainText()
    # Names stand beside what they name, in a table; what may be changed has a heading of its own.
    (table,) = [each for each in page.document().rootFrame().childFrames() if isinstance(each, QTextTable)]
    facts = {name: table.cellAt(row, 1) for row in range(table.rows()) for name in [said(table.cellAt(row, 0))]}
    assert {"Severity", "Discipline", "Basis", "Cure"} <= set(facts)
    assert said(facts["Identifier"]) == "reach-height"
    assert "Limits that a project may change" in text
    assert "   " not in text


def test_the_page_and_its_bullets_follow_the_text_size(at_work, qapp):
    preferences = at_work.frame.preferences
    with look_put_on(qapp, preferences):
        at_work.frame.go("help", "places/today")
        document = at_work.frame.pages.page("help").page.document()
        seen = []
        for percent in (100, 200):
            preferences.text_size = percent
            QApplication.processEvents()
            seen.append((document.defaultFont().pixelSize(), document.indentWidth()))
        preferences.text_size = 100
    assert seen[1][0] == 2 * seen[0][0]
    assert seen[1][1] == pytest.approx(2 * seen[0][1], rel=0.06)


def said(cell):
    """The words of a cell of a page."""
    cursor = cell.firstCursorPosition()
    cursor.setPosition(cell.lastCursorPosition().position(), QTextCursor.MoveMode.KeepAnchor)
    return cursor.selectedText()


def test_a_name_is_asked_once_and_signs_the_journal(window, qtbot, tmp_path):
    assert window.welcome.asked.isVisible()
    qtbot.mouseClick(window.welcome.name, Qt.MouseButton.LeftButton)
    qtbot.keyClicks(window.welcome.name, "Ann Quay")
    qtbot.keyClick(window.welcome.name, Qt.Key.Key_Return)
    window.project.new_project(str(tmp_path / "yard.hwsched"), "Yard")
    qtbot.waitUntil(lambda: window.frame.state.workspace is not None, timeout=20000)
    assert window.frame.state.workspace.who == "Ann Quay"
    idle(qtbot, window)
    later = Window("login")
    qtbot.addWidget(later)
    later.show()
    assert not later.welcome.asked.isVisible()
    # And the project is offered again.
    press(qtbot, later.welcome, "yard")
    qtbot.waitUntil(lambda: later.frame.state.workspace is not None, timeout=20000)
    idle(qtbot, later)


def test_a_project_starts_from_a_spreadsheet(window, qtbot, tmp_path, monkeypatch):
    survey = tmp_path / "what stands.xlsx"
    shutil.copy(SAMPLE / "survey.xlsx", survey)
    proposed = []
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(survey), ""))
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", lambda _parent, _title, path, *_: (proposed.append(path) or path, "")
    )
    taken = []
    window.project.made_for.disconnect()
    window.project.made_for.connect(taken.append)
    press(qtbot, window.welcome, "Start from a spreadsheet")
    assert proposed == [str(survey.with_suffix(".hwsched"))]
    # The units are asked as of any new project.
    window.project.beginning.accept()
    qtbot.waitUntil(lambda: taken == [Path(survey)], timeout=20000)
    assert window.frame.state.workspace.project.path == survey.with_suffix(".hwsched")
    idle(qtbot, window)


def test_an_office_s_database_is_joined_by_its_address(window, qtbot, monkeypatch):
    opened = []
    monkeypatch.setattr(window.project, "open_project", lambda target, _again=None: opened.append(target))
    for said, stated in ((" postgresql://ann@db/yard ", True), ("x", False), (" ", True)):
        monkeypatch.setattr(QInputDialog, "getText", lambda *_, said=said, stated=stated: (said, stated))
        press(qtbot, window.welcome, "Join an office's database")
    assert opened == ["postgresql://ann@db/yard"]


def test_the_tour_is_offered_once_goes_through_the_places_and_is_left_at_any_step(qtbot, project_file):
    preferences = Preferences()
    preferences.toured = False
    window = Window("tester", preferences)
    qtbot.addWidget(window)
    window.show()
    window.project.open_project(str(project_file))
    tour = window.tour
    assert tour.isVisible()
    for step in STEPS[1:]:
        qtbot.mouseClick(tour.next, Qt.MouseButton.LeftButton)
        assert step.title in tour.title.text()
        if step.place:
            assert window.frame.pages.room(window.frame.trail.here.place) == step.place
    qtbot.mouseClick(tour.before, Qt.MouseButton.LeftButton)
    assert STEPS[-2].title in tour.title.text()
    qtbot.keyClick(tour.next, Qt.Key.Key_Escape)
    assert not tour.isVisible()
    assert Preferences().toured
    idle(qtbot, window)
    window.frame.commands["tour"].act.trigger()
    assert tour.isVisible()
    press(qtbot, tour, "Leave the tour")
    assert not tour.isVisible()


@pytest.mark.parametrize("place", ["openings", "catalogue", "rulebook", "help", "keys"])
def test_the_key_for_finding_leads_to_the_field_of_every_place_that_has_one(at_work, qtbot, place):
    at_work.activateWindow()
    qtbot.waitUntil(at_work.isActiveWindow)
    at_work.frame.go(place)
    idle(qtbot, at_work)
    page = at_work.openings if place == "openings" else at_work.frame.pages.widgets[place]
    field = page.search if hasattr(page, "search") else page.words
    qtbot.waitUntil(field.isVisible)
    for text in ("cylinder", "lock"):
        # From the table or the tree beside it; what stands there is typed over.
        next(each for each in page.findChildren(QAbstractItemView) if each.isVisible()).setFocus()
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier)
        assert QApplication.focusWidget() is field
        qtbot.keyClicks(field, text)
        assert field.text() == text
    idle(qtbot, at_work)


@pytest.mark.parametrize("percent", [100, 150])
@pytest.mark.parametrize("name", ["places/release", "handbook/differences"])
def test_no_line_of_help_is_longer_than_is_read_well(at_work, qapp, name, percent):
    """About 90 letters, at the left, however wide the screen is; on a narrow one a page is as wide as it."""
    preferences = at_work.frame.preferences
    with look_put_on(qapp, preferences):
        preferences.text_size = percent
        at_work.resize(1920, 1080)
        at_work.frame.go("help", name)
        page = at_work.frame.pages.widgets["help"].page
        qapp.processEvents()
        text, longest, left = page.document(), 0, set()
        block = text.begin()
        while block.isValid():
            lines = [block.layout().lineAt(n) for n in range(block.layout().lineCount())]
            # The last line of a paragraph ends where the paragraph does.
            longest = max([longest, *(each.textLength() for each in lines)])
            left |= {round(each.x()) for each in lines if block.textList() is None}
            block = block.next()
        assert 60 < longest <= 100
        assert len(left) == 1
        at_work.resize(1024, 700)
        qapp.processEvents()
        assert text.size().width() <= page.viewport().width()
        preferences.text_size = 100


def test_a_page_of_help_is_set_once_though_its_bar_comes_while_it_is_set(at_work, qtbot, qapp):
    with look_put_on(qapp, at_work.frame.preferences):
        at_work.resize(1366, 768)
        qtbot.keyClick(at_work, Qt.Key.Key_F1)
        page = at_work.frame.pages.page("help").page
        qtbot.waitUntil(page.verticalScrollBar().isVisible)
        for _ in range(3):
            qapp.processEvents()
        document, headings, block = page.document(), [], page.document().begin()
        while block.isValid():
            headings += [block.text()] if block.blockFormat().headingLevel() == 1 else []
            block = block.next()
        assert headings == ["Openings"]
        assert document.begin().next().text().startswith("The register of all openings")
        assert document.toPlainText().count("The register of all openings") == 1


def test_a_page_of_help_that_needs_a_bar_comes_to_rest(at_work, qtbot, qapp, monkeypatch):
    """The bar goes as the page is emptied and comes as it is set: neither has it set once more."""
    with look_put_on(qapp, at_work.frame.preferences):
        at_work.resize(1366, 768)
        at_work.frame.go("help", "places/openings")
        help_page = at_work.frame.pages.page("help")
        qtbot.waitUntil(help_page.page.verticalScrollBar().isVisible)
        times = []
        monkeypatch.setattr(help_page, "_set_again", lambda set_again=help_page._set_again: times.append(set_again()))
        at_work.resize(1300, 700)
        for _ in range(12):
            qapp.processEvents()
        assert 1 <= len(times) <= 3
