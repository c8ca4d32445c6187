"""Codes for a camera: their fixed patterns as the standard has them, and the squares that are painted."""

import pytest
from pypdf import PdfReader

from hwsched.render.blocks import Document, Paragraph, Section
from hwsched.render.pdf import render_pdf
from hwsched.render.qr import QR_PT, QUIET, modules
from tests.render.pages_read import painted

CODE = "K7M2QF4P"
# ISO/IEC 18004: a dark ring of 7, a light one of 5, a dark square of 3.
FINDER = [
    [True] * 7,
    [True, *[False] * 5, True],
    *[[True, False, True, True, True, False, True]] * 3,
    [True, *[False] * 5, True],
    [True] * 7,
]


def test_a_code_of_the_first_version_has_its_patterns():
    found = modules(CODE)
    assert len(found) == 21  # 17 + 4 a version
    assert all(len(row) == 21 for row in found)
    for across, up in ((0, 0), (14, 0), (0, 14)):
        assert [list(row[across : across + 7]) for row in found[up : up + 7]] == FINDER
    # The timing pattern between the finders: dark and light in turn.
    assert [found[6][at] for at in range(8, 13)] == [True, False, True, False, True]


def test_other_texts_have_other_codes_and_a_long_one_is_refused():
    assert modules(CODE) != modules("K7M2QF4Q")
    with pytest.raises(ValueError, match="too long"):
        modules("X" * 40)


@pytest.mark.parametrize(("text", "holds"), [("A" * 14, True), ("A" * 15, False), ("é" * 7, True), ("é" * 8, False)])
def test_fourteen_bytes_are_held_and_no_more(text, holds):
    """Version 1 with a quarter restored holds 14 bytes (ISO/IEC 18004, table 7)."""
    if holds:
        assert len(modules(text)) == 21
    else:
        with pytest.raises(ValueError, match="too long"):
            modules(text)


def test_another_failure_is_not_told_to_be_a_long_text(monkeypatch):
    class Broken:
        def __init__(self, *_):
            raise MemoryError

    monkeypatch.setattr("hwsched.render.qr.qrencoder.QRCode", Broken)
    with pytest.raises(MemoryError):
        modules("NEVER SEEN")


def test_what_is_painted_are_the_dark_modules_and_a_quiet_zone(tmp_path):
    """0.4 mm a module, four of them white all round: 11.6 mm."""
    assert pytest.approx(11.6) == QR_PT * 25.4 / 72
    section = Section((Paragraph("text"),), mark="1", at_door=True, code=CODE)
    render_pdf(Document("Packet", "Yard", "A", "2031-05-01", (section,)), tmp_path / "a.pdf")
    page = PdfReader(tmp_path / "a.pdf").pages[0]
    squares = [
        points for points in painted(page) if len(points) == 4 and height(points) == pytest.approx(0.4, abs=0.01)
    ]
    area = sum(width(points) for points in squares) / 0.4
    assert area == pytest.approx(sum(map(sum, modules(CODE))), abs=0.2)
    right = max(x for points in squares for x, _ in points)
    wide = float(page.mediabox.width) * 25.4 / 72
    assert right == pytest.approx(wide - 8.0 - QUIET * 0.4, abs=0.05)


def height(points):
    ys = [y for _, y in points]
    return max(ys) - min(ys)


def width(points):
    xs = [x for x, _ in points]
    return max(xs) - min(xs)
