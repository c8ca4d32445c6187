"""The installer's packet for one opening: drawing, holes, tools, box contents, steps, cautions, tests, sign-off."""

from dataclasses import replace
from typing import Final

from hwsched.attributes.of_parts import PACK_LOW_V
from hwsched.documents import words
from hwsched.documents.power.packet_power import power_blocks, unproved_blocks
from hwsched.documents.release.heading_facts import item_words
from hwsched.documents.release.packet_facts import (
    fit_facts,
    leaf_facts,
    lock_facts,
    opening_facts,
    serial_label,
    situations,
)
from hwsched.documents.release.packet_holes import hole_blocks
from hwsched.documents.release.packet_views import bar_unit, legend_blocks, section_letter, views
from hwsched.documents.release.packet_work import steps_blocks, tests_table, tool_words
from hwsched.documents.release.schedule import item_lines
from hwsched.documents.release.template_names import template_names
from hwsched.documents.stock.box_contents import contents, in_box
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.drawings.opening.bore_detail import bore_detail
from hwsched.drawings.opening.edge_view import edge_view
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.exploded import exploded
from hwsched.drawings.opening.face_detail import face_detail
from hwsched.drawings.opening.section import section
from hwsched.kept_sentences import GATE, kept_phrase
from hwsched.language import phrase, to_phrase
from hwsched.render.blocks import (
    TICK,
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
    Picture,
    Section,
    SignOff,
    Table,
)
from hwsched.rules.rule import undeferred
from hwsched.rules.saying import message_of
from hwsched.rules.wording import says_only_what_is_missing
from hwsched.values import Need, OpeningInput, Part
from hwsched.work.plan import plan
from hwsched.work.situation import Situation
from hwsched.work.step import Plan

_SHEETS: Final = 2
_MORE_SHEETS: Final = 3
"""For a supply, a pair or a rated door."""
_APART_MM: Final = 42.0
"""Room for what goes in, drawn apart."""
_PHOTO_MM: Final = (48.0, 32.0, 22.0)
"""Heights that a photo may have, the best first; on less nothing is seen of a door."""


def build(project: ProjectView, view: OpeningView | None) -> Document:
    """Build the packet of one opening; raises ValueError without one."""
    if view is None:
        raise ValueError("a packet is the document of one opening")
    return Document(
        phrase("Install packet"),
        project.title,
        project.revision,
        project.date,
        tuple(_pages(project, view)),
        subtitle=words.place(view.given.opening.building, view.given.opening.level),
    )


def section_count(project: ProjectView, view: OpeningView) -> int:
    """Return how many sections a packet has, without building it."""
    return 2 if _is_wide(_power(project, view)) else 1


def _power(project: ProjectView, view: OpeningView) -> list[Block]:
    # What a battery wants is said among the facts.
    return power_blocks(project, view) if _supplied(view) else []


def _supplied(view: OpeningView) -> bool:
    return any(at.fit is not None and at.fit.power == "supply" for at in view.points)


def _is_wide(power: list[Block]) -> bool:
    return any(isinstance(block, Drawings) for block in power)


def _pages(project: ProjectView, view: OpeningView) -> list[Section]:
    power = _power(project, view)
    work, ending = _work(project, view)
    more = _supplied(view) or view.several or view.given.opening.form == "pair" or view.given.opening.rating != "none"
    door = Section(
        (), mark=view.mark, at_door=True, code=view.code, stop=not view.ready, sheets=_MORE_SHEETS if more else _SHEETS
    )
    if _is_wide(power):
        # Wiring is wide: it has a sheet of its own, on which the work ends. What the rules say has room before it.
        found = _findings(view)
        last = [each for each in ending if not isinstance(each, Drawings | Picture) and each not in found]
        side = (
            *power,
            *(replace(each, abreast=3) if isinstance(each, SignOff) else each for each in last),
        )
        pictures = [each for each in ending if isinstance(each, Picture)]
        work_sheets = replace(door, blocks=(*work, *found, *pictures), sheets=_MORE_SHEETS - 1)
        return [work_sheets, replace(door, blocks=side, landscape=True, sheets=1)]
    return [replace(door, blocks=(*work, *power, *ending))]


def _items(view: OpeningView) -> list[Block]:
    # Where nothing may be installed only why not is said in full.
    said = item_words(view) if view.ready else ""
    return [Paragraph(said)] if said else []


