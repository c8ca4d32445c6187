"""Box sheets, transmittals and fault sheets as they are read: what is compared, what went out, where one looks."""

from dataclasses import replace

import pytest

from hwsched.documents.release.box_sheet import BOX_SHEETS
from hwsched.documents.release.fault_sheet import FAULT_SHEET
from hwsched.documents.release.transmittals import TRANSMITTALS
from hwsched.render.blocks import Heading, Paragraph, SignOff
from hwsched.values import Fit, PointFit
from hwsched.values.transmittal import SentFile, Transmittal
from tests.documents.reading import blocks, facts, lines, texts, ticked


def boxes(quay, *views):
    return BOX_SHEETS.build(replace(quay, openings=views), None)


def compared(document):
    return [tuple(line.values()) for line in lines(document, "Before it is closed")]


# By mark what is compared: as surveyed, and what lies in the box by number.
COMPARED = {
    "WOOD": [
        ("Leaf", '1 3/4" thick, Wood, solid core', "CYL"),
        ("Lock", 'Mortise, threaded cylinder, backset 2 3/4"', "CYL"),
        ("Cam", "Straight cam", "CAM"),
    ],
    # Without cam or tailpiece none is compared; of a lift there is no leaf, and its reader goes in.
    "BORED": [
        ("Leaf", '1 3/4" thick, Wood, solid core', "BORED"),
        ("Lock", 'Bored lever or knob, backset 2 3/4"', "BORED"),
    ],
    "LIFT": [("Lock", "Reader only, no lock", "READ")],
}


@pytest.mark.parametrize("mark", COMPARED)
def test_what_was_put_in_is_compared_with_what_was_surveyed(quay, of_mark, mark):
    document = boxes(quay, replace(of_mark(mark), code="K7QE"))
    *found, last = compared(document)
    assert [(what, told, put.split(" ")[0]) for what, told, put in found] == COMPARED[mark]
    assert last == ("Sheet", f"revision {quay.revision}", "code K7QE on box and packet")
    assert all(ticked(document, "Before it is closed"))
    said = facts(document)
    assert said["Revision"] == f"{quay.revision}, code K7QE"
    assert said["Place"] == {"LIFT": "Shed · 1"}.get(mark, "Quay · 1")
    assert said["Location"] == "Corridor to Net loft"
    (section,) = document.sections[1:]
    assert (section.mark, section.code, section.at_door) == (mark, "K7QE", True)
    assert section.blocks[-1] == SignOff(("Packed by", "Checked by"))


def test_a_sheet_without_a_code_says_that_it_is_unknown(quay, of_mark):
    document = boxes(quay, of_mark("WOOD"))
    assert facts(document)["Revision"] == quay.revision
    assert compared(document)[-1] == ("Sheet", f"revision {quay.revision}", "code unknown on box and packet")


def test_of_several_lock_points_each_is_named_and_what_is_missing_is_nothing(quay, of_mark):
    wood = of_mark("WOOD")
    first, second = (replace(wood.given, point=replace(wood.given.point, name=name)) for name in ("latch", "bolt"))
    bare = replace(wood.fit, parts=tuple(part for part in wood.fit.parts if part.role not in ("cylinder", "cam")))
    view = replace(wood, given=first, points=(PointFit(first, wood.fit), PointFit(second, bare)))
    found = [(what, put.split(" ")[0]) for what, _, put in compared(boxes(quay, view))[:-1]]
    assert found == [
        ("latch: Leaf", "CYL"), ("latch: Lock", "CYL"), ("latch: Cam", "CAM"),
        ("bolt: Leaf", "nothing"), ("bolt: Lock", "nothing"),
    ]  # fmt: skip


def test_what_may_not_be_picked_is_named_in_front_and_has_no_sheet(quay, of_mark):
    document = boxes(quay, of_mark("WOOD"), of_mark("UNSEEN"))
    assert len(document.sections) == 2
    assert "A sheet for 1 box." in texts(document)
    assert "Not to be picked: UNSEEN." in texts(document)
    assert not any("Not to be picked" in text for text in texts(boxes(quay, of_mark("WOOD"))))


FILES = (SentFile("schedule.pdf", "0123456789abcdef" * 4, 4150, "B"), SentFile("list.pdf", "f" * 64, 900),
         SentFile("plan.pdf", "a" * 64, 10, "A"))  # fmt: skip


def test_what_went_to_whom_is_registered_and_has_a_sheet_with_its_files(quay):
    sent = (
        Transmittal(1, "2031-04-02T10:00:00", "Ann", "Quay office", "for approval", "two sets", FILES),
        Transmittal(2, "2031-05-03T09:00:00", "Bob", "Installer", "", "", FILES[:1]),
    )
    document = TRANSMITTALS.build(replace(quay, sent=sent), None)
    assert [tuple(line.values()) for line in lines(document, "Register of transmittals")] == [
        (1, "2031-04-02", "Quay office", "for approval", 3, "A, B, working state", "Ann"),
        (2, "2031-05-03", "Installer", "", 1, "B", "Bob"),
    ]
    # Kilobytes; so many digits that two issues of a file are told apart.
    assert [tuple(line.values()) for line in lines(document, "Transmittal 1")] == [
        ("schedule.pdf", "B", 4.15, "0123456789ab"), ("list.pdf", "working state", 0.9, "f" * 12),
        ("plan.pdf", "A", 0.01, "a" * 12),
    ]  # fmt: skip
    first, second = document.sections[1:]
    assert (first.mark, second.mark) == ("T1", "T2")
    assert Paragraph("two sets") in first.blocks
    assert len(second.blocks) == len(first.blocks) - 1
    assert [facts(replace(document, sections=(each,)))["Purpose"] for each in (first, second)] == [
        "for approval", "not stated",
    ]  # fmt: skip
    nothing = TRANSMITTALS.build(quay, None)
    assert len(nothing.sections) == 1
    assert texts(nothing) == ["Nothing is written down as sent: hwsched release transmit."]


def test_faults_of_each_lock_point_stand_under_its_name_and_of_none_without_a_fit(quay, of_mark):
    wood = of_mark("WOOD")
    points = tuple(
        PointFit(replace(wood.given, point=replace(wood.given.point, number=n, name=name)), wood.fit)
        for n, name in enumerate(("latch", "bolt"), start=1)
    )
    document = FAULT_SHEET.build(quay, replace(wood, given=points[0].given, points=points))
    headings = [block.text for block in blocks(document) if isinstance(block, Heading)]
    assert [text for text in headings if text.startswith("Lock point")] == ["Lock point 1: latch", "Lock point 2: bolt"]
    for fit in (None, Fit("to-measure")):
        document = FAULT_SHEET.build(quay, replace(wood, fit=fit, points=()))
        assert texts(document) == ["No fit of this opening counts: what is expected here is not known."]
