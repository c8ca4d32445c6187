"""The fault sheet of one opening: by symptom what to look at, with the readings expected at this door."""

from typing import Final

from hwsched.documents import words
from hwsched.documents.power.power_words import STATES, states_of, volts
from hwsched.documents.release.packet import point_title
from hwsched.documents.release.packet_facts import situations
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.language import phrase, to_phrase
from hwsched.render.blocks import Block, Cell, Column, Columns, Document, Facts, Heading, Paragraph, Section, Table
from hwsched.work.faults import STAGES, UNVERIFIED, symptoms
from hwsched.work.situation import Situation

_FIRST: Final = to_phrase(
    "Egress first: where the way out is stiff or barred, stop and restore it before anything "
    "else. At the end try egress, closing and latching again."
)
_HOW: Final = to_phrase(
    "Common practice and, where it is said, from memory: unverified. One thing at a time, each "
    "reading written down; what the product's own sheet says goes before this one."
)


def build(project: ProjectView, view: OpeningView | None) -> Document:
    """Build the fault sheet of one opening; raises ValueError without one."""
    if view is None:
        raise ValueError("a fault sheet is the document of one opening")
    return Document(
        phrase("Fault sheet"),
        project.title,
        project.revision,
        project.date,
        (Section(tuple(_blocks(project, view)), mark=view.mark, at_door=True, code=view.code),),
        subtitle=words.place(view.given.opening.building, view.given.opening.level),
    )


def _blocks(project: ProjectView, view: OpeningView) -> list[Block]:
    blocks: list[Block] = [Heading(phrase("Faults at {mark}", mark=view.mark))]
    if view.fit is None or view.fit.status != "fits":
        return [
            *blocks,
            Paragraph(phrase("No fit of this opening counts: what is expected here is not known."), "stop"),
        ]
    parts = situations(view)
    if any(situation.egress for situation in parts):
        blocks.append(Paragraph(phrase(_FIRST), "caution"))
    blocks += [*_wiring(project, view), Columns(2)]
    for situation in parts:
        if view.several:
            blocks.append(Heading(point_title(situation.given), 2))
        blocks += _of_point(situation)
    return [*blocks, Paragraph(phrase(_HOW), "small"), Paragraph(phrase(words.ADVICE), "small")]


def _of_point(situation: Situation) -> list[Block]:
    blocks: list[Block] = []
    for symptom in symptoms(situation):
        rows: list[tuple[Cell, ...]] = [
            (
                number,
                STAGES[look.stage],
                phrase("{text} (From memory, unverified.)", text=look.text) if look.source == UNVERIFIED else look.text,
            )
            for number, look in enumerate(symptom.looks, start=1)
        ]
        columns = (
            Column(phrase("No."), 0.2, "right"),
            Column(phrase("Look at"), 1.0),
            Column(phrase("Try, and what is expected here"), 4.0),
        )
        blocks += [Heading(symptom.title, 2), Table(columns, tuple(rows), title=symptom.title)]
    return blocks


def _wiring(project: ProjectView, view: OpeningView) -> list[Block]:
    """Return what the wiring brings to the unit, where it hangs on a circuit."""
    found = project.power.circuit_of(view.given.opening.id)
    node = found[1].node_of_devices(view.given.opening.id) if found is not None else None
    if found is None or node is None or not node.volts:
        return []
    pairs = tuple(
        (phrase("{states} at the unit", states=phrase(STATES[state])), f"{volts(node, state)} V")
        for state in states_of(found[1])
    )
    return [Facts(((phrase("Supply"), found[0].supply.name), *pairs), columns=3)]


FAULT_SHEET = DocumentKind("fault-sheets", to_phrase("Fault sheets"), ("pdf", "xlsx"), True, build)
