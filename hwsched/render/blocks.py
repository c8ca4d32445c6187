"""What stands on a page, without paper: text, tables, drawings, check boxes.

Documents build it, renderers lay it out.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

from hwsched.drawings.drawing import Drawing

Style = Literal["body", "small", "strong", "caution", "stop", "title"]


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading of level 1 to 3; level 1 enters the outline of the file."""

    text: str
    level: int = 1
    anchor: str = ""
    """Name by which cells of tables lead to it; it then stands in the outline whatever its level."""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Plain text; ``caution`` and ``stop`` are set in a box that is seen in black and white too."""

    text: str
    style: Style = "body"


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list; numbered for steps."""

    items: tuple[str, ...]
    numbered: bool = False


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table."""

    title: str
    width: float = 1.0
    """Share of the table's width."""
    align: Literal["left", "right", "centre"] = "left"
    digits: int | None = None
    """Decimal places at which numbers are shown, such as 2 for money; None: as many as say something."""
    large: bool = False
    """Whether what begins with a digit is set larger where the page is read at a distance."""
    run_in: bool = False
    """Whether it is set behind the column before it, after a colon, where the page is read at the door."""
    below: bool = False
    """Whether it is set on a line of its own across the row where the page is read at the door, with its like."""


Cell = str | float | int | None
"""None is an empty cell; numbers stay numbers in a workbook; the text in TICK is a box to tick."""
TICK = "☐"


@dataclass(frozen=True, slots=True)
class Table:
    """Rows under columns; breaks over pages with its header repeated."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    title: str = ""
    """Also the sheet's name in a workbook."""
    sheet: str = ""
    """The sheet's name where tables with the same columns share one, each row then naming its table."""
    strong_rows: frozenset[int] = frozenset()
    leads_to: tuple[int, str] | None = None
    """Column whose cells lead to a heading: its anchor is the text with that before it."""
    pages_in: int | None = None
    """Column that says on which page of the file the heading stands to which its row leads."""
    abreast: int = 1
    """Columns of rows side by side where the page is read at the door; a workbook has one."""


@dataclass(frozen=True, slots=True)
class Facts:
    """Label and value pairs set in columns."""

    pairs: tuple[tuple[str, str], ...]
    columns: int = 2


@dataclass(frozen=True, slots=True)
class Drawings:
    """Views side by side, fitted into a height; where they would come out too small each gets a row of its own."""

    drawings: tuple[Drawing, ...]
    height_mm: float = 110.0
    """Of a row."""
    same_scale: bool = True
    """False: each view gets the largest scale that fits, such as a section beside an edge view."""
    paired: int = 0
    """So many of the first ones have one scale all the same, such as both faces beside a detail."""
    bars: Literal["", "in", "mm"] = ""
    """Unit of the scale bars that stand beside the scales; empty for none."""
    spare: bool = False
    """Whether it is set at the door only where it costs no sheet: of several places in the first that has room."""


@dataclass(frozen=True, slots=True)
class StepLine:
    """One step, with the cautions that come right before it and what is read and written down at it."""

    number: int
    where: str
    text: str
    cautions: tuple[str, ...] = ()
    readings: tuple[str, ...] = ()
    done: bool = False
    """Whether it is done before: its box is ticked."""


@dataclass(frozen=True, slots=True)
class Steps:
    """Numbered steps with a box to tick; cautions in a box that is seen in black and white too."""

    lines: tuple[StepLine, ...]


@dataclass(frozen=True, slots=True)
class Blank:
    """One fact on a sheet that is filled in by hand: what is known of it, or room to write."""

    label: str
    known: str = ""
    words: tuple[str, ...] = ()
    """To tick one of, where nothing is known and the words are few."""
    unit: str = ""
    """Behind what is written."""
    sketch: Drawing | None = None
    """How it is measured; schematic, in paper millimetres."""
    span: int = 1
    """Columns that it takes."""


