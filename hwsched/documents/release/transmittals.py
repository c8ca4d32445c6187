"""Transmittals: a sheet for each, with what went to whom, and a register of all."""

from typing import Final

from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.render.blocks import Block, Cell, Column, Document, Facts, Heading, Paragraph, Section, SignOff, Table
from hwsched.values.transmittal import Transmittal

_REGISTER: Final = (
    Column("No.", 0.4, "right"), Column("Date", 1.0), Column("To", 2.0), Column("Purpose", 1.6),
    Column("Files", 0.5, "right"), Column("Revision", 0.7), Column("Sent by", 1.2),
)  # fmt: skip
_FILES: Final = (
    Column("File", 3.0), Column("Revision", 1.2), Column("Size [kB]", 0.7, "right", 1), Column("Check", 1.4),
)  # fmt: skip
CHECK_LETTERS: Final = 12
"""Of a content's SHA-256 so many digits are printed: enough to tell two issues of one file apart."""


def build(project: ProjectView, _: OpeningView | None) -> Document:
    """Build the register and a sheet for each transmittal."""
    front: list[Block] = [Heading("Register of transmittals")]
    if project.sent:
        front.append(Table(_REGISTER, tuple(map(_row, project.sent)), title="Register of transmittals"))
    else:
        front.append(Paragraph("Nothing is written down as sent: hwsched release transmit."))
    return Document(
        "Transmittals",
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
    return sorted({each.revision or "working state" for each in sent.files})


def _sheet(sent: Transmittal) -> Section:
    pairs = (
        ("To", sent.recipient),
        ("Date", sent.at[:10]),
        ("Purpose", sent.purpose or "not stated"),
        ("Sent by", sent.person),
    )
    rows = tuple(
        (each.name, each.revision or "working state", each.size / 1000, each.hash[:CHECK_LETTERS])
        for each in sent.files
    )
    blocks: list[Block] = [Heading(f"Transmittal {sent.number}"), Facts(pairs)]
    if sent.note:
        blocks.append(Paragraph(sent.note))
    blocks += [
        Table(_FILES, rows, title=f"Transmittal {sent.number}"),
        Paragraph("Check: the first digits of the file's SHA-256, by which two issues are told apart.", "small"),
        SignOff(("Received",)),
    ]
    return Section(tuple(blocks), mark=f"T{sent.number}")


TRANSMITTALS = DocumentKind("transmittals", "Transmittals", ("pdf", "xlsx"), False, build)
