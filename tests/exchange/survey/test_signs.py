"""Dashes, zeros and crosses are unknown until somebody says what they mean, and asked about once a column."""

import pytest

from hwsched.attributes import Attribute, Choice, read_value
from hwsched.attributes.emptiness import marks_emptiness
from hwsched.attributes.values import choice_words
from hwsched.catalogue import OWN_KINDS
from hwsched.survey import ENTITIES
from tests.exchange.surveys import read, said

EMPTY = ("-", "--", "\u2013", "\u2014", "0", 0, 0.0, "/", ".", "...", "x", "X", "n/a", "N.A.", "_", "*")
"""Cells that say nothing."""
CHOICES = {
    **{f"{entity.name}.{a.name}": a for entity in ENTITIES for a in entity.attributes if a.kind == "choice"},
    **{f"{kind.name}.{a.name}": a for kind in OWN_KINDS for a in kind.attributes if a.kind == "choice"},
}


@pytest.mark.parametrize("attribute", CHOICES.values(), ids=list(CHOICES))
def test_no_word_of_any_fact_is_a_mark_of_emptiness(attribute):
    for choice in attribute.choices:
        assert [word for word in (choice.value, choice.label, *choice.synonyms) if marks_emptiness(word)] == []
    assert not [word for word in choice_words(attribute) if marks_emptiness(word)]
    for cell in EMPTY:
        assert read_value(attribute, cell).value is None


@pytest.mark.parametrize("cell", EMPTY)
@pytest.mark.parametrize(
    ("header", "entity", "name"), [("Fire rating", "opening", "rating"), ("Egress", "opening", "egress")]
)
def test_a_mark_of_emptiness_says_neither_not_rated_nor_no_egress(tmp_path, cell, header, entity, name):
    found = read(tmp_path, ["Mark", "Level", header], ["1", "1", cell], ["2", "1", "none"])
    assert said(found) == ""
    assert [opening.facts.get(name) for opening in found.openings] == [None, "none"]


def asked(found):
    return [(q.header, q.read, q.rows, q.answers) for q in found.questions]


def test_it_is_asked_once_a_column_with_unknown_first(tmp_path):
    rows = [["1", "-", "-"], ["2", "90 min", "yes"], ["3", "-", "n/a"], ["4", "0", "-"]]
    found = read(tmp_path, ["Mark", "Fire rating", "Egress"], *rows)
    assert asked(found) == [
        ("Fire rating", '"-" (2), "0" (1)', (2, 4, 5), ("unknown", "none")),
        ("Egress", '"-" (2), "n/a" (1)', (2, 4, 5), ("unknown", "none")),
    ]


def test_where_nothing_but_unknown_is_near_nothing_is_asked(tmp_path):
    rows = [["1", "-", "-", "-"], ["2", "LH", "45 mm", "-"]]
    found = read(tmp_path, ["Mark", "Hand", "Thickness", "Fire rating"], *rows)
    assert asked(found) == []
    assert said(found) == ""


@pytest.mark.parametrize(
    ("cells", "values", "answers"),
    [
        (("x", "", "x"), (True, None, True), None),
        (("1", "0", "1"), (True, False, True), None),
        ((1, 0, 1), (True, False, True), None),
        (("\u2611", "\u2610", ""), (True, False, None), None),
        (("0", "yes", "0"), (None, True, None), ("unknown", "no")),
        ((0, 0, ""), (None, None, None), ("unknown", "no")),
        (("x", "yes", "no"), (None, True, False), ("unknown", "no", "yes")),
        (("x", "\u2713", ""), (None, True, None), ("unknown", "no", "yes")),
        (("\u2610", "yes", "no"), (None, True, False), ("unknown", "no")),
        (("-", "x", "x"), (None, True, True), ("unknown", "no")),
        (("-", "-", ""), (None, None, None), None),
    ],
)
def test_a_sign_of_yes_or_no_counts_where_its_company_makes_it_plain(tmp_path, cells, values, answers):
    rows = [[f"{n}", cell] for n, cell in enumerate(cells, 1)]
    found = read(tmp_path, ["Mark", "Stair door"], *rows)
    assert said(found) == ""
    assert tuple(opening.facts.get("stair") for opening in found.openings) == values
    assert [q.answers for q in found.questions] == ([answers] if answers else [])


def test_an_answer_is_taken_for_the_whole_column_and_said(tmp_path):
    rows = [["1", "-"], ["2", "90 min"], ["3", "/"]]
    found = read(tmp_path, ["Mark", "Fire rating"], *rows, dashes={"fire rating": "Not rated"})
    assert [opening.facts["rating"] for opening in found.openings] == ["none", "90", "none"]
    assert asked(found) == []
    lines = [assumption.describe() for assumption in found.assumptions]
    assert 'sheet Doors, column B (Fire rating): "-" taken as Not rated, as was said (1)' in lines


def test_unknown_may_be_the_answer(tmp_path):
    found = read(tmp_path, ["Mark", "Egress"], ["1", "-"], ["2", "yes"], dashes={"column B": "unknown"})
    assert found.openings[0].facts.get("egress") is None
    assert asked(found) == []


def test_a_word_is_taken_as_was_said_and_goes_before_the_dash(tmp_path):
    rows = [["1", "STL"], ["2", "-"], ["3", "stl."], ["4", "n/a"]]
    options = {"words": {"Material": {"STL": "hollow metal", "n/a": "glass"}}, "dashes": {"Material": "unknown"}}
    found = read(tmp_path, ["Mark", "Material"], *rows, **options)
    assert said(found) == ""
    assert [opening.leaves[0].facts.get("material") for opening in found.openings] == [
        "hollow-metal", None, "hollow-metal", "glass",
    ]  # fmt: skip


def test_an_answer_that_the_fact_cannot_have_is_refused_once(tmp_path):
    rows = [[f"{n}", "-"] for n in range(9)]
    found = read(tmp_path, ["Mark", "Fire rating"], *rows, dashes={"Fire rating": "green"})
    assert said(found).count("\n") == 0
    assert "column B (Fire rating): read 'green'; what was said of this column is none of the words" in said(found)
    assert "Not rated; 20 min" in said(found)


def test_a_field_of_a_project_s_own_may_have_a_mark_as_its_word(tmp_path):
    seal = Attribute(
        "seal", "Seal", "choice", choices=(Choice("none", "None", ("-", "0")), Choice("brush", "Brush", ("x",)))
    )
    found = read(tmp_path, ["Mark", "Seal"], ["1", "-"], ["2", "x"], ["3", 0], own_fields={"opening": (seal,)})
    assert [opening.facts["seal"] for opening in found.openings] == ["none", "brush", "none"]
    assert asked(found) == []
