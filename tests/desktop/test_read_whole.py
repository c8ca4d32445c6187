"""Words that have no room are read all the same: their tip begins with all of them. Tabs stay in sight, all of them."""

import ast
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint
from PySide6.QtGui import QHelpEvent
from PySide6.QtWidgets import (
    QApplication,
    QLineEdit,
    QTableWidget,
    QTableWidgetItem,
    QToolTip,
    QTreeWidget,
    QTreeWidgetItem,
    QWidget,
)

import hwsched.desktop
from hwsched.desktop.looks.plain_words import keep_words_plain
from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.widgets.tabs import TabbedPages
from tests.desktop.conftest import choose
from tests.desktop.test_access import large, look  # noqa: F401 (fixtures)

LONG = "Only openings that were surveyed again since the revision that is named here"


@pytest.fixture(autouse=True)
def style():
    """That of the window, put on before anything is shown."""
    keep_words_plain()


def asked(widget, at):
    """What is told when the pointer rests on a place."""
    QToolTip.hideText()
    QApplication.sendEvent(widget, QHelpEvent(QHelpEvent.Type.ToolTip, at, widget.mapToGlobal(at)))
    return QToolTip.text()


def shown(qtbot, made, width):
    qtbot.addWidget(made)
    made.resize(width, 200)
    made.show()
    qtbot.wait(10)
    return made


@pytest.mark.parametrize("wraps", [False, True])
def test_a_cell_that_is_cut_is_told_above_its_tip(look, qtbot, wraps):  # noqa: F811
    table = QTableWidget(2, 1)
    table.setWordWrap(wraps)
    for row, text in enumerate((LONG, "Held")):
        item = QTableWidgetItem(text)
        item.setToolTip("What is asked for")
        table.setItem(row, 0, item)
    shown(qtbot, table, 300)
    places = [table.visualRect(table.model().index(row, 0)).center() for row in range(2)]
    assert [asked(table.viewport(), at) for at in places] == [f"{LONG}\nWhat is asked for", "What is asked for"]
    # Wherever they are read whole nothing is told twice.
    table.setColumnWidth(0, wide(100))
    assert asked(table.viewport(), places[0]) == "What is asked for"
    table.setColumnWidth(0, wide(20))
    table.resizeRowsToContents()
    assert asked(table.viewport(), QPoint(10, 10)) == ("What is asked for" if wraps else f"{LONG}\nWhat is asked for")


def test_a_title_that_is_cut_is_told(look, qtbot):  # noqa: F811
    tree = QTreeWidget()
    tree.setHeaderLabels([LONG, "State"])
    tree.addTopLevelItem(QTreeWidgetItem(["A", "held"]))
    shown(qtbot, tree, 400)
    assert asked(tree.header().viewport(), QPoint(5, 5)) == LONG
    tree.headerItem().setToolTip(0, "Which they are")
    assert asked(tree.header().viewport(), QPoint(5, 5)) == f"{LONG}\nWhich they are"
    tree.setColumnWidth(0, wide(100))
    assert asked(tree.header().viewport(), QPoint(5, 5)) == "Which they are"


def test_a_field_tells_what_it_holds_or_asks_for_where_it_has_no_room(look, qtbot):  # noqa: F811
    field = QLineEdit()
    field.setToolTip("By words or by a question")
    field.setPlaceholderText(LONG)
    shown(qtbot, field, 150)
    at = QPoint(5, 5)
    assert asked(field, at) == f"{LONG}\nBy words or by a question"
    qtbot.keyClicks(field, "rating")
    assert asked(field, at) == "By words or by a question"
    qtbot.keyClicks(field, " is known and level is 2 and the leaf is wood")
    assert asked(field, at) == "rating is known and level is 2 and the leaf is wood\nBy words or by a question"
    field.setEchoMode(QLineEdit.EchoMode.Password)
    assert "rating" not in asked(field, at)


def test_tabs_stay_in_sight_and_the_longest_are_cut_first(look, qtbot):  # noqa: F811
    pages, titles = TabbedPages(), ["Facts", "Documents and photographs", "Findings of this opening"]
    for title in titles:
        pages.addTab(QWidget(), title)
    shown(qtbot, pages, wide(100))
    bar = pages.tabBar()
    assert not bar.drawBase(), "the line under them is that of the pages below"
    whole = [bar.tabRect(at).width() for at in range(3)]
    pages.resize(sum(whole) - 60, 200)
    qtbot.wait(10)
    cut = [bar.tabRect(at) for at in range(3)]
    assert cut[0].width() == whole[0]
    assert all(cut[at].width() < whole[at] for at in (1, 2))
    assert cut[2].right() < bar.width()
    bar.setTabToolTip(0, "What was surveyed")
    assert [asked(bar, each.center()) for each in cut] == ["What was surveyed", *titles[1:]]
    # A few letters of each are always read: then they are scrolled.
    pages.resize(wide(18), 200)
    qtbot.wait(10)
    assert bar.tabRect(1).width() >= wide(9)


def test_names_of_facts_are_told_with_what_they_mean(large, qtbot):  # noqa: F811
    choose(large, "M016")
    form = large.sheet.facts
    large.sheet.pages.show_page(form)
    section = form.topLevelItem(0)
    lines = [each for each in map(section.child, range(section.childCount())) if each.toolTip(0)]
    line = max(lines, key=lambda each: len(each.text(0)))
    form.scrollToItem(line)
    qtbot.wait(10)
    at = form.visualItemRect(line)
    assert form.columnWidth(0) - form.indentation() * 2 < form.fontMetrics().horizontalAdvance(line.text(0))
    told = asked(form.viewport(), QPoint(at.left() + 5, at.center().y()))
    assert told.splitlines() == [line.text(0), *line.toolTip(0).splitlines()]


def test_every_row_of_tabs_of_the_desktop_is_one_of_these():
    root, kinds, found = Path(hwsched.desktop.__file__).parent, ("QTabBar", "QTabWidget"), []
    for path in sorted(root.rglob("*.py")):
        if path.name == "tabs.py":
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            made = isinstance(node, ast.Call) and getattr(node.func, "id", "") in kinds
            kin = isinstance(node, ast.ClassDef) and any(getattr(base, "id", "") in kinds for base in node.bases)
            if made or kin:
                found.append(f"{path.relative_to(root)}:{node.lineno}")
    assert found == []
