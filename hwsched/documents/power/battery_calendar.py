"""The battery calendar: every opening on batteries, the one that lasts least first, and when its cells are due."""

from datetime import date

from hwsched.calc.power.cells import default_cells
from hwsched.documents import words
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.render.blocks import Block, Cell, Column, Document, Event, Facts, Heading, Paragraph, Section, Table
from hwsched.wiring.batteries import Due, dues


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the battery calendar of a project."""
    found = dues((at.given, at.fit) for view in project.openings for at in view.points)
    # Without a day none may stand in a calendar: an entry at the end of time would be taken for a date.
    dated = sorted((due for due in found if due.due_on is not None), key=lambda due: (due.due_on or date.max, due.mark))
    undated = [due for due in found if due.due_on is None]
    sections = [Section((*_summary(found, dated), _weakest(found)))] if found else [Section((*_summary(found, dated),))]
    if dated:
        sections.append(Section((Heading("By day"), _by_day(dated))))
    if undated:
        rows = tuple((due.mark, "; ".join(due.needs) or "more than 200 years") for due in undated)
        table = Table((Column("Mark", 1.0), Column("Needs", 5.0)), rows, title="Without a day")
        sections.append(Section((Heading("Without a day"), table)))
    sections.append(Section(tuple(_defaults())))
    return Document(
        "Battery calendar", project.title, project.revision, project.date, tuple(sections),
        subtitle=f"{_openings(found)} openings on batteries", events=tuple(_event(project, due) for due in dated),
    )  # fmt: skip


def _openings(found: tuple[Due, ...]) -> int:
    return len({due.opening_id for due in found})


def _summary(found: tuple[Due, ...], dated: list[Due]) -> list[Block]:
    lives = [due.days for due in found if due.days is not None]
    pairs = (
        ("Openings on batteries", str(_openings(found))),
        ("Shortest life", f"{min(lives):.0f} days" if lives else words.UNKNOWN),
        ("With a day of change", str(len(dated))),
        ("Installation date unknown", str(sum(due.installed_on is None for due in found))),
    )
    blocks: list[Block] = [Heading("Batteries"), Facts(pairs)]
    if not found:
        blocks.append(Paragraph("No opening runs on batteries."))
    blocks += [
        Paragraph(
            "A life is an estimate from charge: what is drawn standing and by each operation, self-discharge, and the "
            "cold where it is known. Change cells before it ends, all of a pack at once, of one kind; never mix old "
            "and new.",
            "caution",
        ),
        Paragraph(
            "Lithium cells can burn: do not charge, crush or heat them, and dispose of them as the place requires.",
            "caution",
        ),
    ]
    return blocks


def _weakest(found: tuple[Due, ...]) -> Table:
    rows: list[tuple[Cell, ...]] = []
    for due in found:
        rows.append(
            (
                due.mark,
                words.place(*due.place),
                f"{words.quantity(due.count)} × {due.designation or due.cell}",
                words.UNKNOWN if due.operations is None else round(due.operations),
                words.UNKNOWN if due.mah_per_day is None else round(due.mah_per_day, 2),
                words.UNKNOWN if due.days is None else int(due.days),
                due.due_on.isoformat() if due.due_on else words.UNKNOWN,
                ("shelf life" if due.limited_by == "shelf life" else "")
                + (" cold" if due.cold_share < 1 else "")
                + (" *" if due.unverified else ""),
            )
        )
    columns = (
        Column("Mark", 1.0), Column("Place", 1.7), Column("Cells", 1.2), Column("Ops a day", 0.8, "right"),
        Column("mAh a day", 0.9, "right"), Column("Days", 0.7, "right"), Column("Change by", 1.0), Column("Note", 0.9),
    )  # fmt: skip
    return Table(columns, tuple(rows), title="Weakest first")


def _by_day(dated: list[Due]) -> Table:
    rows = tuple(
        (
            due.due_on.isoformat() if due.due_on else "", due.mark, words.place(*due.place),
            f"{words.quantity(due.count)} × {due.designation or due.cell}",
        )
        for due in dated
    )  # fmt: skip
    columns = (Column("Change by", 1.0), Column("Mark", 1.2), Column("Place", 2.0), Column("Cells", 1.6))
    return Table(columns, rows, title="By day")


def _defaults() -> list[Block]:
    rows = tuple(
        (
            cell.designation, cell.chemistry, cell.nominal_v, cell.capacity_mah,
            words.UNKNOWN if cell.end_v is None else cell.end_v,
            cell.source + ("" if cell.verified else ", unverified"),
        )
        for cell in default_cells()
    )  # fmt: skip
    columns = (
        Column("Cell", 1.2), Column("Chemistry", 1.6), Column("Nominal [V]", 0.8, "right"),
        Column("Capacity [mAh]", 0.9, "right"), Column("To [V]", 0.6, "right"), Column("Source", 2.4),
    )  # fmt: skip
    return [
        Heading("Cells for the catalogue"),
        Paragraph(
            "Cautious values for a catalogue that has no data sheet yet; the values in the catalogue decide, and a "
            "data sheet goes before both. A * above marks a life behind which a value from memory stands.",
            "small",
        ),
        Table(columns, rows, title="Cells for the catalogue"),
    ]


def _event(project: ProjectView, due: Due) -> Event:
    cells = f"{words.quantity(due.count)} × {due.designation or due.cell}"
    days = "" if due.days is None else f"{words.days(due.days).capitalize()} by charge at the surveyed use."
    return Event(
        # By the lock point and not by its mark: a calendar that is sent anew must replace its entries, though the
        # mark was changed.
        f"battery-{due.key}", due.due_on or date.max, f"Change cells of {due.mark}: {cells}", days,
        words.place(*due.place),
    )  # fmt: skip


BATTERY_CALENDAR = DocumentKind("battery-calendar", "Battery calendar", ("pdf", "xlsx", "ics"), False, build)
