"""An invented building: three supplies, five levels, sixty openings, junctions, daisy chains, a transfer, a low place.

Voltages follow from the currents and lengths by Ohm's law, with 20.9 ohm/km for 18 AWG (a round number of the size of
the published ones; drawings only show what they are given).
"""

from itertools import pairwise

from hwsched.values.power import (
    Circuit,
    CircuitResult,
    Device,
    NodeResult,
    PowerResult,
    Problem,
    RunResult,
    Supply,
    SupplyResult,
)

OHM_PER_M = {"18 AWG": 0.0209, "16 AWG": 0.0132, "22 AWG": 0.053}
SOURCE = {"normal": 12.0, "lowest-mains": 11.4, "standby-end": 10.9, "peak": 10.9}
LEVELS = {"Basement": -3.2, "Level 1": 0.0, "Level 2": 4.1, "Level 3": 7.9, "Level 4": 11.7}
DIODE = "Diode reverse across the coil, cathode to plus. It slows release."
PLUS_MINUS = ("V+", "GND")


def unit(opening, mark, terminals=PLUS_MINUS):
    return Device(opening, mark, "SU-40", "unit", "current", 0.02, 0.35, 1.0, 10.0, 14.0, terminals)


def strike(opening, mark):
    return Device(
        opening, mark, "ES-7", "strike", "current", 0.0, 0.24, None, 10.2, 13.2,
        suppression=DIODE, fail="fail-secure", assumed=("operating window taken as 10.2 to 13.2 V",),
    )  # fmt: skip


def solved(facts, supply, ways, devices=(), limiter_a=2.0, current=0.05, source=SOURCE, **more):
    """Build a worked circuit from ways: (from, to, opening id or None, length in m, gauge); a to of "x/leaf" is a
    transfer."""
    behind = {}
    parent = {to: start for start, to, *_ in ways}
    load = {to: (current if opening else 0.0) for _, to, opening, *_ in ways}
    for node in parent:
        at = node
        while at != "supply":
            behind[at] = behind.get(at, 0.0) + load[node]
            at = parent[at]
    volts, distance = {"supply": dict(source)}, {"supply": 0.0}
    nodes, runs = [], []
    minimum = {}
    for device in devices:
        minimum[device.opening_id] = max(device.minimum_v, minimum.get(device.opening_id, 0.0))
    names = {"supply": "supply"}
    for number, (start, to, opening, length, gauge) in enumerate(ways, start=1):
        names[to] = to.removesuffix("/leaf").removeprefix("id-")
        ohm = 2 * length * OHM_PER_M[gauge]
        amps = {state: behind[to] * (2.0 if state == "peak" else 1.0) for state in source}
        volts[to] = {state: volts[start][state] - ohm * amps[state] for state in source}
        distance[to] = distance[start] + length
        transfer = to.endswith("/leaf")
        runs.append(
            RunResult(
                "" if transfer else f"{facts.id}-{number}", names[start], names[to], start, to, length, gauge,
                "stranded", 1, "TR-2" if transfer else "", ohm, amps,
                transfer,
            )
        )  # fmt: skip
        low = None if opening is None else minimum.get(opening, 10.0)
        nodes.append(NodeResult(to, names[to], opening, distance[to], volts[to], low, None if low is None else 14.0))
    connected = [way for way in ways if way[2]]
    return CircuitResult(
        facts, supply, dict(source), tuple(devices), tuple(nodes), tuple(runs),
        {"normal": sum(load.values())}, limiter_a=limiter_a,
        openings=tuple(way[2] for way in connected), marks=tuple(names[way[1]] for way in connected), **more,
    )  # fmt: skip


def _opening(number, level, chosen):
    name = f"id-{number}"
    chosen[name] = (level, LEVELS[level])
    return name


def _supply(index, level, place):
    return Supply(
        f"s{index}", f"PS-{index}", "North building", level, LEVELS[level], place, part=f"LV-{12 * index}0", use="laid"
    )


