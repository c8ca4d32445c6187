"""The table of kinds of quantity is whole, and agrees with the unit registry."""

from typing import get_args

import pytest

from hwsched.quantities import DIMENSIONS, Dimension, parse_quantity
from hwsched.quantities.registry import conversion


def test_every_dimension_has_its_facts() -> None:
    assert set(DIMENSIONS) == set(get_args(Dimension))


@pytest.mark.parametrize("dimension", get_args(Dimension))
def test_every_spelling_is_of_its_dimension(dimension: Dimension) -> None:
    facts = DIMENSIONS[dimension]
    assert facts.spellings[facts.unit.lower()] == facts.registry_unit
    for spelling, name in facts.spellings.items():
        assert spelling == spelling.lower()
        factor, _ = conversion(name, facts.registry_unit)  # raises where it is another dimension
        assert factor > 0
        assert parse_quantity(f"3 {spelling}", dimension, None) == parse_quantity(3, dimension, spelling)


@pytest.mark.parametrize("dimension", get_args(Dimension))
def test_what_messages_offer_is_read(dimension: Dimension) -> None:
    facts = DIMENSIONS[dimension]
    parse_quantity(facts.example, dimension, None)
    for unit in facts.accepted.split(", "):
        parse_quantity(f"300 {unit}", dimension, None)