def _work(project: ProjectView, view: OpeningView) -> tuple[list[Block], list[Block]]:
    """Return what an opening is and what is done at it, and apart from that how it ends: findings, sign-off."""
    blocks: list[Block] = [
        Heading(phrase("Opening {mark}", mark=view.mark)),
        *_verdict(project, view),
        opening_facts(project, view),
        *_items(view),
        *_unprinted(view),
    ]
    if view.fit is None:
        return blocks, photo_blocks(view)
    ending: list[Block] = []
    fits = view.fit.status == "fits"
    parts = situations(view)
    named = [_named(project, each) for each in parts] if fits else []
    plans = [plan(situation) for situation in named]
    if view.several and fits:
        blocks += [Columns(2), *box_blocks(project, view, plans)]
    # Beside the section, or where the sheets end: wherever there is room.
    apart = [*photo_blocks(view), *(_apart(parts[0]) if fits else [])] if not view.several else []
    for number, situation in enumerate(parts):
        blocks += _of_point(project, view, situation, plans[number] if fits else None, apart)
        if fits:
            blocks += tests_blocks(project, situation, plans[number])
            (blocks if view.several else ending).append(_written(situation))
    found = _findings(view)
    ending += found
    if fits or found:
        ending.append(Paragraph(phrase(words.ADVICE), "small"))
    ending += [
        *(replace(each) for each in apart if isinstance(each, Drawings)),
        *photo_blocks(view),
        Heading(phrase("Sign-off"), 2),
        SignOff((phrase("Installer"), phrase("Checked by"), phrase("For the owner"))),
    ]
    return blocks, ending


def _named(project: ProjectView, situation: Situation) -> Situation:
    """Return a lock point with the names of its templates, and with their pages where they are printed along."""
    pages = project.template_pages
    names = template_names(situation.given, situation.fit, project.length_style, pages)
    return replace(situation, templates=names, paged=bool(pages))


def _unprinted(view: OpeningView) -> list[Block]:
    if view.unheld_by:
        said = phrase(
            "NO PHOTO. Revision {letter} was frozen by an earlier version, which held neither photos nor what was "
            "done at the bench.",
            letter=view.unheld_by,
        )
        return [Paragraph(said, "strong")]
    if view.photo is None or not view.photo.refused:
        return []
    said = phrase("NO PHOTO. {name} {refused}.", name=view.photo.name, refused=view.photo.refused)
    return [Paragraph(said, "strong")]


def photo_blocks(view: OpeningView) -> list[Block]:
    """Return the photo of a door, large and small, to be set where it costs no sheet; of one that cannot be, why."""
    photo = view.photo
    if photo is None or not photo.content:
        return []
    caption = phrase("Photo: {name}", name=photo.name)
    no_room = phrase("Photo of this door: none has room here; it is with the project, {name}.", name=photo.name)
    return [
        *(Picture(photo.content, caption, height_mm, spare=True) for height_mm in _PHOTO_MM),
        Picture(b"", no_room, spare=True),
    ]


def _apart(situation: Situation) -> list[Block]:
    """Return how the parts go together; no hole is drilled by it, so it costs no sheet."""
    if situation.leaf is None:
        return []
    drawing = replace(exploded(situation.given, situation.fit), title="Drawn apart, numbered as the steps", notes=())
    return [Drawings((drawing,), height_mm=_APART_MM, spare=True)] if drawing.shapes else []


def _of_point(
    project: ProjectView, view: OpeningView, situation: Situation, work: Plan | None, apart: list[Block]
) -> list[Block]:
    """Return the part of a packet for one lock point: the whole work of an opening that has only one."""
    given, fit, style = situation.given, situation.fit, project.length_style
    blocks: list[Block] = []
    if view.several:
        blocks += [
            Heading(point_title(given)),
            Facts(tuple(leaf_facts(situation, style) + lock_facts(situation, style))),
        ]
    beside = [each for each in view.points if each.given is not given]
    bars = bar_unit(style)
    # How holes lean is said once, where they are drawn cut open.
    leaning = situation.leaf is not None and any(hole.up_deg or hole.edge_deg for hole in fit.holes)
    slanted = [bore_detail(given, fit, style, listed=True)] if leaning else []
    leans = any(drawing.to_scale for drawing in slanted)
    drawings = [elevation(given, fit, face, style, beside=beside, angles=not leans) for face in ("inside", "key")]
    if work is None:
        return [*blocks, *views(drawings, 80.0, same_scale=True, bars=bars), *legend_blocks(drawings, project.paper)]
    cut = None
    if situation.leaf is not None:
        cut = edge_view(given, fit, style) if situation.in_edge else section(given, fit, style)
    lettered = section_letter(situation, cut)
    detail = (
        [face_detail(given, fit, "inside", style, cut=lettered, angles=not leans)] if situation.leaf is not None else []
    )
    if view.several:
        blocks += [Facts(tuple(fit_facts(situation, style))), *views(drawings, 50.0, same_scale=True, bars=bars)]
        for each in (*([cut] if cut is not None else []), *detail, *slanted):
            blocks += views([each], 60.0, same_scale=True, bars=bars)
    else:
        # What is seen at once goes across the page, and with it what is wide; all else stands in columns.
        blocks += views([*drawings, *detail], 60.0, same_scale=False, bars=bars)
        across = [cut, *slanted] if cut is not None and slanted else []
        blocks += views(across, 46.0, same_scale=False, bars=bars) if across else []
        blocks += legend_blocks([*drawings, *detail, *slanted, *([cut] if cut is not None else [])], project.paper)
        alone = cut is not None and not slanted
        # An edge is many times as tall as it is wide.
        tall = 80.0 if situation.in_edge else 40.0
        blocks += [Columns(2), *(views([cut], tall, same_scale=True, bars=bars) if cut is not None and alone else [])]
        blocks += apart
    blocks += hole_blocks(situation, style)
    if not view.several:
        blocks += box_blocks(project, view, [work])
    return [*blocks, *steps_blocks(work)]


