"""Headings, paragraphs, boxes, lists, facts and lines to sign, set onto pages."""

from collections.abc import Callable
from typing import Final, NamedTuple

from hwsched.render import print_style as style
from hwsched.render.blocks import Bullets, Facts, Heading, Paragraph, SignOff, StepLine, Steps
from hwsched.render.fonts import width_per_size
from hwsched.render.pages import Pages
from hwsched.render.screen import Colour, PenLook
from hwsched.render.wrap import printable, wrap


class _Setting(NamedTuple):
    size: Callable[[style.Type], float]
    bold: bool
    colour: Colour


_PARAGRAPHS: Final = {
    "body": _Setting(lambda sizes: sizes.body, False, style.INK),
    "small": _Setting(lambda sizes: sizes.small, False, style.SOFT),
    "strong": _Setting(lambda sizes: sizes.body, True, style.INK),
    "title": _Setting(lambda sizes: style.TITLE, True, style.ACCENT),
}


class _BoxLook(NamedTuple):
    word: str
    pen: PenLook
    tint: Colour
    ink: Colour
    solid: bool
    """Whether the band with the word is filled with ink."""


_BOXES: Final = {
    "caution": _BoxLook("CAUTION", style.CAUTION_PEN, style.CAUTION_TINT, style.CAUTION_INK, False),
    "stop": _BoxLook("STOP", style.STOP_PEN, style.STOP_TINT, style.STOP_INK, True),
}


def set_heading(pages: Pages, block: Heading, keep: float) -> None:
    """Set a heading; it moves to the next page together with the first ``keep`` points of what follows."""
    size = pages.type.heads[block.level]
    lines = wrap(block.text, pages.width, size, True)
    leading = size * 1.25
    height = leading * len(lines) + (5.0 if block.level < 3 else 2.0)
    # A heading alone at the foot of a page belongs to nothing.
    pages.need(height + keep)
    if block.level == 1:
        pages.outline(block.text)
    y = pages.y - size
    places = [(pages.left, y - number * leading, line) for number, line in enumerate(lines)]
    pages.painter.lines(places, size, True, style.ACCENT if block.level < 3 else style.INK)
    if block.level == 2:
        pages.painter.set_pen(style.RULE)
        low = y - (len(lines) - 1) * leading - 3.5
        pages.canvas.line(pages.left, low, pages.left + pages.width, low)
    pages.advance(height + 3.0)


def set_paragraph(pages: Pages, block: Paragraph) -> None:
    """Set a paragraph, in a box for cautions and stops."""
    if block.style in _BOXES:
        _set_box(pages, block.text, _BOXES[block.style])
        return
    setting = _PARAGRAPHS[block.style]
    size = setting.size(pages.type)
    leading = size * pages.type.leading
    lines = list(wrap(block.text, pages.width, size, setting.bold))
    while lines:
        pages.need(leading)
        count = max(1, int(pages.room / leading))
        part, lines = lines[:count], lines[count:]
        y = pages.y - size
        places = [(pages.left, y - number * leading, line) for number, line in enumerate(part)]
        pages.painter.lines(places, size, setting.bold, setting.colour)
        pages.advance(leading * len(part))
    pages.advance(pages.type.gap)


def _set_box(pages: Pages, text: str, look: _BoxLook, gap: float | None = None) -> None:
    """Set a box with a band that names it; it breaks over pages where it must, each part whole in itself."""
    band, pad, size = 52.0, 5.0 if pages.type is style.USUAL else 2.5, pages.type.body
    leading = size * pages.type.leading
    word_size = 8.0 if pages.type is style.USUAL else 11.0
    band = max(band, width_per_size(look.word, True) * word_size + 6.0)
    bold = look.solid
    lines = list(wrap(text, pages.width - band - 2 * pad, size, bold))
    pages.need(min(len(lines), 4) * leading + 2 * pad)
    while lines:
        count = max(1, int((pages.room - 2 * pad) / leading))
        part, lines = lines[:count], lines[count:]
        height = leading * len(part) + 2 * pad
        canvas, painter = pages.canvas, pages.painter
        low = pages.y - height
        painter.set_pen(look.pen)
        painter.set_fill(look.tint)
        canvas.rect(pages.left, low, pages.width, height, stroke=1, fill=1)
        if look.solid:
            painter.set_fill(look.ink)
            canvas.rect(pages.left, low, band, height, stroke=1, fill=1)
        else:
            canvas.line(pages.left + band, low, pages.left + band, pages.y)
        word_x = pages.left + (band - width_per_size(look.word, True) * word_size) / 2
        word = [(word_x, pages.y - height / 2 - 3.0, look.word)]
        painter.lines(word, word_size, True, style.WHITE if look.solid else look.ink)
        y = pages.y - pad - size
        places = [(pages.left + band + pad, y - number * leading, line) for number, line in enumerate(part)]
        painter.lines(places, size, bold, style.INK)
        pages.advance(height)
        if lines:
            pages.new_page()
    pages.advance(pages.type.gap if gap is None else gap)


def set_bullets(pages: Pages, block: Bullets) -> None:
    """Set a list with hanging lines."""
    size, leading = pages.type.body, pages.type.body * pages.type.leading
    indent = 20.0 if block.numbered else 12.0
    for number, item in enumerate(block.items, start=1):
        lines = list(wrap(item, pages.width - indent, size))
        sign = f"{number}." if block.numbered else "–"
        pages.need(min(len(lines), 3) * leading)
        while lines:
            pages.need(leading)
            count = max(1, int(pages.room / leading))
            part, lines = lines[:count], lines[count:]
            y = pages.y - size
            places = [(pages.left + indent, y - row * leading, line) for row, line in enumerate(part)]
            if sign:
                places.insert(0, (pages.left + indent - 5.0 - width_per_size(sign) * size, y, sign))
                sign = ""
            pages.painter.lines(places, size, False, style.INK)
            pages.advance(leading * len(part))
        pages.advance(2.0)
    pages.advance(pages.type.gap - 2.0)


