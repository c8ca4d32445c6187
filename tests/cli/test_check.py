"""`hwsched findings check`: what passes, what is found, and what nobody can judge."""

import pytest
from openpyxl import load_workbook

from hwsched.cli.command import run
from hwsched.model.project import open_project
from hwsched.model.tables import SUPPLY_TABLE
from tests.cli.answers import answer, result
from tests.operations.powered import power

FOUND, REFUSED, NOT_JUDGED = 1, 3, 5
UNJUDGED = ("facts_changed", "earlier_version", "not_worked_out", "to_measure", "does_not_fit")


@pytest.fixture
def yard(tmp_path):
    """1 and 3 usual, 2 to a stair; its path."""
    from tests.operations.exact import small

    small(tmp_path / "y.hwsched", m2={"stair": True}).close()
    return str(tmp_path / "y.hwsched")


def check(capsys, project, *words, status=0):
    return result(capsys, "findings", "check", project, *words, status=status)


def not_judged(found):
    """Return the reasons for which openings are not judged, with how many; the whole is their sum."""
    counts = found["counts"]
    told = {name: counts[f"{name}_count"] for name in UNJUDGED if counts[f"{name}_count"]}
    assert counts["not_judged_count"] == sum(told.values()) == len(found["not_judged"])
    return told


def spoken(capsys, *words, status):
    capsys.readouterr()
    assert run(["findings", "check", *words]) == status
    return capsys.readouterr()


def with_another_price(folder, project, capsys, number):
    """Take in the project's own catalogue with one price that is otherwise."""
    path = folder / "catalogue.xlsx"
    assert run(["parts", "export", project, "-o", str(path)]) == 0
    book = load_workbook(path)
    for sheet in book:
        prices = [cell.column for cell in sheet[1] if cell.value == "List price"]
        for row in sheet.iter_rows(min_row=2):
            if prices and row[0].value == number:
                sheet.cell(row[0].row, prices[0], 987.65)
    book.save(path)
    assert result(capsys, "parts", "import", project, str(path))["counts"]["changed_count"] == 1


def test_what_is_fitted_and_clean_passes(yard, capsys):
    found = check(capsys, yard, "--fail-on", "error")
    assert not_judged(found) == {}
    assert found["counts"]["opening_count"] == 3
    assert found["counts"]["note_count"] == 15
    assert spoken(capsys, yard, "--fail-on", "error", status=0).out.splitlines()[-1] == (
        "3 openings: 0 error, 1 warning, 15 note"
    )


def test_errors_that_a_changed_price_silences_are_no_consent(sample_file, tmp_path, capsys):
    project = str(sample_file)
    before = check(capsys, project, "--fail-on", "error", status=FOUND)
    assert before["counts"]["error_count"] == 33
    parts = [
        part["part"]
        for each in result(capsys, "opening", "show", project)["openings"]
        for point in each["lock_points"]
        for part in point["parts"]
        if part["role"] == "unit"
    ]
    with_another_price(tmp_path, project, capsys, max(parts, key=parts.count))
    found = check(capsys, project, "--mark", "M004", "--fail-on", "error", status=NOT_JUDGED)
    assert not_judged(found) == {"facts_changed": 1}
    every = check(capsys, project)
    assert every["counts"]["facts_changed_count"] > 100
    assert run(["findings", "check", project, "--fail-on", "error"]) in (FOUND, NOT_JUDGED)


@pytest.mark.parametrize("severity", ["error", "warning", "note"])
def test_a_changed_limit_leaves_nothing_judged(yard, capsys, severity):
    assert run(["project", "settings", yard, "--limit", "trim-clear.clearance_mm=11"]) == 0
    status = NOT_JUDGED if severity == "error" else FOUND
    found = check(capsys, yard, "--fail-on", severity, status=status)
    assert not_judged(found) == {"facts_changed": 3}
    told = spoken(capsys, yard, "--fail-on", severity, status=status)
    assert "3 openings do not pass: changed since worked out: 1, 2, 3" in told.err
    assert told.out.splitlines()[-1].endswith("; not judged: 3 changed since worked out")


def test_what_was_never_fitted_does_not_pass(tmp_path, capsys):
    project, survey = str(tmp_path / "p.hwsched"), tmp_path / "s.csv"
    survey.write_text("Mark,Hand,Room\n1,LH,Hall\n2,RH,Store\n")
    assert run(["project", "new", project, "--bare-unit", "in"]) == 0
    assert run(["survey", "import", project, str(survey)]) == 0
    told = answer(capsys, "findings", "check", project, "--fail-on", "error", status=NOT_JUDGED)
    assert (told["ok"], not_judged(told["result"])) == (True, {"not_worked_out": 2})
    assert told["result"]["not_judged"] == [{"mark": mark, "why": "not-worked-out"} for mark in "12"]


