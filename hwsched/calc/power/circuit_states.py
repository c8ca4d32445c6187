"""The states in which the circuits of a supply are proved, as one network.

Normal, lowest and highest end of the supply's tolerance, standby at the end of the battery, and the peak: at each place
under the operations at one time that are worst for it. Here belong the states; one solution of a circuit stands in
`circuit`, the search for the worst operations in `worst_operations`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import accumulate
from typing import TYPE_CHECKING, Final

from hwsched.calc.calculator import InputError, check_number
from hwsched.calc.power.circuit import (
    HIGHEST_SOURCE_V,
    Draw,
    Load,
    Solution,
    draw,
    no_solution,
    node_volts,
    outside_limits,
    solution_of,
)
from hwsched.calc.power.circuit_tree import LARGEST_VALUE, Network, joined

if TYPE_CHECKING:
    from hwsched.calc.power.worst_operations import Operating, Worst

STATES: Final = ("normal", "lowest-mains", "highest-mains", "standby-end", "peak")
_TOLERANCE_V: Final = 1e-9


@dataclass(frozen=True, slots=True)
class Source:
    """Supply of circuits, in the states that matter."""

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
    group: str = ""
    """Devices of a circuit that operate together, such as all at one opening; empty: it operates by itself."""


@dataclass(frozen=True, slots=True)
class FedCircuit:
    """One circuit of a supply."""

    tree: Network
    """Of its runs at their highest temperature."""
    devices: Sequence[Device]
    """With their values at rest, at work and in the first moment."""
    at_once: int
    """How many operations fall together on it, 0 or more: openings, where devices are grouped by them."""


@dataclass(frozen=True, slots=True)
class WorstCase:
    """The operations at one time that are worst for one node."""

    volts: float
    """There then [V]; -inf where they have no solution."""
    bound_v: float
    """No operations bring it lower [V]; equal to the voltage where that is proved to be the least."""
    operating: tuple[int, ...]
    """Devices of its own circuit that operate, by their index."""
    elsewhere: tuple[tuple[int, int], ...]
    """And of other circuits of the supply: circuit, device."""


@dataclass(frozen=True, slots=True)
class State:
    """Circuit in one state."""

    name: str
    source_v: float
    solution: Solution
    """At peak under the operations that are worst for the most endangered node."""
    low: tuple[str, ...]
    """Nodes under the minimum of a device; at peak each under its own worst operations."""
    high: tuple[str, ...]
    operating: tuple[int, ...] = ()
    """Devices that operate, by their index: the set that is worst for the most endangered device."""
    elsewhere: tuple[tuple[int, int], ...] = ()
    """And of other circuits of the supply: circuit, device."""
    worst: Mapping[str, WorstCase] = field(default_factory=dict)
    """At peak, of each node with a device."""
    inrush_assumed: tuple[int, ...] = ()
    """Operating devices without a stated inrush, by their index: their peak was used."""

    def least_v(self, node: str) -> float:
        """Voltage of a node, at peak under its own worst operations [V]; of a state with a solution."""
        worst = self.worst.get(node)
        return self.solution.volts[node] if worst is None else worst.volts

    def bound_v(self, node: str) -> float:
        """Voltage under which no operations bring a node [V]; of a state with a solution."""
        worst = self.worst.get(node)
        return self.solution.volts[node] if worst is None else worst.bound_v


def states(
    tree: Network, devices: Sequence[Device], source: Source, operations_at_once: int, peak_v: float | None = None
) -> tuple[State, ...]:
    """`supply_states` of a supply with one circuit.

    Examples
    --------
    >>> from hwsched.calc.power.circuit_tree import Run, network
    >>> tree = network([Run("supply", "lock", 30, "18 AWG", "stranded")], 50)
    >>> lock = Device("lock", "current", 0.0, 0.35, 1.0, minimum_v=10.2)
    >>> found = states(tree, [lock], Source(12.0, 11.4, 10.5), operations_at_once=1)
    >>> [(s.name, round(s.solution.volts["lock"], 2), s.low) for s in found]
    [('normal', 12.0, ()), ('lowest-mains', 11.4, ()), ('standby-end', 10.5, ()), ('peak', 9.07, ('lock',))]
    """
    return supply_states([FedCircuit(tree, devices, operations_at_once)], source, peak_v)[0]


def supply_states(
    circuits: Sequence[FedCircuit], source: Source, peak_v: float | None = None
) -> tuple[tuple[State, ...], ...]:
    """Circuits of a supply in its states; without a battery or an upper tolerance the state of that name is left out.

    Parameters
    ----------
    circuits : sequence of FedCircuit
        All that hang on it: through the resistance inside the supply each lowers the others.
    source : Source
        Voltages of the supply and its battery.
    peak_v : float
        Voltage of the source in the peak state [V]; by default the lowest of the source's voltages, because a lock must
        also work at the end of standby.

    Returns
    -------
    tuple of tuple of State
        For each circuit normal, lowest-mains, highest-mains, standby-end, peak.

    Raises
    ------
    InputError
        Names the voltage or the device that cannot be taken.

    Notes
    -----
    Rule: voltage drop on inrush at the lowest source voltage and highest conductor temperature (common practice). On
    each circuit so many operations fall together as it says, on all circuits at one time. The highest voltage at a
    device is found with the least drawn: at the upper tolerance only what devices surely draw at rest is counted.
    """
    _check(circuits, source)
    supply = _Supply(circuits)
    resting = [[_load(device, device.holding) for device in each.devices] for each in circuits]
    drawn = supply.draws(resting)
    found: list[list[State]] = [[] for _ in circuits]
    conditions = [("normal", source.normal_v, source.ohm), ("lowest-mains", source.lowest_v, source.ohm)]
    if source.battery_end_v is not None:
        conditions.append(("standby-end", source.battery_end_v, source.battery_ohm))
    solutions: list[Solution] | None = None
    for name, source_v, ohm in conditions:
        solutions = supply.solve(drawn, source_v, ohm, solutions)
        for states_, solution, loads in zip(found, solutions, resting, strict=True):
            states_.append(State(name, source_v, solution, *outside_limits(solution, loads)))
    if source.highest_v is not None:
        least = [[_load(device, _least(device)) for device in each.devices] for each in circuits]
        solutions = supply.solve(supply.draws(least), source.highest_v, source.ohm)
        for states_, solution, loads in zip(found, solutions, least, strict=True):
            states_.insert(2, State("highest-mains", source.highest_v, solution, *outside_limits(solution, loads)))
    peaks = [_peak(supply, resting, condition) for condition in _peak_conditions(source, peak_v)]
    for number, states_ in enumerate(found):
        states_.append(_least_room([each[number] for each in peaks], circuits[number].devices))
    return tuple(map(tuple, found))


def _load(device: Device, value: float) -> Load:
    # A resistance that is not connected draws nothing, and its conductance could not be summed.
    if device.kind == "resistance" and value == float("inf"):
        return Load(device.node, "current", 0.0, device.minimum_v, device.maximum_v)
    return Load(device.node, device.kind, value, device.minimum_v, device.maximum_v)


def _least(device: Device) -> float:
    if device.least is not None:
        return device.least
    return float("inf") if device.kind == "resistance" else 0.0


def first_moment(device: Device) -> float:
    """Return what a device draws as it begins to operate: its inrush; its peak where none is stated."""
    # Common practice: voltage drop on inrush, not on the holding current, which comes only after it.
    return device.peak if device.inrush is None else device.inrush


class _Supply:
    """Circuits of a supply, joined where they touch."""

    def __init__(self, circuits: Sequence[FedCircuit]) -> None:
        self.circuits = circuits
        self.tree = joined([each.tree for each in circuits])
        self.begins = [0, *accumulate(len(each.tree.names) - 1 for each in circuits)]
        """Nodes of the joined tree before those of each circuit, the supply's own not counted."""

    def draws(self, loads: Sequence[Sequence[Load]]) -> list[Draw]:
        return [draw(each.tree, own) for each, own in zip(self.circuits, loads, strict=True)]

    def solve(
        self, drawn: Sequence[Draw], source_v: float, ohm: float, near: Sequence[Solution] | None = None
    ) -> list[Solution]:
        """Solve all circuits at one voltage of the source: by themselves where nothing inside it joins them."""
        if ohm == 0.0 or len(drawn) < 2:
            found = []
            for number, (circuit, own) in enumerate(zip(self.circuits, drawn, strict=True)):
                near_v = list(near[number].volts.values()) if near is not None else None
                volts, stuck = node_volts(circuit.tree, own, source_v, ohm, near_v)
                name = None if stuck is None else circuit.tree.names[stuck]
                found.append(
                    solution_of(circuit.tree, volts, own)
                    if name is None
                    else no_solution(name, sum(own.watts), source_v)
                )
            return found
        at_supply = [
            sum(column) for column in zip(*((d.amps[0], d.watts[0], d.siemens[0]) for d in drawn), strict=True)
        ]
        amps, watts, siemens = (
            [first, *(value for own in drawn for value in getattr(own, name)[1:])]
            for first, name in zip(at_supply, ("amps", "watts", "siemens"), strict=True)
        )
        whole = Draw(amps, watts, siemens, [i for i, w in enumerate(watts) if w > 0.0])
        volts, stuck = node_volts(self.tree, whole, source_v, ohm)
        if stuck is not None:
            name = self.tree.names[stuck].partition(":")[2] or self.tree.names[stuck]
            return [no_solution(name, sum(watts), source_v)] * len(drawn)
        return [
            solution_of(circuit.tree, [volts[0], *volts[1 + begin : begin + len(circuit.tree.names)]], own)
            for circuit, own, begin in zip(self.circuits, drawn, self.begins, strict=False)
        ]

    def node(self, circuit: int, name: str) -> int:
        """Place of a circuit's node in the joined tree."""
        at = self.circuits[circuit].tree.position[name]
        return at + self.begins[circuit] if at else 0


