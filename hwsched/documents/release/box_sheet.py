"""The sheet that goes into a box: what lies in it, and what is looked at before it is closed."""

from typing import Final

from hwsched.documents import words
from hwsched.documents.release.packet import box_blocks
from hwsched.documents.release.packet_facts import situations
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.render.blocks import (
    TICK,
    Block,
    Cell,
    Column,
    Document,
    Facts,
    Heading,
    Paragraph,
    Section,
    SignOff,
    Table,
)
from hwsched.values import Fit
from hwsched.work.plan import plan

_CHECKED: Final = (
    Column("", 0.2, "centre"), Column("Look at", 1.2), Column("It is", 3.0), Column("In the box", 3.0),
)  # fmt: skip


def build(project: ProjectView, _: OpeningView | None) -> Document:
    """Build a sheet for the box of every opening that may be picked for."""
    ready = [view for view in project.openings if view.ready]
    held = [view.mark for view in project.openings if not view.ready]
    front: list[Block] = [Heading("Box sheets"), Paragraph(f"A sheet for each of {len(ready)} boxes.")]
    if held:
        front.append(Paragraph(f"Not to be picked: {', '.join(held)}.", "stop"))
    return Document(
        "Box sheet",
        project.title,
        project.revision,
        project.date,
        (Section(tuple(front)), *(_sheet(project, view) for view in ready)),
    )


def _sheet(project: ProjectView, view: OpeningView) -> Section:
    opening = view.given.opening
    pairs = (
        ("Place", words.place(opening.building, opening.level)),
        ("Location", words.location(opening.room_from, opening.room_to) or words.UNKNOWN),
        ("Revision", f"{project.revision}{f', code {view.code}' if view.code else ''}"),
    )
    plans = [plan(situation) for situation in situations(view)]
    blocks: list[Block] = [Heading(f"Box of {view.mark}"), Facts(pairs, columns=3)]
    blocks += box_blocks(project, view, plans)
    blocks += [
        Heading("Before it is closed", 2),
        Table(_CHECKED, tuple(_checks(project, view)), title="Before it is closed"),
        SignOff(("Packed by", "Checked by")),
    ]
    return Section(tuple(blocks), mark=view.mark, at_door=True, code=view.code)


def _checks(project: ProjectView, view: OpeningView) -> list[tuple[Cell, ...]]:
    """Return what is compared: what is surveyed against what was put in."""
    style = project.length_style
    rows: list[tuple[Cell, ...]] = []
    for situation in situations(view):
        named = f"{situation.given.point.name}: " if view.several else ""
        leaf, lock, fit = situation.leaf, situation.lock, situation.fit
        if leaf is not None:
            said = f"{words.length(leaf.thickness_mm, style)} thick, {words.leaf_word('material', leaf.material)}"
            rows.append((TICK, f"{named}Leaf", said, _named(fit, "cylinder", "lock")))
        if lock is not None:
            said = f"{words.item_word('lock_form', lock.lock_form)}, backset {words.length(lock.backset_mm, style)}"
            rows.append((TICK, f"{named}Lock", said, _named(fit, "cylinder", "lock", "reader")))
            if fit.part("cam") is not None or fit.part("tailpiece") is not None:
                cam = words.item_word("cam_form", lock.cam_form)
                rows.append((TICK, f"{named}Cam", cam, _named(fit, "cam", "tailpiece")))
    rows.append((TICK, "Sheet", f"revision {project.revision}", f"code {view.code or words.UNKNOWN} on box and packet"))
    return rows


def _named(fit: Fit, *roles: str) -> str:

    return ", ".join(f"{part.part} {part.description}".strip() for part in fit.parts if part.role in roles) or "nothing"


BOX_SHEETS = DocumentKind("box-sheets", "Box sheets", ("pdf",), False, build, coded=True)
