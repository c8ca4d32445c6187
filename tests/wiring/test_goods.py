"""The bill of what is laid: each part once, taken from the catalogue where one suits, asked for where none does."""

from dataclasses import replace
from decimal import Decimal

import pytest

from hwsched.values import Catalogue
from hwsched.values.terms import CostTerms
from hwsched.wiring import ConnectedOpening
from hwsched.wiring.costing import price_supplies
from hwsched.wiring.goods import bill_of
from tests.rules.scenario import fp, part
from tests.wiring.power_rows import BATTERY, circuit, connected, parts, run, supply, work

STORE = (
    BATTERY,
    part("CAB-S", "enclosure", 40.0, form="cabinet", batteries=1, battery_ah=7.0),
    part("CAB-L", "enclosure", 65.0, form="cabinet", batteries=2, battery_ah=18.0),
    part("JB-4", "enclosure", 3.0, form="junction-box", conductors=4),
    part("JB-8", "enclosure", 5.0, form="junction-box", conductors=8),
    part("F-1", "limiter", 4.0, rating_a=1.0),
    part("F-2", "limiter", 6.0, rating_a=2.0),
    part("F-2X", "limiter", 5.0, rating_a=2.0),
)


def store(**changed):
    return parts(add=STORE, **{**changed, "PSU": {"cabinet": "bare", "input": "mains", **changed.get("PSU", {})}})


def hung(name, cat, *more):
    """An opening with its unit and nothing that feeds it of its own."""
    bare = connected(name, cat, without=("power-transfer", "supply", "wire"))
    return ConnectedOpening(bare.given, replace(bare.fit, parts=(*bare.fit.parts, *more)))


def sold(cat, unit):
    """The same with wire in another unit."""
    return Catalogue({**cat.parts, "WIRE": replace(cat.parts["WIRE"], unit=unit)}, "")


def bill(runs, cat, openings=None, *, supplies=None, circuits=None):
    openings = openings or {r.opening_id: hung(r.opening_id, cat) for r in runs if r.opening_id}
    found = work(runs, openings, cat, supplies=supplies, circuits=circuits or [circuit(limiter_a=2.0)])
    return bill_of(found.supplies, [each.points for each in openings.values()], cat)


def of(found, role):
    return [(each.part, each.quantity, each.needs) for each in found.goods if each.role == role]


def test_a_supply_comes_with_cabinet_battery_limiter_and_box():
    cat = store()
    runs = [run("supply", "J1"), run("J1", "a"), run("J1", "b")]
    found = bill(runs, cat, supplies=[supply(building="Main", battery="BAT")])
    assert of(found, "supply") == [("PSU", 1, ())]
    assert of(found, "standby-battery") == [("BAT", 1, ())]
    # One battery of 7 Ah goes into the small one; of two limiters of 2 A the cheaper is taken; three runs of two
    # conductors meet at J1, more than the box for four joins.
    assert of(found, "cabinet") == [("CAB-S", 1, ())]
    assert of(found, "limiter") == [("F-2X", 1, ())]
    assert of(found, "junction-box") == [("JB-8", 1, ())]
    assert found.needs == ()
    assert {each.building for each in found.goods} == {"Main"}


def test_two_batteries_in_series_take_the_larger_cabinet():
    cat = store(PSU={"output_v": 24.0, "standby_v": 24.0})
    found = bill([run("supply", "a")], cat, supplies=[supply(battery="BAT", batteries=2)])
    assert of(found, "standby-battery") == [("BAT", 2, ())]
    assert of(found, "cabinet") == [("CAB-L", 1, ())]


def test_a_cabinet_and_a_limiter_that_a_person_has_chosen_are_kept():
    """The dearer ones of both are taken, though the cheaper would do; without its rating that of the limiter counts."""
    cat = store()
    found = bill(
        [run("supply", "a")], cat, supplies=[supply(battery="BAT", cabinet="CAB-L")],
        circuits=[circuit(limiter="F-2")],
    )  # fmt: skip
    assert (of(found, "cabinet"), of(found, "limiter")) == ([("CAB-L", 1, ())], [("F-2", 1, ())])
    assert [each.text for each in found.goods if each.role == "limiter"] == ["circuit PS-s/C, 2 A"]
    # Chosen they are ordered where the supply brings its own, too.
    own = store(PSU={"cabinet": "included", "own_limiters": 1, "own_limiter_a": 2.0})
    how = {"supplies": [supply(cabinet="CAB-L")], "circuits": [circuit(limiter="F-2", limiter_a=2.0)]}
    found = bill([run("supply", "a")], own, **how)
    assert (of(found, "cabinet"), of(found, "limiter")) == ([("CAB-L", 1, ())], [("F-2", 1, ())])