def _peak_conditions(source: Source, peak_v: float | None) -> list[tuple[float, float]]:
    """Voltage and resistance inside at which the peak is asked: that of no other has both worse."""
    mains = (source.lowest_v, source.ohm)
    battery = None if source.battery_end_v is None else (source.battery_end_v, source.battery_ohm)
    if peak_v is not None:
        check_number(peak_v, "peak_v", above=0, at_most=HIGHEST_SOURCE_V)
        # With the lower voltage comes its own inner resistance: a battery's leads are not the supply's.
        return [(peak_v, min(filter(None, (mains, battery)))[1])]
    if battery is None or (mains[0] <= battery[0] and mains[1] >= battery[1]):
        return [mains]
    if battery[0] <= mains[0] and battery[1] >= mains[1]:
        return [battery]
    # The one with more volts has more resistance in front of them: which is worse depends on what is drawn.
    return [mains, battery]


def _peak(supply: _Supply, resting: Sequence[Sequence[Load]], condition: tuple[float, float]) -> list[State]:
    """Peak of each circuit from one source."""
    source_v, ohm = condition
    if ohm == 0.0 and len(supply.circuits) > 1:
        return [
            _peak(_Supply([circuit]), [loads], condition)[0]
            for circuit, loads in zip(supply.circuits, resting, strict=True)
        ]
    worst = _together(supply, condition) or _searched(supply, condition)
    found = []
    for number, circuit in enumerate(supply.circuits):
        worst_cases = worst[number]
        endangered = min(
            circuit.devices, key=lambda d: worst_cases[d.node].volts - (d.minimum_v or 0.0), default=None
        )  # fmt: skip
        worst_case = WorstCase(source_v, source_v, (), ()) if endangered is None else worst_cases[endangered.node]
        chosen = {*((number, i) for i in worst_case.operating), *worst_case.elsewhere}
        loads = [
            [
                _load(device, first_moment(device)) if (c, i) in chosen else load
                for i, (device, load) in enumerate(zip(each.devices, own, strict=True))
            ]
            for c, (each, own) in enumerate(zip(supply.circuits, resting, strict=True))
        ]
        solution = supply.solve(supply.draws(loads), source_v, ohm)[number]
        low = [
            device.node
            for device in circuit.devices
            if device.minimum_v is not None and worst_cases[device.node].volts < device.minimum_v - _TOLERANCE_V
        ]
        assumed = tuple(i for i in worst_case.operating if circuit.devices[i].inrush is None)
        high = outside_limits(solution, loads[number])[1]
        low = [] if solution.collapsed else list(dict.fromkeys(low))
        found.append(
            State(
                "peak",
                source_v,
                solution,
                tuple(low),
                high,
                worst_case.operating,
                worst_case.elsewhere,
                worst_cases,
                assumed,
            )
        )
    return found


