"""Writing what a surveyor takes along: a workbook, or sheets of paper, blank or with what is known filled in."""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, select

from hwsched.attributes import Attribute, show_value
from hwsched.documents.survey import survey_sheets
from hwsched.exchange.survey.form import write_survey_form
from hwsched.model.bulk import among
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, read_extra, read_inputs, read_own_fields, read_settings
from hwsched.model.tables import ITEM_TABLE, OPENING_TABLE
from hwsched.operations.snapshot import of_one_state
from hwsched.operations.survey.own_fields import attribute_of
from hwsched.quantities import BARE_UNITS, LENGTH_STYLES, BareUnit, LengthStyle
from hwsched.render.pdf import render_pdf
from hwsched.survey import INHERITED, OPENING

ON_PAPER = ".pdf"
"""Ending of a file that is printed and filled in by hand; others are workbooks."""


def _own_words(connection: Connection, ids: Sequence[str]) -> dict[str, set[str]]:
    """Return, by opening, which of the facts that a place can say it says itself."""
    columns = [OPENING_TABLE.c[name] for name in INHERITED]
    rows = among(connection, select(OPENING_TABLE.c.id, *columns), OPENING_TABLE.c.id, ids)
    return {row[0]: {name for name, value in zip(INHERITED, row[1:], strict=True) if value is not None} for row in rows}


def write_blank_form(path: Path, *, bare_unit: str = "in", paper: str = "letter") -> None:
    """Write the workbook, or a sheet for each form of lock, without a project."""
    if path.suffix.lower() == ON_PAPER:
        document = survey_sheets.blank("Survey", "", _style("", bare_unit))
        render_pdf(document, path, "a4" if paper == "a4" else "letter")
    else:
        write_survey_form(path, bare_unit=_unit(bare_unit))


def _unit(wanted: str) -> BareUnit:
    return next((known for known in BARE_UNITS if known == wanted), "in")


def _style(shown: str, bare_unit: str) -> LengthStyle:
    """Return how a sheet shows lengths: as the project does, unless another system is asked for."""
    if bare_unit in ("mm", "cm", "m"):
        return "mm"
    return next((known for known in LENGTH_STYLES if known == shown and known != "mm"), "fraction")


@of_one_state
def write_form(
    project: Project,
    path: Path,
    *,
    ids: Sequence[str] | None = None,
    bare_unit: str | None = None,
    paper: str = "letter",
) -> int:
    """Write the workbook, or sheets of paper.

    Parameters
    ----------
    project : Project
        Its own fields are columns of the form.
    path : Path
        Ending .xlsx, or .pdf for one paper sheet an opening; an older file is replaced whole.
    ids : sequence of str, optional
        Openings to visit again, with what is known of them filled in; blank without it.
    bare_unit : str, optional
        Unit that is asked for; the project's own when left out.
    paper : {"letter", "a4"}
        Of the sheets.

    Returns
    -------
    int
        How many openings are filled in.
    """
    own: dict[str, tuple[Attribute, ...]] = {}
    with project.reading() as connection:
        for made in read_own_fields(connection):
            own[made.entity] = (*own.get(made.entity, ()), attribute_of(made))
        catalogue = project.catalogue.read(connection)
        found = [] if ids is None else by_opening(read_inputs(connection, list(ids), catalogue))
        # As they were asked for: whoever walks along a corridor wants its doors one after the other.
        order = {each: number for number, each in enumerate(ids or ())}
        inputs = sorted((first for first, *_ in found), key=lambda each: order[each.opening.id])
        told = _own_words(connection, [each.opening.id for each in inputs])
        # What its level or building says is not asked again at each of their openings.
        taken = {
            each.opening.id: [
                name
                for name in INHERITED
                if name not in told[each.opening.id] and getattr(each.opening, name) is not None
            ]
            for each in inputs
        }
        extra = {**read_extra(connection, OPENING_TABLE), **read_extra(connection, ITEM_TABLE)}
        settings = read_settings(connection)
    unit = _unit(bare_unit or project.bare_unit or "in")
    if path.suffix.lower() == ON_PAPER:
        style = _style(settings.length_style, bare_unit or ("mm" if settings.length_style == "mm" else "in"))
        fields = own.get(OPENING.name, ())
        if inputs:
            document = survey_sheets.filled(
                project.title,
                project.today().isoformat(),
                [(each, _own_values(fields, extra.get(each.opening.id, {}), style)) for each in inputs],
                style,
            )
        else:
            document = survey_sheets.blank(
                project.title, project.today().isoformat(), style, _own_values(fields, {}, style)
            )  # fmt: skip
        render_pdf(document, path, "a4" if paper == "a4" else "letter")
    else:
        write_survey_form(path, openings=inputs or None, extra=extra, bare_unit=unit, own_fields=own, taken=taken)
    return len(inputs)


def _own_values(
    fields: Sequence[Attribute], held: Mapping[str, Any], style: LengthStyle
) -> tuple[tuple[str, str], ...]:
    return tuple((field.label, show_value(field, held.get(field.name), style)) for field in fields)
