"""Unknowns, choices by hand, places by hand, power, extensions, ranking and what is remembered of the rest."""

from dataclasses import replace
from decimal import Decimal

import pytest

from hwsched.fitting import fit
from hwsched.rules.judging import check
from hwsched.values import Chosen, HandPlacement, Settings
from tests.fitting.door import door, item, leaf, lock, opening, part, stock

HM = leaf(material="hollow-metal")


def roles(found):
    return {p.role: p.part for p in found.parts}


def needs(found):
    return [n.fact for n in found.needs]


def rules(given, found, severity="error"):
    return {f.rule for f in check(given, found) if f.severity == severity}


@pytest.mark.parametrize(
    ("given", "facts"),
    [
        (door(lk="none"), ["existing_item.lock_form"]),
        (door(lf=leaf(thickness_mm=None)), ["leaf.thickness_mm"]),
        (door(lk=lock(cam_form=None)), ["existing_item.cam_form"]),
        (door(opening(rating=None)), ["opening.rating"]),
        (door(lk=lock(backset_mm=None)), ["existing_item.backset_mm"]),
        (door(lk=lock(cylinder_height_mm=None)), ["existing_item.cylinder_height_mm"]),
        (door(lf=leaf(width_mm=None)), ["leaf.width_mm"]),
        # Of a unit that a person chose too, though it goes on to its places whatever is missing.
        (door(lf=leaf(width_mm=None), chosen=[Chosen("unit", "UNIT")]), ["leaf.width_mm"]),
        (door(lf=leaf(material="aluminium", construction="narrow-stile")), ["leaf.stile_mm"]),
        (door(opening(hand=None)), ["opening.hand"]),
        (door(opening(hand="LHR", frame_stop_mm=None)), ["opening.frame_stop_mm"]),
        (door(opening(operations_per_day=None)), ["opening.operations_per_day"]),
        (door(items=[item("closer", x=None)]), ["existing_item.x_mm"]),
        (door(lk=lock(thumb_turn=None)), ["existing_item.thumb_turn"]),
        (door(lk=lock(trim_inside_mm=None)), ["existing_item.trim_inside_mm"]),
        (door(opening(power_wish="supply")), ["opening.supply_distance_m"]),
        (door(opening(power_wish="supply", supply_distance_m=9.0), HM), ["leaf.core"]),
        (door(opening(temperature_low_c=None)), ["opening.temperature_low_c"]),
    ],
)
def test_a_missing_fact_is_unknown_and_named(given, facts):
    found = fit(given)
    assert found.status == "to-measure"
    assert needs(found) == facts
    assert all(n.label and n.blocks for n in found.needs)
    assert not found.parts
    # The check says it too, and passes nothing in silence.
    assert any(set(facts) <= set(f.needs) for f in check(given, found))


def test_a_contradiction_is_refused():
    thin = fit(door(lf=leaf(thickness_mm=20.0)))
    assert thin.status == "does-not-fit"
    assert "case-within-leaf" in {r.rule for r in thin.refused}
    outside = fit(door(lk=lock(cylinder_height_mm=2300.0)))
    assert outside.status == "does-not-fit"
    assert "lock-within-leaf" in {r.rule for r in outside.refused}


def test_nothing_fits_and_the_nearest_miss_is_named():
    # Leaf 44.45 and trim 1.0: the head would stand 2.175, less than the collar's 3.175: recessed by 1.0.
    given = door(lk=lock(trim_key_mm=1.0))
    found = fit(given)
    assert found.status == "does-not-fit"
    assert not found.parts
    miss = found.nearest_miss
    assert (miss.part, miss.role, miss.rule) == ("CYL", "cylinder", "cylinder-flush")
    assert miss.values["short_mm"] == pytest.approx(1.0)
    assert "1 mm" in miss.reason
    assert rules(given, found) == {"fit-complete"}


def test_rings_fill_what_the_collar_leaves():
    # A cylinder of 28.575 stands 6.35, 5.556 or 4.7625 proud (common practice): collar and one ring are 4.7625.
    found = fit(door(cat=stock(CYL={"length_mm": 28.575})))
    assert found.stack.turns == 2
    assert found.stack.rings == ("RING",)
    assert found.stack.projection_mm == pytest.approx(4.7625)
    ring = found.part("ring")
    assert (ring.part, ring.quantity) == ("RING", 1)


