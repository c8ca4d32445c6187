"""What is unknown on a supply is bounded from both sides: it keeps no other opening from its proof, nor from its fault.

By hand as in `test_supply_results`: 18 AWG stranded at 30 C has 0.022207 ohm a metre and wire, a unit holds 0.4 A and
needs 10 V, the supply gives 11.4 V at its lowest. The usual parts: at the most an opening without a fit gets one unit
of 0.4 A or 0.5 A and the 0.5 A of a magnet.
"""

from dataclasses import replace
from math import isfinite

import pytest

from hwsched.rules.network.unknown_draw import most_drawn_a
from hwsched.values import Settings
from hwsched.wiring import ConnectedOpening
from tests.rules.scenario import item, part
from tests.wiring.power_rows import BATTERY, circuit, connected, only, only_circuit, parts, run, said, supply, work

LOW = [f"o{i}" for i in range(10)]


def unfitted(name, cat):
    return ConnectedOpening(connected(name, cat).given, None)


def laid(metres, *more, cat=None, unknown=(), openings=LOW, **how):
    """Openings on home runs of one circuit, and one more run with what it names."""
    cat = cat or parts()
    runs = [run("supply", name, metres) for name in openings]
    stated = {name: connected(name, cat) for name in openings}
    for extra in more:
        runs.append(extra)
        stated[extra.opening_id] = connected(extra.opening_id, cat)
    stated.update({name: unfitted(name, cat) for name in unknown})
    return work(runs, stated, cat, **how)


def standings(found):
    return {proof.opening_id: proof.standing for each in found.supplies for c in each.circuits for proof in c.proofs}


def errors(found, *but):
    return sum(
        len(each.opening_ids)
        for each in found.findings
        if each.finding.severity == "error" and each.finding.rule not in but
    )


UNKNOWN = {
    "no fit": {"unknown": ("x",), "more": [run("supply", "x", 1.0)]},
    "no length": {"more": [run("supply", "x", None)]},
    "no wire": {"more": [run("supply", "x", gauge="18 AWG")]},
}


@pytest.mark.parametrize("what", UNKNOWN)
def test_an_unknown_opening_silences_no_fault(what):
    """Ten units at 100 m: 2 x 100 x 0.4 x 0.022207 = 1.78 V lost, 9.62 V left; 4 A of a supply of 2.5 A."""
    how = dict(UNKNOWN[what])
    assert errors(laid(100.0)) == 20
    found = laid(100.0, *how.pop("more"), **how)
    assert errors(found, "circuit-proved") >= 20
    assert standings(found) == {**dict.fromkeys(LOW, "failed"), "x": "not-proved"}
    assert [each.opening_ids for each in found.findings if each.finding.rule == "circuit-proved"] == [("x",)]


@pytest.mark.parametrize("what", UNKNOWN)
def test_an_unknown_opening_keeps_no_other_from_its_proof(what):
    """Home runs share nothing but the supply, and nothing is inside that."""
    how = dict(UNKNOWN[what])
    found = laid(20.0, *how.pop("more"), openings=LOW[:3], **how)
    assert standings(found) == {**dict.fromkeys(LOW[:3], "proved"), "x": "not-proved"}
    assert not said(found, "circuit-voltage")


def test_the_most_that_an_opening_can_draw_decides_what_hangs_beside_it():
    """In a chain the unknown one pulls on the way of the other: 0.4 A or 0.5 A of a unit and 0.5 A of a magnet.

    At 30 m 2 x 30 x 0.022207 = 1.332 ohm: known alone 11.4 - 0.4 x 1.332 = 10.87 V; with 0.9 A more 9.67 V, with 1.0 A
    more 9.54 V, under the 10 V that are needed, so neither is proved; at 10 m 10.82 V or more are left.
    """
    cat = parts()
    for metres, standing in ((30.0, "not-proved"), (10.0, "proved")):
        stated = {"a": connected("a", cat), "x": unfitted("x", cat)}
        found = work([run("supply", "a", metres), run("a", "x", 1.0)], stated, cat)
        assert standings(found) == {"a": standing, "x": "not-proved"}
        node = only_circuit(found).node_of("a")
        assert node.lowest_v == pytest.approx(11.4 - 0.4 * 2 * metres * 0.022207, abs=1e-3)
        most = most_drawn_a(stated["x"])
        assert 0.9 <= most <= 1.0
        assert node.bound_v == pytest.approx(11.4 - (0.4 + most) * 2 * metres * 0.022207, abs=1e-3)