def test_what_does_not_fit_is_not_passed_when_the_finding_is_waived(sample_file, capsys):
    waive = ["findings", "waive", str(sample_file), "fit-complete", "B/4", "--reason", "another shop", "--person", "Jo"]
    assert run(waive) == 0
    found = check(capsys, str(sample_file), "--mark", "B/4", "--fail-on", "error", status=NOT_JUDGED)
    assert not_judged(found) == {"does_not_fit": 1}
    assert found["counts"]["waived_count"] == 1


def test_what_is_to_measure_is_counted_as_such(yard, capsys):
    assert run(["survey", "edit", yard, "1", "leaf", "thickness_mm", ""]) == 0
    found = check(capsys, yard, "--fit", "--mark", "1", "--fail-on", "error", status=NOT_JUDGED)
    assert not_judged(found) == {"to_measure": 1}
    assert (
        "1 opening does not pass: to measure: 1"
        in spoken(capsys, yard, "--mark", "1", "--fail-on", "error", status=NOT_JUDGED).err
    )


def test_one_call_works_out_what_is_stale_and_checks(yard, capsys):
    fresh = check(capsys, yard)
    assert run(["project", "settings", yard, "--limit", "trim-clear.clearance_mm=4.8"]) == 0
    stale = answer(capsys, "findings", "check", yard, "--fail-on", "error", status=NOT_JUDGED)
    assert (stale["change_set"], not_judged(stale["result"])) == (None, {"facts_changed": 3})
    told = answer(capsys, "findings", "check", yard, "--fit", "--fail-on", "error")
    assert told["change_set"] is not None
    # 4.8 mm is 3/16 in, the rule's own limit, but for 0.04 mm: everything fits as before.
    assert told["result"] == fresh
    assert answer(capsys, "findings", "check", yard, "--fit")["change_set"] is None
    assert check(capsys, yard) == fresh


def test_a_battery_limit_below_nothing_is_refused_and_its_bounds_are_named(yard, capsys):
    before = check(capsys, yard)
    told = answer(capsys, "project", "settings", yard, "--limit", "battery-life.days=-5", status=REFUSED)
    assert "accepted: 1 to 3650 days" in told["problems"][0]["message"]
    assert check(capsys, yard) == before
    asked = answer(capsys, "opening", "what-if", yard, "--limit", "battery-life.days=-5", status=REFUSED)
    assert "accepted: 1 to 3650 days" in asked["problems"][0]["message"]


def test_a_mistyped_rule_is_answered_with_the_nearest(yard, capsys):
    told = answer(capsys, "findings", "rules", "batery-life", status=2)
    assert told["problems"][0]["message"].endswith("nearest: battery-life")
    limit = answer(capsys, "project", "settings", yard, "--limit", "battery-life.day=200", status=REFUSED)
    assert "nearest: battery-life.days" in limit["problems"][0]["message"]


def test_a_mark_in_other_letters_is_found_and_a_mistyped_one_suggested(sample_file, capsys):
    (shown,) = result(capsys, "opening", "show", str(sample_file), "m004")["openings"]
    assert shown["mark"] == "M004"
    assert result(capsys, "survey", "edit", str(sample_file), "m004", "opening", "room_to", "Hall")["marks"] == ["M004"]
    told = answer(capsys, "findings", "why", str(sample_file), "GATE1", status=REFUSED)
    assert told["problems"][0]["message"] == "no opening has the mark GATE1; nearest: GATE 1"


def test_of_two_marks_alike_but_for_their_letters_neither_is_guessed(yard, capsys):
    for mark in ("gate a", "Gate A"):
        assert run(["survey", "add", yard, mark]) == 0
    assert result(capsys, "opening", "show", yard, "gate a")["openings"][0]["mark"] == "gate a"
    assert answer(capsys, "opening", "show", yard, "GATE A", status=REFUSED)["result"] is None


def test_where_nothing_is_checked_nothing_passes(yard, tmp_path, capsys):
    assert check(capsys, yard, "--where", "level = 99")["findings"] == []
    told = answer(capsys, "findings", "check", yard, "--where", "level = 99", "--fail-on", "error", status=NOT_JUDGED)
    assert [each["message"] for each in told["problems"]] == [
        "no opening was checked: none is there, or none is as asked; that passes nothing"
    ]
    empty = str(tmp_path / "empty.hwsched")
    assert run(["project", "new", empty]) == 0
    assert "no opening was checked" in spoken(capsys, empty, "--fail-on", "note", status=NOT_JUDGED).err


