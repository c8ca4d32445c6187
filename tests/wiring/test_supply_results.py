"""Volts of circuits against arithmetic by hand, and what is said where they cannot be worked out.

By hand: a run costs 2 x L x I x R' (two wires, shared facts 1.5), with R' = 1.02 / 58 / A x (1 + 0.00393 x (T - 20))
ohm a metre: 58 MS/m and 0.00393 are IEC 60028, the lay of 2 % is common practice beside NFPA 70 Chapter 9 Table 8.
18 AWG: 0.127 x 92^(18/39) = 1.02369 mm, 0.82305 mm2; 22 AWG: 0.64380 mm, 0.32554 mm2 (ASTM B258; shared facts 1.1).
At 30 C: 18 AWG 0.022207 ohm/m, 22 AWG 0.056146 ohm/m. The supply is of 12 V and 5 %, so 11.4 V at its lowest; a unit
holds 0.4 A.
"""

import pytest

from hwsched.rules.network.devices import devices_of
from hwsched.values import Settings
from hwsched.wiring.failure import failures
from tests.rules.scenario import fit, fp, part
from tests.wiring.power_rows import alone, circuit, connected, only, only_circuit, parts, run, said, supply, volts, work

R18 = 1.02 / 58 / 0.82305 * (1 + 0.00393 * 10)
R22 = 1.02 / 58 / 0.32554 * (1 + 0.00393 * 10)
MV = 1e-3


def one(runs, cat=None, **more):
    return only_circuit(alone(runs, cat, **more))


def test_one_run_by_hand():
    found = one([run("supply", "a", 30.0)])
    # 2 x 30 m x 0.4 A x 0.022207 ohm/m = 0.53297 V
    assert volts(found, "a") == pytest.approx(12.0 - 0.53297, abs=MV)
    assert volts(found, "a", "lowest-mains") == pytest.approx(11.4 - 0.53297, abs=MV)
    (only_run,) = found.runs
    assert only_run.ohm == pytest.approx(2 * 30 * 0.022207, abs=1e-4)
    assert only_run.amps["normal"] == pytest.approx(0.4)
    assert only_run.drop_v["normal"] == pytest.approx(0.53297, abs=MV)
    assert only_run.loss_w["normal"] == pytest.approx(0.53297 * 0.4, abs=MV)
    assert found.current_a["normal"] == found.holding_a == pytest.approx(0.4)


def test_a_published_drop():
    # 12 V lock, 0.5 A, 150 ft one way, 18 AWG stranded at 75 C by Table 8 (7.95 ohm/kft): 1.1925 V, the load sees
    # 10.8075 V (shared facts 1.5); the formula is 0.4 % under the table.
    cat = parts(STRIKE={"fail": "fail-safe", "holding_a": 0.5})
    found = one([run("supply", "a", 150 * 0.3048)], cat, openings={"a": only("a", cat)},
                circuits=[circuit(temperature_c=75.0)])  # fmt: skip
    assert 12.0 - volts(found, "a") == pytest.approx(1.1925, rel=0.005)


def test_the_transfer_at_the_leaf_is_a_run_of_its_own():
    cat = parts()
    found = one([run("supply", "a", 30.0)], cat, openings={"a": connected("a", cat, without=())})
    # Door loop of 0.5 m, 22 AWG: 2 x 0.5 x 0.4 x 0.056146 = 0.02246 V more.
    assert volts(found, "a/leaf") == pytest.approx(12.0 - 0.53297 - 0.02246, abs=MV)
    assert volts(found, "a") == pytest.approx(12.0 - 0.53297, abs=MV)
    leaf = next(node for node in found.nodes if node.node == "a/leaf")
    assert (leaf.opening_id, leaf.name, leaf.minimum_v, leaf.distance_m) == ("a", "A (leaf)", 10.0, 30.5)
    assert [each.transfer for each in found.runs] == [False, True]
    assert found.runs[1].part == "LOOP"


