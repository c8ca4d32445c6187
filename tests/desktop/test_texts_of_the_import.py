"""The conversation about a stranger's list comes through the catalogue, in each state that it can be in.

What the file holds stays as it stands: its cells and headings, quoted; the names of the file and of its sheets.
"""

import shutil

import pytest
from PySide6.QtCore import Qt

from hwsched.desktop.survey.deliveries_window import DeliveriesWindow
from hwsched.desktop.survey.preview_dialog import PreviewDialog
from hwsched.exchange.problems import InputRejected, causes
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.exchange.survey.facts import Decisions
from hwsched.exchange.survey.plausibility import ODDITIES
from hwsched.exchange.survey.said_of_marks import DELETED, SEVERAL
from hwsched.exchange.survey.shifted import CURE
from hwsched.exchange.survey.spelt_alike import ALIKE
from hwsched.model.project import create_project, open_project
from hwsched.operations.survey.survey_import import import_survey, lay_open
from tests.desktop.conftest import idle
from tests.desktop.seen_texts import faults, headings, unsaid_cells
from tests.desktop.test_conversation import LIST, ROWS
from tests.desktop.test_deciding import SECOND
from tests.language.plainness import longest_first, unsaid
from tests.once import copied
from tests.operations.survey.test_reconciling import by_hand, delivery, make

FILES = {
    # Marks of emptiness, near and unknown words, subtotals, a header of three lines.
    "list": LIST,
    # No unit, several doors in a row, one that is deleted, one that is not used.
    "rows": ROWS,
    # Tables beside each other, types, quantities, a heading of two readings.
    "types": "Type,Width,Height\nA,36,84\nB,30,80\n,,\nNo,Type,Level\n101,A,1\n102,B,1\n",
    "readings": "Mark,FR,Leaf material\n1,60,timbr\n2,HM,HM\n",
    "counted": "Mark,Qty,Width,Height\n1,3,36,84\n2,1,36,84\n",
    "again": "Level,No,Width,Height\n1,1,36,84\n1,2,36,84\n2,1,36,84\n2,2,36,84\n",
    "pairs": "Mark,Width (mm),Height (mm)\n1,PR 762,2100\n2,915,2100\n",
    # Sizes that can hardly be, and cells that are no sizes at all.
    "odd": 'Mark,Width (in),Height (in),Thickness (in),Hand\n1,84,36,1 3/4,LH\n2,36,120,1/2,RH\n3,30,70,1 3/4,XX\n'
           "4,abc,84,1 3/4,LH\n5,36,84,1 3/4,LH\nD-1,36,84,1 3/4,LH\nd-1,36,84,1 3/4,LH\n",
    # Nothing in it is the mark, and nothing is an opening.
    "strange": "Q,Broad\nD-1,36\nD-2,32\n",
    "none": "a,b\n,\n",
    "shifted": "Mark,Width (mm),Height (mm),Fire rating,Hand\n1,900,2100,90 min,LH\n2,,900,2100,90 min\n"
               "3,900,2100,-,RH\n",
}  # fmt: skip


CODES = {*(kind.id for kind in ODDITIES), DELETED, SEVERAL, ALIKE, CURE, "{mark}", "{letter}", "{type}", "{level}"}
"""By which the command line knows what can be mended, and how marks are made."""


PEOPLE = {"tester", "tests", "foreman", "surveyor"}


def words_of(text):
    """What a file holds, cell by cell."""
    cells = {cell.strip() for line in text.splitlines() for cell in line.split(",")}
    return {*cells, *(word for cell in cells for word in cell.split())}


def unsaid_of(dialog, data):
    """Whatever of the preview did not come through the catalogue, on each of its pages."""
    found = [dialog.windowTitle()] if unsaid(dialog.windowTitle(), data) else []
    for at in range(dialog.pages.count()):
        dialog.pages.setCurrentIndex(at)
        dialog.deciding.tree.expandAll()
        part = dialog.pages.widget(at)
        table = getattr(getattr(part, "table", None), "model", lambda: None)()
        found += [f"{dialog.pages.tabText(at)}: {each}" for each in faults(part, data)]
        # The sheet as it stands is the file's own; what is told of its cells is not.
        views = unsaid_cells(part, data)
        found += [f"{dialog.pages.tabText(at)}: {each}" for each in views]
        found += [f"heading {left!r} in {text!r}" for text in headings(part) if (left := unsaid(text, data))]
        assert table is None or table.rowCount() > 0
    return [*found, *faults(dialog, data)]


def shown(qtbot, opened, options, path):
    """The preview of a file as it was laid open."""
    dialog = PreviewDialog(path.name, opened, options, first="", answers=2)
    qtbot.addWidget(dialog)
    dialog.show()
    return dialog


