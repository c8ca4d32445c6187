"""No text stands over another text, measured with the widths of the fonts that are printed."""

import os
import random
from dataclasses import replace

import pytest

from hwsched.documents import documents
from hwsched.drawings.drawing import Callout, Dimension, Drawing, Text
from hwsched.drawings.opening.bore_detail import bore_detail
from hwsched.drawings.opening.edge_view import edge_view
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.face_detail import face_detail
from hwsched.drawings.opening.section import section
from hwsched.drawings.opening.template import template
from hwsched.model.project import open_project
from hwsched.operations.release.issued_templates import templates
from hwsched.operations.release.project_view import project_view
from hwsched.render import print_style as style
from hwsched.render.blocks import Drawings
from hwsched.render.lower import Letters, lower
from hwsched.render.scale import fit_row, fit_views
from hwsched.render.text_apart import covers, moved, way_out
from tests.drawings.openings import ALL
from tests.drawings.paper import rooms_on_paper

FUZZ = "HWSCHED_FUZZ" in os.environ
DRAWN = 500 if FUZZ else 12
SEED = int(os.environ.get("HWSCHED_SEED", "1"))


def over_one_another(view):
    """Return the pairs of texts that cover one another on paper."""
    held = rooms_on_paper(view)
    return [(one, other) for n, (one, a) in enumerate(held) for other, b in held[n + 1 :] if covers(a, b)]


def on_pages(block, section_):
    """Return each drawing of a block as it is set loosely and as it is set closely."""
    type_ = style.SITE if section_.at_door else style.USUAL
    wide = style.PAPERS["letter"][1 if section_.landscape else 0] - 2 * type_.margin
    for share in (1.0, style.TIGHTER[-1].views):
        for row in fit_views(
            block.drawings,
            wide / style.MM,
            block.height_mm * share,
            same_scale=block.same_scale,
            paired=block.paired,
            gap_mm=2.0 / style.MM,
            most_mm=200.0,
            letters_mm=type_.letters_mm,
            narrow=type_.narrow,
        ):
            yield from zip(row.drawings, row.views, strict=True)


@pytest.fixture(scope="module")
def drawn_sections(request):
    """Every section of the sample on which something is drawn, and its templates; a corner of it in a usual run."""
    made = request.getfixturevalue("sample_folder" if FUZZ else "corner_folder")
    with open_project(str(made / ("quayside-works.hwsched" if FUZZ else "corner.hwsched"))) as project:
        view = project_view(project)
    sections = []
    for kind in documents.DOCUMENTS:
        for opening in view.openings if kind.per_opening else (None,):
            sections += [(f"{kind.name} {each.mark}", each) for each in kind.build(view, opening).sections]
    return sections, templates(view)


def test_in_no_drawing_of_the_sample(drawn_sections):
    sections, sheets = drawn_sections
    seen, found = 0, []
    for name, each in sections:
        for block in each.blocks:
            if isinstance(block, Drawings):
                for drawing, view in on_pages(block, each):
                    seen += 1
                    found += [(name, drawing.title, *pair) for pair in over_one_another(view)]
    for drawing in sheets:
        found += [("templates", drawing.title, *pair) for pair in over_one_another(lower(drawing, 1.0))]
    assert seen > 100
    assert found == []


def strewn(name, chance):
    """Return one of the openings of the drawing tests with other sizes and places, as a survey may say them."""
    given, fit = ALL[name]
    leaves = tuple(
        replace(
            leaf,
            width_mm=chance.uniform(450.0, 1300.0),
            height_mm=chance.uniform(1400.0, 2700.0),
            thickness_mm=chance.uniform(18.0, 75.0),
        )
        for leaf in given.leaves
    )
    least = min((leaf.width_mm for leaf in leaves), default=450.0)
    x, y = chance.uniform(20.0, min(130.0, least / 3)), chance.uniform(500.0, 1200.0)
    items = tuple(
        replace(item, backset_mm=x, cylinder_height_mm=y, case_width_mm=None if chance.random() < 0.3 else 16.0)
        if item.kind == "lock"
        else replace(item, x_mm=(item.x_mm or x) * chance.uniform(0.5, 1.5), y_mm=(item.y_mm or y) * chance.random())
        for item in given.items
    )
    unit = fit.placement
    if unit is not None:
        unit = replace(
            unit, x_mm=chance.uniform(5.0, 60.0), y_mm=y + chance.uniform(-250.0, 150.0),
            hole_x_mm=x + chance.uniform(-15.0, 15.0), hole_y_mm=y + chance.uniform(-90.0, 90.0),
        )  # fmt: skip
    holes = tuple(
        replace(hole, x_mm=x + chance.uniform(-15.0, 40.0), y_mm=y + chance.uniform(-120.0, 120.0),
                up_deg=chance.choice([0.0, 30.0, -80.0, 12.5]), edge_deg=chance.choice([0.0, 10.0, -20.0]))
        for hole in fit.holes
    )  # fmt: skip
    hand = chance.choice(["LH", "RH", "LHR", "RHR"])
    opening = replace(given.opening, hand=hand if given.opening.hand is not None else None)
    return replace(given, opening=opening, leaves=leaves, items=items), replace(fit, placement=unit, holes=holes)


