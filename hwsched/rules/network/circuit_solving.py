"""The circuits of one supply solved as one network, in every state and from both sides of what is unknown.

The one engine for circuits that are laid and for an opening that has its supply to itself. What would cure a low
voltage is tried by `hwsched.wiring.circuits`; what is wrong is said by the rules.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import fsum, inf, isfinite
from typing import Final

from hwsched.attributes.of_parts import OUTPUT_A, OUTPUT_V
from hwsched.calc.calculator import InputError
from hwsched.calc.power import circuit_states, circuit_tree
from hwsched.calc.power.circuit_states import FedCircuit, State
from hwsched.calc.power.power_limits import class_2_limit
from hwsched.calc.power.supply_practice import limiter_a, worst_inrush_a
from hwsched.rules.network.circuit_laying import LaidCircuit, Unsure
from hwsched.rules.network.circuit_source import CircuitSource, RunWithConductor, SolvingLimits
from hwsched.rules.network.devices import amps
from hwsched.rules.network.leaf_nodes import leaf_words, opening_of
from hwsched.telling.natural import natural
from hwsched.values.power import Circuit, CircuitResult, Device, NodeResult, Problem, Proof, RunResult

_TOUCH_V: Final = 1e-9
_OF_TREE: Final = ("unsound", "unknown")
"""Kinds of problem for which something is not worked out."""


@dataclass(frozen=True, slots=True)
class Solved:
    """A circuit as it was solved."""

    runs: Sequence[circuit_tree.Run]
    tree: circuit_tree.Network
    devices: Sequence[circuit_states.Device]
    states: Sequence[State]
    source: circuit_states.Source
    at_once: int
    warm_c: float
    """Of the conductors [degC]."""
    names: Mapping[str, str]
    """Marks of the openings by node."""
    bought: frozenset[int] = frozenset()
    """Runs, by index, that are bought as a part: what leads onto the leaves."""
    beside: Sequence[FedCircuit] = ()
    """The other circuits of the supply."""


def solved_supply(
    laid: Sequence[LaidCircuit], circuit_source: CircuitSource, limits: SolvingLimits, *, bounded: bool = True
) -> list[tuple[CircuitResult, Solved | None]]:
    """Solve the circuits of a supply in their states.

    Parameters
    ----------
    laid : sequence of LaidCircuit
        All that hang on it.
    circuit_source : CircuitSource
        The supply.
    limits : SolvingLimits
        Where a circuit does not say.
    bounded : bool
        Whether a circuit with something unknown is solved for what is known of it; else it is left alone.

    Returns
    -------
    list of (CircuitResult, Solved or None)
        What was found, and what it was found from; None where it was not solved.
    """
    source = circuit_source.source
    bare = [_bare(each, circuit_source) for each in laid]
    stuck = any(problem.kind in _OF_TREE for each in laid for problem in each.problems)
    if source is not None and circuit_source.current != "dc":
        # What else is wrong with a circuit says it already.
        bare = [each if each.problems else replace(each, problems=_of_ac(each, circuit_source)) for each in bare]
    if source is None or circuit_source.current != "dc" or (stuck and not bounded):
        return [(_unproved(each, at, circuit_source), None) for each, at in zip(bare, laid, strict=True)]
    sure = [_known_devices(each) for each in laid]
    try:
        at_supply = _fed(laid, _on_one_side(laid, sure, source, of_most=False))
        low_side = high_side = circuit_states.supply_states(at_supply, source)
        if any(each.unsure or each.unmeasured for each in laid):
            most = _fed(laid, _on_one_side(laid, sure, source, of_most=True))
            high_side = circuit_states.supply_states(most, source)
    except InputError as error:
        problem = _untaken(error, laid[0].circuit, [d for each in laid for d in each.devices])
        bare = [replace(each, problems=(*each.problems, problem)) for each in bare]
        return [(_unproved(each, at, circuit_source), None) for each, at in zip(bare, laid, strict=True)]
    found: list[tuple[CircuitResult, Solved | None]] = []
    for i, each in enumerate(laid):
        solving = _Solving(laid, i, circuit_source, source, low_side[i], high_side[i], limits)
        facts = Solved(
            [run.run for run in each.runs], each.tree, sure[i], low_side[i], source, each.at_once, each.warm_c,
            each.names, frozenset(n for n, run in enumerate(each.runs) if run.transfer),
            [other for n, other in enumerate(at_supply) if n != i],
        )  # fmt: skip
        found.append((solving.result(bare[i]), facts))
    return found


def _bare(laid: LaidCircuit, source: CircuitSource) -> CircuitResult:
    return CircuitResult(
        laid.circuit, source.supply, devices=laid.devices, problems=laid.problems, openings=laid.openings,
        marks=tuple(laid.names[opening] for opening in laid.openings), wire=laid.wire,
    )  # fmt: skip


def _lying(each: RunWithConductor, names: Mapping[str, str]) -> RunResult:
    run = each.run
    begin, end = (names.get(node, node) for node in (run.from_node, run.to_node))
    return RunResult(
        each.run_id, begin, end, run.from_node, run.to_node, run.length_m, run.gauge, run.stranding,
        run.conductors_in_parallel, each.part, 0.0, {}, each.transfer,
    )  # fmt: skip


def _of_ac(bare: CircuitResult, source: CircuitSource) -> tuple[Problem, ...]:
    name = source.supply.name
    return (Problem("unknown", f"the voltages of circuit {bare.circuit.name} are not worked out: {name} gives AC",
                    about=name),)  # fmt: skip


def _unproved(bare: CircuitResult, laid: LaidCircuit, source: CircuitSource) -> CircuitResult:
    """Return a circuit that is not solved: nothing is proved of its openings, and its runs lie there."""
    told = [problem for problem in bare.problems if problem.kind in _OF_TREE]
    needs = tuple(dict.fromkeys(need for problem in told for need in problem.needs))
    why = "" if needs else (told[0].message if told else f"{source.supply.name} is not known")
    return replace(
        bare,
        proofs=tuple(Proof(opening, "not-proved", needs, why) for opening in bare.openings),
        unsolved_runs=tuple(_lying(each, laid.names) for each in (*laid.runs, *laid.lying)),
        held_a=_held_a(laid, source.part.number_of(OUTPUT_V) if source.part else None),
    )


def _held_a(laid: LaidCircuit, volts: float | None) -> tuple[float, float] | None:
    """Return what is held at the least and at the most, at the volts that the supply is to give.

    How far its volts stray decides what arrives, and hardly what is drawn.
    """
    # A resistance of nothing is a slip of the catalogue, which is told elsewhere.
    if volts is None or any(d.kind == "resistance" and 0.0 in (d.holding, d.peak) for d in laid.devices):
        return None
    # A strike that rests without current draws while it releases; the limiter must carry that as well.
    held = fsum(max(amps(d, d.holding, volts), amps(d, d.peak, volts)) for d in laid.devices)
    return held, held + fsum(each.most_a for each in laid.unsure if each.device is None)


def _known_devices(laid: LaidCircuit) -> list[circuit_states.Device]:
    return [
        circuit_states.Device(
            node, d.kind, d.holding, d.peak, d.inrush, d.minimum_v, d.maximum_v, d.mark, d.least, d.opening_id
        )
        for d, node in zip(laid.devices, laid.at, strict=False)
    ]


def _fed(laid: Sequence[LaidCircuit], devices: Sequence[Sequence[circuit_states.Device]]) -> list[FedCircuit]:
    return [FedCircuit(each.tree, own, each.at_once) for each, own in zip(laid, devices, strict=True)]


def _on_one_side(
    laid: Sequence[LaidCircuit],
    sure: Sequence[Sequence[circuit_states.Device]],
    source: circuit_states.Source,
    *,
    of_most: bool,
) -> list[list[circuit_states.Device]]:
    """Return what hangs on the circuits while everything unknown draws the least, or the most."""
    found = []
    for own, each in zip(sure, laid, strict=True):
        devices = list(own)
        if of_most and each.unmeasured:
            # Behind a transfer that nobody has measured: at the opening's frame, by the most that it can draw.
            devices = [
                _bound(Unsure(each.unmeasured[node].opening_id, each.unmeasured[node].opening_id, device), source, True)
                if node in each.unmeasured
                else known
                for device, known, node in zip(each.devices, own, each.at, strict=False)
            ]
        found.append([*devices, *(_bound(unsure, source, of_most) for unsure in each.unsure)])
    return found


def _bound(unsure: Unsure, source: circuit_states.Source, most: bool) -> circuit_states.Device:
    """Return a load that is not known for sure as a current, at the least or at the most.

    A device keeps its declared law within its own window; under it nothing is declared, and it is not proved itself.
    """
    highest_v = source.highest_v or source.normal_v
    device = unsure.device
    if device is None:
        value = unsure.most_a if most else 0.0
        return circuit_states.Device(unsure.node, "current", value, value, least=0.0, group=unsure.opening_id)

    def bound_a(value: float) -> float:
        if device.kind == "power":
            # Whatever its window says, a load of no voltage is none.
            return value / (max(device.minimum_v, 0.1 * source.normal_v) if most else highest_v)
        if device.kind == "resistance":
            return amps(device, value, highest_v) if most else 0.0
        return value

    first = device.peak if device.inrush is None else device.inrush
    return circuit_states.Device(
        unsure.node, "current", bound_a(device.holding), bound_a(device.peak), bound_a(first),
        least=None if device.least is None else bound_a(device.least), group=unsure.opening_id,
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Solving:
    """One circuit of a supply with its states from both sides of what is unknown."""

    all_laid: Sequence[LaidCircuit]
    number: int
    circuit_source: CircuitSource
    source: circuit_states.Source
    low_side: Sequence[State]
    """Everything unknown at the least that it draws."""
    high_side: Sequence[State]
    """And at the most."""
    limits: SolvingLimits

    @property
    def laid(self) -> LaidCircuit:
        return self.all_laid[self.number]

    def result(self, bare: CircuitResult) -> CircuitResult:
        """Put together what was found."""
        laid, states, volts = self.laid, self.low_side, self.source.normal_v
        nodes = self._nodes()
        complete = not any(problem.kind in _OF_TREE for problem in laid.problems)
        bounds = _held_a(laid, volts)
        held = bounds[0] if bounds else 0.0
        by_opening: dict[str, list[Device]] = {}
        for device in laid.devices:
            by_opening.setdefault(device.opening_id, []).append(device)
        resting = [fsum(amps(d, d.holding, volts) for d in own) for own in by_opening.values()]
        first = [
            fsum(amps(d, d.peak if d.inrush is None else d.inrush, volts) for d in own) for own in by_opening.values()
        ]
        inrush = worst_inrush_a(resting, first, laid.at_once)
        rated = self.circuit_source.part.number_of(OUTPUT_A) if self.circuit_source.part else None
        limiter = laid.circuit.limiter_a
        if limiter is None and complete:
            limiter = _limiter(held, rated, volts, self.limits.limiter_margin)
        return replace(
            bare,
            source_v={state.name: state.source_v for state in states},
            nodes=nodes if laid.runs else (),
            runs=_runs(laid, states),
            unsolved_runs=tuple(_lying(each, laid.names) for each in laid.lying),
            current_a={s.name: s.solution.source_a for s in states if s.solution.source_a is not None},
            collapsed={s.name: s.solution.reason or "" for s in states if s.solution.collapsed},
            operating=self._marks(states[-1].operating, states[-1].elsewhere),
            holding_a=held if complete else None,
            inrush_a=inrush if complete else None,
            known_inrush_a=inrush,
            limiter_a=limiter,
            proofs=self._proofs(nodes),
            held_a=bounds,
            at_once=laid.at_once,
        )

    def _marks(self, own: Sequence[int], elsewhere: Sequence[tuple[int, int]]) -> tuple[str, ...]:
        chosen = [*((self.number, i) for i in own), *elsewhere]
        marks = []
        for circuit, index in chosen:
            laid = self.all_laid[circuit]
            sure = len(laid.at)
            opening = laid.devices[index].opening_id if index < sure else laid.unsure[index - sure].opening_id
            marks.append(laid.names.get(opening, opening))
        return tuple(sorted(dict.fromkeys(marks), key=natural))

    def _nodes(self) -> tuple[NodeResult, ...]:
        laid = self.laid
        windows: dict[str, tuple[float, float]] = {}
        parts: dict[str, list[str]] = {}
        for device, node in zip(laid.devices, laid.at, strict=False):
            low, high = windows.get(node, (0.0, float("inf")))
            # Several devices at one node share one voltage: the strictest of them on either side decides.
            windows[node] = max(low, device.minimum_v), min(high, device.maximum_v)
            parts.setdefault(node, []).append(device.part)
        tree, marks = laid.tree, laid.names
        distance = [0.0]
        for i in range(1, len(tree.names)):
            distance.append(distance[tree.feeder[i]] + laid.runs[tree.run[i]].run.length_m)
        found = []
        # Of each node in each state its volts, at peak under its own worst operations; states in columns.
        solved = [state for state in self.low_side if not state.solution.collapsed]
        names = [state.name for state in solved]
        every_v = list(zip(*(_least_v(state) for state in solved), strict=True)) or [()] * len(tree.names)
        bounding = [state for state in self.high_side if state.name != "highest-mains"]
        if any(state.solution.collapsed for state in bounding):
            bounds = [-inf] * len(tree.names)
        else:
            bounds = list(map(min, zip(*([*map(_bound_v, bounding)] * (1 if len(bounding) > 1 else 2)), strict=True)))
        share = max([d.most_share for each in self._touching() for d in each.devices], default=1.0)
        lowered = self._drawing_more(share, bounding) if share > 1.0 and bounds[0] > -inf else bounds
        for node, at in tree.position.items() if laid.unmeasured else ():
            if node in laid.unmeasured:
                lowered[at] = self._behind_unmeasured(node, lowered, share)
                bounds[at] = self._behind_unmeasured(node, bounds, 1.0)
        if share > 1.0:
            # Told only where it decides: else every page would show volts that matter to nobody.
            for node, (needed_v, _) in windows.items():
                at = tree.position[node]
                if lowered[at] < needed_v - _TOUCH_V:
                    bounds[at] = min(bounds[at], lowered[at])
        worst_cases = self.low_side[-1].worst
        told: dict[tuple[Sequence[int], Sequence[tuple[int, int]]], tuple[str, ...]] = {}
        for i, node in enumerate(tree.names):
            opening = opening_of(node)
            window = windows.get(node)
            volts = {name: v for name, v in zip(names, every_v[i], strict=True) if isfinite(v)}
            operating: tuple[str, ...] = ()
            if node in worst_cases:
                # Most places of a circuit have the same worst operations.
                worst_case = worst_cases[node]
                key = (worst_case.operating, worst_case.elsewhere)
                if key not in told:
                    told[key] = self._marks(*key)
                operating = told[key]
            found.append(
                NodeResult(
                    node, laid.name_of(node), opening if opening in marks else None, distance[i], volts,
                    window and window[0], window and window[1],
                    bounds[i] if isfinite(bounds[i]) else None, operating, tuple(parts[node]) if node in parts else (),
                )
            )  # fmt: skip
        return tuple(found)

    def _touching(self) -> Sequence[LaidCircuit]:
        """Circuits that lower one another's voltages: through the resistance inside the supply alone."""
        return self.all_laid if self.source.ohm or self.source.battery_ohm else (self.laid,)

    def _drawing_more(self, share: float, bounding: Sequence[State]) -> list[float]:
        """Least volts of the nodes while what has no stated law draws so many times what is reckoned with.

        Where no current is more than so many times what it was, no drop is. Constant power draws more as the voltage
        falls: a share that does not cover that has no bound.
        """
        source = self.source
        powered = any(d.kind == "power" for each in self._touching() for d in each.devices)
        found = []
        for state in bounding:
            volts, from_v = _bound_v(state), state.source_v
            if state.name == "peak" and source.battery_end_v is not None:
                # It may be found at either source, each node at the one that leaves it less.
                worse = source.battery_end_v <= source.lowest_v, source.battery_ohm >= source.ohm
                from_v = from_v if worse[0] == worse[1] else max(source.lowest_v, source.battery_end_v)
            found.append([from_v - _raised(share, from_v, min(volts), powered) * (from_v - v) for v in volts])
        return [min(each) for each in zip(*found, strict=True)]

    def _behind_unmeasured(self, node: str, bounds: Sequence[float], share: float) -> float:
        """Least volts behind a transfer that nobody has measured, while it has the most that it can have."""
        laid, most_a = self.laid, 0.0
        for device, at in zip(laid.devices, laid.at, strict=False):
            if at == node:
                most = _bound(Unsure(device.opening_id, node, device), self.source, True)
                most_a += max(most.holding, most.peak, most.peak if most.inrush is None else most.inrush)
        at_node = laid.tree.position[node]
        ohm = laid.tree.ohm[at_node] + laid.unmeasured[node].more_ohm
        return bounds[laid.tree.feeder[at_node]] - ohm * share * most_a

    def _proofs(self, nodes: Sequence[NodeResult]) -> tuple[Proof, ...]:
        laid = self.laid
        needs: dict[str, dict[str, None]] = {}
        for problem in laid.problems:
            if problem.kind in _OF_TREE:
                needs.setdefault(problem.opening_id, {}).update(dict.fromkeys(problem.needs))
        # Through the resistance inside the supply alone does one circuit touch another.
        touching = self._touching()
        untold: list[tuple[str, ...]] = []

        def every() -> tuple[str, ...]:
            """All that is not known of what pulls on these volts; asked of few."""
            if not untold:
                told = [need for each in touching for p in each.problems if p.kind in _OF_TREE for need in p.needs]
                if any(each.unmeasured for each in touching):
                    told.append("existing_item.loop_ohm")
                told += [fact for each in touching for device in each.devices for fact in device.untold]
                untold.append(tuple(dict.fromkeys(told)))
            return untold[0]

        unmeasured = {each.opening_id for each in laid.unmeasured.values()}
        wrong = {problem.opening_id for problem in laid.problems if problem.kind == "mismatch"}
        own: dict[str, list[NodeResult]] = {}
        for node in nodes:
            if node.opening_id is not None and node.minimum_v is not None:
                own.setdefault(node.opening_id, []).append(node)
        collapsed = any(state.solution.collapsed for state in self.low_side)
        found = []
        for opening in laid.openings:
            here = own.get(opening, [])
            if opening in wrong or any(map(_outside, here)) or (collapsed and opening not in laid.hidden):
                found.append(Proof(opening, "failed"))
            elif opening in laid.hidden or not laid.sound:
                lacking = tuple(needs.get(opening, ())) or every()
                why = "" if lacking else "its circuit cannot be reckoned with"
                found.append(Proof(opening, "not-proved", lacking, why))
            elif all(node.bound_v is not None and node.bound_v >= (node.minimum_v or 0.0) - _TOUCH_V for node in here):
                found.append(Proof(opening, "proved"))
            else:
                missing = ("existing_item.loop_ohm",) if opening in unmeasured else every()
                why = "" if missing else "too many operations can fall together to try them all"
                found.append(Proof(opening, "not-proved", missing, why))
        return tuple(found)


