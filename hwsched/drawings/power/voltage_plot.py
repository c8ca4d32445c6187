"""Voltage along the runs of a circuit, one line per branch and state, with what each opening needs.

A diagram in paper millimetres: its axes carry the units.
"""

import math
from collections.abc import Sequence
from typing import Final

from hwsched.calc.opening.placement import Rect
from hwsched.drawings.drawing import Circle, Drawing, Line, Pen, Shape, Text
from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.power.power_words import (
    STATE_WORDS,
    collapse_words,
    is_low,
    problem_words,
    shortened,
    state_words,
    worst_of,
)
from hwsched.drawings.power.riser_strings import SUPPLY_NODE
from hwsched.drawings.text_room import broken, line_step_mm, text_room_mm
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, in_run_unit, run_unit
from hwsched.values.power import CircuitResult, NodeResult, SupplyResult

_LEFT: Final = 18.0
_RIGHT: Final = 198.0
_BOTTOM: Final = 14.0
_TOP: Final = 112.0
_NAMES: Final = 118.0
"""Where the names of openings begin, over the plot."""
_NAME_STEP: Final = 3.4
_NAME_MM: Final = 34.0
_KEY_X: Final = 204.0
_WIDE: Final = 250.0
_CAP: Final = 1.8
_MARKS_EVERY: Final = 5.0
"""Signs of one line stand at least so far apart."""
_MOST_NAMES: Final = 50

_PENS: Final[dict[str, Pen]] = {
    "normal": "outline",
    "lowest-mains": "hidden",
    "highest-mains": "dimension",
    "standby-end": "centre",
    "peak": "new",
}
_SIGNS: Final = {"normal": 0, "lowest-mains": 3, "highest-mains": 6, "standby-end": 4, "peak": 5}
"""Corners of the sign on a state's line; 0 is a circle."""
_STEPS: Final = (1.0, 2.0, 2.5, 5.0, 10.0)

Point = tuple[float, float]


def voltage_plot(supply: SupplyResult, circuit: CircuitResult, style: LengthStyle = "fraction") -> Drawing:
    """Draw the voltage of a circuit's places over their distance from the supply.

    Parameters
    ----------
    supply, circuit : SupplyResult, CircuitResult
        The circuit, worked out.
    style : LengthStyle
        Unit of distance: metres with millimetres, else feet.

    Returns
    -------
    Drawing
        Coordinates are paper millimetres, 250 wide; words where nothing was solved.
    """
    title = phrase("Voltage along {name}, {name_2}", name=supply.supply.name, name_2=circuit.circuit.name)
    notes = shortened([*collapse_words(circuit), *problem_words(circuit)], 5, phrase("See the power schedule."))
    states = [state for state in (*_PENS, *sorted(_others(circuit))) if any(state in n.volts for n in circuit.nodes)]
    if not states:
        reasons = notes or (phrase("{name} has no place whose voltage was worked out.", name=circuit.circuit.name),)
        return unknown_drawing(title, reasons)
    plot = _Plot(circuit, states, style)
    shapes = [*plot.axes(), *plot.limits(), *plot.curves(), *plot.names(), *plot.key()]
    said = [phrase("Distance is measured along the runs, one way."), *plot.notes]
    bounds = (0.0, 0.0, _WIDE, plot.top)
    return Drawing(title, tuple(shapes), bounds, (" ".join(said), *notes), to_scale=False, schematic=True)


def _others(circuit: CircuitResult) -> set[str]:
    return {state for node in circuit.nodes for state in node.volts} - set(_PENS)


def ticks(low: float, high: float, most: int) -> tuple[float, ...]:
    """Return round values that cover a range, at most so many steps apart.

    Examples
    --------
    >>> ticks(9.3, 12.0, 6)
    (9.0, 9.5, 10.0, 10.5, 11.0, 11.5, 12.0)
    """
    span = max(high - low, 1e-6)
    power = 10.0 ** math.floor(math.log10(span / most))
    step = next((share * power for share in _STEPS if span / (share * power) <= most), 10.0 * power)
    # Less a touch, or 0.30000000000000004 would add a whole step to the axis.
    first, last = math.floor(low / step + 1e-9), math.ceil(high / step - 1e-9)
    return tuple(round(number * step, 9) for number in range(first, max(last, first + 1) + 1))


