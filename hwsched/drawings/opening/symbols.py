"""How existing items look on a face: their surveyed footprint, with a few strokes that tell kinds apart.

What stays is filled; what goes away is dashed and crossed out. Strokes inside a footprint are symbols, not measures.
"""

from collections.abc import Callable
from typing import Final

from hwsched.calc.opening.placement import Rect
from hwsched.drawings.drawing import Arc, Circle, Fill, Line, Pen, Shape
from hwsched.rules.reading import remains
from hwsched.values import Item

Symbol = Callable[[Rect, float, float | None], list[Shape]]
"""Gets the footprint on the sheet, which way the hinge edge is (1 right, -1 left), and the lock's backset line."""


def box(rect: Rect, pen: Pen, fill: Fill = "none", name: str = "") -> Line:
    """Return a rectangle."""
    x0, y0, x1, y1 = rect
    return Line(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), pen, True, fill, name)


def cross(rect: Rect, pen: Pen, name: str = "") -> list[Shape]:
    """Return both diagonals of a rectangle."""
    x0, y0, x1, y1 = rect
    return [Line(((x0, y0), (x1, y1)), pen, name=name), Line(((x0, y1), (x1, y0)), pen, name=name)]


def _middle(rect: Rect) -> tuple[float, float]:
    return (rect.x0 + rect.x1) / 2, (rect.y0 + rect.y1) / 2


def _lever(rect: Rect, toward_hinge: float, axis_x: float | None) -> list[Shape]:
    tall = rect.y1 - rect.y0
    x = rect.x0 + tall / 2 if toward_hinge > 0 else rect.x1 - tall / 2
    # Its spindle runs in the lock: the rose stands on the backset line, to whichever side the handle reaches.
    if axis_x is not None and rect.x0 < axis_x < rect.x1:
        x = axis_x
    _, y = _middle(rect)
    end = rect.x1 if toward_hinge > 0 else rect.x0
    bar = tall * 0.16
    return [
        Circle(x, y, tall, "existing", "none"),
        Line(((x, y - bar), (end, y - bar), (end, y + bar), (x, y + bar)), "existing", True, "metal"),
    ]


def _turn(rect: Rect, _toward_hinge: float, _axis_x: float | None) -> list[Shape]:
    x, y = _middle(rect)
    across = min(rect.x1 - rect.x0, rect.y1 - rect.y0)
    return [
        Circle(x, y, across, "existing", "none"),
        Line(((x, y - across * 0.42), (x, y + across * 0.42)), "existing"),
    ]


def _exit_device(rect: Rect, toward_hinge: float, _axis_x: float | None) -> list[Shape]:
    wide, tall = rect.x1 - rect.x0, rect.y1 - rect.y0
    head = min(wide * 0.2, tall * 2.5)
    x = rect.x0 + head if toward_hinge > 0 else rect.x1 - head
    rail = tall * 0.22
    low, high = min(x, rect.x1 if toward_hinge > 0 else rect.x0), max(x, rect.x1 if toward_hinge > 0 else rect.x0)
    return [
        Line(((x, rect.y0), (x, rect.y1)), "existing"),
        box(Rect(low, rect.y0 + rail, high, rect.y1 - rail), "existing", "metal"),
    ]


def _closer(rect: Rect, toward_hinge: float, _axis_x: float | None) -> list[Shape]:
    _, y = _middle(rect)
    near = rect.x1 if toward_hinge > 0 else rect.x0
    tall = rect.y1 - rect.y0
    pivot = near - toward_hinge * tall * 0.7
    return [Circle(pivot, y, tall * 0.5, "existing", "metal")]


def _lite(rect: Rect, _toward_hinge: float, _axis_x: float | None) -> list[Shape]:
    x0, y0, x1, y1 = rect
    wide, tall = x1 - x0, y1 - y0
    step = min(wide, tall) * 0.35
    return [
        Line(((x0 + wide * 0.15, y1 - tall * 0.15 - step), (x0 + wide * 0.15 + step, y1 - tall * 0.15)), "existing"),
        Line(((x0 + wide * 0.15, y1 - tall * 0.15 - 1.6 * step), (x0 + wide * 0.15 + 1.6 * step, y1 - tall * 0.15)),
             "existing"),
    ]  # fmt: skip


def _louvre(rect: Rect, _toward_hinge: float, _axis_x: float | None) -> list[Shape]:
    x0, y0, x1, y1 = rect
    count = 8
    levels = [y0 + (y1 - y0) * number / count for number in range(1, count)]
    return [Line(((x0, y), (x1, y)), "existing") for y in levels]


def _round(rect: Rect, _toward_hinge: float, _axis_x: float | None) -> list[Shape]:
    x, y = _middle(rect)
    return [Circle(x, y, min(rect.x1 - rect.x0, rect.y1 - rect.y0) * 0.7, "existing", "none")]


def _pull(rect: Rect, _toward_hinge: float, _axis_x: float | None) -> list[Shape]:
    x, _ = _middle(rect)
    tall = rect.y1 - rect.y0
    return [Line(((x, rect.y0 + tall * 0.12), (x, rect.y1 - tall * 0.12)), "outline")]


_SYMBOLS: Final[dict[str, Symbol]] = {
    "lever": _lever,
    "thumb-turn": _turn,
    "exit-device": _exit_device,
    "closer": _closer,
    "lite": _lite,
    "louvre": _louvre,
    "viewer": _round,
    "deadbolt": _round,
    "pull": _pull,
}
_FILLS: Final[dict[str, Fill]] = {
    "lite": "glass",
    "kick-plate": "metal",
    "push-plate": "metal",
    "label": "none",
    "louvre": "none",
}


def item_shapes(item: Item, rect: Rect, toward_hinge: float, axis_x: float | None = None) -> list[Shape]:
    """Draw an existing item.

    Parameters
    ----------
    item : Item
        Its kind and what happens to it decide the look.
    rect : Rect
        Footprint on the sheet [mm].
    toward_hinge : float
        1 when the hinge edge is to the right, else -1.
    axis_x : float, optional
        The lock's backset line on the sheet [mm]; None where the item is on another leaf, or no lock is known.
    """
    kind = item.kind or "other"
    if not remains(item):
        return [box(rect, "hidden", "none", kind), *cross(rect, "hidden", f"{kind} goes away")]
    shapes: list[Shape] = [box(rect, "existing", _FILLS.get(kind, "existing"), kind)]
    if kind in _SYMBOLS:
        shapes += _SYMBOLS[kind](rect, toward_hinge, axis_x)
    return shapes


def euro_outline(x: float, y: float) -> list[Shape]:
    """Draw a euro-profile cylinder about its plug's centre: round part 17, web 10 wide, 33 high [mm].

    Sizes from memory (DIN 18252), unverified; drawn as a symbol and not dimensioned.
    """
    round_r, web, low = 8.5, 5.0, y + 8.5 - 33.0
    return [
        Circle(x, y, 2 * round_r, "new", "new", "euro-cylinder"),
        box(Rect(x - web, low + web, x + web, y - 7.0), "new", "new"),
        Arc(x, low + web, web, 180.0, 360.0, "new"),
    ]