def point_title(given: OpeningInput) -> str:
    """Return the heading of a lock point among several."""
    name = given.point.name
    return phrase("Lock point {number}: {name}", number=given.point.number, name=name)


def _verdict(project: ProjectView, view: OpeningView) -> list[Block]:
    if view.fit is None:
        # The sheet is printed all the same, so that nobody takes the missing one for a lost one.
        return [
            Paragraph(
                phrase("DO NOT INSTALL. No fit of this opening counts: {unfitted}.", unfitted=view.unfitted), "stop"
            )
        ]
    if view.fit.status == "to-measure":
        # What hangs on several facts is said once, behind all of them.
        blocked: dict[str, list[str]] = {}
        for need in view.fit.needs:
            blocked.setdefault(need.blocks, []).append(_of_item(view, need))
        missing = "; ".join(
            phrase("needs {label} ({blocks})", label=_gathered(labels), blocks=blocks)
            for blocks, labels in blocked.items()
        ) or phrase("facts are missing")
        return [Paragraph(phrase("DO NOT INSTALL. Unknown: {missing}.", missing=missing), "stop")]
    if view.fit.status == "does-not-fit":
        refused = [
            (f"{at.given.point.name}, " if at.given.point.name else "", refusal)
            for at in view.points
            if at.fit is not None and at.fit.status == "does-not-fit"
            for refusal in at.fit.refused
        ]
        reasons = "; ".join(f"{where}{refusal.part}: {refusal.reason}" for where, refusal in refused[:3])
        return [Paragraph(phrase("DO NOT INSTALL. No combination of parts fits. {reasons}", reasons=reasons), "stop")]
    if view.blocking:
        reasons = " ".join(
            phrase(
                "{message} Cure: {cure}",
                message=message_of(finding),
                cure=words.cure_at_door(undeferred(finding.cure), finding.rule),
            )
            for finding in view.blocking
        )
        return [Paragraph(phrase("DO NOT INSTALL. {reasons}", reasons=reasons), "stop")]
    if view.held:
        return [
            Paragraph(
                phrase(
                    "DO NOT INSTALL. {value}", value=" ".join(_sentence(kept_phrase(each, GATE)) for each in view.held)
                ),
                "stop",
            )
        ]
    return unproved_blocks(project, view)


def _of_item(view: OpeningView, need: Need) -> str:
    """Name a missing fact with the items that lack it: "existing item" alone sends nobody to the right one."""
    entity, _, name = need.fact.partition(".")
    if entity != "existing_item":
        return need.label
    lacking = dict.fromkeys(
        words.item_word("kind", item.kind).lower() for item in view.given.items if getattr(item, name, "") is None
    )
    return f"{', '.join(lacking)}: {need.label.partition(': ')[2]}" if lacking else need.label


def _gathered(labels: list[str]) -> str:
    """Join missing facts, each thing that they are of named once.

    Examples
    --------
    >>> _gathered(["existing item: From lock edge", "existing item: Above floor", "leaf: Hand"])
    'existing item: From lock edge, Above floor; leaf: Hand'
    """
    found: dict[str, list[str]] = {}
    for label in dict.fromkeys(labels):
        of, colon, what = label.partition(": ")
        found.setdefault(of if colon else "", []).append(what or label)
    return "; ".join(f"{of}: {', '.join(each)}" if of else ", ".join(each) for of, each in found.items())


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}{'' if text.endswith('.') else '.'}"


