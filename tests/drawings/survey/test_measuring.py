"""Each size that a survey asks for has a sketch of how it is measured, and each sketch shows one size."""

from itertools import combinations

import pytest

from hwsched.drawings.drawing import Dimension
from hwsched.drawings.survey.measuring import LETTERS, SKETCHES, SURROUNDINGS
from hwsched.render.lower import lower
from hwsched.survey import ENTITIES, ITEM
from hwsched.survey.asked import ASKED

SIZES = {
    f"{entity.name}.{a.name}"
    for entity in ENTITIES
    for a in entity.attributes
    if a.kind == "length" and ASKED.get(a.name) != ()
}
TOGETHER = {f"{ITEM.name}.{name}" for name in LETTERS}


def dimensions(drawing):
    return [shape for shape in drawing.shapes if isinstance(shape, Dimension)]


def test_every_size_has_a_sketch_and_one_only():
    assert SKETCHES.keys() | TOGETHER == SIZES
    assert not SKETCHES.keys() & TOGETHER


@pytest.mark.parametrize("name", SKETCHES)
def test_a_sketch_shows_one_size_within_its_room(name):
    """21 by 14 mm beside the line to write on."""
    assert len(dimensions(SKETCHES[name])) == 1
    x0, y0, x1, y1 = lower(SKETCHES[name], 1.0).extent
    assert x1 - x0 <= 21.0
    assert y1 - y0 <= 15.0


def test_no_two_sketches_are_alike():
    assert all(one.shapes != other.shapes for one, other in combinations(SKETCHES.values(), 2))


def test_what_else_stands_there_is_measured_by_letters():
    """From the lock edge and above the floor to the centre of the footprint, as the facts say."""
    by_letter = {each.text: each for each in dimensions(SURROUNDINGS)}
    assert sorted(by_letter) == sorted(LETTERS.values())
    assert len(dimensions(SURROUNDINGS)) == len(LETTERS)
    (footprint,) = [shape for shape in SURROUNDINGS.shapes if getattr(shape, "fill", "") == "existing"][:1]
    xs, ys = zip(*footprint.points, strict=True)
    middle = (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2
    assert (by_letter["A"].x0, by_letter["A"].x1) == (0.0, middle[0])
    assert by_letter["B"].y1 == middle[1]
    # From the lock edge to the rods' middle, from a pull's end to its bolt.
    rods = [shape.points for shape in SURROUNDINGS.shapes if getattr(shape, "fill", "") == "metal"][1:3]
    assert {(min(x for x, _ in each) + max(x for x, _ in each)) / 2 for each in rods} == {by_letter["F"].x1}
    assert by_letter["G"].y1 - by_letter["G"].y0 == 3.0
    assert (by_letter["C"].x0, by_letter["C"].x1) == (min(xs), max(xs))
    assert (by_letter["D"].y0, by_letter["D"].y1) == (min(ys), max(ys))
