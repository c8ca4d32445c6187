"""Drawings set onto pages: side by side at one standard scale, with title, scale and notes."""

from dataclasses import replace
from typing import Final

from hwsched.language import phrase
from hwsched.render import print_style as style
from hwsched.render.blocks import Drawings
from hwsched.render.lower import OnPaper
from hwsched.render.pages import Pages
from hwsched.render.scale import Row, fit_views, scale_bar, scale_words

_GAP_MM: Final = 6.0
_TITLE: Final = 10.0
_NARROW_PAGE: Final = 150.0
"""Narrower pages set views of their own scales one under another [mm]."""


def _title(pages: Pages) -> float:
    return max(_TITLE, pages.type.small)


def _gap(pages: Pages) -> float:
    return 2.0 if pages.type.door else _GAP_MM


def views_height(pages: Pages, block: Drawings) -> float:
    """Return what the views need at most without their notes [pt]."""
    if all(drawing.plain for drawing in block.drawings):
        return block.height_mm * style.MM
    around = _title(pages) * 1.3 if pages.type.door else _title(pages) * 1.6 + pages.type.small * 1.6
    return block.height_mm * pages.type.views * style.MM + around


def set_views(pages: Pages, block: Drawings) -> None:
    """Set views; those of a row move to the next page together."""
    if not block.drawings:
        return
    if pages.width < _NARROW_PAGE * style.MM and len(block.drawings) > max(block.paired, 1) and not block.same_scale:
        # Small paper: what belongs together stays side by side, everything else has a row of its own.
        first = max(block.paired, 1)
        for part in (block.drawings[:first], *((each,) for each in block.drawings[first:])):
            _set_rows(pages, replace(block, drawings=part), (id(block), id(part[0])))
        return
    _set_rows(pages, block, (id(block), 0))


def _set_rows(pages: Pages, block: Drawings, name: tuple[int, int]) -> None:
    most = (pages.full - _title(pages) * 1.6 - pages.type.small * 2) / style.MM
    # A section may be set several times until its sheets are as few as they can be; views cost most of it.
    key = (name, pages.width, pages.type.views, pages.type.coarse)
    rows = pages.row_memory.get(key)
    if rows is None:
        rows = pages.row_memory[key] = fit_views(
            block.drawings,
            pages.width / style.MM,
            min(block.height_mm * pages.type.views, most),
            same_scale=block.same_scale,
            coarse=pages.type.coarse,
            paired=block.paired,
            gap_mm=_gap(pages),
            most_mm=most,
            letters_mm=pages.type.letters_mm,
            narrow=pages.type.narrow,
            kept=pages.kept_views,
        )
    for row in rows:
        _set_row(pages, row, block.bars)