def test_a_short_lead_takes_an_extension():
    short = stock(CYL={"lead_mm": 90.0})
    found = fit(door(cat=short))
    assert found.status == "fits"
    assert roles(found)["lead-extension"] == "EXT"
    assert found.cable.available_mm == 240.0
    none = fit(door(cat=stock(CYL={"lead_mm": 90.0}, drop=("EXT",))))
    # The narrow unit wants 10 less slack and is reached.
    assert roles(none)["unit"] == "NARROW"
    said = next(r for r in none.refused if r.part == "UNIT" and r.rule == "lead-reaches")
    assert said.values["short_mm"] == pytest.approx(97.933 - 90, abs=0.01)
    wrong = fit(door(cat=stock(CYL={"lead_mm": 80.0}, EXT={"mates_with": "other"})))
    assert wrong.status == "does-not-fit"
    assert wrong.nearest_miss.rule == "lead-reaches"


def test_a_connector_that_does_not_mate_refuses_the_unit():
    found = fit(door(cat=stock(UNIT={"mates_with": "p6"})))
    assert roles(found)["unit"] != "UNIT"
    assert {r.rule for r in found.refused if r.part == "UNIT"} == {"connectors-mate"}


# --- power --------------------------------------------------------------------------------------------------------


def test_a_busy_opening_is_fed_from_a_supply():
    near = {"supply_distance_m": 20.0}
    # 200 a day of 150 mA for 4 s are 33.3 mAh, with the rest 35 mAh: 2000 mAh last 57 days. With 30 days asked that
    # will do, and only how busy it is decides.
    month = Settings(length_style="mm", limits={"battery-life.days": 30.0})
    quiet = fit(door(opening(operations_per_day=200.0, **near), settings=month))
    assert quiet.power == "battery"
    assert fit(door(opening(operations_per_day=200.0, **near))).power == "supply"
    busy = fit(door(opening(operations_per_day=201.0, **near), settings=month))
    assert busy.power == "supply"
    got = roles(busy)
    assert (got["supply"], got["power-transfer"], got["wire"], got["coin-cell"]) == ("PSU", "LOOP", "WIRE", "COIN")
    assert "battery" not in got
    # 20 m, the leaf's 914.4 mm with 300 mm of slack, the loop's 457.2 mm, and 10 % over: 23.84 m.
    assert next(p.quantity for p in busy.parts if p.role == "wire") == pytest.approx(23.84)
    (way,) = (hole for hole in busy.holes if hole.purpose == "raceway")
    # From the hinge edge to the pocket of a case 105 mm deep.
    assert (way.face, way.y_mm, way.diameter_mm) == ("hinge-edge", 1000.0, 9.525)
    assert way.depth_mm == pytest.approx(914.4 - 105.0)


def test_a_busy_opening_without_a_way_to_a_supply_keeps_batteries_and_is_told():
    given = door(opening(operations_per_day=600.0))
    found = fit(given)
    assert (found.status, found.power) == ("fits", "battery")
    assert "busy-on-supply" in rules(given, found, "warning")
    assert rules(given, found) == {"battery-life"}


def test_a_wish_is_kept_or_refused():
    wired = fit(door(opening(power_wish="supply", supply_distance_m=20.0)))
    assert wired.power == "supply"
    far = fit(door(opening(power_wish="supply", supply_distance_m=500.0)))
    assert far.status == "does-not-fit"
    assert "supply-drop" in {r.rule for r in far.refused}
    alone = fit(door(opening(power_wish="battery", operations_per_day=None)))
    assert (alone.status, alone.power, alone.battery) == ("fits", "battery", None)


def test_a_thicker_wire_is_taken_where_it_is_needed():
    thick = part("WIRE14", "wire", 2.0, gauge="14 AWG", conductors=2, stranding="stranded", outside_diameter_mm=8.0)
    given = door(opening(power_wish="supply", supply_distance_m=150.0), cat=stock(add=(thick,)))
    found = fit(given)
    assert roles(found)["wire"] == "WIRE14"
    # 53 % of 3/8 in hold 6.93 mm, of 1/2 in 9.25 mm (NEC Chapter 9 Table 1, from memory).
    assert [hole.diameter_mm for hole in found.holes if hole.purpose == "raceway"] == [12.7]
    assert not rules(given, found)


