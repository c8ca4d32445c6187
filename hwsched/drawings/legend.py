"""Legend of what drawings use: what is new, what is there, what goes away, what is cut through."""

from collections.abc import Iterable
from typing import Final

from hwsched.calc.opening.placement import Rect
from hwsched.drawings.drawing import Drawing, Hatch, Line, Shape, Text
from hwsched.drawings.opening.symbols import box, cross
from hwsched.drawings.text_room import text_room_mm
from hwsched.language import phrase

_WIDE: Final = 7.0
_TALL: Final = 2.6
_GAP: Final = 3.0
_ROW: Final = 4.4
_CUTS: Final[dict[Hatch, str]] = {
    "wood": "wood, cut",
    "metal": "steel, cut",
    "aluminium": "aluminium, cut",
    "glass": "glass, cut",
    "other": "leaf, cut",
}


def legend(drawings: Iterable[Drawing], width_mm: float = 199.0) -> Drawing:
    """Say what the lines, fills and hatchings mean that some drawings use; a schematic as wide as it is told.

    Parameters
    ----------
    drawings : iterable of Drawing
        What it explains.
    width_mm : float
        Room on paper.
    """
    lines = [shape for drawing in drawings for shape in drawing.shapes if isinstance(shape, Line)]
    pens, fills = {line.pen for line in lines}, {line.fill for line in lines}
    rect = Rect(0.0, 0.0, _WIDE, _TALL)
    middle = ((0.0, _TALL / 2), (_WIDE, _TALL / 2))
    entries: list[tuple[list[Shape], str]] = []
    if "new" in fills or "new" in pens:
        entries.append(([box(rect, "new", "new")], "new"))
    if "hole" in fills:
        entries.append(([box(rect, "new", "hole")], phrase("drilled, cut out")))
    if "existing" in pens:
        entries.append(([box(rect, "existing", "existing")], phrase("there, stays")))
    if any(line.name.endswith("goes away") for line in lines):
        entries.append(([box(rect, "hidden"), *cross(rect, "hidden")], phrase("goes away")))
    if "hidden" in pens:
        entries.append(([Line(middle, "hidden")], "hidden"))
    if "centre" in pens:
        entries.append(([Line(middle, "centre")], phrase("centre line")))
    if "cut" in pens:
        entries.append(([Line(middle, "cut")], "section"))
    if "keepout" in fills:
        entries.append(([box(rect, "keepout", "keepout")], phrase("keep clear")))
    for cut in dict.fromkeys(line.hatch for line in lines if line.hatch):
        leaf = Line(((0.0, 0.0), (_WIDE, 0.0), (_WIDE, _TALL), (0.0, _TALL)), "outline", True, "leaf", hatch=cut)
        entries.append(([leaf], _CUTS[cut]))
    return _set(entries, width_mm)


def _set(entries: list[tuple[list[Shape], str]], width_mm: float) -> Drawing:
    shapes: list[Shape] = []
    x = y = 0.0
    for symbol, words in entries:
        wide = _WIDE + 1.2 + text_room_mm(words)
        if x > 0.0 and x + wide > width_mm:
            x, y = 0.0, y - _ROW
        for shape in symbol:
            if isinstance(shape, Line):
                points = tuple((x + px, y + py) for px, py in shape.points)
                shapes.append(Line(points, shape.pen, shape.closed, shape.fill, words, shape.hatch))
        shapes.append(Text(x + _WIDE + 1.2, y + 0.4, words, "small"))
        x += wide + _GAP
    return Drawing(
        phrase("Legend"), tuple(shapes), (0.0, y, width_mm, _TALL), to_scale=False, plain=True, schematic=True
    )
