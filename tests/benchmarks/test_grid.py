"""The grid of 10,000 and of 50,000 openings: a letter typed, the next record, an order, as ratios to R, all in one run.

R is openpyxl's bare reading of the 10,000 x 30 workbook. Times go from the key to the repainted table; the sheet of the
opening beside it is not in them.
"""

import time
from dataclasses import replace

import pytest
from PySide6.QtCore import QSettings, Qt

from hwsched.desktop.project.project_state import ProjectState
from hwsched.desktop.survey.openings_view import OpeningsView
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.survey.survey_import import import_survey
from tests.benchmarks.survey_workbook import read_bare, write_survey

pytestmark = pytest.mark.bench
KEY_LEAST = {10_000: 40, 50_000: 20}
RECORD_LEAST = 150
GAP_LEAST = 25
TEXTS = ("corridor 12", "rating = 90 and leaf.thickness > 1 1/2", "level in 1, 2 or hand = LHR")


@pytest.fixture(scope="module")
def measured(tmp_path_factory):
    folder = tmp_path_factory.mktemp("bench")
    path = folder / "survey.xlsx"
    write_survey(path)
    times = []
    for _ in range(2):
        begin = time.perf_counter()
        read_bare(path)
        times.append(time.perf_counter() - begin)
    with create_project(folder / "p.hwsched", "P", bare_unit="in") as project:
        import_survey(project, path, SurveyOptions(), who="b")
        checked = check_openings(project)
    return min(times), checked


def again(checked, count):
    """So many openings, those that were checked again and again under other marks."""
    for n in range(count):
        each = checked[n % len(checked)]
        opening = replace(each.given.opening, id=f"o{n}", mark=f"{each.given.opening.mark}-{n}")
        given = replace(each.given, opening=opening)
        yield replace(each, given=given, points=())


@pytest.mark.parametrize("count", KEY_LEAST)
def test_a_letter_and_a_record(measured, count, qtbot, tmp_path):
    bare_s, checked = measured
    QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, str(tmp_path))
    view = OpeningsView(ProjectState("b"))
    qtbot.addWidget(view)
    view.resize(900, 700)
    view.show()
    rows = list(again(checked, count))
    load_s = clocked(lambda: view.register.load(rows))
    # The words that are searched are made in the first moments, while nobody has typed yet.
    words_s = clocked(lambda: qtbot.waitUntil(lambda: view.register.texts.whole, timeout=60_000))
    view.narrowing._askable = replace(view.narrowing._askable, bare_unit="in")
    letters = []
    for text in TEXTS:
        view.search.clear()
        for letter in text:
            letters.append((clocked(lambda letter=letter: typed(qtbot, view, letter)), text, letter))
    view.search.clear()
    view.grid.select([rows[0].given.opening.id])
    records = [clocked(lambda: down(qtbot, view)) for _ in range(40)]
    every_s = clocked(lambda: qtbot.keyClick(view.table, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier))
    assert len(view.grid.ids) == count
    order_s = clocked(lambda: view.grid.sort("opening.rating"))
    letter_s, record_s = sorted(each[0] for each in letters), sorted(records)
    most, middle, record = letter_s[-1], letter_s[len(letter_s) // 2], record_s[len(record_s) // 2]
    print(f"\n{count:,} openings, R {bare_s:.2f} s: shown R/{bare_s / load_s:.0f}, words R/{bare_s / words_s:.0f},")
    print(f"in order R/{bare_s / order_s:.0f}, all selected R/{bare_s / every_s:.0f} (at least {GAP_LEAST})")
    print(f"letter R/{bare_s / middle:.0f}, the slowest R/{bare_s / most:.0f} at {max(letters)[1:]}")
    print(f"(at least {KEY_LEAST[count]}), record R/{bare_s / record:.0f} (at least {RECORD_LEAST})")
    assert middle <= bare_s / KEY_LEAST[count]
    assert record <= bare_s / RECORD_LEAST
    assert every_s <= bare_s / GAP_LEAST


def typed(qtbot, view, letter):
    qtbot.keyClick(view.search, letter)
    view.table.viewport().repaint()


def down(qtbot, view):
    qtbot.keyClick(view.table, Qt.Key.Key_Down)
    view.table.viewport().repaint()


def clocked(work):
    begin = time.perf_counter()
    work()
    return time.perf_counter() - begin
