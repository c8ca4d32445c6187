"""The schedule in horizontal form: a row an opening, its items across in columns by what they do."""

from typing import Final

from hwsched.documents import words
from hwsched.documents.release.schedule import headings, item_lines
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.language import phrase, to_phrase
from hwsched.render.blocks import Block, Cell, Column, Document, Heading, Paragraph, Section, Table
from hwsched.values import Catalogue, FitPart
from hwsched.values.amounts import little_of, plain_amount

_ACROSS: Final = (
    (to_phrase("Cylinder, lock, reader"), ("cylinder", "lock", "reader")),
    (to_phrase("Cam, tailpiece, collar, rings"), ("cam", "tailpiece", "collar", "ring")),
    (to_phrase("Strike"), ("strike",)),
    (to_phrase("Unit and lead"), ("unit", "lead-extension")),
    (to_phrase("Cells and supply"), ("battery", "coin-cell", "supply", "standby-battery")),
    (to_phrase("Transfer and wire"), ("power-transfer", "wire", "raceway")),
    (to_phrase("Fixings and sundries"), ("mounting", "fastener", "consumable", "credential")),
)
"""Columns of items, in the trade's order: secure, control, electrical, then what they are mounted with."""


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build a row for every opening."""
    groups = headings(project.openings, project.length_style)
    heading_of = {view.given.opening.id: group.number for group in groups for view in group.openings}
    rows = tuple(row for view in project.openings for row in _rows(project, view, heading_of))
    columns = (
        Column(phrase("Mark"), 1.0),
        Column(phrase("Heading"), 0.7),
        Column(phrase("Location"), 1.8),
        Column(phrase("Leaf size"), 1.2),
        Column(phrase("Hand"), 0.5),
        Column(phrase("Rating"), 0.8),
        *(Column(phrase(title), 1.9) for title, _ in _ACROSS),
        Column(phrase("Status"), 0.8),
    )
    blocks: list[Block] = [Heading(phrase("Schedule, horizontal form"))]
    if rows:
        blocks.append(Table(columns, rows, title=phrase("Schedule, horizontal form")))
    else:
        blocks.append(Paragraph(phrase("No opening.")))
    blocks.append(Paragraph(phrase("Quantity × catalogue number; a quantity of one is not written."), "small"))
    return Document(
        phrase("Door hardware schedule"),
        project.title,
        project.revision,
        project.date,
        (Section(tuple(blocks), landscape=True, dense=True),),
        subtitle=phrase("horizontal form"),
    )


def _rows(project: ProjectView, view: OpeningView, heading_of: dict[str, str]) -> list[tuple[Cell, ...]]:
    opening = view.given.opening
    status = words.status(view.fit) + (phrase(" · held") if view.blocking else "")
    found: list[tuple[Cell, ...]] = []
    for at in view.points:
        fits = at.fit is not None and at.fit.status == "fits"
        parts = item_lines(at.fit.parts) if at.fit is not None and fits else ()
        name = f"{view.mark} {at.given.point.name}" if view.several else view.mark
        cells = (
            ", ".join(_said(project.catalogue, part) for part in parts if part.role in roles) for _, roles in _ACROSS
        )
        found.append(
            (
                name,
                heading_of.get(opening.id, "-"),
                words.location(opening.room_from, opening.room_to),
                words.size(view.lock_leaf, project.length_style),
                opening.hand or phrase(words.UNKNOWN),
                words.opening_word("rating", opening.rating),
                *cells,
                status,
            )
        )
    return found


def _said(catalogue: Catalogue, part: FitPart) -> str:
    little = little_of(catalogue.get(part.part), part.quantity)
    if little:
        return f"{part.part}: {little}"
    return part.part if part.quantity == 1 else f"{plain_amount(part.quantity)} × {part.part}"


SCHEDULE_ACROSS = DocumentKind(
    "schedule-across", to_phrase("Door hardware schedule, horizontal form"), ("pdf", "xlsx"), False, build
)
