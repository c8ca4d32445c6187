"""Sheets that are filled in by hand: facts in a grid with room to write, boxes to tick, small sketches; ruled tables.

What is known stands in the size in which it would be written, so that both read alike.
"""

from typing import Final, NamedTuple

from hwsched.drawings.drawing import Drawing
from hwsched.render import print_style as style
from hwsched.render.blocks import Blank, Blanks, Ruled
from hwsched.render.fonts import width_per_size
from hwsched.render.lower import lower
from hwsched.render.pages import Pages
from hwsched.render.wrap import wrap

WRITTEN: Final = 11.0
"""Size of what is known, and least height of what is written [pt]."""
_ROW: Final = 8.0 * style.MM
"""Least height of what is written in: a line of a hand on a board."""
_LABEL: Final = 7.0
_LABEL_LEADING: Final = _LABEL * 1.2
_WORD: Final = 8.0
_WORD_LEADING: Final = 11.5
_TICK: Final = 7.0
_AIR: Final = 10.0
"""Between two columns of a grid."""
_UNDER: Final = 3.0
"""Between a heading and its first row."""
_LEADING: Final = WRITTEN * 1.2
_PAD: Final = 3.0
_SKETCH_MM: Final = (21.0, 14.0)
"""Least room for a sketch."""


def _room(sketch: Drawing | None) -> tuple[float, float]:
    """Return width and height that a sketch takes, with air to what is written beside it [pt]."""
    if sketch is None:
        return 0.0, 0.0
    x0, y0, x1, y1 = sketch.bounds
    return max(_SKETCH_MM[0], x1 - x0 + 3.0) * style.MM, max(_SKETCH_MM[1], y1 - y0 + 1.0) * style.MM


class _Cell(NamedTuple):
    blank: Blank
    x: float
    wide: float
    """Of what stands beside the sketch."""
    label: tuple[str, ...]
    known: tuple[str, ...]
    words: tuple[tuple[tuple[float, str], ...], ...]
    """Lines of words to tick, each with its place along the line."""

    @property
    def tall(self) -> float:
        """Height that it needs [pt]."""
        label = len(self.label) * _LABEL_LEADING
        if self.words:
            room = len(self.words) * _WORD_LEADING + 4.0
        else:
            room = max(_ROW - 4.0, len(self.known) * _LEADING + 3.0)
        sketch = _room(self.blank.sketch)[1]
        return max(label + room + 3.0, sketch + 4.0 if sketch else 0.0)


def blanks_height(pages: Pages, block: Blanks) -> float:
    """Return what a heading above takes along: the first row [pt]."""
    return max((cell.tall + _UNDER for row in _rows(pages, block)[:1] for cell in row), default=0.0)


def ruled_height(block: Ruled) -> float:
    """Return what a heading above takes along: the header and two rows [pt]."""
    return 3 * _ROW if block.columns else 0.0


def set_blanks(pages: Pages, block: Blanks) -> None:
    """Set facts in a grid; a row moves to the next page as a whole."""
    for row in _rows(pages, block):
        height = max(cell.tall for cell in row)
        pages.need(height)
        for cell in row:
            _set_cell(pages, cell, height)
        pages.advance(height)
    pages.advance(pages.type.gap)


def _rows(pages: Pages, block: Blanks) -> list[list[_Cell]]:
    columns = max(1, block.columns)
    step = (pages.width + _AIR) / columns
    rows: list[list[_Cell]] = []
    at = columns
    for blank in block.blanks:
        span = min(blank.span, columns)
        if at + span > columns:
            rows.append([])
            at = 0
        rows[-1].append(_cell(blank, pages.left + at * step, span * step - _AIR))
        at += span
    return rows


def _cell(blank: Blank, x: float, wide: float) -> _Cell:
    beside = _room(blank.sketch)[0]
    x, wide = x + beside, wide - beside
    unit = width_per_size(blank.unit) * _LABEL
    known = wrap(blank.known, wide - unit - 2.0, WRITTEN) if blank.known else ()
    words = _ticked(blank.words, wide) if not known else ()
    return _Cell(blank, x, wide, wrap(blank.label, wide, _LABEL), known, words)


def _ticked(words: tuple[str, ...], wide: float) -> tuple[tuple[tuple[float, str], ...], ...]:
    lines: list[list[tuple[float, str]]] = []
    at = wide
    for word in words:
        needs = _TICK + 3.0 + width_per_size(word) * _WORD
        if not lines or at + needs > wide:
            lines.append([])
            at = 0.0
        lines[-1].append((at, word))
        at += needs + 8.0
    return tuple(tuple(line) for line in lines)


