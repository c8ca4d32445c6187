"""A tree with columns beside its names cuts no name and is scrolled to no column as long as one can be left out."""

import pytest
from PySide6.QtWidgets import QApplication, QTreeWidgetItem

from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.widgets.giving_tree import GivingTree

NAME = "Leaf thick enough for the case"


@pytest.fixture
def tree(qtbot):
    made = GivingTree(["Rule", "Severity", "In force", "Findings"], gives_way=(1, 2))
    qtbot.addWidget(made)
    branch = QTreeWidgetItem(made, ["Survey"])
    line = QTreeWidgetItem(branch, [NAME, "Warning", "on, 2 limits changed", "19"])
    made.tell(line, "Leaf high and thick enough for it (leaf-high)")
    made.expandAll()
    made.resize(wide(120), 300)
    made.show()
    QApplication.processEvents()
    return made


def shown(tree, width):
    tree.resize(width, 300)
    QApplication.processEvents()
    assert tree.horizontalScrollBar().maximum() == 0
    return [column for column in range(4) if not tree.isColumnHidden(column)]


def test_the_least_needed_columns_are_left_out_first_and_come_back(tree):
    frame = tree.width() - tree.viewport().width()
    name, *others = [max(tree.sizeHintForColumn(n), tree.header().sectionSizeHint(n)) for n in range(4)]
    all_of_them = frame + name + sum(others)
    assert shown(tree, all_of_them) == [0, 1, 2, 3]
    assert shown(tree, all_of_them - 1) == [0, 2, 3]
    assert shown(tree, all_of_them - others[0]) == [0, 2, 3]
    assert tree.columnWidth(0) == name
    assert shown(tree, all_of_them - others[0] - 1) == [0, 3]
    assert shown(tree, all_of_them + 50) == [0, 1, 2, 3]
    assert tree.columnWidth(0) == name + 50


def test_what_is_left_out_stands_in_the_tip(tree):
    line = tree.topLevelItem(0).child(0)
    assert line.toolTip(0).splitlines() == [
        "Leaf high and thick enough for it (leaf-high)", "In force: on, 2 limits changed", "Severity: Warning",
    ]  # fmt: skip


def test_folded_lines_take_no_room(tree):
    frame, title = tree.width() - tree.viewport().width(), tree.header().sectionSizeHint(2)
    # Folded away is what made the third column wide.
    narrow = frame + wide(22) + sum(tree.header().sectionSizeHint(n) for n in (1, 2, 3))
    assert tree.columnWidth(2) > title
    assert 1 not in shown(tree, narrow)
    tree.collapseAll()
    QApplication.processEvents()
    assert shown(tree, narrow + 1) == [0, 1, 2, 3]
    assert tree.columnWidth(2) == title


def test_nothing_is_measured_while_lines_are_laid_out(tree, qtbot, monkeypatch):
    """Qt says in the midst of it that a branch is unfolded; lines that were measured then spoiled its memory."""
    shared = []
    monkeypatch.setattr(tree, "_share_out", lambda: shared.append(True))
    tree.collapseAll()
    tree.expandAll()
    assert shared == []
    qtbot.waitUntil(lambda: bool(shared))
    assert shared == [True], "once for all branches"
