"""Starting the desktop, and what stands around it: its hooks for what nobody caught, signals, Qt's messages."""

import logging
import sys
from collections.abc import Callable
from contextlib import ExitStack
from pathlib import Path
from typing import Final

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from hwsched.desktop.jobs.jobs import Failure
from hwsched.desktop.jobs.last_resort import LastResort, Signals, qt_messages_logged
from hwsched.desktop.jobs.trouble import tell_failure
from hwsched.desktop.looks.appearance import Look
from hwsched.desktop.looks.kinds_of_files import know_projects_by_name
from hwsched.desktop.looks.letters import use_own_letters
from hwsched.desktop.looks.spoken import speak_chosen
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.window import Window
from hwsched.language import phrase
from hwsched.telling.log import faults_logged
from hwsched.telling.signals_held import signals_held

_LOG = logging.getLogger(__name__)
_BETWEEN_LETTERS: Final = 1500
"""How long a pause between two letters may be that are typed to find one entry [ms]; Qt's own is too short for many."""


def run_desktop(target: str | None, who: str, *, login: str, cannot_open: Callable[[str], None]) -> int:
    """Open the desktop, on a project if one is named; returns when it is closed.

    Parameters
    ----------
    target : str or None
        Project file or database URL.
    who : str
        Person at work, for the journal; empty: the name that the person told once, else the login name.
    login : str
        The login name.
    cannot_open : callable
        Gets Qt's words where there is no display; does not come back.

    Returns
    -------
    int
        Exit status: 0, or what a signal of the system asks for.
    """
    with ExitStack() as around:
        around.enter_context(qt_messages_logged(cannot_open))
        around.enter_context(faults_logged())
        # An exception out of a handler would be lost in Qt, which calls Python as it makes the window.
        with signals_held():
            know_projects_by_name()
            present = QApplication.instance()
            application = present if isinstance(present, QApplication) else QApplication(sys.argv[:1])
            application.setApplicationName("hwsched")
            application.setKeyboardInputInterval(_BETWEEN_LETTERS)
            if not use_own_letters(application):
                _LOG.warning("the package's font could not be loaded; the system's is used")
            preferences = Preferences(application)
            speak_chosen(application, preferences)
            Look(application, preferences)
            window = Window(who or preferences.name or login, preferences)
            last_resort = LastResort(application)
            last_resort.came.connect(
                lambda error: tell_failure(Failure("", error, None, doing=phrase("the desktop")), window)
            )
            around.enter_context(last_resort.in_force())
            signals = Signals(application)
            around.enter_context(signals.in_force())
            signals.came.connect(lambda status: _end(application, window, status))
        window.show()
        if target is not None:
            window.project.open_project(target if "://" in target else str(Path(target)))
        return application.exec()


def _end(application: QApplication, window: Window, status: int) -> None:
    """Close as a person would, but whatever is said on the way: nobody may be there to read it."""
    if not application.thread().loopLevel():
        # It still opens the project: told to end before its loop runs, Qt would forget that and run for ever.
        QTimer.singleShot(0, application, lambda: _end(application, window, status))
        return
    window.frame.following.stop()
    window.close()
    application.exit(status)
