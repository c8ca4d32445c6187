"""Waivers: who, why, until when and for what; what they leave open, when they end, and that nothing is ever hidden."""

from collections import Counter
from dataclasses import replace
from datetime import date, timedelta

import pytest

from hwsched.documents.release.packet import PACKET
from hwsched.documents.release.schedule import SCHEDULE
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.operations.findings.checking import Checker, check_openings, look_again
from hwsched.operations.findings.verdict import not_passed
from hwsched.operations.findings.waiver_book import WaiverBook, facts_of, facts_of_rule
from hwsched.operations.findings.waivers import Spoken, unwaive, waive, waive_several, waivers, waivers_of
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part, place_unit
from hwsched.operations.power.connecting import connect_openings
from hwsched.operations.project.history import undo
from hwsched.operations.project.settings import set_settings
from hwsched.operations.release.issued_packets import write_down_packets
from hwsched.operations.release.packet_key import packet_key
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.editing import add_opening, edit_facts, remove
from hwsched.rules import CIRCUIT_RULES, OF_WAIVERS
from hwsched.values.record import SCOPES
from tests.model.states import state
from tests.operations.exact import TODAY, USUAL, findings, id_of, small, waived
from tests.operations.locked import points_of
from tests.operations.locked import yard as locked_yard
from tests.operations.powered import circuit, closet, door, more_parts
from tests.rules.scenario import catalogue

WHO = "ann"
STAIR = ("stair-re-entry", "stair", "warning", False)
LAPSED = ("waiver-lapsed", "stair-re-entry", "warning", False)
PAST = ("waiver-past", "stair-re-entry", "warning", False)
UNNEEDED = ("waiver-unneeded", "stair-re-entry", "note", False)
OPEN = {*USUAL, STAIR}


@pytest.fixture
def yard(tmp_path):
    """1 usual; 2, 3 to a stair, alike."""
    made = small(tmp_path / "y.hwsched", m2={"stair": True}, m3={"stair": True})
    yield made
    made.close()


def give(project, mark="2", rule="stair-re-entry", **more):
    opening = None if mark is None else id_of(project, mark)
    usual = {"person": "Jo Reed", "reason": "alarm unlocks", "who": WHO, "opening_id": opening, "today": TODAY}
    return waive(project, rule, **{**usual, **more})


def edit(project, mark, **facts):
    edit_facts(project, "opening", id_of(project, mark), facts, who=WHO)
    fit_openings(project, who=WHO)


def finding(project, mark, rule, today=TODAY):
    (opening,) = check_openings(project, [id_of(project, mark)], today=today)
    return next(f for f in opening.findings if f.rule == rule)


def test_it_says_who_why_and_until_when(yard):
    changes = give(yard, person=" Jo   Reed ", reason="alarm\nunlocks", until="2031-12-24")
    assert changes.openings == {id_of(yard, "2")}
    (held,) = waivers(yard)
    assert (held.person, held.reason, held.given_on, held.until) == (
        "Jo Reed", "alarm unlocks", TODAY, date(2031, 12, 24),
    )  # fmt: skip
    assert held.words == "Jo Reed on 2031-05-01, until 2031-12-24: alarm unlocks"
    said = finding(yard, "2", "stair-re-entry")
    assert (said.waived, said.waived_by) == (True, held.words)
    assert finding(yard, "3", "stair-re-entry").waived is False
    assert waivers_of(yard, "stair-re-entry", id_of(yard, "2")) == [held]
    for place in (id_of(yard, "3"), None):
        with pytest.raises(MissingRowError):
            waivers_of(yard, "stair-re-entry", place)


