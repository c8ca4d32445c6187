"""True-size printing: drawings at 1:1 on one sheet or on tiles that overlap, with marks to cut and join them.

Distances on the sheets are those of the drawing; nothing is scaled, and the file asks viewers not to scale either.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import ceil
from pathlib import Path
from typing import Any, Final

from hwsched.drawings.drawing import Drawing
from hwsched.language import phrase
from hwsched.render import print_style as style
from hwsched.render.fonts import width_per_size
from hwsched.render.lower import OnPaper, lower
from hwsched.render.pages import RenderCancelledError
from hwsched.render.paint import Painter
from hwsched.render.pdf import Paper, new_canvas
from hwsched.render.screen import PenLook
from hwsched.render.typeset import shown
from hwsched.render.wrap import wrap
from hwsched.writing import replacing

EDGE_MM: Final = 10.0
"""Kept free at every edge of a sheet: what usual printers cannot print."""
HEAD_MM: Final = 12.0
FOOT_MM: Final = 10.0
OVERLAP_MM: Final = 12.0
_AIR_MM: Final = 1.0
"""About a drawing, so that lines at its rim are shown in full width."""
_CUT: Final = PenLook((0.35, 0.35, 0.35), 0.13, (3.0, 2.0))
_MARK: Final = PenLook((0.0, 0.0, 0.0), 0.18)
_CHECK_MM: Final = 100.0
_LIST_SIZE: Final = 9.0
_LIST_LINE: Final = 12.5
"""Letters and lines of the list in front [pt]."""
_WORDS: Final = "Print at 100 %, no scaling. Measure the line of 100 mm before use."


@dataclass(frozen=True, slots=True)
class Tiling:
    """How a drawing is spread over sheets."""

    columns: int
    rows: int
    wide_mm: float
    """Width of what a sheet shows, overlap included."""
    tall_mm: float
    landscape: bool

    @property
    def sheets(self) -> int:
        """Number of sheets."""
        return self.columns * self.rows


@dataclass(frozen=True, slots=True)
class Sheets:
    """What was written into a file."""

    total: int
    """Number of its pages, those of the list in front among them."""
    first: tuple[int, ...]
    """Page on which each drawing begins, from 1."""


def tiling(width_mm: float, height_mm: float, paper: Paper) -> Tiling:
    """Spread a size over the fewest sheets, upright where both ways need as many.

    Parameters
    ----------
    width_mm, height_mm : float
        Of the drawing at 1:1, texts included.
    paper : {"letter", "a4"}
        Sheet.
    """
    short, long = (side / style.MM for side in style.PAPERS[paper])
    found: list[Tiling] = []
    for landscape in (False, True):
        wide, tall = (long, short) if landscape else (short, long)
        wide, tall = wide - 2 * EDGE_MM, tall - 2 * EDGE_MM - HEAD_MM - FOOT_MM
        columns, rows = (
            # Less a touch, or a drawing that fills its sheets exactly would get one more, empty but for its frame.
            1 if need <= shown_mm else 1 + ceil((need - shown_mm) / (shown_mm - OVERLAP_MM) - 1e-9)
            for need, shown_mm in ((width_mm, wide), (height_mm, tall))
        )
        found.append(Tiling(columns, rows, wide, tall, landscape))
    # The first of equals, which is upright.
    return min(found, key=lambda tiles: tiles.sheets)


def render_true_size(
    drawings: Drawing | Sequence[Drawing],
    path: Path,
    paper: Paper = "letter",
    *,
    heading: str = "",
    date: str = "",
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
    contents: Sequence[tuple[str, int]] = (),
) -> Sheets:
    """Write drawings as PDF at 1:1; the file appears whole or not at all.

    Parameters
    ----------
    drawings : Drawing or sequence of Drawing
        One or several templates; each starts on a sheet of its own.
    path : Path
        Where.
    paper : {"letter", "a4"}
        Sheet.
    heading : str
        Stands on every sheet: project, revision, date.
    date : str
        Day that the file says it was made on, as 2031-05-01.
    progress : callable, optional
        Gets the drawings done and how many there are.
    cancelled : callable, optional
        Asked at every sheet; True stops.
    contents : sequence of (str, int), optional
        What a person looks for, with the place of its drawing among them, from 0: a list in front says its page.

    Returns
    -------
    Sheets
        How many there are, and on which each drawing begins.

    Raises
    ------
    RenderCancelledError
        When ``cancelled`` said so; nothing was written.
    OSError
        When the folder cannot be written.
    """
    listed = [drawings] if isinstance(drawings, Drawing) else list(drawings)
    views = [lower(drawing, 1.0) for drawing in listed]
    air = 2 * _AIR_MM
    tiles = [tiling(v.extent[2] - v.extent[0] + air, v.extent[3] - v.extent[1] + air, paper) for v in views]
    in_front = ceil(len(contents) / _lines_of_list(paper)) if contents else 0
    total = in_front + sum(tile.sheets for tile in tiles)
    with replacing(Path(path)) as beside:
        canvas = new_canvas(beside, paper, date)
        # Viewers shrink a page to the printer's margins unless the file asks them not to; a template at 97 % drills
        # every hole in the wrong place.
        canvas.setViewerPreference("PrintScaling", "None")
        canvas.setTitle(shown(heading) or phrase("True-size templates"))
        canvas.setCreator("hwsched")
        canvas.setAuthor("")
        number = in_front
        pages = [in_front + 1 + sum(tile.sheets for tile in tiles[:place]) for place in range(len(tiles))]
        _list_in_front(canvas, paper, heading, total, [(text, listed[at].title, pages[at]) for text, at in contents])
        for done, (drawing, view, tile) in enumerate(zip(listed, views, tiles, strict=True), start=1):
            # Who holds a packet in hand looks for its template by name.
            canvas.bookmarkPage(f"template-{done}")
            canvas.addOutlineEntry(shown(drawing.title), f"template-{done}", 0)
            for row in range(tile.rows):
                for column in range(tile.columns):
                    if cancelled is not None and cancelled():
                        raise RenderCancelledError
                    number += 1
                    _sheet(
                        canvas,
                        drawing,
                        view,
                        tile,
                        row,
                        column,
                        paper,
                        heading,
                        phrase("Page {number} of {total}", number=number, total=total),
                    )
            if progress is not None:
                progress(done, len(listed))
        canvas.save()
    return Sheets(total, tuple(pages))


def _lines_of_list(paper: Paper) -> int:
    free = style.PAPERS[paper][1] - (2 * EDGE_MM + HEAD_MM + FOOT_MM) * style.MM - 2 * _LIST_LINE
    return int(free / _LIST_LINE)


def _list_in_front(
    canvas: Any, paper: Paper, heading: str, total: int, rows: Sequence[tuple[str, str, int]]
) -> None:  # fmt: skip
    """Paint what stands on which page: who holds a packet in hand knows a mark and a name."""
    most, size = _lines_of_list(paper), style.PAPERS[paper]
    left, top = EDGE_MM * style.MM, size[1] - (EDGE_MM + HEAD_MM) * style.MM - _LIST_LINE
    columns = (left, left + 0.42 * size[0], size[0] - EDGE_MM * style.MM - 34.0)
    for begin in range(0, len(rows), most):
        canvas.setPageSize(size)
        painter = Painter(canvas)
        page = phrase("Page {number} of {total}", number=begin // most + 1, total=total)
        _head_and_foot(painter, canvas, size, phrase("Where each template lies"), heading, page, False)
        heads = (phrase("Opening"), phrase("Template"), phrase("Page"))
        painter.lines(list(zip(columns, (top,) * 3, heads, strict=True)), _LIST_SIZE, True, style.INK)
        places = []
        for line, (text, title, number) in enumerate(rows[begin : begin + most], start=1):
            y = top - line * _LIST_LINE - 3.0
            for x, until, said in zip(columns, (*columns[1:], size[0]), (text, title, str(number)), strict=True):
                places.append((x, y, wrap(shown(said), until - x - 8.0, _LIST_SIZE)[0]))
        painter.lines(places, _LIST_SIZE, False, style.INK)
        canvas.showPage()


def _name(row: int, column: int) -> str:
    """Name a tile: letter of its row from the top, number of its column from the left."""
    letters = ""
    row += 1
    while row:
        row, rest = divmod(row - 1, 26)
        letters = chr(65 + rest) + letters
    return f"{letters}{column + 1}"


def _sheet(
    canvas: Any, drawing: Drawing, view: OnPaper, tile: Tiling, row: int, column: int, paper: Paper, heading: str,
    page: str,
) -> None:  # fmt: skip
    short, long = style.PAPERS[paper]
    size = (long, short) if tile.landscape else (short, long)
    canvas.setPageSize(size)
    painter = Painter(canvas)
    x0, y1 = view.extent[0] - _AIR_MM, view.extent[3] + _AIR_MM
    step_x, step_y = tile.wide_mm - OVERLAP_MM, tile.tall_mm - OVERLAP_MM
    left, top = x0 + column * step_x, y1 - row * step_y
    page_left, page_top = EDGE_MM, size[1] / style.MM - EDGE_MM - HEAD_MM
    mm = style.MM
    canvas.saveState()
    window = canvas.beginPath()
    window.rect(page_left * mm, (page_top - tile.tall_mm) * mm, tile.wide_mm * mm, tile.tall_mm * mm)
    canvas.clipPath(window, stroke=0, fill=0)
    painter.paint(view, page_left - left, page_top - top)
    canvas.restoreState()
    # Restoring takes pen and letters back behind the painter's back: it must not believe that they are still set.
    painter.forget()
    name = (
        phrase("Tile {name} of {rows} × {columns}", name=_name(row, column), rows=tile.rows, columns=tile.columns)
        if tile.sheets > 1
        else phrase("One sheet")
    )
    _frame(canvas, painter, tile, row, column, page_left, page_top)
    _head_and_foot(painter, canvas, size, drawing.title, heading, f"{name} · {page}", tile.sheets > 1)
    canvas.showPage()


def _frame(canvas: Any, painter: Painter, tile: Tiling, row: int, column: int, left: float, top: float) -> None:
    """Draw crop marks at the corners of what the sheet shows, and lines to lay the neighbours on."""
    mm = style.MM
    right, bottom = left + tile.wide_mm, top - tile.tall_mm
    painter.set_pen(_MARK)
    if tile.sheets > 1:
        for x, out_x in ((left, -1.0), (right, 1.0)):
            for y, out_y in ((top, 1.0), (bottom, -1.0)):
                canvas.line((x + out_x * 1.0) * mm, y * mm, (x + out_x * 6.0) * mm, y * mm)
                canvas.line(x * mm, (y + out_y * 1.0) * mm, x * mm, (y + out_y * 6.0) * mm)
    painter.set_pen(_CUT)
    places = []
    if column + 1 < tile.columns:
        x = right - OVERLAP_MM
        canvas.line(x * mm, bottom * mm, x * mm, top * mm)
        places.append(((x + 1.0) * mm, (top - 4.0) * mm, phrase("{name} starts here", name=_name(row, column + 1))))
    if row + 1 < tile.rows:
        y = bottom + OVERLAP_MM
        canvas.line(left * mm, y * mm, right * mm, y * mm)
        places.append(((left + 1.0) * mm, (y - 3.0) * mm, phrase("{name} starts here", name=_name(row + 1, column))))
    painter.lines(places, 5.0, False, style.SOFT)


def _head_and_foot(
    painter: Painter, canvas: Any, size: tuple[float, float], title: str, heading: str, sheet: str, check: bool
) -> None:
    mm = style.MM
    wide, tall = size
    left, right = EDGE_MM * mm, wide - EDGE_MM * mm
    sheet_width = width_per_size(sheet) * 7.5
    y = tall - EDGE_MM * mm - 8.0
    for number, line in enumerate(wrap(title, right - left - sheet_width - 10.0, 9.0, True)[:1]):
        painter.lines([(left, y - number * 10.0, line)], 9.0, True, style.INK)
    painter.lines([(right - sheet_width, y, sheet)], 7.5, False, style.SOFT)
    places = [(left, y - 10.0 - number * 8.0, line) for number, line in enumerate(wrap(heading, right - left, 7.0)[:2])]
    painter.lines(places, 7.0, False, style.SOFT)
    base = EDGE_MM * mm
    painter.lines([(left, base, _WORDS)], 7.0, False, style.INK)
    if check:
        end = right
        painter.set_pen(_MARK)
        start = end - _CHECK_MM * mm
        canvas.line(start, base + 10.0, end, base + 10.0)
        for x in (start, end):
            canvas.line(x, base + 7.0, x, base + 13.0)
        painter.lines([(start + 4.0, base + 12.0, phrase("100 mm"))], 6.0, False, style.INK)
