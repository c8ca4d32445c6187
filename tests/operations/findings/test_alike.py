"""What rules say of openings alike is remembered by what they read, and is what they would say if asked anew."""

import ast
from dataclasses import replace
from pathlib import Path

import pytest

from hwsched import rules
from hwsched.model.project import open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.rules import RULES
from hwsched.rules.judging import check, check_alike
from hwsched.values.facts_memory import FactsMemory


@pytest.fixture(scope="module")
def on_batteries(corner_folder):
    """Openings of the corner that fit on batteries."""
    with open_project(corner_folder / "corner.hwsched") as project:
        checked = check_openings(project)
    found = [(each.given, each.fit) for each in checked if each.fit is not None and each.fit.battery is not None]
    assert len(found) > 3
    return found


@pytest.mark.parametrize("operations", [1.0, 40.0, 900.0])
def test_another_duty_is_judged_as_if_nothing_were_remembered(on_batteries, operations):
    memory = FactsMemory()
    for given, fit in on_batteries:
        shared = replace(fit, battery=None)
        check_alike(given, fit, shared, given.opening.id, memory)
        other = replace(given, opening=replace(given.opening, operations_per_day=operations))
        life = replace(fit, battery=replace(fit.battery, days=20000.0 / operations))
        found = check_alike(other, life, shared, given.opening.id, memory)
        assert found == check(other, life)


def test_a_fact_that_a_rule_reads_is_judged_anew(on_batteries):
    memory = FactsMemory()
    for given, fit in on_batteries:
        check_alike(given, fit, replace(fit, battery=None), "alike", memory)
        thicker = tuple(replace(leaf, thickness_mm=(leaf.thickness_mm or 40.0) + 10.0) for leaf in given.leaves)
        other = replace(given, leaves=thicker)
        assert check_alike(other, fit, replace(fit, battery=None), "alike", memory) == check(other, fit)


def test_limits_and_rules_that_are_off_count(on_batteries):
    memory = FactsMemory()
    given, fit = on_batteries[0]
    shared = replace(fit, battery=None)
    for finding in check(given, fit):
        check_alike(given, fit, shared, "alike", memory)
        off = replace(given, settings=replace(given.settings, rules_off=frozenset({finding.rule})))
        assert check_alike(off, fit, shared, "alike", memory) == check(off, fit)


def test_no_rule_that_is_asked_anew_refuses_a_candidate():
    """What slots find is remembered without it."""
    assert not [rule.id for rule in RULES if rule.each_anew and rule.slot != "whole" and rule.severity == "error"]


def test_only_rules_that_are_asked_anew_read_how_long_a_pack_lasts():
    """Others are asked with a fit that does not say it."""
    anew = {rule.id.replace("-", "_") for rule in RULES if rule.each_anew}
    folder = Path(rules.__file__).parent
    reading = set()
    for path in folder.rglob("*.py"):
        if path.parent.name in ("circuits", "records"):
            continue  # They judge other subjects.
        for node in ast.walk(ast.parse(path.read_text())):
            if isinstance(node, ast.Attribute) and node.attr in ("battery", "closed_rooms"):
                reading.add(path.stem)
    assert reading == anew - {"busy_on_supply"}
