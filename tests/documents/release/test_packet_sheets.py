"""The sheets of the sample's packets as they are printed: how many a door takes, and where one begins."""

import re
from itertools import pairwise

import pytest

from hwsched.render.pdf_pages import PdfPages

BEGINS = re.compile(
    r"CAUTION |STOP|DO NOT INSTALL|Tools: |\d+ (Bench|Still to do|Done at the bench|Door|Hand|Inside|Key side|"
    r"Lock edge|Wall|Hinge edge|Frame)\. |"
    r"(Steps|Holes|Box contents|Test sheet|Power|Wiring|Sign-off|What the rules say|Drawn apart)\b|"
    r"No\. |Qty |Lock point "
)
"""Words with which something begins that is set on a packet."""
AFTER_HEAD = re.compile(r"Page \d+ of \d+\r?\n")


@pytest.fixture(scope="module")
def sheets(sample_folder):
    """Words of each sheet of each packet."""
    found = {}
    for path in sorted((sample_folder / "packets").glob("*.pdf")):
        pages = PdfPages([path.read_bytes()])
        found[path.stem] = [pages.text(number) for number in range(pages.count)]
        pages.close()
    assert len(found) > 150
    return found


def test_no_sheet_begins_with_the_last_line_of_the_one_before(sheets):
    """Alone at the top of a sheet it is read as if it belonged to what follows."""
    wrong = {}
    for mark, pages in sheets.items():
        for number, (_, text) in enumerate(pairwise(pages), start=2):
            first = AFTER_HEAD.split(text, maxsplit=1)[1].strip().splitlines()[0]
            if not BEGINS.match(first):
                wrong[f"{mark}, sheet {number}"] = first
    assert not wrong


def test_a_line_that_goes_on_would_be_found(sheets):
    """Second lines of steps stand on every second sheet: none of them counts as a beginning."""
    text = sheets["M001"][1]
    goes_on = next(line for line in text.splitlines() if line.startswith("lock with this packet"))
    assert not BEGINS.match(goes_on)


def test_a_door_on_batteries_takes_two_sheets_and_no_door_more_than_three(sheets):
    # Two printed pages a door, three for a supply, a pair or a rated door.
    assert max(map(len, sheets.values())) <= 3
    on_batteries = {mark: pages for mark, pages in sheets.items() if "Put the pack" in " ".join(pages)}
    assert len(on_batteries) > 100
    assert not [
        mark
        for mark, pages in on_batteries.items()
        if len(pages) > 2 and "Fire rating Not rated" in pages[0] and "Pair" not in pages[0]
    ]


def test_what_goes_in_is_drawn_apart_wherever_a_sheet_has_room(sheets):
    """It costs no sheet and makes no view coarser: the tests beside this one hold, and most packets have it, once."""
    fits = [pages for pages in sheets.values() if any("Test sheet" in page for page in pages)]
    drawn = [sum(page.count("Drawn apart, numbered as the steps") for page in pages) for pages in fits]
    assert max(drawn) == 1
    assert sum(drawn) >= len(drawn) * 3 // 5


def test_a_heading_stands_over_its_table(sample_folder):
    """At the foot of a column, with its table at the top of the next one, it is read as a heading without anything."""
    seen = 0
    for path in sorted((sample_folder / "packets").glob("*.pdf")):
        pages = PdfPages([path.read_bytes()])
        tables = {found.page: found.boxes[0] for found in pages.find("Qty Unit")}
        for found in pages.find("Box contents"):
            if found.page in tables:
                seen += 1
                assert tables[found.page][1] > found.boxes[0][1], path.stem
        pages.close()
    assert seen > 100


def test_views_are_not_coarser_than_what_they_show(sheets):
    """Smaller than 1:5 a leaf of 1 3/4 in is 9 mm thick; a bore that runs far up or down is drawn at 1:10.

    Twice as coarse are only those that would else take a fourth sheet.
    """
    for mark, pages in sheets.items():
        said = dict.fromkeys(
            re.findall(r"(Section A-A|Bore detail|Key side|Lock and unit)[^\n]*? · scale 1:([\d.]+)", "".join(pages))
        )
        for view, scale in said:
            most = {"Section A-A": 5, "Bore detail": 10, "Key side": 100, "Lock and unit": 15}[view]
            assert float(scale) <= most * (2 if len(pages) == 3 and "Volts at the unit" in pages[2] else 1), (
                mark,
                view,
            )
    assert any("Section A-A" in page for pages in sheets.values() for page in pages)
