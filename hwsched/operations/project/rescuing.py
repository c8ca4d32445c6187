"""Saving what can be read of a project file into a new project."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from hwsched.model.errors import ValueRefusedError
from hwsched.model.file import rescuing
from hwsched.model.file.rescuing import Rescued
from hwsched.model.file.schema import SUFFIX
from hwsched.model.project import Project, open_project, place_of

__all__ = ["Rescued", "lost_words", "rescue", "what_is_left"]


@contextmanager
def what_is_left(source: str | Path) -> Iterator[tuple[Project, Rescued]]:
    """Open what can be read of a damaged project file, to be read only; raises ProjectError where nothing can.

    Yields
    ------
    tuple
        The project, made in a place of its own that goes with the block, and what was lost.
    """
    with TemporaryDirectory(prefix="hwsched-") as folder:
        place = Path(folder) / f"rescued{SUFFIX}"
        found = rescue(source, place)
        with open_project(place) as project:
            project.read_only = "it is damaged, and this is what can be read of it; hwsched project rescue saves that"
            yield project, found


def rescue(source: str | Path, target: str | Path) -> Rescued:
    """Write what can be read of a project file into a new one; the file itself is left as it is.

    Raises
    ------
    ValueRefusedError
        For a database on a server.
    ProjectError
        Where nothing can be read, or the new project cannot be made.
    """
    old, new = place_of(source), place_of(target)
    if not isinstance(old, Path) or not isinstance(new, Path):
        raise ValueRefusedError("project", "what is saved so are files; a server's database is its keeper's")
    return rescuing.rescue(old, new)


def lost_words(found: Rescued) -> str:
    """Name the tables that lost rows, each with how many."""
    lost = [
        f"{each.table.replace('_', ' ')} ({'unknown how many' if each.lost is None else each.lost})"
        for each in found.tables
        if each.lost != 0
    ]
    return ", ".join(lost) or "none"