class _Plot:
    """Scales of a plot, and what stands on it."""

    def __init__(self, circuit: CircuitResult, states: Sequence[str], style: LengthStyle) -> None:
        self._circuit = circuit
        self._states = states
        self._unit = 1.0 / in_run_unit(1.0, style)
        self._unit_name = run_unit(style)
        self._nodes = {node.node: node for node in circuit.nodes if node.volts and math.isfinite(node.distance_m)}
        self._source = {state: circuit.source_v[state] for state in states if state in circuit.source_v}
        volts = [value for node in self._nodes.values() for value in node.volts.values()]
        volts += self._source.values()
        volts += [node.minimum_v for node in self._nodes.values() if node.minimum_v is not None]
        # A maximum far above all volts would press the curves together at the foot; it is shown where it is exceeded.
        volts += [node.maximum_v for node in self._nodes.values() if self._is_high(node) and node.maximum_v is not None]
        low, high = min(volts), max(volts)
        room = max(0.04 * (high - low), 0.05)
        self._volts = ticks(low - room, high + room, 8)
        far = max((node.distance_m for node in self._nodes.values()), default=0.0) / self._unit
        self._far = ticks(0.0, max(far, 1.0), 10)
        self._lows = [node for node in self._nodes.values() if is_low(node)]
        self.notes: list[str] = []
        self.top = _NAMES

    @staticmethod
    def _is_high(node: NodeResult) -> bool:
        return node.maximum_v is not None and max(node.volts.values(), default=0.0) > node.maximum_v

    def _x(self, distance_m: float) -> float:
        return _LEFT + (_RIGHT - _LEFT) * distance_m / self._unit / self._far[-1]

    def _y(self, volts: float) -> float:
        low, high = self._volts[0], self._volts[-1]
        return _BOTTOM + (_TOP - _BOTTOM) * (volts - low) / (high - low)

    def axes(self) -> list[Shape]:
        """Draw axes, ticks and units."""
        shapes: list[Shape] = [box(Rect(_LEFT, _BOTTOM, _RIGHT, _TOP), "outline", "none", "plot")]
        for value in self._volts:
            y = self._y(value)
            shapes.append(Line(((_LEFT - 1.5, y), (_LEFT + 1.5, y)), "outline", name="volts tick"))
            shapes.append(Line(((_RIGHT - 1.5, y), (_RIGHT, y)), "outline", name="volts tick at the right"))
            shapes.append(Text(_LEFT - 2.4, y - 0.9, f"{value:g}", "small", "right"))
        for value in self._far:
            x = self._x(value * self._unit)
            shapes.append(Line(((x, _BOTTOM - 1.5), (x, _BOTTOM)), "outline", name="distance tick"))
            shapes.append(Text(x, _BOTTOM - 2.6 - _CAP, f"{value:g}", "small", "centre"))
        shapes.append(
            Text(
                (_LEFT + _RIGHT) / 2,
                2.5,
                phrase("Distance from the supply, {unit_name}", unit_name=self._unit_name),
                "label",
                "centre",
            )
        )
        shapes.append(Text(4.5, (_BOTTOM + _TOP) / 2, phrase("Voltage, V"), "label", "centre", 90.0))
        return shapes

    def curves(self) -> list[Shape]:
        """Draw one broken line per branch and state, and signs on it."""
        shapes: list[Shape] = []
        for state in self._states:
            pen = _PENS.get(state, "existing")
            signed: list[Point] = []
            branches = self._branches(state)
            shapes += [
                Line(tuple(points), pen, name=f"voltage, {STATE_WORDS.get(state, state)}") for points in branches
            ]
            loaded = {self._point(n.node, state) for n in self._nodes.values() if n.minimum_v is not None}
            # Where there is no room for all, what hangs there is signed before what it is reached over.
            for x, y in sorted((each for points in branches for each in points[1:]), key=lambda at: at not in loaded):
                if all(math.hypot(x - a, y - b) >= _MARKS_EVERY for a, b in signed):
                    signed.append((x, y))
                    shapes.append(_sign(state, x, y))
        return shapes

    def _branches(self, state: str) -> list[list[Point]]:
        """Cut the tree into lines: each goes from where it leaves another to its end."""
        children: dict[str, list[str]] = {}
        reached: set[str] = set()
        for run in self._circuit.runs:
            if run.to_node not in reached and run.to_node != SUPPLY_NODE:
                reached.add(run.to_node)
                children.setdefault(run.from_node, []).append(run.to_node)
        found: list[list[Point]] = []
        waiting: list[tuple[str, str]] = [(SUPPLY_NODE, child) for child in children.get(SUPPLY_NODE, ())]
        gone: set[str] = set()
        while waiting:
            start, node = waiting.pop()
            points = [point for point in (self._point(start, state),) if point is not None]
            following: str | None = node
            while following is not None and following not in gone:
                gone.add(following)
                point = self._point(following, state)
                if point is not None:
                    points.append(point)
                onward = children.get(following, [])
                waiting += [(following, child) for child in onward[1:]]
                following = onward[0] if onward else None
            if len(points) > 1:
                found.append(points)
        return found

    def _point(self, node: str, state: str) -> Point | None:
        held = self._nodes.get(node)
        if held is None:
            volts = self._source.get(state) if node == SUPPLY_NODE else None
            return None if volts is None else (self._x(0.0), self._y(volts))
        return (self._x(held.distance_m), self._y(held.volts[state])) if state in held.volts else None

    def limits(self) -> list[Shape]:
        """Draw the least voltage of each opening, and the highest where it is passed."""
        shapes: list[Shape] = []
        for node in self._nodes.values():
            x = self._x(node.distance_m)
            low = is_low(node)
            worst = worst_of(node)
            if node.minimum_v is not None:
                y = self._y(node.minimum_v)
                shapes += _least(x, y, "warning" if low else "outline", phrase("least of {name}", name=node.name))
                if low and worst is not None:
                    shapes.append(Line(((x, y), (x, self._y(worst[0]))), "warning", name=f"{node.name} is low"))
                    shapes.append(Circle(x, self._y(worst[0]), 3.4, "warning", "none", f"{node.name} is low"))
            if self._is_high(node) and node.maximum_v is not None:
                y = self._y(node.maximum_v)
                shapes.append(Line(((x - 1.5, y), (x + 1.5, y)), "warning", name=f"highest of {node.name}"))
                top = self._y(max(node.volts.values()))
                shapes.append(Line(((x, y), (x, top)), "warning", name=f"{node.name} is high"))
        return shapes

    def names(self) -> list[Shape]:
        """Name the openings over the plot, upright, with a leader to each; spread so that none covers another."""
        openings = sorted(
            (node for node in self._nodes.values() if node.minimum_v is not None), key=lambda node: node.distance_m
        )
        shown = openings
        if len(openings) > _MOST_NAMES:
            shown = [node for node in openings if is_low(node)][:_MOST_NAMES]
            self.notes.append(
                phrase(
                    "{count} openings: only {count_2} that are low are named.", count=len(openings), count_2=len(shown)
                )
            )
        words: list[tuple[float, str, bool]] = []
        for node in shown:
            text = (
                phrase(
                    "{name}: {lowest_v:.2f} V, needs {minimum_v:g} V",
                    name=node.name,
                    lowest_v=node.lowest_v,
                    minimum_v=node.minimum_v,
                )
                if is_low(node)
                else node.name
            )
            for number, line in enumerate(broken(text, _NAME_MM) or ("",)):
                words.append((self._x(node.distance_m), line, number == 0))
        places = _spread([x for x, _, _ in words], _NAME_STEP, _LEFT, _WIDE)
        shapes: list[Shape] = []
        for (x, line, first), place in zip(words, places, strict=True):
            if first:
                points = ((x, _TOP), (x, _TOP + 1.0), (place, _NAMES - 1.5), (place, _NAMES - 0.7))
                shapes.append(Line(points, "dimension", name="name"))
            shapes.append(Text(place + 0.9, _NAMES, line, "small", "left", 90.0))
            self.top = max(self.top, _NAMES + text_room_mm(line))
        return shapes

    def key(self) -> list[Shape]:
        """Say which line is which."""
        shapes: list[Shape] = []
        y = _TOP - 2.0
        for state in (*self._states, *(state for state in self._circuit.collapsed if state not in self._states)):
            solved = state in self._states
            words = broken(
                state_words(state) if solved else phrase("{state}: no solution", state=state_words(state)),
                _WIDE - _KEY_X - 15.0,
            )
            if solved:
                shapes.append(Line(((_KEY_X, y), (_KEY_X + 12.0, y)), _PENS.get(state, "existing"), name="key"))
                shapes.append(_sign(state, _KEY_X + 6.0, y))
            y = self._words(shapes, y, words)
        shapes += _least(_KEY_X + 6.0, y, "outline", "key")
        y = self._words(shapes, y, broken("least voltage of an opening", _WIDE - _KEY_X - 15.0))
        if self._lows:
            shapes += [
                *_least(_KEY_X + 6.0, y + 2.0, "warning", "key"),
                Circle(_KEY_X + 6.0, y - 2.5, 3.4, "warning", "none", "key"),
            ]
            shapes.append(Line(((_KEY_X + 6.0, y + 2.0), (_KEY_X + 6.0, y - 2.5)), "warning", name="key"))
            self._words(shapes, y, broken("under its least voltage", _WIDE - _KEY_X - 15.0))
        return shapes

    @staticmethod
    def _words(shapes: list[Shape], y: float, words: Sequence[str]) -> float:
        shapes += [
            Text(_KEY_X + 14.0, y - _CAP / 2 - number * line_step_mm(), line, "small")
            for number, line in enumerate(words)
        ]
        return y - (len(words) - 1) * line_step_mm() - 5.5