@pytest.mark.parametrize(
    ("facts", "of_circuit", "changed", "words"),
    [
        ({"cabinet": "NONE"}, {}, {}, "NONE, the cabinet of PS-s, is not in the catalogue"),
        ({"cabinet": "JB-4"}, {}, {}, "JB-4, the cabinet of PS-s, is no cabinet"),
        (
            {"cabinet": "CAB-S", "battery": "BAT"},
            {},
            {"BAT": {"capacity_ah": 12.0}},
            "CAB-S, the cabinet of PS-s, takes 1 of 7 Ah at the most, and 1 × BAT of 12 Ah stand in it",
        ),
        ({"cabinet": "CAB-S", "battery": "BAT"}, {}, {"CAB-S": {"battery_ah": None}}, "takes its batteries is unknown"),
        ({}, {"limiter": "F-2", "limiter_a": 3.0}, {}, "is one of 2 A, and 3 A are stated"),
        ({}, {"limiter": "NONE"}, {}, "NONE, the limiter of circuit C, is not in the catalogue"),
        ({}, {"limiter": "CAB-S"}, {}, "is no limiter but of the kind enclosure"),
    ],
)
def test_what_is_chosen_and_cannot_be_is_said(facts, of_circuit, changed, words):
    cat = store(**changed)
    opening = {"a": hung("a", cat)}
    found = work([run("supply", "a")], opening, cat, supplies=[supply(**facts)], circuits=[circuit(**of_circuit)])
    told = [each.finding for each in found.findings if words in each.finding.message]
    assert [each.severity for each in told] == ["warning" if "unknown" in words else "error"]


def test_a_supply_in_its_cabinet_with_limited_outputs_needs_neither():
    cat = store(PSU={"cabinet": "included", "own_limiters": 1, "own_limiter_a": 2.0})
    two = [circuit(limiter_a=2.0), circuit("d", limiter_a=2.0)]
    found = bill([run("supply", "a"), run("supply", "b", of="d")], cat, circuits=two)
    assert of(found, "cabinet") == []
    # It limits one of its two circuits.
    assert of(found, "limiter") == [("F-2X", 1, ())]


def test_a_limiter_of_another_rating_than_its_own_is_ordered():
    cat = store(PSU={"own_limiters": 4, "own_limiter_a": 2.0})
    found = bill([run("supply", "a")], cat, circuits=[circuit(limiter_a=1.0)])
    assert of(found, "limiter") == [("F-1", 1, ())]


@pytest.mark.parametrize(
    ("changed", "laid", "role", "needs"),
    [
        ({}, {"supplies": [supply(part=None)]}, "supply", ("supply.part",)),
        ({}, {"supplies": [supply(standby_hours=4.0)]}, "standby-battery", ("supply.battery",)),
        ({"PSU": {"cabinet": None}}, {}, "cabinet", ("part PSU.cabinet",)),
        ({"CAB-S": {"battery_ah": None}, "CAB-L": {"batteries": 0}}, {"supplies": [supply(battery="BAT")]}, "cabinet",
         ("part CAB-S.battery_ah",)),
        ({"CAB-S": {"batteries": 0}, "CAB-L": {"batteries": 0}}, {"supplies": [supply(battery="BAT")]}, "cabinet",
         ("a cabinet for 1 × 7 Ah in the catalogue",)),
        ({}, {"circuits": [circuit()]}, "limiter", ("circuit.limiter_a",)),
        ({}, {"circuits": [circuit(limiter_a=3.0)]}, "limiter", ("a limiter of 3 A in the catalogue",)),
    ],
)  # fmt: skip
def test_what_is_missing_is_asked_and_never_taken(changed, laid, role, needs):
    found = bill([run("supply", "a")], store(**changed), **laid)
    ((number, _, told),) = of(found, role)
    assert (number, told) == ("", needs)


def test_a_box_for_more_conductors_than_any_is_asked_for():
    runs = [run("supply", "J1"), *(run("J1", name) for name in "abcd")]
    ((number, _, needs),) = of(bill(runs, store()), "junction-box")
    assert (number, needs) == ("", ("a junction box for 10 conductors in the catalogue",))


