"""The verbs of specifying as people and machines call them: waivers, sets, what-if, fewest kinds, why, cost."""

import json
from dataclasses import replace
from decimal import Decimal

import pytest
from pypdf import PdfReader

from hwsched.cli.command import run
from hwsched.documents.parts.cost_estimate import totals
from hwsched.model.project import open_project
from hwsched.operations.release.project_view import project_view
from hwsched.rules import RULEBOOK
from hwsched.rules.page import page_of
from tests.model.states import state
from tests.operations.exact import small
from tests.operations.powered import more_parts
from tests.rules.scenario import catalogue


@pytest.fixture
def yard(tmp_path):
    """1 and 3 usual, 2 to a stair; its path."""
    small(tmp_path / "y.hwsched", m2={"stair": True}).close()
    return str(tmp_path / "y.hwsched")


def told(capsys, *words, status=0):
    """Run a command; returns what it printed."""
    assert run(list(words)) == status, capsys.readouterr().err
    return capsys.readouterr().out


def answered(capsys, *words):
    return json.loads(told(capsys, *words, "--json"))["result"]


def refused(capsys, *words, status=3):
    assert run(list(words)) == status
    shown = capsys.readouterr()
    assert shown.out == ""
    return shown.err


def rows(path):
    with open_project(path) as project:
        return state(project)


def test_waive_waivers_and_the_exit_status_of_check(yard, capsys):
    told(capsys, "findings", "check", yard, "--fail-on", "warning", status=1)
    assert "2: warning: stair-re-entry" in told(capsys, "findings", "check", yard)
    words = (yard, "stair-re-entry", "2", "--person", "Jo", "--reason", "alarm", "--until", "2999-12-31")
    assert answered(capsys, "findings", "waive", *words) == {"rule": "stair-re-entry", "marks": ["2"]}
    told(capsys, "findings", "check", yard, "--fail-on", "warning")
    told(capsys, "findings", "check", yard, "--fail-on", "note", status=1)
    shown = told(capsys, "findings", "check", yard)
    assert "2: warning (waived: Jo on " in shown
    assert ", until 2999-12-31: alarm): stair-re-entry: " in shown
    assert shown.splitlines()[-1] == "3 openings: 0 error, 0 warning, 15 note, 1 waived"
    found = answered(capsys, "findings", "check", yard, "--mark", "2")
    assert [f["rule"] for f in found["findings"] if f["waived"]] == ["stair-re-entry"]
    assert (found["counts"]["opening_count"], found["counts"]["waived_count"]) == (1, 1)
    (row,) = answered(capsys, "findings", "waivers", yard)
    assert set(row) == {"rule", "about", "scope", "mark", "person", "reason", "given_on", "until"}
    assert (row["rule"], row["about"], row["scope"], row["mark"]) == ("stair-re-entry", "stair", "opening", "2")
    assert (row["person"], row["reason"], row["until"]) == ("Jo", "alarm", "2999-12-31")
    assert "2: stair-re-entry stair (opening): Jo on " in told(capsys, "findings", "waivers", yard)
    assert "Taken back: 1 opening touched" in told(capsys, "findings", "waive", yard, "stair-re-entry", "2", "--back")
    told(capsys, "findings", "check", yard, "--fail-on", "warning", status=1)
    assert told(capsys, "findings", "waivers", yard) == "No waiver is given.\n"
    assert answered(capsys, "findings", "waivers", yard) == []


def test_waive_for_the_project_and_alike(yard, capsys):
    told(
        capsys, "findings", "waive", yard, "coin-cell-drain", "--scope", "project", "--reason", "known", "--who", "cid"
    )
    told(capsys, "findings", "waive", yard, "tool-known", "1", "--scope", "alike", "--reason", "known", "--who", "cid")
    found = answered(capsys, "findings", "check", yard)["findings"]
    assert sum(f["waived"] for f in found if f["rule"] == "coin-cell-drain") == 3
    assert {f["mark"] for f in found if f["rule"] == "tool-known" and f["waived"]} == {"1", "3"}
    assert [row["person"] for row in answered(capsys, "findings", "waivers", yard)] == ["cid", "cid"]
    assert "project: coin-cell-drain" in told(capsys, "findings", "waivers", yard)


