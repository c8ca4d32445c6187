"""The calculators as forms: fields in words and units, examples as they are, filled from an opening, given back."""

import re
from contextlib import contextmanager

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication, QComboBox, QLabel, QLineEdit, QTableWidget

from hwsched.calc.calculators import CALCULATORS
from hwsched.calc.opening.stack import StackCollar, StackCylinder, cylinder_stack
from hwsched.desktop.looks.letters import use_own_letters
from hwsched.desktop.project.calculator_answers import told
from hwsched.desktop.project.calculator_fields import form_of
from hwsched.desktop.project.calculator_form import CalculatorForm
from hwsched.desktop.project.calculators import CalculatorsPage
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.project.small_table import SmallTable
from hwsched.desktop.widgets.lines import Lines
from tests.desktop.conftest import checked_of, choose, look_put_on

LEFT = Qt.MouseButton.LeftButton
NAMES = [each.name for each in CALCULATORS]
MACHINE = re.compile(r"\b[a-z0-9]+(_[a-z0-9]+)+\b|[{}]|\b(null|true|false|[Ii]d)\b")
"""A name of JSON, a word of it, or a brace."""


def texts(widget):
    """All that a person reads on a widget."""
    for label in widget.findChildren(QLabel):
        yield label.text()
        yield label.toolTip()
    for line in widget.findChildren(QLineEdit):
        yield line.text()
        yield line.placeholderText()
        yield line.toolTip()
    for box in widget.findChildren(QComboBox):
        yield from (box.itemText(n) for n in range(box.count()))
    for table in widget.findChildren(QTableWidget):
        for column in range(table.columnCount()):
            yield table.horizontalHeaderItem(column).text()
            yield table.horizontalHeaderItem(column).toolTip()
            yield from (table.item(row, column).text() for row in range(table.rowCount()))


@pytest.fixture
def dialog(qtbot):
    made = CalculatorsPage()
    qtbot.addWidget(made)
    made.show()
    return made


def pick(qtbot, dialog, name):
    row = dialog.names.visualItemRect(dialog.names.item(NAMES.index(name)))
    dialog.names.scrollToItem(dialog.names.item(NAMES.index(name)))
    row = dialog.names.visualItemRect(dialog.names.item(NAMES.index(name)))
    qtbot.mouseClick(dialog.names.viewport(), LEFT, pos=row.center())


