"""The schedule: headings of openings that take the same, quantities a piece and in all, the facts of each."""

from collections import Counter
from dataclasses import replace

import pytest
from openpyxl import load_workbook
from pypdf import PdfReader

from hwsched.documents.release.schedule import SCHEDULE
from hwsched.documents.release.schedule_across import SCHEDULE_ACROSS
from hwsched.operations.release.issued_documents import issue
from hwsched.render.blocks import Facts, Heading, Paragraph, Table
from hwsched.rules.rule_titles import title_of
from hwsched.values import Finding, Fit, PointFit
from hwsched.values.fit import Refusal
from hwsched.values.office import Office
from tests.documents.reading import blocks, facts, lines

# Alike in parts, form, hand, rating, frame, leaf material and thickness; in the order of the openings.
HEADINGS = [
    ["BORED", "SMALL"],  # one is only drilled up: the parts are the same
    ["CHANNEL"],  # its hole is bored with the channel's bit of 3/8, and so is its sleeve
    ["DOWN"],  # with a unit of its own
    ["HOLLOW"],
    ["METRIC", "WOOD"],  # the same parts in other places; 44.45 mm is 1 3/4
    ["RIM"],
    ["STILE"],
    ["CABINET"],
    ["GATE"],
    ["LIFT"],
    ["POCKET"],
]


def headings(quay):
    return [
        dict(block.pairs)
        for block in blocks(SCHEDULE.build(quay, None))
        if isinstance(block, Facts) and block.pairs[0][0] == "Openings" and ":" in block.pairs[0][1]
    ]


def test_openings_that_take_the_same_stand_under_one_heading(quay):
    found = [each["Openings"] for each in headings(quay)]
    assert found == [f"{len(marks)}: {', '.join(marks)}" for marks in HEADINGS]


def test_what_keeps_a_heading_apart_is_said(quay):
    """DOWN has all of CHANNEL but a unit of its own, METRIC and WOOD another sleeve; RIM is like none before it."""
    found = {each["Openings"]: each.get("Apart because of", "") for each in headings(quay)}
    assert found["1: DOWN"] == "LOW, UNIT (else as H002)"
    assert found["2: METRIC, WOOD"] == "SLEEVE, SLEEVE38 (else as H002)"
    assert found["2: BORED, SMALL"] == found["1: RIM"] == ""
    # Another hand, material and what holds in it: of all that differs each is named.
    assert found["1: HOLLOW"].startswith("hand RH, leaf, ")


def test_every_line_says_why_by_a_number(quay):
    document = SCHEDULE.build(quay, None)
    reasons = {line["No."]: line["Reason"] for line in lines(document, "Reasons")}
    assert list(reasons) == list(range(1, len(reasons) + 1))
    assert len(set(reasons.values())) == len(reasons)
    (unit,) = [line for line in lines(document, "Heading H002") if line["Catalogue number"] == "SCREW"]
    assert "the unit takes 4 screws #6" in reasons[unit["Reason"]]


def test_a_finding_of_several_openings_is_said_once_with_all_of_them(quay):
    document = SCHEDULE.build(quay, None)
    said = [(line["Severity"], line["Rule"], line["Finding"], line["Cure"]) for line in lines(document, "Findings")]
    assert len(said) == len(set(said))
    told = {(line["Rule"], line["Finding"]): line["Openings"] for line in lines(document, "Findings")}
    for view in quay.openings:
        for finding in view.findings:
            count, _, marks = told[title_of(finding.rule), finding.message].partition(": ")
            assert view.mark in marks.split(", ")
            assert int(count) == len(marks.split(", "))


def test_a_heading_tells_the_facts_of_its_openings(quay):
    wood, gate = headings(quay)[4], headings(quay)[8]
    # Hand LH, thickness 1 3/4, Material SCW, Frame HM, Label none, Lock type mortise.
    assert wood == {
        "Openings": "2: METRIC, WOOD", "Form and hand": "Single door, LH",
        "Leaf": '1 3/4", Wood, solid core', "Frame": "Hollow metal", "Fire rating": "Not rated",
        "Existing lock": "Mortise, threaded cylinder", "Apart because of": "SLEEVE, SLEEVE38 (else as H002)",
    }  # fmt: skip
    # Type gate, thickness 2, Frame none.
    assert (gate["Form and hand"], gate["Leaf"], gate["Frame"]) == ("Gate, LH", '2", Steel gate', "No frame")


