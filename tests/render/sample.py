"""Documents for the render tests."""

from hwsched.drawings.opening.elevation import elevation
from hwsched.render.blocks import (
    TICK,
    Bullets,
    Column,
    Document,
    Drawings,
    Facts,
    Heading,
    PageBreak,
    Paragraph,
    Section,
    SignOff,
    StepLine,
    Steps,
    Table,
)
from tests.drawings.openings import FIT, GIVEN

COLUMNS = (Column("", 0.3, "centre"), Column("Mark", 1.0), Column("Description", 4.0), Column("Qty", 0.5, "right"))


def document(*blocks, **changes):
    facts = {"title": "Pick list", "project": "Harbour Works", "revision": "B", "date": "2025-03-01"}
    facts |= changes
    return Document(sections=(Section(blocks),), **facts)


def rows(count):
    return tuple((TICK, f"{n:04d}", f"part number {n} for the test", float(n)) for n in range(count))


def everything():
    blocks = (
        Heading("Opening 0012"),
        Paragraph("DO NOT INSTALL. The lead is short.", "stop"),
        Paragraph("Rated leaf: round holes only.", "caution"),
        Facts((("Location", "Corridor to archive"), ("Hand", "LH"), ("Rating", "90 min"))),
        Drawings(tuple(elevation(GIVEN, FIT, face) for face in ("inside", "key"))),
        Heading("Steps", 2),
        Bullets(("Take the cylinder out.", "Drill the pilot."), numbered=True),
        Bullets(("Drill", "Jig")),
        Steps(
            (
                StepLine(1, "lock edge", "Draw the case out.", ("Silica dust at the drill.",)),
                StepLine(2, "inside", "Put the pack in.", readings=("Volts: 9 to 12 V; read ......",)),
            )
        ),
        Table(COLUMNS, rows(5), "Box contents"),
        PageBreak(),
        Heading("Sign-off", 3),
        SignOff(("Installer", "Checked by")),
        Paragraph("small", "small"),
        Paragraph("strong", "strong"),
    )
    return Document(
        "Install packets", "Harbour Works", "B", "2025-03-01",
        (Section(blocks, "0012"), Section((Heading("Opening B/1"), Table(COLUMNS, rows(90), "Box contents")), "B/1")),
        subtitle="North building", footer="A planning note, not a code ruling.",
    )  # fmt: skip
