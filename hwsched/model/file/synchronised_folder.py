"""Whether a program copies a project's folder to and from elsewhere by itself.

Such a program puts a file there whole, in its own time and past every lock: of two people who write at once one loses
what was written, and a write-ahead log comes apart from its project. Here belongs telling; what follows is that of a
network, see `shared_folder`. Names stand in a table; otherwise only what files say of themselves is asked.
"""

import os
import re
import stat
from collections.abc import Callable, Iterator
from contextlib import suppress
from fnmatch import fnmatchcase, translate
from functools import cache
from pathlib import Path
from typing import Final

from hwsched.calc.tables import rows

_PLACEHOLDER_FLAGS: Final = 0x1000 | 0x40000 | 0x400000 | 0x80000 | 0x100000
"""Windows: offline, recall on open, recall on data access, pinned, unpinned (winnt.h). Not tried."""
_CLOUD_TAG: Final = 0x9000001A
"""Windows: reparse tags of folders that a program fills, but for the digit that tells which (ntifs.h). Not tried."""
_CLOUD_TAG_MASK: Final = 0xFFFF0FFF
_DATALESS: Final = 0x40000000
"""macOS: what is in the file lies elsewhere (sys/stat.h). Not tried."""


def synchronised_by(path: Path) -> str:
    """Say by what it is told that a program copies a file's folder; empty where nothing tells.

    Parameters
    ----------
    path : Path
        Of the project; it need not be there yet.
    """
    place = Path(os.path.realpath(path))
    of_file = next(_of_attributes(place), "")
    if of_file:
        return f"{of_file} of {place}"
    for folder in place.parents:
        found = next(_of_folder(folder), "")
        if found:
            return found
    return ""


@cache
def _names(kind: str) -> list[str]:
    return [row.text("name") for row in rows("synchronised_folders", "project_file") if row.text("kind") == kind]


def _of_folder(folder: Path) -> Iterator[str]:
    for told in _of_attributes(folder):
        yield f"{told} of {folder}"
    for name in _names("folder"):
        if folder.as_posix().casefold().endswith(f"/{name}".casefold()):
            yield f"the place {folder}"
    for name in _names("entry"):
        if "*" not in name and os.path.lexists(folder / name):
            yield f"{name} in {folder}"
    # A folder that cannot be listed tells nothing.
    with suppress(OSError):
        # At every opening, also where a folder above holds thousands of files: one expression, asked by the list.
        for name in filter(_telling(), os.listdir(folder)):
            yield f"{name} in {folder}"


@cache
def _telling() -> Callable[[str], object]:
    """Tell of the name of an entry whether such a program has left it."""
    patterns = [translate(name) for name in _names("entry") if "*" in name]
    return re.compile("|".join(patterns)).match if patterns else lambda _: False


def _of_attributes(path: Path) -> Iterator[str]:
    with suppress(OSError):
        found = path.lstat()
        if is_placeholder(found):
            yield "the state"
    listed = getattr(os, "listxattr", None)
    if listed is None:
        return
    patterns = _names("attribute")
    with suppress(OSError):
        for name in listed(path):
            if any(fnmatchcase(name.casefold(), pattern) for pattern in patterns):
                yield f"the attribute {name}"


def is_placeholder(found: os.stat_result) -> bool:
    """Tell whether a file or folder is one that a program fills when it is asked for, by what the system says of it."""
    flags = int(getattr(found, "st_file_attributes", 0))
    tag = int(getattr(found, "st_reparse_tag", 0))
    if flags & _PLACEHOLDER_FLAGS:
        return True
    if flags & getattr(stat, "FILE_ATTRIBUTE_REPARSE_POINT", 0x400) and tag & _CLOUD_TAG_MASK == _CLOUD_TAG:
        return True
    return bool(int(getattr(found, "st_flags", 0)) & _DATALESS)
