"""The length calculator: a JSON object in, a JSON object out."""

import json
import math

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.survey.length import LENGTH


@pytest.mark.parametrize(
    ("text", "unit", "answer"),
    [
        ("3'-0\"", None, {"mm": 914.4}),
        ("70", "mm", {"mm": 70.0}),
        (915, "mm", {"mm": 915.0}),
        (36.5, "in", {"mm": 927.1}),
        ("0,91 m", None, {"mm": 910.0}),
        ("3'-0\" x 7'-0\"", None, {"width_mm": 914.4, "height_mm": 2133.6}),
        ("3068", None, {"width_mm": 914.4, "height_mm": 2032.0}),
        ("2(3'-0\")", None, {"mm": 914.4, "leaves": 2}),
        ("2-3068 DBL", None, {"width_mm": 914.4, "height_mm": 2032.0, "leaves": 2}),
        ('34"-48"', None, {"low_mm": 863.6, "high_mm": 1219.2}),
    ],
)
def test_answers(text: object, unit: str | None, answer: dict[str, float]) -> None:
    found = LENGTH.run({"text": text, "bare_unit": unit})
    assert found == pytest.approx(answer)
    assert list(found) == list(answer)
    assert json.loads(json.dumps(found)) == found


@pytest.mark.parametrize(
    ("text", "unit", "said"),
    [
        ("70", None, "no unit"),
        (70, None, "no unit"),
        ("6/8", "in", "6'-8\""),
        ("30/68", None, "6'-8\""),
        ("3..35", None, "not read"),
        ("", "mm", "no length"),
        (math.nan, "mm", "finite"),
        (-1, "mm", "negative"),
        (True, "mm", "must be text or a number"),
        ([36], "mm", "must be text or a number"),
    ],
)
def test_refused_texts_name_the_field(text: object, unit: str | None, said: str) -> None:
    with pytest.raises(InputError) as refused:
        LENGTH.run({"text": text, "bare_unit": unit})
    assert refused.value.field == "text"
    assert said in refused.value.message


def test_input_that_is_none() -> None:
    with pytest.raises(InputError, match="text: is missing"):
        LENGTH.run({"bare_unit": "mm"})
    with pytest.raises(InputError, match="bare_unit: must be one of in, ft, mm, cm, m"):
        LENGTH.run({"text": "70", "bare_unit": "yd"})
    with pytest.raises(InputError, match="bare_unit"):
        LENGTH.run({"text": "70", "bare_unit": 3})


def test_unit_may_be_left_out_and_the_example_works() -> None:
    assert LENGTH.run({"text": "36 in"}) == {"mm": 914.4}
    assert LENGTH.run(LENGTH.example) == {"mm": 927.1}


def test_outputs_are_declared() -> None:
    declared = {field.name for field in LENGTH.outputs}
    for text in ("36 in", "3068", "2(3')", "2-3068", '34"-48"'):
        assert set(LENGTH.run({"text": text})) <= declared