def test_what_hangs_behind_an_unknown_length_draws_where_the_length_begins():
    """0.4 A behind 20 m whatever the second run is: 11.4 - 2 x 20 x 0.8 x 0.022207 = 10.689 V at the first."""
    cat = parts()
    stated = {name: connected(name, cat) for name in "ab"}
    found = work([run("supply", "a", 20.0), run("a", "b", None)], stated, cat)
    assert standings(found) == {"a": "proved", "b": "not-proved"}
    node = only_circuit(found).node_of("a")
    assert (node.lowest_v, node.bound_v) == pytest.approx((10.689, 10.689), abs=1e-3)


@pytest.mark.parametrize("count", [1, 2, 3, 4, 5])
@pytest.mark.parametrize("behind", ["one after the other", "each by itself"])
def test_however_many_unknown_lengths_lie_behind_all_is_drawn_where_they_begin(count, behind):
    """20 m are 0.88828 ohm: with 0.4 A of each opening 11.4 - 0.4 x 0.88828 x count V, 9.98 V of four."""
    cat, names = parts(), "abcde"[:count]
    stated = {name: connected(name, cat) for name in names}
    feeders = names if behind == "one after the other" else "a" * count
    runs = [run(begin, end, None) for begin, end in zip(feeders, names[1:], strict=False)]
    found = work([run("supply", "a", 20.0), *runs], stated, cat)
    node = only_circuit(found).node_of("a")
    volts = 11.4 - 0.4 * 0.88828 * count
    assert (node.lowest_v, node.bound_v) == pytest.approx((volts, volts), abs=1e-3)
    assert standings(found)["a"] == ("proved" if count < 4 else "failed")


@pytest.mark.parametrize("length_m", [None, 0.001])
@pytest.mark.parametrize("rest_a", [None, 0.0, 0.1, 0.3])
def test_at_the_upper_tolerance_counts_what_is_surely_drawn_wherever_it_hangs(rest_a, length_m):
    """12 V and 5 % are 12.6 V; both units take what they rest with through 0.88828 ohm, nothing where nobody says."""
    cat = parts(UNIT={"supply_rest_a": rest_a})
    stated = {name: connected(name, cat) for name in "ab"}
    found = work([run("supply", "a", 20.0), run("a", "b", length_m)], stated, cat)
    volts = only_circuit(found).node_of("a").volts["highest-mains"]
    assert volts == pytest.approx(12.6 - 2 * (rest_a or 0.0) * 0.88828, abs=1e-3)


def test_through_the_resistance_inside_a_supply_the_unknown_touches_other_circuits():
    """1.0 ohm inside: b draws 0.4 A, 11.4 - 0.4 x (1 + 0.444) = 10.82 V; with 1 A more inside 9.8 V may be left."""
    for ohm, standing in ((1.0, "not-proved"), (None, "proved")):
        cat = parts(PSU={"inside_ohm": ohm})
        stated = {"x": unfitted("x", cat), "b": connected("b", cat)}
        found = work(
            [run("supply", "x", 1.0), run("supply", "b", 10.0, "d")], stated, cat, circuits=[circuit(), circuit("d")]
        )
        assert standings(found) == {"x": "not-proved", "b": standing}
        (proof,) = found.supplies[0].circuits[1].proofs
        assert proof.missing == (() if standing == "proved" else ("opening.fit",))


def over_unmeasured(name, cat, **facts):
    """An opening fed over a power transfer that stays, 100 ohm at the most, and a ready way across its leaf."""
    stays = item("power-transfer", face="edge", conductors=4, **facts)
    at = connected(name, cat)
    leaf = replace(at.given.leaves[0], raceway=True)
    return ConnectedOpening(replace(at.given, leaves=(leaf,), items=(*at.given.items, stays)), at.fit)


