"""What would mend a load that finds too low a voltage, with the numbers of each cure.

Here belong thicker conductors, more conductors, a run of its own, a nearer supply and a higher supply voltage for one
node of a circuit. The circuit's solution stands in `circuit`; which cure is taken is a person's choice.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import ceil, floor
from typing import Final

from hwsched.calc.calculator import InputError
from hwsched.calc.power.circuit import Draw, Load, Solution, draw, node_volts, solve
from hwsched.calc.power.circuit_tree import SUPPLY, Network, Run, network, rewired, with_ohms
from hwsched.calc.power.conductor import gauge_of
from hwsched.calc.tables import rows

NOMINAL_V: Final = (12.0, 24.0, 48.0)
"""Nominal voltages that low-voltage supplies are made for (common practice) [V]."""
KINDS: Final = (
    "thicker-run",
    "thicker-path",
    "parallel-run",
    "parallel-path",
    "own-run",
    "nearer-supply",
    "source-voltage",
    "nominal-voltage",
)
_MOST_PARALLEL: Final = 4
_HALVINGS: Final = 26
"""Of a length or voltage that is searched: to a part in fifty millions, far below what is printed."""
_TOLERANCE_V: Final = 1e-9


@dataclass(frozen=True, slots=True)
class Circuit:
    """A circuit as it stands, in the state in which a load is low."""

    runs: tuple[Run, ...]
    loads: tuple[Load, ...]
    source_v: float
    source_ohm: float
    temperature_c: float
    bought: frozenset[int] = frozenset()
    """Runs, by index, that are bought as a part, such as a door loop: their conductors are what they are."""
    others: tuple[tuple[Load, ...], ...] = ()
    """What else may be drawn at one time: under these operations too every load is to be mended."""

    def solution(self) -> Solution:
        """Solve the circuit."""
        return solve(network(self.runs, self.temperature_c), self.loads, self.source_v, self.source_ohm)


@dataclass(frozen=True, slots=True)
class Cure:
    """One way to mend a low voltage, or why it does not do."""

    kind: str
    """One of `KINDS`."""
    works: bool
    text: str
    volts: float | None
    """At the load with the cure, or with the most that was tried [V]; None where the circuit collapses."""
    still_low: tuple[str, ...]
    """Other nodes that stay under their minimum."""
    values: Mapping[str, float]
    """Numbers of the cure, their unit in the name."""
    circuit: Circuit | None
    """The circuit with the cure; None where it does not do."""
    does: str = ""
    """What is done, without the voltage that comes of it; empty where it does not do."""


def cures(
    circuit: Circuit, node: str, gauges: Sequence[str] = (), nominal_v: Sequence[float] = NOMINAL_V
) -> tuple[Cure, ...]:
    """Try each kind of cure for the loads at a node, the least change of each kind that does.

    Parameters
    ----------
    circuit : Circuit
        In the state in which the node is low: highest temperature, lowest source voltage, loads at their peak.
    node : str
        Where a load with a stated minimum is low.
    gauges : sequence of str
        Conductors that may be bought, from thin to thick; by default the offered ones of the same kind (AWG or mm²).
    nominal_v : sequence of float
        Supply voltages that may be had [V].

    Returns
    -------
    tuple of Cure
        Each kind once, those that do not do included; empty when the node is not low. The least change that mends every
        load of the circuit, else the least that mends the node.

    Raises
    ------
    InputError
        Where the node has no load with a minimum, or the circuit itself cannot be taken.

    Notes
    -----
    Each cure is the circuit solved again. A nearer supply is the same route with all its runs shortened alike. Device
    limits on a higher voltage come from the loads' maximum; where one is missing the text says that it must be known. A
    current load is taken to draw the same at a higher voltage.

    Examples
    --------
    >>> run, lock = Run("supply", "lock", 60, "20 AWG", "stranded"), Load("lock", "current", 0.5, 10.2, 13.2)
    >>> [c.kind for c in cures(Circuit((run,), (lock,), 11.5, 0.0, 50.0), "lock") if not c.works]
    ['nominal-voltage']
    """
    minimum_v = max((load.minimum_v or 0.0 for load in circuit.loads if load.node == node), default=0.0)
    if minimum_v <= 0.0:
        raise InputError("node", f"node {node!r} has no load with a stated minimum voltage")
    now = circuit.solution()
    # A collapsed circuit has no voltages to look at, and is in need of a cure in any case.
    if not now.collapsed and now.volts[node] >= minimum_v - _TOLERANCE_V:
        return ()
    shape = _Shape.of(circuit)
    every = _Input(circuit, node, minimum_v, shape.tree.path(node), True, [shape])
    own = replace(every, whole=False, known={})
    found = []
    for kind in _kinds(every, now, gauges, nominal_v):
        cure = kind(every)
        # What mends the node alone is looked for where nothing of its kind mends all.
        found.append(cure if cure.works else kind(own))
    return tuple(found)


def _kinds(
    given: "_Input", now: Solution, gauges: Sequence[str], nominal_v: Sequence[float]
) -> tuple[Callable[["_Input"], Cure], ...]:
    def nominal(each: "_Input") -> Cure:
        return _nominal_voltage(each, nominal_v)

    path = given.laid
    if not path:
        return _source_voltage, nominal
    # The run that costs most is the one where new wire buys most.
    worst = (max(path, key=lambda i: _drop_v(given, now, i)),)
    return (
        lambda each: _thicker(each, "thicker-run", worst, gauges),
        lambda each: _thicker(each, "thicker-path", path, gauges),
        lambda each: _parallel(each, "parallel-run", worst),
        lambda each: _parallel(each, "parallel-path", path),
        lambda each: _own_run(each, gauges),
        _nearer_supply,
        _source_voltage,
        nominal,
    )


_Tried = tuple[bool, float | None, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class _Shape:
    """What circuits have in common whose runs lie alike: their tree, what is drawn and what is needed."""

    circuit: Circuit
    tree: Network
    drawn: tuple[Draw, ...]
    """Under the operations that it stands under, then under the others."""
    needed: tuple[tuple[int, float], ...]
    """Nodes with the highest minimum of a load there [V]."""

    @classmethod
    def of(cls, circuit: Circuit) -> "_Shape":
        tree = network(circuit.runs, circuit.temperature_c)
        needed: dict[int, float] = {}
        for load in circuit.loads:
            if load.minimum_v is not None:
                at = tree.position[load.node]
                needed[at] = max(needed.get(at, 0.0), load.minimum_v)
        drawn = tuple(draw(tree, loads) for loads in (circuit.loads, *circuit.others))
        return cls(circuit, tree, drawn, tuple(needed.items()))

    def suits(self, circuit: Circuit) -> bool:
        """Tell whether a circuit is of this shape: only its conductors, lengths and source may be others."""
        mine = self.circuit
        return (
            circuit.loads is mine.loads
            and circuit.others is mine.others
            and len(circuit.runs) == len(mine.runs)
            and all(
                a is b or (a.from_node == b.from_node and a.to_node == b.to_node)
                for a, b in zip(circuit.runs, mine.runs, strict=True)
            )
        )

    def low(self, volts: Sequence[float]) -> list[int]:
        """Return the nodes where a load is low."""
        return [at for at, minimum_v in self.needed if volts[at] < minimum_v - _TOLERANCE_V]


@dataclass(frozen=True, slots=True)
class _Input:
    circuit: Circuit
    node: str
    minimum_v: float
    path: tuple[int, ...]
    whole: bool
    """Whether every load of the circuit is to be mended, and not only those at the node."""
    shapes: list[_Shape]
    """Of the circuits that were tried."""
    known: dict[tuple[int, str], tuple[Circuit, _Tried]] = field(default_factory=dict)
    """What was tried, by the circuit as an object: it is asked again when it is told."""

    @property
    def laid(self) -> tuple[int, ...]:
        """Runs of the path that are laid, and not bought as a part."""
        return tuple(i for i in self.path if i not in self.circuit.bought)

    def tried(self, circuit: Circuit, node: str = "") -> _Tried:
        """Tell whether the node is mended, its voltage, and the other nodes that are low."""
        key = id(circuit), node
        if key not in self.known:
            self.known[key] = circuit, self._tried(circuit, node or self.node)
        return self.known[key][1]

    def _tried(self, circuit: Circuit, node: str) -> _Tried:
        shape = next((each for each in self.shapes if each.suits(circuit)), None)
        if shape is None:
            shape = _Shape.of(circuit)
            self.shapes.append(shape)
        tree = rewired(shape.tree, shape.circuit.runs, circuit.runs, circuit.temperature_c)
        return self.solved(shape, tree, circuit.source_v, node)

    def solved(self, shape: _Shape, tree: Network, source_v: float, node: str) -> _Tried:
        """As `tried`, of a shape's tree with other resistances."""

        def volts_of(drawn: Draw) -> list[float] | None:
            volts, stuck = node_volts(tree, drawn, source_v, shape.circuit.source_ohm)
            return volts if stuck is None else None

        volts = volts_of(shape.drawn[0])
        if volts is None:
            return False, None, ()
        at = tree.position[node]
        works = volts[at] >= self.minimum_v - _TOLERANCE_V
        others = tuple(tree.names[each] for each in shape.low(volts) if each != at)
        if works and self.whole:
            works = not others and all(
                (under := volts_of(drawn)) is not None and not shape.low(under) for drawn in shape.drawn[1:]
            )
        return works, volts[at], others

    def cure(
        self, kind: str, circuit: Circuit, does: str, fails: str, values: Mapping[str, float], node: str = ""
    ) -> Cure:
        works, volts, low = self.tried(circuit, node)
        found = "no solution" if volts is None else f"{volts:.2f} V"
        text = f"{does}: {found} at {self.node!r}, {self.minimum_v:g} V needed"
        if not works:
            text = f"{fails}: {found} at {self.node!r} at best, {self.minimum_v:g} V needed"
        return Cure(kind, works, text, volts, low, values, circuit if works else None, does if works else "")


