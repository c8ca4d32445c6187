"""A drawing brought to paper: dimensions, callouts and hatching become strokes and letters in paper millimetres.

PDF, SVG and the desktop paint what comes out of here and decide nothing themselves. Origin and axes are the drawing's
(x right, y up), so a point of the thing drawn is found by dividing by the scale.
"""

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal, NamedTuple

from hwsched.drawings.conventions import (
    ARROW_LENGTH_MM,
    ARROW_WIDTH_MM,
    EXTENSION_GAP_MM,
    EXTENSION_OVERRUN_MM,
    LETTER_HEIGHT_MM,
    LINE_SPACING,
)
from hwsched.drawings.drawing import (
    Anchor,
    Arc,
    Callout,
    Circle,
    Dimension,
    Drawing,
    Fill,
    Line,
    Pen,
    Shape,
    Text,
    TextRole,
)
from hwsched.render.fonts import DESCENT_SHARE, size_of_letters_mm, text_width_mm
from hwsched.render.hatch import cut_lines, hatch
from hwsched.render.screen import LIGHT
from hwsched.render.text_apart import Room, covers, way_out
from hwsched.render.wrap import printable, wrap

Point = tuple[float, float]
PaperFill = Fill | Literal["ink"]
"""ink: filled with the pen's own colour (arrow heads, dots)."""

_COLUMN_GAP_MM = 3.0
_COLUMN_WIDTH_MM = 26.0
_NARROW_COLUMN_MM = 20.5
_HATCH_MM = 1.8
_AIR_MM = 0.8
_ROWS_APART = 1.05
"""So much farther apart do rows of a schematic stand whose small letters are set as large as a page wants them: their
base lines are 1.7 letter heights apart, of which letters a third larger need 1.78."""


class Stroke(NamedTuple):
    """Straight lines through points."""

    points: tuple[Point, ...]
    pen: Pen
    closed: bool = False
    fill: PaperFill = "none"
    name: str = ""


class Disc(NamedTuple):
    """Circle."""

    x: float
    y: float
    diameter: float
    pen: Pen
    fill: PaperFill = "none"
    name: str = ""


class Bow(NamedTuple):
    """Arc, degrees counter-clockwise from +x."""

    x: float
    y: float
    radius: float
    start_deg: float
    end_deg: float
    pen: Pen
    name: str = ""


class Letters(NamedTuple):
    """One line of text on its base line."""

    x: float
    y: float
    text: str
    height_mm: float
    """Of capitals."""
    anchor: Anchor
    angle_deg: float
    role: TextRole
    narrow: bool = False


Primitive = Stroke | Disc | Bow | Letters


@dataclass(frozen=True, slots=True)
class OnPaper:
    """A drawing in paper millimetres."""

    primitives: tuple[Primitive, ...]
    extent: tuple[float, float, float, float]
    """x0, y0, x1, y1 of all that is drawn [paper mm], texts and dimensions included."""
    scale: float
    """Paper mm per mm of the thing drawn."""


