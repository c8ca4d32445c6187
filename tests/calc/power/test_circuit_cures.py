"""Cures: each one solved again does what it says, and nothing less does."""

import doctest
from dataclasses import replace

import pytest

from hwsched.calc.calculator import InputError
from hwsched.calc.power import circuit_cures
from hwsched.calc.power.circuit import Load
from hwsched.calc.power.circuit_cures import KINDS, Circuit, cures
from hwsched.calc.power.circuit_tree import Run

RUNS = (
    Run("supply", "j", 30, "20 AWG", "stranded"),
    Run("j", "lock", 30, "20 AWG", "stranded"),
    Run("j", "strike", 10, "20 AWG", "stranded"),
)
LOADS = (Load("lock", "current", 0.4, 10.2, 13.2), Load("strike", "power", 3, 10.2, 13.2))
LOW = Circuit(RUNS, LOADS, 12.0, 0.1, 50.0)


def by_kind(circuit, node="lock", **more):
    return {cure.kind: cure for cure in cures(circuit, node, **more)}


def volts(circuit, node):
    return circuit.solution().volts[node]


def test_docs():
    assert doctest.testmod(circuit_cures).failed == 0


def test_every_kind_is_tried_once():
    found = cures(LOW, "lock")
    assert tuple(cure.kind for cure in found) == KINDS


def test_what_works_does_when_it_is_solved_again():
    found = by_kind(LOW)
    assert [kind for kind, cure in found.items() if cure.works] == list(KINDS[:7])
    for kind, cure in found.items():
        if not cure.works:
            assert cure.circuit is None
            continue
        node = "lock (own run)" if kind == "own-run" else "lock"
        assert volts(cure.circuit, node) == pytest.approx(cure.volts)
        assert cure.volts >= 10.2 - 1e-9
        assert f"{cure.volts:.2f} V" in cure.text
        low = [load.node for load in cure.circuit.loads if volts(cure.circuit, load.node) < 10.2 - 1e-9]
        assert set(cure.still_low) == set(low)


def test_the_next_thinner_conductor_would_not_do():
    for kind in ("thicker-run", "thicker-path"):
        cure = by_kind(LOW)[kind]
        changed = [i for i, run in enumerate(cure.circuit.runs) if run != RUNS[i]]
        assert changed == ([0] if kind == "thicker-run" else [0, 1])
        gauge = cure.circuit.runs[changed[0]].gauge
        awg = int(gauge.split()[0])
        thinner = tuple(replace(r, gauge=f"{awg + 2} AWG") if i in changed else r for i, r in enumerate(RUNS))
        assert volts(replace(LOW, runs=thinner), "lock") < 10.2


def test_one_conductor_fewer_would_not_do():
    for kind in ("parallel-run", "parallel-path"):
        cure = by_kind(LOW)[kind]
        added = cure.values["added_in_parallel"]
        fewer = tuple(
            replace(r, conductors_in_parallel=r.conductors_in_parallel - 1) if r.conductors_in_parallel > 1 else r
            for r in cure.circuit.runs
        )
        assert volts(replace(LOW, runs=fewer), "lock") < 10.2
        assert cure.values["length_m"] == pytest.approx(added * (30 if kind == "parallel-run" else 60))


def test_a_run_of_its_own_is_as_thin_as_it_may_be():
    circuit = replace(LOW, runs=(replace(RUNS[0], length_m=50), *RUNS[1:]))
    cure = by_kind(circuit)["own-run"]
    assert cure.works
    own = cure.circuit.runs[-1]
    awg = int(own.gauge.split()[0])
    assert 14 < awg < 20
    thinner = replace(cure.circuit, runs=(*cure.circuit.runs[:-1], replace(own, gauge=f"{awg + 2} AWG")))
    assert volts(thinner, "lock (own run)") < 10.2


def test_the_least_nominal_voltage_that_does_is_taken():
    """5 ohm at 3 A take 15 V: 12 V cannot give 9 V to the load, 24 V can just; at 4 A 48 V can, at 8 A only 54 V."""
    for amps, wanted_v in ((3, 24), (4, 48), (8, 54)):
        loads = (Load("a", "current", amps, 9, 60),)
        circuit = Circuit((Run("supply", "a", 145, "1 mm2", "solid"),), loads, 12, 0, 20)
        cure = by_kind(circuit, "a", nominal_v=(12, 24, 48, 54))["nominal-voltage"]
        assert (cure.works, cure.values["source_v"]) == (True, wanted_v)
        assert cure.volts == pytest.approx(wanted_v - 5 * amps)


