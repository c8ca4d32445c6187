"""Change sets that are prepared before they take the writers' lock, and whole or not at all.

Others wait while a change set is written, so nothing long is worked out in it. What it stands on is read and worked out
before; within the lock it is only seen whether that still holds. If not, everything is rolled back, what has changed is
worked out again outside, and it begins anew. The last attempt works within the lock, so that it comes to an end however
busy the others are.
"""

from collections.abc import Callable, Collection, Iterable
from typing import Final, TypeVar

from hwsched.model.journal.journal import Change
from hwsched.model.journal.touched import Touched
from hwsched.model.project import Project
from hwsched.model.tables import (
    BUILDING,
    CIRCUIT_TABLE,
    HARDWARE_SET,
    KIT_CONTENT,
    LEVEL,
    PART,
    PROJECT,
    SET_LINE,
    SUPPLY_TABLE,
)

ATTEMPTS: Final = 4
_AROUND: Final = frozenset(
    str(table.name)
    for table in (PROJECT, PART, KIT_CONTENT, BUILDING, LEVEL, HARDWARE_SET, SET_LINE, SUPPLY_TABLE, CIRCUIT_TABLE)
)
"""What many openings stand on, though no row of theirs changes with it."""

_Result = TypeVar("_Result")


class NotReadyError(Exception):
    """Raised within a change set: it is rolled back, the work is done outside, and it begins anew.

    Parameters
    ----------
    work : callable
        What is still to be prepared.
    """

    def __init__(self, work: Callable[[], object]) -> None:
        super().__init__("something is still to be worked out")
        self.work = work


class StoppedError(Exception):
    """Somebody stopped the work; nothing is changed."""


def change_prepared(
    project: Project, verb: str, summary: str, who: str, write: Callable[[Change, bool], _Result]
) -> tuple[Change, _Result]:
    """Make one change set that may ask for more preparation.

    Parameters
    ----------
    project : Project
        Open project.
    verb, summary, who : str
        As `Project.change`.
    write : callable
        Gets the change set, and whether this is the last attempt: then it must not raise `NotReadyError`. It may be
        called several times, and must leave nothing behind but rows.

    Returns
    -------
    tuple
        The finished change set and what `write` returned.
    """
    for left in reversed(range(ATTEMPTS)):
        try:
            with project.change(verb, summary, who) as change:
                # The last attempt works everything out under the lock: others wait a little, but it is sure to come
                # to an end.
                made = write(change, not left)
        except NotReadyError as lacking:
            # Outside the change set, which is rolled back by now: the writers' lock is not held while something long
            # is worked out.
            lacking.work()
        else:
            return change, made
    raise RuntimeError("the last attempt at a change set asked for more preparation")


def concern(late: Iterable[Touched], openings: Collection[str] | None) -> bool:
    """Tell whether what others wrote can touch what was worked out for openings; None: for all.

    Parameters
    ----------
    late : iterable of Touched
        Change sets since it was read.
    openings : collection of str or None
        Identifiers.
    """
    known = None if openings is None else set(openings)
    return any(
        not each.entities.isdisjoint(_AROUND) or (bool(each.openings) if known is None else bool(each.openings & known))
        for each in late
    )
