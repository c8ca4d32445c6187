"""A window on a small project or the sample, and the watch for what a test leaves behind: windows, threads, timers."""

import gc
from contextlib import contextmanager
from itertools import compress

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QSettings, QThread, QTimer
from PySide6.QtGui import QFont, QPalette
from PySide6.QtWidgets import QApplication
from shiboken6 import isValid

from hwsched.desktop.frame import loading_ahead
from hwsched.desktop.jobs.jobs import Jobs
from hwsched.desktop.looks.appearance import Look
from hwsched.desktop.looks.spoken import Spoken, translate_qt
from hwsched.desktop.power.power_window import PowerWindow
from hwsched.desktop.project import watching
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.window import Window
from hwsched.language import STRETCHED, Stretched, speak
from hwsched.language import stretched as stretched_text


def _kinds_of(kind):
    """A type and all that are made from it."""
    yield kind
    for each in kind.__subclasses__():
        yield from _kinds_of(each)


EACH = 8
"""After so many tests of a process the windows that nobody holds any more are let go of."""
_run = 0


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup():
    """Look for garbage between tests alone: a window that went while Qt walks a list of all would still stand in it.

    A person has one window, which stays; here one after the other becomes garbage.
    """
    gc.disable()


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_runtest_teardown():
    """Let go of what is garbage, once Qt has nothing more to do with the test."""
    global _run
    try:
        return (yield)
    finally:
        _run += 1
        if _run % EACH == 0:
            gc.collect()
        gc.enable()


@pytest.fixture(autouse=True)
def no_window_left_open(qapp):
    yield
    qapp.processEvents()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    open_ = [each for each in QApplication.topLevelWidgets() if each.isVisible()]
    assert not open_, [(type(each).__name__, each.windowTitle()) for each in open_]


@pytest.fixture(autouse=True, scope="module")
def nothing_left_running(qapp):
    """No thread and no timer outlives the tests of a file; told once a file: all objects are gone through for it."""
    yield
    qapp.processEvents()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    # Hundreds of thousands of objects: picked out by their type, without a call for each.
    kinds = frozenset(_kinds_of(QThread)) | frozenset(_kinds_of(QTimer))
    everything = gc.get_objects()
    alive = [each for each in compress(everything, map(kinds.__contains__, map(type, everything))) if isValid(each)]
    assert not [each for each in alive if isinstance(each, QThread) and each.isRunning()]
    assert not [each for each in alive if isinstance(each, QTimer) and each.isActive()]


@pytest.fixture(autouse=True)
def nothing_chosen_before(tmp_path):
    """Each test has preferences of its own, of one who was with the openings and knows the tour."""
    QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, str(tmp_path / "chosen"))
    known = Preferences()
    known.place, known.toured = "openings", True


@pytest.fixture(autouse=True)
def edits_are_waited_for(monkeypatch):
    """However loaded the machine is, an edit is made when the call comes back; those who test the waiting say so."""
    monkeypatch.setattr(Jobs, "patience_ms", 60_000)
    monkeypatch.setattr(Jobs, "closing_ms", 60_000)


@pytest.fixture(autouse=True)
def nobody_watches(monkeypatch):
    """What others write comes when a test says so, not when the clock does; those who test the watch wind it up."""
    monkeypatch.setattr(watching, "_EACH_MS", 3_600_000)


@pytest.fixture(autouse=True)
def nothing_is_loaded_ahead(monkeypatch):
    """What pages need is loaded as they are gone to, as by who goes there at once."""
    monkeypatch.setattr(loading_ahead, "_AFTER_MS", 3_600_000)


@pytest.fixture
def project_file(request):
    """A small project; the sample where a test uses `sample_file`, as those do that want many openings."""
    return request.getfixturevalue("sample_file" if "sample_file" in request.fixturenames else "corner_file")


@pytest.fixture
def at_work(qtbot, project_file):
    """A window on that project."""
    shown = Window("tester")
    qtbot.addWidget(shown)
    shown.show()
    shown.project.open_project(str(project_file))
    idle(qtbot, shown)
    assert shown.openings.register.total() > 20
    # qtbot closes it, and with it the windows beside it.
    return shown


@pytest.fixture
def power(at_work):
    """The place for power, open on the same project."""
    at_work.power.act_power.trigger()
    window = at_work.frame.side.windows[PowerWindow]
    yield window
    # The main window, closed before the fixtures, takes it along.
    if isValid(window):
        window.close()


def idle(qtbot, window):
    """Wait until no job is running, those that follow one another included."""
    qtbot.waitUntil(lambda: not window.frame.jobs.busy, timeout=30000)


@contextmanager
def look_put_on(application, preferences):
    """The look of the program for as long as it is wanted; what was there before comes back."""
    letters, colours = QFont(application.font()), QPalette(application.palette())
    look = Look(application, preferences)
    try:
        yield look
    finally:
        look.setParent(None)
        application.setStyleSheet("")
        application.setFont(letters)
        application.setPalette(colours)


def choose(window, *marks):
    """Select openings in the register by their marks."""
    ids = [id_ for id_, each in window.frame.state.workspace.checked.items() if each.given.opening.mark in marks]
    assert len(ids) == len(marks)
    window.openings.select_openings(ids)
    return ids


def checked_of(window, mark):
    """Return an opening as the views see it."""
    return next(each for each in window.frame.state.workspace.checked.values() if each.given.opening.mark == mark)


@pytest.fixture
def stretched(qapp, monkeypatch):
    """All that is said from here on is said in it; the texts for which the catalogue was asked."""
    asked = set()
    # Qt asks for words of its own besides, which are listed in its catalogues.
    monkeypatch.setattr(Spoken, "translate", lambda _self, _context, text, *_: stretched_text(text))
    monkeypatch.setattr(Stretched, "gettext", lambda _self, text: asked.add(text) or stretched_text(text))
    speak(STRETCHED)
    held = translate_qt(qapp, STRETCHED)
    yield asked
    for each in held.children():
        qapp.removeTranslator(each)
    held.setParent(None)
    speak()


@pytest.fixture
def whole(stretched, qapp, request):
    """The window on a project, made in that language, as large as the smallest screen, with the look put on."""
    at_work = request.getfixturevalue("at_work")
    with look_put_on(qapp, at_work.frame.preferences):
        at_work.resize(1366, 768)
        choose(at_work, "M016")
        yield at_work


def empty_words(view):
    """What a list says in the place of its lines; nothing while it has one."""
    return " ".join(each.text() for each in view.findChildren(Empty) if each.isVisibleTo(view))
