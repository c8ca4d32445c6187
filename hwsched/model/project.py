"""Opening and making projects, and the handle through which everything reads and writes them.

A project is a SQLite file on one machine, or a PostgreSQL database for an office; code and migrations are the same.
"""

import logging
import os
import platform
import sqlite3
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime
from functools import cache
from pathlib import Path
from typing import Any, Final, Literal, get_args

from sqlalchemy import URL, Connection, Dialect, Engine, Row, create_engine, create_mock_engine, event, inspect, select
from sqlalchemy.exc import DatabaseError
from sqlalchemy.pool import ConnectionPoolEntry, NullPool
from sqlalchemy.util import LRUCache

from hwsched.model.bulk import new_ids
from hwsched.model.catalogue_memory import CatalogueMemory
from hwsched.model.errors import (
    DamagedProjectError,
    ExistingProjectError,
    ForbiddenProjectError,
    ForeignFileError,
    NeedsUpgradeError,
    ProjectError,
    ReadOnlyProjectError,
    ValueRefusedError,
)
from hwsched.model.file.address import read_address, shown_address
from hwsched.model.file.backups import keep_daily
from hwsched.model.file.held_files import hold, let_go
from hwsched.model.file.known_revision import is_current
from hwsched.model.file.migrating import revision_of, stamp
from hwsched.model.file.schema import APPLICATION_ID, SUFFIX
from hwsched.model.file.server import refusal_of_server
from hwsched.model.file.shared_folder import network_of
from hwsched.model.file.sound_values import check_values
from hwsched.model.file.sqlite_file import BUSY_MS, access_to, check_file, connected, harmless, make_file, refusal_of
from hwsched.model.file.synchronised_folder import synchronised_by
from hwsched.model.file.write_lock import WriteLock
from hwsched.model.journal.chain import LastSet
from hwsched.model.journal.digests import seal_tables
from hwsched.model.journal.journal import Change, Kind, Session
from hwsched.model.journal.touched import tell
from hwsched.model.journal.verifying import look
from hwsched.model.journal.written import note
from hwsched.model.state_memory import WRITING, StateMemory
from hwsched.model.tables import CHANGE_SET, METADATA, PROJECT
from hwsched.model.time_zone import SETTING, checked_zone, read_zone, system_zone, today, zone_of
from hwsched.quantities import LENGTH_STYLES, BareUnit

_LOG: Final = logging.getLogger(__name__)

BARE_UNITS: Final = get_args(BareUnit)
"""Units that a length typed without one can have in a project."""


