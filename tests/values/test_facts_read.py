"""The key of facts that were read changes with each of them and no other; a watched case is like any other."""

from dataclasses import fields, replace
from decimal import Decimal

import pytest

from hwsched.rules import in_rulebook
from hwsched.values import (
    Beside,
    Catalogue,
    Chosen,
    Fit,
    HandPlacement,
    Item,
    Leaf,
    LockPoint,
    Opening,
    OpeningInput,
    Part,
    Settings,
    SupplyLink,
)
from hwsched.values.facts_read import ALL, FactsKeys, FactsRead
from hwsched.values.watching import Watch

PARTS = {
    "C-1": Part("C-1", "cam", list_price=Decimal("2.0"), stock=3.0),
    "C-2": Part("C-2", "cam", kit=(("C-1", 2.0),)),
    "U-1": Part("U-1", "surface-unit", preferred=1),
}
GIVEN = OpeningInput(
    Opening("o1", "101", hand="LH"),
    (Leaf("l1", "active"), Leaf("l2", "inactive")),
    (Item("i1", "lock"), Item("i2", "closer")),
    Catalogue(PARTS, "k", "r"),
    Settings(),
)
READ = FactsRead(opening=("hand",), leaf=("width_mm",), item=("x_mm",), settings=("prefer",), limits=("a.wall_mm",),
                 rules=("a",), kinds=("cam",), parts=("U-1", "X-1"))  # fmt: skip


def key(given, read=READ):
    return FactsKeys().key(given, read)


def changed(kind, name):
    hint = str(kind.__dataclass_fields__[name].type)
    return True if "bool" in hint else 7 if "int" in hint else 7.5 if "float" in hint else "other"


def with_part(**facts):
    part = replace(PARTS[facts.pop("number")], **facts)
    return replace(GIVEN, catalogue=Catalogue({**PARTS, part.number: part}, "other", "other"))


@pytest.mark.parametrize("name", [f.name for f in fields(Opening)])
def test_facts_of_the_opening(name):
    other = replace(GIVEN, opening=replace(GIVEN.opening, **{name: changed(Opening, name)}))
    assert (key(other) != key(GIVEN)) == (name == "hand")


@pytest.mark.parametrize("at", [0, 1])
@pytest.mark.parametrize("name", [f.name for f in fields(Leaf)])
def test_facts_of_each_leaf(name, at):
    leaves = [replace(leaf, **{name: changed(Leaf, name)}) if i == at else leaf for i, leaf in enumerate(GIVEN.leaves)]
    assert (key(replace(GIVEN, leaves=tuple(leaves))) != key(GIVEN)) == (name == "width_mm")


@pytest.mark.parametrize("at", [0, 1])
@pytest.mark.parametrize("name", [f.name for f in fields(Item)])
def test_facts_of_each_item(name, at):
    items = [replace(item, **{name: changed(Item, name)}) if i == at else item for i, item in enumerate(GIVEN.items)]
    assert (key(replace(GIVEN, items=tuple(items))) != key(GIVEN)) == (name == "x_mm")


SAME = {
    "a limit that was not asked for": replace(GIVEN, settings=Settings(limits={"b.wall_mm": 1.0})),
    "a rule that was not asked for": replace(GIVEN, settings=Settings(rules_off=frozenset({"b"}))),
    "how lengths are shown, not read": replace(GIVEN, settings=Settings(length_style="mm")),
    "a part of another kind, not asked for": replace(
        GIVEN, catalogue=Catalogue({**PARTS, "L-1": Part("L-1", "gate-lock")}, "other")
    ),
    "stock, where cost ranks": with_part(number="C-1", stock=0.0),
}
OTHER = {
    "a limit": replace(GIVEN, settings=Settings(limits={"a.wall_mm": 1.0})),
    "a rule": replace(GIVEN, settings=Settings(rules_off=frozenset({"a"}))),
    "what ranks": replace(GIVEN, settings=Settings(prefer="holes")),
    "a price of a kind": with_part(number="C-1", list_price=Decimal("3.0")),
    "an attribute of a kind": with_part(number="C-2", attributes={"throw_mm": 3.0}),
    "a kit": with_part(number="C-2", kit=(("C-1", 3.0),)),
    "a further part of a kind": replace(GIVEN, catalogue=Catalogue({**PARTS, "C-3": Part("C-3", "cam")}, "other")),
    "a part that was asked for": with_part(number="U-1", description="Unit"),
    "a part that was asked for in vain": replace(GIVEN, catalogue=Catalogue({**PARTS, "X-1": Part("X-1", "x")}, "o")),
    "a part that is gone": replace(GIVEN, catalogue=Catalogue({n: PARTS[n] for n in ("C-1", "U-1")}, "o")),
    "a choice": replace(GIVEN, chosen=(Chosen("unit", "U-1"),)),
    "a place by hand": replace(GIVEN, placed=HandPlacement("single", "inside", "above", 1.0, 2.0)),
    "a circuit": replace(GIVEN, supply_link=SupplyLink(None)),
    "an item less": replace(GIVEN, items=GIVEN.items[:1]),
    "a leaf less": replace(GIVEN, leaves=GIVEN.leaves[:1]),
}