WRONG = {
    "no reason": (("findings", "waive", "stair-re-entry", "2"), "who accepts it and why"),
    "no finding": (
        ("findings", "waive", "stair-re-entry", "1", "--reason", "r"),
        "1 has no open finding of 'Stair re-entry'",
    ),
    "no opening": (("findings", "waive", "stair-re-entry", "--reason", "r"), "given at an opening"),
    "no waiver": (
        ("findings", "waive", "stair-re-entry", "2", "--back"),
        "no waiver of 'Stair re-entry' was given here",
    ),
    "no such mark": (("findings", "why", "77"), "no opening has the mark 77"),
    "nothing to tell": (("findings", "why", "1", "hat"), "1 has no 'hat'; it has cylinder"),
    "no such set": (("parts", "set", "assign", "HS-9", "1"), "there is no hardware set HS-9"),
    "bad line": (("parts", "set", "make", "A", "unit"), "ROLE=PART or ROLE=PART*N"),
    "bad quantity": (("parts", "set", "make", "A", "unit=UNIT*none"), "ROLE=PART or ROLE=PART*N"),
    "no line": (("parts", "set", "make", "A"), "at least one line"),
    "no such part": (("opening", "what-if", "--choose", "unit=NONE"), "the catalogue has no part 'NONE'"),
    "no such preference": (("opening", "what-if", "--prefer", "luck"), "there is no 'luck'"),
    "no number": (("opening", "what-if", "--limit", "battery-life.days=soon"), "'soon' is no number"),
    "no such building": (("parts", "fewest", "--building", "Nowhere"), "no opening stands in Nowhere"),
    "too few": (("parts", "fewest", "--most", "1"), "different parts"),
    "no such task": (("parts", "terms", "--hours", "fly=1"), "there is no task 'fly'"),
    "nothing to visit": (("survey", "missing", "-o", "OUT"), "no opening needs a fact of the survey"),
}


@pytest.mark.parametrize("name", WRONG)
def test_a_refusal_says_why_and_changes_nothing(yard, capsys, tmp_path, name):
    before = rows(yard)
    (room, verb, *rest), word = WRONG[name]
    assert word in refused(capsys, room, verb, yard, *[str(tmp_path) if each == "OUT" else each for each in rest])
    assert rows(yard) == before


@pytest.mark.parametrize(
    "words",
    [
        ("parts", "set", "yard", "assign"),
        ("parts", "set", "yard", "assign", "A"),
        ("parts", "set", "yard", "free"),
        ("parts", "set", "yard", "paint", "A"),
        ("opening", "what-if", "yard", "--limit", "battery-life.days"),
        ("findings", "waive", "yard"),
        ("findings", "waive", "yard", "stair-re-entry", "2", "--scope", "town"),
        ("parts", "cost", "yard", "--by", "luck"),
        ("findings", "rules", "luck"),
        ("release", "print", "yard", "schedule", "--issue"),
        ("project", "settings", "yard", "--prefer", "luck"),
    ],
)
def test_wrong_usage(words, yard, capsys):
    before = rows(yard)
    assert run([yard if word == "yard" else word for word in words]) == 2
    assert capsys.readouterr().err
    assert rows(yard) == before