def _drop_v(given: _Input, now: Solution, i: int) -> float:
    """Voltage lost on a run; its resistance stands in for it where the circuit collapses."""
    run = given.circuit.runs[i]
    if now.collapsed:
        # Only compared with others of its path: the factor of copper and temperature is the same for all.
        return run.length_m / (gauge_of(run.gauge).area_mm2 * run.conductors_in_parallel)
    return abs(now.volts[run.from_node] - now.volts[run.to_node])


def _with_runs(circuit: Circuit, which: Sequence[int], change: Callable[[Run], Run]) -> Circuit:
    chosen = set(which)
    return replace(circuit, runs=tuple(change(r) if i in chosen else r for i, r in enumerate(circuit.runs)))


def _named(given: _Input, which: Sequence[int]) -> str:
    if len(which) == 1:
        run = given.circuit.runs[which[0]]
        return f"run {run.from_node!r} to {run.to_node!r}"
    return f"all {len(which)} runs from the supply to {given.node!r}"


def _thinner(given: _Input, which: Sequence[int], changed: Sequence[int]) -> str:
    """Name the runs that a thicker conductor changes."""
    if len(changed) in (1, len(which)):
        return _named(given, changed)
    return f"the {len(changed)} thinner ones of the {len(which)} runs from the supply to {given.node!r}"