@pytest.mark.parametrize("what", SAME)
def test_what_nobody_read_wakes_nothing(what):
    assert key(SAME[what]) == key(GIVEN)


@pytest.mark.parametrize("what", OTHER)
def test_what_was_read_wakes(what):
    assert key(OTHER[what]) != key(GIVEN)
    survey = what in ("a choice", "a place by hand", "a circuit", "an item less", "a leaf less")
    assert (key(OTHER[what])[:32] != key(GIVEN)[:32]) == survey, "first half: survey and choices; second: the rest"


def test_a_choice_says_who_made_it():
    by_hand, of_set = (replace(GIVEN, chosen=(Chosen("unit", "U", source=source),)) for source in ("by-hand", "set"))
    assert key(by_hand) != key(of_set)


@pytest.mark.parametrize(("prefer", "matters"), [("stock", True), ("preferred", True), ("cost", False)])
def test_stock_matters_only_where_it_ranks(prefer, matters):
    two = [replace(each, settings=Settings(prefer=prefer)) for each in (GIVEN, with_part(number="C-1", stock=0.0))]
    assert (key(two[0]) != key(two[1])) == matters


def test_all_of_the_catalogue_and_all_limits():
    everything = FactsRead(kinds=(ALL,), limits=(ALL,), rules=(ALL,))
    for other in (
        with_part(number="U-1", list_price=Decimal("1.0")),
        replace(GIVEN, settings=Settings(limits={"b.x": 1.0})),
        replace(GIVEN, settings=Settings(rules_off=frozenset({"b"}))),
    ):
        assert key(other, everything) != key(GIVEN, everything)


def test_a_price_counts_as_it_is_worth_not_as_it_is_written():
    one, other, dearer = (with_part(number="C-1", list_price=Decimal(each)) for each in ("2.5", "2.50", "2.51"))
    assert key(one) == key(other) != key(dearer)


def test_currencies_and_rates_count_where_they_were_read():
    read = FactsRead(settings=("currency", "rates"), catalogue=("currencies", "ranked"))
    rates = replace(GIVEN, settings=Settings(currency="USD", rates={"EUR": Decimal("1.1")}))
    others = (
        GIVEN,
        rates,
        replace(rates, settings=replace(rates.settings, rates={"EUR": Decimal("1.2")})),
        with_part(number="C-1", currency="EUR", list_price=Decimal(2)),
        with_part(number="C-1", preferred=1),
    )
    assert len({key(other, read) for other in others}) == len(others)
    assert len({key(other, FactsRead()) for other in others}) == 1


def test_a_lock_point_counts_by_its_lock_and_what_stands_at_the_earlier_ones_and_not_by_identifiers():
    def point(name, item, others, *beside):
        at = LockPoint(name, item, 2, "closer", others)
        return replace(GIVEN, point=at, beside=tuple(Beside(LockPoint("p", "i1"), fit) for fit in beside))

    second = point("a", "i2", ("i1",), Fit("fits"))
    assert key(second) == key(point("b", "i2", ("i1",), Fit("fits")))
    for other in (
        GIVEN,
        point("a", "i1", ("i2",), Fit("fits")),
        point("a", "i2", ("i1",), None),
        point("a", "i2", ("i1",), Fit("fits", power="supply")),
    ):
        assert key(other)[:32] != key(second)[:32]


def test_nothing_of_a_case_is_forgotten():
    """Whoever adds to a case says how it counts: read by name, as a whole, or as a lock point."""
    read_by_name = {"opening", "leaves", "items", "catalogue", "settings"}
    whole, as_point = {"chosen", "placed", "supply_link"}, {"point", "beside"}
    # What the other doors of a room say is for rules that judge the whole opening: no fit is built by it.
    judged_only = {"closed_rooms"}
    assert in_rulebook("room-way-out").slot == "whole"
    assert {each.name for each in fields(OpeningInput)} == read_by_name | whole | as_point | judged_only


def test_one_maker_of_keys_follows_catalogue_and_settings():
    keys = FactsKeys()
    for given in (GIVEN, OTHER["a price of a kind"], GIVEN, OTHER["a limit"], OTHER["what ranks"], GIVEN):
        assert keys.key(given, READ) == key(given)