def test_where_no_nominal_voltage_does_the_highest_is_named():
    """5 ohm at 10 A take 50 V: 4 V are left of 54 V."""
    circuit = Circuit((Run("supply", "a", 145, "1 mm2", "solid"),), (Load("a", "current", 10, 9, 60),), 12, 0, 20)
    for offered in ((54,), (24, 54, 48)):
        cure = by_kind(circuit, "a", nominal_v=offered)["nominal-voltage"]
        assert (cure.works, cure.values["source_v"]) == (False, 54)
        assert "even a 54 V supply does not do" in cure.text


def test_numbers_of_the_nearer_supply_and_of_the_source_voltage_are_the_limits():
    found = by_kind(LOW)
    assert found["nearer-supply"].volts == pytest.approx(10.2, abs=1e-6)
    assert found["nearer-supply"].values["length_m"] < 60
    assert found["source-voltage"].volts == pytest.approx(10.2, abs=1e-6)
    assert 12 < found["source-voltage"].values["source_v"] < 13.2


def test_constant_current_by_hand():
    """One run of 1 ohm/100 m loop at 1 A: 2 V too low at 500 m, so 300 m would do, or 14 V."""
    # 1 mm² solid at 20 °C is 1000/58 ohm/km; 29 m out and back are 1 ohm.
    circuit = Circuit((Run("supply", "a", 145, "1 mm2", "solid"),), (Load("a", "current", 1, 9, 20),), 12, 0, 20)
    found = by_kind(circuit, "a")
    assert found["nearer-supply"].values["length_m"] == pytest.approx(87)
    assert found["source-voltage"].values["source_v"] == pytest.approx(14)
    assert found["thicker-path"].values["area_mm2"] == 2.5  # 5 ohm / 3 ohm = 1.67 mm², the next size
    assert found["parallel-run"].values["added_in_parallel"] == 1
    assert found["own-run"].circuit.runs[-1].gauge == "2.5 mm²"
    assert not found["nominal-voltage"].works
    assert "20 V" not in found["nominal-voltage"].text
    assert "24 V is over the maximum" in found["nominal-voltage"].text


@pytest.mark.parametrize(
    ("minimum_v", "added"),
    [
        # 5 ohm at 1 A: 5 V of 12 V. Of two conductors 2.5 V, of three 1.67 V, of four 1.25 V.
        (7.1, 1), (9.5, 1), (9.6, 2), (10.3, 2), (10.4, 3),
    ],
)  # fmt: skip
def test_as_many_conductors_are_laid_beside_as_it_takes(minimum_v, added):
    circuit = Circuit(
        (Run("supply", "a", 145, "1 mm2", "solid"),), (Load("a", "current", 1, minimum_v, 20),), 12, 0, 20
    )
    cure = by_kind(circuit, "a")["parallel-run"]
    assert cure.works
    assert (cure.values["added_in_parallel"], cure.values["length_m"]) == (added, 145.0 * added)
    assert cure.volts == pytest.approx(12 - 5 / (1 + added))


def test_a_load_that_needs_hardly_a_volt_is_cured_too():
    """30 ohm at 0.05 A take 1.5 V of 2 V: half a volt is left where 0.8 V are needed; of two conductors 1.25 V."""
    circuit = Circuit((Run("supply", "a", 870, "1 mm2", "solid"),), (Load("a", "current", 0.05, 0.8, 20),), 2, 0, 20)
    assert by_kind(circuit, "a")["parallel-run"].volts == pytest.approx(1.25)
    unstated = replace(circuit, loads=(Load("a", "current", 0.05, None, 20),))
    with pytest.raises(InputError, match="no load with a stated minimum voltage"):
        cures(unstated, "a")


def test_a_higher_nominal_voltage_needs_the_maximum_of_every_load():
    known = Circuit((Run("supply", "a", 145, "1 mm2", "solid"),), (Load("a", "current", 1, 9, 30),), 12, 0, 20)
    cure = by_kind(known, "a")["nominal-voltage"]
    assert cure.works
    assert cure.volts == pytest.approx(19)
    unknown = replace(known, loads=(Load("a", "current", 1, 9),))
    assert "needs the maximum voltage of the load at 'a'" in by_kind(unknown, "a")["nominal-voltage"].text
    assert "needs the maximum voltage of every load" in by_kind(unknown, "a")["source-voltage"].text


