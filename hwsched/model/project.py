"""Opening and making projects: a SQLite file of our own, or a database by URL.

Here belong connections, what is refused and why, and bringing an older file up to date. What is read and written
stands in the queries and the journal.
"""

import os
import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Final

from sqlalchemy import Connection, Engine, create_engine, event, insert, inspect, make_url, select, text
from sqlalchemy.engine import URL
from sqlalchemy.exc import DBAPIError, NoSuchModuleError, OperationalError, SQLAlchemyError
from sqlalchemy.pool import NullPool

from hwsched.model import errors
from hwsched.model.journal import Change, Kind
from hwsched.model.tables import PROJECT

APPLICATION_ID: Final = 0x48775363
"""Our number in the header of a SQLite file ("HwSc")."""
HEAD: Final = "0001"
"""Revision of the schema that this version writes; a test compares it with the migrations."""
KNOWN: Final = ("0001",)
"""All revisions of the schema, oldest first."""
SUFFIX: Final = ".hwsched"
_BUSY_MS: Final = 15000


class Project:
    """An open project.

    Each call of `reading` and `writing` has a connection of its own, so threads may share the handle.
    """

    def __init__(self, engine: Engine, path: Path | None) -> None:
        self.engine = engine
        self.path = path
        """The file; None for a database by URL of a server."""
        with self.reading() as connection:
            row = connection.execute(select(PROJECT)).first()
        if row is None:
            raise errors.DamagedProjectError("the project has lost its own row")
        self.id: str = row.id
        self.title: str = row.name
        self.length_style: str = row.length_style
        self.bare_unit: str | None = row.bare_unit

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """Give a connection whose reads see one state."""
        with self._answered(), self.engine.connect() as connection, connection.begin():
            yield connection

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """Give a connection in a writing transaction: all of it is committed, or nothing."""
        with (
            self._answered(),
            self.engine.connect().execution_options(immediate=True) as connection,
            connection.begin(),
        ):
            yield connection

    @contextmanager
    def change(
        self, verb: str, summary: str, who: str, *, kind: Kind = "edit", target: int | None = None
    ) -> Iterator[Change]:
        """Open one change set in one transaction; without an entry none is written."""
        with self.writing() as connection:
            change = Change(connection, verb, summary, who, kind, target)
            yield change
            change.finish()

    def close(self) -> None:
        """Let go of the file or the server."""
        self.engine.dispose()

    @contextmanager
    def _answered(self) -> Iterator[None]:
        try:
            yield
        except OperationalError as error:
            if "locked" in str(error.orig):
                raise errors.BusyProjectError("somebody else is writing to the project; try again") from error
            if "readonly" in str(error.orig):
                raise errors.ForbiddenProjectError("the project is read-only for this user") from error
            raise errors.ProjectError(f"the project does not answer: {error.orig}") from error
        except DBAPIError as error:
            if isinstance(error.orig, sqlite3.DatabaseError) and "malformed" in str(error.orig):
                raise errors.DamagedProjectError(f"the project file is damaged: {error.orig}") from error
            raise


def create_project(
    target: str | Path, name: str, *, length_style: str = "fraction", bare_unit: str | None = None
) -> Project:
    """Make a project.

    Parameters
    ----------
    target : str or Path
        A path ending .hwsched where nothing stands yet, or a database URL.
    name : str
        Title.
    length_style : {"fraction", "decimal-inch", "mm"}
        How lengths are shown.
    bare_unit : {"in", "ft", "mm", "cm", "m"}, optional
        Unit of numbers that carry none.

    Raises
    ------
    ExistingProjectError, ForbiddenProjectError, UnreachableProjectError
        And nothing is left behind.
    """
    url = _url(target)
    path = _path(url)
    row = {
        "name": name,
        "created_at": datetime.now(UTC).isoformat(timespec="seconds"),
        "length_style": length_style,
        "bare_unit": bare_unit,
    }
    if path is None:
        engine = _engine(url)
        try:
            with engine.connect() as connection:
                if inspect(connection).has_table("project"):
                    raise errors.ExistingProjectError(f"there is a project already at {_shown(url)}")
        except OperationalError as error:
            raise errors.UnreachableProjectError(f"{_shown(url)} does not answer: {error.orig}") from error
        _migrate(engine)
        project_row(engine, row)
        return Project(engine, None)
    if path.suffix != SUFFIX:
        raise errors.ProjectError(f"a project file ends with {SUFFIX}; {path.name} does not")
    if path.exists():
        raise errors.ExistingProjectError(f"{path} is there already; choose another name")
    # Made beside its place and moved there, so that a process that is killed leaves no half project.
    fresh = path.with_name(f".{path.name}.{os.getpid()}.new")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        engine = _engine(_file_url(fresh))
        _migrate(engine)
        project_row(engine, row)
        run_outside_transaction(engine, "PRAGMA wal_checkpoint(TRUNCATE)")
        engine.dispose()
        os.link(fresh, path)
    except FileExistsError:
        raise errors.ExistingProjectError(f"{path} is there already; choose another name") from None
    except (OSError, OperationalError) as error:
        raise errors.ForbiddenProjectError(f"{path} cannot be written: {error}") from error
    finally:
        for leftover in (fresh, fresh.with_name(fresh.name + "-wal"), fresh.with_name(fresh.name + "-shm")):
            leftover.unlink(missing_ok=True)
    return open_project(path)


def project_row(engine: Engine, row: dict[str, Any]) -> None:
    """Write the project's own row, which is there before any change set."""
    from_new = {"id": os.urandom(16).hex(), "version": 1, "settings": {}, **row}
    with engine.begin() as connection:
        connection.execute(insert(PROJECT).values(from_new))


