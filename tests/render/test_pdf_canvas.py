"""The canvas that pages are painted on writes what the library's own would write, byte by byte."""

from reportlab.pdfgen.canvas import Canvas

from hwsched.render.fonts import BOLD, REGULAR, font_name, register
from hwsched.render.pdf import lay_out
from hwsched.render.pdf_canvas import PdfCanvas
from tests.render.sample import everything

LINES = (
    "drill from both faces",
    "(a) back\\slash",
    "",
    "Ω 3/8″ → ½",
    "a\u00a0b",
    "tab\there",
    "Προσοχή",
    "plain again",
)


def written(kind, path, paint):
    register()
    canvas = kind(str(path), pagesize=(600.0, 800.0), invariant=1, pageCompression=0, initialFontName=REGULAR)
    paint(canvas)
    canvas.save()
    return path.read_bytes()


def same(tmp_path, paint):
    ours, alone = written(PdfCanvas, tmp_path / "ours.pdf", paint), written(Canvas, tmp_path / "alone.pdf", paint)
    assert len(alone) > 1000
    return ours == alone


def test_all_kinds_of_blocks(tmp_path):
    assert same(tmp_path, lambda canvas: lay_out(canvas, everything()))


def test_lines_of_every_kind_of_letters_in_every_font(tmp_path):
    def paint(canvas):
        for page in range(2):
            for name in (REGULAR, BOLD, font_name(bold=False, narrow=True), "Helvetica"):
                canvas.setFont(name, 9.5 + page)
                words = canvas.beginText()
                for row, line in enumerate(LINES):
                    said = line.encode("latin-1", "replace").decode("latin-1") if name == "Helvetica" else line
                    words.setTextOrigin(20.25, 700.125 - 11 * row)
                    words.textOut(said)
                    canvas.drawString(300.0, 700.0 - 11 * row, said)
                canvas.drawText(words)
            canvas.drawString(10, 10, "apart", charSpace=1)
            canvas.showPage()

    assert same(tmp_path, paint)


def test_circles_colours_widths_and_dashes(tmp_path):
    def paint(canvas):
        for place in range(200):
            canvas.setFillColorRGB(0.1, place / 200, 0.7)
            canvas.setStrokeColorRGB(place / 300, 0.2, 0.3)
            canvas.setLineWidth(0.1 * place)
            canvas.setDash(() if place % 3 else [1.5, 0.5 * place + 0.1])
            canvas.circle(37.123456 * place % 500, 11.7654321 * place, place / 7.3, stroke=place % 2, fill=1)
        canvas.setFillColorRGB(0.1, 0.2, 0.3, alpha=0.5)
        canvas.setStrokeColorRGB(0.1, 0.2, 0.3, alpha=0.5)
        canvas.circle(5, 5, 0)

    assert same(tmp_path, paint)
