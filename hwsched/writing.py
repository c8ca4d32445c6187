"""Files that appear whole or not at all, whatever happens while they are written; and what dead writers left behind.

Here belongs how a file is put in its place. What is in it stands above.
"""

import io
import os
import platform
import re
import shutil
import stat
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from functools import cache
from hashlib import blake2b
from pathlib import Path
from secrets import token_hex
from typing import IO, Final

_PART: Final = re.compile(r"\..*\.(?P<machine>[0-9a-f]{8})-(?P<process>[0-9]+)-[0-9a-f]{8}\.part(-wal|-shm|-journal)?")
_A_DAY_S: Final = 86_400.0
"""A part of another machine's is taken for dead when nothing was written to it for so long."""
_DESCRIPTOR: Final = re.compile(r"/(?:dev|proc/self)/fd/([0-9]+)")
_MOST_LINKS: Final = 40
_NAMED: Final = 5


class UnwritableError(Exception):
    """A place that cannot be written, or an ending that says something else; its message is for people.

    What stood there is as before.
    """


class HeldFileError(UnwritableError):
    """A file that cannot be replaced, since another program has it open or it is protected.

    Parameters
    ----------
    path : Path
        Of the file; what is in it stays.
    """

    def __init__(self, path: Path) -> None:
        super().__init__(f"{path} cannot be replaced: another program has it open, or it is protected; close it there")
        self.path = path


class HeldFilesError(UnwritableError):
    """Some files of several could not be replaced; the others were written.

    Parameters
    ----------
    paths : list of Path
        Those that could not.
    written : list of Path
        Those that were.
    """

    def __init__(self, paths: list[Path], written: list[Path]) -> None:
        named = ", ".join(str(path) for path in paths[:_NAMED])
        more = f" and {len(paths) - _NAMED} more" if len(paths) > _NAMED else ""
        them, they = ("it", "it is") if len(paths) == 1 else ("them", "they are")
        files = "1 file" if len(paths) == 1 else f"{len(paths)} files"
        others = "1 other file was" if len(written) == 1 else f"{len(written)} other files were"
        super().__init__(
            f"{files} could not be replaced, since another program has {them} open or {they} protected: "
            f"{named}{more}; close {them} there and do it again. {others} written"
        )
        self.paths, self.written = paths, written


class StoppedWritingError(UnwritableError):
    """Writing of several files came to an end at one that cannot be written; what was written before stays.

    Parameters
    ----------
    error : UnwritableError
        Why.
    written : list of Path
        Files that were written, each whole.
    """

    def __init__(self, error: UnwritableError, written: list[Path]) -> None:
        others = "1 other file was" if len(written) == 1 else f"{len(written)} other files were"
        super().__init__(f"{error}. {others} written before" if written else str(error))
        self.error, self.written = error, written


