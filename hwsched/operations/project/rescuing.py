"""Saving what can be read of a project file into a new project."""

from pathlib import Path

from hwsched.model import rescuing
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import place_of
from hwsched.model.rescuing import Rescued

__all__ = ["Rescued", "rescue"]


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
