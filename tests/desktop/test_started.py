"""What a window that shows openings has loaded: no page, library or floor that only another page needs."""

import json
import os
import subprocess
import sys

from hwsched.desktop.frame import beside
from hwsched.desktop.frame.later import Later
from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.frame.side_place import SidePlace
from hwsched.desktop.frame.tool_window import ToolWindow

STARTED = """
import json, sys, threading
from PySide6.QtCore import QEventLoop, QTimer
from PySide6.QtWidgets import QApplication
application = QApplication([])
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.window import Window
known = Preferences()
known.place, known.toured = "openings", True
window = Window("b", known)
window.show()
told = {"seen": [], "here": []}
screen = threading.get_ident()

class Watched:
    # Notes what is loaded on the screen's thread once openings are seen.

    def find_spec(self, name, _path=None, _target=None):
        if told["seen"] and threading.get_ident() == screen and not window.frame.state.filled:
            told["here"].append(name)

sys.meta_path.insert(0, Watched())
window.frame.state.ahead.connect(lambda _openings: told["seen"].extend(sorted(sys.modules)))
window.project.open_project(sys.argv[1])
loop, timer = QEventLoop(), QTimer()
timer.timeout.connect(lambda: window.frame.state.filled and not window.frame.jobs.busy and loop.quit())
timer.start(5)
loop.exec()
assert window.frame.state.checked is not None
told["loaded"] = sorted(sys.modules)
print(json.dumps(told))
# It closes once what looks for others' steps has come back.
window.close()
timer.timeout.disconnect()
timer.timeout.connect(lambda: not window.isVisible() and loop.quit())
loop.exec()
"""
# NumPy comes with circuits, whose volts are worked out as they are read: this project has some.
NOT_YET = (
    "reportlab", "pypdfium2", "openpyxl", "python_calamine", "xlrd", "pyxlsb", "PIL", "highspy",
    "hwsched.documents.documents", "hwsched.exchange.survey.book", "hwsched.render.pdf", "hwsched.render.xlsx",
    "hwsched.calc.calculators", "hwsched.operations.release.issued_documents",
    "hwsched.desktop.power.power_window", "hwsched.desktop.parts.cost_window", "hwsched.desktop.project.today_page",
)  # fmt: skip

JUDGING = (
    "hwsched.rules", "hwsched.fitting", "hwsched.wiring", "hwsched.work", "hwsched.documents", "hwsched.calc.opening",
    "hwsched.calc.power", "hwsched.calc.parts", "hwsched.drawings.opening", "hwsched.drawings.power",
    "hwsched.exchange.survey", "hwsched.values.power", "hwsched.operations.findings.checking", "numpy",
)  # fmt: skip
"""What takes longer to load than openings take to be read; whoever looks at them needs none of it."""


def test_a_window_that_shows_openings_has_loaded_nothing_that_only_other_pages_need(corner_file, tmp_path):
    named = {**os.environ, "XDG_CONFIG_HOME": str(tmp_path), "QT_QPA_PLATFORM": "offscreen"}
    ran = subprocess.run(
        [sys.executable, "-c", STARTED, str(corner_file)], env=named, capture_output=True, text=True, timeout=120
    )
    assert ran.returncode == 0, ran.stderr
    told = json.loads(ran.stdout.splitlines()[-1])
    assert "hwsched.desktop.survey.openings_place" in told["loaded"]
    assert [each for each in NOT_YET if each in told["loaded"]] == []
    # Openings are seen before what judges them is loaded, and that is loaded beside the screen's thread.
    assert [each for each in told["seen"] if each.startswith(JUDGING)] == []
    assert [each for each in JUDGING[:4] if each not in told["loaded"]] == []
    assert told["here"] == []


def test_what_is_loaded_later_is_there_when_it_is():
    called = [each for place in PLACES for each in (place.make, place.show) if isinstance(each, Later)]
    sides = [each for each in beside._SIDE if isinstance(each, SidePlace)]
    called += [each for side in sides for each in (side.shown, side.told) if each is not None]
    assert len(called) > 10
    assert all(callable(each.load()) for each in called)
    assert all(issubclass(side.window.load(), ToolWindow) for side in sides)


FOUND = """
import json, sys, threading
from PySide6.QtCore import QEventLoop, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
application = QApplication([])
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.window import Window
known = Preferences()
known.toured = True
window = Window("b", known)
window.show()
here, screen = [], threading.get_ident()

class Watched:
    def find_spec(self, name, _path=None, _target=None):
        if threading.get_ident() == screen:
            here.append(name)

sys.meta_path.insert(0, Watched())
QTest.keyClicks(window.field, "stair")
first = [each.kind for each in window.field.list.found]
before = "hwsched.rules" in sys.modules and hasattr(sys.modules["hwsched.rules"], "RULEBOOK")
loop, timer, end = QEventLoop(), QTimer(), QTimer()
timer.timeout.connect(lambda: any(each.kind == "Rule" for each in window.field.list.found) and loop.quit())
timer.start(5)
end.timeout.connect(loop.quit)
end.start(60000)
loop.exec()
print(json.dumps({"first": first, "before": before, "here": here, "then": [e.kind for e in window.field.list.found]}))
timer.timeout.disconnect()
window.close()
timer.timeout.connect(lambda: not window.isVisible() and loop.quit())
loop.exec()
"""


def test_the_first_words_typed_into_find_load_rules_beside_and_show_them_when_they_are_there(tmp_path):
    named = {**os.environ, "XDG_CONFIG_HOME": str(tmp_path), "QT_QPA_PLATFORM": "offscreen"}
    ran = subprocess.run([sys.executable, "-c", FOUND], env=named, capture_output=True, text=True, timeout=120)
    assert ran.returncode == 0, ran.stderr
    told = json.loads(ran.stdout.splitlines()[-1])
    assert not told["before"], "rules were loaded before the list was shown"
    assert "Rule" not in told["first"]
    assert "Rule" in told["then"]
    assert not [name for name in told["here"] if name.startswith(("hwsched.rules", "hwsched.calc", "hwsched.values"))]
