"""What stands in somebody's sheet is shown as it stands: nowhere on the screen is it read as markup."""

import pytest
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QAction, QHelpEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QApplication,
    QHeaderView,
    QInputDialog,
    QLabel,
    QListView,
    QMessageBox,
    QTabBar,
    QTextEdit,
    QToolTip,
)
from shiboken6 import isValid

from hwsched.desktop.findings.rule_page import RulePage
from hwsched.desktop.findings.waive_dialog import WaiveDialog
from hwsched.desktop.project.help_page import HelpPage
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.window import Window
from hwsched.model.errors import ChangeError
from hwsched.model.project import open_project
from hwsched.model.tables import BUILDING, HARDWARE_SET, OPENING_TABLE, PART, PROJECT, SUPPLY_TABLE
from tests.desktop.conftest import idle, look_put_on

BAIT = '<img src="file:///bait.png"><b>M</b>'


@pytest.fixture
def baited(qtbot, sample_file):
    """The sample, with markup in every name that people read."""
    with open_project(sample_file) as project, project.change("bait", "Lay bait", "t") as change:
        for table, columns in (
            (PROJECT, ("name",)), (BUILDING, ("name",)), (SUPPLY_TABLE, ("name",)),
            (OPENING_TABLE, ("mark", "room_to", "room_from", "notes")),
            (PART, ("description", "supplier")),
        ):  # fmt: skip
            rows = list(change.connection.execute(table.select()).mappings())
            edits = [(row["id"], {name: f"{BAIT}{row[name] or ''}" for name in columns}) for row in rows]
            change.update(table, edits)
        change.insert(HARDWARE_SET, [{"name": BAIT, "notes": BAIT}])
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    shown.project.open_project(str(sample_file))
    idle(qtbot, shown)
    return shown


def tip_of(widget, at):
    """Point at a place, as the mouse does; return the tooltip's label, if one is shown."""
    QToolTip.hideText()
    QApplication.sendEvent(widget, QHelpEvent(QEvent.Type.ToolTip, at, widget.mapToGlobal(at)))
    tips = [each for each in QApplication.topLevelWidgets() if each.metaObject().className() == "QTipLabel"]
    return tips[-1] if tips and tips[-1].isVisible() and QToolTip.text() else None


def places(view):
    """Return a place in each of the first rows and columns of a view."""
    model, root = view.model(), view.rootIndex()
    found = []
    for row in range(min(model.rowCount(root), 4)):
        for column in range(1 if isinstance(view, QListView) else min(model.columnCount(root), 12)):
            index = model.index(row, column, root)
            view.scrollTo(index)
            rect = view.visualRect(index)
            if rect.isValid():
                found.append(rect.center())
            child = model.index(0, column, model.index(row, 0, root))
            if child.isValid() and view.visualRect(child).isValid():
                found.append(view.visualRect(child).center())
    return found


def walk():
    """Look at every widget that is shown; return how many labels and how many tooltips there were with bait in them."""
    labels = tips = 0
    for widget in QApplication.allWidgets():
        # A tooltip's label comes and goes as the next one is pointed at.
        if not isValid(widget) or not widget.isVisible() or widget.metaObject().className() == "QTipLabel":
            continue
        if isinstance(widget, QTextEdit):
            # Help and rulebook show the program's own pages, and nothing that somebody wrote into a project.
            of_help = isinstance(widget.parentWidget().parent(), HelpPage) or isinstance(widget, RulePage)
            assert of_help, "a text that takes markup; use QPlainTextEdit"
            assert "bait" not in widget.toHtml()
            continue
        if isinstance(widget, QLabel):
            assert widget.textFormat() == Qt.TextFormat.PlainText, widget.text()
            labels += "<img" in widget.text()
        spots = [(widget, QPoint(3, 3))] if widget.toolTip() else []
        if isinstance(widget, QAbstractItemView) and not isinstance(widget, QHeaderView):
            spots += [(widget.viewport(), place) for place in places(widget)]
        if isinstance(widget, QTabBar):
            spots += [(widget, widget.tabRect(at).center()) for at in range(widget.count())]
        for target, place in spots:
            tip = tip_of(target, place)
            if tip is not None:
                assert tip.textFormat() == Qt.TextFormat.PlainText, tip.text()
                tips += "<img" in tip.text()
    QToolTip.hideText()
    return labels, tips


def test_every_window_shows_words_as_words(baited, qtbot):
    connected = baited.frame.state.workspace.checked[
        next(id_ for id_, c in baited.frame.state.workspace.checked.items() if "M116" in c.given.opening.mark)
    ]
    baited.openings.select_openings([connected.given.opening.id])
    sheet = baited.sheet
    for page in range(sheet.pages.count()):
        sheet.pages.setCurrentIndex(page)
        labels, _ = walk()
        assert labels, "the bait is on the screen"
    for page in (sheet.holes_page, sheet.refused_page, sheet.pieces_page, sheet.assembly_page):
        sheet.pages.show_page(page)
        walk()
    tipped = 0
    fitting, findings, project = baited.fitting, baited.findings, baited.project
    actions = (
        baited.power.act_power, fitting.act_what_if, *baited.beside.acts.values(),
        findings.act_rulebook, findings.act_waivers, baited.survey.act_missing,
        project.act_settings, baited.history.act_history, project.act_calculators,
    )  # fmt: skip
    for action in actions:
        assert isinstance(action, QAction)
        action.trigger()
        idle(qtbot, baited)
        tipped += walk()[1]
    assert tipped, "bait reached tooltips"
    baited.frame.side.close()
    baited.project.settings.close()


def test_dialogs_and_boxes_show_words_as_words(baited, qtbot):
    checked = next(each for each in baited.frame.state.workspace.checked.values() if each.findings)
    shown = [
        WaiveDialog(BAIT, checked.findings[0], BAIT, 1, 1, baited),
        QMessageBox(QMessageBox.Icon.Warning, BAIT, BAIT, parent=baited),
        QInputDialog(baited),
    ]
    shown[1].setInformativeText(BAIT)
    shown[2].setLabelText(BAIT)
    for dialog in shown:
        dialog.open()
        assert walk()[0]
        dialog.close()
    baited.frame.jobs.edit("Refused", lambda: (_ for _ in ()).throw(ChangeError(BAIT)))
    assert walk()[0]
    assert baited.frame.telling.told.text() == BAIT
    baited.frame.telling.told.close()


def test_a_change_of_text_makes_no_label_guess_again(qtbot, baited):
    label = QLabel("plain", baited)
    label.show()
    label.setText(BAIT)
    assert label.textFormat() == Qt.TextFormat.PlainText


def test_a_style_sheet_and_a_change_of_theme_leave_words_as_they_are(qtbot, qapp):
    """The style that makes them plain stays under the sheet, and what is shown later goes through it."""
    preferences = Preferences()
    with look_put_on(qapp, preferences):
        for theme in ("light", "dark", "light"):
            preferences.theme = theme
            box = QMessageBox(QMessageBox.Icon.Warning, BAIT, BAIT)
            qtbot.addWidget(box)
            box.open()
            labels = [each for each in box.findChildren(QLabel) if BAIT in each.text()]
            assert labels
            assert all(each.textFormat() == Qt.TextFormat.PlainText for each in labels)
            box.close()
        preferences.theme = "system"