class Project:
    """An open project. Threads may share it: each reading and writing takes a connection of its own.

    On one thread a reading within a reading or a change set is part of it, and so is a change set within another:
    whatever verbs a check, a page or a step is put together from, they see one state and are written whole.

    Parameters
    ----------
    engine : Engine
        To the checked and up-to-date database.
    path : Path or None
        The project file; None for a database server.
    read_only : str, optional
        Why nothing can be written, a sentence for people; empty where it can.
    """

    def __init__(self, engine: Engine, path: Path | None, read_only: str = "") -> None:
        self.engine = engine
        self.path = path
        self.read_only = read_only
        self.session = Session(new_ids(1)[0], platform.node() or "unknown")
        """Written down with every change set that is made through this handle."""
        self.memory = StateMemory()
        """What seldom changes, read again only when it has: ``project.memory.read(connection, reader, TABLE)``."""
        self.catalogue = CatalogueMemory(self.memory)
        """Reads the catalogue, and only when it has changed: ``project.catalogue.read(connection)``."""
        self.notices: tuple[str, ...] = ()
        """What whoever opened it is to be told, a sentence each."""
        self._here = threading.local()
        self.network = network_of(path) if path is not None else ""
        """What kind of network the file lies on; empty on a disk of this machine."""
        self.synchronised = synchronised_by(path) if path is not None and not self.network else ""
        """By what it is told that a program copies its folder to and from elsewhere; empty where nothing tells."""
        self._lock = WriteLock(path) if path is not None and (self.network or self.synchronised) else None

    @property
    def place(self) -> str:
        """Where it is, for people: the path, or the URL without its password."""
        return str(self.path) if self.path else shown_address(self.engine.url)

    # Read anew each time: undo, another window or another machine may have changed them.

    @property
    def id(self) -> str:
        """The project's identifier."""
        return str(self._row().id)

    @property
    def title(self) -> str:
        """What people call the project."""
        return str(self._row().name)

    @property
    def length_style(self) -> str:
        """How lengths are shown: fraction, decimal-inch, mm."""
        return str(self._row().length_style)

    @property
    def bare_unit(self) -> BareUnit | None:
        """Unit of a length that is typed without one; None: it is asked about."""
        found: BareUnit | None = self._row().bare_unit
        return found

    @property
    def time_zone(self) -> str | None:
        """Name of the zone whose days count; None in a project made before it was asked: then this machine's."""
        found: str | None = self._row().settings.get(SETTING)
        return found

    def today(self) -> date:
        """Return the day that it is in the project's zone."""
        return today(zone_of(self._row().settings))

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """Read one consistent state; writers go on meanwhile and are not seen.

        Within another reading of this thread it is the same state, within a change set what that has written is seen.
        """
        held: Connection | None = getattr(self._here, "connection", None)
        # Within a transaction of this thread: another connection would not see what was written, and on SQLite wait
        # for it.
        if held is not None:
            yield held
            return
        with self._transaction(writing=False) as connection:
            yield connection

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """Write what is not journalled, alone; committed at the end, or rolled back when anything is raised."""
        self._take_lock("")
        with self._transaction(writing=True) as connection:
            yield connection

    @contextmanager
    def change(
        self, verb: str, summary: str, who: str, *, kind: Kind = "edit", base: int | None = None
    ) -> Iterator[Change]:
        """Make one change set in one transaction; written whole, or not at all when anything is raised.

        Within another one of this thread it is a part of that: verbs that call verbs make one step, with one undo.

        Parameters
        ----------
        verb : str
            Name of the operation, kebab-case.
        summary : str
            A sentence for people; `Change.summary` may be set anew until the end.
        who : str
            Person at work.
        kind : {"edit", "undo", "redo"}
            What it is on the stack of steps.
        base : int, optional
            The newest change set that the person had seen when beginning the edit (`history.newest`, read with or
            before what was shown): what others changed since and this would overwrite is a conflict. Left out, it is
            written.

        Yields
        ------
        Change
            Without a single entry at the end, no change set is written.

        Raises
        ------
        NotAllowedError
            Where the person's role does not do this verb.
        ConflictError
            At the end; with what was seen, what is there now, who changed it and when.
        """
        outer: Change | None = getattr(self._here, "change", None)
        if outer is not None:
            with outer.part(verb, summary, kind):
                yield outer
            return
        self._take_lock(who)
        with self._transaction(writing=True) as connection:
            change = Change(connection, verb, summary, who, self.session, kind, base)
            change.begins = self._keep_daily
            self._here.change = change
            try:
                yield change
            finally:
                self._here.change = None
            change.finish()
            if change.number is not None:
                tell(connection, change.number)
        # After the commit only: what is told as done must be done.
        note(change)

    def close(self) -> None:
        """Let go of the file or server; the write-ahead log is taken into the file."""
        self.engine.dispose()
        if self._lock is not None:
            self._lock.give_back()

    def __enter__(self) -> "Project":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def _keep_daily(self, connection: Connection, last: LastSet | None) -> None:
        if self.path is None:
            # Copies of a server's database are its keeper's.
            return
        try:
            zone = read_zone(connection)
            keep_daily(self.path, last, zone, today(zone))
        except (ProjectError, OSError, sqlite3.Error) as error:
            # The work of the day is worth more than the copy of the day before.
            _LOG.warning("no copy of the day", exc_info=error)
            self.notices += (f"no copy of {self.path} was made before the first change of today: {error}",)

    def _take_lock(self, who: str) -> None:
        """On a network and the like, keep others from writing until this project is closed; raises BusyProjectError."""
        if self._lock is not None and not self.read_only:
            self._lock.take(who)

    def _row(self) -> Row[Any]:
        with self.reading() as connection:
            row = self.memory.read(connection, _project_row, PROJECT)
        if row is None:
            raise DamagedProjectError(f"{self.place} is damaged: it has lost its own row")
        return row

    @contextmanager
    def _transaction(self, *, writing: bool) -> Iterator[Connection]:
        outer: Connection | None = getattr(self._here, "connection", None)
        if outer is not None and outer.get_execution_options().get(WRITING):
            raise RuntimeError("a thread that writes already would wait for itself for ever")
        if writing and self.read_only:
            raise ReadOnlyProjectError(f"the project was opened to be read only: {self.read_only}")
        try:
            with self.engine.connect() as fresh:
                connection = fresh.execution_options(**{WRITING: writing})
                if not self.path:
                    level: Literal["READ COMMITTED", "REPEATABLE READ"]
                    # Readers see one state throughout. A writer holds the lock below anyway, and must see what was
                    # committed before it got it, which a snapshot taken earlier would hide.
                    level = "READ COMMITTED" if writing else "REPEATABLE READ"
                    connection = connection.execution_options(isolation_level=level)
                with connection.begin():
                    if writing and not self.path:
                        # One writer at a time, as SQLite has it: change sets get numbers in the order of their commits.
                        connection.exec_driver_sql(f"SET LOCAL lock_timeout = {BUSY_MS}")
                        connection.exec_driver_sql(f"LOCK TABLE {CHANGE_SET.name} IN SHARE ROW EXCLUSIVE MODE")
                    self._here.connection = connection
                    try:
                        yield connection
                    finally:
                        self._here.connection = outer
        except DatabaseError as error:
            refusal = self._refusal(error)
            if refusal is None:
                raise
            if writing and isinstance(refusal, ForbiddenProjectError):
                # It is open and is read; this change cannot be made.
                raise ReadOnlyProjectError(str(refusal)) from error
            raise refusal from error

    def _refusal(self, error: DatabaseError) -> ProjectError | None:
        if self.path:
            return refusal_of(self.path, error.orig or error)
        return refusal_of_server(self.engine.url, error)


