"""The installer's packet for one opening: drawing, holes, tools, box contents, steps, cautions, tests, sign-off."""

from dataclasses import replace
from typing import Final

from hwsched.attributes.of_parts import PACK_LOW_V
from hwsched.documents import words
from hwsched.documents.power.packet_power import power_blocks, unproved_blocks
from hwsched.documents.release.packet_work import steps_blocks, tests_table, tool_word, tool_words
from hwsched.documents.release.schedule import item_lines
from hwsched.documents.stock.box_contents import contents
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.drawings import bore_detail, edge_view, elevation, face_detail, section
from hwsched.drawings.drawing import Drawing
from hwsched.drawings.opening.face_ground import CONVENTION_NOTE
from hwsched.drawings.opening.hole_words import direction_words
from hwsched.quantities import LengthStyle
from hwsched.render.blocks import (
    TICK,
    Block,
    Bullets,
    Cell,
    Column,
    Document,
    Drawings,
    Facts,
    Heading,
    Paragraph,
    Section,
    SignOff,
    Table,
)
from hwsched.rules.reading import leaf_hand, leaf_name, lock_item, lock_leaf
from hwsched.values import Fit, Hole, OpeningInput, Part
from hwsched.wiring.batteries import dues
from hwsched.work.plan import plan
from hwsched.work.situation import Situation
from hwsched.work.step import Plan

_SAME_PLACE_MM: Final = 0.05
"""What a rule does not show."""


def build(project: ProjectView, view: OpeningView | None) -> Document:
    """Build the packet of one opening; raises ValueError without one."""
    if view is None:
        raise ValueError("a packet is the document of one opening")
    supplied = any(at.fit is not None and at.fit.power == "supply" for at in view.points)
    power = power_blocks(project, view) if supplied else []
    # What a battery wants is said among the facts; a supply's wiring has a sheet of its own.
    pages = [Section(tuple(_blocks(project, view)), mark=view.mark, at_door=True, code=view.code)]
    if power:
        pages.append(Section(tuple(power), mark=view.mark, landscape=True, at_door=True, code=view.code))
    return Document(
        "Install packet",
        project.title,
        project.revision,
        project.date,
        tuple(pages),
        subtitle=words.place(view.given.opening.building, view.given.opening.level),
    )


def _blocks(project: ProjectView, view: OpeningView) -> list[Block]:
    blocks: list[Block] = [Heading(f"Opening {view.mark}"), *_verdict(project, view), _facts(project, view)]
    if view.fit is None:
        return blocks
    fits = view.fit.status == "fits"
    parts = _situations(view)
    plans = [plan(situation) for situation in parts] if fits else []
    if view.several and fits:
        blocks += _box(project, view, plans)
    for number, situation in enumerate(parts):
        blocks += _of_point(project, view, situation, plans[number] if fits else None)
    blocks += _findings(view)
    blocks += [Heading("Sign-off", 2), SignOff(("Installer", "Checked by", "For the owner"))]
    return blocks


def _situations(view: OpeningView) -> list[Situation]:
    """Return what decides the texts of each lock point: some steps are done once an opening or once a leaf."""
    found: list[Situation] = []
    leaves: list[str] = []
    for number, at in enumerate(view.points, start=1):
        leaf = lock_leaf(at.given) or next(iter(at.given.leaves), None)
        name = leaf_name(leaf) if leaf is not None else ""
        found.append(
            Situation(
                at.given,
                at.fit or Fit("to-measure"),
                leaf,
                lock_item(at.given),
                first=number == 1,
                last=number == len(view.points),
                new_leaf=name not in leaves,
            )
        )
        leaves.append(name)
    return found


def _of_point(project: ProjectView, view: OpeningView, situation: Situation, work: Plan | None) -> list[Block]:
    """Return the part of a packet for one lock point: the whole work of an opening that has only one."""
    given, fit, style = situation.given, situation.fit, project.length_style
    blocks: list[Block] = []
    if view.several:
        blocks += [Heading(_title(given)), Facts(tuple(_leaf_facts(situation, style) + _lock_facts(situation, style)))]
    beside = [each for each in view.points if each.given is not given]
    drawings = [elevation(given, fit, face, style, beside=beside) for face in ("inside", "key")]
    if work is None:
        return [*blocks, *_views(drawings, 80.0, same_scale=True)]
    blocks += _fit_lines(situation, style)
    blocks += _views(drawings, 50.0, same_scale=True)
    if situation.leaf is not None:
        cut = edge_view if situation.in_edge else section
        blocks += _views([face_detail(given, fit, "inside", style), cut(given, fit, style)], 68.0, same_scale=False)
        if any(hole.up_deg or hole.edge_deg for hole in fit.holes):
            blocks += _views([bore_detail(given, fit, style)], 58.0, same_scale=True)
    blocks += _holes(situation, style)
    if not view.several:
        blocks += _box(project, view, [work])
    blocks += steps_blocks(work)
    blocks += _tests(project, situation, work)
    return blocks


