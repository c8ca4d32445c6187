"""`hwsched findings check`: what passes, what is found, and what nobody can judge."""

import pytest
from openpyxl import load_workbook

from hwsched.cli.command import run
from tests.cli.answers import answer, result

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
    assert found["counts"]["note_count"] == 12
    assert spoken(capsys, yard, "--fail-on", "error", status=0).out.splitlines()[-1] == (
        "3 openings: 0 error, 1 warning, 12 note"
    )


def test_errors_that_a_changed_price_silences_are_no_consent(sample_file, tmp_path, capsys):
    project = str(sample_file)
    before = check(capsys, project, "--fail-on", "error", status=FOUND)
    assert before["counts"]["error_count"] == 22
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
