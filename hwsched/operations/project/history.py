"""Undo, redo, undo and redo of one older step, and the history of steps.

Undo and redo go by person: nobody takes back what another did without choosing that step in the history.
"""

from contextlib import suppress
from dataclasses import dataclass

from hwsched.model.errors import NothingToUndoError
from hwsched.model.journal.history import ChangeSetInfo, standing
from hwsched.model.journal.history import history as read_history
from hwsched.model.journal.history import newest as read_newest
from hwsched.model.journal.reverting import last_done, last_undone, revert
from hwsched.model.project import Project
from hwsched.operations.changes import Changes


@dataclass(frozen=True, slots=True)
class NextSteps:
    """What undo and redo of a person would speak of at present, in the words of the step; empty: of nothing."""

    undo: str = ""
    redo: str = ""


def next_steps(project: Project, *, who: str) -> NextSteps:
    """Return the step that a person would take back next, and the one that would be done again."""
    found = ["", ""]
    with project.reading() as connection:
        for at, last in enumerate((last_done, last_undone)):
            with suppress(NothingToUndoError):
                step = standing(connection, last(connection, who))
                found[at] = step.summary if step is not None else ""
    return NextSteps(*found)


def undo(project: Project, *, who: str) -> Changes:
    """Take back the last step of a person.

    Raises
    ------
    NothingToUndoError
        Where no step of that person is in force.
    NotUndoableError
        When a later step, such as another person's, depends on it; it is named with its person.
    NotAllowedError
        When the person's role does not do such a step any more.
    """
    with project.change("undo", "Undo", who, kind="undo") as change:
        revert(change, last_done(change.connection, who))
    return Changes.of(change)


def redo(project: Project, *, who: str) -> Changes:
    """Do again what a person took back last; raises as `undo`."""
    with project.change("redo", "Redo", who, kind="redo") as change:
        revert(change, last_undone(change.connection, who))
    return Changes.of(change)


def undo_one(project: Project, number: int, *further: int, who: str) -> Changes:
    """Take back one step chosen in the history, be it another person's; with further ones as a single step.

    Raises
    ------
    NotUndoableError
        When later steps depend on it, which are named with their persons; or it is no edit in force.
    NotAllowedError
        When the person's role does not do such a step.
    """
    with project.change("undo", "Undo", who, kind="undo") as change:
        revert(change, number, *further)
    return Changes.of(change)


def redo_one(project: Project, number: int, *, who: str) -> Changes:
    """Do one step again that was taken back, chosen in the history; raises as `undo_one`."""
    with project.change("redo", "Redo", who, kind="redo") as change:
        revert(change, number)
    return Changes.of(change)


def history(project: Project) -> list[ChangeSetInfo]:
    """Return all steps, oldest first."""
    with project.reading() as connection:
        return read_history(connection)


def newest(project: Project) -> int:
    """Return the number of the newest change set: what is read after this has been seen up to there."""
    with project.reading() as connection:
        return read_newest(connection)
