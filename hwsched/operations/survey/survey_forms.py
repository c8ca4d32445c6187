"""Writing the surveyor's workbook for a project: blank with its own fields, or filled for a return visit."""

from collections.abc import Sequence
from pathlib import Path

from sqlalchemy import Connection, select

from hwsched.attributes import Attribute
from hwsched.exchange.survey.form import write_survey_form
from hwsched.model.bulk import among
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, read_extra, read_inputs, read_own_fields
from hwsched.model.tables import ITEM_TABLE, OPENING_TABLE
from hwsched.operations.snapshot import of_one_state
from hwsched.operations.survey.own_fields import attribute_of
from hwsched.quantities import BARE_UNITS, BareUnit
from hwsched.survey import INHERITED


def _own_words(connection: Connection, ids: Sequence[str]) -> dict[str, set[str]]:
    """Return, by opening, which of the facts that a place can say it says itself."""
    columns = [OPENING_TABLE.c[name] for name in INHERITED]
    rows = among(connection, select(OPENING_TABLE.c.id, *columns), OPENING_TABLE.c.id, ids)
    return {row[0]: {name for name, value in zip(INHERITED, row[1:], strict=True) if value is not None} for row in rows}


@of_one_state
def write_form(project: Project, path: Path, *, ids: Sequence[str] | None = None, bare_unit: str | None = None) -> int:
    """Write the workbook.

    Parameters
    ----------
    project : Project
        Its own fields are columns of the form.
    path : Path
        Ending .xlsx; an older file is replaced whole.
    ids : sequence of str, optional
        Openings to visit again, with what is known of them filled in; blank without it.
    bare_unit : str, optional
        Unit that the headers ask for; the project's own when left out.

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
        inputs = [first for first, *_ in found]
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
    wanted = bare_unit or project.bare_unit
    unit: BareUnit = next((known for known in BARE_UNITS if known == wanted), "in")
    write_survey_form(path, openings=inputs or None, extra=extra, bare_unit=unit, own_fields=own, taken=taken)
    return len(inputs)
