"""The grid of openings by mouse and keys: one cell, many at once, pasted, filtered, columns; the query line."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit

from hwsched.attributes.unknown import unknown_word
from hwsched.desktop.looks.tokens import SPACE, colour
from hwsched.operations.opening.asked_openings import asked_openings
from hwsched.operations.opening.scope import Scope
from hwsched.operations.project.history import history
from hwsched.query import judge, parse
from hwsched.survey import OPENING
from tests.desktop.conftest import checked_of, choose, idle

LEFT, NONE, CONTROL, SHIFT, ALT = (
    Qt.MouseButton.LeftButton,
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.AltModifier,
)
KEY = Qt.Key


@pytest.fixture
def grid(at_work):
    at_work.activateWindow()
    return at_work.openings.grid


def click(qtbot, grid, mark, column, modifier=Qt.KeyboardModifier.NoModifier):
    """Click a cell."""
    contents = grid.model.contents
    line = next(n for n in range(len(contents)) if contents.row_at(n) and contents.row_at(n).given.opening.mark == mark)
    index = grid.model.index(line, grid.model.place_of(column))
    view = grid.table.frozen if index.column() < contents.arrangement.frozen else grid.table
    grid.table.scrollTo(index)
    qtbot.mouseClick(view.viewport(), LEFT, modifier, view.visualRect(index).center())
    return index


def shown(grid, column):
    place = grid.model.place_of(column)
    return [grid.model.data(grid.model.index(line, place)) for line in range(grid.model.rowCount())]


def steps(window):
    return history(window.frame.state.workspace.project)


def press(qtbot, key, modifier=Qt.KeyboardModifier.NoModifier):
    """Press a key where the keyboard is."""
    qtbot.keyClick(QApplication.focusWidget(), key, modifier)


def rating(window):
    """A rating that some openings have and others have not, as value and as it is called."""
    held = [each.given.opening.rating for each in window.frame.state.workspace.checked.values()]
    value = next(each for each in held if each not in (None, "none"))
    assert 0 < held.count(value) < len(held)
    return value, OPENING.attribute("rating").choice(value).label


def test_a_cell_is_edited_refused_and_taken_and_the_keyboard_stays(at_work, qtbot, grid):
    click(qtbot, grid, "M004", "opening.hand")
    before = len(steps(at_work))
    press(qtbot, KEY.Key_F2)
    box = QApplication.focusWidget()
    assert isinstance(box, QComboBox)
    press(qtbot, KEY.Key_Down)
    press(qtbot, KEY.Key_Up)
    assert len(steps(at_work)) == before, "an arrow only looks"
    press(qtbot, KEY.Key_Escape)
    assert len(steps(at_work)) == before
    # A column of a length is shown by its chooser, by keys.
    grid.do("columns")
    assert QApplication.focusWidget() is grid.columns.search
    qtbot.keyClicks(grid.columns.search, "leaf thickness")
    tree = grid.columns.tree
    while QApplication.focusWidget() is not tree:
        press(qtbot, KEY.Key_Tab)
    while tree.currentItem() is None or tree.currentItem().text(0) != "Leaf thickness":
        press(qtbot, KEY.Key_Down)
    press(qtbot, KEY.Key_Space)
    qtbot.waitUntil(lambda: grid.model.place_of("leaf.thickness_mm") == grid.model.columnCount() - 1)
    qtbot.mouseClick(grid.columns.close_, LEFT)
    click(qtbot, grid, "M004", "leaf.thickness_mm")
    press(qtbot, KEY.Key_F2)
    line = QApplication.focusWidget()
    assert isinstance(line, QLineEdit)
    qtbot.keyClicks(line, "thick")
    press(qtbot, KEY.Key_Return)
    assert QApplication.focusWidget() is line
    assert line.text() == "thick", "what is refused stays where it was typed"
    assert "thick" in grid.echo.text()
    line.selectAll()
    qtbot.keyClicks(line, "1 7/8")
    assert grid.echo.text() == 'Leaf thickness: 1 7/8", 47.62 mm'
    press(qtbot, KEY.Key_Return)
    qtbot.waitUntil(lambda: checked_of(at_work, "M004").given.leaves[0].thickness_mm == pytest.approx(47.625))
    idle(qtbot, at_work)
    assert len(steps(at_work)) == before + 1
    assert QApplication.focusWidget() is grid.table
    row = grid.table.currentIndex().row()
    press(qtbot, KEY.Key_Down)
    assert grid.table.currentIndex().row() == row + 1
    press(qtbot, KEY.Key_Tab)
    assert QApplication.focusWidget() is not grid.table


def test_many_are_set_at_once_with_before_and_after_and_one_undo(at_work, qtbot, grid):
    marks = ["M003", "M004", "M005"]
    choose(at_work, *marks)
    qtbot.mouseClick(at_work.openings.search, LEFT)
    hands = [checked_of(at_work, mark).given.opening.hand for mark in marks]
    before = len(steps(at_work))
    grid.table.setFocus()
    index = grid.model.index(grid.table.currentIndex().row(), grid.model.place_of("opening.hand"))
    grid.table.selectionModel().setCurrentIndex(index, grid.table.selectionModel().SelectionFlag.NoUpdate)
    press(qtbot, KEY.Key_E, CONTROL)
    pane = grid.changes
    assert pane.isVisible()
    assert "3 rows" in pane.said.text()
    assert not pane.take.isEnabled()
    wanted = next(hand for hand in ("LH", "RH") if hand not in hands)
    qtbot.keyClicks(pane.field, wanted)
    assert pane.take.text() == "Change 3 facts of 3 openings"
    assert [pane.lines.item(row, 3).text() for row in range(3)] == [wanted] * 3
    assert [pane.lines.item(row, 0).text() for row in range(3)] == marks
    press(qtbot, KEY.Key_Return)
    idle(qtbot, at_work)
    assert {checked_of(at_work, mark).given.opening.hand for mark in marks} == {wanted}
    assert len(steps(at_work)) == before + 1
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert [checked_of(at_work, mark).given.opening.hand for mark in marks] == hands


def test_a_block_is_copied_pasted_and_filled_down_after_a_preview(at_work, qtbot, grid):
    choose(at_work, "M004")
    at_work.openings.search.setText("M00")
    click(qtbot, grid, "M003", "opening.form")
    click(qtbot, grid, "M005", "opening.rating", SHIFT)
    assert [each.given.opening.mark for each in map(grid.model.contents.row_of, grid.ids)] == ["M003", "M004", "M005"]
    press(qtbot, KEY.Key_C, CONTROL)
    copied = QGuiApplication.clipboard().text().split("\n")
    assert len(copied) == 3
    assert [line.count("\t") for line in copied] == [2, 2, 2]
    QGuiApplication.clipboard().setText("Single door\tLHR\t90 min\nPair\tsideways\t20 min\n")
    click(qtbot, grid, "M003", "opening.form")
    press(qtbot, KEY.Key_V, CONTROL)
    pane = grid.changes
    assert pane.isVisible()
    assert "sideways" in pane.lines.item(0, 3).text(), "what cannot be read is named first"
    assert "1 cannot be taken" in pane.said.text()
    before = len(steps(at_work))
    press(qtbot, KEY.Key_Return)
    idle(qtbot, at_work)
    assert len(steps(at_work)) == before + 1
    first, second = (checked_of(at_work, mark).given.opening for mark in ("M003", "M004"))
    assert (first.hand, first.rating, second.form, second.rating) == ("LHR", "90", "pair", "20")
    click(qtbot, grid, "M003", "opening.rating")
    click(qtbot, grid, "M005", "opening.rating", SHIFT)
    press(qtbot, KEY.Key_D, CONTROL)
    press(qtbot, KEY.Key_Return)
    idle(qtbot, at_work)
    assert {checked_of(at_work, mark).given.opening.rating for mark in ("M003", "M004", "M005")} == {"90"}
    press(qtbot, KEY.Key_D, CONTROL)
    assert not pane.take.isEnabled(), "they hold that already"
    press(qtbot, KEY.Key_Escape)
    assert not pane.isVisible()
    assert QApplication.focusWidget() is grid.table


def test_values_of_a_column_are_chosen_by_keys_and_columns_frozen_grouped_and_kept(at_work, qtbot, grid):
    total = grid.model.rowCount()
    click(qtbot, grid, "M004", "opening.building")
    press(qtbot, KEY.Key_Down, ALT)
    popup = grid.popup
    qtbot.keyClicks(popup.search, "glass")
    qtbot.keyClick(popup.search, KEY.Key_Return)
    assert 0 < grid.model.rowCount() < total
    assert set(shown(grid, "opening.building")) == {"Glass Annexe"}
    chip = at_work.openings.ask._buttons[0]
    assert chip.text() == "Building: Glass Annexe  ×"
    qtbot.mouseClick(chip, LEFT)
    assert grid.model.rowCount() == total
    click(qtbot, grid, "M004", "result.state")
    grid.do("menu")
    offered = {action.text().partition("\t")[0] for action in grid.menu.actions()}
    assert offered >= {"Copy", "Sort downward", "Group by State", "Remove openings"}
    grid.menu.close()
    grid.do("freeze")
    assert grid.table.frozen.isVisible()
    assert grid.table.frozen.width() == grid.table.columnWidth(0) + grid.table.columnWidth(1)
    grid.table.horizontalScrollBar().setValue(400)
    index = click(qtbot, grid, "M005", "opening.mark")
    assert grid.table.currentIndex() == index
    press(qtbot, KEY.Key_F2)
    assert QApplication.focusWidget().parent() is grid.table.frozen.viewport(), "it is edited where it is seen"
    press(qtbot, KEY.Key_Escape)
    click(qtbot, grid, "M005", "opening.building")
    grid.do("group")
    assert grid.model.contents.group_at(0) is not None
    assert [checked.given.opening.mark for checked in map(grid.model.contents.row_of, grid.ids)] == ["M005"]
    rows = len(grid.model.shown_ids())
    qtbot.mouseClick(grid.table.viewport(), LEFT)
    for _ in range(rows):
        press(qtbot, KEY.Key_Up)
    while grid.table.currentIndex().row() > 0:
        press(qtbot, KEY.Key_Up)
    press(qtbot, KEY.Key_Left)
    assert len(grid.model.shown_ids()) < rows
    from hwsched.desktop.grid.remembering import arrangement_of

    kept = arrangement_of("openings")
    assert (kept.frozen, kept.group) == (2, "opening.building")


QUERIES = (
    "rating is known and leaf.thickness > 1 3/4",
    "status = fits and finding = holding",
    "item.backset >= 2 3/4 and not (building = Mill House)",
    "finding = warning or waived = error",
    "rating is unknown",
    "every leaf.thickness > 1 1/2 and level = 1",
    "place = Boat Store",
    "uses ARC-M18 or status = to-measure",
)


def test_the_query_line_finds_what_the_command_line_finds_and_levels_stand_as_one_walks(at_work):
    register, project = at_work.openings.register, at_work.frame.state.workspace.project
    found = []
    for text in QUERIES:
        at_work.openings.ask.ask(text)
        assert set(register.shown_ids()) == set(asked_openings(project, Scope(where=text)).ids), text
        found.append(len(register.shown_ids()))
    assert len(set(found)) > 3, found
    assert judge(parse(QUERIES[0], at_work.openings.narrowing.askable()), register._facts).true
    at_work.openings.ask.ask("")
    register.beside.levels = {
        ("Mill House", "Ground"): (False, 0.0, 0),
        ("Mill House", "1"): (False, 3.5, 0),
        ("Mill House", "2"): (False, 7.0, 0),
        ("Mill House", "Cellar"): (False, -3.0, 0),
    }
    register.sort(register.place_of("opening.level"))
    rows = [register.contents.row_of(each).given.opening for each in register.shown_ids()]
    levels = list(dict.fromkeys(each.level for each in rows if each.building == "Mill House"))
    known = [each for each in ("Cellar", "Ground", "1", "2") if each in levels]
    assert [each for each in levels if each in known] == known


def test_a_query_is_typed_with_offers_said_in_words_and_taken_away_by_chips(at_work, qtbot):
    ask, register = at_work.openings.ask, at_work.openings.register
    total = register.rowCount()
    qtbot.mouseClick(ask.line, LEFT)
    qtbot.keyClicks(ask.line, "ratin")
    assert ask.offers.isVisible()
    press(qtbot, KEY.Key_Down)
    press(qtbot, KEY.Key_Tab)
    assert ask.line.text() == "rating "
    value, label = rating(at_work)
    qtbot.keyClicks(ask.line, f"= {value[0]}")
    while ask.offers.currentItem() is None or not ask.offers.currentItem().text().startswith(f"{value} "):
        press(qtbot, KEY.Key_Down)
    press(qtbot, KEY.Key_Return)
    assert ask.line.text() == f"rating = {value} "
    some = register.rowCount()
    assert 0 < some < total
    assert ask.words.text() == f"fire rating {label}"
    qtbot.keyClicks(ask.line, "and leaf.thickness > ")
    assert register.rowCount() == some, "as long as it cannot be read, rows stay as they were"
    qtbot.keyClicks(ask.line, "wide")
    assert ask.offers.isHidden()
    press(qtbot, KEY.Key_Return)
    assert ask.line.text().endswith("> wide"), "the text is kept"
    assert ask.line.selectedText() == "wide", "and what is wrong in it marked"
    assert "wide" in ask.words.text()
    qtbot.keyClicks(ask.line, "1 in")
    assert [button.text() for button in ask._buttons] == [f"fire rating {label}  ×", 'leaf thickness over 1"  ×']
    qtbot.mouseClick(ask._buttons[0], LEFT)
    assert ask.line.text() == "leaf.thickness > 1 in"
    assert QApplication.focusWidget() is ask.line


def test_chips_of_a_long_query_go_on_in_a_next_row(at_work, qtbot):
    ask = at_work.openings.ask
    at_work.resize(1366, 768)
    room = at_work.openings.width()
    asked = (
        "rating is known",
        "leaf.material = wood",
        "leaf.thickness > 1 3/4",
        "level in 1, 2, 3, Ground, Loft, Quay, Yard, Office, Gallery",
    )
    qtbot.mouseClick(ask.line, LEFT)
    qtbot.keyClicks(ask.line, " and ".join(asked))
    press(qtbot, KEY.Key_Escape)
    qtbot.waitUntil(lambda: len(ask._buttons) == len(asked) and ask._buttons[-1].isVisible())
    qtbot.waitUntil(lambda: ask._buttons[-1].y() > ask._buttons[0].y())
    assert max(each.geometry().right() for each in ask._buttons) <= ask.width(), "all can be pressed"
    assert at_work.openings.minimumSizeHint().width() <= room, "the place is not wider for it"
    assert ask._buttons[-1].text().endswith("…  ×")
    assert "Gallery" in ask._buttons[-1].toolTip()


def test_what_would_change_has_room_on_a_small_screen(at_work, qtbot):
    grid = at_work.openings.grid
    at_work.resize(1366, 768)
    qtbot.mouseClick(at_work.openings.search, LEFT)
    room = at_work.openings.width()
    qtbot.mouseClick(grid.table.viewport(), LEFT)
    press(qtbot, KEY.Key_A, CONTROL)
    press(qtbot, KEY.Key_E, CONTROL)
    pane = grid.changes
    qtbot.waitUntil(pane.isVisible)
    assert pane.mixed.text().endswith("other values"), "the longest that is said there"
    qtbot.wait(0)
    assert at_work.openings.minimumSizeHint().width() <= room
    assert at_work.openings.width() <= room, "the place is not wider for it"


def test_views_are_kept_by_name_for_the_project_and_forgotten(at_work, qtbot):
    view, register = at_work.openings, at_work.openings.register
    qtbot.mouseClick(view.narrowing.views.buttons["To measure"], LEFT)
    assert set(shown(view.grid, "result.state")) == {"To measure"}
    qtbot.mouseClick(view.narrowing.views.buttons["All"], LEFT)
    total = register.rowCount()
    view.ask.ask(f"rating = {rating(at_work)[0]}")
    view.grid.sort("opening.mark", down=True)
    found = register.shown_ids()
    qtbot.mouseClick(view.narrowing.views.keep, LEFT)
    qtbot.keyClicks(view.narrowing.views.name, "wood, rated")
    press(qtbot, KEY.Key_Return)
    qtbot.mouseClick(view.narrowing.views.buttons["All"], LEFT)
    view.grid.sort(None)
    assert register.rowCount() == total
    qtbot.mouseClick(view.narrowing.views.buttons["wood, rated"], LEFT)
    assert register.shown_ids() == found
    at_work.project.open_project(str(at_work.frame.state.workspace.project.path))
    idle(qtbot, at_work)
    qtbot.mouseClick(view.narrowing.views.buttons["wood, rated"], LEFT)
    assert register.shown_ids() == found
    qtbot.mouseClick(view.narrowing.views.forget, LEFT)
    assert "wood, rated" not in view.narrowing.views.buttons


def test_selecting_all_asks_only_for_cells_that_are_seen(sample_file, grid, at_work, qtbot, monkeypatch):
    """Whether a whole column is selected would be asked of each of its cells: at 10,000 openings for seconds."""
    real, asked = grid.model.target_at, set()
    monkeypatch.setattr(grid.model, "target_at", lambda index: asked.add(index.row()) or real(index))
    click(qtbot, grid, grid.model.contents.row_at(0).given.opening.mark, "mark")
    press(qtbot, KEY.Key_A, CONTROL)
    grid.table.grab()
    assert len(grid.ids) == grid.model.rowCount() > 100
    seen = grid.table.rowAt(grid.table.viewport().height() - 1)
    assert 0 < max(asked) <= seen + 1


def lines_of(places):
    """The lines of the tree of places: how each is called, and how many openings stand there."""
    root = places.topLevelItem(0)
    buildings = [root.child(n) for n in range(root.childCount())]
    levels = [building.child(n) for building in buildings for n in range(building.childCount())]
    return [((each.parent().text(0), each.text(0)), int(each.text(1))) for each in levels]


def test_the_tree_of_places_follows_a_level_that_is_typed_and_a_place_that_is_empty_shows_all(at_work, qtbot, grid):
    places = at_work.openings.places
    counts = dict(lines_of(places))
    given = checked_of(at_work, "M004").given.opening
    click(qtbot, grid, "M004", "opening.level")
    press(qtbot, KEY.Key_F2)
    qtbot.keyClicks(QApplication.focusWidget(), "Crow's nest")
    press(qtbot, KEY.Key_Return)
    qtbot.waitUntil(lambda: checked_of(at_work, "M004").given.opening.level == "Crow's nest")
    idle(qtbot, at_work)
    after = dict(lines_of(places))
    assert after.pop((given.building, "Crow's nest")) == 1
    assert after == counts | {(given.building, given.level): counts[given.building, given.level] - 1}
    # Shown alone, it is moved back: nothing stands there any more, and nobody looks at an empty list.
    (line,) = places.findItems("Crow's nest", Qt.MatchFlag.MatchExactly | Qt.MatchFlag.MatchRecursive, 0)
    places.scrollToItem(line)
    qtbot.mouseClick(places.viewport(), LEFT, pos=places.visualItemRect(line).center())
    assert grid.model.rowCount() == 1
    click(qtbot, grid, "M004", "opening.level")
    press(qtbot, KEY.Key_F2)
    qtbot.keyClicks(QApplication.focusWidget(), given.level)
    press(qtbot, KEY.Key_Return)
    qtbot.waitUntil(lambda: checked_of(at_work, "M004").given.opening.level == given.level)
    idle(qtbot, at_work)
    assert dict(lines_of(places)) == counts
    assert grid.model.rowCount() == at_work.openings.register.total()
    assert at_work.frame.state.checked.given.opening.mark == "M004"


def test_keys_that_a_box_in_a_cell_leaves_do_nothing_to_the_rows(at_work, qtbot, grid):
    click(qtbot, grid, "M004", "opening.hand")
    before = len(steps(at_work))
    press(qtbot, KEY.Key_F2)
    box = QApplication.focusWidget()
    assert isinstance(box, QComboBox)
    for key, modifier in ((KEY.Key_A, CONTROL), (KEY.Key_Delete, NONE), (KEY.Key_D, CONTROL), (KEY.Key_E, CONTROL)):
        qtbot.keyClick(box, key, modifier)
        assert [checked.given.opening.mark for checked in map(grid.model.contents.row_of, grid.ids)] == ["M004"]
        assert QApplication.focusWidget() is box
    press(qtbot, KEY.Key_Escape)
    assert QApplication.focusWidget() is grid.table
    assert len(steps(at_work)) == before


def test_a_query_of_one_fact_that_cannot_be_read_hides_no_row_and_offers_are_read_whole(at_work, qtbot):
    ask, register = at_work.openings.ask, at_work.openings.register
    total = register.rowCount()
    qtbot.mouseClick(ask.line, LEFT)
    qtbot.keyClicks(ask.line, "rat")
    offers = ask.offers
    assert offers.isVisible()
    assert offers.sizeHintForColumn(0) <= offers.viewport().width()
    assert at_work.rect().contains(offers.geometry())
    press(qtbot, KEY.Key_Escape)
    press(qtbot, KEY.Key_A, CONTROL)
    qtbot.keyClicks(ask.line, "leaf.thickness ")
    assert register.rowCount() < total, "so far it may be a word that is looked for"
    for typed in ("> ", "and "):
        qtbot.keyClicks(ask.line, typed)
        assert register.rowCount() == total, ask.line.text()
    press(qtbot, KEY.Key_Return)
    assert ask.line.text() == "leaf.thickness > and "
    assert ask.line.selectedText() == "and"


def test_a_list_without_a_row_says_why(at_work, qtbot, grid):
    def painted():
        picture = grid.table.viewport().grab().toImage()
        ground = picture.pixel(picture.width() - 1, picture.height() - 1)
        places = ((x, y) for x in range(picture.width()) for y in range(picture.height()))
        return any(picture.pixel(x, y) != ground for x, y in places)

    qtbot.mouseClick(at_work.openings.ask.line, LEFT)
    qtbot.keyClicks(at_work.openings.ask.line, "zzzz")
    assert grid.model.rowCount() == 0
    assert painted(), "words stand there, and no bare list"


def test_no_cell_says_with_a_bare_mark_that_nobody_knows_and_the_word_is_quiet(at_work, qtbot, grid):
    """What is missing is said in words, in a colour of its own, and no cell of the first columns cuts it."""
    contents, quiet = grid.model.contents, colour("soft")
    found = set()
    for place, column in enumerate(contents.columns):
        for line in range(len(contents)):
            cell = grid.model.index(line, place)
            assert cell.data() != "?", column.name
            if column.attribute is not None and cell.data() == unknown_word():
                assert cell.data(Qt.ItemDataRole.ForegroundRole) == quiet
                found.add(place)
    assert found
    metrics = grid.table.fontMetrics()
    for place in found:
        assert grid.table.columnWidth(place) >= metrics.horizontalAdvance(unknown_word()) + 2 * SPACE.hair, place
