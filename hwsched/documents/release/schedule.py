"""The door hardware schedule: opening index, headings with their item lines, what is not fitted, open findings."""

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.documents import words
from hwsched.documents.power.power_words import run_lengths
from hwsched.documents.release.heading_facts import heading_facts
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.kept_sentences import kept_phrase
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.quantities import LengthStyle
from hwsched.render.blocks import Block, Cell, Column, Document, Facts, Heading, Paragraph, Section, Table
from hwsched.rules.reading import LOCK_ROLES, lock_item, lock_leaf
from hwsched.rules.saying import rule_said
from hwsched.values import SEVERITIES, FitPart, PointFit
from hwsched.values.amounts import little_of, plain_amount
from hwsched.wiring.goods import ROLES

# Order of item lines: secure, then electrical, then what is mounted with them; tools are not hardware.
ITEM_ORDER = (
    "cylinder",
    "lock",
    "reader",
    "cam",
    "tailpiece",
    "collar",
    "ring",
    "strike",
    "unit",
    "lead-extension",
    "battery",
    "coin-cell",
    "supply",
    "standby-battery",
    "power-transfer",
    "wire",
    "raceway",
    "mounting",
    "fastener",
    "consumable",
    "credential",
)


_MANY: Final = 40
"""More marks than these do not stand in a narrow column: they are listed as wide as the page."""


@dataclass(frozen=True)
class HeadingGroup:
    """Openings that take identical hardware under identical conditions."""

    number: str
    openings: tuple[OpeningView, ...]
    points: tuple[tuple[str, tuple[FitPart, ...]], ...]
    """Item lines by lock point; the point's name is empty where there is only one."""

    @property
    def parts(self) -> tuple[FitPart, ...]:
        """All item lines."""
        return tuple(part for _, parts in self.points for part in parts)


def item_lines(parts: tuple[FitPart, ...]) -> tuple[FitPart, ...]:
    """Return hardware in the schedule's order, tools left out."""
    hardware = [part for part in parts if part.role in ITEM_ORDER]
    return tuple(sorted(hardware, key=lambda part: (ITEM_ORDER.index(part.role), part.part)))


def headings(openings: tuple[OpeningView, ...], style: LengthStyle = "fraction") -> tuple[HeadingGroup, ...]:
    """Group fitted openings that share parts, hand, form, rating, leaf material and thickness.

    Source of the grouping: trade practice, a fire door or another hand in a mixed set gets a heading of its own.
    """
    groups: dict[tuple[object, ...], list[OpeningView]] = {}
    for view in openings:
        if view.fit is None or view.fit.status != "fits":
            continue
        opening = view.given.opening
        key = (
            tuple(_taken(at, style) for at in view.points),
            opening.form,
            opening.hand,
            opening.rating,
            opening.frame_material,
        )
        groups.setdefault(key, []).append(view)
    return tuple(
        HeadingGroup(
            f"H{number:03d}",
            tuple(views),
            tuple((at.given.point.name, item_lines(at.fit.parts if at.fit else ())) for at in views[0].points),
        )
        for number, views in enumerate(groups.values(), start=1)
    )


