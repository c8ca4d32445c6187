"""Asking for openings among 10,000, as ratios to openpyxl's bare reading of the same workbook, all in one run."""

import time

import pytest

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project
from hwsched.model.tables import OPENING_TABLE
from hwsched.operations.opening.asked_facts import columns_needed, surveyed
from hwsched.operations.opening.asked_openings import askable_of, asked_openings
from hwsched.operations.opening.scope import Scope, opening_rows
from hwsched.operations.survey.survey_import import import_survey
from hwsched.query import Askable, judge, parse
from tests.benchmarks.survey_workbook import read_bare, write_survey

pytestmark = pytest.mark.bench
# Each with how many of the 10,000 it finds, by the workbook: buildings by the number modulo 17, levels modulo 9.
QUERIES = {
    "building = Building 3 and level in 1, 2": sum(n % 17 == 3 and n % 9 in (1, 2) for n in range(10_000)),
    "leaf.thickness > 1 1/2 and rating is known and not (stair = yes or item.backset < 2 in)": 10_000,
    "room 77": sum("77" in f"Room {n} D{n:05d}" for n in range(10_000)),
}


def best(work, times=5):
    found = []
    for _ in range(times):
        start = time.perf_counter()
        answer = work()
        found.append(time.perf_counter() - start)
    return min(found), answer


@pytest.fixture(scope="module")
def held(tmp_path_factory):
    folder = tmp_path_factory.mktemp("bench")
    path = folder / "survey.xlsx"
    write_survey(path)

    def bare():
        read_bare(path)

    bare_s = best(bare, 2)[0]
    project = create_project(folder / "p.hwsched", "P", bare_unit="in")
    import_survey(project, path, SurveyOptions(), who="b")
    yield bare_s, project
    project.close()


@pytest.mark.parametrize("text", QUERIES)
def test_judging_by_the_survey_within_a_fortieth_and_all_of_it_within_a_twentieth(held, text):
    """Judging of facts at hand; and the whole way: facts read from the data base, judged, put into order."""
    bare_s, project = held
    with project.reading() as connection:
        query = parse(text, askable_of(project, connection))
        rows = opening_rows(connection, [OPENING_TABLE.c[name] for name in columns_needed(query)])
        columns = surveyed(connection, query, rows, None)
    judged_s, truth = best(lambda: judge(parse(text, Askable(bare_unit="in")), columns))
    whole_s, found = best(lambda: asked_openings(project, Scope(where=text)))
    print(f"\n{text}: {len(found.marks)} of 10,000")
    print(f"judged R/{bare_s / judged_s:.0f} (at least 40), the whole way R/{bare_s / whole_s:.0f} (at least 20)")
    assert len(truth.true) == len(found.marks) == QUERIES[text]
    assert judged_s <= bare_s / 40
    assert whole_s <= bare_s / 20