def _project_row(connection: Connection) -> Row[Any] | None:
    return connection.execute(select(PROJECT)).first()


def open_project(target: str | Path) -> Project:
    """Open a project; one of an earlier schema is left alone until somebody says yes to its upgrade.

    Parameters
    ----------
    target : str or Path
        Path ending in .hwsched, or a database URL: ``sqlite:///PATH``, ``postgresql://USER@HOST/NAME``.

    Returns
    -------
    Project
        To be closed by the caller.

    Raises
    ------
    NeedsUpgradeError
        For an earlier schema: says what `hwsched.model.file.upgrading.upgrade_project` would do.
    ProjectError
        With a message for people: missing, not ours, newer, damaged, not permitted, busy, unreachable.
    """
    place = place_of(target)
    if isinstance(place, Path):
        revision = check_file(place)
        # Before its values are looked at: those of another schema mean something else.
        if not is_current(revision, str(place)):
            raise NeedsUpgradeError(str(place), revision, copied=True)
        check_values(place)
        why = access_to(place).read_only
        return _looked_at(Project(file_engine(place, read_only=bool(why)), place, why))
    engine = server_engine(place)
    project = Project(engine, None)
    try:
        _check_server(project)
    except BaseException:
        project.close()
        raise
    return project


def _looked_at(project: Project) -> Project:
    """See whether somebody changed a file past the journal; it is opened all the same."""
    try:
        with project.reading() as connection:
            found = look(connection)
    except BaseException:
        project.close()
        raise
    # The connection holds all pages in its memory by now, and would not see what becomes of them on the disk.
    project.engine.dispose()
    if project.read_only:
        project.notices += (f"opened to be read only: {project.read_only}",)
    if project.network and not project.read_only:
        project.notices += (
            f"{project.place} lies on a network ({project.network}): one person writes at a time, the others read; a "
            "database on a server serves several better",
        )
    if project.synchronised and not project.read_only:
        project.notices += (
            f"{project.place} lies in a folder that a program copies to and from elsewhere (told by "
            f"{project.synchronised}): one person writes at a time, the others read; what two write at once without "
            "having each other's copy yet is lost to one of them. Keep it elsewhere, or in a database on a server",
        )
    if found:
        project.notices += tuple(f"changed past the journal: {each}" for each in found.sentences())
        project.notices += (
            f"{project.place} was changed by something else than hwsched. To see all of it: hwsched project verify "
            f"{project.place}; to take it as it is: hwsched project verify {project.place} --accept",
        )
    return project