def test_what_sits_in_the_frame_is_fed_before_the_transfer():
    cat = parts(
        add=(part("ELOCK", "electrified-lock", supply_v=12.0, holding_a=0.3, fail="fail-safe"),),
        STRIKE={"fail": "fail-safe"},
    )
    stated = {"a": connected("a", cat, fp("strike", "STRIKE"), fp("strike", "ELOCK"), without=())}
    found = one([run("supply", "a", 30.0)], cat, openings=stated)
    # Strike 0.35 A in the frame; unit 0.4 A and electrified lock 0.3 A on the leaf.
    ohm, loop = 2 * 30 * R18, 2 * 0.5 * R22
    assert volts(found, "a") == pytest.approx(12.0 - 1.05 * ohm, abs=MV)
    assert volts(found, "a/leaf") == pytest.approx(12.0 - 1.05 * ohm - 0.7 * loop, abs=MV)


def test_a_part_is_told_at_the_node_where_it_hangs():
    """The strike is fed by the contact of the unit, and no load of the leaf; nothing hangs where the run ends."""
    cat = parts(STRIKE={"fail": "fail-safe"}, UNIT={"supply_low_v": 10.0})
    stated = {"a": connected("a", cat, fp("strike", "STRIKE"), without=())}
    found = one([run("supply", "a", 30.0)], cat, openings=stated)
    assert {node.node: node.parts for node in found.nodes if node.parts} == {
        "a/strike": ("STRIKE",),
        "a/leaf": ("UNIT",),
    }


def test_a_daisy_chain():
    found = one([run("a", "b", 15.0), run("supply", "a", 10.0)])
    # The first run carries 0.8 A, the second 0.4 A.
    at_a = 12.0 - 2 * 10 * 0.8 * 0.022207
    assert volts(found, "a") == pytest.approx(at_a, abs=MV)
    assert volts(found, "b") == pytest.approx(at_a - 2 * 15 * 0.4 * 0.022207, abs=MV)
    assert {node.node: node.distance_m for node in found.nodes} == {"supply": 0.0, "a": 10.0, "b": 25.0}


def test_a_tree_with_junctions():
    runs = [
        run("supply", "J1", 8.0),
        run("J1", "a", 5.0),
        run("J1", "J2", 6.0),
        run("J2", "b", 7.0),
        run("J2", "c", 9.0),
    ]
    found = one(runs)
    at_1 = 12.0 - 2 * 8 * 1.2 * R18
    at_2 = at_1 - 2 * 6 * 0.8 * R18
    for node, expected in (("a", at_1 - 2 * 5 * 0.4 * R18), ("b", at_2 - 2 * 7 * 0.4 * R18), ("J2", at_2)):
        assert volts(found, node) == pytest.approx(expected, abs=MV)
    assert found.openings == ("a", "b", "c")
    assert found.marks == ("A", "B", "C")


def test_several_circuits_do_not_see_each_other():
    cat = parts()
    found = work(
        [run("supply", "a", 30.0), run("supply", "b", 30.0, "d")],
        {name: connected(name, cat) for name in "ab"}, cat, circuits=[circuit(), circuit("d")],
    )  # fmt: skip
    (result,) = found.supplies
    assert [volts(c, o) for c, o in zip(result.circuits, "ab", strict=True)] == pytest.approx([11.46703] * 2, abs=MV)
    assert result.holding_a == pytest.approx(0.8)
    assert result.share == pytest.approx(0.8 / 2.5)
    assert result.openings == ("a", "b")


@pytest.mark.parametrize(
    ("facts", "ohm"),
    [
        ({}, 60 * R18),
        ({"parallel": 2}, 30 * R18),
        ({"extra_ohm": 0.5}, 60 * R18 + 0.5),
        # 1.0 mm2 solid at 30 C: 1 / 58 x 1.0393 ohm/m.
        ({"gauge": "1.0 mm2", "stranding": "solid"}, 60 / 58 * 1.0393),
        ({"wire": "THIN"}, 60 * R22),
    ],
)
def test_what_a_run_can_say(facts, ohm):
    cat = parts(add=(part("THIN", "wire", gauge="22 AWG", conductors=2, stranding="stranded"),))
    assert one([run("supply", "a", 30.0, **facts)], cat).runs[0].ohm == pytest.approx(ohm, rel=1e-4)


