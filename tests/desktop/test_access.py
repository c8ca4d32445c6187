"""Every place for everybody: what can be worked has a name, is reached by Tab, and is large enough to be hit."""

import pytest
from PySide6.QtCore import QRect, QStringListModel, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSpinBox,
    QCheckBox,
    QComboBox,
    QFileDialog,
    QHeaderView,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QPushButton,
    QRadioButton,
    QScrollArea,
    QTabBar,
    QTableView,
    QTabWidget,
    QTextEdit,
    QToolBar,
    QToolButton,
    QTreeView,
)

from hwsched.desktop.findings.waive_dialog import WaiveDialog
from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.looks.tokens import SPACE, TARGET, THIN
from hwsched.desktop.parts.new_set_dialog import NewSetDialog
from hwsched.desktop.parts.proposed_sets_dialog import ProposedSetsDialog
from hwsched.desktop.power.move_dialog import MoveDialog
from hwsched.desktop.power.power_facts_form import NewPowerDialog
from hwsched.desktop.project.people_dialog import PeopleDialog
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.project.settings_dialog import SettingsDialog
from hwsched.desktop.project.units import NewProjectDialog, UnitsBox
from hwsched.desktop.release.print_dialog import PrintDialog
from hwsched.desktop.release.transmittals_window import TransmittalDialog
from hwsched.desktop.widgets.wrapping import WrappingTree
from hwsched.survey import SUPPLY
from hwsched.values import Settings
from tests.desktop.conftest import checked_of, choose, idle, look_put_on
from tests.desktop.test_conversation import LIST

WORKED = (
    QAbstractButton, QLineEdit, QComboBox, QAbstractSpinBox, QAbstractItemView, QTextEdit, QPlainTextEdit, QTabBar,
)  # fmt: skip
HIT = (QAbstractButton, QComboBox, QLineEdit, QAbstractSpinBox)


@pytest.fixture
def look(qapp):
    """The look that was chosen, put on."""
    with look_put_on(qapp, Preferences()) as made:
        yield made


@pytest.fixture
def whole(at_work, look):
    """The window as a person sees it, with the look put on and an opening chosen."""
    at_work.resize(1366, 768)
    choose(at_work, "M016")
    return at_work


@pytest.fixture
def large(request):
    """The window with letters of twice their size."""
    Preferences().text_size = 200
    request.getfixturevalue("look")
    at_work = request.getfixturevalue("at_work")
    at_work.resize(1920, 1080)
    choose(at_work, "M016")
    return at_work


def inside(each, kinds):
    """Whether a widget is a part of another one, which is worked as a whole."""
    above = each.parentWidget()
    while above is not None:
        if isinstance(above, kinds):
            return True
        above = above.parentWidget()
    return False


def operable(parent):
    """What a person works inside a widget that is seen."""
    for each in parent.findChildren(QAbstractButton.__mro__[1]):
        if not isinstance(each, WORKED) or not each.isVisibleTo(parent.window()):
            continue
        # Headers, the field of a spin box, the list of a combo box, arrows of tabs: worked with their whole.
        if isinstance(each, QHeaderView) or inside(each, (QComboBox, QAbstractSpinBox, QTabBar, QHeaderView)):
            continue
        # The corner of a table, and what clears a field: there are keys for both.
        if isinstance(each, QAbstractButton) and (
            type(each) is QAbstractButton or inside(each, QLineEdit) or type(each).__name__ == "QTableCornerButton"
        ):
            continue
        yield each


def told(each):
    said = each.objectName() or getattr(each, "text", str)()
    return f"{type(each).__name__} {said!r} in {'/'.join(above(each))}"


def above(each):
    while (each := each.parentWidget()) is not None:
        yield type(each).__name__


def faults(window):
    """Everything in sight that has no name, is not reached by Tab, or is too small."""
    for each in operable(window):
        name = QAccessible.queryAccessibleInterface(each).text(QAccessible.Text.Name)
        if not name.strip():
            yield f"no name: {told(each)}"
        # What stands in the tool bar stands in a menu too; among buttons of which one is down, arrow keys walk.
        group = each.group() if isinstance(each, QAbstractButton) else None
        walked = (
            group is not None
            and group.exclusive()
            and any(other.focusPolicy() & Qt.FocusPolicy.TabFocus for other in group.buttons())
        )
        if not walked and not inside(each, QToolBar) and not each.focusPolicy() & Qt.FocusPolicy.TabFocus:
            yield f"not by Tab: {told(each)}"
        if (
            isinstance(each, HIT)
            and (each.width() < TARGET or each.height() < TARGET)
            and not inside(each, QAbstractItemView)
        ):
            yield f"small, {each.width()} x {each.height()}: {told(each)}"