def test_a_daisy_chain_is_joined_at_the_opening_with_what_hangs_there():
    found = bill([run("supply", "a"), run("a", "b")], store())
    (box,) = [each for each in found.goods if each.role == "junction-box"]
    # Run in, run on, and the opening itself: six conductors.
    assert (box.part, box.opening_ids) == ("JB-8", ("a",))


def test_a_place_where_a_supply_may_stand_is_no_goods():
    found = bill([run("supply", "a")], store(), supplies=[supply(), supply("t")])
    assert of(found, "supply") == [("PSU", 1, ())]
    assert [work.supply for work in found.licensed] == ["PS-s"]


def test_the_mains_side_is_licensed_work():
    (mains,) = bill([run("supply", "a")], store()).licensed
    assert "branch circuit" in mains.text
    (network,) = bill([run("supply", "a")], store(PSU={"input": "poe"})).licensed
    assert "network port" in network.text
    (unknown,) = bill([run("supply", "a")], store(PSU={"input": None})).licensed
    assert unknown.needs == ("part PSU.input",)


def test_wire_of_runs_and_leaves_is_cut_from_the_same_reels():
    """Runs of 40 m and 40 m with 10 % are 44 m each, leaves take 8 m: 96 m are one reel of 100 m, 12 m more are two."""
    cat = sold(store(), "REEL")
    runs = [run("supply", "a", 40.0), run("supply", "b", 40.0)]

    def lines(leaf_m):
        openings = {"a": hung("a", cat, fp("wire", "WIRE", leaf_m)), "b": hung("b", cat)}
        return [each for each in bill(runs, cat, openings).goods if each.role == "wire"]

    (one,) = lines(8.0)
    assert (one.quantity, one.line.gap_text, len(one.line.pieces)) == (1, "exact", 3)
    assert one.line.left_m(0) == pytest.approx(4.0)
    (two,) = lines(20.0)
    assert (two.quantity, two.line.reels, two.line.fewest) == (2, 2, 2)


@pytest.mark.parametrize(
    ("unit", "quantity"),
    # 33 m with its ends: so many metres; 108.3 ft are 109; a reel of 100 m; a roll of unknown length.
    [("M", "33"), ("FT", "109"), ("REEL", "1")],
)
def test_wire_is_ordered_in_its_unit(unit, quantity):
    (wire,) = [each for each in bill([run("supply", "a", 30.0)], sold(store(), unit)).goods if each.line]
    assert wire.quantity == Decimal(quantity)
    (unknown,) = [
        each for each in bill([run("supply", "a")], sold(store(WIRE={"reel_m": None}), "REEL")).goods if each.line
    ]
    assert unknown.needs == ("part WIRE.reel_m",)


def test_raceways_are_cut_from_bars_with_what_the_saw_takes():
    """Three pieces of 0.99 m and two cuts of 3 mm come from a bar of 3 m; of 1 m not even a third does."""
    bar = part("RW", "surface-raceway", 12.0, inside_mm=10.0, width_mm=16.0, reel_m=3.0)
    cat = parts(add=(*STORE, bar))

    def bars(length_m):
        openings = {name: hung(name, cat, fp("raceway", "RW", length_m)) for name in "abc"}
        (line,) = bill([run("supply", name) for name in "abc"], cat, openings).wires[1:]
        return line.reels, line.fewest

    assert bars(0.99) == (1, 1)
    assert bars(1.0) == (2, 2)


def test_what_is_priced_is_what_is_ordered():
    """One of each and a reel, at the prices of this store; laying 30 m and mounting one."""
    cat = sold(store(), "REEL")
    runs = [run("supply", "a", 30.0)]
    openings = {"a": hung("a", cat)}
    found = work(runs, openings, cat, supplies=[supply(battery="BAT")], circuits=[circuit(limiter_a=2.0)])
    prices = {number: cat.get(number).list_price for number in ("PSU", "CAB-S", "BAT", "F-2X", "WIRE")}
    cost = price_supplies(found.supplies, cat, CostTerms(currency="USD"))[""]
    assert cost.parts == sum(prices.values())
    assert float(cost.hours) == pytest.approx(1.5 + 0.04 * 30)


def test_what_is_missing_stays_unknown_in_the_cost():
    cat = parts()
    found = work([run("supply", "a")], {"a": hung("a", cat)}, cat)
    cost = price_supplies(found.supplies, cat, CostTerms(currency="USD"))[""]
    assert {(each.about, each.needs) for each in cost.unknown} >= {
        ("cabinet", ("part PSU.cabinet",)), ("fuse or limiter", ("circuit.limiter_a",)),
    }  # fmt: skip