def test_temperature_of_circuit_and_project():
    cold = one([run("supply", "a", 30.0)], circuits=[circuit(temperature_c=20.0)])
    assert cold.runs[0].ohm == pytest.approx(60 * R18 / 1.0393, rel=1e-4)
    warm = one([run("supply", "a", 30.0)], settings=Settings(limits={"circuit-voltage.temperature_c": 75.0}))
    # R75 / R20 = 1.21615 (shared facts 1.1)
    assert warm.runs[0].ohm / cold.runs[0].ohm == pytest.approx(1.21615, rel=1e-4)


def test_states_with_battery_and_resistance_inside():
    cat = parts(PSU={"inside_ohm": 0.1}, add=(part("BAT", "standby-battery", voltage_v=12.0, capacity_ah=7.0),))
    found = one([run("supply", "a", 30.0)], cat, supplies=[supply(battery="BAT")])
    # 1.75 V a cell of 2 V: 12 x 0.875 = 10.5 V (common practice); the battery says nothing of its resistance.
    assert dict(found.source_v) == pytest.approx(
        {"normal": 12.0, "lowest-mains": 11.4, "highest-mains": 12.6, "standby-end": 10.5, "peak": 10.5}
    )
    assert volts(found, "a") == pytest.approx(12.0 - 0.53297 - 0.04, abs=MV)
    assert volts(found, "a", "standby-end") == pytest.approx(10.5 - 0.53297, abs=MV)
    assert said(alone([run("supply", "a", 30.0)], cat, supplies=[supply(battery="BAT")]), "circuit-voltage")
    two = one([run("supply", "a")], parts(PSU={"output_v": 24.0}), supplies=[supply(battery="BAT", batteries=2)])
    assert two.source_v["standby-end"] == 21.0


def test_worst_operations_at_one_time():
    cat = parts(UNIT={"supply_rest_a": 0.02, "supply_inrush_a": 1.0})
    runs = [run("supply", "a", 10.0), run("a", "b", 10.0), run("b", "c", 10.0)]
    found = one(runs, cat, circuits=[circuit(at_once=1)])
    # At rest 0.02 A each; the worst single operation is that of c, 1.0 A: 0.98 A more over 30 m.
    rest = 11.4 - 2 * 10 * R18 * (0.06 + 0.04 + 0.02)
    assert found.operating == ("C",)
    assert volts(found, "c", "peak") == pytest.approx(rest - 2 * 30 * R18 * 0.98, abs=MV)
    assert found.holding_a == pytest.approx(1.2)
    assert found.inrush_a == pytest.approx(0.04 + 1.0)
    assert one(runs, cat, circuits=[circuit(at_once=0)]).operating == ()
    assert one(runs, cat).operating == ("B", "C")


def test_a_pair_of_strikes_is_two_devices():
    cat = parts(STRIKE={"fail": "fail-safe"})
    found = one([run("supply", "a")], cat, openings={"a": only("a", cat, quantity=2.0)})
    assert found.current_a["normal"] == pytest.approx(0.7)
    result_of = alone([run("supply", "a")], cat, openings={"a": only("a", cat, quantity=2.0)})
    assert len(said(result_of, "coil-suppression")) == 1


def test_kinds_of_load():
    # 4.8 W at 12 V mid-window: v (12 - v) / R = P, the higher root.
    ohm = 60 * R18
    power = one([run("supply", "a", 30.0)], parts(UNIT={"draws": "power"}))
    assert volts(power, "a") == pytest.approx(6 + (36 - 4.8 * ohm) ** 0.5, abs=MV)
    resistance = one([run("supply", "a", 30.0)], parts(UNIT={"draws": "resistance"}))
    assert volts(resistance, "a") == pytest.approx(12 * 30 / (30 + ohm), abs=MV)


