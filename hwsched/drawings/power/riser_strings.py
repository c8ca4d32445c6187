"""The circuits of a supply cut into strings: stops that follow one another on one level, as a riser shows them.

A branch, and a way to another level, begins a string of its own. Nothing is placed on paper here.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final, Literal

from hwsched.drawings.power.power_words import conductor_words, is_low, limiter_words, low_words, run_length_words
from hwsched.drawings.text_room import broken, widest_mm
from hwsched.language import phrase
from hwsched.quantities import LengthStyle
from hwsched.values.power import CircuitResult, NodeResult, RunResult, SupplyResult

Levels = Mapping[str, tuple[str, float | None]]
"""Opening's identifier: name of its level, height of the level's floor [m]."""
Key = tuple[str, str]
"""Circuit's identifier and node; the node of its limiter is "supply"."""

SUPPLY_NODE: Final = "supply"
_WRAP_MM: Final = 38.0
_LONGEST_MM: Final = 900.0
"""A string longer than this is cut, so that each has room on a sheet."""
TAP_MM: Final = 2.4
"""Behind each stop, for a way that leaves the row there."""


@dataclass(frozen=True, slots=True)
class Stop:
    """A limiter, a junction or an opening, with the run by which it is reached."""

    key: Key
    kind: Literal["limiter", "junction", "opening"]
    name: tuple[str, ...]
    run: RunResult | None = None
    conductor: tuple[str, ...] = ()
    length: tuple[str, ...] = ()
    low: bool = False
    transfer: bool = False
    below: tuple[str, ...] = ()
    """Lines under it."""

    @property
    def run_mm(self) -> float:
        """Width of its run with the words on it [paper mm]."""
        return max(10.0, widest_mm((*self.conductor, *self.length)) + 2.4)

    @property
    def body_mm(self) -> float:
        """Width of the stop itself with the words under it [paper mm]."""
        if self.kind == "junction":
            return max(3.0, widest_mm((*self.name, *self.below)) + 0.6)
        return max(10.0, widest_mm(self.name) + 2.4, widest_mm(self.below) + 0.6)

    @property
    def wide_mm(self) -> float:
        """Width of all [paper mm]."""
        return self.run_mm + self.body_mm + TAP_MM


@dataclass(frozen=True, slots=True)
class String:
    """Stops on one level, one behind the other."""

    supply: int
    """Index among the supplies of the building."""
    circuit: str
    """Name."""
    level: str
    parent: Key | None
    """Where it hangs; None for what begins at the supply."""
    stops: tuple[Stop, ...]

    @property
    def root(self) -> bool:
        """Whether it begins with a limiter."""
        return self.parent is None


def strings_of(
    index: int, supply: SupplyResult, circuit: CircuitResult, levels: Levels, style: LengthStyle
) -> tuple[tuple[String, ...], tuple[str, ...]]:
    """Cut a circuit into strings, parents before what hangs on them.

    Returns
    -------
    strings : tuple of String
        The first begins with the circuit's limiter.
    left_out : tuple of str
        Names of places that no run joins to the supply.
    """
    tree = _Tree(circuit, levels, style, supply.supply.level or "")
    below: tuple[str, ...] = ()
    if not circuit.runs:
        below = (phrase("no runs"),) if not circuit.problems else (phrase("not worked out: see the notes"),)
    elif circuit.collapsed:
        below = (phrase("no solution: see the notes"),)
    limiter = Stop(
        (circuit.circuit.id, SUPPLY_NODE),
        "limiter",
        broken(circuit.circuit.name, 22.0),
        low=bool(circuit.collapsed),
        below=(*broken(limiter_words(circuit), 22.0), *(line for text in below for line in broken(text, 22.0))),
    )
    found: list[String] = []
    waiting: list[tuple[str, Key | None]] = [(SUPPLY_NODE, None)]
    while waiting:
        node, parent = waiting.pop()
        stops: list[Stop] = []
        branches: list[tuple[str, Key]] = []
        level = tree.level[node]
        following: str | None = node
        wide = 0.0
        while following is not None:
            node = following
            stop = limiter if node == SUPPLY_NODE else tree.stop(node)
            if stops and wide + stop.wide_mm > _LONGEST_MM:
                branches.append((node, stops[-1].key))
                break
            stops.append(stop)
            wide += stop.wide_mm
            here = [child for child in tree.children[node] if tree.level[child] == level]
            following = max(here, key=lambda child: tree.size[child], default=None)
            branches += [(child, stop.key) for child in tree.children[node] if child != following]
        found.append(String(index, circuit.circuit.name, level, parent, tuple(stops)))
        # What branches off first shall come first: the last put in is taken first.
        waiting += reversed(branches)
    return tuple(found), tree.left_out


