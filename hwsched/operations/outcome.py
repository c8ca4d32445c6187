"""What can come of a verb that does not end well, and how both front doors say what it had written by then."""

from collections.abc import Sequence
from typing import Final

from hwsched.exchange.problems import InputRejected
from hwsched.language import phrase
from hwsched.model.errors import ChangeError, ExistingProjectError, ProjectError
from hwsched.model.journal.written import Written
from hwsched.operations.changes import Changes
from hwsched.operations.step_titles import step_said
from hwsched.outside import OutsideError
from hwsched.writing import UnwritableError

REFUSED: Final = (ChangeError, InputRejected, UnwritableError, ExistingProjectError)
"""What was asked cannot be done so; the message says why, for people. To be asked before `CLOSED`: a new project where
something stands already is among them, since nothing was to be opened there."""
CLOSED: Final = (ProjectError, OutsideError)
"""The project, or a package that adds to the program, cannot be opened or stopped answering."""
_NAMED: Final = 5


def changes_of(written: Sequence[Written]) -> Changes:
    """Return what several change sets touched together; its number is the last one's."""
    return Changes(
        frozenset[str]().union(*(each.openings for each in written)),
        frozenset[str]().union(*(each.parts for each in written)),
        frozenset[str]().union(*(each.entities for each in written)),
        written[-1].number if written else None,
        tuple(row for each in written for row in each.added),
    )


def said_of(written: Sequence[Written]) -> str:
    """Say what a piece of work that did not come to its end has written into the project.

    Examples
    --------
    >>> said_of([])
    'Nothing was changed in the project.'
    """
    if not written:
        return phrase("Nothing was changed in the project.")
    named = "; ".join(f"{each.number} ({step_said(each.summary)})" for each in written[:_NAMED])
    more = phrase(" and {count} more", count=len(written) - _NAMED) if len(written) > _NAMED else ""
    if len(written) == 1:
        return phrase("Written before that, and it stands: change set {named}. Undo takes it back.", named=named)
    return phrase(
        "Written before that, and they stand: change sets {named}{more}. Undo takes them back, the last one first.",
        named=named,
        more=more,
    )