def test_collapse_is_said():
    found = alone([run("supply", "a", 300.0)], parts(UNIT={"draws": "power"}))
    # Most that 13.324 ohm can carry from 12 V: 144 / (4 x 13.324) = 2.70 W, and 4.8 W are asked.
    result = only_circuit(found)
    assert set(result.collapsed) == {"normal", "lowest-mains", "peak"}
    assert "no voltage satisfies" in result.collapsed["normal"]
    assert [finding.values["source_v"] for finding in said(found, "circuit-collapse")] == pytest.approx(
        [12.0, 11.4, 11.4]
    )
    assert all(node.lowest_v is None for node in result.nodes)
    # Just under: 2 x 100 m: 144 / (4 x 4.442) = 8.1 W.
    assert not one([run("supply", "a", 100.0)], parts(UNIT={"draws": "power"})).collapsed


def test_currents_that_cannot_be_carried_find_no_voltage():
    found = alone([run("supply", "a", 900.0)])
    (finding,) = said(found, "circuit-voltage")
    assert "finds no voltage" in finding.message
    assert "-" not in finding.message.split("short by")[1]


@pytest.mark.parametrize(
    ("changed", "word"),
    [
        ({"PSU": {"output_v": 24.0}}, "24 V is over the highest 14 V"),
        ({"PSU": {"output_v": 6.0}}, "under the lowest 10 V"),
        ({"PSU": {"current": "ac"}}, "the supply gives AC, the load takes DC"),
    ],
)
def test_a_supply_that_does_not_suit(changed, word):
    found = alone([run("supply", "a")], parts(**changed))
    (finding,) = said(found, "circuit-suits")
    assert word in finding.message
    assert "UNIT at A" in finding.message
    assert finding.severity == "error"
    assert [f.opening_ids for f in found.findings if f.finding.rule == "circuit-suits"] == [("a",)]


def test_an_ac_circuit_whose_loads_suit_is_not_passed_in_silence():
    cat = parts(PSU={"current": "ac"}, STRIKE={"current": "either"})
    found = alone([run("supply", "a")], cat, openings={"a": only("a", cat)})
    assert "gives AC" in said(found, "circuit-known")[0].message
    assert only_circuit(found).nodes == ()


def unfitted(cat):
    stated = connected("a", cat)
    return type(stated)(stated.given, None)


@pytest.mark.parametrize(
    ("make", "needs", "word"),
    [
        (lambda: alone([run("supply", "a", None)]), "run.length_m", "from supply to A"),
        (lambda: alone([run("supply", "a")], circuits=[circuit(wire=None)]), "run.wire", "from supply to A"),
        (lambda: alone([run("supply", "a", gauge="18 AWG")]), "run.stranding", "18 AWG"),
        (lambda: alone([run("supply", "a")], parts(WIRE={"gauge": None})), "part WIRE.gauge", "WIRE"),
        (lambda: alone([run("supply", "a")], parts(WIRE={"stranding": None})), "part WIRE.stranding", "WIRE"),
        (lambda: alone([run("supply", "a")], parts(PSU={"tolerance_share": None})), "part PSU.tolerance_share", "PSU"),
        (lambda: alone([run("supply", "a")], supplies=[supply(part=None)]), "supply.part", "PS-s"),
        (lambda: alone([run("supply", "a")], parts(UNIT={"supply_a": None})), "part UNIT.supply_a", "UNIT at A"),
        (lambda: alone([run("supply", "a")], parts(UNIT={"supply_low_v": None})), "part UNIT.supply_low_v", "UNIT"),
        (lambda: alone([run("supply", "a")], parts(UNIT={"supply_high_v": None})), "part UNIT.supply_high_v", "UNIT"),
        (lambda: alone([run("supply", "a")], openings={"a": unfitted(parts())}), "opening.fit", "what A draws"),
    ],
)
def test_what_is_unknown_is_named(make, needs, word):
    found = make()
    (finding,) = said(found, "circuit-known")
    assert finding.needs == (needs,)
    assert word in finding.message
    assert finding.message.startswith("Unknown:")
    assert finding.severity == "warning"
    result = only_circuit(found)
    assert (result.holding_a, found.supplies[0].holding_a) == (None, None)
    # No voltage is told of a load that is not known, or not known where.
    assert [node.minimum_v for node in result.nodes if node.minimum_v is not None] == []
    assert [(proof.opening_id, proof.standing, proof.missing) for proof in result.proofs] == [
        ("a", "not-proved", (needs,))
    ]
    (proved,) = said(found, "circuit-proved")
    assert (proved.severity, proved.needs) == ("warning", (needs,))
    assert not said(found, "circuit-sound")