class _Tree:
    """Runs of a circuit as a tree from the supply; power transfers are part of their opening."""

    def __init__(self, circuit: CircuitResult, levels: Levels, style: LengthStyle, level: str) -> None:
        self._circuit = circuit
        self._style = style
        self._nodes: dict[str, list[NodeResult]] = {}
        onto = {run.to_node: run.from_node for run in circuit.runs if run.transfer}
        self._transfers = set(onto.values())
        for node in circuit.nodes:
            self._nodes.setdefault(onto.get(node.node, node.node), []).append(node)
        self._run: dict[str, RunResult] = {}
        joined: dict[str, list[str]] = {}
        for run in circuit.runs:
            if not run.transfer:
                joined.setdefault(onto.get(run.from_node, run.from_node), []).append(run.to_node)
                self._run.setdefault(run.to_node, run)
        self.children: dict[str, list[str]] = {}
        order = self._walk(joined)
        self.left_out = tuple(run.to_name for node, run in self._run.items() if node not in self.children)
        self._levels = levels
        self.size: dict[str, int] = {}
        self.level = self._level_all(order, level)

    def _walk(self, joined: Mapping[str, list[str]]) -> list[str]:
        """Set the children of each node that the supply reaches; a loop is not gone round twice."""
        order = [SUPPLY_NODE]
        seen = {SUPPLY_NODE}
        for node in order:
            self.children[node] = []
            for child in joined.get(node, ()):
                if child not in seen:
                    seen.add(child)
                    self.children[node].append(child)
                    order.append(child)
        return order

    def opening(self, node: str) -> str | None:
        """Return the opening that stands at a node."""
        known = next((each.opening_id for each in self._nodes.get(node, ()) if each.opening_id is not None), None)
        return known if known is not None or node not in self._levels else node

    def _level_all(self, order: list[str], level: str) -> dict[str, str]:
        """Give openings their level, and junctions that of the openings behind them, the parent's where it is one."""
        behind: dict[str, tuple[str, ...]] = {}
        for node in reversed(order):
            self.size[node] = 1 + sum(self.size[child] for child in self.children[node])
            opening = self.opening(node)
            if opening is not None:
                behind[node] = (self._levels.get(opening, ("", None))[0],)
            else:
                behind[node] = tuple(dict.fromkeys(one for child in self.children[node] for one in behind[child]))
        found = {SUPPLY_NODE: level}
        for node in order:
            for child in self.children[node]:
                choice = behind[child]
                found[child] = found[node] if found[node] in choice or not choice else choice[0]
        return found

    def stop(self, node: str) -> Stop:
        """Return what is shown at a node."""
        held = self._nodes.get(node, [])
        run = self._run[node]
        low = [each for each in held if is_low(each)]
        worst = min(low, key=lambda each: each.margin_v or 0.0, default=None)
        opening = self.opening(node)
        named = next((each.name for each in held if each.opening_id is not None), "") or run.to_name or node
        return Stop(
            (self._circuit.circuit.id, node),
            "junction" if opening is None else "opening",
            broken(named, _WRAP_MM),
            run,
            broken(conductor_words(run), _WRAP_MM),
            broken(run_length_words(run.length_m, self._style), _WRAP_MM),
            bool(low),
            node in self._transfers,
            low_words(worst) if worst is not None else (),
        )


def with_below(string: String, more: Mapping[Key, str]) -> String:
    """Return a string with a line more under some of its stops."""
    if not any(stop.key in more for stop in string.stops):
        return string
    stops = (replace(stop, below=(*stop.below, more[stop.key])) if stop.key in more else stop for stop in string.stops)
    return replace(string, stops=tuple(stops))
