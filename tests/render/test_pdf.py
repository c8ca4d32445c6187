import subprocess
import sys
from dataclasses import replace

import pytest
from pypdf import PdfReader

from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.elevation import elevation
from hwsched.render import print_style
from hwsched.render.blocks import Bullets, Column, Document, Drawings, Facts, Heading, Paragraph, Section, Table
from hwsched.render.pdf import RenderCancelledError, render_pdf
from hwsched.values import Item
from tests.drawings.openings import FIT, GIVEN
from tests.render.pages_read import MM, all_text, painted, texts
from tests.render.sample import COLUMNS, document, everything, rows


def test_every_block_can_be_read_back(tmp_path):
    render_pdf(everything(), tmp_path / "a.pdf")
    text = all_text(tmp_path / "a.pdf")
    for expected in (
        "Opening 0012", "STOP", "DO NOT INSTALL. The lead is short.", "CAUTION", "Rated leaf: round holes only.",
        "Location", "Corridor to archive", "Inside", "Key side", "Scale 1:", "1.", "Take the cylinder out.",
        "Jig", "Box contents", "part number 4 for the test", "Sign-off", "Installer", "Signature", "Date",
        "Box contents, continued", "A planning note, not a code ruling.", "North building", '2 3/4"',
        "Lock edge. ", "Draw the case out.", "Silica dust at the drill.", "[Volts: 9 to 12 V; read ......]",
    ):  # fmt: skip
        assert expected in text, expected


def test_heads_carry_project_mark_date_revision_and_page_of_pages(tmp_path):
    render_pdf(everything(), tmp_path / "a.pdf")
    pages = texts(tmp_path / "a.pdf")
    total = len(pages)
    assert total >= 4
    for number, text in enumerate(pages, start=1):
        joined = " ".join(text.split())
        assert "Harbour Works" in joined
        assert "Revision B · 2025-03-01" in joined
        assert f"Page {number} of" in joined
        assert str(total) in joined
    assert "0012" in pages[0]
    assert "sheet 1 of" in " ".join(pages[0].split())
    assert "B/1" in pages[-1]


def test_the_outline_leads_to_headings_of_the_first_level(tmp_path):
    render_pdf(everything(), tmp_path / "a.pdf")
    assert [entry.title for entry in PdfReader(tmp_path / "a.pdf").outline] == ["Opening 0012", "Opening B/1"]


def test_same_document_same_bytes_in_one_process_and_in_another(tmp_path):
    render_pdf(everything(), tmp_path / "a.pdf")
    render_pdf(everything(), tmp_path / "b.pdf")
    code = (
        "from pathlib import Path; from tests.render.sample import everything;"
        "from hwsched.render.pdf import render_pdf; import sys; render_pdf(everything(), Path(sys.argv[1]))"
    )
    subprocess.run([sys.executable, "-c", code, str(tmp_path / "c.pdf")], check=True)
    first = (tmp_path / "a.pdf").read_bytes()
    assert first == (tmp_path / "b.pdf").read_bytes()
    assert first == (tmp_path / "c.pdf").read_bytes()


@pytest.mark.parametrize(("paper", "size"), [("letter", (215.9, 279.4)), ("a4", (210.0, 297.0))])
def test_paper_sizes(tmp_path, paper, size):
    render_pdf(everything(), tmp_path / "a.pdf", paper)
    box = PdfReader(tmp_path / "a.pdf").pages[0].mediabox
    assert (float(box.width) * MM, float(box.height) * MM) == pytest.approx(size, abs=0.01)


def test_a_landscape_section_turns_the_sheet(tmp_path):
    doc = Document("T", "P", "A", "d", (Section((Heading("a"),)), Section((Heading("b"),), landscape=True)))
    render_pdf(doc, tmp_path / "a.pdf")
    boxes = [page.mediabox for page in PdfReader(tmp_path / "a.pdf").pages]
    assert [float(box.width) > float(box.height) for box in boxes] == [False, True]


def test_letters_are_embedded(tmp_path):
    render_pdf(everything(), tmp_path / "a.pdf")
    fonts = {}
    for page in PdfReader(tmp_path / "a.pdf").pages:
        for font in page["/Resources"]["/Font"].values():
            font = font.get_object()
            fonts[str(font["/BaseFont"])] = font
    drawn = {name: font for name, font in fonts.items() if "DejaVu" in name}
    assert drawn
    assert all("/FontFile2" in font["/FontDescriptor"].get_object() for font in drawn.values())