def create_project(
    target: str | Path,
    name: str,
    *,
    length_style: str = "fraction",
    bare_unit: str | None = None,
    time_zone: str | None = None,
) -> Project:
    """Make a new project, whole or not at all; nothing is ever overwritten.

    Parameters
    ----------
    target : str or Path
        Path ending in .hwsched, or the URL of an empty database.
    name : str
        What people call the project.
    length_style : {"fraction", "decimal-inch", "mm"}
        How lengths are shown.
    bare_unit : {"in", "ft", "mm", "cm", "m"}, optional
        Unit of a length typed without one; None: such a length is asked about.
    time_zone : str, optional
        Whose days count, such as Europe/Lisbon; this machine's zone when left out.

    Returns
    -------
    Project
        Open, to be closed by the caller.

    Raises
    ------
    ProjectError
        Where something stands there already or the place cannot be written.
    ValueRefusedError
        For an empty name, or a style, unit or zone that there is not.
    """
    title = name.strip()
    if not title:
        raise ValueRefusedError("name", "a project needs a name")
    if length_style not in LENGTH_STYLES:
        raise ValueRefusedError("length style", f"'{length_style}'; accepted: {', '.join(LENGTH_STYLES)}")
    if bare_unit is not None and bare_unit not in BARE_UNITS:
        raise ValueRefusedError("bare unit", f"'{bare_unit}'; accepted: {', '.join(BARE_UNITS)}")
    zone = system_zone() if time_zone is None else checked_zone(time_zone)
    row: dict[str, Any] = {
        "id": new_ids(1)[0],
        "name": title,
        "created_at": datetime.now(UTC).isoformat(timespec="seconds"),
        "length_style": length_style,
        "bare_unit": bare_unit,
        "settings": {} if zone is None else {SETTING: zone},
    }
    place = place_of(target)
    if isinstance(place, Path):
        make_file(place, lambda draft: _fill(file_engine(draft), row))
        return Project(file_engine(place), place)
    engine = server_engine(place)
    try:
        _fill(engine, row, _check_empty)
    except DatabaseError as error:
        refusal = refusal_of_server(engine.url, error)
        if refusal is None:
            raise
        raise refusal from error
    finally:
        engine.dispose()
    return Project(engine, None)


def place_of(target: str | Path) -> Path | URL:
    """Return the file or database that a target names; raises ProjectError where it names neither."""
    text = str(target)
    if "://" not in text:
        path = Path(target)
        if os.name != "nt" and text.startswith("\\\\"):
            raise ProjectError(
                f"{text} is a share as Windows writes it; mount it here, and give the path where it is mounted"
            )
        if path.suffix.casefold() != SUFFIX and not path.is_dir():
            raise ForeignFileError(f"{path}: the name of a project file ends in {SUFFIX}")
        return path
    url = read_address(text)
    backend = url.get_backend_name()
    if backend == "sqlite":
        if not url.database or url.database == ":memory:" or url.query:
            raise ProjectError("a SQLite URL names one file: sqlite:///PATH")
        return Path(url.database)
    if backend != "postgresql":
        raise ProjectError(f"{backend} databases are not served; give a path ending in {SUFFIX} or postgresql://...")
    return url.set(drivername="postgresql+psycopg")


_HELD: Final = "held"
"""Where a connection remembers which file it holds."""
_CACHE_KIB: Final = 32 * 1024
_STATEMENTS: Final = 2000
_COMPILED: Final = LRUCache[Any, Any](_STATEMENTS)
"""What statements compile to, for all files that this process opens: compiling takes longer than most of them run."""


@cache
def _dialect() -> Dialect:
    """Return the dialect of all files: what a statement compiled to is found by the dialect that compiled it."""
    engine = create_engine("sqlite://")
    with engine.connect():
        # At its first connection a dialect asks SQLite what it can.
        pass
    engine.dispose()
    return engine.dialect


