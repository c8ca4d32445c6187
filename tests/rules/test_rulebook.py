"""The rulebook as a whole: table of contents, slots, limits, what is switched off, and that every rule is tested."""

import importlib
import re
from collections import Counter, defaultdict
from dataclasses import replace
from pathlib import Path

import pytest

import hwsched.rules
from hwsched.rules import (
    CIRCUIT_RULES,
    OPENINGS,
    RECORD_RULES,
    RECORDS,
    RULEBOOK,
    RULES,
    SUPPLIES,
    Limit,
    Rule,
    RuleError,
    Subject,
    UnknownRuleError,
    Verdict,
    finding_of,
    in_rulebook,
    judge,
    limits_of,
    rule_named,
    rules_in_slot,
    rules_of,
)
from hwsched.rules.judging import check
from hwsched.rules.page import page_of
from hwsched.rules.wording import label_of
from hwsched.survey import ENTITIES
from hwsched.values import DISCIPLINES, SEVERITIES, Fit, Item, Leaf, Opening, Settings
from tests.rules.rows import Row, run
from tests.rules.scenario import fit, fp, given, hole, item, opening

TABLES = (
    "test_lock_and_cylinder",
    "test_placement",
    "test_cable_and_holes",
    "test_fire_door",
    "test_egress_and_accessibility",
    "test_power_and_battery",
    "test_catalogue_documents_commissioning",
    "test_survey",
    "test_lock_points",
    "test_ways_out",
)
LIMIT_SUFFIXES = {
    "s",
    "n",
    "mm", "deg", "c", "va", "a", "ohm", "days", "share", "beyond", "holds", "operations", "conductors", "once",
    "margin", "ageing", "peukert", "hours", "people", "edition", "storeys", "openings", "flats",
}  # fmt: skip
# These can only name what is missing, so nothing else makes them speak.
ONLY_UNKNOWN = {
    "known-before-order",
    "known-before-drill",
    "known-before-issue",
    "heading-facts",
    "unit-place-known",
    "supply-distance-known",
    "wall-thickness-known",
    "stile-told",
}


def all_rows():
    found = defaultdict(list)
    for name in TABLES:
        for row in importlib.import_module(f"tests.rules.{name}").ROWS:
            assert isinstance(row, Row)
            found[row.rule].append(row)
    return found


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_every_rule_is_tested_from_three_sides(rule):
    rows = all_rows()[rule.id]
    kinds = {row.kind for row in rows}
    assert {"passes", "boundary"} <= kinds
    if rule.id in ONLY_UNKNOWN:
        assert any(row.needs for row in rows)
    else:
        assert "speaks" in kinds


ASIDE = item("other", face="frame", disposition="remove")
"""What no rule has a word for: it stands on the frame, and goes."""


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_what_a_rule_leaves_out_silences_nothing_behind_it(rule):
    """Each row that speaks says the same with a thing and a tool before all others that are none of the rule's."""
    for row in all_rows()[rule.id]:
        if row.kind == "speaks":
            there = replace(row.given, items=(ASIDE, *row.given.items))
            run(replace(row, given=there, fit=replace(row.fit, parts=(fp("tool", "KEY"), *row.fit.parts))))


@pytest.mark.parametrize("rule", RULEBOOK, ids=lambda rule: rule.id)
def test_every_rule_of_the_book_says_what_it_is(rule):
    assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", rule.id)
    assert rule.discipline in DISCIPLINES
    assert rule.severity in SEVERITIES
    for text in (rule.title, rule.basis):
        assert text.strip() == text != ""
        assert not text.endswith(".")
    assert rule.cure.endswith(".")
    assert in_rulebook(rule.id) is rule_named(rule.id) is rule
    assert dict(rule.declared) == {limit.name: limit.value for limit in rule.limits}
    for limit in rule.limits:
        assert limit.name.rsplit("_", 1)[-1] in LIMIT_SUFFIXES, limit
        assert limit.text.endswith(".")
        assert limit.source


def test_no_two_rules_share_an_id():
    assert len({rule.id for rule in RULEBOOK}) == len(RULEBOOK)


def test_every_rule_file_is_registered():
    root = Path(hwsched.rules.__file__).parent
    rooms = [room for room in root.iterdir() if room.name not in ("solid", "network")]
    files = {path.stem.replace("_", "-") for room in rooms for path in room.glob("*.py") if path.stem != "__init__"}
    assert files == {rule.id for rule in RULEBOOK}
    assert {rule.discipline for rule in RULES} == set(DISCIPLINES)
    assert len(RULES) >= 70


def test_slots_part_the_rules():
    slots = [rules_in_slot(slot) for slot in ("lock", "unit", "power", "whole")]
    assert sum(map(len, slots)) == len(RULES)
    assert all(rules_in_slot(slot) for slot in ("lock", "unit", "power"))


def test_the_usual_opening_has_only_notes():
    found = check(given(), fit())
    assert {finding.severity for finding in found} <= {"note"}, found


def test_findings_are_sorted_and_name_no_mark():
    bad = given(opening(rating="90", mark="D-4711"))
    found = check(bad, fit(holes=(hole(40.0),), power="none"))
    order = [("error", "warning", "note").index(finding.severity) for finding in found]
    assert order == sorted(order)
    assert order[0] == 0
    assert all("4711" not in f.message + f.cure for f in found)


def test_limits_are_changed_by_the_project_and_only_there():
    rule = rule_named("battery-life")
    assert limits_of(rule, Settings()) == {"days": 180.0, "margin_share": 0.1}
    assert limits_of(rule, Settings(limits={"battery-life.days": 365.0, "battery-life.hours": 1.0})) == {
        "days": 365.0,
        "margin_share": 0.1,
    }
    assert limits_of(rule, Settings()) == {"days": 180.0, "margin_share": 0.1}