def test_a_rated_opening_takes_a_listed_transfer():
    loop = part("CHEAP", "power-transfer", 1.0, form="door-loop", conductors=4, gauge="22 AWG")
    loop = replace(loop, attributes={**loop.attributes, "length_mm": 457.2, "fire_listed": False})
    wired = {"power_wish": "supply", "supply_distance_m": 10.0}
    cat = stock(add=(loop,))
    made = leaf(material="hollow-metal", raceway=True)
    assert roles(fit(door(opening(**wired), made, cat=cat)))["power-transfer"] == "CHEAP"
    assert roles(fit(door(opening(rating="90", **wired), made, cat=cat)))["power-transfer"] == "LOOP"


# --- by hand ------------------------------------------------------------------------------------------------------


def test_a_unit_chosen_by_hand_is_taken():
    given = door(chosen=[Chosen("unit", "SEALED")])
    found = fit(given)
    assert found.status == "fits"
    assert (found.part("unit").part, found.part("unit").source) == ("SEALED", "by-hand")
    assert found.part("cylinder").source == "worked-out"


def test_a_refused_choice_is_kept_and_the_findings_say_so():
    given = door(opening(rating="90"), HM, cat=stock(SEALED={"fire_listed": False}), chosen=[Chosen("unit", "SEALED")])
    found = fit(given)
    assert found.status == "fits"
    assert roles(found)["unit"] == "SEALED"
    assert rules(given, found) == {"rated-unit-listed"}
    wrong = door(chosen=[Chosen("cylinder", "RIM")])
    kept = fit(wrong)
    assert kept.status == "fits"
    assert roles(kept)["cylinder"] == "RIM"
    assert "cylinder-form" in rules(wrong, kept)


def test_a_choice_that_is_not_in_the_catalogue():
    given = door(chosen=[Chosen("unit", "GONE")])
    found = fit(given)
    assert found.status == "does-not-fit"
    assert "part-known" in rules(given, found)


def test_a_part_added_by_hand_is_kept():
    chosen = [Chosen("strike", "STRIKE", 1.0), Chosen("consumable", "SEAL", 2.0)]
    # Two cables of two conductors do not pass the bore; one of four does.
    four = part("WIRE4", "wire", 0.9, gauge="18 AWG", conductors=4, stranding="stranded", outside_diameter_mm=6.6)
    found = fit(door(opening(supply_distance_m=9.0), cat=stock(add=(four,)), chosen=chosen))
    assert roles(found)["wire"] == "WIRE4"
    strike, seal = found.part("strike"), found.part("consumable")
    assert (strike.part, strike.source) == ("STRIKE", "by-hand")
    assert (seal.part, seal.quantity, seal.source) == ("SEAL", 2.0, "by-hand")


def test_a_supply_chosen_by_hand_is_checked():
    volts = {"output_v": 24.0, "output_a": 4.0, "tolerance_share": 0.05, "current": "dc"}
    strong = part("PSU24", "power-supply", 90.0, class_2=True, regulated=True, **volts)
    given = door(opening(supply_distance_m=5.0), cat=stock(add=(strong,)), chosen=[Chosen("supply", "PSU24")])
    found = fit(given)
    assert (found.power, roles(found)["supply"]) == ("supply", "PSU24")
    assert "supply-voltage" in rules(given, found)


def test_a_place_by_hand_is_kept_and_checked():
    good = door(placed=HandPlacement("single", "inside", "straight", 20.0, 960.0))
    found = fit(good)
    place = found.placement
    assert (place.x_mm, place.y_mm, place.source) == (20.0, 960.0, "by-hand")
    assert place.pattern == "straight"
    assert not rules(good, found)
    over = door(
        items=[item("lite", 60.0, 1100.0, 100.0, 60.0)],
        placed=HandPlacement("single", "inside", "straight", 20.0, 960.0),
    )
    kept = fit(over)
    assert kept.status == "fits"
    assert (kept.placement.x_mm, kept.placement.y_mm) == (20.0, 960.0)
    assert "glazing-clear" in rules(over, kept)
    # Where the plate covers no hole at all the place is kept, and what is wrong is said.
    off = door(placed=HandPlacement("single", "inside", "straight", 500.0, 300.0))
    lost = fit(off)
    assert (lost.placement.x_mm, lost.placement.y_mm) == (500.0, 300.0)
    assert "plate-covers-hole" in rules(off, lost)