def _views(drawings: list[Drawing], height_mm: float, *, same_scale: bool) -> list[Block]:
    """Return drawings side by side, and under them what any of them notes, once and as wide as the page."""
    notes = dict.fromkeys(note for drawing in drawings for note in drawing.notes if not _stands_elsewhere(note))
    bare = tuple(replace(drawing, notes=()) for drawing in drawings)
    blocks: list[Block] = [Drawings(bare, height_mm=height_mm, same_scale=same_scale)]
    return [*blocks, Paragraph(" ".join(notes), "small")] if notes else blocks


def _stands_elsewhere(note: str) -> bool:
    """Tell whether what a drawing notes stands on the packet as a fact or in the table of holes."""
    return note == CONVENTION_NOTE or note.startswith("Leaf ") or note.endswith("marked from the part itself.")


def _title(given: OpeningInput) -> str:
    name = given.point.name
    return f"Lock point {given.point.number}: {name}"


def _verdict(project: ProjectView, view: OpeningView) -> list[Block]:
    if view.fit is None:
        # The sheet is printed all the same, so that nobody takes the missing one for a lost one.
        return [Paragraph(f"DO NOT INSTALL. No fit of this opening counts: {view.unfitted}.", "stop")]
    if view.fit.status == "to-measure":
        missing = "; ".join(f"needs {need.label} ({need.blocks})" for need in view.fit.needs) or "facts are missing"
        return [Paragraph(f"DO NOT INSTALL. Unknown: {missing}.", "stop")]
    if view.fit.status == "does-not-fit":
        refused = [
            (f"{at.given.point.name}, " if at.given.point.name else "", refusal)
            for at in view.points
            if at.fit is not None and at.fit.status == "does-not-fit"
            for refusal in at.fit.refused
        ]
        reasons = "; ".join(f"{where}{refusal.part}: {refusal.reason}" for where, refusal in refused[:3])
        return [Paragraph(f"DO NOT INSTALL. No combination of parts fits. {reasons}", "stop")]
    if view.blocking:
        reasons = " ".join(f"{finding.message} Cure: {finding.cure}" for finding in view.blocking)
        return [Paragraph(f"DO NOT INSTALL. {reasons}", "stop")]
    return unproved_blocks(project, view)


def _facts(project: ProjectView, view: OpeningView) -> Facts:
    opening = view.given.opening
    pairs = [
        ("Location", words.location(opening.room_from, opening.room_to) or words.UNKNOWN),
        ("Form and hand", f"{words.opening_word('form', opening.form)}, {opening.hand or 'hand unknown'}"),
        ("Fire rating", words.opening_word("rating", opening.rating)),
        ("Egress role", words.opening_word("egress", opening.egress)),
    ]
    if view.several:
        pairs.append(("Lock points", ", ".join(at.given.point.name for at in view.points)))
        if view.given.leaves:
            pairs.append(("Frame", words.opening_word("frame_material", opening.frame_material)))
    else:
        situation = _situations(view)[0]
        pairs += _leaf_facts(situation, project.length_style)
        if situation.leaf is not None:
            pairs.append(("Frame", words.opening_word("frame_material", opening.frame_material)))
        pairs += _lock_facts(situation, project.length_style)
    pairs += [(label, text or words.UNKNOWN) for label, text in view.own]
    return Facts(tuple(pairs))


def _leaf_facts(situation: Situation, style: LengthStyle) -> list[tuple[str, str]]:
    leaf = situation.leaf
    if leaf is None:
        return []
    hand = leaf_hand(situation.given)
    own_hand = [("Hand of this leaf", hand or "hand unknown")] if hand != situation.given.opening.hand else []
    return [
        *own_hand,
        ("Leaf size", words.size(leaf, style)),
        ("Leaf thickness", words.length(leaf.thickness_mm, style)),
        ("Leaf", f"{words.leaf_word('material', leaf.material)}, {words.leaf_word('construction', leaf.construction)}"),
    ]