def test_quantities_are_for_one_opening_and_for_all_of_the_heading(quay):
    document = SCHEDULE.build(quay, None)
    found = {
        line["Catalogue number"]: (line["Qty"], line["Total"], line["Unit"]) for line in lines(document, "Heading H005")
    }
    # Two openings: 6 cells and 4 screws each; what runs through a bottle is no part of one for either.
    assert found == {
        "CYL": (1, 2, "EA"), "CAM": (1, 2, "EA"), "COL": (1, 2, "EA"), "UNIT": (1, 2, "EA"), "CELL": (6, 12, "EA"),
        "COIN": (1, 2, "EA"), "SCREW": (4, 8, "EA"), "LOCKER": ("-", "-", ""), "SLEEVE": (1, 2, "EA"),
        "KEY": (1, 2, "EA"),
    }  # fmt: skip
    (unit,) = [line for line in lines(document, "Heading H005") if line["Catalogue number"] == "UNIT"]
    assert unit["Finish"] == "grey"  # cell Finish of the catalogue
    (locker,) = [line for line in lines(document, "Heading H005") if line["Catalogue number"] == "LOCKER"]
    assert locker["Item"] == "consumable LOCKER: some drops"
    assert [line["No."] for line in lines(document, "Heading H005")] == list(range(1, 11))


def test_the_index_tells_every_opening(quay):
    found = {line["Mark"]: line for line in lines(SCHEDULE.build(quay, None), "Opening index")}
    assert len(found) == 14
    assert found["WOOD"] == {
        "Mark": "WOOD", "Place": "Quay · 1", "Location": "Corridor to Net loft", "Heading": "H005",
        "Form": "Single door", "Hand": "LH", "Leaf size": "3'-0\" × 7'-0\"", "Leaf": "Wood, solid core",
        "Rating": "Not rated", "Status": "Fits",
    }  # fmt: skip
    of_heading = {mark: f"H{number:03d}" for number, marks in enumerate(HEADINGS, start=1) for mark in marks}
    assert {mark: line["Heading"] for mark, line in found.items()} == {**of_heading, "UNSEEN": "-"}
    assert (found["UNSEEN"]["Status"], found["LIFT"]["Leaf size"], found["LIFT"]["Hand"]) == (
        "To measure", "no leaf", "unknown",
    )  # fmt: skip


def test_what_is_not_fitted_says_why(quay):
    document = SCHEDULE.build(quay, None)
    (line,) = lines(document, "Does not fit, or to measure")
    assert (line["Mark"], line["Status"]) == ("UNSEEN", "To measure")
    assert line["Why"].startswith("needs leaf: Leaf thickness")
    said = facts(replace(document, sections=document.sections[:1]))
    assert (said["Openings"], said["Fits"], said["To measure"], said["Does not fit"], said["Headings"]) == (
        "14", "13", "1", "0", "11",
    )  # fmt: skip


def test_the_workbook_holds_the_same(quay, tmp_path):
    (path,) = issue(quay, SCHEDULE, tmp_path, ["xlsx"])
    held = [
        [cell for cell in row if cell is not None]
        for sheet in load_workbook(path)
        for row in sheet.iter_rows(values_only=True)
    ]
    # Two openings each: BORED and SMALL, METRIC and WOOD.
    of_two = [row for row in held if "CELL" in row and 12 in row]
    assert [row[row.index(6) : row.index(6) + 3] for row in of_two] == [[6, 12, "EA"]] * 2


def more_of(document, heading):
    """Return the facts of a heading's openings that stand before its lines."""
    blocks_ = blocks(document)
    place = next(n for n, block in enumerate(blocks_) if isinstance(block, Heading) and block.text == heading)
    return dict(blocks_[place + 2].pairs)


