"""Runs of a low-voltage circuit as a tree from the supply.

Here belong the two-wire run, its resistance, and the order of the tree; what is wrong with the runs is named here. The
voltages stand in `circuit`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Annotated, Final

from hwsched.calc.calculator import InputError, Said, Within, check_arguments
from hwsched.calc.power.conductor import GaugeText, Stranding, Temperature, conductor, loop_ohm

SUPPLY: Final = "supply"
"""Name of the node at the supply's terminals."""
LONGEST_RUN_M: Final = 100_000.0
LARGEST_VALUE: Final = 1e9
"""Of a resistance, current or power; larger is a slip of the pen."""
Ohm = Annotated[float, Within(at_least=0, at_most=LARGEST_VALUE)]


@dataclass(frozen=True, slots=True)
class Run:
    """Two-wire run between two nodes."""

    from_node: Annotated[str, Said('Node that it starts from; "supply" is the supply\'s.', at="from")]
    to_node: Annotated[str, Said("Node that it leads to.", at="to")]
    length_m: Annotated[float, Within(above=0, at_most=LONGEST_RUN_M), Said("One way [m].")]
    gauge: GaugeText
    stranding: Stranding
    conductors_in_parallel: Annotated[
        int, Within(at_least=1, at_most=1000), Said("Conductors of each of the two wires.")
    ] = 1
    extra_ohm: Annotated[Ohm, Said("Terminations, door loop, transfer hinge: both wires together [ohm].")] = 0.0


Runs = Annotated[Sequence[Run], Said("Two-wire runs in any order, as a tree from the supply; none closes a loop.")]


@dataclass(frozen=True, slots=True)
class Network:
    """Runs as a tree fed at its first node; each other node is fed by one run from a node before it."""

    names: tuple[str, ...]
    """Nodes from the supply outward."""
    position: Mapping[str, int]
    """Place of each node in `names`."""
    feeder: tuple[int, ...]
    """Node that feeds each node; 0 for the supply's own."""
    ohm: tuple[float, ...]
    """Loop resistance of the run that feeds each node [ohm]; 0 for the supply's own."""
    run: tuple[int, ...]
    """Index of that run; -1 for the supply's own."""
    outward: tuple[bool, ...]
    """Whether that run was drawn away from the supply."""
    steps: tuple[tuple[int, int, float], ...]
    """Node, its feeder and the loop resistance between them [ohm], from the supply outward; for quick passes."""

    def path(self, node: str) -> tuple[int, ...]:
        """List the runs from the supply to a node, by index."""
        indices: list[int] = []
        at = self.position[node]
        while at:
            indices.append(self.run[at])
            at = self.feeder[at]
        return tuple(reversed(indices))


def network(runs: Runs, temperature_c: Temperature) -> Network:
    """Order runs as a tree fed from the supply.

    Parameters
    ----------
    runs : sequence of Run
        Either node may be the nearer one. Several trees may begin at the supply.
    temperature_c : float
        The highest that the conductors can reach for a voltage that must suffice.

    Returns
    -------
    Network
        Ready for any number of solutions.

    Raises
    ------
    InputError
        Names the run and its field: a length that is not above zero, an unknown gauge, a run that closes a loop, a node
        that nothing feeds.

    Examples
    --------
    >>> tree = network([Run("supply", "a", 30, "18 AWG", "solid"), Run("a", "b", 5, "18 AWG", "solid")], 20)
    >>> tree.names, tree.feeder
    (('supply', 'a', 'b'), (0, 0, 1))
    """
    check_arguments(network, locals())
    ohms = [_run_ohm(run, i, temperature_c) for i, run in enumerate(runs)]
    touching: dict[str, list[int]] = {}
    for i, run in enumerate(runs):
        touching.setdefault(run.from_node, []).append(i)
        touching.setdefault(run.to_node, []).append(i)
    names, feeder, ohm, index, outward = [SUPPLY], [0], [0.0], [-1], [True]
    position = {SUPPLY: 0}
    at = 0
    while at < len(names):
        name = names[at]
        # Either end may be the nearer one: people draw runs in both directions.
        for i in touching.get(name, ()):
            run = runs[i]
            away = run.from_node == name
            other = run.to_node if away else run.from_node
            if other not in position:
                position[other] = len(names)
                names.append(other)
                feeder.append(at)
                ohm.append(ohms[i])
                index.append(i)
                outward.append(away)
        at += 1
    # A tree of all runs has one node more than runs. Else a loop was cut open in silence at whichever run was met last,
    # or something hangs on nothing.
    if len(names) != len(runs) + 1:
        _refuse_loops(runs)
    for i, run in enumerate(runs):
        # Left out, it would pass as a circuit in order, with loads that nobody feeds.
        if run.from_node not in position:
            raise InputError(f"runs[{i}].from", f"node {run.from_node!r} is not fed from the supply")
    steps = tuple(zip(range(1, len(names)), feeder[1:], ohm[1:], strict=True))
    return Network(tuple(names), position, tuple(feeder), tuple(ohm), tuple(index), tuple(outward), steps)