def _lock_facts(situation: Situation, style: LengthStyle) -> list[tuple[str, str]]:
    lock = situation.lock
    if lock is None:
        return []
    return [
        ("Existing lock", words.item_word("lock_form", lock.lock_form)),
        ("Function", words.item_word("function", lock.function)),
        ("Backset", words.length(lock.backset_mm, style)),
        ("Cylinder above floor", words.length(lock.cylinder_height_mm, style)),
    ]


def _fit_lines(situation: Situation, style: LengthStyle) -> list[Block]:
    fit = situation.fit
    pairs = []
    if fit.stack is not None and fit.stack.form == "rim":
        pairs.append(("Cylinder head", "lies on the trim"))
    elif fit.stack is not None:
        turns = f", cam plane {fit.stack.turns} turns beyond centre" if fit.stack.turns else ""
        pairs.append(
            ("Cylinder head", f"{words.length(fit.stack.projection_mm, style)} proud of the trim{turns}")
        )  # fmt: skip
    if fit.stack is not None and fit.stack.cut_off_mm:
        pairs.append(("Break off the tailpiece", words.length(fit.stack.cut_off_mm, style)))
    if fit.cable is not None:
        spare = fit.cable.available_mm - fit.cable.length_mm
        pairs.append(
            (
                "Lead",
                f"needs {words.length(fit.cable.length_mm, style)}, has {words.length(fit.cable.available_mm, style)}, "
                f"{words.length(spare, style)} to spare",
            )
        )
    if fit.placement is not None:
        place = fit.placement
        where = {"inside": "on the inside", "key": "on the key side", "edge": "in the lock edge"}.get(
            place.face, "on the wall"
        )
        pairs.append(("Unit", f"{where}, {place.pattern}{' (placed by hand)' if place.source == 'by-hand' else ''}"))
    if fit.battery is not None:
        pairs.append(("Battery", f"{words.days(fit.battery.days)} at the surveyed use"))
    for due in dues([(situation.given, fit)]):
        pairs.append(("Cells", f"{words.quantity(due.count)} × {due.designation or due.cell}"))
        by = due.due_on.isoformat() if due.due_on else "write down the day of installation"
        pairs.append(("Change by", by))
    return [Facts(tuple(pairs))] if pairs else []


def _holes(situation: Situation, style: LengthStyle) -> list[Block]:
    fit = situation.fit
    if not fit.holes:
        return [Heading("Holes", 2), Paragraph("No hole is made.")]
    rows: list[tuple[Cell, ...]] = []
    # In the order of drilling: some begin at the bottom of others.
    for hole in sorted(fit.holes, key=lambda h: h.order):
        rows.append(
            (
                TICK,
                hole.order,
                hole.name + (f" ×{hole.count}" if hole.count > 1 else ""),
                hole.face,
                "through the part as template" if hole.by_template else _across(hole, style),
                "-" if hole.by_template else _from_cylinder(hole, style),
                _size(hole, style),
                words.length(hole.pilot_mm, style) if hole.pilot_mm is not None else "-",
                _depth(hole, style),
                direction_words(hole),
                ", ".join(part for part in (tool_word(hole.tool), hole.jig) if part),
            )
        )
    columns = (
        Column("", 0.3, "centre"), Column("No.", 0.4, "right"), Column("Hole", 2.2), Column("Face", 0.9),
        Column("From lock edge", 1.4, large=True), Column("From cylinder", 1.3, large=True),
        Column("Diameter", 0.9, large=True), Column("Pilot", 0.8, large=True), Column("Depth", 0.8, large=True),
        Column("Angle", 1.0), Column("Tool", 1.8),
    )  # fmt: skip
    return [Heading("Holes", 2), Table(columns, tuple(rows), title="Holes")]


def _across(hole: Hole, style: LengthStyle) -> str:
    """Say where a hole's centre is across its face; only on a face of the leaf that counts from the lock edge."""
    shown = words.length(hole.x_mm, style)
    places = {
        "lock-edge": " from the inside face",
        "hinge-edge": " from the inside face",
        "wall": " from the reader's centre",
    }
    return shown + places.get(hole.face, "")