def box_blocks(project: ProjectView, view: OpeningView, plans: list[Plan]) -> list[Block]:
    """Return what lies in the box of an opening, and the tools of its work."""
    rows: list[tuple[Cell, ...]] = []
    strong = set()
    for at in view.points:
        if at.fit is None:
            continue
        if view.several:
            strong.add(len(rows))
            rows.append(("", "", "", "", phrase("For the {name}:", name=at.given.point.name)))
        for part in item_lines(at.fit.parts):
            entry = project.catalogue.get(part.part)
            strong.add(len(rows))
            much, unit, carried = in_box(entry, part.quantity, project.length_style)
            rows.append((TICK, much, unit, part.part, part.description + carried))
            for inside in contents(project.catalogue, part.part, part.quantity):
                rows.append(("", inside.shown, inside.unit, inside.number, inside.text))
    if len(strong) == len(rows):
        # Bold tells a part from what lies in its box.
        strong = set()
    columns = (
        Column("", 0.3, "centre"),
        Column(phrase("Qty"), 0.6, "right"),
        Column(phrase("Unit"), 0.6),
        Column(phrase("Part"), 1.6),
        Column(phrase("Description"), 5.0),
    )
    blocks: list[Block] = [
        Heading(phrase("Box contents"), 2),
        Table(columns, tuple(rows), title=phrase("Box contents"), strong_rows=frozenset(strong), abreast=2),
    ]
    parts = [part for at in view.points if at.fit is not None for part in at.fit.parts]
    tools = tool_words(project.catalogue, parts, plans)
    if tools:
        blocks.append(Paragraph(phrase("Tools: {tools}.", tools="; ".join(tools))))
    return blocks


def tests_blocks(project: ProjectView, situation: Situation, work: Plan) -> list[Block]:
    """Return the test sheet of a lock point, and at which reading its pack is spent."""
    blocks: list[Block] = [Heading(phrase("Test sheet"), 2), tests_table(work)]
    unit = situation.fit.part("unit")
    entry = project.catalogue.get(unit.part) if unit else None
    if situation.fit.part("battery") is not None and entry is not None:
        blocks.append(Paragraph(spent_words(entry), "small"))
    return blocks


def _written(situation: Situation) -> Facts:
    """Return what is written down beside the readings."""
    return Facts(
        (
            (serial_label(situation), "." * 24),
            (phrase("Unit serial number"), "." * 24),
            (phrase("Found different"), "." * 24),
        ),
        columns=3,
    )


def spent_words(unit: Part) -> str:
    """Say at which reading a pack is spent: what its unit still works at decides, not what a fresh one reads.

    Examples
    --------
    >>> spent_words(Part("U-1", "surface-unit", attributes={"pack_low_v": 5.4}))
    'Under 5.4 V in operation: pack spent or badly connected.'
    """
    lowest = unit.number_of(PACK_LOW_V)
    if lowest is None:
        return phrase(
            "At which reading the pack is spent is unknown: needs part {number}, the lowest pack voltage "
            "that it works at.",
            number=unit.number,
        )
    return phrase(
        "Under {lowest:g} V in operation: pack spent or badly connected.",
        lowest=lowest,
    )


def _findings(view: OpeningView) -> list[Block]:
    lines = finding_lines(view)
    return [Heading(phrase("What the rules say"), 2), Bullets(lines)] if lines else []


def finding_lines(view: OpeningView) -> tuple[str, ...]:
    """Return what the rules say of an opening that concerns the person at the door."""
    # Notes are for who specifies, and stand in the schedule: at the door they hide what matters.
    shown = [each for each in view.findings if each.severity != "note"]
    missing = [each for each in shown if not each.waived and says_only_what_is_missing(each.message, each.needs)]
    asked = [
        phrase(
            "{severity}: Unknown: needs {needs}.",
            severity=phrase(words.SEVERITY[severity]),
            needs=_gathered(
                [
                    words.needed((need,), view.given.catalogue)
                    for each in missing
                    if each.severity == severity
                    for need in each.needs
                ]
            ),
        )
        for severity in dict.fromkeys(each.severity for each in missing)
    ]
    said = [
        phrase(words.SEVERITY[f.severity])
        + (phrase(" (waived by {who})", who=f.waived_by) if f.waived else "")
        # Who decides what a rule of safety speaks of is said once, under all of it.
        + f": {message_of(f)} {words.cure_at_door(undeferred(f.cure), f.rule)}"
        for f in shown
        if f not in missing
    ]
    return (*asked, *dict.fromkeys(said))


PACKET = DocumentKind("packets", to_phrase("Install packets"), ("pdf",), True, build)
