"""A document in the office's dress: where notes, own pages and sections stand, what is called by the office's words."""

from dataclasses import replace

import pytest

from hwsched.documents.office_pages import dressed
from hwsched.render.blocks import (
    Bullets,
    Column,
    Document,
    Facts,
    Heading,
    Letterhead,
    Marked,
    Paragraph,
    Picture,
    Ruled,
    Section,
    SignOff,
    Table,
)
from hwsched.values.office import Office, OwnPage


def section(*headings, mark=""):
    return Section(tuple(Heading(text) for text in headings), mark=mark)


LIST = Document("Schedule", "Yard", "B", "2031-05-01", (section("Summary"), section("Index"), section("Findings", "A")))
NOTED = Heading("Notes", 2), Bullets(("Mind it.",))


def heads(document):
    return [[block.text for block in each.blocks if isinstance(block, Heading)] for each in document.sections]


def test_nothing_declared_changes_nothing():
    assert dressed(LIST, "schedule", Office()) == LIST
    # What is declared for another document is none of this one's.
    assert dressed(LIST, "schedule", Office(notes={"pick-list": ("Mind it.",)}, order={"pick-list": ("A",)})) == LIST


def test_notes_end_the_first_section_of_a_list():
    for notes in ({"all": ("Mind it.",)}, {"schedule": ("Mind it.",)}):
        first, *others = dressed(LIST, "schedule", Office(notes=notes)).sections
        assert first.blocks == (*LIST.sections[0].blocks, *NOTED)
        assert others == list(LIST.sections[1:])


def test_at_the_door_notes_end_the_last_sheet_of_each_opening():
    """A packet of two sections and one of one: each is carried to its door alone."""
    pages = (section("a", mark="1"), section("b", mark="1"), section("c", mark="2"))
    found = dressed(replace(LIST, sections=pages), "packets", Office(notes={"all": ("Mind it.",)})).sections
    assert [each.blocks[1:] for each in found] == [(), NOTED, NOTED]


def test_sections_that_are_named_come_first_in_the_office_s_order():
    """By any of its headings; those that are not named keep their order behind."""
    assert heads(dressed(LIST, "schedule", Office(order={"schedule": ("A", "Index")}))) == [
        ["Findings", "A"], ["Index"], ["Summary"],
    ]  # fmt: skip
    assert heads(dressed(LIST, "schedule", Office(order={"schedule": ("Index",)}))) == [
        ["Index"], ["Summary"], ["Findings", "A"],
    ]  # fmt: skip


@pytest.mark.parametrize(("documents", "has"), [(("schedule",), True), (("all",), True), (("packets",), False)])
def test_own_pages_stand_before_and_after(documents, has):
    before = OwnPage("before", documents, "Terms", ("Carriage is paid.", "So are nails."), "plan.png")
    bare = OwnPage("after", documents, "", picture="lost.png")
    office = Office(pages=(bare, before), pictures={"plan.png": b"a picture"})
    found = dressed(LIST, "schedule", office)
    if not has:
        assert found == LIST
        return
    first, *middle, last = found.sections
    assert first.blocks == (
        Heading("Terms"), Paragraph("Carriage is paid."), Paragraph("So are nails."), Picture(b"a picture"),
    )  # fmt: skip
    assert tuple(middle) == LIST.sections
    assert last.blocks == ()


def test_the_office_s_words_stand_in_headings_labels_columns_and_roles_and_not_in_what_is_said():
    words = {"Mark": "Tag", "Holes": "Bores", "Schedule": "Door list", "Installer": "Fitter"}
    columns = Column("Mark", 2.0), Column("Size", 1.0)
    called = Column("Tag", 2.0), Column("Size", 1.0)
    blocks = (
        Heading("Holes", 2), Table(columns, (("Mark", 1),), title="Holes"), Ruled(columns, (("Mark", ""),)),
        Facts((("Mark", "Mark"), ("Size", "1"))), SignOff(("Installer", "Owner")), Paragraph("Mark"),
        Marked(Heading("Mark"), frozenset({0}), "B"),
    )  # fmt: skip
    found = dressed(replace(LIST, sections=(Section(blocks),)), "schedule", Office(words=words))
    assert found.title == "Door list"
    assert found.sections[0].blocks == (
        Heading("Bores", 2), Table(called, (("Mark", 1),), title="Bores"), Ruled(called, (("Mark", ""),)),
        Facts((("Tag", "Mark"), ("Size", "1"))), SignOff(("Fitter", "Owner")), Paragraph("Mark"),
        Marked(Heading("Tag"), frozenset({0}), "B"),
    )  # fmt: skip


def test_the_letterhead_is_what_is_declared_of_it():
    logo = {"logo.png": b"a picture"}
    for office, head in (
        (Office(letterhead=("Quay",)), Letterhead(("Quay",))),
        (Office(logo="logo.png", logo_mm=9.0, pictures=logo), Letterhead((), b"a picture", 9.0)),
        (Office(logo="logo.png"), None),
        (Office(language="pt-BR"), None),
    ):
        found = dressed(LIST, "schedule", office)
        assert found == replace(LIST, letterhead=head, language=office.language)