def test_a_name_that_is_no_fact_is_an_error():
    with pytest.raises(AttributeError):
        key(GIVEN, FactsRead(opening=("colour",)))


def test_names_are_written_and_read():
    import json

    again = FactsRead.of(json.loads(READ.text))
    assert (again.text, again.key) == (READ.text, READ.key)
    assert [getattr(again, f.name) for f in fields(FactsRead)] == [getattr(READ, f.name) for f in fields(FactsRead)]
    assert FactsRead.of({"opening": ["hand"], "moods": ["x"]}).text == FactsRead(opening=("hand",)).text
    assert FactsRead().text == "{}"


def test_a_watched_case_notes_each_fact_once_and_gives_its_value():
    watch = Watch(GIVEN)
    given = watch.given
    assert watch.read().text == "{}"
    assert [given.opening.hand, given.opening.hand, given.opening.mark, given.opening.id] == ["LH", "LH", "101", "o1"]
    assert [leaf.position for leaf in given.leaves] == ["active", "inactive"]
    assert given.items[1].kind == "closer"
    assert list(watch.rows) == [
        ("opening", "o1", "hand"),
        ("leaf", "l1", "position"),
        ("leaf", "l2", "position"),
        ("existing_item", "i2", "kind"),
    ]
    read = watch.read()
    assert (read.opening, read.leaf, read.item) == (("hand",), ("position",), ("kind",))
    with pytest.raises(AttributeError):
        _ = given.opening.colour


def test_a_changed_copy_of_a_watched_thing_has_read_all_else_of_it():
    watch = Watch(GIVEN)
    moved = replace(watch.given.items[0], x_mm=1.0)
    assert (moved.kind, moved.x_mm) == ("lock", 1.0)
    assert set(watch.read().item) == {f.name for f in fields(Item)} - {"id", "x_mm"}


def test_limits_are_noted_by_name_also_where_none_is_changed():
    watch = Watch(GIVEN)
    settings, declared = watch.given.settings, {"wall_mm": 2.0, "edge_mm": 3.0}
    assert settings.limits_for("a", declared) == declared
    assert settings.limits_for("a", declared) == declared
    assert settings.limits
    assert "b" not in settings.rules_off
    assert settings.prefer == "cost"
    read = watch.read()
    assert read.limits == ("a.edge_mm", "a.wall_mm")
    assert (read.rules, read.settings) == (("b",), ("prefer",))


@pytest.mark.parametrize(
    ("look", "names"),
    [
        (lambda given: given.settings.limits.get("a.wall_mm"), {"limits": ("a.wall_mm",)}),
        (lambda given: "a.wall_mm" in given.settings.limits, {"limits": ("a.wall_mm",)}),
        (lambda given: dict(given.settings.limits), {"limits": (ALL,)}),
        (lambda given: len(given.settings.limits), {"limits": (ALL,)}),
        (lambda given: sorted(given.settings.rules_off), {"rules": (ALL,)}),
        (lambda given: given.settings.rules_off & {"a", "b"}, {"rules": ("a", "b")}),
        (lambda given: given.settings.rules_off.isdisjoint({"b"}), {"rules": ("b",)}),
        (lambda given: bool(given.settings.rules_off), {"rules": (ALL,)}),
        (lambda given: given.catalogue.of_kind("cam", "wire"), {"kinds": ("cam", "wire")}),
        (lambda given: (given.catalogue.get("U-1"), given.catalogue.get("X")), {"parts": ("U-1", "X")}),
        (lambda given: given.catalogue.parts["U-1"], {"kinds": (ALL,)}),
        (lambda given: given.catalogue.ranked, {"catalogue": ("ranked",)}),
        (lambda given: given.exchange, {"catalogue": ("currencies",)}),
        (lambda given: given.catalogue.key, {"kinds": (ALL,)}),
    ],
)
def test_whatever_is_looked_at_is_noted(look, names):
    changed_too = replace(GIVEN, settings=Settings(limits={"a.wall_mm": 1.0}, rules_off=frozenset({"a"})))
    watch = Watch(changed_too)
    assert look(watch.given) == look(changed_too)
    read = watch.read()
    noted = {name: getattr(read, name) for name in ("limits", "rules", "catalogue", "kinds", "parts")}
    got = {name: each for name, each in noted.items() if each and name in names}
    # Some ways of asking look at single members too; that notes no less.
    assert all(set(each) <= set(got[name]) for name, each in names.items())
    assert not {name for name, each in noted.items() if each} - names.keys()