def open_project(target: str | Path) -> Project:
    """Open a project; an older one is brought up to date first, with a copy kept beside the file.

    Raises
    ------
    ProjectError
        One of its kinds, with the reason: missing, a folder, not ours, newer, damaged, forbidden, not answering.
    """
    url = _url(target)
    path = _path(url)
    if path is not None:
        _check_file(path)
    engine = _engine(url if path is None else _file_url(path))
    try:
        revision = _revision(engine, path)
        if revision != HEAD:
            if revision not in KNOWN:
                raise errors.NewerProjectError(
                    f"{path or _shown(url)} was written by a newer version of hwsched (schema {revision}); "
                    f"this version knows up to {HEAD}"
                )
            if path is not None:
                _keep_copy(path, revision)
            _migrate(engine)
        return Project(engine, path)
    except OperationalError as error:
        engine.dispose()
        if path is None:
            raise errors.UnreachableProjectError(f"{_shown(url)} does not answer: {error.orig}") from error
        raise errors.DamagedProjectError(f"{path} cannot be read: {error.orig}") from error
    except DBAPIError as error:
        engine.dispose()
        raise errors.DamagedProjectError(f"{path or _shown(url)} is damaged: {error.orig}") from error
    except errors.ProjectError:
        engine.dispose()
        raise


def _url(target: str | Path) -> URL:
    if isinstance(target, str) and "://" in target:
        try:
            return make_url(target)
        except SQLAlchemyError as error:
            raise errors.ProjectError(f"{target} is no database URL: {error}") from error
    return _file_url(Path(target))


def _file_url(path: Path) -> URL:
    return URL.create("sqlite", database=str(path))


def _path(url: URL) -> Path | None:
    if url.get_backend_name() != "sqlite":
        return None
    return Path(url.database or "")


def _shown(url: URL) -> str:
    return url.render_as_string(hide_password=True)


def _check_file(path: Path) -> None:
    if not path.exists():
        raise errors.MissingProjectError(f"there is no {path}")
    if path.is_dir():
        raise errors.ForeignFileError(f"{path} is a folder, not a project file")
    try:
        with path.open("rb") as file:
            head = file.read(100)
    except OSError as error:
        raise errors.ForbiddenProjectError(f"{path} cannot be read: {error.strerror}") from error
    if len(head) < 100 or not head.startswith(b"SQLite format 3\x00"):
        raise errors.ForeignFileError(f"{path} is not a project of hwsched")
    if int.from_bytes(head[68:72], "big") != APPLICATION_ID:
        raise errors.ForeignFileError(f"{path} is a database, but not a project of hwsched")


def _engine(url: URL) -> Engine:
    try:
        if url.get_backend_name() != "sqlite":
            return create_engine(url, pool_pre_ping=True)
        engine = create_engine(url, poolclass=NullPool, connect_args={"timeout": _BUSY_MS / 1000})
    except (NoSuchModuleError, ModuleNotFoundError) as error:
        raise errors.ProjectError(f"{_shown(url)} needs a driver that is not installed: {error}") from error

    def prepare(connection: Any, _record: object) -> None:
        # The driver must not open transactions by itself: BEGIN IMMEDIATE does it where something is written.
        connection.isolation_level = None
        cursor = connection.cursor()
        cursor.execute("PRAGMA foreign_keys=ON")
        cursor.execute(f"PRAGMA busy_timeout={_BUSY_MS}")
        cursor.execute("PRAGMA synchronous=NORMAL")
        cursor.close()

    event.listen(engine, "connect", prepare)
    event.listen(engine, "begin", _begin)
    return engine


def _begin(connection: Connection) -> None:
    # A transaction that will write takes its lock at once: an upgrade in the middle could fail.
    connection.exec_driver_sql("BEGIN IMMEDIATE" if connection.get_execution_options().get("immediate") else "BEGIN")


def _revision(engine: Engine, path: Path | None) -> str:
    with engine.connect() as connection:
        if not inspect(connection).has_table("alembic_version"):
            raise errors.ForeignFileError(f"{path or _shown(engine.url)} holds no project of hwsched")
        if path is not None:
            state = connection.exec_driver_sql("PRAGMA quick_check(1)").scalar()
            if state != "ok":
                raise errors.DamagedProjectError(f"{path} is damaged: {state}")
        found = connection.execute(text("SELECT version_num FROM alembic_version")).scalar()
    return str(found)


def _keep_copy(path: Path, revision: str) -> Path:
    copy = path.with_name(f"{path.stem}.before-{revision}{SUFFIX}")
    number = 1
    while copy.exists():
        number += 1
        copy = path.with_name(f"{path.stem}.before-{revision}-{number}{SUFFIX}")
    partial = copy.with_name(f".{copy.name}.part")
    source, target = sqlite3.connect(path), sqlite3.connect(partial)
    try:
        source.backup(target)
    finally:
        source.close()
        target.close()
    shutil.move(partial, copy)
    return copy


def run_outside_transaction(engine: Engine, *statements: str) -> None:
    """Run statements that SQLite does not take inside a transaction."""
    raw = engine.raw_connection()
    try:
        cursor = raw.cursor()
        for statement in statements:
            cursor.execute(statement)
        cursor.close()
    finally:
        raw.close()


def _migrate(engine: Engine) -> None:
    # Loading alembic takes a quarter of a second (shared measurement), and opening a project seldom needs it.
    from hwsched.model.migrating import upgrade  # noqa: PLC0415

    if engine.dialect.name == "sqlite":
        run_outside_transaction(engine, "PRAGMA journal_mode=WAL", f"PRAGMA application_id={APPLICATION_ID}")
    upgrade(engine)
