"""Tables set onto pages: columns as wide as their words need, rows that wrap, headers on every page.

A row moves to the next page as a whole; one that is very tall is broken between its lines.
"""

import re
from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType
from typing import Final, NamedTuple

from hwsched.language import phrase
from hwsched.render import print_style as style
from hwsched.render.blocks import TICK, Cell, Column, Table
from hwsched.render.fonts import width_per_size
from hwsched.render.pages import Pages
from hwsched.render.wrap import printable
from hwsched.stopping import asking

_TICK: Final = 7.0
_NUMBER: Final = re.compile(r"((?:[^\W\d]{1,4}\. )?\d(?:[\d /.'\"×-]|mm\b)*)(.*)", re.DOTALL)
"""A length, the number of a drill or the sides of a pocket, and the words behind it."""
_LONGEST_WORDS: Final = 14
"""Letters of what is no number and stands in a column for numbers all the same, such as at its centre."""
_FEW_WORDS: Final = 24
"""So many letters may stand behind a number that is set large."""
_WIDEST_WORD: Final = 0.3
"""A column is not widened for a single word past this share of the table."""
_FOR_WORDS: Final = 0.8
"""All columns together are not widened for their words past this share."""
_WIDEST_NUMBER: Final = 0.4
"""Share of a table that a number which is set large may take."""
_NONE: Final = ("", "-")
_UNDER: Final = 15.0
"""By what lines under a row are set in [pt]."""
_ABREAST: Final = 400.0
"""Least width for rows side by side [pt]."""
_MOVED: Final = 0.35
"""A row up to this share of a page moves to the next as a whole; a taller one is broken."""


class _Row(NamedTuple):
    lines: tuple[tuple[str, ...], ...]
    bold: bool
    large: Mapping[int, tuple[tuple[str, str], ...]] = MappingProxyType({})
    """Lines of the cells that are set large, by column: what of each is large, and the words behind it."""
    under: tuple[str, ...] = ()
    """Lines across the row, under all its cells."""
    tall: int = 1
    """Lines of its highest cell."""


def _leading(pages: Pages) -> float:
    return pages.type.table * pages.type.table_leading


def _extra(pages: Pages, row: _Row) -> float:
    """Return by how much a row is higher for its large cells."""
    most = max((sum(bool(number) for number, _ in lines) for lines in row.large.values()), default=0)
    return most * _taller(pages)


def _taller(pages: Pages) -> float:
    return (pages.type.large - pages.type.table) * pages.type.table_leading


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


def _height(pages: Pages, row: _Row) -> float:
    return (row.tall + len(row.under)) * _leading(pages) + _extra(pages, row) + 2 * pages.type.pad


def first_height(pages: Pages, table: Table) -> float:
    """Return what a table needs at least under its heading: title, header, two rows; at the door its first one [pt]."""
    least = _begin(pages, table).least if pages.type.door and table.columns else 0.0
    return max(_usual_height(pages, table), least)


def _usual_height(pages: Pages, table: Table) -> float:
    return (pages.type.body * 1.5 if table.title else 0.0) + 4 * (_leading(pages) + 2 * pages.type.pad)


