"""The page of a rule: facts in two columns, lines that stand in, words as they are; in every language in line."""

import pytest
from PySide6.QtGui import QTextCursor, QTextDocument, QTextTable

from hwsched.desktop.widgets.rule_page import write_rule
from hwsched.rules import RULEBOOK
from hwsched.rules.page import RulePage, page_of, told_of
from tests.desktop.test_languages import stretched  # noqa: F401 (a fixture)

PAGE = RulePage(
    "Gap <b>below</b> the leaf",
    (("Identifier", "gap-below"), ("Basis", "common practice: a < b & c")),
    (("It judges the opening as a whole.",), ("Limits:", "  gap = 3", "    A project may set it.")),
)


def blocks_of(document):
    block = document.begin()
    while block.isValid():
        yield block
        block = block.next()


def large(block):
    """How large the first letter of a line is."""
    cursor = QTextCursor(block)
    cursor.movePosition(QTextCursor.MoveOperation.Right)
    return cursor.charFormat().font().pixelSize()


def test_facts_stand_in_two_columns_and_words_are_no_markup(qapp):
    document = QTextDocument()
    for _again in range(2):
        write_rule(document, PAGE)
        blocks = list(blocks_of(document))
        assert blocks[0].text() == PAGE.title
        assert large(blocks[0]) > large(blocks[-1])
        (table,) = [each for each in document.rootFrame().childFrames() if isinstance(each, QTextTable)]
        assert (table.rows(), table.columns()) == (2, 2)
        for row, words in enumerate(PAGE.facts):
            for column, text in enumerate(words):
                cell = table.cellAt(row, column)
                cursor = QTextCursor(cell.firstCursorPosition())
                cursor.setPosition(cell.lastCursorPosition().position(), QTextCursor.MoveMode.KeepAnchor)
                assert cursor.selectedText() == text
        told = [each for each in blocks if each.text() and QTextCursor(each).currentTable() is None][1:]
        assert [each.text() for each in told] == [line.strip() for lines in PAGE.paragraphs for line in lines]
        margins = [each.blockFormat().leftMargin() for each in told]
        assert margins[:2] == [0, 0]
        assert 0 < margins[2] < margins[3]


@pytest.mark.parametrize("rule", RULEBOOK[:5], ids=lambda rule: rule.id)
def test_facts_are_in_line_in_every_language(stretched, rule):  # noqa: F811
    facts = told_of(rule).facts
    lines = page_of(rule).splitlines()[2:]
    assert len({line.index(text, len(name)) for line, (name, text) in zip(lines, facts, strict=False)}) == 1
