"""Headings, paragraphs, boxes, lists, facts and lines to sign, set onto pages."""

from collections.abc import Callable, Sequence
from functools import lru_cache
from itertools import product
from typing import Final, NamedTuple

from hwsched.language import phrase
from hwsched.render import print_style as style
from hwsched.render.blocks import Bullets, Facts, Heading, Paragraph, Picture, SignOff, StepLine, Steps
from hwsched.render.fonts import width_per_size
from hwsched.render.pages import Pages
from hwsched.render.pictures import paint_picture, size_within
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


_WHOLE: Final = 0.3
"""Up to this share of a page a paragraph at the door is not broken."""
_PAIR: Final = 170.0
"""Least width of a label and its value where the page is read at the door [pt]."""


_HEADED: Final = 6.5 * style.MM
"""Height of a line to sign under a head: a line of a hand, since nothing stands under it [pt]."""
_FACTS_GAP: Final = 14.0
"""Between two columns of facts [pt]."""


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
    lines = pages.wrap(block.text, pages.width, size, True)
    leading = size * 1.25
    if pages.type.door:
        leading = size * 1.1
    height = leading * len(lines) + (5.0 if block.level < 3 and not pages.type.door else 2.0)
    height += 2.0 if pages.type.door else 3.0
    # A heading alone at the foot of a page belongs to nothing.
    pages.need(height + keep)
    if block.level == 1 or block.anchor:
        pages.outline(block.text, block.level, block.anchor)
    y = pages.y - size * pages.type.rise
    places = [(pages.left, y - number * leading, line) for number, line in enumerate(lines)]
    pages.painter.lines(places, size, True, style.ACCENT if block.level < 3 else style.INK)
    if block.level == 2:
        pages.painter.set_pen(style.RULE)
        low = y - (len(lines) - 1) * leading - 3.5
        pages.canvas.line(pages.left, low, pages.left + pages.width, low)
    pages.advance(height)


def set_paragraph(pages: Pages, block: Paragraph) -> None:
    """Set a paragraph, in a box for cautions and stops."""
    if block.style in _BOXES:
        _set_box(pages, block.text, _BOXES[block.style])
        return
    setting = _PARAGRAPHS[block.style]
    size = setting.size(pages.type)
    leading = size * pages.type.leading
    lines = list(pages.wrap(block.text, pages.width, size, setting.bold))
    if pages.type.door and pages.type.whole:
        # A last line that begins the next sheet is read there as if it belonged to what follows.
        pages.need(min(len(lines) * leading, pages.full * _WHOLE))
    while lines:
        # Where it has to be parted, two lines at least stand on either sheet: one alone is overlooked.
        pages.need(min(len(lines), 2) * leading)
        count = max(1, int(pages.room / leading))
        count -= 1 if len(lines) - count == 1 and count > 2 else 0
        part, lines = lines[:count], lines[count:]
        y = pages.y - size * pages.type.rise
        places = [(pages.left, y - number * leading, line) for number, line in enumerate(part)]
        pages.painter.lines(places, size, setting.bold, setting.colour)
        pages.advance(leading * len(part))
    pages.advance(pages.type.gap)


def _set_box(pages: Pages, text: str, look: _BoxLook, gap: float | None = None) -> None:
    """Set a box with a band that names it; it breaks over pages where it must, each part whole in itself."""
    band, pad, size = 52.0, 5.0 if not pages.type.door else 2.0, pages.type.body
    leading = size * pages.type.leading
    if pages.type.door and not look.solid:
        _set_run_in_box(pages, text, look, pages.type.gap if gap is None else gap)
        return
    word_size = 8.0 if not pages.type.door else 11.0
    band = max(band, pages.wide(look.word, True) * word_size + 6.0)
    bold = look.solid
    lines = list(pages.wrap(text, pages.width - band - 2 * pad, size, bold))
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
        word_x = pages.left + (band - pages.wide(look.word, True) * word_size) / 2
        word = [(word_x, pages.y - height / 2 - 3.0, look.word)]
        painter.lines(word, word_size, True, style.WHITE if look.solid else look.ink)
        y = pages.y - pad - size * pages.type.rise
        places = [(pages.left + band + pad, y - number * leading, line) for number, line in enumerate(part)]
        painter.lines(places, size, bold, style.INK)
        pages.advance(height)
        if lines:
            pages.turn()
    pages.advance(pages.type.gap if gap is None else gap)


