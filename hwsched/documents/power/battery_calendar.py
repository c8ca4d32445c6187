"""The battery calendar: every opening on batteries, the one that lasts least first, and when its cells are due."""

from datetime import date

from hwsched.calc.power.cells import default_cells
from hwsched.documents import words
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.render.blocks import Block, Cell, Column, Document, Event, Facts, Heading, Paragraph, Section, Table
from hwsched.values.amounts import plain_amount
from hwsched.wiring.batteries import Due, dues


def build(project: ProjectView, _: OpeningView | None = None) -> Document:
    """Build the battery calendar of a project."""
    found = dues((at.given, at.fit) for view in project.openings for at in view.points)
    # Without a day none may stand in a calendar: an entry at the end of time would be taken for a date.
    dated = sorted((due for due in found if due.due_on is not None), key=lambda due: (due.due_on or date.max, due.mark))
    undated = [due for due in found if due.due_on is None]
    sections = [Section((*_summary(found, dated), _weakest(found)))] if found else [Section((*_summary(found, dated),))]
    if dated:
        sections.append(Section((Heading(phrase("By day")), _by_day(dated))))
    if undated:
        rows = tuple(
            (due.mark, words.needed(due.needs, project.catalogue) or phrase("more than 200 years")) for due in undated
        )
        table = Table((Column(phrase("Mark"), 1.0), Column(phrase("Needs"), 5.0)), rows, title=phrase("Without a day"))
        sections.append(Section((Heading(phrase("Without a day")), table)))
    sections.append(Section(tuple(_defaults())))
    return Document(
        phrase("Battery calendar"),
        project.title,
        project.revision,
        project.date,
        tuple(sections),
        subtitle=phrase_of_count(
            "{openings} opening on batteries",
            "{openings} openings on batteries",
            _openings(found),
            openings=_openings(found),
        ),
        events=tuple(_event(project, due) for due in dated),
    )


def _openings(found: tuple[Due, ...]) -> int:
    return len({due.opening_id for due in found})


def _summary(found: tuple[Due, ...], dated: list[Due]) -> list[Block]:
    lives = [due.days for due in found if due.days is not None]
    pairs = (
        (phrase("Openings on batteries"), str(_openings(found))),
        (
            phrase("Shortest life"),
            phrase_of_count("{count} day", "{count} days", int(min(lives))) if lives else phrase(words.UNKNOWN),
        ),
        (phrase("With a day of change"), str(len(dated))),
        (phrase("Installation date unknown"), str(sum(due.installed_on is None for due in found))),
    )
    blocks: list[Block] = [Heading(phrase("Batteries")), Facts(pairs)]
    if not found:
        blocks.append(Paragraph(phrase("No opening runs on batteries.")))
    blocks += [
        Paragraph(
            phrase(
                "A life is an estimate from charge: what is drawn standing and by each operation, "
                "self-discharge, and the cold where it is known. Change cells before it ends, all of a pack "
                "at once, of one kind; never mix old and new."
            ),
            "caution",
        ),
        Paragraph(
            phrase(
                "Lithium cells can burn: do not charge, crush or heat them, and dispose of them as the place requires."
            ),
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
                f"{plain_amount(due.count)} × {due.designation or due.cell}",
                phrase(words.UNKNOWN) if due.operations is None else round(due.operations),
                phrase(words.UNKNOWN) if due.mah_per_day is None else round(due.mah_per_day, 2),
                phrase(words.UNKNOWN) if due.days is None else int(due.days),
                due.due_on.isoformat() if due.due_on else phrase(words.UNKNOWN),
                (phrase("shelf life") if due.limited_by == "shelf life" else "")
                + (phrase(" cold") if due.cold_share < 1 else "")
                + (" *" if due.unverified else ""),
            )
        )
    columns = (
        Column(phrase("Mark"), 1.0),
        Column(phrase("Place"), 1.7),
        Column(phrase("Cells"), 1.2),
        Column(phrase("Ops a day"), 0.8, "right"),
        Column(phrase("mAh a day"), 0.9, "right"),
        Column(phrase("Days"), 0.7, "right"),
        Column(phrase("Change by"), 1.0),
        Column(phrase("Note"), 0.9),
    )
    return Table(columns, tuple(rows), title=phrase("Weakest first"))


def _by_day(dated: list[Due]) -> Table:
    rows = tuple(
        (
            due.due_on.isoformat() if due.due_on else "", due.mark, words.place(*due.place),
            f"{plain_amount(due.count)} × {due.designation or due.cell}",
        )
        for due in dated
    )  # fmt: skip
    columns = (
        Column(phrase("Change by"), 1.0),
        Column(phrase("Mark"), 1.2),
        Column(phrase("Place"), 2.0),
        Column(phrase("Cells"), 1.6),
    )
    return Table(columns, rows, title=phrase("By day"))


def _defaults() -> list[Block]:
    rows = tuple(
        (
            cell.designation,
            cell.chemistry,
            cell.nominal_v,
            cell.capacity_mah,
            phrase(words.UNKNOWN) if cell.end_v is None else cell.end_v,
            cell.source + ("" if cell.verified else phrase(", unverified")),
        )
        for cell in default_cells()
    )
    columns = (
        Column(phrase("Cell"), 1.2),
        Column(phrase("Chemistry"), 1.6),
        Column(phrase("Nominal [V]"), 0.8, "right"),
        Column(phrase("Capacity [mAh]"), 0.9, "right"),
        Column(phrase("To [V]"), 0.6, "right"),
        Column(phrase("Source"), 2.4),
    )
    return [
        Heading(phrase("Cells for the catalogue")),
        Paragraph(
            phrase(
                "Cautious values for a catalogue that has no data sheet yet; the values in the catalogue "
                "decide, and a data sheet goes before both. A * above marks a life behind which a value from "
                "memory stands."
            ),
            "small",
        ),
        Table(columns, rows, title=phrase("Cells for the catalogue")),
    ]


def _event(project: ProjectView, due: Due) -> Event:
    cells = f"{plain_amount(due.count)} × {due.designation or due.cell}"
    days = (
        ""
        if due.days is None
        else phrase("{capitalize} by charge at the surveyed use.", capitalize=words.days(due.days).capitalize())
    )
    return Event(
        # By the lock point and not by its mark: a calendar that is sent anew must replace its entries, though the
        # mark was changed.
        f"battery-{due.key}",
        due.due_on or date.max,
        phrase("Change cells of {mark}: {cells}", mark=due.mark, cells=cells),
        days,
        words.place(*due.place),
    )


BATTERY_CALENDAR = DocumentKind("battery-calendar", to_phrase("Battery calendar"), ("pdf", "xlsx", "ics"), False, build)
