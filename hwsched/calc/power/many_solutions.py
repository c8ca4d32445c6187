"""One tree of runs solved for many ways of drawing at a time: the search for the worst operations asks thousands.

Here belongs the arithmetic on arrays, a column a way of drawing; what one solution is stands in `circuit`, with its
proof.
"""

from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np
from numpy.typing import NDArray

from hwsched.calc.power.circuit import Draw, node_volts
from hwsched.calc.power.circuit_tree import Network

Floats = NDArray[np.float64]
_TOLERANCE_V: Final = 1e-10
_MOST_STEPS: Final = 60
"""What has not settled by then is solved by itself."""


@dataclass(frozen=True, slots=True)
class Draws:
    """What is drawn: constant current [A], constant power [W] and conductance [S]; arrays of one shape."""

    amps: Floats
    watts: Floats
    siemens: Floats


class ManySolutions:
    """A tree with something drawn at some of its nodes in many ways.

    Parameters
    ----------
    tree : Network
        Of the runs.
    nodes : array of int
        Where something is drawn or asked, each once.
    least : Draws
        What is drawn at each of these nodes in every way, at the least.
    source : (float, float)
        Voltage [V] and resistance inside [ohm].

    Examples
    --------
    >>> from hwsched.calc.power.circuit_tree import Run, network
    >>> tree = network([Run("supply", "a", 58, "1 mm2", "solid")], 20)
    >>> none = np.zeros(1)
    >>> many = ManySolutions(tree, np.array([1]), Draws(none, none, none), (12.0, 0.0))
    >>> amps = np.array([[1.0, 2.0]])
    >>> many.solve(Draws(amps, 0 * amps, 0 * amps)).round(6).tolist()
    [[10.0, 8.0]]
    """

    def __init__(self, tree: Network, nodes: NDArray[np.intp], least: Draws, source: tuple[float, float]) -> None:
        self.tree, self.nodes, self.source, self.least = tree, nodes, source, least
        shared = shared_ohms(tree, source[1])[np.ix_(nodes, nodes)]
        self.through: Floats = shared
        """Resistance by which a current at one node lowers another, the least conductances in their places [ohm]."""
        self.open_v: Floats = np.full(len(nodes), source[0])
        """With these conductances alone."""
        if least.siemens.any():
            self.through = _solved(np.eye(len(nodes)) + shared * least.siemens, shared)
            self.open_v = source[0] * (1.0 - self.through @ least.siemens)

    # Of constant currents neither of these two is asked.
    @cached_property
    def upper_v(self) -> Floats | None:
        """With the least drawn: no way leaves more. None where not even that has a solution."""
        upper, stuck = self._by_itself(self.least.amps, self.least.watts, self.least.siemens)
        return None if stuck else upper

    @cached_property
    def _around_least(self) -> tuple[Floats, Floats, Floats]:
        """Tangent of the least power, and with it matrix and voltages without current."""
        if self.upper_v is None or not self.least.watts.any():
            return np.zeros(len(self.nodes)), self.through, self.open_v
        # The least power is drawn in every way: its tangent, that lies under it, goes into the matrix.
        tangent = self.least.watts / np.square(self.upper_v)
        system = np.eye(len(self.nodes)) - self.through * tangent
        return tangent, _solved(system, self.through), _solved(system, self.open_v)

    def solve(self, drawn: Draws) -> Floats:
        """Voltages at the nodes for many ways, of several solutions the highest [V]; -inf where a way has none.

        Parameters
        ----------
        drawn : Draws
            Shape (nodes, ways), nowhere under the least.

        Notes
        -----
        From the highest voltages downward, V = V0 - Z · I(V) repeated, with the tangent of the least power in Z: for
        constant power every step stays above the highest solution. What does not settle is solved by Newton's steps as
        `circuit.solve` does it, with their proof that there is no solution.
        """
        found = np.full(drawn.amps.shape, -np.inf)
        if self.upper_v is None:
            return found
        added = drawn.siemens - self.least.siemens[:, None]
        if not drawn.watts.any() and not added.any():
            return self.open_v[:, None] - self.through @ drawn.amps
        least, matrix, open_v = self._around_least
        which = np.arange(drawn.amps.shape[1])
        volts = np.repeat(self.upper_v[:, None], len(which), axis=1)
        amps, watts, tangent = drawn.amps, drawn.watts, least[:, None]
        lost = []
        for _ in range(_MOST_STEPS):
            through = amps + watts / volts + (added + tangent) * volts
            lower = open_v[:, None] - matrix @ through
            step = np.abs(lower - volts).max(axis=0)
            sound = (lower > 0.0).all(axis=0)
            done = sound & (step <= _TOLERANCE_V)
            on = sound & ~done
            found[:, which[done]] = lower[:, done]
            lost.append(which[~sound])
            if on.all():
                volts = lower
                continue
            which, volts = which[on], lower[:, on]
            amps, watts, added = amps[:, on], watts[:, on], added[:, on]
            if not len(which):
                break
        for way in np.concatenate([*lost, which]):
            alone, stuck = self._by_itself(drawn.amps[:, way], drawn.watts[:, way], drawn.siemens[:, way])
            if not stuck:
                found[:, way] = alone
        return found

    def _by_itself(self, amps: Floats, watts: Floats, siemens: Floats) -> tuple[Floats, bool]:
        every: list[list[float]] = [[0.0] * len(self.tree.names) for _ in range(3)]
        for whole, own in zip(every, (amps, watts, siemens), strict=True):
            for node, value in zip(self.nodes.tolist(), own.tolist(), strict=True):
                whole[node] = value
        powered = [i for i, w in enumerate(every[1]) if w > 0.0]
        volts, stuck = node_volts(self.tree, Draw(every[0], every[1], every[2], powered), *self.source)
        return (np.array(volts)[self.nodes], False) if stuck is None else (amps, True)


def _solved(matrix: Floats, right: Floats) -> Floats:
    return np.linalg.solve(matrix, right).astype(np.float64, copy=False)


def shared_ohms(tree: Network, source_ohm: float) -> Floats:
    """Resistance that each two nodes share on their ways from the source [ohm], the source's own counted.

    Examples
    --------
    >>> from hwsched.calc.power.circuit_tree import Run, network
    >>> tree = network([Run("supply", "a", 58, "1 mm2", "solid"), Run("a", "b", 29, "1 mm2", "solid")], 20)
    >>> shared_ohms(tree, 0.5).round(6).tolist()
    [[0.5, 0.5, 0.5], [0.5, 2.5, 2.5], [0.5, 2.5, 3.5]]
    """
    found = np.empty((len(tree.names), len(tree.names)))
    found[0, 0] = source_ohm
    for i, to, ohm in tree.steps:
        found[i, :i] = found[to, :i]
        found[:i, i] = found[i, :i]
        found[i, i] = found[to, to] + ohm
    return found