@pytest.fixture
def supplied(yard, capsys):
    """1 and 2 hang on PS1/C1, 3 is fed by nothing; all is fitted. Its path."""
    for words in (
        ("power", "add", yard, "supply", "PS1", "part=PSU"),
        ("power", "add", yard, "circuit", "PS1/C1", "wire=WIRE"),
        ("power", "connect", yard, "PS1/C1", "1", "2", "--length", "4"),
        ("opening", "fit", yard),
    ):
        assert run(list(words)) == 0, capsys.readouterr().err
    return yard


def supplies_not_judged(found):
    """Return per supply that is not judged the circuits, marks and needs of its reasons."""
    rows = {
        each["supply"]: [(why["circuit"], why["mark"], tuple(why["needs"])) for why in each["reasons"]]
        for each in found["supplies_not_judged"]
    }
    assert found["counts"]["supply_not_judged_count"] == len(rows)
    return rows


def test_a_supply_that_is_worked_out_passes(supplied, capsys):
    found = check(capsys, supplied, "--fail-on", "error")
    assert (supplies_not_judged(found), not_judged(found)) == ({}, {})
    assert found["counts"]["supply_count"] == 1


def test_an_unknown_length_leaves_the_supply_unjudged(supplied, capsys):
    assert run(["power", "connect", supplied, "-", "2"]) == 0
    # Neither measured nor to be reckoned from a plan.
    assert run(["power", "connect", supplied, "PS1/C1", "2"]) == 0, capsys.readouterr().err
    assert run(["opening", "fit", supplied]) == 0
    found = check(capsys, supplied, "--fail-on", "error", status=NOT_JUDGED)
    # What is missing is a warning only, so that no error stands for it.
    assert (found["counts"]["error_count"], not_judged(found)) == (0, {})
    assert supplies_not_judged(found) == {"PS1": [("C1", "2", ("run.length_m",))]}
    said = spoken(capsys, supplied, "--fail-on", "error", status=NOT_JUDGED)
    assert "supply PS1 does not pass, since it cannot be worked out: the length of the run from supply to 2" in said.err
    assert said.out.splitlines()[-1].endswith("; not judged: 1 supply that cannot be worked out")


@pytest.mark.parametrize("rule", ["circuit-known", "circuit-suits"])
def test_a_rule_that_is_off_lets_no_unknown_supply_pass(supplied, capsys, rule):
    assert run(["power", "add", supplied, "supply", "PS1", "part="]) == 0
    assert run(["project", "settings", supplied, "--rule-off", rule]) == 0
    assert run(["opening", "fit", supplied]) == 0
    found = check(capsys, supplied, "--fail-on", "error", status=NOT_JUDGED)
    assert supplies_not_judged(found) == {"PS1": [(None, None, ("supply.part",))]}


def test_a_part_that_is_gone_is_no_consent_when_the_finding_is_waived(supplied, capsys):
    with open_project(supplied) as project:
        (supply,) = power(project).supplies
        # As an earlier catalogue left it: a number that is typed now must be one of the catalogue.
        with project.change("edit", "Another catalogue", "ann") as change:
            change.update(SUPPLY_TABLE, [(supply.id, {"part": "GONE"})])
    assert run(["opening", "fit", supplied]) == 0
    assert supplies_not_judged(check(capsys, supplied, "--fail-on", "error", status=FOUND)) == {
        "PS1": [(None, None, ())]
    }
    waive = [
        "findings",
        "waive",
        supplied,
        "circuit-suits",
        "--scope",
        "project",
        "--reason",
        "to come",
        "--person",
        "Jo",
    ]
    assert run(waive) == 0, capsys.readouterr().err
    found = check(capsys, supplied, "--fail-on", "error", status=NOT_JUDGED)
    assert found["supplies_not_judged"][0]["reasons"][0]["message"] == "GONE of PS1 is not in the catalogue"


def test_with_a_scope_the_supplies_that_feed_it_count(supplied, capsys):
    assert run(["survey", "edit", supplied, "2", "leaf", "thickness_mm", ""]) == 0
    # 1 is judged, but 2 on the same circuit draws nobody knows what; 3 hangs on nothing.
    of_one = check(capsys, supplied, "--mark", "1", "--fail-on", "error", status=NOT_JUDGED)
    assert not_judged(of_one) == {}
    assert supplies_not_judged(of_one) == {"PS1": [("C1", "2", ("opening.fit",))]}
    assert supplies_not_judged(check(capsys, supplied, "--mark", "3", "--fail-on", "error")) == {}
    assert supplies_not_judged(check(capsys, supplied, "--where", "mark = 3", "--fail-on", "error")) == {}
    whole = check(capsys, supplied, "--building", "Main", "--fail-on", "error", status=NOT_JUDGED)
    assert (not_judged(whole), list(supplies_not_judged(whole))) == ({"facts_changed": 1}, ["PS1"])


