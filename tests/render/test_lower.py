import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hwsched.drawings.drawing import Callout, Dimension, Drawing, Line, Text
from hwsched.drawings.opening.edge_view import edge_view
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.section import section
from hwsched.render.fonts import text_width_mm
from hwsched.render.lower import Bow, Disc, Letters, Stroke, _spread, lower
from tests.drawings.openings import ALL

BOUNDS = (0.0, 0.0, 100.0, 100.0)


def drawn(*shapes):
    return Drawing("test", shapes, BOUNDS)


def letters(view):
    return [p for p in view.primitives if isinstance(p, Letters)]


def test_a_dimension_with_room_has_its_words_between_the_arrows():
    view = lower(drawn(Dimension(0, 0, 1000, 0, -10, '39 3/8"', "horizontal")), 0.1)
    (words,) = letters(view)
    assert 0 < words.x < 100
    assert words.y == pytest.approx(-10 + 0.8)
    line = next(p for p in view.primitives if isinstance(p, Stroke) and len(p.points) == 2 and p.points[0][1] == -10)
    assert sorted(x for x, _ in line.points) == pytest.approx([0, 100])


@pytest.mark.parametrize("outside", ["start", "end"])
def test_a_short_dimension_has_its_words_beyond_the_end_asked_for(outside):
    (words,) = letters(lower(drawn(Dimension(0, 0, 20, 0, -10, '13/16"', "horizontal", outside)), 0.1))
    half = text_width_mm('13/16"', 2.5) / 2
    assert words.x + half < 0 if outside == "start" else words.x - half > 2


def test_vertical_words_read_from_the_right():
    for y0, y1 in ((0, 1000), (1000, 0)):
        (words,) = letters(lower(drawn(Dimension(0, y0, 0, y1, 10, "1000 mm", "vertical")), 0.1))
        assert words.angle_deg == pytest.approx(90.0)


def test_arrow_heads_are_three_times_as_long_as_wide():
    # ASME Y14.2: length to width about 3:1 (facts 6.4).
    view = lower(drawn(Dimension(0, 0, 1000, 0, -10, "x", "horizontal")), 0.1)
    heads = [p for p in view.primitives if isinstance(p, Stroke) and p.fill == "ink"]
    assert len(heads) == 2
    for head in heads:
        tip, a, b = head.points
        foot = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        assert math.dist(tip, foot) / math.dist(a, b) == pytest.approx(3.0)


def test_letter_heights_come_from_the_series():
    series = {1.8, 2.5, 3.5, 5.0}  # ISO 3098-0 (facts 6.4)
    for door, fit in ALL.values():
        assert {p.height_mm for p in letters(lower(elevation(door, fit, "key"), 0.05))} <= series


def test_words_stand_in_the_thing_where_they_fit_and_beside_it_else():
    inside = Callout(500, 500, "Kick plate", "right", (900, 200))
    view = lower(Drawing("t", (inside,), (0, 0, 1000, 1000)), 0.05)
    assert (letters(view)[0].x, letters(view)[0].anchor) == (25.0, "centre")
    beside = Callout(500, 500, "Kick plate", "right", (90, 20))
    view = lower(Drawing("t", (beside,), (0, 0, 1000, 1000)), 0.05)
    assert letters(view)[0].x > 50.0


def boxes(view):
    """Return rectangles of level letters, slightly shrunk."""
    found = []
    for word in letters(view):
        if word.angle_deg:
            continue
        width = text_width_mm(word.text, word.height_mm, word.role in ("title", "warning"))
        left = {"left": 0.0, "centre": -width / 2, "right": -width}[word.anchor]
        found.append((word.x + left, word.y, word.x + left + width, word.y + word.height_mm))
    return found


@pytest.mark.parametrize("count", [2, 7, 25])
def test_callouts_never_cover_each_other(count):
    shapes = tuple(
        Callout(10.0 * n, 500.0 + n, f"Thing number {n} that is kept where it is", "right") for n in range(count)
    )
    found = boxes(lower(Drawing("t", shapes, (0, 0, 300, 1000)), 0.05))
    for i, a in enumerate(found):
        for b in found[i + 1 :]:
            assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]


@given(st.lists(st.tuples(st.floats(-100, 100), st.floats(1, 10)), min_size=1, max_size=12))
def test_spreading_keeps_order_and_distance(blocks):
    blocks.sort(key=lambda block: -block[0])
    placed = _spread([middle for middle, _ in blocks], [tall for _, tall in blocks])
    for (a, (_, tall_a)), (b, (_, tall_b)) in zip(
        zip(placed, blocks, strict=True), list(zip(placed, blocks, strict=True))[1:], strict=False
    ):
        assert a - b >= (tall_a + tall_b) / 2 - 1e-6


@pytest.mark.parametrize("scale", [1.0, 0.2, 0.05, 0.02])
@pytest.mark.parametrize("name", list(ALL))
def test_the_extent_covers_all_that_is_painted(name, scale):
    for drawing in (elevation(*ALL[name], "inside"), section(*ALL[name]), edge_view(*ALL[name])):
        view = lower(drawing, scale)
        x0, y0, x1, y1 = view.extent
        for shape in view.primitives:
            if isinstance(shape, Stroke):
                points = shape.points
            elif isinstance(shape, Disc):
                half = shape.diameter / 2
                points = ((shape.x - half, shape.y - half), (shape.x + half, shape.y + half))
            elif isinstance(shape, Bow):
                continue
            else:
                points = ((shape.x, shape.y),)
            for x, y in points:
                assert x0 - 1e-6 <= x <= x1 + 1e-6
                assert y0 - 1e-6 <= y <= y1 + 1e-6


def test_keepouts_are_hatched_inside_their_outline():
    square = Line(((0, 0), (100, 0), (100, 100), (0, 100)), "keepout", True, "keepout")
    view = lower(drawn(square), 1.0)
    lines = [p for p in view.primitives if isinstance(p, Stroke) and len(p.points) == 2]
    assert len(lines) > 50
    for line in lines:
        for x, y in line.points:
            assert -1e-6 <= x <= 100 + 1e-6
            assert -1e-6 <= y <= 100 + 1e-6


def test_paper_offsets_do_not_scale():
    for scale in (1.0, 0.05):
        (word,) = letters(lower(drawn(Text(100, 100, "x", dx=3.0, dy=-2.0)), scale))
        assert (word.x, word.y) == pytest.approx((100 * scale + 3.0, 100 * scale - 2.0))
