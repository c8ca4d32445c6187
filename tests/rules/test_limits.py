"""Limits of rules: what a project may set, and what cannot be meant."""

import pytest

from hwsched.rules import RULEBOOK, Limit
from hwsched.rules.wording import length
from hwsched.values import Settings
from tests.rules.scenario import given

EVERY = [(rule, limit) for rule in RULEBOOK for limit in rule.limits]
UNITS = {"mm": "mm", "deg": "deg", "c": "C", "s": "s", "n": "N", "va": "VA", "days": "days", "hours": "h"}
"""Endings of names that say a unit."""


@pytest.mark.parametrize(("rule", "limit"), EVERY, ids=lambda each: getattr(each, "id", None) or each.name)
def test_the_unit_is_the_one_that_the_name_says(rule, limit):
    assert limit.unit == UNITS.get(limit.name.rpartition("_")[2], "")


@pytest.mark.parametrize(("rule", "limit"), EVERY, ids=lambda each: getattr(each, "id", None) or each.name)
def test_nothing_but_a_temperature_can_lie_below_nothing(rule, limit):
    assert limit.low >= 0 or limit.unit == "C"
    assert limit.low < limit.high


@pytest.mark.parametrize("value", [-0.1, 10.1, float("nan")])
def test_a_rule_s_own_limit_lies_within_its_bounds(value):
    with pytest.raises(ValueError, match="does not lie in 0 to 10"):
        Limit("reach_mm", value, "Reach.", "of the test", unit="mm", low=0.0, high=10.0)


def test_bounds_are_a_number_each():
    with pytest.raises(ValueError, match="does not lie"):
        Limit("reach_mm", 1.0, "Reach.", "of the test", unit="mm", low=0.0, high=float("inf"))


@pytest.mark.parametrize(("style", "said"), [("fraction", 'less than 1/64"'), ("mm", "less than 0.1 mm")])
def test_what_is_short_by_a_hair_is_not_short_by_nothing(style, said):
    assert length(given(settings=Settings(length_style=style)), 0.02) == said