def test_a_heading_tells_where_its_openings_are_and_what_stays_there(quay):
    document = SCHEDULE.build(quay, None)
    wood = more_of(document, "Heading H005")
    # Room from Corridor, Room to Net loft, 3-0 x 7-0 of all three: said once.
    assert wood["Location and size"] == "Corridor to Net loft, 3'-0\" × 7'-0\""
    # Function office, on cells, as the catalogue's unit is.
    assert (wood["Lock function"], wood["Power"]) == ("Office or entry", "batteries in the unit")
    assert "Remarks" not in wood


def test_what_holds_for_some_of_them_is_told_with_their_marks(quay):
    def noted(view):
        told = replace(view.given, opening=replace(view.given.opening, notes="Ask at the desk"))
        return replace(view, given=told, points=(PointFit(told, view.fit),))

    openings = tuple(noted(each) if each.mark == "WOOD" else each for each in quay.openings)
    document = SCHEDULE.build(replace(quay, openings=openings), None)
    assert more_of(document, "Heading H005")["Remarks"] == "Ask at the desk (WOOD)"


def test_a_hairs_breadth_does_not_split_a_heading(quay):
    def thicker(view):
        leaves = tuple(replace(leaf, thickness_mm=44.46) for leaf in view.given.leaves)
        told = replace(view.given, leaves=leaves)
        return replace(view, given=told, points=(PointFit(told, view.fit),))

    # 44.45 and 44.46 mm both read 1 3/4.
    openings = tuple(thicker(each) if each.mark == "WOOD" else each for each in quay.openings)
    assert [each["Openings"] for each in headings(replace(quay, openings=openings))][4] == "2: METRIC, WOOD"


def test_only_abbreviations_that_are_used_are_explained(quay):
    said = facts(replace(SCHEDULE.build(quay, None), sections=SCHEDULE.build(quay, None).sections[:1]))
    # The quay's hands are LH and RH, and everything is counted each.
    assert {"LH", "RH", "EA"} <= said.keys()
    assert not {"LHR", "AFF", "PR"} & said.keys()


def test_the_office_says_whom_to_ask(quay):
    office = Office(contacts={"Architect": "A. Mason"})
    document = SCHEDULE.build(replace(quay, office=office), None)
    assert facts(replace(document, sections=document.sections[:1]))["Architect"] == "A. Mason"


def test_the_index_leads_to_the_headings_and_so_does_the_outline(quay, tmp_path):
    (path,) = issue(quay, SCHEDULE, tmp_path, ["pdf"])
    reader = PdfReader(path)
    outline = [each.title for each in reader.outline if not isinstance(each, list)]
    assert outline[:3] == ["Summary", "Opening index", "Headings"]
    below = [each for part in reader.outline if isinstance(part, list) for each in part]
    assert [each.title for each in below] == [f"Heading H{number:03d}" for number in range(1, len(HEADINGS) + 1)]
    page = {each.title: reader.get_destination_page_number(each) for each in below}
    for title, number in page.items():
        assert title in reader.pages[number].extract_text()
    # A link for each opening that stands under a heading, from top to bottom of the index.
    leads = [
        reader.get_page_number(note.get_object()["/Dest"][0].get_object())
        for each in reader.pages
        for note in each.get("/Annots") or ()
    ]
    index = lines(SCHEDULE.build(quay, None), "Opening index")
    assert leads == [page[f"Heading {line['Heading']}"] for line in index if line["Heading"] != "-"]


def test_the_horizontal_form_holds_the_same_items(quay):
    """Added up by hand of both: each catalogue number with what all its openings take."""
    across = lines(SCHEDULE_ACROSS.build(quay, None), "Schedule, horizontal form")
    assert [line["Mark"] for line in across] == [view.mark for view in quay.openings]
    counted, down, little = Counter(), Counter(), {"LOCKER: some drops", "SEAL: a bead"}
    for line in across:
        for column in list(line)[6:-1]:
            for said in filter(None, line[column].split(", ")):
                count, _, part = said.rpartition(" × ")
                counted[part] += 0 if part in little else round(float(count or 1) * 1000)
    document = SCHEDULE.build(quay, None)
    for number in range(1, len(HEADINGS) + 1):
        for item in lines(document, f"Heading H{number:03d}"):
            if item["Total"] == "-":  # it names what is taken of it, at each of its openings
                down[item["Catalogue number"] + ":" + item["Item"].rpartition(":")[2]] += 0
            else:
                down[item["Catalogue number"]] += round(item["Total"] * 1000)
    assert dict(counted) == dict(down)
    wood = next(line for line in across if line["Mark"] == "WOOD")
    assert (wood["Cells and supply"], wood["Cylinder, lock, reader"]) == ("6 × CELL, COIN", "CYL")


