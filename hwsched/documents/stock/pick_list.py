"""The warehouse's pick list: by building and level, then by part, with what is in each box, ticks and totals."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Final

from hwsched.documents import words
from hwsched.documents.power.power_words import run_lengths
from hwsched.documents.release.schedule import ITEM_ORDER
from hwsched.documents.stock.box_contents import contents
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.fitting.order_units import held_by
from hwsched.kept_sentences import GATE, kept_phrase
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.render.blocks import TICK, Block, Cell, Column, Document, Facts, Heading, Paragraph, Section, Table
from hwsched.rules.saying import message_of
from hwsched.values.amounts import plain_amount, whole
from hwsched.wiring.goods import ROLES, Goods, LicensedWork, laid

Station = tuple[str, str]
_PIECE: Final = "EA"


_OF_THE_BILL: Final = frozenset(ROLES)
"""Roles that are counted in the bill of what is laid, and not opening by opening."""
_MANY: Final = 40
"""Of more openings that are held back the list is set closely."""
_ORDER: Final = (*ITEM_ORDER, *(role for role in ROLES if role not in ITEM_ORDER))


@dataclass
class _Line:
    """One part at one place while quantities are added up."""

    role: str
    quantity: float = 0.0
    marks: list[str] = field(default_factory=list)
    supplies: list[str] = field(default_factory=list)
    """Supplies with which it is put up, by name."""
    told: list[str] = field(default_factory=list)
    """How it is cut, where it is."""


def quantities(project: ProjectView) -> dict[Station, dict[str, _Line]]:
    """Add up what goes out, by place and catalogue number; tools are left out.

    Supplies and what is put up with them stand where they are put up; wire and raceway, which are cut for a building,
    under the building alone.
    """
    places: dict[Station, dict[str, _Line]] = {}

    def add(place: Station, role: str, part: str, quantity: float, marks: Iterable[str]) -> _Line:
        line = places.setdefault(place, {}).setdefault(part, _Line(role))
        line.quantity += quantity
        # A part in two roles is one line, and its opening is named once.
        line.marks += [mark for mark in marks if mark not in line.marks]
        return line

    for view in project.openings:
        # An opening that is not ready is held back whole: a box that lacks one part costs the visit.
        if not view.ready or view.fit is None:
            continue
        opening = view.given.opening
        place = (opening.building or "", opening.level or "")
        places.setdefault(place, {})
        for part in view.fit.parts:
            if part.role in ITEM_ORDER and part.role not in _OF_THE_BILL:
                add(place, part.role, part.part, part.quantity, (view.mark,))
    names = {each.supply.id: each.supply.name for each in project.power.supplies}
    marks = project.marks
    for goods in project.going.goods:
        if goods.part:
            at, own = (goods.building, goods.level), () if goods.supply_id else goods.opening_ids
            # A supply may feed openings that are not asked for here.
            here = [marks[each] for each in own if each in marks]
            line = add(at, goods.role, goods.part, float(goods.quantity), here)
            if goods.supply_id and names[goods.supply_id] not in line.supplies:
                line.supplies.append(names[goods.supply_id])
            if goods.line is not None:
                line.told.append(run_lengths(goods.line, project.length_style))
    # Building by building in the order of the openings, levels as they come.
    order = list(dict.fromkeys(building for building, _ in places))
    return dict(sorted(places.items(), key=lambda each: order.index(each[0][0])))


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the pick list of a whole project."""
    places = quantities(project)
    ready = [view for view in project.openings if view.ready]
    held = [view for view in project.openings if not view.ready]
    totals: dict[str, _Line] = defaultdict(lambda: _Line(""))
    front: list[Block] = [
        Heading(phrase("What goes out")),
        Facts(
            (
                (phrase("Openings to pick"), str(len(ready))),
                (phrase("Openings held back"), str(len(held))),
                (phrase("Places"), str(len(places))),
                (phrase("Different parts"), str(len({number for lines in places.values() for number in lines}))),
            )
        ),
        Paragraph(
            phrase(
                "Tick a line when its quantity lies in the box. Lines under a part marked “contains” are in "
                "that part's own box: check them, do not pick them again. What several openings use up "
                "together, such as a bottle, is picked whole for each place; the totals say how many whole "
                "ones are used up in all."
            )
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
            total.told += [f"{place[0]}: {each}" if place[0] else each for each in line.told]
        openings = sum((v.given.opening.building or "", v.given.opening.level or "") == place for v in ready)
        title = words.place(*place)
        sections.append(
            Section(
                (
                    Heading(title),
                    Paragraph(
                        phrase_of_count("{openings} opening", "{openings} openings", openings, openings=openings)
                        if openings
                        else phrase("For the building, and for its supplies"),
                        "small",
                    ),
                    _table(project, lines, phrase("Pick {title}", title=title), marks=True),
                )
            )
        )
    if totals:
        front += [
            Heading(phrase("Totals of the project"), 2),
            _table(project, dict(totals), phrase("Totals"), marks=False),
        ]
    else:
        front.append(Paragraph(phrase("Nothing can go out: no opening fits without an open error."), "caution"))
    missing = [each for each in project.going.goods if each.needs]
    if missing:
        front += [Heading(phrase("Not to be picked yet"), 2), _missing(missing)]
    if project.going.licensed:
        front += [Heading(phrase("Not ours to bring"), 2), _licensed(project.going.licensed)]
    if held:
        front += [Heading(phrase("Held back"), 2), _held_back(held)]
    held_supplies = _held_supplies(project)
    if held_supplies:
        front += [Heading(phrase("Supplies held back"), 2), _held_table(held_supplies)]
    return Document(
        phrase("Pick list"),
        project.title,
        project.revision,
        project.date,
        (Section(tuple(front), dense=len(held) > _MANY), *sections),
        subtitle=phrase("{count} of {count_2} openings", count=len(ready), count_2=len(project.openings)),
    )


def _table(project: ProjectView, lines: dict[str, _Line], title: str, *, marks: bool) -> Table:
    rows: list[tuple[Cell, ...]] = []
    strong = set()
    ordered = sorted(lines.items(), key=lambda entry: (_ORDER.index(entry[1].role), entry[0]))
    for number, line in ordered:
        part = project.catalogue.get(number)
        strong.add(len(rows))
        what = part.description if part else phrase("not in the catalogue")
        unit = part.unit if part else ""
        held = held_by(part) if part is not None and not line.told else None
        if held is not None and held > 1:
            # Counted by the piece: as many boxes would be many times too much.
            what, unit = phrase("{what} ({unit} of {held:g})", what=what, unit=unit, held=held), _PIECE
        count = whole(line.quantity, unit)
        if count != plain_amount(line.quantity):
            what += phrase(" ({quantity:g} used up)", quantity=plain_amount(line.quantity))
        if line.told:
            what += f": {'; '.join(line.told)}"
        row: tuple[Cell, ...] = (TICK, number, what, count, unit)
        rows.append((*row, ", ".join((*line.supplies, *line.marks))) if marks else row)
        for inside in contents(project.catalogue, number, count):
            row = ("", inside.number, inside.text, inside.shown, inside.unit)
            rows.append((*row, "") if marks else row)
    columns = [
        Column("", 0.3, "centre"),
        Column(phrase("Part"), 1.5),
        Column(phrase("Description"), 3.2),
        Column(phrase("Qty"), 0.6, "right"),
        Column(phrase("Unit"), 0.5),
    ]
    if marks:
        columns.append(Column(phrase("For openings"), 3.0))
    return Table(tuple(columns), tuple(rows), title=title, strong_rows=frozenset(strong))


def _held_back(held: list[OpeningView]) -> Table:
    marks: dict[tuple[str, str], list[str]] = {}
    for view in held:
        if view.blocking:
            why = "; ".join(message_of(finding) for finding in view.blocking[:3])
        elif view.fit is None:
            why = phrase("no fit counts: {unfitted}", unfitted=view.unfitted)
        elif view.fit.needs:
            why = phrase("unknown: needs ") + ", ".join(need.label for need in view.fit.needs)
        elif view.fit.status == "fits":
            # It fits: a person has to decide something first, or what feeds it is in error or not proved.
            why = "; ".join(kept_phrase(each, GATE) for each in view.held)
        else:
            why = phrase("no combination of parts fits")
        place = words.place(view.given.opening.building, view.given.opening.level)
        marks.setdefault((place, why), []).append(view.mark)
    # What is held for the same reason at the same place is one line: of openings alike there are hundreds.
    rows = tuple((", ".join(of), place, why) for (place, why), of in marks.items())
    return Table(
        (Column(phrase("Mark"), 2.0), Column(phrase("Place"), 1.4), Column(phrase("Why"), 4.2)),
        rows,
        title=phrase("Held back"),
    )


def _missing(goods: list[Goods]) -> Table:
    rows = tuple(
        (words.place(each.building, each.level), ROLES[each.role], each.text, words.needed(each.needs))
        for each in goods
    )
    columns = (
        Column(phrase("Place"), 1.6),
        Column(phrase("What"), 1.2),
        Column(phrase("For"), 3.0),
        Column(phrase("Needs"), 3.0),
    )
    return Table(columns, rows, title=phrase("Not to be picked yet"))


def _licensed(work: Iterable[LicensedWork]) -> Table:
    rows = tuple(
        (each.supply, words.place(each.building, each.level), each.text, words.needed(each.needs)) for each in work
    )
    columns = (
        Column(phrase("For"), 1.0),
        Column(phrase("Place"), 1.6),
        Column(phrase("Licensed work"), 5.0),
        Column(phrase("Needs"), 1.4),
    )
    return Table(columns, rows, title=phrase("Licensed work"))


def _held_supplies(project: ProjectView) -> list[tuple[str, str, str]]:
    """Return supplies that do not go out, and why."""
    ready = {view.given.opening.id for view in project.openings if view.ready}
    found = []
    for each in project.power.supplies:
        if not laid(each):
            continue
        errors = project.errors_of(each.supply.id)
        if errors:
            why = "; ".join(message_of(finding) for finding in errors[:3])
        elif ready.isdisjoint(each.openings):
            why = phrase("none of its openings goes out")
        else:
            continue
        found.append((each.supply.name, words.place(each.supply.building, each.supply.level), why))
    return found


def _held_table(held: list[tuple[str, str, str]]) -> Table:
    columns = (Column(phrase("Supply"), 1.0), Column(phrase("Place"), 1.6), Column(phrase("Why"), 5.0))
    return Table(columns, tuple(held), title=phrase("Supplies held back"))


PICK_LIST = DocumentKind("pick-list", to_phrase("Pick list"), ("pdf", "xlsx"), False, build)
