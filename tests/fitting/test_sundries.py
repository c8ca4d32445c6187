"""What goes with a lock and a unit: fixings for the wall, sleeves for their holes, tools for the leaf's material."""

import pytest

from hwsched.fitting import fit
from hwsched.rules.judging import check
from hwsched.values import Settings
from tests.fitting.door import door, leaf, lock, opening, part, stock


def numbers(found, role):
    return [p.part for p in found.parts if p.role == role]


WALL = [
    part("WPLUG", "fastener", 0.1, form="screw-and-plug", size="#6", wall_build="masonry"),
    part("WANCH", "fastener", 0.1, form="hollow-wall-anchor", size="#6", wall_build="hollow"),
    part("WMACH", "fastener", 0.1, form="machine-screw", size="#6", wall_build="steel"),
    part("WWOOD", "fastener", 0.1, form="wood-screw", size="#6", wall_build="wood"),
]


def reader(wall, form="lift", cat=None):
    facts = opening(form=form, power_wish="supply", supply_distance_m=12.0, wall_build=wall)
    cat = cat or stock(READ={"lead_mm": 600.0}, drop=("PLUG",), add=WALL)
    return door(facts, lk=lock("reader"), cat=cat, leaves=())


@pytest.mark.parametrize(
    ("wall", "number"), [("masonry", "WPLUG"), ("hollow", "WANCH"), ("steel", "WMACH"), ("wood", "WWOOD")]
)
def test_the_wall_decides_what_holds_the_unit(wall, number):
    for form in ("lift", "turnstile"):
        found = fit(reader(wall, form))
        assert found.status == "fits"
        assert [(p.part, p.quantity) for p in found.parts if p.role == "fastener"] == [(number, 4)]


def test_a_wall_of_unknown_build_is_asked_for():
    given = reader(None)
    found = fit(given)
    assert found.status == "to-measure"
    assert [need.fact for need in found.needs] == ["opening.wall_build"]


def test_a_wall_for_which_there_is_no_fixing_is_refused():
    found = fit(reader("hollow", cat=stock(READ={"lead_mm": 600.0})))
    assert found.status == "does-not-fit"
    assert "wall-fixings" in {r.rule for r in found.refused}


def test_a_door_is_not_asked_for_its_wall():
    found = fit(door(opening(wall_build=None)))
    assert found.status == "fits"
    assert not [each for each in check(door(opening(wall_build=None)), found) if "opening.wall_build" in each.needs]


@pytest.mark.parametrize(
    ("facts", "used"),
    [
        # Thread-lock for the cam's screws, 20 openings a bottle; sealant in the weather, 10 a cartridge (from memory).
        ({}, {"SLEEVE": 1.0, "LOCKER": 0.05}),
        ({"o": opening(exposure="exterior")}, {"SLEEVE": 1.0, "LOCKER": 0.05, "SEAL": 0.1}),
        ({"lf": leaf(material="hollow-metal")}, {"GROMMET": 1.0, "LOCKER": 0.05}),
        # A rim cylinder's own tailpiece is no cam, and its lead comes by the channel's 3/8 in.
        ({"lk": lock("rim")}, {"SLEEVE38": 1.0}),
    ],
)
def test_what_is_used_up_follows_from_what_is_done(facts, used):
    found = fit(door(**facts))
    assert {p.part: p.quantity for p in found.parts if p.role == "consumable"} == used


def test_a_sleeve_has_the_size_of_its_hole():
    """1/2 in through sheet (from memory), 3/8 in slantwise into a bored lock's cross bore (common practice)."""
    sheet = fit(door(lf=leaf(material="hollow-metal")))
    assert [number for number in numbers(sheet, "consumable") if number.startswith("GROMMET")] == ["GROMMET"]
    bored = fit(door(lk=lock("bored", cylinder_height_mm=965.2)))
    assert [number for number in numbers(bored, "consumable") if number.startswith("SLEEVE")] == ["SLEEVE38"]


def test_no_sleeve_is_taken_for_a_hole_of_another_size():
    given = door(lf=leaf(material="hollow-metal"), cat=stock(drop=("GROMMET",)))
    found = fit(given)
    assert not [number for number in numbers(found, "consumable") if number.startswith("GROMMET")]
    assert "sleeve-fits" in {each.rule for each in check(given, found)}


