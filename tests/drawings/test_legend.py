from dataclasses import replace

import pytest

from hwsched.drawings.legend import legend
from hwsched.drawings.opening.bore_detail import bore_detail
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.face_detail import face_detail
from hwsched.drawings.opening.section import section
from tests.drawings.measuring import named, one, span, words
from tests.drawings.openings import FIT, GIVEN, LEAF, channel


def of_material(material):
    return replace(GIVEN, leaves=(replace(LEAF, material=material),))


def test_what_is_used_is_explained_and_nothing_else():
    said = words(legend([section(GIVEN, FIT)]))
    assert "wood, cut" in said
    assert "goes away" not in said
    # The deadbolt of the survey goes away, and only the faces show it.
    assert "goes away" in words(legend([elevation(GIVEN, FIT, "key")]))


@pytest.mark.parametrize(
    ("material", "hatch", "words_"),
    [("wood", "wood", "wood, cut"), ("mineral-core", "wood", "wood, cut"), ("hollow-metal", "metal", "steel, cut"),
     ("aluminium", "aluminium", "aluminium, cut"), ("composite", "other", "leaf, cut"), (None, "", "")],
)  # fmt: skip
def test_what_is_cut_through_is_hatched_by_its_material(material, hatch, words_):
    given = of_material(material)
    cut = section(given, FIT)
    assert one(cut, "leaf").hatch == hatch
    _, fit = channel()
    assert {line.hatch for line in named(bore_detail(given, fit), "leaf")} == {hatch}
    assert words_ in words(legend([cut]))
    # A face is not cut through.
    assert not any(getattr(shape, "hatch", "") for shape in elevation(given, FIT, "key").shapes)


def test_the_plane_of_the_section_is_marked_where_it_cuts():
    marked = face_detail(GIVEN, FIT, "inside", cut="A")
    planes = named(marked, "cutting plane")
    assert len(planes) == 2
    # It lies on the cylinder, 41 in above the floor, beyond both ends of what is shown.
    assert all(line.points[0][1] == pytest.approx(41 * 25.4) for line in planes)
    x0, _, x1, _ = marked.bounds
    assert min(span(line)[0] for line in planes) < x0
    assert max(span(line)[2] for line in planes) > x1
    assert named(face_detail(GIVEN, FIT, "inside"), "cutting plane") == []
    assert "A-A" in section(GIVEN, FIT).title


def test_a_legend_goes_on_in_a_second_row_where_the_paper_is_narrow():
    wide, narrow = legend([section(GIVEN, FIT)], 190.0), legend([section(GIVEN, FIT)], 60.0)
    assert wide.bounds[1] == 0.0
    assert narrow.bounds[1] < 0.0
    assert words(wide) == words(narrow)