@dataclass(frozen=True, slots=True)
class Blanks:
    """Facts in a grid, to be filled in by hand."""

    blanks: tuple[Blank, ...]
    columns: int = 4


@dataclass(frozen=True, slots=True)
class Ruled:
    """A table that is filled in by hand: rows that are high enough to be written in."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    """What is known; a cell is empty to be written in."""
    least: int = 0
    """Empty rows that follow in any case."""
    fill: bool = False
    """Whether empty rows follow to the foot of the page."""


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture as large as the page has room for it; the content is one that `hwsched.render.pictures` took."""

    content: bytes
    """Empty: its caption stands alone."""
    caption: str = ""
    """Over it."""
    height_mm: float = 0.0
    """It is no higher than this; 0: as large as there is room."""
    spare: bool = False
    """Whether it is set at the door only where it costs no sheet: the first of several that has room."""


@dataclass(frozen=True, slots=True)
class Letterhead:
    """What an office puts at the head of its documents."""

    lines: tuple[str, ...] = ()
    logo: bytes = b""
    """A content that `hwsched.render.pictures` took; empty for none."""
    logo_mm: float = 12.0
    """Height on the first page; in the head of a page at the door it is as high as the head."""


@dataclass(frozen=True, slots=True)
class SignOff:
    """Lines to sign: role, name, date."""

    roles: tuple[str, ...]
    abreast: int = 1
    """So many of them stand side by side."""


@dataclass(frozen=True, slots=True)
class PageBreak:
    """Start a new page."""


@dataclass(frozen=True, slots=True)
class Columns:
    """From here on the page is set in so many columns, read down the left one first."""

    count: int


@dataclass(frozen=True, slots=True)
class Marked:
    """A block of which some rows, lines, pairs or views are otherwise since: a bar in the margin, and a letter."""

    block: "Block"
    rows: frozenset[int]
    """Counted from 0; in a block without rows any of them marks the whole."""
    letter: str


Block = (
    Heading
    | Paragraph
    | Bullets
    | Steps
    | Table
    | Facts
    | Drawings
    | Blanks
    | Ruled
    | SignOff
    | Picture
    | PageBreak
    | Columns
    | Marked
)


@dataclass(frozen=True, slots=True)
class Section:
    """Blocks that start on a page of their own under one header; ``mark`` is shown in it."""

    blocks: tuple[Block, ...]
    mark: str = ""
    subtitle: str = ""
    """Behind the title in its head, in place of the document's; empty for that one."""
    landscape: bool = False
    at_door: bool = False
    """Whether it is read at the door, at arm's length, and not at a desk."""
    code: str = ""
    """By which a sheet is known: in the head of each page, as text and to be read by a camera; capitals and digits."""
    stop: bool = False
    """Whether STOP stands across every sheet: what it shows may not be installed."""
    dense: bool = False
    """Whether it is set in narrow letters with little air: long lists for the desk."""
    sheets: int = 0
    """So many it may take at the door: only where it would take more are drawings set coarser than they ask for."""
    whole_sheets: bool = False
    """Printed on both sides of the paper it ends on a back, so that what follows starts on a sheet of its own."""


@dataclass(frozen=True, slots=True)
class Event:
    """Something that is due on a day, for a calendar."""

    key: str
    """Stays the same from one issue to the next, so that a calendar changes what it has in place of adding."""
    day: date
    title: str
    text: str = ""
    place: str = ""


@dataclass(frozen=True, slots=True)
class Document:
    """One document, ready to be laid out."""

    title: str
    project: str
    revision: str
    date: str
    sections: Sequence[Section]
    """Gone through once from the first to the last, so a large document may make each when it is asked for."""
    subtitle: str = ""
    footer: str = ""
    """One line under every page, such as whose decision the document does not replace."""
    events: tuple[Event, ...] = ()
    """What of it belongs into a calendar."""
    letterhead: Letterhead | None = None
    language: str = "en"
    """That its pages say they are written in."""