def _set_run_in_box(pages: Pages, text: str, look: _BoxLook, gap: float) -> None:
    """Set a box whose word begins its first line."""
    pad, size = 2.0, pages.type.body
    leading = size * pages.type.leading
    lines = list(_led(pages, look.word, text, pages.width - 2 * pad, size))
    height = leading * len(lines) + pad + 0.5
    pages.need(min(height, pages.full))
    first = True
    while lines:
        count = max(1, int((pages.room - pad) / leading))
        part, lines = lines[:count], lines[count:]
        height = leading * len(part) + pad + 0.5
        pages.painter.set_pen(look.pen)
        pages.painter.set_fill(look.tint)
        pages.canvas.rect(pages.left, pages.y - height, pages.width, height, stroke=1, fill=1)
        y = pages.y - pad / 2 - size * pages.type.rise
        _set_led(pages, look.word if first else "", part, pages.left + pad, y, size, leading)
        first = False
        pages.advance(height)
        if lines:
            pages.turn()
    pages.advance(gap)


def _led(pages: Pages, word: str, text: str, width: float, size: float) -> tuple[str, ...]:
    """Wrap a text that a bold word leads; the word stands at the head of the first line."""
    return _led_lines(word, text, width, size, pages.type.narrow)


@lru_cache(maxsize=5_000)
def _led_lines(word: str, text: str, width: float, size: float, narrow: bool) -> tuple[str, ...]:
    said = " ".join(printable(f"{word} {text}").split())
    # Bold letters are wider, so the first line has less room than the others.
    wider = (width_per_size(f"{word} ", True, narrow) - width_per_size(f"{word} ", False, narrow)) * size
    first = wrap(said, width - wider, size, narrow=narrow)[0]
    rest = said[len(first) :].lstrip()
    return (first, *wrap(rest, width, size, narrow=narrow)) if rest else (first,)


def _set_led(pages: Pages, word: str, lines: Sequence[str], x: float, y: float, size: float, leading: float) -> None:
    """Set lines of which the first begins with a bold word."""
    if pages.measured:
        return
    places = [(x, y - row * leading, line) for row, line in enumerate(lines)]
    if word:
        pages.painter.lines([(x, y, word)], size, True, style.INK)
        places[0] = (x + pages.wide(f"{word} ", True) * size, y, lines[0].removeprefix(word).lstrip())
    pages.painter.lines(places, size, False, style.INK)


def set_bullets(pages: Pages, block: Bullets) -> None:
    """Set a list with hanging lines."""
    size, leading = pages.type.body, pages.type.body * pages.type.leading
    indent = 20.0 if block.numbered else 12.0
    for number, item in enumerate(block.items, start=1):
        since = pages.spot
        lines = list(pages.wrap(item, pages.width - indent, size))
        sign = f"{number}." if block.numbered else "–"
        if pages.type.door and pages.type.whole:
            pages.need(min(len(lines) * leading, pages.full * _WHOLE))
        pages.need(min(len(lines), 3) * leading)
        while lines:
            pages.need(leading)
            count = max(1, int(pages.room / leading))
            part, lines = lines[:count], lines[count:]
            y = pages.y - size * pages.type.rise
            places = [(pages.left + indent, y - row * leading, line) for row, line in enumerate(part)]
            if sign:
                places.insert(0, (pages.left + indent - 5.0 - pages.wide(sign) * size, y, sign))
                sign = ""
            pages.painter.lines(places, size, False, style.INK)
            pages.advance(leading * len(part))
        pages.mark(number - 1, since)
        pages.advance(2.0)
    pages.advance(pages.type.gap - 2.0)


def set_steps(pages: Pages, block: Steps) -> None:
    """Set steps: box to tick, number, where the hand is, what is done; cautions before the step that they are for."""
    for number, line in enumerate(block.lines):
        since = pages.spot
        # A caution stands with the step that it is for, not at the foot of the page before.
        if pages.type.whole:
            pages.need(min(_tall_of(pages, line), pages.full))
        for caution in line.cautions:
            _set_box(pages, caution, _BOXES["caution"], gap=1.5)
        _set_step(pages, line, pages.type.body)
        pages.mark(number, since)
    pages.advance(pages.type.gap - 1.5)