# --- ranking ------------------------------------------------------------------------------------------------------


def test_a_fact_that_would_allow_a_cheaper_part_is_asked_for():
    inside = part("CHEAP", "mortise-cylinder", 60.0, **{**stock().get("CYL").attributes, "exposure": "interior"})
    cat = stock(add=(inside,))
    assert roles(fit(door(cat=cat)))["cylinder"] == "CHEAP"
    unsure = fit(door(opening(exposure=None), cat=cat))
    assert (unsure.status, needs(unsure)) == ("to-measure", ["opening.exposure"])
    assert roles(fit(door(opening(exposure=None))))["cylinder"] == "CYL"


def test_cheapest_first_then_by_number():
    twin = part("CYL0", "mortise-cylinder", 100.0, **dict(stock().get("CYL").attributes))
    found = fit(door(cat=stock(add=(twin,))))
    assert roles(found)["cylinder"] == "CYL"
    cheaper = part("CYL9", "mortise-cylinder", 99.0, **dict(stock().get("CYL").attributes))
    assert roles(fit(door(cat=stock(add=(cheaper,)))))["cylinder"] == "CYL9"


def test_a_dearer_lock_with_a_longer_lead_wins_where_it_saves_the_extension():
    """Exact within an opening: the whole chain is ranked, not its links one by one."""
    attributes = {**stock().get("CYL").attributes, "lead_mm": 228.6}
    longer = part("LONG", "mortise-cylinder", 105.0, **attributes)
    cat = stock(CYL={"lead_mm": 90.0}, EXT={"list_price": 20.0}, add=(longer,))
    found = fit(door(cat=cat))
    assert roles(found)["cylinder"] == "LONG"
    assert "lead-extension" not in roles(found)
    dear = stock(CYL={"lead_mm": 90.0}, EXT={"list_price": 2.0}, add=(longer,))
    assert roles(fit(door(cat=dear)))["cylinder"] == "CYL"


def test_holes_first_where_the_project_prefers_it():
    # The place of the cheap unit costs two holes: its window is too low for the straight one beside the turn.
    turn = item("thumb-turn", 69.85, 1015.0, 40.0, 40.0)
    given = door(lk=lock(thumb_turn=True), items=[turn])
    by_cost = fit(given)
    holes = fit(replace(given, settings=Settings(length_style="mm", prefer="holes")))

    def count(found):
        return sum(h.count for h in found.holes if h.purpose != "fixing")

    assert count(holes) <= count(by_cost)
    assert by_cost.cost <= holes.cost


def test_a_superseded_part_is_not_taken():
    found = fit(door(cat=stock(UNIT={"superseded_by": "SEALED"})))
    assert roles(found)["unit"] != "UNIT"


def test_runners_up_come_best_first():
    found = fit(door())
    costs = [r.cost for r in found.runners_up]
    assert costs
    assert found.cost <= costs[0]
    assert costs == sorted(costs)
    assert all("CYL" in r.parts for r in found.runners_up)


def test_a_rule_switched_off_builds_differently():
    given = door(opening(rating="45"), cat=stock(UNIT={"fire_listed": False, "list_price": 1.0}))
    assert roles(fit(given))["unit"] != "UNIT"
    off = replace(given, settings=Settings(length_style="mm", rules_off=frozenset({"rated-unit-listed"})))
    assert roles(fit(off))["unit"] == "UNIT"


def test_cost_leaves_tools_out():
    found = fit(door())
    expected = Decimal(0)
    for fit_part in found.parts:
        if fit_part.role != "tool":
            expected += stock().get(fit_part.part).list_price * Decimal(str(fit_part.quantity))
    assert (found.cost, found.currency, found.cost_needs) == (expected, "USD", ())
    assert any(p.role == "tool" for p in found.parts)


def test_what_is_added_by_hand_and_is_in_no_catalogue_stops_nothing():
    """A part that has left the catalogue since it was chosen: the opening fits without it, and a rule names it."""
    given = door(chosen=[Chosen("consumable", "GONE"), Chosen("no such role", "SEAL")])
    found = fit(given)
    assert found.status == "fits"
    assert "GONE" not in {part.part for part in found.parts}
    assert "no such role" not in {part.role for part in found.parts}
