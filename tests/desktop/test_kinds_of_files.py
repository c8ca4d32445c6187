"""A dialog for files that lists the folder of the open project leaves the project's locks alone."""

import shutil
import subprocess
import sys

import pytest

_SCRIPT = """
import sqlite3, subprocess, sys
from pathlib import Path
from PySide6.QtCore import QMimeDatabase, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog
from hwsched.desktop.looks.kinds_of_files import know_projects_by_name
if sys.argv[2] == "known":
    know_projects_by_name()
application = QApplication([])
place = Path(sys.argv[1])
held = sqlite3.connect(place)
held.execute("PRAGMA journal_mode=WAL")
held.execute("CREATE TABLE tried (n)")
held.commit()
dialog = QFileDialog(None, "Open", str(place.parent))
dialog.setOption(QFileDialog.Option.DontUseNativeDialog)
QTimer.singleShot(2500, dialog.reject)
dialog.exec()
# As another process that reads the project and leaves it.
other = "import sqlite3, sys; c = sqlite3.connect(sys.argv[1]); c.execute('SELECT * FROM tried').fetchall(); c.close()"
subprocess.run([sys.executable, "-c", other, str(place)], check=True)
kinds = QMimeDatabase()
print("stands" if Path(f"{place}-wal").exists() else "cleared away")
print(kinds.mimeTypeForFile("a.pdf").name(), kinds.mimeTypeForFile("a.xlsx").name().rpartition(".")[2])
"""


@pytest.mark.skipif(sys.platform != "linux", reason="elsewhere dialogs for files are the system's")
def test_what_is_still_written_into_is_not_cleared_away_after_a_dialog(project_file, tmp_path):
    place = tmp_path / "yard.hwsched"
    shutil.copy(project_file, place)
    done = subprocess.run(
        [sys.executable, "-c", _SCRIPT, str(place), "known"], check=True, capture_output=True, text=True, timeout=60
    )
    assert done.stdout.splitlines() == ["stands", "application/pdf sheet"], "and other kinds are known as before"