_ALONE: Final = 4
"""Of so many rows the last does not go over to the next column alone."""


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
    table, texts, unders, widths, head, least = _begin(pages, table)
    caption = pages.type.body * 1.5 if table.title and not title_shown else 0.0
    pages.need(max(_usual_height(pages, table), caption + least))
    if table.title and not title_shown:
        _caption(pages, table.title)
    _set_rows(pages, table, widths, head, (), 0, head.tall)
    for number, cells in enumerate(asking(texts)):
        row = _row(pages, table, cells, widths, number in table.strong_rows, unders[number])
        height = _height(pages, row)
        # A row that is broken over pages is easily read wrong: it moves whole unless that would leave a third of the
        # page empty.
        if pages.room < min(height, 4 * _leading(pages) + 2 * pages.type.pad) or (
            pages.room < height <= pages.full * _MOVED
        ):
            _continue(pages, table, widths, head)
        elif number + 2 == len(texts) >= _ALONE and pages.room < pages.full:
            # One row alone under a head of its own is overlooked: it takes the one before with it.
            last = _row(pages, table, texts[-1], widths, number + 1 in table.strong_rows, unders[-1])
            if pages.room < height + _height(pages, last) <= pages.full * _MOVED:
                _continue(pages, table, widths, head)
        done, since = 0, pages.spot
        while done < row.tall:
            room = int((pages.room - 2 * pages.type.pad) / _leading(pages))
            if room < 1:
                _continue(pages, table, widths, head)
                room = max(1, int((pages.room - 2 * pages.type.pad) / _leading(pages)))
            count = min(room, row.tall - done)
            _set_rows(pages, table, widths, row, cells, done, count)
            done += count
        pages.mark(number, since)
    if not table.rows:
        pages.painter.lines(
            [(pages.left + pages.type.side, pages.y - pages.type.table - pages.type.pad, "none")],
            pages.type.table,
            False,
            style.SOFT,
        )
        pages.advance(_leading(pages) + 2 * pages.type.pad)
    pages.advance(pages.type.gap)


class _Begun(NamedTuple):
    """A table as it is set: rows side by side, columns run in or under their rows."""

    table: Table
    texts: list[list[str]]
    unders: list[str]
    widths: list[float]
    head: _Row
    least: float
    """What header and first row take: a header alone at the foot of a page says nothing [pt]."""


def _begin(pages: Pages, table: Table) -> _Begun:
    """Return how a table is set here; at the door a section is tried several times, and asks for each table twice."""
    if not pages.type.door:
        return _begun(pages, table)
    key = (id(table), id(pages.type), pages.width, pages.full, pages.marked is None)
    found = pages.table_memory.get(key)
    if found is None:
        found = pages.table_memory[key] = (table, pages.type, _begun(pages, table))
    begun: _Begun = found[2]
    return begun


def _begun(pages: Pages, table: Table) -> _Begun:
    if (
        table.abreast > 1
        and pages.type.door
        and len(table.rows) > 1
        and pages.width >= _ABREAST
        and pages.marked is None
    ):
        table = _abreast(table)
    texts = [
        [cell_text(row[n], table.columns[n].digits) if n < len(row) else "" for n in range(len(table.columns))]
        for row in asking(table.rows)
    ]
    if pages.type.door and any(column.run_in for column in table.columns):
        table, texts = _run_in(table, texts)
    unders: list[str] = [""] * len(texts)
    if pages.type.door and any(column.below for column in table.columns):
        table, texts, unders = _below(table, texts)
        table, texts = _without_none(table, texts)
    widths = column_widths(table, texts, pages.width, pages.type)
    titles = tuple(
        pages.wrap(column.title, width - 2 * pages.type.side, pages.type.table_head, True)
        for column, width in zip(table.columns, widths, strict=True)
    )
    head = _Row(titles, True, tall=max(map(len, titles), default=1))
    rows = [_row(pages, table, cells, widths, n in table.strong_rows, unders[n]) for n, cells in enumerate(texts[:1])]
    first = sum(_height(pages, row) for row in rows if _height(pages, row) <= pages.full * _MOVED)
    return _Begun(table, texts, unders, widths, head, _height(pages, head) + first)