@pytest.mark.parametrize(
    ("metres", "unit_a", "facts", "standing"),
    [
        # 11.4 V less 0.4 A over 10 m: 11.22 V; 100 ohm would take 40 V of it.
        (10.0, 0.4, {}, "not-proved"),
        # Measured, 0.4 A x 2 ohm take 0.8 V, 3 ohm 1.2 V of the 1.2 V that are left less the wire across the leaf.
        (10.0, 0.4, {"loop_ohm": 2.0}, "proved"),
        (10.0, 0.4, {"loop_ohm": 3.2}, "failed"),
        # 0.01 A x 100 ohm take 1.0 V: 10.4 V are left, whatever it has; 0.015 A would leave 9.9 V.
        (10.0, 0.01, {}, "proved"),
        (10.0, 0.015, {}, "not-proved"),
        # 100 m take 1.78 V: 9.62 V are left even where it has nothing.
        (100.0, 0.4, {}, "failed"),
    ],
)
def test_a_transfer_that_nobody_has_measured_is_reckoned_with_at_its_least_and_its_most(
    metres, unit_a, facts, standing
):
    cat = parts(UNIT={"supply_a": unit_a})
    found = work([run("supply", "a", metres)], {"a": over_unmeasured("a", cat, **facts)}, cat)
    assert standings(found) == {"a": standing}
    (proof,) = only_circuit(found).proofs
    assert proof.missing == (("existing_item.loop_ohm",) if standing == "not-proved" else ())
    assert (len(said(found, "circuit-proved")), bool(said(found, "circuit-voltage"))) == (
        int(standing == "not-proved"), standing == "failed"
    )  # fmt: skip


def test_an_unmeasured_transfer_keeps_no_other_opening_from_its_proof():
    """Two units of constant current draw what they draw: 11.4 - 20 m x 2 x 0.8 A x 0.022207 = 10.69 V at the first.

    Of constant power, 4.6 W at its lowest 9 V are 0.51 A, whatever lies before it: 10.6 V at the first.
    """
    for law, least_v in (("current", 10.689), ("power", 11.4 - 0.8883 * (4.6 / 9 + 4.6 / 10.5))):
        cat = parts(UNIT={"draws": law, "supply_low_v": 9.0, "supply_high_v": 14.0, "supply_a": 0.4})
        stated = {"a": connected("a", cat), "b": over_unmeasured("b", cat)}
        found = work([run("supply", "a", 20.0), run("a", "b", 0.001)], stated, cat)
        assert standings(found) == {"a": "proved", "b": "not-proved"}
        assert only_circuit(found).node_of("a").bound_v == pytest.approx(least_v, abs=0.02)


def test_how_a_load_draws_is_asked_only_where_it_decides():
    """A unit of 0.4 A at 12 V from 10 to 14 V: at 10 V it draws 0.48 A of constant power, as a resistance less.

    11.4 - 0.4 x 2 x 35 x 0.022207 = 10.78 V; 1.2 x 0.6218 V lost leave 10.65 V. Over 70 m 10.16 V, and 9.91 V.
    """
    cat = parts(UNIT={"draws": None})
    for metres, missing in ((35.0, ()), (70.0, ("part UNIT.draws",))):
        found = work([run("supply", "a", metres)], {"a": connected("a", cat)}, cat)
        (proof,) = only_circuit(found).proofs
        assert (proof.standing, proof.missing) == ("not-proved" if missing else "proved", missing)
    node = only_circuit(found).node_of("a")
    assert (node.lowest_v, node.bound_v) == pytest.approx((11.4 - 1.2436, 11.4 - 1.2 * 1.2436), abs=1e-3)
    # Stated it is proved; and over 80 m it is low whichever it is.
    assert standings(laid(70.0, openings=LOW[:1])) == {"o0": "proved"}
    assert standings(laid(80.0, openings=LOW[:1], cat=cat)) == {"o0": "failed"}


def test_what_more_may_be_drawn_is_lost_from_the_source_that_stands_higher():
    """Of a weak supply 3 ohm inside take more than its battery's lower end voltage does: at 0.4 A, 1 m of wire away,

    11.4 - 0.4 x (3 + 0.0444) = 10.182 V from mains, 10.5 - 0.4 x 0.0444 = 10.482 V from the battery. As constant power,
    1.2 times as much at 10 V, mains leave 11.4 - 0.48 x 3.0444 = 9.939 V: 10 V are not proved, 9.9 V are.
    """
    for needed_v, standing in ((10.0, "not-proved"), (9.9, "proved")):
        unit = {"draws": None, "supply_low_v": needed_v, "supply_rest_a": 0.02}
        cat = parts(PSU={"inside_ohm": 3.0}, UNIT=unit)
        stated = {"a": connected("a", cat)}
        found = work([run("supply", "a", 1.0)], stated, cat, supplies=[supply(battery="BAT")])
        assert standings(found) == {"a": standing}, needed_v
        assert only_circuit(found).node_of("a").lowest_v == pytest.approx(10.182, abs=1e-3)


