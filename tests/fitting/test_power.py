"""The power slot: every combination is tried, the best that passes by the stated order is taken.

Ohms a kilometre at 30 C, stranded, by the formula of `tests.rules.test_power_and_battery`: 18 AWG 22.21, 14 AWG 8.784,
22 AWG 56.15, 28 AWG 225.6.
"""

from dataclasses import replace

import pytest

from hwsched.fitting import fit
from hwsched.rules.judging import check
from hwsched.values import Chosen
from hwsched.values.power import Circuit, PowerFacts, Run, Supply
from hwsched.wiring import ConnectedOpening, solve_supplies
from tests.fitting.door import door, item, leaf, lock, opening, part, stock

WIRED = {"power_wish": "supply", "supply_distance_m": 20.0}
THICK = part("WIRE14", "wire", 2.0, gauge="14 AWG", conductors=2, stranding="stranded", outside_diameter_mm=8.0)
CHANNEL = part("CHANNEL", "surface-raceway", 6.0, inside_mm=10.0, width_mm=16.0, fire_listed=False)
LISTED = part("LISTED", "surface-raceway", 15.0, inside_mm=10.0, width_mm=16.0, fire_listed=True)


def roles(found):
    return {p.role: p.part for p in found.parts}


def quantity(found, role):
    return next(p.quantity for p in found.parts if p.role == role)


def errors(given, found):
    return {f.rule for f in check(given, found) if f.severity == "error"}


def supply(number, price, **facts):
    usual = {"output_v": 12.0, "output_a": 2.5, "tolerance_share": 0.05, "class_2": True, "regulated": True}
    return part(number, "power-supply", price, **{**usual, "current": "dc", **facts})


def test_a_cheap_supply_that_rises_too_far_gives_way_to_a_dearer_one():
    # 13 V and 10 % rise to 14.3 V, over 14 V; what is lost on the way it could spare.
    cheap = supply("CHEAP", 20.0, output_v=13.0, tolerance_share=0.1)
    given = door(opening(**WIRED), cat=stock(add=(cheap,)))
    found = fit(given)
    assert (found.status, roles(found)["supply"]) == ("fits", "PSU")
    assert not errors(given, found)
    only = fit(door(opening(**WIRED), cat=stock(add=(cheap,), drop=("PSU",))))
    assert (only.status, only.nearest_miss.rule) == ("does-not-fit", "supply-voltage")
    assert "14.3 V" in only.nearest_miss.reason


@pytest.mark.parametrize(("facts", "rule"), [({"current": "ac"}, "supply-voltage"), ({"current": None}, "")])
def test_an_output_that_is_not_known_to_be_dc_is_not_taken(facts, rule):
    cheap = supply("CHEAP", 20.0, **facts)
    assert roles(fit(door(opening(**WIRED), cat=stock(add=(cheap,)))))["supply"] == "PSU"
    alone = fit(door(opening(**WIRED), cat=stock(add=(cheap,), drop=("PSU",))))
    if rule:
        assert (alone.status, alone.nearest_miss.rule) == ("does-not-fit", rule)
    else:
        assert (alone.status, [need.fact for need in alone.needs]) == ("to-measure", ["part CHEAP.current"])


def test_a_cheap_transfer_of_thin_conductors_gives_way_where_they_lose_too_much():
    # 5 m of 28 AWG are 2.256 ohm: at 0.4 A 0.90 V. 40 m of 18 AWG lose 0.71 V; 1.4 V may be lost.
    thin = part(
        "THIN",
        "power-transfer",
        1.0,
        form="door-loop",
        conductors=4,
        gauge="28 AWG",
        length_mm=5000.0,
        fire_listed=True,
    )
    near = fit(door(opening(**WIRED), cat=stock(add=(thin,))))
    assert roles(near)["power-transfer"] == "THIN"
    given = door(opening(power_wish="supply", supply_distance_m=40.0), cat=stock(add=(thin,)))
    far = fit(given)
    assert (roles(far)["power-transfer"], roles(far)["wire"]) == ("LOOP", "WIRE")
    assert not errors(given, far)


