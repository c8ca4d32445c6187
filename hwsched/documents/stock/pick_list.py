"""The warehouse's pick list: by building and level, then by part, with what is in each box, ticks and totals."""

from collections import defaultdict
from dataclasses import dataclass, field
from math import ceil
from typing import Final

from hwsched.documents import words
from hwsched.documents.release.schedule import ITEM_ORDER
from hwsched.documents.stock.box_contents import contents
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.render.blocks import TICK, Block, Cell, Column, Document, Facts, Heading, Paragraph, Section, Table

Station = tuple[str, str]
_MEASURES: Final = frozenset({"m", "ft", "in", "mm", "cm", "yd", "l", "ml", "kg", "g", "lb"})
"""Order units of which any part can be cut or poured off."""


@dataclass
class _Line:
    """One part at one place while quantities are added up."""

    role: str
    quantity: float = 0.0
    marks: list[str] = field(default_factory=list)


def quantities(openings: tuple[OpeningView, ...]) -> dict[Station, dict[str, _Line]]:
    """Add up the parts of openings that may go out, by place and catalogue number; tools are left out."""
    places: dict[Station, dict[str, _Line]] = {}
    for view in openings:
        # An opening that is not ready is held back whole: a box that lacks one part costs the visit.
        if not view.ready or view.fit is None:
            continue
        opening = view.given.opening
        lines = places.setdefault((opening.building or "", opening.level or ""), {})
        for part in view.fit.parts:
            if part.role not in ITEM_ORDER:
                continue
            line = lines.setdefault(part.part, _Line(part.role))
            line.quantity += part.quantity
            # A part in two roles is one line, and its opening is named once.
            if view.mark not in line.marks:
                line.marks.append(view.mark)
    return places


def whole(quantity: float, unit: str) -> int | float:
    """Return how much of a part is picked: whole pieces, but any length or weight.

    Examples
    --------
    >>> whole(4.75, "EA"), whole(4.75, "M"), whole(1.0000000001, "EA")
    (5, 4.75, 1)
    """
    if unit.casefold() in _MEASURES:
        return words.quantity(quantity)
    return ceil(round(quantity, 6))


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the pick list of a whole project."""
    places = quantities(project.openings)
    ready = [view for view in project.openings if view.ready]
    held = [view for view in project.openings if not view.ready]
    totals: dict[str, _Line] = defaultdict(lambda: _Line(""))
    front: list[Block] = [
        Heading("What goes out"),
        Facts(
            (
                ("Openings to pick", str(len(ready))),
                ("Openings held back", str(len(held))),
                ("Places", str(len(places))),
                ("Different parts", str(len({number for lines in places.values() for number in lines}))),
            )
        ),
        Paragraph(
            "Tick a line when its quantity lies in the box. Lines under a part marked “contains” are in that part's "
            "own box: check them, do not pick them again. What several openings use up together, such as a bottle, is "
            "picked whole for each place; the totals say how many whole ones are used up in all."
        ),
    ]
    sections = []
    # In the order of the openings, level by level as one walks.
    for place in places:
        lines = places[place]
        for number, line in lines.items():
            total = totals[number]
            total.role = line.role
            total.quantity += line.quantity
            total.marks += line.marks
        openings = sum((v.given.opening.building or "", v.given.opening.level or "") == place for v in ready)
        title = words.place(*place)
        sections.append(
            Section(
                (
                    Heading(title),
                    Paragraph(f"{openings} openings", "small"),
                    _table(project, lines, f"Pick {title}", marks=True),
                )
            )
        )
    if totals:
        front += [Heading("Totals of the project", 2), _table(project, dict(totals), "Totals", marks=False)]
    else:
        front.append(Paragraph("Nothing can go out: no opening fits without an open error.", "caution"))
    if held:
        front += [Heading("Held back", 2), _held_back(held)]
    return Document(
        "Pick list", project.title, project.revision, project.date, (Section(tuple(front)), *sections),
        subtitle=f"{len(ready)} of {len(project.openings)} openings",
    )  # fmt: skip


def _table(project: ProjectView, lines: dict[str, _Line], title: str, *, marks: bool) -> Table:
    rows: list[tuple[Cell, ...]] = []
    strong = set()
    ordered = sorted(lines.items(), key=lambda entry: (ITEM_ORDER.index(entry[1].role), entry[0]))
    for number, line in ordered:
        part = project.catalogue.get(number)
        strong.add(len(rows))
        what = part.description if part else "not in the catalogue"
        unit = part.unit if part else ""
        count = whole(line.quantity, unit)
        if count != words.quantity(line.quantity):
            what += f" ({words.quantity(line.quantity):g} used up)"
        row: tuple[Cell, ...] = (TICK, number, what, count, unit)
        rows.append((*row, ", ".join(line.marks)) if marks else row)
        for held in contents(project.catalogue, number, count):
            row = ("", held.number, held.text, held.shown, held.unit)
            rows.append((*row, "") if marks else row)
    columns = [
        Column("", 0.3, "centre"), Column("Part", 1.5), Column("Description", 3.2), Column("Qty", 0.6, "right"),
        Column("Unit", 0.5),
    ]  # fmt: skip
    if marks:
        columns.append(Column("For openings", 3.0))
    return Table(tuple(columns), tuple(rows), title=title, strong_rows=frozenset(strong))


def _held_back(held: list[OpeningView]) -> Table:
    rows = []
    for view in held:
        if view.blocking:
            why = "; ".join(f"{finding.rule}: {finding.message}" for finding in view.blocking[:3])
        elif view.fit is None:
            why = f"no fit counts: {view.unfitted}"
        elif view.fit.needs:
            why = "unknown: needs " + ", ".join(need.label for need in view.fit.needs)
        else:
            why = "no combination of parts fits"
        rows.append((view.mark, words.place(view.given.opening.building, view.given.opening.level), why))
    return Table((Column("Mark", 1.0), Column("Place", 1.6), Column("Why", 5.0)), tuple(rows), title="Held back")


PICK_LIST = DocumentKind("pick-list", "Pick list", ("pdf", "xlsx"), False, build)
