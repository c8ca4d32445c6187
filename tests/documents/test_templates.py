"""True-size templates from the survey: every hole that is measured has its mark, where it is drilled."""

import re
from dataclasses import replace

import pytest
from pypdf import PdfReader

from hwsched.documents.release import type_sheets
from hwsched.documents.release.packet import PACKET
from hwsched.documents.release.template_names import TEMPLATE_FILE
from hwsched.documents.release.type_sheets import TYPE_SHEETS, sheet_types
from hwsched.operations.release.issued_documents import issue
from hwsched.operations.release.issued_templates import issue_templates_first, templates
from hwsched.render.blocks import Facts, Heading, Steps
from tests.documents.reading import blocks
from tests.drawings.measuring import named, words

MM = 0.01


@pytest.fixture(scope="module")
def printed(quay, tmp_path_factory):
    """The quay with its templates printed along: what its packets are made from, the file, the words of its pages."""
    view, (path,) = issue_templates_first(quay, tmp_path_factory.mktemp("templates"))
    read = PdfReader(path)
    return view, read, [page.extract_text() for page in read.pages]


def said(drawing):
    """Return all words of a template, lines joined."""
    return " ".join(words(drawing).replace(" | ", " ").split())


def marks(drawing):
    """Return the openings for which a template holds, each with the step at which it is laid on."""
    each = said(drawing).split("Holds for: ")[1].split(".")[0].split(", ")
    return dict(one.split(" at step ") for one in each)


@pytest.fixture(scope="module")
def drawn(quay):
    """All templates of the quay."""
    return templates(quay)


def of(drawn, mark, side):
    """Return the template that holds for a mark, of one side."""
    found = [drawing for drawing in drawn if side in drawing.title and mark in marks(drawing)]
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
def test_a_hole_is_marked_where_it_is_drilled(drawn, mark, side, name):
    drawing = of(drawn, mark, side)
    (circle,) = named(drawing, name)
    fold = named(drawing, "fold at the lock edge")[0].points[0][0]
    assert (circle.x - fold, circle.y, circle.diameter) == pytest.approx(CENTRES[mark, side, name], abs=MM)


def test_every_hole_that_is_measured_has_a_mark_and_every_other_says_what_marks_it(quay, drawn):
    for opening in quay.openings:
        if opening.fit is None or opening.fit.status != "fits" or opening.lock_leaf is None:
            continue
        for hole in opening.fit.holes:
            sides = [side for side in ("inside", "key") if hole.face in (side, "lock-edge")]
            on = [drawing for side in sides if (drawing := of(drawn, opening.mark, side)) is not None]
            if hole.by_template:
                # On the key side the part alone is the template: nothing is printed for it.
                assert hole.face == "key" or any("marked from the part itself" in said(drawing) for drawing in on)
            elif hole.from_depth_mm == 0.0:
                assert any(named(drawing, hole.name) for drawing in on), (opening.mark, hole.name)


def test_a_pocket_is_as_large_as_its_unit_wants_and_as_high_as_the_case_lets_it(drawn):
    """13 3/4 x 11/16 in, in the middle of a leaf of 1 3/4, from 2 3/4 above the cylinder, past a front of 8 in."""
    drawing = of(drawn, "POCKET", "inside")
    (pocket,) = named(drawing, "pocket for the unit")
    xs, ys = [x for x, _ in pocket.points], [y for _, y in pocket.points]
    assert (min(xs), max(xs)) == pytest.approx((-22.225 - 17.4625 / 2, -22.225 + 17.4625 / 2), abs=MM)
    assert (min(ys), max(ys)) == pytest.approx((69.85, 69.85 + 349.25), abs=MM)


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
        'Ø 3/8", 1" deep, square, marked from the part itself',
    ],
    "CABINET": ['4 × Ø 5/64", 1/2" deep, square, marked from the part itself'],
}


@pytest.mark.parametrize("mark", SAID)
def test_the_words_of_a_template(drawn, mark):
    for each in SAID[mark]:
        assert each in said(of(drawn, mark, "inside"))


def test_the_backset_and_the_height_of_the_cylinder_are_told(drawn):
    # B/S 2 1/2, Cyl AFF 36.
    found = said(of(drawn, "GATE", "inside"))
    assert 'Backset 2 1/2"' in found
    assert 'cylinder 36" above the floor' in found


def test_openings_alike_share_a_template_and_no_other(drawn):
    assert of(drawn, "WOOD", "inside") == of(drawn, "METRIC", "inside")
    assert of(drawn, "BORED", "inside") != of(drawn, "SMALL", "inside")
    assert of(drawn, "WOOD", "key") is None  # nothing is drilled from there
    assert of(drawn, "LIFT", "inside") is None  # no leaf to tape it to


def test_the_sheets_name_every_opening_with_a_leaf_that_is_drilled(printed):
    text = " ".join(printed[2])
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


def test_packet_and_template_know_each_other_by_name_and_step(quay, drawn):
    """Whoever stands at the step finds the sheet, and whoever holds the sheet the step."""
    found = {drawing.title.split(": ")[0]: drawing for drawing in drawn}
    assert len(found) == len(drawn) > 10
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


def test_a_template_has_the_same_name_whatever_else_is_printed(quay, drawn):
    all_names = {drawing.title for drawing in drawn}
    few = replace(quay, openings=tuple(each for each in quay.openings if each.mark in ("SMALL", "STILE")))
    assert {drawing.title for drawing in templates(few)} < all_names
    assert len(templates(few)) == 3  # SMALL is marked on both faces


