"""In a stretched English every word on the screen has an accent: one that has none did not come through the catalogue.

What is not English there is data: marks, names, parts, messages of rules, and what stands in cells.
"""

import pytest
from PySide6.QtCore import QStringListModel, Qt
from PySide6.QtWidgets import (
    QApplication,
)
from sqlalchemy import select

from hwsched.attributes.unknown import unknown_word
from hwsched.desktop.findings.waive_dialog import WaiveDialog
from hwsched.desktop.findings.why_window import WhyWindow
from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.grid.cells import editor_for
from hwsched.desktop.grid.proposals import proposed
from hwsched.desktop.jobs.jobs import Failure
from hwsched.desktop.jobs.trouble import tell_failure
from hwsched.desktop.looks.spoken import own_name, speak_chosen
from hwsched.desktop.opening.upgrade_window import UpgradeWindow
from hwsched.desktop.parts.new_set_dialog import NewSetDialog
from hwsched.desktop.parts.proposed_sets_dialog import ProposedSetsDialog
from hwsched.desktop.power.move_dialog import MoveDialog
from hwsched.desktop.power.power_facts_form import NewPowerDialog
from hwsched.desktop.project.conflict_question import ConflictQuestion
from hwsched.desktop.project.help_topics import topics
from hwsched.desktop.project.people_dialog import PeopleDialog
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.project.settings_dialog import SettingsDialog
from hwsched.desktop.project.units import NewProjectDialog, UnitsBox
from hwsched.desktop.release.gate_window import GateWindow
from hwsched.desktop.release.print_dialog import PrintDialog
from hwsched.desktop.release.revisions_window import RevisionsWindow
from hwsched.desktop.release.transmittals_window import TransmittalDialog
from hwsched.desktop.survey.facts_form import ATTRIBUTE
from hwsched.desktop.window import Window
from hwsched.language import STRETCHED, VARIABLE
from hwsched.language import stretched as stretched_text
from hwsched.model.errors import ConflictError
from hwsched.model.tables import SUPPLY_TABLE
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.outcome import REFUSED
from hwsched.operations.parts.part_edits import edit_part
from hwsched.operations.parts.part_form import PartEdit
from hwsched.operations.project.history import newest, redo
from hwsched.operations.project.settings import set_settings
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.issued_documents import PRINTS
from hwsched.operations.release.revision_differences import differences
from hwsched.operations.survey.editing import edit_fact_text, edit_facts, remove_openings
from hwsched.rules import RULEBOOK
from hwsched.rules.page import page_of
from hwsched.survey import SUPPLY
from hwsched.values import Settings
from tests.desktop.conftest import checked_of, choose, idle
from tests.desktop.seen_texts import data_of, faults, things, unsaid_cells
from tests.desktop.test_access import cut
from tests.house.texts import texts
from tests.language.plainness import unsaid
from tests.operations.opening.test_since_upgrade import older_yard


def test_every_text_of_every_place_comes_through_the_catalogue_and_has_room(whole, stretched, qtbot):
    data = data_of(whole)
    found, short, seen = {}, {}, 0

    def look(part, where):
        # Words that came just now are given their room at the next rounds of the loop.
        for _ in range(4):
            QApplication.processEvents()
        for fault in faults(part, data):
            found.setdefault(fault, where)
        for fault in cut(part):
            short.setdefault(fault, where)

    look(whole, "frame")
    for place in PLACES:
        whole.frame.go(place.name)
        idle(qtbot, whole)
        reading = getattr(whole.frame.pages.widgets.get("today"), "_reading", None)
        qtbot.waitUntil(lambda reading=reading: reading is None or not reading.busy)
        whole.centre.layout().activate()
        qtbot.wait(0)
        seen += 1
        look(whole.centre, place.name)
    whole.frame.go("openings")
    sheet = whole.sheet.pages
    for at in range(sheet.count()):
        sheet.setCurrentIndex(at)
        inner = sheet.widget(at)
        for page in range(inner.count()) if hasattr(inner, "count") else range(1):
            if hasattr(inner, "count"):
                inner.setCurrentIndex(page)
            idle(qtbot, whole)
            qtbot.wait(0)
            look(whole.inspector, sheet.tabText(at))
    idle(qtbot, whole)
    assert seen >= 15
    assert not found, "\n".join(f"{where}: {what}" for what, where in found.items())
    assert not short, "\n".join(f"{where}: {what}" for what, where in short.items())
    unlisted = sorted(stretched - {text for each in texts() for text in each})
    assert not unlisted, "\n".join(unlisted)


