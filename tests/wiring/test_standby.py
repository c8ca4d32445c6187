"""Standby batteries: the published worked example, ageing, temperature, sizes, what is laid."""

import pytest

from hwsched.values import Settings
from tests.rules.scenario import fp, part
from tests.wiring.power_rows import alone, circuit, connected, only, parts, run, said, supply

PLAIN = Settings(limits={"standby-capacity.margin": 1.2, "standby-capacity.ageing": 1.0})


def sized(cat, settings=PLAIN, runs=None, openings=None, **facts):
    found = alone(
        runs or [run("supply", "a")], cat, openings=openings, settings=settings,
        supplies=[supply(**{"standby_hours": 24.0, "temperature_c": 25.0, **facts})],
    )  # fmt: skip
    return found.supplies[0].standby, said(found, "standby-capacity")


def test_the_published_example():
    # 0.42 A for 24 h and 3.8 A for 5 min, margin 1.20: 12.476 Ah, the next size above 12 Ah (form used with NFPA 72,
    # shared facts 2.5). As an opening: 0.42 A at rest, 3.8 A more while it operates, 60 times a day for 5 s.
    cat = parts(add=(), UNIT={"supply_rest_a": 0.42, "supply_a": 4.22, "operation_s": 5.0}, PSU={"output_a": 10.0})
    found, _ = sized(cat, openings={"a": connected("a", cat, operations_per_day=60.0)})
    assert found.needed_ah == pytest.approx(12.476, abs=0.001)
    assert found.size_ah == 18
    assert found.load_a == pytest.approx(0.42 + 3.8 * 300 / 86400)
    assert (found.hours, found.margin, found.ageing, found.held_ah) == (24.0, 1.2, 1.0, None)


def test_margin_ageing_and_cold():
    cat = parts(add=())
    # 0.4 A for 24 h: 9.6 Ah; margin and ageing 1.25 each: 15 Ah (form used with NFPA 72; ageing beside IEEE 485).
    assert sized(cat, Settings())[0].needed_ah == pytest.approx(15.0)
    # 10 C: 1.1947 by the fit quoted beside IEEE 485 (shared facts 2.5).
    assert sized(cat, Settings(), temperature_c=10.0)[0].needed_ah == pytest.approx(15.0 * 1.1947, rel=1e-3)
    warm, (finding, *_) = sized(cat, Settings(), temperature_c=None)
    assert warm.needed_ah == pytest.approx(15.0)
    assert finding.needs == ("supply.temperature_c",)


def test_sizes_are_those_of_the_catalogue_of_the_battery_s_voltage():
    bats = [part(f"B{v}-{ah}", "standby-battery", voltage_v=float(v), capacity_ah=float(ah)) for v, ah in
            ((12, 7), (12, 17), (6, 16))]  # fmt: skip
    found, findings = sized(parts(add=tuple(bats)), Settings(), battery="B12-7")
    assert (found.size_ah, found.held_ah) == (17.0, 7.0)
    assert "short by 8.00 Ah" in findings[0].message
    found, findings = sized(parts(add=tuple(bats)), Settings(), battery="B12-17")
    assert (found.held_ah, findings) == (17.0, [])
    none, _ = sized(parts(add=tuple(bats)), Settings(), battery="B12-7", standby_hours=100.0)
    assert none.size_ah is None


def test_a_fail_secure_coil_draws_only_while_it_is_worked():
    # 0.35 A for 5 s (common practice of our own) 30 times a day: 52.5 As of a day's 86,400 s.
    cat = parts(add=())
    found, _ = sized(cat, openings={"a": only("a", cat, operations_per_day=30.0)})
    assert found.load_a == pytest.approx(0.35 * 5 * 30 / 86400)
    assert found.assumed == ("STRIKE at A held 5 s an operation",)
    held = parts(add=())
    both, _ = sized(held, openings={"a": connected("a", held, fp("strike", "MAG"))})
    assert both.load_a == pytest.approx(0.9)


def test_a_strike_is_held_as_long_as_its_unit_has_it():
    """0.4 A at rest and held; the strike's 0.35 A for the unit's 8 s, 60 times a day."""
    cat = parts(add=(), UNIT={"operation_s": 8.0})
    stated = {"a": connected("a", cat, fp("strike", "STRIKE"), operations_per_day=60.0)}
    found, _ = sized(cat, openings=stated)
    assert found.load_a == pytest.approx(0.4 + 0.35 * 8 * 60 / 86400)
    assert (found.assumed, found.at_least) == ((), False)


def test_how_often_a_strike_works_is_asked_and_not_taken_for_never():
    cat = parts(BAT={"capacity_ah": 7.0})
    stated = {"a": only("a", cat, operations_per_day=None)}
    found, (finding,) = sized(cat, openings=stated, battery="BAT")
    assert found.at_least
    assert (finding.severity, finding.needs) == ("warning", ("opening.operations_per_day",))


@pytest.mark.parametrize("facts", [{"standby_hours": None}, {"standby_hours": 0.0}])
def test_no_hours_asked_nothing_sized(facts):
    assert sized(parts(), **facts) == (None, [])


def test_an_unknown_load_sizes_nothing_and_is_said():
    cat = parts(UNIT={"supply_a": None})
    assert sized(cat) == (None, [])
    assert said(alone([run("supply", "a")], cat), "circuit-known")


def test_all_circuits_count():
    cat = parts(add=())
    found = alone(
        [run("supply", "a"), run("supply", "b", 10.0, "d")], cat, circuits=[circuit(), circuit("d")],
        supplies=[supply(standby_hours=10.0, temperature_c=25.0)], settings=PLAIN,
    )  # fmt: skip
    assert found.supplies[0].standby.load_a == pytest.approx(0.8)