class _Sheet:
    """Collects primitives and the extent that they cover."""

    __slots__ = ("_rooms", "_words", "found", "least_mm", "narrow", "scale", "x0", "x1", "y0", "y1")

    def __init__(self, scale: float, bounds: tuple[float, float, float, float], least_mm: float, narrow: bool) -> None:
        self.narrow = narrow
        self.scale = scale
        self.least_mm = least_mm
        self.found: list[Primitive] = []
        self._words: list[tuple[Letters, Room, bool]] = []
        self._rooms: list[Room] = []
        self.x0, self.y0, self.x1, self.y1 = (value * scale for value in bounds)

    def height(self, role: TextRole) -> float:
        """Height of capitals of a role [mm]."""
        return max(LETTER_HEIGHT_MM[role], self.least_mm)

    def cover(self, x: float, y: float) -> None:
        if x < self.x0:
            self.x0 = x
        if x > self.x1:
            self.x1 = x
        if y < self.y0:
            self.y0 = y
        if y > self.y1:
            self.y1 = y

    def stroke(self, points: tuple[Point, ...], pen: Pen, closed: bool, fill: PaperFill, name: str = "") -> None:
        self.found.append(Stroke(points, pen, closed, fill, name))
        # As `cover` does: most of a drawing are strokes, and a call for each of their points costs as much again.
        x0, y0, x1, y1 = self.x0, self.y0, self.x1, self.y1
        for x, y in points:
            if x < x0:
                x0 = x
            if x > x1:
                x1 = x
            if y < y0:
                y0 = y
            if y > y1:
                y1 = y
        self.x0, self.y0, self.x1, self.y1 = x0, y0, x1, y1

    def letters(self, x: float, y: float, text: str, role: TextRole, anchor: Anchor, angle_deg: float = 0.0) -> None:
        """Put letters where they stand."""
        words = self._composed(x, y, text, role, anchor, angle_deg)
        if words is not None:
            self._put(*words)

    def words(
        self, x: float, y: float, text: str, role: TextRole, anchor: Anchor, angle_deg: float, *, on_line: bool
    ) -> None:
        """Take letters that may move where others stand already; `settle` puts them."""
        words = self._composed(x, y, text, role, anchor, angle_deg)
        if words is not None:
            self._words.append((*words, on_line))

    def room_within(self, x: float, y: float, text: str, role: TextRole, angle_deg: float = 0.0) -> bool:
        """Put letters about a point if nothing is written there; tells whether it was done."""
        words = self._composed(x, y, text, role, "centre", angle_deg)
        if words is None or any(covers(words[1], each) for each in self._rooms):
            return False
        self._put(*words)
        return True

    def settle(self) -> None:
        """Put what was taken, words of dimensions first: they belong to a line, and other words go out of their way."""
        for shape, room, on_line in sorted(self._words, key=lambda each: not each[2]):
            along, off = (1.0, 3.0) if on_line else (1.5, 1.0)
            upright = abs(math.sin(math.radians(shape.angle_deg))) > 0.7
            dx, dy = way_out(room, self._rooms, off if upright else along, along if upright else off)
            if dx == dy == 0.0:
                # Nearly all stand where they may.
                self._put(shape, room)
                continue
            self._put(
                shape._replace(x=shape.x + dx, y=shape.y + dy),
                (room[0] + dx, room[1] + dy, room[2] + dx, room[3] + dy),
            )
        self._words.clear()

    def _put(self, shape: Letters, room: Room) -> None:
        self.found.append(shape)
        self._rooms.append(room)
        self.cover(room[0], room[1])
        self.cover(room[2], room[3])

    def _composed(
        self, x: float, y: float, text: str, role: TextRole, anchor: Anchor, angle_deg: float
    ) -> tuple[Letters, Room] | None:
        text, height, width, depth = _measured(text, role, self.least_mm, self.narrow)
        if not text:
            return None
        left = 0.0 if anchor == "left" else -width / 2 if anchor == "centre" else -width
        shape = Letters(x, y, text, height, anchor, angle_deg, role, self.narrow)
        if angle_deg == 0.0:
            return shape, (x + left, y - depth, x + left + width, y + height)
        turn = math.radians(angle_deg)
        cos, sin = math.cos(turn), math.sin(turn)
        corners = [
            (x + across * cos - up * sin, y + across * sin + up * cos)
            for across in (left, left + width)
            for up in (-depth, height)
        ]
        xs, ys = [corner[0] for corner in corners], [corner[1] for corner in corners]
        return shape, (min(xs), min(ys), max(xs), max(ys))


@lru_cache(maxsize=20_000)
def _measured(text: str, role: TextRole, least_mm: float, narrow: bool) -> tuple[str, float, float, float]:
    """Return a text as it is written, the height of its capitals, its width and how far it reaches below its line."""
    text = printable(text).replace("\n", " ")
    height = max(LETTER_HEIGHT_MM[role], least_mm)
    width = text_width_mm(text, height, role in LIGHT.bold, narrow)
    return text, height, width, size_of_letters_mm(height, narrow) * DESCENT_SHARE


