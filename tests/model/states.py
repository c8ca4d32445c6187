"""What a project holds at a moment, for comparing."""

from typing import Any

from sqlalchemy import select

from hwsched.model.journal.history import history
from hwsched.model.project import Project
from hwsched.model.tables import JOURNALLED

Rows = dict[tuple[str, str], dict[str, Any]]
"""Table and identifier to the row."""


def rows_of(project: Project) -> Rows:
    """All journalled rows with their versions."""
    with project.reading() as connection:
        return {
            (name, row.id): dict(row._mapping)
            for name, table in JOURNALLED.items()
            for row in connection.execute(select(table))
        }


def in_force(project: Project) -> list[int]:
    """Numbers of the edits that are in force, in the order in which they were made."""
    with project.reading() as connection:
        return [step.number for step in history(connection) if step.kind == "edit" and not step.undone]


def state(project: Project) -> Rows:
    """All journalled rows without their versions, which rise with every step there and back."""
    return {
        key: {name: value for name, value in row.items() if name != "version"} for key, row in rows_of(project).items()
    }
