"""Transmittals: a sheet for each, with what went to whom, and a register of all."""

from typing import Final

from hwsched.documents import words
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.language import phrase, to_phrase
from hwsched.render.blocks import Block, Cell, Column, Document, Facts, Heading, Paragraph, Section, SignOff, Table
from hwsched.values.transmittal import Transmittal

_REGISTER: Final = (
    Column(to_phrase("No."), 0.4, "right"),
    Column(to_phrase("Date"), 1.0),
    Column(to_phrase("To"), 2.0),
    Column(to_phrase("Purpose"), 1.6),
    Column(to_phrase("Files"), 0.5, "right"),
    Column(to_phrase("Revision"), 0.7),
    Column(to_phrase("Sent by"), 1.2),
)
_FILES: Final = (
    Column(to_phrase("File"), 3.0),
    Column(to_phrase("Revision"), 1.2),
    Column(to_phrase("Size [kB]"), 0.7, "right", 1),
    Column(to_phrase("Check"), 1.4),
)
CHECK_LETTERS: Final = 12
"""Of a content's SHA-256 so many digits are printed: enough to tell two issues of one file apart."""


def build(project: ProjectView, _: OpeningView | None) -> Document:
    """Build the register and a sheet for each transmittal."""
    front: list[Block] = [Heading(phrase("Register of transmittals"))]
    if project.sent:
        front.append(
            Table(words.said(_REGISTER), tuple(map(_row, project.sent)), title=phrase("Register of transmittals"))
        )
    else:
        front.append(Paragraph(phrase("Nothing is written down as sent: hwsched release transmit.")))
    return Document(
        phrase("Transmittals"),
        project.title,
        project.revision,
        project.date,
        (Section(tuple(front)), *(_sheet(each) for each in project.sent)),
    )


def _row(sent: Transmittal) -> tuple[Cell, ...]:
    return (
        sent.number, sent.at[:10], sent.recipient, sent.purpose, len(sent.files), ", ".join(_revisions(sent)),
        sent.person,
    )  # fmt: skip


def _revisions(sent: Transmittal) -> list[str]:
    return sorted({each.revision or phrase("working state") for each in sent.files})


def _sheet(sent: Transmittal) -> Section:
    pairs = (
        (phrase("To"), sent.recipient),
        (phrase("Date"), sent.at[:10]),
        (phrase("Purpose"), sent.purpose or phrase("not stated")),
        (phrase("Sent by"), sent.person),
    )
    rows = tuple(
        (each.name, each.revision or phrase("working state"), each.size / 1000, each.hash[:CHECK_LETTERS])
        for each in sent.files
    )
    blocks: list[Block] = [Heading(phrase("Transmittal {number}", number=sent.number)), Facts(pairs)]
    if sent.note:
        blocks.append(Paragraph(sent.note))
    blocks += [
        Table(words.said(_FILES), rows, title=phrase("Transmittal {number}", number=sent.number)),
        Paragraph(
            phrase("Check: the first digits of the file's SHA-256, by which two issues are told apart."), "small"
        ),
        SignOff((phrase("Received"),)),
    ]
    return Section(tuple(blocks), mark=f"T{sent.number}")


TRANSMITTALS = DocumentKind("transmittals", to_phrase("Transmittals"), ("pdf", "xlsx"), False, build)