def worded(grid):
    """Every column of a grid in which one of several words stands, with the texts of its cells."""
    contents = grid.model.contents
    for column in contents.known.values():
        texts = {column.text(value) for value in contents.values(column.name)}
        if column.attribute is not None and column.attribute.kind in ("choice", "flag"):
            yield column, texts - {"", unknown_word()}


def test_words_of_choices_are_said_in_cells_and_what_is_typed_in_them_is_written_plainly(whole, qtbot):
    grid, said = whole.openings.grid, 0
    for column, words in worded(grid):
        for text in words:
            assert not unsaid(text, []), (column.name, text)
            said += 1
    assert said > 20
    # As it is said it is read back, typed or pasted or chosen in the cell, and written in the survey's own words.
    name, identity = "opening.rating", checked_of(whole, "M016").given.opening.id
    attribute = grid.model.contents.known[name].attribute
    held = checked_of(whole, "M016").given.opening.rating
    other = next(each for each in attribute.choices if each.value != held)
    assert unsaid(other.label, []), "the word is otherwise than it is said"
    change = proposed(grid.model.contents, identity, name, stretched_text(other.label), grid.reading, "M016")
    assert (change.refused, change.text, change.after) == ("", other.label, stretched_text(other.label))
    box = editor_for(grid.model.contents.known[name], whole)
    words = [box.itemText(n) for n in range(box.count())]
    assert words == [stretched_text("unknown"), *(stretched_text(each.label) for each in attribute.choices)]
    grid.edits.take(grid.model.index(grid.model.row_of_id(identity), grid.model.place_of(name)), words[-1], False)
    idle(qtbot, whole)
    assert checked_of(whole, "M016").given.opening.rating == attribute.choices[-1].value
    form = whole.sheet.facts
    shown = {
        line.text(1)
        for n in range(form.topLevelItemCount())
        for line in (form.topLevelItem(n).child(at) for at in range(form.topLevelItem(n).childCount()))
        if line.data(1, ATTRIBUTE).kind in ("choice", "flag")
    }
    assert len(shown) > 5
    assert not [text for text in shown if unsaid(text, [])]


@pytest.mark.usefixtures("stretched")
def test_titles_of_help_pages_are_said():
    titles = [each.title for each in topics()]
    assert len(titles) > 100
    assert not [each for each in titles if unsaid(each, [])]


def test_every_dialog_comes_through_the_catalogue(whole, qtbot):
    finding = next(each for each in checked_of(whole, "M016").findings)
    formats = {each for _name, _title, formats in PRINTS for each in formats}
    data = [*data_of(whole), *(rule.id for rule in RULEBOOK), *formats, *([finding.about] if finding.about else [])]
    dialogs = (
        NewProjectDialog("M016"),
        SettingsDialog("M016", Settings(), None, UnitsBox("fraction", "in")),
        PeopleDialog("tester"),
        PrintDialog(3, 1),
        NewSetDialog(QStringListModel(), [], 2),
        ProposedSetsDialog([]),
        MoveDialog("M016", {"c": "M016"}, lambda _circuit: ["M016"], lambda *_: None, style="mm"),
        NewPowerDialog(SUPPLY, "M016", {}, lambda *_: None, style="mm"),
        TransmittalDialog([]),
        WaiveDialog("M016", finding, "tester", 2, 3),
    )
    found = []
    for each in dialogs:
        qtbot.addWidget(each)
        each.show()
        qtbot.wait(0)
        found += [f"{type(each).__name__}: {fault}" for fault in faults(each, data)]
    assert not found, "\n".join(found)


def test_where_one_begins_comes_through_the_catalogue(stretched, qtbot, request):
    window = request.getfixturevalue("at_work")
    found = list(faults(window.welcome, data_of(window)))
    assert not found, "\n".join(found)