def _thicker(given: _Input, kind: str, which: Sequence[int], gauges: Sequence[str]) -> Cure:
    areas = {i: gauge_of(given.circuit.runs[i].gauge).area_mm2 for i in which}
    thinnest = min(which, key=lambda i: areas[i])
    offered = list(gauges) or _offered(given.circuit.runs[thinnest].gauge)
    # A little more than equal: one size in two units, such as AWG and mm², differs by rounding and cures nothing.
    thicker = [g for g in offered if gauge_of(g).area_mm2 > areas[thinnest] * 1.0001]
    where = _named(given, which)
    if not thicker:
        text = f"no thicker conductor than {given.circuit.runs[thinnest].gauge} is offered for {where}"
        return Cure(kind, False, text, None, (), {}, None)
    tried: Circuit = given.circuit
    gauge = thicker[-1]
    for gauge in thicker:
        area_mm2 = gauge_of(gauge).area_mm2

        # Bound as defaults: a function made in a loop would see the last gauge of the loop, whichever was tried.
        def change(run: Run, gauge: str = gauge, area_mm2: float = area_mm2) -> Run:
            # A run of the path that is thicker already stays: laying a thinner one would be no cure.
            return replace(run, gauge=gauge) if gauge_of(run.gauge).area_mm2 < area_mm2 else run

        tried = _with_runs(given.circuit, which, change)
        if given.tried(tried)[0]:
            break
    # What is as thick already stays, and is not named: laid as the text says it would be thinner than it was.
    changed = [i for i in which if tried.runs[i].gauge != given.circuit.runs[i].gauge]
    length_m = sum(given.circuit.runs[i].length_m for i in changed)
    return given.cure(
        kind,
        tried,
        f"{gauge} for {_thinner(given, which, changed)}",
        f"even {gauge} for {where} does not do",
        {"area_mm2": gauge_of(gauge).area_mm2, "length_m": length_m},
    )


