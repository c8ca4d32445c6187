"""A column of an unknown heading is named with the fact of which its cells are words, and stays unread."""

import pytest

from hwsched.exchange.survey.likely import likely_fact
from hwsched.exchange.survey.mapping import Target
from hwsched.exchange.survey.words import Vocabulary
from tests.cli.answers import answer

# Words as door schedules have them: common practice.
TOLD = [
    (("90 MIN", "45 MIN", "-"), "opening.rating"),
    (("FD30", "FD60", "none"), "opening.rating"),
    (("WD SC", "solid core", "HM"), "leaf.material"),
    (("LH", "RHR", "LHR"), "opening.hand"),
    (("20", "45", "90"), None),
    (("yes", "no"), None),
    (("x", ""), None),
    (("HM",), None),
    (("Smith", "Store", "HM", "Office"), None),
    # Frames and leaves are made of both: which of them the column tells is not to be guessed.
    (("HM", "ALUM"), None),
]


@pytest.mark.parametrize(("cells", "fact"), TOLD)
def test_a_fact_is_told_by_words_of_its_own(cells, fact):
    found = likely_fact("Column", dict.fromkeys(cells, 2), Vocabulary(), ())
    assert (found and f"{found.entity}.{found.attribute}") == fact


def test_what_another_column_carries_is_proposed_for_none():
    cells = {"90 MIN": 1, "45 MIN": 1}
    assert likely_fact("Column", cells, Vocabulary(), {Target("opening", "rating")}) != Target("opening", "rating")


def test_it_is_named_with_the_option_that_takes_it_and_is_not_taken(tmp_path, capsys):
    path = tmp_path / "doors.csv"
    path.write_text("Door,Width,Assembled\n1,900 mm,45 MIN\n2,900 mm,90 MIN\n3,900 mm,-\n", encoding="utf-8")
    project = str(tmp_path / "p.hwsched")
    answer(capsys, "project", "new", project, "--name", "P")
    found = answer(capsys, "survey", "import", project, str(path), "--dry-run")["result"]
    assert found["unmapped"] == ["sheet doors, column C (Assembled): 3 cells, which can be read as Fire rating"]
    named = answer(capsys, "survey", "import", project, str(path), "--dry-run", "--column", "Assembled=Fire rating")
    assert named["result"]["unmapped"] == []
