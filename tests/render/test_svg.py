from xml.etree import ElementTree

import pytest

from hwsched.drawings.drawing import Circle, Drawing, Text
from hwsched.drawings.opening.bore_detail import bore_detail
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.section import section
from hwsched.drawings.opening.template import template
from hwsched.render.screen import DARK, LIGHT
from hwsched.render.svg import render_svg
from tests.drawings.openings import ALL, FIT, GIVEN

NS = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("look", [LIGHT, DARK])
@pytest.mark.parametrize("name", list(ALL))
def test_svg_is_well_formed_and_as_large_as_it_says(name, look):
    for drawing in (elevation(*ALL[name], "key"), section(*ALL[name]), bore_detail(*ALL[name])):
        root = ElementTree.fromstring(render_svg(drawing, 0.05, look))
        _, _, wide, tall = (float(part) for part in root.get("viewBox").split())
        assert float(root.get("width").removesuffix("mm")) == pytest.approx(wide, abs=0.01)
        assert float(root.get("height").removesuffix("mm")) == pytest.approx(tall, abs=0.01)


def test_sizes_are_those_of_the_paper():
    root = ElementTree.fromstring(render_svg(elevation(GIVEN, FIT, "key"), 0.05))
    leaf = next(e for e in root.iter(f"{NS}polygon") if e.findtext(f"{NS}title") == "leaf single")
    xs = [float(pair.split(",")[0]) for pair in leaf.get("points").split()]
    assert max(xs) - min(xs) == pytest.approx(36 * 25.4 * 0.05, abs=0.002)


def test_texts_are_escaped():
    drawing = Drawing("<&>", (Text(0, 0, '<b> & "q" \x00'), Circle(0, 0, 5, name="a < b")), (0, 0, 10, 10))
    root = ElementTree.fromstring(render_svg(drawing, 1.0))
    assert '<b> & "q"' in root.find(f"{NS}text").text


def test_the_looks_differ_in_ground_and_ink():
    light, dark = (render_svg(template(GIVEN, FIT, "inside"), 1.0, look) for look in (LIGHT, DARK))
    assert 'fill="#ffffff"' in light
    assert light != dark
