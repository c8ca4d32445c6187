"""The key of facts that were read changes with each of them and no other; a watched case is like any other."""

from dataclasses import fields, replace
from decimal import Decimal

import pytest

from hwsched.values import (
    Beside,
    Case,
    Catalogue,
    Chosen,
    Feed,
    Fit,
    Item,
    Leaf,
    LockPoint,
    Opening,
    Part,
    Placed,
    Settings,
)
from hwsched.values.facts_read import ALL, FactsKeys, FactsRead
from hwsched.values.watching import Watch

PARTS = {
    "C-1": Part("C-1", "cam", list_price=Decimal("2.0"), stock=3.0),
    "C-2": Part("C-2", "cam", kit=(("C-1", 2.0),)),
    "U-1": Part("U-1", "surface-unit", preferred=1),
}
CASE = Case(
    Opening("o1", "101", hand="LH"),
    (Leaf("l1", "active"), Leaf("l2", "inactive")),
    (Item("i1", "lock"), Item("i2", "closer")),
    Catalogue(PARTS, "k", "r"),
    Settings(),
)
READ = FactsRead(opening=("hand",), leaf=("width_mm",), item=("x_mm",), settings=("prefer",), limits=("a.wall_mm",),
                 rules=("a",), kinds=("cam",), parts=("U-1", "X-1"))  # fmt: skip


def key(case, read=READ):
    return FactsKeys().key(case, read)


def changed(kind, name):
    hint = str(kind.__dataclass_fields__[name].type)
    return True if "bool" in hint else 7 if "int" in hint else 7.5 if "float" in hint else "other"


def with_part(**facts):
    part = replace(PARTS[facts.pop("number")], **facts)
    return replace(CASE, catalogue=Catalogue({**PARTS, part.number: part}, "other", "other"))


@pytest.mark.parametrize("name", [f.name for f in fields(Opening)])
def test_facts_of_the_opening(name):
    other = replace(CASE, opening=replace(CASE.opening, **{name: changed(Opening, name)}))
    assert (key(other) != key(CASE)) == (name == "hand")


@pytest.mark.parametrize("at", [0, 1])
@pytest.mark.parametrize("name", [f.name for f in fields(Leaf)])
def test_facts_of_each_leaf(name, at):
    leaves = [replace(leaf, **{name: changed(Leaf, name)}) if i == at else leaf for i, leaf in enumerate(CASE.leaves)]
    assert (key(replace(CASE, leaves=tuple(leaves))) != key(CASE)) == (name == "width_mm")


@pytest.mark.parametrize("at", [0, 1])
@pytest.mark.parametrize("name", [f.name for f in fields(Item)])
def test_facts_of_each_item(name, at):
    items = [replace(item, **{name: changed(Item, name)}) if i == at else item for i, item in enumerate(CASE.items)]
    assert (key(replace(CASE, items=tuple(items))) != key(CASE)) == (name == "x_mm")


SAME = {
    "a limit that was not asked for": replace(CASE, settings=Settings(limits={"b.wall_mm": 1.0})),
    "a rule that was not asked for": replace(CASE, settings=Settings(rules_off=frozenset({"b"}))),
    "how lengths are shown, not read": replace(CASE, settings=Settings(length_style="mm")),
    "a part of another kind, not asked for": replace(
        CASE, catalogue=Catalogue({**PARTS, "L-1": Part("L-1", "gate-lock")}, "other")
    ),
    "stock, where cost ranks": with_part(number="C-1", stock=0.0),
}
OTHER = {
    "a limit": replace(CASE, settings=Settings(limits={"a.wall_mm": 1.0})),
    "a rule": replace(CASE, settings=Settings(rules_off=frozenset({"a"}))),
    "what ranks": replace(CASE, settings=Settings(prefer="holes")),
    "a price of a kind": with_part(number="C-1", list_price=Decimal("3.0")),
    "an attribute of a kind": with_part(number="C-2", attributes={"throw_mm": 3.0}),
    "a kit": with_part(number="C-2", kit=(("C-1", 3.0),)),
    "a further part of a kind": replace(CASE, catalogue=Catalogue({**PARTS, "C-3": Part("C-3", "cam")}, "other")),
    "a part that was asked for": with_part(number="U-1", description="Unit"),
    "a part that was asked for in vain": replace(CASE, catalogue=Catalogue({**PARTS, "X-1": Part("X-1", "x")}, "o")),
    "a part that is gone": replace(CASE, catalogue=Catalogue({n: PARTS[n] for n in ("C-1", "U-1")}, "o")),
    "a choice": replace(CASE, chosen=(Chosen("unit", "U-1"),)),
    "a place by hand": replace(CASE, placed=Placed("single", "secured", "above", 1.0, 2.0)),
    "a circuit": replace(CASE, feed=Feed(None)),
    "an item less": replace(CASE, items=CASE.items[:1]),
    "a leaf less": replace(CASE, leaves=CASE.leaves[:1]),
}


