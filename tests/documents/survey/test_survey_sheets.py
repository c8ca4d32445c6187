"""Sheets of paper for the survey: one a door, what is known filled in, only what counts there asked."""

from dataclasses import replace

import pytest
from pypdf import PdfReader

from hwsched.documents.survey import survey_sheets as sheets
from hwsched.documents.survey.survey_sheets import blank, filled, sheet
from hwsched.render.blanks import WRITTEN
from hwsched.render.blocks import Blanks, Heading, Ruled
from hwsched.render.fonts import width_per_size
from hwsched.render.pdf import render_pdf
from hwsched.survey import ENTITIES, INHERITED, ITEM, LEAF, OPENING
from hwsched.survey.item import LOCK_FORMS
from hwsched.values import Catalogue, Item, Leaf, Opening, OpeningInput
from tests.render.pages_read import MM, painted

INCH = 25.4
DOOR = OpeningInput(
    Opening("o1", "M 12", building="Mill", form="single", hand="LH", rating="45", occupant_load=40),
    (Leaf("l1", position="single", width_mm=36 * INCH, thickness_mm=1.75 * INCH, material="wood"),),
    (
        Item("i1", kind="lock", lock_form="mortise", backset_mm=2.75 * INCH, thumb_turn=True),
        Item("i2", kind="lite", face="both", x_mm=12 * INCH, disposition="keep"),
        Item("i3", kind="deadbolt", disposition="keep", thumb_turn=False),
    ),
    Catalogue({}, ""),
)
MARGIN_MM = 13.9
"""Common practice: what an office printer can print; the pages' own margin is 14 mm."""


def blanks(section):
    """Blanks by label; those of a second leaf or lock come after those of the first."""
    return [blank for block in section.blocks if isinstance(block, Blanks) for blank in block.blanks]


def asked(section):
    return {each.label for each in blanks(section)}


def known(section):
    return {each.label: each.known for each in blanks(section) if each.known}


def of_lock(form):
    """The labels that are asked of a single door with a lock of that form."""
    return asked(sheet(replace(DOOR, items=(Item("i1", kind="lock", lock_form=form),)), "fraction"))


def test_every_declared_fact_has_its_place_or_is_the_office_s():
    groups = {
        OPENING.name: (*sheets.WHERE, *sheets.FRAME, *sheets.SAFETY, *sheets.USE, *sheets.OF_PAIR, *INHERITED),
        LEAF.name: sheets.OF_LEAF,
        ITEM.name: (*sheets.OF_LOCK, *sheets.OF_ITEM, *sheets.OF_KINDS),
    }
    for entity in ENTITIES:
        declared = {attribute.name for attribute in entity.attributes}
        assert declared - sheets.OF_OFFICE == set(groups[entity.name]), entity.name


def test_what_is_known_is_filled_in_and_what_is_not_is_empty():
    """36 in, 1 3/4 in and 2 3/4 in are what the lengths are in inches; nobody measured height or stop."""
    told = known(sheet(DOOR, "fraction"))
    assert told["Leaf width"] == "36"
    assert told["Leaf thickness"] == "1 3/4"
    assert told["Backset"] == "2 3/4"
    assert told["Thumb turn inside"] == "yes"
    assert told["Fire rating"] == "45 min"
    assert not {"Leaf height", "Frame stop on the leaf", "Egress role"} & told.keys()
    assert {"Leaf height", "Frame stop on the leaf", "Egress role"} <= asked(sheet(DOOR, "fraction"))
    assert known(sheet(DOOR, "mm"))["Leaf width"] == "914.4"


def test_a_frames_own_label_is_shown_where_it_was_told_and_asked_of_nobody():
    assert "Frame's fire label" not in asked(sheet(DOOR, "mm"))
    other = replace(DOOR, opening=replace(DOOR.opening, frame_rating="90"))
    assert known(sheet(other, "mm"))["Frame's fire label"] == "90 min"


def test_what_the_building_says_is_not_asked_again():
    assert "Occupant load" not in asked(sheet(DOOR, "mm"))
    assert "Sprinklered throughout" in asked(sheet(DOOR, "mm"))


