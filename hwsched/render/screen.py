"""How pens, fills and letters look: plain colours, widths and dashes for PDF, SVG and the desktop, light and dark.

Widths from the series 0.13, 0.18, 0.25, 0.35, 0.5, 0.7 mm with wide to narrow 2:1 (ISO 128, from memory). What is new
and what is existing differ in line width and brightness as well as in hue, so that black and white print tells them
apart.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final, NamedTuple

from hwsched.drawings.drawing import Fill, Pen, TextRole

Colour = tuple[float, float, float]
"""Red, green, blue from 0 to 1."""


class PenLook(NamedTuple):
    """Look of a line."""

    colour: Colour
    width_mm: float
    dash_mm: tuple[float, ...] = ()
    """Strokes and gaps in turn; empty for a full line."""


@dataclass(frozen=True, slots=True)
class Look:
    """Everything a painter must know to draw for one ground."""

    pens: Mapping[Pen, PenLook]
    fills: Mapping[Fill, Colour | None]
    """None: nothing is filled. Keep-outs are hatched besides, see `hwsched.render.lower`."""
    letters: Mapping[TextRole, Colour]
    ground: Colour
    bold: frozenset[TextRole] = frozenset({"title", "warning"})


LIGHT: Final = Look(
    pens={
        "outline": PenLook((0.10, 0.13, 0.17), 0.35),
        "thin": PenLook((0.10, 0.13, 0.17), 0.18),
        "hidden": PenLook((0.28, 0.31, 0.36), 0.18, (2.0, 1.0)),
        "centre": PenLook((0.36, 0.22, 0.46), 0.13, (6.0, 1.0, 0.8, 1.0)),
        "dimension": PenLook((0.20, 0.24, 0.30), 0.13),
        "new": PenLook((0.58, 0.20, 0.04), 0.5),
        "existing": PenLook((0.34, 0.40, 0.47), 0.25),
        "keepout": PenLook((0.42, 0.35, 0.12), 0.13, (1.2, 0.8)),
        "warning": PenLook((0.66, 0.05, 0.14), 0.7),
        "frame": PenLook((0.30, 0.30, 0.30), 0.25),
        "hatch": PenLook((0.50, 0.50, 0.50), 0.13),
        "cut": PenLook((0.10, 0.13, 0.17), 0.5, (5.0, 1.0, 0.8, 1.0)),
    },
    fills={
        "none": None,
        "leaf": (0.975, 0.968, 0.945),
        "glass": (0.88, 0.93, 0.95),
        "metal": (0.86, 0.87, 0.88),
        "new": (0.98, 0.83, 0.68),
        "existing": (0.91, 0.92, 0.93),
        "keepout": None,
        "warning": (1.0, 0.90, 0.88),
        "frame": (0.83, 0.83, 0.82),
        "hole": (1.0, 1.0, 1.0),
    },
    letters={
        "label": (0.10, 0.13, 0.17),
        "dimension": (0.10, 0.13, 0.17),
        "title": (0.10, 0.13, 0.17),
        "small": (0.20, 0.24, 0.30),
        "warning": (0.66, 0.05, 0.14),
    },
    ground=(1.0, 1.0, 1.0),
)
"""For paper and a light screen."""

DARK: Final = Look(
    pens={
        "outline": PenLook((0.88, 0.89, 0.87), 0.35),
        "thin": PenLook((0.80, 0.82, 0.80), 0.18),
        "hidden": PenLook((0.62, 0.65, 0.66), 0.18, (2.0, 1.0)),
        "centre": PenLook((0.72, 0.60, 0.84), 0.13, (6.0, 1.0, 0.8, 1.0)),
        "dimension": PenLook((0.75, 0.77, 0.76), 0.13),
        "new": PenLook((1.00, 0.67, 0.36), 0.5),
        "existing": PenLook((0.62, 0.69, 0.76), 0.25),
        "keepout": PenLook((0.80, 0.73, 0.45), 0.13, (1.2, 0.8)),
        "warning": PenLook((1.00, 0.46, 0.45), 0.7),
        "frame": PenLook((0.60, 0.60, 0.58), 0.25),
        "hatch": PenLook((0.55, 0.55, 0.55), 0.13),
        "cut": PenLook((0.88, 0.89, 0.87), 0.5, (5.0, 1.0, 0.8, 1.0)),
    },
    fills={
        "none": None,
        "leaf": (0.19, 0.20, 0.21),
        "glass": (0.16, 0.24, 0.28),
        "metal": (0.30, 0.31, 0.33),
        "new": (0.46, 0.28, 0.11),
        "existing": (0.26, 0.28, 0.31),
        "keepout": None,
        "warning": (0.34, 0.13, 0.13),
        "frame": (0.27, 0.27, 0.26),
        "hole": (0.07, 0.08, 0.09),
    },
    letters={
        "label": (0.90, 0.91, 0.89),
        "dimension": (0.90, 0.91, 0.89),
        "title": (0.95, 0.95, 0.93),
        "small": (0.80, 0.82, 0.81),
        "warning": (1.00, 0.55, 0.53),
    },
    ground=(0.11, 0.12, 0.13),
)
"""For a dark screen."""