def _tall_of(pages: Pages, line: StepLine) -> float:
    """Return what a step takes with its cautions."""
    size = pages.type.body
    leading = size * pages.type.leading
    _, lines = _said_of(pages, line, size)
    tall = len(lines) * leading
    for caution in line.cautions:
        if pages.type.door:
            tall += len(_led(pages, _BOXES["caution"].word, caution, pages.width - 4.0, size)) * leading + 4.0
        else:
            tall += len(pages.wrap(caution, pages.width - 62.0, size)) * leading + 11.5
    return tall


def _said_of(pages: Pages, line: StepLine, size: float) -> tuple[str, list[str]]:
    """Return number and place, which stand bold before the text, and all of it wrapped."""
    led = f"{line.number} {line.where[:1].upper()}{line.where[1:]}."
    said = " ".join((line.text, *(f"[{reading}]" for reading in line.readings)))
    return led, list(_led(pages, led, said, pages.width - size * 0.75 - 4.0, size))


def _set_step(pages: Pages, line: StepLine, size: float) -> None:
    leading, box = size * pages.type.leading, size * 0.75
    led, lines = _said_of(pages, line, size)
    # A step is done as a whole: it is broken only where it is longer than a page.
    pages.need(min(len(lines) * leading, pages.full))
    first = True
    while lines:
        pages.need(leading)
        count = max(1, int(pages.room / leading))
        part, lines = lines[:count], lines[count:]
        y = pages.y - size * pages.type.rise
        if first:
            pages.painter.set_pen(style.BOX)
            pages.canvas.rect(pages.left, y - 0.5, box, box, stroke=1, fill=0)
            if line.done:
                pages.canvas.line(pages.left, y - 0.5, pages.left + box, y - 0.5 + box)
                pages.canvas.line(pages.left, y - 0.5 + box, pages.left + box, y - 0.5)
        _set_led(pages, led if first else "", part, pages.left + box + 4.0, y, size, leading)
        first = False
        pages.advance(leading * len(part))
    pages.advance(1.5)


def facts_height(pages: Pages, block: Facts) -> float:
    """Return what facts need that are read at a desk [pt]."""
    columns = max(1, block.columns)
    cell = (pages.width - _FACTS_GAP * (columns - 1)) / columns
    label_width = min(cell * 0.4, 96.0)
    size, small = pages.type.body, pages.type.small
    tall = 0.0
    for first in range(0, len(block.pairs), columns):
        lines = max(
            max(len(pages.wrap(label, label_width - 6.0, small)), len(pages.wrap(value, cell - label_width, size)))
            for label, value in block.pairs[first : first + columns]
        )
        tall += lines * size * pages.type.leading + 3.0
    return tall


def set_facts(pages: Pages, block: Facts) -> None:
    """Set label and value pairs in columns; a pair's value wraps under itself."""
    if pages.type.door:
        _set_run_in_facts(pages, block)
        return
    columns = max(1, block.columns)
    gap = _FACTS_GAP
    cell = (pages.width - gap * (columns - 1)) / columns
    label_width = min(cell * 0.4, 96.0)
    size, small = pages.type.body, pages.type.small
    leading = size * pages.type.leading
    for first in range(0, len(block.pairs), columns):
        row = block.pairs[first : first + columns]
        since = pages.spot
        labels = [pages.wrap(label, label_width - 6.0, small) for label, _ in row]
        values = [pages.wrap(value, cell - label_width, size) for _, value in row]
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
        _mark_first(pages, range(first, first + len(row)), since)
    pages.advance(pages.type.gap)