def test_a_nominal_voltage_just_at_the_maximum_is_within_it():
    for maximum_v, works in ((24, True), (23.9, False)):
        known = Circuit(
            (Run("supply", "a", 145, "1 mm2", "solid"),), (Load("a", "current", 1, 9, maximum_v),), 12, 0, 20
        )
        assert by_kind(known, "a", nominal_v=(24,))["nominal-voltage"].works == works


def test_where_a_cure_is_is_said():
    """One run by its ends, the way to the lock as a whole."""
    found = by_kind(LOW)
    for kind in ("thicker-run", "parallel-run"):
        assert "run 'supply' to 'j'" in found[kind].text
    for kind in ("thicker-path", "parallel-path"):
        assert "all 2 runs from the supply to 'lock'" in found[kind].text


def test_collapse_is_cured_too():
    collapsed = Circuit((Run("supply", "a", 58, "1 mm2", "solid"),), (Load("a", "power", 20, 9, 30),), 12, 0, 20)
    assert collapsed.solution().collapsed
    found = by_kind(collapsed, "a")
    assert found["thicker-path"].works == (found["thicker-path"].volts is not None and found["thicker-path"].volts >= 9)
    assert found["nominal-voltage"].works
    assert found["nearer-supply"].works
    assert found["nearer-supply"].volts == pytest.approx(9, abs=1e-6)


def test_where_a_circuit_collapses_the_run_of_most_resistance_is_made_thicker():
    """40 m of two conductors a wire are as 20 m of one."""
    runs = (
        Run("supply", "j", 40, "1 mm2", "solid", conductors_in_parallel=2),
        Run("j", "a", 30, "1 mm2", "solid"),
    )
    collapsed = Circuit(runs, (Load("a", "power", 25, 9, 30),), 12, 0, 20)
    assert collapsed.solution().collapsed
    assert "run 'j' to 'a'" in by_kind(collapsed, "a")["thicker-run"].text


def test_what_stays_low_beside_the_load_is_named_and_the_load_itself_is_not():
    """A thicker last run does nothing for the strike, and less than is wanted for the lock."""
    far = Circuit((replace(RUNS[0], length_m=70), *RUNS[1:]), LOADS, 12.0, 0.1, 50.0)
    assert volts(far, "strike") < 10.2
    cure = by_kind(far, gauges=["18 AWG"])["thicker-run"]
    assert not cure.works
    assert cure.still_low == ("strike",)


def test_nothing_does_when_the_source_itself_is_too_low():
    found = by_kind(replace(LOW, source_v=9.0), nominal_v=(9.0,))
    assert [kind for kind, cure in found.items() if cure.works] == ["source-voltage"]
    assert "even a supply beside the load does not do" in found["nearer-supply"].text


def test_a_load_at_the_supply_itself():
    circuit = Circuit(RUNS, (*LOADS, Load("supply", "current", 0.1, 13.0, 13.5)), 12.0, 0.0, 50.0)
    found = by_kind(circuit, "supply")
    assert set(found) == {"source-voltage", "nominal-voltage"}


def test_gauges_that_may_be_bought_can_be_given():
    found = by_kind(LOW, gauges=["18 AWG"])
    assert "even 18 AWG" in found["thicker-run"].text
    assert "no thicker conductor than 20 AWG is offered" in by_kind(LOW, gauges=["22 AWG"])["thicker-run"].text


def test_a_source_at_the_most_that_its_loads_take_cannot_be_set_higher():
    loads = (LOADS[0], replace(LOADS[1], maximum_v=12.0))
    cure = by_kind(replace(LOW, loads=loads))["source-voltage"]
    assert (cure.works, cure.circuit, cure.volts, cure.values) == (False, None, None, {"source_v": 12.0})
    assert "its 12 V" in cure.text
    assert "maximum is 12 V" in cure.text


def test_nothing_to_cure():
    assert cures(replace(LOW, source_v=13.2), "lock") == ()


@pytest.mark.parametrize("node", ["j", "nowhere"])
def test_a_node_without_minimum(node):
    with pytest.raises(InputError, match="minimum"):
        cures(LOW, node)
