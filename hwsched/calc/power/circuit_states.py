"""The states in which a circuit is proved.

Normal, lowest and highest end of the supply's tolerance, standby at the end of the battery, and the peak of the worst
operations at one time.
Here belong the states and the choice of the worst operations; one solution of a circuit stands in `circuit`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from heapq import nlargest
from typing import Final

from hwsched.calc.calculator import InputError, check_number
from hwsched.calc.power.circuit import HIGHEST_SOURCE_V, Load, Solution, draw, outside_limits, solve_draw
from hwsched.calc.power.circuit_tree import Network

STATES: Final = ("normal", "lowest-mains", "highest-mains", "standby-end", "peak")


@dataclass(frozen=True, slots=True)
class Source:
    """Supply of a circuit, in the states that matter."""

    normal_v: float
    """Output with mains at its nominal voltage [V]."""
    lowest_v: float
    """Output at the lowest mains tolerance [V]."""
    battery_end_v: float | None = None
    """Standby battery at its end voltage, at the supply's output [V]; None where there is no battery."""
    ohm: float = 0.0
    """Inside the supply [ohm]."""
    battery_ohm: float = 0.0
    """Inside the battery and its leads [ohm]."""
    highest_v: float | None = None
    """Output at the upper end of its tolerance [V]; None where it is not asked about."""


@dataclass(frozen=True, slots=True)
class Device:
    """One device on a circuit, at rest and at work, in the unit of its kind."""

    node: str
    kind: str
    """current [A], power [W] or resistance [ohm]."""
    holding: float
    """At rest or held; infinite for a resistance that is not connected."""
    peak: float
    """While it operates."""
    inrush: float | None = None
    """In the first moment; None where nothing is stated, and then the peak counts and the result says so."""
    minimum_v: float | None = None
    maximum_v: float | None = None
    name: str = ""
    least: float | None = None
    """What it surely draws at rest; None where nothing is stated, and then it is reckoned to draw nothing where a high
    voltage is asked about."""


@dataclass(frozen=True, slots=True)
class State:
    """Circuit in one state."""

    name: str
    source_v: float
    solution: Solution
    low: tuple[str, ...]
    """Nodes under the minimum of a device; at peak under any operations, not only those that were solved."""
    high: tuple[str, ...]
    operating: tuple[int, ...] = ()
    """Devices that operate, by their index: the set that is worst for the most endangered device."""
    others_low: Mapping[str, float] = field(default_factory=dict)
    """Nodes that are low under other operations only, with their voltage then, as estimated from rest [V]."""
    inrush_assumed: tuple[int, ...] = ()
    """Operating devices without a stated inrush, by their index: their peak was used."""


def states(
    tree: Network, devices: Sequence[Device], source: Source, operations_at_once: int, peak_v: float | None = None
) -> tuple[State, ...]:
    """Circuit in its states; without a battery, or without an upper tolerance, the state of that name is left out.

    Parameters
    ----------
    tree : Network
        Of the circuit's runs at their highest temperature.
    devices : sequence of Device
        With their values at rest, at work and in the first moment.
    source : Source
        Voltages of the supply and its battery.
    operations_at_once : int
        How many devices operate at one time, 0 or more.
    peak_v : float
        Voltage of the source in the peak state [V]; by default the lowest of the source's voltages, because a lock must
        also work at the end of standby.

    Returns
    -------
    tuple of State
        normal, lowest-mains, highest-mains, standby-end, peak.

    Raises
    ------
    InputError
        Names the voltage or the device that cannot be taken.

    Notes
    -----
    For each device the operations that lower its voltage most are those with the largest product of added current and
    resistance shared with it on the way from the source: exact for constant currents, and for the other kinds taken at
    the voltages of the resting circuit. The set that is worst for the device with the least room above its minimum is
    solved in full; the other devices are bounded, and estimated where the bound does not clear them. Rule: voltage drop
    on inrush at the lowest source voltage and highest conductor temperature (common practice). The highest voltage at a
    device is found with the least drawn: at the upper tolerance only what devices surely draw at rest is counted.

    Examples
    --------
    >>> from hwsched.calc.power.circuit_tree import Run, network
    >>> tree = network([Run("supply", "lock", 30, "18 AWG", "stranded")], 50)
    >>> lock = Device("lock", "current", 0.0, 0.35, 1.0, minimum_v=10.2)
    >>> found = states(tree, [lock], Source(12.0, 11.4, 10.5), operations_at_once=1)
    >>> [(s.name, round(s.solution.volts["lock"], 2), s.low) for s in found]
    [('normal', 12.0, ()), ('lowest-mains', 11.4, ()), ('standby-end', 10.5, ()), ('peak', 9.07, ('lock',))]
    """
    _check(source, operations_at_once)
    resting = [_load(device, device.holding) for device in devices]
    drawn = draw(tree, resting)
    conditions = [("normal", source.normal_v, source.ohm), ("lowest-mains", source.lowest_v, source.ohm)]
    lowest_v, ohm = source.lowest_v, source.ohm
    if source.battery_end_v is not None:
        conditions.append(("standby-end", source.battery_end_v, source.battery_ohm))
        # With the lower voltage comes its own inner resistance: a battery's leads are not the supply's.
        if source.battery_end_v <= lowest_v:
            lowest_v, ohm = source.battery_end_v, source.battery_ohm
    if peak_v is not None:
        lowest_v = check_number(peak_v, "peak_v", above=0, at_most=HIGHEST_SOURCE_V)
    found: list[State] = []
    solution: Solution | None = None
    for name, source_v, source_ohm in conditions:
        solution = solve_draw(tree, drawn, source_v, source_ohm, solution)
        found.append(State(name, source_v, solution, *outside_limits(solution, resting)))
    solved = list(zip(found, conditions, strict=True))
    if source.highest_v is not None:
        least = [_load(device, _least(device)) for device in devices]
        highest = solve_draw(tree, draw(tree, least), source.highest_v, source.ohm, None)
        found.insert(2, State("highest-mains", source.highest_v, highest, *outside_limits(highest, least)))
    rest = next((s.solution for s, c in solved if c[1:] == (lowest_v, ohm)), None)
    if rest is None:
        rest = solve_draw(tree, drawn, lowest_v, ohm, solution)
    found.append(_peak(tree, devices, resting, rest, (lowest_v, ohm), operations_at_once))
    return tuple(found)


