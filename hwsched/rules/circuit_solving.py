"""One circuit: its tree of runs with what leads onto the leaves, and the voltages in every state.

The one engine for circuits that are laid and for an opening that has its supply to itself. What would cure a low
voltage is tried by `hwsched.wiring.circuits`; what is wrong is said by the rules.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from math import fsum
from typing import Final

from hwsched.attributes.of_parts import (
    CURRENT,
    END_V,
    GAUGE,
    INSIDE_OHM,
    OUTPUT_A,
    OUTPUT_V,
    STRANDING,
    TOLERANCE_SHARE,
    VOLTAGE_V,
)
from hwsched.calc.calculator import InputError
from hwsched.calc.power import circuit_states, circuit_tree
from hwsched.calc.power.power_limits import class_2_limit
from hwsched.calc.power.supply_practice import limiter_a, worst_inrush_a
from hwsched.rules.connected_opening import ConnectedOpening
from hwsched.rules.devices import amps, on_leaf, unsuited
from hwsched.rules.leaf_nodes import leaf_node, leaf_words, opening_of, strike_node
from hwsched.rules.leaf_runs import ASSUMED_OHM, LeafRun, leaf_runs
from hwsched.values import Catalogue, Part
from hwsched.values.power import Circuit, CircuitResult, Device, NodeResult, Problem, Run, RunResult, Supply

SUPPLY: Final = circuit_tree.SUPPLY

Devices = Mapping[str, tuple[tuple[Device, ...], tuple[Problem, ...]]]


@dataclass(frozen=True, slots=True)
class SolvingLimits:
    """What is reckoned with where the circuit itself does not say."""

    temperature_c: float
    """Of the conductors [degC]."""
    at_once: int
    """Operations at one time."""
    limiter_margin: float
    """Fuse or limiter over the continuous current."""
    unmeasured_ohm: float = ASSUMED_OHM
    """There and back in a power transfer that stays, while nobody has measured it [ohm]."""


@dataclass(frozen=True, slots=True)
class Solved:
    """A circuit as it was solved."""

    runs: Sequence[circuit_tree.Run]
    tree: circuit_tree.Network
    devices: Sequence[circuit_states.Device]
    states: Sequence[circuit_states.State]
    source: circuit_states.Source
    at_once: int
    warm_c: float
    """Of the conductors [degC]."""
    names: Mapping[str, str]
    """Marks of the openings by node."""


@dataclass(frozen=True, slots=True)
class CircuitSource:
    """A supply as its circuits see it."""

    supply: Supply
    part: Part | None
    source: circuit_states.Source | None
    """None while a fact of it is missing."""
    catalogue: Catalogue

    @classmethod
    def of(
        cls, supply: Supply, part: Part | None, battery: Part | None, catalogue: Catalogue, end_share: float
    ) -> "CircuitSource":
        """Read a supply from the catalogue.

        Parameters
        ----------
        supply : Supply
            As it stands.
        part, battery : Part or None
            Of the catalogue.
        catalogue : Catalogue
            For wires and devices.
        end_share : float
            End voltage of a battery that states none, as a share of its nominal voltage.
        """
        volts = part.number_of(OUTPUT_V) if part is not None and part.kind == "power-supply" else None
        tolerance = part.number_of(TOLERANCE_SHARE) if part is not None else None
        if part is None or volts is None or tolerance is None:
            return cls(supply, part, None, catalogue)
        end_v = battery_ohm = None
        if battery is not None:
            count = supply.batteries or 1
            one_v = battery.number_of(END_V)
            if one_v is None and (nominal := battery.number_of(VOLTAGE_V)) is not None:
                # A battery is judged at its end: what works with a full one may drop out in the last hour of standby.
                one_v = nominal * end_share
            end_v = None if one_v is None else one_v * count
            # In series volts add, and so do their inner resistances.
            battery_ohm = (battery.number_of(INSIDE_OHM) or 0.0) * count
        source = circuit_states.Source(
            volts, volts * (1 - tolerance), end_v, part.number_of(INSIDE_OHM) or 0.0, battery_ohm or 0.0,
            volts * (1 + tolerance),
        )  # fmt: skip
        return cls(supply, part, source, catalogue)

    @property
    def current(self) -> str | None:
        """Kind of current that it gives; None where the catalogue does not say."""
        return self.part.text_of(CURRENT) if self.part is not None else None

    def run(self, circuit: Circuit, run: Run, names: Mapping[str, str]) -> "_RunWithConductor | Problem":
        """Return a run with its conductor, or what is missing of it."""
        ends = f"the run from {names.get(run.from_node, run.from_node)} to {names.get(run.to_node, run.to_node)}"
        about = names.get(run.to_node, run.to_node)
        where = run.opening_id or ""
        if run.length_m is None:
            return Problem("unknown", f"the length of {ends} is unknown", ("run.length_m",), where, about)
        gauge, stranding, number = run.gauge, run.stranding, ""
        if gauge is None:
            number = run.wire or circuit.wire or ""
            if not number:
                return Problem("unknown", f"the wire of {ends} is unknown", ("run.wire",), where, about)
            wire = self.catalogue.get(number)
            if wire is None or wire.kind != "wire":
                return Problem(
                    "unsound", f"{number}, the wire of {ends}, is no wire of the catalogue", (), where, about
                )
            gauge, stranding = wire.text_of(GAUGE), wire.text_of(STRANDING)
            if gauge is None or stranding is None:
                fact = f"part {number}.{'gauge' if gauge is None else 'stranding'}"
                return Problem("unknown", f"the conductor of {number} is unknown", (fact,), where, about)
        if stranding is None:
            return Problem(
                "unknown", f"whether {gauge} of {ends} is stranded is unknown", ("run.stranding",), where, about
            )
        made = circuit_tree.Run(
            run.from_node, run.to_node, run.length_m, gauge, stranding, run.parallel or 1, run.extra_ohm or 0.0
        )
        return _RunWithConductor(made, run.id, number, False)


@dataclass(frozen=True, slots=True)
class _RunWithConductor:
    run: circuit_tree.Run
    run_id: str
    part: str
    transfer: bool


def solved_circuit(
    circuit: Circuit,
    circuit_source: CircuitSource,
    runs: Sequence[Run],
    devices: Devices,
    connected: Mapping[str, ConnectedOpening],
    limits: SolvingLimits,
) -> tuple[CircuitResult, Solved | None]:
    """Solve a circuit in its states, or say why it cannot be.

    Parameters
    ----------
    circuit : Circuit
        As laid.
    circuit_source : CircuitSource
        Its supply.
    runs : sequence of Run
        In any order.
    devices : mapping
        By opening: what hangs there, and what is unknown of it.
    connected : mapping
        Openings that it feeds.
    limits : SolvingLimits
        Where the circuit does not say.

    Returns
    -------
    (CircuitResult, Solved or None)
        What was found, and what it was found from; None where it could not be solved.
    """
    warm = limits.temperature_c if circuit.temperature_c is None else circuit.temperature_c
    at_once = limits.at_once if circuit.at_once is None else circuit.at_once
    names = {opening: each.given.opening.mark for opening, each in connected.items()}
    openings = tuple(run.opening_id for run in runs if run.opening_id in connected and run.opening_id is not None)
    openings = tuple(dict.fromkeys(openings))
    problems: list[Problem] = []
    present: list[_RunWithConductor] = []
    for run in runs:
        found = circuit_source.run(circuit, run, names)
        if isinstance(found, _RunWithConductor):
            present.append(found)
        else:
            problems.append(found)
    connected_devices: list[Device] = []
    at: list[str] = []
    for opening in openings:
        own, missing = devices[opening]
        problems += missing
        # A door loop or transfer hinge is wire too, often thin, and every ampere of the leaf passes it.
        onto = leaf_runs(connected[opening], warm, problems, limits.unmeasured_ohm)
        units = {device.leaf for device in own if device.role == "unit"}
        switching = set()
        for device in own:
            connected_devices.append(device)
            if device.leaf not in onto:
                at.append(opening)
            elif on_leaf(device, circuit_source.catalogue.get(device.part)):
                at.append(leaf_node(opening, device.leaf))
            elif device.leaf in units and onto[device.leaf].switch is not None:
                # A strike sits in the frame; what it draws passes the contact of the unit on the leaf, there and back.
                switching.add(device.leaf)
                at.append(strike_node(opening, device.leaf))
            else:
                at.append(opening)
        present += _onto_leaves(onto, switching)
    marks = tuple(names[opening] for opening in openings)
    wire = _said_wire(present)
    bare = CircuitResult(
        circuit, circuit_source.supply, devices=tuple(connected_devices), problems=tuple(problems), openings=openings,
        marks=marks, wire=wire,
    )  # fmt: skip
    source = circuit_source.source
    if circuit_source.current is None and circuit_source.part is not None:
        fact = f"part {circuit_source.part.number}.current"
        text = f"whether {circuit_source.part.number} gives DC or AC is unknown: the catalogue does not say"
        problems.append(Problem("unknown", text, (fact,), about=circuit_source.part.number))
    if source is not None and circuit_source.current is not None:
        for device in connected_devices:
            why = unsuited(device, circuit_source.catalogue.get(device.part), source.normal_v, circuit_source.current)
            if why is not None:
                text = f"{device.part} at {device.mark} cannot hang on {circuit_source.supply.name}: {why}"
                problems.append(Problem("mismatch", text, (), device.opening_id, device.part))
    whole = len([each for each in present if not each.transfer]) == len(runs)
    # Where something of a run is unknown, it is still seen that all of them are a tree.
    tried = [each.run for each in present] if whole else [_shape(run) for run in runs]
    try:
        tree = circuit_tree.network(tried, warm)
    except InputError as error:
        problems.append(_unsound(error, tried, names))
        return replace(bare, problems=tuple(problems)), None
    if source is not None and circuit_source.current != "dc" and not problems:
        text = f"the voltages of circuit {circuit.name} are not worked out: {circuit_source.supply.name} gives AC"
        problems.append(Problem("unknown", text, about=circuit_source.supply.name))
    stuck = [problem for problem in problems if problem.kind in ("unknown", "unsound")]
    # Half a circuit has no voltages: what is unknown on one run lowers all that lie behind it.
    if stuck or source is None or circuit_source.current != "dc":
        return replace(bare, problems=tuple(problems)), None
    solved = [
        circuit_states.Device(node, d.kind, d.holding, d.peak, d.inrush, d.minimum_v, d.maximum_v, d.mark, d.least)
        for d, node in zip(connected_devices, at, strict=True)
    ]  # fmt: skip
    try:
        states = circuit_states.states(tree, solved, source, at_once)
    except InputError as error:
        problems.append(_untaken(error, circuit, connected_devices))
        return replace(bare, problems=tuple(problems)), None
    nodes = _nodes(tree, states, connected_devices, at, names, present)
    # A strike that rests without current draws while it releases; the limiter must carry that as well.
    holding = fsum(
        max(amps(d, d.holding, source.normal_v), amps(d, d.peak, source.normal_v)) for d in connected_devices
    )
    resting = [amps(d, d.holding, source.normal_v) for d in connected_devices]
    first = [amps(d, d.peak if d.inrush is None else d.inrush, source.normal_v) for d in connected_devices]
    run_results = tuple(_run(each, i, tree, states, names) for i, each in enumerate(present))
    rated = circuit_source.part.number_of(OUTPUT_A) if circuit_source.part else None
    limiter = circuit.limiter_a
    if limiter is None:
        limiter = _limiter(holding, rated, source.normal_v, limits.limiter_margin)
    facts = Solved([each.run for each in present], tree, solved, states, source, at_once, warm, names)
    result = replace(
        bare,
        source_v={state.name: state.source_v for state in states},
        nodes=nodes,
        runs=run_results,
        current_a={s.name: s.solution.source_a for s in states if s.solution.source_a is not None},
        collapsed={s.name: s.solution.reason or "" for s in states if s.solution.collapsed},
        operating=tuple(connected_devices[i].mark for i in states[-1].operating),
        holding_a=holding,
        inrush_a=worst_inrush_a(resting, first, at_once),
        limiter_a=limiter,
        problems=tuple(problems),
    )  # fmt: skip
    return result, facts


def _onto_leaves(onto: Mapping[str, LeafRun], switching: Collection[str]) -> "list[_RunWithConductor]":
    found = []
    for leaf, run in onto.items():
        found.append(_RunWithConductor(run.run, "", run.part, True))
        if run.switch is not None and leaf in switching:
            # Conductors of the same transfer: bought with it, so it bears no number of its own.
            found.append(_RunWithConductor(run.switch, "", "", True))
    return found


def _shape(run: Run) -> circuit_tree.Run:
    """Return a run with its ends only."""
    # Length and wire stand for anything: only whether the runs are a tree is asked.
    return circuit_tree.Run(run.from_node, run.to_node, 1.0, "18 AWG", "solid")


def _unsound(error: InputError, runs: Sequence[circuit_tree.Run], names: Mapping[str, str]) -> Problem:
    """Say which run is wrong, in the names that people gave."""
    message, about, opening = error.message, "", ""
    for node in {node for run in runs for node in (run.from_node, run.to_node)}:
        # Nodes are identifiers; in a message they tell a person nothing.
        message = message.replace(repr(node), names.get(node, node))
    if error.field.startswith("runs["):
        index, _, field = error.field[5:].partition("].")
        run = runs[int(index)]
        ends = [names.get(node, node) for node in (run.from_node, run.to_node)]
        about = ends[1]
        opening = run.to_node if run.to_node in names else ""
        message = f"run from {ends[0]} to {ends[1]}, {field}: {message}"
    else:
        message = f"{error.field.replace('_', ' ')}: {message}"
    return Problem("unsound", message, (), opening, about)


def _untaken(error: InputError, circuit: Circuit, devices: Sequence[Device]) -> Problem:
    """Say which value of a device, or of the circuit, cannot be taken."""
    index, _, field = error.field.removeprefix("loads[").partition("].")
    if index.isdigit():
        device = devices[int(index)]
        text = f"what {device.part} at {device.mark} draws cannot be taken: {field} {error.message}"
        return Problem("unsound", text, (), device.opening_id, device.part)
    text = f"{error.field.replace('_', ' ')} of circuit {circuit.name}: {error.message}"
    return Problem("unsound", text, (), "", f"circuit {circuit.name}")


def _said_wire(present: Sequence[_RunWithConductor]) -> str:
    return ", ".join(dict.fromkeys(f"{each.run.gauge} {each.run.stranding}" for each in present if not each.transfer))


def _nodes(
    tree: circuit_tree.Network,
    states: Sequence[circuit_states.State],
    devices: Sequence[Device],
    at: Sequence[str],
    names: Mapping[str, str],
    present: Sequence[_RunWithConductor],
) -> tuple[NodeResult, ...]:
    windows: dict[str, tuple[float, float]] = {}
    for device, node in zip(devices, at, strict=True):
        low, high = windows.get(node, (0.0, float("inf")))
        # Several devices at one node share one voltage: the strictest of them on either side decides.
        windows[node] = max(low, device.minimum_v), min(high, device.maximum_v)
    distance = [0.0]
    for i in range(1, len(tree.names)):
        distance.append(distance[tree.feeder[i]] + present[tree.run[i]].run.length_m)
    found = []
    for i, node in enumerate(tree.names):
        opening = opening_of(node) if opening_of(node) in names else node
        volts = {s.name: s.solution.volts[node] for s in states if not s.solution.collapsed}
        peak = states[-1]
        if node in peak.others_low and "peak" in volts:
            volts["peak"] = min(volts["peak"], peak.others_low[node])
        window = windows.get(node)
        name = names.get(opening, node) + (leaf_words(node) if opening != node else "")
        found.append(
            NodeResult(
                node, name, opening if opening in names else None, distance[i], volts,
                window[0] if window else None, window[1] if window else None,
            )
        )  # fmt: skip
    return tuple(found)


def _run(
    each: _RunWithConductor,
    index: int,
    tree: circuit_tree.Network,
    states: Sequence[circuit_states.State],
    names: Mapping[str, str],
) -> RunResult:
    run = each.run
    at = tree.run.index(index)
    ohm = tree.ohm[at]
    amperes = {s.name: abs(s.solution.run_a[index]) for s in states if not s.solution.collapsed}
    far = opening_of(run.to_node) if each.transfer else run.to_node
    to_name = names.get(far, far) + (leaf_words(run.to_node) if each.transfer else "")
    return RunResult(
        each.run_id, names.get(run.from_node, run.from_node), to_name, run.from_node, run.to_node, run.length_m,
        run.gauge, run.stranding, run.conductors_in_parallel, each.part, ohm, amperes,
        {name: a * ohm for name, a in amperes.items()}, {name: a * a * ohm for name, a in amperes.items()},
        each.transfer,
    )  # fmt: skip


def _limiter(holding_a: float, rated_a: float | None, volts: float, margin: float) -> float | None:
    if rated_a is None:
        return None
    limit = class_2_limit(volts, "overcurrent-device")
    # Where the class sets no overcurrent device the supply's own rating bounds it.
    allowed = limit.overcurrent_a if limit is not None and limit.overcurrent_a is not None else rated_a
    return limiter_a(holding_a, min(rated_a, allowed), margin=max(margin, 1.0))