def _least_v(state: State) -> list[float]:
    """Volts at each node, at peak under its own worst operations; of a state with a solution."""
    worst = state.worst
    if not worst:
        return list(state.solution.volts.values())
    return [worst[node].volts if node in worst else v for node, v in state.solution.volts.items()]


def _bound_v(state: State) -> list[float]:
    worst = state.worst
    if not worst:
        return list(state.solution.volts.values())
    return [worst[node].bound_v if node in worst else v for node, v in state.solution.volts.items()]


def _raised(share: float, from_v: float, lowest_v: float, powered: bool) -> float:
    """Return by how many times drops grow at the most where some currents are so many times as great.

    Constant power draws L / (V - s D) times as much where its drop D, which left L of V, is s times as great. That is
    no more than s as long as s D is no more than L; beyond, each raise asks for a greater one: there is no bound.
    """
    return inf if powered and share * (from_v - lowest_v) > lowest_v else share


def _outside(node: NodeResult) -> bool:
    highest, margin = max(node.volts.values(), default=None), node.margin_v
    over = highest is not None and node.maximum_v is not None and highest > node.maximum_v + _TOUCH_V
    return over or (margin is not None and margin < -_TOUCH_V)


def _untaken(error: InputError, circuit: Circuit, devices: Sequence[Device]) -> Problem:
    """Say which value of a device, or of the circuit, cannot be taken."""
    index, _, field = error.field.removeprefix("loads[").partition("].")
    if index.isdigit():
        device = devices[int(index)]
        text = f"what {device.part} at {device.mark} draws cannot be taken: {field} {error.message}"
        return Problem("unsound", text, (), device.opening_id, device.part)
    text = f"{error.field.replace('_', ' ')} of circuit {circuit.name}: {error.message}"
    return Problem("unsound", text, (), "", f"circuit {circuit.name}")