def set_steps(pages: Pages, block: Steps) -> None:
    """Set steps: box to tick, number, where the hand is, what is done; cautions before the step that they are for."""
    size = pages.type.body
    numbers = max((width_per_size(str(line.number), True) for line in block.lines), default=0.0) * size
    for line in block.lines:
        for caution in line.cautions:
            _set_box(pages, caution, _BOXES["caution"], gap=2.0)
        _set_step(pages, line, size, numbers)
    pages.advance(pages.type.gap - 2.0)


def _set_step(pages: Pages, line: StepLine, size: float, numbers: float) -> None:
    leading, box = size * pages.type.leading, size * 0.8
    at_number, at_text = pages.left + box + 5.0, pages.left + box + 5.0 + numbers + 6.0
    where = f"{line.where[:1].upper()}{line.where[1:]}."
    said = " ".join((line.text, *(f"[{reading}]" for reading in line.readings)))
    # Where the hand is stands bold before the text, and is wrapped with it; bold letters are wider by this.
    gap = width_per_size(f"{where} ", True) * size
    wider = gap - width_per_size(f"{where} ") * size
    lines = list(wrap(f"{where} {said}", pages.left + pages.width - at_text - wider, size))
    # A step is done as a whole: it is broken only where it is longer than a page.
    pages.need(min(len(lines) * leading, pages.full))
    first = True
    while lines:
        pages.need(leading)
        count = max(1, int(pages.room / leading))
        part, lines = lines[:count], lines[count:]
        y = pages.y - size
        places = [(at_text, y - row * leading, each) for row, each in enumerate(part)]
        if first:
            pages.painter.set_pen(style.BOX)
            pages.canvas.rect(pages.left, y - 0.5, box, box, stroke=1, fill=0)
            pages.painter.lines([(at_number, y, str(line.number)), (at_text, y, where)], size, True, style.INK)
            places[0] = (at_text + gap, y, part[0].removeprefix(where).lstrip())
            first = False
        pages.painter.lines(places, size, False, style.INK)
        pages.advance(leading * len(part))
    pages.advance(1.5)


def set_facts(pages: Pages, block: Facts) -> None:
    """Set label and value pairs in columns; a pair's value wraps under itself."""
    columns = max(1, block.columns)
    gap = 14.0
    cell = (pages.width - gap * (columns - 1)) / columns
    label_width = min(cell * 0.4, 96.0)
    size, small = pages.type.body, pages.type.small
    leading = size * pages.type.leading
    for first in range(0, len(block.pairs), columns):
        row = block.pairs[first : first + columns]
        labels = [wrap(label, label_width - 6.0, small) for label, _ in row]
        values = [wrap(value, cell - label_width, size) for _, value in row]
        done, tall = 0, max(max(len(a), len(b)) for a, b in zip(labels, values, strict=True))
        while done < tall:
            pages.need(leading + 3.0)
            count = max(1, min(tall - done, int((pages.room - 3.0) / leading)))
            y = pages.y - size - 1.0
            names, words = [], []
            for column in range(len(row)):
                x = pages.left + column * (cell + gap)
                for number in range(count):
                    if done + number < len(labels[column]):
                        names.append((x, y - number * leading, labels[column][done + number]))
                    if done + number < len(values[column]):
                        words.append((x + label_width, y - number * leading, values[column][done + number]))
            pages.painter.lines(names, small, False, style.SOFT)
            pages.painter.lines(words, size, False, style.INK)
            height = count * leading + 3.0
            pages.painter.set_pen(style.RULE)
            for column in range(len(row)):
                x = pages.left + column * (cell + gap)
                pages.canvas.line(x, pages.y - height, x + cell, pages.y - height)
            pages.advance(height)
            done += count
    pages.advance(pages.type.gap)


def set_sign_off(pages: Pages, block: SignOff) -> None:
    """Set lines to sign: role, name, signature, date."""
    height, size = (11.0 if pages.type is style.USUAL else 9.0) * style.MM, pages.type.small
    shares = (0.2, 0.3, 0.3, 0.2)
    for role in block.roles:
        lines = wrap(role, pages.width * shares[0] - 8.0, pages.type.body)
        tall = max(height, len(lines) * pages.type.body * pages.type.leading + 8.0)
        pages.need(tall)
        base = pages.y - tall + 9.0
        places = [
            (pages.left, base + (len(lines) - 1 - number) * pages.type.body * pages.type.leading, line)
            for number, line in enumerate(lines)
        ]
        pages.painter.lines(places, pages.type.body, False, style.INK)
        x = pages.left + pages.width * shares[0]
        words = []
        pages.painter.set_pen(style.LINE_TO_SIGN)
        for share, name in zip(shares[1:], ("Name", "Signature", "Date"), strict=True):
            end = x + pages.width * share - 8.0
            pages.canvas.line(x, base - 1.0, end, base - 1.0)
            words.append((x, base - 8.5, name))
            x += pages.width * share
        pages.painter.lines(words, size - (1.0 if pages.type is style.USUAL else 0.0), False, style.SOFT)
        pages.advance(tall)
    pages.advance(pages.type.gap)


def shown(text: str) -> str:
    """Return a text on one line, as it may stand in heads and captions."""
    return printable(text).replace("\n", " ")