def test_the_cheaper_of_a_thicker_wire_and_a_better_transfer_is_taken():
    # At 40 m over the thin loop 0.90 V and with 14 AWG 0.28 V are lost: that passes too, but 46 m of it cost 69 more
    # than the other wire and loop do.
    thin = part(
        "THIN",
        "power-transfer",
        1.0,
        form="door-loop",
        conductors=4,
        gauge="28 AWG",
        length_mm=5000.0,
        fire_listed=True,
    )
    far = opening(power_wish="supply", supply_distance_m=40.0)
    both = fit(door(far, cat=stock(add=(thin, THICK))))
    assert (roles(both)["power-transfer"], roles(both)["wire"]) == ("LOOP", "WIRE")
    dear = fit(door(far, cat=stock(add=(thin, THICK), LOOP={"list_price": 500.0})))
    assert (roles(dear)["power-transfer"], roles(dear)["wire"]) == ("THIN", "WIRE14")


def test_a_wire_of_one_conductor_is_no_wire_for_a_unit():
    single = part("SINGLE", "wire", 0.1, gauge="18 AWG", conductors=1, stranding="stranded", outside_diameter_mm=3.0)
    assert roles(fit(door(opening(**WIRED), cat=stock(add=(single,)))))["wire"] == "WIRE"
    alone = fit(door(opening(**WIRED), cat=stock(add=(single,), drop=("WIRE",))))
    assert (alone.status, alone.nearest_miss.rule) == ("does-not-fit", "wire-conductors")


@pytest.mark.parametrize("gauge", [None, "no gauge"])
def test_a_wire_of_no_known_gauge_is_never_the_one_that_loses_least(gauge):
    """However cheap: what arrives over it nobody can tell, and over the other one enough does."""
    unread = part("AWIRE", "wire", 0.1, gauge=gauge, conductors=2, stranding="stranded", outside_diameter_mm=5.2)
    found = fit(door(opening(**WIRED), cat=stock(add=(unread,))))
    assert (found.status, roles(found)["wire"]) == ("fits", "WIRE")


def test_a_wire_too_thick_for_the_bore_is_not_what_stops_an_opening():
    fat = part("FAT", "wire", 0.1, gauge="18 AWG", conductors=2, stranding="stranded", outside_diameter_mm=11.0)
    assert roles(fit(door(opening(**WIRED), cat=stock(add=(fat,)))))["wire"] == "WIRE"


# --- across the leaf ----------------------------------------------------------------------------------------------


def test_a_solid_leaf_is_bored_and_a_hollow_one_is_pulled_through():
    wood, steel = (
        fit(door(opening(**WIRED))),
        fit(door(opening(**WIRED), leaf(material="hollow-metal", core="honeycomb"))),
    )
    assert [hole.depth_mm for hole in wood.holes if hole.purpose == "raceway"] == pytest.approx([914.4 - 105.0])
    assert [hole.depth_mm for hole in steel.holes if hole.purpose == "raceway"] == pytest.approx([50.8])
    for found in (wood, steel):
        # Route, leaf with slack, loop, 10 % over: (20 + 0.9144 + 0.3 + 0.4572) x 1.1.
        assert quantity(found, "wire") == pytest.approx(23.84)


def test_a_way_that_would_meet_a_bolt_is_not_bored():
    """The lower bolt of a pull stands where the way would run: the wire goes over the face, or the leaf is refused."""
    pull = item("pull", 500.0, 1070.0, 60.0, 200.0, face="key", bolt_inset_mm=30.0)
    over = fit(door(opening(**WIRED), items=[pull], cat=stock(add=(CHANNEL,))))
    assert roles(over)["raceway"] == "CHANNEL"
    alone = fit(door(opening(**WIRED), leaf(raceway=False), items=[pull]))
    assert (alone.status, alone.nearest_miss.rule) == ("does-not-fit", "way-clear")
    waits_for_raceway(fit(door(opening(**WIRED), items=[pull])), "way-clear")


def waits_for_raceway(found, rule):
    """Nobody told whether the leaf has a way for the wire, and none can be made: that is asked, and why is told."""
    assert (found.status, [need.fact for need in found.needs]) == ("to-measure", ["leaf.raceway"])
    assert rule in {each.rule for each in found.refused}


def test_the_bit_for_a_way_across_a_leaf_is_as_long_as_the_way():
    """809.4 mm of wood: no hole saw of that size and no short bit goes through, however cheap they are."""
    saw = part("ASAW", "tool", 1.0, form="hole-saw", diameter_mm=9.525)
    short = part("BSHORT", "tool", 2.0, form="installer-bit", diameter_mm=9.525, reach_mm=457.2)
    long = part("CLONG", "tool", 34.0, form="installer-bit", diameter_mm=9.525, reach_mm=1371.6)

    def taken(*tools):
        found = fit(door(opening(**WIRED), cat=stock(add=tools)))
        return {each.part for each in found.parts if each.role == "tool"} & {"ASAW", "BSHORT", "CLONG"}

    assert taken(saw, short, long) == {"CLONG"}
    assert taken(saw, short) == set()


