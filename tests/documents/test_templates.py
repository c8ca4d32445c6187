"""True-size templates from the survey: every hole that is measured has its mark, where it is drilled."""

import re
from dataclasses import replace

import pytest
from pypdf import PdfReader

from hwsched.documents.release.packet import PACKET
from hwsched.operations.release.issued_templates import issue_templates, templates
from hwsched.render.blocks import Steps
from tests.documents.reading import blocks
from tests.drawings.measuring import named, words

MM = 0.01


def said(drawing):
    """Return all words of a template, lines joined."""
    return " ".join(words(drawing).replace(" | ", " ").split())


def marks(drawing):
    """Return the openings for which a template holds, each with the step at which it is laid on."""
    each = said(drawing).split("Holds for: ")[1].split(".")[0].split(", ")
    return dict(one.split(" at step ") for one in each)


def of(quay, mark, side):
    """Return the template that holds for a mark, of one side."""
    found = [drawing for drawing in templates(quay) if side in drawing.title and mark in marks(drawing)]
    assert len(found) <= 1
    return found[0] if found else None


# Centres in mm: x from the fold at the lock edge, y from the cylinder's centre; the diameter. An LH leaf has its lock
# edge on the left of the inside and on the right of the key side; RH the other way round.
CENTRES = {
    ("WOOD", "inside", "access hole for the lead"): (69.85, 0.0, 12.7),  # B/S 2 3/4, at the cylinder
    ("METRIC", "inside", "access hole for the lead"): (69.85, 0.0, 12.7),
    ("CHANNEL", "inside", "access hole for the lead"): (69.85, 63.5, 9.525),  # 2 1/2 above, with the channel's bit
    ("DOWN", "inside", "access hole for the lead"): (69.85, -79.6875, 9.525),  # 3 9/64 below
    ("HOLLOW", "inside", "access hole for the lead"): (-69.85, 53.975, 12.7),  # RH; 2 1/8 above
    ("STILE", "inside", "access hole for the lead"): (28.575, 50.8, 19.05),  # B/S 1 1/8; 2 above; 3/4
    ("SMALL", "inside", "lead's hole into the cross bore"): (59.588, 60.388, 9.525),  # 2 3/4 less 1 3/4 tan 13
    ("SMALL", "inside", "edge bore"): (-22.225, 0.0, 25.4),  # folded round: 7/8 from the inside face
    ("SMALL", "key", "cross bore"): (-69.85, 0.0, 53.975),  # 2 1/8, from the side on which it is drilled
    ("SMALL", "key", "edge bore"): (22.225, 0.0, 25.4),
    ("GATE", "inside", "access hole for the lead"): (63.5, 94.7625, 12.7),  # B/S 2 1/2; 75 + 3/16 + 15 above
    ("GATE", "key", "hole for the lead behind the lock's case"): (-63.5, 0.0, 19.05),  # its case stands on the key side
    ("CABINET", "key", "hole for the cabinet bolt"): (-31.75, 0.0, 19.05),  # B/S 1 1/4; 3/4
}


@pytest.mark.parametrize(("mark", "side", "name"), CENTRES, ids=lambda each: each.replace(" ", "-"))
def test_a_hole_is_marked_where_it_is_drilled(quay, mark, side, name):
    drawing = of(quay, mark, side)
    (circle,) = named(drawing, name)
    fold = named(drawing, "fold at the lock edge")[0].points[0][0]
    assert (circle.x - fold, circle.y, circle.diameter) == pytest.approx(CENTRES[mark, side, name], abs=MM)


def test_every_hole_that_is_measured_has_a_mark_and_every_other_says_what_marks_it(quay):
    for opening in quay.openings:
        if opening.fit is None or opening.fit.status != "fits" or opening.lock_leaf is None:
            continue
        for hole in opening.fit.holes:
            sides = [side for side in ("inside", "key") if hole.face in (side, "lock-edge")]
            drawn = [drawing for side in sides if (drawing := of(quay, opening.mark, side)) is not None]
            if hole.by_template:
                # On the key side the part alone is the template: nothing is printed for it.
                assert hole.face == "key" or any("marked from the part itself" in said(drawing) for drawing in drawn)
            elif hole.from_depth_mm == 0.0:
                assert any(named(drawing, hole.name) for drawing in drawn), (opening.mark, hole.name)


def test_a_pocket_is_as_large_as_its_unit_wants_and_as_high_as_the_case_lets_it(quay):
    """13 3/4 x 11/16 in, from 1 3/4 + 3/4 above the cylinder's centre, in the middle of a leaf of 1 3/4."""
    drawing = of(quay, "POCKET", "inside")
    (pocket,) = named(drawing, "pocket for the unit")
    xs, ys = [x for x, _ in pocket.points], [y for _, y in pocket.points]
    assert (min(xs), max(xs)) == pytest.approx((-22.225 - 17.4625 / 2, -22.225 + 17.4625 / 2), abs=MM)
    assert (min(ys), max(ys)) == pytest.approx((63.5, 63.5 + 349.25), abs=MM)


