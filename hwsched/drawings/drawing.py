"""Neutral drawings: lines, shapes, texts and dimensions in millimetres; no paper, no screen, no colour values.

Coordinates are mm of the thing drawn, x right and y up. Sizes that belong to paper (letter heights, line widths) are
named by role and given their measure by whoever renders; offsets in paper millimetres say so.
"""

from dataclasses import dataclass, field
from typing import Literal

Pen = Literal[
    "outline", "thin", "hidden", "centre", "dimension", "new", "existing", "keepout", "warning", "frame", "hatch", "cut"
]
"""What a line means; renderers give it width, dash and colour (light and dark)."""
Fill = Literal["none", "leaf", "glass", "metal", "new", "existing", "keepout", "warning", "frame", "hole"]
Hatch = Literal["", "wood", "metal", "aluminium", "glass", "other"]
"""Of what is something that a section cuts through; empty where nothing is cut."""
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
    hatch: Hatch = ""
    about: str = field(default="", compare=False, repr=False)
    """Of which thing it is, so that all of that is known together: an existing item's identifier, UNIT, LEAD ...
    What is drawn alike is alike, whosever it is."""


@dataclass(frozen=True, slots=True)
class Circle:
    """Circle."""

    x: float
    y: float
    diameter: float
    pen: Pen = "outline"
    fill: Fill = "none"
    name: str = ""
    about: str = field(default="", compare=False, repr=False)


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
    about: str = field(default="", compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text; its height is the role's, in paper millimetres.

    ``dx`` and ``dy`` move it from its point by paper millimetres, so that texts keep their distance at every scale.
    """

    x: float
    y: float
    text: str
    role: TextRole = "label"
    anchor: Anchor = "left"
    angle_deg: float = 0.0
    dx: float = 0.0
    dy: float = 0.0


@dataclass(frozen=True, slots=True)
class Callout:
    """Words about a thing: set in it where ``room`` is enough, else in a column beside the drawing with a leader.

    The column's texts are spread so that none covers another; that needs paper, hence the renderer does it.
    """

    x: float
    y: float
    text: str
    side: Literal["left", "right"] = "right"
    room: tuple[float, float] = (0.0, 0.0)
    """Width and height about the point in which the words may stand [mm of the thing drawn]."""
    role: TextRole = "small"
    about: str = field(default="", compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measured distance between two points, drawn on a line offset from them.

    ``offset`` is in paper millimetres, to the left of the way from start to end; ``text`` is already formatted.
    ``axis`` says whether the plain, the horizontal or the vertical distance is meant. Where the words do not fit
    between the arrows they stand beyond ``outside``.
    """

    x0: float
    y0: float
    x1: float
    y1: float
    offset: float
    text: str
    axis: Literal["aligned", "horizontal", "vertical"] = "aligned"
    outside: Literal["start", "end"] = "end"


Shape = Line | Circle | Arc | Text | Callout | Dimension


@dataclass(frozen=True, slots=True)
class Drawing:
    """One view, to scale."""

    title: str
    shapes: tuple[Shape, ...]
    bounds: tuple[float, float, float, float]
    """x0, y0, x1, y1 of the thing drawn [mm], without dimensions."""
    notes: tuple[str, ...] = ()
    """What a reader must know: what was not drawn and which fact it needs, what is drawn by convention only."""
    to_scale: bool = True
    """False for a drawing that only says what is unknown, and for a schematic: no scale is stated for it."""
    plain: bool = False
    """Without title and scale, such as a legend."""
    schematic: bool = False
    """Drawn in paper millimetres, letters and all: it is set as it is."""
    coarsest: float = 0.0
    """Denominator of the smallest scale at which it says anything: it gets more height rather; 0: any."""
    unknown: tuple[str, ...] = ()
    """Why nothing is drawn, where it only says that: the sentences, in lines of any length."""


@dataclass(frozen=True, slots=True)
class View:
    """One of several drawings that stand beside one another."""

    name: str
    """inside, key, edge or section."""
    drawing: Drawing
    on_floor: bool
    """Whether its heights count from the finished floor; what is seen from above has none."""
