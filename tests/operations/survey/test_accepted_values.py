"""What a fact may hold."""

from decimal import Decimal

import pytest

from hwsched.attributes import Attribute, Choice
from hwsched.model.errors import ValueRefusedError
from hwsched.operations.survey.accepted_values import accepted

KINDS = {
    "text": Attribute("notes", "Notes"),
    "length": Attribute("backset_mm", "Backset", "length", "mm", low=10, high=200),
    "number": Attribute("ops", "Operations", "number", low=0),
    "integer": Attribute("priority", "Priority", "integer", low=0, high=999),
    "flag": Attribute("stair", "Stair door", "flag"),
    "choice": Attribute("hand", "Hand", "choice", choices=(Choice("LH", "LH"), Choice("RH", "RH"))),
    "date": Attribute("due", "Due", "date"),
    "money": Attribute("list_price", "List price", "money", low=0),
}


@pytest.mark.parametrize(
    ("kind", "value", "held"),
    [
        ("text", " 0012 ", "0012"),
        ("text", "9E4", "9E4"),
        ("text", "=1+1", "=1+1"),
        ("text", "  ", None),
        ("length", 70, 70.0),
        ("length", 10, 10.0),
        ("length", 200.0, 200.0),
        ("number", 0, 0.0),
        ("integer", 7, 7),
        ("integer", 7.0, 7),
        ("flag", False, False),
        ("choice", "LH", "LH"),
        ("date", "2031-12-24", "2031-12-24"),
        ("money", 12.1, Decimal("12.1")),
        ("money", 3, Decimal(3)),
        ("money", Decimal("0.10"), Decimal("0.1")),
        *((kind, None, None) for kind in KINDS),
    ],
)
def test_what_is_held(kind, value, held):
    found = accepted(KINDS[kind], value)
    assert found == held
    assert type(found) is type(held)


@pytest.mark.parametrize(
    ("kind", "value"),
    [
        ("text", 7),
        ("text", "a\x00b"),
        ("length", "70"),
        ("length", 9.9),
        ("length", 200.1),
        ("length", True),
        ("length", float("nan")),
        ("number", float("inf")),
        ("number", -1),
        ("integer", 7.5),
        ("integer", 1000),
        ("flag", 1),
        ("flag", "yes"),
        ("choice", "lh"),
        ("choice", 7),
        ("date", "24.12.2031"),
        ("money", "12.10"),
        ("money", -0.01),
        ("money", True),
        ("money", float("inf")),
        ("date", "2031-02-30"),
    ],
)
def test_what_is_refused_with_what_is_accepted(kind, value):
    with pytest.raises(ValueRefusedError, match="accepted") as refused:
        accepted(KINDS[kind], value)
    assert refused.value.field == KINDS[kind].label


@pytest.mark.parametrize("value", [None, "", " "])
def test_what_must_be_known(value):
    with pytest.raises(ValueRefusedError, match="cannot be unknown"):
        accepted(Attribute("mark", "Mark", required=True), value)
