"""Two at one project: what another person did is seen with its values, named, and taken back alone."""

import pytest

from hwsched.desktop.project import watching
from hwsched.model.project import open_project
from hwsched.operations.project.history import history
from hwsched.operations.survey.editing import edit_fact_text
from tests.desktop.conftest import checked_of
from tests.desktop.walk.hands import Mouse
from tests.desktop.walk.test_opening import fact, line_of


@pytest.fixture
def wound_up(monkeypatch):
    """The watch of a window that is opened now goes as a person has it."""
    monkeypatch.setattr(watching, "_EACH_MS", 200)


def test_a_step_of_another_is_seen_with_its_values_and_taken_back_by_its_name(wound_up, hands, at_work):
    hands.line(*line_of(at_work, "M004"))
    sheet, project = at_work.sheet, at_work.frame.state.workspace.project
    hands.page(sheet.pages, "Facts")
    leaf = checked_of(at_work, "M004").given.leaves[0]
    with open_project(str(project.path)) as other:
        edit_fact_text(other, "leaf", leaf.id, "thickness_mm", "1 7/8", who="ben")
    hands.qtbot.waitUntil(lambda: fact(sheet.facts, "Leaf thickness").data() == '1 7/8"', timeout=20_000)
    hands.done()
    # The own step comes after it: an undo takes that one, and leaves the other's alone.
    hands.line(sheet.facts, fact(sheet.facts, "Undercut"))
    hands.edit("7/8")
    hands.undo()
    assert fact(sheet.facts, "Leaf thickness").data() == '1 7/8"'
    hands.page(sheet.pages, "History")
    page = sheet.past_page
    heads = [page.tree.topLevelItem(n) for n in range(page.tree.topLevelItemCount())]
    (theirs,) = [each for each in heads if "\nben, " in each.text(0)]
    assert [theirs.child(0).text(column) for column in range(3)] == [
        theirs.child(0).text(0), '1 3/4"', '1 7/8"'
    ]  # fmt: skip
    assert "Leaf thickness" in theirs.child(0).text(0)
    hands.line(page.tree, theirs)
    hands.press(page.back)
    hands.done()
    assert checked_of(at_work, "M004").given.leaves[0].thickness_mm == pytest.approx(leaf.thickness_mm)
    last = history(project)[-1]
    assert (last.who, "thickness" in last.summary) == ("tester", True)
    # In the list of all steps it stands as taken back, and is done again from there.
    hands.command("History")
    steps = at_work.frame.pages.widgets["history"]
    model = steps.model
    row = next(n for n in range(model.rowCount()) if model.contents.row_at(n).who == "ben")
    hands.line(steps.grid.table, model.index(row, 0))
    assert steps.chosen().undone
    hands.press(steps.again)
    hands.done()
    assert checked_of(at_work, "M004").given.leaves[0].thickness_mm == pytest.approx(47.625)
    assert isinstance(hands, Mouse) or steps.isVisible()