def _offered(gauge: str) -> list[str]:
    # The run stays in its own system of sizes: a mixed list would offer 16 AWG and 1.5 mm² side by side for one wire.
    by_awg = gauge_of(gauge).awg is not None
    return [r.text("gauge") for r in rows("offered_gauges") if (gauge_of(r.text("gauge")).awg is not None) == by_awg]


def _parallel(given: _Input, kind: str, which: Sequence[int]) -> Cure:
    tried: Circuit = given.circuit
    more = 1
    for more in range(1, _MOST_PARALLEL):
        added = more
        tried = _with_runs(
            given.circuit,
            which,
            lambda r, added=added: replace(r, conductors_in_parallel=r.conductors_in_parallel + added),  # type: ignore[misc]
        )
        if given.tried(tried)[0]:
            break
    where = _named(given, which)
    length_m = more * sum(given.circuit.runs[i].length_m for i in which)
    beside = "a second conductor" if more == 1 else f"{more} more conductors"
    return given.cure(
        kind,
        tried,
        f"{beside} of the same size beside each wire of {where}",
        f"even {beside} beside each wire of {where} do not do",
        {"added_in_parallel": float(more), "length_m": length_m},
    )


def _own_run(given: _Input, gauges: Sequence[str]) -> Cure:
    circuit, node = given.circuit, given.node
    last = circuit.runs[given.laid[-1]]
    end = _end_of(circuit, given.laid)
    own = f"{end} (own run)"
    length_m = sum(circuit.runs[i].length_m for i in given.laid)
    # Terminations of the way are counted on the new run too, since it goes the same way.
    extra_ohm = sum(circuit.runs[i].extra_ohm for i in given.laid)
    run = replace(last, from_node=SUPPLY, to_node=own, length_m=length_m, extra_ohm=extra_ohm)
    # The old run stays in place: it may feed others beyond, who then gain as well. What is bought as a part, such as
    # the door loop, is fed by the new one.
    loads, *others = (
        tuple(replace(load, node=own) if load.node == end else load for load in drawn)
        for drawn in (circuit.loads, *circuit.others)
    )
    kept = tuple(
        replace(each, from_node=own) if i in circuit.bought and each.from_node == end else each
        for i, each in enumerate(circuit.runs)
    )
    area_mm2 = gauge_of(last.gauge).area_mm2
    thicker = [g for g in gauges or _offered(last.gauge) if gauge_of(g).area_mm2 > area_mm2 * 1.0001]
    tried = circuit
    at = own if node == end else node
    for gauge in (last.gauge, *thicker):
        run = replace(run, gauge=gauge)
        tried = replace(circuit, runs=(*kept, run), loads=loads, others=tuple(others))
        if given.tried(tried, at)[0]:
            break
    what = f"a run of its own from the supply, {length_m:g} m of {run.gauge} {run.stranding}"
    values = {"length_m": length_m, "area_mm2": gauge_of(run.gauge).area_mm2}
    return given.cure("own-run", tried, what, f"even {what} does not do", values, at)


def _end_of(circuit: Circuit, laid: Sequence[int]) -> str:
    """Return where a path from the supply ends: either end of a run may be the nearer one."""
    at = SUPPLY
    for i in laid:
        run = circuit.runs[i]
        at = run.to_node if run.from_node == at else run.from_node
    return at