def _from_cylinder(hole: Hole, style: LengthStyle) -> str:
    if hole.from_cylinder_mm is None:
        return "-"
    across, up = hole.from_cylinder_mm
    found = []
    if abs(up) > _SAME_PLACE_MM:
        found.append(f"{words.length(abs(up), style)} {'above' if up > 0 else 'below'}")
    if hole.face in ("lock-edge", "hinge-edge"):
        return ", ".join(found) or "level with its centre"
    if abs(across) > _SAME_PLACE_MM:
        found.append(f"{words.length(abs(across), style)} {'toward hinge' if across > 0 else 'toward edge'}")
    return ", ".join(found) or "at its centre"


def _size(hole: Hole, style: LengthStyle) -> str:
    if hole.width_mm is not None and hole.height_mm is not None:
        return f"{words.length(hole.width_mm, style)} × {words.length(hole.height_mm, style)}"
    enlarged = f", enlarges {words.length(hole.enlarges_mm, style)}" if hole.enlarges_mm is not None else ""
    return words.length(hole.diameter_mm, style) + enlarged


def _depth(hole: Hole, style: LengthStyle) -> str:
    begins = f", begins {words.length(hole.from_depth_mm, style)} below the face" if hole.from_depth_mm > 0 else ""
    return ("through" if hole.depth_mm is None else words.length(hole.depth_mm, style)) + begins


def _box(project: ProjectView, view: OpeningView, plans: list[Plan]) -> list[Block]:
    rows: list[tuple[Cell, ...]] = []
    strong = set()
    for at in view.points:
        if at.fit is None:
            continue
        if view.several:
            strong.add(len(rows))
            rows.append(("", "", "", "", f"For the {at.given.point.name}:"))
        for part in item_lines(at.fit.parts):
            entry = project.catalogue.get(part.part)
            strong.add(len(rows))
            unit = entry.unit if entry else ""
            rows.append((TICK, words.quantity(part.quantity), unit, part.part, part.description))
            for inside in contents(project.catalogue, part.part, part.quantity):
                rows.append(("", inside.shown, inside.unit, inside.number, inside.text))
    columns = (
        Column("", 0.3, "centre"), Column("Qty", 0.6, "right"), Column("Unit", 0.6), Column("Part", 1.6),
        Column("Description", 5.0),
    )  # fmt: skip
    blocks: list[Block] = [
        Heading("Box contents", 2),
        Table(columns, tuple(rows), title="Box contents", strong_rows=frozenset(strong), abreast=2),
    ]  # fmt: skip
    parts = [part for at in view.points if at.fit is not None for part in at.fit.parts]
    tools = tool_words(project.catalogue, parts, plans)
    if tools:
        blocks.append(Paragraph(f"Tools: {'; '.join(tools)}."))
    return blocks


def _tests(project: ProjectView, situation: Situation, work: Plan) -> list[Block]:
    blocks: list[Block] = [Heading("Test sheet", 2), tests_table(work)]
    unit = situation.fit.part("unit")
    entry = project.catalogue.get(unit.part) if unit else None
    if situation.fit.part("battery") is not None and entry is not None:
        blocks.append(Paragraph(spent_words(entry), "small"))
    blocks.append(
        Facts((("Cylinder serial number", "." * 24), ("Unit serial number", "." * 24), ("Found different", "." * 24)))
    )
    return blocks


def spent_words(unit: Part) -> str:
    """Say at which reading a pack is spent: what its unit still works at decides, not what a fresh one reads.

    Examples
    --------
    >>> spent_words(Part("U-1", "surface-unit", attributes={"pack_low_v": 5.4}))
    'The unit works down to 5.4 V: a pack that reads less while it operates is spent or badly connected.'
    """
    lowest = unit.number_of(PACK_LOW_V)
    if lowest is None:
        return (
            f"At which reading the pack is spent is unknown: needs part {unit.number}, the lowest pack voltage that it "
            "works at."
        )
    return f"The unit works down to {lowest:g} V: a pack that reads less while it operates is spent or badly connected."


def _findings(view: OpeningView) -> list[Block]:
    # Notes are for who specifies, and stand in the schedule: at the door they hide what matters.
    lines = tuple(
        f"{words.SEVERITY[f.severity]}{f' (waived by {f.waived_by})' if f.waived else ''}: {f.message} {f.cure}"
        for f in view.findings
        if f.severity != "note"
    )
    return [Heading("What the rules say", 2), Bullets(lines)] if lines else []


PACKET = DocumentKind("packets", "Install packets", ("pdf",), True, build)
