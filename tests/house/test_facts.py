"""The survey's declarations, the plain values and the tables name the same facts."""

from dataclasses import fields

import pytest

from hwsched.model.tables import ITEM_TABLE, LEAF_TABLE, OPENING_TABLE
from hwsched.survey import ENTITIES, ITEM, LEAF, OPENING
from hwsched.values import Item, Leaf, Opening


@pytest.mark.parametrize(("entity", "kind"), [(OPENING, Opening), (LEAF, Leaf), (ITEM, Item)])
def test_values_hold_what_the_survey_declares(entity, kind):
    assert [field.name for field in fields(kind)] == ["id", *(attribute.name for attribute in entity.attributes)]


@pytest.mark.parametrize(("entity", "table"), [(OPENING, OPENING_TABLE), (LEAF, LEAF_TABLE), (ITEM, ITEM_TABLE)])
def test_tables_hold_what_the_survey_declares(entity, table):
    held = {column.name for column in table.columns} | {"building", "level"}
    assert {attribute.name for attribute in entity.attributes} <= held


@pytest.mark.parametrize("entity", ENTITIES, ids=lambda entity: entity.name)
def test_words_of_a_choice_are_not_ambiguous(entity):
    for attribute in entity.attributes:
        words = [
            "".join(character for character in word.casefold() if character.isalnum()) or word
            for choice in attribute.choices
            for word in {choice.value, choice.label, *choice.synonyms}
        ]
        mine = {}
        for choice in attribute.choices:
            for word in {choice.value, choice.label, *choice.synonyms}:
                key = "".join(character for character in word.casefold() if character.isalnum()) or word
                assert mine.setdefault(key, choice.value) == choice.value, f"{attribute.name}: {word}"
        assert bool(words) == (attribute.kind == "choice")


def test_names_carry_their_units():
    for entity in ENTITIES:
        for attribute in entity.attributes:
            if attribute.kind == "length":
                assert attribute.name.endswith("_mm")
