"""The key of a case changes with every fact that matters, and with none that does not."""

from dataclasses import fields, replace

import pytest

from hwsched.cases import Case, Catalogue, Chosen, Item, Leaf, Opening, Placed, Settings
from hwsched.cases.case_key import case_key

CASE = Case(
    Opening("o1", "101", hand="LH"), (Leaf("l1", "single"),), (Item("i1", "lock"),), Catalogue({}, "k"), Settings()
)
IGNORED = {"id", "mark", "building", "level", "room_from", "room_to", "wave", "priority", "notes", "item_notes"}


def changed(kind, name):
    hint = kind.__dataclass_fields__[name].type
    return True if "bool" in str(hint) else 7 if "int" in str(hint) else 7.5 if "float" in str(hint) else "other"


@pytest.mark.parametrize("name", [f.name for f in fields(Opening)])
def test_facts_of_the_opening(name):
    other = replace(CASE, opening=replace(CASE.opening, **{name: changed(Opening, name)}))
    assert (case_key(other) == case_key(CASE)) == (name in IGNORED)


@pytest.mark.parametrize("name", [f.name for f in fields(Leaf)])
def test_facts_of_a_leaf(name):
    other = replace(CASE, leaves=(replace(CASE.leaves[0], **{name: changed(Leaf, name)}),))
    assert (case_key(other) == case_key(CASE)) == (name in IGNORED)


@pytest.mark.parametrize("name", [f.name for f in fields(Item)])
def test_facts_of_an_item(name):
    other = replace(CASE, items=(replace(CASE.items[0], **{name: changed(Item, name)}),))
    assert (case_key(other) == case_key(CASE)) == (name in IGNORED)


@pytest.mark.parametrize(
    "other",
    [
        replace(CASE, catalogue=Catalogue({}, "other")),
        replace(CASE, settings=Settings(limits={"a.b": 1.0})),
        replace(CASE, settings=Settings(rules_off=frozenset({"a"}))),
        replace(CASE, settings=Settings(prefer="holes")),
        replace(CASE, chosen=(Chosen("unit", "U"),)),
        replace(CASE, placed=Placed("single", "secured", "above", 1.0, 2.0)),
        replace(CASE, items=()),
    ],
)
def test_what_else_matters(other):
    assert case_key(other) != case_key(CASE)