def lower(
    drawing: Drawing,
    scale: float,
    letters_mm: float = 0.0,
    narrow: bool = False,
    within: tuple[float, float, float, float] | None = None,
) -> OnPaper:
    """Bring a drawing to paper.

    Parameters
    ----------
    drawing : Drawing
        Lengths in mm of the thing drawn.
    scale : float
        Paper mm per mm of the thing drawn, over 0; 0.05 for 1:20, 1 for true size.
    letters_mm : float
        Least height of capitals [paper mm], for a page that is read at a distance.
    narrow : bool
        Whether its letters are narrow ones.
    within : tuple of float, optional
        x0, y0, x1, y1 of what is in sight [mm of the thing drawn]: only what is in it has words, and they stand in it.

    Returns
    -------
    OnPaper
        Primitives in paper mm, in the order in which they are painted.
    """
    if drawing.schematic and letters_mm > LETTER_HEIGHT_MM["small"]:
        drawing = _taller(drawing, _ROWS_APART)
    sheet = _Sheet(scale, drawing.bounds, letters_mm, narrow)
    callouts: list[Callout] = []
    for shape in drawing.shapes:
        if isinstance(shape, Line):
            _line(shape, sheet)
        elif isinstance(shape, Circle):
            x, y, across = shape.x * scale, shape.y * scale, shape.diameter * scale
            sheet.found.append(Disc(x, y, across, shape.pen, shape.fill, shape.name))
            sheet.cover(x - across / 2, y - across / 2)
            sheet.cover(x + across / 2, y + across / 2)
        elif isinstance(shape, Text):
            x, y = shape.x * scale + shape.dx, shape.y * scale + shape.dy
            if drawing.schematic:
                # It places its texts itself.
                sheet.letters(x, y, shape.text, shape.role, shape.anchor, shape.angle_deg)
            else:
                sheet.words(x, y, shape.text, shape.role, shape.anchor, shape.angle_deg, on_line=False)
        elif isinstance(shape, Dimension):
            _dimension(shape, sheet)
        elif isinstance(shape, Arc):
            x, y, radius = shape.x * scale, shape.y * scale, shape.radius * scale
            sheet.found.append(Bow(x, y, radius, shape.start_deg, shape.end_deg, shape.pen, shape.name))
            for angle in (shape.start_deg, (shape.start_deg + shape.end_deg) / 2, shape.end_deg):
                turn = math.radians(angle)
                sheet.cover(x + radius * math.cos(turn), y + radius * math.sin(turn))
        else:
            callouts.append(shape)
    sheet.settle()
    _callouts(callouts, sheet, within)
    return OnPaper(tuple(sheet.found), (sheet.x0, sheet.y0, sheet.x1, sheet.y1), scale)


def _taller(drawing: Drawing, by: float) -> Drawing:
    """Draw a schematic's rows apart for letters that are taller than those for which it was laid out.

    Across nothing moves: taller letters are narrow ones, which need no more room than it left.
    """
    shapes: list[Shape] = []
    for shape in drawing.shapes:
        if isinstance(shape, Line):
            shapes.append(replace(shape, points=tuple((x, y * by) for x, y in shape.points)))
        elif isinstance(shape, Text):
            shapes.append(replace(shape, y=shape.y * by, dy=shape.dy * by))
        elif isinstance(shape, Dimension):
            shapes.append(replace(shape, y0=shape.y0 * by, y1=shape.y1 * by))
        else:
            shapes.append(replace(shape, y=shape.y * by))
    x0, y0, x1, y1 = drawing.bounds
    return replace(drawing, shapes=tuple(shapes), bounds=(x0, y0 * by, x1, y1 * by))


def _line(shape: Line, sheet: _Sheet) -> None:
    scale = sheet.scale
    points = tuple([(x * scale, y * scale) for x, y in shape.points])
    sheet.stroke(points, shape.pen, shape.closed, shape.fill, shape.name)
    if shape.fill == "keepout":
        for start, end in hatch(points, _HATCH_MM):
            sheet.found.append(Stroke((start, end), "keepout"))
    if shape.hatch:
        for start, end in cut_lines(points, shape.hatch):
            sheet.found.append(Stroke((start, end), "hatch"))


