"""The handbook says what can be asked as it is declared, and what it shows can be asked."""

import re

import pytest

from hwsched.query import Askable, parse
from hwsched.query.facts import HOLDING
from tests.house.asking import GUIDE, written

TEXT = GUIDE.read_text(encoding="utf-8")


def test_the_handbook_lists_everything_that_can_be_asked():
    assert written(TEXT) == TEXT, "run python -m tests.house.asking"


QUERIES = {
    *re.findall(r"--where '([^']+)'", TEXT),
    *re.findall(
        r"^((?:leaf|rating)[.\w]* [^\n|`]+)$", TEXT.split("## The language")[1].split("| written")[0], re.MULTILINE
    ),
    *(
        query
        for line in TEXT.split("| written | means |")[1].split("\n\n")[0].splitlines()[2:]
        for query in re.findall(r"`([^`]+)`", line.split("|")[1])
        if query not in ("and", "or", "not", "( )", "<=", ">", ">=")
    ),
}


def test_there_are_examples():
    assert len(QUERIES) > 15
    assert "width between 30 and 36 in" in QUERIES


@pytest.mark.parametrize("query", sorted(QUERIES))
def test_every_example_can_be_asked(query):
    rules = ("frame-stop-clear", "lead-reaches")
    assert parse(query, Askable(bare_unit="in", rules=lambda: rules)).root is not None


def test_the_examples_name_rules_that_there_are():
    from hwsched.rules import RULEBOOK

    named = set(re.findall(r"finding = ([a-z-]+)", TEXT)) - {"error", HOLDING}
    assert named
    assert named <= {rule.id for rule in RULEBOOK}
