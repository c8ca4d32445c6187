"""Missing facts, cost with its terms, and what is printed, by real clicks and keys."""

import re
from decimal import Decimal

import pytest
from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QInputDialog, QLabel

from hwsched.desktop.parts.cost_table import CostTable
from hwsched.desktop.parts.cost_window import CostWindow
from hwsched.desktop.release.gate_window import GateWindow
from hwsched.desktop.release.print_dialog import PrintDialog
from hwsched.desktop.survey.missing_window import MissingWindow
from hwsched.operations.opening.what_if import Question, accept_answer, what_if
from hwsched.operations.parts.part_form import PartEdit
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.issued_documents import PRINTS
from tests.desktop.conftest import checked_of, choose, idle

LEFT = Qt.MouseButton.LeftButton


def test_missing_facts_select_their_openings_and_the_return_visit_is_written(at_work, qtbot, tmp_path, monkeypatch):
    folder = tmp_path / "visit"
    qtbot.keyClicks(at_work.openings.search, "glass annexe")
    qtbot.waitUntil(lambda: at_work.openings.register.rowCount() < at_work.openings.register.total(), timeout=3000)
    at_work.survey.act_missing.trigger()
    missing = at_work.frame.side.windows[MissingWindow]
    contents, table = missing.model.contents, missing.grid.table
    first = contents.row_at(0)
    counts = [len(contents.row_at(n).alone) for n in range(len(contents))]
    assert counts == sorted(counts, reverse=True)
    marks = set(first.needed)
    where = table.visualRect(missing.model.index(0, 0)).center()
    qtbot.mouseClick(table.viewport(), LEFT, pos=where)
    qtbot.mouseDClick(table.viewport(), LEFT, pos=where)
    chosen = {at_work.frame.state.workspace.checked[each].given.opening.mark for each in at_work.frame.state.ids}
    assert chosen == marks
    assert missing.model.data(missing.model.index(0, missing.model.place_of("needed"))) == str(len(chosen))
    assert at_work.openings.search.text() == ""
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(folder))
    qtbot.mouseClick(missing.write, LEFT)
    idle(qtbot, at_work)
    assert (folder / "return-visit.pdf").is_file()
    assert len(list(folder.glob("return-visit *.xlsx"))) >= 2
    assert f"{len(list(folder.iterdir()))} files written" in missing.told.text()
    missing.close()


def test_the_gate_names_what_is_held_and_shows_it(at_work, qtbot):
    at_work.beside.acts["gate"].trigger()
    gate = at_work.frame.side.windows[GateWindow]
    idle(qtbot, at_work)
    checked = at_work.frame.state.workspace.checked
    held = {line.mark for line in gate.model.contents.rows}
    errors = {
        each.given.opening.mark
        for each in checked.values()
        if any(finding.severity == "error" and not finding.waived for finding in each.findings)
    }
    assert errors
    assert errors <= held
    assert gate.told.text().startswith(f"{len(checked) - len(held)} of {len(checked)} openings")
    first, table = gate.model.contents.row_at(0), gate.grid.table
    assert first.lack.said
    where = table.visualRect(gate.model.index(0, 1)).center()
    qtbot.mouseClick(table.viewport(), LEFT, pos=where)
    qtbot.mouseDClick(table.viewport(), LEFT, pos=where)
    assert [checked[each].given.opening.mark for each in at_work.frame.state.ids] == [first.mark]
    gate.close()


def test_labels_of_the_shown_openings_are_asked_for_and_written(at_work, qtbot, tmp_path, monkeypatch):
    monkeypatch.setattr(
        QInputDialog, "getItem", lambda _1, _2, _3, names, *_: (next(n for n in names if n.startswith("A4, 21 ")), True)
    )
    monkeypatch.setattr(QInputDialog, "getInt", lambda *_: (20, True))
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path))
    at_work.release.act_labels.trigger()
    idle(qtbot, at_work)
    assert len(PdfReader(tmp_path / "labels.pdf").pages) >= 2


@pytest.fixture
def cost(at_work, qtbot):
    at_work.beside.acts["cost"].trigger()
    window = at_work.frame.side.windows[CostWindow]
    idle(qtbot, at_work)
    return window


def total(table):
    """Hours, parts, labour and total, as the line below the table says them."""
    said = re.match(r"Total (\S+) \w+ · (\S+) hours · parts (\S+) · labour (\S+)", table.total.text())
    whole, hours, parts, labour = (each.replace(",", "") for each in said.groups())
    column = table.model.place_of("parts")
    shown = [table.model.index(row, column).data().replace(",", "") for row in range(table.model.rowCount())]
    assert sum(map(Decimal, shown)) == pytest.approx(Decimal(parts), abs=Decimal("0.01") * len(shown))
    return [hours, parts, labour, whole]


