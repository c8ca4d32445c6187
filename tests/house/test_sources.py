"""The handbook's page of sizes is that of the tables and the rulebook, and nothing stands without a source."""

import csv

from hwsched.rules import RULEBOOK
from tests.house.sources import GUIDE, ROOT, written


def test_the_page_is_that_of_tables_and_rules():
    assert GUIDE.read_text(encoding="utf-8") == written(), "run python -m tests.house.sources"


def test_everything_has_a_source():
    for path in (ROOT / "resources" / "practice").glob("*.csv"):
        with path.open(encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                assert row["source"].strip(), (path.name, row)
    assert all(limit.source.strip() for rule in RULEBOOK for limit in rule.limits)
    assert all(rule.basis.strip() for rule in RULEBOOK)
