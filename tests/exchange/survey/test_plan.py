"""A column plan is an open text: written, read again, laid beside another list, refused by the entry that is wrong."""

import pytest

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.book import SurveyOptions, read_survey
from hwsched.exchange.survey.plan import plan_of, read_plan, written
from tests.exchange.surveys import said

LIST = 'Q,Broad,Lbl,Stuff,Size 1,Size 1\nD-1,36,-,STL,84,"1 ""3/4"""\nD-2,32,90,wd,84,1.75\n'
OPTIONS = SurveyOptions(
    bare_unit="in",
    columns={
        "Q": "opening.mark", "Broad": "leaf.width_mm", "Lbl": "opening.rating", "Stuff": "leaf.material",
        "column E": "leaf.height_mm", "column F": "",
    },
    dashes={"Lbl": "none"},
    words={"Stuff": {"STL": "hollow metal"}},
)  # fmt: skip


def file(folder, text, name="list.csv"):
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def facts(found):
    return {
        o.mark: (o.facts.get("rating"), o.leaves[0].facts.get("material"), round(o.leaves[0].facts["width_mm"]))
        for o in found.openings
    }


@pytest.fixture
def plan(tmp_path):
    found = read_survey(file(tmp_path, LIST), OPTIONS)
    assert said(found) == ""
    return plan_of('the "yard"', found.mapping[0], OPTIONS)


def test_what_is_written_is_read_again(tmp_path, plan):
    again = read_plan(file(tmp_path, written(plan), "yard.toml"))
    assert again == plan
    assert 'words = { "STL" = "hollow metal" }' in written(plan)


def test_a_plan_reads_another_list_and_says_what_it_does_not_cover(tmp_path, plan):
    other = "Yard list,,,,,\nQ,Coat,Lbl,Broad,Stuff,Notes\nD-7,red,-,30,stl,seen\n"
    found = read_survey(file(tmp_path, other), plan.onto(SurveyOptions()))
    assert said(found) == ""
    assert facts(found) == {"D-7": ("none", "hollow-metal", 762)}
    assert [line for line in found.passed_over if "plan" in line] == [
        "sheet list: a column size1, which the plan names, is not there",
        "sheet list, column B (Coat): not covered by the plan, not read",
        "sheet list, column F (Notes): not covered by the plan, read by its heading",
    ]


def test_what_is_said_now_goes_before_the_plan(tmp_path, plan):
    found = read_survey(file(tmp_path, LIST), plan.onto(SurveyOptions(dashes={"Lbl": "unknown"}, bare_unit="cm")))
    assert facts(found)["D-1"] == (None, "hollow-metal", 360)


def test_encoding_decimal_mark_and_widths_of_pairs_are_kept(tmp_path):
    text = "Nr;Raum;Breite;H\u00f6he\n7;B\u00fcro;1.830,5 PR;2.032,0\n8;Flur;914,4;2.032,0\n"
    path = tmp_path / "liste.csv"
    path.write_bytes(text.encode("cp850"))
    columns = {
        "Nr": "opening.mark",
        "Raum": "opening.room_to",
        "Breite": "leaf.width_mm",
        "H\u00f6he": "leaf.height_mm",
    }
    options = SurveyOptions(columns=columns, bare_unit="mm", encoding="cp850", decimal="comma", pairs="both")
    found = read_survey(path, options)
    plan = plan_of("liste", found.mapping[0], options)
    again = read_plan(file(tmp_path, written(plan), "liste.toml"))
    assert again == plan
    replayed = read_survey(path, again.onto(SurveyOptions()))
    assert [(o.mark, o.facts["room_to"], [leaf.facts["width_mm"] for leaf in o.leaves]) for o in replayed.openings] == [
        ("7", "B\u00fcro", [915.25, 915.25]),
        ("8", "Flur", [914.4]),
    ]
    assert replayed.questions == ()
    # A project remembers of such a list what is not the file's own.
    kept = {found.mapping[0].fingerprint: found.mapping[0].remembered("mm")}
    by_memory = read_survey(path, SurveyOptions(encoding="cp850", remembered=kept))
    assert [leaf.facts["width_mm"] for o in by_memory.openings for leaf in o.leaves] == [915.25, 915.25, 914.4]


def test_cures_of_a_habit_and_where_openings_stand_are_kept(tmp_path):
    path = file(tmp_path, "Nr of door,101,102\nWd.,84,80\nHt.,36,30\n")
    columns = {"Nr of door": "opening.mark", "Wd.": "leaf.width_mm", "Ht.": "leaf.height_mm"}
    cures = frozenset({"wider-than-high", "shifted"})
    options = SurveyOptions(columns=columns, bare_unit="in", openings_in="columns", cures=cures)
    found = read_survey(path, options)
    plan = plan_of("side", found.mapping[0], options)
    again = read_plan(file(tmp_path, written(plan), "side.toml"))
    # A shift of values is an accident of one file.
    assert (again, again.columns.openings_in, again.columns.cures) == (plan, "columns", ("wider-than-high",))
    replayed = read_survey(path, again.onto(SurveyOptions()))
    assert replayed.openings == found.openings
    assert [round(o.leaves[0].facts["width_mm"] / 25.4) for o in replayed.openings] == [36, 30]
    assert any("wider-than-high as at an earlier import" in each.text for each in replayed.assumptions)
    left = read_survey(path, again.onto(SurveyOptions(cures=frozenset({"none"}))))
    assert ([each.id for each in left.oddities], left.mapping[0].cures) == (["wider-than-high"], ())
    assert again.changed(cures=("none",)).columns.cures == ()
    with pytest.raises(ValueError, match="nix is none of the cures"):
        again.changed(cures=("nix",))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("plan = ", "is no column plan"),
        ('colour = "red"', "says colour of the plan"),
        ("column = 3", "no entries"),
        ('[[column]]\nheader = "A"', "no text fact for column A"),
        ('[[column]]\nheader = "A"\nfact = "width"', "is no target"),
        ('[[column]]\nheader = "A"\nfact = ""\nsize = "3"', "says size of column A"),
        ('[[column]]\nheader = "A"\nfact = ""\nwords = 3', "words that are no texts"),
        ('unit = "furlong"', "has the unit furlong"),
        ('pairs = "thrice"', "has pairs thrice"),
        ("decimal = 3", "has decimal 3"),
        ("encoding = 3", "no text encoding"),
        ('openings_in = "heaps"', "has openings_in heaps"),
        ('cures = ["shifted"]', "of which one is none"),
        ('cures = "wider-than-high"', "has cures"),
        ("header_row = 0", "no row header_row"),
    ],
)
def test_a_plan_that_is_none_is_refused_by_its_entry(tmp_path, text, says):
    with pytest.raises(InputRejected, match=says):
        read_plan(file(tmp_path, text, "p.toml"))