def _taken(at: PointFit, style: LengthStyle) -> tuple[object, ...]:
    """Return what of a lock point stands under its opening's heading: its name, its hardware, its leaf."""
    # What reads alike is alike: a leaf measured to a hair's breadth more is not ordered apart.
    leaf = _leaf_words(at, style)
    lines = tuple((part.role, part.part, part.quantity) for part in item_lines(at.fit.parts if at.fit else ()))
    return at.given.point.name, lines, leaf


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the schedule of a whole project."""
    groups = headings(project.openings, project.length_style)
    heading_of = {view.given.opening.id: group.number for group in groups for view in group.openings}
    sections = [
        Section((*_summary(project, groups),)),
        # Upright a page holds half as many again; fields of the project's own need the width.
        Section(
            (Heading(phrase("Opening index")), _index(project, heading_of)),
            landscape=bool(project.openings and project.openings[0].own),
            dense=True,
        ),
    ]
    if groups:
        blocks: list[Block] = [Heading(phrase("Headings"))]
        reasons = _Reasons()
        for number, group in enumerate(groups):
            blocks += _heading_blocks(project, group, reasons, apart(group, groups[:number]))
        sections.append(Section((*blocks, Heading(phrase("Reasons"), 2), reasons.table()), dense=True))
    sections += _supplies(project)
    sections.append(Section((*_not_fitted(project), *_open_findings(project)), dense=True))
    return Document(
        phrase("Door hardware schedule"),
        project.title,
        project.revision,
        project.date,
        tuple(sections),
        subtitle=phrase(
            "{openings}, {headings}",
            openings=phrase_of_count("{count} opening", "{count} openings", len(project.openings)),
            headings=phrase_of_count("{count} heading", "{count} headings", len(groups)),
        ),
    )


def _summary(project: ProjectView, groups: tuple[HeadingGroup, ...]) -> list[Block]:
    statuses = Counter(words.status(view.fit) for view in project.openings)
    severities = Counter(f.severity for view in project.openings for f in view.findings if not f.waived)
    waived = sum(f.waived for view in project.openings for f in view.findings)
    unknowns = sum(bool(f.needs) for view in project.openings for f in view.findings)
    held = sum(bool(view.blocking) for view in project.openings)
    blocks: list[Block] = [
        Heading(phrase("Summary")),
        Facts(
            (
                (phrase("Openings"), str(len(project.openings))),
                (phrase("Headings"), str(len(groups))),
                *(
                    (name, str(statuses.get(name, 0)))
                    for name in (phrase("Fits"), phrase("Does not fit"), phrase("To measure"), phrase("Not worked out"))
                ),
                (phrase("Held by errors"), str(held)),
                (
                    phrase("Open findings"),
                    ", ".join(f"{severities.get(s, 0)} {phrase(words.SEVERITY[s]).lower()}" for s in SEVERITIES),
                ),
            )
        ),
        Heading(phrase("What was not checked"), 2),
        Paragraph(
            phrase(
                "{rules_run} Switched off: {rules_off}. Findings that say unknown because "
                "facts are missing: {unknowns}. Waivers in force: {waived}.",
                rules_run=phrase_of_count("{count} rule was run.", "{count} rules were run.", project.rules_run),
                rules_off="; ".join(map(rule_said, project.rules_off)) or phrase("none"),
                unknowns=unknowns,
                waived=waived,
            )
        ),
        Paragraph(phrase(words.ADVICE), "caution"),
    ]
    if project.office.contacts:
        blocks += [Heading(phrase("Contacts"), 2), Facts(tuple(project.office.contacts.items()))]
    if used := _abbreviations(project, groups):
        blocks += [Heading(phrase("Abbreviations"), 2), Facts(used)]
    return blocks


def _abbreviations(project: ProjectView, groups: tuple[HeadingGroup, ...]) -> tuple[tuple[str, str], ...]:
    """Return those that the schedule uses: hands, units of item lines."""
    used = {view.given.opening.hand for view in project.openings}
    used |= {_unit_of(project, part) for group in groups for part in group.parts}
    return tuple((short, phrase(full)) for short, full in words.ABBREVIATIONS.items() if short in used)


def _index(project: ProjectView, heading_of: dict[str, str]) -> Table:
    rows = []
    for view in project.openings:
        opening, leaf = view.given.opening, view.lock_leaf
        rows.append(
            (
                view.mark,
                words.place(opening.building, opening.level),
                words.location(opening.room_from, opening.room_to),
                heading_of.get(opening.id, "-"),
                words.opening_word("form", opening.form),
                opening.hand or phrase(words.UNKNOWN),
                words.size(leaf, project.length_style),
                words.leaf_word("material", leaf.material) if leaf else phrase("no leaf"),
                words.opening_word("rating", opening.rating),
                words.status(view.fit) + (phrase(" · held") if view.blocking else ""),
                *(text for _, text in view.own),
            )
        )
    own = tuple(Column(label, 1.0) for label, _ in project.openings[0].own) if project.openings else ()
    columns = (
        Column(phrase("Mark"), 1.1),
        Column(phrase("Place"), 1.7),
        Column(phrase("Location"), 2.0),
        Column(phrase("Heading"), 0.9),
        Column(phrase("Form"), 1.0),
        Column(phrase("Hand"), 0.7),
        Column(phrase("Leaf size"), 1.5),
        Column(phrase("Leaf"), 1.3),
        Column(phrase("Rating"), 0.9),
        Column(phrase("Status"), 1.1),
    )
    return Table((*columns, *own), tuple(rows), title=phrase("Opening index"), leads_to=(3, "Heading "))


class _Reasons:
    """Why items are taken, each reason once: the lines of all headings name it by its number."""

    def __init__(self) -> None:
        self._numbers: dict[str, int] = {}

    def number_of(self, part: FitPart) -> int:
        """Return the number of a line's reason."""
        said = part.reason + ("" if part.source == "worked-out" else f" ({part.source})")
        return self._numbers.setdefault(said, len(self._numbers) + 1)

    def table(self) -> Table:
        """Return all reasons, told by openings that stand first under their headings."""
        rows = tuple((number, said) for said, number in self._numbers.items())
        return Table(
            (Column(phrase("No."), 0.4, "right"), Column(phrase("Reason"), 8.0)), rows, title=phrase("Reasons")
        )


