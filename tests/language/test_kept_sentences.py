"""What is kept in English is said in the language in force, by the sentence from which it was made."""

import pytest

from hwsched.drawings.unknown import size_problem
from hwsched.kept_sentences import GATE, STEPS, kept_phrase
from hwsched.language import STRETCHED, speak, stretched
from hwsched.model.project import open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.project.history import history
from hwsched.operations.release.release_gate import gate
from tests.language.plainness import unsaid


@pytest.fixture
def spoken():
    speak(STRETCHED)
    yield
    speak()


@pytest.mark.usefixtures("spoken")
def test_every_finding_and_step_of_a_project_is_known_by_its_sentence(corner_file):
    with open_project(str(corner_file)) as project:
        findings = {finding for each in check_openings(project) for finding in map(_key, each.findings)}
        steps = [each.summary for each in history(project)]
    kept = [*((text, rule) for rule, *texts in findings for text in texts), *((text, STEPS) for text in steps)]
    assert len(kept) > 50
    unknown = [(of, text) for text, of in kept if kept_phrase(text, of) == text]
    assert not unknown


@pytest.mark.usefixtures("spoken")
def test_what_keeps_openings_back_is_known_by_its_sentence(corner_file):
    with open_project(str(corner_file)) as project:
        lines = {line for each in gate(project) for line in each.missing}
    assert lines
    assert not [line for line in lines if kept_phrase(line, GATE) == line]
    said = kept_phrase("unknown: needs opening: Direction of egress; leaf: Leaf thickness. Complete the survey.", GATE)
    assert not unsaid(said)
    said = kept_phrase("error: A leaf of this rated opening does not close and latch by itself.", GATE)
    assert not unsaid(said)


def _key(finding):
    return finding.rule, finding.message, finding.cure


@pytest.mark.usefixtures("spoken")
def test_numbers_and_names_stay_and_words_in_their_places_are_said():
    said = kept_phrase("Unknown: needs leaf: Leaf thickness; existing item: Backset.", "fit-complete")
    assert not unsaid(said)
    said = kept_phrase("Site 3 supplies of Mill House for 14 openings", STEPS)
    assert said == stretched("Site {supplies} supplies of {building} for {openings} openings").format(
        supplies=3, building="Mill House", openings=14
    )


@pytest.mark.usefixtures("spoken")
def test_what_was_put_together_is_said_piece_by_piece():
    said = kept_phrase("Take in survey list.csv: 3 new, 1 changed; fit 4 openings", STEPS)
    assert not unsaid(said, ["list.csv"])


@pytest.mark.usefixtures("spoken")
def test_what_no_sentence_fits_stays_as_it_is_kept():
    assert kept_phrase("What an earlier version wrote otherwise.", "fit-complete") == (
        "What an earlier version wrote otherwise."
    )


def test_in_english_nothing_is_looked_for():
    assert kept_phrase("Unknown: needs leaf: Leaf thickness.", "fit-complete") == "Unknown: needs leaf: Leaf thickness."


@pytest.mark.usefixtures("spoken")
def test_what_a_drawing_lacks_is_said():
    assert not unsaid(size_problem("leaf.width_mm", None))
    assert not unsaid(size_problem("existing_item.backset_mm", -3.0))
