"""Labels stand where the sheets have them, whole within their edges, and carry their code."""

import csv
from dataclasses import replace

import pytest
from pypdf import PdfReader

from hwsched.paths import RESOURCES
from hwsched.render.labels import Label, label_sheets, render_labels
from hwsched.render.qr import QUIET, modules
from tests.render.pages_read import MM, all_text, painted

PAGES = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
SHEETS = {sheet.name: sheet for sheet in label_sheets()}
CODE = "K7M2QF4P"


def squares(page):
    """Return the runs of dark modules of a page [mm from the lower left]."""
    return [path for path in painted(page) if len(path) == 4]


@pytest.mark.parametrize("sheet", label_sheets(), ids=lambda sheet: sheet.name)
def test_the_last_label_ends_within_the_page(sheet):
    """Margin, pitches and the last label make the page; what is left is as much as on the other side."""
    wide, tall = PAGES[sheet.paper]
    x, y = sheet.place_mm(sheet.count - 1)
    right, bottom = wide - x - sheet.width_mm, tall - y - sheet.height_mm
    assert right == pytest.approx(sheet.left_mm, abs=1.2)
    assert bottom == pytest.approx(sheet.top_mm, abs=4.1)
    assert min(right, bottom) >= -0.2


def test_pitches_are_no_less_than_labels():
    assert all(s.pitch_x_mm >= s.width_mm - 0.01 and s.pitch_y_mm >= s.height_mm - 0.01 for s in label_sheets())
    with (RESOURCES / "labels" / "sheets.csv").open(encoding="utf-8", newline="") as file:
        assert all(row["source"] for row in csv.DictReader(file))


@pytest.mark.parametrize("name", ["a4-21", "letter-30", "a4-65", "letter-80", "letter-6"])
def test_code_and_words_stand_within_their_label(tmp_path, name):
    sheet = SHEETS[name]
    render_labels(
        [Label("M004", ("Mill House · Ground", "Corridor to Pattern store"), CODE)], tmp_path / "a.pdf", sheet, start=2
    )
    page = PdfReader(tmp_path / "a.pdf").pages[0]
    tall = float(page.mediabox.height) * MM
    left, top = sheet.place_mm(1)
    for path in squares(page):
        for x, y in path:
            assert left + QUIET * 0.4 * 0.4 <= x <= left + sheet.width_mm
            assert top <= tall - y <= top + sheet.height_mm
    area = sum((max(x for x, _ in p) - min(x for x, _ in p)) / 0.4 for p in squares(page))
    assert area == pytest.approx(sum(map(sum, modules(CODE))), abs=0.5)
    found = []

    def take(text, matrix, text_matrix, _font, _size):
        if text.strip():
            found.append((text.strip(), (text_matrix[4] + matrix[4]) * MM, (text_matrix[5] + matrix[5]) * MM))

    page.extract_text(visitor_text=take)
    assert {"M004", CODE} <= {text for text, _, _ in found}
    for _, x, y in found:
        assert left <= x <= left + sheet.width_mm
        assert top <= tall - y <= top + sheet.height_mm


def test_the_first_label_stands_at_the_start_and_a_full_sheet_is_followed_by_another(tmp_path):
    sheet = SHEETS["a4-8"]
    labels = [Label(f"M{n}", ()) for n in range(8)]
    render_labels(labels, tmp_path / "a.pdf", sheet, start=8)
    first, second = (page.extract_text() for page in PdfReader(tmp_path / "a.pdf").pages)
    assert first.split() == ["M0"]
    assert second.split() == [f"M{n}" for n in range(1, 8)]
    render_labels(labels, tmp_path / "b.pdf", sheet)
    assert len(PdfReader(tmp_path / "b.pdf").pages) == 1


@pytest.mark.parametrize("start", [0, 9, -1])
def test_a_place_that_the_sheet_has_not_is_refused(tmp_path, start):
    with pytest.raises(ValueError, match="labels 1 to 8"):
        render_labels([Label("M1", ())], tmp_path / "a.pdf", SHEETS["a4-8"], start=start)
    assert not (tmp_path / "a.pdf").exists()


def test_a_shift_moves_all_by_as_much(tmp_path):
    label = replace(Label("M1", ()), code=CODE)
    render_labels([label], tmp_path / "a.pdf", SHEETS["a4-21"])
    render_labels([label], tmp_path / "b.pdf", SHEETS["a4-21"], shift_mm=(2.0, -1.0))
    here, there = (squares(PdfReader(tmp_path / f"{name}.pdf").pages[0])[0][0] for name in "ab")
    assert (there[0] - here[0], there[1] - here[1]) == (pytest.approx(2.0, abs=0.01), pytest.approx(1.0, abs=0.01))


def test_a_mark_of_any_length_stays_on_its_label(tmp_path):
    mark = "North building, second mezzanine, room 2417-B/4, inner door of the archive"
    render_labels([Label(mark, ("place " * 30,), CODE)], tmp_path / "a.pdf", SHEETS["letter-80"])
    text = all_text(tmp_path / "a.pdf").replace(" ", "")
    assert CODE in text
    assert "Northbuilding" in text