def made_folder(folder: Path) -> Path:
    """Make a folder, and those above it, where it is missing; raises UnwritableError."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise UnwritableError(f"the folder {folder} cannot be written: {error.strerror or error}") from error
    return folder


def check_ending(path: Path, ending: str | tuple[str, ...], what: str) -> None:
    """Refuse a file whose name says that something else is in it; a device or pipe has no ending to say it.

    Raises
    ------
    UnwritableError
        Says which ending is accepted.
    """
    endings = (ending,) if isinstance(ending, str) else ending
    if path.suffix.casefold() not in endings and not is_stream(path):
        raise UnwritableError(f"{path} cannot be written: {what} is written to a file ending {' or '.join(endings)}")


def part_beside(path: Path) -> Path:
    """Return a name beside a path for what is not complete yet; what dead writers left in that folder is removed.

    Parameters
    ----------
    path : Path
        Where the file or folder shall be in the end.
    """
    _sweep_once(path.parent)
    return path.with_name(f".{path.name[:40]}.{_machine()}-{os.getpid()}-{token_hex(4)}.part")


@contextmanager
def replacing(path: Path) -> Iterator[Path]:
    """Give a path to write to; move it to the wanted one when the block ends well, else remove it.

    A link is followed, and what it points to replaced; a device or pipe is written through.

    Parameters
    ----------
    path : Path
        Where the file shall be; what is there stays until the new one is complete.

    Yields
    ------
    Path
        In the same folder, so that moving is one step of the file system; elsewhere where the wanted one is no file.

    Raises
    ------
    UnwritableError
        Where the folder cannot be written, the disk is full, or the path names a folder.
    """
    if is_stream(path):
        with _beside_stream(path) as beside:
            yield beside
        return
    with _told(path):
        # A name that is longer than the system takes cannot even be asked about.
        target = Path(os.path.realpath(path)) if path.is_symlink() else path
        folder = not target.name or target.is_dir()
    if folder:
        raise UnwritableError(f"{path} cannot be written: it is a folder, and a file is wanted")
    beside = part_beside(target)
    try:
        with _told(path):
            yield beside
            with beside.open("rb+") as written:
                os.fsync(written.fileno())
            with suppress(FileNotFoundError):
                shutil.copymode(target, beside)
            _put_in_place(beside, target)
            flush_folder(target.parent)
    except BaseException:
        with suppress(OSError):
            beside.unlink()
        raise


def write_archive(path: Path, save: Callable[[IO[bytes]], object]) -> None:
    """Write what a library packs into an archive.

    It is packed in memory: an archive over a file that takes no more tells so a second time, with a traceback, when it
    is thrown away.

    Parameters
    ----------
    path : Path
        To write to, as `replacing` gives it.
    save : callable
        Packs into the file that it is given.
    """
    held = io.BytesIO()
    save(held)
    with path.open("wb") as written:
        written.write(held.getbuffer())


def _put_in_place(beside: Path, target: Path) -> None:
    try:
        os.replace(beside, target)
    except PermissionError as error:
        # On Windows a file that a viewer has open cannot be replaced.
        raise HeldFileError(target) from error


def flush_folder(folder: Path) -> None:
    """Write a folder's list of names to the disk: after a loss of power a file that was moved there has its name.

    Where a system or a share does not do that for folders, it is left to it.
    """
    with suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


def remove_parts(folder: Path) -> list[Path]:
    """Remove from a folder what writers left there that were killed; parts that are being written stay.

    Returns
    -------
    list of Path
        What was removed.
    """
    removed: list[Path] = []
    with suppress(OSError):
        for entry in os.scandir(folder):
            found = _PART.fullmatch(entry.name)
            if found is None or not _is_dead(entry, found["machine"], int(found["process"])):
                continue
            with suppress(OSError):
                if entry.is_dir(follow_symlinks=False):
                    shutil.rmtree(entry.path)
                else:
                    os.unlink(entry.path)
                removed.append(Path(entry.path))
    return removed


@cache
def _sweep_once(folder: Path) -> None:
    # Once a process: ten thousand packets go into one folder.
    remove_parts(folder)


@contextmanager
def _told(path: Path) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        raise UnwritableError(f"{path} cannot be written: {error.strerror or error}") from error


@contextmanager
def _beside_stream(path: Path) -> Iterator[Path]:
    with scratch_folder() as folder:
        beside = folder / (path.name or "stream")
        yield beside
        with _told(path), beside.open("rb") as written, _opened(path) as stream:
            shutil.copyfileobj(written, stream)


@contextmanager
def scratch_folder() -> Iterator[Path]:
    """Give an empty folder for what is handed on elsewhere; what dead writers left of theirs is removed."""
    folder = part_beside(Path(tempfile.gettempdir()) / "hwsched")
    folder.mkdir(mode=0o700)
    try:
        yield folder
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def is_stream(path: Path) -> bool:
    """Tell whether a path names a device, a pipe or a descriptor of this process: what is written through."""
    if _descriptor(path) is not None:
        return True
    try:
        mode = path.stat().st_mode
    except OSError:
        return False
    return not stat.S_ISREG(mode) and not stat.S_ISDIR(mode)


def _opened(path: Path) -> IO[bytes]:
    descriptor = _descriptor(path)
    # Opened by its name, a file behind a descriptor would be cut to nothing and written from its begin.
    return path.open("wb") if descriptor is None else os.fdopen(os.dup(descriptor), "wb")


def _descriptor(path: Path) -> int | None:
    """Return the descriptor of this process that a path names, itself or by links, as ``/dev/stdout`` does."""
    text = os.path.abspath(path)
    for _ in range(_MOST_LINKS):
        found = _DESCRIPTOR.fullmatch(text)
        if found is not None:
            return int(found[1])
        try:
            # Step by step: followed to the end, a link to a descriptor is a link to whatever file stands behind it.
            text = os.path.abspath(os.path.join(os.path.dirname(text), os.readlink(text)))
        except OSError:
            return None
    return None


@cache
def _machine() -> str:
    """Return a short name of what a process number means something in: this machine, or this container of it."""
    try:
        space = str(os.stat("/proc/self/ns/pid").st_ino)
    except OSError:
        space = ""
    return blake2b(f"{platform.node()} {space}".encode(), digest_size=4).hexdigest()


def _is_dead(entry: os.DirEntry[str], machine: str, process: int) -> bool:
    if machine == _machine() and os.name == "posix":
        return not runs(process)
    return time.time() - entry.stat(follow_symlinks=False).st_mtime > _A_DAY_S


def runs(process: int) -> bool:
    """Tell whether a process of this machine runs, as far as that can be told."""
    if sys.platform == "win32":
        # There the question itself would end it.
        return True
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except OSError:
        return True
    return True
