"""A survey that cannot be read yet is told, in the preview, what its columns, dashes and words mean, and taken in."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from hwsched.desktop.window import Window
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project, open_project
from hwsched.model.queries import read_inputs
from hwsched.operations.survey.survey_import import import_survey
from tests.desktop.conftest import idle

LIST = """Doors of the yard,,,,
all sizes measured,,,,
Q,Broad,Fire rating,Leaf material,Notes
D-1,36,-,honey,seen
D-2,32,90 min,HM,
D-3,36,-,honey,
Grand total: 3,,,,
"""
ANSWERS = SurveyOptions(
    bare_unit="in",
    columns={"column A": "opening.mark", "column B": "leaf.width_mm"},
    dashes={"column C": "none"},
    words={"column D": {"honey": "wood"}},
)


@pytest.fixture
def window(qtbot, tmp_path):
    create_project(str(tmp_path / "p.hwsched"), "Yard").close()
    (tmp_path / "list.csv").write_text(LIST, encoding="utf-8")
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    shown.project.open_project(str(tmp_path / "p.hwsched"))
    idle(qtbot, shown)
    return shown


def pick(window, qtbot, box, label):
    """Choose an entry of a list with the keyboard, and wait until the file was read again."""
    before = window.survey.preview
    box.setFocus()
    wanted = box.findText(label)
    assert wanted >= 0, [box.itemText(n) for n in range(box.count())]
    box.showPopup()
    view = box.view()
    view.setCurrentIndex(box.model().index(wanted, 0))
    QTest.keyClick(view, Qt.Key.Key_Return)
    qtbot.waitUntil(
        lambda: window.survey.preview not in (None, before) and window.survey.preview.isVisible(), timeout=20000
    )
    return window.survey.preview.reading


def facts(path):
    with open_project(str(path)) as project, project.reading() as connection:
        return {
            given.opening.mark: (
                given.opening.rating, given.opening.notes, given.leaves[0].width_mm, given.leaves[0].material,
            )
            for given in read_inputs(connection)
        }  # fmt: skip


def test_a_stranger_s_list_goes_in_and_as_the_command_would_take_it(window, qtbot, tmp_path):
    window.survey.take_survey(tmp_path / "list.csv")
    qtbot.waitUntil(lambda: window.survey.preview is not None and window.survey.preview.isVisible(), timeout=20000)
    preview = window.survey.preview
    assert not preview.take.isEnabled()
    assert preview.pages.currentWidget() is preview.sheet
    preview.pages.setCurrentWidget(preview.reading)
    reading = pick(window, qtbot, preview.reading.columns.cellWidget(0, 2), "Opening: Mark")
    reading = pick(window, qtbot, reading.columns.cellWidget(1, 2), "Leaf: Leaf width")
    reading = pick(window, qtbot, reading.unit, "in")
    reading = pick(window, qtbot, reading.columns.cellWidget(2, 4), "Not rated")
    assert [reading.words.item(0, place).text() for place in range(3)] == ["Leaf material", "honey", "2"]
    pick(window, qtbot, reading.words.cellWidget(0, 3), "Wood, solid core")
    preview = window.survey.preview
    assert preview.reading.options == ANSWERS
    qtbot.mouseClick(preview.take, Qt.MouseButton.LeftButton)
    idle(qtbot, window)
    found = facts(tmp_path / "p.hwsched")
    assert found == {
        "D-1": ("none", "seen", pytest.approx(914.4), "wood"),
        "D-2": ("90", None, pytest.approx(812.8), "hollow-metal"),
        "D-3": ("none", None, pytest.approx(914.4), "wood"),
    }
    with create_project(str(tmp_path / "command.hwsched"), "Yard") as other:
        import_survey(other, tmp_path / "list.csv", ANSWERS, who="t")
    assert facts(tmp_path / "command.hwsched") == found
