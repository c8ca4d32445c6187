"""Tables set onto pages: columns as wide as their words need, rows that wrap, headers on every page.

A row moves to the next page as a whole; one that is very tall is broken between its lines.
"""

from functools import lru_cache
from typing import Final, NamedTuple

from hwsched.render import print_style as style
from hwsched.render.blocks import TICK, Cell, Table
from hwsched.render.fonts import width_per_size
from hwsched.render.pages import Pages
from hwsched.render.wrap import printable, wrap

_PAD: Final = 3.0
_LEADING: Final = style.TABLE * 1.25
_TICK: Final = 7.0
_WIDEST_WORD: Final = 0.3
"""A column is not widened for a single word past this share of the table."""
_FOR_WORDS: Final = 0.8
"""All columns together are not widened for their words past this share."""
_MOVED: Final = 0.35
"""A row up to this share of a page moves to the next as a whole; a taller one is broken."""


class _Row(NamedTuple):
    lines: tuple[tuple[str, ...], ...]
    bold: bool

    @property
    def tall(self) -> int:
        return max((len(lines) for lines in self.lines), default=1)


def cell_text(value: Cell, digits: int | None = None) -> str:
    """Return what a cell shows; numbers without zeros that say nothing.

    Examples
    --------
    >>> cell_text(3.0), cell_text(12.345678), cell_text(None), cell_text("0012")
    ('3', '12.346', '', '0012')
    """
    if value is None:
        return ""
    if digits is not None and isinstance(value, int | float) and value - value == 0:
        return f"{value:.{digits}f}"
    if isinstance(value, float):
        return f"{value:.3f}".rstrip("0").rstrip(".") if value - value == 0 else str(value)
    return str(value)


def first_height(table: Table) -> float:
    """Return what a table needs at least under its heading: title, header, two rows [pt]."""
    return (style.BODY * 1.5 if table.title else 0.0) + 4 * (_LEADING + 2 * _PAD)


def set_table(pages: Pages, table: Table, title_shown: bool) -> None:
    """Set a table.

    Parameters
    ----------
    pages : Pages
        Where.
    table : Table
        What; a table without columns sets nothing.
    title_shown : bool
        Whether the heading above says the title already.
    """
    if not table.columns:
        return
    texts = [
        [cell_text(row[n], table.columns[n].digits) if n < len(row) else "" for n in range(len(table.columns))]
        for row in table.rows
    ]
    widths = column_widths(table, texts, pages.width)
    head = _Row(
        tuple(
            wrap(column.title, width - 2 * _PAD, style.TABLE_HEAD, True)
            for column, width in zip(table.columns, widths, strict=True)
        ),
        True,
    )
    pages.need(first_height(table))
    if table.title and not title_shown:
        _caption(pages, table.title)
    _set_rows(pages, table, widths, head, (), 0, head.tall)
    for number, cells in enumerate(texts):
        bold = number in table.strong_rows
        row = _Row(
            tuple(wrap(text, width - 2 * _PAD, style.TABLE, bold) for text, width in zip(cells, widths, strict=True)),
            bold,
        )
        height = row.tall * _LEADING + 2 * _PAD
        # A row that is broken over pages is easily read wrong: it moves whole unless that would leave a third of the
        # page empty.
        if pages.room < min(height, 4 * _LEADING + 2 * _PAD) or (pages.room < height <= pages.full * _MOVED):
            _continue(pages, table, widths, head)
        done = 0
        while done < row.tall:
            room = int((pages.room - 2 * _PAD) / _LEADING)
            if room < 1:
                _continue(pages, table, widths, head)
                room = max(1, int((pages.room - 2 * _PAD) / _LEADING))
            count = min(room, row.tall - done)
            _set_rows(pages, table, widths, row, cells, done, count)
            done += count
    if not table.rows:
        pages.painter.lines([(pages.left + _PAD, pages.y - style.TABLE - _PAD, "none")], style.TABLE, False, style.SOFT)
        pages.advance(_LEADING + 2 * _PAD)
    pages.advance(style.GAP)


def _continue(pages: Pages, table: Table, widths: list[float], head: _Row) -> None:
    pages.new_page()
    if table.title:
        _caption(pages, f"{table.title}, continued")
    _set_rows(pages, table, widths, head, (), 0, head.tall)


