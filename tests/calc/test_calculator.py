"""Reading of one JSON object: what is taken, what is refused, and that each refusal names its field in full."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from math import inf, nan
from typing import Annotated, NamedTuple

import pytest

from hwsched.calc.calculator import Calculator, InputError, Said, Within, check, check_number, check_point
from hwsched.calc.declaration import INLINE, FieldsOf, Values
from hwsched.calc.limits import NotNegative, Positive
from hwsched.calc.records import check_arguments, record_of


class Spot(NamedTuple):
    x: Annotated[float, Said()]
    y: Annotated[float, Said()]


@dataclass(frozen=True, slots=True)
class Door:
    mark: Annotated[str, Said("What it is called.", numbered="door {}")]
    spot: Annotated[Spot, INLINE]
    floor: float | None = None
    """Without a text it is none of the object."""


@dataclass(frozen=True, slots=True)
class Rod:
    length_mm: Annotated[Positive, Said("Its length.")]


@dataclass(frozen=True, slots=True)
class Plate:
    width_mm: Annotated[Positive, Said("Its width.")]
    height_mm: Annotated[Positive, Said("Its height.", like="width_mm")]


@dataclass(frozen=True, slots=True)
class Everything:
    half: Annotated[float, Said("A number.")] = 7.0
    above: Annotated[float, Within(above=0.5), Said("A number.")] = 7.0
    at_least: Annotated[float, Within(at_least=0.6), Said("A number.")] = 7.0
    at_most: Annotated[float, Within(at_most=0.4), Said("A number.")] = 0.0
    below: Annotated[float, Within(at_least=0, below=1), Said("A number.")] = 0.0
    angle: Annotated[float, Within(above=-90, below=90), Said("A number.")] = 0.0
    optional: Annotated[Positive | None, Said("A number.")] = None
    three: Annotated[int, Within(at_least=3, at_most=5), Said("A whole number.")] = 3
    word: Annotated[str, Said("Text.")] = "oak"
    wood: Annotated[str, Said("One of a few.", choices=("ash", "oak"), earlier_words={"quercus": "oak"})] = "ash"
    yes: Annotated[bool, Said("A flag.")] = False
    day: Annotated[date | None, Said("A date.")] = None
    numbers: Annotated[Sequence[NotNegative], Said("A list.")] = ()
    doors: Annotated[tuple[Door, ...], Said("Objects.")] = ()
    pieces: Annotated[tuple[Plate | Rod, ...], Said("Objects of two kinds.")] = ()
    point: Annotated[tuple[float, float, float] | None, Said("Three numbers.")] = None
    centre: Annotated[tuple[float, float], Said("An object of two.", keys=("x", "y"))] = (0.0, 0.0)
    step: Annotated[Positive | None, Said("Null is none, nothing is the usual one.")] = 3.0
    width_mm: Annotated[Positive, Said("Within an object of fields.", at="leaf.width_mm", default=900.0)] = 900.0
    renamed: Annotated[float, Said("Of another name before.", earlier="called")] = 1.0
    unless: Annotated[float, Said("Beside `yes` it may be left out.", unless="yes", default=5.0)] = 5.0
    given: Annotated[float, Said("Must be given though Python has a default.", needed=True)] = 0.0


@dataclass(frozen=True, slots=True)
class Answer:
    everything: Annotated[Everything, INLINE]
    hidden: float = 0.0

    @property
    def twice(self) -> Annotated[float, Said()]:
        """Twice what was given."""
        return 2 * self.everything.given


def work(everything: Everything) -> Answer:
    check(everything)
    return Answer(everything)


CALCULATOR = Calculator(
    "all", "All shapes", "none", work, {"given": 1, "leaf": {}, "unless": 2}, groups={"leaf": "The leaf."}
)
LEAST = CALCULATOR.example


def read(**change):
    return record_of(work).values({**LEAST, **change}, "")["everything"]


def refused(call, field, words):
    with pytest.raises(InputError) as caught:
        call()
    assert caught.value.field == field
    assert words in caught.value.message
    assert str(caught.value) == f"{field}: {caught.value.message}"


def test_what_is_there_is_read():
    assert read(half=0.5).half == 0.5
    assert type(read(half=3).half) is float
    assert type(read(three=3.0).three) is int
    assert read(word="").word == ""
    assert read(word="elm", wood="oak").wood == "oak"
    assert read(yes=True).yes is True
    assert read(numbers=[1, 2]).numbers == (1, 2)
    assert read(leaf={"width_mm": 800}).width_mm == 800
    assert read(point=[1, 2, 3]).point == (1, 2, 3)
    assert read(centre={"x": 1, "y": 2}).centre == (1, 2)
    assert read(optional=0.5).optional == 0.5
    assert read(day="2025-03-01").day == date(2025, 3, 1)
    assert read(doors=[{"x": 1, "y": 2}, {"mark": "B", "x": 3, "y": 4}]).doors == (
        Door("door 1", Spot(1, 2)),
        Door("B", Spot(3, 4)),
    )
    assert read(pieces=[{"width_mm": 3}, {"length_mm": 4}]).pieces == (Plate(3, 3), Rod(4))


def test_absent_and_null_are_the_default_or_missing():
    names = [each.name for each in CALCULATOR.inputs if each.name not in (*LEAST, "step")]
    assert read(**dict.fromkeys(names)) == read() == Everything(given=1, unless=2)
    for name in LEAST:
        refused(lambda name=name: read(**{name: None}), name, "is missing")
    refused(lambda: read(doors=[{"x": 1}]), "doors[0].y", "is missing")
    refused(lambda: record_of(work).values({"given": 1}, ""), "leaf", "is missing")


def test_null_differs_from_nothing_where_none_is_a_value_besides_the_default():
    assert read().step == 3
    assert read(step=None).step is None


def test_what_may_be_left_out_beside_another_field():
    assert read(yes=True, unless=None).unless == 5
    assert read(yes=True, unless=3).unless == 3
    assert read(yes=False, unless=3).unless == 3
    refused(lambda: read(yes=False, unless=None), "unless", "is missing")


def test_false_and_zero_are_not_absent():
    assert read(yes=False).yes is False
    assert read(half=0).half == 0


@pytest.mark.parametrize(
    ("change", "field", "words"),
    [
        ({"leaf": [1]}, "leaf", "expected an object, got list"),
        ({"doors": [3]}, "doors[0]", "expected an object, got int"),
        ({"half": "word"}, "half", "must be a number, got 'word'"),
        ({"half": True}, "half", "must be a number"),
        ({"three": 3.1}, "three", "must be a whole number, got 3.1"),
        ({"word": 3}, "word", "must be text, got int"),
        ({"wood": 3}, "wood", "must be text, got int"),
        ({"wood": "elm"}, "wood", "must be one of ash, oak; got 'elm'"),
        ({"yes": 0}, "yes", "must be true or false"),
        ({"day": "1/3/2025"}, "day", "must be a date such as 2025-03-01, got '1/3/2025'"),
        ({"numbers": "word"}, "numbers", "must be a list, got str"),
        ({"numbers": [1, -1]}, "numbers[1]", "must be at least 0, got -1"),
        ({"numbers": [1, None]}, "numbers[1]", "must be a number, got None"),
        ({"doors": [{"x": 1, "y": 2}, {"mark": 102, "x": 1, "y": 2}]}, "doors[1].mark", "must be text"),
        ({"pieces": [{"length_mm": 0}]}, "pieces[0].length_mm", "must be more than 0"),
        ({"pieces": [{}]}, "pieces[0].width_mm", "is missing"),
        ({"point": [1, 2]}, "point", "a list of 3 numbers"),
        ({"centre": [1, 2]}, "centre", "expected an object, got list"),
        ({"centre": {"x": 1}}, "centre.y", "is missing"),
        ({"above": 0.5}, "above", "must be more than 0.5, got 0.5"),
        ({"at_least": 0.5}, "at_least", "must be at least 0.6, got 0.5"),
        ({"at_most": 0.5}, "at_most", "must be at most 0.4, got 0.5"),
        ({"below": 1}, "below", "is a share and must be below 1, got 1"),
        ({"below": -0.1}, "below", "must be at least 0, got -0.1"),
        ({"angle": 90}, "angle", "must be more than -90 and less than 90, got 90"),
        ({"optional": 0}, "optional", "must be more than 0"),
        ({"three": 2}, "three", "must be at least 3"),
        ({"three": 6}, "three", "must be at most 5"),
        ({"leaf": {"width_mm": 0}}, "leaf.width_mm", "must be more than 0"),
        ({"called": "x"}, "called", "must be a number, got 'x'"),
    ],
)
def test_what_is_refused(change, field, words):
    refused(lambda: CALCULATOR.run({**LEAST, **change}), field, words)


@pytest.mark.parametrize(
    ("call", "field", "words"),
    [
        (lambda: CALCULATOR.run([1]), "input", "expected an object, got list"),  # type: ignore[arg-type]
        (lambda: check_number(nan, "a"), "a", "must be a finite number"),
        (lambda: check_number(-inf, "a"), "a", "must be a finite number"),
        (lambda: check_number(10**400, "a"), "a", "is too large"),
        (lambda: check_number(-1.1e12, "a"), "a", "is too large: -1.1e+12"),
        (lambda: check_number(True, "a"), "a", "must be a number, got True"),
        (lambda: check_point((1, "b"), "a", 2), "a[1]", "must be a number"),
        (lambda: check_point("ab", "a", 2), "a", "must be a list of 2 numbers"),
        (lambda: check_point([1, 2, 3], "a", 2), "a", "must be a list of 2 numbers"),
    ],
)
def test_what_is_refused_of_single_values(call, field, words):
    refused(call, field, words)


def test_limits_themselves():
    assert check_number(0.5, "a", at_least=0.5, at_most=0.5) == 0.5
    assert check_number(0.5000001, "a", above=0.5) == 0.5000001
    assert check_number(1e12, "a") == 1e12
    taken = read(above=0.5000001, at_least=0.6, at_most=0.4, three=5, below=0.9999999, angle=-89.9999999)
    check(taken)
    assert (taken.above, taken.at_least, taken.at_most, taken.three) == (0.5000001, 0.6, 0.4, 5)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"above": 0.5}, "above"),
        ({"at_least": nan}, "at_least"),
        ({"below": 1.0}, "below"),
        ({"angle": -90.0}, "angle"),
        ({"optional": 0.0}, "optional"),
        ({"three": 2}, "three"),
        ({"half": None}, "half"),
        ({"half": "x"}, "half"),
        ({"half": 1.1e12}, "half"),
        ({"wood": "elm"}, "wood"),
        ({"numbers": (0.0, -1.0)}, "numbers[1]"),
        ({"doors": (Door("A", Spot(0, 0)), Door("B", Spot(0, inf)))}, "doors[1].y"),
        ({"pieces": (Plate(1, 1), Rod(0))}, "pieces[1].length_mm"),
        ({"point": (0, nan, 0)}, "point[1]"),
        ({"point": (0, 0)}, "point"),
        ({"centre": (0, nan)}, "centre.y"),
        ({"width_mm": 0}, "leaf.width_mm"),
    ],
)
def test_what_comes_from_python_is_held_against_the_same_limits(change, field):
    with pytest.raises(InputError) as caught:
        check(Everything(**change))
    assert caught.value.field == field
    with pytest.raises(InputError) as within:
        check(Everything(**change), "outer")
    assert within.value.field == f"outer.{field}"


def test_arguments_of_a_function_are_held_against_its_limits():
    def function(size: Positive, door: Annotated[Door, Said("A door.")], other: float = 0.0) -> None:
        check_arguments(function, locals())

    function(1, Door("A", Spot(0, 0)), other=nan)
    refused(lambda: function(0, Door("A", Spot(0, 0))), "size", "must be more than 0")
    refused(lambda: function(1, Door("A", Spot(0, nan))), "door.y", "must be a finite number")


def test_the_earlier_name_is_read_and_both_are_refused():
    assert read(called=3).renamed == 3
    assert read(called=3, renamed=None).renamed == 3
    assert read(renamed=4, called=None).renamed == 4
    refused(lambda: read(called=3, renamed=3), "renamed", "is given beside called, its earlier name")


def test_the_earlier_word_is_read():
    assert read(wood="quercus").wood == "oak"


def test_the_answer_has_what_is_declared_in_the_order_of_the_source():
    told = CALCULATOR.run({**LEAST, "leaf": {"width_mm": 3}, "day": "2025-03-01", "doors": [{"x": 1, "y": 2}]})
    assert list(told) == [each.name for each in CALCULATOR.outputs]
    assert told["twice"] == 2
    assert told["leaf"] == {"width_mm": 3}
    assert told["doors"] == [{"mark": "door 1", "x": 1, "y": 2}]
    assert told["day"] == "2025-03-01"
    assert told["centre"] == {"x": 0, "y": 0}
    assert "hidden" not in told


def test_the_input_with_its_defaults_gives_the_same_answer():
    asked = {**LEAST, "called": 3, "wood": "quercus", "pieces": [{"length_mm": 4}]}
    completed = CALCULATOR.completed(asked)
    assert completed["renamed"] == 3
    assert completed["wood"] == "oak"
    assert completed["half"] == 7
    assert CALCULATOR.run(completed) == CALCULATOR.run(asked)


def test_help_says_kind_limits_default_and_earlier_names():
    by_name = {each.name: each for each in CALCULATOR.inputs}
    for name, terms in {
        "above": "number, above 0.5, default 7",
        "below": "number, 0 to below 1, default 0",
        "angle": "number, above -90 to below 90, default 0",
        "at_most": "number, 0.4 or less, default 0",
        "optional": "number, above 0, default none",
        "three": "integer, 3 to 5, default 3",
        "wood": "choice, one of ash, oak, default ash",
        "yes": "flag, default false",
        "day": "text, default none",
        "numbers": "list, 0 or more, default []",
        "centre": "point of x, y, default [0.0, 0.0]",
        "unless": "number, not needed with yes",
        "given": "number",
    }.items():
        assert by_name[name].terms == terms
    assert by_name["renamed"].about == "Of another name before. Earlier name, still read: called."
    assert by_name["wood"].about == "One of a few. Earlier word, still read: quercus for oak."
    assert [each.name for each in by_name["doors"].fields] == ["mark", "x", "y"]
    assert by_name["doors"].fields[0].default == '"door 1" and so on'
    assert by_name["leaf"].fields[0].terms == "number, above 0, default 900"
    assert by_name["leaf"].text == "The leaf."


def test_fields_of_a_record_wait_for_what_else_it_needs():
    @dataclass(frozen=True)
    class Hole:
        depth_mm: Annotated[Positive, Said("Its depth.")]
        x: float

    def drilled(rest: Annotated[Values, FieldsOf(Hole)], from_edge_mm: Annotated[float, Said("Where.")]) -> Hole:
        return Hole(x=900 - from_edge_mm, **rest)

    assert drilled(**record_of(drilled).values({"depth_mm": 3, "from_edge_mm": 100}, "")) == Hole(3, 800)
    refused(lambda: record_of(drilled).values({"from_edge_mm": 100}, ""), "depth_mm", "is missing")
