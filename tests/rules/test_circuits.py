"""Rules of supplies and circuits, each from three sides.

The supply is of 12 V, 5 % and 2.5 A; a unit holds 0.4 A from 10 to 14 V. 18 AWG stranded has 0.022207 ohm/m at 30 C
(by hand in `tests.wiring.test_supply_results`): 1.4 V at 0.4 A are lost on 2 x 78.80 m.
"""

from dataclasses import replace

import pytest

from hwsched.rules import CIRCUIT_RULES, DEFERS, RuleError
from hwsched.rules.judging import judge_supply
from hwsched.values import Settings
from hwsched.values.power import Growth
from hwsched.wiring import ConnectedOpening
from tests.rules.circuit_rows import BY_ID, CircuitRow, run_row
from tests.rules.scenario import fp, item, part
from tests.wiring.power_rows import BATTERY, alone, circuit, connected, only, parts, run, said, supply, work

FULL = parts(add=(part("BAT", "standby-battery", voltage_v=12.0, capacity_ah=15.0, end_v=11.0),))


def made(rule, kind, found, openings=None, at=0, **expected):
    inputs = {name: each.given for name, each in (openings or {}).items()}
    facts = {"concerns": "openings"}
    expected = {facts.get(name, name): value for name, value in expected.items()}
    return CircuitRow(rule, kind, found.supplies[at], inputs, **expected)


def row(rule, kind, runs, cat=None, openings=None, supplies=None, circuits=None, **expected):
    """A row of one supply; its openings are usual ones unless they are given."""
    cat = cat or parts()
    openings = openings or {r.opening_id: connected(r.opening_id, cat) for r in runs if r.opening_id}
    found = alone(runs, cat, openings=openings, supplies=supplies, circuits=circuits)
    return made(rule, kind, found, openings, **expected)


def of_strike(rule, kind, alarm, fail="fail-safe", number="STRIKE", **more):
    """A row of one strike on a circuit that does this on the fire alarm."""
    facts = {name: more.pop(name) for name in ("rating", "egress", "stair", "quantity") if name in more}
    quantity = facts.pop("quantity", 1.0)
    cat = parts(STRIKE={"fail": fail})
    return row(rule, kind, ONE, cat, {"a": only("a", cat, number, quantity, **facts)},
               circuits=[circuit(alarm=alarm)], **more)  # fmt: skip


ONE = [run("supply", "a")]
CHAIN = [run("supply", "a"), run("a", "b")]
SIX = [run("supply", f"o{i}", 1.0) for i in range(6)]
LIMITED = [circuit(limiter_a=1.0)]
TWO_CIRCUITS = [circuit(), circuit("d")]


def told(**changed):
    """Parts of which everything is stated, but for what is changed."""
    stated = {
        "PSU": {"inside_ohm": 0.0, "limiting": "inherent"},
        "UNIT": {"draws": "current", "supply_rest_a": 0.2, "supply_inrush_a": 0.4, "supply_conductors": 2},
    }
    return parts(**{name: facts | changed.get(name, {}) for name, facts in stated.items()})


TOLD = told()
NO_STANDBY = [supply(standby_hours=0.0)]
STATED = [circuit(temperature_c=30.0, at_once=1)]
MADE_OFF = [run("supply", "a", extra_ohm=0.1, parallel=1)]
"""A run of which everything is stated."""


def over_kept(cat, **facts):
    """An opening whose unit is fed over a power transfer that stays."""
    stays = item("power-transfer", face="edge", **{"conductors": 4, **facts})
    at = connected("a", cat)
    return ConnectedOpening(replace(at.given, items=(*at.given.items, stays)), at.fit)


def loaded(amps, **more):
    """A unit that holds so much."""
    return parts(UNIT={"supply_a": amps}, **more)


def grown(kind, growth, **expected):
    """A row of a supply of which room for later openings is asked."""
    found = alone(ONE)
    found = replace(found, supplies=(replace(found.supplies[0], growth=(growth,)),))
    return made("supply-growth", kind, found, **expected)


