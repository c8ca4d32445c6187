"""What the window looks like, in numbers: spacing, letters, colours by role for light and dark, shapes of states.

Here stand the only colours and sizes of the desktop. A widget asks for a role ("soft", "fits") and a step
(`SPACE.small`), never for a colour or a number of pixels; drawings of openings have the pens of
`hwsched.render.screen`.

Sizes are those at 100 %: `scaled` makes them those of the text size that a person chose, `wide` is the room that so
many figures take in it, `font` gives letters of a step.
"""

from dataclasses import dataclass
from typing import Final, Literal, get_args

from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QFont, QFontDatabase, QFontMetricsF, QGuiApplication, QPalette

from hwsched.language import to_phrase

Surface = Literal["window", "pane", "field", "tint", "hover", "head-ground", "refused-ground", "asked-ground", "accent"]
"""On what text stands."""
Text = Literal["text", "soft", "link", "fits", "not-fits", "to-measure", "held", "stale", "refused"]
"""Text that stands on any surface save the accent."""
Line = Literal["edge", "focus", "line"]
"""Edges of what can be used, the ring of the focus, lines that only part things."""
Role = Surface | Text | Line | Literal["on-accent", "disabled"]


@dataclass(frozen=True, slots=True)
class Space:
    """Steps of spacing [px]."""

    none: int = 0
    hair: int = 4
    small: int = 8
    middle: int = 12
    large: int = 16
    wide: int = 24


@dataclass(frozen=True, slots=True)
class Type:
    """Sizes of letters [px]."""

    small: int = 12
    normal: int = 13
    large: int = 15
    title: int = 20


@dataclass(frozen=True, slots=True)
class Row:
    """Heights of rows [px]."""

    grid: int = 28
    form: int = 32


SPACE: Final = Space()
TYPE: Final = Type()
ROW: Final = Row()
CORNER: Final = 4
"""How round a corner is [px]."""
TARGET: Final = 24
"""What is clicked is at least so wide and high [px]."""
ICON: Final = 18
"""An icon beside words [px]."""
THIN: Final = 1
"""An edge or a line [px]."""
FOCUS: Final = 2
"""How thick the ring of the focus is [px]."""
FIELD: Final = 72
"""A field of a form that has the whole width is no wider than so many figures: farther on nobody reads."""
TEXT_SIZES: Final = (80, 90, 100, 110, 125, 150, 175, 200)
"""Text sizes that are offered [%]."""

Step = Literal["small", "normal", "large", "title"]

# Role: light, dark. The accent is the green of the documents' headings (`render.print_style.ACCENT`); in the dark it is
# the same hue, as light as text on it and beside it needs.
COLOURS: Final[dict[Role, tuple[str, str]]] = {
    "window": ("#eceeed", "#15181b"),
    "pane": ("#f6f7f6", "#1c2024"),
    "field": ("#ffffff", "#23282d"),
    "tint": ("#d9e7e3", "#264039"),
    "hover": ("#e4eae7", "#2a3036"),
    "head-ground": ("#e1e7ec", "#28333c"),
    "refused-ground": ("#f9dfdc", "#4a2527"),
    "asked-ground": ("#fbecc9", "#433615"),
    "accent": ("#214a45", "#6fc7b3"),
    "on-accent": ("#ffffff", "#0c1a17"),
    "text": ("#141a21", "#e8ecee"),
    "soft": ("#4d5762", "#b3bcc4"),
    "disabled": ("#7c858d", "#7f8991"),
    "link": ("#1d5a52", "#7fd0be"),
    "fits": ("#17603a", "#7ad3a0"),
    "not-fits": ("#8f300e", "#f3ab88"),
    "to-measure": ("#57379b", "#cbb2f7"),
    "held": ("#6d4900", "#e9bd58"),
    "stale": ("#505a64", "#b4bcc3"),
    "refused": ("#98142a", "#ffa99d"),
    "edge": ("#78828b", "#7b8690"),
    "focus": ("#214a45", "#6fc7b3"),
    "line": ("#d2d8d5", "#363d44"),
}
_BREATH: Final = 0.14
SURFACES: Final[tuple[Surface, ...]] = tuple(each for each in get_args(Surface) if each != "accent")
TEXTS: Final[tuple[Text, ...]] = get_args(Text)

State = Literal["fits", "not-fits", "to-measure", "held", "stale"]
Shape = Literal["disc", "crossed-square", "circle", "bar", "half-disc"]


@dataclass(frozen=True, slots=True)
class StateLook:
    """How a state is told: by its word, its shape and its colour, never by one of them alone."""

    word: str
    shape: Shape
    role: Text


STATES: Final[dict[State, StateLook]] = {
    "fits": StateLook(to_phrase("Fits"), "disc", "fits"),
    "not-fits": StateLook(to_phrase("Does not fit"), "crossed-square", "not-fits"),
    "to-measure": StateLook(to_phrase("To measure"), "circle", "to-measure"),
    "held": StateLook(to_phrase("Held"), "bar", "held"),
    "stale": StateLook(to_phrase("Not worked out yet"), "half-disc", "stale"),
}


def dark_now() -> bool:
    """Tell whether the window is dark at present."""
    return QGuiApplication.palette().color(QPalette.ColorRole.Base).lightness() < 128


def colour(role: Role, *, dark: bool | None = None) -> QColor:
    """Return the colour of a role.

    Parameters
    ----------
    role : str
        What it is for.
    dark : bool, optional
        In which theme; that of the window at present unless it is said.

    Returns
    -------
    QColor
        Opaque.
    """
    return QColor(COLOURS[role][dark_now() if dark is None else dark])


def wash(role: Text, *, dark: bool | None = None) -> QColor:
    """Return a surface with a breath of a text's colour, on which that text stands; it is opaque."""
    ground, ink = colour("field", dark=dark), colour(role, dark=dark)
    parts = ((ground.red(), ink.red()), (ground.green(), ink.green()), (ground.blue(), ink.blue()))
    return QColor(*(round(under + (over - under) * _BREATH) for under, over in parts))


def at_percent(size: float, percent: int) -> int:
    """Return a size at 100 % as it is at a text size [px]."""
    return round(size * percent / 100)


def scaled(size: float) -> int:
    """Return a size at 100 % as it is at the text size that the person chose [px]."""
    letters = QGuiApplication.font().pixelSize()
    # Letters in points are the system's: the look was not put on, so no text size was chosen.
    return round(size * letters / TYPE.normal) if letters > 0 else round(size)


def icon_size() -> QSize:
    """Return how large an icon beside words is at the text size that the person chose."""
    return QSize(scaled(ICON), scaled(ICON))


def wide(figures: float) -> int:
    """Return how wide so many figures are in letters of the text size that the person chose [px]."""
    return round(figures * QFontMetricsF(QGuiApplication.font()).horizontalAdvance("0"))


def font(step: Step = "normal", *, bold: bool = False, tabular: bool = False) -> QFont:
    """Return letters of a step in the text size that the person chose.

    Parameters
    ----------
    step : str
        Which of the four sizes.
    bold : bool
        Whether they are bold.
    tabular : bool
        Whether all figures are equally wide, as numbers under one another want it.

    Returns
    -------
    QFont
        Of the window's family.
    """
    made = QFont(QGuiApplication.font())
    made.setPixelSize(scaled(getattr(TYPE, step)))
    made.setBold(bold)
    if tabular:
        made.setFeature(QFont.Tag("tnum"), 1)
    return made


def fixed_font() -> QFont:
    """Return letters that are all equally wide, for texts whose columns stand under one another."""
    made = QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont)
    made.setPixelSize(scaled(TYPE.normal))
    return made
