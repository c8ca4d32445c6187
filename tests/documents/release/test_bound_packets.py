"""Packets in one file: a contents page in the order in which they follow, each on the page that it says."""

import re
from dataclasses import replace

import pytest

from hwsched.documents.release.bound_packets import BOUND_PACKETS
from hwsched.documents.release.packet import PACKET
from hwsched.render.blocks import Heading, Table
from hwsched.render.pdf import render_pdf
from hwsched.render.pdf_pages import PdfPages
from tests.documents.reading import lines

QUAY = "Quay · 1"
SHED = "Shed · 1"
# Rows of the quay's survey by building, level and as people count marks.
MARKS = {
    QUAY: ["BORED", "CHANNEL", "DOWN", "HOLLOW", "LOW", "METRIC", "RIM", "SMALL", "STILE", "UNSEEN", "WOOD"],
    SHED: ["CABINET", "GATE", "LIFT", "POCKET"],
}


@pytest.fixture(scope="module")
def bound(quay):
    """The quay's doors without those that tests beside this one add."""
    wanted = {mark for marks in MARKS.values() for mark in marks}
    few = replace(quay, openings=tuple(each for each in quay.openings if each.mark in wanted))
    return few, BOUND_PACKETS.build(few, None)


@pytest.fixture(scope="module")
def pages(bound, tmp_path_factory):
    path = tmp_path_factory.mktemp("bound") / "bound.pdf"
    render_pdf(bound[1], path)
    read = PdfPages([path.read_bytes()])
    yield [read.text(number) for number in range(read.count)]
    read.close()


def test_the_contents_follow_the_walk_place_by_place(bound):
    view, document = bound
    there = {each.mark for each in view.openings}
    for place, marks in MARKS.items():
        assert [line["Mark"] for line in lines(document, place)] == [mark for mark in marks if mark in there]
    first = [block for block in document.sections[0].blocks if isinstance(block, Heading)]
    assert [each.text for each in first if each.level == 2] == [QUAY, SHED, "To carry besides the boxes"]


def test_packets_follow_in_the_order_of_their_contents(bound):
    _, document = bound
    marks = [line["Mark"] for place in MARKS for line in lines(document, place)]
    assert list(dict.fromkeys(section.mark for section in document.sections[1:])) == marks
    assert len(document.sections) == len(list(document.sections))


def test_nothing_of_a_packet_is_otherwise_than_alone(bound):
    view, document = bound
    for each in view.openings:
        alone = PACKET.build(view, each)
        together = [section for section in document.sections if section.mark == each.mark]
        for one, other in zip(alone.sections, together, strict=True):
            assert one.blocks[1:] == other.blocks[1:]
            assert replace(one.blocks[0], anchor="") == replace(other.blocks[0], anchor="")
            assert (one.stop, one.sheets, one.code) == (other.stop, other.sheets, other.code)
            # Behind the title of a packet alone stands its place.
            assert other.subtitle == alone.subtitle


def test_each_packet_begins_on_the_page_that_the_contents_say_on_the_front_of_a_sheet(bound, pages):
    begin = {}
    for number, text in enumerate(pages, start=1):
        found = re.search(r"^Opening (\S+)", text, re.MULTILINE)
        if found is not None:
            begin[found[1]] = number
    view, _ = bound
    assert set(begin) == {each.mark for each in view.openings}
    # Number, mark, the words of the row, and last the page.
    rows = re.findall(r"^\d+ ([A-Z]+) Corridor (?s:.*?)(\d+)\r?$", pages[0], re.MULTILINE)
    assert {mark: int(page) for mark, page in rows} == begin
    assert all(number % 2 for number in begin.values())


def test_lock_power_and_what_may_not_be_installed_are_said(bound):
    _, document = bound
    said = {line["Mark"]: line for place in MARKS for line in lines(document, place)}
    # Cells of the survey: lock type bored, gate, cabinet; thickness of UNSEEN left empty.
    assert said["BORED"]["Lock"].startswith("Bored")
    assert said["LIFT"]["Lock"].startswith("Reader")
    assert said["WOOD"]["Power"] == "batteries"
    assert (said["UNSEEN"]["Power"], said["UNSEEN"]["Carry"]) == ("unknown", "DO NOT INSTALL")
    assert said["WOOD"]["Location"] == "Corridor to Net loft"


def test_every_tool_of_a_packet_is_carried(bound):
    view, document = bound
    carried = {line["Carry"]: set(line["Tools"].split("; ")) for line in lines(document, "To carry besides the boxes")}
    doors = {line["Carry"]: line["Doors"] for line in lines(document, "To carry besides the boxes")}
    rows = {line["Mark"]: line["Carry"] for place in MARKS for line in lines(document, place)}
    ready = [each for each in view.openings if each.ready]
    assert doors["all"] == len(ready) > 8
    for each in ready:
        (tools,) = (
            block.text for section in PACKET.build(view, each).sections for block in section.blocks
            if getattr(block, "text", "").startswith("Tools: ")
        )  # fmt: skip
        wanted = set(tools.removeprefix("Tools: ").removesuffix(".").split("; "))
        assert carried["all"] | carried.get(rows[each.mark], set()) == wanted
    for name, count in doors.items():
        assert name == "all" or count == sum(carry == name for carry in rows.values())


def test_a_single_door_has_nothing_that_not_all_want(quay):
    only = replace(quay, openings=tuple(each for each in quay.openings if each.mark == "WOOD"))
    document = BOUND_PACKETS.build(only, None)
    assert [line["Carry"] for line in lines(document, "To carry besides the boxes")] == ["all"]
    assert [line["Carry"] for line in lines(document, QUAY)] == [""]


def test_without_openings_there_is_a_page(quay):
    document = BOUND_PACKETS.build(replace(quay, openings=()), None)
    assert len(document.sections) == 1
    assert not any(isinstance(block, Table) for block in document.sections[0].blocks)