def cut(window):
    """Words in sight that stand in less room than they need, and pages that are wider than their place."""
    for each in window.findChildren(QAbstractButton.__mro__[1]):
        if not each.isVisibleTo(window.window()):
            continue
        # A drawing is enlarged beyond its place; a page is not: it would be read with a scroll bar for every line.
        held = each.widget() if isinstance(each, QScrollArea) else None
        if held is not None and held.minimumSize() != held.maximumSize() and held.width() > each.viewport().width() + 1:
            yield f"{held.width()} wide in a place of {each.viewport().width()}: {told(each)}"
        edges = 0 if isinstance(each, (QCheckBox, QRadioButton)) else 2 * THIN
        worded = isinstance(each, HIT) and not inside(each, QAbstractItemView) and getattr(each, "text", str)()
        if worded and each.height() < each.fontMetrics().height() + edges:
            yield f"{each.height()} high for letters of {each.fontMetrics().height()}: {told(each)}"
        if isinstance(each, (QTableView, QTreeView)) and each.model() is not None and each.model().rowCount():
            high = each.visualRect(each.model().index(0, each.columnAt(1) if each.columnAt(1) >= 0 else 0)).height()
            if 0 < high < each.fontMetrics().height() + 2 * SPACE.hair:
                yield f"lines {high} high for letters of {each.fontMetrics().height()}: {told(each)}"
        if not isinstance(each, (QPushButton, QToolButton, QLabel)) or not each.text():
            continue
        if isinstance(each, QLabel) and each.wordWrap():
            if each.heightForWidth(each.width()) > each.height() + 1:
                yield f"{each.height()} high for {each.heightForWidth(each.width())}: {told(each)}"
        elif each.width() + 1 < each.sizeHint().width() and not each.toolTip():
            yield f"{each.width()} wide for {each.sizeHint().width()}: {told(each)}"


def settled(part, qtbot):
    """Return what is cut once all is laid out: pages that were never shown before need a few rounds."""
    for _ in range(25):
        qtbot.wait(20)
        found = list(cut(part))
        if not found:
            break
    return found


def test_every_place_is_worked_by_anybody(whole, qtbot):
    seen, found, short = set(), {}, {}
    for place in PLACES:
        whole.frame.go(place.name)
        whole.centre.layout().activate()
        qtbot.wait(0)
        seen.add(whole.frame.trail.here.place)
        # What stands around every place is looked at once; on the rail it depends on the place what Tab reaches.
        for part in (whole.centre, whole.rail) if len(seen) > 1 else (whole,):
            for fault in faults(part):
                found.setdefault(fault, place.name)
            for fault in cut(part):
                short.setdefault(fault, place.name)
    idle(qtbot, whole)
    assert len(seen) >= 15
    assert not found, "\n".join(f"{where}: {what}" for what, where in found.items())
    assert not short, "\n".join(f"{where}: {what}" for what, where in short.items())


def test_every_place_has_room_for_large_letters(large, qtbot):
    short, parts = {}, {"catalogue": lambda page: page.grid.table.selectRow(2)}
    parts["calculators"] = lambda page: (page.names.setCurrentRow(1), page.example.click())
    parts["cost"] = lambda page: page.pages.setCurrentIndex(page.pages.count() - 1)
    for place in PLACES:
        large.frame.go(place.name)
        idle(qtbot, large)
        if place.name in parts:
            parts[place.name](large.frame.pages.widgets[place.name])
        for fault in settled(large, qtbot):
            short.setdefault(fault, place.name)
    large.frame.go("openings")
    for at in range(large.sheet.pages.count()):
        large.sheet.pages.setCurrentIndex(at)
        idle(qtbot, large)
        for fault in settled(large.inspector, qtbot):
            short.setdefault(fault, large.sheet.pages.tabText(at))
    assert not short, "\n".join(f"{where}: {what}" for what, where in short.items())


def test_every_dialog_has_room_for_large_letters_and_on_the_screen(large, qtbot):
    finding = next(each for each in checked_of(large, "M016").findings)
    dialogs = (
        NewProjectDialog("Quayside Works"),
        SettingsDialog("Quayside Works", Settings(), None, UnitsBox("fraction", "in")),
        PeopleDialog("tester"),
        PrintDialog(3, 1),
        NewSetDialog(QStringListModel(), [], 2),
        ProposedSetsDialog([]),
        MoveDialog("M016", {"c": "S of MILL-1"}, lambda _circuit: ["M016"], lambda *_: None, style="mm"),
        NewPowerDialog(SUPPLY, "A supply, or a place for one.", {}, lambda *_: None, style="mm"),
        TransmittalDialog([]),
        WaiveDialog("M016", finding, "tester", 2, 3),
    )
    short = []
    for each in dialogs:
        qtbot.addWidget(each)
        each.show()
        short += [f"{type(each).__name__}: {fault}" for fault in settled(each, qtbot)]
        # The screen of the tests is low; what is asked in 1080 lines at this size of letters has to stand in 950.
        assert each.minimumSizeHint().height() <= 950, type(each).__name__
    assert not short, "\n".join(short)


def test_what_an_import_refuses_is_read_to_its_end_in_large_letters(large, qtbot, tmp_path, monkeypatch):
    (tmp_path / "list.csv").write_text(LIST, encoding="utf-8")
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(tmp_path / "list.csv"), ""))
    large.survey.ask_survey()
    qtbot.waitUntil(lambda: large.survey.preview is not None and not large.frame.jobs.busy, timeout=20_000)
    preview, short, wrapped = large.survey.preview, [], 0
    pages = preview.findChild(QTabWidget)
    for at in range(pages.count()):
        pages.setCurrentIndex(at)
        short += [f"{pages.tabText(at)}: {fault}" for fault in settled(preview, qtbot)]
        tree = pages.widget(at)
        if not isinstance(tree, WrappingTree):
            continue
        for row in range(tree.topLevelItemCount()):
            item = tree.topLevelItem(row)
            place = tree.visualItemRect(item)
            room = QRect(0, 0, place.width() - 2 * SPACE.hair, 10_000)
            needed = tree.fontMetrics().boundingRect(room, int(Qt.TextFlag.TextWordWrap), item.text(0)).height()
            assert place.height() >= needed, item.text(0)
            wrapped += needed > 2 * tree.fontMetrics().height() - 2
    assert wrapped
    assert not short, "\n".join(short)