def _runs(laid: LaidCircuit, states: Sequence[State]) -> tuple[RunResult, ...]:
    names, tree = laid.names, laid.tree
    ohms = {index: ohm for index, ohm in zip(tree.run, tree.ohm, strict=True) if index >= 0}
    solved = [state for state in states if not state.solution.collapsed]
    states_in = [state.name for state in solved]
    every_a = list(zip(*(map(abs, state.solution.run_a) for state in solved), strict=True)) or [()] * len(laid.runs)
    found = []
    for index, each in enumerate(laid.runs):
        run, ohm = each.run, ohms[index]
        amperes = dict(zip(states_in, every_a[index], strict=True))
        far = opening_of(run.to_node) if each.transfer else run.to_node
        to_name = names.get(far, far) + (leaf_words(run.to_node) if each.transfer else "")
        found.append(
            RunResult(
                each.run_id, names.get(run.from_node, run.from_node), to_name, run.from_node, run.to_node,
                run.length_m, run.gauge, run.stranding, run.conductors_in_parallel, each.part, ohm, amperes,
                each.transfer,
            )
        )  # fmt: skip
    return tuple(found)


def _limiter(holding_a: float, rated_a: float | None, volts: float, margin: float) -> float | None:
    if rated_a is None:
        return None
    limit = class_2_limit(volts, "overcurrent-device")
    # Where the class sets no overcurrent device the supply's own rating bounds it.
    allowed = limit.overcurrent_a if limit is not None and limit.overcurrent_a is not None else rated_a
    return limiter_a(holding_a, min(rated_a, allowed), margin=max(margin, 1.0))
