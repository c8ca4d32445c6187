"""True size is measured by reading the PDF back: distances in its content streams, exact to 0.05 mm."""

import pytest
from pypdf import PdfReader

from hwsched.drawings.opening.template import template
from hwsched.render.lower import Letters, lower
from hwsched.render.pages import RenderCancelledError
from hwsched.render.true_size import EDGE_MM, OVERLAP_MM, render_true_size, tiling
from tests.drawings.openings import ALL, FIT, GIVEN
from tests.render.pages_read import MM, all_text, painted

EXACT_MM = 0.05


def measured(drawing, page):
    """Return painted paths of a page by the names of the shapes that they show."""
    names = [p.name for p in lower(drawing, 1.0).primitives if not isinstance(p, Letters)]
    found = {}
    for name, path in zip(names, painted(page), strict=False):
        found.setdefault(name, []).append(path)
    return found


def middle(path):
    xs, ys = [x for x, _ in path], [y for _, y in path]
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_rules_and_holes_are_exact_on_every_tile(tmp_path, paper):
    drawing = template(GIVEN, FIT, "inside", ("101", "102"))
    sheets = render_true_size(drawing, tmp_path / "t.pdf", paper).total
    pages = PdfReader(tmp_path / "t.pdf").pages
    assert sheets == len(pages) >= 2
    for page in pages:
        found = measured(drawing, page)
        for name, length in (("check rule 100 mm", 100.0), ("check rule 4 in", 101.6)):
            (x0, y0), (x1, y1) = found[name][0]
            assert abs(x1 - x0) == pytest.approx(length, abs=EXACT_MM)
            assert y1 == pytest.approx(y0, abs=1e-6)
        fold_x = found["fold at the lock edge"][0][0][0]
        hole, centre = middle(found["cable hole"][0]), middle(found["backset line"][0])
        level = found["cylinder centre line"][0][0][1]
        assert abs(hole[0] - fold_x) == pytest.approx(69.85, abs=EXACT_MM)
        assert abs(centre[0] - fold_x) == pytest.approx(69.85, abs=EXACT_MM)
        assert hole[1] - level == pytest.approx(63.5, abs=EXACT_MM)
        xs = [x for x, _ in found["cable hole"][0]]
        assert max(xs) - min(xs) == pytest.approx(9.525, abs=EXACT_MM)
        xs = [x for x, _ in found["pilot of cable hole"][0]]
        assert max(xs) - min(xs) == pytest.approx(6.35, abs=EXACT_MM)


def test_tiles_join_by_their_overlap(tmp_path):
    drawing = template(GIVEN, FIT, "inside")
    render_true_size(drawing, tmp_path / "t.pdf")
    extent = lower(drawing, 1.0).extent
    tiles = tiling(extent[2] - extent[0] + 2, extent[3] - extent[1] + 2, "letter")
    places = [measured(drawing, page)["check rule 100 mm"][0][0] for page in PdfReader(tmp_path / "t.pdf").pages]
    for index in range(1, len(places)):
        row, column = divmod(index, tiles.columns)
        assert places[index][0] - places[0][0] == pytest.approx(-column * (tiles.wide_mm - OVERLAP_MM), abs=EXACT_MM)
        assert places[index][1] - places[0][1] == pytest.approx(row * (tiles.tall_mm - OVERLAP_MM), abs=EXACT_MM)


def test_a_line_to_check_stands_on_every_tile_outside_of_the_template(tmp_path):
    render_true_size(template(GIVEN, FIT, "inside"), tmp_path / "t.pdf")
    for page in PdfReader(tmp_path / "t.pdf").pages:
        last = [path for path in painted(page) if len(path) == 2][-3:]
        assert any(abs(abs(a[0] - b[0]) - 100.0) <= EXACT_MM and a[1] == b[1] for a, b in last)


def test_viewers_are_asked_not_to_scale(tmp_path):
    render_true_size(template(GIVEN, FIT, "inside"), tmp_path / "t.pdf", heading="Harbour Works · Revision B")
    reader = PdfReader(tmp_path / "t.pdf")
    assert reader.trailer["/Root"]["/ViewerPreferences"]["/PrintScaling"] == "/None"
    text = all_text(tmp_path / "t.pdf")
    for words in ("Print at 100 %", "Tile A1 of", "B1 starts here", "Harbour Works", "Page 1 of"):
        assert words in text


@pytest.mark.parametrize("size", [(10.0, 10.0), (195.9, 237.4), (196.0, 237.5), (400.0, 900.0), (5000.0, 100.0)])
@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_tiles_cover_the_drawing(size, paper):
    tiles = tiling(*size, paper)
    wide = tiles.wide_mm + (tiles.columns - 1) * (tiles.wide_mm - OVERLAP_MM)
    tall = tiles.tall_mm + (tiles.rows - 1) * (tiles.tall_mm - OVERLAP_MM)
    assert wide >= size[0] - 1e-6
    assert tall >= size[1] - 1e-6
    assert wide - (tiles.wide_mm - OVERLAP_MM) < size[0] or tiles.columns == 1


def test_one_sheet_holds_a_small_template(tmp_path):
    given, fit = ALL["in-edge"]
    assert render_true_size(template(given, fit, "inside"), tmp_path / "t.pdf").total == 1


def test_several_templates_same_bytes_and_cancelling(tmp_path):
    drawings = [template(*ALL[name], "inside") for name in ("mortise", "bored")]
    for name in ("a", "b"):
        render_true_size(drawings, tmp_path / f"{name}.pdf")
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()
    with pytest.raises(RenderCancelledError):
        render_true_size(drawings, tmp_path / "c.pdf", cancelled=lambda: True)
    assert sorted(p.name for p in tmp_path.iterdir()) == ["a.pdf", "b.pdf"]


def test_what_is_shown_lies_inside_the_printable_part(tmp_path):
    render_true_size(template(GIVEN, FIT, "inside"), tmp_path / "t.pdf")
    page = PdfReader(tmp_path / "t.pdf").pages[0]
    assert float(page.mediabox.width) * MM == pytest.approx(215.9, abs=0.01)
    assert EDGE_MM >= 6.35
