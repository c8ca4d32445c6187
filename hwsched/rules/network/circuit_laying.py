"""A circuit put together for its solution: the tree of its runs with what leads onto the leaves, and what hangs where.

What is unknown stops nothing: its loads hang at the last place whose way from the supply is known, bounded by the least
and the most that they can draw. The solution stands in `circuit_solving`.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from hwsched.calc.calculator import InputError
from hwsched.calc.power import circuit_tree
from hwsched.rules.network.circuit_source import CircuitSource, RunWithConductor, SolvingLimits
from hwsched.rules.network.connected_opening import ConnectedOpening
from hwsched.rules.network.devices import on_leaf, unsuited
from hwsched.rules.network.leaf_nodes import leaf_node, leaf_words, opening_of, strike_node
from hwsched.rules.network.leaf_runs import LeafRun, leaf_runs
from hwsched.values.power import Circuit, Device, Problem, Run

SUPPLY: Final = circuit_tree.SUPPLY
_NO_RUN_C: Final = 20.0
"""Temperature of a tree without runs: any will do [degC]."""

Devices = Mapping[str, tuple[tuple[Device, ...], tuple[Problem, ...]]]
"""By opening: what hangs there, and what is unknown of it."""


@dataclass(frozen=True, slots=True)
class Unsure:
    """A load of which the place or the current is not known, at the last known place before it."""

    opening_id: str
    node: str
    device: Device | None = None
    """None: not even what it is; it draws from nothing up to ``most_a``."""
    most_a: float = 0.0


@dataclass(frozen=True, slots=True)
class Unmeasured:
    """A leaf to which power comes over a transfer that nobody has measured."""

    opening_id: str
    more_ohm: float
    """What the transfer can add to its run, at the most [ohm]; at the least it adds nothing."""


@dataclass(frozen=True, slots=True)
class LaidCircuit:
    """A circuit ready to be solved."""

    circuit: Circuit
    warm_c: float
    """Of the conductors [degC]."""
    at_once: int
    names: Mapping[str, str]
    """Marks of openings by node."""
    openings: tuple[str, ...]
    runs: tuple[RunWithConductor, ...]
    """Whose way from the supply is known, with what leads onto the leaves."""
    tree: circuit_tree.Network
    """Of these."""
    devices: tuple[Device, ...]
    """All that are known; first those that hang at a known place."""
    at: tuple[str, ...]
    """Nodes of these first ones."""
    unsure: tuple[Unsure, ...]
    problems: tuple[Problem, ...]
    wire: str
    """Conductors in words."""
    hidden: frozenset[str]
    """Openings of which some load is not known, or not where."""
    unmeasured: Mapping[str, Unmeasured] = field(default_factory=dict)
    """By node on a leaf, or at a strike that a unit there switches."""
    lying: tuple[RunWithConductor, ...] = ()
    """Runs whose own length and wire are known, and whose way from the supply is not."""

    @property
    def sound(self) -> bool:
        """Whether its runs are a tree that can be reckoned with."""
        return not any(problem.kind == "unsound" for problem in self.problems)

    def name_of(self, node: str) -> str:
        """Return the name of a node, for people."""
        opening = opening_of(node)
        return self.names.get(node, node) if opening == node else self.names.get(opening, node) + leaf_words(node)


def laid_circuit(
    circuit: Circuit,
    source: CircuitSource,
    runs: Sequence[Run],
    devices: Devices,
    connected: Mapping[str, ConnectedOpening],
    limits: SolvingLimits,
    most_a: Mapping[str, float],
) -> LaidCircuit:
    """Put a circuit together.

    Parameters
    ----------
    circuit : Circuit
        As laid.
    source : CircuitSource
        Its supply.
    runs : sequence of Run
        In any order.
    devices : mapping
        By opening: what hangs there, and what is unknown of it.
    connected : mapping
        Openings that it feeds.
    limits : SolvingLimits
        Where the circuit does not say.
    most_a : mapping
        By opening with something unknown: the most that this can draw [A].
    """
    warm = limits.temperature_c if circuit.temperature_c is None else circuit.temperature_c
    at_once = limits.at_once if circuit.at_once is None else circuit.at_once
    names = {opening: each.given.opening.mark for opening, each in connected.items()}
    openings = tuple(
        dict.fromkeys(run.opening_id for run in runs if run.opening_id is not None and run.opening_id in connected)
    )
    problems: list[Problem] = []
    known: list[RunWithConductor] = []
    for run in runs:
        found = source.run(circuit, run, names)
        if isinstance(found, RunWithConductor):
            known.append(found)
        else:
            problems.append(found)
    wire = ", ".join(dict.fromkeys(f"{each.run.gauge} {each.run.stranding}" for each in known))
    whole = len(known) == len(runs)
    # Where all are known each node is the last one of its own way; whether they are a tree is seen below.
    before = (
        {node: node for each in known for node in (each.run.from_node, each.run.to_node)}
        if whole
        else _known_before(known, runs)
    )
    laying = _Laying(source, warm, before)
    for opening in openings:
        own, missing = devices[opening]
        problems += missing
        laying.put(connected[opening], opening, own, problems)
        if missing:
            laying.unsure.append(Unsure(opening, before.get(opening, SUPPLY), None, most_a.get(opening, 0.0)))
    problems += _of_source(source, (*laying.devices, *(each.device for each in laying.unsure if each.device)))
    present = list(known) if whole else [
        each for each in known if before.get(each.run.to_node) == each.run.to_node
        and before.get(each.run.from_node) == each.run.from_node
    ]  # fmt: skip
    present += laying.onto
    unsure = list(laying.unsure)
    placed, at = list(laying.devices), list(laying.at)
    try:
        # Where something of a run is unknown, it is still seen that all of them are a tree.
        if not whole:
            circuit_tree.network([_shape(run) for run in runs], warm)
        tree = circuit_tree.network([each.run for each in (present if not whole else [*known, *laying.onto])], warm)
    except InputError as error:
        tried = [_shape(run) for run in runs] if not whole else [each.run for each in [*known, *laying.onto]]
        problems.append(_unsound(error, tried, names))
        present, tree = [], circuit_tree.network([], _NO_RUN_C)
        unsure += [Unsure(device.opening_id, SUPPLY, device) for device in placed]
        unsure = [replace(each, node=SUPPLY) for each in unsure]
        placed, at = [], []
    behind = tuple(each.device for each in unsure if each.device is not None)
    solved = {id(each) for each in present}
    return LaidCircuit(
        circuit, warm, at_once, names, openings, tuple(present), tree, (*placed, *behind), tuple(at), tuple(unsure),
        tuple(problems), wire, frozenset(each.opening_id for each in unsure), laying.unmeasured,
        tuple(each for each in known if id(each) not in solved),
    )  # fmt: skip


@dataclass(slots=True)
class _Laying:
    """Devices as they are hung, opening by opening."""

    source: CircuitSource
    warm_c: float
    before: Mapping[str, str]
    devices: list[Device] = field(default_factory=list)
    at: list[str] = field(default_factory=list)
    onto: list[RunWithConductor] = field(default_factory=list)
    unsure: list[Unsure] = field(default_factory=list)
    unmeasured: dict[str, Unmeasured] = field(default_factory=dict)

    def put(self, connected: ConnectedOpening, opening: str, own: Sequence[Device], problems: list[Problem]) -> None:
        """Hang what an opening has: in its frame, on its leaves, at what a unit there switches."""
        told = len(problems)
        # A door loop or transfer hinge is wire too, often thin, and every ampere of the leaf passes it.
        onto = leaf_runs(connected, self.warm_c, problems)
        lost = len(problems) > told
        here = self.before.get(opening, SUPPLY)
        units = {device.leaf for device in own if device.role == "unit"}
        switching = set()
        for device in own:
            leaf = on_leaf(device, self.source.catalogue.get(device.part))
            beyond = leaf or device.leaf in units
            if here != opening or (lost and beyond and device.leaf not in onto):
                self.unsure.append(Unsure(opening, here, device))
                continue
            self.devices.append(device)
            if device.leaf not in onto:
                self.at.append(opening)
            elif leaf:
                self.at.append(leaf_node(opening, device.leaf))
            elif device.leaf in units and onto[device.leaf].switch is not None:
                # A strike sits in the frame; what it draws passes the contact of the unit on the leaf, there and back.
                switching.add(device.leaf)
                self.at.append(strike_node(opening, device.leaf))
            else:
                self.at.append(opening)
        if here == opening:
            self.onto += _onto_leaves(onto, switching)
            for run in onto.values():
                if run.more_ohm:
                    ends = [run.run.to_node, *([run.switch.to_node] if run.switch is not None else [])]
                    self.unmeasured |= dict.fromkeys(ends, Unmeasured(opening, run.more_ohm))


def _known_before(known: Sequence[RunWithConductor], runs: Sequence[Run]) -> dict[str, str]:
    """Return for each node the last one on its way from the supply whose way is known; itself where its own is."""
    sure: dict[str, list[str]] = {}
    for each in known:
        sure.setdefault(each.run.from_node, []).append(each.run.to_node)
        sure.setdefault(each.run.to_node, []).append(each.run.from_node)
    found = {SUPPLY: SUPPLY}
    at = [SUPPLY]
    for node in at:
        for other in sure.get(node, ()):
            if other not in found:
                found[other] = other
                at.append(other)
    touching: dict[str, list[str]] = {}
    for run in runs:
        touching.setdefault(run.from_node, []).append(run.to_node)
        touching.setdefault(run.to_node, []).append(run.from_node)
    for node in at:
        for other in touching.get(node, ()):
            if other not in found:
                found[other] = found[node]
                at.append(other)
    return found


def _of_source(source: CircuitSource, devices: Sequence[Device]) -> list[Problem]:
    """Say what of its supply keeps a circuit from being worked out, and which devices it does not suit."""
    problems = []
    part = source.part
    if source.current is None and part is not None:
        text = f"whether {part.number} gives DC or AC is unknown: the catalogue does not say"
        problems.append(Problem("unknown", text, (f"part {part.number}.current",), about=part.number))
    if source.source is not None and source.current is not None:
        # The same is said of all that are alike.
        told: dict[tuple[str, float, float, str], str | None] = {}
        for device in devices:
            key = device.part, device.minimum_v, device.maximum_v, device.current
            if key not in told:
                told[key] = unsuited(device, source.catalogue.get(device.part), source.source.normal_v, source.current)
            why = told[key]
            if why is not None:
                text = f"{device.part} at {device.mark} cannot be fed by {source.supply.name}: {why}"
                problems.append(Problem("mismatch", text, (), device.opening_id, device.part))
    return problems


def _onto_leaves(onto: Mapping[str, LeafRun], switching: Collection[str]) -> list[RunWithConductor]:
    found = []
    for leaf, run in onto.items():
        found.append(RunWithConductor(run.run, "", run.part, True))
        if run.switch is not None and leaf in switching:
            # Conductors of the same transfer: bought with it, so it bears no number of its own.
            found.append(RunWithConductor(run.switch, "", "", True))
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
