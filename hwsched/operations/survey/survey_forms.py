"""Writing the surveyor's workbook for a project: blank with its own fields, or filled for a return visit."""

from collections.abc import Sequence
from pathlib import Path

from hwsched.attributes import Attribute
from hwsched.exchange.survey.form import write_survey_form
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, read_extra, read_inputs, read_own_fields
from hwsched.model.tables import ITEM_TABLE, OPENING_TABLE
from hwsched.operations.snapshot import of_one_state
from hwsched.operations.survey.own_fields import attribute_of
from hwsched.quantities import BARE_UNITS, BareUnit


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
        extra = {**read_extra(connection, OPENING_TABLE), **read_extra(connection, ITEM_TABLE)}
    wanted = bare_unit or project.bare_unit
    unit: BareUnit = next((known for known in BARE_UNITS if known == wanted), "in")
    write_survey_form(path, openings=inputs or None, extra=extra, bare_unit=unit, own_fields=own)
    return len(inputs)
