"""Fields of a project's own."""

import pytest

from hwsched.model import errors
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.queries import read_extra, read_own_fields
from hwsched.model.tables import ITEM_TABLE, OPENING_TABLE, PART
from hwsched.operations.project.history import undo
from hwsched.operations.survey.editing import add_item, add_opening
from hwsched.operations.survey.own_fields import define_field, remove_field, set_own_value
from hwsched.values import Part
from tests.model.backends import furnished
from tests.model.states import state


@furnished
def rows(project):
    """One row of each kind that can have fields."""
    with project.change("import-catalogue", "Parts", "ann") as change:
        write_parts(change, [Part("C-1", "cam")], "test")
    opening = add_opening(project, {"mark": "1"}, who="ann")[1]
    item = add_item(project, opening, {"kind": "lock"}, who="ann")[1]
    return {"opening": opening, "existing_item": item, "part": change.added[0]}


@pytest.mark.parametrize("table", [OPENING_TABLE, ITEM_TABLE, PART], ids=lambda table: table.name)
def test_a_field_is_defined_filled_and_removed(project, rows, table):
    row = rows[table.name]
    define_field(project, table.name, "key_group", "Key group", "choice", who="ann", choices=("AA", "BB"))
    define_field(project, table.name, "gap_mm", "Gap", "length", who="ann")
    set_own_value(project, table.name, row, "key_group", "AA", who="ann")
    changes = set_own_value(project, table.name, row, "gap_mm", 3, who="ann")
    assert changes.entities == {table.name}
    with project.reading() as connection:
        assert read_extra(connection, table) == {row: {"key_group": "AA", "gap_mm": 3.0}}
        assert [(field.name, field.unit) for field in read_own_fields(connection)] == [
            ("gap_mm", "mm"),
            ("key_group", ""),
        ]
    set_own_value(project, table.name, row, "gap_mm", None, who="ann")
    before = state(project)
    remove_field(project, table.name, "key_group", who="ann")
    with project.reading() as connection:
        assert read_extra(connection, table) == {}
        assert [field.name for field in read_own_fields(connection)] == ["gap_mm"]
    undo(project, who="ann")
    assert state(project) == before


@pytest.mark.parametrize(
    ("wrong", "word"),
    [
        ({"entity": "leaf"}, "leaf"),
        ({"name": "key group"}, "letters"),
        ({"name": "hand"}, "built-in"),
        ({"name": "building"}, "built-in"),
        ({"label": " "}, "label"),
        ({"kind": "colour"}, "colour"),
        ({"unit": "furlong"}, "furlong"),
        ({"kind": "choice"}, "words"),
        ({"choices": ("A",)}, "words"),
    ],
)
def test_a_field_that_cannot_be(project, wrong, word):
    field = {"entity": "opening", "name": "key_group", "label": "Key group", "kind": "text", **wrong}
    with pytest.raises(errors.ValueRefusedError, match=word):
        define_field(project, who="ann", **field)
    with project.reading() as connection:
        assert read_own_fields(connection) == []


def test_a_field_is_defined_once(project):
    define_field(project, "opening", "key_group", "Key group", "text", who="ann")
    with pytest.raises(errors.DuplicateValueError):
        define_field(project, "opening", "key_group", "Other", "text", who="ann")


def test_a_value_that_cannot_be(project, rows):
    define_field(project, "opening", "key_group", "Key group", "choice", who="ann", choices=("AA", "BB"))
    before = state(project)
    with pytest.raises(errors.ValueRefusedError, match="Key group"):
        set_own_value(project, "opening", rows["opening"], "key_group", "CC", who="ann")
    with pytest.raises(errors.ValueRefusedError, match="no field"):
        set_own_value(project, "opening", rows["opening"], "other", "AA", who="ann")
    with pytest.raises(errors.ValueRefusedError, match="no field"):
        remove_field(project, "part", "key_group", who="ann")
    with pytest.raises(errors.MissingRowError):
        set_own_value(project, "opening", "nobody", "key_group", "AA", who="ann")
    assert state(project) == before
