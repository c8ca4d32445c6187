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


def test_plans_are_listed_shown_changed_copied_and_removed(project, file, tmp_path, capsys):
    assert run(["survey", "import", project, str(file), *READ, "--save-plan", "yard", "--dry-run"]) == 0
    _, told = answer(capsys, ["survey", "plan"])
    assert [(each["name"], len(each["columns"])) for each in told["result"]["plans"]] == [("yard", 4)]
    words = (
        "--column", "Coat=", "--column", "Broad=leaf.height_mm", "--unit", "Broad=mm", "--dash", "Fire rating=none",
        "--word", "Leaf material:WD=wood, solid core", "--mark", "{Q}-{Coat}", "--bare-unit", "cm",
    )  # fmt: skip
    copy = str(tmp_path / "sent.toml")
    status, told = answer(capsys, ["survey", "plan", "yard", *words, "--copy", copy])
    (plan,) = told["result"]["plans"]
    assert (status, plan["mark"], plan["unit"]) == (0, "{Q}-{Coat}", "cm")
    assert plan["columns"] == [
        "Q: opening.mark",
        "Broad: leaf.height_mm, in mm",
        "Fire rating: opening.rating, a dash means none",
        "Leaf material: leaf.material, STL means hollow metal, WD means wood, solid core",
        "Coat: not read",
    ]
    assert run(["survey", "plan", "yard", "--drop", "Coat", "--unit", "Broad="]) == 0
    assert capsys.readouterr().out.splitlines()[2:4] == ["Q: opening.mark", "Broad: leaf.height_mm"]
    # The copy stands for itself, and goes to another person as it is.
    _, told = answer(capsys, ["survey", "plan", copy])
    assert told["result"]["plans"][0]["columns"] == plan["columns"]
    assert run(["survey", "plan", "yard", "--remove"]) == 0
    assert answer(capsys, ["survey", "plan"])[1]["result"] == {"plans": []}


@pytest.mark.parametrize(
    ("words", "status", "says"),
    [
        (["nosuch"], 3, "cannot be opened"),
        (["nosuch", "--remove"], 3, "cannot be opened"),
        (["--remove"], 2, "say which plan"),
        (["yard", "--unit", "Nix=mm"], 2, "the plan has no column Nix; it has Q, Broad"),
        (["yard", "--column", "Q=width"], 2, "is no target"),
        (["yard", "--word", "STL=wood"], 2, "names no column"),
    ],
)
def test_a_plan_is_not_changed_by_a_slip(project, file, tmp_path, capsys, words, status, says):
    assert run(["survey", "import", project, str(file), *READ, "--save-plan", "yard", "--dry-run"]) == 0
    before = (tmp_path / "plans" / "yard.toml").read_bytes()
    assert run(["survey", "plan", *words]) == status
    assert says in capsys.readouterr().err
    assert (tmp_path / "plans" / "yard.toml").read_bytes() == before


def test_each_question_names_the_option_that_answers_it(project, tmp_path, capsys):
    path = tmp_path / "asked.csv"
    path.write_text("No,Qty,Level,Leaf material,Width\n1,2,1,WD,PR 72\n2,1,1,HM,36\n1,1,2,AL,36\n", encoding="utf-8")
    words = ["survey", "import", project, str(path), "--bare-unit", "in", "--dry-run"]
    _, told = answer(capsys, words)
    options = [option for each in told["result"]["questions"] for option in each["option"].split("'") if option]
    assert options == [
        "--word ", "Leaf material:WD=ANSWER", "--pairs ANSWER", "--counts ", "ANSWER", "--mark ", "ANSWER",
    ]  # fmt: skip
    answers = (
        "--word",
        "Leaf material:WD=wood, solid core",
        "--pairs",
        "both",
        "--counts",
        "one",
        "--mark",
        "{Level}-{No}",
    )
    status, told = answer(capsys, [*words, *answers])
    assert (status, told["result"]["questions"]) == (0, [])
    assert told["result"]["new_marks"] == ["1-1", "1-2", "2-1"]


def test_a_heading_of_two_readings_and_a_word_with_a_slip_name_their_options(project, tmp_path, capsys):
    path = tmp_path / "asked.csv"
    path.write_text("Mark,FR,Leaf material\n1,60,timbr\n2,HM,HM\n", encoding="utf-8")
    words = ["survey", "import", project, str(path)]
    assert run([*words, "--dry-run"]) == 3
    told = capsys.readouterr()
    assert "what does the heading mean over" in told.out
    assert "to answer: --column 'FR=ANSWER', for example --column 'FR=opening.frame_material'" in told.out
    assert "; nearest: Wood, solid core; accepted: " in told.err
    assert "to answer: --word 'Leaf material:timbr=Wood, solid core'" in told.out
    # Each answer as it is offered.
    status, told = answer(capsys, [*words, "--dry-run", "--column", "FR=Frame material", "--word", "FR:60=unknown"])
    assert [each["header"] for each in told["result"]["questions"]] == []
    status, told = answer(capsys, [*words, "--column", "FR=not read", "--word", "Leaf material:timbr=Wood, solid core"])
    assert (status, told["result"]["new_marks"], told["result"]["questions"]) == (0, ["1", "2"], [])


def test_a_plan_says_where_openings_stand_and_what_is_mended(project, tmp_path, capsys):
    path = tmp_path / "side.csv"
    path.write_text("Door,101,102\nWd.,84,80\nHt.,36,30\n", encoding="utf-8")
    words = ["survey", "import", project, str(path), "--bare-unit", "in"]
    told = ["--openings-in", "columns", "--column", "Wd.=leaf.width_mm", "--cure", "wider-than-high"]
    assert run([*words, *told, "--save-plan", "side", "--dry-run"]) == 0
    _, shown = answer(capsys, ["survey", "plan", "side"])
    assert [(each["openings_in"], each["cures"]) for each in shown["result"]["plans"]] == [
        ("columns", ["wider-than-high"])
    ]
    _, shown = answer(capsys, ["survey", "plan", "side", "--cure", "none"])
    assert shown["result"]["plans"][0]["cures"] == []
    assert run(["survey", "plan", "side", "--cure", "nix"]) == 2
    status, shown = answer(capsys, [*words, "--plan", "side"])
    assert (status, shown["result"]["new_marks"]) == (0, ["101", "102"])
    assert [each["id"] for each in shown["result"]["oddities"]] == ["wider-than-high"]
