"""Voltages and currents of a low-voltage direct-current circuit, by node voltages.

Here belongs the one solution of a tree of runs (`circuit_tree`) for one voltage of the source. The four states in which
a circuit is proved stand in `circuit_states`, what would mend a low voltage in `circuit_cures`, limits of supplies in
`power_limits`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from operator import sub
from typing import Annotated, Final

from hwsched.calc.calculator import (
    INLINE,
    Calculator,
    InputError,
    Said,
    Within,
    check,
    check_arguments,
    check_number,
)
from hwsched.calc.limits import NotNegative
from hwsched.calc.power.circuit_tree import LARGEST_VALUE, Network, Ohm, Runs, network
from hwsched.calc.power.conductor import Temperature

LOAD_KINDS: Final = ("current", "power", "resistance")
_QUICK: Final = ("current", "power")
HIGHEST_SOURCE_V: Final = 1000.0
SourceVolts = Annotated[
    float, Within(above=0, at_most=HIGHEST_SOURCE_V), Said("Voltage of the source without load, direct current [V].")
]
SourceOhm = Annotated[Ohm, Said("Resistance inside the source [ohm].")]
_TOLERANCE_V: Final = 1e-9
_MOST_STEPS: Final = 200


@dataclass(frozen=True, slots=True)
class Load:
    """What one device draws at a node, and the voltage it needs there."""

    node: Annotated[str, Said("Where it is connected.")]
    kind: Annotated[str, Said("What stays the same whatever the voltage.", choices=LOAD_KINDS)]
    value: Annotated[NotNegative, Said("Current [A], power [W] or resistance [ohm].")]
    minimum_v: Annotated[NotNegative | None, Said("Least voltage that it needs there [V].")] = None
    maximum_v: Annotated[NotNegative | None, Said("Greatest that it stands [V].")] = None


@dataclass(frozen=True, slots=True)
class Solution:
    """Circuit at one voltage of its source."""

    volts: Annotated[Mapping[str, float], Said("Voltage between the two wires at each node [V]; empty when collapsed.")]
    run_a: Annotated[
        tuple[float, ...], Said("Current in each run, from its first node to its second [A]; empty when collapsed.")
    ]
    source_a: Annotated[float | None, Said("Current out of the source [A]; null when collapsed.")]
    loss_w: Annotated[float | None, Said("Turned to heat in the runs [W]; null when collapsed.")]
    collapsed: Annotated[
        bool, Said("The constant-power loads have no solution.", no="The constant-power loads have a solution.")
    ]
    reason: Annotated[str | None, Said("Why there is none, or what in the answer cannot be real.")]


@dataclass(frozen=True, slots=True)
class Draw:
    """What is drawn at each node, in the order of the network's names."""

    amps: list[float]
    watts: list[float]
    siemens: list[float]
    powered: list[int]
    """Nodes with power loads."""


def draw(tree: Network, loads: Sequence[Load]) -> Draw:
    """Sum loads by node; raises InputError naming the load and its field."""
    count = len(tree.names)
    amps, watts, siemens = [0.0] * count, [0.0] * count, [0.0] * count
    for i, load in enumerate(loads):
        at = tree.position.get(load.node)
        if at is None:
            raise InputError(f"loads[{i}].node", f"node {load.node!r} is not fed from the supply")
        value = load.value
        # Quick for what is right, NaN included among what is not; `_check_load` says what is wrong.
        if not 0.0 <= value <= LARGEST_VALUE or load.kind not in _QUICK:
            _check_load(load, f"loads[{i}]")
        if load.kind == "current":
            amps[at] += value
        elif load.kind == "power":
            watts[at] += value
        else:
            siemens[at] += 1.0 / value
    return Draw(amps, watts, siemens, [i for i, w in enumerate(watts) if w > 0.0])


def solve(tree: Network, loads: Sequence[Load], source_v: SourceVolts, source_ohm: SourceOhm = 0.0) -> Solution:
    """Voltage at every node and current in every run.

    Parameters
    ----------
    tree : Network
        Of the circuit's runs at their temperature.
    loads : sequence of Load
        Any number at a node, the supply's own included.

    Returns
    -------
    Solution
        Of several solutions the one of highest voltage. When the constant-power loads have none, it says so.

    Raises
    ------
    InputError
        Names the load and its field.

    Notes
    -----
    Node voltages: at every node the currents of its runs balance I + G·v + P/v of its loads. Without power loads one
    pass along the tree solves that exactly. With them, Newton's steps from the source's own voltage at every node, that
    lies above every solution: each step stays above the highest solution and below the step before, so they settle
    on it whenever there is one; and when there is none, a step loses the positive pivots that it must have above a
    solution, which proves it. Source: circuit theory (Kirchhoff's laws; convex, inverse-monotone equations), checked
    against ngspice in the tests.

    Examples
    --------
    >>> from hwsched.calc.power.circuit_tree import Run
    >>> tree = network([Run("supply", "lock", 45.72, "18 AWG", "stranded")], 75)
    >>> found = solve(tree, [Load("lock", "current", 0.5)], 12.0)
    >>> round(found.volts["lock"], 3)
    10.812
    >>> solve(tree, [Load("lock", "power", 24.0)], 12.0).collapsed
    True
    """
    return solve_draw(tree, draw(tree, loads), source_v, source_ohm)