def _heading_blocks(project: ProjectView, group: HeadingGroup, reasons: _Reasons, like: str) -> list[Block]:
    first = group.openings[0]
    opening = first.given.opening
    count = len(group.openings)
    marks = ", ".join(view.mark for view in group.openings)
    sets = list(dict.fromkeys(view.set_name for view in group.openings if view.set_name))
    facts = (
        (
            phrase("Openings"),
            f"{count}: {marks}" if count <= _MANY else phrase("{count}, as listed below", count=count),
        ),
        (
            phrase("Form and hand"),
            f"{words.opening_word('form', opening.form)}, {opening.hand or phrase('hand unknown')}",
        ),
        (phrase("Leaf"), _of_points(first, lambda at: _leaf_words(at, project.length_style))),
        (phrase("Frame"), words.opening_word("frame_material", opening.frame_material)),
        (phrase("Fire rating"), words.opening_word("rating", opening.rating)),
        (phrase("Existing lock"), _of_points(first, _lock_words)),
        *([(phrase("Hardware set"), ", ".join(sets))] if sets else []),
        *([(phrase("Apart because of"), like)] if like else []),
    )
    rows: list[tuple[Cell, ...]] = []
    strong = set()
    number = 0
    for name, parts in group.points:
        if name:
            strong.add(len(rows))
            rows.append(("", "", "", "", phrase("At the {name}", name=name), "", "", ""))
        for part in parts:
            number += 1
            # A part of a bottle is no item: what all take of it is counted in bottles where it is picked.
            little = little_of(project.catalogue.get(part.part), part.quantity)
            rows.append(
                (
                    number,
                    *(("-", "-", "") if little else _counted(project, part, count)),
                    (part.description or part.kind) + (phrase(": {little}", little=little) if little else ""),
                    part.part,
                    _finish_of(project, part),
                    reasons.number_of(part),
                )
            )
    columns = (
        Column(phrase("No."), 0.4, "right"),
        Column(phrase("Qty"), 0.5, "right"),
        Column(phrase("Total"), 0.6, "right"),
        Column(phrase("Unit"), 0.5),
        Column(phrase("Item"), 4.0),
        Column(phrase("Catalogue number"), 1.6),
        Column(phrase("Finish"), 0.8),
        Column(phrase("Reason"), 0.6, "right"),
    )
    title = phrase("Heading {number}", number=group.number)
    table = Table(columns, tuple(rows), title=title, strong_rows=frozenset(strong))
    more = Facts(heading_facts(group.openings, project.length_style), columns=2)
    listed = [Paragraph(f"Openings: {marks}", "small")] if count > _MANY else []
    return [Heading(title, 2, anchor=title), Facts(facts, columns=3), *listed, more, table]


def apart(group: HeadingGroup, earlier: Sequence[HeadingGroup]) -> str:
    """Say what keeps a heading from standing under the earlier one that it is most like; empty where none is like it.

    Like are headings with the same lock; fewest differences count.
    """
    best: tuple[str, list[str]] | None = None
    for other in earlier:
        if {p.part for p in other.parts if p.role in LOCK_ROLES} != {
            p.part for p in group.parts if p.role in LOCK_ROLES
        }:
            continue
        found = _differences(group, other)
        if best is None or len(found) < len(best[1]):
            best = (other.number, found)
    return "" if best is None else phrase("{best} (else as {best_2})", best=", ".join(best[1]), best_2=best[0])


def _differences(group: HeadingGroup, other: HeadingGroup) -> list[str]:
    mine, its = group.openings[0].given.opening, other.openings[0].given.opening
    found = [
        words.opening_word(name, getattr(mine, name))
        for name in ("form", "rating", "frame_material")
        if getattr(mine, name) != getattr(its, name)
    ]
    if mine.hand != its.hand:
        found.append(phrase("hand {hand}", hand=mine.hand or phrase(words.UNKNOWN)))
    leaves = [_of_points(view.openings[0], lambda at: _leaf_words(at, "mm")) for view in (group, other)]
    if leaves[0] != leaves[1]:
        found.append(phrase("leaf"))
    parts = [Counter({part.part: part.quantity for part in each.parts}) for each in (group, other)]
    return found + [part for part in dict.fromkeys((*parts[0], *parts[1])) if parts[0][part] != parts[1][part]]