def _set_row(pages: Pages, row: Row, bars: str = "") -> None:
    if all(drawing.plain for drawing in row.drawings):
        _set_plain(pages, row)
        return
    tall = row.tall * style.MM
    wide = [(view.extent[2] - view.extent[0]) * style.MM for view in row.views]
    free = pages.width - sum(wide) - _gap(pages) * style.MM * (len(wide) - 1)
    cells = [width + free / len(wide) for width in wide]
    notes = [
        [line for note in drawing.notes for line in pages.wrap(note, cell - 4.0, pages.type.note)]
        for drawing, cell in zip(row.drawings, cells, strict=True)
    ]
    door = pages.type.door
    head = _title(pages) * (1.3 if door else 1.6)
    height = tall + head + (2.0 if door else pages.type.small * 1.8)
    pages.need(min(height + max(len(lines) for lines in notes) * pages.type.note * 1.3, pages.full))
    x = pages.left
    top = pages.y - head
    titles, scales, measures = [], [], []
    for drawing, view, hangs, width, cell in zip(row.drawings, row.views, row.tops, wide, cells, strict=True):
        _paint(pages, view, x + (cell - width) / 2, top, hangs)
        words = f"Scale {scale_words(1.0 / view.scale)}" if drawing.to_scale else phrase("Not to scale")
        if door:
            # One line less where room is dear.
            said = f"{phrase(drawing.title)} · {words[:1].lower()}{words[1:]}"
            titles.append((x, pages.y - _title(pages), said))
            if bars and drawing.to_scale:
                beside = x + pages.wide(said, True) * _title(pages) + 6.0
                measures += _set_bar(pages, view.scale, bars, beside, pages.y - _title(pages), x + cell)
            x += cell + _gap(pages) * style.MM
            continue
        titles.append((x, pages.y - _title(pages), phrase(drawing.title)))
        low = tall if row.denominator else (hangs - view.extent[1]) * style.MM
        base = top - low - pages.type.small * 1.4
        across = x + (cell - pages.wide(words) * pages.type.small) / 2
        scales.append((across, base, words))
        if bars and drawing.to_scale:
            beside = across + pages.wide(words) * pages.type.small + 6.0
            measures += _set_bar(pages, view.scale, bars, beside, base, x + cell)
        x += cell + _gap(pages) * style.MM
    pages.painter.lines(titles, _title(pages), True, style.INK)
    pages.painter.lines([*scales, *measures], pages.type.small, False, style.INK)
    pages.advance(height)
    _set_notes(pages, notes, cells)
    pages.advance(pages.type.gap)


def _paint(pages: Pages, view: OnPaper, left: float, top: float, hangs: float) -> None:
    """Paint a view that hangs from a level; one that is wider than the page is shrunk, letters and all."""
    wide = (view.extent[2] - view.extent[0]) * style.MM
    if wide <= pages.width + 0.5:
        pages.painter.paint(view, left / style.MM - view.extent[0], top / style.MM - hangs)
        return
    shrunk = pages.width / wide
    pages.canvas.saveState()
    pages.canvas.translate(pages.left, top)
    pages.canvas.scale(shrunk, shrunk)
    pages.painter.forget()
    pages.painter.paint(view, -view.extent[0], -hangs)
    pages.canvas.restoreState()
    pages.painter.forget()


def _set_bar(
    pages: Pages, scale: float, unit: str, x: float, base: float, end: float
) -> list[tuple[float, float, str]]:
    """Draw a scale bar on a line of words and return what it says; nothing where the view is too narrow for it."""
    long, words = scale_bar(scale, unit)
    far = x + long * style.MM
    if far + 3.0 + pages.wide(words) * pages.type.small > end:
        return []
    canvas, middle = pages.canvas, base + pages.type.small * 0.25
    pages.painter.set_pen(style.SCALE_BAR)
    canvas.line(x, middle, far, middle)
    for place, tall in ((x, 2.5), ((x + far) / 2, 1.5), (far, 2.5)):
        canvas.line(place, middle - tall, place, middle + tall)
    return [(far + 3.0, base, words)]


def _set_plain(pages: Pages, row: Row) -> None:
    """Set what has no title, such as a legend."""
    tall = row.tall * style.MM
    pages.need(min(tall, pages.full))
    x = pages.left
    for view, hangs in zip(row.views, row.tops, strict=True):
        _paint(pages, view, x, pages.y, hangs)
        x += (view.extent[2] - view.extent[0]) * style.MM
    pages.advance(tall + pages.type.gap)


def _set_notes(pages: Pages, notes: list[list[str]], cells: list[float]) -> None:
    done, tall = 0, max(len(lines) for lines in notes)
    while done < tall:
        pages.need(pages.type.note * 1.3)
        count = max(1, min(tall - done, int(pages.room / pages.type.note * 1.3)))
        places = []
        x = pages.left
        for lines, cell in zip(notes, cells, strict=True):
            for number, line in enumerate(lines[done : done + count]):
                places.append((x, pages.y - pages.type.note - number * pages.type.note * 1.3, line))
            x += cell + _gap(pages) * style.MM
        pages.painter.lines(places, pages.type.note, False, style.SOFT)
        pages.advance(count * pages.type.note * 1.3)
        done += count
