"""Rules of records from three sides, the page of every rule, and what is said when one falls over."""

from dataclasses import replace
from datetime import date

import pytest

from hwsched.rules import OF_WAIVERS, RECORD_RULES, RULEBOOK, RuleError, Verdict, finding_of, judge
from hwsched.rules.judging import judge_record
from hwsched.rules.page import page_of
from hwsched.values import DISCIPLINES, Settings
from hwsched.values.record import Packet, Record, Waiver
from tests.rules.scenario import fit, given

TODAY = date(2031, 5, 1)
WAIVER = Waiver(
    "w", "clear-width", "clear width", "opening", "o", "f", "Jo", "measured", date(2031, 1, 2), date(2031, 4, 30)
)
PACKET = Packet("2031-04-02", "ann", "key")


def record(**facts):
    """An opening with its fit and nothing against it."""
    return Record(**{"given": given(), "shown_key": "", "fit": fit(), "findings": (), "today": TODAY, **facts})


ROWS = [
    # rule, what is on record, how often it speaks
    ("fit-out-of-date", {}, 0),
    ("fit-out-of-date", {"fit": None}, 1),
    # What is stored for the facts as they stand is no old fit, whatever it says.
    ("fit-out-of-date", {"fit": fit(without=("unit",))}, 0),
    ("packet-out-of-date", {"shown_key": "key"}, 0),
    ("packet-out-of-date", {"packet": PACKET, "shown_key": "other"}, 1),
    ("packet-out-of-date", {"packet": PACKET, "shown_key": ""}, 1),
    ("packet-out-of-date", {"packet": PACKET, "shown_key": "key"}, 0),
    ("waiver-past", {"unneeded": (WAIVER,)}, 0),
    ("waiver-past", {"past": (WAIVER, replace(WAIVER, id="v"))}, 2),
    ("waiver-lapsed", {"past": (WAIVER,)}, 0),
    ("waiver-lapsed", {"lapsed": (WAIVER,)}, 1),
    ("waiver-unneeded", {"lapsed": (WAIVER,)}, 0),
    ("waiver-unneeded", {"unneeded": (WAIVER,)}, 1),
]


@pytest.mark.parametrize(("rule_id", "facts", "times"), ROWS)
def test_it_speaks_and_it_is_silent(rule_id, facts, times):
    found = [finding for finding in judge_record(record(**facts), Settings()) if finding.rule == rule_id]
    assert len(found) == times
    for finding in found:
        rule = next(rule for rule in RECORD_RULES if rule.id == rule_id)
        assert (finding.severity, finding.discipline, finding.basis) == (rule.severity, rule.discipline, rule.basis)
        assert finding.cure == rule.cure
        assert finding.message.endswith(".")
        if rule_id in OF_WAIVERS:
            assert finding.about == "clear-width"
            assert "Jo on 2031-01-02" in finding.message
            assert "measured" in finding.message


def test_every_one_has_rows_on_both_sides():
    for rule in RECORD_RULES:
        assert {min(times, 1) for rule_id, _, times in ROWS if rule_id == rule.id} == {0, 1}


def test_a_waiver_holds_on_its_last_day_and_not_the_day_after():
    assert not replace(WAIVER, until=TODAY).past(TODAY)
    assert WAIVER.past(TODAY)
    assert not replace(WAIVER, until=None).past(date.max)
    (said,) = judge_record(record(past=(WAIVER,)), Settings())
    assert said.values == {"days": 1.0}
    assert WAIVER.words == "Jo on 2031-01-02, until 2031-04-30: measured"
    assert replace(WAIVER, until=None).words == "Jo on 2031-01-02: measured"


def test_one_switched_off_is_silent():
    facts = record(fit=None, packet=PACKET, lapsed=(WAIVER,))
    assert [f.rule for f in judge_record(facts, Settings())] == [
        "fit-out-of-date",
        "packet-out-of-date",
        "waiver-lapsed",
    ]
    off = Settings(rules_off=frozenset({"packet-out-of-date"}))
    assert [f.rule for f in judge_record(facts, off)] == ["fit-out-of-date", "waiver-lapsed"]


def test_one_that_falls_over_names_itself():
    def broken(record, limits):
        raise ZeroDivisionError("by nothing")

    with pytest.raises(RuleError, match=r"rule waiver-past failed: ZeroDivisionError.*opening 1"):
        judge(replace(RECORD_RULES[3], judge=broken), record(), settings=Settings())


def test_a_verdict_s_own_cure_goes_before_the_rule_s():
    rule = RECORD_RULES[0]
    assert finding_of(rule, Verdict("m")).cure == rule.cure
    assert finding_of(rule, Verdict("m", "Do this.")).cure == "Do this."


# --- pages ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("rule", RULEBOOK, ids=lambda rule: rule.id)
def test_the_page_says_all_that_the_rule_declares(rule):
    page = page_of(rule)
    lines = page.splitlines()
    assert lines[0] == rule.title
    for text in (rule.id, DISCIPLINES[rule.discipline], rule.severity.capitalize(), rule.basis, rule.cure):
        assert text in page
    assert ("decide." in lines[-1]) == rule.defers
    for limit in rule.limits:
        (line,) = [line for line in lines if line.startswith(f"  {limit.name} = ")]
        assert f"= {limit.value:g}: {limit.text}" in line
        assert limit.source in line
        changed = page_of(rule, {limit.name: limit.value + 1})
        assert f"{limit.name} = {limit.value + 1:g} (the rule's own: {limit.value:g}): {limit.text}" in changed
    assert ("Limits that a project may change" in page) == bool(rule.limits)
    assert page_of(rule, dict(rule.declared)) == page
    assert page_of(rule, {}) == page
    assert page_of(rule, off=True) == f"{page}\n\nSwitched off in this project."


def test_the_page_says_what_is_judged_and_when():
    pages = {rule.id: page_of(rule) for rule in RULEBOOK}
    assert "each opening and its fit" in pages["clear-width"]
    assert "It judges the opening as a whole." in pages["clear-width"]
    assert "It refuses a lock or cylinder while a fit is built." in pages["cylinder-flush"]
    assert "each supply with its circuits" in pages["circuit-voltage"]
    assert "what is on record" in pages["waiver-past"]
