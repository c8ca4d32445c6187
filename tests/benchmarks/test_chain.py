"""What it costs that the journal is a chain and tables have digests, as ratios measured in one run."""

import json
import time

import pytest
from openpyxl import load_workbook
from sqlalchemy import select

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.journal.digests import all_plain, digests_of
from hwsched.model.journal.history import newest
from hwsched.model.journal.ledger import Ledger
from hwsched.model.journal.verifying import look, verify
from hwsched.model.project import create_project, open_project
from hwsched.model.tables import CHANGE_ENTRY, JOURNALLED
from hwsched.operations.survey.editing import add_opening, edit_facts
from hwsched.operations.survey.survey_import import import_survey
from tests.benchmarks.survey_workbook import write_survey

pytestmark = pytest.mark.bench

SETS = 1_000
OPENINGS = 200


def clocked(work):
    start = time.process_time()
    found = work()
    return time.process_time() - start, found


@pytest.fixture(scope="module")
def survey(tmp_path_factory):
    path = tmp_path_factory.mktemp("chain") / "survey.xlsx"
    write_survey(path)
    return path


def test_opening_with_a_chain_of_1000_sets_within_a_tenth_of_bare_reading(survey, tmp_path):
    def bare():
        book = load_workbook(survey, read_only=True)
        for row in book.active.iter_rows(values_only=True):
            len(row)
        book.close()

    bare_s = min(clocked(bare)[0] for _ in range(2))
    target = tmp_path / "yard.hwsched"
    with create_project(target, "Yard", bare_unit="in") as project:
        ids = [add_opening(project, {"mark": str(number)}, who="b")[1] for number in range(OPENINGS)]
        for number in range(SETS - OPENINGS):
            edit_facts(project, "opening", ids[number % OPENINGS], {"notes": str(number)}, who="b")

    def opened():
        open_project(target).close()

    opened()
    open_s = min(clocked(opened)[0] for _ in range(3))
    with open_project(target) as project, project.reading() as connection:
        assert newest(connection) == SETS
        assert not verify(connection)
        look_s = min(clocked(lambda: look(connection))[0] for _ in range(3))
    print(f"\nR {bare_s:.2f} s; opening {open_s / bare_s:.3f} R (under 0.1), of it the look {look_s / bare_s:.3f} R")
    assert open_s < 0.1 * bare_s


def test_hashing_makes_an_import_at_most_3_percent_slower(survey, tmp_path):
    """What hashing does during the import is done again alone: two imports differ by more than that."""
    with create_project(tmp_path / "p.hwsched", "P", bare_unit="in") as project:
        import_s, _ = clocked(lambda: import_survey(project, survey, SurveyOptions(), who="b"))
        with project.reading() as connection:
            entries = [dict(row) for row in connection.execute(select(CHANGE_ENTRY)).mappings()]
            rows = {
                name: [dict(row) for row in connection.execute(select(table)).mappings()]
                for name, table in JOURNALLED.items()
            }
            look_s, found = clocked(lambda: look(connection))
            verify_s, wrong = clocked(lambda: verify(connection))
    assert not found
    assert not wrong
    groups = [[entry for entry in entries if entry["entity"] == name] for name in rows]
    texts = [[entry["after"].encode() for entry in group] for group in groups]
    # As the import has them at hand: columns of the entries, and of the rows what it says of them.
    columns = [[[entry[name] for entry in group] for name in ("row_id", "opening_id", "origin")] for group in groups]
    said = [[json.loads(text) for text in held] for held in texts]

    def hashing():
        ledger = Ledger()
        for name, held, told, given in zip(rows, texts, columns, said, strict=True):
            if held:
                all_plain(name, given)
                ledger.inserted(name, told, digests_of(held))

    hash_s = min(clocked(hashing)[0] for _ in range(5))
    print(
        f"\nimport {import_s:.2f} s; hashing {hash_s / import_s:.1%} of it (at most 3 %); "
        f"look at opening {look_s:.3f} s, verify {verify_s:.2f} s"
    )
    assert len(entries) > 40_000
    assert hash_s <= 0.03 * import_s