def _together(supply: _Supply, condition: tuple[float, float]) -> list[dict[str, WorstCase]] | None:
    """Worst of every node where all may operate at one time and only draw more: that all do; None elsewhere."""
    for circuit in supply.circuits:
        groups = {device.group or i for i, device in enumerate(circuit.devices)}
        if circuit.at_once < len(groups) or any(map(_draws_less, circuit.devices)):
            return None
    loads = [[_load(device, first_moment(device)) for device in each.devices] for each in supply.circuits]
    solutions = supply.solve(supply.draws(loads), *condition)
    # What draws in operation as at rest is worst for nobody.
    everything = [
        (c, i)
        for c, each in enumerate(supply.circuits)
        for i, device in enumerate(each.devices)
        if first_moment(device) != device.holding
    ]
    found = []
    for number, (circuit, solution) in enumerate(zip(supply.circuits, solutions, strict=True)):
        own = tuple(i for c, i in everything if c == number)
        others = tuple(each for each in everything if each[0] != number)
        volts = {device.node: solution.volts.get(device.node, -float("inf")) for device in circuit.devices}
        found.append({node: WorstCase(v, v, own, others) for node, v in volts.items()})
    return found


def _draws_less(device: Device) -> bool:
    first = first_moment(device)
    return first > device.holding if device.kind == "resistance" else first < device.holding