@pytest.mark.parametrize("what", SAME)
def test_what_nobody_read_wakes_nothing(what):
    assert key(SAME[what]) == key(CASE)


@pytest.mark.parametrize("what", OTHER)
def test_what_was_read_wakes(what):
    assert key(OTHER[what]) != key(CASE)
    survey = what in ("a choice", "a place by hand", "a circuit", "an item less", "a leaf less")
    assert (key(OTHER[what])[:32] != key(CASE)[:32]) == survey, "first half: survey and choices; second: the rest"


def test_a_choice_says_who_made_it():
    by_hand, of_set = (replace(CASE, chosen=(Chosen("unit", "U", source=source),)) for source in ("by-hand", "set"))
    assert key(by_hand) != key(of_set)


@pytest.mark.parametrize(("prefer", "matters"), [("stock", True), ("preferred", True), ("cost", False)])
def test_stock_matters_only_where_it_ranks(prefer, matters):
    two = [replace(each, settings=Settings(prefer=prefer)) for each in (CASE, with_part(number="C-1", stock=0.0))]
    assert (key(two[0]) != key(two[1])) == matters


def test_all_of_the_catalogue_and_all_limits():
    everything = FactsRead(kinds=(ALL,), limits=(ALL,), rules=(ALL,))
    for other in (
        with_part(number="U-1", list_price=Decimal("1.0")),
        replace(CASE, settings=Settings(limits={"b.x": 1.0})),
        replace(CASE, settings=Settings(rules_off=frozenset({"b"}))),
    ):
        assert key(other, everything) != key(CASE, everything)


def test_a_price_counts_as_it_is_worth_not_as_it_is_written():
    one, other, dearer = (with_part(number="C-1", list_price=Decimal(each)) for each in ("2.5", "2.50", "2.51"))
    assert key(one) == key(other) != key(dearer)