def test_a_pocket_in_aluminium_is_not_mortised():
    narrow = leaf(material="aluminium", construction="narrow-stile", stile_mm=60.0)
    lk = lock(backset_mm=28.575, case_depth_mm=48.0, case_above_mm=38.1, case_width_mm=14.0)
    units = {"drop": ("UNIT", "NARROW", "SEALED", "BOND")}
    none = fit(door(lf=narrow, lk=lk, cat=stock(**units, EDGE={"screws": 0})))
    assert none.placement is not None, none.refused
    assert none.placement.face == "edge"
    assert "MORT" not in numbers(none, "tool")
    pocket = next(hole for hole in none.holes if hole.purpose == "pocket")
    assert pocket.tool == "mill"
    saw = part("SAW", "tool", 30.0, form="saw-and-files")
    sawn = fit(door(lf=narrow, lk=lk, cat=stock(**units, EDGE={"screws": 0}, add=[saw])))
    assert "SAW" in numbers(sawn, "tool")
    assert next(hole for hole in sawn.holes if hole.purpose == "pocket").tool == "saw-and-files"


def test_each_kind_of_hole_has_the_jig_that_is_made_for_it():
    """A jig that states a bore is for bored locks, one that states none for leads, whichever of them is cheaper."""
    lead = part("LEADS", "tool", 60.0, form="drilling-jig")
    for price in (110.0, 10.0):
        bore = part("BORES", "tool", price, form="drilling-jig", diameter_mm=53.975)
        cat = stock(drop=("JIG", "BOREJIG"), add=[lead, bore])
        # Its edge bore is to be enlarged, and its lead comes slantwise.
        bored = fit(door(lk=lock("bored", cylinder_height_mm=965.2, edge_bore_mm=22.225), cat=cat))
        assert bored.status == "fits"
        assert {hole.jig for hole in bored.holes if hole.purpose == "bore"} == {bore.description}
        assert {hole.jig for hole in bored.holes if hole.purpose == "cable"} == {lead.description}


def test_a_bore_that_no_part_states_is_asked_for_and_never_guessed():
    """Where the project switches the question off the lock is fitted, and no bore of any size stands on its sheet."""
    facts = {"lk": lock("bored", cylinder_height_mm=965.2), "cat": stock(BORED={"cross_bore_mm": None})}
    assert fit(door(**facts)).status == "to-measure"
    found = fit(door(**facts, settings=Settings(rules_off=frozenset({"bored-preparation"}))))
    assert found.status == "fits"
    assert not {"bore", "bolt"} & {hole.purpose for hole in found.holes}


@pytest.mark.parametrize("tools", ["in stock", "none in stock"])
def test_what_a_hole_is_made_with_follows_from_the_hole_and_not_from_what_lies_on_the_shelf(tools):
    """Half an inch by a hole saw after its pilot, bolts, slants and pilots by a twist drill (common practice)."""
    cat = stock() if tools == "in stock" else stock(drop=("BIT", "DRILL", "MORT", "STEP", "PILOT16"))
    square = fit(door(cat=cat))
    bored = fit(door(lk=lock("bored", cylinder_height_mm=965.2, edge_bore_mm=22.225), cat=cat))
    assert [(h.purpose, h.tool) for h in square.holes] == [("cable", "hole-saw"), ("fixing", "twist-drill")]
    assert [(h.purpose, h.tool) for h in bored.holes] == [
        ("bore", "hole-saw"), ("bolt", "twist-drill"), ("cable", "twist-drill"), ("fixing", "twist-drill"),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("price", "facts", "key"),
    [
        (1.0, {"form": "electronic-key", "for_part": "UNIT"}, "NEW"),
        (1.0, {"form": "electronic-key", "for_part": ""}, "NEW"),
        (1.0, {"form": "electronic-key", "for_part": "SEALED"}, "KEY"),
        (1.0, {"form": "card", "for_part": "UNIT"}, "KEY"),
        (90.0, {"form": "electronic-key", "for_part": "UNIT"}, "KEY"),
    ],
)
def test_a_key_is_of_its_kind_and_for_its_unit(price, facts, key):
    """The cheapest that serves: one for another unit opens nothing here, and a card is no key."""
    found = fit(door(cat=stock(add=[part("NEW", "credential", price, **facts)])))
    assert (found.status, [p.part for p in found.parts if p.role == "unit"]) == ("fits", ["UNIT"])
    assert numbers(found, "credential") == [key]