def _searched(supply: _Supply, condition: tuple[float, float]) -> list[dict[str, WorstCase]]:
    """Worst of every node with a device, by the search."""
    # Arrays are loaded only where operations are searched: most verbs and most supplies do without.
    from hwsched.calc.power.worst_operations import worst_operations  # noqa: PLC0415

    members, operating = _operating(supply)
    nodes = [
        dict.fromkeys(supply.node(c, device.node) for device in each.devices) for c, each in enumerate(supply.circuits)
    ]
    places = [(node, c) for c, own in enumerate(nodes) for node in own]
    worst = dict(zip(places, worst_operations(supply.tree, operating, condition, places), strict=True))
    found = []
    for number, (circuit, own) in enumerate(zip(supply.circuits, nodes, strict=True)):
        # Most places of a circuit have the same worst operations.
        operating_of: dict[tuple[int, ...], tuple[tuple[int, ...], tuple[tuple[int, int], ...]]] = {}
        of_node = {}
        for node in own:
            found_worst = worst[node, number]
            if found_worst.groups not in operating_of:
                operating_of[found_worst.groups] = _devices_of(found_worst, members, number)
            of_node[node] = WorstCase(found_worst.volts, found_worst.bound_v, *operating_of[found_worst.groups])
        found.append({device.node: of_node[supply.node(number, device.node)] for device in circuit.devices})
    return found


