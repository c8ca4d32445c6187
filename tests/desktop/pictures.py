"""Takes pictures of every place, to be looked at: ``python -m tests.desktop.pictures FOLDER``.

Light and dark, at two sizes of the screen, with larger text; without openings, with a small project (or one that is
named), and with names far longer than anybody likes; with HWSCHED_LANGUAGE=stretched in words that are longer. No test:
a person, or whoever reads pictures, judges them.
"""

import argparse
import os
import shutil
import tempfile
from itertools import product
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEventLoop, QSettings, QTimer
from PySide6.QtWidgets import QApplication

from hwsched.desktop.appearance import Look
from hwsched.desktop.letters import use_own_letters
from hwsched.desktop.places import PLACES
from hwsched.desktop.preferences import Preferences
from hwsched.desktop.spoken import speak_chosen
from hwsched.desktop.window import Window
from hwsched.model.project import create_project, open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.editing import edit_fact_text
from tests.corner import NAME, make

SIZES = {
    "1366x768": (1366, 768, 100),
    "1920x1080": (1920, 1080, 100),
    "150": (1920, 1080, 150),
    "200": (1920, 1080, 200),
}
LONG = "Northern Repair and Refitting Yard for Vessels of Every Kind and Size, Third Extension"


def settle(window):
    """Wait until nothing runs and all is painted."""
    loop = QEventLoop()

    def look():
        pages = window.frame.pages.widgets
        reading = getattr(pages.get("today"), "_reading", None)
        if not window.frame.jobs.busy and not (reading is not None and reading.busy):
            loop.quit()

    timer = QTimer()
    timer.timeout.connect(look)
    timer.start(50)
    loop.exec()
    for _ in range(4):
        QApplication.processEvents()


def empty(folder):
    """A project without an opening."""
    with create_project(str(folder / "empty.hwsched"), "New Yard") as project:
        return project.path


def long_names(source, folder):
    """A project whose title and rooms are far too long."""
    target = folder / "long.hwsched"
    shutil.copy(source, target)
    with open_project(str(target)) as project:
        set_settings(project, who="tests", name=LONG)
        for each in check_openings(project)[:12]:
            opening = each.given.opening
            edit_fact_text(project, "opening", opening.id, "room_to", LONG, who="tests")
            edit_fact_text(project, "opening", opening.id, "room_from", f"Corridor beside the {LONG}", who="tests")
    return target


def take(application, target, folder, name, sizes, themes, only):
    """Take the pictures of a project."""
    for size, theme in product(sizes, themes):
        wide, high, percent = SIZES[size]
        preferences = Preferences()
        preferences.theme, preferences.text_size, preferences.toured = theme, percent, True
        look = Look(application, preferences)
        window = Window("A. Quay", preferences)
        window.resize(wide, high)
        window.show()
        settle(window)
        if not only:
            window.grab().save(str(folder / f"{name}-{size}-{theme}-begin.png"))
        window.project.open_project(str(target))
        settle(window)
        ids = list(window.frame.state.workspace.checked)
        if ids:
            window.openings.select_openings(ids[4:5])
        for place in PLACES:
            if only and place.name not in only:
                continue
            window.frame.go(place.name)
            settle(window)
            here = window.frame.trail.here.place
            if here == window.frame.pages.resolved(place.name).name:
                window.grab().save(str(folder / f"{name}-{size}-{theme}-{place.name}.png"))
        window.close()
        look.setParent(None)


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--project", type=Path, help="instead of the small one")
    parser.add_argument("--of", nargs="*", default=["empty", "small", "long"], help="empty, small, long")
    parser.add_argument("--sizes", nargs="*", default=list(SIZES))
    parser.add_argument("--themes", nargs="*", default=["light", "dark"])
    parser.add_argument("--only", nargs="*", default=[], help="names of places")
    said = parser.parse_args()
    said.folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as made:
        QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, made)
        small = said.project
        if small is None:
            make(Path(made))
            small = Path(made) / NAME
        application = QApplication([])
        use_own_letters(application)
        speak_chosen(application, Preferences())
        ways = {
            "empty": lambda: empty(Path(made)),
            "small": lambda: small,
            "long": lambda: long_names(small, Path(made)),
        }
        for name in said.of:
            take(application, ways[name](), said.folder, name, said.sizes, said.themes, said.only)


if __name__ == "__main__":
    main()