def _set_run_in_facts(pages: Pages, block: Facts) -> None:
    """Set pairs whose label begins the first line of the value, in their order; a long one takes more of its row."""
    gap, size = 8.0, pages.type.body
    # By half cells: two long ones may part a row evenly.
    columns = 2 * max(1, min(block.columns, int(pages.width // _PAIR)))
    cell = (pages.width - gap * (columns - 1)) / columns
    leading, air = size * pages.type.leading, 1.5 * pages.type.pad
    first = 0
    for spans in _spans(pages, block, columns, cell, gap):
        at, row = 0, []
        for span, (label, value) in zip(spans, block.pairs[first : first + len(spans)], strict=True):
            wide = span * (cell + gap) - gap
            row.append((at * (cell + gap), wide, label, _led(pages, label, value, wide, size)))
            at += span
        done, tall, since = 0, max(len(lines) for *_, lines in row), pages.spot
        while done < tall:
            pages.need(leading + air)
            count = max(1, min(tall - done, int((pages.room - air) / leading)))
            height = count * leading + air
            for across, wide, label, lines in row:
                x = pages.left + across
                part = lines[done : done + count]
                if part:
                    _set_led(pages, label if not done else "", part, x, pages.y - size * pages.type.rise, size, leading)
                pages.painter.set_pen(style.RULE)
                pages.canvas.line(x, pages.y - height + 0.3, x + wide, pages.y - height + 0.3)
            pages.advance(height)
            done += count
        _mark_first(pages, range(first, first + len(row)), since)
        first += len(row)
    pages.advance(pages.type.gap)


def _spans(pages: Pages, block: Facts, columns: int, cell: float, gap: float) -> list[tuple[int, ...]]:
    """Share rows of half cells among pairs so that all take the fewest lines: of each row what each pair takes."""
    size, pairs = pages.type.body, block.pairs
    # What a row takes beside its lines, told in lines, so that few rows are worth something, too.
    air = 1.5 * pages.type.pad / (size * pages.type.leading)

    def tall(number: int, span: int) -> int:
        return len(_led(pages, *pairs[number], span * (cell + gap) - gap, size))

    best: list[tuple[float, list[tuple[int, ...]]]] = [(0.0, [])]
    for end in range(1, len(pairs) + 1):
        found = []
        for count in range(1, min(columns // 2, end) + 1):
            # The last row may leave cells empty; any other gives them away.
            for spans in _shares(columns, count):
                lines = max(tall(end - count + n, span) for n, span in enumerate(spans))
                before, rows = best[end - count]
                found.append((before + lines + air, [*rows, spans]))
        best.append(min(found, key=lambda each: each[0]))
    return best[-1][1]


@lru_cache
def _shares(cells: int, count: int) -> tuple[tuple[int, ...], ...]:
    """Return the ways in which so many pairs share the half cells of a row, a whole one each at least.

    The most even first.

    Examples
    --------
    >>> _shares(6, 2), _shares(6, 3)
    (((2, 2), (2, 3), (3, 2), (3, 3), (2, 4), (4, 2)), ((2, 2, 2),))
    """
    ways = [way for way in product(range(2, cells + 1), repeat=count) if sum(way) <= cells]
    return tuple(sorted(ways, key=lambda way: (max(way), way)))


def _mark_first(pages: Pages, numbers: range, since: tuple[int, int, float]) -> None:
    """Mark a row of pairs once, whichever of them is otherwise."""
    held = pages.marked.rows if pages.marked is not None else frozenset()
    number = next((each for each in numbers if each in held), None)
    if number is not None:
        pages.mark(number, since)


def _to_sign(pages: Pages) -> float:
    return (9.0 if pages.type.door else 11.0) * style.MM


def sign_off_height(pages: Pages, block: SignOff) -> float:
    """Return about what lines to sign take."""
    rows = -(-len(block.roles) // block.abreast)
    if _is_headed(pages, block):
        return pages.type.small * pages.type.leading + rows * _HEADED
    return rows * (_to_sign(pages) if pages.type.door else 12.0 * style.MM)


def _is_headed(pages: Pages, block: SignOff) -> bool:
    """Tell whether what is to be written is said once, over several lines to sign, and not under each."""
    return pages.type.door and len(block.roles) > block.abreast


def set_sign_off(pages: Pages, block: SignOff) -> None:
    """Set lines to sign: role, name, signature, date."""
    size, gap, door, headed = pages.type.small, 12.0, pages.type.door, _is_headed(pages, block)
    height = _HEADED if headed else _to_sign(pages)
    leading = pages.type.body * pages.type.leading
    shares: tuple[float, ...] = (0.26, 0.27, 0.27, 0.2) if door else (0.2, 0.3, 0.3, 0.2)
    cell = (pages.width - gap * (block.abreast - 1)) / block.abreast
    # A role is not broken for the lines beside it; they share what it leaves.
    role = max((pages.wide(each) for each in block.roles), default=0.0) * pages.type.body + 9.0
    first_share = min(max(shares[0], role / cell), 0.45)
    shares = (first_share, *(each * (1 - first_share) / (1 - shares[0]) for each in shares[1:]))
    written = (phrase("Name"), phrase("Signature"), phrase("Date"))
    if headed:
        pages.need(min(sign_off_height(pages, block), pages.full))
        places = []
        for number in range(min(block.abreast, len(block.roles))):
            x = pages.left + number * (cell + gap) + cell * shares[0]
            for share, name in zip(shares[1:], written, strict=True):
                places.append((x, pages.y - size * pages.type.rise, name))
                x += cell * share
        pages.painter.lines(places, size, False, style.SOFT)
        pages.advance(size * pages.type.leading)
    for first in range(0, len(block.roles), block.abreast):
        row = [
            pages.wrap(role, cell * shares[0] - 8.0, pages.type.body)
            for role in block.roles[first : first + block.abreast]
        ]
        tall = max(height, max(map(len, row)) * leading + (0.0 if door else 8.0))
        pages.need(tall)
        # Under the line, with air, stands what is to be written on it, where no head says it.
        under = size * 0.75 + 2.5
        base = pages.y - tall + (3.0 if headed else under + 1.5)
        roles, words = [], []
        for number, lines in enumerate(row):
            left = pages.left + number * (cell + gap)
            roles += [(left, base + (len(lines) - 1 - at) * leading, line) for at, line in enumerate(lines)]
            x = left + cell * shares[0]
            pages.painter.set_pen(style.LINE_TO_SIGN)
            for share, name in zip(shares[1:], written, strict=True):
                end = x + cell * share - 8.0
                pages.canvas.line(x, base - 1.0, end, base - 1.0)
                words.append((x, base - under, name))
                x += cell * share
        pages.painter.lines(roles, pages.type.body, False, style.INK)
        if not headed:
            pages.painter.lines(words, size - (0.0 if door else 1.0), False, style.SOFT)
        pages.advance(tall)
    pages.advance(pages.type.gap)


def set_picture(pages: Pages, block: Picture) -> None:
    """Set a picture as large as what is left of the page, or as a page of its own where that is less than a third."""
    if block.height_mm or not block.content:
        _set_small_picture(pages, block)
        return
    wide, tall = size_within(block.content, pages.width, pages.full)
    if tall > pages.room:
        if pages.room < pages.full / 3:
            pages.need(pages.full)
        wide, tall = size_within(block.content, pages.width, pages.room)
    paint_picture(pages.canvas, block.content, pages.left + (pages.width - wide) / 2, pages.y - tall, wide, tall)
    pages.painter.forget()
    pages.advance(tall + pages.type.gap)


def _set_small_picture(pages: Pages, block: Picture) -> None:
    """Set a picture of a height that is asked for, framed, under its caption."""
    leading = pages.type.small * 1.2
    lines = pages.wrap(block.caption, pages.width, pages.type.small, True) if block.caption else ()
    room = block.height_mm * style.MM
    wide, tall = size_within(block.content, pages.width, room) if block.content else (0.0, 0.0)
    pages.need(min(len(lines) * leading + tall + 3.0, pages.full))
    places = [(pages.left, pages.y - pages.type.small - row * leading, line) for row, line in enumerate(lines)]
    pages.painter.lines(places, pages.type.small, True, style.INK)
    if not block.content:
        pages.advance(len(lines) * leading + pages.type.gap)
        return
    low = pages.y - len(lines) * leading - 3.0 - tall
    paint_picture(pages.canvas, block.content, pages.left, low, wide, tall)
    pages.painter.forget()
    pages.painter.set_pen(style.RULE)
    pages.canvas.rect(pages.left, low, wide, tall, stroke=1, fill=0)
    pages.advance(pages.y - low + pages.type.gap)


def shown(text: str) -> str:
    """Return a text on one line, as it may stand in heads and captions."""
    return printable(text).replace("\n", " ")