def _devices_of(
    worst: "Worst", members: Sequence[Sequence[tuple[int, int]]], circuit: int
) -> tuple[tuple[int, ...], tuple[tuple[int, int], ...]]:
    """Return what operates on a circuit itself, and on the others."""
    devices = [device for group in worst.groups for device in members[group]]
    own = tuple(sorted([i for c, i in devices if c == circuit]))
    return own, tuple(sorted([each for each in devices if each[0] != circuit]))


def _operating(supply: _Supply) -> "tuple[list[list[tuple[int, int]]], Operating]":
    """Devices of all circuits by the groups that operate together, and what they draw."""
    import numpy as np  # noqa: PLC0415

    from hwsched.calc.power.many_solutions import Draws  # noqa: PLC0415
    from hwsched.calc.power.worst_operations import Operating  # noqa: PLC0415

    numbers: dict[tuple[int, str], int] = {}
    members: list[list[tuple[int, int]]] = []
    group, at, circuit_of = [], [], []
    drawn: list[tuple[tuple[float, float, float], tuple[float, float, float]]] = []
    for c, each in enumerate(supply.circuits):
        for i, device in enumerate(each.devices):
            number = numbers.setdefault((c, device.group or f"\0{i}"), len(members))
            if number == len(members):
                members.append([])
                circuit_of.append(c)
            members[number].append((c, i))
            group.append(number)
            at.append(supply.node(c, device.node))
            drawn.append((_split(device.kind, device.holding), _split(device.kind, first_moment(device))))
    both = np.array(drawn, dtype=float).reshape(len(drawn), 2, 3)
    rest, work = (Draws(both[:, n, 0], both[:, n, 1], both[:, n, 2]) for n in (0, 1))
    operating = Operating(
        np.array(at, dtype=np.intp), rest, work, np.array(group, dtype=np.intp), np.array(circuit_of, dtype=np.intp),
        [each.at_once for each in supply.circuits],
    )  # fmt: skip
    return members, operating


def _split(kind: str, value: float) -> tuple[float, float, float]:
    """Return current [A], power [W] and conductance [S] of a load."""
    if kind == "power":
        return 0.0, value, 0.0
    return (value, 0.0, 0.0) if kind == "current" else (0.0, 0.0, 1.0 / value)


def _least_room(peaks: Sequence[State], devices: Sequence[Device]) -> State:
    """Peak of a circuit from the sources that it may have: each node at its least."""
    if len(peaks) == 1:
        return peaks[0]

    def room(state: State) -> float:
        return min((state.worst[d.node].volts - (d.minimum_v or 0.0) for d in devices), default=0.0)

    worst = min(peaks, key=room)
    worst_cases = {
        node: min((each.worst[node] for each in peaks), key=lambda worst_case: worst_case.volts) for node in worst.worst
    }
    bounded = {
        node: replace(worst_case, bound_v=min(each.worst[node].bound_v for each in peaks))
        for node, worst_case in worst_cases.items()
    }
    low = tuple(dict.fromkeys(node for each in peaks for node in each.low))
    return State(
        "peak", worst.source_v, worst.solution, () if worst.solution.collapsed else low, worst.high, worst.operating,
        worst.elsewhere, bounded, worst.inrush_assumed,
    )  # fmt: skip


def _check(circuits: Sequence[FedCircuit], source: Source) -> None:
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
    for name, ohm in (("source_ohm", source.ohm), ("battery_ohm", source.battery_ohm)):
        check_number(ohm, name, at_least=0, at_most=LARGEST_VALUE)
    for circuit in circuits:
        if circuit.at_once < 0:
            raise InputError("operations_at_once", f"must be 0 or more, got {circuit.at_once}")
        # What is drawn at work is checked as what is drawn at rest: both are summed unseen later.
        draw(circuit.tree, [_load(device, first_moment(device)) for device in circuit.devices])
