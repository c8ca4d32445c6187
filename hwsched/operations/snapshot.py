"""One state for all that a verb reads, however many verbs it is put together from.

A check, a page or an export must never carry facts of one state and the number of another.
"""

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar

from hwsched.model.project import Project

_Given = ParamSpec("_Given")
_Found = TypeVar("_Found")


def of_one_state(
    verb: Callable[Concatenate[Project, _Given], _Found],
) -> Callable[Concatenate[Project, _Given], _Found]:
    """Make a reading verb see one state of its project from its first statement to its last.

    Parameters
    ----------
    verb : callable
        Takes the project first and only reads it; the verbs that it calls on the same thread are part of it.
    """

    @wraps(verb)
    def reads(project: Project, /, *stated: _Given.args, **named: _Given.kwargs) -> _Found:
        with project.reading():
            return verb(project, *stated, **named)

    return reads
