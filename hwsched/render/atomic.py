"""A file that appears whole or not at all, whatever happens while it is written."""

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from uuid import uuid4


@contextmanager
def replacing(path: Path) -> Iterator[Path]:
    """Give a path beside the wanted one to write to; move it there when the block ends well, else remove it.

    Parameters
    ----------
    path : Path
        Where the file shall be; what is there stays until the new one is complete.

    Yields
    ------
    Path
        In the same folder, so that moving is one step of the file system.

    Raises
    ------
    OSError
        Where the folder cannot be written.
    """
    beside = path.with_name(f".{path.name[:40]}.{uuid4().hex}.part")
    try:
        yield beside
        with beside.open("rb+") as written:
            os.fsync(written.fileno())
        os.replace(beside, path)
    except BaseException:
        with suppress(OSError):
            beside.unlink()
        raise
