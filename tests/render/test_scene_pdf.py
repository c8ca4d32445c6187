"""A scene on paper: to a standard scale, what is in sight fills it, layers that are off are not printed."""

import pytest

from hwsched.drawings.opening.scene import views_of
from hwsched.render import scene_pdf
from hwsched.render.lower import Letters
from hwsched.render.scene import stand
from tests.drawings.openings import FIT, GIVEN
from tests.render.pages_read import all_text

SCENE = stand(views_of(GIVEN, FIT), 300.0, 180.0)
REGION = (100.0, 900.0, 400.0, 1100.0)


@pytest.mark.parametrize(
    ("region", "paper", "denominator"),
    [
        # Letter across is 279.4 x 215.9 mm, less 12 mm all round and 14 mm of foot: 255.4 x 177.9. So 300 mm need 1:2,
        (REGION, "letter", 2.0),
        # 200 mm across and 177 up need nothing less than true size,
        ((0.0, 0.0, 200.0, 177.0), "letter", 1.0),
        # and 260 mm across stand on A4 (297 - 24 = 273 mm) but not on letter.
        ((0.0, 0.0, 260.0, 100.0), "a4", 1.0),
        ((0.0, 0.0, 260.0, 100.0), "letter", 2.0),
    ],
)
def test_what_is_in_sight_is_printed_at_the_largest_standard_scale(tmp_path, region, paper, denominator):
    path = tmp_path / "seen.pdf"
    assert scene_pdf.render_scene_pdf(SCENE, path, "101-A", within=region, paper=paper) == denominator
    assert f"scale 1:{denominator:g}" in all_text(path)


def test_a_layer_that_is_off_is_not_printed_and_the_mark_is(tmp_path):
    every, some = tmp_path / "all.pdf", tmp_path / "some.pdf"
    scene_pdf.render_scene_pdf(SCENE, every, "101-A")
    scene_pdf.render_scene_pdf(SCENE, some, "101-A", layers=["stands", "new"])
    assert "Hole 1" in all_text(every)
    assert "Hole 1" not in all_text(some)
    assert "101-A" in all_text(some)


@pytest.mark.parametrize(
    ("lengths", "denominator", "words", "long_mm"),
    # The longest of 1, 2, 5, 10 ... in a quarter of 240 mm: at 1:10 20 in (50.8 mm; 50 in would be 127 mm), 5 in at
    # 1:2.5 (50.8 mm; 10 in 101.6 mm); and 500 mm at 1:10 (50 mm).
    [("fraction", 10.0, "20 in", 50.8), ("fraction", 2.5, "5 in", 50.8), ("mm", 10.0, "500 mm", 50.0)],
)
def test_the_bar_is_as_long_as_it_says(lengths, denominator, words, long_mm):
    foot = scene_pdf._foot("101-A", denominator, lengths, 240.0)
    bar = next(each for each in foot.primitives if getattr(each, "name", "") == "scale bar")
    assert bar.points[1][0] - bar.points[0][0] == pytest.approx(long_mm)
    assert words in [each.text for each in foot.primitives if isinstance(each, Letters)]