def test_the_environment_asks_for_a_language_before_the_person_does(qapp, monkeypatch):
    monkeypatch.setenv(VARIABLE, STRETCHED)
    before = len(qapp.children())
    assert speak_chosen(qapp, Preferences()) == STRETCHED
    for holder in qapp.children()[before:]:
        for each in holder.children():
            qapp.removeTranslator(each)
        holder.setParent(None)
    monkeypatch.delenv(VARIABLE)
    assert speak_chosen(qapp, Preferences()) == "en"
    assert own_name("de") == "Deutsch"


def test_the_reasons_of_everything_come_through_the_catalogue(whole, qtbot):
    """The chain of each role, place, hole and rule of every opening, and the lists of its sheet."""
    data, found, asked = things(whole), {}, 0
    for each in list(whole.frame.state.workspace.checked.values()):
        choose(whole, each.given.opening.mark)
        for page in (
            whole.sheet.parts_page,
            whole.sheet.holes_page,
            whole.sheet.refused_page,
            whole.sheet.findings_page,
        ):
            found |= dict.fromkeys(unsaid_cells(page, data), f"{each.given.opening.mark} {type(page).__name__}")
        whole.frame.go("why", (each.given.opening.mark, "", "", ""))
        window = whole.frame.side.windows[WhyWindow]
        for at in range(window.about.count()):
            window.about.setCurrentIndex(at)
            asked += 1
            said = [*unsaid_cells(window, data), *faults(window, data)]
            found |= dict.fromkeys(said, f"{each.given.opening.mark} {window.about.currentData()}")
    window.close()
    assert asked > 200
    assert not found, "\n".join(f"{where}: {what}" for what, where in sorted(found.items())[:60])


def test_what_holds_openings_back_comes_through_the_catalogue(whole, qtbot):
    whole.beside.acts["gate"].trigger()
    gate = whole.frame.side.windows[GateWindow]
    idle(qtbot, whole)
    found = unsaid_cells(gate, things(whole))
    assert gate.model.rowCount() > 5
    assert not found, "\n".join(sorted(found))


def test_differences_of_revisions_come_through_the_catalogue(whole, qtbot):
    project = whole.frame.state.workspace.project
    freeze(project, who="tester", purpose="")
    opening = checked_of(whole, "M004").given.opening
    leaf, item = checked_of(whole, "M004").given.leaves[0], checked_of(whole, "M004").given.items[0]
    edit_facts(project, "opening", opening.id, {"hand": "RH", "rating": "90", "egress": None}, who="tester")
    edit_facts(project, "leaf", leaf.id, {"thickness_mm": 51.0}, who="tester")
    edit_facts(project, "existing_item", item.id, {"backset_mm": 60.0}, who="tester")
    choose_part(project, opening.id, "unit", "ARC-UN", who="tester")
    set_settings(project, who="tester", prefer="stock", rules_off={"case-offset-taken": True})
    remove_openings(project, [checked_of(whole, "M005").given.opening.id], who="tester")
    edit_part(project, PartEdit("ARC-UN", {"description": "UNIT"}), who="tester")
    fit_openings(project, who="tester")
    whole.release.act_revisions.trigger()
    window = whole.frame.side.windows[RevisionsWindow]
    window.list.topLevelItem(0).setSelected(True)
    qtbot.mouseClick(window.compare, Qt.MouseButton.LeftButton)
    idle(qtbot, whole)
    found = {*unsaid_cells(window, things(whole)), *faults(window, things(whole))}
    assert window.found.topLevelItemCount() > 3
    assert not found, "\n".join(sorted(found))