def test_a_heading_of_many_openings_does_not_repeat_the_index(quay):
    wood = next(view for view in quay.openings if view.mark == "WOOD")

    def another(number):
        opening = replace(wood.given.opening, id=f"w{number}", mark=f"W{number}", room_to=f"Bay {number}")
        told = replace(wood.given, opening=opening)
        return replace(wood, given=told, points=(PointFit(told, wood.fit),))

    # Two under H005 in the quay, and 8 apiece at most.
    for count, said in ((6, "W5: Corridor to Bay 5"), (9, "by mark in the opening index")):
        document = SCHEDULE.build(replace(quay, openings=(*quay.openings, *map(another, range(count)))), None)
        assert said in more_of(document, "Heading H005")["Location and size"]


def test_hundreds_of_marks_are_listed_as_wide_as_the_page_and_none_is_lost(quay):
    wood = next(view for view in quay.openings if view.mark == "WOOD")

    def another(number):
        opening = replace(wood.given.opening, id=f"w{number}", mark=f"W{number}")
        told = replace(wood.given, opening=opening)
        return replace(wood, given=told, points=(PointFit(told, wood.fit),))

    document = SCHEDULE.build(replace(quay, openings=(*quay.openings, *map(another, range(60)))), None)
    blocks = [block for section in document.sections for block in section.blocks]
    listed = next(b.text for b in blocks if isinstance(b, Paragraph) and b.text.startswith("Openings: "))
    tables = {b.title: b for b in blocks if isinstance(b, Table)}
    lists = {f"list {row[0]}": row[1] for row in tables["Openings of findings"].rows}
    named = [row for row in tables["Findings"].rows if "list " in row[4]]
    for number in range(60):
        assert f"W{number}" in listed.split(": ")[1].split(", ")
    assert len(named) == len(lists) > 0
    for row in named:
        count, name = row[4].split(": ")
        marks = lists[name].split(": ")[1].split(", ")
        # Whatever is said of the first is said of all that are like it.
        assert len(marks) == int(count)
        assert {f"W{number}" for number in range(60)} <= set(marks)


@pytest.mark.parametrize(("count", "more"), [(4, ""), (5, "and 1 more refusal"), (7, "and 3 more refusals")])
def test_of_many_refusals_four_are_named_and_the_others_counted(quay, count, more):
    refused = tuple(Refusal(f"P{n}", "unit", "plate-within-leaf", f"short by {n} mm") for n in range(count))
    fit = Fit("does-not-fit", refused=refused)
    wood = next(each for each in quay.openings if each.mark == "WOOD")
    for name in ("", "latch"):
        given = replace(wood.given, point=replace(wood.given.point, name=name))
        view = replace(wood, given=given, fit=fit, points=(PointFit(given, fit),))
        (line,) = lines(SCHEDULE.build(replace(quay, openings=(view,)), None), "Does not fit, or to measure")
        named = [f"P{n}: short by {n} mm" for n in range(4)] + ([more] if more else [])
        # Of several lock points each line says of which it is.
        assert line["Why"].split("\n") == [f"{name}: {each}" if name else each for each in named]
        assert line["Status"] == "Does not fit"