@pytest.mark.parametrize("number", range(DRAWN))
def test_in_none_of_random_openings(number):
    chance = random.Random(SEED * 100_003 + number)
    given, fit = strewn(sorted(ALL)[number % len(ALL)], chance)
    length_style = chance.choice(["fraction", "mm"])
    drawings = [
        *(elevation(given, fit, face, length_style) for face in ("inside", "key")),
        *(face_detail(given, fit, face, length_style) for face in ("inside", "key")),
        section(given, fit, length_style), edge_view(given, fit, length_style), bore_detail(given, fit, length_style),
    ]  # fmt: skip
    if given.leaves:
        drawings.append(template(given, fit, "inside", ["M001"], length_style))
    for drawing in drawings:
        door, desk = (drawing, style.SITE.letters_mm, True), (drawing, 0.0, False)
        for what, letters_mm, narrow in (door, desk) if FUZZ else (chance.choice([door, desk]),):
            row = fit_row(
                [what], chance.uniform(50.0, 190.0), chance.uniform(30.0, 80.0), letters_mm=letters_mm, narrow=narrow
            )
            assert over_one_another(row.views[0]) == [], drawing.title


def test_what_stands_over_another_is_found():
    heaped = Drawing("", (Text(0, 0, "Inside"), Text(1, 1, "Key side")), (0, 0, 10, 10), schematic=True)
    # A schematic places its texts itself, so that they stay as they are: two words 1 mm apart.
    assert over_one_another(lower(heaped, 1.0)) == [("Inside", "Key side")]


def test_words_of_a_dimension_stay_on_their_line_and_others_go_out_of_their_way():
    text = Text(10.0, 0.0, "Inside", "small", "centre")
    span = Dimension(0.0, 0.0, 20.0, 0.0, 0.0, "20", "horizontal")
    alone = {each.text: each for each in lower(Drawing("", (span,), (0, 0, 20, 0)), 1.0).primitives
             if isinstance(each, Letters)}  # fmt: skip
    both = {each.text: each for each in lower(Drawing("", (text, span), (0, 0, 20, 0)), 1.0).primitives
            if isinstance(each, Letters)}  # fmt: skip
    assert both["20"] == alone["20"]
    assert (both["Inside"].x, both["Inside"].y) != (10.0, 0.0)


def test_words_in_a_thing_give_way_to_what_stands_there():
    # Both have room for their words; the second one's place is taken and it gets a leader to the side.
    shapes = tuple(Callout(50.0, 50.0, words, room=(60.0, 20.0)) for words in ("Unit", "Plate"))
    view = lower(Drawing("", shapes, (0.0, 0.0, 100.0, 100.0)), 1.0)
    places = {each.text: each.x for each in view.primitives if isinstance(each, Letters)}
    assert places["Unit"] == pytest.approx(50.0)
    assert places["Plate"] > 100.0


def test_the_nearest_free_place_is_taken():
    # 1 mm up would still cover the second one, 2 mm down is free: with 0.3 mm of air 2.3 mm.
    room, taken = (0.0, 0.0, 10.0, 2.0), [(0.0, 0.0, 10.0, 1.0), (0.0, 1.0, 10.0, 9.0)]
    dx, dy = way_out(room, taken)
    assert (dx, dy) == (0.0, pytest.approx(-2.3))
    assert not any(covers(moved(room, dx, dy), each) for each in taken)