def test_totals_agree_by_building_set_and_opening_and_follow_the_terms(at_work, qtbot, cost):
    by = {way: total(table) for way, table in cost.tables.items()}
    assert by["building"] == by["set"] == by["opening"]
    assert by["building"][2] == "unknown"
    assert "labour unknown" in cost.said.text()
    parts = Decimal(by["building"][1])
    cost.pages.setCurrentWidget(cost.terms)
    qtbot.keyClicks(cost.terms.labour, "80")
    for row in range(cost.terms.discounts.rowCount()):
        cost.terms.discounts.item(row, 1).setText("0,5")
    qtbot.mouseClick(cost.set, LEFT)
    idle(qtbot, at_work)
    hours, after, labour, whole = total(cost.tables["building"])
    # Every part has one of the suppliers: each pays half. Hours are rounded for show, to a hundredth.
    assert Decimal(after) == pytest.approx(parts / 2, abs=Decimal("0.01"))
    assert Decimal(labour) == pytest.approx(Decimal(hours) * 80, abs=Decimal("0.5"))
    assert Decimal(whole) == pytest.approx(Decimal(after) + Decimal(labour), abs=Decimal("0.02"))
    assert not cost.set.isEnabled()
    at_work.history.act_undo.trigger()
    idle(qtbot, at_work)
    assert "changed since" in cost.said.text()
    qtbot.mouseClick(cost.again, LEFT)
    idle(qtbot, at_work)
    assert total(cost.tables["building"]) == by["building"]


def test_what_changed_is_shown_since_the_last_reckoning_and_since_a_revision(at_work, qtbot, cost):
    project = at_work.frame.state.workspace.project
    checked = at_work.frame.state.workspace.checked.values()
    uses = [
        each.given.opening.mark
        for each in checked
        if each.fit and each.fit.status == "fits" and "ARC-M18" in {p.part for p in each.fit.parts}
    ]
    assert uses
    bar = cost.pages.tabBar()
    qtbot.mouseClick(bar, LEFT, pos=bar.tabRect(cost.pages.indexOf(cost.moved)).center())
    assert "Nothing was reckoned here before" in cost.moved.said.text()
    freeze(project, who="tests")
    # The sample's list price is 170, and the next that would do costs 172.
    accept_answer(project, what_if(project, Question(part=PartEdit("ARC-M18", {"list_price": "171"}))), who="tests")
    at_work.frame.following.reload()
    idle(qtbot, at_work)
    qtbot.mouseClick(cost.again, LEFT)
    idle(qtbot, at_work)

    def shown():
        table = cost.moved.table
        return {table.item(row, 0).text(): table.item(row, 3).text() for row in range(table.rowCount())}

    assert shown() == dict.fromkeys(uses, "+1.00")
    assert f"(+{len(uses)}.00)" in cost.moved.said.text()
    qtbot.mouseClick(cost.again, LEFT)
    idle(qtbot, at_work)
    assert shown() == {}
    qtbot.keyClick(cost.moved.since, Qt.Key.Key_Down)
    idle(qtbot, at_work)
    assert cost.moved.letter == "A"
    assert shown() == dict.fromkeys(uses, "+1.00")


def test_own_hours_rates_and_currency_are_typed_and_a_wrong_number_is_refused(at_work, qtbot, cost):
    cost.pages.setCurrentWidget(cost.terms)
    before = Decimal(total(cost.tables["building"])[0])
    cost.terms.hours.item(2, 3).setText("1.25")
    cost.terms.rates.item(0, 1).setText("0.9")
    cost.terms.currency.setText("eur")
    qtbot.mouseClick(cost.set, LEFT)
    idle(qtbot, at_work)
    assert "EUR" in cost.said.text()
    assert Decimal(total(cost.tables["building"])[0]) != before
    cost.terms.hours.item(2, 3).setText("an hour")
    qtbot.mouseClick(cost.set, LEFT)
    assert "hours" in at_work.frame.telling.told.text()
    at_work.frame.telling.told.close()
    cost.terms.hours.item(2, 3).setText("")
    qtbot.mouseClick(cost.set, LEFT)
    idle(qtbot, at_work)
    assert Decimal(total(cost.tables["building"])[0]) == before


def test_every_document_is_offered_with_its_formats(qtbot):
    dialog = PrintDialog(3, 0)
    qtbot.addWidget(dialog)
    assert list(dialog.boxes) == [name for name, _, _ in PRINTS]
    assert "ics" in dialog.boxes["battery-calendar"].text()
    assert not dialog.went_out.isEnabled()
    dialog.boxes["packets"].click()
    assert dialog.went_out.isEnabled()
    dialog.went_out.click()
    assert dialog.answer()[5]
    dialog.formats["pdf"].click()
    assert not dialog.boxes["packets"].isEnabled()
    assert not dialog.answer()[5]
    assert "packets" not in dialog.answer()[0]
    assert dialog.answer()[4] == {"xlsx", "ics"}
    dialog.close()


