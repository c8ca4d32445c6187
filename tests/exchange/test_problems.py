"""Refusals are named so that a person finds them."""

import doctest

import pytest

from hwsched.attributes import CellError
from hwsched.exchange import container, problems, sheet_scan, workbook
from hwsched.exchange.problems import CellProblem, FileProblem, InputRejected, column_letter, problem_of
from hwsched.exchange.sheet_scan import column_index


@pytest.mark.parametrize("module", [container, problems, sheet_scan, workbook])
def test_examples(module):
    assert doctest.testmod(module).failed == 0


def test_a_cell_is_named_with_all_that_finds_it():
    error = CellError("3..35", "is no length", "70 mm")
    problem = problem_of(error, file="survey.xlsx", sheet="Doors", row=7, column=5, header="Leaf\nthickness [mm]")
    expected = (
        "survey.xlsx, sheet Doors, row 7, column F (Leaf thickness [mm]): read '3..35'; is no length; accepted: 70 mm"
    )
    assert problem.describe() == expected


@pytest.mark.parametrize(
    ("problem", "expected"),
    [
        (CellProblem("f", "s", 3, "B", "Mark", "", "is bare"), "f, sheet s, row 3, column B (Mark): empty; is bare"),
        (CellProblem("f", "s", 3, "", "", "", "has no column Mark"), "f, sheet s, row 3: has no column Mark"),
        (CellProblem("f", "s", 3, "B", "", "x" * 99, "odd"), f"f, sheet s, row 3, column B: read '{'x' * 77}...'; odd"),
        (CellProblem("f", "s", 3, "B", "", "a\nb", "is odd"), "f, sheet s, row 3, column B: read 'a b'; is odd"),
        (FileProblem("f", "is damaged"), "f: is damaged"),
        (FileProblem("f", "is odd", "s", "another"), "f, sheet s: is odd; accepted: another"),
    ],
)  # fmt: skip
def test_one_line_each(problem, expected):
    assert problem.describe() == expected
    assert "\n" not in problem.describe()


def test_a_rejection_holds_and_says_all_of_them():
    found = [FileProblem("f", "is damaged"), CellProblem("f", "s", 1, "A", "", "x", "is odd")]
    rejected = InputRejected(found)
    assert rejected.problems == tuple(found)
    assert str(rejected).splitlines() == [problem.describe() for problem in found]


@pytest.mark.parametrize("index", [*range(60), 701, 702, 703, 16383])
def test_letters_of_columns_and_back(index):
    assert column_index(column_letter(index)) == index


def refused(row, read="STL", column="F"):
    return CellProblem("s.xlsx", "Doors", row, column, "Material", read, "is none of the words", "Wood")


def test_one_cause_is_one_line_with_its_rows():
    problems = [
        *(refused(row) for row in range(2, 188)),
        refused(190, "stl"),
        refused(191, "PLY"),
        refused(3, column="G"),
    ]
    problems.append(FileProblem("s.xlsx", "is odd"))
    lines = str(InputRejected(problems)).split("\n")
    assert len(lines) == 4
    assert lines[0].startswith("s.xlsx, sheet Doors, 187 rows (2-187, 190), column F (Material): read 'STL'; is none")
    assert lines[1].startswith("s.xlsx, sheet Doors, row 191, column F (Material): read 'PLY'")
    assert len(InputRejected(problems).problems) == len(problems)
