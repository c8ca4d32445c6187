"""Sentences whose words are new are hashed as they were: a waiver that was given for one is not woken."""

import pytest

from hwsched.rules import rule_named
from hwsched.values.earlier_words import in_first_words


@pytest.mark.parametrize("rule", ["supply-drop", "circuit-voltage", "standby-capacity"])
def test_a_rule_that_is_called_by_its_title_is_hashed_as_by_its_identifier(rule):
    said = f"conductors at the temperature of the rule '{rule_named(rule).title}', as laid"
    assert in_first_words(said) == f"conductors at the temperature of the rule {rule}, as laid"


def test_what_an_opening_without_a_fit_draws_is_hashed_as_it_was_said():
    said = '["what M1 draws is unknown: its fit waits for facts", "no combination of parts fits it"]'
    assert in_first_words(said) == '["what M1 draws is unknown: its fit is to-measure", "its fit is does-not-fit"]'
