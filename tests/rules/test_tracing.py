"""Watching what a rule reads never changes what it says; what it is told to have read is a fact of the case."""

from dataclasses import replace
from functools import cache

import pytest

from hwsched.model.project import open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.rules import RULES, judge, rule_named
from hwsched.rules.impossible_facts import without_impossible
from hwsched.rules.tracing import traced
from hwsched.values import Fit, Item, Leaf, Opening
from hwsched.values.input_key import IGNORED, input_key
from tests.rules.scenario import fit, given, item, leaf, opening


@pytest.fixture(scope="module")
def checked(sample_folder):
    """The sample's openings, of those alike one."""
    with open_project(sample_folder / "quayside-works.hwsched") as project:
        return list({input_key(each.given): each for each in check_openings(project)}.values())


@pytest.fixture(scope="module")
def watched(checked):
    """What a rule read of each of them; once, however many tests ask."""
    return cache(lambda rule: [traced(rule_named(rule), each.given, each.fit) for each in checked])


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_the_verdicts_stay_and_the_facts_are_facts(rule, checked, watched):
    for each, found in zip(checked, watched(rule.id), strict=True):
        seen = each.given if rule.sees_all else without_impossible(each.given)
        assert found.rule is rule
        assert found.verdicts == judge(rule, seen, each.fit, settings=seen.settings)
        rows = {row.id: row for row in (seen.opening, *seen.leaves, *seen.items)}
        kinds = {"opening": Opening, "leaf": Leaf, "existing_item": Item}
        for fact in found.facts:
            assert type(rows[fact.row_id]) is kinds[fact.entity]
            assert getattr(rows[fact.row_id], fact.attribute) == fact.value
        assert len(set(map(str, found.facts))) == len(found.facts)


@pytest.mark.parametrize("rule", [rule for rule in RULES if not rule.sees_all], ids=lambda rule: rule.id)
def test_no_rule_reads_what_is_left_out_of_the_case_s_key(rule, watched):
    """Openings alike share what was said of one of them, so no rule may look at what tells them apart."""
    for found in watched(rule.id):
        assert not {fact.attribute for fact in found.facts} & IGNORED


def test_by_hand():
    """Clear width: is it accessible, of what form, how wide; off such a route the width is not asked for."""
    wide = traced(rule_named("clear-width"), given(opening(accessible=True)), fit())
    assert {(f.entity, f.attribute, f.value) for f in wide.facts} >= {
        ("opening", "accessible", True), ("leaf", "width_mm", 914.4),
    }  # fmt: skip
    other = traced(rule_named("clear-width"), given(opening(accessible=False)), fit())
    assert "width_mm" not in {f.attribute for f in other.facts}


def test_each_leaf_and_item_by_itself():
    two = given(leaves=(leaf(position="active"), replace(leaf(position="inactive"), id="l2")), items=[item("closer")])
    read = {fact.row_id for rule in RULES for fact in traced(rule, two, fit()).facts}
    assert read == {"o", "l", "l2", "k", "i-closer"}


def test_what_cannot_be_true_is_shown_only_to_the_rule_that_names_it():
    wrong = given(lf=leaf(thickness_mm=-5.0))
    (told,) = [f for f in traced(rule_named("fact-in-range"), wrong, fit()).facts if f.attribute == "thickness_mm"]
    assert told.value == -5.0
    for rule in RULES:
        if not rule.sees_all:
            assert all(
                f.value is None for f in traced(rule, wrong, Fit("to-measure")).facts if f.attribute == "thickness_mm"
            )