CASE = {"Lock case height", "Lock case depth", "Lock case thickness", "Case top above cylinder"}
BORES = {"Cross bore", "Edge bore"}
FACES = {"Trim thickness, key side", "Trim thickness, inside"}
OF_FORM = {
    # A bored lock stands in two bores, others in a case; a rim case stands on the inside, where no trim is; a tailpiece
    # or cam is a cylinder's; a thumb turn works the case of a mortise lock or a double cylinder.
    "mortise": (CASE | FACES | {"Case off centre", "Cam or tailpiece", "Thumb turn inside"}, BORES),
    "rim": (CASE | {"Trim thickness, key side", "Cam or tailpiece"}, BORES | {"Case off centre", "Thumb turn inside"}),
    "euro-profile": (CASE | FACES | {"Case off centre", "Thumb turn inside"}, BORES),
    "bored": (BORES, CASE | FACES | {"Cam or tailpiece", "Thumb turn inside"}),
    "cabinet": ({"Backset"}, CASE | FACES | BORES | {"Cam or tailpiece", "Thumb turn inside"}),
    "gate": ({"Backset"}, CASE | FACES | BORES | {"Cam or tailpiece", "Thumb turn inside"}),
    "reader": ({"Cylinder above floor"}, CASE | FACES | BORES | {"Cam or tailpiece", "Thumb turn inside"}),
}


@pytest.mark.parametrize("form", OF_FORM)
def test_a_lock_form_asks_for_its_own_sizes(form):
    wanted, idle = OF_FORM[form]
    assert wanted <= of_lock(form)
    assert not idle & of_lock(form)


def test_every_lock_form_is_looked_at():
    assert {choice.value for choice in LOCK_FORMS} == OF_FORM.keys() == {form for _, form in sheets.BLANK_FORMS}


@pytest.mark.parametrize(
    ("form", "has", "lacks"),
    [
        ("pair", "Leaf that closes first", "Output to the controller"),
        ("lift", "Output to the controller", "Gasket or smoke seal"),
        ("turnstile", "Wall", "Hand"),
        ("turnstile", "Thickness of wall or enclosure", "Leaf material"),
        ("cabinet", "Leaf thickness", "Re-entry release of the stair"),
        ("gate", "Latch form", "Gasket or smoke seal"),
    ],
)
def test_an_opening_asks_for_what_its_form_has(form, has, lacks):
    document = blank("", "", "mm")
    told = [asked(each) for each in document.sections]
    found = [told[number] for number, (opening, _) in enumerate(sheets.BLANK_FORMS) if opening == form]
    assert all(has in each and lacks not in each for each in found)
    assert found


def test_what_decides_nothing_beside_what_is_known_is_not_asked():
    """NFPA 80 is of rated openings; a flush leaf has no stile."""
    plain = replace(DOOR, opening=replace(DOOR.opening, rating="none", stair=False))
    assert not {"Gasket or smoke seal", "Unused holes", "Re-entry release of the stair"} & asked(sheet(plain, "mm"))
    assert {"Gasket or smoke seal", "Unused holes", "Re-entry release of the stair"} <= asked(sheet(DOOR, "mm"))
    flush = replace(DOOR, leaves=(replace(DOOR.leaves[0], construction="flush"),))
    assert "Lock stile width" not in asked(sheet(flush, "mm"))
    assert "Lock stile width" in asked(sheet(DOOR, "mm"))


def test_a_size_has_its_sketch_once_on_a_sheet():
    pair = replace(
        DOOR,
        opening=replace(DOOR.opening, form="pair"),
        leaves=(Leaf("a", position="active"), Leaf("b", position="inactive")),
    )
    for given in (DOOR, pair):
        drawn = [each.label for each in blanks(sheet(given, "mm")) if each.sketch is not None]
        assert len(drawn) == len(set(drawn))
        lengths = {a.label for a in (*OPENING.attributes, *LEAF.attributes) if a.kind == "length"}
        assert lengths & asked(sheet(given, "mm")) <= set(drawn)


def test_what_else_stands_there_is_a_row_and_there_is_room_for_more():
    (table,) = [block for block in sheet(DOOR, "fraction").blocks if isinstance(block, Ruled)]
    titles = [column.title for column in table.columns]
    assert titles[:3] == ["Item", "Face", "A From edge, in"]
    lite, bolt = table.rows
    assert lite[:3] == ("Lite or vision panel", "Both faces", "12")
    assert lite[-1] == "Stops of the lite: ........"
    assert bolt[-1] == "Thumb turn inside: no"
    assert table.least >= 3


def test_a_wall_s_thickness_stands_where_the_rules_read_it():
    """It is recorded as the leaf's."""
    reader = replace(
        DOOR, opening=replace(DOOR.opening, form="lift"), items=(Item("r", kind="lock", lock_form="reader"),)
    )
    assert known(sheet(reader, "fraction"))["Thickness of wall or enclosure"] == "1 3/4"
    assert "Leaf thickness" not in asked(sheet(reader, "fraction"))


