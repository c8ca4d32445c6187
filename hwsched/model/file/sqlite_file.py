"""A project file as a file: is it there, ours, whole and of a version that we know; made whole or not at all; copied.

Nothing here knows what stands in tables. SQLite's own module serves, so that a file is refused before any engine is
built; whoever opens a connection to a file makes it `harmless` first.
"""

import hashlib
import os
import shutil
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Final, NamedTuple

from hwsched.model.errors import (
    BusyProjectError,
    DamagedProjectError,
    ExistingProjectError,
    ForbiddenProjectError,
    ForeignFileError,
    MissingProjectError,
    ProjectError,
)
from hwsched.model.file.held_files import is_held
from hwsched.model.file.schema import APPLICATION_ID
from hwsched.model.file.sound_schema import check_schema
from hwsched.writing import flush_folder, part_beside

_LEAST_FREE: Final = 64 * 1024
"""Room without which no log of a project's writes can begin [bytes]."""
BUSY_MS: Final = 10_000
"""How long a writer waits for another one."""

_MAGIC: Final = b"SQLite format 3\x00"
_HEADER_BYTES: Final = 100
_COLUMNS: Final = "SELECT name FROM pragma_table_info(?)"
# SQLite's file format: the database header is 100 bytes long and begins with this string. sqlite.org/fileformat2.html


# What a statement or a value of ours stays far below: attachments hold 64 MB, lists of identifiers a thousand.
_LIMITS: Final = (
    (sqlite3.SQLITE_LIMIT_LENGTH, 256 * 2**20),
    (sqlite3.SQLITE_LIMIT_SQL_LENGTH, 500_000),
    (sqlite3.SQLITE_LIMIT_COLUMN, 500),
    (sqlite3.SQLITE_LIMIT_EXPR_DEPTH, 200),
    (sqlite3.SQLITE_LIMIT_COMPOUND_SELECT, 20),
    (sqlite3.SQLITE_LIMIT_FUNCTION_ARG, 32),
    (sqlite3.SQLITE_LIMIT_ATTACHED, 0),
    (sqlite3.SQLITE_LIMIT_TRIGGER_DEPTH, 0),
    (sqlite3.SQLITE_LIMIT_WORKER_THREADS, 0),
)


def harmless(connection: sqlite3.Connection) -> None:
    """Keep a connection from running what a file brings along, and from sizes that no project has.

    Functions in a schema that could act outside are not called, pages are looked at as they are read, and limits hold
    for values and statements. sqlite.org/security.html, sections 1.1 and 1.2
    """
    for limit, most in _LIMITS:
        connection.setlimit(limit, most)
    connection.execute("PRAGMA trusted_schema = OFF")
    connection.execute("PRAGMA cell_size_check = ON")


class Access(NamedTuple):
    """How a project file can be opened."""

    uri: str
    """For SQLite."""
    read_only: str = ""
    """Why nothing can be written, a sentence for people; empty where it can."""


def access_to(path: Path) -> Access:
    """Tell how a file can be opened now: to write where both it and its folder can be written, else to read."""
    if not _writable(path):
        why = f"you have no permission to write {path}"
    elif not _writable(path.parent):
        # The write-ahead log stands beside the file.
        why = f"you have no permission to write in the folder of {path}"
    else:
        return Access(_uri(path, "rw"))
    log = Path(f"{path}-wal")
    if log.exists() and log.stat().st_size:
        # Somebody is at work in it, and is seen; the file alone would lack what stands in the log.
        return Access(_uri(path, "ro"), why)
    # To read without a log SQLite would make one, here or never: told that nothing changes the file, it does not.
    # Whoever reads asks anew each time, so that it is not told so for long.
    return Access(f"{_uri(path, 'ro')}&immutable=1", why)


def check_writable(path: Path) -> None:
    """Refuse a file that can only be read; raises ForbiddenProjectError."""
    access = access_to(path)
    if access.read_only:
        raise ForbiddenProjectError(f"{access.read_only}; copy it to where you may write, and open the copy")


def connected(path: Path, detect_types: int = 0) -> sqlite3.Connection:
    """Connect to a file as it can be opened now; harmless, and without any right to write where it is to be read."""
    access = access_to(path)
    # Connections may be handed from thread to thread, never used by two at once.
    database = sqlite3.connect(
        access.uri, uri=True, timeout=BUSY_MS / 1000, check_same_thread=False, detect_types=detect_types
    )
    try:
        harmless(database)
        if access.read_only:
            database.execute("PRAGMA query_only = ON")
    except BaseException:
        database.close()
        raise
    return database


