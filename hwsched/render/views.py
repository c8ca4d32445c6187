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


def _title(pages: Pages) -> float:
    return max(_TITLE, pages.type.small)


def views_height(pages: Pages, block: Drawings) -> float:
    """Return what the views need at most without their notes [pt]."""
    return block.height_mm * style.MM + _title(pages) * 1.6 + pages.type.small * 1.6


def set_views(pages: Pages, block: Drawings) -> None:
    """Set views; those of a row move to the next page together."""
    if not block.drawings:
        return
    most = (pages.full - _title(pages) * 1.6 - pages.type.small * 2) / style.MM
    rows = fit_views(
        block.drawings,
        pages.width / style.MM,
        min(block.height_mm, most),
        same_scale=block.same_scale,
        gap_mm=_GAP_MM,
        most_mm=most,
        letters_mm=pages.type.letters_mm,
    )
    for row in rows:
        _set_row(pages, row)


def _set_row(pages: Pages, row: Row) -> None:
    tall = row.tall * style.MM
    wide = [(view.extent[2] - view.extent[0]) * style.MM for view in row.views]
    free = pages.width - sum(wide) - _GAP_MM * style.MM * (len(wide) - 1)
    cells = [width + free / len(wide) for width in wide]
    notes = [
        [line for note in drawing.notes for line in wrap(note, cell - 4.0, pages.type.note)]
        for drawing, cell in zip(row.drawings, cells, strict=True)
    ]
    height = tall + _title(pages) * 1.6 + pages.type.small * 1.8
    pages.need(min(height + max(len(lines) for lines in notes) * pages.type.note * 1.3, pages.full))
    x = pages.left
    top = pages.y - _title(pages) * 1.6
    titles, scales = [], []
    for drawing, view, hangs, width, cell in zip(row.drawings, row.views, row.tops, wide, cells, strict=True):
        titles.append((x, pages.y - _title(pages), drawing.title))
        left = x + (cell - width) / 2
        pages.painter.paint(view, left / style.MM - view.extent[0], top / style.MM - hangs)
        words = f"Scale {scale_words(1.0 / view.scale)}" if drawing.to_scale else "Not to scale"
        low = tall if row.denominator else (hangs - view.extent[1]) * style.MM
        scales.append(
            (x + (cell - width_per_size(words) * pages.type.small) / 2, top - low - pages.type.small * 1.4, words)
        )
        x += cell + _GAP_MM * style.MM
    pages.painter.lines(titles, _title(pages), True, style.INK)
    pages.painter.lines(scales, pages.type.small, False, style.INK)
    pages.advance(height)
    _set_notes(pages, notes, cells)
    pages.advance(pages.type.gap)


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
            x += cell + _GAP_MM * style.MM
        pages.painter.lines(places, pages.type.note, False, style.SOFT)
        pages.advance(count * pages.type.note * 1.3)
        done += count