def test_a_choice_of_few_words_is_ticked_and_one_of_many_is_written():
    """A rating is one of eight words, said without their unit; of thirteen groups of occupancy one is written."""
    empty = replace(DOOR, opening=replace(DOOR.opening, rating=None))
    found = {each.label: each for each in blanks(sheet(empty, "mm"))}
    (rating,) = (each for label, each in found.items() if label.startswith("Fire rating"))
    assert rating.label == "Fire rating, min"
    assert len(rating.words) == 8
    assert not any(word.endswith("min") for word in rating.words)
    assert found["Occupancy group"].words == ()
    assert found["Sprinklered throughout"].words == ("yes", "no")
    # A number is written, whatever it is.
    assert found["Backset"].words == ()


def test_an_own_field_has_its_place():
    section = sheet(DOOR, "mm", (("Alarm zone", "4"), ("Cleaner", "")))
    assert known(section)["Alarm zone"] == "4"
    assert "Cleaner" in asked(section)


def test_a_pair_says_its_leaves():
    section = sheet(sheets._nothing_known("pair", "mortise"), "mm")
    titles = [block.text for block in section.blocks if isinstance(block, Heading)]
    assert titles[1:3] == ["Leaf, active", "Leaf, inactive: what differs from the other"]


# On paper.


def letters(page):
    """Pieces of text of a page: where they begin [pt], their size, themselves."""
    found = []

    def note(text, cm, tm, font, size):
        for line in text.splitlines():
            # How many pages there are is a form of its own, whose place the reader does not tell.
            if line.strip() and tm[4] + cm[4] > 0.0:
                found.append((tm[4] + cm[4], tm[5] + cm[5], size, line.strip("\n"), "Bold" in str(font["/BaseFont"])))

    page.extract_text(visitor_text=note)
    return found


@pytest.fixture(scope="module", params=["letter", "a4"])
def blank_pages(request, tmp_path_factory):
    """Of each page: width and height [pt], letters, painted paths; on A4 of every fourth form, pairs among them."""
    path = tmp_path_factory.mktemp("sheets") / "blank.pdf"
    document = blank("Survey", "", "fraction")
    chosen = document.sections if request.param == "letter" else document.sections[::4]
    render_pdf(replace(document, sections=chosen), path, request.param)
    return [
        (float(page.mediabox.width), float(page.mediabox.height), letters(page), painted(page))
        for page in PdfReader(path).pages
    ]


def test_a_door_is_one_sheet_of_paper(blank_pages):
    """Front and back, so that printed on both sides each starts on paper of its own."""
    assert len(blank_pages) in (2 * len(sheets.BLANK_FORMS), 2 * len(sheets.BLANK_FORMS[::4]))
    assert ("pair", "mortise") in sheets.BLANK_FORMS[::4]
    fronts = [{piece[3] for piece in pieces} for _, _, pieces, _ in blank_pages][::2]
    assert all("Opening form" in pieces for pieces in fronts)


def test_nothing_is_cut_off(blank_pages):
    for wide, tall, pieces, paths in blank_pages:
        for x, y in (point for path in paths for point in path):
            assert MARGIN_MM <= x <= wide * MM - MARGIN_MM
            assert 10.0 <= y <= tall * MM - 5.0
        for x, y, size, text, bold in pieces:
            assert x >= MARGIN_MM / MM
            assert x + width_per_size(text, bold) * size <= wide - MARGIN_MM / MM + 1.0, text
            assert y > 10.0 / MM


def test_a_heading_does_not_stand_alone_at_the_foot(blank_pages):
    """Under each something to fill in stands on the same page: the lowest letters of a page are no heading's."""
    headed = {"Opening", "Leaf", "Lock", "Frame", "Wall", "Fire and ways out", "Use and power"}
    for _, _, pieces, _ in blank_pages:
        assert min(pieces, key=lambda each: each[1])[3] not in headed


def test_what_is_known_is_as_large_as_a_hand_writes(tmp_path):
    """11 pt; and a row to write in is as high as 8 mm."""
    render_pdf(filled("Survey", "", [(DOOR, ())], "fraction"), tmp_path / "a.pdf")
    sizes = {text: size for page in PdfReader(tmp_path / "a.pdf").pages for _, _, size, text, _ in letters(page)}
    for text in ("36", "1 3/4", "2 3/4", "45 min", "Wood, solid core", "yes"):
        assert sizes[text] == WRITTEN == 11.0
    front, back = PdfReader(tmp_path / "a.pdf").pages
    uprights = [path for path in painted(back) if len(path) == 2 and path[0][0] == path[1][0]]
    assert min(abs(path[0][1] - path[1][1]) for path in uprights if abs(path[0][1] - path[1][1]) > 6.0) >= 7.9
    assert "M 12" in front.extract_text()
