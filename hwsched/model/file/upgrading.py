"""Bringing a project of an earlier schema to the newest: only when asked, and with a verified copy of a file first.

Opening never does it, see `hwsched.model.project.open_project`: an upgrade changes the project for everybody who works
in it, and earlier versions of the program cannot open it any more. The steps themselves stand under `migrations/`.
"""

from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import Connection

from hwsched.model.errors import ForeignFileError, ProjectError
from hwsched.model.file.known_revision import is_current
from hwsched.model.file.migrating import revision_of, upgrade
from hwsched.model.file.sqlite_file import check_file, check_writable, verified_copy
from hwsched.model.project import Project, file_engine, place_of, server_engine
from hwsched.model.state_memory import WRITING


@dataclass(frozen=True, slots=True)
class Upgraded:
    """What an upgrade did."""

    place: str
    before: str
    """Schema that was found; the newest where there was nothing to do."""
    after: str
    copy: Path | None = None
    """The project as it was; None for a database on a server, and where there was nothing to do."""
    rows: int = 0
    """How many rows of the copy were compared with the project's before anything was changed."""


def upgrade_project(target: str | Path) -> Upgraded:
    """Bring a project to the newest schema, whole or not at all.

    Parameters
    ----------
    target : str or Path
        As for `open_project`.

    Returns
    -------
    Upgraded
        With the copy that was kept beside a file, checked and compared row by row before the first step.

    Raises
    ------
    ProjectError
        As for `open_project`; also where the copy cannot be made or is not equal. The project is as before.
    """
    place = place_of(target)
    if isinstance(place, Path):
        found = check_file(place)
        if not is_current(found, str(place)):
            check_writable(place)
        return _upgrade_file(place, found)
    project = Project(server_engine(place), None)
    try:
        return _upgrade_server(project)
    finally:
        project.close()


def _upgrade_server(project: Project) -> Upgraded:
    # Copies of a server's database are its keeper's; the steps run in one transaction.
    with project.writing() as connection:
        found = revision_of(connection)
        if found is None:
            raise ForeignFileError(f"{project.place} holds no project; it was left alone")
        if not is_current(found, project.place):
            upgrade(connection)
        return Upgraded(project.place, found, _reached(connection))


def _upgrade_file(path: Path, revision: str) -> Upgraded:
    if is_current(revision, str(path)):
        return Upgraded(str(path), revision, revision)
    # A migration rebuilds tables, and with foreign keys on SQLite empties a table before it drops it, though others
    # point to its rows (sqlite.org/foreignkeys.html, section 5); what points where is checked at the end.
    engine = file_engine(path, foreign_keys=False)
    copy = None
    try:
        with engine.connect() as fresh:
            connection = fresh.execution_options(**{WRITING: True})
            # From here on nobody else writes: what is copied is what is changed.
            with connection.begin():
                found = revision_of(connection)
                if found is None or is_current(found, str(path)):
                    # Somebody else was quicker.
                    return Upgraded(str(path), _reached(connection), _reached(connection))
                copy, rows = verified_copy(path, found)
                upgrade(connection)
                if broken := connection.exec_driver_sql("PRAGMA foreign_key_check").fetchone():
                    raise ProjectError(f"a row of {broken[0]} would point to nothing")
                return Upgraded(str(path), found, _reached(connection), copy, rows)
    except Exception as error:
        kept = f"; a copy is at {copy}" if copy else ""
        raise ProjectError(
            f"{path} could not be brought to the newest schema: {error}; it is as before{kept}"
        ) from error
    finally:
        engine.dispose()


def _reached(connection: Connection) -> str:
    return revision_of(connection) or ""
