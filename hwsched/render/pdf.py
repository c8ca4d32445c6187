"""Documents as PDF: blocks laid out on pages, drawings to scale, the same bytes for the same document.

Layout is our own (`pages`, `typeset`, `tables`, `views`): the PDF library's flow engine measures every word anew and
costs several times what the drawing commands cost.
"""

import datetime as dt
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any, Final, Literal

from reportlab import rl_config

from hwsched.render import print_style as style
from hwsched.render.blanks import blanks_height, ruled_height, set_blanks, set_ruled
from hwsched.render.blocks import (
    Blanks,
    Block,
    Bullets,
    Columns,
    Document,
    Drawings,
    Facts,
    Heading,
    Marked,
    PageBreak,
    Paragraph,
    Picture,
    Ruled,
    Section,
    SignOff,
    Steps,
    Table,
)
from hwsched.render.fonts import REGULAR, register
from hwsched.render.pages import Pages, RenderCancelledError
from hwsched.render.paint import Nowhere, Unpainted
from hwsched.render.pdf_canvas import PdfCanvas
from hwsched.render.tables import first_height, set_table
from hwsched.render.typeset import (
    facts_height,
    set_bullets,
    set_facts,
    set_heading,
    set_paragraph,
    set_picture,
    set_sign_off,
    set_steps,
    shown,
    sign_off_height,
)
from hwsched.render.views import set_views, views_height
from hwsched.stopping import asking
from hwsched.writing import replacing

__all__ = ["Paper", "RenderCancelledError", "lay_out", "new_canvas", "render_pdf"]

Paper = Literal["letter", "a4", "a5"]

# Streams are compressed anyway; the text coding on top of it costs a quarter of the time (facts: libraries, section 3).
rl_config.useA85 = 0


_SPARE: Final = 7
"""How close at most a section is set for what it could do without: closer, and steps suffer for it."""
LANGUAGE: Final = "en"
"""Of all pages where nothing else is said: a screen reader reads them aloud by it."""


def new_canvas(path: Path, paper: Paper = "letter", date: str = "", language: str = LANGUAGE) -> Any:
    """Return an empty canvas that writes the same bytes for the same commands.

    Parameters
    ----------
    path : Path
        Where it is written.
    paper : {"letter", "a4", "a5"}
        Sheet.
    date : str
        Day that the file says it was made on, as 2031-05-01: that of the revision or state, not that of printing.
    language : str
        That the pages say they are written in.
    """
    register()
    # Invariant: reportlab would write time and a random identifier, and the same document would differ each time. Every
    # page begins with the first font: the library's own is none that is embedded.
    canvas = PdfCanvas(
        str(path),
        pagesize=style.PAPERS[paper],
        invariant=1,
        pageCompression=1,
        lang=language or LANGUAGE,
        initialFontName=REGULAR,
    )
    _say_made(canvas, date)
    return canvas


def _say_made(canvas: Any, date: str) -> None:
    try:
        day = dt.date.fromisoformat(date)
    except ValueError:
        return
    stamp = canvas._doc._timeStamp
    moment = dt.datetime.combine(day, dt.time(), dt.UTC)
    stamp.t, stamp.lt = moment.timestamp(), moment.timetuple()
    stamp.YMDhms = tuple(stamp.lt)[:6]


