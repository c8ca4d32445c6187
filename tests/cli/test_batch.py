"""`hwsched project batch`: many verbs as one step, whole or not at all."""

import io
import json
import sys

import pytest

from hwsched.cli import ENTRIES
from hwsched.cli.command import run
from hwsched.model.journal.history import history
from hwsched.model.project import open_project


@pytest.fixture
def batch(sample_file, tmp_path, capsys):
    def do(lines, *more, name="b.jsonl", status=0):
        path = tmp_path / name
        path.write_text(lines if isinstance(lines, str) else "".join(json.dumps(each) + "\n" for each in lines))
        capsys.readouterr()
        assert run(["project", "batch", str(sample_file), str(path), *more, "--json"]) == status
        return json.loads(capsys.readouterr().out)

    return do


def steps(path):
    with open_project(path) as project, project.reading() as connection:
        return history(connection)


def thickness(path, mark, capsys):
    capsys.readouterr()
    assert run(["survey", "list", str(path), "leaves", mark, "--json"]) == 0
    return [row["thickness_mm"] for row in json.loads(capsys.readouterr().out)["result"]["rows"]]


def edit(mark, value, **more):
    return {"verb": "survey edit", "mark": mark, "where": "leaf", "fact": "thickness_mm", "value": value, **more}


def test_many_verbs_are_one_step_with_one_undo(batch, sample_file, capsys):
    before = len(steps(sample_file))
    told = batch([
        edit("M004", "45 mm"),
        {"verb": "survey edit", "arguments": ["M116", "leaf", "thickness_mm", "46 mm"]},
        {"verb": "findings waive", "rule": "known-before-drill", "mark": "0099", "person": "Doe", "reason": "seen"},
        {"verb": "opening fit", "mark": ["M004", "M116"]},
    ])  # fmt: skip
    assert told["ok"]
    assert told["result"]["command_count"] == 4
    assert [each["line"] for each in told["result"]["commands"]] == [1, 2, 3, 4]
    made = steps(sample_file)
    assert len(made) == before + 1
    assert told["change_set"] == made[-1].number
    assert (thickness(sample_file, "M004", capsys), thickness(sample_file, "M116", capsys)) == ([45.0], [46.0])
    assert run(["project", "undo", str(sample_file)]) == 0
    # Survey row of M004: 1 3/4 in.
    assert thickness(sample_file, "M004", capsys) == [pytest.approx(44.45)]


def test_one_refused_line_leaves_all_undone_and_is_named(batch, sample_file, capsys):
    before = len(steps(sample_file))
    told = batch([edit("M004", "45 mm"), edit("M116", "3 lb")], status=3)
    assert not told["ok"]
    assert (told["problems"][0]["file"], told["problems"][0]["row"]) == ("b.jsonl", 2)
    assert "3 lb" in told["problems"][0]["message"]
    assert len(steps(sample_file)) == before
    assert thickness(sample_file, "M004", capsys) == [pytest.approx(44.45)]


def test_a_dry_run_tells_the_same_and_keeps_nothing(batch, sample_file):
    before = steps(sample_file)
    lines = [edit("M004", "45 mm"), {"verb": "opening fit", "mark": ["M004"]}]
    tried = batch(lines, "--dry-run")
    assert (tried["change_set"], steps(sample_file)) == (None, before)
    done = batch(lines)
    assert done["result"]["commands"] == tried["result"]["commands"]


def test_rows_of_a_csv_are_arguments_of_one_verb(batch, sample_file, capsys):
    table = "mark,where,fact,value\r\nM004,leaf,thickness_mm,45 mm\r\n\r\nM116,leaf,thickness_mm,46 mm\r\n"
    assert batch(table, "--verb", "survey edit", name="b.csv")["result"]["command_count"] == 2
    assert thickness(sample_file, "M116", capsys) == [46.0]
    told = batch(
        "mark,where,fact,value,depth\nM004,leaf,thickness_mm,45 mm,1\n", "--verb", "survey edit", name="c.csv", status=3
    )
    assert told["problems"][0]["row"] == 2
    assert "depth" in told["problems"][0]["message"]


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("not json", "no JSON"),
        ("[1]", "no JSON object"),
        ('{"verb": "survey eat"}', "no verb 'survey eat'"),
        ('{"verb": "project undo"}', "cannot be a part"),
        ('{"verb": "project batch"}', "cannot be a part"),
        ('{"verb": "release print", "document": "packets"}', "cannot be a part"),
        ('{"verb": "survey edit", "mark": "M004"}', "required"),
        ('{"verb": "survey edit", "mark": "M004", "colour": "red"}', "no argument colour"),
        ('{"verb": "survey edit", "arguments": ["--help"]}', "help is no command"),
    ],
)
def test_what_is_no_command_is_named_before_anything_is_done(line, said, batch, sample_file):
    before = steps(sample_file)
    told = batch(json.dumps(edit("M004", "45 mm")) + "\n" + line + "\n", status=3)
    assert told["problems"][0]["row"] == 2
    assert said in told["problems"][0]["message"]
    assert steps(sample_file) == before


def test_standard_input_serves_too(sample_file, capsys, monkeypatch):
    lines = json.dumps(edit("M004", "45 mm")) + "\n"
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(lines.encode())))
    assert run(["project", "batch", str(sample_file), "-"]) == 0
    assert thickness(sample_file, "M004", capsys) == [45.0]


def test_verbs_that_only_write_into_a_project_can_be_parts():
    assert {entry.spelling for entry in ENTRIES if entry.load().in_batch} >= {
        "survey edit", "survey import", "opening fit", "opening choose", "findings waive", "power add", "parts set",
    }  # fmt: skip
    assert not any(
        entry.load().in_batch for entry in ENTRIES if entry.name in ("undo", "redo", "print", "batch", "new")
    )
