"""Saying yes to the upgrade of a project of an earlier schema."""

from pathlib import Path

from hwsched.model.file.upgrading import Upgraded, upgrade_project

__all__ = ["Upgraded", "upgrade"]


def upgrade(target: str | Path) -> Upgraded:
    """Bring a project to the newest schema, with a verified copy of a file first.

    Parameters
    ----------
    target : str or Path
        Project file or database URL.

    Returns
    -------
    Upgraded
        Both schemas, and the copy that was kept.

    Raises
    ------
    ProjectError
        Where it cannot be opened, copied or brought up to date; it is as before.
    """
    return upgrade_project(target)