def render_pdf(
    document: Document,
    path: Path,
    paper: Paper = "letter",
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> None:
    """Write a document as PDF; the file appears whole or not at all.

    Parameters
    ----------
    document : Document
        What to lay out.
    path : Path
        Where; an existing file is replaced when the new one is complete.
    paper : {"letter", "a4", "a5"}
        Sheet.
    progress : callable, optional
        Gets the sections done and how many there are.
    cancelled : callable, optional
        Asked at every page; True stops.

    Raises
    ------
    RenderCancelledError
        When ``cancelled`` said so; nothing was written.
    OSError
        When the folder cannot be written.
    """
    with replacing(Path(path)) as beside:
        canvas = new_canvas(beside, paper, document.date, document.language)
        lay_out(canvas, document, paper, progress, cancelled)
        canvas.save()


def lay_out(
    canvas: Any,
    document: Document,
    paper: Paper = "letter",
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> int:
    """Draw a document onto a canvas, which is not saved; returns how many pages it has."""
    canvas.setTitle(shown(f"{document.title}, {document.project}"))
    canvas.setSubject(shown(document.subtitle or document.title))
    canvas.setCreator("hwsched")
    canvas.setAuthor("")
    pages = Pages(canvas, document, style.PAPERS[paper], cancelled)
    total = len(document.sections)
    for done, section in enumerate(document.sections, start=1):
        close, blocks = _closeness(document, section, pages, style.PAPERS[paper])
        pages.begin_section(section, close)
        _set_blocks(pages, blocks)
        pages.row_memory.clear()
        pages.kept_views.clear()
        pages.table_memory.clear()
        if progress is not None:
            progress(done, total)
    pages.finish()
    return pages.number


def _closeness(
    document: Document, section: Section, pages: Pages, paper: tuple[float, float]
) -> tuple[style.Type, tuple[Block, ...]]:
    """Return how close a section is set, as loosely as its fewest sheets allow, and what of it has room on them."""
    if not section.at_door:
        return style.DENSE if section.dense else style.USUAL, section.blocks

    def sheets(type_: style.Type, blocks: tuple[Block, ...]) -> int:
        trial = Pages(Nowhere(), replace(document, sections=(section,)), paper, None)
        trial.painter = Unpainted()
        trial.measured = True
        trial.row_memory, trial.kept_views = pages.row_memory, pages.kept_views
        trial.table_memory = pages.table_memory
        trial.begin_section(section, type_)
        _set_blocks(trial, blocks)
        return trial.number

    bare = tuple(block for block in section.blocks if not _is_spare(block))
    loose, close = 0, max(0, len(style.TIGHTER) - 1 - style.BEYOND)
    most = sheets(style.TIGHTER[loose], bare)
    least = most if most == 1 else sheets(style.TIGHTER[close], bare)
    if section.sheets and least > section.sheets:
        fewer = [(sheets(type_, bare), at) for at, type_ in enumerate(style.TIGHTER) if at > close]
        fewest, at = min(((max(count, section.sheets), at) for count, at in fewer), default=(least, close))
        if fewest < least:
            return style.TIGHTER[at], bare
    blocks = bare
    for wish in _wishes(section.blocks, close):
        for one, limit in wish:
            fuller = _with(section, blocks, one)
            if sheets(style.TIGHTER[limit], fuller) == least:
                blocks, close = fuller, limit
                most = sheets(style.TIGHTER[loose], blocks)
                break
    if least == most:
        return style.TIGHTER[loose], blocks
    while close - loose > 1:
        middle = (loose + close) // 2
        if sheets(style.TIGHTER[middle], blocks) > least:
            loose = middle
        else:
            close = middle
    return style.TIGHTER[close], blocks


def _wishes(blocks: Sequence[Block], close: int) -> Iterator[list[tuple[Block, int]]]:
    """Name what a section could do without: of each wish what is tried one after the other, and how close all is set.

    A picture is worth setting all as close as it goes, its caption alone or what is drawn apart is not.
    """
    spare = [block for block in blocks if _is_spare(block)]
    pictures = [block for block in spare if isinstance(bare := _bare(block), Picture) and bare.content]
    captions = [block for block in spare if isinstance(bare := _bare(block), Picture) and not bare.content]
    yield [(one, limit) for limit in (_SPARE, close) for one in pictures] + [(one, _SPARE) for one in captions]
    yield [(one, _SPARE) for one in spare if isinstance(_bare(one), Drawings)]


def _is_spare(block: Block) -> bool:
    bare = _bare(block)
    return isinstance(bare, Drawings | Picture) and bare.spare


def _with(section: Section, blocks: tuple[Block, ...], one: Block) -> tuple[Block, ...]:
    """Return some blocks of a section with one more, in its order; equal ones are told apart."""
    kept = {id(block) for block in blocks}
    return tuple(block for block in section.blocks if block is one or id(block) in kept)


def _set_blocks(pages: Pages, blocks: tuple[Block, ...]) -> None:
    before: Block | None = None
    heading = ""
    for number, held in enumerate(asking(blocks)):
        pages.marked = held if isinstance(held, Marked) else None
        block = held.block if isinstance(held, Marked) else held
        since = pages.spot
        if isinstance(block, Heading):
            if before is not None:
                pages.advance(1.0 if pages.type.door else 4.0) if pages.room > 20.0 else None
            heading = block.text
            set_heading(pages, block, _keep(pages, _bare(blocks[number + 1]) if number + 1 < len(blocks) else None))
        elif isinstance(block, Paragraph):
            set_paragraph(pages, block)
        elif isinstance(block, Bullets):
            set_bullets(pages, block)
        elif isinstance(block, Steps):
            set_steps(pages, block)
        elif isinstance(block, Table):
            set_table(pages, block, block.title == heading)
        elif isinstance(block, Facts):
            set_facts(pages, block)
        elif isinstance(block, Drawings):
            set_views(pages, block)
        elif isinstance(block, Blanks):
            set_blanks(pages, block)
        elif isinstance(block, Ruled):
            set_ruled(pages, block)
        elif isinstance(block, SignOff):
            set_sign_off(pages, block)
        elif isinstance(block, Picture):
            set_picture(pages, block)
        elif isinstance(block, Columns):
            pages.set_columns(block.count)
        else:
            pages.new_page()
        if pages.marked is not None and isinstance(block, Paragraph | Drawings):
            pages.mark(min(pages.marked.rows), since)
        before = None if isinstance(block, PageBreak | Columns) else block


def _bare(block: Block) -> Block:
    return block.block if isinstance(block, Marked) else block


def _keep(pages: Pages, following: Block | None) -> float:
    """Return how much of the next block a heading takes along [pt]."""
    if isinstance(following, Table):
        return first_height(pages, following)
    if isinstance(following, Drawings):
        return views_height(pages, following)
    if isinstance(following, Blanks):
        return blanks_height(pages, following)
    if isinstance(following, Ruled):
        return ruled_height(following)
    if isinstance(following, SignOff):
        return sign_off_height(pages, following)
    if isinstance(following, Facts) and not pages.type.door:
        # What a heading is about is not read in two pieces.
        return min(facts_height(pages, following), pages.full / 2)
    return 0.0 if following is None else 3 * pages.type.body * pages.type.leading
