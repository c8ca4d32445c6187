"""The command line as people and machines call it: exit statuses, JSON, help without heavy libraries."""

import io
import json
import subprocess
import sys

import pytest
from pypdf import PdfReader

from hwsched.calc.calculators import CALCULATORS
from hwsched.cli import ENTRIES, ROOMS
from hwsched.cli.command import run
from hwsched.model.project import open_project
from tests.cli.answers import answer, result


def test_help_lists_every_command(capsys):
    assert run(["--help"]) == 0
    shown = capsys.readouterr().out
    for entry in ENTRIES:
        assert f"  {entry.name} " in shown
        assert entry.summary in shown


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda entry: entry.spelling)
def test_every_command_explains_itself(entry, capsys):
    assert run([*entry.spelling.split(), "--help"]) == 0
    assert "usage" in capsys.readouterr().out


@pytest.mark.parametrize("room", ROOMS, ids=lambda room: room.name)
def test_every_room_lists_its_verbs(room, capsys):
    assert run([room.name, "--help"]) == 0
    shown = capsys.readouterr().out
    assert all(f"  {entry.name} " in shown for entry in room.entries)


@pytest.mark.parametrize("entry", [each for each in ENTRIES if each.earlier], ids=lambda entry: entry.spelling)
def test_an_earlier_spelling_works_and_says_the_present_one(entry, capsys):
    for earlier in entry.earlier:
        # What is the name of a room too asks for the room's help by itself.
        project = ["p.hwsched"] if earlier in {room.name for room in ROOMS} else []
        assert run([*earlier.split(), *project, "--help"]) == 0
        assert f"hwsched {entry.spelling} " in capsys.readouterr().out


@pytest.mark.parametrize(
    "words",
    [
        [],
        ["nonsense"],
        ["import"],
        ["power"],
        ["survey", "nonsense"],
        ["opening", "fit"],
        ["print", "poem", "x.hwsched"],
    ],
)
def test_wrong_usage_is_2(words, capsys):
    assert run(words) == 2


def test_help_loads_neither_qt_nor_solvers_nor_spreadsheets():
    code = (
        "import sys; sys.argv = ['hwsched', '--help']\n"
        "from hwsched.__main__ import main\nmain()\n"
        "heavy = {'PySide6', 'highspy', 'numpy', 'openpyxl', 'python_calamine', 'sqlalchemy', 'reportlab', 'pint'}\n"
        "sys.exit(bool(heavy & {name.split('.')[0] for name in sys.modules}))"
    )
    assert subprocess.run([sys.executable, "-c", code], capture_output=True, check=False).returncode == 0


def test_a_project_that_cannot_be_opened_is_4(tmp_path, capsys):
    assert run(["findings", "check", str(tmp_path / "none.hwsched")]) == 4
    assert "none.hwsched" in capsys.readouterr().err


