"""What other processes write comes to every open view within two seconds, and never gets in a person's way."""

import shutil
import subprocess
import sys

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit

from hwsched.desktop.findings.waivers_window import WaiversWindow
from hwsched.desktop.parts.sets_window import SetsWindow
from hwsched.desktop.power.power_window import PowerWindow
from hwsched.desktop.project import watching
from hwsched.desktop.project.watching import said_of_others
from hwsched.desktop.window import Window
from hwsched.model.errors import UnreachableProjectError
from hwsched.model.journal.touched import Touched
from hwsched.model.project import open_project
from hwsched.model.queries import opening_ids
from hwsched.operations.findings.waivers import waive
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.parts.catalogue_import import import_catalogue
from hwsched.operations.parts.hardware_sets import Line, make_set
from hwsched.operations.power.connecting import disconnect_openings
from hwsched.operations.project.history import history
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.editing import add_opening, edit_facts, remove
from hwsched.paths import SAMPLE
from tests.desktop.conftest import checked_of, choose, idle

SOON_MS = 15_000
"""Far more than it takes on a machine with other work; how fast it is where nothing else runs is measured apart."""


@pytest.fixture(autouse=True)
def somebody_watches(monkeypatch, nobody_watches):
    monkeypatch.setattr(watching, "_EACH_MS", 40)


@pytest.fixture
def at_work(qtbot, project_file):
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    shown.project.open_project(str(project_file))
    idle(qtbot, shown)
    choose(shown, "M004")
    return shown


@pytest.fixture
def other(at_work, project_file):
    """The same project in another process, as far as the window can tell."""
    with open_project(project_file) as opened:
        yield opened


def id_of(project, mark):
    with project.reading() as connection:
        return opening_ids(connection)[mark]


def fact(window, label):
    return window.sheet.facts.findItems(label, Qt.MatchFlag.MatchExactly | Qt.MatchFlag.MatchRecursive, 0)[0]


def comes(qtbot, holds):
    qtbot.waitUntil(holds, timeout=SOON_MS)


def test_a_fact_that_another_process_edits_is_shown(at_work, qtbot, corner_file):
    words = ["survey", "edit", str(corner_file), "M004", "opening", "wave", "W7", "--who", "ben"]
    subprocess.run([sys.executable, "-m", "hwsched", *words], check=True, stdout=subprocess.DEVNULL)
    comes(qtbot, lambda: checked_of(at_work, "M004").given.opening.wave == "W7")
    comes(qtbot, lambda: fact(at_work, "Wave").text(1) == "W7")
    comes(qtbot, lambda: at_work.statusBar().currentMessage().startswith("ben: Edit wave"))


def test_an_opening_that_comes_and_goes(at_work, qtbot, other):
    before = at_work.openings.register.total()
    _, opening = add_opening(other, {"mark": "NEW-1"}, who="ben")
    comes(qtbot, lambda: at_work.openings.register.total() == before + 1)
    assert at_work.openings.count.text() == f"{before + 1} openings"
    remove(other, "opening", opening, who="ben")
    comes(qtbot, lambda: at_work.openings.register.total() == before)


def test_pages_follow_too_and_catch_up_as_they_are_seen(at_work, qtbot, other):
    ways = (at_work.beside.acts["sets"], at_work.findings.act_waivers, at_work.power.act_power)
    for action in (*ways, ways[0]):
        action.trigger()
    line = Line("unit", checked_of(at_work, "M004").fit.part("unit").part)
    make_set(other, "HS-BEN", [line], who="ben", openings=[id_of(other, "M004")])
    sets = at_work.frame.side.windows[SetsWindow]
    comes(qtbot, lambda: "HS-BEN" in [each.name for each in sets.list.model.contents.rows])
    finding = next(f for f in checked_of(at_work, "M005").findings if not f.waived)
    waive(other, finding.rule, person="Ben", reason="seen", who="ben", opening_id=id_of(other, "M005"))
    comes(qtbot, lambda: any(f.waived_by.startswith("Ben") for f in checked_of(at_work, "M005").findings))
    ways[1].trigger()
    waivers = at_work.frame.side.windows[WaiversWindow]
    comes(qtbot, lambda: waivers.model.total() == 1)
    ways[2].trigger()
    power = at_work.frame.side.windows[PowerWindow]
    connected_devices = set(power.facts.connected())
    disconnect_openings(other, [next(iter(connected_devices))], who="ben")
    comes(qtbot, lambda: len(power.facts.connected()) == len(connected_devices) - 1)


