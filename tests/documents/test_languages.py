"""A document in the stretched English: its headings, labels and sentences come through the catalogue.

What is not English there is data: marks, names, parts, messages and cures of rules, words of the drawings.
"""

from dataclasses import replace

import pytest
from openpyxl import load_workbook

from hwsched.documents.documents import DOCUMENTS
from hwsched.documents.stock.pick_list import PICK_LIST
from hwsched.language import STRETCHED, in_language
from hwsched.operations.release.issued_documents import issue
from hwsched.render.blocks import Blanks, Facts, Heading, Paragraph, Ruled, SignOff, Table
from tests.language.plainness import longest_first, unsaid


def texts_of(block):
    """What a block says in words of the program: no cells, no steps, no drawings."""
    if isinstance(block, (Heading, Paragraph)):
        yield block.text
    elif isinstance(block, Table):
        yield block.title
        yield from (column.title for column in block.columns)
    elif isinstance(block, Facts):
        yield from (label for label, _value in block.pairs)
    elif isinstance(block, SignOff):
        yield from block.roles
    elif isinstance(block, Blanks):
        yield from (blank.label for blank in block.blanks)
        yield from (word for blank in block.blanks for word in blank.words)
    elif isinstance(block, Ruled):
        yield from (column.title for column in block.columns)


@pytest.fixture(scope="module")
def data(quay):
    # Units, and how an attribute is called in the catalogue's sheets.
    found = {quay.title, quay.revision, quay.date, ", in", "body_diameter_mm"}
    for each in quay.openings:
        opening = each.given.opening
        found |= {opening.mark, opening.building, opening.level, opening.room_from, opening.room_to, each.set_name}
        found |= {text for f in each.findings for text in (f.message, f.cure, f.basis, f.about, f.rule)}
        for at in each.points:
            found |= {hole.name for hole in at.fit.holes} if at.fit is not None else set()
        for number, part in each.given.catalogue.parts.items():
            found |= {number, part.description}
    return longest_first(found)


@pytest.mark.parametrize("kind", DOCUMENTS, ids=lambda kind: kind.name)
def test_a_document_comes_through_the_catalogue(quay, data, kind):
    openings = quay.openings[:6] if kind.per_opening else (None,)
    found = {}
    with in_language(STRETCHED):
        for opening in openings:
            for section in kind.build(quay, opening).sections:
                for block in section.blocks:
                    for text in texts_of(block):
                        if left := unsaid(text, data):
                            found[left] = text
    assert not found, "\n".join(f"{left!r} in {text!r}" for left, text in found.items())


def printed(view, folder):
    """Return what stands in the pick list's workbook."""
    (file,) = issue(view, PICK_LIST, folder, ["xlsx"])
    book = load_workbook(file, read_only=True)
    try:
        return [str(cell) for sheet in book for row in sheet.iter_rows(values_only=True) for cell in row if cell]
    finally:
        book.close()


def test_a_project_speaks_its_office_s_language_whoever_prints_it(quay, tmp_path):
    office = replace(quay.office, language=STRETCHED)
    assert any(text.startswith("[Pîîçk lîîšţ") for text in printed(replace(quay, office=office), tmp_path / "other"))
    with in_language(STRETCHED):
        found = printed(quay, tmp_path / "english")
    assert "Pick list" in " ".join(found)
    assert not any(text.startswith("[Pîîçk") for text in found)