def test_new_import_fit_check_print_undo(tmp_path, capsys):
    from hwsched.paths import SAMPLE

    project = str(tmp_path / "p.hwsched")
    assert run(["project", "new", project, "--name", "P", "--bare-unit", "in"]) == 0
    assert run(["parts", "import", project, str(SAMPLE / "catalogue.xlsx")]) == 0
    assert run(["survey", "import", project, str(SAMPLE / "survey.xlsx")]) == 3
    refused = capsys.readouterr().err
    assert "(Thickness (in)): read '6/8'" in refused
    assert "(Hand): read 'sideways'" in refused
    assert "Nothing was changed" in refused
    assert run(["survey", "import", project, str(SAMPLE / "survey.xlsx"), "--accept", "good-rows"]) == 1
    again = answer(capsys, "survey", "import", project, str(SAMPLE / "survey.xlsx"), "--accept", "good-rows", status=1)
    assert (again["result"]["new_marks"], again["result"]["changed"], again["change_set"]) == ([], [], None)
    assert {problem["read"] for problem in again["problems"]} >= {"6/8", "sideways"}
    (outcome,) = result(capsys, "opening", "fit", project, "--mark", "M004")["openings"]
    assert outcome["mark"] == "M004"
    (point,) = outcome["lock_points"]
    assert set(point) >= {"status", "parts", "placement", "lead", "holes", "refused", "needs"}
    for finding in result(capsys, "findings", "check", project, "--mark", "M004")["findings"]:
        assert set(finding) >= {
            "mark", "rule", "discipline", "severity", "message", "basis", "cure", "values", "waived",
        }  # fmt: skip
    assert run(["opening", "fit", project]) == 0
    assert run(["findings", "check", project, "--fail-on", "error"]) == 1
    assert run(["release", "print", project, "schedule", "--to", str(tmp_path / "out"), "--format", "xlsx"]) == 0
    assert (tmp_path / "out" / "schedule.xlsx").is_file()
    along = ["--mark", "B/1", "--with-templates"]
    assert run(["release", "print", project, "packets", "--to", str(tmp_path / "out"), *along]) == 0
    assert [path.name for path in (tmp_path / "out" / "packets").iterdir()] == ["B_1.pdf"]
    assert (tmp_path / "out" / "templates.pdf").is_file()
    # Behind the list in front, which is one page for one opening.
    said = " ".join(page.extract_text() for page in PdfReader(tmp_path / "out" / "packets" / "B_1.pdf").pages)
    assert ", page 2 of templates.pdf" in " ".join(said.split())
    for _ in range(4):
        assert run(["project", "undo", project]) == 0
    assert run(["project", "undo", project]) == 3
    capsys.readouterr()
    assert run(["project", "history", project]) == 0
    assert len(capsys.readouterr().out.splitlines()) == 8


def test_a_survey_is_taken_in_as_it_was_previewed_and_fitted_in_the_same_step(tmp_path, capsys):
    project, survey = str(tmp_path / "p.hwsched"), tmp_path / "s.csv"
    survey.write_text("Mark,Hand,Room\n1,LH,Hall\n2,RH,Store\n")
    assert run(["project", "new", project, "--bare-unit", "in"]) == 0
    key = result(capsys, "survey", "import", project, str(survey), "--dry-run")["shown"]
    survey.write_text("Mark,Hand,Room\n1,LH,Hall\n2,RHR,Store\n")
    words = ["survey", "import", project, str(survey), "--shown", key, "--fit"]
    refused = answer(capsys, *words, status=3)
    assert (refused["ok"], refused["change_set"]) == (False, None)
    assert "not " + key in refused["problems"][0]["message"]
    survey.write_text("Mark,Hand,Room\n1,LH,Hall\n2,RH,Store\n")
    done = answer(capsys, *words)
    assert (done["result"]["new_marks"], done["change_set"], done["result"]["shown"]) == (["1", "2"], 1, key)
    capsys.readouterr()
    assert run(["opening", "fit", project]) == 0
    assert "Nothing to change." in capsys.readouterr().out
    assert run(["project", "undo", project]) == 0
    assert run(["project", "undo", project]) == 3


def test_the_survey_form_is_written_and_read_back(tmp_path, capsys):
    form, project = str(tmp_path / "form.xlsx"), str(tmp_path / "p.hwsched")
    assert run(["survey", "form", "-o", form]) == 0
    assert run(["project", "new", project]) == 0
    shown = answer(capsys, "survey", "import", project, form, "--dry-run", status=3)
    assert (shown["result"]["new_marks"], shown["result"]["unmapped"]) == ([], [])
    assert shown["problems"]
    assert all("no row below its header" in problem["message"] for problem in shown["problems"])


@pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda calculator: calculator.name)
def test_calculators_answer_lines_in_order(calculator, monkeypatch, capsys):
    lines = [json.dumps(calculator.example), "not json", json.dumps({}), json.dumps(calculator.example)]
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO("\n".join(lines).encode())))
    assert run(["project", "calc", calculator.name]) == 3
    answers = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert len(answers) == 4
    assert answers[0] == answers[3]
    assert "error" not in answers[0]
    assert set(answers[1]["error"]) == set(answers[2]["error"]) == {"field", "message"}


def test_a_calculator_describes_its_fields(capsys):
    assert run(["project", "calc", "--help", "placement"]) == 0
    shown = capsys.readouterr().out
    for word in ("keepouts", "blocked_by", "example"):
        assert word in shown


