"""Starting the desktop."""

import sys
from pathlib import Path

from PySide6.QtWidgets import QApplication

from hwsched.desktop.window import Window


def run_desktop(target: str | None, who: str) -> int:
    """Open the desktop, on a project if one is named; returns when it is closed.

    Parameters
    ----------
    target : str or None
        Project file or database URL.
    who : str
        Person at work, for the journal.
    """
    present = QApplication.instance()
    application = present if isinstance(present, QApplication) else QApplication(sys.argv[:1])
    application.setApplicationName("hwsched")
    window = Window(who)
    window.show()
    if target is not None:
        window.open_project(target if "://" in target else str(Path(target)))
    return application.exec()