def _load(device: Device, value: float) -> Load:
    # A resistance that is not connected draws nothing, and its conductance could not be summed.
    if device.kind == "resistance" and value == float("inf"):
        return Load(device.node, "current", 0.0, device.minimum_v, device.maximum_v)
    return Load(device.node, device.kind, value, device.minimum_v, device.maximum_v)


def _least(device: Device) -> float:
    if device.least is not None:
        return device.least
    return float("inf") if device.kind == "resistance" else 0.0


def _peak(
    tree: Network,
    devices: Sequence[Device],
    resting: Sequence[Load],
    rest: Solution,
    condition: tuple[float, float],
    at_once: int,
) -> State:
    source_v, ohm = condition
    if rest.collapsed or not devices:
        return State("peak", source_v, rest, *outside_limits(rest, resting))
    worst = _Worst(tree, devices, rest, ohm, at_once)
    operating = worst.operations()
    loads = list(resting)
    for i in operating:
        # Common practice: voltage drop on inrush, not on the holding current, which comes only after it.
        loads[i] = _load(devices[i], _first_moment(devices[i]))
    solution = solve_draw(tree, draw(tree, loads), source_v, ohm, rest)
    low, high = outside_limits(solution, loads)
    others = {} if solution.collapsed else worst.others_low(low)
    assumed = tuple(i for i in operating if devices[i].inrush is None)
    return State("peak", source_v, solution, (*low, *others), high, operating, others, assumed)


