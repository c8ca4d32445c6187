"""Rows of the lists of what leaves the office, counted by hand."""

from hwsched.operations.release.lists import pick_lines
from tests.operations.exact import id_of, small


def test_lines_of_the_pick_list_are_by_building_and_level(tmp_path):
    places = {"m1": {"level": "1"}, "m2": {"level": "1"}, "m3": {"building": None, "level": None}}
    with small(tmp_path / "y.hwsched", marks="123", **places) as yard:
        units = [row for row in pick_lines(yard, None) if row["part"] == "UNIT"]
        some = [row for row in pick_lines(yard, [id_of(yard, "2")]) if row["part"] == "CELL"]
    assert sorted((row["building"] or "", row["level"] or "", row["quantity"], row["marks"]) for row in units) == [
        ("", "", 1.0, ["3"]),
        ("Main", "1", 2.0, ["1", "2"]),
    ]
    # A place that nobody told is unknown, and no empty word; each takes six cells.
    assert {(row["building"], row["level"]) for row in units} == {("Main", "1"), (None, None)}
    assert [(row["building"], row["level"], row["quantity"], row["role"]) for row in some] == [
        ("Main", "1", 6.0, "battery")
    ]
