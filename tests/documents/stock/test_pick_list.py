"""The warehouse's list: what is picked, how much of it, for whom, and what lies in the boxes of parts."""

from collections import Counter
from dataclasses import replace

import pytest
from openpyxl import load_workbook
from pypdf import PdfReader

from hwsched.documents.release.packet import PACKET
from hwsched.documents.stock.pick_list import PICK_LIST
from hwsched.documents.view import OpeningView, ProjectView
from hwsched.operations.release.issued_documents import issue
from hwsched.values import Catalogue, FitPart, Part
from tests.documents.reading import facts, lines, ticked
from tests.drawings.openings import FIT, GIVEN, OPENING

UNIT = Part("SU-W", "surface-unit", "Unit", unit="EA", kit=(("PK", 2.0), ("RL", 0.5)))
PACK = Part("PK", "fastener", "Pack of screws", unit="SET", kit=(("SC", 4.0),))
SCREW = Part("SC", "fastener", "Screw #6 x 1", unit="EA")
ROLL = Part("RL", "consumable", "Tape", unit="ROLL")
CATALOGUE = Catalogue({**GIVEN.catalogue.parts, **{part.number: part for part in (UNIT, PACK, SCREW, ROLL)}}, "test")


def at(mark, building, *parts):
    """Return an opening of a building with parts: role, number, quantity."""
    given = replace(GIVEN, opening=replace(OPENING, id=mark, mark=mark, building=building, level="1"))
    held = tuple(FitPart(role, number, CATALOGUE.parts[number].kind, much, "") for role, number, much in parts)
    return OpeningView(given, replace(FIT, parts=held), ())


def list_of(*openings):
    return PICK_LIST.build(ProjectView("Quay", "working state 1", "2031-05-01", "mm", openings, CATALOGUE), None)


def picked(document, title):
    return [(line["Part"], line["Qty"], line["Unit"]) for line in lines(document, title)]


def test_quantities_of_openings_and_of_boxes_are_multiplied():
    """A and B take 1 unit, C takes 2: 4 units, 4 x 2 packs, 8 x 4 screws, 4 x 1/2 roll."""
    document = list_of(
        at("A", "Mill", ("unit", "SU-W", 1.0)), at("B", "Mill", ("unit", "SU-W", 1.0)),
        at("C", "Store", ("unit", "SU-W", 2.0)),
    )  # fmt: skip
    assert picked(document, "Totals") == [
        ("SU-W", 4, "EA"), ("PK", 8, "SET"), ("SC", 32, "EA"), ("RL", 2, "ROLL"),
    ]  # fmt: skip
    assert picked(document, "Pick Mill · 1") == [
        ("SU-W", 2, "EA"), ("PK", 4, "SET"), ("SC", 16, "EA"), ("RL", 1, "ROLL"),
    ]  # fmt: skip
    assert picked(document, "Pick Store · 1") == [
        ("SU-W", 2, "EA"), ("PK", 4, "SET"), ("SC", 16, "EA"), ("RL", 1, "ROLL"),
    ]  # fmt: skip
    # What is in a box is checked, not picked again, and is nobody's.
    assert ticked(document, "Totals") == [True, False, False, False]
    assert [line["For openings"] for line in lines(document, "Pick Mill · 1")] == ["A, B", "", "", ""]
    assert [line["Description"] for line in lines(document, "Totals")] == [
        "Unit", "contains: Pack of screws", "contains: Screw #6 x 1, inside PK", "contains: Tape",
    ]  # fmt: skip


def test_the_same_part_in_two_roles_of_one_opening_is_one_line():
    document = list_of(at("A", "Mill", ("fastener", "SU-W", 4.0), ("consumable", "SU-W", 3.0)))
    (first, *_) = lines(document, "Totals")
    assert (first["Part"], first["Qty"]) == ("SU-W", 7)
    assert lines(document, "Pick Mill · 1")[0]["For openings"] == "A"


def test_tenths_add_up_to_whole_pieces():
    """Ten openings with a tenth of a roll each take one roll, printed as 1."""
    document = list_of(*(at(f"D{n}", "Mill", ("unit", "RL", 0.1)) for n in range(10)))
    (line,) = lines(document, "Totals")
    assert str(line["Qty"]) == "1"


def test_tools_are_not_picked_into_a_box():
    document = list_of(at("A", "Mill", ("unit", "RL", 1.0), ("tool", "SC", 1.0)))
    assert picked(document, "Totals") == [("RL", 1, "ROLL")]


# --- from the survey ------------------------------------------------------------------------------------------------

# 13 of 14 openings are fitted: 9 at the quay, 4 at the shed.
TOTALS = {
    # Mortise: WOOD METRIC CHANNEL DOWN HOLLOW STILE POCKET, each with cam, collar and a twentieth of a bottle.
    "CYL": 7, "CAM": 7, "COL": 7, "LOCKER": 0.35,
    "RIM": 1, "BORED": 2, "CAB": 1, "GATE": 1, "READ": 1,
    # All but POCKET (in the edge), STILE (narrow), GATE (outside), DOWN (slot downward); 2 packs of 4 each, a roll and
    # two halves.
    "EDGE": 1, "NARROW": 1, "SEALED": 1, "LOW": 1, "UNIT": 9, "PACK": 18, "SPARE": 72, "TAPE": 18,
    # 6 cells, a coin cell and a key each.
    "CELL": 78, "COIN": 13, "KEY": 13,
    # 4 screws a unit, before a case in wood WOOD METRIC CHANNEL DOWN, in sheet HOLLOW; beside it in wood SMALL BORED
    # POCKET, in sheet RIM; the reader's unit has none.
    "SCREW": 16, "LONG": 12, "THIN": 4, "SHEET": 4, "STILE": 4, "TUBE": 4, "SHORT": 4, "BOLT": 4,
    # A sleeve in wood and aluminium where a lead is drilled for, by size: 1/2 in, 3/8 in of the bored locks and of the
    # channels (one bit bores both parts), 3/4 in of the stile.
    # A grommet in sheet, the gate's of 3/4 in behind its case too. Plugs for the reader's unit.
    "SLEEVE": 2, "SLEEVE38": 4, "SLEEVE34": 1, "GROMMET": 3, "GROMMET34": 1, "PLUG": 4,
    "GASKET": 1, "SEAL": 0.1, "EXT": 1,
}  # fmt: skip
# Nobody picks a third of a bottle: what is used up in parts is picked whole, in all and at each of the two places.
PICKED = {**TOTALS, "LOCKER": 1, "SEAL": 1}
AT_PLACES = {**TOTALS, "LOCKER": 2, "SEAL": 1}


