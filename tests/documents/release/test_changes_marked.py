"""What is otherwise than in an earlier document is marked, and nothing else."""

from dataclasses import replace

import pytest
from pypdf import PdfReader

from hwsched.documents.release.changes_marked import marked_since
from hwsched.documents.release.packet import PACKET
from hwsched.drawings.drawing import Drawing
from hwsched.render.blocks import (
    Bullets,
    Document,
    Drawings,
    Facts,
    Marked,
    Paragraph,
    Section,
    StepLine,
    Steps,
    Table,
)
from hwsched.render.pdf import render_pdf
from tests.render.pages_read import MM


def packet(quay, view):
    return PACKET.build(quay, view)


def with_holes(view, *holes):
    fit = replace(view.fit, holes=holes)
    return replace(view, fit=fit, points=(replace(view.points[0], fit=fit),))


def marks(document):
    return [block for section in document.sections for block in section.blocks if isinstance(block, Marked)]


def test_the_same_document_has_no_mark(quay, of_mark):
    now = packet(quay, of_mark("WOOD"))
    assert marked_since(now, packet(quay, of_mark("WOOD")), "B") == now


def test_only_the_hole_that_is_otherwise_is_marked(quay, of_mark):
    wood = of_mark("WOOD")
    first, second = wood.fit.holes
    deeper = with_holes(wood, first, replace(second, depth_mm=second.depth_mm + 3.175))
    found = marks(marked_since(packet(quay, deeper), packet(quay, wood), "B"))
    tables = [each for each in found if isinstance(each.block, Table)]
    assert [(each.block.title, each.rows, each.letter) for each in tables] == [("Holes", frozenset({1}), "B")]
    assert not any(isinstance(each.block, Facts) for each in found)


def test_a_step_that_only_has_another_number_is_not_marked(quay, of_mark):
    """Without holes nothing is marked, drilled and cleaned: those steps go, the others stay and are not new."""
    wood = of_mark("WOOD")
    now, then = packet(quay, with_holes(wood)), packet(quay, wood)
    before = {line.text for s in then.sections for b in s.blocks if isinstance(b, Steps) for line in b.lines}
    for each in marks(marked_since(now, then, "B")):
        if isinstance(each.block, Steps):
            assert all(each.block.lines[number].text not in before for number in each.rows)


def test_all_of_an_opening_that_was_not_there_is_marked(quay, of_mark):
    now = packet(quay, of_mark("WOOD"))
    found = marks(marked_since(now, None, "C"))
    whole = {len(each.block.rows) == len(each.rows) for each in found if isinstance(each.block, Table)}
    assert whole == {True}


def told(*blocks):
    return Document("Packet", "Yard", "A", "2031-05-01", (Section(blocks),))


@pytest.mark.parametrize(
    ("then", "now", "rows"),
    [
        # A line of bullets, a fact, a step and a paragraph each by what it says; a table's row under its title.
        (Bullets(("one", "two")), Bullets(("two", "three")), {1}),
        (Facts((("Leaf", "wood"), ("Hand", "LH"))), Facts((("Leaf", "wood"), ("Hand", "RH"))), {1}),
        (Steps((StepLine(1, "door", "a"),)), Steps((StepLine(1, "door", "b"), StepLine(2, "door", "a"))), {0}),
        (Steps((StepLine(1, "door", "a"),)), Steps((StepLine(1, "door", "a", ("mind it",)),)), {0}),
        (Steps((StepLine(1, "door", "a"),)), Steps((StepLine(1, "door", "a", readings=("volts",)),)), {0}),
        (Steps((StepLine(1, "door", "a"),)), Steps((StepLine(1, "wall", "a"),)), {0}),
        (Paragraph("a"), Paragraph("b"), {0}),
        (Drawings((Drawing("Inside", (), (0, 0, 1, 1)),)), Drawings((Drawing("Inside", (), (0, 0, 1, 2)),)), {0}),
        (Table((), (("a", 1), ("b", 2)), title="Holes"), Table((), (("b", 2), ("a", 3)), title="Holes"), {1}),
        (Table((), (("a", 1),), title="Holes"), Table((), (("a", 1),), title="Box contents"), {0}),
    ],
    ids=lambda each: type(each).__name__ if not isinstance(each, set) else "",
)
def test_what_was_not_said_before_is_marked_in_each_kind_of_block(then, now, rows):
    ((found,),) = [section.blocks for section in marked_since(told(now), told(then), "B").sections]
    assert found == Marked(now, frozenset(rows), "B")
    ((same,),) = [section.blocks for section in marked_since(told(now), told(now), "B").sections]
    assert same == now


@pytest.mark.parametrize("at_door", [False, True])
def test_a_bar_and_the_letter_stand_in_the_margin_beside_what_is_marked(tmp_path, at_door):
    kept, new = Paragraph("as it was"), Paragraph("otherwise now")
    then = Document("Packet", "Yard", "A", "2031-05-01", (Section((kept,), "1", at_door=at_door),))
    now = replace(then, sections=(Section((kept, new, Facts((("Leaf", "wood"),))), "1", at_door=at_door),))
    render_pdf(marked_since(now, then, "B"), tmp_path / "a.pdf")
    found = {}

    def take(text, matrix, text_matrix, _font, _size):
        if text.strip():
            found.setdefault(text.strip(), []).append(
                ((text_matrix[4] + matrix[4]) * MM, (text_matrix[5] + matrix[5]) * MM)
            )

    PdfReader(tmp_path / "a.pdf").pages[0].extract_text(visitor_text=take)
    (unmarked,), (marked,) = found["as it was"], found["otherwise now"]
    letters = found["B"]
    assert any(abs(y - marked[1]) < 1.5 and x < marked[0] for x, y in letters)
    assert not any(abs(y - unmarked[1]) < 1.5 for _, y in letters)