def test_a_question_about_what_somebody_else_changed_comes_through_the_catalogue(whole, qtbot):
    data, project = things(whole), whole.frame.state.workspace.project
    opening, leaf = checked_of(whole, "M004").given.opening, checked_of(whole, "M004").given.leaves[0]
    base = newest(project)
    edit_facts(project, "opening", opening.id, {"hand": "RH", "rating": "90"}, who="ann")
    edit_facts(project, "leaf", leaf.id, {"thickness_mm": 51.0, "core": "solid"}, who="ann")
    choose_part(project, opening.id, "unit", "ARC-UN", who="ann")
    asked = []
    for act in (
        lambda: edit_facts(project, "opening", opening.id, {"hand": "LH", "rating": None}, who="ben", base=base),
        lambda: edit_facts(project, "leaf", leaf.id, {"thickness_mm": 38.0}, who="ben", base=base),
        lambda: choose_part(project, opening.id, "unit", "ARC-UW", who="ben", base=base),
        lambda: remove_openings(project, [opening.id], who="ben", base=base),
    ):
        with pytest.raises(ConflictError) as refused:
            act()
        question = ConflictQuestion(refused.value)
        qtbot.addWidget(question)
        asked += faults(question, [*data, "ann"])
        asked += [question.text()] if unsaid(question.text(), [*data, "ann", "you", "now"]) else []
    assert not asked, "\n".join(asked)


def refused(window, act, name):
    """Do what cannot be done, and return the box in which that is told."""
    try:
        act()
    except REFUSED as error:
        return tell_failure(Failure("", error, ()), window)
    raise AssertionError(name)


def test_what_cannot_be_done_is_told_through_the_catalogue(whole, qtbot):
    data, project = [*things(whole), "leaf.thickness_mm", "NONE-1", "purple"], whole.frame.state.workspace.project
    opening, leaf = checked_of(whole, "M004").given.opening, checked_of(whole, "M004").given.leaves[0]
    acts = {
        "length": lambda: edit_fact_text(project, "leaf", leaf.id, "thickness_mm", "3..5", who="tester"),
        "far": lambda: edit_fact_text(project, "leaf", leaf.id, "thickness_mm", "4000 mm", who="tester"),
        "choice": lambda: edit_fact_text(project, "opening", opening.id, "rating", "purple", who="tester"),
        "part": lambda: choose_part(project, opening.id, "unit", "NONE-1", who="tester"),
        "gone": lambda: edit_facts(project, "opening", "nobody", {"hand": "LH"}, who="tester"),
        "twice": lambda: edit_facts(project, "opening", opening.id, {"mark": "M005"}, who="tester"),
        "redo": lambda: redo(project, who="tester"),
        "revision": lambda: differences(project, "Z"),
    }
    found = []
    for name, act in acts.items():
        box = refused(whole, act, name)
        found += [f"{name}: {each}" for each in faults(box, data)]
        box.close()
    assert not found, "\n".join(found)


def test_what_an_upgrade_makes_different_comes_through_the_catalogue(stretched, qtbot, tmp_path):
    older_yard(tmp_path / "yard.hwsched")
    window = Window("tester")
    qtbot.addWidget(window)
    window.show()
    window.project.open_project(str(tmp_path / "yard.hwsched"))
    idle(qtbot, window)
    qtbot.mouseClick(window.openings.earlier.show_them, Qt.MouseButton.LeftButton)
    idle(qtbot, window)
    shown = window.frame.side.windows[UpgradeWindow]
    assert shown.tree.topLevelItemCount() > 5
    found = unsaid_cells(shown, [*things(window), "older", "rules", "tables"])
    assert not found, "\n".join(sorted(found))


def test_lists_of_findings_missing_facts_comparisons_and_rules_come_through_the_catalogue(whole, qtbot):
    with whole.frame.state.workspace.project.reading() as connection:
        places = connection.execute(select(SUPPLY_TABLE.c.place)).scalars().all()
    data = [*filter(None, places), *things(whole), "AWG", "stranded", "solid"]
    found = []
    for name in ("findings", "missing", "power", "waivers"):
        whole.frame.go(name)
        idle(qtbot, whole)
        found += [f"{name}: {each}" for each in unsaid_cells(whole.centre, data)]
    whole.frame.go("openings")
    choose(whole, "M004", "M114")
    idle(qtbot, whole)
    found += [f"two: {each}" for each in unsaid_cells(whole.inspector, data)]
    published = [*data, "to"]
    for rule in RULEBOOK:
        found += [f"{rule.id}: {each}" for each in [unsaid(page_of(rule), [*rule_bounds(rule), *published])] if each]
    assert not found, "\n".join(sorted(found))


def rule_bounds(rule):
    """What a project may set a limit to, in numbers and words of Python."""
    return [str(limit.bounds) for limit in rule.limits]
