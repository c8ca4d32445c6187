"""Undo, redo, undo of one older step, and the history of steps."""

from hwsched.model.history import ChangeSetInfo
from hwsched.model.history import history as read_history
from hwsched.model.project import Project
from hwsched.model.reverting import check_undoable, last_done, last_undone, revert, summary_of
from hwsched.operations.changes import Changes


def undo(project: Project, *, who: str) -> Changes:
    """Take back the last step; raises NothingToUndoError."""
    with project.change("undo", "Undo", who, kind="undo") as change:
        number = last_done(change.connection)
        change.target = number
        change.summary = f"Take back step {number}: {summary_of(change.connection, number)}"
        revert(change, number)
    return Changes.of(change)


def redo(project: Project, *, who: str) -> Changes:
    """Do again what was taken back last; raises NothingToUndoError."""
    with project.change("redo", "Redo", who, kind="redo") as change:
        number = last_undone(change.connection)
        change.target = number
        change.summary = f"Do again step {number}: {summary_of(change.connection, number)}"
        revert(change, number)
    return Changes.of(change)


def undo_one(project: Project, number: int, *, who: str) -> Changes:
    """Take back one older step.

    Raises
    ------
    NotUndoableError
        When later steps depend on it; they are named.
    """
    with project.change("undo", "Undo", who, kind="undo", target=number) as change:
        check_undoable(change.connection, number)
        change.summary = f"Take back step {number}: {summary_of(change.connection, number)}"
        revert(change, number)
    return Changes.of(change)


def history(project: Project) -> list[ChangeSetInfo]:
    """Return all steps, oldest first."""
    with project.reading() as connection:
        return read_history(connection)