def test_sets(yard, capsys):
    assert told(capsys, "parts", "set", yard, "list") == "There is no hardware set yet.\n"
    (shown,) = answered(capsys, "parts", "set", yard, "propose")["sets"]
    assert (shown["name"], shown["marks"]) == ("HS-01", ["1", "2", "3"])
    assert {"role": "unit", "part": "UNIT", "quantity": 1.0} in shown["lines"]
    assert "1 sets proposed; --accept makes them." in told(capsys, "parts", "set", yard, "propose")
    assert answered(capsys, "parts", "set", yard, "propose", "--accept")["marks"] == ["1", "2", "3"]
    assert "Nothing to change." in told(capsys, "parts", "set", yard, "propose", "--accept")
    told(capsys, "parts", "set", yard, "make", "B", "unit=EDGE", "consumable=SCREW*3")
    told(capsys, "parts", "set", yard, "assign", "B", "3")
    told(capsys, "opening", "choose", yard, "3", "unit", "UNIT")
    listed = answered(capsys, "parts", "set", yard, "list")["sets"]
    assert [(each["name"], each["marks"], each["own"]) for each in listed] == [
        ("B", ["3"], [{"mark": "3", "roles": ["unit"]}]), ("HS-01", ["1", "2"], []),
    ]  # fmt: skip
    text = told(capsys, "parts", "set", yard, "list")
    assert "B: 1 opening: 3" in text
    assert "  consumable SCREW x 3" in text
    assert "  3 decides for itself: unit" in text
    before = rows(yard)
    tried = answered(capsys, "parts", "set", yard, "change", "HS-01", "unit=EDGE", "--dry-run")["effects"]
    assert rows(yard) == before
    assert [each["mark"] for each in tried] == ["1", "2"]
    assert set(tried[0]) == {"mark", "before", "after", "gone", "new", "why"}
    assert "2 of 2 openings change." in told(capsys, "parts", "set", yard, "change", "HS-01", "unit=EDGE", "--dry-run")
    assert answered(capsys, "parts", "set", yard, "change", "HS-01", "unit=EDGE")["marks"] == ["1", "2"]
    told(capsys, "parts", "set", yard, "free", "1")
    told(capsys, "parts", "set", yard, "remove", "B")
    assert [(each["name"], each["marks"]) for each in answered(capsys, "parts", "set", yard, "list")["sets"]] == [
        ("HS-01", ["2"])
    ]


def test_what_if(yard, capsys):
    before = rows(yard)
    answer = answered(capsys, "opening", "what-if", yard, "--limit", "battery-life.days=301", "--mark", "1")
    assert rows(yard) == before
    assert (answer["accepted"], answer["asked_count"]) == (False, 1)
    (one,) = answer["differences"]
    assert set(one) == {
        "mark", "before", "after", "gone", "new", "cost_before", "cost_after", "currency",
        "hole_count_before", "hole_count_after", "findings_gone", "findings_new", "why",
    }  # fmt: skip
    assert (one["mark"], [f["rule"] for f in one["findings_new"]]) == ("1", ["battery-life"])
    assert one["cost_before"] == one["cost_after"] == "337.40"
    assert one["currency"] == "USD"
    shown = told(
        capsys, "opening", "what-if", yard, "--building", "Main", "--choose", "unit=EDGE", "--off", "tool-known"
    )
    assert "1: fits -> fits" in shown
    assert "  + tool MORT, unit EDGE\n" in shown
    assert "  cost 337.40 -> 437.40" in shown
    assert "3 of 3 openings would be different." in shown
    assert "Nothing is changed yet" in shown
    assert rows(yard) == before
    asked = ("opening", "what-if", yard, "--choose", "unit=EDGE", "--prefer", "holes")
    key = answered(capsys, *asked)["shown"]
    assert key in told(capsys, *asked)
    refused(capsys, *asked, "--accept", "--shown", "0123456789abcdef")
    assert rows(yard) == before
    accepted = answered(capsys, *asked, "--accept", "--shown", key)
    assert accepted["accepted"] is True
    assert accepted["differences"] != []
    assert answered(capsys, "opening", "what-if", yard, "--choose", "unit=EDGE")["differences"] == []
    assert "Accepted." in told(capsys, "opening", "what-if", yard, "--limit", "battery-life.days=", "--accept")


def test_a_part_is_chosen_and_fitted_in_one_step(yard, capsys):
    before, steps = rows(yard), len(answered(capsys, "project", "history", yard))
    told(capsys, "opening", "choose", yard, "1", "unit", "EDGE", "--fit")
    (outcome,) = answered(capsys, "opening", "fit", yard, "--mark", "1")["openings"]
    assert "EDGE" in {part["part"] for point in outcome["lock_points"] for part in point["parts"]}
    history = answered(capsys, "project", "history", yard)
    assert len(history) == steps + 1
    assert history[-1]["verb"] == "choose-part"
    assert history[-1]["summary"] == "Choose EDGE as unit of 1; fit 1 opening"
    told(capsys, "project", "undo", yard)
    assert rows(yard) == before


