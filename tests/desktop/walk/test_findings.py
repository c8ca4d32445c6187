"""Work at what is found: waived, one cure for all, missing facts, what if; a calculator as an opening stands."""

import pytest

from hwsched.calc.calculators import CALCULATORS
from hwsched.desktop.findings.finding_lines import sharing
from hwsched.operations.findings.waivers import waivers
from hwsched.operations.project.history import history
from hwsched.rules.wording import label_of
from tests.desktop.conftest import checked_of
from tests.desktop.walk.hands import CONTROL, KEY
from tests.desktop.walk.test_opening import line_of


def line_at(page, line):
    model = page.grid.model
    return page.grid.table, model.index(model.row_of_id(line.id), model.place_of("mark"))


def test_a_finding_is_waived_and_a_missing_fact_filled_in_for_all(hands, at_work):
    hands.command("Findings")
    page = at_work.frame.pages.widgets["findings"]
    hands.qtbot.waitUntil(lambda: not page._reading.busy, timeout=10000)
    project = at_work.frame.state.workspace.project
    hands.press(page.ways["list"])
    rows = page.model.contents.rows
    warning = next(line for line in rows if line.spoken and line.opening and line.first.severity == "warning")
    hands.line(*line_at(page, warning))
    hands.press(page.waive)
    hands.say("seen on site")
    hands.press(page.waive_pane.take)
    hands.done()
    assert [each.reason for each in waivers(project)] == ["seen on site"]
    hands.qtbot.waitUntil(lambda: not page._reading.busy, timeout=10000)
    # One cure for all that share it, looked at before.
    rows = page.model.contents.rows
    counts = {line.need: page.mending.words(sharing(rows, line))[1] for line in rows if line.need}
    need = max(counts, key=counts.get)
    line = next(line for line in rows if line.need == need)
    before = len(history(project))
    hands.line(*line_at(page, line))
    hands.press(page.mend)
    column = page.pane._columns[0]
    assert column.attribute.kind == "length"
    hands.say("3 in")
    assert len({page.pane.lines.item(row, 0).text() for row in range(page.pane.lines.rowCount())}) == counts[need]
    assert len(history(project)) == before, "nothing is written before it was seen"
    hands.press(page.pane.take)
    hands.done()
    assert len(history(project)) == before + 1
    # Lines that no single cure mends offer each of their cures.
    hands.qtbot.waitUntil(lambda: not page._reading.busy, timeout=10000)
    rows = page.model.contents.rows
    counts = {line.need: page.mending.words(sharing(rows, line))[1] for line in rows if line.need}
    needs = [name for name, count in sorted(counts.items(), key=lambda each: -each[1]) if count][:2]
    first, second = (next(line for line in rows if line.need == name) for name in needs)
    hands.line(*line_at(page, first))
    hands.more(*line_at(page, second))
    assert page.mend.text() == "Mend: 2 cures…"
    hands.press(page.mend)
    hands.choose(f"Fill in for {counts[needs[1]]}: {label_of(needs[1])}…")
    assert page.pane.isVisible()
    assert [column.name for column in page.pane._columns] == [needs[1]]
    hands.key(KEY.Key_Escape)
    assert not page.pane.isVisible()
    # What is still missing leads to its openings.
    hands.command("Missing facts")
    missing = at_work.frame.pages.widgets["missing"]
    needed = set(missing.model.contents.row_at(0).needed)
    hands.open(missing.grid.table, missing.model.index(0, 0))
    chosen = {at_work.frame.state.workspace.checked[each].given.opening.mark for each in at_work.frame.state.ids}
    assert chosen == needed


def test_what_if_is_compared_before_it_is_accepted_and_a_calculator_goes_back_to_its_opening(hands, at_work):
    hands.line(*line_of(at_work, "M004"))
    hands.command("What if?")
    page = at_work.frame.pages.widgets["what-if"]
    hands.box(page.scope, f"All openings: {len(at_work.frame.state.workspace.checked)}")
    hands.box(page.question.kind, "Preference")
    hands.press(page.question.plus)
    hands.press(page.work)
    hands.done()
    assert "Nothing is changed yet" in page.said.text()
    steps = len(history(at_work.frame.state.workspace.project))
    hands.press(page.take)
    hands.done()
    assert page.said.text().startswith("Accepted"), page.said.text()
    assert len(history(at_work.frame.state.workspace.project)) == steps + 1
    hands.undo()
    # "What if this trim were a quarter thicker?"
    hands.command("Calculators")
    page = at_work.frame.pages.widgets["calculators"]
    row = next(n for n, each in enumerate(CALCULATORS) if each.name == "cylinder-stack")
    hands.line(page.names, page.names.item(row))
    assert "As M004 stands" in page.about.text()
    lock = next(item for item in checked_of(at_work, "M004").given.items if item.trim_key_mm is not None)
    hands.field(page.form.lines["trim_mm",].field, f"{(lock.trim_key_mm + 6.35) / 25.4:.6f}")
    hands.qtbot.waitUntil(lambda: page.give.isEnabled(), timeout=3000)
    hands.press(page.give)
    hands.done()
    after = next(item for item in checked_of(at_work, "M004").given.items if item.id == lock.id)
    assert after.trim_key_mm == pytest.approx(lock.trim_key_mm + 6.35, abs=0.001)
    hands.key(KEY.Key_Z, CONTROL)
    hands.done()
