"""What is asked of a building once: said by command line, shown at its openings, listed and taken back."""

import json

from hwsched.cli.command import run
from hwsched.operations.lists import FROM_PLACE
from hwsched.survey import INHERITED


def told(capsys, *words):
    capsys.readouterr()
    assert run([*words, "--json"]) == 0
    return json.loads(capsys.readouterr().out)["result"]


def shown(capsys, sample_file, mark):
    (opening,) = told(capsys, "opening", "show", str(sample_file), mark)["openings"]
    return opening["facts"]


def test_the_list_names_the_facts_that_are_taken():
    assert FROM_PLACE == INHERITED


def test_a_building_is_asked_once_and_a_level_and_an_opening_may_say_otherwise(sample_file, capsys):
    edit = ["survey", "edit", str(sample_file), "M016"]
    assert told(capsys, *edit, "building", "occupant_load", "70")["marks"][:2] == ["M001", "M002"]
    assert run([*edit, "level", "occupant_load", "45"]) == 0
    assert run([*edit, "opening", "occupant_load", "9"]) == 0
    loads = {mark: shown(capsys, sample_file, mark)["occupant_load"] for mark in ("M016", "M017", "M116", "A-01")}
    assert loads == {"M016": 9, "M017": 45, "M116": 70, "A-01": 30}
    listed = {row["mark"]: row for row in told(capsys, "survey", "list", str(sample_file), "openings")["rows"]}
    assert {mark: listed[mark]["occupant_load"] for mark in loads} == loads
    assert listed["M016"]["sprinkler"] is True
    assert not [name for name in listed["M016"] if name.startswith("_")]
    places = {
        (row["building"], row["level"]): row
        for row in told(capsys, "survey", "list", str(sample_file), "buildings")["rows"]
    }
    assert places["Mill House", "Ground"]["occupant_load"] == 45
    assert places["Mill House", "1"]["occupant_load"] == 70
    assert places["Boat Store", "Quay"]["sprinkler"] is False


def test_what_holds_at_an_opening_is_shown_to_people_too(sample_file, capsys):
    assert run(["opening", "show", str(sample_file), "M001"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert "  Direction of egress: Towards the key side" in lines
    assert "  Occupancy group: B, business" in lines
    assert "  Edition of the code: 2021" in lines


def test_the_old_value_guards_an_edit_of_what_is_inherited(sample_file, capsys):
    edit = ["survey", "edit", str(sample_file), "M016", "opening", "occupancy_group"]
    assert run([*edit, "A", "--was", "S"]) == 3
    assert run([*edit, "A", "--was", "B, business"]) == 0
    assert shown(capsys, sample_file, "M016")["occupancy_group"] == "A"
    assert run(["survey", "edit", str(sample_file), "M016", "building", "hand", "LH"]) == 3
    assert "no such fact" in capsys.readouterr().err