def test_what_touches_everything_is_read_beside_a_person_s_work(at_work, qtbot, other, tmp_path):
    started = []
    at_work.frame.jobs.started.connect(started.append)
    set_settings(other, who="ben", name="Other title", prefer="holes")
    comes(qtbot, lambda: at_work.windowTitle() == "Other title - hwsched")
    comes(qtbot, lambda: checked_of(at_work, "M004").given.settings.prefer == "holes")
    path = tmp_path / "c.xlsx"
    shutil.copy(SAMPLE / "catalogue.xlsx", path)
    import_catalogue(other, path, who="ben")
    # Nobody had to wait for it, and nothing was disabled.
    assert started == []


@pytest.mark.usefixtures("sample_file")
def test_an_edit_made_while_others_are_read_is_not_lost_from_view(at_work, qtbot, other):
    set_settings(other, who="ben", prefer="holes")
    comes(qtbot, lambda: at_work.frame.following.reading.busy)
    at_work.sheet.edited.emit("opening", at_work.frame.state.chosen, "wave", "W9")
    assert checked_of(at_work, "M004").given.opening.wave == "W9"
    comes(
        qtbot,
        lambda: (
            not at_work.frame.following.reading.busy and checked_of(at_work, "M004").given.settings.prefer == "holes"
        ),
    )
    assert checked_of(at_work, "M004").given.opening.wave == "W9"


def test_what_is_being_typed_is_left_to_its_end(at_work, qtbot, other):
    at_work.sheet.pages.show_page(at_work.sheet.facts)
    at_work.sheet.facts.editItem(fact(at_work, "Wave"), 1)
    editor = at_work.sheet.facts.findChild(QLineEdit)
    qtbot.keyClicks(editor, "W")
    edit_facts(other, "opening", at_work.frame.state.chosen, {"room_to": "Loft"}, who="ben")
    comes(qtbot, lambda: checked_of(at_work, "M004").given.opening.room_to == "Loft")
    assert at_work.sheet.facts.findChild(QLineEdit) is editor
    qtbot.keyClicks(editor, "3")
    with qtbot.waitSignal(editor.destroyed, timeout=5000):
        qtbot.keyClick(editor, Qt.Key.Key_Return)
    idle(qtbot, at_work)
    comes(qtbot, lambda: fact(at_work, "Wave").text(1) == "W3")


def test_it_waits_while_work_is_running(at_work, qtbot, other):
    at_work.fitting.fit()
    assert at_work.frame.jobs.busy
    edit_facts(other, "opening", at_work.frame.state.chosen, {"wave": "W5"}, who="ben")
    idle(qtbot, at_work)
    comes(qtbot, lambda: fact(at_work, "Wave").text(1) == "W5")


def test_what_is_written_here_comes_once(at_work, qtbot, other):
    told = []
    at_work.frame.following.watcher.changed.connect(told.append)
    at_work.sheet.edited.emit("opening", at_work.frame.state.chosen, "wave", "W1")
    choose_part(other, id_of(other, "M005"), "unit", "ARC-UN", who="ben")
    comes(qtbot, lambda: bool(told))
    qtbot.wait(300)
    assert [changes.openings for changes in told] == [{id_of(other, "M005")}]
    assert told[0].number == len(history(other))


def test_a_project_that_stops_answering_is_said_and_seen_again(at_work, qtbot, other, monkeypatch):
    def gone():
        raise UnreachableProjectError("the server does not answer")

    with monkeypatch.context() as patched:
        patched.setattr(at_work.frame.following.watcher._watch, "_look", gone)
        comes(qtbot, lambda: "does not answer" in at_work.statusBar().currentMessage())
        edit_facts(other, "opening", at_work.frame.state.chosen, {"wave": "W6"}, who="ben")
        qtbot.wait(100)
        assert at_work.frame.telling.told is None
    comes(qtbot, lambda: fact(at_work, "Wave").text(1) == "W6")
    assert "does not answer" not in at_work.statusBar().currentMessage()


def test_nothing_is_watched_any_more_once_it_is_closed(at_work, qtbot, other, corner_file):
    watcher = at_work.frame.following.watcher
    at_work.close()
    assert at_work.frame.following.watcher is None
    assert not watcher._timer.isActive()
    other.close()
    assert sorted(path.name for path in corner_file.parent.glob("corner.hwsched*")) == ["corner.hwsched"]


def test_several_steps_are_said_in_one_line():
    def step(number, who, summary):
        return Touched(number, frozenset(), frozenset(), frozenset(), who, summary)

    assert said_of_others([step(1, "Ann", "Fit 3 openings")]) == "Ann: Fit 3 openings"
    steps = [step(1, "Ann", "One"), step(2, "Ben", "Two"), step(3, "Ann", "Three")]
    assert said_of_others(steps) == "Ann, Ben: 3 steps, last: Three"
