"""Copies of a project file over time: one a day, fewer the older they are, listed and put back.

They stand beside the project in a folder of their own, ``yard.backups`` beside ``yard.hwsched``. Copies that are made
before an upgrade stand beside the project itself and are never thinned, see `sqlite_file.verified_copy`.
"""

import json
import os
import re
import shutil
import sqlite3
from collections.abc import Callable, Iterable
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import date, datetime, tzinfo
from pathlib import Path
from typing import Final

from tzlocal import get_localzone

from hwsched.model.errors import BusyProjectError, ExistingProjectError, MissingRowError, ProjectError, minute_of
from hwsched.model.file.sqlite_file import back_up, check_file, check_writable, close_file, harmless, make_file
from hwsched.model.journal.chain import LastSet
from hwsched.model.time_zone import told_in, zone_of
from hwsched.writing import flush_folder, part_beside

KEPT: Final[tuple[tuple[int | None, str, Callable[[date], str]], ...]] = (
    (7, "each day", date.isoformat),
    (62, "the last of each week", lambda day: "{}-W{:02}".format(*day.isocalendar()[:2])),
    (None, "the last of each month", lambda day: f"{day.year}-{day.month:02}"),
)
"""The table: up to how many days of age (None: for ever) which copies are kept, in words and by what they share."""

_RESTORE: Final = "before-restore"


@dataclass(frozen=True, slots=True)
class Backup:
    """One copy of a project file."""

    name: str
    """What it is asked for by: the day of which it is the morning, or ``before-restore-1``."""
    path: Path
    size: int
    """Bytes."""
    newest: str
    """What was done last in it, for people."""
    newest_at: str = ""
    """When that was, ISO 8601 in the project's zone with its offset; empty where nothing was done, or it is damaged."""
    step: str = ""
    """What was done last, without when it was."""


def folder_of(path: Path) -> Path:
    """Return the folder of a project's copies."""
    return path.with_name(f"{path.name.removesuffix(path.suffix)}.backups")


def backups_of(path: Path) -> list[Backup]:
    """Return the copies of a project: those of days, the oldest first, then those that a restore kept."""
    # The project's zone as it is now; of one that is lost or damaged, the one of each copy.
    zone = _zone_of(path)
    found = [
        Backup(name, each, each.stat().st_size, *_newest_step(each, zone or _zone_of(each)))
        for each, name in _copies(path)
    ]
    return sorted(found, key=lambda each: (each.name.startswith(_RESTORE), len(each.name), each.name))


def keep_daily(path: Path, last: LastSet | None, zone: tzinfo, day: date) -> Path | None:
    """Keep a copy of a project before the first change of a day, and thin the earlier ones.

    Parameters
    ----------
    path : Path
        The project file.
    last : LastSet or None
        The newest change set, read in the transaction of the change, which has written nothing yet and keeps other
        writers out.
    zone : tzinfo
        Of the project's calendar.
    day : date
        Which it is by that calendar.

    Returns
    -------
    Path or None
        The copy; None where something was changed today already, or nothing ever.

    Raises
    ------
    ProjectError
        Where the copy cannot be made, or is not what was copied.
    """
    if last is None or day_of(last.at, zone) == day:
        return None
    copy = folder_of(path) / _named(path, day.isoformat())
    try:
        make_file(copy, lambda draft: _copied(path, draft, last.chain_hash))
    except ExistingProjectError:
        return None
    _thin(path, day)
    return copy


def day_of(when: str, zone: tzinfo) -> date | None:
    """Return the day of a moment of the journal in a zone; None where it is no moment."""
    try:
        return datetime.fromisoformat(when).astimezone(zone).date()
    except (ValueError, OverflowError):
        return None


def thinned(days: Iterable[date], today: date) -> frozenset[date]:
    """Return the days of which a copy stays, by the table `KEPT`.

    Examples
    --------
    >>> sorted(day.day for day in thinned([date(2031, 3, n) for n in range(1, 18)], date(2031, 3, 17)))
    [2, 9, 10, 11, 12, 13, 14, 15, 16, 17]
    """
    kept: dict[str, date] = {}
    for day in sorted(days):
        age = (today - day).days
        shared = next(name_of(day) for most, _, name_of in KEPT if most is None or age < most)
        kept[shared] = day
    return frozenset(kept.values())


def restore(path: Path, name: str) -> tuple[Backup, Path | None]:
    """Put a copy in a project's place; as it was, it is kept under a name of its own among the copies first.

    Parameters
    ----------
    path : Path
        The project file, which nobody has open; it may be damaged, or gone.
    name : str
        Of the copy.

    Returns
    -------
    tuple of Backup and Path or None
        What was put back, and the project as it was.

    Raises
    ------
    MissingRowError
        Where there is no copy of that name; says which there are.
    ProjectError
        Where the copy is damaged, the project is open elsewhere, or the folder cannot be written.
    """
    copies = backups_of(path)
    found = next((each for each in copies if each.name == name), None)
    if found is None:
        there = ", ".join(each.name for each in copies) or "none yet"
        raise MissingRowError(f"there is no copy {name} of {path}; there are: {there}")
    check_file(found.path)
    kept = _set_aside(path) if path.exists() else None
    draft = part_beside(path)
    try:
        shutil.copyfile(found.path, draft)
        with draft.open("rb+") as file:
            os.fsync(file.fileno())
        for rest in ("-wal", "-shm"):
            Path(f"{path}{rest}").unlink(missing_ok=True)
        draft.replace(path)
        flush_folder(path.parent)
    except OSError as error:
        raise ProjectError(f"{path} cannot be replaced: {error.strerror or error}") from error
    finally:
        draft.unlink(missing_ok=True)
    return found, kept


