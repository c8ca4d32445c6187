"""Type sheets: openings alike share one sheet with drawing, holes, box and steps; each has a strip of its own.

Alike are openings of which the sheet says and draws the same, word for word and line for line. What it does not say
stands on the strips: where the opening is, what it is, when its cells are due, what is to be minded, what was found.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from hwsched.documents import words
from hwsched.documents.release.packet import box_blocks, finding_lines, point_title, tests_blocks
from hwsched.documents.release.packet_facts import (
    CYLINDER_HEIGHT,
    LOCK_HEIGHT,
    fit_facts,
    leaf_facts,
    lock_facts,
    serial_label,
    situations,
)
from hwsched.documents.release.packet_holes import hole_blocks
from hwsched.documents.release.packet_views import bar_unit, legend_blocks, section_letter, views
from hwsched.documents.release.packet_work import bench_words, steps_blocks
from hwsched.documents.release.short_code import short_code
from hwsched.documents.release.template_names import template_names
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.drawings.opening.bore_detail import bore_detail
from hwsched.drawings.opening.edge_view import edge_view
from hwsched.drawings.opening.face_detail import face_detail
from hwsched.drawings.opening.section import section
from hwsched.language import phrase, to_phrase
from hwsched.render.blocks import (
    Block,
    Bullets,
    Cell,
    Column,
    Columns,
    Document,
    Drawings,
    Facts,
    Heading,
    Paragraph,
    Section,
    SignOff,
    Steps,
    Table,
)
from hwsched.work.plan import plan
from hwsched.work.situation import Situation

_OF_EACH: Final = (
    to_phrase("Leaf size"),
    to_phrase("Function"),
    CYLINDER_HEIGHT,
    LOCK_HEIGHT,
    to_phrase("Lead"),
    to_phrase("Battery"),
    to_phrase("Change by"),
)
"""Facts that change nothing of what is done and drilled; they stand on the strips."""
_LINE: Final = "." * 18
_ON_STRIP: Final = to_phrase("named on the strip")
"""What a step says of a template that openings alike do not share."""


@dataclass(frozen=True, slots=True)
class SheetType:
    """What openings alike share."""

    code: str
    """Four letters that follow from what the sheet says; strips name it."""
    blocks: tuple[Block, ...]
    openings: tuple[OpeningView, ...]


def sheet_types(project: ProjectView) -> tuple[SheetType, ...]:
    """Return the types of all openings that may be installed, those of most openings first.

    Some have one opening only.
    """
    groups: dict[tuple[Block, ...], list[OpeningView]] = {}
    for view in project.openings:
        if view.ready:
            groups.setdefault(tuple(shared_blocks(project, view)), []).append(view)
    made = [SheetType(_code(blocks), blocks, tuple(alike)) for blocks, alike in groups.items()]
    return tuple(sorted(made, key=lambda each: -len(each.openings)))


def shared_blocks(
    project: ProjectView, view: OpeningView, templates: Sequence[tuple[str, ...] | None] = ()
) -> list[Block]:
    """Return what a type sheet says of an opening that fits.

    Parameters
    ----------
    project, view
        What is printed; the opening.
    templates : sequence
        What the templates of each lock point are called there; None: openings alike do not share them, and each strip
        says it. Empty: nobody names them.
    """
    # What is on record of one opening's pieces stands on its strip.
    parts = situations(replace(view, bench=frozenset()))
    if templates:
        paged, on_strip = bool(project.template_pages), (phrase(_ON_STRIP),)
        parts = [
            replace(each, templates=on_strip if names is None else names, paged=paged or names is None)
            for each, names in zip(parts, templates, strict=True)
        ]
    plans = [plan(situation) for situation in parts]
    style = project.length_style
    blocks: list[Block] = []
    for number, situation in enumerate(parts):
        blocks += [Columns(1), *([Heading(point_title(situation.given), 2)] if view.several else [])]
        said = [*leaf_facts(situation, style), *lock_facts(situation, style), *fit_facts(situation, style)]
        blocks.append(Facts(tuple(pair for pair in said if pair[0] not in map(phrase, _OF_EACH)), columns=3))
        blocks += [*_drawn(project, situation), Columns(2), *hole_blocks(situation, style)]
        if number == 0:
            blocks += box_blocks(project, view, plans)
        blocks += [*steps_blocks(plans[number], of_many=True), *tests_blocks(project, situation, plans[number])]
    return [*blocks, Paragraph(phrase(words.ADVICE), "small")]


def _drawn(project: ProjectView, situation: Situation) -> list[Block]:
    given, fit, style = situation.given, situation.fit, project.length_style
    if situation.leaf is None:
        return []
    cut = edge_view(given, fit, style) if situation.in_edge else section(given, fit, style)
    drawn = [face_detail(given, fit, "inside", style, cut=section_letter(situation, cut)), cut]
    if any(hole.up_deg or hole.edge_deg for hole in fit.holes):
        drawn.append(bore_detail(given, fit, style))
    return [*views(drawn, 60.0, same_scale=False, bars=bar_unit(style)), *legend_blocks(drawn, project.paper)]


def _code(blocks: Sequence[Block]) -> str:
    """Return four letters that follow from what is said and drilled."""
    said: list[object] = []
    for block in blocks:
        if isinstance(block, Table):
            said.append(block.rows)
        elif isinstance(block, Steps):
            said.append(block.lines)
        elif isinstance(block, Facts):
            said.append(block.pairs)
        elif isinstance(block, Drawings):
            said.append([drawing.shapes for drawing in block.drawings])
    return short_code(said)


# --- pages ----------------------------------------------------------------------------------------------------------


def build(project: ProjectView, _: OpeningView | None) -> Document:
    """Build the type sheets of a project, each with the strips of its openings behind it."""
    types = [kind for kind in sheet_types(project) if len(kind.openings) > 1]
    return Document(
        phrase("Type sheets"),
        project.title,
        project.revision,
        project.date,
        (_contents(project, types), *(page for kind in types for page in _pages(project, kind))),
    )


def _contents(project: ProjectView, types: Sequence[SheetType]) -> Section:
    rows: list[tuple[Cell, ...]] = [
        (kind.code, len(kind.openings), ", ".join(view.mark for view in kind.openings)) for kind in types
    ]
    shared = {view.mark for kind in types for view in kind.openings}
    alone = [view.mark for view in project.openings if view.ready and view.mark not in shared]
    held = [view.mark for view in project.openings if not view.ready]
    blocks: list[Block] = [
        Heading(phrase("Type sheets")),
        Paragraph(
            phrase(
                "Openings alike share one type sheet: take it along once, with the strip of each opening. A "
                "strip and a sheet belong together where both name the same type."
            )
        ),
        Table(
            (Column(phrase("Type"), 0.6), Column(phrase("Openings"), 0.7, "right"), Column(phrase("Marks"), 6.0)),
            tuple(rows),
            title=phrase("Types"),
        ),
    ]
    if alone:
        blocks.append(Paragraph(phrase("Alone of their kind, done by their packets: {alone}.", alone=", ".join(alone))))
    if held:
        blocks.append(
            Paragraph(phrase("Not to be installed, so without a strip: {held}.", held=", ".join(held)), "stop")
        )
    return Section(tuple(blocks))


def _templates(project: ProjectView, view: OpeningView) -> tuple[tuple[str, ...], ...]:
    """Return what the templates of each lock point are called, with their pages where they are printed along."""
    style, pages = project.length_style, project.template_pages
    return tuple(template_names(each.given, each.fit, style, pages) for each in situations(view))


def _pages(project: ProjectView, kind: SheetType) -> Iterator[Section]:
    head = phrase("Type {code}", code=kind.code)
    marks = ", ".join(view.mark for view in kind.openings)
    every = [_templates(project, view) for view in kind.openings]
    # Where the steps of one would name what is not the other's, each strip names its own.
    shared = [all(each[n] == every[0][n] for each in every) for n in range(len(every[0]))]
    named = [names if same else None for names, same in zip(every[0], shared, strict=True)]
    blocks = shared_blocks(project, kind.openings[0], named)
    yield Section((Heading(head), Paragraph(phrase("For {marks}.", marks=marks)), *blocks), mark=head, at_door=True)
    strips = [
        block
        for view, names in zip(kind.openings, every, strict=True)
        for block in _strip(
            project, kind, view, [() if same else each for each, same in zip(names, shared, strict=True)]
        )
    ]
    yield Section(
        (Heading(phrase("Strips of type {code}", code=kind.code)), Columns(2), *strips),
        mark=phrase("Strips {code}", code=kind.code),
        at_door=True,
    )


def _strip(
    project: ProjectView, kind: SheetType, view: OpeningView, templates: Sequence[tuple[str, ...]]
) -> list[Block]:
    """Return what is one opening's own; templates: of each lock point where the sheet does not name them."""
    opening = view.given.opening
    pairs = [
        (phrase("Type"), f"{kind.code}{phrase(', sheet code {code}', code=view.code) if view.code else ''}"),
        (phrase("Place"), words.place(opening.building, opening.level)),
        (phrase("Location"), words.location(opening.room_from, opening.room_to) or phrase(words.UNKNOWN)),
        (
            phrase("Form and hand"),
            f"{words.opening_word('form', opening.form)}, {opening.hand or phrase('hand unknown')}",
        ),
        (phrase("Fire rating"), words.opening_word("rating", opening.rating)),
        (phrase("Egress role"), words.opening_word("egress", opening.egress)),
        *(
            [(phrase("Frame"), words.opening_word("frame_material", opening.frame_material))]
            if view.given.leaves
            else []
        ),
    ]
    parts = situations(view)
    for situation, names in zip(parts, templates, strict=True):
        named = f"{situation.given.point.name}: " if view.several else ""
        style = project.length_style
        said = [*leaf_facts(situation, style), *lock_facts(situation, style), *fit_facts(situation, style)]
        pairs += [(f"{named}{label}", text) for label, text in said if label in map(phrase, _OF_EACH)]
        unheld = phrase("unknown: revision {letter} holds none", letter=view.unheld_by) if view.unheld_by else ""
        pairs.append((f"{named}{phrase('Done at the bench')}", unheld or bench_words(situation)))
        pairs += [(f"{named}{phrase('Template')}", "; ".join(names))] if names else []
    pairs += [(label, text or phrase(words.UNKNOWN)) for label, text in view.own]
    blocks: list[Block] = [Heading(view.mark, 2), Facts(tuple(pairs))]
    lines = finding_lines(view)
    if lines:
        blocks.append(Bullets(lines))
    for situation in parts:
        named = f"{situation.given.point.name}, t" if view.several else "T"
        checks = plan(situation).checks
        passed = "  ".join(f"{number} [  ]" for number in range(1, len(checks) + 1))
        blocks.append(Paragraph(phrase("{named}ests passed: {passed}", named=named, passed=passed)))
        read = [
            phrase("test {number}: ......", number=number)
            for number, check in enumerate(checks, start=1)
            if check.reading is not None
        ]
        if read:
            blocks.append(Paragraph(phrase("Read: {read}.", read=", ".join(read))))
        blocks.append(
            Paragraph(
                phrase(
                    "{serial} {line} Unit serial number {line} Found different {line}",
                    serial=serial_label(situation),
                    line=_LINE,
                )
            )
        )
    return [*blocks, SignOff((phrase("Installer"), phrase("Checked by"), phrase("For the owner")))]


TYPE_SHEETS = DocumentKind("type-sheets", to_phrase("Type sheets"), ("pdf",), False, build, coded=True)
