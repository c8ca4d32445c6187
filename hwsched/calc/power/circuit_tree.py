"""Runs of a low-voltage circuit as a tree from the supply.

Here belong the two-wire run, its resistance, and the order of the tree; what is wrong with the runs is named here. The
voltages stand in `circuit`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.calc.calculator import InputError, Reader, check_number
from hwsched.calc.power.conductor import COLDEST_C, HOTTEST_C, STRANDINGS, conductor, loop_ohm

SUPPLY: Final = "supply"
"""Name of the node at the supply's terminals."""
LONGEST_RUN_M: Final = 100_000.0
LARGEST_VALUE: Final = 1e9
"""Of a resistance, current or power; larger is a slip of the pen."""


@dataclass(frozen=True, slots=True)
class Run:
    """Two-wire run between two nodes."""

    from_node: str
    to_node: str
    length_m: float
    """One way [m]."""
    gauge: str
    stranding: str
    conductors_in_parallel: int = 1
    """Of each of the two wires."""
    extra_ohm: float = 0.0
    """Terminations, door loop, transfer hinge: both wires together [ohm]."""


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


def network(runs: Sequence[Run], temperature_c: float) -> Network:
    """Order runs as a tree fed from the supply.

    Parameters
    ----------
    runs : sequence of Run
        In any order; either node may be the nearer one. Several trees may begin at the supply.
    temperature_c : float
        Of the conductors [°C]: the highest they can reach for a voltage that must suffice.

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
    check_number(temperature_c, "temperature_c", at_least=COLDEST_C, at_most=HOTTEST_C)
    ohms = [_run_ohm(run, i, temperature_c) for i, run in enumerate(runs)]
    _refuse_loops(runs)
    touching: dict[str, list[int]] = {}
    for i, run in enumerate(runs):
        touching.setdefault(run.from_node, []).append(i)
        touching.setdefault(run.to_node, []).append(i)
    names, feeder, ohm, index, outward = [SUPPLY], [0], [0.0], [-1], [True]
    position = {SUPPLY: 0}
    at = 0
    while at < len(names):
        name = names[at]
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
    for i, run in enumerate(runs):
        if run.from_node not in position:
            raise InputError(f"runs[{i}].from", f"node {run.from_node!r} is not fed from the supply")
    steps = tuple(zip(range(1, len(names)), feeder[1:], ohm[1:], strict=True))
    return Network(tuple(names), position, tuple(feeder), tuple(ohm), tuple(index), tuple(outward), steps)


def read_runs(reader: Reader) -> list[Run]:
    """Read the runs of a JSON object."""
    return [
        Run(
            run.text("from"),
            run.text("to"),
            run.number("length_m", above=0, at_most=LONGEST_RUN_M),
            run.text("gauge"),
            run.choice("stranding", STRANDINGS),
            run.integer("conductors_in_parallel", 1, at_least=1, at_most=1000),
            run.number("extra_ohm", 0.0, at_least=0, at_most=LARGEST_VALUE),
        )
        for run in reader.objects("runs")
    ]


def _run_ohm(run: Run, i: int, temperature_c: float) -> float:
    at = f"runs[{i}]"
    # Quick for what is right; the readings of the fields are spelled out only for what is wrong.
    if not 0.0 < run.length_m <= LONGEST_RUN_M:
        check_number(run.length_m, f"{at}.length_m", above=0, at_most=LONGEST_RUN_M)
    if not 0.0 <= run.extra_ohm <= LARGEST_VALUE:
        check_number(run.extra_ohm, f"{at}.extra_ohm", at_least=0, at_most=LARGEST_VALUE)
    if run.conductors_in_parallel < 1:
        raise InputError(f"{at}.conductors_in_parallel", f"must be at least 1, got {run.conductors_in_parallel}")
    try:
        wire = conductor(run.gauge, run.stranding, temperature_c)
    except InputError as error:
        raise InputError(f"{at}.{error.field}", error.message) from None
    return loop_ohm(run.length_m, wire.resistance_ohm_per_km, run.conductors_in_parallel) + run.extra_ohm


def _refuse_loops(runs: Sequence[Run]) -> None:
    above: dict[str, str] = {}

    def top(name: str) -> str:
        while (higher := above.setdefault(name, name)) != name:
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
