"""A project's units are asked when it is made, changed later, and every number is told as it is understood."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialogButtonBox, QFileDialog, QLineEdit

from hwsched.desktop.window import Window
from tests.desktop.conftest import idle

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def window(qtbot, tmp_path, monkeypatch):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "yard"), ""))
    return shown


def ok(qtbot, dialog):
    button = dialog.findChild(QDialogButtonBox).button(QDialogButtonBox.StandardButton.Ok)
    qtbot.mouseClick(button, LEFT)


def make(qtbot, window, system):
    window.project.act_new.trigger()
    dialog = window.project.beginning
    qtbot.mouseClick(dialog.systems.button(system), LEFT)
    ok(qtbot, dialog)
    idle(qtbot, window)
    return window.frame.state.workspace.project


def typed(qtbot, window, label, text):
    """Type a fact of the chosen opening; returns what is said of it before it is taken, and what stands there then."""
    form = window.sheet.facts
    window.sheet.pages.show_page(form)
    flags = Qt.MatchFlag.MatchExactly | Qt.MatchFlag.MatchRecursive
    form.editItem(form.findItems(label, flags, 0)[0], 1)
    editor = form.findChild(QLineEdit)
    editor.selectAll()
    qtbot.keyClicks(editor, text)
    said = window.statusBar().currentMessage()
    with qtbot.waitSignal(editor.destroyed, timeout=5000):
        qtbot.keyClick(editor, Qt.Key.Key_Return)
    idle(qtbot, window)
    return said, form.findItems(label, flags, 0)[0].text(1)


@pytest.mark.parametrize(
    ("system", "style", "unit", "said", "shown"),
    [(0, "fraction", "in", 'Leaf thickness: 2", 50.8 mm', '2"'), (1, "mm", "mm", "Leaf thickness: 44.5 mm", "44.5 mm")],
)
def test_a_new_project_is_in_inches_or_millimetres(window, qtbot, system, style, unit, said, shown):
    project = make(qtbot, window, system)
    assert (project.length_style, project.bare_unit, project.title) == (style, unit, "yard")
    window.opening.add_opening("1")
    idle(qtbot, window)
    assert typed(qtbot, window, "Leaf thickness", "2" if system == 0 else "44.5") == (said, shown)
    # One that cannot be is told while it is typed, and not only when it is refused.
    window.sheet.facts.echo("thick")
    assert "'thick'" in window.statusBar().currentMessage()


def test_both_units_are_changed_later_and_it_is_said_what_that_changes(window, qtbot):
    project = make(qtbot, window, 0)
    window.opening.add_opening("1")
    idle(qtbot, window)
    typed(qtbot, window, "Leaf thickness", "2")
    window.project.act_settings.trigger()
    units = window.project.settings.units
    assert "stored in millimetres" in units.said.text()
    units.lengths.setCurrentIndex(units.lengths.findData("mm"))
    units.bare.setCurrentIndex(units.bare.findData("mm"))
    assert "without a unit is in millimetres; what is stored stays" in units.said.text()
    ok(qtbot, window.project.settings)
    idle(qtbot, window)
    assert (project.length_style, project.bare_unit) == ("mm", "mm")
    assert typed(qtbot, window, "Leaf thickness", "45")[1] == "45 mm"
    window.history.act_undo.trigger()
    idle(qtbot, window)
    flags = Qt.MatchFlag.MatchExactly | Qt.MatchFlag.MatchRecursive
    assert window.sheet.facts.findItems("Leaf thickness", flags, 0)[0].text(1) == "50.8 mm"
