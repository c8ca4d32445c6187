"""Views on a common floor line: none over another, names over them, one scale, and words in what is in sight."""

import itertools
from dataclasses import replace

import pytest

from hwsched.drawings.layers import LAYERS
from hwsched.drawings.opening.scene import views_of
from hwsched.render.fonts import text_width_mm
from hwsched.render.lower import Letters, Stroke
from hwsched.render.scene import on_paper, stand
from hwsched.values import Fit
from tests.drawings.openings import ALL, FIT, GIVEN

SCENE = stand(views_of(GIVEN, FIT), 300.0, 180.0)


@pytest.mark.parametrize("name", sorted(ALL))
def test_all_of_every_opening_stands_on_the_paper(name):
    scene = stand(views_of(*ALL[name]), 300.0, 180.0)
    x0, y0, x1, y1 = (value * scale for value, scale in zip(scene.ends, [scene.scale] * 4, strict=True))
    assert x1 - x0 <= 300.0
    assert y1 - y0 <= 180.0
    titles = [each.text for each in on_paper(scene, scene.scale).primitives if isinstance(each, Letters)]
    assert {"Inside", "Key side"} <= set(titles) or name == "reader"


def test_faces_and_edge_stand_on_one_floor_and_beside_one_another():
    names = [each.view.name for each in SCENE.standings]
    assert names == ["inside", "key", "edge", "section"]
    assert [each.dy_mm for each in SCENE.standings[:3]] == [0.0, 0.0, 0.0]
    section = SCENE.standings[3]
    assert section.view.drawing.bounds[1] + section.dy_mm == pytest.approx(0.0)
    ends = [
        (each.view.drawing.bounds[0] + each.dx_mm, each.view.drawing.bounds[2] + each.dx_mm) for each in SCENE.standings
    ]
    assert all(right < left for (_, right), (left, _) in itertools.pairwise(ends[:3]))
    # The section stands on the floor under the edge, of which no more is seen than about the lock.
    edge, under = SCENE.standings[2], SCENE.standings[3]
    assert under.view.drawing.bounds[3] + under.dy_mm < edge.view.drawing.bounds[1] + edge.dy_mm
    assert ends[1][1] < ends[3][0]


def test_a_larger_scale_moves_nothing_in_the_scene():
    def unit(page):
        stroke = next(each for each in page.primitives if isinstance(each, Stroke) and each.name == "unit")
        return [(x / page.scale, y / page.scale) for x, y in stroke.points]

    small, large = on_paper(SCENE, SCENE.scale), on_paper(SCENE, 1.0)
    for (x, y), (x2, y2) in zip(unit(small), unit(large), strict=True):
        assert (x, y) == pytest.approx((x2, y2))


def test_narrow_views_have_words_once_they_are_large_enough():
    def words(scale):
        return {each.text for each in on_paper(SCENE, scale).primitives if isinstance(each, Letters)}

    assert "Lock edge" in words(SCENE.scale), "its name always"
    inside, far = words(1.0), words(SCENE.scale)
    # Of a leaf 1 3/4 thick the edge is 4.4 paper mm wide at 1:10.
    assert '1 3/4"' in inside
    assert '1 3/4"' not in far


def test_words_about_what_is_in_sight_stand_in_it():
    standing = SCENE.standing("inside")
    place = FIT.placement
    x0, x1 = standing.dx_mm, standing.dx_mm + 914.4
    # About the unit, so near that no more than it is seen.
    region = (x0, place.y_mm - 100.0, x1, place.y_mm + 300.0)
    page = on_paper(SCENE, 1.0, tuple(LAYERS), within=region)
    words = [each for each in page.primitives if isinstance(each, Letters) and each.text.startswith("Unit SU-W")]
    assert len(words) == 1
    assert region[0] <= words[0].x <= region[2]
    assert not any("Closer" in each.text for each in page.primitives if isinstance(each, Letters))


def test_on_little_paper_the_views_are_large_and_words_come_with_nearness():
    little = stand(views_of(GIVEN, FIT), 180.0, 150.0)

    def words(scale):
        return [each.text for each in on_paper(little, scale).primitives if isinstance(each, Letters)]

    assert '41"' in words(SCENE.scale * 10)
    assert '41"' not in words(little.scale)
    assert "Inside" in words(little.scale)
    # Two leaves of 914 mm, an edge and air on 180 mm: 1:12 is the most, and half of that would be too little.
    assert 1 / 24 < little.scale < 1 / 11


def unsurveyed(**facts):
    """The views of an opening of which somebody did not measure the leaf, and of the same where all is known."""
    given = replace(GIVEN, leaves=tuple(replace(each, **facts) for each in GIVEN.leaves))
    return views_of(given, Fit("to-measure"))


@pytest.mark.parametrize("room", [(300.0, 180.0), (180.0, 150.0), (130.0, 120.0), (100.0, 100.0)])
@pytest.mark.parametrize("lacking", [("width_mm",), ("thickness_mm",), ("width_mm", "height_mm", "thickness_mm")])
def test_why_something_is_not_drawn_is_read_whole_in_whatever_room(lacking, room):
    scene = stand(unsurveyed(**dict.fromkeys(lacking)), *room)
    left, low, right, top = (value * scene.scale for value in scene.ends)
    assert right - left <= room[0]
    assert top - low <= room[1]
    letters = [each for each in on_paper(scene, scene.scale).primitives if isinstance(each, Letters)]
    said = [each for each in letters if not each.angle_deg]
    for each in said:
        wide = text_width_mm(each.text, each.height_mm, each.role in ("title", "warning"))
        start = {"left": 0.0, "centre": wide / 2, "right": wide}[each.anchor]
        assert left - 0.1 <= each.x - start, each
        assert each.x - start + wide <= right + 0.1, each
        assert low <= each.y <= top, each
    floor = [
        each for each in on_paper(scene, scene.scale).primitives if getattr(each, "name", "") == "common floor line"
    ]
    for line, each in itertools.product(floor, said):
        assert each.role != "warning" or line.points[1][0] <= each.x or each.y < 0.0, "words are not struck through"
    words = " ".join(each.text for each in said)
    for fact in lacking:
        assert f"Leaf {fact.removesuffix('_mm')}" in words


def test_what_is_drawn_stays_large_beside_words_about_what_is_not():
    """The edge of a leaf whose width nobody knows is as large as beside its faces, which take more room than words."""
    whole, part = stand(views_of(GIVEN, FIT), 150.0, 120.0), stand(unsurveyed(width_mm=None), 150.0, 120.0)
    assert part.scale >= whole.scale