ROWS = [
    row("circuit-assumed", "passes", MADE_OFF, TOLD, circuits=STATED, supplies=NO_STANDBY),
    row("circuit-assumed", "boundary", MADE_OFF, TOLD, circuits=STATED, says=1, words=("no standby asked of PS-s",)),
    row("circuit-assumed", "speaks", MADE_OFF, TOLD, circuits=[circuit(temperature_c=30.0, at_once=None)], says=1,
        severity="note", concerns=(), words=("operations at one time on C",)),
    row("circuit-assumed", "boundary", MADE_OFF, TOLD, circuits=[circuit(temperature_c=None, at_once=1)], says=1,
        words=("conductors of C",)),
    # Joints have 0.1 ohm each (common practice); where nobody says it of a run they are reckoned as none.
    row("circuit-assumed", "speaks", ONE, TOLD, circuits=STATED, says=1, words=("terminations of the runs of C",)),
    row("circuit-assumed", "speaks", [*MADE_OFF, run("a", "b")], TOLD, circuits=STATED, says=1,
        words=("terminations of 1 of 2 runs of C", "none in parallel, on 1 of 2 runs of C")),
    row("circuit-assumed", "speaks", [run("supply", "a", extra_ohm=0.1)], TOLD, circuits=STATED, supplies=NO_STANDBY,
        says=1, words=("one conductor each way, none in parallel, on the runs of C",)),
    row("circuit-assumed", "boundary", MADE_OFF, TOLD, {"a": over_kept(TOLD)}, circuits=STATED, supplies=NO_STANDBY),
    row("circuit-assumed", "speaks", MADE_OFF, told(PSU={"limiting": None}), circuits=STATED, says=1,
        words=("PSU limited by its own design",)),
    row("circuit-assumed", "speaks", MADE_OFF, told(UNIT={"supply_inrush_a": None}), circuits=STATED, says=1,
        words=("UNIT: no more in the first moment",)),
    grown("passes", Growth("c", "C", 2, True)),
    grown("speaks", Growth("c", "C", 2, False, "It is too much.", "supply-loading"), says=1, severity="warning",
          words=("2 later openings on circuit C are not borne, as the rule "
                 "'Share of the supply that is used' says: It is too much.",)),
    grown("boundary", Growth("c", "C", 1, None, "nothing is known"), says=1,
          words=("circuit C bears 1 later opening:",)),
    row("circuit-sound", "passes", CHAIN),
    row("circuit-sound", "speaks", [run("J1", "a")], says=1, severity="error", about="A", concerns=("a",),
        words=("Run from J1 to A", "not fed")),
    row("circuit-sound", "speaks", [run("a", "b"), run("b", "a")], says=1, words=("closes a loop",)),
    # And so with units of which nobody knows what they draw.
    row("circuit-sound", "speaks", [run("a", "b"), run("b", "a")], parts(UNIT={"supply_a": None}), says=1,
        words=("closes a loop",)),
    row("circuit-sound", "speaks", [run("J1", "a")], parts(UNIT={"supply_a": None}), says=1, words=("not fed",)),
    row("circuit-sound", "speaks", [run("supply", "a", wire="PSU")], says=1, words=("no wire of the catalogue",)),
    row("circuit-sound", "boundary", [run("supply", "a", 0.0)], says=1,
        words=("Run from supply to A, length",)),
    row("circuit-sound", "boundary", [run("supply", "a", 0.001)]),
    row("circuit-sound", "boundary", [run("supply", "a", None)]),
    row("circuit-known", "passes", CHAIN),
    row("circuit-known", "speaks", ONE, parts(PSU={"current": "ac"}, UNIT={"current": "either"}), says=1,
        severity="error", words=("gives AC",)),
    row("circuit-known", "boundary", [run("supply", "a", None)], says=1, needs=("run.length_m",), concerns=("a",)),
    row("circuit-known", "boundary", ONE, parts(UNIT={"supply_a": None}), says=1, needs=("part UNIT.supply_a",)),
    row("circuit-known", "boundary", CHAIN, parts(PSU={"tolerance_share": None}), says=1,
        needs=("part PSU.tolerance_share",), concerns=("a", "b")),
    row("circuit-proved", "passes", CHAIN),
    row("circuit-proved", "speaks", ONE, parts(), {"a": over_kept(parts())}, says=1, severity="warning",
        needs=("existing_item.loop_ohm",), concerns=("a",)),
    row("circuit-proved", "boundary", ONE, parts(), {"a": over_kept(parts(), loop_ohm=0.4)}),
    row("circuit-proved", "speaks", ONE, parts(UNIT={"supply_a": None}), says=1, severity="warning",
        needs=("part UNIT.supply_a",), concerns=("a",)),
    row("circuit-proved", "speaks", ONE, parts(PSU={"current": "ac"}, UNIT={"current": "either"}), says=1,
        severity="warning", concerns=("a",), words=("gives AC",)),
    # The length of the second run is unknown, so b's own is not proved; 0.8 A lose 1.4 V of the 11.4 V on 39.40 m.
    row("circuit-proved", "boundary", [run("supply", "a", 39.39), run("a", "b", None)], says=1,
        needs=("run.length_m",), concerns=("b",)),
    # What is low whatever the unknown length is, is no matter of proof any more.
    row("circuit-proved", "boundary", [run("supply", "a", 39.41), run("a", "b", None)], says=1, concerns=("b",),
        needs=("run.length_m",)),
    row("circuit-suits", "passes", CHAIN),
    row("circuit-suits", "speaks", ONE, parts(PSU={"output_v": 24.0}), says=1, severity="error", about="UNIT",
        concerns=("a",), words=("24 V is over the highest 14 V",)),
    row("circuit-suits", "speaks", ONE, parts(PSU={"current": "ac"}), says=1, words=("the load takes DC",)),
    row("circuit-suits", "speaks", ONE, supplies=[supply(part="WIRE")], says=1, words=("no power supply but a wire",)),
    row("circuit-suits", "speaks", ONE, supplies=[supply(part="GONE")], says=1, words=("not in the catalogue",)),
    row("circuit-suits", "boundary", ONE, parts(PSU={"output_v": 14.0})),
    row("circuit-suits", "boundary", ONE, parts(PSU={"output_v": 14.01}), says=1),
    row("circuit-suits", "boundary", ONE, parts(PSU={"output_v": 10.0})),
    # At 10 m and 0.4 A 0.178 V are lost: 11.222 V of 11.4 V.
    row("circuit-voltage", "passes", ONE),
    row("circuit-voltage", "speaks", [run("supply", "a", 90.0)], says=1, severity="error", about="circuit C",
        concerns=("a",), values={"needed_v": 10.0, "run_m": 90.0, "arrives_v": 9.801, "short_v": 0.199},
        words=("A finds 9.80 V in the state lowest mains (11.4 V at the supply, 90 m); it needs 10 V, short by",)),
    row("circuit-voltage", "speaks", [run("supply", "a", 90.0), run("a", "b", 1.0)], says=2, concerns=("a",)),
    row("circuit-voltage", "boundary", [run("supply", "a", 78.79)]),
    row("circuit-voltage", "boundary", [run("supply", "a", 78.83)], says=1),
    row("circuit-voltage", "boundary", [run("supply", "a", None)]),
    row("circuit-high-voltage", "passes", ONE),
    row("circuit-high-voltage", "speaks", ONE, parts(PSU={"output_v": 24.0}), says=1, severity="error",
        concerns=("a",), values={"allowed_v": 14.0, "arrives_v": 25.2}),
    # At 5 % over: 13.33 V are 13.9965 V, 13.34 V are 14.007 V; at rest nothing surely drawn, nothing lost.
    row("circuit-high-voltage", "boundary", ONE, parts(PSU={"output_v": 13.33})),
    row("circuit-high-voltage", "boundary", ONE, parts(PSU={"output_v": 13.34}), says=1),
    # 0.4 A drawn at rest lose 0.1777 V over 10 m (22.21 ohm/km): 13.50 x 1.05 - 0.1777 = 13.997 V.
    row("circuit-high-voltage", "boundary", ONE, parts(PSU={"output_v": 13.50}, UNIT={"supply_rest_a": 0.4})),
    row("circuit-high-voltage", "boundary", ONE, parts(PSU={"output_v": 13.51}, UNIT={"supply_rest_a": 0.4}), says=1),
    row("circuit-collapse", "passes", [run("supply", "a", 300.0)]),
    row("circuit-collapse", "speaks", [run("supply", "a", 300.0)], parts(UNIT={"draws": "power"}), says=3,
        severity="error", values={"source_v": 12.0}, concerns=("a",), words=("state normal",)),
    # 4.8 W from 12 V: 144 / (4 x 4.8) = 7.5 ohm, 168.9 m; from 11.4 V 6.769 ohm, 152.4 m.
    row("circuit-collapse", "boundary", [run("supply", "a", 152.3)], parts(UNIT={"draws": "power"})),
    row("circuit-collapse", "boundary", [run("supply", "a", 152.5)], parts(UNIT={"draws": "power"}), says=2,
        values={"source_v": 11.4}, words=("lowest mains",)),
    row("circuit-collapse", "boundary", [run("supply", "a", 168.8)], parts(UNIT={"draws": "power"}), says=2),
    # 80 % of 2.5 A: 2.0 A (trade articles, 75 to 80 %; shared facts 2.2).
    row("supply-loading", "passes", CHAIN),
    row("supply-loading", "speaks", SIX, says=1, severity="warning", about="PSU", concerns=(),
        values={"load_a": 2.4, "usable_a": 2.0, "rated_a": 2.5},
        words=("held at once draws 2.4 A; 80% of PS-s's 2.5 A is 2 A, and that is exceeded by 0.4 A",)),
    row("supply-loading", "speaks", [*SIX, run("supply", "p", 1.0)], says=1, severity="error",
        concerns=("o0", "o1", "o2", "o3", "o4", "o5", "p"), values={"load_a": 2.8},
        words=("is 2 A, and its rating is exceeded by 0.3 A",)),
    # Two start together and nothing else hangs there: 2 x 1.25 A are the 2.5 A of the supply, 2 x 1.26 A are more.
    row("supply-loading", "boundary", CHAIN, parts(UNIT={"supply_rest_a": 0.2, "supply_inrush_a": 1.25})),
    row("supply-loading", "speaks", CHAIN, parts(UNIT={"supply_rest_a": 0.2, "supply_inrush_a": 1.26}), says=1,
        severity="warning", concerns=(), values={"inrush_a": 2.52, "rated_a": 2.5}, words=("first moment",)),
    row("supply-loading", "boundary", SIX[:5]),
    row("supply-loading", "boundary", ONE, loaded(2.5), says=1, severity="warning"),
    # How far its volts stray is unknown; that too much hangs on it is known all the same.
    row("supply-loading", "speaks", SIX, parts(PSU={"tolerance_share": None}), says=1, severity="warning",
        values={"load_a": 2.4, "usable_a": 2.0}),
    row("supply-loading", "speaks", [*SIX, run("supply", "p", 1.0)], parts(PSU={"tolerance_share": None}), says=1,
        severity="error", values={"load_a": 2.8}),
    row("supply-loading", "speaks", [*SIX, run("supply", "p", 1.0)], parts(PSU={"current": None}), says=1,
        severity="error", values={"load_a": 2.8}),
    # 1.25 times what is held (trade practice, shared facts 2.2): 0.8 A hold on 1.0 A.
    row("circuit-limiter", "passes", CHAIN, circuits=LIMITED),
    row("circuit-limiter", "speaks", CHAIN, says=1, severity="warning", about="circuit C",
        values={"load_a": 0.8, "proposed_a": 1.0}),
    row("circuit-limiter", "speaks", CHAIN, circuits=[circuit(limiter_a=0.9)], says=1,
        words=("less than 1.25 times the 0.8 A that are held",)),
    # Exactly what the supply gives may flow, and exactly the least that is needed.
    row("circuit-limiter", "speaks", CHAIN, circuits=[circuit(limiter_a=2.51)], says=1, values={"limiter_a": 2.51}),
    row("circuit-limiter", "speaks", CHAIN, circuits=[circuit(limiter_a=3.0)], says=1,
        values={"limiter_a": 3.0, "rated_a": 2.5}),
    row("circuit-limiter", "speaks", ONE, parts(UNIT={"supply_inrush_a": 1.5}), circuits=LIMITED, says=1,
        words=("must be a slow one",), values={"inrush_a": 1.5}),
    row("circuit-limiter", "speaks", ONE, loaded(2.4), says=1, words=("No limiter that carries 3 A",)),
    row("circuit-limiter", "boundary", ONE, loaded(0.8), circuits=LIMITED),
    row("circuit-limiter", "boundary", ONE, loaded(0.801), circuits=LIMITED, says=1),
    row("circuit-limiter", "boundary", CHAIN, circuits=[circuit(limiter_a=2.5)]),
    row("circuit-limiter", "boundary", ONE, parts(UNIT={"supply_inrush_a": 1.0}), circuits=LIMITED),
    row("circuit-limiter", "boundary", [], openings={"a": connected("a", parts())}),
    # An unknown length changes no current: 0.4 A are held.
    row("circuit-limiter", "speaks", [run("supply", "a", None)], says=1, severity="warning",
        words=("No fuse or limiter is laid; 0.4 A are held",)),
    row("circuit-limiter", "boundary", [run("supply", "a", None)], circuits=LIMITED),
    row("circuit-limiter", "speaks", [run("supply", "a", None)], circuits=[circuit(limiter_a=3.0)], says=1,
        values={"limiter_a": 3.0, "rated_a": 2.5}),
    row("circuit-limiter", "speaks", [run("supply", "a", None)], circuits=[circuit(limiter_a=0.4)], says=1,
        words=("less than 1.25 times",)),
    # The unit draws nobody knows what, up to what its sheet can say: more than a limiter of 1 A carries.
    row("circuit-limiter", "speaks", CHAIN, parts(UNIT={"supply_a": None}), circuits=LIMITED, says=1,
        words=("Unknown: whether the 1 A limiter",), needs=("part UNIT.supply_a",)),
    # Class 2: 24 V x 4 A = 96 VA pass, 24 V x 5 A = 120 VA do not (shared facts 2.1); a limited power source has
    # 8 A and 100 VA from 20 to 30 V (IEC 60950-1 Table 2B).
    row("supply-power-limited", "passes", ONE),
    row("supply-power-limited", "speaks", ONE, parts(PSU={"output_v": 24.0, "output_a": 5.0}), says=3,
        severity="note", about="PSU", values={"limit": 100 / 24, "value": 5.0},
        words=("The rated current is 5 A; a Class 2 supply of 24 V has 4.167 A at most",)),
    row("supply-power-limited", "speaks", ONE, parts(PSU={"output_v": 61.0, "output_a": 1.0}), says=2,
        words=("above what a Class 2",)),
    row("supply-power-limited", "boundary", ONE, parts(PSU={"output_v": 24.0, "output_a": 100 / 24})),
    row("supply-power-limited", "boundary", ONE, parts(PSU={"output_v": 25.0, "output_a": 4.0})),
    row("supply-power-limited", "boundary", ONE, supplies=[supply(part=None)]),
    row("supply-power-limited", "boundary", ONE,
        parts(PSU={"output_v": 61.0, "output_a": 1.0, "class_2": False}), says=1, words=("limited power source",)),
    # Limited by an overcurrent device: 250 VA may flow under load (IEC 60950-1 Table 2C).
    row("supply-power-limited", "boundary", ONE,
        parts(PSU={"output_v": 24.0, "output_a": 4.0, "limiting": "overcurrent-device"})),
    # 0.4 A for 24 h, margin and ageing 1.25 each: 15 Ah (shared facts 2.5).
    row("standby-capacity", "passes", ONE, FULL,
        supplies=[supply(standby_hours=24.0, battery="BAT", temperature_c=25.0)]),
    row("standby-capacity", "passes", ONE, supplies=[supply()]),
    row("standby-capacity", "speaks", ONE, supplies=[supply(standby_hours=24.0, battery="BAT", temperature_c=25.0)],
        says=1, severity="error", about="BAT", values={"needed_ah": 15.0, "held_ah": 7.0}, concerns=(),
        words=("short by 8.00 Ah",)),
    row("standby-capacity", "speaks", ONE, supplies=[supply(standby_hours=24.0, temperature_c=25.0)], says=1,
        about="PS-s", words=("No standby battery is laid",)),
    row("standby-capacity", "boundary", ONE, FULL,
        supplies=[supply(standby_hours=24.1, battery="BAT", temperature_c=25.0)], says=1,
        words=("no size suffices",)),
    row("standby-capacity", "boundary", ONE, FULL, supplies=[supply(standby_hours=24.0, battery="BAT")], says=1,
        needs=("supply.temperature_c",)),
    # The strike takes something beside the unit's 0.4 A x 24 h x 1.25 x 1.25 = 15 Ah, nobody knows how often.
    row("standby-capacity", "boundary", ONE, FULL, {"a": connected("a", FULL, fp("strike", "STRIKE"),
        operations_per_day=None)}, [supply(standby_hours=24.0, battery="BAT", temperature_c=25.0)], says=1,
        needs=("opening.operations_per_day",), words=("24 h at 0.4 A or more need at least 15.00 Ah",)),
    row("standby-capacity", "boundary", ONE, parts(UNIT={"supply_a": None}), supplies=[supply(standby_hours=24.0)]),
    row("coil-suppression", "passes", CHAIN),
    of_strike("coil-suppression", "speaks", None, says=1, severity="note", about="STRIKE", concerns=("a",)),
    of_strike("coil-suppression", "boundary", None, says=1, quantity=2.0),
    # A plain diode delays an electromagnetic lock's release (installation manual; shared facts 2.4).
    row("coil-suppression", "boundary", ONE, openings={"a": only("a", parts(), "MAG")}, says=1, about="MAG"),
    row("circuit-apart", "speaks", ONE, says=1, severity="note", about="PS-s", words=("Never bring mains",)),
    row("circuit-apart", "boundary", ONE, circuits=TWO_CIRCUITS, says=2),
    row("fed-once", "passes", CHAIN),
    row("fed-once", "speaks", [*ONE, run("supply", "a", 5.0, "d")], circuits=TWO_CIRCUITS, says=2, severity="error",
        about="A", concerns=("a",), words=("is on 2 circuits",)),
    row("fed-once", "boundary", [*ONE, run("supply", "b", 5.0, "d")], circuits=TWO_CIRCUITS),
    of_strike("alarm-latching", "passes", "drops", "fail-secure", rating="60"),
    of_strike("alarm-latching", "passes", "stays", rating="60"),
    of_strike("alarm-latching", "speaks", "drops", rating="60", says=1, severity="error", about="STRIKE",
              concerns=("a",), words=("the rated opening loses its latch",)),
    of_strike("alarm-latching", "boundary", "drops", rating="none"),
    of_strike("alarm-latching", "boundary", "drops", rating=None, says=1, needs=("opening.rating",),
              words=("whether the opening is rated",)),
    of_strike("alarm-latching", "boundary", None, rating="60"),
    row("alarm-release", "passes", CHAIN),
    of_strike("alarm-release", "passes", "stays", "fail-secure"),
    of_strike("alarm-release", "speaks", "drops", says=1, severity="warning", concerns=("a",), words=("lets go",)),
    of_strike("alarm-release", "speaks", "drops", "fail-secure", says=1, words=("stays locked",)),
    of_strike("alarm-release", "speaks", "drops", "fail-secure", stair=True, says=2),
    of_strike("alarm-release", "speaks", "stays", egress="required", says=1, words=("on an egress path",)),
    of_strike("alarm-release", "boundary", "stays", egress=None, says=1, words=("not known to be off an egress path",)),
    of_strike("alarm-release", "boundary", "stays", egress="none", says=1, words=("holds the opening shut.",)),
    of_strike("alarm-release", "boundary", None, says=1, needs=("circuit.alarm",)),
    of_strike("alarm-release", "boundary", "drops", stair=True, says=1),
]  # fmt: skip