def test_packets_in_one_file_are_asked_for_in_the_order_of_a_walk(qtbot):
    dialog = PrintDialog(3, 0)
    qtbot.addWidget(dialog)
    dialog.show()
    assert not dialog.walk.isEnabled()
    dialog.boxes["bound-packets"].click()
    assert dialog.walk.isEnabled()
    assert dialog.answer()[6] == "mark"
    qtbot.keyClick(dialog.walk, Qt.Key.Key_Down)
    assert dialog.answer()[6] == "surveyed"
    # They go out as single ones do.
    assert dialog.went_out.isEnabled()
    dialog.close()


def test_a_calendar_is_written_and_packets_are_written_down_as_out(at_work, qtbot, tmp_path):
    choose(at_work, "M004", "M005")
    at_work.release.print_documents(
        ["battery-calendar", "packets"], "chosen", tmp_path, "letter", frozenset({"ics", "pdf"}), went_out=True
    )
    idle(qtbot, at_work)
    assert (tmp_path / "battery-calendar.ics").is_file()
    assert not (tmp_path / "battery-calendar.xlsx").exists()
    assert (tmp_path / "packets" / "M004.pdf").is_file()
    choose(at_work, "M004")
    assert not any(f.discipline == "documents" for f in checked_of(at_work, "M004").findings)
    at_work.sheet.edited.emit("opening", at_work.frame.state.chosen, "wave", "7")
    at_work.opening.choose_part(at_work.frame.state.chosen, "unit", "ARC-UN")
    assert any(f.discipline == "documents" for f in checked_of(at_work, "M004").findings)


def test_the_settings_hold_the_whole_rulebook_and_every_preference(at_work):
    from hwsched.choices import PREFERENCES
    from hwsched.rules import RULEBOOK

    at_work.project.ask_settings()
    dialog = at_work.project.settings
    tree = dialog.rules
    count = sum(tree.topLevelItem(n).childCount() for n in range(tree.topLevelItemCount()))
    assert count == len(RULEBOOK)
    assert [dialog.prefer.itemData(n) for n in range(dialog.prefer.count())] == list(PREFERENCES)
    dialog.reject()


def test_an_empty_project_opens_every_window(qtbot, tmp_path):
    from hwsched.desktop.window import Window

    window = Window("tester")
    qtbot.addWidget(window)
    window.show()
    window.project.new_project(str(tmp_path / "empty.hwsched"), "Empty")
    idle(qtbot, window)
    for action in (
        *(
            window.beside.acts["sets"],
            window.fitting.act_what_if,
            window.beside.acts["fewest"],
            window.beside.acts["cost"],
        ),
        *(window.findings.act_rulebook, window.findings.act_waivers, window.survey.act_missing),
    ):
        action.trigger()
        idle(qtbot, window)
    assert len(window.frame.side.windows) == 7
    cost = window.frame.side.windows[CostWindow]
    assert all("Nothing is priced" in table.grid.table.empty for table in cost.tables.values())
    assert not window.frame.side.windows[MissingWindow].write.isEnabled()
    window.close()
    assert not window.frame.side.windows


def test_costs_are_kept_while_nothing_they_read_has_changed(at_work, qtbot):
    ways, jobs = at_work.beside.acts, at_work.frame.jobs

    def reckoned():
        idle(qtbot, at_work)
        return [each.title for each in jobs.log.entries].count("Reckoning")

    ways["cost"].trigger()
    assert reckoned() == 1
    said = at_work.frame.pages.windows[CostWindow].said.text()
    ways["sets"].trigger()
    ways["cost"].trigger()
    assert reckoned() == 1, "seen again"
    at_work.frame.pages.windows[CostWindow].close()
    at_work.people.list_person("Ben", "viewer")
    ways["cost"].trigger()
    assert reckoned() == 1, "opened again; who works on it costs nothing"
    assert at_work.frame.pages.windows[CostWindow].said.text() == said
    opening = at_work.frame.state.chosen
    at_work.opening.type_fact("opening", opening, "wave", "7")
    assert "reckon again" in at_work.frame.pages.windows[CostWindow].said.text()
    ways["sets"].trigger()
    ways["cost"].trigger()
    assert reckoned() == 2


def test_the_paper_of_the_return_visit_is_named_where_it_is_seen(at_work, qtbot):
    at_work.frame.go("missing")
    idle(qtbot, at_work)
    page = next(each for each in at_work.findChildren(MissingWindow) if each.isVisible())
    (named,) = [each for each in page.findChildren(QLabel) if each.buddy() is page.paper]
    assert named.isVisible()
    assert named.text() == "Paper"
    assert page.paper.accessibleName()


def test_no_word_begins_where_the_number_before_it_ends(at_work, qtbot):
    """1 E6 and 2,103.55 1 unknown were read as one."""
    at_work.survey.act_missing.trigger()
    at_work.frame.go("cost")
    idle(qtbot, at_work)
    grids = [at_work.frame.side.windows[MissingWindow].grid]
    grids += [each.grid for each in at_work.frame.pages.widgets["cost"].findChildren(CostTable)]
    assert len(grids) > 3
    for grid in grids:
        numbers = [column.right for column in grid.model.contents.columns]
        assert numbers == sorted(numbers), grid.place