def test_successors(yard, capsys):
    assert answered(capsys, "parts", "successors", yard) == []
    assert "0 openings use a superseded part" in told(capsys, "parts", "successors", yard)
    cam = catalogue().get("CAM")
    with open_project(yard) as project:
        more_parts(project, replace(cam, superseded_by="CAM-2"), replace(cam, number="CAM-2", list_price=11.0))
    found = answered(capsys, "parts", "successors", yard)
    assert [(each["mark"], each["gone"], each["new"], each["why"]) for each in found] == [
        (mark, ["cam CAM"], ["cam CAM-2"], None) for mark in "123"
    ]
    assert "3 openings use a superseded part; at 0 of them the successor does not fit." in told(
        capsys, "parts", "successors", yard
    )


def test_fewest_kinds(yard, capsys):
    edge, unit = catalogue().get("EDGE"), catalogue().get("UNIT")
    with open_project(yard) as project:
        more_parts(project, replace(unit, number="U-2", list_price=150.0), replace(edge, list_price=160.0))
    told(capsys, "opening", "choose", yard, "2", "unit", "UNIT")
    told(capsys, "opening", "fit", yard)
    before = rows(yard)
    answer = answered(capsys, "parts", "fewest", yard)
    # 1 and 3 take what 2 must have: 50 more each, one part fewer.
    changed = [each["mark"] for each in answer["choices"]]
    assert (changed, answer["proven"], answer["accepted"]) == (["1", "3"], True, False)
    assert Decimal(answer["cost_after"]) - Decimal(answer["cost_before"]) == 100
    assert answer["currency"] == "USD"
    assert len(answer["before"]) - len(answer["after"]) == 1
    assert answered(capsys, "parts", "fewest", yard, "--price", "99")["choices"] == []
    shown = told(capsys, "parts", "fewest", yard, "--price", "101", "--building", "Main")
    assert "proven best" in shown
    assert "2 openings change" in shown
    assert "Nothing is changed yet" in shown
    assert rows(yard) == before
    refused(capsys, "parts", "fewest", yard, "--accept", "--shown", "0123456789abcdef")
    accepted = answered(capsys, "parts", "fewest", yard, "--accept", "--shown", answer["shown"])
    assert (accepted["accepted"], accepted["choices"]) == (True, answer["choices"])
    points = [point for each in answered(capsys, "opening", "fit", yard)["openings"] for point in each["lock_points"]]
    assert {part["part"] for point in points for part in point["parts"] if part["role"] == "unit"} == {"UNIT"}


def test_why(yard, capsys):
    whole = answered(capsys, "findings", "why", yard, "2")
    assert [each["about"] for each in whole][:2] == ["cylinder", "cam"]
    assert {"place", "holes", "stair-re-entry"} <= {each["about"] for each in whole}
    for each in whole:
        assert set(each) == {"about", "lock_point", "headline", "reasons"}
        assert all(set(reason) == {"text", "under"} for reason in each["reasons"])
        assert answered(capsys, "findings", "why", yard, "2", each["about"]) == [each]
    shown = told(capsys, "findings", "why", yard, "2", "unit")
    assert shown.startswith("unit: UNIT ")
    assert "  Rules that it had to pass" in shown


def test_missing(yard, capsys, tmp_path):
    assert told(capsys, "survey", "missing", yard) == "Nothing is missing.\n"
    told(capsys, "survey", "edit", yard, "1", "leaf", "thickness_mm", "")
    told(capsys, "opening", "fit", yard)
    answer = answered(capsys, "survey", "missing", yard, "-o", str(tmp_path / "out"))
    assert answer["facts"] == [
        {"fact": "leaf.thickness_mm", "label": "leaf: Leaf thickness", "unblocked_marks": ["1"], "needing_marks": ["1"]}
    ]
    assert len(answer["files"]) == 2
    assert "leaf: Leaf thickness: unblocks 1, needed by 1: 1" in told(capsys, "survey", "missing", yard)
    assert "Wrote " in told(capsys, "survey", "missing", yard, "-o", str(tmp_path / "out"), "--paper", "a4")