def _abreast(table: Table) -> Table:
    """Return a table of two or more columns of rows: read down the left one first."""
    tall = -(-len(table.rows) // table.abreast)
    width = len(table.columns)
    empty: tuple[Cell, ...] = (None,) * width
    rows = []
    for first in range(tall):
        side = [table.rows[at] if at < len(table.rows) else empty for at in range(first, tall * table.abreast, tall)]
        rows.append(tuple(cell for row in side for cell in row))
    return replace(table, columns=table.columns * table.abreast, rows=tuple(rows), strong_rows=frozenset(), abreast=1)


def _without_none(table: Table, texts: list[list[str]]) -> tuple[Table, list[list[str]]]:
    """Leave out columns that say in every row that there is none, such as pilots: the others get their room.

    An empty cell is no such word: it may be there to be written in.
    """
    kept = [n for n in range(len(table.columns)) if any(cells[n] != "-" for cells in texts)]
    if len(kept) == len(table.columns) or not kept or table.leads_to is not None:
        return table, texts
    rows = tuple(tuple(row[n] if n < len(row) else None for n in kept) for row in table.rows)
    shown = [[cells[n] for n in kept] for cells in texts]
    return replace(table, columns=tuple(table.columns[n] for n in kept), rows=rows), shown


def _run_in(table: Table, texts: list[list[str]]) -> tuple[Table, list[list[str]]]:
    """Set columns behind the one before them, after a colon, the next ones after a semicolon."""
    columns: list[Column] = []
    found: list[list[str]] = [[] for _ in texts]
    mark = ": "
    for number, column in enumerate(table.columns):
        if not column.run_in or not columns:
            mark = ": "
            columns.append(column)
            for cells, made in zip(texts, found, strict=True):
                made.append(cells[number])
            continue
        before = columns[-1]
        columns[-1] = replace(before, title=f"{before.title}{mark}{column.title}", width=before.width + column.width)
        for cells, made in zip(texts, found, strict=True):
            made[-1] = mark.join(cell for cell in (made[-1], cells[number]) if cell)
        mark = "; "
    return replace(table, columns=tuple(columns), rows=tuple(tuple(made) for made in found)), found


def _below(table: Table, texts: list[list[str]]) -> tuple[Table, list[list[str]], list[str]]:
    """Take the columns that are set under their row out of a table; returns what stands under each row, too."""
    kept = [number for number, column in enumerate(table.columns) if not column.below]
    # A sentence in a narrow column for numbers would make the whole row high.
    moved = [
        [column.below or _wordy(column, cell) for cell, column in zip(cells, table.columns, strict=True)]
        for cells in texts
    ]
    rests = [[_rest(column, cell) for cell, column in zip(cells, table.columns, strict=True)] for cells in texts]
    unders = [
        " · ".join(
            cell if below else rest
            for cell, below, rest in zip(cells, away, more, strict=True)
            if (below and cell not in _NONE) or (not below and rest)
        )
        for cells, away, more in zip(texts, moved, rests, strict=True)
    ]
    texts = [
        [cell.partition(", ")[0] if rest else cell for cell, rest in zip(cells, more, strict=True)]
        for cells, more in zip(texts, rests, strict=True)
    ]
    shown = [["-" if away[n] else cells[n] for n in kept] for cells, away in zip(texts, moved, strict=True)]
    bare = replace(table, columns=tuple(table.columns[n] for n in kept), rows=tuple(tuple(row) for row in shown))
    return bare, shown, unders


def _wordy(column: Column, cell: str) -> bool:
    return column.large and len(cell) > _LONGEST_WORDS and not cell[:1].isdigit()


def _rest(column: Column, cell: str) -> str:
    """Return what follows the number that is set large: it stands under the row, or the number could not be large."""
    number, _, rest = cell.partition(", ")
    if not column.large or not rest or not is_large(number):
        return ""
    return f"{column.title.lower()} {rest}" if rest[:1].isdigit() else rest


def parted(text: str) -> tuple[str, str]:
    """Return what of a cell is set large, and the words behind it; nothing large where it is no number.

    Examples
    --------
    >>> parted('2 31/64" above'), parted("at its centre"), parted("18.0 mm × 322.0 mm"), parted("No. 29")
    (('2 31/64"', 'above'), ('', 'at its centre'), ('18.0 mm × 322.0 mm', ''), ('No. 29', ''))
    """
    found = _NUMBER.fullmatch(text)
    if found is None or len(found[2].strip()) > _FEW_WORDS:
        return "", text
    return found[1].strip(), found[2].strip()


def is_large(text: str) -> bool:
    """Tell whether a text of a column that is set large is a number, and not a sentence that begins with one."""
    return parted(text)[0] != ""


def _row(pages: Pages, table: Table, cells: list[str], widths: list[float], bold: bool, under: str = "") -> _Row:
    sizes = pages.type
    large: dict[int, tuple[tuple[str, str], ...]] = {}
    lines: list[tuple[str, ...]] = []
    for number, (column, text, width) in enumerate(zip(table.columns, cells, widths, strict=True)):
        found = _large_lines(pages, text, width - 2 * sizes.side) if column.large and sizes.large > sizes.table else ()
        if found:
            large[number] = found
            lines.append(tuple(f"{much} {words}".strip() for much, words in found))
        else:
            lines.append(pages.wrap(text, width - 2 * sizes.side, sizes.table, bold))
    across = pages.wrap(under, sum(widths) - _UNDER - sizes.side, sizes.table) if under else ()
    return _Row(tuple(lines), bold, large, across, max(map(len, lines), default=1))


def _large_lines(pages: Pages, text: str, width: float) -> tuple[tuple[str, str], ...]:
    """Return the lines of a cell whose number is set large: its words behind it or under it, sides of a pocket apart.

    None where a number does not fit on a line: broken in two it is read as two.
    """
    number, words = parted(text)
    if not number:
        return ()
    sizes = pages.type
    if _large_width(number, words, sizes) <= width:
        return ((number, words),)
    first, cross, second = number.partition(" ×")
    found = [(f"{first}{cross}", ""), *([(second.strip(), "")] if second else [])]
    if any(pages.wide(each, True) * sizes.large > width for each, _ in found):
        return ()
    return (*found, *(("", line) for line in pages.wrap(words, width, sizes.table) if words))


def _large_width(number: str, words: str, sizes: style.Type) -> float:
    """Return what a number that is set large takes with the words behind it [pt]."""
    wide = width_per_size(number, True, sizes.narrow) * sizes.large
    return wide + (width_per_size(f" {words}", False, sizes.narrow) * sizes.table if words else 0.0)


def _continue(pages: Pages, table: Table, widths: list[float], head: _Row) -> None:
    pages.turn()
    if table.title:
        _caption(pages, phrase("{title}, continued", title=table.title))
    _set_rows(pages, table, widths, head, (), 0, head.tall)


def _caption(pages: Pages, text: str) -> None:
    lines = pages.wrap(text, pages.width, pages.type.body, True)
    for line in lines:
        pages.painter.lines([(pages.left, pages.y - pages.type.body, line)], pages.type.body, True, style.INK)
        pages.advance(pages.type.body * pages.type.leading)
    pages.advance(1.5)


def _set_rows(
    pages: Pages, table: Table, widths: list[float], row: _Row, cells: list[str] | tuple[()], first: int, count: int
) -> None:
    """Set some lines of a row; without cells it is the header."""
    canvas, painter = pages.canvas, pages.painter
    extra = _extra(pages, row) if first == 0 else 0.0
    # What stands under a row comes with its last line.
    under = row.under if first + count == row.tall else ()
    height = (count + len(under)) * _leading(pages) + extra + 2 * pages.type.pad
    if pages.measured:
        pages.advance(height)
        return
    low = pages.y - height
    header = not cells
    if header:
        painter.set_fill(style.TINT)
        canvas.rect(pages.left, low, pages.width, height, stroke=0, fill=1)
    size = pages.type.table_head if header else pages.type.table
    # Large cells stand with the others on one base line; what they have more comes under it.
    y = pages.y - pages.type.pad - size * pages.type.rise - (_taller(pages) if extra else 0.0)
    places: list[tuple[float, float, str]] = []
    large: list[tuple[float, float, str]] = []
    side, leading = pages.type.side, _leading(pages)
    x = pages.left
    ticks: list[float] = []
    asked: list[tuple[str, float]] = []
    for number, (column, width) in enumerate(zip(table.columns, widths, strict=True)):
        if not header and cells[number] == TICK:
            if first == 0:
                ticks.append(x + (width - _TICK) / 2 if column.align == "centre" else x + side)
            x += width
            continue
        if number in row.large:
            if first == 0:
                _add_large(pages, row.large[number], x + side, y, large, places)
            x += width
            continue
        for line_number, line in enumerate(row.lines[number][first : first + count]):
            if not line:
                continue
            at = x + side
            if column.align != "left":
                free = width - 2 * side - pages.wide(line, row.bold) * size
                at += free if column.align == "right" else free / 2
            places.append((at, y - line_number * leading, line))
        if not header and table.leads_to is not None and table.leads_to[0] == number and row.lines[number] != ("-",):
            pages.lead(f"{table.leads_to[1]}{cells[number]}", x, low, width, height)
        if not header and table.leads_to is not None and table.pages_in == number and first == 0:
            asked.append((f"{table.leads_to[1]}{cells[table.leads_to[0]]}", x + side))
        x += width
    low_y = y - (extra - _taller(pages) if extra else 0.0)
    places += [
        (pages.left + _UNDER, low_y - (count + number) * _leading(pages), line) for number, line in enumerate(under)
    ]
    painter.lines(places, size, row.bold, style.ACCENT if header else style.INK)
    if large:
        painter.lines(large, pages.type.large, True, style.INK)
    for anchor, at in asked:
        pages.show_page_of(anchor, at, y, size)
    if ticks:
        painter.set_pen(style.BOX)
        for at in ticks:
            canvas.rect(at, pages.y - pages.type.pad - _TICK, _TICK, _TICK, stroke=1, fill=0)
    painter.set_pen(style.STRONG_RULE if header else style.RULE)
    canvas.line(pages.left, low, pages.left + pages.width, low)
    pages.advance(height)


def _add_large(
    pages: Pages,
    lines: tuple[tuple[str, str], ...],
    x: float,
    y: float,
    large: list[tuple[float, float, str]],
    places: list[tuple[float, float, str]],
) -> None:
    """Say where the lines of a cell that is set large stand."""
    for line, (number, words) in enumerate(lines):
        if line:
            y -= _leading(pages) + (_taller(pages) if number else 0.0)
        if number:
            large.append((x, y, number))
        if words:
            places.append((x + (pages.wide(f"{number} ", True) * pages.type.large if number else 0.0), y, words))


@lru_cache(maxsize=50_000)
def _widest_word(text: str, bold: bool, narrow: bool) -> float:
    return max((width_per_size(word, bold, narrow) for word in text.split()), default=0.0)


def column_widths(table: Table, texts: list[list[str]], total: float, sizes: style.Type = style.USUAL) -> list[float]:
    """Share a width among columns as they ask, but give each the room of its longest word where that is possible.

    Parameters
    ----------
    table : Table
        Asked shares and headers.
    texts : list of list of str
        Cells by row.
    total : float
        Width of the table [pt].
    sizes : Type
        Of the page.

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
            for row in asking(table.rows)
            if number < len(row) and not isinstance(row[number], str)
        )
        digits = max((width_per_size(text, True, sizes.narrow) for text in numbers), default=0.0) * sizes.table
        title = _widest_word(printable(column.title), True, sizes.narrow) * sizes.table_head
        head = max(title, digits, _TICK) + 2 * sizes.side + 0.5
        body = (
            max((_widest_word(printable(row[number]), False, sizes.narrow) for row in asking(texts)), default=0.0)
            * sizes.table
            * 1.05
        )
        whole = 0.0
        if column.large:
            # Words behind a number may stand under it, and one side of a pocket under the other.
            found = [parted(row[number]) for row in texts if is_large(row[number])]
            sides = [side for much, _ in found for side in re.split("(?<=×) ", much)]
            narrowest = max((_large_width(side, "", sizes) for side in sides), default=0.0)
            whole = max((_large_width(much, said, sizes) for much, said in found), default=0.0)
            if sizes.door:
                # Three short words, such as at its centre, stand on one line, too.
                short = (row[number] for row in texts if not is_large(row[number]) and not _wordy(column, row[number]))
                whole = max(whole, *(width_per_size(each, False, sizes.narrow) * sizes.table for each in short), 0.0)
            head = max(head, min(narrowest + 2 * sizes.side + 0.5, total * _WIDEST_NUMBER))
        heads.append(head)
        wanted_word = max(min(body, total * _WIDEST_WORD), min(whole, total * _WIDEST_NUMBER))
        words.append(max(head, wanted_word + 2 * sizes.side + 0.5))
    if sum(heads) > total:
        return [width * total / sum(heads) for width in heads]
    # Long words may not take the room that other columns' text needs: they get what fits into a part of the table.
    most = max(total * (1.0 if sizes.door else _FOR_WORDS), sum(heads))
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
