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

from PySide6.QtCore import QEventLoop, QSettings, Qt, QTimer
from PySide6.QtWidgets import QApplication

from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.looks.appearance import Look
from hwsched.desktop.looks.letters import use_own_letters
from hwsched.desktop.looks.spoken import speak_chosen
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.window import Window
from hwsched.model.project import create_project, open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.editing import edit_fact_text
from tests.corner import NAME, make
from tests.desktop.test_conversation import LIST

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


def page_of_opening(at):
    """The opening that is chosen, by one of its pages."""

    def show(window, ids):
        window.frame.go("openings")
        window.openings.select_openings(ids[15:16])
        window.sheet.pages.setCurrentIndex(at)

    return show


def chosen(*places):
    """Several openings beside the list."""

    def show(window, ids):
        window.frame.go("openings")
        window.openings.select_openings([ids[at] for at in places])

    return show


def part(window, _ids):
    """A part of the catalogue with its facts."""
    window.frame.go("catalogue")
    page = window.frame.pages.widgets["catalogue"]
    page.grid.table.selectRow(2)


def document(window, _ids):
    """The pages of a document."""
    window.frame.go("documents")
    page = window.frame.pages.widgets["documents"]
    page.names.setCurrentRow(3)
    page.make_pages()
    settle(window)
    # Pages are drawn off the screen's thread.
    loop = QEventLoop()
    QTimer.singleShot(1500, loop.quit)
    loop.exec()


def supply(window, _ids):
    """The riser of a chosen supply."""
    window.frame.go("power")
    page = window.frame.pages.widgets["power"]
    page.tree.setCurrentItem(next(each for each in page.tree.lines() if each.text(0).startswith("MILL-1")))
    page.pages.setCurrentIndex(page.pages.count() - 3)


def calculator(window, _ids):
    """A calculator with an example worked out."""
    window.frame.go("calculators")
    page = window.frame.pages.widgets["calculators"]
    page.names.setCurrentRow(1)
    page.example.click()


STATES = {
    **{f"opening-{at}": page_of_opening(at) for at in range(1, 6)},
    "two": chosen(15, 22),
    "many": chosen(14, 15, 16, 17, 18),
    "part": part,
    "document": document,
    "supply": supply,
    "calculator": calculator,
}
"""What is seen once something is chosen or made, by the name of its picture."""


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
        for state, show in STATES.items() if ids else ():
            if only and state not in only:
                continue
            show(window, ids)
            settle(window)
            window.grab().save(str(folder / f"{name}-{size}-{theme}-{state}.png"))
        window.close()
        look.setParent(None)


def guide(application, small, folder):
    """Take the pictures of README and help."""
    preferences = Preferences()
    preferences.theme, preferences.text_size, preferences.toured = "light", 100, True
    look = Look(application, preferences)
    window = Window("A. Quay", preferences)
    window.resize(1366, 768)
    window.show()
    window.project.open_project(str(small))
    settle(window)
    ids = list(window.frame.state.workspace.checked)

    def keep(name, widget, wide=1000):
        image = widget.grab().toImage()
        image.scaledToWidth(wide, Qt.TransformationMode.SmoothTransformation).save(str(folder / f"{name}.png"))

    page_of_opening(0)(window, ids)
    window.openings.grid.table.setFocus()
    settle(window)
    keep("desktop", window)
    supply(window, ids)
    window.frame.pages.widgets["power"].tree.setFocus()
    settle(window)
    keep("power", window)
    # A stranger's list, into a project without an opening.
    window.project.open_project(str(empty(small.parent)))
    settle(window)
    lines = small.parent / "list.csv"
    lines.write_text(LIST, encoding="utf-8")
    window.survey.take_survey(lines)
    settle(window)
    answer = next(each for (_asked, text), each in window.survey.preview.sheet.answers.items() if text == "Aluminium")
    answer.click()
    settle(window)
    keep("import", window.survey.preview, 1326)
    window.survey.preview.reject()
    preferences.theme = "dark"
    window.project.open_project(str(small))
    settle(window)
    window.frame.go("today")
    settle(window)
    keep("today", window)
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
    parser.add_argument("--guide", action="store_true", help="those of README and help instead")
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
        if said.guide:
            guide(application, small, said.folder)
            return
        ways = {
            "empty": lambda: empty(Path(made)),
            "small": lambda: small,
            "long": lambda: long_names(small, Path(made)),
        }
        for name in said.of:
            take(application, ways[name](), said.folder, name, said.sizes, said.themes, said.only)


if __name__ == "__main__":
    main()