def test_a_form_for_a_return_visit_comes_back_unchanged(tmp_path, capsys, sample_file):
    form = str(tmp_path / "again.xlsx")
    assert run(["survey", "form", str(sample_file), "-o", form, "--mark", "M004", "--mark", "A-15"]) == 0
    assert run(["survey", "form", "-o", form, "--mark", "M004"]) == 2
    shown = result(capsys, "survey", "import", str(sample_file), form, "--dry-run")
    assert (shown["new_marks"], shown["changed"], shown["unchanged_count"]) == ([], [], 2)


def test_a_form_is_written_where_its_earlier_spellings_said(tmp_path, capsys, sample_file):
    blank, filled = tmp_path / "blank.xlsx", tmp_path / "filled.xlsx"
    assert run(["survey-form", str(blank)]) == 0
    assert run(["survey-form", str(filled), "--project", str(sample_file), "--mark", "M004"]) == 0
    assert blank.is_file()
    shown = result(capsys, "survey", "import", str(sample_file), str(filled), "--preview")
    assert shown["unchanged_count"] == 1


def test_a_drawing_needs_a_place_to_go(capsys, sample_file):
    told = answer(capsys, "opening", "draw", str(sample_file), "M004", "section", status=2)
    assert "-o FILE" in told["problems"][0]["message"]
    assert run(["opening", "draw", str(sample_file), "M004", "section", "-o", "-", "--json"]) == 2


def test_a_column_is_given_its_meaning(tmp_path, capsys):
    from openpyxl import Workbook

    book = Workbook()
    book.active.append(["Mark", "Hand", "Nominal"])
    book.active.append(["1", "LH", "36 in"])
    book.save(tmp_path / "s.xlsx")
    project = str(tmp_path / "p.hwsched")
    assert run(["project", "new", project]) == 0
    words = ["survey", "import", project, str(tmp_path / "s.xlsx"), "--column", "Nominal=leaf.width_mm"]
    assert result(capsys, *words)["unmapped"] == []


def test_adding_removing_and_fields_of_our_own(tmp_path, capsys):
    project = str(tmp_path / "p.hwsched")
    assert run(["project", "new", project, "--bare-unit", "in"]) == 0
    assert run(["survey", "add", project, "101", "hand=LH", "building=Mill"]) == 0
    assert run(["survey", "add", project, "101", "--item", "kind=lock", "lock_form=mortise", "backset_mm=2 3/4"]) == 0
    assert run(["survey", "field", project, "opening", "key_group", "Key group"]) == 0
    assert run(["survey", "edit", project, "101", "opening", "key_group", "AA1"]) == 0
    assert run(["survey", "edit", project, "101", "leaf", "thickness_mm", "1 3/4"]) == 0
    assert run(["survey", "edit", project, "101", "leaf", "thickness_mm", "thick"]) == 3
    assert run(["survey", "edit", project, "101", "roof", "thickness_mm", "1"]) == 3
    assert "it has opening, leaf" in capsys.readouterr().err
    assert run(["survey", "remove", project, "101", "lock"]) == 0
    assert run(["survey", "field", project, "opening", "key_group", "--remove"]) == 0
    assert run(["survey", "remove", project, "101"]) == 0
    assert run(["project", "undo", project]) == 0
    assert {finding["mark"] for finding in result(capsys, "findings", "check", project)["findings"]} == {"101"}


def test_the_catalogue_is_exported(tmp_path, capsys, sample_file):
    path = tmp_path / "c.xlsx"
    assert run(["parts", "export", str(sample_file), str(path)]) == 0
    assert run(["parts", "import", str(sample_file), str(path)]) == 0
    assert "0 new, 0 changed" in capsys.readouterr().out
    assert run(["parts", "export", str(sample_file), str(tmp_path / "c.txt")]) == 3


@pytest.mark.parametrize(
    ("words", "style"),
    [
        (("--bare-unit", "mm"), "mm"),
        (("--bare-unit", "in"), "fraction"),
        ((), "fraction"),
        (("--bare-unit", "mm", "--lengths", "fraction"), "fraction"),
    ],
)
def test_who_writes_lengths_in_metric_units_reads_them_so(tmp_path, capsys, words, style):
    path = tmp_path / "n.hwsched"
    result(capsys, "project", "new", str(path), *words)
    with open_project(path) as project:
        assert project.length_style == style