@cache
def _declaring() -> tuple[str, ...]:
    """Return the statements that make all tables of a file."""
    told: list[str] = []
    engine = create_mock_engine("sqlite://", lambda made, *_, **__: told.append(str(made.compile(dialect=_dialect()))))
    METADATA.create_all(engine, checkfirst=False)
    return tuple(told)


def file_engine(path: Path, *, foreign_keys: bool = True, read_only: bool = False) -> Engine:
    """Return an engine for a project file that was looked at already, see `check_file`."""
    url = URL.create("sqlite", database=str(path))
    shared = network_of(path) or synchronised_by(path)
    if read_only:
        # Each reading connects anew: how the file can be read depends on whether somebody is writing to it just then.
        engine = create_engine(url, hide_parameters=True, creator=lambda: connected(path), poolclass=NullPool)
    else:
        engine = create_engine(url, hide_parameters=True)
    engine.dialect = _dialect()
    engine.update_execution_options(compiled_cache=_COMPILED)

    @event.listens_for(engine, "connect")
    def prepare(connection: sqlite3.Connection, record: ConnectionPoolEntry) -> None:
        record.info[_HELD] = hold(path)
        # Python's module must not begin transactions by itself: it would leave schema changes outside.
        connection.isolation_level = None
        harmless(connection)
        connection.execute(f"PRAGMA busy_timeout = {BUSY_MS}")
        # What a large import writes stays in memory until it is committed: spilt pages would be written twice.
        connection.execute(f"PRAGMA cache_size = -{_CACHE_KIB}")
        if read_only:
            return
        try:
            # Several machines cannot share a write-ahead log: its index lies in memory. sqlite.org/wal.html
            connection.execute(f"PRAGMA journal_mode = {'TRUNCATE' if shared else 'WAL'}")
        except UnicodeDecodeError as error:
            # A damaged schema can be no text at all, and Python's module then cannot even say so.
            raise DamagedProjectError(f"{path} is damaged: it cannot be read any more; take the last copy") from error
        connection.execute(f"PRAGMA foreign_keys = {'ON' if foreign_keys else 'OFF'}")

    @event.listens_for(engine, "close")
    def closed(_: sqlite3.Connection, record: ConnectionPoolEntry) -> None:
        let_go(record.info.pop(_HELD, None))

    @event.listens_for(engine, "begin")
    def begin(connection: Connection) -> None:
        # A writer takes its lock at once: two that read first and write later could never both go on.
        immediate = connection.get_execution_options().get(WRITING)
        connection.exec_driver_sql("BEGIN IMMEDIATE" if immediate else "BEGIN")

    return engine


def server_engine(url: URL) -> Engine:
    """Return an engine for a database on a server; raises ProjectError where its driver is not installed."""
    try:
        # A server closes idle connections; without the question the first edit after a pause would fail. Parameters
        # are facts of somebody's building and are kept out of messages.
        return create_engine(url, pool_pre_ping=True, hide_parameters=True)
    except ModuleNotFoundError as error:
        raise ProjectError("a database server needs the psycopg package: pip install 'hwsched[office]'") from error


def _fill(engine: Engine, row: dict[str, Any], guard: Callable[[Connection], None] | None = None) -> None:
    try:
        with engine.connect() as fresh:
            connection = fresh.execution_options(**{WRITING: True})
            with connection.begin():
                if guard:
                    guard(connection)
                    METADATA.create_all(connection)
                else:
                    connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
                    for statement in _declaring():
                        connection.exec_driver_sql(statement)
                stamp(connection)
                connection.execute(PROJECT.insert().values(**row))
                seal_tables(connection, 0, [PROJECT])
    finally:
        engine.dispose()


def _check_empty(connection: Connection) -> None:
    if inspect(connection).get_table_names():
        place = shown_address(connection.engine.url)
        raise ExistingProjectError(f"{place} already holds tables; it was left alone")


def _check_server(project: Project) -> None:
    with project.reading() as connection:
        revision = revision_of(connection)
    if revision is None:
        raise ForeignFileError(f"{project.place} holds no project; it was left alone")
    if not is_current(revision, project.place):
        raise NeedsUpgradeError(project.place, revision, copied=False)
