"""Takes pictures of every place, to be looked at: ``python -m tests.desktop.pictures FOLDER``.

Light and dark, at two sizes of the screen, with larger text; without openings, with a small project (or one that is
named), with the same once people have worked on it, and so with names far longer than anybody likes; with
HWSCHED_LANGUAGE=stretched in words that are longer. No test: a person, or whoever reads pictures, judges them.
"""

import argparse
import os
import shutil
import tempfile
from itertools import product
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEventLoop, QSettings, Qt, QTimer
from PySide6.QtWidgets import QAbstractItemView, QApplication, QHeaderView

from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.looks.appearance import Look
from hwsched.desktop.looks.letters import use_own_letters
from hwsched.desktop.looks.spoken import speak_chosen
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.window import Window
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project, open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.findings.waivers import waive
from hwsched.operations.parts.hardware_sets import accept_sets, hardware_sets, make_set, propose_sets
from hwsched.operations.power.power_editing import edit_power_text
from hwsched.operations.power.power_results import power_result
from hwsched.operations.project.settings import set_settings
from hwsched.operations.release.attachments import attach
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.transmittals import transmit
from hwsched.operations.survey.editing import edit_fact_text
from hwsched.operations.survey.survey_import import import_survey
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
    """A project whose title and rooms are far too long, and so is what people have said of it."""
    target = folder / "long.hwsched"
    shutil.copy(source, target)
    with open_project(str(target)) as project:
        set_settings(project, who="tests", name=LONG)
        for each in check_openings(project)[:24]:
            opening = each.given.opening
            edit_fact_text(project, "opening", opening.id, "room_to", LONG, who="tests")
            edit_fact_text(project, "opening", opening.id, "room_from", f"Corridor beside the {LONG}", who="tests")
        supply = next(each.supply for each in power_result(project).supplies if each.supply.name == "MILL-1")
        edit_power_text(project, "supply", supply.id, {"place": f"Store under the stair of the {LONG}"}, who="tests")
        work_on(project, folder, f" of the {LONG}")
    return target


def used(source, folder):
    """A project on which people have worked: sets, waivers, revisions, what was sent, files, questions."""
    target = folder / "used.hwsched"
    shutil.copy(source, target)
    with open_project(str(target)) as project:
        work_on(project, folder, "")
    return target


def work_on(project, folder, of):
    """Leave what people leave behind; what they say ends with these words."""
    accept_sets(project, propose_sets(project)[:4], who="A. Quay")
    lines = hardware_sets(project)[0].lines
    make_set(project, f"Corridors{of}"[:80], lines, who="A. Quay", notes=f"As agreed with the caretaker{of}")
    freeze(project, who="A. Quay", purpose=f"For approval{of}")
    checked = check_openings(project)
    said = [(each, finding) for each in checked for finding in each.findings if finding.severity == "error"]
    for each, finding in said[-4:]:
        reason = f"Seen on site{of}"
        at = each.given.opening.id
        waive(
            project, finding.rule, person="B. Ferry", reason=reason, who="B. Ferry", opening_id=at, until="2099-12-31"
        )
    first = checked[15].given.opening
    edit_fact_text(project, "opening", first.id, "operations_per_day", "240", who="B. Ferry")
    freeze(project, who="B. Ferry", purpose=f"For construction{of}")
    sheet = folder / f"Packets{of}"[:60].strip()
    sheet = sheet.with_name(f"{sheet.name}.txt")
    sheet.write_text("What went out.", encoding="utf-8")
    transmit(project, f"Northgate Joiners{of}", [sheet], who="A. Quay", purpose=f"for approval{of}", revision="A")
    attach(project, "opening", first.id, sheet, who="B. Ferry", title=f"What was agreed{of}")
    marks = [each.given.opening for each in checked[15:19]]
    rows = "".join(f"{each.mark},{each.building},{each.level},Dock Lane,90\n" for each in marks)
    again = folder / f"second visit{of}.csv"[-60:].strip()
    again.write_text(f"Mark,Building,Level,Room from,Operations a day\n{rows}", encoding="utf-8")
    import_survey(project, again, SurveyOptions(), who="B. Ferry")


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


def first_line(name):
    """A place with its first line chosen."""

    def show(window, _ids):
        window.frame.go(name)
        settle(window)
        page = window.frame.pages.widgets[name]
        lists = (each for each in page.findChildren(QAbstractItemView) if each.isVisible() and each.model().rowCount())
        view = next((each for each in lists if not isinstance(each, QHeaderView)), None)
        if view is not None:
            lines = (view.model().index(row, 0) for row in range(view.model().rowCount()))
            view.setCurrentIndex(next(each for each in lines if each.flags() & Qt.ItemFlag.ItemIsSelectable))
            view.setFocus()

    return show


def compared(window, ids):
    """What differs since a revision."""
    first_line("revisions")(window, ids)
    window.frame.pages.widgets["revisions"].compare.click()


def delivered(at):
    """A page of the deliveries, with its first line chosen."""

    def show(window, ids):
        window.frame.go("deliveries")
        window.frame.pages.widgets["deliveries"].pages.setCurrentIndex(at)
        first_line("deliveries")(window, ids)

    return show


LIVED = {
    **{f"{name}-line": first_line(name) for name in ("sets", "waivers", "transmittals", "history", "findings", "gate")},
    "compared": compared,
    "delivered-0": delivered(0),
    "delivered-1": delivered(1),
    "delivered-3": delivered(3),
}
"""What is seen of a project on which people have worked."""
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
        states = {**STATES, **LIVED} if name in ("used", "long") else STATES
        for state, show in states.items() if ids else ():
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
    window.project.open_project(str(small))
    settle(window)
    window.frame.go("today")
    settle(window)
    keep("today", window)
    preferences.theme = "dark"
    settle(window)
    keep("today-dark", window)
    window.close()
    look.setParent(None)


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--project", type=Path, help="instead of the small one")
    parser.add_argument("--of", nargs="*", default=["empty", "small", "used", "long"], help="empty, small, used, long")
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
            "used": lambda: used(small, Path(made)),
            "long": lambda: long_names(small, Path(made)),
        }
        for name in said.of:
            take(application, ways[name](), said.folder, name, said.sizes, said.themes, said.only)


if __name__ == "__main__":
    main()
