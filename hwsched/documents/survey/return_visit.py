"""The return-visit sheet: which facts are missing, most useful first, and per building what to find at each opening."""

from collections.abc import Set

from hwsched.documents import words
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.render.blocks import Block, Cell, Column, Document, Facts, Heading, Paragraph, Section, Table
from hwsched.rules.missing import MissingFact, missing_facts, needs_of
from hwsched.rules.reading import lock_item, remains
from hwsched.rules.wording import label_of
from hwsched.survey import ITEM
from hwsched.survey.asked import OF_KINDS, READERS
from hwsched.values import Catalogue, Item

_OF_ANY_ITEM = ("kind", "leaf", "face", "x_mm", "y_mm", "width_mm", "height_mm", "projection_mm", "disposition")

_THICK = "leaf.thickness_mm"
"""Of a reader on a wall it holds how thick that is."""
_FOOTPRINT = ("x_mm", "y_mm", "width_mm", "height_mm")


def to_visit(project: ProjectView) -> tuple[OpeningView, ...]:
    """Return the openings that need a fact of the survey."""
    return tuple(
        view
        for view in project.openings
        if any(not fact.startswith("part ") for fact in needs_of(view.fit, view.findings))
    )


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the return-visit sheet of a project."""
    found = missing_facts((view.mark, view.fit, view.findings) for view in project.openings)
    visited = to_visit(project)
    blocks: list[Block] = [
        Heading(phrase("What is missing")),
        Facts(((phrase("Openings to visit"), str(len(visited))), (phrase("Facts that are missing"), str(len(found))))),
    ]
    walls = {view.mark for view in project.openings if _on_wall(view)}
    if found:
        rows = tuple(
            (
                _said(fact, walls, project.catalogue),
                "catalogue" if fact.of_catalogue else "survey",
                len(fact.alone),
                len(fact.needed),
                ", ".join(fact.needed[:12])
                + (phrase(" and {count} more", count=len(fact.needed) - 12) if len(fact.needed) > 12 else ""),
            )
            for fact in found
        )
        columns = (
            Column(phrase("Fact"), 2.4),
            Column(phrase("Of the"), 0.8),
            Column(phrase("Unblocks"), 0.8, "right"),
            Column(phrase("Needed by"), 0.8, "right"),
            Column(phrase("Openings"), 3.0),
        )
        blocks.append(Table(columns, rows, title=phrase("Missing facts")))
        blocks.append(
            Paragraph(
                phrase("Unblocks: openings that need this fact and nothing else. The first line is worth most."),
                "small",
            )
        )
    else:
        blocks.append(Paragraph(phrase("Nothing is missing.")))
    sections = [Section(tuple(blocks))]
    for building in dict.fromkeys(view.given.opening.building for view in visited):
        here = [view for view in visited if view.given.opening.building == building]
        sections.append(
            Section((Heading(building or phrase("No building given")), _table(here, building or phrase("No building"))))
        )
    return Document(
        phrase("Return visit"),
        project.title,
        project.revision,
        project.date,
        tuple(sections),
        subtitle=phrase_of_count("{count} opening", "{count} openings", len(visited)),
    )


def _on_wall(view: OpeningView) -> bool:
    return view.given.opening.form in READERS


def _wall_words() -> str:
    return phrase("wall: Thickness of wall or enclosure")


def _said(fact: MissingFact, walls: Set[str], catalogue: Catalogue) -> str:
    """Return what a fact is called: beside a reader there is no leaf, and what is measured is the wall."""
    called = words.needed((fact.fact,), catalogue)
    beside = [mark in walls for mark in fact.needed] if fact.fact == _THICK else []
    if not any(beside):
        return called
    return _wall_words() if all(beside) else f"{called}; {_wall_words()}"


def _table(views: list[OpeningView], building: str) -> Table:
    rows: list[tuple[Cell, ...]] = []
    for view in views:
        opening = view.given.opening
        facts = [fact for fact in needs_of(view.fit, view.findings) if not fact.startswith("part ")]
        for number, fact in enumerate(facts):
            where = words.location(opening.room_from, opening.room_to) if number == 0 else ""
            mark, level = (view.mark, opening.level or "") if number == 0 else ("", "")
            called = _wall_words() if fact == _THICK and _on_wall(view) else label_of(fact)
            rows.append((mark, level, where, called, _whose(view, fact), "." * 30))
    columns = (
        Column(phrase("Mark"), 1.0),
        Column(phrase("Level"), 0.8),
        Column(phrase("Location"), 1.8),
        Column(phrase("Find"), 2.2),
        Column(phrase("Of"), 1.0),
        Column(phrase("Found"), 1.8),
    )
    return Table(columns, tuple(rows), title=building)


def _whose(view: OpeningView, fact: str) -> str:
    """Name the existing items that stay and of which the fact is unknown; nothing where it is not one of theirs."""
    entity, _, attribute = fact.partition(".")
    if entity != ITEM.name:
        return ""
    items = [item for item in view.given.items if remains(item) and getattr(item, attribute, 0) is None]
    if attribute in OF_KINDS and attribute != "latch_form":
        items = [item for item in items if item.kind in OF_KINDS[attribute]]
    elif attribute not in _OF_ANY_ITEM:
        # What only a lock has is asked of those that are converted.
        locks = {lock.id for at in view.points if (lock := lock_item(at.given)) is not None}
        items = [item for item in items if item.id in locks]
    return ", ".join(dict.fromkeys(_called(view, item, attribute) for item in items))


def _called(view: OpeningView, item: Item, attribute: str) -> str:
    """Name an item; of a lock with a thumb turn that has no row of its own, place and size are the turn's."""
    turn = bool(item.thumb_turn) and attribute in _FOOTPRINT
    if turn and not any(each.kind in ("trim", "thumb-turn") and remains(each) for each in view.given.items):
        return phrase(
            "{item_word} of the {lower}",
            item_word=words.item_word("kind", "thumb-turn"),
            lower=words.item_word("kind", item.kind).lower(),
        )
    return words.item_word("kind", item.kind)


RETURN_VISIT = DocumentKind("return-visit", to_phrase("Return visit"), ("pdf",), False, build)
