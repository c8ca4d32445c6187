"""Neutral drawings: lines, shapes, texts and dimensions in millimetres; no paper, no screen, no colour values.

Coordinates are mm of the thing drawn, x right and y up. Sizes that belong to paper (text heights, line widths) are
named by role and given their measure by whoever renders.
"""

from dataclasses import dataclass
from typing import Literal

Pen = Literal["outline", "thin", "hidden", "centre", "dimension", "new", "existing", "keepout", "warning", "frame"]
"""What a line means; renderers give it width, dash and colour (light and dark)."""
Fill = Literal["none", "leaf", "glass", "metal", "new", "existing", "keepout", "warning", "frame", "hole"]
TextRole = Literal["label", "dimension", "title", "small", "warning"]
Anchor = Literal["left", "centre", "right"]


@dataclass(frozen=True, slots=True)
class Line:
    """Straight lines through points."""

    points: tuple[tuple[float, float], ...]
    pen: Pen = "outline"
    closed: bool = False
    fill: Fill = "none"
    name: str = ""
    """What it shows, for tool tips and tests."""


@dataclass(frozen=True, slots=True)
class Circle:
    """Circle."""

    x: float
    y: float
    diameter: float
    pen: Pen = "outline"
    fill: Fill = "none"
    name: str = ""


@dataclass(frozen=True, slots=True)
class Arc:
    """Circular arc, degrees counter-clockwise from +x."""

    x: float
    y: float
    radius: float
    start_deg: float
    end_deg: float
    pen: Pen = "thin"
    name: str = ""


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text; its height is the role's, in paper millimetres."""

    x: float
    y: float
    text: str
    role: TextRole = "label"
    anchor: Anchor = "left"
    angle_deg: float = 0.0


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measured distance between two points, drawn on a line offset from them.

    ``offset`` is in paper millimetres, to the left of the way from start to end; ``text`` is already formatted.
    ``axis`` says whether the plain, the horizontal or the vertical distance is meant.
    """

    x0: float
    y0: float
    x1: float
    y1: float
    offset: float
    text: str
    axis: Literal["aligned", "horizontal", "vertical"] = "aligned"


Shape = Line | Circle | Arc | Text | Dimension


@dataclass(frozen=True, slots=True)
class Drawing:
    """One view, to scale."""

    title: str
    shapes: tuple[Shape, ...]
    bounds: tuple[float, float, float, float]
    """x0, y0, x1, y1 of the thing drawn [mm], without dimensions."""