def solve_draw(
    tree: Network, drawn: Draw, source_v: SourceVolts, source_ohm: SourceOhm = 0.0, near: Solution | None = None
) -> Solution:
    """`solve` for loads that are already summed by node.

    Parameters
    ----------
    tree, drawn : Network, Draw
        The circuit and what is drawn at its nodes.
    source_v, source_ohm : float
        As in `solve`.
    near : Solution
        Of the same tree in a state not far off; only saves time.
    """
    check_arguments(solve_draw, locals())
    near_v = list(near.volts.values()) if near is not None else None
    volts, stuck = node_volts(tree, drawn, source_v, source_ohm, near_v)
    if stuck is not None:
        return no_solution(tree.names[stuck], sum(drawn.watts), source_v)
    return solution_of(tree, volts, drawn)


def node_volts(
    tree: Network, drawn: Draw, source_v: float, source_ohm: float, near_v: Sequence[float] | None = None
) -> tuple[list[float], int | None]:
    """Voltage at each node, or the node that proves that there is none; as `solve_draw`, of checked values.

    Parameters
    ----------
    tree, drawn, source_v, source_ohm
        As in `solve_draw`.
    near_v : sequence of float
        Of the same tree in a state not far off; only saves time.
    """
    if not drawn.powered:
        return _pass(tree.steps, source_v, source_ohm, list(drawn.amps), list(drawn.siemens))
    return _settle(tree, drawn, source_v, source_ohm, near_v)