def test_beside_constant_power_what_is_not_stated_pulls_on_that_too():
    """b draws constant power: what a may draw more lowers its voltage, and so b draws more as well.

    Solved by hand at the worst: a as constant power too, 4.8 W, through 2 x 35 x 0.022207 = 1.5545 ohm from 11.4 V with
    the 2.4 W of b, of which it is told how it draws: v = 11.4 - 1.5545 x 7.2 / v gives 10.314 V.
    """
    watts = part("W", "electromagnetic-lock", supply_v=12.0, holding_a=0.2, draws="power", supply_low_v=9.0,
                 supply_high_v=14.0, current="dc", fail="fail-safe")  # fmt: skip
    cat = parts(add=(BATTERY, watts), UNIT={"draws": None})
    stated = {"a": connected("a", cat), "b": only("b", cat, "W")}
    for needed_v, standing in ((9.8, "proved"), (10.32, "not-proved")):
        given = parts(add=(BATTERY, watts), UNIT={"draws": None, "supply_low_v": needed_v})
        stated = {"a": connected("a", given), "b": only("b", given, "W")}
        found = work([run("supply", "a", 35.0), run("a", "b", 0.001)], stated, given)
        assert standings(found)["a"] == standing


@pytest.mark.parametrize(
    ("law", "left_v", "standing"),
    [
        ("power", 7.0, "proved"),
        ("power", 6.3, "proved"),
        ("power", 6.1, "not-proved"),
        # A constant current stays what it is: 11.4 - 1.2 x 5.3 V and 11.4 - 1.2 x 7.4 V, and under 2 V.
        ("current", 6.1, "proved"),
        ("current", 4.0, "proved"),
        ("current", 3.5, "not-proved"),
    ],
)
def test_constant_power_that_may_find_no_voltage_any_more_is_not_proved(law, left_v, standing):
    """Where b finds v of 11.4 V over 100 m, 4.4414 ohm, it draws v (11.4 - v) / 4.4414 W.

    What a does not tell may raise drops by a fifth. 1.2 x 5.1 V is no more than the 6.3 V that b finds: b draws no more
    than a fifth more with it. 1.2 x 5.3 V is more than 6.1 V: there 11.4 V less so much leaves 5.04 V, 1.21 times the
    current, and so on; though b itself, which works from 2 V on, would find enough of it.
    """
    amps = (11.4 - left_v) / 4.4414
    stated_a = amps if law == "current" else left_v * amps / 12.0
    load = part("W", "electromagnetic-lock", supply_v=12.0, holding_a=stated_a, draws=law, supply_low_v=2.0,
                supply_high_v=14.0, current="dc", fail="fail-safe")  # fmt: skip
    cat = parts(add=(BATTERY, load), UNIT={"draws": None})
    stated = {"a": connected("a", cat), "b": only("b", cat, "W")}
    found = work([run("supply", "a", 1.0), run("supply", "b", 100.0)], stated, cat)
    assert only_circuit(found).node_of("b").lowest_v == pytest.approx(left_v, abs=0.01)
    assert standings(found)["b"] == standing


def test_a_battery_of_which_the_end_voltage_is_not_stated_proves_nothing():
    """By the usual share 12 V x 0.875 = 10.5 V would be left of it; that is proved only where a project states it."""
    for end_v, limits, missing in (
        (10.5, {}, ()),
        (None, {}, ("part BAT.end_v",)),
        (None, {"standby-capacity.end_share": 0.875}, ()),
    ):
        cat = parts(add=(replace(BATTERY, attributes={**BATTERY.attributes, "end_v": end_v}),))
        settings = Settings(length_style="mm", limits=limits)
        found = work([run("supply", "a", 5.0)], {"a": connected("a", cat)}, cat, supplies=[supply(battery="BAT")],
                     settings=settings)  # fmt: skip
        (proof,) = only_circuit(found).proofs
        assert (proof.standing, proof.missing) == ("not-proved" if missing else "proved", missing)


def test_a_circuit_that_is_no_tree_is_not_proved_and_leaves_the_other_one_alone():
    cat = parts()
    stated = {name: connected(name, cat) for name in "ab"}
    found = work([run("J1", "a", 1.0), run("supply", "b", 10.0, "d")], stated, cat, circuits=[circuit(), circuit("d")])
    assert standings(found) == {"a": "not-proved", "b": "proved"}


