"""The sheet that goes into a box: what lies in it, and what is looked at before it is closed."""

from typing import Final

from hwsched.documents import words
from hwsched.documents.release.packet import box_blocks
from hwsched.documents.release.packet_facts import situations
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.language import phrase, phrase_of_count, to_phrase
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
    Column("", 0.2, "centre"),
    Column(to_phrase("Look at"), 1.2),
    Column(to_phrase("It is"), 3.0),
    Column(to_phrase("In the box"), 3.0),
)


def build(project: ProjectView, _: OpeningView | None) -> Document:
    """Build a sheet for the box of every opening that may be picked for."""
    ready = [view for view in project.openings if view.ready]
    held = [view.mark for view in project.openings if not view.ready]
    front: list[Block] = [
        Heading(phrase("Box sheets")),
        Paragraph(phrase_of_count("A sheet for {count} box.", "A sheet for each of {count} boxes.", len(ready))),
    ]
    if held:
        front.append(Paragraph(phrase("Not to be picked: {held}.", held=", ".join(held)), "stop"))
    return Document(
        phrase("Box sheet"),
        project.title,
        project.revision,
        project.date,
        (Section(tuple(front)), *(_sheet(project, view) for view in ready)),
    )


def _sheet(project: ProjectView, view: OpeningView) -> Section:
    opening = view.given.opening
    pairs = (
        (phrase("Place"), words.place(opening.building, opening.level)),
        (phrase("Location"), words.location(opening.room_from, opening.room_to) or phrase(words.UNKNOWN)),
        (phrase("Revision"), f"{project.revision}{phrase(', code {code}', code=view.code) if view.code else ''}"),
    )
    plans = [plan(situation) for situation in situations(view)]
    blocks: list[Block] = [Heading(phrase("Box of {mark}", mark=view.mark)), Facts(pairs, columns=3)]
    blocks += box_blocks(project, view, plans)
    blocks += [
        Heading(phrase("Before it is closed"), 2),
        Table(words.said(_CHECKED), tuple(_checks(project, view)), title=phrase("Before it is closed")),
        SignOff((phrase("Packed by"), phrase("Checked by"))),
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
            rows.append((TICK, phrase("{named}Leaf", named=named), said, _named(fit, "cylinder", "lock")))
        if lock is not None:
            said = words.item_word("lock_form", lock.lock_form)
            # A reader on a wall has no backset.
            if leaf is not None:
                said = phrase(
                    "{item_word}, backset {length}", item_word=said, length=words.length(lock.backset_mm, style)
                )
            rows.append((TICK, phrase("{named}Lock", named=named), said, _named(fit, "cylinder", "lock", "reader")))
            if fit.part("cam") is not None or fit.part("tailpiece") is not None:
                cam = words.item_word("cam_form", lock.cam_form)
                rows.append((TICK, phrase("{named}Cam", named=named), cam, _named(fit, "cam", "tailpiece")))
    rows.append(
        (
            TICK,
            phrase("Sheet"),
            f"revision {project.revision}",
            phrase("code {code} on box and packet", code=view.code or phrase(words.UNKNOWN)),
        )
    )
    return rows


def _named(fit: Fit, *roles: str) -> str:

    return ", ".join(f"{part.part} {part.description}".strip() for part in fit.parts if part.role in roles) or "nothing"


BOX_SHEETS = DocumentKind("box-sheets", to_phrase("Box sheets"), ("pdf",), False, build, coded=True)