def test_the_rise_is_wire_too():
    assert quantity(fit(door(opening(rise_m=3.0, **WIRED))), "wire") == pytest.approx(23.84 + 3.3)


@pytest.mark.parametrize("core", ["foam", "steel-stiffened"])
def test_where_nothing_can_be_pulled_a_raceway_lies_over_the_face(core):
    lf = leaf(material="hollow-metal", core=core)
    over = fit(door(opening(**WIRED), lf, cat=stock(add=(CHANNEL,))))
    assert (roles(over)["raceway"], quantity(over, "raceway")) == ("CHANNEL", pytest.approx(0.91))
    assert not [hole for hole in over.holes if hole.purpose == "raceway"]
    none = fit(door(opening(**WIRED), replace(lf, raceway=False)))
    assert (none.status, none.nearest_miss.rule) == ("does-not-fit", "wire-across-leaf")
    waits_for_raceway(fit(door(opening(**WIRED), lf)), "wire-across-leaf")


def test_on_a_rated_leaf_only_a_listed_raceway_or_one_that_is_there_carries_the_wire():
    rated, steel = opening(rating="90", **WIRED), leaf(material="hollow-metal", core="honeycomb")
    found = fit(door(rated, steel, cat=stock(add=(CHANNEL, LISTED))))
    assert roles(found)["raceway"] == "LISTED"
    waits_for_raceway(fit(door(rated, steel, cat=stock(add=(CHANNEL,)))), "wire-across-leaf")
    refused = fit(door(rated, replace(steel, raceway=False), cat=stock(add=(CHANNEL,))))
    assert (refused.status, refused.nearest_miss.rule) == ("does-not-fit", "wire-across-leaf")
    assert "permit" in " ".join(each.reason for each in refused.refused)
    there = fit(door(rated, leaf(material="hollow-metal", raceway=True)))
    assert there.status == "fits"
    assert "raceway" not in roles(there)


@pytest.mark.parametrize(("metres", "over"), [(74.2, None), (74.6, "CHANNEL"), (76.3, "CHANNEL")])
def test_a_way_round_the_panel_gives_way_to_a_raceway_where_too_little_arrives_by_it(metres, over):
    """77.64 m of 18 AWG may lead from the supply to the unit, as rows of `supply-drop` have it, 1.2144 across the leaf.

    In rails and stiles it goes 2 x 1000 mm down and up besides: 74.43 m are left, over the face 76.43. The two metres
    cost less than the raceway does.
    """
    panel = leaf(material="aluminium", construction="stile-and-rail", stile_mm=200.0)
    far = opening(power_wish="supply", supply_distance_m=metres)
    found = fit(door(far, panel, cat=stock(add=(CHANNEL,))))
    assert (found.status, roles(found).get("raceway")) == ("fits", over)


@pytest.mark.parametrize(("metres", "pattern"), [(74.2, "above"), (74.5, "below")])
def test_a_unit_stands_lower_where_too_little_arrives_by_the_way_up_to_it(metres, pattern):
    """Beside a rim lock the wire goes round the panel as high as the unit's hole: 76.43 m less twice that are left.

    Above the lock, which is the better place, that is less than 76.43 - 2 x 1.0; below it more.
    """
    panel = leaf(material="hollow-metal", core="honeycomb", construction="stile-and-rail", stile_mm=300.0)
    found = fit(door(opening(power_wish="supply", supply_distance_m=metres), panel, lock("rim")))
    assert (found.status, found.placement.pattern) == ("fits", pattern)
    assert metres + 2 * found.placement.hole_y_mm / 1000 < 76.43


def test_a_core_is_asked_where_it_would_be_the_better_way():
    given = door(opening(**WIRED), leaf(material="hollow-metal"), cat=stock(add=(CHANNEL,)))
    assert [need.fact for need in fit(given).needs] == ["leaf.core"]


def test_on_batteries_no_way_across_the_leaf_is_asked():
    found = fit(door(lf=leaf(material="hollow-metal")))
    assert (found.status, found.power) == ("fits", "battery")


# --- electric release ---------------------------------------------------------------------------------------------