def summed(document, *titles):
    found = Counter()
    for title in titles:
        for line in lines(document, title):
            found[line["Part"]] += line["Qty"]
    return dict(found)


def test_totals_from_the_survey(quay):
    document = PICK_LIST.build(quay, None)
    assert summed(document, "Totals") == pytest.approx(PICKED)
    (bottle,) = [line for line in lines(document, "Totals") if line["Part"] == "LOCKER"]
    assert bottle["Description"].endswith("(0.35 used up)")
    said = facts(document)
    assert (said["Openings to pick"], said["Openings held back"], said["Places"]) == ("13", "1", "2")
    (held,) = lines(document, "Held back")
    assert held == {"Mark": "UNSEEN", "Place": "Quay · 1", "Why": "unknown: needs leaf: Leaf thickness"}


def test_places_add_up_to_the_totals(quay):
    document = PICK_LIST.build(quay, None)
    assert summed(document, "Pick Quay · 1", "Pick Shed · 1") == pytest.approx(AT_PLACES)


def test_the_boxes_of_all_packets_hold_what_is_picked(quay):
    """Contents of boxes included: what the warehouse takes from the shelf is what the installers find."""
    boxes, carried = Counter(), Counter()
    units = {}
    for opening in quay.openings:
        if opening.ready:
            for line in lines(PACKET.build(quay, opening), "Box contents"):
                if line["Qty"] == "-":
                    # A twentieth of a bottle lies in no box: the crew carries the bottle.
                    assert line["Description"].endswith((": some drops", ": a bead"))
                    carried[line["Part"]] += 1
                else:
                    boxes[line["Part"]] += line["Qty"]
                    units[line["Part"]] = line["Unit"]
    a_door = {"LOCKER": 0.05, "SEAL": 0.1}
    assert {part: doors * a_door[part] for part, doors in carried.items()} == pytest.approx(
        {part: TOTALS[part] for part in a_door}
    )
    assert dict(boxes) == pytest.approx({part: much for part, much in TOTALS.items() if part not in a_door})
    picked = {line["Part"]: line["Unit"] for line in lines(PICK_LIST.build(quay, None), "Totals")}
    assert units == {part: unit for part, unit in picked.items() if part not in a_door}


def test_workbook_and_page_hold_the_same_quantities(quay, tmp_path):
    pdf, xlsx = sorted(issue(quay, PICK_LIST, tmp_path))
    found = Counter()
    for sheet in load_workbook(xlsx):
        rows = [list(row) for row in sheet.iter_rows(values_only=True)]
        head = next((n for n, row in enumerate(rows) if "Part" in row and "Qty" in row), None)
        if head is not None and "For openings" not in rows[head]:
            part, quantity = rows[head].index("Part"), rows[head].index("Qty")
            for row in rows[head + 1 :]:
                if row[part]:
                    assert isinstance(row[quantity], int | float)
                    found[row[part]] += row[quantity]
    assert dict(found) == pytest.approx(PICKED)
    page = "".join("".join(each.extract_text() for each in PdfReader(pdf).pages).split())
    # Part, what, quantity and unit stand in one row, in this order.
    for words in (
        "SPAREcontains:fastenerSPARE,insidePACK72EA",
        "CELLprimary-batteryCELL78EA",
        "PACKcontains:fastenerPACK18SET",
    ):
        assert words in page


def test_what_fits_and_is_held_says_by_what(quay):
    """An opening that fits is not told to lack parts: somebody has to decide, or what feeds it is not proved."""
    word = "a person's decision (accept battery-life, with a reason): the pack lasts about 100 days"
    openings = tuple(replace(each, held=(word,)) if each.mark == "WOOD" else each for each in quay.openings)
    held = {
        line["Mark"]: line["Why"]
        for line in lines(PICK_LIST.build(replace(quay, openings=openings), None), "Held back")
    }
    assert held["WOOD"] == word
    fitting = {each.mark for each in openings if each.fit is not None and each.fit.status == "fits"}
    assert not [mark for mark in fitting & set(held) if "no combination" in held[mark]]


def test_openings_held_for_the_same_reason_at_the_same_place_are_one_line(quay):
    """Of two openings alike the reason is said once, with both marks."""
    (wood,) = (each for each in quay.openings if each.mark == "WOOD")
    reason = "its supply is not proved"
    other = replace(wood, given=replace(wood.given, opening=replace(wood.given.opening, mark="WOOD 2")), held=(reason,))
    document = PICK_LIST.build(replace(quay, openings=(replace(wood, held=(reason,)), other)), None)
    (line,) = lines(document, "Held back")
    assert (line["Mark"], line["Why"]) == ("WOOD, WOOD 2", reason)
