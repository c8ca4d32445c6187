"""What rules say of openings alike is remembered by what they read, and is what they would say if asked anew."""

import ast
from dataclasses import replace
from pathlib import Path

import pytest

from hwsched import rules
from hwsched.model.project import open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.rules import RULES, judging
from hwsched.rules.judging import _WHEREVER, AlikeMemory, check, check_alike
from hwsched.rules.rule import Verdict
from hwsched.rules.solid.placeless import placeless
from hwsched.values.facts_memory import FactsMemory


@pytest.fixture(scope="module")
def on_batteries(corner_folder):
    """Openings of the corner that fit on batteries."""
    with open_project(corner_folder / "corner.hwsched") as project:
        checked = check_openings(project)
    found = [(each.given, each.fit) for each in checked if each.fit is not None and each.fit.battery is not None]
    assert len(found) > 3
    return found


def twice(memory, given, fit, key, common=None):
    """Only what is asked a second time is remembered."""
    for _ in range(2):
        found = check_alike(given, fit, replace(fit, battery=None), key, memory, common)
    return found


@pytest.mark.parametrize("operations", [1.0, 40.0, 900.0])
def test_another_duty_is_judged_as_if_nothing_were_remembered(on_batteries, operations):
    memory = AlikeMemory()
    for given, fit in on_batteries:
        twice(memory, given, fit, given.opening.id)
        other = replace(given, opening=replace(given.opening, operations_per_day=operations))
        life = replace(fit, battery=replace(fit.battery, days=20000.0 / operations))
        found = check_alike(other, life, replace(fit, battery=None), given.opening.id, memory)
        assert found == check(other, life)


def test_a_fact_that_a_rule_reads_is_judged_anew(on_batteries):
    for given, fit in on_batteries:
        memory = AlikeMemory()
        twice(memory, given, fit, "alike")
        thicker = tuple(replace(leaf, thickness_mm=(leaf.thickness_mm or 40.0) + 10.0) for leaf in given.leaves)
        other = replace(given, leaves=thicker)
        assert check_alike(other, fit, replace(fit, battery=None), "alike", memory) == check(other, fit)


def test_limits_and_rules_that_are_off_count(on_batteries):
    memory = AlikeMemory()
    given, fit = on_batteries[0]
    shared = replace(fit, battery=None)
    for finding in check(given, fit):
        twice(memory, given, fit, "alike")
        off = replace(given, settings=replace(given.settings, rules_off=frozenset({finding.rule})))
        assert check_alike(off, fit, shared, "alike", memory) == check(off, fit)


def test_another_place_is_judged_as_if_nothing_were_remembered(on_batteries):
    for given, fit in on_batteries:
        memory = AlikeMemory()
        twice(memory, given, fit, "here", "common")
        place = fit.placement
        assert place is not None
        for number, (across, up) in enumerate(((0.0, 900.0), (300.0, 0.0), (-40.0, 12.0))):
            there = replace(fit, placement=replace(place, x_mm=place.x_mm + across, y_mm=place.y_mm + up), holes=())
            assert twice(memory, given, there, number, "common") == check(given, there)


def test_what_is_said_wherever_things_stand_asks_for_no_place(on_batteries):
    """One that does is judged all the same, but nothing that it says is remembered."""
    for given, fit in on_batteries:
        for rule in _WHEREVER:
            tuple(rule.judge(given, placeless(fit), rule.declared))


def test_rules_that_are_named_are_there():
    """A slip of the pen would leave one where it does not belong."""
    named = judging._OF_PLACE | judging._OF_NO_PLACE
    assert named <= {rule.id for rule in RULES}
    assert not judging._OF_PLACE & judging._OF_NO_PLACE


def test_a_rule_that_asks_for_a_place_after_all_is_not_remembered(on_batteries, monkeypatch):
    given, fit = on_batteries[0]
    asking = replace(
        _WHEREVER[0], judge=lambda given, fit, limits: [Verdict(f"It stands {fit.placement.x_mm} across.")]
    )
    monkeypatch.setattr(judging, "_WHEREVER", (asking,))
    monkeypatch.setattr(judging, "_PLACED", ())
    monkeypatch.setattr(judging, "_ANEW", ())
    memory = AlikeMemory()
    for number in range(4):
        moved = replace(fit, placement=replace(fit.placement, x_mm=float(number)))
        (said,) = check_alike(given, moved, moved, number, memory, "common")
        assert said.message == f"It stands {float(number)} across."


def test_what_never_comes_again_is_judged_without_being_written_down(on_batteries, monkeypatch):
    given, fit = on_batteries[0]
    memory = AlikeMemory()
    inputs = [replace(given, leaves=(replace(given.leaves[0], thickness_mm=40.0 + n / 8),)) for n in range(40)]
    for each in inputs:
        assert check_alike(each, fit, replace(fit, battery=None), "alike", memory) == check(each, fit)
    watched = []
    monkeypatch.setattr(FactsMemory, "of", lambda *_: watched.append(1))
    assert check_alike(inputs[-1], fit, replace(fit, battery=None), "alike", memory) == check(inputs[-1], fit)
    assert not watched


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
