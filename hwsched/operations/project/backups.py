"""The copies of a project file: listed, and put back so that it can be undone."""

from pathlib import Path

from hwsched.model.errors import MissingProjectError, ValueRefusedError
from hwsched.model.file import backups
from hwsched.model.file.backups import Backup
from hwsched.model.project import place_of

__all__ = ["Backup", "list_backups", "restore"]


def list_backups(target: str | Path) -> list[Backup]:
    """Return the copies of a project, the oldest day first; of one that is lost too.

    Raises
    ------
    MissingProjectError
        Where there is neither a copy nor the project.
    ValueRefusedError
        For a database on a server, whose copies are its keeper's.
    """
    path = _file(target)
    found = backups.backups_of(path)
    if not found and not path.is_file():
        raise MissingProjectError(f"there is no project at {path}, and no copy of it")
    return found


def restore(target: str | Path, name: str) -> tuple[Backup, Path | None]:
    """Put a copy in the project's place; the project as it was is kept first.

    Returns
    -------
    tuple of Backup and Path or None
        What was put back; where the project as it was is kept, under a name by which it can be put back too.

    Raises
    ------
    MissingRowError
        Where there is no such copy.
    ProjectError
        Where the copy is damaged or the project is open elsewhere; it is as before.
    """
    return backups.restore(_file(target), name)


def _file(target: str | Path) -> Path:
    place = place_of(target)
    if not isinstance(place, Path):
        raise ValueRefusedError("project", "copies of a database on a server are its keeper's; files are copied here")
    return place