def _arrow(sheet: _Sheet, x: float, y: float, ux: float, uy: float) -> None:
    """Put an arrow head with its tip on a point; u points from its foot to its tip."""
    bx, by = x - ux * ARROW_LENGTH_MM, y - uy * ARROW_LENGTH_MM
    wx, wy = -uy * ARROW_WIDTH_MM / 2, ux * ARROW_WIDTH_MM / 2
    sheet.stroke(((x, y), (bx + wx, by + wy), (bx - wx, by - wy)), "dimension", True, "ink")


def _direction(dx: float, dy: float, axis: str) -> tuple[float, float, float]:
    """Return length and unit vector of what a dimension measures."""
    if axis == "horizontal":
        dy = 0.0
    elif axis == "vertical":
        dx = 0.0
    length = math.hypot(dx, dy)
    return (length, dx / length, dy / length) if length > 0 else (0.0, 0.0, 0.0)


def _dimension(shape: Dimension, sheet: _Sheet) -> None:
    scale = sheet.scale
    ax, ay, bx, by = shape.x0 * scale, shape.y0 * scale, shape.x1 * scale, shape.y1 * scale
    length, ux, uy = _direction(bx - ax, by - ay, shape.axis)
    if length == 0.0:
        return
    nx, ny = -uy, ux
    sx, sy = ax + nx * shape.offset, ay + ny * shape.offset
    ex, ey = sx + ux * length, sy + uy * length
    for px, py, qx, qy in ((ax, ay, sx, sy), (bx, by, ex, ey)):
        away = (qx - px) * nx + (qy - py) * ny
        if abs(away) > EXTENSION_GAP_MM:
            sign = math.copysign(1.0, away)
            start = (px + nx * sign * EXTENSION_GAP_MM, py + ny * sign * EXTENSION_GAP_MM)
            sheet.stroke(
                (start, (qx + nx * sign * EXTENSION_OVERRUN_MM, qy + ny * sign * EXTENSION_OVERRUN_MM)),
                "dimension", False, "none",
            )  # fmt: skip
    height = sheet.height("dimension")
    width = text_width_mm(shape.text, height, narrow=sheet.narrow)
    # Short dimensions stand outside with their arrows turned inward: letters across an arrow head cannot be read.
    words_inside = length >= width + 2 * ARROW_LENGTH_MM + 1.0
    arrows_inside = length >= 2 * ARROW_LENGTH_MM + 1.0
    turn = math.atan2(uy, ux)
    # Words are read from below or from the right, as drawings have it; straight up counts as from the right.
    if turn > math.pi / 2 + 1e-9 or turn < -math.pi / 2 + 1e-9:
        turn += math.pi if turn < 0 else -math.pi
    px, py = -math.sin(turn), math.cos(turn)
    if arrows_inside:
        sheet.stroke(((sx, sy), (ex, ey)), "dimension", False, "none")
        _arrow(sheet, sx, sy, -ux, -uy)
        _arrow(sheet, ex, ey, ux, uy)
        tail = 0.0
    else:
        tail = ARROW_LENGTH_MM + 1.5
        sheet.stroke(
            ((sx - ux * tail, sy - uy * tail), (ex + ux * tail, ey + uy * tail)), "dimension", False, "none"
        )  # fmt: skip
        _arrow(sheet, sx, sy, ux, uy)
        _arrow(sheet, ex, ey, -ux, -uy)
    if words_inside:
        mx, my = (sx + ex) / 2 + px * _AIR_MM, (sy + ey) / 2 + py * _AIR_MM
    else:
        beyond = tail + 1.0 + width / 2
        if shape.outside == "end":
            mx, my = ex + ux * beyond, ey + uy * beyond
        else:
            mx, my = sx - ux * beyond, sy - uy * beyond
        mx, my = mx - px * height / 2, my - py * height / 2
    sheet.words(mx, my, shape.text, "dimension", "centre", math.degrees(turn), on_line=True)