def _counted(project: ProjectView, part: FitPart, count: int) -> tuple[Cell, Cell, str]:
    """Return what one opening takes of a part, what so many take, and the unit."""
    return plain_amount(part.quantity), plain_amount(part.quantity * count), _unit_of(project, part)


def _supplies(project: ProjectView) -> list[Section]:
    """Return what feeds openings from elsewhere: supplies that feed something, their batteries and limiters."""
    rows = []
    for each in project.power.supplies:
        if not each.circuits:
            continue
        supply = each.supply
        standby = f"{supply.batteries or 1} × {supply.battery}" if supply.battery else phrase("none")
        limiters = [
            f"{circuit.circuit.name}: "
            + (phrase(words.UNKNOWN) if circuit.limiter_a is None else f"{circuit.limiter_a:g} A")
            for circuit in each.circuits
        ]
        openings = set(each.openings)
        marks = ", ".join(mark for id_, mark in project.marks.items() if id_ in openings)
        place = " · ".join(part for part in (supply.building, supply.level, supply.place) if part)
        rows.append(
            (
                supply.name,
                place,
                supply.part or phrase(words.UNKNOWN),
                standby,
                "; ".join(limiters),
                marks or phrase("nothing"),
            )
        )
    if not rows:
        return []
    columns = (
        Column(phrase("Supply"), 1.0),
        Column(phrase("It stands"), 2.0),
        Column(phrase("Part"), 1.2),
        Column(phrase("Standby batteries"), 1.2),
        Column(phrase("Circuits and limiters"), 1.8),
        Column(phrase("Feeds"), 2.4),
    )
    blocks: list[Block] = [Heading(phrase("Supplies")), Table(columns, tuple(rows), title=phrase("Supplies"))]
    totals = _goods(project)
    if totals.rows:
        blocks += [Heading(phrase("Goods of supplies and wire"), 2), totals]
    return [Section(tuple(blocks))]


def _goods(project: ProjectView) -> Table:
    """Add up what feeds openings, building by building: all of the bill save what stands under an opening's heading."""
    found: dict[tuple[str, str, str], tuple[float, list[str]]] = {}
    for each in project.bill.goods:
        if not each.supply_id and each.line is None and each.role in ITEM_ORDER:
            continue
        quantity, told = found.get((each.building, each.role, each.part), (0.0, []))
        told += [run_lengths(each.line, project.length_style)] if each.line is not None else []
        told += [f"needs {words.needed(each.needs)}"] if each.needs else []
        found[each.building, each.role, each.part] = quantity + float(each.quantity), told
    names = {str(role): text for role, text in ROLES.items()}
    rows = []
    for (building, role, number), (quantity, told) in found.items():
        part = project.catalogue.get(number)
        unit = part.unit if part is not None else ""
        note = "; ".join(dict.fromkeys(told))
        rows.append((building or phrase("no building"), names[role], number or "-", plain_amount(quantity), unit, note))
    columns = (
        Column(phrase("Building"), 1.2),
        Column(phrase("What"), 1.2),
        Column(phrase("Part"), 1.2),
        Column(phrase("Qty"), 0.6, "right"),
        Column(phrase("Unit"), 0.5),
        Column("", 3.4),
    )
    return Table(columns, tuple(rows), title=phrase("Goods of supplies and wire"))


def _of_points(view: OpeningView, said: Callable[[PointFit], str]) -> str:
    """Say something of an opening once, or of each of its lock points where they differ."""
    found = [said(at) for at in view.points]
    if len(set(found)) == 1:
        return found[0]
    return "; ".join(f"{at.given.point.name}: {each}" for at, each in zip(view.points, found, strict=True))


def _leaf_words(at: PointFit, style: LengthStyle) -> str:
    leaf = lock_leaf(at.given) or next(iter(at.given.leaves), None)
    if leaf is None:
        return phrase("no leaf")
    return f"{words.length(leaf.thickness_mm, style)}, {words.leaf_word('material', leaf.material)}"


def _lock_words(at: PointFit) -> str:
    lock = lock_item(at.given)
    return words.item_word("lock_form", lock.lock_form) if lock else phrase("none found")


def _unit_of(project: ProjectView, part: FitPart) -> str:
    entry = project.catalogue.get(part.part)
    return entry.unit if entry else ""