REFUSED = {
    "nobody": ({"person": " "}, "who accepts it and why"),
    "no reason": ({"reason": "\n"}, "who accepts it and why"),
    "no such rule": ({"rule": "luck"}, "there is no 'luck'"),
    "no such scope": ({"scope": "town"}, ", ".join(SCOPES)),
    "no day": ({"until": "soon"}, "accepted: a day such as"),
    "over already": ({"until": "2031-04-30"}, "is over already"),
    "no such finding": ({"mark": "1"}, "1 has no open finding of 'Stair re-entry'"),
    "about something else": ({"about": "lock"}, "no open finding"),
    "no opening": ({"mark": None}, "given at an opening"),
    "of a waiver": ({"rule": "waiver-past"}, "give it anew"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_a_refusal_says_why_and_changes_nothing(yard, name):
    before = state(yard)
    wrong, word = REFUSED[name]
    with pytest.raises(ValueRefusedError, match=word):
        give(yard, **wrong)
    assert state(yard) == before


def test_an_opening_that_is_gone(yard):
    two = id_of(yard, "2")
    remove(yard, "opening", two, who=WHO)
    with pytest.raises(MissingRowError):
        waive(yard, "stair-re-entry", person="p", reason="r", who=WHO, opening_id=two)


def test_today_is_still_in_it_and_tomorrow_asks_again(yard):
    give(yard, until=TODAY.isoformat())
    assert findings(yard)["2"] == waived(OPEN, "stair-re-entry")
    later = TODAY + timedelta(days=3)
    assert findings(yard, today=later)["2"] == {*OPEN, PAST}
    said = finding(yard, "2", "waiver-past", today=later)
    assert said.values == {"days": 3.0}
    assert "2031-05-01" in said.message
    assert "Jo Reed" in said.message
    checked = check_openings(yard, [id_of(yard, "2")], today=later)
    assert "waiver-past" in {f.rule for each in checked for f in each.findings if f.severity == "warning"}
    assert (not_passed(checked, "error"), not_passed(checked, "warning")) == ([], checked)


def test_given_anew_the_old_one_is_not_needed(yard):
    """The cure that the rules name must cure."""
    give(yard, until=TODAY.isoformat())
    later = TODAY + timedelta(days=1)
    give(yard, today=later, reason="again")
    assert findings(yard, today=later)["2"] == {*waived(OPEN, "stair-re-entry"), UNNEEDED}
    assert finding(yard, "2", "stair-re-entry", later).waived_by.endswith("again")
    old = min(waivers(yard), key=lambda each: each.given_on)
    unwaive(yard, [old.id], who=WHO)
    assert findings(yard, today=later)["2"] == waived(OPEN, "stair-re-entry")


def test_it_lapses_when_a_fact_of_the_survey_changes(yard):
    give(yard)
    edit(yard, "2", operations_per_day=31.0)
    assert findings(yard)["2"] == {*OPEN, LAPSED}
    give(yard, reason="31 a day are as good")
    assert findings(yard)["2"] == {*waived(OPEN, "stair-re-entry"), UNNEEDED}
    edit(yard, "2", operations_per_day=30.0)
    # The first holds again; the second's facts are gone.
    assert findings(yard)["2"] == {*waived(OPEN, "stair-re-entry"), UNNEEDED}
    assert finding(yard, "2", "stair-re-entry").waived_by.endswith("alarm unlocks")


def test_what_no_fit_depends_on_does_not_matter(yard):
    give(yard)
    edit(yard, "2", notes="seen", building="Annexe", level="2", room_to="Store", wave="B", difficulty=1.5)
    # Of the room that has a name now the opening is the only door, and no way out: that is asked, and nothing lapses.
    asked = ("room-way-out", "egress", "warning", False)
    assert findings(yard)["2"] == {*waived(OPEN, "stair-re-entry"), asked}


def test_it_lapses_when_a_choice_changes(yard):
    give(yard)
    choose_part(yard, id_of(yard, "2"), "cam", "CAM", who=WHO)
    fit_openings(yard, who=WHO)
    assert findings(yard)["2"] == {*OPEN, LAPSED}
    for _ in range(2):
        undo(yard, who=WHO)
    assert findings(yard)["2"] == waived(OPEN, "stair-re-entry")


def test_it_lapses_when_the_numbers_of_the_finding_change(yard):
    # 300.96 days: see test_exact_findings.
    set_settings(yard, who=WHO, limits={"battery-life.days": 320.0})
    fit_openings(yard, who=WHO)
    give(yard, rule="battery-life")
    assert ("battery-life", "battery", "error", True) in findings(yard)["2"]
    set_settings(yard, who=WHO, limits={"battery-life.days": 330.0})
    fit_openings(yard, who=WHO)
    asked = {("battery-life", "battery", "error", False), ("waiver-lapsed", "battery-life", "warning", False)}
    assert findings(yard)["2"] == {*OPEN, *asked}
    set_settings(yard, who=WHO, limits={"battery-life.days": 270.0})
    fit_openings(yard, who=WHO)
    assert findings(yard)["2"] == {*OPEN, ("waiver-unneeded", "battery-life", "note", False)}


def test_another_catalogue_that_says_the_same_leaves_it(yard):
    give(yard)
    (ring,) = catalogue(RING={"list_price": 11.0}).of_kind("ring")
    more_parts(yard, ring)
    fit_openings(yard, who=WHO)
    assert findings(yard)["2"] == waived(OPEN, "stair-re-entry")


def test_stock_and_what_is_preferred_leave_it(yard):
    """They rank parts; they are no facts of an opening."""
    give(yard)
    set_settings(yard, who=WHO, prefer="stock")
    fit_openings(yard, who=WHO)
    assert findings(yard)["2"] == waived(OPEN, "stair-re-entry")
    more_parts(yard, replace(catalogue().get("RING"), stock=4.0))
    fit_openings(yard, who=WHO)
    assert findings(yard)["2"] == waived(OPEN, "stair-re-entry")


def test_it_is_not_needed_when_the_finding_is_gone(yard):
    give(yard)
    edit(yard, "2", stair=False)
    assert findings(yard)["2"] == {*USUAL, UNNEEDED}
    unwaive(yard, [waivers(yard)[0].id], who=WHO)
    assert findings(yard)["2"] == USUAL


def test_while_a_fit_is_stale_nobody_says_that_it_is_not_needed(yard):
    give(yard)
    edit_facts(yard, "opening", id_of(yard, "2"), {"operations_per_day": 31.0}, who=WHO)
    stale = {("fit-out-of-date", "", "warning", False), ("case-offset-taken", "lock", "note", False)}
    assert findings(yard)["2"] == stale
    # Worked out on the spot the finding stands, and its facts have changed.
    (looked,) = look_again(yard, [id_of(yard, "2")], checker=Checker(), today=TODAY)
    assert {(f.rule, f.about, f.severity, f.waived) for f in looked.findings} == {*OPEN, LAPSED}


def test_while_its_rule_is_off_it_waits(yard):
    give(yard)
    set_settings(yard, who=WHO, rules_off={"stair-re-entry": True})
    fit_openings(yard, who=WHO)
    assert findings(yard)["2"] == USUAL
    set_settings(yard, who=WHO, rules_off={"stair-re-entry": False})
    fit_openings(yard, who=WHO)
    assert findings(yard)["2"] == waived(OPEN, "stair-re-entry")


def test_openings_alike_are_covered_those_that_come_later_too(yard):
    give(yard, scope="alike")
    assert findings(yard) == {"1": USUAL, "2": waived(OPEN, "stair-re-entry"), "3": waived(OPEN, "stair-re-entry")}
    door(yard, "9", stair=True, power_wish=None, plan_x_m=None, plan_y_m=None, rise_m=None)
    fit_openings(yard, who=WHO)
    assert findings(yard)["9"] == waived(OPEN, "stair-re-entry")
    edit(yard, "9", operations_per_day=31.0)
    assert findings(yard)["9"] == OPEN
    # Where it was given its facts change: the others are as they were.
    edit(yard, "2", operations_per_day=31.0)
    found = findings(yard)
    assert found["2"] == {*OPEN, LAPSED}
    assert found["3"] == waived(OPEN, "stair-re-entry")


def test_this_opening_alone(yard):
    give(yard)
    assert findings(yard)["3"] == OPEN


def test_a_waiver_of_the_project_is_told_once_where_two_locks_would_need_it(tmp_path):
    """Two units of one opening: one lasts 300.96 days (see test_exact_findings), one that draws more 247."""

    def said_at(project, today=TODAY):
        (checked,) = [each for each in check_openings(project, today=today) if each.given.opening.mark == "101"]
        return Counter(
            f.rule for f in checked.findings if f.rule.startswith(("battery-life", "waiver-")) and not f.waived
        )

    with locked_yard(tmp_path) as project:
        usual = catalogue().get("UNIT")
        more = {**usual.attributes, "standing_ua": 120.0}
        more_parts(project, replace(usual, number="U-2", list_price=900.0, attributes=more))
        at = points_of(project, "101")["deadbolt"]
        choose_part(project, id_of(project, "101"), "unit", "U-2", who=WHO, point=at)
        set_settings(project, who=WHO, limits={"battery-life.days": 320.0})
        fit_openings(project, who=WHO)
        assert said_at(project) == {"battery-life": 2}
        last_day = TODAY + timedelta(days=5)
        give(project, None, "battery-life", scope="project", until=last_day.isoformat())
        assert said_at(project, last_day) == {}
        assert said_at(project, last_day + timedelta(days=1)) == {"battery-life": 2, "waiver-past": 1}
        set_settings(project, who=WHO, limits={"battery-life.days": 321.0})
        fit_openings(project, who=WHO)
        assert said_at(project) == {"battery-life": 2, "waiver-lapsed": 1}


def test_the_whole_project_until_the_limit_of_the_rule_changes(yard):
    set_settings(yard, who=WHO, limits={"battery-life.days": 320.0})
    fit_openings(yard, who=WHO)
    give(yard, None, "battery-life", scope="project")
    held = ("battery-life", "battery", "error", True)
    assert all(held in said for said in findings(yard).values())
    set_settings(yard, who=WHO, limits={"clear-width.clear_mm": 800.0})
    fit_openings(yard, who=WHO)
    assert all(held in said for said in findings(yard).values())
    set_settings(yard, who=WHO, limits={"battery-life.days": 321.0})
    fit_openings(yard, who=WHO)
    asks = {("battery-life", "battery", "error", False), ("waiver-lapsed", "battery-life", "warning", False)}
    assert all(asks <= said for said in findings(yard).values())
    give(yard, None, "battery-life", scope="project", reason="again")
    for said in findings(yard).values():
        assert held in said
        assert not {rule for rule, *_ in said} & {"waiver-lapsed", "waiver-unneeded"}


def test_the_whole_project_until_its_day(yard):
    give(yard, None, scope="project", until=TODAY.isoformat())
    assert findings(yard)["2"] == waived(OPEN, "stair-re-entry")
    assert findings(yard, today=TODAY + timedelta(days=1)) == {"1": USUAL, "2": {*OPEN, PAST}, "3": {*OPEN, PAST}}


def test_only_what_it_is_about(yard):
    set_settings(yard, who=WHO, limits={"battery-life.days": 320.0})
    fit_openings(yard, who=WHO)
    give(yard, None, "battery-life", scope="project", about="something else")
    assert ("battery-life", "battery", "error", False) in findings(yard)["2"]
    give(yard, None, "battery-life", scope="project", about="battery")
    assert ("battery-life", "battery", "error", True) in findings(yard)["2"]


def test_records_can_be_waived_too(yard):
    """An old packet that the site knows to be old; the waiver must not be told to be of no use."""
    write_down_packets(yard, project_view(yard), who=WHO, today=TODAY)
    edit(yard, "2", operations_per_day=29.0)
    assert findings(yard)["2"] == {*OPEN, ("packet-out-of-date", "", "warning", False)}
    give(yard, rule="packet-out-of-date")
    assert findings(yard)["2"] == {*OPEN, ("packet-out-of-date", "", "warning", True)}
    write_down_packets(yard, project_view(yard), who=WHO, today=TODAY)
    assert findings(yard)["2"] == {*OPEN, ("waiver-unneeded", "packet-out-of-date", "note", False)}


def test_with_its_opening_it_goes_and_comes_back(yard):
    give(yard, scope="alike")
    before = findings(yard)
    remove(yard, "opening", id_of(yard, "2"), who=WHO)
    # Who gave it had looked at 2: the others ask anew.
    assert findings(yard) == {"1": USUAL, "3": OPEN}
    undo(yard, who=WHO)
    assert findings(yard) == before


def test_what_is_said_of_a_circuit(yard):
    supply = closet(yard)
    line = circuit(yard, supply, wire=None)
    more_parts(yard, *catalogue(LOOP={"length_mm": 500.0}).parts.values())
    connect_openings(yard, line, [id_of(yard, "2"), id_of(yard, "3")], who=WHO, length_m=10.0)
    fit_openings(yard, who=WHO)
    said = {(f.rule, f.about) for f in check_openings(yard, [id_of(yard, "2")], today=TODAY)[0].findings}
    power = min(rule for rule, _ in said if rule in {each.id for each in CIRCUIT_RULES})
    give(yard, rule=power)
    (two, three) = check_openings(yard, [id_of(yard, "2"), id_of(yard, "3")], today=TODAY)
    assert all(f.waived for f in two.findings if f.rule == power)
    assert not any(f.waived for f in three.findings if f.rule == power)
    of_power = {each.opening_ids: each for each in project_view(yard).power.findings if each.finding.rule == power}
    assert of_power[id_of(yard, "2"),].finding.waived
    assert not of_power[id_of(yard, "3"),].finding.waived
    unwaive(yard, [each.id for each in waivers(yard)], who=WHO)
    give(yard, None, power, scope="project")
    view = project_view(yard)
    concerned = [each for each in view.power.findings if each.finding.rule == power and each.opening_ids]
    assert concerned
    assert all(each.finding.waived and "Jo Reed" in each.finding.waived_by for each in concerned)


def test_documents_print_that_it_is_waived(yard):
    before = {v.mark: packet_key(v.points) for v in project_view(yard).openings}
    give(yard, until="2031-12-24")
    view = project_view(yard)
    two = next(each for each in view.openings if each.mark == "2")
    packet, schedule = str(PACKET.build(view, two)), str(SCHEDULE.build(view, None))
    for text in (packet, schedule):
        assert "(waived" in text
        assert "Jo Reed on 2031-05-01, until 2031-12-24: alarm unlocks" in text
    assert "Waivers in force: 1." in schedule
    # Whoever waives does not change what is drilled.
    assert {v.mark: packet_key(v.points) for v in view.openings} == before


def test_a_packet_waits_for_errors_that_nobody_has_waived(yard):
    # The leaf is 914.4 mm wide: a plate of 80 mm does not stand on it from 900 mm on.
    place_unit(yard, id_of(yard, "1"), leaf="single", face="inside", pattern="straight", x_mm=900, y_mm=1010, who=WHO)
    fit_openings(yard, who=WHO)
    view = next(each for each in project_view(yard).openings if each.mark == "1")
    blocking = {f.rule for f in view.blocking}
    assert "plate-within-leaf" in blocking
    assert not view.ready
    assert write_down_packets(yard, project_view(yard), who=WHO, only=[id_of(yard, "1")]).number is None
    for rule in sorted(blocking):
        give(yard, "1", rule)
    view = next(each for each in project_view(yard).openings if each.mark == "1")
    assert (view.blocking, view.ready) == ((), True)
    assert {f.rule for f in view.findings if f.waived} == blocking


def test_hashes_of_what_it_is_given_for(yard):
    inputs = {each.given.opening.mark: each for each in check_openings(yard, today=TODAY)}
    said = {mark: next(f for f in each.findings if f.rule == "tool-known") for mark, each in inputs.items()}
    assert facts_of(inputs["2"].given, said["2"]) == facts_of(inputs["3"].given, said["3"])
    assert facts_of(inputs["1"].given, said["1"]) != facts_of(inputs["2"].given, said["2"])
    settings = inputs["1"].given.settings
    changed = replace(settings, limits={"battery-life.days": 1.0, "nothing.known": 3.0})
    assert facts_of_rule("battery-life", settings) != facts_of_rule("battery-life", changed)
    assert facts_of_rule("clear-width", settings) == facts_of_rule("clear-width", changed)


def test_laying_hides_nothing_and_keeps_the_order(yard):
    give(yard)
    (two,) = check_openings(yard, [id_of(yard, "2")], today=TODAY)
    book = WaiverBook.of(waivers(yard), two.given.settings, TODAY)
    bare = [replace(f, waived=False, waived_by="") for f in two.findings]
    present = book.lay_over(two.inputs, bare)
    assert present.findings == two.findings
    assert [replace(f, waived=False, waived_by="") for f in present.findings] == bare


def test_waiving_what_is_worked_out_but_not_stored(yard):
    opening = add_opening(yard, {"mark": "8", "stair": True}, who=WHO)[1]
    waive(yard, "known-before-order", person="p", reason="r", who=WHO, opening_id=opening, today=TODAY)
    assert all(each.opening_id == opening for each in waivers(yard))


@pytest.mark.parametrize("where", ["opening", "supply"])
@pytest.mark.parametrize(
    ("rule", "said"),
    [("luck", "there is no 'luck'"), *((rule, "take that waiver back") for rule in sorted(OF_WAIVERS))],
)
def test_what_is_no_rule_or_speaks_of_waivers_is_not_accepted_anywhere(yard, rule, said, where):
    connect_openings(yard, circuit(yard, closet(yard, "PS1")), [id_of(yard, "2")], who=WHO)
    before = state(yard)
    wrong = Spoken("", rule, "", supply="PS1") if where == "supply" else Spoken(id_of(yard, "2"), rule, "")
    with pytest.raises(ValueRefusedError, match=said):
        waive_several(yard, [wrong], person="Ann", reason="so", who=WHO, today=TODAY)
    assert state(yard) == before


def test_several_openings_are_waived_as_one_step_each_for_itself(yard):
    before = state(yard)
    spoken = [Spoken(id_of(yard, mark), "stair-re-entry", "stair") for mark in ("2", "3", "2")]
    changes = waive_several(yard, spoken, person="Ann", reason="re-entry is not asked for here", who=WHO, today=TODAY)
    assert changes.openings == {id_of(yard, "2"), id_of(yard, "3")}
    assert findings(yard) == {"1": USUAL, "2": waived(OPEN, "stair-re-entry"), "3": waived(OPEN, "stair-re-entry")}
    undo(yard, who=WHO)
    assert state(yard) == before
    for wrong in (Spoken(id_of(yard, "1"), "stair-re-entry", "stair"), Spoken(id_of(yard, "2"), "waiver-past", "")):
        with pytest.raises(ValueRefusedError):
            waive_several(yard, [*spoken, wrong], person="Ann", reason="so", who=WHO, today=TODAY)
    with pytest.raises(ValueRefusedError):
        waive_several(yard, spoken, person="Ann", reason=" ", who=WHO, today=TODAY)
    assert state(yard) == before