def test_a_rule_switched_off_is_silent():
    bad = given(opening(rating="90"))
    holed = fit(holes=(hole(40.0),))
    assert any(f.rule == "rated-hole-size" for f in check(bad, holed))
    off = replace(bad, settings=Settings(rules_off=frozenset({"rated-hole-size"})))
    assert not any(f.rule == "rated-hole-size" for f in check(off, holed))


def test_a_missing_fact_is_one_step_milder_than_the_rule():
    rule = rule_named("rated-hole-size")
    finding = finding_of(rule, Verdict("Unknown: needs it.", needs=("opening.rating",)))
    assert (rule.severity, finding.severity, finding.needs) == ("error", "warning", ("opening.rating",))


def test_a_rule_that_falls_over_names_itself_and_the_facts():
    def broken(given, fit, limits):
        raise ZeroDivisionError("by nothing")

    with pytest.raises(RuleError, match=r"rule battery-life failed: ZeroDivisionError.*thickness_mm=44.45"):
        judge(replace(rule_named("battery-life"), judge=broken), given(), fit(), settings=Settings())


def test_what_is_new_to_the_rules_takes_one_line_and_no_type_of_its_own():
    shelf = Subject("shelf", "each shelf", lambda count, name: f"shelf {name} of {count}")

    def too_few(count, name, limits):
        if count < limits["least_n"]:
            yield Verdict(f"{limits['least_n'] - count:g} are short on {name}.", about=name)

    rule = Rule(
        id="shelf-filled", title="Shelf filled", discipline="documents", severity="note", basis="b", cure="Fill it.",
        judge=too_few, subject=shelf,
        limits=(Limit("least_n", 3.0, "Least count.", "of the test", unit="", low=0.0, high=9.0),),
    )  # fmt: skip
    assert judge(rule, 3, "A1", settings=Settings()) == ()
    (said,) = judge(rule, 3, "A1", settings=Settings(limits={"shelf-filled.least_n": 5.0}))
    found = finding_of(rule, said)
    assert (found.rule, found.message, found.about, found.cure) == (
        "shelf-filled", "2 are short on A1.", "A1", "Fill it.",
    )  # fmt: skip
    assert "Judges       each shelf\n" in page_of(rule)
    assert rules_of(shelf, (*RULEBOOK, rule)) == (rule,)
    with pytest.raises(RuleError, match=r"rule shelf-filled failed: TypeError.*shelf A1 of None"):
        judge(rule, None, "A1", settings=Settings())


def test_every_rule_stands_under_what_it_judges():
    assert (*RULES, *CIRCUIT_RULES, *RECORD_RULES) == RULEBOOK
    assert {rule.subject for rule in RULES} == {OPENINGS}
    assert {rule.subject for rule in CIRCUIT_RULES} == {SUPPLIES}
    assert {rule.subject for rule in RECORD_RULES} == {RECORDS}
    # Only a rule of openings speaks while a fit is built, or asks for facts that cannot be true.
    assert not any(rule.slot != "whole" or rule.sees_all for rule in (*CIRCUIT_RULES, *RECORD_RULES))


def test_what_stands_on_the_leaf_is_guarded_by_one_rule_with_a_distance():
    guarded = Counter(kind for rule in RULEBOOK for kind in rule.guards)
    assert guarded["closer"] == guarded["lever"] == guarded["unit"] == 1
    assert set(guarded.values()) == {1}
    with pytest.raises(ValueError, match="rule lever-clear guards lever without a limit clearance_mm"):
        replace(rule_named("lever-clear"), limits=())


def test_a_slip_in_an_identifier_is_said():
    with pytest.raises(UnknownRuleError, match="there is no rule 'cylinder-flosh'"):
        rule_named("cylinder-flosh")
    assert in_rulebook("cylinder-flosh") is None


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_no_rule_stumbles_over_what_an_opening_does_not_have(rule):
    """Each case of its table without leaves, without existing items, and with neither."""
    for row in all_rows()[rule.id]:
        bare = replace(row.given, leaves=()), replace(row.given, items=()), replace(row.given, leaves=(), items=())
        for asked in bare:
            for verdict in judge(rule, asked, row.fit, settings=asked.settings):
                assert verdict.message.endswith(".")


def test_nothing_known_at_all_is_no_error_of_a_rule():
    """A bare survey: every rule must cope, and nothing may pass in silence."""
    bare = replace(given(), opening=Opening("o", "1"), leaves=(Leaf("l"),), items=(Item("k", kind="lock"),))
    for stated in (fit(), fit(power="supply"), Fit("to-measure"), Fit("fits")):
        found = check(bare, stated)
        facts = {need for finding in found for need in finding.needs}
        assert {"leaf.thickness_mm", "opening.rating", "existing_item.lock_form"} <= facts
    for empty in (replace(bare, leaves=()), replace(bare, items=()), replace(bare, leaves=(), items=())):
        check(empty, fit())


def test_every_missing_fact_has_a_label():
    for entity in ENTITIES:
        for attribute in entity.attributes:
            assert attribute.label in label_of(f"{entity.name}.{attribute.name}")
    assert label_of("part CYL.lead_mm") == "part CYL.lead mm"


def test_messages_follow_the_project_s_lengths():
    inch = replace(given(), settings=Settings(length_style="fraction"))
    (mm,) = (
        f for f in check(given(), fit(cable=None, holes=(hole(40.0, x_mm=20.0),))) if f.rule == "hole-edge-distance"
    )
    (fraction,) = (
        f for f in check(inch, fit(cable=None, holes=(hole(40.0, x_mm=20.0),))) if f.rule == "hole-edge-distance"
    )
    assert "6.4 mm" in mm.message
    assert '1/4"' in fraction.message
