"""What is on the pages: empty project, sample, an opening that may not be installed, totals that agree."""

import math
import re
from dataclasses import replace

import pytest
from pypdf import PdfReader

from hwsched.documents.documents import DOCUMENTS
from hwsched.documents.release.packet import PACKET
from hwsched.documents.release.schedule import SCHEDULE, headings, item_lines
from hwsched.documents.stock.pick_list import PICK_LIST, quantities
from hwsched.documents.view import ProjectView
from hwsched.model.project import open_project
from hwsched.operations.release.project_view import project_view
from hwsched.render.blocks import TICK, Facts, Paragraph, Steps, Table
from hwsched.render.file_names import safe_file_name
from hwsched.render.pdf import render_pdf
from hwsched.values import Catalogue, Finding
from tests.documents.reading import texts
from tests.render.pages_read import sizes


@pytest.fixture(scope="module")
def view(sample_folder):
    project = open_project(sample_folder / "quayside-works.hwsched")
    try:
        return project_view(project)
    finally:
        project.close()


def blocks(document):
    return [block for section in document.sections for block in section.blocks]


def words(document):
    found = []
    for block in blocks(document):
        if isinstance(block, Paragraph):
            found.append(block.text)
        elif isinstance(block, Table):
            found += [str(cell) for row in block.rows for cell in row]
        elif isinstance(block, Facts):
            found += [value for _, value in block.pairs]
    return "\n".join(found)


@pytest.mark.parametrize("kind", DOCUMENTS, ids=lambda kind: kind.name)
def test_an_empty_project_gives_a_page_that_says_so(kind, tmp_path):
    empty = ProjectView("Empty", "working state 0", "2026-01-01", "mm", (), Catalogue({}, ""))
    if kind.per_opening:
        with pytest.raises(ValueError, match="one opening"):
            kind.build(empty, None)
        return
    render_pdf(kind.build(empty, None), tmp_path / "empty.pdf")
    assert len(PdfReader(tmp_path / "empty.pdf").pages) >= 1


def test_every_opening_stands_in_the_index_once(view):
    index = next(b for b in blocks(SCHEDULE.build(view, None)) if isinstance(b, Table) and b.title == "Opening index")
    assert [row[0] for row in index.rows] == [opening.mark for opening in view.openings]


def test_openings_under_a_heading_take_identical_hardware(view):
    seen = set()
    for group in headings(view.openings):
        for opening in group.openings:
            taken = [(p.role, p.part, p.quantity) for p in item_lines(opening.fit.parts)]
            assert taken == [(p.role, p.part, p.quantity) for p in group.parts]
            assert opening.given.opening.hand == group.openings[0].given.opening.hand
            assert opening.mark not in seen
            seen.add(opening.mark)
    assert seen == {o.mark for o in view.openings if o.fit is not None and o.fit.status == "fits"}


def test_unresolved_findings_are_listed_not_hidden(view):
    text = words(SCHEDULE.build(view, None))
    for opening in view.openings:
        for finding in opening.findings:
            assert finding.message in text


def test_totals_of_the_pick_list_are_what_its_places_hold(view):
    document = PICK_LIST.build(view, None)
    totals = next(b for b in blocks(document) if isinstance(b, Table) and b.title == "Totals")
    total = {row[1]: row[3] for row in totals.rows if row[0]}
    counted = {}
    ready = {opening.given.opening.id for opening in view.openings if opening.ready}
    for opening in view.openings:
        if opening.ready:
            for part in item_lines(opening.fit.parts):
                counted[part.part] = counted.get(part.part, 0) + part.quantity
                if part.role == "supply":
                    counted["ROP-CB1"] = counted.get("ROP-CB1", 0) + 1
    # And supplies that feed one of them, with what is put up there; 10 % over the runs for their ends.
    wrong = {each.supply_id for each in view.power.findings if each.finding.severity == "error"}
    for result in view.power.supplies:
        supply = result.supply
        if ready & set(result.openings) and supply.id not in wrong:
            put_up = [supply.part, "ROP-CB1", *[supply.battery] * (supply.batteries or 1)]
            # Supplies come bare, and their circuits have fuses of 1 and 2 A.
            put_up += [f"ROP-L{circuit.circuit.limiter_a:g}" for circuit in result.circuits]
            for number in put_up:
                counted[number] = counted.get(number, 0) + 1
            for run in (run for circuit in result.circuits for run in circuit.runs if not run.transfer):
                counted[run.part] = counted.get(run.part, 0) + 1.1 * run.length_m * run.parallel
    counted.pop(None, None)
    # Wire is cut by the metre; of all else whole pieces are picked.
    by_length = {number for number in counted if view.catalogue.get(number).unit == "M"}
    whole = {n: q if n in by_length else math.ceil(round(q, 6)) for n, q in counted.items()}
    assert total == pytest.approx(whole, abs=1e-3)
    places = quantities(view)
    assert sum(line.quantity for lines in places.values() for line in lines.values()) == pytest.approx(
        sum(counted.values())
    )


def test_held_openings_are_not_picked(view):
    picked = {mark for lines in quantities(view).values() for line in lines.values() for mark in line.marks}
    assert picked == {opening.mark for opening in view.openings if opening.ready}


