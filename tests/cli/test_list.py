"""`hwsched ROOM list`: every list, in every format, without a write."""

import csv
import io
import json
import sqlite3
from contextlib import closing

import pytest
from jsonschema import Draft202012Validator

from hwsched.cli.answering import schema_of
from hwsched.cli.command import run
from hwsched.cli.listing import Listed
from hwsched.operations.lists import LISTS

KINDS = [pytest.param(each, id=f"{each.room}-{each.name}") for each in LISTS]


def told(capsys, *words):
    assert run([*words, "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    Draft202012Validator(schema_of("hwsched list", Listed)).validate(answer)
    return answer["result"]


@pytest.mark.parametrize("kind", KINDS)
def test_every_list_is_of_its_shape_and_leaves_the_project_as_it_was(kind, sample_file, capsys):
    before = sample_file.read_bytes()
    result = told(capsys, kind.room, "list", str(sample_file), kind.name)
    assert result["row_count"] == len(result["rows"])
    names = [list(row) for row in result["rows"]]
    assert all(each == names[0] for each in names)
    if names:
        assert kind.key in names[0]
        assert set(kind.first) <= set(names[0])
        assert not any(name.startswith("_") or name in ("id", "opening_id", "version") for name in names[0])
    assert sample_file.read_bytes() == before


def test_openings_are_those_of_the_survey_with_their_lengths_in_mm(sample_file, capsys):
    rows = told(capsys, "survey", "list", str(sample_file), "openings")["rows"]
    assert len(rows) == 171
    leaves = told(capsys, "survey", "list", str(sample_file), "leaves", "M004")["rows"]
    # Survey row of M004: leaf 3'-0" by 7'-0" = 914.4 by 2133.6 mm, 1 3/4 in = 44.45 mm thick.
    assert [(leaf["width_mm"], leaf["height_mm"]) for leaf in leaves] == [(914.4, 2133.6)]
    assert leaves[0]["thickness_mm"] == pytest.approx(44.45)
    assert {type(row["stair"]) for row in rows} <= {bool, type(None)}


def test_what_is_worked_out_agrees_with_what_is_shown(sample_file, capsys):
    assert run(["opening", "show", str(sample_file), "M004", "--json"]) == 0
    shown = json.loads(capsys.readouterr().out)["result"]["openings"][0]["lock_points"][0]
    parts = told(capsys, "opening", "list", str(sample_file), "parts", "M004")["rows"]
    assert [(p["role"], p["part"], p["quantity"]) for p in parts] == [
        (p["role"], p["part"], p["quantity"]) for p in shown["parts"]
    ]
    holes = told(capsys, "opening", "list", str(sample_file), "holes", "M004")["rows"]
    assert len(holes) == len(shown["holes"]) + len(shown["screws"])


def test_pick_lines_add_up_to_the_parts_of_the_openings_that_may_go_out(sample_file, capsys):
    lines = told(capsys, "release", "list", str(sample_file), "pick-lines")["rows"]
    fits = told(capsys, "opening", "list", str(sample_file), "fits")["rows"]
    right = {row["mark"] for row in fits if row["status"] == "fits" and row["error_count"] == 0}
    assert run(["release", "gate", str(sample_file), "--json"]) in (0, 1)
    gate = json.loads(capsys.readouterr().out)["result"]
    ready = {each["mark"] for each in gate if each["free"]}
    # The gate holds back besides what lasts too short, and what is not known of a door whose parts all fit.
    assert ready < right
    assert {mark for line in lines for mark in line["marks"]} == ready
    parts = told(capsys, "opening", "list", str(sample_file), "parts")["rows"]
    # At GLASS-G the thickness of both walls is not known, at MILL-1 the battery is short: nothing laid goes out yet.
    # Bare supplies of single openings have cabinets.
    laid = {"ROP-CB1": sum(part["role"] == "supply" and part["mark"] in ready for part in parts)}
    assert not {name for line in lines for name in line["supplies"]}
    for number in {line["part"] for line in lines}:
        picked = sum(line["quantity"] for line in lines if line["part"] == number)
        own = sum(p["quantity"] for p in parts if p["part"] == number and p["mark"] in ready)
        assert picked == pytest.approx(own + laid.get(number, 0)), number


def test_formats_hold_the_same_rows(sample_file, capsys, tmp_path):
    words = ["survey", "list", str(sample_file), "openings"]
    rows = told(capsys, *words)["rows"]
    for form in ("jsonl", "json", "csv"):
        assert run([*words, "-o", str(tmp_path / f"o.{form}")]) == 0
    assert capsys.readouterr().out == ""
    assert json.loads((tmp_path / "o.json").read_text(encoding="utf-8")) == rows
    assert [json.loads(line) for line in (tmp_path / "o.jsonl").read_text(encoding="utf-8").splitlines()] == rows
    cells = list(csv.DictReader(io.StringIO((tmp_path / "o.csv").read_text(encoding="utf-8"))))
    assert [row["mark"] for row in cells] == [row["mark"] for row in rows]
    assert [row["stair"] for row in cells] == [{True: "yes", False: "no", None: ""}[row["stair"]] for row in rows]
    assert run(words) == 0
    table = capsys.readouterr().out.splitlines()
    assert table[0].split()[0] == "mark"
    assert len(table) == len(rows) + 1
    assert run([*words, "M004", "--format", "record"]) == 0
    assert "mark" in capsys.readouterr().out


def test_a_name_that_is_not_there_and_an_ending_that_says_nothing_are_refused(sample_file, capsys, tmp_path):
    assert run(["survey", "list", str(sample_file), "openings", "M004x", "--json"]) == 3
    answer = json.loads(capsys.readouterr().out)
    assert (answer["ok"], answer["result"]) == (False, None)
    assert "M004x" in answer["problems"][0]["message"]
    assert run(["survey", "list", str(sample_file), "openings", "-o", str(tmp_path / "o.doc")]) == 3
    assert not (tmp_path / "o.doc").exists()


def test_the_project_may_be_said_elsewhere(sample_file, capsys, monkeypatch):
    rows = told(capsys, "survey", "list", "-p", str(sample_file), "buildings")["rows"]
    monkeypatch.setenv("HWSCHED_PROJECT", str(sample_file))
    assert told(capsys, "survey", "list", "buildings")["rows"] == rows
    # What is said on the line counts before what the environment says.
    assert run(["survey", "list", str(sample_file.with_name("none.hwsched")), "buildings"]) == 4


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE opening SET stair = 'maybe' WHERE mark = 'M004'",
        "UPDATE opening SET rise_m = 9e999 WHERE mark = 'M004'",
        "UPDATE opening SET extra = '{' WHERE mark = 'M004'",
        "UPDATE opening SET notes = x'00ff' WHERE mark = 'M004'",
    ],
)
def test_a_value_of_another_kind_is_named_and_not_listed(statement, sample_file, capsys):
    with closing(sqlite3.connect(sample_file)) as database, database:
        database.execute(statement)
    assert run(["survey", "list", str(sample_file), "openings", "--json"]) == 4
    (problem, *_) = json.loads(capsys.readouterr().out)["problems"]
    assert "is damaged: in table opening, row " in problem["message"]
    # A list that reads other tables has nothing to do with it.
    assert run(["parts", "list", str(sample_file), "parts", "--json"]) == 0


def test_people_read_three_places_and_files_hold_them_all(sample_file, capsys):
    whole = told(capsys, "opening", "list", str(sample_file), "places", "B/1")["rows"][0]["x_mm"]
    assert whole != round(whole, 3)
    for form in ("table", "record"):
        assert run(["opening", "list", str(sample_file), "places", "B/1", "--format", form]) == 0
        words = capsys.readouterr().out.split()
        assert f"{round(whole, 3):.10g}" in words
        assert f"{whole:.10g}" not in words
    assert run(["opening", "list", str(sample_file), "places", "B/1", "--format", "csv"]) == 0
    assert f"{whole:.10g}" in capsys.readouterr().out


@pytest.mark.parametrize("verb", ["plan", "layout"])
def test_a_building_that_is_not_there_is_told_with_those_that_are(verb, sample_file, capsys):
    assert run(["power", verb, str(sample_file), "Mil House"]) == 3
    assert "there is no building 'Mil House'; nearest: Mill House" in capsys.readouterr().err
