"""A document as the office wants it: words of its own, notes, order of sections, pages before and after, letterhead."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from hwsched.language import phrase, to_phrase
from hwsched.render.blocks import (
    Block,
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
from hwsched.values.office import ALL, AT_DOOR, Office, OwnPage

NOTES: Final = to_phrase("Notes")


def dressed(document: Document, name: str, office: Office) -> Document:
    """Return a document as the office declared it; as it is where nothing is declared.

    Parameters
    ----------
    document : Document
        As it was built.
    name : str
        Of the document, as in `hwsched.documents.LINES`.
    office : Office
        With the contents of its pictures.
    """
    if office == Office():
        return document
    notes, order = office.notes_of(name), office.order.get(name, ())
    before, after = (_pages(office, name, place) for place in ("before", "after"))
    if notes or order or before or after or office.words:
        sections = _ordered(document.sections, order)
        if notes:
            sections = _noted(sections, notes, at_door=name in AT_DOOR)
        if office.words:
            sections = [_renamed(section, office.words) for section in sections]
        document = replace(document, sections=(*before, *sections, *after))
    logo = office.pictures.get(office.logo, b"")
    head = Letterhead(office.letterhead, logo, office.logo_mm) if office.letterhead or logo else None
    return replace(
        document,
        title=office.words.get(document.title, document.title),
        letterhead=head,
        language=office.language,
    )


def _pages(office: Office, name: str, place: str) -> list[Section]:
    return [
        _page(office, page)
        for page in office.pages
        if page.place == place and (name in page.documents or ALL in page.documents)
    ]


def _page(office: Office, page: OwnPage) -> Section:
    blocks: list[Block] = [Heading(page.title)] if page.title else []
    blocks += [Paragraph(text) for text in page.text]
    content = office.pictures.get(page.picture, b"")
    return Section((*blocks, *([Picture(content)] if content else [])))


def _ordered(sections: Sequence[Section], order: Sequence[str]) -> list[Section]:
    """Put the sections with a heading that is named first, in their order; the others keep theirs."""
    places = {heading: place for place, heading in enumerate(order)}

    def place(section: Section) -> int:
        headings = (block.text for block in section.blocks if isinstance(block, Heading))
        return min((places[text] for text in headings if text in places), default=len(places))

    return sorted(sections, key=place)


def _noted(sections: list[Section], notes: tuple[str, ...], *, at_door: bool) -> list[Section]:
    """Put notes at the end of the first section; at the end of each where every sheet is taken to a door alone."""
    said: tuple[Block, ...] = (Heading(phrase(NOTES), 2), Bullets(notes))
    last: dict[str, int] = {section.mark: number for number, section in enumerate(sections)}
    return [
        replace(section, blocks=(*section.blocks, *said))
        if (number == last[section.mark] if at_door else number == 0)
        else section
        for number, section in enumerate(sections)
    ]


def _renamed(section: Section, words: Mapping[str, str]) -> Section:
    return replace(section, blocks=tuple(_named(block, words) for block in section.blocks))


def _named(block: Block, words: Mapping[str, str]) -> Block:
    """Return a block whose headings, labels and columns are called as the office calls them."""
    if isinstance(block, Marked):
        return replace(block, block=_named(block.block, words))
    if isinstance(block, Heading):
        return replace(block, text=words.get(block.text, block.text))
    if isinstance(block, Table):
        return replace(block, title=words.get(block.title, block.title), columns=_columns(block.columns, words))
    if isinstance(block, Ruled):
        return replace(block, columns=_columns(block.columns, words))
    if isinstance(block, Facts):
        return replace(block, pairs=tuple((words.get(label, label), value) for label, value in block.pairs))
    if isinstance(block, SignOff):
        return replace(block, roles=tuple(words.get(role, role) for role in block.roles))
    return block


def _columns(columns: tuple[Column, ...], words: Mapping[str, str]) -> tuple[Column, ...]:
    return tuple(replace(column, title=words.get(column.title, column.title)) for column in columns)
