"""Types of openings: tables of them, their counts by level, types above their openings, and marks made of counts."""

import pytest

from hwsched.exchange.survey.answers import answered
from hwsched.exchange.survey.book import SurveyOptions, read_survey
from hwsched.exchange.survey.plan import plan_of, read_plan, written
from tests.exchange.surveys import said, write

TYPES = [["Type", "Width", "Height", "Material"], ["A", "36", "84", "HM"], ["B", "30", "84", "AL"]]
SIZES = {"A": (36, "hollow-metal"), "B": (30, "aluminium"), None: (None, None)}


def read(tmp_path, sheets, **options):
    return read_survey(write(tmp_path / "types.xlsx", sheets), SurveyOptions(**{"bare_unit": "in", **options}))


def types_of(found):
    """By mark: the type that its leaf shows, and its level."""
    sizes = {
        opening.mark: (
            (round(leaf["width_mm"] / 25.4), leaf["material"]) if "width_mm" in (leaf := opening.leaves[0].facts) else
            SIZES[None],
            opening.facts.get("level"),
        )
        for opening in found.openings
    }  # fmt: skip
    names = {size: name for name, size in SIZES.items()}
    return {mark: (names[size], level) for mark, (size, level) in sizes.items()}


@pytest.mark.parametrize("heading", ["Type", "Mark", "Door type"])
def test_openings_refer_to_a_table_of_types(tmp_path, heading):
    types = [[heading, *TYPES[0][1:]], *TYPES[1:]]
    doors = [["No", "Type", "Level"], ["101", "A", "1"], ["102", "B", "1"], ["201", "a", "2"]]
    found = read(tmp_path, {"Doors": doors, "Types": types})
    assert said(found) == ""
    assert types_of(found) == {"101": ("A", "1"), "102": ("B", "1"), "201": ("A", "2")}
    assert [each.describe() for each in found.assumptions if "taken as a table" in each.text] == [
        "sheet Types: taken as a table of types, one a row (1)"
    ]


def test_a_row_goes_before_its_type_and_both_are_said(tmp_path):
    doors = [["No", "Type", "Width"], ["101", "A", "32"], ["102", "A", ""], ["103", "B", ""], ["104", "C", ""]]
    found = read(tmp_path, {"Types": TYPES, "Doors": doors})
    widths = {opening.mark: round(opening.leaves[0].facts.get("width_mm", 0) / 25.4) for opening in found.openings}
    assert widths == {"101": 32, "102": 36, "103": 30, "104": 0}
    assert "facts that a row says otherwise than its type taken from the row (1)" in said_of(found)
    assert "type C, to which 1 row refers: no table and no row says what it is" in found.passed_over


def said_of(found):
    return "\n".join(each.describe() for each in found.assumptions)


DOWN = [["Type", "Level 1", "Level 2", "Total"], ["A", "2", "1", "3"], ["B", "-", "1", "1"], ["Total", "2", "2", "4"]]
ACROSS = [["Level", "A", "B", "Total"], ["Level 1", "2", "", "2"], ["Level 2", "1", "1", "2"], ["Total", "3", "1", "4"]]
DOORS = {
    "A-1-1": ("A", "Level 1"), "A-1-2": ("A", "Level 1"), "A-2-1": ("A", "Level 2"), "B-2-1": ("B", "Level 2"),
}  # fmt: skip


@pytest.mark.parametrize("counts", [DOWN, ACROSS])
def test_types_and_their_counts_give_openings(tmp_path, counts):
    found = read(tmp_path, {"Counts": counts, "Types": TYPES}, counts="{type}-{level}-{n}")
    assert said(found) == ""
    assert types_of(found) == DOORS


def test_how_marks_are_made_of_counts_is_asked_and_nothing_taken_in_before(tmp_path):
    found = read(tmp_path, {"Counts": DOWN, "Types": TYPES})
    assert (found.openings, [question.kind for question in found.questions]) == ((), ["count"])
    assert "4 doors of the types A, B; how their marks are made is not said" in said(found)