def building():
    """Return the work and the openings' levels."""
    levels = {}
    supplies = []
    # PS-1: a daisy chain along Level 1, a riser with a junction on each level above; one transfer.
    one = _supply(1, "Level 1", "Electrical closet 104")
    chain = [_opening(f"10{n}", "Level 1", levels) for n in range(1, 10)]
    ways = [("supply", chain[0], chain[0], 12.5, "18 AWG")]
    ways += [(a, b, b, 6.0 + n, "18 AWG") for n, (a, b) in enumerate(pairwise(chain))]
    ways += [(chain[3], chain[3] + "/leaf", None, 0.4, "22 AWG")]
    devices = [unit(name, name.removeprefix("id-")) for name in chain]
    devices.append(strike(chain[3], "104"))
    first = solved(Circuit("c1", "s1", "C1", limiter_a=2.0, alarm="stays"), one, ways, devices, current=0.014)
    ways, devices = [], []
    before = "supply"
    for storey, level in ((2, "Level 2"), (3, "Level 3"), (4, "Level 4")):
        joint = f"J{storey}"
        ways.append((before, joint, None, 5.5, "16 AWG"))
        for n in range(1, 5):
            name = _opening(f"{storey}0{n}", level, levels)
            ways.append((joint, name, name, 8.0 + 3.5 * n, "18 AWG"))
            devices.append(unit(name, name.removeprefix("id-")))
        before = joint
    second = solved(Circuit("c2", "s1", "C2", limiter_a=2.5), one, ways, devices, current=0.04)
    supplies.append(SupplyResult(one, (first, second), 12.0, 6.0, 11.4, 10.9, 0.75, 5.1))
    # PS-2: three circuits from the basement; the end of the long one is low.
    two = _supply(2, "Basement", "Store B02")
    circuits = []
    for number, (level, count, length) in enumerate((("Basement", 6, 9.0), ("Level 1", 7, 14.0), ("Level 2", 6, 21.0))):
        ways, devices, before = [], [], "supply"
        for n in range(count):
            name = _opening(f"{'B' if number == 0 else number}{n + 50}A", level, levels)
            ways.append((before, name, name, length, "18 AWG"))
            devices.append(unit(name, name.removeprefix("id-"), ("", "")))
            before = name
        facts = Circuit(f"c{number + 3}", "s2", f"C{number + 3}", limiter_a=1.6)
        circuits.append(solved(facts, two, ways, devices, 1.6, 0.025))
    supplies.append(SupplyResult(two, tuple(circuits), 12.0, 2.0, 11.4, 10.9, 1.7, 4.0))
    # PS-3: strikes on Level 4 and Level 3 from a junction, branches of branches, long marks.
    three = _supply(3, "Level 4", "Roof stair")
    ways = [("supply", "Junction box above 440", None, 18.0, "16 AWG")]
    devices = []
    for n in range(6):
        name = _opening(f"44{n}-East corridor" if n == 2 else f"44{n}", "Level 4", levels)
        ways.append(("Junction box above 440" if n % 3 == 0 else ways[-1][1], name, name, 7.5, "18 AWG"))
        devices += [unit(name, name.removeprefix("id-")), strike(name, name.removeprefix("id-"))]
    ways.append(("Junction box above 440", "J35", None, 4.4, "16 AWG"))
    for n in range(5):
        name = _opening(f"35{n}", "Level 3", levels)
        ways.append(("J35", name, name, 5.0 + n, "18 AWG"))
        devices.append(strike(name, name.removeprefix("id-")))
    third = solved(Circuit("c6", "s3", "C6 strikes", alarm="drops"), three, ways, devices, 3.0, 0.02)
    ways, devices, before = [], [], "supply"
    for n in range(9):
        name = _opening(f"36{n}", "Level 3" if n < 6 else "Level 2", levels)
        ways.append((before, name, name, 11.0, "18 AWG"))
        devices.append(unit(name, name.removeprefix("id-")))
        before = name
    fourth = solved(Circuit("c7", "s3", "C7", limiter_a=1.0), three, ways, devices, 1.0, 0.012)
    supplies.append(SupplyResult(three, (third, fourth), 12.0, 4.0, 11.4, 10.9, 1.1, 3.0))
    assert len(levels) == 60, len(levels)
    return PowerResult(tuple(supplies)), levels


WORK, OPENING_LEVELS = building()


def unsound():
    """Return a supply whose circuit could not be worked out."""
    supply = Supply("s9", "PS-9", "Annex")
    problem = Problem("unsound", "runs r1 and r2 form a loop through J1", about="r2")
    circuit = CircuitResult(Circuit("c9", "s9", "C9"), supply, problems=(problem,), openings=("id-9",), marks=("901",))
    return SupplyResult(supply, (circuit,)), circuit


def collapsed():
    """Return a supply whose circuit has no solution at peak, and none at all in another circuit."""
    supply = Supply("s8", "PS-8", "Annex", "Level 1", part="LV-8")
    ways = [("supply", "id-801", "id-801", 160.0, "18 AWG")]
    source = {state: SOURCE[state] for state in ("normal", "lowest-mains")}
    why = {"peak": "constant-power loads take more than the runs can carry"}
    some = solved(
        Circuit("c8", "s8", "C8"), supply, ways, [unit("id-801", "801")], 1.0, 0.05, source, collapsed=why
    )  # fmt: skip
    every = CircuitResult(
        Circuit("c10", "s8", "C10"), supply, SOURCE, collapsed=dict.fromkeys(SOURCE, why["peak"]),
        nodes=(NodeResult("id-802", "802", "id-802", 30.0, {}, 10.0, 14.0),),
        runs=(RunResult("r", "supply", "802", "supply", "id-802", 30.0, "18 AWG", "solid", 2, "", 1.3, {}),),
        openings=("id-802",), marks=("802",), devices=(unit("id-802", "802"),),
    )  # fmt: skip
    return SupplyResult(supply, (some, every), 12.0, 2.0), some, every
