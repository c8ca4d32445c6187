"""Pages of a PDF as pixels, words found where they stand; what is no PDF is refused."""

import io

import pytest
from reportlab.pdfgen.canvas import Canvas

from hwsched.render import pdf_pages
from hwsched.render.pdf_pages import PdfPages, UnreadablePdfError

INCH_MM = 25.4


@pytest.fixture(scope="module")
def content():
    """Two letter pages: a black square of an inch from the lower left corner, and words at two inches from there."""
    kept = io.BytesIO()
    canvas = Canvas(kept, pagesize=(612, 792))
    canvas.rect(0, 0, 72, 72, fill=1)
    canvas.showPage()
    canvas.setFont("Helvetica", 12)
    canvas.drawString(144, 144, "Strike of M116")
    canvas.save()
    return kept.getvalue()


def test_a_page_is_drawn_to_scale(content):
    pages = PdfPages([content])
    # Letter is 8 1/2 by 11 in.
    assert pages.count == 2
    assert pages.sizes[0] == pytest.approx((8.5 * INCH_MM, 11 * INCH_MM))
    drawn = pages.picture(0, 2.0)
    assert drawn.width == pytest.approx(8.5 * INCH_MM * 2, abs=1)
    assert drawn.height == pytest.approx(11 * INCH_MM * 2, abs=1)

    def at(x_mm, up_mm):
        place = (drawn.height - 1 - int(up_mm * 2)) * drawn.stride + int(x_mm * 2) * 4
        return tuple(drawn.pixels[place : place + 3])

    assert at(5, 5) == (0, 0, 0)
    assert at(INCH_MM - 1, INCH_MM - 1) == (0, 0, 0)
    assert at(INCH_MM + 2, 5) == (255, 255, 255)
    pages.close()


def test_words_are_found_where_they_stand_whatever_their_case(content):
    pages = PdfPages([content, content])
    found = pages.find("m116")
    assert [each.page for each in found] == [1, 3]
    ((left, top, right, low),) = found[0].boxes
    baseline = (11 - 2) * INCH_MM
    assert 2 * INCH_MM < left < right < 4 * INCH_MM
    assert top < baseline <= low + 1
    assert low - top < 12 * INCH_MM / 72 * 1.5
    assert pages.find("nowhere") == pages.find("  ") == []
    assert "Strike of M116" in pages.text(1)
    pages.close()


def test_a_page_is_never_larger_than_the_memory_has_room_for(content, monkeypatch):
    monkeypatch.setattr(pdf_pages, "_LARGEST_PX", 500)
    pages = PdfPages([content])
    assert pages.picture(1, 1000.0).height in (500, 501)
    pages.close()


def test_what_is_no_pdf_is_refused(content):
    with pytest.raises(UnreadablePdfError):
        PdfPages([content, b"%PDF-1.7 and nothing more"])