def _callouts(callouts: list[Callout], sheet: _Sheet, within: tuple[float, float, float, float] | None = None) -> None:
    scale = sheet.scale
    if within is not None:
        x0, y0, x1, y1 = within
        callouts = [each for each in callouts if x0 <= each.x <= x1 and y0 <= each.y <= y1]
    columns: dict[str, list[Callout]] = {"left": [], "right": []}
    for callout in callouts:
        height = sheet.height(callout.role)
        width = text_width_mm(callout.text, height, callout.role in LIGHT.bold, sheet.narrow)
        across, up = callout.room[0] * scale, callout.room[1] * scale
        x, y = callout.x * scale, callout.y * scale
        level = across >= width + 1.6 and up >= 1.8 * height
        upright = up >= width + 1.6 and across >= 1.8 * height
        if level and sheet.room_within(x, y - height / 2, callout.text, callout.role):
            continue
        if upright and sheet.room_within(x + height / 2, y, callout.text, callout.role, 90.0):
            continue
        columns[callout.side].append(callout)
    # Both columns' places are taken before either is drawn, so that one does not push the other.
    places = {"left": sheet.x0 - _COLUMN_GAP_MM, "right": sheet.x1 + _COLUMN_GAP_MM}
    if within is not None:
        room = (_NARROW_COLUMN_MM if sheet.narrow else _COLUMN_WIDTH_MM) + _COLUMN_GAP_MM
        places["left"] = max(places["left"], within[0] * scale + room)
        places["right"] = min(places["right"], within[2] * scale - room)
    for side, members in columns.items():
        _column(members, sheet, places[side], -1.0 if side == "left" else 1.0)


def _column(members: list[Callout], sheet: _Sheet, x: float, sign: float) -> None:
    if not members:
        return
    scale = sheet.scale
    # From top to bottom, so that no two leaders cross.
    members = sorted(members, key=lambda c: -c.y)
    blocks = []
    for callout in members:
        height = sheet.height(callout.role)
        size = size_of_letters_mm(height, sheet.narrow)
        room = _NARROW_COLUMN_MM if sheet.narrow else _COLUMN_WIDTH_MM
        lines = wrap(callout.text, room, size, callout.role in LIGHT.bold, sheet.narrow)
        blocks.append((callout, lines, height, ((len(lines) - 1) * LINE_SPACING + 1.7) * height))
    middles = _spread([c.y * scale for c, _, _, _ in blocks], [tall for _, _, _, tall in blocks])
    for (callout, lines, height, _), middle in zip(blocks, middles, strict=True):
        px, py = callout.x * scale, callout.y * scale
        sheet.stroke(((px, py), (x, middle), (x + sign * 1.5, middle)), "dimension", False, "none")
        sheet.found.append(Disc(px, py, 0.7, "dimension", "ink"))
        top = middle + ((len(lines) - 1) * LINE_SPACING * height) / 2 - height / 2
        for number, line in enumerate(lines):
            sheet.letters(
                x + sign * 2.2,
                top - number * LINE_SPACING * height,
                line,
                callout.role,
                "left" if sign > 0 else "right",
            )


def _spread(wanted: list[float], tall: list[float]) -> list[float]:
    """Move middles, given from top to bottom, as little as keeps blocks of those heights apart."""
    groups: list[tuple[float, float, list[int]]] = []  # middle, height, members
    for index, (middle, height) in enumerate(zip(wanted, tall, strict=True)):
        group = (middle, height, [index])
        while groups and groups[-1][0] - groups[-1][1] / 2 < group[0] + group[1] / 2:
            above = groups.pop()
            members = above[2] + group[2]
            total = above[1] + group[1]
            # The joined group stands where its members are nearest to what they wanted on average.
            mean, down = 0.0, 0.0
            for member in members:
                mean += wanted[member] + down + tall[member] / 2
                down += tall[member]
            group = (mean / len(members) - total / 2, total, members)
        groups.append(group)
    placed = [0.0] * len(wanted)
    for middle, height, members in groups:
        top = middle + height / 2
        for member in members:
            placed[member] = top - tall[member] / 2
            top -= tall[member]
    return placed
