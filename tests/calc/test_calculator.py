"""Reading of one JSON object: what is taken, what is refused, and that each refusal names its field in full."""

from math import inf, nan

import pytest

from hwsched.calc.calculator import InputError, Reader, check_number, check_point

READER = Reader(
    {
        "half": 0.5,
        "three": 3,
        "three_and_a_bit": 3.1,
        "nothing": None,
        "zero": 0,
        "word": "oak",
        "blank": "",
        "yes": True,
        "no": False,
        "list": [1, 2],
        "leaf": {"width_mm": 900},
        "doors": [{"mark": "101"}, {"mark": 102}],
        "point": [1, 2, 3],
    },
    "case",
)


def refused(call, field, words):
    with pytest.raises(InputError) as caught:
        call()
    assert caught.value.field == field
    assert words in caught.value.message
    assert str(caught.value) == f"{field}: {caught.value.message}"


def test_what_is_there_is_read():
    assert READER.number("half") == 0.5
    assert READER.number("three") == 3.0
    assert READER.integer("three") == 3
    assert READER.text("word") == READER.choice("word", ("ash", "oak")) == "oak"
    assert READER.text("blank") == ""
    assert READER.flag("yes") is True
    assert READER.flag("no") is False
    assert READER.items("list") == [1, 2]
    assert READER.object("leaf").number("width_mm") == 900
    assert READER.objects("doors")[0].text("mark") == "101"
    assert READER.point("point", 3) == (1.0, 2.0, 3.0)
    assert READER.optional_number("half") == 0.5
    assert READER.optional_number("zero") == 0.0


@pytest.mark.parametrize("name", ["nothing", "absent"])
def test_absent_and_null_are_the_default_or_missing(name):
    assert READER.raw(name, 7) == 7
    assert READER.number(name, 7) == 7
    assert READER.integer(name, 7) == 7
    assert READER.text(name, "oak") == READER.choice(name, ("oak",), "oak") == "oak"
    assert READER.flag(name, True) is True
    assert READER.items(name, []) == READER.objects(name, []) == []
    assert READER.optional_number(name) is None
    for read in (READER.raw, READER.number, READER.integer, READER.text, READER.flag, READER.items, READER.object):
        refused(lambda read=read: read(name), f"case.{name}", "is missing")


def test_false_and_zero_are_not_absent():
    assert READER.raw("no", 7) is False
    assert READER.number("zero", 7) == 0


@pytest.mark.parametrize(
    ("call", "field", "words"),
    [
        (lambda: Reader([1]), "input", "expected an object, got list"),
        (lambda: Reader(3, "leaf"), "leaf", "expected an object, got int"),
        (lambda: READER.object("word"), "case.word", "expected an object"),
        (lambda: READER.number("word"), "case.word", "must be a number, got 'oak'"),
        (lambda: READER.number("yes"), "case.yes", "must be a number"),
        (lambda: READER.integer("three_and_a_bit"), "case.three_and_a_bit", "must be a whole number, got 3.1"),
        (lambda: READER.text("three"), "case.three", "must be text, got int"),
        (lambda: READER.choice("word", ("ash", "elm")), "case.word", "must be one of ash, elm; got 'oak'"),
        (lambda: READER.flag("zero"), "case.zero", "must be true or false"),
        (lambda: READER.items("word"), "case.word", "must be a list, got str"),
        (lambda: READER.objects("list"), "case.list[0]", "expected an object"),
        (lambda: READER.objects("doors")[1].text("mark"), "case.doors[1].mark", "must be text"),
        (lambda: READER.point("point", 2), "case.point", "a list of 2 numbers"),
        (lambda: READER.number("half", above=0.5), "case.half", "must be more than 0.5, got 0.5"),
        (lambda: READER.number("half", at_least=0.6), "case.half", "must be at least 0.6, got 0.5"),
        (lambda: READER.number("half", at_most=0.4), "case.half", "must be at most 0.4, got 0.5"),
        (lambda: READER.optional_number("half", above=1), "case.half", "must be more than 1"),
        (lambda: READER.optional_number("half", at_least=1), "case.half", "must be at least 1"),
        (lambda: READER.optional_number("half", at_most=0), "case.half", "must be at most 0"),
        (lambda: READER.integer("three", at_least=4), "case.three", "must be at least 4"),
        (lambda: READER.integer("three", at_most=2), "case.three", "must be at most 2"),
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
def test_what_is_refused(call, field, words):
    refused(call, field, words)


def test_limits_themselves():
    assert check_number(0.5, "a", at_least=0.5, at_most=0.5) == 0.5
    assert check_number(0.5000001, "a", above=0.5) == 0.5000001
    assert check_number(1e12, "a") == 1e12
    assert READER.integer("three", at_least=3, at_most=3) == 3