def type_into(qtbot, dialog, name, text):
    field = dialog.form.lines[name,].field
    dialog.form.ensureWidgetVisible(field)
    qtbot.keyClick(field, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClick(field, Qt.Key.Key_Delete)
    qtbot.keyClicks(field, text)
    qtbot.waitUntil(lambda: not dialog._timer.isActive(), timeout=3000)


def test_each_example_is_answered_in_words_without_a_name_of_json(dialog, qtbot):
    for row, calculator in enumerate(CALCULATORS):
        dialog.names.setCurrentRow(row)
        assert dialog.answer.said.text() == "Nothing is typed yet.", calculator.name
        assert not dialog.form.touched()
        dialog.begin_with_example()
        assert dialog.answer.basis.text() == f"Basis: {calculator.basis}", calculator.name
        assert dialog.answer.said.text().strip(), calculator.name
        wrong = [each for each in texts(dialog.form) if MACHINE.search(each)]
        wrong += [each for each in texts(dialog.answer) if MACHINE.search(each)]
        assert not wrong, (calculator.name, wrong)


def flags(fields, path=()):
    """All that an answer says is so or not, each with where it stands."""
    for each in fields:
        if each.kind == "flag":
            yield (*path, each.name), each
        yield from flags(each.fields, (*path, each.name))


@pytest.mark.parametrize("calculator", CALCULATORS, ids=NAMES)
def test_what_is_so_and_what_is_not_are_sentences_of_their_own(calculator):
    """Not "Not so: fits were left out": a sentence that denies another has to be written, not put together."""
    for path, each in flags(calculator.outputs):
        for words in (each.yes, each.no):
            assert words[:1].isupper(), (path, words)
            assert words.endswith("."), (path, words)
        assert each.yes != each.no
        if len(path) == 1:
            said = [told(calculator, {each.name: answer}, "mm").sentences for answer in (True, False)]
            assert said == [[each.yes], [each.no]]


def stated(value):
    """Return JSON without what says nothing."""
    if isinstance(value, dict):
        held = {name: stated(each) for name, each in value.items()}
        return {name: each for name, each in held.items() if each not in (None, [], {})}
    return [stated(each) for each in value] if isinstance(value, list) else value


@pytest.mark.parametrize("style", ["mm", "fraction"])
def test_what_nobody_typed_over_goes_in_as_it_is(qtbot, style):
    """However a length is rounded for show, the calculation gets the number itself."""
    for calculator in CALCULATORS:
        form = CalculatorForm(calculator, dict(calculator.example), style, "mm")
        qtbot.addWidget(form)
        assert form.asked() == stated(calculator.example), calculator.name


def test_a_wrong_number_is_said_beside_its_field_in_words(dialog, qtbot):
    pick(qtbot, dialog, "cylinder-stack")
    qtbot.mouseClick(dialog.example, LEFT)
    type_into(qtbot, dialog, "leaf_mm", "-3")
    assert dialog.answer.said.text().startswith("Leaf thickness: ")
    assert dialog.form.lines["leaf_mm",].echo.property("bad")
    type_into(qtbot, dialog, "leaf_mm", "44.45")
    assert dialog.answer.basis.text().startswith("Basis: ")


@contextmanager
def own_letters(qapp):
    before = QFont(qapp.font())
    assert use_own_letters(qapp)
    try:
        yield
    finally:
        qapp.setFont(before)


def titles_read_whole(table):
    """Whether titles have room for all their lines, and columns for the longest word of their titles."""
    header, letters = table.horizontalHeader(), table.fontMetrics()
    titles = [table.horizontalHeaderItem(n).text() for n in range(header.count())]
    longest = [max(map(letters.horizontalAdvance, each.split())) for each in titles]
    short = [n for n, each in enumerate(titles) if len(each) <= len("Height [in]")]
    one_line = header.sectionSizeFromContents(min(short)).height() if short else 0
    assert all(header.sectionSizeFromContents(n).height() == one_line < 2 * letters.lineSpacing() for n in short)
    wide = all(header.sectionSize(n) > across for n, across in enumerate(longest))
    return wide and header.height() >= header.sizeHint().height()


@pytest.mark.parametrize("percent", [100, 200])
def test_long_titles_wrap_so_that_columns_are_as_wide_as_their_words(qapp, qtbot, percent):
    """Nothing is scrolled sideways on a large screen for the sake of a title, and no title is cut."""
    preferences = Preferences()
    preferences.text_size = percent
    with own_letters(qapp), look_put_on(qapp, preferences):
        page = CalculatorsPage()
        qtbot.addWidget(page)
        page.resize(1830, 960)
        page.show()
        for row in range(page.names.count()):
            page.names.setCurrentRow(row)
            qtbot.mouseClick(page.example, LEFT)
            for _ in range(4):
                QApplication.processEvents()
            small = [each.cells for each in page.form.tables.values()]
            for table in (*page.answer.tables, *small):
                assert titles_read_whole(table), (page.calculator.name, table.accessibleName())
            scrolled = [each.accessibleName() for each in page.answer.tables if each.horizontalScrollBar().maximum()]
            assert percent > 100 or not scrolled, (page.calculator.name, scrolled)


def test_a_short_title_stays_in_one_line_and_a_long_one_where_it_has_room(qapp, qtbot):
    with look_put_on(qapp, Preferences()):
        table = Lines(("Taken in", "How far the head stands proud of the trim"), 1)
        qtbot.addWidget(table)
        heights = {}
        for across in (700, 220, 700):
            table.resize(across, 200)
            table.show()
            for _ in range(4):
                QApplication.processEvents()
            heights.setdefault(across, set()).add(table.horizontalHeader().height())
        (one,), (more,) = heights[700], heights[220]
        assert more >= one + table.fontMetrics().height()
        assert table.columnWidth(0) < table.fontMetrics().horizontalAdvance("Taken in, and more")


def hints(form):
    for line in form.lines.values():
        yield line.field.itemText(0) if isinstance(line.field, QComboBox) else line.field.placeholderText()


def test_what_counts_where_a_field_is_left_empty_is_said_as_it_would_be_typed(qtbot):
    """Not 3 beside inches for 3 mm, and nothing as a machine writes it."""
    for calculator in CALCULATORS:
        for style in ("mm", "fraction"):
            form = CalculatorForm(calculator, {}, style, "in")
            qtbot.addWidget(form)
            assert not [each for each in hints(form) if each.startswith(("true", "false", "["))], calculator.name
    halves = CALCULATORS[NAMES.index("euro-halves")]
    for style, said in (("mm", "3 mm"), ("fraction", '1/8" (3 mm)')):
        form = CalculatorForm(halves, {}, style, "in")
        qtbot.addWidget(form)
        assert form.lines["key_limit_mm",].field.placeholderText() == f"{said} where it is left out"
        assert "no where it is left out" in hints(form)


def test_points_that_come_out_are_lengths_by_axis():
    channel = CALCULATORS[NAMES.index("channel")]
    said = told(channel, channel.run(channel.example), "mm")
    (headings, rows) = next((headings, rows) for _title, headings, rows in said.tables if len(headings) == 3)
    assert headings == ["x", "y", "z"]
    assert all(cell.endswith(" mm") for row in rows for cell in row)


def test_a_list_is_a_small_table_with_rows_added_and_taken_away(dialog, qtbot):
    pick(qtbot, dialog, "cylinder-stack")
    qtbot.mouseClick(dialog.example, LEFT)
    table = dialog.form.tables["cylinders",]
    rows = table.cells.rowCount()
    assert rows == len(dialog.calculator.example["cylinders"])
    dialog.form.ensureWidgetVisible(table.more)
    qtbot.mouseClick(table.more, LEFT)
    assert table.cells.rowCount() == rows + 1
    # An empty row is nothing yet.
    assert len(dialog.form.asked()["cylinders"]) == rows
    for column, text in ((0, "long one"), (1, "50"), (2, "0")):
        table.cells.scrollToItem(table.cells.item(rows, column))
        where = table.cells.visualItemRect(table.cells.item(rows, column)).center()
        qtbot.mouseClick(table.cells.viewport(), LEFT, pos=where)
        qtbot.keyClick(table.cells, Qt.Key.Key_F2)
        editor = QApplication.focusWidget()
        assert isinstance(editor, QLineEdit)
        qtbot.keyClicks(editor, text)
        qtbot.keyClick(editor, Qt.Key.Key_Return)
        # Qt lets the editor have the key first.
        qtbot.waitUntil(lambda at=column, typed=text: table.cells.item(rows, at).text() == typed, timeout=3000)
    assert dialog.form.asked()["cylinders"][rows] == {"part": "long one", "length_mm": 50.0, "cam_offset_mm": 0.0}
    qtbot.mouseClick(table.less, LEFT)
    assert table.cells.rowCount() == rows
    qtbot.waitUntil(lambda: not dialog._timer.isActive(), timeout=3000)


def test_an_answer_is_sentences_and_a_table():
    """The head of a 1 1/8 in shell: leaf/2 + trim - ... the calculation's own figures, written once in each unit."""
    calculator = CALCULATORS[NAMES.index("cylinder-stack")]
    result = cylinder_stack(
        44.45, 0.0, [StackCylinder("A", 28.575, 0.0)], [StackCollar("C", 4.7625)], [], measure_mm=2.0, tolerance_mm=3.0
    )
    assert result.fits
    answer = calculator.run(
        {
            "leaf_mm": 44.45, "trim_mm": 0, "measure_mm": 2, "tolerance_mm": 3,
            "cylinders": [{"part": "A", "length_mm": 28.575, "cam_offset_mm": 0}],
            "collars": [{"part": "C", "height_mm": 4.7625}],
        }
    )  # fmt: skip
    said = told(calculator, answer, "mm")
    (title, headings, rows) = said.tables[0]
    assert title.startswith("What fits")
    assert headings[:2] == ["Cylinder", "Collar"]
    assert rows[0][:2] == ["A", "C"]
    stands = headings.index("How far the head stands proud of the trim")
    assert rows[0][stands] == f"{result.fits[0].projection_mm:.1f} mm"


def test_what_if_this_trim_were_a_quarter_thicker(at_work, qtbot):
    choose(at_work, "M004")
    checked = checked_of(at_work, "M004")
    lock = next(item for item in checked.given.items if item.trim_key_mm is not None)
    trim, leaf = lock.trim_key_mm, checked.given.leaves[0].thickness_mm
    at_work.project.act_calculators.trigger()
    dialog = at_work.frame.pages.widgets["calculators"]
    pick(qtbot, dialog, "cylinder-stack")
    assert not dialog.give.isEnabled()
    # It is as the chosen opening stands, and follows another one that is chosen as long as nothing was typed.
    assert "As M004 stands" in dialog.about.text()
    qtbot.mouseClick(dialog.fill, LEFT)
    asked = dialog.form.asked()
    assert (asked["leaf_mm"], asked["trim_mm"]) == (leaf, trim)
    taken = next(part.part for part in checked.fit.parts if part.role == "cylinder")
    assert taken in {row["part"] for row in asked["cylinders"]}
    first = dialog.answer.tables[0].item(0, 0).text()
    assert first == taken
    # Typed in the project's inches; nothing of the opening changes before it is given back.
    type_into(qtbot, dialog, "trim_mm", f"{(trim + 6.35) / 25.4:.6f}")
    assert dialog.form.asked()["trim_mm"] == pytest.approx(trim + 6.35, abs=0.001)
    assert checked_of(at_work, "M004").given.items == checked.given.items
    qtbot.mouseClick(dialog.give, LEFT)
    after = next(item for item in checked_of(at_work, "M004").given.items if item.id == lock.id)
    assert after.trim_key_mm == pytest.approx(trim + 6.35, abs=0.001)
    assert not dialog.give.isEnabled()
    at_work.history.act_undo.trigger()
    assert next(i for i in checked_of(at_work, "M004").given.items if i.id == lock.id).trim_key_mm == trim


def test_headings_of_tables_and_answers_are_said_in_the_language(stretched, qtbot):
    page = CalculatorsPage()
    qtbot.addWidget(page)
    page.names.setCurrentRow(1)
    page.example.click()
    qtbot.waitUntil(lambda: bool(page.answer.findChildren(QTableWidget)))
    headings = [label.text() for label in page.form.findChildren(QLabel) if label.font().bold()]
    assert len(headings) >= 3
    told = page.answer.findChildren(QTableWidget)[0]
    titles = [told.horizontalHeaderItem(n).text() for n in range(told.columnCount())]
    assert [each for each in (*headings, *titles) if not each.startswith("[")] == []


def test_the_page_is_not_scrolled_for_its_buttons_in_large_letters(qtbot, qapp):
    preferences = Preferences()
    with look_put_on(qapp, preferences) as look:
        look._preferences.text_size = 200
        page = CalculatorsPage()
        qtbot.addWidget(page)
        page.names.setCurrentRow(1)
        page.example.click()
        qtbot.waitUntil(lambda: bool(page.answer.findChildren(QTableWidget)))
        # Of a screen of 1920 by 1080 the frame leaves so much.
        assert page.heightForWidth(1680) <= 860
        look._preferences.text_size = 100


@pytest.mark.parametrize(
    ("name", "path", "wanted"),
    # Where the letters of the unit stood in the words before it, as "in" in "cylinder", it was left out.
    [
        ("cylinder-stack", "collars", "Height under the cylinder's head [in]"),
        ("placement", "patterns", "Hole: Left side [in]"),
    ],
)
def test_each_column_of_a_small_table_says_its_unit_and_is_told_whole(qtbot, name, path, wanted):
    calculator = next(each for each in CALCULATORS if each.name == name)
    asked = next(each for each in form_of(calculator).items if getattr(each, "path", ()) == (path,))
    table = SmallTable(asked, calculator.example[path], "fraction", "in")
    qtbot.addWidget(table)
    heads = [table.cells.horizontalHeaderItem(n) for n in range(table.cells.columnCount())]
    assert wanted in [each.text() for each in heads]
    assert all(each.toolTip().startswith(each.text()) for each in heads), "a title that is cut is told whole"
