"""Writing a project's catalogue as a workbook that can be edited and taken in again."""

from pathlib import Path

from hwsched.exchange.parts.catalogue_sheets import write_catalogue
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.queries import read_extra, read_own_fields
from hwsched.model.tables import PART
from hwsched.operations.snapshot import of_one_state
from hwsched.operations.survey.own_fields import own_attributes
from hwsched.quantities import LENGTH_STYLES, LengthStyle


@of_one_state
def export_catalogue(project: Project, path: Path) -> int:
    """Write every part, its kit and the project's own fields of parts.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    path : Path
        Ending .xlsx; an older file is replaced whole.

    Returns
    -------
    int
        How many parts were written.

    Raises
    ------
    ValueRefusedError
        For a part that would be lost in it; nothing is written.
    UnwritableError
        For a file that cannot be written, or does not end .xlsx.
    """
    with project.reading() as connection:
        catalogue = project.catalogue.read(connection)
        own = own_attributes(read_own_fields(connection), "part")
        by_row = read_extra(connection, PART)
        numbers = {row.id: row.number for row in connection.execute(PART.select())}
    extra = {numbers[row_id]: values for row_id, values in by_row.items()}
    style: LengthStyle = next((s for s in LENGTH_STYLES if s == project.length_style), "mm")
    try:
        write_catalogue(path, catalogue.parts.values(), style, own_fields=own, extra=extra)
    except ValueError as error:
        raise ValueRefusedError("catalogue", str(error)) from error
    return len(catalogue.parts)