def test_a_supply_that_feeds_no_opening_counts_in_the_whole_project(supplied, capsys):
    for words in (
        ("power", "add", supplied, "supply", "PS2", "part=PSU"),
        ("power", "add", supplied, "circuit", "PS2/C1", "wire=WIRE"),
        ("power", "add", supplied, "run", "PS2/C1", "from_node=supply", "to_node=J1"),
    ):
        assert run(list(words)) == 0, capsys.readouterr().err
    assert list(supplies_not_judged(check(capsys, supplied, "--fail-on", "error", status=NOT_JUDGED))) == ["PS2"]
    assert supplies_not_judged(check(capsys, supplied, "--building", "Main", "--fail-on", "error")) == {}


def test_an_error_of_the_supply_itself_is_found(supplied, capsys):
    # 24 h without a standby battery: an error that concerns no opening in particular.
    hours = ["power", "add", supplied, "supply", "PS1", "standby_hours=24", "temperature_c=25"]
    assert run(hours) == 0, capsys.readouterr().err
    found = check(capsys, supplied, "--fail-on", "error", status=FOUND)
    assert [(each["supply"], each["rule"]) for each in found["supply_findings"] if each["severity"] == "error"] == [
        ("PS1", "standby-capacity")
    ]
    assert (found["counts"]["supply_error_count"], found["counts"]["error_count"]) == (1, 0)
    assert "supply PS1: error: standby-capacity:" in spoken(capsys, supplied, "--fail-on", "error", status=FOUND).out
    assert run(["findings", "check", supplied, "--mark", "3", "--fail-on", "error"]) == 0
    waive = [
        "findings",
        "waive",
        supplied,
        "standby-capacity",
        "--scope",
        "project",
        "--reason",
        "ups",
        "--person",
        "Jo",
    ]
    assert run(waive) == 0, capsys.readouterr().err
    waived = check(capsys, supplied, "--fail-on", "error")
    assert (waived["counts"]["supply_error_count"], waived["counts"]["supply_waived_count"]) == (0, 1)


def test_a_waiver_of_a_supply_holds_there_until_what_it_was_given_for_changes(supplied, capsys):
    hours = ["power", "add", supplied, "supply", "PS1", "standby_hours=24", "temperature_c=25"]
    assert run(hours) == 0, capsys.readouterr().err
    check(capsys, supplied, "--fail-on", "error", status=FOUND)
    words = ["findings", "waive", supplied, "standby-capacity", "--supply", "PS1", "--reason", "ups", "--person", "Jo"]
    assert run(words) == 0, capsys.readouterr().err
    waived = check(capsys, supplied, "--fail-on", "error")
    assert (waived["counts"]["supply_error_count"], waived["counts"]["supply_waived_count"]) == (0, 1)
    shown = result(capsys, "power", "show", supplied)
    assert [each["waived"] for each in shown["findings"] if each["rule"] == "standby-capacity"] == [True]
    (listed,) = result(capsys, "findings", "waivers", supplied)
    assert (listed["scope"], listed["about"], listed["mark"]) == ("supply", "PS1", None)
    # Another number of hours is another decision.
    assert run([*hours[:-2], "standby_hours=48"]) == 0, capsys.readouterr().err
    check(capsys, supplied, "--fail-on", "error", status=FOUND)
    assert run([*hours[:-2], "standby_hours=24"]) == 0, capsys.readouterr().err
    check(capsys, supplied, "--fail-on", "error")
    assert run(["findings", "waive", supplied, "standby-capacity", "--supply", "PS1", "--back"]) == 0
    check(capsys, supplied, "--fail-on", "error", status=FOUND)
    # A word that a script left empty would accept all that a rule says, everywhere.
    for scope in (["--scope", "project"], ["--supply", "PS1"], ["1"]):
        empty = ["findings", "waive", supplied, "standby-capacity", *scope, "--about", "", "--reason", "ups"]
        assert run(empty) != 0
        assert "about: says nothing" in capsys.readouterr().err
    for name, word in (("PS9", "no supply PS9"), ("PS1", "no open finding of 'Suppression of coils'")):
        words = ["findings", "waive", supplied, "coil-suppression", "--supply", name, "--reason", "ups"]
        assert run(words) != 0
        assert word in capsys.readouterr().err