def _set_aside(path: Path) -> Path:
    check_writable(path)
    try:
        close_file(path)
    except BusyProjectError:
        raise
    except ProjectError:
        # It is damaged, which may be why it is replaced: kept as it lies there, with its log.
        pass
    count = 1
    while True:
        kept = folder_of(path) / _named(path, f"{_RESTORE}-{count}")
        try:
            make_file(kept, lambda draft: _duplicate(path, draft))
        except ExistingProjectError:
            count += 1
            continue
        if (log := Path(f"{path}-wal")).exists():
            shutil.copyfile(log, Path(f"{kept}-wal"))
        return kept


def _duplicate(path: Path, draft: Path) -> None:
    shutil.copyfile(path, draft)


def _named(path: Path, name: str) -> str:
    return f"{path.name.removesuffix(path.suffix)}.{name}{path.suffix}"


def _copies(path: Path) -> list[tuple[Path, str]]:
    """Return what stands in the folder under names that we give, with those names; nothing else there is ours."""
    pattern = re.compile(re.escape(_named(path, "\0")).replace("\0", rf"(\d{{4}}-\d\d-\d\d|{_RESTORE}-\d+)"))
    folder = folder_of(path)
    if not folder.is_dir():
        return []
    found = ((each, pattern.fullmatch(each.name)) for each in folder.iterdir())
    return [(each, match.group(1)) for each, match in found if match]


def _thin(path: Path, today: date) -> None:
    copies = {}
    for each, name in _copies(path):
        with suppress(ValueError):
            copies[date.fromisoformat(name)] = each
    for day in copies.keys() - thinned(copies, today):
        copies[day].unlink(missing_ok=True)


def _copied(path: Path, draft: Path, newest: str | None) -> None:
    back_up(path, draft)
    with closing(sqlite3.connect(f"{draft.absolute().as_uri()}?mode=ro&immutable=1", uri=True)) as copy:
        found = copy.execute("PRAGMA integrity_check(1)").fetchone()[0]
        if found != "ok":
            raise ProjectError(f"the copy of {path} is not whole: {found}")
        there = copy.execute("SELECT chain_hash FROM change_set ORDER BY number DESC LIMIT 1").fetchone()
        if there != (newest,):
            raise ProjectError(f"the copy of {path} does not hold what was done last")


def _newest_step(copy: Path, zone: tzinfo | None) -> tuple[str, str, str]:
    """Return what was done last in a copy, in words with when, when, and in words alone."""
    try:
        with closing(_read_only(copy, alone=True)) as database:
            query = "SELECT number, at, who, summary FROM change_set ORDER BY number DESC LIMIT 1"
            row = database.execute(query).fetchone() if _is_table(database, "change_set") else None
    except sqlite3.Error:
        return "damaged", "", "damaged"
    if row is None:
        return "nothing done yet", "", "nothing done yet"
    number, at, who, summary = row
    try:
        told = told_in(zone or get_localzone(), str(at))
    except (ValueError, OverflowError):
        # What another program wrote there is shown as it is.
        said = f"step {number}, {at}, {who}: {summary}"
        return said, "", said
    return f"step {number}, {minute_of(told)}, {who}: {summary}", told, f"step {number}, {who}: {summary}"


def _zone_of(path: Path) -> tzinfo | None:
    """Return the zone of a project file; None where it cannot be read."""
    try:
        with closing(_read_only(path)) as database:
            query = "SELECT settings FROM project LIMIT 1"
            row = database.execute(query).fetchone() if _is_table(database, "project") else None
        return None if row is None else zone_of(json.loads(row[0] or "{}"))
    # What a stranger wrote there: no JSON, JSON of another shape, or without a bottom.
    except (sqlite3.Error, ValueError, TypeError, AttributeError, RecursionError):
        return None


def _is_table(database: sqlite3.Connection, name: str) -> bool:
    """Tell whether that is a real table: what a view works out may have no end."""
    query = "SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = ? AND sql NOT LIKE 'CREATE VIRTUAL%'"
    return database.execute(query, (name,)).fetchone() is not None


def _read_only(path: Path, *, alone: bool = False) -> sqlite3.Connection:
    """Connect to be read only; alone: nobody writes to it, so that no log and no lock is looked for."""
    database = sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro{'&immutable=1' if alone else ''}", uri=True)
    harmless(database)
    return database
