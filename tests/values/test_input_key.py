"""The key of a case changes with every fact that matters, and with none that does not."""

from dataclasses import fields, replace

import pytest

from hwsched.values import Catalogue, Chosen, HandPlacement, Item, Leaf, Opening, OpeningInput, Settings, SupplyLink
from hwsched.values import input_key as keys
from hwsched.values.input_key import input_key, survey_key

GIVEN = OpeningInput(
    Opening("o1", "101", hand="LH"), (Leaf("l1", "single"),), (Item("i1", "lock"),), Catalogue({}, "k"), Settings()
)
IGNORED = {
    *("id", "mark", "building", "level", "room_from", "room_to", "wave", "priority", "notes", "item_notes"),
    *("plan_x_m", "plan_y_m", "difficulty", "installed_on"),
}


def changed(kind, name):
    hint = kind.__dataclass_fields__[name].type
    return True if "bool" in str(hint) else 7 if "int" in str(hint) else 7.5 if "float" in str(hint) else "other"


@pytest.mark.parametrize("name", [f.name for f in fields(Opening)])
def test_facts_of_the_opening(name):
    other = replace(GIVEN, opening=replace(GIVEN.opening, **{name: changed(Opening, name)}))
    assert (input_key(other) == input_key(GIVEN)) == (name in IGNORED)


@pytest.mark.parametrize("name", [f.name for f in fields(Leaf)])
def test_facts_of_a_leaf(name):
    other = replace(GIVEN, leaves=(replace(GIVEN.leaves[0], **{name: changed(Leaf, name)}),))
    assert (input_key(other) == input_key(GIVEN)) == (name in IGNORED)


@pytest.mark.parametrize("name", [f.name for f in fields(Item)])
def test_facts_of_an_item(name):
    other = replace(GIVEN, items=(replace(GIVEN.items[0], **{name: changed(Item, name)}),))
    assert (input_key(other) == input_key(GIVEN)) == (name in IGNORED)


@pytest.mark.parametrize(
    "other",
    [
        replace(GIVEN, catalogue=Catalogue({}, "other")),
        replace(GIVEN, settings=Settings(limits={"a.b": 1.0})),
        replace(GIVEN, settings=Settings(rules_off=frozenset({"a"}))),
        replace(GIVEN, settings=Settings(prefer="holes")),
        replace(GIVEN, chosen=(Chosen("unit", "U"),)),
        replace(GIVEN, placed=HandPlacement("single", "inside", "above", 1.0, 2.0)),
        replace(GIVEN, items=()),
        replace(GIVEN, supply_link=SupplyLink(None)),
        replace(GIVEN, supply_link=SupplyLink("S")),
    ],
)
def test_what_else_matters(other):
    assert input_key(other) != input_key(GIVEN)


def test_a_line_of_a_set_is_not_a_choice_by_hand():
    by_hand = replace(GIVEN, chosen=(Chosen("unit", "U"),))
    of_set = replace(GIVEN, chosen=(Chosen("unit", "U", source="set"),))
    assert input_key(by_hand) != input_key(of_set)


@pytest.mark.parametrize(
    ("prefer", "matters"), [("cost", False), ("holes", False), ("stock", True), ("preferred", True)]
)
def test_stock_matters_only_where_it_ranks(prefer, matters):
    keys = {
        input_key(replace(GIVEN, catalogue=Catalogue({}, "k", ranks), settings=Settings(prefer=prefer)))
        for ranks in ("one", "other")
    }
    assert (len(keys) == 2) == matters


def test_waivers_and_packets_of_earlier_projects_keep_their_keys():
    """Made by the versions before: what they have stored still belongs to its facts, known later ones included."""
    assert survey_key(GIVEN) == "5069e7b6829391aa2eee6d9a1a4d615b5c8778d90b8bc53b8831eaec1ea60619"
    more = replace(
        GIVEN,
        opening=replace(GIVEN.opening, operations_day_off=4.0),
        items=(*GIVEN.items, Item("i2", "closer", fail="secure")),
        chosen=(Chosen("unit", "U", source="set"),),
        placed=HandPlacement("single", "inside", "above", 1.0, 2.0),
        supply_link=SupplyLink("S"),
    )
    assert survey_key(more) == "041385b92ce400122ff6ee06f2358ea4704507f17764d88d2cceeedb42406625"


@pytest.mark.parametrize("kind", [Opening, Leaf, Item])
def test_a_fact_that_came_later_counts_only_where_it_is_known(kind):
    """Every fact is one of the first version, is ignored, or enters by its name: none can be forgotten."""
    for name in {f.name for f in fields(kind)} - IGNORED:
        later = name not in keys._FIRST[kind]
        assert (name in keys._LATER[kind][0]) == later