def _set_cell(pages: Pages, cell: _Cell, height: float) -> None:
    painter, canvas = pages.painter, pages.canvas
    top, low = pages.y, pages.y - height
    if cell.blank.sketch is not None:
        _set_sketch(pages, cell.blank.sketch, cell.x - _room(cell.blank.sketch)[0], top)
    y = top - _LABEL
    labels = [(cell.x, y - number * _LABEL_LEADING, line) for number, line in enumerate(cell.label)]
    painter.lines(labels, _LABEL, False, style.SOFT)
    if cell.words:
        y -= (len(cell.label) - 1) * _LABEL_LEADING + _WORD_LEADING
        places = []
        painter.set_pen(style.BOX)
        for number, line in enumerate(cell.words):
            base = y - number * _WORD_LEADING
            for at, word in line:
                canvas.rect(cell.x + at, base - 0.8, _TICK, _TICK, stroke=1, fill=0)
                places.append((cell.x + at + _TICK + 3.0, base, word))
        painter.lines(places, _WORD, False, style.INK)
        return
    base = low + 5.0
    places = [
        (cell.x, base + 1.0 + (len(cell.known) - 1 - number) * _LEADING, line)
        for number, line in enumerate(cell.known)
    ]  # fmt: skip
    painter.lines(places, WRITTEN, False, style.INK)
    painter.set_pen(style.RULE if cell.known else style.LINE_TO_SIGN)
    canvas.line(cell.x, base - 2.0, cell.x + cell.wide, base - 2.0)
    if cell.blank.unit:
        end = cell.x + cell.wide - width_per_size(cell.blank.unit) * _LABEL
        painter.lines([(end, base, cell.blank.unit)], _LABEL, False, style.SOFT)


def _set_sketch(pages: Pages, sketch: Drawing, x: float, top: float) -> None:
    view = lower(sketch, 1.0)
    pages.painter.paint(view, x / style.MM - view.extent[0], top / style.MM - view.extent[3])


def set_ruled(pages: Pages, block: Ruled) -> None:
    """Set a table to be written in; its header stands again on the next page."""
    if not block.columns:
        return
    whole = sum(column.width for column in block.columns)
    wide = [pages.width * column.width / whole for column in block.columns]
    head = [
        wrap(column.title, width - 2 * _PAD, _LABEL, True) for column, width in zip(block.columns, wide, strict=True)
    ]
    _set_head(pages, wide, head)
    # After the last known row as many to write in as the page holds, and some on the next where it holds none.
    empty = ("",) * len(block.columns)
    rows = [*block.rows, *[empty] * block.least]
    while rows or (block.fill and pages.room >= _ROW):
        row = rows.pop(0) if rows else empty
        texts = [wrap(text, width - 2 * _PAD, WRITTEN) for text, width in zip(row, wide, strict=True)]
        height = max(_ROW, max((len(lines) for lines in texts), default=1) * _LEADING + 2 * _PAD)
        if pages.room < height:
            pages.new_page()
            _set_head(pages, wide, head)
        x, places = pages.left, []
        for lines, width in zip(texts, wide, strict=True):
            places += [(x + _PAD, pages.y - _PAD - WRITTEN - n * _LEADING, line) for n, line in enumerate(lines)]
            x += width
        pages.painter.lines([place for place in places if place[2]], WRITTEN, False, style.INK)
        _frame(pages, wide, height)
        pages.advance(height)
    pages.advance(pages.type.gap)


def _set_head(pages: Pages, wide: list[float], head: list[tuple[str, ...]]) -> None:
    height = max(len(lines) for lines in head) * _LABEL_LEADING + 2 * _PAD
    painter = pages.painter
    painter.set_fill(style.TINT)
    pages.canvas.rect(pages.left, pages.y - height, pages.width, height, stroke=0, fill=1)
    x, places = pages.left, []
    for lines, width in zip(head, wide, strict=True):
        places += [(x + _PAD, pages.y - _PAD - _LABEL - n * _LABEL_LEADING, line) for n, line in enumerate(lines)]
        x += width
    painter.lines(places, _LABEL, True, style.ACCENT)
    _frame(pages, wide, height)
    pages.advance(height)


def _frame(pages: Pages, wide: list[float], height: float) -> None:
    canvas = pages.canvas
    pages.painter.set_pen(style.RULE)
    low, x = pages.y - height, pages.left
    canvas.line(pages.left, low, pages.left + pages.width, low)
    canvas.line(x, low, x, pages.y)
    for width in wide:
        x += width
        canvas.line(x, low, x, pages.y)