def test_a_total_that_does_not_add_up_is_named(tmp_path):
    wrong = [DOWN[0], ["A", "2", "1", "4"], *DOWN[2:]]
    found = read(tmp_path, {"Counts": wrong, "Types": TYPES}, counts="{type}-{level}-{n}")
    assert "counts of type A do not add up to its total" in said(found)


def test_counts_beside_the_types_themselves(tmp_path):
    both = [[*TYPES[0], "Level 1", "Level 2"], [*TYPES[1], "2", "1"], [*TYPES[2], "", "1"]]
    assert types_of(read(tmp_path, {"Types": both}, counts="{type}-{level}-{n}")) == DOORS
    quantity = [[*TYPES[0], "Qty"], [*TYPES[1], "2"], [*TYPES[2], "1"]]
    found = read(tmp_path, {"Types": quantity}, counts="{type}{letter}")
    assert types_of(found) == {"AA": ("A", None), "AB": ("A", None), "BA": ("B", None)}


ABOVE = {
    "in place of the mark": [
        ["Mark", *TYPES[0][1:]], ["Type A", *TYPES[1][1:]], ["101"], ["Type B", *TYPES[2][1:]], ["102"],
    ],
    "in a column of its own": [
        ["Type", "Mark", *TYPES[0][1:]], ["A", "", *TYPES[1][1:]], ["", "101"], ["B", "", *TYPES[2][1:]], ["", "102"],
    ],
}  # fmt: skip


@pytest.mark.parametrize("rows", ABOVE.values(), ids=list(ABOVE))
def test_a_type_above_its_openings(tmp_path, rows):
    found = read(tmp_path, {"Doors": rows})
    assert said(found) == ""
    assert types_of(found) == {"101": ("A", None), "102": ("B", None)}


OPENINGS = [["No", "Type", "Level"], ["101", "A", "1"], ["102", "B", "1"], ["201", "a", "2"]]
WIDE = [[*row, "", *more] for row, more in zip(OPENINGS, [*TYPES, ["", "", "", ""]], strict=True)]
ONE_SHEET = {
    "above": [["DOOR TYPES"], *TYPES, [], ["DOORS"], *OPENINGS],
    "below": [*OPENINGS, [], ["DOOR TYPES"], *TYPES],
    "beside": WIDE,
    "beside, with a title and a gap": [["DOORS", "", "", "", "TYPES"], *WIDE[:2], [], *WIDE[2:]],
}


@pytest.mark.parametrize("rows", ONE_SHEET.values(), ids=list(ONE_SHEET))
def test_a_table_of_types_in_the_sheet_of_its_openings_is_asked_about(tmp_path, rows):
    found = read(tmp_path, {"Doors": rows})
    assert said(found) == ""
    # Until somebody answers no type is an opening, and no opening has what a type says.
    assert types_of(found) == {"101": (None, "1"), "102": (None, "1"), "201": (None, "2")}
    (asked,) = found.questions
    assert (asked.kind, asked.answers, asked.read.partition(" (")[2]) == ("table", ("left-out", "types"), "A, B)")
    options = answered(SurveyOptions(bare_unit="in"), asked, "types")
    path = write(tmp_path / "types.xlsx", {"Doors": rows})
    found = read_survey(path, options)
    assert (said(found), found.questions) == ("", ())
    assert types_of(found) == {"101": ("A", "1"), "102": ("B", "1"), "201": ("A", "2")}
    # A plan replays it.
    plan = plan_of("types", next(each for each in found.mapping if each.sheet == "Doors"), options)
    (tmp_path / "types.toml").write_text(written(plan))
    replayed = read_survey(path, read_plan(tmp_path / "types.toml").onto(SurveyOptions()))
    assert types_of(replayed) == types_of(found)


@pytest.mark.parametrize(
    "types", [[["Stock", "Width", "Height"], ["X", 36, 84]], [["Type", "Width", "Note"], ["X", 36, "y"]]]
)
def test_a_table_to_which_no_opening_refers_is_no_table_of_their_types(tmp_path, types):
    found = read(tmp_path, {"Doors": [*OPENINGS, [], *types]})
    assert [each for each in found.questions if each.kind == "table"] == []