def test_the_file_leads_to_each_template_by_its_name(drawn, printed):
    _, read, pages = printed
    led = {entry.title: read.get_destination_page_number(entry) for entry in read.outline}
    for drawing in drawn:
        assert drawing.title.split(": ")[0] in pages[led[drawing.title]]


def test_a_list_in_front_says_on_which_page_the_template_of_each_opening_begins(drawn, printed):
    """The packet names its template; which of a hundred pages that is stands in front."""
    _, _, pages = printed
    assert pages[0].startswith("Where each template lies")
    rows = re.findall(r"^(.+) at step (\d+) (T-\w{4}): .* (\d+)$", pages[0], re.MULTILINE)
    listed = {(mark, step, name): int(number) for mark, step, name, number in rows}
    assert set(listed) == {
        (mark, step, drawing.title.split(": ")[0]) for drawing in drawn for mark, step in marks(drawing).items()
    }
    assert len(listed) == len(rows) > 10
    for (_, _, name), number in listed.items():
        assert begins(pages, name, number)


def begins(pages, name, number):
    """Tell whether a template begins on a page: its name, the page's number and its first sheet stand there."""
    head = pages[number - 1]
    return f"{name}: " in head and f"Page {number} of {len(pages)}" in head and re.search("Tile A1|One sheet", head)


def named_pages(text):
    return [(name, int(number)) for name, number in re.findall(r"(T-\w{4})[^,;]*, page (\d+) of templates\.pdf", text)]


def test_where_templates_are_printed_along_each_step_names_the_page_on_which_its_own_begins(quay, drawn, printed):
    view, _, pages = printed
    seen = set()
    for bare, opening in zip(quay.openings, view.openings, strict=True):
        alone, along = (
            [line.text for block in blocks(PACKET.build(*each)) if isinstance(block, Steps) for line in block.lines]
            for each in ((quay, bare), (view, opening))
        )
        for before, now in zip(alone, along, strict=True):
            found = named_pages(now)
            assert [name for name, _ in found] == re.findall(r"T-\w{4}", before)
            assert all(begins(pages, name, number) for name, number in found)
            # Where nothing is printed along, only the name is known; nothing else is otherwise.
            assert not named_pages(before)
            assert ("its list" in before) == bool(found)
            assert "its list" not in now
            assert now == before or found
            seen.update(found)
    assert {name for name, _ in seen} == {drawing.title.split(": ")[0] for drawing in drawn}
    # Each on pages of its own, behind the list.
    assert len({number for _, number in seen}) == len(seen) > 10
    assert min(number for _, number in seen) > 1


def shared_and_strips(view):
    """What the steps of the type sheet of WOOD and METRIC say of templates, and by mark what the strips do."""
    steps, strips, mark = [], {}, ""
    for block in blocks(TYPE_SHEETS.build(view, None)):
        if isinstance(block, Steps):
            steps += [line.text for line in block.lines if "template" in line.text and "Mark the centres" in line.text]
        elif isinstance(block, Heading):
            mark = block.text
        elif isinstance(block, Facts):
            strips.update((mark, text) for label, text in block.pairs if label == "Template")
    return steps, strips


def test_the_step_of_a_type_sheet_names_the_page_as_that_of_its_packets_does(quay, printed):
    view, _, pages = printed
    for project in (view, quay):
        (step,), strips = shared_and_strips(project)
        packets = {
            line.text
            for each in project.openings
            if each.mark in ("WOOD", "METRIC")
            for block in blocks(PACKET.build(project, each))
            if isinstance(block, Steps)
            for line in block.lines
            if "Mark the centres" in line.text
        }
        assert packets == {step}
        assert not strips, "what all of them share stands on the sheet"
    (found,) = named_pages(shared_and_strips(view)[0][0])
    assert begins(pages, *found)
    # The code says what is done and drilled; templates printed along or not, strips and sheet belong together.
    assert {kind.code for kind in sheet_types(view)} == {kind.code for kind in sheet_types(quay)}


@pytest.mark.parametrize("along", [True, False])
def test_a_strip_names_the_page_of_its_template_where_it_differs(quay, printed, monkeypatch, along):
    view, _, pages = printed
    real = type_sheets.template_names

    def other_for_metric(given, fit, style, paged):
        if given.opening.mark != "METRIC":
            return real(given, fit, style, paged)
        return (f"T-OTHR, page 99 of {TEMPLATE_FILE}",) if paged else ("T-OTHR",)

    monkeypatch.setattr(type_sheets, "template_names", other_for_metric)
    (step,), strips = shared_and_strips(view if along else quay)
    assert step.endswith("before drilling lay on the true-size template named on the strip.")
    assert strips.keys() == {"WOOD", "METRIC"}
    assert strips["METRIC"].startswith("T-OTHR")
    if along:
        (found,) = named_pages(strips["WOOD"])
        assert begins(pages, *found)


def test_pages_that_are_otherwise_are_no_change_since_a_revision(printed, tmp_path):
    """A packet of today is laid beside one that was frozen, of which no template was printed."""
    view, _, _ = printed
    few = replace(view, openings=tuple(each for each in view.openings if each.mark == "WOOD"))
    then = replace(few, template_pages={}, revision="A")
    same, marked = (
        issue(few, PACKET, tmp_path / name, since=since)[0].read_bytes() for name, since in (("a", None), ("b", then))
    )
    assert same == marked