def _finish_of(project: ProjectView, part: FitPart) -> str:
    entry = project.catalogue.get(part.part)
    return entry.finish if entry else ""


def _not_fitted(project: ProjectView) -> list[Block]:
    rows = []
    for view in project.openings:
        if view.fit is not None and view.fit.status == "fits":
            continue
        if view.fit is None:
            rows.append(
                (
                    view.mark,
                    words.status(None),
                    phrase("No fit counts: {unfitted}. Fit the opening.", unfitted=view.unfitted),
                )
            )
            continue
        lines = [line for at in view.points for line in _why_not(at)]
        rows.append((view.mark, words.status(view.fit), "\n".join(lines) or phrase("no reason was recorded")))
    if not rows:
        return [Heading(phrase("Does not fit, or to measure")), Paragraph(phrase("None: every opening fits."))]
    # What holds for several openings word for word is said once.
    alike: dict[tuple[str, str], list[str]] = {}
    for mark, status, why in rows:
        alike.setdefault((status, why), []).append(mark)
    merged = tuple((", ".join(marks), status, why) for (status, why), marks in alike.items())
    columns = (Column(phrase("Mark"), 1.4), Column(phrase("Status"), 1.0), Column(phrase("Why"), 6.0))
    return [
        Heading(phrase("Does not fit, or to measure")),
        Table(columns, merged, title=phrase("Does not fit, or to measure")),
    ]


def _why_not(at: PointFit) -> list[str]:
    """Say why a lock point is not fitted; nothing of one that is."""
    if at.fit is None or at.fit.status == "fits":
        return []
    needs = [phrase("needs {label}: {blocks}", label=need.label, blocks=need.blocks) for need in at.fit.needs]
    refused = [f"{refusal.part}: {refusal.reason}" for refusal in at.fit.refused[:4]]
    more = len(at.fit.refused) - len(refused)
    why = needs + refused
    if more > 0:
        why.append(phrase_of_count("and {count} more refusal", "and {count} more refusals", more))
    return [f"{at.given.point.name}: {line}" for line in why] if at.given.point.name else why


def _open_findings(project: ProjectView) -> list[Block]:
    """Return what the rules say, each text once with all openings that it is said of."""
    order = {severity: rank for rank, severity in enumerate(SEVERITIES)}
    # A mark once in its order: a list would be gone through for each of thousands.
    marks: dict[tuple[bool, int, str, str, str, str], dict[str, None]] = {}
    for view in project.openings:
        for f in view.findings:
            key = (f.waived, order[f.severity], f.rule, f.message, f.cure, f.waived_by or "")
            marks.setdefault(key, {})[view.mark] = None
    if not marks:
        return [Heading(phrase("Findings")), Paragraph(phrase("No rule has found anything."))]
    # By severity; within one, in the order of the openings that they are first said of.
    found = sorted(marks.items(), key=lambda entry: entry[0][:2])
    columns = (
        Column(phrase("Severity"), 0.8),
        Column(phrase("Rule"), 1.8),
        Column(phrase("Finding"), 3.6),
        Column(phrase("Cure"), 2.3),
        Column(phrase("Openings"), 2.5),
    )
    rows = tuple(
        (
            phrase(words.SEVERITY[SEVERITIES[rank]])
            + (phrase(" (waived: {waived_by})", waived_by=waived_by) if waived else ""),
            rule_said(rule),
            kept_phrase(message, rule),
            kept_phrase(cure, rule),
            f"{len(said_of)}: {', '.join(said_of) if len(said_of) <= _MANY else f'list {number}'}",
        )
        for number, ((waived, rank, rule, message, cure, waived_by), said_of) in enumerate(found, start=1)
    )
    # In a narrow column beside its finding a list of hundreds takes pages of white.
    lists = tuple(
        (number, f"{len(said_of)}: {', '.join(said_of)}")
        for number, (_, said_of) in enumerate(found, start=1)
        if len(said_of) > _MANY
    )
    blocks: list[Block] = [Heading(phrase("Findings")), Table(columns, rows, title=phrase("Findings"))]
    if lists:
        listed = (Column(phrase("List"), 0.4, "right"), Column(phrase("Openings"), 9.0))
        blocks += [
            Heading(phrase("Openings of findings"), 2),
            Table(listed, lists, title=phrase("Openings of findings")),
        ]
    return blocks


SCHEDULE = DocumentKind("schedule", to_phrase("Door hardware schedule"), ("pdf", "xlsx"), False, build)