# What stands on the template in words, by opening: number of holes, size, pilot, depth, direction.
SAID = {
    "WOOD": ['access hole for the lead: Ø 1/2", pilot 1/4", 3/8" deep, square', '4 × Ø 5/64", 3/8" deep, square'],
    # One bit bores both parts of a channel.
    "CHANNEL": [
        'access hole for the lead: Ø 3/8", 3/8" deep, square',
        'Ø 3/8", begins 3/8" below the face, 49/64" deep, 80° down, 10° to the leaf\'s face',
    ],
    "DOWN": ['Ø 3/8", begins 3/8" below the face, 1 13/32" deep, 80° up, 10° to the leaf\'s face'],
    "HOLLOW": ['access hole for the lead: Ø 1/2", pilot 1/8", 1/4" deep, square'],
    "STILE": ['access hole for the lead: Ø 3/4", pilot 1/16", 1/4" deep, square'],
    "SMALL": [
        'Ø 3/8", 1 29/32" deep, 45° down, 17° toward the hinge edge',
        'edge bore: Ø 1", enlarges 7/8", 2 3/4" deep, square',
    ],
    "POCKET": [
        'pocket for the unit: 11/16" × 13 3/4", 1 3/4" deep, square',
        'Ø 3/8", 3/4" deep, square, marked from the part itself',
    ],
    "CABINET": ['4 × Ø 5/64", 1/2" deep, square, marked from the part itself'],
}


@pytest.mark.parametrize("mark", SAID)
def test_the_words_of_a_template(quay, mark):
    for each in SAID[mark]:
        assert each in said(of(quay, mark, "inside"))


def test_the_backset_and_the_height_of_the_cylinder_are_told(quay):
    # B/S 2 1/2, Cyl AFF 36.
    found = said(of(quay, "GATE", "inside"))
    assert 'Backset 2 1/2"' in found
    assert 'cylinder 36" above the floor' in found


def test_openings_alike_share_a_template_and_no_other(quay):
    assert of(quay, "WOOD", "inside") == of(quay, "METRIC", "inside")
    assert of(quay, "BORED", "inside") != of(quay, "SMALL", "inside")
    assert of(quay, "WOOD", "key") is None  # nothing is drilled from there
    assert of(quay, "LIFT", "inside") is None  # no leaf to tape it to


def test_the_sheets_name_every_opening_with_a_leaf_that_is_drilled(quay, tmp_path):
    (path,) = issue_templates(quay, tmp_path)
    text = " ".join(page.extract_text() for page in PdfReader(path).pages)
    for mark in (
        "WOOD",
        "METRIC",
        "CHANNEL",
        "DOWN",
        "HOLLOW",
        "STILE",
        "RIM",
        "SMALL",
        "BORED",
        "POCKET",
        "GATE",
        "CABINET",
    ):
        assert mark in text
    assert "KEY SIDE" in text
    assert "UNSEEN" not in text


def test_packet_and_template_know_each_other_by_name_and_step(quay):
    """Whoever stands at the step finds the sheet, and whoever holds the sheet the step."""
    found = {drawing.title.split(": ")[0]: drawing for drawing in templates(quay)}
    assert len(found) == len(templates(quay)) > 10
    named_by = {name: {} for name in found}
    for opening in quay.openings:
        if opening.fit is None or opening.fit.status != "fits":
            continue
        for block in blocks(PACKET.build(quay, opening)):
            for line in block.lines if isinstance(block, Steps) else ():
                for name, side in re.findall(r"(T-[0-9A-Z]{4})(?: \((inside|key side)\))?", line.text):
                    assert (side or "inside") in found[name].title
                    assert "Mark the centres" in line.text
                    named_by[name][opening.mark] = str(line.number)
    assert named_by == {name: marks(drawing) for name, drawing in found.items()}


def test_a_template_has_the_same_name_whatever_else_is_printed(quay):
    all_names = {drawing.title for drawing in templates(quay)}
    few = replace(quay, openings=tuple(each for each in quay.openings if each.mark in ("SMALL", "STILE")))
    assert {drawing.title for drawing in templates(few)} < all_names
    assert len(templates(few)) == 3  # SMALL is marked on both faces


def test_the_file_leads_to_each_template_by_its_name(quay, tmp_path):
    (path,) = issue_templates(quay, tmp_path)
    read = PdfReader(path)
    led = {entry.title: read.get_destination_page_number(entry) for entry in read.outline}
    for drawing in templates(quay):
        assert drawing.title.split(": ")[0] in read.pages[led[drawing.title]].extract_text()


def test_a_list_in_front_says_on_which_page_the_template_of_each_opening_begins(quay, tmp_path):
    """The packet names its template; which of a hundred pages that is stands in front."""
    (path,) = issue_templates(quay, tmp_path)
    pages = [page.extract_text() for page in PdfReader(path).pages]
    assert pages[0].startswith("Where each template lies")
    rows = re.findall(r"^(.+) at step (\d+) (T-\w{4}): .* (\d+)$", pages[0], re.MULTILINE)
    listed = {(mark, step, name): int(number) for mark, step, name, number in rows}
    assert set(listed) == {
        (mark, step, drawing.title.split(": ")[0])
        for drawing in templates(quay)
        for mark, step in marks(drawing).items()
    }
    assert len(listed) == len(rows) > 10
    for (_, _, name), number in listed.items():
        head = pages[number - 1]
        assert f"{name}: " in head
        assert f"Page {number} of {len(pages)}" in head
        assert "Tile A1" in head or "One sheet" in head