@contextmanager
def looked_at(path: Path) -> Iterator[sqlite3.Connection]:
    """Yield a connection for checking a file: harmless, and it writes nothing."""
    with closing(connected(path)) as database:
        database.execute("PRAGMA query_only = ON")
        yield database


def check_file(path: Path) -> str:
    """Look whether a file is a project, whole, and declares what its revision has and nothing else.

    Parameters
    ----------
    path : Path
        Where the project should be.

    Returns
    -------
    str
        Revision of its schema.

    Raises
    ------
    ProjectError
        One kind each for: missing, a folder or another file, not permitted, damaged, held by somebody else, holding
        what is not of a project, of a newer version.
    """
    _check_outside(path)
    try:
        with looked_at(path) as database:
            if database.execute("PRAGMA application_id").fetchone()[0] != APPLICATION_ID:
                raise ForeignFileError(f"{path} is a database, but not a project of hwsched; it was left alone")
            # Before all else: the check of pages works out what the schema declares.
            revision = check_schema(database, path)
            # One finding suffices: a damaged file is not opened, however many its damages are.
            found = database.execute("PRAGMA quick_check(1)").fetchone()[0]
            if found != "ok":
                raise _damaged(path, str(found))
            return revision
    except UnicodeDecodeError as error:
        # SQLite's own words quote the damaged page.
        raise _damaged(path, "its schema cannot be read") from error
    except sqlite3.Error as error:
        if "no such table" in str(error) or "no such column" in str(error):
            raise _damaged(path, str(error)) from error
        raise refusal_of(path, error) or ProjectError(f"{path} cannot be opened: {error}") from error


def _check_outside(path: Path) -> None:
    # A name that the locale cannot say is no missing file, which is what `exists` would take it for.
    os.fsencode(path)
    try:
        if path.is_dir():
            raise ForeignFileError(f"{path} is a folder; a project is a file")
        if not path.exists():
            raise MissingProjectError(f"there is no project at {path}")
        if is_held(path):
            # It was looked at, and to look again would let go of its locks.
            return
        with path.open("rb") as file:
            head = file.read(_HEADER_BYTES)
    except PermissionError as error:
        raise ForbiddenProjectError(f"you have no permission to read {path}") from error
    except OSError as error:
        raise ProjectError(f"{path} cannot be read: {error.strerror or error}") from error
    if not head.startswith(_MAGIC):
        raise ForeignFileError(f"{path} is not a project of hwsched; it was left alone")
    if len(head) < _HEADER_BYTES:
        raise _damaged(path, "it ends within its header")


def _writable(path: Path) -> bool:
    return os.access(path, os.W_OK, effective_ids=os.access in os.supports_effective_ids)


def _damaged(path: Path, found: str) -> DamagedProjectError:
    return DamagedProjectError(
        f"{path} is damaged ({found.splitlines()[-1]}). Take its last good copy "
        f"(hwsched project backups {path}), or save what can be read: hwsched project rescue {path} NEW.hwsched"
    )


def refusal_of(path: Path, error: BaseException) -> ProjectError | None:
    """Say what SQLite's error means for the project; None where it speaks of a mistake of this program.

    Parameters
    ----------
    path : Path
        Of the project.
    error : BaseException
        As SQLite raised it.
    """
    # Extended result codes carry the primary one in their lowest byte (sqlite.org/rescode.html).
    code = getattr(error, "sqlite_errorcode", 0) & 0xFF
    if code in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
        return BusyProjectError(f"somebody else is writing to {path}; try again")
    if code in (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB):
        return _damaged(path, str(error))
    if getattr(error, "sqlite_errorname", "") == "SQLITE_READONLY_DIRECTORY":
        return ForbiddenProjectError(
            f"what was written to {path} last stands in {path.name}-wal still, and cannot be read without the right to "
            "write in its folder: let somebody who has it open the project once"
        )
    if code in (sqlite3.SQLITE_PERM, sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN):
        return ForbiddenProjectError(f"{path} cannot be opened for writing: {error}")
    if code == sqlite3.SQLITE_TOOBIG:
        return _damaged(path, "it holds a value that is larger than any of ours")
    if "decode to UTF-8" in str(error):
        # Python's module says so without a code, and quotes the value.
        return _damaged(path, _undecodable(path))
    if code == sqlite3.SQLITE_FULL:
        return ProjectError(f"the disk of {path} is full: free some of it, then try again")
    if code == sqlite3.SQLITE_IOERR and _is_full(path):
        # Even to read a project SQLite lays an index of its log beside it, and calls want of room a fault of the disk.
        return ProjectError(f"the disk of {path} is full: free some of it, then try again")
    if code == sqlite3.SQLITE_IOERR:
        return ProjectError(f"{path} cannot be read or written: {error}")
    return None