def test_terms_and_cost(yard, capsys):
    answer = answered(
        capsys, "parts", "terms", yard, "--currency", "usd", "--labour", "80", "--learning", "1",
        "--discount", "North=0.1", "--rate", "eur=1.08", "--hours", "clean-up=0.25",
    )  # fmt: skip
    assert answer == {
        "currency": "USD", "discounts": {"North": "0.1"}, "rates": {"EUR": "1.08"}, "labour_per_hour": "80",
        "hours": {"clean-up": "0.25"}, "learning_rate": "1",
    }  # fmt: skip
    assert "labour an hour 80" in told(capsys, "parts", "terms", yard, "--rate", "eur=", "--hours", "clean-up=")
    assert answered(capsys, "parts", "terms", yard)["rates"] == {}
    # 337.4 for parts and 1.30 h at 80: see tests/operations/test_cost_terms.
    for by, keys in (("building", ["Main"]), ("set", ["no hardware set"]), ("opening", ["1", "2", "3"])):
        found = answered(capsys, "parts", "cost", yard, "--by", by)
        assert [row["key"] for row in found["lines"]] == keys
        assert (found["whole"]["total"], found["whole"]["unknown"]) == ("1324.20", [])
    with open_project(yard) as project:
        assert f"{totals(project_view(project), 'opening')['1'].total:f}" == found["lines"][0]["total"]
    told(capsys, "parts", "terms", yard, "--labour", "")
    shown = told(capsys, "parts", "cost", yard)
    assert "not counted: unknown: needs labour price per hour (labour)" in shown
    assert "1,012.20" in shown or "1012.20" in shown
    assert "without a fit" not in shown
    told(capsys, "survey", "edit", yard, "2", "leaf", "thickness_mm", "")
    told(capsys, "opening", "fit", yard)
    # What cannot be priced is said: the sum alone would pass for the whole project's.
    assert "not counted: 1 without a fit: 2" in told(capsys, "parts", "cost", yard)
    assert answered(capsys, "parts", "cost", yard)["without_fit"] == ["2"]


def test_rules(capsys):
    found = answered(capsys, "findings", "rules")
    assert [each["id"] for each in found] == [rule.id for rule in RULEBOOK]
    assert all(
        set(each) == {"id", "title", "discipline", "severity", "basis", "limits", "cure"} for each in found
    )  # fmt: skip
    (one,) = answered(capsys, "findings", "rules", "clear-width")
    assert one["limits"][0] == {
        "name": "clear_mm", "value": 812.8, "unit": "mm", "low": 0.0, "high": 2000.0, "text": "Clear width.",
        "source": "ADA 2010, 404.2.3",
    }  # fmt: skip
    assert len(told(capsys, "findings", "rules").splitlines()) == len(RULEBOOK)
    for rule in RULEBOOK:
        assert told(capsys, "findings", "rules", rule.id) == page_of(rule) + "\n"


def test_packets_that_went_out(yard, capsys, tmp_path):
    packets = ("release", "print", yard, "packets", "--to", str(tmp_path))
    told(capsys, *packets, "--mark", "1", "--mark", "2", "--issue", "--who", "ann")
    assert sorted(path.name for path in (tmp_path / "packets").iterdir()) == ["1.pdf", "2.pdf"]
    assert "packet-out-of-date" not in {f["rule"] for f in answered(capsys, "findings", "check", yard)["findings"]}
    told(capsys, "survey", "edit", yard, "1", "opening", "operations_per_day", "29")
    told(capsys, "opening", "fit", yard)
    found = [f for f in answered(capsys, "findings", "check", yard)["findings"] if f["rule"] == "packet-out-of-date"]
    assert [f["mark"] for f in found] == ["1"]
    assert "(ann)" in found[0]["message"]
    told(capsys, *packets, "--mark", "1", "--issue")
    assert "packet-out-of-date" not in {f["rule"] for f in answered(capsys, "findings", "check", yard)["findings"]}
    # Waived findings are printed as such.
    told(capsys, "findings", "waive", yard, "stair-re-entry", "2", "--reason", "alarm", "--person", "Jo")
    told(capsys, *packets, "--mark", "2")
    text = " ".join(page.extract_text() for page in PdfReader(tmp_path / "packets" / "2.pdf").pages)
    assert "(waived by Jo" in " ".join(text.split())
    assert "packet-out-of-date" not in {f["rule"] for f in answered(capsys, "findings", "check", yard)["findings"]}


def test_settings_take_every_preference(yard, capsys):
    for prefer in ("stock", "preferred", "holes", "cost"):
        told(capsys, "project", "settings", yard, "--prefer", prefer)