def test_a_strike_that_stays_is_wired_powered_and_counted():
    four = part("WIRE4", "wire", 0.9, gauge="18 AWG", conductors=4, stranding="stranded", outside_diameter_mm=6.6)
    label = {"rated_v": 12.0, "rated_a": 0.35, "current_form": "dc"}
    held = item("electric-strike", face="frame", fail="fail-secure", **label)
    given = door(opening(supply_distance_m=20.0), items=[held], cat=stock(add=(four,)))
    found = fit(given)
    # Nothing wishes a supply and it is not busy: the strike wants one.
    assert (found.status, found.power, roles(found)["wire"]) == ("fits", "supply", "WIRE4")
    # Beside route, leaf and loop the way in the frame: 2 x (2133.6 - 1000) + 914.4 + 300 = 3481.6 mm.
    assert quantity(found, "wire") == pytest.approx(round((20 + 1.2144 + 0.4572 + 3.4816) * 1.1, 2))
    assert not errors(given, found)
    unread = fit(
        door(opening(supply_distance_m=20.0), items=[item("electric-strike", face="frame")], cat=stock(add=(four,)))
    )
    assert unread.status == "to-measure"
    assert {"existing_item.rated_v", "existing_item.rated_a"} <= {need.fact for need in unread.needs}


def test_a_strike_never_passes_on_batteries():
    wish = fit(door(opening(power_wish="battery"), chosen=[Chosen("strike", "STRIKE")]))
    assert wish.status == "does-not-fit"
    assert wish.nearest_miss.rule == "release-powered"


# --- batteries ----------------------------------------------------------------------------------------------------


def test_of_two_cells_the_one_that_lasts_is_taken():
    # 100 a day of 150 mA for 4 s: 16.67 mAh, with the rest 18.3; 2000 mAh last 109 days, 4000 last 214.
    large = part(
        "LARGE", "primary-battery", 3.0, designation="AA", voltage_v=1.5, capacity_mah=5000.0, usable_share=0.8,
        self_discharge_share=0.03, temperature_low_c=-20.0, chemistry="alkaline",
    )  # fmt: skip
    busy = door(opening(operations_per_day=100.0), cat=stock(add=(large,)))
    assert roles(fit(busy))["battery"] == "LARGE"
    assert roles(fit(door(opening(operations_per_day=10.0), cat=stock(add=(large,)))))["battery"] == "CELL"


def test_a_pack_that_lasts_too_short_gives_way_to_a_supply_and_else_waits_for_a_person():
    short = door(opening(operations_per_day=100.0, supply_distance_m=20.0))
    assert fit(short).power == "supply"
    alone = door(opening(operations_per_day=100.0))
    found = fit(alone)
    assert (found.status, found.power) == ("fits", "battery")
    assert errors(alone, found) == {"battery-life"}


def test_a_unit_made_for_the_cold_is_taken_indoors_too():
    found = fit(door(opening(temperature_low_c=-25.0), cat=stock(
        SEALED={"temperature_low_c": -30.0, "pack_high_v": 12.0},
        CELL={"temperature_low_c": -40.0, "cold_c": -40.0, "cold_share": 0.9},
    )))  # fmt: skip
    assert (found.status, roles(found)["unit"]) == ("fits", "SEALED")
    # The data sheet's own share of 0.9 goes before a table that ends at -20 C.
    assert found.battery.cold_share == 0.9


# --- one engine ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("metres", [20.0, 60.0, 76.4, 76.5, 90.0])
def test_an_opening_by_itself_and_on_a_laid_circuit_finds_the_same_volts(metres):
    given = door(opening(id="o", power_wish="supply", supply_distance_m=metres))
    near = fit(door(opening(id="o", power_wish="supply", supply_distance_m=20.0)))
    low = [f for f in check(given, near) if f.rule == "supply-drop"]
    facts = PowerFacts(
        (Supply("s", "PS", part="PSU", use="laid"),),
        (Circuit("c", "s", "C", wire="WIRE", temperature_c=30.0, at_once=5),),
        (Run("r", "c", "supply", "o", "o", metres),),
    )
    laid = solve_supplies(facts, {"o": ConnectedOpening(given, near)}, given.catalogue, given.settings)
    said = [each.finding for each in laid.findings if each.finding.rule == "circuit-voltage"]
    assert bool(low) == bool(said) == (metres > 76.45)
    if low:
        assert low[0].values["arrives_v"] == pytest.approx(said[0].values["arrives_v"], abs=1e-9)
