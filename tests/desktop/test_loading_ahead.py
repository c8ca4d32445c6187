"""What pages need is loaded before somebody goes to them: libraries beside the work, the toolkit's classes never."""

import json
import os
import subprocess
import sys
import threading

from hwsched.desktop.frame import loading_ahead

MOST = 5
"""So many small modules may a page load by itself."""
LOADED = """
import importlib, json, sys
from hwsched.desktop import window
from hwsched.desktop.frame.loading_ahead import BESIDE, pages_of
from hwsched.desktop.frame.loading_judges import JUDGES
from hwsched.desktop.frame.places import PLACES
def others(before):
    own = ("hwsched.desktop", "PySide6", "shiboken6")
    return sorted(each for each in sys.modules if each not in before and not each.startswith(own))
def of_toolkit(before):
    return sorted(each for each in sys.modules if each not in before and each not in others(before))
before = set(sys.modules)
for each in (*JUDGES, *BESIDE):
    importlib.import_module(each)
told = {"of the toolkit": of_toolkit(before), "beside": len(others(before))}
told["solves"] = "highspy" in sys.modules
for page in list(pages_of(PLACES)):
    before = set(sys.modules)
    importlib.import_module(page)
    told[page] = others(before)
print(json.dumps(told))
"""


def test_pages_find_all_that_takes_time_loaded_and_nothing_of_it_is_the_toolkits():
    ran = subprocess.run(
        [sys.executable, "-c", LOADED], env={**os.environ, "QT_QPA_PLATFORM": "offscreen"}, capture_output=True,
        text=True, timeout=120, check=True,
    )  # fmt: skip
    told = json.loads(ran.stdout)
    # A class that comes into being beside the screen's thread may end the program.
    assert told.pop("of the toolkit") == []
    assert told.pop("beside") > 100
    assert not told.pop("solves"), "it takes much memory, and few pages need it"
    assert len(told) > 15
    assert {page: found for page, found in told.items() if len(found) > MOST} == {}


def test_libraries_are_loaded_beside_the_screens_thread_and_pages_on_it(qtbot, at_work, monkeypatch):
    loaded = []
    monkeypatch.setattr(loading_ahead, "_AFTER_MS", 1)
    monkeypatch.setattr(loading_ahead, "import_module", lambda name: loaded.append((name, threading.get_ident())))
    monkeypatch.setattr(loading_ahead, "BESIDE", ("one.library", "another.library"))
    monkeypatch.setattr(loading_ahead, "pages_of", lambda _places: iter(("a.page", "b.page")))
    at_work.frame.state.reloaded.emit()
    qtbot.waitUntil(lambda: len(loaded) == 4, timeout=20_000)
    here = threading.get_ident()
    assert [name for name, _ in loaded] == ["one.library", "another.library", "a.page", "b.page"]
    assert [thread == here for _, thread in loaded] == [False, False, True, True]
    # Once is enough.
    at_work.frame.state.reloaded.emit()
    qtbot.wait(500)
    assert len(loaded) == 4
