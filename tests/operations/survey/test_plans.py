"""Plans are kept under a name for every project, or as a file anywhere."""

import pytest

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.exchange.survey.mapping import RememberedMapping
from hwsched.exchange.survey.plan import ColumnPlan
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import create_project
from hwsched.operations.project.history import history
from hwsched.operations.survey.plans import find_plan, keep_plan, plans_folder
from hwsched.operations.survey.survey_import import import_survey, preview_survey, save_plan

PLAN = ColumnPlan("yard", RememberedMapping({"q": "opening.mark"}, "in", headers=("q",)), {"q": "Q"})


@pytest.fixture(autouse=True)
def folder(tmp_path, monkeypatch):
    monkeypatch.setenv("HWSCHED_PLANS", str(tmp_path / "plans"))
    return tmp_path / "plans"


def test_a_plan_is_found_by_its_name_and_by_its_file(folder, tmp_path):
    assert keep_plan("yard 1", PLAN) == folder / "yard 1.toml"
    assert find_plan("yard 1") == find_plan(str(folder / "yard 1.toml")) == PLAN
    keep_plan(str(tmp_path / "elsewhere" / "sent.toml"), PLAN)
    assert find_plan(str(tmp_path / "elsewhere" / "sent.toml")) == PLAN


def test_a_plan_that_is_not_there(folder):
    with pytest.raises(InputRejected, match=r"gone\.toml: cannot be opened"):
        find_plan("gone")


@pytest.mark.parametrize("name", ["", ".", "..", "a:b", "x" * 99, "a\nb"])
def test_what_can_be_no_name(name):
    with pytest.raises(ValueRefusedError):
        keep_plan(name, PLAN)


def test_a_plan_made_in_one_project_reads_a_list_in_another(tmp_path):
    path = tmp_path / "list.csv"
    path.write_text("Q,Broad\nD-1,36\n", encoding="utf-8")
    told = SurveyOptions(columns={"Q": "opening.mark", "Broad": "leaf.width_mm"}, bare_unit="in")
    with create_project(str(tmp_path / "a.hwsched"), "A") as first:
        save_plan(first, path, told, "yard")
    with create_project(str(tmp_path / "b.hwsched"), "B") as second:
        done = import_survey(second, path, find_plan("yard").onto(SurveyOptions()), who="t")
    (opening,) = done.preview.new
    assert (opening.mark, opening.leaves[0].facts["width_mm"]) == ("D-1", pytest.approx(914.4))


def test_where_they_are_kept_by_themselves():
    assert plans_folder({"XDG_CONFIG_HOME": "/home/a/set"}).parts[-3:] == ("set", "hwsched", "plans")
    assert plans_folder({"HWSCHED_PLANS": "/srv/plans"}).parts[-2:] == ("srv", "plans")


def test_a_mended_cell_is_kept_with_its_author_and_mended_again(tmp_path):
    path = tmp_path / "list.csv"
    path.write_text("Mark,Width\nD-1,3..6\nD-2,32\n", encoding="utf-8")
    content = path.read_bytes()
    told = SurveyOptions(bare_unit="in", corrections={"list!B2": "36"})
    with create_project(str(tmp_path / "a.hwsched"), "A") as project:
        done = import_survey(project, path, told, who="ann")
        assert [round(each.leaves[0].facts["width_mm"]) for each in done.preview.new] == [914, 813]
        (summary,) = [each.summary for each in history(project) if each.verb == "import-survey"]
        assert summary.endswith('; cells mended: list B2 "3..6" as "36"')
        # The next delivery still has it, and one more row.
        path.write_bytes(content + b"D-3,30\n")
        again = preview_survey(project, path, SurveyOptions(bare_unit="in"))
        assert (again.problems, len(again.preview.new), again.preview.changed) == ((), 1, ())
        assert 'cell list B2: "3..6" read as "36", mended by ann' in "\n".join(
            each.describe() for each in again.preview.assumptions
        )
        # Once the cell says something else, it counts.
        path.write_bytes(content.replace(b"3..6", b"34"))
        again = preview_survey(project, path, SurveyOptions(bare_unit="in"))
        assert round(again.preview.changed[0].facts[0].after) == 864
    with create_project(str(tmp_path / "b.hwsched"), "B") as other, pytest.raises(InputRejected, match="has no cell X"):
        import_survey(other, path, SurveyOptions(bare_unit="in", corrections={"X": "36"}), who="ann")


def test_the_same_file_changes_nothing_though_it_was_cured_and_ticked_the_first_time(tmp_path):
    path = tmp_path / "list.csv"
    path.write_text("Mark,Width,Height,Closer,Panic,FR\nD-1,84,36,x,X,60\nD-2,32,84,,,HM\n", encoding="utf-8")
    columns = {"Panic": "existing_item.kind@exit-device", "FR": ""}
    told = SurveyOptions(bare_unit="in", cures=frozenset({"wider-than-high"}), columns=columns)
    with create_project(str(tmp_path / "a.hwsched"), "A") as project:
        (first, _) = import_survey(project, path, told, who="ann").preview.new
        assert (round(first.leaves[0].facts["width_mm"]), len(first.items)) == (914, 2)
        again = preview_survey(project, path, SurveyOptions(bare_unit="in"))
        assert (again.preview.changed, again.preview.new, again.preview.questions, again.problems) == ((), (), (), ())