def _nearer_supply(given: _Input) -> Cure:
    def shortened(share: float) -> Circuit:
        return _with_runs(given.circuit, given.laid, lambda r: replace(r, length_m=r.length_m * share))

    present_m = sum(given.circuit.runs[i].length_m for i in given.laid)
    # Not zero: a run without length is refused.
    low, high = 1e-6, 1.0
    if given.tried(shortened(low))[0]:
        shape, least, source_v = given.shapes[0], low, given.circuit.source_v
        short = rewired(shape.tree, given.circuit.runs, shortened(least).runs, given.circuit.temperature_c)
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            # A resistance grows with the length along a straight line.
            share = (middle - least) / (1.0 - least)
            ohm = [a if a == b else a + share * (b - a) for a, b in zip(short.ohm, shape.tree.ohm, strict=True)]
            does = given.solved(shape, with_ohms(shape.tree, ohm), source_v, given.node)[0]
            low, high = (middle, high) if does else (low, middle)
    length_m = low * present_m
    if floor(10 * length_m) <= 0:
        text = "even a supply beside the load does not do"
        return Cure("nearer-supply", False, text, None, (), {"length_m": length_m, "present_m": present_m}, None)
    return given.cure(
        "nearer-supply",
        shortened(low),
        # Down, so that the distance as printed still does.
        f"a supply within {floor(10 * length_m) / 10:g} m along this route (now {present_m:g} m)",
        "even a supply beside the load does not do",
        {"length_m": length_m, "present_m": present_m},
    )


def _source_voltage(given: _Input) -> Cure:
    top_v = min((load.maximum_v for load in given.circuit.loads if load.maximum_v is not None), default=None)
    missing = any(load.maximum_v is None for load in given.circuit.loads)
    low_v = given.circuit.source_v
    # While one load's maximum is unknown the voltage is not bounded by the others': the text asks for it instead.
    high_v = top_v if top_v is not None and not missing else max(2.0 * low_v, low_v + given.minimum_v)
    if high_v <= low_v:
        text = f"the source cannot be set higher than its {low_v:g} V: a load's maximum is {high_v:g} V"
        return Cure("source-voltage", False, text, None, (), {"source_v": low_v}, None)
    if given.tried(replace(given.circuit, source_v=high_v))[0]:
        for _ in range(_HALVINGS):
            middle = (low_v + high_v) / 2
            does = given.solved(given.shapes[0], given.shapes[0].tree, middle, given.node)[0]
            low_v, high_v = (low_v, middle) if does else (middle, high_v)
    # Up, so that the voltage as printed still does.
    text = f"{ceil(100 * high_v) / 100:g} V at the source (now {given.circuit.source_v:g} V)"
    needs = "; needs the maximum voltage of every load" if missing else ""
    return given.cure(
        "source-voltage",
        replace(given.circuit, source_v=high_v),
        text + needs,
        f"even {high_v:g} V at the source does not do",
        {"source_v": high_v},
    )


def _nominal_voltage(given: _Input, nominal_v: Sequence[float]) -> Cure:
    loads = given.circuit.loads
    higher = [v for v in sorted(nominal_v) if v > given.circuit.source_v]
    if not higher:
        return Cure("nominal-voltage", False, "no higher supply voltage is offered", None, (), {}, None)
    for volts in higher:
        too_low = [load.node for load in loads if load.maximum_v is not None and load.maximum_v < volts]
        if too_low:
            text = f"{volts:g} V is over the maximum of the load at {too_low[0]!r}: it needs loads made for {volts:g} V"
            return Cure("nominal-voltage", False, text, None, (), {"source_v": volts}, None)
        tried = replace(given.circuit, source_v=volts)
        if given.tried(tried)[0]:
            break
    missing = [load.node for load in loads if load.maximum_v is None]
    needs = f"; needs the maximum voltage of the load at {missing[0]!r}" if missing else ""
    return given.cure(
        "nominal-voltage",
        tried,
        f"a {volts:g} V supply" + needs,
        f"even a {volts:g} V supply does not do",
        {"source_v": volts},
    )