class _Worst:
    """Search for the operations that lower a device's voltage most.

    The drop at a device j is the sum over the operating devices i of (resistance shared by i and j) · (current added by
    i). For one j the worst set is the largest of these terms. Which j is worst off is bounded first, run by run: a run
    carries at most the largest added currents beyond it.
    """

    def __init__(self, tree: Network, devices: Sequence[Device], rest: Solution, ohm: float, at_once: int) -> None:
        self.tree, self.devices, self.ohm, self.at_once = tree, devices, ohm, at_once
        self.at = [tree.position[d.node] for d in devices]
        self.rest_v = [rest.volts[d.node] for d in devices]
        self.added_a = [max(0.0, _added_a(d, v)) for d, v in zip(devices, self.rest_v, strict=True)]
        self.room_v = [v - (d.minimum_v or 0.0) for d, v in zip(devices, self.rest_v, strict=True)]
        self.most_drop_v = self._most_drop_v()

    def operations(self) -> tuple[int, ...]:
        """Devices whose operation at one time is worst for the most endangered device."""
        best: tuple[int, ...] = ()
        best_v = float("inf")
        room_v, most_v, at = self.room_v, self.most_drop_v, self.at
        for least_v, j in sorted((room_v[j] - most_v[at[j]], j) for j in range(len(at))):
            # Bounds rise from here on: none of the rest can be worse off than the one found.
            if least_v >= best_v - 1e-12:
                break
            chosen, drop_v = self._worst_for(j)
            if room_v[j] - drop_v < best_v:
                best, best_v = chosen, room_v[j] - drop_v
        return best

    def others_low(self, known: Sequence[str]) -> dict[str, float]:
        """Nodes that other operations bring under their minimum, with the voltage that remains there [V]."""
        found: dict[str, float] = {}
        for j, device in enumerate(self.devices):
            if device.minimum_v is None or device.node in known or self.room_v[j] >= self.most_drop_v[self.at[j]]:
                continue
            drop_v = self._worst_for(j)[1]
            if self.room_v[j] < drop_v - 1e-9:
                left_v = self.rest_v[j] - drop_v
                found[device.node] = min(left_v, found.get(device.node, left_v))
        return found

    def _most_drop_v(self) -> list[float]:
        at_once = self.at_once
        beyond: list[list[float]] = [[] for _ in self.tree.names]
        for i, amps in zip(self.at, self.added_a, strict=True):
            if amps > 0.0:
                beyond[i].append(amps)
        for i, to, _ in reversed(self.tree.steps):
            # Only the largest can matter further up, since no more than so many operate at one time.
            if mine := beyond[i]:
                mine.sort(reverse=True)
                del mine[at_once:]
                beyond[to] += mine
        drop_v = [self.ohm * sum(sorted(beyond[0], reverse=True)[:at_once])]
        for i, to, ohm in self.tree.steps:
            drop_v.append(drop_v[to] + ohm * sum(beyond[i]))
        return drop_v

    def _worst_for(self, j: int) -> tuple[tuple[int, ...], float]:
        shared = shared_ohm(self.tree, self.at[j], self.ohm)
        drops_v = [shared[i] * amps for i, amps in zip(self.at, self.added_a, strict=True)]
        largest = nlargest(self.at_once, range(len(drops_v)), drops_v.__getitem__)
        chosen = tuple(sorted(i for i in largest if self.added_a[i] > 0.0))
        return chosen, sum(drops_v[i] for i in chosen)


def _first_moment(device: Device) -> float:
    return device.peak if device.inrush is None else device.inrush


def _added_a(device: Device, volts: float) -> float:
    # Where the resting circuit gives a node nothing, the estimate still has to be a number.
    volts = max(volts, 1e-6)
    before, after = device.holding, _first_moment(device)
    if device.kind == "power":
        return (after - before) / volts
    if device.kind == "resistance":
        return volts / after - volts / before
    return after - before


def shared_ohm(tree: Network, node: int, source_ohm: float = 0.0) -> list[float]:
    """Resistance that each node shares with one node on their ways from the source.

    Parameters
    ----------
    tree : Network
        Of the circuit's runs.
    node : int
        Place of the one node in the tree's names.
    source_ohm : float
        Inside the source [ohm]; all share it.

    Returns
    -------
    list of float
        In the order of the tree's names [ohm].

    Examples
    --------
    >>> from hwsched.calc.power.circuit_tree import Run, network
    >>> tree = network([Run("supply", "a", 58, "1 mm2", "solid"), Run("a", "b", 29, "1 mm2", "solid")], 20)
    >>> [round(x, 6) for x in shared_ohm(tree, 2, 0.5)]
    [0.5, 2.5, 3.5]
    """
    on_way: set[int] = set()
    while node:
        on_way.add(node)
        node = tree.feeder[node]
    shared = [source_ohm]
    add = shared.append
    for i, to, ohm in tree.steps:
        add(shared[to] + ohm if i in on_way else shared[to])
    return shared


def _check(source: Source, operations_at_once: int) -> None:
    check_number(source.normal_v, "normal_v", above=0, at_most=HIGHEST_SOURCE_V)
    check_number(source.lowest_v, "lowest_v", above=0, at_most=HIGHEST_SOURCE_V)
    if source.lowest_v > source.normal_v:
        raise InputError("lowest_v", f"must be at most the normal {source.normal_v:g} V, got {source.lowest_v:g}")
    if source.highest_v is not None:
        check_number(source.highest_v, "highest_v", above=0, at_most=HIGHEST_SOURCE_V)
        if source.highest_v < source.normal_v:
            raise InputError(
                "highest_v", f"must be at least the normal {source.normal_v:g} V, got {source.highest_v:g}"
            )
    if source.battery_end_v is not None:
        check_number(source.battery_end_v, "battery_end_v", above=0, at_most=HIGHEST_SOURCE_V)
    if operations_at_once < 0:
        raise InputError("operations_at_once", f"must be 0 or more, got {operations_at_once}")