def outside_limits(solution: Solution, loads: Sequence[Load]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Nodes whose voltage is under the minimum, and over the maximum, of a load there.

    Examples
    --------
    >>> from hwsched.calc.power.circuit_tree import Run
    >>> tree = network([Run("supply", "lock", 45.72, "18 AWG", "stranded")], 75)
    >>> loads = [Load("lock", "current", 0.5, minimum_v=10.9, maximum_v=13.2)]
    >>> outside_limits(solve(tree, loads, 12.0), loads)
    (('lock',), ())
    """
    low: dict[str, None] = {}
    high: dict[str, None] = {}
    for load in loads:
        volts = solution.volts.get(load.node)
        if volts is None:
            continue
        if load.minimum_v is not None and volts < load.minimum_v - _TOLERANCE_V:
            low[load.node] = None
        if load.maximum_v is not None and volts > load.maximum_v + _TOLERANCE_V:
            high[load.node] = None
    return tuple(low), tuple(high)


def _check_load(load: Load, at: str) -> None:
    check(load, at)
    resistance = load.kind == "resistance"
    check_number(load.value, f"{at}.value", above=0 if resistance else None, at_most=LARGEST_VALUE)
    if resistance and load.value < 1.0 / LARGEST_VALUE:
        raise InputError(f"{at}.value", "is a short circuit")


def _settle(
    tree: Network, drawn: Draw, source_v: float, source_ohm: float, near_v: Sequence[float] | None
) -> tuple[list[float], int | None]:
    """Newton's steps to the highest solution; and the node that proves that there is none, if so.

    From any voltages at which all pivots are positive, the first step lands on or above the highest solution, because
    the equations are convex. The source's own voltage at every node lies above it from the start.
    """
    if near_v:
        lower_v = near_v[0] - source_v
        guess = [v - lower_v for v in near_v]
        if all(guess[i] > 0.0 for i in drawn.powered):
            volts, stuck = _descend(tree, drawn, source_v, source_ohm, guess)
            if stuck is None:
                return volts, None
    return _descend(tree, drawn, source_v, source_ohm, [source_v] * len(tree.names))


def _descend(
    tree: Network, drawn: Draw, source_v: float, source_ohm: float, volts: list[float]
) -> tuple[list[float], int | None]:
    step = last_step = 0.0
    for _ in range(_MOST_STEPS):
        before = volts
        per_volt = [w / v if w else 0.0 for w, v in zip(drawn.watts, before, strict=True)]
        volts, stuck = _pass(
            tree.steps,
            source_v,
            source_ohm,
            [a + 2.0 * p for a, p in zip(drawn.amps, per_volt, strict=True)],
            [g - p / v if p else g for g, p, v in zip(drawn.siemens, per_volt, before, strict=True)],
        )
        if stuck is None:
            stuck = next((i for i in drawn.powered if volts[i] <= 0.0), None)
        if stuck is not None:
            return [], stuck
        last_step, step = step, max(map(abs, map(sub, before, volts)))
        # Once the steps shrink quadratically, the size of the next one is known without taking it.
        if step <= _TOLERANCE_V or (step < 0.1 * last_step and (step / last_step) ** 2 * step < 0.1 * _TOLERANCE_V):
            return volts, None
    return [], drawn.powered[0]


def _pass(
    steps: tuple[tuple[int, int, float], ...],
    source_v: float,
    source_ohm: float,
    amps: list[float],
    siemens: list[float],
) -> tuple[list[float], int | None]:
    """Voltages when node i draws ``amps[i] + siemens[i] * v``; and the node whose pivot is not positive, if any.

    Eliminates from the ends toward the supply and substitutes back; uses up the two lists.
    """
    share = [1.0] * len(amps)
    for i, to, ohm in reversed(steps):
        pivot = 1.0 + ohm * siemens[i]
        if pivot <= 0.0:
            return [], i
        share[i] = part = 1.0 / pivot
        amps[to] += amps[i] * part
        siemens[to] += siemens[i] * part
    pivot = 1.0 + source_ohm * siemens[0]
    if pivot <= 0.0:
        return [], 0
    volts = [(source_v - source_ohm * amps[0]) / pivot]
    add = volts.append
    for i, to, ohm in steps:
        add((volts[to] - ohm * amps[i]) * share[i])
    return volts, None


def solution_of(tree: Network, volts: Sequence[float], drawn: Draw) -> Solution:
    """Currents of a tree whose voltages are known, and what heat they turn to."""
    through = [a + g * v for a, g, v in zip(drawn.amps, drawn.siemens, volts, strict=True)]
    for i in drawn.powered:
        through[i] += drawn.watts[i] / volts[i]
    run_a = [0.0] * len(tree.steps)
    loss_w = 0.0
    for i, to, ohm in reversed(tree.steps):
        current = through[i]
        through[to] += current
        loss_w += current * current * ohm
        run_a[tree.run[i]] = current
    if not all(tree.outward):
        for i, away in enumerate(tree.outward):
            if not away:
                run_a[tree.run[i]] = -run_a[tree.run[i]]
    reason = None
    if min(volts) < 0.0:
        node = tree.names[volts.index(min(volts))]
        reason = (
            f"the constant currents cannot be carried: the arithmetic gives {node!r} a voltage below zero, from which "
            "no device would draw"
        )
    return Solution(dict(zip(tree.names, volts, strict=True)), tuple(run_a), through[0], loss_w, False, reason)


def no_solution(node: str, watts: float, source_v: float) -> Solution:
    """Say that no voltages satisfy the constant-power loads; the node is where that was found."""
    reason = (
        f"no voltage satisfies the constant-power loads ({watts:g} W in all from {source_v:g} V): their current rises "
        f"as the voltage falls, and the runs and the source cannot carry it; found at node {node!r}"
    )
    return Solution({}, (), None, None, True, reason)


@dataclass(frozen=True, slots=True)
class _Answer:
    solution: Annotated[Solution, INLINE]
    low: Annotated[tuple[str, ...], Said("Nodes under the minimum of a load there.")]
    high: Annotated[tuple[str, ...], Said("Nodes over the maximum of a load there.")]


def _circuit(
    *,
    source_v: SourceVolts,
    source_ohm: SourceOhm = 0.0,
    temperature_c: Temperature,
    runs: Runs,
    loads: Annotated[Sequence[Load], Said("What is drawn at the nodes.")],
) -> _Answer:
    solution = solve(network(runs, temperature_c), loads, source_v, source_ohm)
    return _Answer(solution, *outside_limits(solution, loads))


CIRCUIT = Calculator(
    name="circuit",
    title="Voltages along a supply circuit",
    basis="node voltages (Kirchhoff's laws); conductors by IEC 60028 as in the calculator conductor",
    work=_circuit,
    example={
        "source_v": 12,
        "source_ohm": 0.1,
        "temperature_c": 50,
        "runs": [
            {"from": "supply", "to": "junction", "length_m": 30, "gauge": "16 AWG", "stranding": "stranded"},
            {"from": "junction", "to": "101", "length_m": 6, "gauge": "18 AWG", "stranding": "stranded"},
            {"from": "junction", "to": "102", "length_m": 14, "gauge": "18 AWG", "stranding": "stranded"},
        ],
        "loads": [
            {"node": "101", "kind": "current", "value": 0.35, "minimum_v": 10.2},
            {"node": "102", "kind": "power", "value": 5, "minimum_v": 10.2},
        ],
    },
)
