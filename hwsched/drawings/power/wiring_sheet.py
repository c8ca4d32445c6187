"""Point-to-point wiring of one opening: supply, limiter, places on the way, frame, power transfer, devices.

A schematic in paper millimetres. Every wire is drawn, plus above minus, and named at both ends.
"""

from collections.abc import Sequence
from typing import Final

from hwsched.calc.opening.placement import Rect
from hwsched.drawings.drawing import Circle, Drawing, Fill, Line, Pen, Shape, Text, TextRole
from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.power.power_words import (
    STRANDING_NOTE,
    collapse_words,
    conductor_words,
    device_words,
    is_low,
    limiter_words,
    narrow_volts_words,
    problem_words,
    rating_words,
    run_length_words,
    shortened,
    worst_words,
)
from hwsched.drawings.power.wiring_way import Hop, WiringWay, wiring_way
from hwsched.drawings.text_room import broken, line_step_mm, lines_tall_mm, text_room_mm, widest_mm
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle
from hwsched.values.power import CircuitResult, Device, NodeResult, SupplyResult

LEAF_NOTE: Final = to_phrase(
    "No mains goes onto the leaf: within the dashed line only the extra-low voltage of this circuit."
)
DEAD_NOTE: Final = to_phrase("Take the circuit off the supply and make sure that it is dead before wiring.")
_APART_NOTE: Final = to_phrase(
    "Keep these wires apart from mains wiring. Each product's own sheet and listing, local code and the authority "
    "having jurisdiction decide."
)
OWN_SHEET: Final = "terminal: see the product's own sheet"

_WIDE: Final = 250.0
_HALF: Final = 5.0
"""From the middle of a pair to either wire [paper mm]."""
_RIM: Final = 3.6
"""Of a block, over and under its wires."""
_BLOCK: Final = 14.0
_SUPPLY: Final = 36.0
_LIMITER: Final = 24.0
_UP: Final = 14.5
"""Over the middle of a row of the way, and under it."""
_DOWN: Final = 17.0
_DEVICE: Final = 34.0
_WORDS: Final = 66.0
_TRANSFER: Final = 30.0
_MOST_PLACES: Final = 6
_CAP: Final = 1.8


def wiring_sheet(
    supply: SupplyResult,
    circuit: CircuitResult,
    opening_id: str,
    style: LengthStyle = "fraction",
    frame_parts: frozenset[str] | None = None,
    leaf: str = "",
    cautioned: bool = False,
) -> Drawing:
    """Draw how one opening is wired, terminal by terminal.

    Parameters
    ----------
    supply, circuit : SupplyResult, CircuitResult
        What feeds the opening.
    opening_id : str
        The opening.
    style : LengthStyle
        How the project shows lengths: metres with millimetres, else feet.
    frame_parts : frozenset of str, optional
        Numbers of parts that stand in the frame; by default those in the role of a strike.
    leaf : str
        Of an opening whose devices are on several leaves: which one; see `hwsched.drawings.power.wiring_way.leaves_of`.
    cautioned : bool
        Whether the page says beside it what keeps mains away and who decides: its notes then do not.

    Returns
    -------
    Drawing
        Coordinates are paper millimetres, 250 wide; words where there is nothing to draw.
    """
    marks = dict(zip(circuit.openings, circuit.marks, strict=False))
    node = circuit.node_of(opening_id)
    mark = (node.name if node is not None else "") or marks.get(opening_id, "opening")
    mark = phrase("{mark}, {leaf} leaf", mark=mark, leaf=leaf) if leaf else mark
    title = phrase(
        "Wiring of {mark}: {name}, {name_2}", mark=mark, name=supply.supply.name, name_2=circuit.circuit.name
    )
    notes = shortened([*collapse_words(circuit), *problem_words(circuit)], 4, phrase("See the power schedule."))
    if not circuit.runs:
        return unknown_drawing(title, notes or [phrase("{name} has no runs.", name=circuit.circuit.name)])
    way = wiring_way(circuit, opening_id, frame_parts, leaf)
    if isinstance(way, str):
        return unknown_drawing(title, [way, *notes])
    sheet = _Sheet(circuit, style, node)
    sheet.supply(supply)
    sheet.way(way, mark)
    bounds = (0.0, sheet.bottom, _WIDE, 0.0)
    prefix = "" if sheet.wire(1) == "1" else phrase("the circuit's name, ")
    wires = phrase(
        "Wires bear {prefix}the number of the run in its circuit and the pole, such as {wire}+.",
        prefix=prefix,
        wire=sheet.wire(1),
    )
    leads = phrase("From the opening's terminals to a device: its own leads, or wire as its sheet says.")
    said = [wires, phrase(STRANDING_NOTE), leads, *sheet.notes]
    if cautioned:
        told = (" ".join([*said, phrase(DEAD_NOTE)]), *notes)
    else:
        told = (" ".join([phrase("Schematic, not to scale."), *said]), caution_note(), *notes)
    return Drawing(title, tuple(sheet.shapes), bounds, told, to_scale=False, schematic=True)