def _undecodable(path: Path) -> str:
    """Find the value of a project file that should be text and is not, and say where it is."""
    with looked_at(path) as database:
        tables = [str(name) for (name,) in database.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        database.text_factory = bytes
        for table in tables:
            names = [bytes(name).decode() for (name,) in database.execute(_COLUMNS, (table,))]
            texts = ", ".join(f'CASE typeof("{name}") WHEN \'text\' THEN "{name}" END' for name in names)
            for row in database.execute(f'SELECT {texts} FROM "{table}"'):  # noqa: S608 names checked at opening
                for name, value in zip(names, row, strict=True):
                    if value is not None and _undecoded(value):
                        key = (row[0] or b"").decode("utf-8", "backslashreplace")
                        return f"in table {table}, row {key}, column {name} holds bytes that are no text"
    return "it holds bytes where text belongs"


def _undecoded(value: bytes) -> bool:
    try:
        value.decode()
    except UnicodeDecodeError:
        return True
    return False


def make_file(path: Path, fill: Callable[[Path], None]) -> None:
    """Make a new file whole or not at all: filled under another name, then given its own.

    Parameters
    ----------
    path : Path
        Name of the new file, its folder made where it is missing; nothing that stands there is overwritten.
    fill : callable
        Makes the file at the path that it is given, and leaves it closed.

    Raises
    ------
    ExistingProjectError
        Where something has that name.
    ProjectError
        Where the folder does not let us write.
    """
    try:
        there = path.exists()
    except OSError as error:
        # Such as a name that is longer than the system takes.
        raise ProjectError(f"{path} cannot be made: {error.strerror or error}") from error
    if there:
        raise ExistingProjectError(f"{path} is already there; it was left alone")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise ForbiddenProjectError(f"the folder {path.parent} cannot be made: {error.strerror or error}") from error
    if not _writable(path.parent):
        raise ForbiddenProjectError(f"you have no permission to write in {path.parent}")
    draft = part_beside(path)
    try:
        fill(draft)
        # On the disk before it gets its name: after a loss of power the name must not lead to an empty file.
        _to_disk(draft)
        _take_name(draft, path)
        flush_folder(path.parent)
    except OSError as error:
        raise ProjectError(f"{path} cannot be made: {error.strerror or error}") from error
    except Exception as error:
        # As SQLite itself raised it, below whatever stands between.
        cause = getattr(error, "orig", error)
        refused = refusal_of(path, cause) if isinstance(cause, sqlite3.Error) else None
        if refused is None:
            raise
        raise refused from error
    finally:
        for leftover in (draft, Path(f"{draft}-wal"), Path(f"{draft}-shm"), Path(f"{draft}-journal")):
            leftover.unlink(missing_ok=True)


def _to_disk(path: Path) -> None:
    with path.open("rb+") as file:
        os.fsync(file.fileno())


def _take_name(draft: Path, path: Path) -> None:
    try:
        # A second name for the same file fails where the name is taken: no race with another program.
        os.link(draft, path)
    except FileExistsError as error:
        raise ExistingProjectError(f"{path} is already there; it was left alone") from error
    except OSError:
        # File systems without links, such as those of memory cards.
        if path.exists():
            raise ExistingProjectError(f"{path} is already there; it was left alone") from None
        draft.rename(path)


def set_aside(path: Path) -> Path:
    """Give a project file another name, to make room for a new one; earlier ones set aside stay.

    Returns
    -------
    Path
        Its name from now on: ``name.kept-1.hwsched``, numbered on.

    Raises
    ------
    BusyProjectError
        Where somebody has it open.
    """
    close_file(path)
    count = 1
    while True:
        kept = path.with_name(f"{path.name.removesuffix(path.suffix)}.kept-{count}{path.suffix}")
        try:
            _take_name(path, kept)
        except ExistingProjectError:
            count += 1
            continue
        path.unlink(missing_ok=True)
        return kept


def close_file(path: Path) -> None:
    """Take the write-ahead log into a project file, so that it can be moved or replaced as one file.

    Raises
    ------
    BusyProjectError
        Where somebody has it open: what they write from then on would be lost.
    """
    try:
        with closing(sqlite3.connect(_uri(path, "rw"), uri=True, timeout=0)) as database:
            # SQLite leaves the log only when no other connection is left. sqlite.org/wal.html, section 3.2
            database.execute("PRAGMA journal_mode = DELETE")
    except sqlite3.Error as error:
        refusal = refusal_of(path, error)
        if isinstance(refusal, BusyProjectError):
            raise BusyProjectError(f"{path} is open elsewhere; close it there, or choose another folder") from error
        raise refusal or ProjectError(f"{path} cannot be replaced: {error}") from error


def verbs_of(path: Path) -> list[str]:
    """Return the verbs of a project's steps, oldest first, without opening it as a project."""
    with closing(sqlite3.connect(_uri(path, "ro"), uri=True, timeout=BUSY_MS / 1000)) as database:
        return [str(verb) for (verb,) in database.execute("SELECT verb FROM change_set ORDER BY number")]


def keep_copy(path: Path, revision: str) -> Path:
    """Keep a copy beside a project before its schema is changed; earlier copies stay.

    Parameters
    ----------
    path : Path
        The project file.
    revision : str
        Revision that the copy has.

    Returns
    -------
    Path
        The copy: ``name.before-REVISION.hwsched``, numbered from the second on.
    """
    stem = f"{path.name.removesuffix(path.suffix)}.before-{revision}"
    count = 1
    while True:
        copy = path.with_name(f"{stem}{'' if count == 1 else f'-{count}'}{path.suffix}")
        try:
            make_file(copy, lambda draft: back_up(path, draft))
        except ExistingProjectError:
            count += 1
        else:
            return copy


def verified_copy(path: Path, revision: str) -> tuple[Path, int]:
    """Keep a copy as `keep_copy`, and see that it is whole and equal; one that is not is removed again.

    Parameters
    ----------
    path : Path
        The project file, while nobody writes to it.
    revision : str
        Revision that it has.

    Returns
    -------
    tuple of Path and int
        The copy, and how many rows were compared.

    Raises
    ------
    ProjectError
        Names the table that is not equal, or what SQLite finds wrong with the copy.
    """
    copy = keep_copy(path, revision)
    try:
        rows = _compare(path, copy)
    except BaseException:
        copy.unlink(missing_ok=True)
        raise
    return copy, rows


def _compare(path: Path, copy: Path) -> int:
    with (
        closing(sqlite3.connect(_uri(path, "ro"), uri=True)) as original,
        # Nobody else knows the copy yet: no write-ahead log is made beside it.
        closing(sqlite3.connect(f"{_uri(copy, 'ro')}&immutable=1", uri=True)) as other,
    ):
        # The long check reads every page and every index, the one at opening does not.
        found = other.execute("PRAGMA integrity_check(1)").fetchone()[0]
        if found != "ok":
            raise ProjectError(f"the copy {copy} is not whole: {found}")
        tables = [row[0] for row in original.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        total = 0
        for table in ("sqlite_master", *tables):
            count, digest = _contents(original, table)
            if (count, digest) != _contents(other, table):
                raise ProjectError(f"the copy {copy} is not equal to it: table {table} differs")
            total += count
    return total


def _contents(database: sqlite3.Connection, table: str) -> tuple[int, str]:
    """Return how many rows a table has, and a hash of all their values in the order of the file."""
    name = table.replace('"', '""')
    count, digest = 0, hashlib.sha256()
    for row in database.execute(f'SELECT * FROM "{name}" ORDER BY rowid'):  # noqa: S608 a table's own name
        for value in row:
            # A file's content is not written out as text.
            digest.update(value if isinstance(value, bytes) else repr(value).encode("utf-8", "surrogatepass"))
            digest.update(b"|")
        count += 1
    return count, digest.hexdigest()


def back_up(path: Path, draft: Path) -> None:
    """Copy a project file as it is at one moment, what stands in its write-ahead log included."""
    # SQLite's own backup takes what stands in the write-ahead log along; copying the file would not.
    with closing(sqlite3.connect(_uri(path, "rw"), uri=True)) as source, closing(sqlite3.connect(draft)) as target:
        source.backup(target)


def _uri(path: Path, mode: str) -> str:
    return f"{path.absolute().as_uri()}?mode={mode}"


def _is_full(path: Path) -> bool:
    try:
        return shutil.disk_usage(path.parent).free < _LEAST_FREE
    except OSError:
        return False