@pytest.mark.parametrize("each", ROWS, ids=str)
def test_rule(each):
    run_row(each)


@pytest.mark.parametrize("rule", CIRCUIT_RULES, ids=lambda rule: rule.id)
def test_every_rule_of_circuits_is_tested_from_three_sides(rule):
    kinds = {each.kind for each in ROWS if each.rule == rule.id}
    wanted = {"passes", "speaks", "boundary"}
    # A caution that stands at every supply with a circuit is never silent.
    assert wanted - kinds == ({"passes"} if rule.id == "circuit-apart" else set())


def test_a_supply_without_circuits_is_not_judged():
    found = work([], {}, parts(), circuits=[circuit(of="other")])
    assert judge_supply(found.supplies[0], {}, Settings()) == ()
    assert found.findings == ()


def test_a_rule_switched_off_is_silent_and_a_limit_is_the_project_s():
    off = Settings(rules_off=frozenset({"supply-loading"}))
    assert not any(f.finding.rule == "supply-loading" for f in alone(SIX, settings=off).findings)
    more = Settings(limits={"supply-loading.share": 0.97})
    assert not any(f.finding.rule == "supply-loading" for f in alone(SIX, settings=more).findings)
    assert any(f.finding.rule == "supply-loading" for f in alone(SIX).findings)