def test_with_every_fact_given_nothing_is_left_unproved():
    found = laid(20.0, openings=LOW[:3])
    assert set(standings(found).values()) == {"proved"}
    assert not said(found, "circuit-proved")


def test_a_supply_that_is_overloaded_whatever_is_unknown_is_in_error():
    found = laid(20.0, unknown=("x",), openings=LOW)
    (result,) = found.supplies
    # Without the unknown one: 10 x 0.4 A, and the supply gives 2.5 A.
    assert result.held_a[0] == pytest.approx(4.0)
    assert said(found, "supply-loading")[0].severity == "error"


def test_a_standby_battery_that_is_short_whatever_is_unknown_is_in_error():
    cat = parts()
    stated = {"a": connected("a", cat), "x": unfitted("x", cat)}
    found = work(
        [run("supply", "a", 10.0), run("supply", "x", 1.0)], stated, cat,
        supplies=[supply(battery="BAT", standby_hours=48.0, temperature_c=25.0)],
    )  # fmt: skip
    (finding,) = said(found, "standby-capacity")
    # 48 h x 0.4 A = 19.2 Ah and more; 7 Ah are laid.
    assert finding.severity == "error"
    assert "at least" in finding.message
    enough = work(
        [run("supply", "a", 10.0), run("supply", "x", 1.0)], stated, cat,
        supplies=[supply(battery="BAT", standby_hours=4.0, temperature_c=25.0)],
    )  # fmt: skip
    (finding,) = said(enough, "standby-capacity")
    assert (finding.severity, finding.needs) == ("warning", ("opening.fit",))


def test_each_opening_is_told_its_own_worst_operations():
    """Two home runs behind 1 ohm: what operates at one end is not what lowers the other most."""
    cat = parts(PSU={"inside_ohm": 0.2}, UNIT={"supply_rest_a": 0.02, "supply_inrush_a": 1.0})
    stated = {name: connected(name, cat) for name in "ab"}
    found = work([run("supply", "a", 10.0), run("supply", "b", 12.0)], stated, cat, circuits=[circuit(at_once=1)])
    result = only_circuit(found)
    assert [result.node_of(name).operating for name in "ab"] == [("A",), ("B",)]
    for name, metres in (("a", 10.0), ("b", 12.0)):
        expected = 11.4 - 0.2 * 1.02 - 2 * metres * 0.022207 * 1.0
        assert result.node_of(name).volts["peak"] == pytest.approx(expected, abs=1e-3)


def test_operations_at_one_time_are_openings_with_all_their_devices():
    """Of two openings with a unit and two strikes each one operates: its unit and both strikes, 0.4 + 0.7 A."""
    from tests.rules.scenario import fp

    cat = parts(UNIT={"supply_rest_a": 0.0}, STRIKE={"supply_low_v": 9.0, "supply_high_v": 14.0})
    stated = {name: connected(name, cat, fp("strike", "STRIKE", 2.0)) for name in "ab"}
    found = work([run("supply", "a", 10.0), run("supply", "b", 10.0)], stated, cat, circuits=[circuit(at_once=1)])
    result = only_circuit(found)
    assert result.node_of("a").volts["peak"] == pytest.approx(11.4 - 2 * 10 * 0.022207 * 1.1, abs=1e-3)
    assert result.inrush_a == pytest.approx(1.1)


def test_where_the_unknown_may_leave_no_solution_no_bound_is_told():
    """4.8 W behind 150 m, 6.66 ohm: alone 6.4 V; with an ampere more on the way no voltage carries it."""
    cat = parts(UNIT={"draws": "power", "supply_low_v": 5.0, "supply_high_v": 19.0})
    stated = {"a": connected("a", cat), "x": unfitted("x", cat)}
    found = work([run("supply", "a", 150.0), run("a", "x", 1.0)], stated, cat)
    node = only_circuit(found).node_of("a")
    assert node.lowest_v == pytest.approx(6.4, abs=0.05)
    assert (node.bound_v, node.may_fall_v) == (None, None)
    assert standings(found) == {"a": "not-proved", "x": "not-proved"}
    assert all(isfinite(v) for each in only_circuit(found).nodes for v in each.volts.values())
