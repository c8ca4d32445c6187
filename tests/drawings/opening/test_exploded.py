"""What goes in, drawn apart: all of it once, numbered as the steps that take it, in the order along its way."""

import shutil

import pytest

from hwsched.drawings.drawing import Callout, Line
from hwsched.drawings.opening.exploded import exploded
from hwsched.model.project import open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.rules.reading import lock_item, lock_leaf
from hwsched.values import Fit
from hwsched.work.plan import plan
from hwsched.work.situation import Situation
from tests.drawings.openings import ALL, GIVEN

FITS = ("M004", "E1", "B/1", "X1", "GATE 1", "CAB-1", "A-02", "M116")


@pytest.fixture(scope="module")
def points(corner_folder, tmp_path_factory):
    path = shutil.copy(corner_folder / "corner.hwsched", tmp_path_factory.mktemp("exploded") / "c.hwsched")
    with open_project(path) as project:
        return {each.given.opening.mark: each.points[0] for each in check_openings(project)}


@pytest.mark.parametrize("mark", FITS)
def test_every_part_is_drawn_or_named_with_the_number_of_its_step(points, mark):
    at = points[mark]
    drawing = exploded(at.given, at.fit)
    said = [each.text for each in drawing.shapes if isinstance(each, Callout)]
    notes = " ".join(drawing.notes)
    for step in plan(Situation(at.given, at.fit, lock_leaf(at.given), lock_item(at.given))).steps:
        for part in step.parts:
            if part.role != "credential":
                words = f"{part.role} {part.part}"
                assert any(words in each for each in said) or words in notes
    first = {}
    for step in plan(Situation(at.given, at.fit, lock_leaf(at.given), lock_item(at.given))).steps:
        for part in step.parts:
            first.setdefault(f"{part.role} {part.part}", step.number)
    for each in said:
        number, _, words = each.partition(": ")
        assert first[words.partition(" ×")[0]] == int(number)
    assert not drawing.to_scale


def test_a_cylinder_stands_outside_its_collar_with_the_cam_between_and_screws_outside_the_unit(points):
    """What is farther out on the key side stands farther right and lower, on the inside the other way."""
    drawing = exploded(points["M004"].given, points["M004"].fit)
    at = {each.about: (each.x, each.y) for each in drawing.shapes if isinstance(each, Callout)}
    assert at["collar"][0] < at["cam"][0] < at["cylinder"][0]
    assert at["collar"][1] > at["cylinder"][1]
    assert at["fastener"][0] < at["unit"][0] < at["collar"][0]
    leaf = [each for each in drawing.shapes if isinstance(each, Line) and each.name == "leaf"]
    assert len(leaf) == 3
    assert (
        max(x for shape in leaf for x, _ in shape.points)
        > at["collar"][0]
        > min(x for shape in leaf for x, _ in shape.points)
    )


def test_without_a_leaf_a_fit_or_a_measure_there_are_words():
    said = []
    for given, fit in (ALL["reader"], (GIVEN, Fit("does-not-fit"))):
        drawing = exploded(given, fit)
        said += [each.text for each in drawing.shapes]
        assert not any(isinstance(each, Line) for each in drawing.shapes)
    assert "this opening has no leaf" in said
    assert "nothing fits yet" in said