def _least(x: float, y: float, pen: Pen, name: str) -> list[Shape]:
    """Draw a mark: a bar with short legs that stand on the floor it must not fall through."""
    return [
        Line(((x - 1.5, y), (x + 1.5, y)), pen, name=name),
        *(Line(((x + at, y), (x + at - 0.7, y - 0.9)), "thin", name=name) for at in (-1.0, 0.2, 1.4)),
    ]


def _sign(state: str, x: float, y: float) -> Shape:
    pen: Pen = "outline"
    corners = _SIGNS.get(state, 6)
    name = f"sign, {STATE_WORDS.get(state, state)}"
    if corners == 0:
        return Circle(x, y, 1.6, pen, "hole", name)
    if corners == 5:
        # A filled square: the others are open.
        return box(Rect(x - 0.7, y - 0.7, x + 0.7, y + 0.7), pen, "new", name)
    turn = math.pi / 2
    points = [
        (x + 1.1 * math.cos(turn + 2 * math.pi * n / corners), y + 1.1 * math.sin(turn + 2 * math.pi * n / corners))
        for n in range(corners)
    ]
    return Line(tuple(points), pen, True, "hole", name)


def _spread(wanted: Sequence[float], step: float, low: float, high: float) -> list[float]:
    """Move sorted places as little as keeps them a step apart, between two ends where they have room."""
    found: list[float] = []
    for place in wanted:
        found.append(max(place, found[-1] + step) if found else max(place, low))
    if found and found[-1] > high:
        edge = high
        for number in range(len(found) - 1, -1, -1):
            found[number] = min(found[number], edge)
            edge = found[number] - step
    return found