@pytest.fixture
def yard(tmp_path, monkeypatch):
    """A project into which such lists are taken."""
    monkeypatch.setenv("HWSCHED_PLANS", str(tmp_path / "plans"))
    with create_project(str(tmp_path / "p.hwsched"), "Yard") as project:
        yield project


@pytest.mark.parametrize("unit", [None, "in"])
@pytest.mark.parametrize("name", FILES)
def test_the_conversation_comes_through_the_catalogue(stretched, qtbot, yard, tmp_path, name, unit):
    path = tmp_path / f"{name}.csv"
    path.write_text(FILES[name], encoding="utf-8")
    data = longest_first({*words_of(FILES[name]), path.name, name, "tester", "Yard", *CODES})
    options, asked, found = SurveyOptions(bare_unit=unit), 0, []
    for _ in range(6):
        opened = lay_open(yard, path, options, None)
        dialog = shown(qtbot, opened, options, path)
        found += unsaid_of(dialog, data)
        buttons = list(dialog.sheet.answers.values())
        asked += len(buttons)
        said = []
        dialog.sheet.said.connect(said.append)
        # The last answer of the last question: what is usual is what was read already.
        for button in reversed(buttons):
            qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
            if said:
                break
        dialog.close()
        if not said or said[-1] == options:
            break
        options = said[-1]
    assert asked or name in ("strange", "none")
    assert not found, "\n".join(dict.fromkeys(found))


@pytest.fixture
def second(tmp_path):
    """A second delivery, into a project in which somebody set a fact by hand since the first."""

    def made(path):
        make(path)
        with open_project(str(path)) as project:
            by_hand(project, "101", "hand", "RH")

    path = tmp_path / "p.hwsched"
    copied("first delivery, one by hand", path, made)
    shutil.copy(path, tmp_path / "other.hwsched")
    return delivery(tmp_path, SECOND)


def delivered(file):
    """What the second delivery holds, and by whom things were written."""
    return longest_first({*words_of(file.read_text(encoding="utf-8")), *PEOPLE, file.name, file.stem})


def test_what_a_second_delivery_asks_comes_through_the_catalogue(stretched, qtbot, tmp_path, second):
    data = delivered(second)
    with open_project(str(tmp_path / "p.hwsched")) as project:
        for decisions in (Decisions(), Decisions(answers={("gone", "", ""): "file", ("renamed", "", ""): "file"})):
            options = SurveyOptions(decisions=decisions)
            dialog = shown(qtbot, lay_open(project, second, options, None), options, second)
            found = unsaid_of(dialog, data)
            assert dialog.deciding.tree.topLevelItemCount() > 4
            dialog.close()
            assert not found, "\n".join(dict.fromkeys(found))


def test_what_is_left_of_a_delivery_comes_through_the_catalogue(whole, qtbot, tmp_path, second):
    with open_project(str(tmp_path / "p.hwsched")) as project:
        import_survey(project, second, SurveyOptions(), who="tester")
    whole.project.open_project(str(tmp_path / "p.hwsched"))
    idle(qtbot, whole)
    whole.frame.go("deliveries")
    page = whole.frame.side.windows[DeliveriesWindow]
    data = delivered(second)
    found = []
    for at in range(page.pages.count()):
        page.pages.setCurrentIndex(at)
        page.deciding.tree.expandAll()
        if at == 1:
            page.list.table.selectRow(1)
        idle(qtbot, whole)
        found += [*faults(page, data), *unsaid_cells(page, data)]
    assert page.deciding.tree.topLevelItemCount() > 3
    assert not found, "\n".join(dict.fromkeys(found))


def test_what_a_file_holds_stays_as_it_stands(stretched, yard, tmp_path):
    """A heading, a cell and a sheet that are words of the program too are quoted as the person will find them."""
    path = tmp_path / "Doors.csv"
    path.write_text("Mark,Leaf thickness,Hand\n1,Solid,Reverse\n", encoding="utf-8")
    with pytest.raises(InputRejected) as refused:
        import_survey(yard, path, SurveyOptions(bare_unit="mm"), who="tester")
    said = refused.value.said()
    assert "(Leaf thickness)" in said
    assert "'Solid'" in said
    assert not unsaid(said, ["Doors", "Leaf thickness", "Solid", "Hand", "Reverse", "csv"])
    # In English it is what is kept, and what a machine is told.
    assert str(refused.value) == "\n".join(each.describe() for each in causes(refused.value.problems))
    assert ", row 2, column B (Leaf thickness): read 'Solid'; " in str(refused.value)
