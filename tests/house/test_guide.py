"""The handbook says what the calculators declare."""

from tests.house.guide import GUIDE, written


def test_the_handbook_describes_every_calculator_as_declared():
    text = GUIDE.read_text(encoding="utf-8")
    assert text == written(text), "run python -m tests.house.guide"
