"""The key of a case changes with every fact that matters, and with none that does not."""

from dataclasses import fields, replace

import pytest

from hwsched.cases import Case, Catalogue, Chosen, Feed, Item, Leaf, Opening, Placed, Settings
from hwsched.cases.case_key import case_key

CASE = Case(
    Opening("o1", "101", hand="LH"), (Leaf("l1", "single"),), (Item("i1", "lock"),), Catalogue({}, "k"), Settings()
)
IGNORED = {
    *("id", "mark", "building", "level", "room_from", "room_to", "wave", "priority", "notes", "item_notes"),
    *("plan_x_m", "plan_y_m", "rise_m", "difficulty", "installed_on"),
}


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
        replace(CASE, feed=Feed(None)),
        replace(CASE, feed=Feed("S")),
    ],
)
def test_what_else_matters(other):
    assert case_key(other) != case_key(CASE)


def test_a_line_of_a_set_is_not_a_choice_by_hand():
    by_hand = replace(CASE, chosen=(Chosen("unit", "U"),))
    of_set = replace(CASE, chosen=(Chosen("unit", "U", source="set"),))
    assert case_key(by_hand) != case_key(of_set)


@pytest.mark.parametrize(
    ("prefer", "matters"), [("cost", False), ("holes", False), ("stock", True), ("preferred", True)]
)
def test_stock_matters_only_where_it_ranks(prefer, matters):
    keys = {
        case_key(replace(CASE, catalogue=Catalogue({}, "k", ranks), settings=Settings(prefer=prefer)))
        for ranks in ("one", "other")
    }
    assert (len(keys) == 2) == matters


def test_a_project_that_knows_nothing_of_later_facts_keeps_its_keys():
    """Made by the first version: fits stored by it still belong to their facts."""
    assert case_key(CASE) == "57a0cf335491ce876e3d5df4f88a4d5d7e6655f0e1c6436b6cca689d937ba7e1"