def test_a_transfer_without_length_is_unknown():
    cat = parts(LOOP={"length_mm": None})
    (finding,) = said(
        alone([run("supply", "a")], cat, openings={"a": connected("a", cat, without=())}), "circuit-known"
    )
    assert finding.needs == ("part LOOP.length_mm",)


def test_a_coil_without_current_is_unknown():
    cat = parts(STRIKE={"holding_a": None})
    (finding,) = said(alone([run("supply", "a")], cat, openings={"a": only("a", cat)}), "circuit-known")
    assert finding.needs == ("part STRIKE.holding_a",)


def test_runs_stand_in_the_order_in_which_people_count_however_they_were_laid():
    laid = [run("o9", "o10"), run("supply", "J1"), run("J1", "o2"), run("J1", "o9"), run("o2", "o1")]
    (found,) = alone(laid).supplies
    assert [each.to_name for each in found.circuits[0].runs] == ["J1", "O1", "O2", "O9", "O10"]
    cuts = [each.name for each in failures(found) if each.what == "run"]
    assert cuts == ["PS-s/C PS-s to J1", "PS-s/C O2 to O1", "PS-s/C J1 to O2", "PS-s/C J1 to O9", "PS-s/C O9 to O10"]


def test_an_unknown_length_within_a_chain_leaves_the_chain_sound():
    found = alone([run("supply", "a", None), run("a", "b"), run("b", "c")])
    assert [finding.needs for finding in said(found, "circuit-known")] == [("run.length_m",)]
    assert said(found, "circuit-sound") == []


@pytest.mark.parametrize(
    ("runs", "words"),
    [
        ([run("J1", "a")], ("from J1 to A", "not fed from the supply")),
        ([run("supply", "a"), run("a", "b"), run("b", "J1"), run("J1", "a")], ("closes a loop",)),
        ([run("a", "b"), run("b", "a")], ("from A to B", "closes a loop")),
        ([run("supply", "a", 0.0)], ("from supply to A", "length_m")),
        ([run("supply", "a", -3.0)], ("from supply to A", "length_m", "-3")),
        ([run("supply", "a", gauge="pencil", stranding="solid")], ("from supply to A", "gauge", "pencil")),
        ([run("supply", "a", wire="PSU")], ("PSU", "from supply to A", "no wire")),
        ([run("supply", "a", wire="NONE")], ("NONE", "from supply to A", "no wire")),
        # Unsound and unknown at one time: both are said.
        ([run("supply", "a", None), run("J1", "b")], ("from J1 to B", "not fed")),
    ],
)
def test_runs_that_cannot_be_are_named(runs, words):
    found = alone(runs)
    (finding,) = said(found, "circuit-sound")
    for word in words:
        assert word in finding.message
    assert "'" not in finding.message
    assert finding.severity == "error"


@pytest.mark.parametrize(
    ("limits", "word"),
    [
        ({"circuit-voltage.at_once": -1.0}, "operations at once"),
        ({"circuit-voltage.temperature_c": 999.0}, "temperature"),
        ({"standby-capacity.margin": 0.5}, "margin"),
    ],
)
def test_a_limit_that_cannot_be_is_said_and_ends_nothing(limits, word):
    found = alone([run("supply", "a")], settings=Settings(limits=limits), supplies=[supply(standby_hours=4.0)])
    assert any(word in f.finding.message.lower() for f in found.findings)


