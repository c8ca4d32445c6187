"""Many verbs as one step: one change set, whole or not at all, with one undo."""

from collections.abc import Callable
from typing import TypeVar

from hwsched.model.project import Project

Result = TypeVar("Result")


class _NotKeptError(Exception):
    """Raised at the end of a trial: what was written is rolled back."""


def as_one_step(project: Project, summary: str, work: Callable[[], Result], *, who: str, keep: bool = True) -> Result:
    """Do work whose verbs become parts of one step.

    Parameters
    ----------
    project : Project
        Open project; the verbs work on it, in this thread.
    summary : str
        A sentence for people.
    work : callable
        Calls the verbs; where it raises, nothing of them is kept.
    who : str
        For the journal. Each verb must be one that this person's role does.
    keep : bool
        Without it all is done and taken back: a trial.
    """
    done: list[Result] = []
    try:
        with project.change("batch", summary, who):
            done.append(work())
            if not keep:
                raise _NotKeptError
    except _NotKeptError:
        pass
    return done[0]