def _caption(pages: Pages, text: str) -> None:
    lines = wrap(text, pages.width, style.BODY, True)
    for line in lines:
        pages.painter.lines([(pages.left, pages.y - style.BODY, line)], style.BODY, True, style.INK)
        pages.advance(style.BODY * style.LEADING)
    pages.advance(1.5)


def _set_rows(
    pages: Pages, table: Table, widths: list[float], row: _Row, cells: list[str] | tuple[()], first: int, count: int
) -> None:
    """Set some lines of a row; without cells it is the header."""
    canvas, painter = pages.canvas, pages.painter
    height = count * _LEADING + 2 * _PAD
    low = pages.y - height
    header = not cells
    if header:
        painter.set_fill(style.TINT)
        canvas.rect(pages.left, low, pages.width, height, stroke=0, fill=1)
    size = style.TABLE_HEAD if header else style.TABLE
    y = pages.y - _PAD - size
    places: list[tuple[float, float, str]] = []
    x = pages.left
    ticks: list[float] = []
    for number, (column, width) in enumerate(zip(table.columns, widths, strict=True)):
        if not header and cells[number] == TICK:
            if first == 0:
                ticks.append(x + (width - _TICK) / 2 if column.align == "centre" else x + _PAD)
            x += width
            continue
        for line_number, line in enumerate(row.lines[number][first : first + count]):
            if not line:
                continue
            at = x + _PAD
            if column.align != "left":
                free = width - 2 * _PAD - width_per_size(line, row.bold) * size
                at += free if column.align == "right" else free / 2
            places.append((at, y - line_number * _LEADING, line))
        x += width
    painter.lines(places, size, row.bold, style.ACCENT if header else style.INK)
    if ticks:
        painter.set_pen(style.BOX)
        for at in ticks:
            canvas.rect(at, pages.y - _PAD - _TICK, _TICK, _TICK, stroke=1, fill=0)
    painter.set_pen(style.STRONG_RULE if header else style.RULE)
    canvas.line(pages.left, low, pages.left + pages.width, low)
    pages.advance(height)


@lru_cache(maxsize=50_000)
def _widest_word(text: str, bold: bool) -> float:
    return max((width_per_size(word, bold) for word in text.split()), default=0.0)


def column_widths(table: Table, texts: list[list[str]], total: float) -> list[float]:
    """Share a width among columns as they ask, but give each the room of its longest word where that is possible.

    Parameters
    ----------
    table : Table
        Asked shares and headers.
    texts : list of list of str
        Cells by row.
    total : float
        Width of the table [pt].

    Returns
    -------
    list of float
        Widths [pt]; their sum is ``total``.
    """
    shares = [max(column.width, 0.01) for column in table.columns]
    heads, words = [], []
    for number, column in enumerate(table.columns):
        numbers = (
            cell_text(row[number], column.digits)
            for row in table.rows
            if number < len(row) and not isinstance(row[number], str)
        )
        digits = max((width_per_size(text, True) for text in numbers), default=0.0) * style.TABLE
        title = _widest_word(printable(column.title), True) * style.TABLE_HEAD
        head = max(title, digits, _TICK) + 2 * _PAD + 0.5
        body = max((_widest_word(printable(row[number]), False) for row in texts), default=0.0) * style.TABLE * 1.05
        heads.append(head)
        words.append(max(head, min(body + 2 * _PAD + 0.5, total * _WIDEST_WORD)))
    if sum(heads) > total:
        return [width * total / sum(heads) for width in heads]
    # Long words may not take the room that other columns' text needs: they get what fits into a part of the table.
    most = max(total * _FOR_WORDS, sum(heads))
    wanted = sum(words) - sum(heads)
    share = min(1.0, (most - sum(heads)) / wanted) if wanted > 0 else 0.0
    least = [head + share * (word - head) for head, word in zip(heads, words, strict=True)]
    fixed: set[int] = set()
    while len(fixed) < len(shares):
        free = total - sum(least[n] for n in fixed)
        asked = sum(shares[n] for n in range(len(shares)) if n not in fixed)
        narrow = {n for n in range(len(shares)) if n not in fixed and free * shares[n] / asked < least[n]}
        if not narrow:
            return [least[n] if n in fixed else free * shares[n] / asked for n in range(len(shares))]
        fixed |= narrow
    return [width * total / sum(least) for width in least]
