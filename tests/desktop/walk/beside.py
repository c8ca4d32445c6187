"""Another person at the same project: a desktop of its own that types a fact by keys, and is killed while typing on.

``python -m tests.desktop.walk.beside PROJECT MARK`` prints a line once its edit is made, and is killed after it.
"""

import os
import signal
import sys

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QSettings, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.window import Window
from tests.desktop.walk.hands import KEY


def main():
    path, mark, settings = sys.argv[1:]
    application = QApplication([])
    QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, settings)
    known = Preferences()
    known.place, known.toured = "openings", True
    window = Window("ben")
    window.show()
    window.project.open_project(path)

    def wait(until):
        while not until():
            QTest.qWait(5)

    wait(lambda: not window.frame.jobs.busy and window.frame.state.filled)
    window.activateWindow()
    wait(window.isActiveWindow)
    grid = window.openings.grid
    while QApplication.focusWidget() is not grid.table:
        QTest.keyClick(QApplication.focusWidget() or window, KEY.Key_Tab)
    contents = grid.model.contents
    while contents.row_of(grid.ids[0]).given.opening.mark != mark if grid.ids else True:
        QTest.keyClick(grid.table, KEY.Key_Down)
    while grid.table.currentIndex().column() != grid.model.place_of("opening.building"):
        QTest.keyClick(grid.table, KEY.Key_Right)
    QTest.keyClick(grid.table, KEY.Key_F2)
    QTest.keyClicks(QApplication.focusWidget(), "Chart House")
    QTest.keyClick(QApplication.focusWidget(), KEY.Key_Return)
    QTest.qWait(20)
    wait(lambda: not window.frame.jobs.busy)
    # And once more, never finished.
    QTest.keyClick(grid.table, KEY.Key_F2)
    QTest.keyClicks(QApplication.focusWidget(), "half a na")
    print("made", flush=True)
    QTimer.singleShot(30_000, application.quit)
    application.exec()
    os.kill(os.getpid(), signal.SIGTERM)


if __name__ == "__main__":
    main()
