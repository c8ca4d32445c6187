"""Every calculator of geometry draws what it was asked and what it answered."""

import math

import pytest

from hwsched.calc.calculators import CALCULATORS
from hwsched.drawings.calculated import calculated
from hwsched.drawings.drawing import Circle, Line

NEW = {
    "placement": "plate", "cable": "cable", "cylinder-stack": "shell", "bore": "bore's axis", "euro-halves": "cylinder",
    "tailpiece": "tailpiece", "bored-prep": "cross bore wanted", "pocket": "unit's pocket", "channel": "channel",
}  # fmt: skip
BY_NAME = {calculator.name: calculator for calculator in CALCULATORS}


@pytest.mark.parametrize("name", NEW)
def test_the_answer_is_drawn_within_its_bounds(name):
    calculator = BY_NAME[name]
    drawn = calculated(name, calculator.example, calculator.run(calculator.example))
    assert drawn is not None
    assert NEW[name] in {shape.name for shape in drawn.shapes if isinstance(shape, Line | Circle)}
    x0, y0, x1, y1 = drawn.bounds
    assert x0 < x1
    assert y0 < y1
    points = [point for shape in drawn.shapes if isinstance(shape, Line) for point in shape.points]
    assert all(math.isfinite(x) and math.isfinite(y) for x, y in points)


def test_the_stack_is_drawn_to_its_numbers():
    calculator = BY_NAME["cylinder-stack"]
    answered = calculator.run(calculator.example)
    drawn = calculated("cylinder-stack", calculator.example, answered)
    shell = next(shape for shape in drawn.shapes if shape.name == "shell")
    top = calculator.example["leaf_mm"] + calculator.example["trim_mm"] + answered["fits"][0]["projection_mm"]
    assert max(y for _, y in shell.points) == pytest.approx(top)


def test_what_is_no_geometry_has_no_drawing():
    assert calculated("conductor", {}, {}) is None


@pytest.mark.parametrize(
    ("name", "less", "more"),
    [
        ("euro-halves", ("inside_trim_mm",), {"half": True, "sizes": [{"part": "a", "a_mm": 30, "b_mm": 10}]}),
        ("euro-halves", ("inside_trim_mm",), {"secured_trim_mm": 20}),
        ("placement", ("keepouts",), {}),
        ("pocket", ("items",), {"items": [{"y0": 1700, "y1": 1760}]}),
    ],
)
def test_what_is_left_out_or_called_by_its_earlier_name_is_drawn(name, less, more):
    calculator = BY_NAME[name]
    asked = {key: value for key, value in calculator.example.items() if key not in less} | more
    drawn = calculated(name, calculator.completed(asked), calculator.run(asked))
    assert drawn is not None
    assert "new" in {shape.pen for shape in drawn.shapes if isinstance(shape, Line)}
