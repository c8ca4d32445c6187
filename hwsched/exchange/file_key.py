"""What a file holds, as a hash: what was shown of a file is bound to its content, whatever its name and times say."""

import hashlib
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from hwsched.exchange.problems import FileProblem, InputRejected

_Read = TypeVar("_Read")


def file_key(path: Path) -> str:
    """Return the hash of a file's content: 64 hexadecimal digits of SHA-256; empty where it cannot be read."""
    try:
        with path.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except OSError:
        return ""


def read_with_key(path: Path, read: Callable[[], _Read]) -> tuple[_Read, str]:
    """Read a file, and return beside it the key of what was read.

    Parameters
    ----------
    path : Path
        The file.
    read : callable
        Reads it.

    Raises
    ------
    InputRejected
        Where somebody wrote it meanwhile, and whatever `read` raises.
    """
    # Before and after: a file that is being saved while it is read gives a content that nobody ever had.
    key = file_key(path)
    found = read()
    if file_key(path) != key:
        raise InputRejected([FileProblem(path.name, "was written while it was read; let it be saved, and try again")])
    return found, key