def test_a_device_that_cannot_be_taken_is_named():
    cat = parts(UNIT={"draws": "resistance", "supply_low_v": 0.0, "supply_high_v": 0.0})
    (finding,) = said(alone([run("supply", "a")], cat), "circuit-sound")
    assert "UNIT at A" in finding.message


def test_a_battery_that_is_none():
    found = alone([run("supply", "a")], supplies=[supply(battery="WIRE")])
    assert "no standby battery" in said(found, "circuit-suits")[0].message
    assert found.supplies[0].holding_a == pytest.approx(0.4)
    assert "not in the catalogue" in said(alone([run("supply", "a")], supplies=[supply(battery="X")]),
                                          "circuit-suits")[0].message  # fmt: skip


def test_one_supply_of_several():
    cat = parts()
    stated = {name: connected(name, cat) for name in "ab"}
    runs = [run("supply", "a"), run("supply", "b", 20.0, "d")]
    more = {"supplies": [supply(), supply("t")], "circuits": [circuit(), circuit("d", "t")]}
    whole, part_of = work(runs, stated, cat, **more), work(runs, stated, cat, wanted={"t"}, **more)
    assert [each.supply.id for each in part_of.supplies] == ["t"]
    assert part_of.supplies[0] == whole.supplies[1]
    assert list(part_of.findings) == [f for f in whole.findings if f.supply_id == "t"]


def test_the_limiter_keeps_the_project_s_margin():
    # 0.8 A held: 1.25 gives 1.0 A; 2 times gives 1.6 A, the next rating is proposed.
    runs = [run("supply", "a"), run("supply", "b")]
    assert one(runs).limiter_a == 1.0
    doubled = one(runs, settings=Settings(limits={"circuit-limiter.margin": 2.0}))
    assert doubled.limiter_a is not None
    assert doubled.limiter_a >= 1.6


def test_what_an_opening_hangs_on_its_circuit():
    cat = parts(STRIKE={"terminal_plus": "+", "terminal_minus": "-"}, UNIT={"draws": None})
    stated = connected("a", cat, fp("strike", "STRIKE"), fp("strike", "MAG"))
    (unit, strike, magnet), problems = devices_of(stated.given, stated.fit)
    assert problems == ()
    assert (unit.role, unit.kind, unit.holding, unit.peak, unit.minimum_v, unit.maximum_v) == (
        "unit", "current", 0.4, 0.4, 10.0, 14.0,
    )  # fmt: skip
    assert unit.assumed == (
        "current at rest taken as the supply current", "taken as a constant current",
        "no more in the first moment than it draws in operation", "fed by two conductors, plus and minus",
    )  # fmt: skip
    # 85 to 110 % of 12 V: 10.2 to 13.2 V (NFPA 72, secondary copy; shared facts 1.5).
    assert (strike.minimum_v, strike.maximum_v) == pytest.approx((10.2, 13.2))
    assert (strike.holding, strike.peak, strike.fail, strike.terminals) == (0.0, 0.35, "fail-secure", ("+", "-"))
    # An electromagnetic lock holds by current: fail-safe; no plain diode across it (shared facts 2.4).
    assert (magnet.holding, magnet.fail) == (0.5, "fail-safe")
    assert magnet.suppression
    assert devices_of(stated.given, fit(power="battery"))[0][0].role == "unit"


def test_a_strike_of_which_nobody_says_how_it_rests_is_taken_as_held():
    """On the safe side for supply and standby, and not as the least that it can draw."""
    cat = parts(STRIKE={"rest_a": None, "fail": "fail-safe"})
    stated = connected("a", cat, fp("strike", "STRIKE"))
    (_, strike), problems = devices_of(stated.given, stated.fit)
    assert problems == ()
    assert (strike.holding, strike.peak, strike.least) == (0.35, 0.35, None)