def test_currencies_and_rates_count_where_they_were_read():
    read = FactsRead(settings=("currency", "rates"), catalogue=("currencies", "ranked"))
    rates = replace(CASE, settings=Settings(currency="USD", rates={"EUR": Decimal("1.1")}))
    others = (
        CASE,
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
        return replace(CASE, point=at, beside=tuple(Beside(LockPoint("p", "i1"), fit) for fit in beside))

    second = point("a", "i2", ("i1",), Fit("fitted"))
    assert key(second) == key(point("b", "i2", ("i1",), Fit("fitted")))
    for other in (
        CASE,
        point("a", "i1", ("i2",), Fit("fitted")),
        point("a", "i2", ("i1",), None),
        point("a", "i2", ("i1",), Fit("fitted", power="supply")),
    ):
        assert key(other)[:32] != key(second)[:32]


def test_nothing_of_a_case_is_forgotten():
    """Whoever adds to a case says how it counts: read by name, as a whole, or as a lock point."""
    read_by_name = {"opening", "leaves", "items", "catalogue", "settings"}
    whole, as_point = {"chosen", "placed", "feed"}, {"point", "beside"}
    assert {each.name for each in fields(Case)} == read_by_name | whole | as_point


def test_one_maker_of_keys_follows_catalogue_and_settings():
    keys = FactsKeys()
    for case in (CASE, OTHER["a price of a kind"], CASE, OTHER["a limit"], OTHER["what ranks"], CASE):
        assert keys.key(case, READ) == key(case)


def test_a_name_that_is_no_fact_is_an_error():
    with pytest.raises(AttributeError):
        key(CASE, FactsRead(opening=("colour",)))


def test_names_are_written_and_read():
    import json

    again = FactsRead.of(json.loads(READ.text))
    assert (again.text, again.key) == (READ.text, READ.key)
    assert [getattr(again, f.name) for f in fields(FactsRead)] == [getattr(READ, f.name) for f in fields(FactsRead)]
    assert FactsRead.of({"opening": ["hand"], "moods": ["x"]}).text == FactsRead(opening=("hand",)).text
    assert FactsRead().text == "{}"


def test_a_watched_case_notes_each_fact_once_and_gives_its_value():
    watch = Watch(CASE)
    case = watch.case
    assert watch.read().text == "{}"
    assert [case.opening.hand, case.opening.hand, case.opening.mark, case.opening.id] == ["LH", "LH", "101", "o1"]
    assert [leaf.position for leaf in case.leaves] == ["active", "inactive"]
    assert case.items[1].kind == "closer"
    assert list(watch.rows) == [
        ("opening", "o1", "hand"),
        ("leaf", "l1", "position"),
        ("leaf", "l2", "position"),
        ("existing_item", "i2", "kind"),
    ]
    read = watch.read()
    assert (read.opening, read.leaf, read.item) == (("hand",), ("position",), ("kind",))
    with pytest.raises(AttributeError):
        _ = case.opening.colour


def test_a_changed_copy_of_a_watched_thing_has_read_all_else_of_it():
    watch = Watch(CASE)
    moved = replace(watch.case.items[0], x_mm=1.0)
    assert (moved.kind, moved.x_mm) == ("lock", 1.0)
    assert set(watch.read().item) == {f.name for f in fields(Item)} - {"id", "x_mm"}


def test_limits_are_noted_by_name_also_where_none_is_changed():
    watch = Watch(CASE)
    settings, declared = watch.case.settings, {"wall_mm": 2.0, "edge_mm": 3.0}
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
        (lambda case: case.settings.limits.get("a.wall_mm"), {"limits": ("a.wall_mm",)}),
        (lambda case: "a.wall_mm" in case.settings.limits, {"limits": ("a.wall_mm",)}),
        (lambda case: dict(case.settings.limits), {"limits": (ALL,)}),
        (lambda case: len(case.settings.limits), {"limits": (ALL,)}),
        (lambda case: sorted(case.settings.rules_off), {"rules": (ALL,)}),
        (lambda case: case.settings.rules_off & {"a", "b"}, {"rules": ("a", "b")}),
        (lambda case: case.settings.rules_off.isdisjoint({"b"}), {"rules": ("b",)}),
        (lambda case: bool(case.settings.rules_off), {"rules": (ALL,)}),
        (lambda case: case.catalogue.of_kind("cam", "wire"), {"kinds": ("cam", "wire")}),
        (lambda case: (case.catalogue.get("U-1"), case.catalogue.get("X")), {"parts": ("U-1", "X")}),
        (lambda case: case.catalogue.parts["U-1"], {"kinds": (ALL,)}),
        (lambda case: case.catalogue.ranked, {"catalogue": ("ranked",)}),
        (lambda case: case.exchange, {"catalogue": ("currencies",)}),
        (lambda case: case.catalogue.key, {"kinds": (ALL,)}),
    ],
)
def test_whatever_is_looked_at_is_noted(look, names):
    changed_too = replace(CASE, settings=Settings(limits={"a.wall_mm": 1.0}, rules_off=frozenset({"a"})))
    watch = Watch(changed_too)
    assert look(watch.case) == look(changed_too)
    read = watch.read()
    noted = {name: getattr(read, name) for name in ("limits", "rules", "catalogue", "kinds", "parts")}
    got = {name: each for name, each in noted.items() if each and name in names}
    # Some ways of asking look at single members too; that notes no less.
    assert all(set(each) <= set(got[name]) for name, each in names.items())
    assert not {name for name, each in noted.items() if each} - names.keys()