def caution_note() -> str:
    """Say what keeps who wires safe, and who decides."""
    return f"{phrase(DEAD_NOTE)} {phrase(_APART_NOTE)}"


class _Sheet:
    """The sheet as it fills, from left to right and row by row."""

    def __init__(self, circuit: CircuitResult, style: LengthStyle, node: NodeResult | None) -> None:
        self.shapes: list[Shape] = []
        self.notes: list[str] = []
        self.bottom = 0.0
        self._circuit = circuit
        self._style = style
        self._node = node
        self._x = 0.0
        self._y = -_UP - 2.0
        self._breaks = 0

    def wire(self, number: int) -> str:
        """Return the name of a run's wires, without the pole."""
        name = self._circuit.circuit.name
        return f"{name}-{number}" if len(name) <= 8 else f"{number}"

    def supply(self, supply: SupplyResult) -> None:
        """Draw the supply with its terminals, and the limiter."""
        facts, y = supply.supply, self._y
        texts = (facts.part or phrase("part not chosen"), rating_words(supply), facts.place or facts.level or "")
        words = tuple(line for text in texts for line in broken(text, _SUPPLY - 3.0))
        name = broken(facts.name, _SUPPLY, "label")
        tall = max(2 * _HALF + 6.0, lines_tall_mm(len(words)) + 3.0)
        self._frame(Rect(0.0, y - tall / 2, _SUPPLY, y + tall / 2), "outline", "metal", f"supply {facts.name}")
        self._lines(1.5, y + lines_tall_mm(len(words)) / 2 - _CAP, words)
        self._over(_SUPPLY / 2, y + tall / 2, name, "label")
        for at, pole in ((y + _HALF, "+"), (y - _HALF, "−")):
            self._terminal(_SUPPLY, at)
            self.shapes.append(Text(_SUPPLY - 1.4, at - 0.9, pole, "small", "right"))
        left, right = _SUPPLY, _SUPPLY + _LIMITER
        middle = (left + right) / 2
        self._line(left, y + _HALF, right, y + _HALF)
        self._line(left, y - _HALF, right, y - _HALF)
        self._frame(Rect(middle - 4.0, y + _HALF - 1.2, middle + 4.0, y + _HALF + 1.2), "outline", "none", "limiter")
        named = (*broken(self._circuit.circuit.name, _LIMITER - 1.0), *broken(limiter_words(self._circuit), 23.0))
        self._over(middle, y + _HALF + 1.6, named)
        self._terminal(right, y + _HALF)
        self._terminal(right, y - _HALF)
        self._x = right
        self.bottom = min(y - tall / 2, y - _DOWN)

    def way(self, way: WiringWay, mark: str) -> None:
        """Draw the places on the way, then the opening."""
        places = list(way.hops[:-1])
        left_out: list[Hop] = []
        if len(places) > _MOST_PLACES:
            half = _MOST_PLACES // 2
            left_out = places[half:-half]
        for hop in places:
            if hop in left_out:
                if hop is left_out[0]:
                    self._skipped(left_out)
                continue
            wide = self._run_mm(hop)
            self._room(wide + _BLOCK)
            self._run(hop, wide)
            self._block(hop.name, hop.node, "opening" if hop.node and hop.node.opening_id else "junction")
        self._opening(way, mark)

    def _room(self, wide: float) -> None:
        """Go on in the next row where this one is full; both ends bear the same letter."""
        if self._x + wide <= _WIDE - 8.0:
            return
        letter = chr(ord("A") + self._breaks % 26)
        self._breaks += 1
        for up in (_HALF, -_HALF):
            self._line(self._x, self._y + up, self._x + 4.0, self._y + up)
            self._tag(self._x + 6.0, self._y + up, letter)
        self._y -= _UP + _DOWN
        self.bottom = self._y - _DOWN
        for up in (_HALF, -_HALF):
            self._tag(2.0, self._y + up, letter)
        self._x = 4.0

    def _tag(self, x: float, y: float, letter: str) -> None:
        self.shapes += [Circle(x, y, 4.0, "thin", "none", "goes on"), Text(x, y - 0.9, letter, "small", "centre")]

    def _run_mm(self, hop: Hop) -> float:
        ends = 2 * text_room_mm(f"{self.wire(hop.number)}+") + 5.0
        words = widest_mm((conductor_words(hop.run), run_length_words(hop.run.length_m, self._style))) + 4.0
        return max(22.0, ends, words)

    def _run(self, hop: Hop, wide: float) -> None:
        """Draw both wires of a run with their names at both ends, the conductor and the length between them."""
        x, y = self._x, self._y
        pen: Pen = "warning" if hop.node is not None and is_low(hop.node) else "outline"
        name = self.wire(hop.number)
        for up, pole in ((_HALF, "+"), (-_HALF, "−")):
            self._line(x, y + up, x + wide, y + up, pen, f"wire {name}{pole}")
            base = y + up + 0.9 if up > 0 else y + up - 0.9 - _CAP
            self.shapes.append(Text(x + 1.2, base, f"{name}{pole}", "small"))
            self.shapes.append(Text(x + wide - 1.2, base, f"{name}{pole}", "small", "right"))
        words = (conductor_words(hop.run), run_length_words(hop.run.length_m, self._style))
        self._centred(x + wide / 2, y, words)
        self._x = x + wide

    def _block(self, name: str, node: NodeResult | None, kind: str, volts: Sequence[str] = ()) -> None:
        """Draw a terminal block with its name over it and its voltage under it."""
        x, y = self._x, self._y
        pen: Pen = "warning" if node is not None and is_low(node) else "outline"
        tall = _HALF + _RIM
        self._frame(Rect(x, y - tall, x + _BLOCK, y + tall), pen, "frame", f"{kind} {name}")
        for up, pole in ((_HALF, "+"), (-_HALF, "−")):
            self._terminal(x, y + up)
            self._terminal(x + _BLOCK, y + up)
            self._line(x + 0.8, y + up, x + _BLOCK - 0.8, y + up, "thin")
            self.shapes.append(Text(x + _BLOCK / 2, y + up + (0.8 if up > 0 else -0.8 - _CAP), pole, "small", "centre"))
        words = broken(name, 30.0)
        self._over(x + _BLOCK / 2, y + tall, words)
        self._under(x + _BLOCK / 2, y - tall, volts or worst_words(node))
        self._x = x + _BLOCK

    def _skipped(self, hops: Sequence[Hop]) -> None:
        """Draw places that are left out as one."""
        self._room(_BLOCK + 8.0)
        x, y = self._x, self._y
        for up in (_HALF, -_HALF):
            self._line(x, y + up, x + _BLOCK + 8.0, y + up, "hidden", phrase("places left out"))
        self._centred(x + _BLOCK / 2 + 4.0, y, (f"{len(hops)} places", phrase("left out")))
        names = ", ".join(hop.name for hop in hops)
        self.notes.append(phrase("Left out on the way, see the riser: {names}.", names=names))
        self._x = x + _BLOCK + 8.0

    def _opening(self, way: WiringWay, mark: str) -> None:
        last = way.hops[-1]
        wide = self._run_mm(last)
        bus = 9.0
        needed = wide + _BLOCK + bus + _DEVICE + 6.0 + _WORDS
        if way.transfer is not None:
            needed += _TRANSFER + _BLOCK + bus + 8.0
        self._room(needed)
        self._run(last, wide)
        low = last.node if way.transfer is None else way.transfer.node
        where = "frame end" if way.transfer is not None else "at the opening"
        self._block(f"{mark}, {where}", last.node, "opening", narrow_volts_words(last.node, _BLOCK))
        frame_x, y = self._x, self._y
        under = y - _HALF - _RIM - lines_tall_mm(len(narrow_volts_words(last.node, _BLOCK))) - 4.0
        if way.transfer is not None:
            under = min(under, self._leaf(way, mark, frame_x + bus))
            begin = under - 3.0
            first_straight = False
        else:
            begin = y
            first_straight = True
        if way.in_frame:
            self._devices(way.in_frame, frame_x, begin, low, first_straight)
        elif way.transfer is None:
            self._centred(frame_x + 30.0, y, (phrase("No device is known here."),))
        if way.transfer is None:
            self.notes.append(
                phrase("No power transfer is known here; a device on a leaf would need one. No mains goes onto a leaf.")
            )

    def _leaf(self, way: WiringWay, mark: str, x: float) -> float:
        """Draw the transfer and what stands on the leaf; returns the level under it all."""
        transfer = way.transfer
        if transfer is None:
            return self._y
        y = self._y
        pen: Pen = "warning" if transfer.node is not None and is_low(transfer.node) else "outline"
        for up in (_HALF, -_HALF):
            self._line(self._x, y + up, x, y + up)
        tall = _HALF + 2.0
        self._frame(Rect(x, y - tall, x + _TRANSFER, y + tall), pen, "new", "power transfer")
        for up in (_HALF, -_HALF):
            points = [(x, y + up)]
            step = _TRANSFER / 12
            points += [(x + step * (n + 0.5), y + up + (0.7 if n % 2 else -0.7)) for n in range(12)]
            self.shapes.append(Line((*points, (x + _TRANSFER, y + up)), pen, name="wire of the transfer"))
        part = broken(transfer.run.part or "power transfer", _TRANSFER)
        self._over(x + _TRANSFER / 2, y + tall, ("power transfer", *part) if transfer.run.part else part)
        words = (conductor_words(transfer.run), run_length_words(transfer.run.length_m, self._style))
        self._centred(x + _TRANSFER / 2, y, words)
        edge = x + _TRANSFER + 4.0
        self._line(x + _TRANSFER, y + _HALF, edge + 4.0, y + _HALF, pen)
        self._line(x + _TRANSFER, y - _HALF, edge + 4.0, y - _HALF, pen)
        self._x = edge + 4.0
        self._block("leaf end", transfer.node, "leaf", narrow_volts_words(transfer.node, _BLOCK))
        low = y - _HALF - _RIM - lines_tall_mm(len(narrow_volts_words(transfer.node, _BLOCK))) - 3.0
        if way.on_leaf:
            low = min(low, self._devices(way.on_leaf, self._x, y, transfer.node, True))
        else:
            self._centred(self._x + 30.0, y, (phrase("No device is known on the leaf."),))
        top = y + _UP - 1.0
        words_y = low - 1.0
        leaf_words = broken(phrase(LEAF_NOTE), _WIDE - edge - 4.0)
        self._lines(edge + 2.0, words_y - _CAP, leaf_words)
        bottom = words_y - lines_tall_mm(len(leaf_words)) - 1.5
        self._frame(Rect(edge, bottom, _WIDE, top), "hidden", "none", "leaf")
        self.shapes.append(Text(_WIDE - 2.0, top - 3.4, phrase("on the leaf of {mark}", mark=mark), "small", "right"))
        self.bottom = min(self.bottom, bottom)
        return bottom

    def _devices(self, devices: Sequence[Device], x: float, y: float, node: NodeResult | None, straight: bool) -> float:
        """Draw devices one under the other, each with its own pair from the block; returns the level under them."""
        from_y = self._y
        left = x + 9.0
        lows: list[float] = []
        top = y + (_HALF + 2.0 if straight else 0.0)
        for number, device in enumerate(devices):
            words = device_words(device, node, _WORDS)
            tall = max(2 * _HALF + 8.0, lines_tall_mm(len(words)) + 2.0)
            middle = y if straight and number == 0 else top - tall / 2
            if number == 0 and straight:
                top = middle + tall / 2
            self._device(device, node, left, middle, tall, words)
            lows.append(middle)
            top = middle - tall / 2 - 2.5
        for up, across in ((_HALF, 5.8), (-_HALF, 2.8)):
            at = x + across
            branching = [middle for middle in lows if middle != from_y]
            if branching:
                self._line(at, from_y + up, at, branching[-1] + up)
                self._dot(at, from_y + up)
                for middle in branching:
                    self._line(at, middle + up, left, middle + up)
                for middle in branching[:-1]:
                    self._dot(at, middle + up)
            if straight:
                self._line(x, from_y + up, left, from_y + up)
        self.bottom = min(self.bottom, top)
        return top

    def _device(
        self, device: Device, node: NodeResult | None, x: float, y: float, tall: float, words: Sequence[str]
    ) -> None:
        pen: Pen = "warning" if node is not None and is_low(node) else "outline"
        coil = 5.0 if device.suppression else 0.0
        for up in (_HALF, -_HALF):
            self._line(x, y + up, x + coil, y + up)
        if device.suppression:
            at = x + 2.5
            self._line(at, y + _HALF, at, y + 2.0, "thin", "suppression")
            self._line(at, y - 2.0, at, y - _HALF, "thin", "suppression")
            self._frame(Rect(at - 1.5, y - 2.0, at + 1.5, y + 2.0), "thin", "none", "suppression")
            self.shapes.append(Text(at, y - 0.9, "S", "small", "centre"))
            self._dot(at, y + _HALF)
            self._dot(at, y - _HALF)
        left, right = x + coil, x + 5.0 + _DEVICE
        half = _HALF + 4.0
        self._frame(Rect(left, y - half, right, y + half), pen, "existing", f"device {device.part}")
        for up, pole, terminal in zip((_HALF, -_HALF), ("+", "−"), device.terminals, strict=True):
            self._terminal(left, y + up)
            lines = broken(f"{pole} {terminal}" if terminal else f"{pole} {OWN_SHEET}", right - left - 3.0)
            self._lines(left + 1.8, y + up + lines_tall_mm(len(lines)) / 2 - _CAP, lines)
        self._lines(right + 2.0, y + lines_tall_mm(len(words)) / 2 - _CAP, words)

    def _line(self, x0: float, y0: float, x1: float, y1: float, pen: Pen = "outline", name: str = "") -> None:
        self.shapes.append(Line(((x0, y0), (x1, y1)), pen, name=name))

    def _frame(self, rect: Rect, pen: Pen, fill: Fill, name: str) -> None:
        self.shapes.append(box(rect, pen, fill, name))

    def _terminal(self, x: float, y: float) -> None:
        self.shapes.append(Circle(x, y, 1.6, "outline", "hole", "terminal"))

    def _dot(self, x: float, y: float) -> None:
        self.shapes.append(Circle(x, y, 0.8, "outline", "metal", "joint"))

    def _lines(self, x: float, y: float, lines: Sequence[str]) -> None:
        """Set lines from a left end, the first on a base line."""
        for number, line in enumerate(lines):
            self.shapes.append(Text(x, y - number * line_step_mm(), line, "small"))

    def _centred(self, x: float, y: float, lines: Sequence[str]) -> None:
        top = y + lines_tall_mm(len(lines)) / 2 - _CAP
        for number, line in enumerate(lines):
            self.shapes.append(Text(x, top - number * line_step_mm(), line, "small", "centre"))

    def _over(self, x: float, y: float, lines: Sequence[str], role: TextRole = "small") -> None:
        step = line_step_mm(role)
        for number, line in enumerate(lines):
            up = y + 1.4 + (len(lines) - 1 - number) * step
            self.shapes.append(Text(x, up, line, role, "centre"))

    def _under(self, x: float, y: float, lines: Sequence[str]) -> None:
        for number, line in enumerate(lines):
            self.shapes.append(Text(x, y - 1.6 - _CAP - number * line_step_mm(), line, "small", "centre"))