def test_openings_that_are_not_fitted_for_the_same_reason_are_one_line(quay):
    """One whose fit does not count says why, and is told to be fitted; two of them are one line."""
    wood, metric = (each for each in quay.openings if each.mark in ("WOOD", "METRIC"))
    stale = [replace(each, fit=None, points=(), standing="facts-changed") for each in (wood, metric)]
    unseen = [each for each in quay.openings if each.mark == "UNSEEN"]
    document = SCHEDULE.build(replace(quay, openings=(*stale, *unseen)), None)
    found = lines(document, "Does not fit, or to measure")
    assert [line["Mark"] for line in found] == [", ".join(each.mark for each in stale), "UNSEEN"]
    assert found[0]["Status"] == "Not worked out"
    assert found[0]["Why"] == f"No fit counts: {stale[0].unfitted}. Fit the opening."
    known = [each for each in quay.openings if each.mark != "UNSEEN"]
    said = [block.text for block in blocks(SCHEDULE.build(replace(quay, openings=tuple(known)), None))
            if isinstance(block, Paragraph)]  # fmt: skip
    assert "None: every opening fits." in said


def test_the_summary_counts_what_is_held_open_and_waived(quay):
    """WOOD has an error, an unknown and a waived warning: it is held; METRIC's error is waived, and holds nothing."""
    made = Finding("made-up", "holes", "error", "It says so.", "common practice", "Do so.")
    unknown = replace(made, severity="note", needs=("leaf.width_mm",))
    waived = replace(made, severity="warning", waived=True, waived_by="Ann")
    findings = {"WOOD": (made, unknown, waived), "METRIC": (replace(made, waived=True, waived_by="Ann"),)}
    openings = tuple(replace(each, findings=findings.get(each.mark, ())) for each in quay.openings)
    view = replace(quay, openings=openings, rules_run=7, rules_off=("x-rule", "y-rule"))
    document = SCHEDULE.build(view, None)
    said = facts(replace(document, sections=document.sections[:1]))
    assert said["Held by errors"] == "1"
    assert said["Open findings"] == "1 error, 0 warning, 1 note"
    checked = next(
        block.text for block in blocks(document) if isinstance(block, Paragraph) and "rules were" in block.text
    )
    assert checked == (
        "7 rules were run. Switched off: x-rule; y-rule. Findings that say unknown because facts are missing: 1. "
        "Waivers in force: 2."
    )
    index = {line["Mark"]: line["Status"] for line in lines(document, "Opening index")}
    assert (index["WOOD"], index["METRIC"]) == ("Fits · held", "Fits")
    # The worst first; what is waived behind all that is open.
    assert [line["Severity"] for line in lines(document, "Findings")] == [
        "Error", "Note", "Error (waived: Ann)", "Warning (waived: Ann)",
    ]  # fmt: skip
    none = SCHEDULE.build(
        replace(view, openings=tuple(replace(each, findings=()) for each in openings), rules_off=()), None
    )
    texts = [block.text for block in blocks(none) if isinstance(block, Paragraph)]
    assert any("Switched off: none." in text for text in texts)
    assert "No rule has found anything." in texts


def test_without_openings_the_horizontal_form_says_so(quay):
    said = [
        block.text
        for block in blocks(SCHEDULE_ACROSS.build(replace(quay, openings=()), None))
        if isinstance(block, Paragraph)
    ]
    assert said[0] == "No opening."
    assert "No opening." not in str(SCHEDULE_ACROSS.build(quay, None))


def test_the_horizontal_form_has_a_line_a_lock_point_and_says_what_is_held(quay):
    wood = next(each for each in quay.openings if each.mark == "WOOD")
    made = Finding("made-up", "holes", "error", "It says so.", "common practice", "Do so.")
    given = [replace(wood.given, point=replace(wood.given.point, name=name)) for name in ("latch", "bolt")]
    twice = replace(wood, given=given[0], points=(PointFit(given[0], wood.fit), PointFit(given[1], None)))
    for view, marks, status in (
        (twice, ["WOOD latch", "WOOD bolt"], "Fits"), (replace(wood, findings=(made,)), ["WOOD"], "Fits · held"),
    ):  # fmt: skip
        found = lines(SCHEDULE_ACROSS.build(replace(quay, openings=(view,)), None), "Schedule, horizontal form")
        assert [line["Mark"] for line in found] == marks
        assert {line["Status"] for line in found} == {status}
    # A lock point that is not fitted takes nothing.
    first, second = (list(line.values())[6:-1] for line in lines(
        SCHEDULE_ACROSS.build(replace(quay, openings=(twice,)), None), "Schedule, horizontal form"))  # fmt: skip
    assert any(first)
    assert not any(second)