def test_words_that_a_type_column_may_hold_stay_words(tmp_path):
    found = read(tmp_path, {"Doors": [["Mark", "Type", "Width"], ["101", "PR", "36"], ["102", "SGL", "36"]]})
    assert {opening.mark: opening.facts["form"] for opening in found.openings} == {"101": "pair", "102": "single"}


ROWS = [["Mark", "Qty", "Width"], ["A", "3", "36"], ["B", "1", "30"], ["C", "0", "30"]]


@pytest.mark.parametrize(
    ("counts", "marks"),
    [
        ("one", ["A", "B", "C"]),
        ("{mark}-{n}", ["A-1", "A-2", "A-3", "B"]),
        ("{mark}{letter}", ["AA", "AB", "AC", "B"]),
        ("D{nn}", ["D01", "D02", "D03", "D04"]),
    ],
)
def test_a_row_of_several_doors(tmp_path, counts, marks):
    found = read(tmp_path, {"Doors": ROWS}, counts=counts)
    assert [opening.mark for opening in found.openings] == marks
    assert (said(found), found.questions) == ("", ())


def test_rows_of_quantities_are_types_where_that_is_said(tmp_path):
    rows = [["Mark", "Qty", "Width", "Door type"], ["A", "2", "36", ""], ["101", "", "", "A"], ["102", "", "", "A"]]
    found = read(tmp_path, {"Doors": rows}, counts="type", columns={"Door type": "opening.of_type"})
    widths = {opening.mark: round(opening.leaves[0].facts["width_mm"]) for opening in found.openings}
    assert widths == {"101": 914, "102": 914}


@pytest.mark.parametrize(
    ("rows", "counts", "says"),
    [
        (ROWS, "many", "says many, by which no marks can be made"),
        ([*ROWS, ["A-1", "1", "36"]], "{mark}-{n}", "would make the mark A-1, which stands in the file already"),
        ([*ROWS, ["E", "some", "36"]], "{mark}-{n}", "is no number of doors"),
    ],
)
def test_counts_that_give_no_marks_are_refused(tmp_path, rows, counts, says):
    assert says in said(read(tmp_path, {"Doors": rows}, counts=counts))


LEVELS = [["Level", "No", "Width"], ["1", "01", "36"], ["1", "02", "36"], ["2", "01", "36"]]


def test_a_mark_of_two_columns_is_asked_told_and_planned(tmp_path):
    found = read(tmp_path, {"Doors": LEVELS})
    (asked,) = found.questions
    assert (asked.kind, asked.read, asked.rows, asked.answers[1]) == ("mark", '"01"', (2, 4), "{Level}-{No}")
    options = SurveyOptions(bare_unit="in", mark="{Level}-{No}")
    found = read(tmp_path, {"Doors": LEVELS}, mark="{Level}-{No}")
    assert [opening.mark for opening in found.openings] == ["1-01", "1-02", "2-01"]
    assert (said(found), found.questions, found.unmapped) == ("", (), ())
    plan = tmp_path / "plan.toml"
    plan.write_text(written(plan_of("levels", found.mapping[0], options)), encoding="utf-8")
    again = read_survey(tmp_path / "types.xlsx", read_plan(plan).onto(SurveyOptions()))
    assert [opening.mark for opening in again.openings] == ["1-01", "1-02", "2-01"]


def test_a_half_mark_is_none(tmp_path):
    found = read(tmp_path, {"Doors": [*LEVELS, ["", "05", "36"]]}, mark="{Level}-{No}")
    assert "read '05'; is half a mark" in said(found)


@pytest.mark.parametrize(("mark", "says"), [("{Lev}-{No}", "no column Lev"), ("Level", "no mark made as Level")])
def test_a_mark_of_columns_that_are_not_there(tmp_path, mark, says):
    assert says in said(read(tmp_path, {"Doors": LEVELS}, mark=mark))