def test_long_tables_repeat_their_header_and_lose_no_row(tmp_path):
    render_pdf(document(Table(COLUMNS, rows(300), "Parts")), tmp_path / "a.pdf")
    pages = texts(tmp_path / "a.pdf")
    assert len(pages) > 4
    assert all("Description" in page for page in pages)
    joined = all_text(tmp_path / "a.pdf")
    assert all(f"part number {n} for the test" in joined for n in range(300))


@pytest.mark.parametrize("count", range(30, 50))
def test_no_row_of_a_table_goes_over_the_page_alone(tmp_path, count):
    render_pdf(document(Table(COLUMNS, rows(count), "Parts")), tmp_path / "a.pdf")
    over = texts(tmp_path / "a.pdf")[1:]
    assert all(page.count("for the test") >= 2 for page in over)


def test_a_cell_that_no_page_holds_is_broken_and_keeps_every_word(tmp_path):
    words = [f"word{n}" for n in range(4000)]
    table = Table(COLUMNS, ((None, "0012", " ".join(words), 1.0),), "Parts")
    render_pdf(document(table), tmp_path / "a.pdf")
    found = [w for w in all_text(tmp_path / "a.pdf").split() if w.startswith("word")]
    assert found == words


def test_a_word_longer_than_its_column_is_broken_and_keeps_every_letter(tmp_path):
    word = "".join(f"{n:03d}x" for n in range(100))
    table = Table((Column("A", 1.0), Column("B", 6.0)), ((word, "text"),), "Parts")
    render_pdf(document(table, Paragraph(word), Facts(((word, word),)), Heading(word)), tmp_path / "a.pdf")
    assert all_text(tmp_path / "a.pdf").replace(" ", "").count(word) >= 3


def extent(page):
    """Return the extent of painted paths and of text starts on a page [mm]."""
    xs, ys = [], []
    for path in painted(page):
        xs += [x for x, _ in path]
        ys += [y for _, y in path]

    def visit(text, cm, tm, font, size):
        # The number of pages stands in a form, whose place the reader does not know.
        if text.strip() and not text.strip().isdigit():
            xs.append((tm[4] + cm[4]) * MM)
            ys.append((tm[5] + cm[5]) * MM)

    page.extract_text(visitor_text=visit)
    return min(xs), min(ys), max(xs), max(ys)


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_nothing_is_painted_off_the_page(tmp_path, paper):
    long = "A very long name of a project that nobody would type but somebody will " * 4
    doc = everything()
    doc = Document(long, long, "B", "2025-03-01", doc.sections, long, long)
    render_pdf(doc, tmp_path / "a.pdf", paper)
    width, height = (side * MM for side in print_style.PAPERS[paper])
    for page in PdfReader(tmp_path / "a.pdf").pages:
        x0, y0, x1, y1 = extent(page)
        assert x0 >= 10.0
        assert y0 >= 4.0
        assert x1 <= width - 10.0
        assert y1 <= height - 4.0


def test_drawings_are_to_the_scale_that_stands_below(tmp_path):
    drawing = elevation(GIVEN, FIT, "key")
    render_pdf(document(Drawings((drawing,), 200.0)), tmp_path / "a.pdf")
    text = all_text(tmp_path / "a.pdf")
    scale = float(text.split("Scale 1:")[1].split()[0])
    widths = [max(x for x, _ in p) - min(x for x, _ in p) for p in painted(PdfReader(tmp_path / "a.pdf").pages[0])]
    heights = [max(y for _, y in p) - min(y for _, y in p) for p in painted(PdfReader(tmp_path / "a.pdf").pages[0])]
    # The leaf, 36 by 84 inches, is painted at that scale.
    leaf = (36 * 25.4 / scale, 84 * 25.4 / scale)
    assert any((w, h) == pytest.approx(leaf, abs=0.01) for w, h in zip(widths, heights, strict=True))


def test_a_drawing_that_is_unknown_has_words_and_no_scale(tmp_path):
    drawing = unknown_drawing("Key side", ["unknown: needs leaf: Leaf width"])
    render_pdf(document(Drawings((drawing,))), tmp_path / "a.pdf")
    text = all_text(tmp_path / "a.pdf")
    assert "unknown: needs leaf: Leaf width" in text
    assert "Not to scale" in text
    assert "Scale 1:" not in text


