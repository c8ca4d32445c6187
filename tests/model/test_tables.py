"""Tables follow from the declared facts, and hold what cases need."""

from dataclasses import fields

import pytest
from sqlalchemy import Boolean, Float, Integer, Text

from hwsched.model.columns import ExactText, JsonText, json_text
from hwsched.model.tables import (
    BLANK,
    ITEM_TABLE,
    JOURNALLED,
    LEAF_TABLE,
    METADATA,
    OPENING_TABLE,
    OWNED,
    PART,
    REFERENCES,
)
from hwsched.survey import ENTITIES, POWER_ENTITIES
from hwsched.values import Item, Leaf, Opening, Part

TYPES = {
    "text": Text,
    "length": Float,
    "number": Float,
    "integer": Integer,
    "choice": Text,
    "flag": Boolean,
    "date": Text,
    "money": ExactText,
}


@pytest.mark.parametrize("entity", ENTITIES + POWER_ENTITIES, ids=lambda entity: entity.name)
def test_every_declared_fact_is_a_column_of_its_type(entity):
    table = JOURNALLED[entity.name]
    for attribute in entity.attributes:
        if attribute.name in ("building", "level"):
            continue
        column = table.c[attribute.name]
        assert isinstance(column.type, TYPES[attribute.kind])
        assert column.nullable is not attribute.required


@pytest.mark.parametrize(
    ("kind", "table"), [(Opening, OPENING_TABLE), (Leaf, LEAF_TABLE), (Item, ITEM_TABLE), (Part, PART)]
)
def test_every_fact_of_a_case_is_held(kind, table):
    elsewhere = {"building", "level", "kit"}
    assert {field.name for field in fields(kind)} - elsewhere <= set(table.c.keys())


def test_every_journalled_row_has_an_identifier_and_a_version():
    for name, table in JOURNALLED.items():
        assert [column.name for column in table.primary_key] == ["id"]
        assert not table.c.version.nullable
        assert BLANK[name]["version"] == 1


def test_a_blank_row_has_a_value_for_every_column_that_cannot_be_unknown_by_itself():
    for name, table in JOURNALLED.items():
        for column in table.columns:
            if column.server_default is not None:
                held = (
                    json_text(BLANK[name][column.name])
                    if isinstance(column.type, JsonText)
                    else BLANK[name][column.name]
                )
                said = str(held).lower() if isinstance(held, bool) else str(held)
                assert said == str(column.server_default.arg).strip("'")


def test_owners_stand_before_what_they_own():
    order = list(JOURNALLED)
    for owner, children in OWNED.items():
        for child, _ in children:
            assert order.index(owner) < order.index(child.name)


def test_every_reference_to_a_journalled_table_is_known_to_undo():
    for table in JOURNALLED.values():
        for column in table.columns:
            for key in column.foreign_keys:
                target = key.column.table.name
                assert REFERENCES[table.name].get(column.name) == (target if target in JOURNALLED else None)


def test_nothing_is_removed_behind_the_journals_back():
    for table in METADATA.tables.values():
        for key in table.foreign_keys:
            assert key.ondelete is None
