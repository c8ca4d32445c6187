"""Pages a second against the PDF library alone on the same drawing commands, measured in one run.

The commands that layout sends to the library's canvas are recorded and replayed on a bare canvas; ours includes
building the drawings, choosing scales, wrapping and pagination.
"""

import time
from statistics import median

import pytest
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from hwsched.drawings.opening.edge_view import edge_view
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.face_detail import face_detail
from hwsched.drawings.opening.section import section
from hwsched.render import print_style
from hwsched.render.blocks import (
    TICK,
    Bullets,
    Column,
    Document,
    Drawings,
    Facts,
    Heading,
    Paragraph,
    Section,
    SignOff,
    Table,
)
from hwsched.render.fonts import register
from hwsched.render.pdf import lay_out
from hwsched.render.pdf_canvas import PdfCanvas
from hwsched.render.pdf_font import PdfFont
from tests.drawings.openings import ALL

pytestmark = pytest.mark.bench
REPEATS = 5
PLAIN: dict[str, TTFont] = {}
"""The library's own fonts by their names."""
_KEPT = (
    "line", "rect", "circle", "arc", "drawString", "setFont", "setStrokeColorRGB", "setFillColorRGB", "setLineWidth",
    "setDash", "drawPath", "drawText", "saveState", "restoreState", "translate", "doForm", "beginForm", "endForm",
    "showPage", "setPageSize", "bookmarkPage", "addOutlineEntry", "beginText", "beginPath", "clipPath",
)  # fmt: skip


class _Proxy:
    """Notes what is done to a path or a text object."""

    def __init__(self, log, kind):
        self._log, self.key = log, len(log)
        log.append((kind, None, (), {}))

    def __getattr__(self, name):
        def noted(*args, **kwargs):
            self._log.append((name, self.key, args, kwargs))

        return noted


class Recorder(Canvas):
    """Draws nothing, notes every command that layout sends."""

    def __init__(self, pagesize):
        self.log = None
        super().__init__("/dev/null", pagesize=pagesize, invariant=1)
        self.log = []

    def __getattribute__(self, name):
        if name in _KEPT:
            log = object.__getattribute__(self, "log")
            if log is not None:
                if name in ("beginText", "beginPath"):
                    return lambda: _Proxy(log, name)

                def noted(*args, **kwargs):
                    if name == "setPageSize":
                        object.__setattr__(self, "_pagesize", args[0])
                    log.append((name, None, args, kwargs))

                return noted
        return object.__getattribute__(self, name)


def with_plain_fonts(work):
    """Do something with the library's own fonts in place of ours."""
    held = {name: pdfmetrics.getFont(name) for name in pdfmetrics.getRegisteredFontNames()}
    ours = {name: font for name, font in held.items() if isinstance(font, PdfFont)}
    for name, font in ours.items():
        pdfmetrics.registerFont(PLAIN.setdefault(name, TTFont(name, font.face.filename, asciiReadable=True)))
    try:
        return work()
    finally:
        for font in ours.values():
            pdfmetrics.registerFont(font)


def replay(log, path, pagesize):
    """Send recorded commands to the library alone."""
    canvas = Canvas(str(path), pagesize=pagesize, invariant=1, pageCompression=1)
    objects = {}
    for index, (name, owner, args, kwargs) in enumerate(log):
        if owner is not None:
            getattr(objects[owner], name)(*args, **kwargs)
        elif name in ("beginText", "beginPath"):
            objects[index] = getattr(canvas, name)()
        elif args and isinstance(args[0], _Proxy):
            getattr(canvas, name)(objects.pop(args[0].key), *args[1:], **kwargs)
        else:
            getattr(canvas, name)(*args, **kwargs)
    canvas.save()


def packets(count):
    """Build the install packets of that many openings, drawings included."""
    names = [name for name in ALL if name != "reader"]
    columns = (Column("", 0.3, "centre"), Column("No.", 0.4, "right"), Column("Hole", 2.0), Column("Face", 0.9),
               Column("From lock edge", 1.0), Column("Diameter", 0.9), Column("Tool", 1.6))  # fmt: skip
    sections = []
    for number in range(count):
        given, fit = ALL[names[number % len(names)]]
        faces = ("inside", "key")
        rows = tuple((TICK, n + 1, "cable hole", "inside", '2 3/4"', '3/8"', "twist drill") for n in range(5))
        box = tuple((TICK, n + 1, f"TC-{n}", "inside", "EA", "1", "Threaded cylinder with lead") for n in range(12))
        sections.append(
            Section(
                (
                    Heading(f"Opening {number:04d}"),
                    Facts(tuple((f"Fact {n}", f"value {n} of opening {number}") for n in range(12))),
                    Drawings(tuple(elevation(given, fit, face) for face in faces)),
                    Drawings(tuple(face_detail(given, fit, face) for face in faces), 90.0),
                    Drawings((section(given, fit), edge_view(given, fit)), 70.0, False),
                    Paragraph("Drill only what the label allows, round and square to the face. " * 3, "caution"),
                    Heading("Holes", 2),
                    Table(columns, rows, "Holes"),
                    Heading("Box contents", 2),
                    Table(columns, box, "Box contents"),
                    Heading("Steps", 2),
                    Bullets(tuple(f"Step {n}: take the cylinder out and keep its screws." for n in range(12)), True),
                    Heading("Sign-off", 2),
                    SignOff(("Installer", "Checked by")),
                ),
                mark=f"{number:04d}",
            )
        )
    return Document("Install packets", "Bench", "A", "2025-01-01", tuple(sections))


def elevations(count):
    """Build a document of elevations alone."""
    names = [name for name in ALL if name != "reader"]
    sections = []
    for number in range(count):
        given, fit = ALL[names[number % len(names)]]
        faces = ("inside", "key")
        sections.append(Section((Drawings(tuple(elevation(given, fit, face) for face in faces), 200.0),)))
    return Document("Elevations", "Bench", "A", "2025-01-01", tuple(sections))


def ratio(build, count, tmp_path):
    """Return ours over the library's pages a second, each the median of some turns taken in alternation."""
    size = print_style.PAPERS["letter"]
    register()
    recorder = Recorder(size)
    pages = lay_out(recorder, build(count))
    ours, alone = [], []
    # The fonts are read once.
    with_plain_fonts(lambda: replay(recorder.log, tmp_path / "alone.pdf", size))
    for _ in range(REPEATS):
        start = time.process_time()
        canvas = PdfCanvas(str(tmp_path / "ours.pdf"), pagesize=size, invariant=1, pageCompression=1)
        lay_out(canvas, build(count))
        canvas.save()
        ours.append(time.process_time() - start)
        start = time.process_time()
        with_plain_fonts(lambda: replay(recorder.log, tmp_path / "alone.pdf", size))
        alone.append(time.process_time() - start)
    value = median(alone) / median(ours)
    print(f"\n{build.__name__}: {pages} pages; ours {pages / median(ours):.0f} pages/s, library alone "
          f"{pages / median(alone):.0f} pages/s, ratio {value:.2f}")  # fmt: skip
    assert (tmp_path / "alone.pdf").stat().st_size == pytest.approx((tmp_path / "ours.pdf").stat().st_size, rel=0.02)
    return value


def test_packets_reach_three_fifths_of_the_library_alone(tmp_path):
    assert ratio(packets, 24, tmp_path) >= 3 / 5


def test_elevations_reach_three_fifths_of_the_library_alone(tmp_path):
    assert ratio(elevations, 40, tmp_path) >= 3 / 5