def test_text_that_no_page_can_show_does_no_harm(tmp_path):
    hostile = "a\x00b\x1b[31m\ud800c\u202e\r\nd\te & <f> \U0001f600"
    blocks = (
        Heading(hostile),
        Paragraph(hostile),
        Facts(((hostile, hostile),)),
        Table(COLUMNS, ((hostile,) * 4,), hostile),
    )
    render_pdf(document(*blocks, title=hostile, project=hostile), tmp_path / "a.pdf")
    assert "& <f>" in all_text(tmp_path / "a.pdf")


def test_empty_documents_and_blocks_are_pages(tmp_path):
    render_pdf(document(), tmp_path / "a.pdf")
    render_pdf(document(Table((), ()), Table(COLUMNS, (), "None"), Drawings(()), Facts(())), tmp_path / "b.pdf")
    assert len(texts(tmp_path / "a.pdf")) == 1
    assert "none" in all_text(tmp_path / "b.pdf")


def test_progress_counts_sections_and_cancelling_leaves_the_old_file(tmp_path):
    seen = []
    path = tmp_path / "a.pdf"
    render_pdf(everything(), path, progress=lambda done, total: seen.append((done, total)))
    assert seen == [(1, 2), (2, 2)]
    before = path.read_bytes()
    turns = iter([False, False, True])
    with pytest.raises(RenderCancelledError):
        render_pdf(everything(), path, cancelled=lambda: next(turns))
    assert path.read_bytes() == before
    assert [p.name for p in tmp_path.iterdir()] == ["a.pdf"]


def test_a_failure_leaves_nothing_behind(tmp_path):
    with pytest.raises(KeyError):
        render_pdf(document(Paragraph("x", "no such style")), tmp_path / "a.pdf")
    assert not list(tmp_path.iterdir())


def test_a_crowded_face_keeps_its_scale_and_takes_more_height(tmp_path):
    items = tuple(
        Item(f"x{n}", kind="label", face="key", x_mm=100.0 + 15 * n, y_mm=800.0 + 20 * n, width_mm=10.0, height_mm=10.0,
             disposition="keep", leaf="single")
        for n in range(40)
    )  # fmt: skip
    drawing = elevation(replace(GIVEN, items=GIVEN.items + items), FIT, "key")
    render_pdf(document(Drawings((drawing,), 110.0)), tmp_path / "a.pdf")
    text = all_text(tmp_path / "a.pdf")
    assert text.count("Fire label: keep") == 40
    assert float(text.split("Scale 1:")[1].split()[0]) <= 30.0


def test_only_embedded_fonts_are_used_and_the_language_is_told(tmp_path):
    """A font that is not in the file looks, and measures, as the machine likes that shows it."""
    render_pdf(everything(), tmp_path / "a.pdf")
    reader = PdfReader(tmp_path / "a.pdf")
    assert reader.trailer["/Root"]["/Lang"] == "en"
    fonts = [font.get_object() for page in reader.pages for font in page["/Resources"]["/Font"].values()]
    assert fonts
    for font in fonts:
        assert any(name in font["/BaseFont"] for name in ("DejaVuSans", "RobotoCondensed"))
        assert "/FontFile2" in font["/FontDescriptor"].get_object()


def test_the_file_says_the_day_of_its_revision_and_not_that_of_printing(tmp_path):
    render_pdf(document(date="2031-05-01"), tmp_path / "a.pdf")
    assert PdfReader(tmp_path / "a.pdf").metadata["/CreationDate"].startswith("D:20310501000000")
    render_pdf(document(date="soon"), tmp_path / "b.pdf")
    assert PdfReader(tmp_path / "b.pdf").metadata["/CreationDate"].startswith("D:2000")


def test_a_heading_at_the_foot_of_a_page_takes_its_facts_along(tmp_path):
    """In two pieces, what a heading is about is read as if it belonged to the one before it."""
    facts = Facts(tuple((f"Fact {n}", f"value {n}") for n in range(12)), 2)
    for filling in range(40, 64, 2):
        lines = Bullets(tuple(f"line {n}" for n in range(filling)))
        document = Document("T", "P", "A", "2025-01-01", (Section((lines, Heading("About it", 2), facts)),))
        path = tmp_path / f"{filling}.pdf"
        render_pdf(document, path)
        texts = [page.extract_text() for page in PdfReader(path).pages]
        (with_heading,) = (text for text in texts if "About it" in text)
        assert "Fact 0" in with_heading
        assert "Fact 11" in with_heading
