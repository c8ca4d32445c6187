"""Pages being filled from top to bottom: head, foot, page x of y, the place where the next block goes.

How many pages there are is known only at the end, so "of y" is a small form that every page shows and that is written
last.
"""

import math
from collections.abc import Callable
from typing import Any, Final

from hwsched.language import phrase
from hwsched.render import print_style as style
from hwsched.render.blocks import Document, Letterhead, Marked, Section, Table
from hwsched.render.fonts import font_name, width_per_size
from hwsched.render.paint import Painter
from hwsched.render.pictures import paint_picture, size_within
from hwsched.render.qr import QR_PT, paint_qr
from hwsched.render.scale import Kept, Row
from hwsched.render.wrap import printable, wrap

_TOTAL: Final = "total-pages"
_STOP: Final = "STOP"
COLUMN_GAP: Final = 12.0
"""Between two columns [pt]."""
_LEAST_COLUMN: Final = 200.0
"""Narrower than this no table of a packet can be read [pt]."""
_LEAST_TITLE: Final = 110.0
_LETTERHEAD: Final = 10.0
"""Letters of a letterhead [pt]."""


class RenderCancelledError(Exception):
    """Somebody asked to stop; nothing was written."""


class Pages:
    """The pages of one document on one canvas."""

    def __init__(
        self, canvas: Any, document: Document, paper: tuple[float, float], cancelled: Callable[[], bool] | None
    ) -> None:
        self.canvas = canvas
        self.painter = Painter(canvas)
        self.number = 0
        """Pages begun."""
        self.y = 0.0
        """Top of what comes next [pt]."""
        self._document = document
        self._paper = paper
        self._cancelled = cancelled
        self._section: Section | None = None
        self._sections = 0
        self._sheet = 0
        self._going_on = False
        """A section of the same mark begins: its page before is finished already."""
        self._several = len(document.sections) > 1
        self._size = paper
        self.type = style.USUAL
        """Sizes of the section that is set."""
        self.row_memory: dict[object, tuple[Row, ...]] = {}
        """Views that were brought to paper, by what decided it."""
        self.kept_views: Kept = {}
        """Each of them at the scales that were tried."""
        self.table_memory: dict[object, tuple[Table, style.Type, Any]] = {}
        """How tables begin, by what decides it; with table and sizes, so that their identity is given to no other."""
        self.measured = False
        """Whether it is only looked how much room all takes: what stands where need not be worked out."""
        self.marked: Marked | None = None
        """What of the block that is set is otherwise since."""
        self._lettered = (0, 0, 0)
        self.width = self.left = 0.0
        """Width of the text area, or of its column, and its left end."""
        self._go_to(0, 1)
        self._page_of: dict[str, int] = {}
        """Pages of headings that have a name, by it."""
        self._asked: dict[tuple[str, float], tuple[str, bool]] = {}
        """Names of which the page is shown in letters of a size: the form that shows it, and whether it is narrow."""
        self._totals: dict[float, style.Type] = {}
        """By its size, where "of y" is shown."""
        self._band_top = 0.0
        """Top of the columns that stand side by side here."""
        self._band_low = 0.0
        """Lowest that any of them reaches on this page."""
        self._head: list[tuple[float, float, str, float, bool]] = []
        self._body_top = 0.0
        self._right = 0.0
        """Right end of what the head says."""
        self._outlines = 0
        self._outline_level = 0
        self._fresh = False
        # Room for "of y" is guessed from the number of sections; a longer number reaches into the margin only.
        self._total_digits = width_per_size("0" * len(str(2 * len(document.sections))))

    @property
    def _total_width(self) -> float:
        return self._total_digits * self.type.subhead

    def wide(self, text: str, bold: bool = False) -> float:
        """Return the width of a text over the font size."""
        return width_per_size(text, bold, self.type.narrow)

    def wrap(self, text: str, width: float, size: float, bold: bool = False) -> tuple[str, ...]:
        """Break a text into lines, as `hwsched.render.wrap.wrap` does."""
        return wrap(text, width, size, bold, self.type.narrow)

    @property
    def _all_width(self) -> float:
        return self._size[0] - 2 * self.type.margin

    def _go_to(self, column: int, columns: int) -> None:
        """Go to one of the columns that stand side by side; told once, since every line that is set asks for it."""
        self._column, self._columns = column, columns
        self.width = (self._all_width - COLUMN_GAP * (columns - 1)) / columns
        self.left = self.type.margin + column * (self.width + COLUMN_GAP)

    @property
    def room(self) -> float:
        """What is left of the page."""
        return self.y - self.type.bottom

    @property
    def full(self) -> float:
        """What a page holds."""
        return self._body_top - self.type.bottom

    def set_columns(self, count: int) -> None:
        """Go on in so many columns side by side, under all that stands on the page."""
        self.y = min(self.y, self._band_low)
        # Small paper has room for fewer.
        most = int((self._all_width + COLUMN_GAP) // (_LEAST_COLUMN + COLUMN_GAP))
        self._go_to(0, max(1, min(count, most)))
        self._band_top = self._band_low = self.y

    @property
    def spot(self) -> tuple[int, int, float]:
        """Where the next block goes: page, column, height."""
        return self.number, self._column, self.y

    def mark(self, number: int, since: tuple[int, int, float]) -> None:
        """Put a bar and the letter beside what was set since a spot, where its row is marked."""
        if self.marked is None or number not in self.marked.rows:
            return
        page, column, top = since
        if (page, column) != (self.number, self._column):
            top = self._band_top
        canvas, painter = self.canvas, self.painter
        painter.set_pen(style.CHANGE_BAR)
        x = self.left - 3.0
        canvas.line(x, top - 1.0, x, self.y + 1.0)
        if self.marked.letter and (page, column, number) != self._lettered:
            size = self.type.body
            wide = self.wide(self.marked.letter, True) * size
            painter.lines([(x - 2.0 - wide, top - size, self.marked.letter)], size, True, style.INK)
            # One letter for a run of rows.
            self._lettered = (self.number, self._column, number + 1)
        elif self.marked.letter:
            self._lettered = (self.number, self._column, number + 1)

    def begin_section(self, section: Section, type_: style.Type | None = None) -> None:
        """Start a section on a page of its own; one of the same mark goes on with its sheets."""
        if self._section is not None and section.mark and section.mark == self._section.mark:
            self._finish_page()
            self._going_on = True
        else:
            self.end_section()
            self._sections += 1
            self._sheet = 0
        self._section = section
        self.type = type_ or (style.SITE if section.at_door else style.DENSE if section.dense else style.USUAL)
        self.painter.narrow = self.type.narrow
        wide, tall = self._paper
        self._size = (tall, wide) if section.landscape else (wide, tall)
        self._go_to(self._column, 1)
        self._compose_head(section)
        self.new_page()

    def end_section(self) -> None:
        """Finish the page and write how many sheets the section has."""
        if self._section is None:
            return
        if self._section.whole_sheets and self._sheet % 2:
            self.new_page()
        self._finish_page()
        if self._several and self._section.mark:
            self._write_form(f"sheets-{self._sections}", str(self._sheet), self.type.head, True, self.type.narrow)
        self._section = None

    def finish(self) -> None:
        """Finish the last page and write how many there are."""
        self.end_section()
        # As a form that all pages refer to: how many there are is only known after the last is drawn, and setting
        # everything twice would take twice as long.
        for each in self._totals.values():
            self._write_form(f"{_TOTAL}-{each.subhead:g}", str(self.number), each.subhead, False, each.narrow)
        for (anchor, size), (form, narrow) in self._asked.items():
            self._write_form(form, str(self._page_of.get(anchor, "")), size, False, narrow)

    def need(self, height: float) -> None:
        """Start a new page unless so much room is left or the page is empty."""
        # What is higher than a whole page would else begin new pages without end.
        if self.room < height and not self._fresh:
            self.turn()

    def turn(self) -> None:
        """Go on at the top of the next column, or on a new page after the last."""
        if self._column + 1 == self._columns:
            self.new_page()
            return
        self._band_low = min(self._band_low, self.y)
        self._go_to(self._column + 1, self._columns)
        self.y = self._band_top
        self._fresh = self._band_top == self._body_top

    def advance(self, height: float) -> None:
        """Take room."""
        self.y -= height
        self._fresh = False

    def new_page(self) -> None:
        """Finish the page and begin another with head and foot."""
        if self._cancelled is not None and self._cancelled():
            raise RenderCancelledError
        if self._sheet and not self._going_on:
            self._finish_page()
        self._going_on = False
        self.number += 1
        self._sheet += 1
        # reportlab makes its preamble anew whenever the size is set, even to the same.
        if self.canvas._pagesize != self._size:
            self.canvas.setPageSize(self._size)
        if self._section is not None and self._section.stop:
            self._draw_stop()
        self._draw_head_and_foot()
        self.y = self._band_top = self._band_low = self._body_top
        self._go_to(0, self._columns)
        if self.number == 1 and self._document.letterhead is not None and not self.type.door:
            self._set_letterhead(self._document.letterhead)
        self._fresh = True

    def _set_letterhead(self, head: Letterhead) -> None:
        """Set logo and lines at the top of the first page."""
        leading = _LETTERHEAD * 1.3
        lines = [line for told in head.lines for line in self.wrap(told, self._all_width * 0.5, _LETTERHEAD)]
        wide = tall = 0.0
        if head.logo:
            wide, tall = size_within(head.logo, self._all_width * 0.45, head.logo_mm * style.MM)
            paint_picture(self.canvas, head.logo, self.type.margin, self.y - tall, wide, tall)
            self.painter.forget()
        right = self._size[0] - self.type.margin
        places = [
            (right - self.wide(line) * _LETTERHEAD, self.y - _LETTERHEAD - number * leading, line)
            for number, line in enumerate(lines)
        ]
        self.painter.lines(places, _LETTERHEAD, False, style.INK)
        self.y -= max(tall, len(lines) * leading) + 10.0
        self._band_top = self._band_low = self.y

    def _draw_logo_in_head(self) -> None:
        """Set the logo small into the head of a page at the door, between project and mark, where there is room."""
        head = self._document.letterhead
        if head is None or not head.logo or not self.type.door:
            return
        first = [row for row in self._head if row[1] == self._head[0][1]]
        left = self._head[0][0] + self.wide(self._head[0][2], True) * self.type.head + 12.0
        end = min((row[0] for row in first[1:]), default=self._right) - 12.0
        tall = self.type.head * 1.4
        if end - left < tall:
            return
        wide, tall = size_within(head.logo, min(end - left, 120.0), tall)
        paint_picture(self.canvas, head.logo, (left + end - wide) / 2, self._head[0][1] - 0.2 * tall, wide, tall)
        self.painter.forget()

    def outline(self, text: str, level: int = 1, anchor: str = "") -> None:
        """Put an entry into the file's outline that leads to where the next block goes, under a name if it has one."""
        if anchor:
            self._page_of[anchor] = self.number
        key = f"to {anchor}" if anchor else f"entry-{self._outlines}"
        self._outlines += 1
        self.canvas.bookmarkPage(key, fit="XYZ", left=0, top=self.y + 4)
        # An entry stands under another, so the first of all is one of the first level.
        level = min(level, self._outline_level + 1)
        self._outline_level = level
        self.canvas.addOutlineEntry(printable(text).replace("\n", " "), key, level - 1, closed=level == 1)

    def lead(self, anchor: str, x: float, y: float, width: float, height: float) -> None:
        """Make a part of the page lead to a heading that is set anywhere in the document."""
        self.canvas.linkRect("", f"to {anchor}", (x, y, x + width, y + height), Border="[0 0 0]")

    def show_page_of(self, anchor: str, x: float, y: float, size: float) -> None:
        """Write on which page a heading is that may be set later."""
        form, _ = self._asked.setdefault((anchor, size), (f"page-of-{len(self._asked)}", self.type.narrow))
        self._place_form(form, x, y)
        self.painter.forget()

    def _finish_page(self) -> None:
        self.canvas.showPage()
        self.painter.forget()

    def _compose_head(self, section: Section) -> None:
        document = self._document
        wide, tall = self._size
        # Beside the code as text stands the one for a camera.
        self._right = wide - self.type.margin - (QR_PT + 6.0 if section.code else 0.0)
        right_width = wide - self.type.margin - self._right
        right_width += self.wide(self._paged_words(99999)) * self.type.subhead + self._total_width
        mark = printable(section.mark).replace("\n", " ")
        mark_lines = self.wrap(mark, self._all_width * 0.45, self.type.head, True) if mark else ()
        mark_width = max((self.wide(line, True) for line in mark_lines), default=0.0) * self.type.head
        if mark and self._several:
            mark_width += self.wide("  sheet 00 of 00", True) * self.type.head
        title = " · ".join(words for words in (document.title, section.subtitle or document.subtitle) if words)
        left_lines = self.wrap(document.project, self._all_width - mark_width - 12, self.type.head, True)
        # Where little room is left beside revision and page, the title has a line of its own above them.
        beside = self._all_width - right_width - 12
        apart = beside < _LEAST_TITLE
        title_lines = self.wrap(title, self._all_width if apart else beside, self.type.subhead)
        y = tall - self.type.top - self.type.head
        rows: list[tuple[float, float, str, float, bool]] = []
        for number in range(max(len(left_lines), len(mark_lines))):
            if number < len(left_lines):
                rows.append((self.type.margin, y, left_lines[number], self.type.head, True))
            if number < len(mark_lines):
                line = mark_lines[number]
                x = self._right - mark_width
                rows.append((x, y, line, self.type.head, True))
            y -= self.type.head * self.type.leading
        for number, line in enumerate(title_lines):
            if number:
                y -= self.type.subhead * self.type.leading
            rows.append((self.type.margin, y, line, self.type.subhead, False))
        if apart:
            y -= self.type.subhead * self.type.leading
        self._head = rows
        self._mark_end = self._right - mark_width + (
            self.wide(mark_lines[-1], True) * self.type.head if mark_lines else 0.0
        )  # fmt: skip
        self._mark_y = (
            tall - self.type.top - self.type.head - max(len(mark_lines) - 1, 0) * self.type.head * self.type.leading
        )
        self._page_y = y
        self._rule_y = y - 4.0
        self._body_top = self._rule_y - (4.0 if self.type.door else 10.0)

    def _paged_words(self, number: int) -> str:
        words = [printable(word).replace("\n", " ") for word in self._stamp()]
        return " · ".join([*words, phrase("Page {number} of ", number=number)])

    def _stamp(self) -> list[str]:
        document = self._document
        revision = f"Revision {document.revision}" if document.revision else ""
        code = f"Code {self._section.code}" if self._section is not None and self._section.code else ""
        return [word for word in (code, revision, document.date) if word]

    def _draw_head_and_foot(self) -> None:
        painter, canvas = self.painter, self.canvas
        for bold in (True, False):
            size = self.type.head if bold else self.type.subhead
            places = [(x, y, text) for x, y, text, _, strong in self._head if strong is bold]
            painter.lines(places, size, bold, style.INK if bold else style.SOFT)
        if self._section is not None and self._section.mark and self._several:
            words = phrase("  sheet {sheet} of ", sheet=self._sheet)
            painter.lines([(self._mark_end, self._mark_y, words)], self.type.head, True, style.INK)
            self._place_form(
                f"sheets-{self._sections}", self._mark_end + self.wide(words, True) * self.type.head, self._mark_y
            )
        words = self._paged_words(self.number)
        end = self._right - self._total_width
        if self._section is not None and self._section.code and not self.measured:
            paint_qr(canvas, self._section.code, self._size[0] - self.type.margin - QR_PT, self._rule_y + 2.0)
            painter.forget()
        painter.lines(
            [(end - self.wide(words) * self.type.subhead, self._page_y, words)],
            self.type.subhead,
            False,
            style.SOFT,
        )
        self._totals.setdefault(self.type.subhead, self.type)
        self._place_form(f"{_TOTAL}-{self.type.subhead:g}", end, self._page_y)
        self._draw_logo_in_head()
        painter.set_pen(style.STRONG_RULE)
        canvas.line(self.type.margin, self._rule_y, self._size[0] - self.type.margin, self._rule_y)
        if self._document.footer:
            lines = self.wrap(self._document.footer, self._all_width, 6.5)
            base = self.type.bottom - 14.0
            places = [(self.type.margin, base - number * 8.0, line) for number, line in enumerate(lines[:3])]
            painter.lines(places, 6.5, False, style.SOFT)

    def _draw_stop(self) -> None:
        """Write STOP from corner to corner, behind all else: outlined and light, so that words on it can be read."""
        wide, tall = self._size
        turn = math.atan2(tall, wide)
        size = 0.62 * math.hypot(wide, tall) / width_per_size(_STOP, True)
        canvas = self.canvas
        canvas.saveState()
        canvas.translate(wide / 2, tall / 2)
        canvas.rotate(math.degrees(turn))
        canvas.setFont(font_name(True, False), size)
        canvas.setFillColorRGB(*style.STOP_SHADE)
        canvas.setStrokeColorRGB(*style.STOP_INK)
        canvas.setLineWidth(0.8)
        words = canvas.beginText(-width_per_size(_STOP, True) * size / 2, -0.36 * size)
        words.setTextRenderMode(2)
        words.textOut(_STOP)
        canvas.drawText(words)
        canvas.restoreState()
        self.painter.forget()

    def _place_form(self, name: str, x: float, y: float) -> None:
        canvas = self.canvas
        canvas.saveState()
        canvas.translate(x, y)
        canvas.doForm(name)
        canvas.restoreState()

    def _write_form(self, name: str, text: str, size: float, bold: bool, narrow: bool) -> None:
        canvas = self.canvas
        canvas.beginForm(name, 0, -size, 12 * size, 2 * size)
        # A painter of its own: the form starts with the library's defaults.
        painter = Painter(canvas)
        painter.narrow = narrow
        painter.lines([(0.0, 0.0, text)], size, bold, style.INK if bold else style.SOFT)
        canvas.endForm()
