"""`hwsched survey import` over a stranger's list: what is asked, answered, kept as a plan, and reconciled."""

import json

import pytest

from hwsched.cli.command import run

LIST = "Q,Broad,Fire rating,Leaf material\nD-1,36,-,STL\nD-2,32,90 min,HM\nD-3,36,-,STL\nGrand total: 3,,,\n"
READ = (
    "--column", "Q=opening.mark", "--column", "Broad=leaf.width_mm", "--bare-unit", "in",
    "--word", "Leaf material:STL=hollow metal",
)  # fmt: skip


@pytest.fixture
def project(tmp_path, monkeypatch):
    monkeypatch.setenv("HWSCHED_PLANS", str(tmp_path / "plans"))
    path = str(tmp_path / "p.hwsched")
    assert run(["project", "new", path]) == 0
    return path


@pytest.fixture
def file(tmp_path):
    path = tmp_path / "list.csv"
    path.write_text(LIST, encoding="utf-8")
    return path


def answer(capsys, words):
    capsys.readouterr()
    status = run([*words, "--json"])
    return status, json.loads(capsys.readouterr().out)


def test_one_unknown_word_is_one_line_and_one_answer(project, file, capsys):
    assert run(["survey", "import", project, str(file), *READ[:-2], "--dry-run"]) == 0
    told = capsys.readouterr().out
    assert 'column D (Leaf material): what does "STL" (2) mean? taken as unknown; it may mean hollow metal door' in told
    assert "to answer: --word 'Leaf material:STL=ANSWER', for example --word 'Leaf material:STL=steel gate'" in told
    file.write_text(LIST.replace("STL", "STIL"), encoding="utf-8")
    assert run(["survey", "import", project, str(file), *READ[:-2]]) == 3
    assert "2 rows (2, 4), column D (Leaf material): read 'STIL'; is none of the words" in capsys.readouterr().err
    file.write_text(LIST, encoding="utf-8")
    status, told = answer(capsys, ["survey", "import", project, str(file), *READ, "--dash", "Fire rating=none"])
    assert (status, told["result"]["new_marks"], told["result"]["questions"]) == (0, ["D-1", "D-2", "D-3"], [])


def test_what_a_dash_means_is_asked_in_the_dry_run(project, file, capsys):
    status, told = answer(capsys, ["survey", "import", project, str(file), *READ, "--dry-run"])
    (asked,) = told["result"]["questions"]
    assert (status, asked["header"], asked["rows"], asked["answers"]) == (0, "Fire rating", [2, 4], ["unknown", "none"])


def test_a_refused_file_is_told_machines_too(project, file, capsys):
    status, told = answer(capsys, ["survey", "import", project, str(file)])
    assert (status, told["ok"], told["result"]) == (3, False, None)
    assert "no column of marks" in told["problems"][0]["message"]


def test_a_plan_reads_the_next_list(project, file, tmp_path, capsys):
    assert run(["survey", "import", project, str(file), *READ, "--save-plan", "yard", "--dry-run"]) == 0
    assert (tmp_path / "plans" / "yard.toml").exists()
    file.write_text("Coat,Q,Broad\nred,E-1,30\n", encoding="utf-8")
    assert run(["survey", "import", project, str(file), "--plan", "yard"]) == 0
    assert "column A (Coat): not covered by the plan" in capsys.readouterr().out


def test_a_mark_spelt_otherwise_is_left_out_until_it_is_said(project, file, capsys):
    assert run(["survey", "import", project, str(file), *READ]) == 0
    file.write_text("Q,Broad\nd-1,30\n", encoding="utf-8")
    words = ["survey", "import", project, str(file), *READ[:-2]]
    status, told = answer(capsys, words)
    assert (status, told["result"]["undecided"][0]["known"]) == (1, "D-1")
    assert told["result"]["new_marks"] == told["result"]["changed"] == []
    status, told = answer(capsys, [*words, "--same", "d-1=D-1"])
    assert (status, [each["mark"] for each in told["result"]["changed"]]) == (0, ["D-1"])


def test_a_word_without_its_column_is_wrong_usage(project, file):
    assert run(["survey", "import", project, str(file), "--word", "STL=hollow metal"]) == 2
