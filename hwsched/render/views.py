"""Drawings set onto pages: side by side at one standard scale, with title, scale and notes."""

from typing import Final

from hwsched.render import print_style as style
from hwsched.render.blocks import Drawings
from hwsched.render.fonts import width_per_size
from hwsched.render.pages import Pages
from hwsched.render.scale import Row, fit_views, scale_words
from hwsched.render.wrap import wrap

_GAP_MM: Final = 6.0
_TITLE: Final = 10.0
_NOTE: Final = 6.5
_NOTE_LEADING: Final = _NOTE * 1.3


def views_height(block: Drawings) -> float:
    """Return what the views need at most without their notes [pt]."""
    return block.height_mm * style.MM + _TITLE * 1.6 + style.SMALL * 1.6


def set_views(pages: Pages, block: Drawings) -> None:
    """Set views; those of a row move to the next page together."""
    if not block.drawings:
        return
    most = (pages.full - _TITLE * 1.6 - style.SMALL * 2) / style.MM
    rows = fit_views(
        block.drawings,
        pages.width / style.MM,
        min(block.height_mm, most),
        same_scale=block.same_scale,
        gap_mm=_GAP_MM,
        most_mm=most,
    )
    for row in rows:
        _set_row(pages, row)


def _set_row(pages: Pages, row: Row) -> None:
    tall = row.tall * style.MM
    wide = [(view.extent[2] - view.extent[0]) * style.MM for view in row.views]
    free = pages.width - sum(wide) - _GAP_MM * style.MM * (len(wide) - 1)
    cells = [width + free / len(wide) for width in wide]
    notes = [
        [line for note in drawing.notes for line in wrap(note, cell - 4.0, _NOTE)]
        for drawing, cell in zip(row.drawings, cells, strict=True)
    ]
    height = tall + _TITLE * 1.6 + style.SMALL * 1.8
    pages.need(min(height + max(len(lines) for lines in notes) * _NOTE_LEADING, pages.full))
    x = pages.left
    top = pages.y - _TITLE * 1.6
    titles, scales = [], []
    for drawing, view, hangs, width, cell in zip(row.drawings, row.views, row.tops, wide, cells, strict=True):
        titles.append((x, pages.y - _TITLE, drawing.title))
        left = x + (cell - width) / 2
        pages.painter.paint(view, left / style.MM - view.extent[0], top / style.MM - hangs)
        words = f"Scale {scale_words(1.0 / view.scale)}" if drawing.to_scale else "Not to scale"
        low = tall if row.denominator else (hangs - view.extent[1]) * style.MM
        scales.append((x + (cell - width_per_size(words) * style.SMALL) / 2, top - low - style.SMALL * 1.4, words))
        x += cell + _GAP_MM * style.MM
    pages.painter.lines(titles, _TITLE, True, style.INK)
    pages.painter.lines(scales, style.SMALL, False, style.INK)
    pages.advance(height)
    _set_notes(pages, notes, cells)
    pages.advance(style.GAP)


def _set_notes(pages: Pages, notes: list[list[str]], cells: list[float]) -> None:
    done, tall = 0, max(len(lines) for lines in notes)
    while done < tall:
        pages.need(_NOTE_LEADING)
        count = max(1, min(tall - done, int(pages.room / _NOTE_LEADING)))
        places = []
        x = pages.left
        for lines, cell in zip(notes, cells, strict=True):
            for number, line in enumerate(lines[done : done + count]):
                places.append((x, pages.y - _NOTE - number * _NOTE_LEADING, line))
            x += cell + _GAP_MM * style.MM
        pages.painter.lines(places, _NOTE, False, style.SOFT)
        pages.advance(count * _NOTE_LEADING)
        done += count
