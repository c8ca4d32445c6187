"""Type sheets: what openings alike share, and what each has on a strip of its own."""

from dataclasses import replace
from itertools import combinations

import pytest
from pypdf import PdfReader

from hwsched.documents.release.packet_facts import situations
from hwsched.documents.release.type_sheets import TYPE_SHEETS, shared_blocks, sheet_types
from hwsched.render.blocks import Bullets, Drawings, Facts, Heading, Paragraph, Steps, Table
from hwsched.render.pdf import render_pdf
from hwsched.values import Finding
from hwsched.work.plan import plan
from tests.documents.reading import texts
from tests.render.pages_read import all_text, sizes


def drilled(view):
    """Return every number that is drilled, lock point by lock point, and what is done."""
    found = []
    for situation in situations(view):
        holes = [
            (h.face, h.x_mm, h.from_cylinder_mm, h.diameter_mm, h.width_mm, h.height_mm, h.depth_mm, h.from_depth_mm,
             h.up_deg, h.edge_deg, h.pilot_mm, h.count, h.order)
            for h in sorted(situation.fit.holes, key=lambda h: h.order)
        ]  # fmt: skip
        steps = [(s.name, s.where, s.text, [(p.part, p.quantity) for p in s.parts]) for s in plan(situation).steps]
        found.append((holes, steps))
    return found


def test_openings_measured_in_other_units_are_alike(quay):
    """WOOD and METRIC are the same leaf, measured in inches and in millimetres; CHANNEL has a turn in the way."""
    of = {view.mark: kind for kind in sheet_types(quay) for view in kind.openings}
    assert of["WOOD"] is of["METRIC"]
    assert of["CHANNEL"] is not of["WOOD"]


def test_openings_of_a_type_are_drilled_by_the_same_numbers_in_the_same_steps(quay):
    types = sheet_types(quay)
    ready = [view.mark for view in quay.openings if view.ready]
    assert sorted(view.mark for kind in types for view in kind.openings) == sorted(ready)
    for kind in types:
        first, *others = [drilled(view) for view in kind.openings]
        assert all(other == first for other in others)


def test_openings_of_which_other_things_are_said_are_of_other_types(quay):
    for one, other in combinations(sheet_types(quay), 2):
        assert one.blocks != other.blocks
        assert one.code != other.code


def test_what_is_otherwise_splits_a_type(quay, of_mark):
    wood = of_mark("WOOD")
    hole = replace(wood.fit.holes[0], depth_mm=wood.fit.holes[0].depth_mm + 0.5)
    fit = replace(wood.fit, holes=(hole, *wood.fit.holes[1:]))
    deeper = replace(wood, fit=fit, points=(replace(wood.points[0], fit=fit),))
    other_hand = replace(wood.given, opening=replace(wood.given.opening, hand="RH"))
    mirrored = replace(wood, given=other_hand, points=(replace(wood.points[0], given=other_hand),))
    for changed in (deeper, mirrored):
        project = replace(quay, openings=(wood, changed))
        assert [len(kind.openings) for kind in sheet_types(project)] == [1, 1]
    # Rooms change nothing of the work.
    elsewhere = replace(wood.given, opening=replace(wood.given.opening, mark="NEXT", room_to="Loft"))
    beside = replace(wood, given=elsewhere, points=(replace(wood.points[0], given=elsewhere),))
    (kind,) = sheet_types(replace(quay, openings=(wood, beside)))
    assert [view.mark for view in kind.openings] == ["WOOD", "NEXT"]


@pytest.fixture(scope="module")
def pages(quay):
    coded = replace(quay, openings=tuple(replace(view, code=f"CODE{n:04d}") for n, view in enumerate(quay.openings)))
    return coded, TYPE_SHEETS.build(coded, None)


def test_steps_stand_once_and_each_opening_has_a_strip(pages):
    project, document = pages
    contents, *sections = document.sections
    said = " ".join(texts(replace(document, sections=(contents,))))
    for view in project.openings:
        assert view.mark in said, "in a type, alone of its kind, or not to be installed"
    (sheet, strips) = sections[:2]
    assert sum(isinstance(block, Steps) for block in sheet.blocks) == 1
    assert not any(isinstance(block, Steps | Table) for block in strips.blocks)
    marks = [block.text for block in strips.blocks if isinstance(block, Heading) and block.level == 2]
    assert marks == ["METRIC", "WOOD"]
    own = [dict(block.pairs) for block in strips.blocks if isinstance(block, Facts)]
    codes = {view.mark: view.code for view in project.openings}
    assert [pairs["Type"] for pairs in own] == [
        f"{sheet.mark.removeprefix('Type ')}, sheet code {codes[mark]}" for mark in marks
    ]
    # Survey cell Cyl AFF: 40, and 1016 mm.
    assert [pairs["Cylinder above floor"] for pairs in own] == ['40"', '40"']
    assert [pairs["Location"] for pairs in own] == ["Corridor to Net loft"] * 2
    tests = [block for block in sheet.blocks if isinstance(block, Table) and block.title == "Test sheet"]
    lines = [block.text for block in strips.blocks if isinstance(block, Paragraph) and "ests passed" in block.text]
    assert [line.count("[") for line in lines] == [len(tests[0].rows)] * 2


def test_where_there_is_no_leaf_nothing_is_drawn_of_one(quay, of_mark):
    """A lift has its hole in the wall; of all else the sheet has detail and section, and the bore that leans.

    What stands in the edge is seen from there.
    """
    detail = "Lock and unit, inside"
    views = {
        "LIFT": [], "WOOD": [detail, "Section A-A, at the cylinder"],
        "SMALL": [detail, "Section A-A, at the lock", "Bore detail"], "POCKET": [detail, "Lock edge"],
    }  # fmt: skip
    for mark, titles in views.items():
        found = [block for block in shared_blocks(quay, of_mark(mark)) if isinstance(block, Drawings)]
        assert [drawing.title for block in found for drawing in block.drawings if drawing.to_scale] == titles
        # Beside the views their legend; where there are none, not even words in their place.
        assert bool(found) == bool(titles)


def test_what_the_rules_say_of_an_opening_stands_on_its_strip(quay, of_mark):
    told = Finding("made-up", "power", "warning", "The pack lasts 40 days.", "common practice", "Say so.")
    wood = replace(of_mark("WOOD"), findings=(told,))
    project = replace(quay, openings=(wood, of_mark("METRIC")))
    (_, _, strips) = TYPE_SHEETS.build(project, None).sections
    at = [n for n, block in enumerate(strips.blocks) if isinstance(block, Heading) and block.level == 2]
    of_wood, of_metric = strips.blocks[at[0] : at[1]], strips.blocks[at[1] :]
    told_here = [line for block in of_wood if isinstance(block, Bullets) for line in block.items]
    assert any("The pack lasts 40 days." in line for line in told_here)
    assert not any("The pack" in line for block in of_metric if isinstance(block, Bullets) for line in block.items)


def test_the_pages_are_read_at_the_door(pages, tmp_path):
    _, document = pages
    render_pdf(replace(document, sections=document.sections[1:]), tmp_path / "a.pdf")
    assert min(sizes(tmp_path / "a.pdf")) >= 9.0
    text = all_text(tmp_path / "a.pdf")
    assert "Strips of type" in text
    assert len(PdfReader(tmp_path / "a.pdf").pages) <= 3
