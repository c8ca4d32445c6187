"""Finding the openings that a person names."""

from collections.abc import Iterable

from hwsched.model.errors import MissingRowError
from hwsched.model.project import Project
from hwsched.model.queries import opening_ids


def openings_of_marks(project: Project, marks: Iterable[str]) -> list[str]:
    """Return identifiers of the openings with these marks, in the order given.

    Raises
    ------
    MissingRowError
        Names the marks that the project does not have.
    """
    wanted = list(dict.fromkeys(marks))
    with project.reading() as connection:
        known = opening_ids(connection)
    missing = [mark for mark in wanted if mark not in known]
    if missing:
        raise MissingRowError(f"no opening has the mark {', '.join(missing)}")
    return [known[mark] for mark in wanted]