def test_an_opening_with_an_open_error_says_on_its_face_that_it_may_not_be_installed(view):
    good = next(opening for opening in view.openings if opening.ready)
    error = Finding("made-up", "egress", "error", "The door would lock people in.", "common practice", "Do not.")
    stopped = PACKET.build(view, replace(good, findings=(error,)))
    first = next(block for block in blocks(stopped) if isinstance(block, Paragraph))
    assert first.style == "stop"
    assert "DO NOT INSTALL" in first.text
    assert error.message in first.text
    waived = PACKET.build(view, replace(good, findings=(replace(error, waived=True),)))
    assert "DO NOT INSTALL" not in words(waived)


def test_an_unknown_opening_says_what_is_missing(view):
    unknown = next(o for o in view.openings if o.fit is not None and o.fit.status == "to-measure")
    assert unknown.fit.needs[0].label in words(PACKET.build(view, unknown))


@pytest.mark.parametrize(("condition", "caution"), [("rated", "NFPA 80"), ("egress", "one ordinary movement")])
def test_cautions_follow_the_opening(view, condition, caution):
    for opening in view.openings:
        if opening.fit is None or opening.fit.status != "fits":
            continue
        needs = (
            opening.given.opening.rating != "none" if condition == "rated" else opening.given.opening.egress != "none"
        )
        shown = [
            caution
            for block in blocks(PACKET.build(view, opening))
            if isinstance(block, Steps)
            for line in block.lines
            for caution in line.cautions
        ]
        assert any(caution in text for text in shown) == needs


def test_box_contents_are_what_was_fitted(view):
    for opening in view.openings[:60]:
        if opening.fit is None or opening.fit.status != "fits":
            continue
        box = next(b for b in blocks(PACKET.build(view, opening)) if isinstance(b, Table) and b.title == "Box contents")
        assert {row[3] for row in box.rows if row[0]} == {part.part for part in item_lines(opening.fit.parts)}


def test_a_door_has_two_pages_and_one_with_more_to_it_three(view, sample_folder):
    """Three for what a supply feeds, for several lock points, for rated doors; 60 % of what were 831 pages are gone."""
    taken = set()
    found = {}
    for opening in view.openings:
        path = sample_folder / "packets" / f"{safe_file_name(opening.mark, taken)}.pdf"
        found[opening.mark] = len(PdfReader(path).pages)
        supplied = any(at.fit is not None and at.fit.power == "supply" for at in opening.points)
        more = supplied or opening.several or opening.given.opening.rating != "none"
        assert found[opening.mark] <= (3 if more else 2), opening.mark
    assert sum(found.values()) <= 0.4 * 831


# One of each lock form and of what feeds it; the gate stands outside, A-02 has a narrow stile.
@pytest.mark.parametrize("mark", ["M004", "A-02", "B/1", "GATE 1", "CAB-1", "E1", "LIFT-1", "M116"])
def test_nothing_of_a_packet_is_lost_on_its_pages(view, sample_folder, mark):
    opening = next(each for each in view.openings if each.mark == mark)
    path = sample_folder / "packets" / f"{safe_file_name(mark, set())}.pdf"
    page = "".join("".join(each.extract_text() for each in PdfReader(path).pages).split())
    assert min(sizes(path)) >= 9.0
    found = 0
    for block in blocks(PACKET.build(view, opening)):
        said = []
        if isinstance(block, Steps):
            said = [text for line in block.lines for text in (*line.cautions, line.text, *line.readings)]
        elif isinstance(block, Table):
            said = [str(cell) for row in block.rows for cell in row if cell not in (None, "", TICK)]
        elif isinstance(block, Paragraph):
            said = [block.text]
        elif isinstance(block, Facts):
            said = [f"{label} {value}" for label, value in block.pairs]
        for text in said:
            found += 1
            # Lines of another column may stand between: each word is looked for.
            assert all(word in page for word in text.replace(", ", " ").split()), text
    assert found > (60 if opening.ready else 10)


def test_pages_carry_project_mark_and_page_of_pages(sample_folder):
    reader = PdfReader(sample_folder / "packets" / "M004.pdf")
    text = " ".join(reader.pages[1].extract_text().split())
    for word in ("Quayside Works", "M004", f"Page 2 of {len(reader.pages)}", "working state"):
        assert word in text


def test_no_packet_asks_the_person_at_the_door_to_type_a_command(view):
    """What the office has to do is said as that; who stands at a door has no command line."""
    asked = [opening for opening in view.openings if any("hwsched " in f.cure for f in opening.findings)]
    wrong = Finding("made-up", "documents", "warning", "Old.", "drawn", "See it: hwsched opening fit PROJECT --all.")
    first = replace(view.openings[0], findings=(*view.openings[0].findings, wrong))
    for opening in (*asked, first):
        said = "\n".join(texts(PACKET.build(view, opening)))
        assert not re.search(r"hwsched [a-z]", said), opening.mark
    assert any("The office sees to it." in text for text in texts(PACKET.build(view, first)))
    stopped = replace(first, findings=(replace(wrong, severity="error"),))
    assert not re.search(r"hwsched [a-z]", "\n".join(texts(PACKET.build(view, stopped))))