def test_what_defers_says_so():
    found = alone(CHAIN, circuits=TWO_CIRCUITS)
    for each in found.findings:
        rule = BY_ID[each.finding.rule]
        assert each.finding.cure.endswith(DEFERS) == rule.defers
        assert each.finding.basis == rule.basis
        assert each.supply_id == "s"


def test_a_rule_of_circuits_that_falls_over_names_itself_and_the_supply(monkeypatch):
    rule = BY_ID["fed-once"]

    def broken(result, inputs, limits):
        raise ZeroDivisionError("by nothing")

    monkeypatch.setattr("hwsched.rules.judging.CIRCUIT_RULES", (replace(rule, judge=broken),))
    with pytest.raises(RuleError, match=r"rule fed-once failed: ZeroDivisionError.*PS-s"):
        alone(ONE)


def test_findings_reach_the_openings_that_they_concern():
    cat = parts()
    stated = {n: connected(n, cat, fp("strike", "STRIKE") if n == "b" else fp("strike", "MAG")) for n in "ab"}
    found = alone([run("supply", "a", 90.0), run("supply", "b", 5.0)], cat, openings=stated)
    by_opening = found.by_opening()
    assert {f.rule for f in by_opening["a"]} == {f.rule for f in found.of_opening("a")}
    assert "circuit-voltage" in {f.rule for f in by_opening["a"]}
    assert "circuit-voltage" not in {f.rule for f in by_opening["b"]}
    assert found.of_opening("nobody") == ()
    assert found.circuit_of("b")[1].circuit.id == "c"
    assert found.circuit_of("nobody") is None
    assert BATTERY.number in cat.parts


@pytest.mark.parametrize(("inrush_a", "sure"), [(1.25, ""), (1.26, "At least 2.52 A flow in the first moment")])
def test_a_load_of_which_nothing_is_known_silences_no_inrush(inrush_a, sure):
    """Two units start together on 2.5 A, and behind a limiter of 2.5 A; what a strike draws beside nobody knows."""
    cat = parts(UNIT={"supply_rest_a": 0.2, "supply_inrush_a": inrush_a}, STRIKE={"holding_a": None})
    openings = {"a": connected("a", cat), "b": connected("b", cat), "c": only("c", cat)}
    found = alone([*CHAIN, run("b", "c")], cat, openings=openings, circuits=[circuit(limiter_a=2.5)])
    for rule in ("supply-loading", "circuit-limiter"):
        texts = [finding.message for finding in said(found, rule)]
        assert any(text.startswith("Unknown: whether") for text in texts)
        assert [text.startswith(sure) for text in texts if not text.startswith("Unknown")] == [True] * bool(sure)