def rewired(tree: Network, before: Runs, runs: Runs, temperature_c: Temperature) -> Network:
    """Return the tree of runs that lie just where others lay, of other lengths or conductors.

    Parameters
    ----------
    tree : Network
        Of the runs before.
    before, runs : sequence of Run
        With the same ends, in one order; those that are the same object have the same resistance.
    temperature_c : float
        As of the tree.
    """
    changed = {
        i: _run_ohm(run, i, temperature_c)
        for i, (run, was) in enumerate(zip(runs, before, strict=True))
        if run is not was
    }
    return (
        with_ohms(tree, [changed.get(i, was) for i, was in zip(tree.run, tree.ohm, strict=True)]) if changed else tree
    )


def with_ohms(tree: Network, ohm: Sequence[float]) -> Network:
    """Return a tree with other resistances of its runs, by node [ohm]."""
    steps = tuple((at, to, ohm[at]) for at, to, _ in tree.steps)
    return Network(tree.names, tree.position, tree.feeder, tuple(ohm), tree.run, tree.outward, steps)


def joined(trees: Sequence[Network]) -> Network:
    """Join trees at the supply's terminals, as the circuits of one supply are.

    Parameters
    ----------
    trees : sequence of Network
        Nodes may bear the same names in several of them.

    Returns
    -------
    Network
        The supply, then the nodes of each tree in their order; names and runs are counted on from tree to tree.

    Examples
    --------
    >>> one = network([Run("supply", "a", 58, "1 mm2", "solid")], 20)
    >>> joined([one, one]).names, joined([one, one]).feeder
    (('supply', '0:a', '1:a'), (0, 0, 0))
    """
    if len(trees) == 1:
        return trees[0]
    names, feeder, ohm, index, outward = [SUPPLY], [0], [0.0], [-1], [True]
    for number, tree in enumerate(trees):
        before, runs = len(names) - 1, sum(len(each.names) - 1 for each in trees[:number])
        names += [f"{number}:{name}" for name in tree.names[1:]]
        feeder += [at + before if at else 0 for at in tree.feeder[1:]]
        ohm += tree.ohm[1:]
        index += [at + runs for at in tree.run[1:]]
        outward += tree.outward[1:]
    position = {name: at for at, name in enumerate(names)}
    steps = tuple(zip(range(1, len(names)), feeder[1:], ohm[1:], strict=True))
    return Network(tuple(names), position, tuple(feeder), tuple(ohm), tuple(index), tuple(outward), steps)


def _run_ohm(run: Run, i: int, temperature_c: float) -> float:
    try:
        wire = conductor(run.gauge, run.stranding, temperature_c)
    except InputError as error:
        raise InputError(f"runs[{i}].{error.field}", error.message) from None
    return loop_ohm(run.length_m, wire.resistance_ohm_per_km, run.conductors_in_parallel) + run.extra_ohm


def _refuse_loops(runs: Sequence[Run]) -> None:
    above: dict[str, str] = {}

    def top(name: str) -> str:
        while (higher := above.setdefault(name, name)) != name:
            # Halves the way to the top as it goes, so that long daisy chains stay quick.
            above[name] = above.setdefault(higher, higher)
            name = above[name]
        return name

    for i, run in enumerate(runs):
        first, second = top(run.from_node), top(run.to_node)
        if first == second:
            raise InputError(
                f"runs[{i}].to",
                f"the run from {run.from_node!r} to {run.to_node!r} closes a loop; a circuit is a tree "
                "(wires side by side are conductors_in_parallel)",
            )
        above[first] = second
