"""What is said when a project cannot be opened or a change cannot be made.

Front doors show the message as it stands; `ProjectError` ends with exit code 4, `ChangeError` with 3.
"""

from collections.abc import Sequence
from typing import NamedTuple

from hwsched.model.file.schema import HEAD


class ProjectError(Exception):
    """A project that cannot be made or opened, or that stopped answering."""


class MissingProjectError(ProjectError):
    """There is nothing at that place."""


class ExistingProjectError(ProjectError):
    """A new project would overwrite something."""


class ForeignFileError(ProjectError):
    """A folder, a file of another program, a database without a project."""


class NewerProjectError(ProjectError):
    """A project written by a newer version of this program."""


class NeedsUpgradeError(ProjectError):
    """A project of an earlier schema, left alone until somebody says yes.

    Parameters
    ----------
    place : str
        The file, or the URL without its password.
    revision : str
        Its schema.
    copied : bool
        Whether an upgrade keeps a copy first: it does of a file, not of a database on a server.
    """

    def __init__(self, place: str, revision: str, *, copied: bool) -> None:
        kept = (
            "A checked copy of it as it is now is kept beside it first."
            if copied
            else "No copy is made of a database on a server: let its keeper make one first."
        )
        self.place = place
        self.revision = revision
        self.copied = copied
        self.consequence = (
            f"{place} was written by an earlier version of hwsched (schema {revision}; this version needs {HEAD}). "
            f"An upgrade changes it for everybody who works in it, and earlier versions cannot open it any more. {kept}"
        )
        """What would happen, for whoever asks a person."""
        super().__init__(
            f"{self.consequence} It was left alone; to upgrade it: hwsched project upgrade {place if copied else 'URL'}"
        )


class DamagedProjectError(ProjectError):
    """A project file that is broken."""


class ForbiddenProjectError(ProjectError):
    """The operating system does not let us read or write it."""


class ForeignSchemaError(ProjectError):
    """A project file that declares what is not of its schema: it might act by itself.

    Parameters
    ----------
    place : str
        The file.
    things : str
        All that does not belong there, named.
    """

    def __init__(self, place: str, things: str) -> None:
        super().__init__(
            f"{place} holds what is not of a project and might act by itself: {things}; it was left alone and nothing "
            "in it was run. Ask whoever sent it, or save what is a project's: "
            f"hwsched project rescue {place} NEW.hwsched"
        )
        self.things = things


class BusyProjectError(ProjectError):
    """Somebody else held the project for too long."""


class UnreachableProjectError(ProjectError):
    """The database server does not answer."""


class ChangeError(Exception):
    """An edit that was not made; the project is as before."""


class ValueRefusedError(ChangeError):
    """A value that a fact cannot take.

    Parameters
    ----------
    field : str
        Name of the attribute or of the project's own field.
    message : str
        What is wrong and what is accepted.
    """

    def __init__(self, field: str, message: str) -> None:
        super().__init__(f"{field}: {message}")
        self.field = field
        self.message = message


class MissingRowError(ChangeError):
    """The opening, leaf, item or part is not in the project (any more)."""


class DuplicateValueError(ChangeError):
    """Two rows would share what must be unique, such as an opening's mark or a part's number."""


class StillUsedError(ChangeError):
    """A row cannot be removed while others stand on it."""


def minute_of(when: str) -> str:
    """Return the minute and the offset of a moment, for people.

    Examples
    --------
    >>> minute_of("2031-02-03T14:05:09.123+00:00")
    '2031-02-03 14:05 +00:00'
    """
    return f"{when[:16].replace('T', ' ')} {when[-6:]}"


class Clash(NamedTuple):
    """One fact that somebody else changed since an editor saw it. Values are as the project shows them."""

    fact: str
    """For people, such as ``Leaf thickness of M004``."""
    seen: str
    """What the editor saw."""
    present: str
    wanted: str
    who: str
    """Who changed it last."""
    when: str
    """ISO 8601, in the project's zone."""
    step: int
    """In which change set."""

    def __str__(self) -> str:
        by = f"{self.who}, {minute_of(self.when)}, step {self.step}"
        return f"{self.fact}: seen as {self.seen}, now {self.present} ({by}); wanted: {self.wanted}"


class ReadOnlyProjectError(ChangeError):
    """The project is there to be read only: for this person, on this disk, by this role of a server."""


class ConflictError(ChangeError):
    """Somebody else changed since what an edit would overwrite.

    Parameters
    ----------
    clashes : sequence of Clash
        The facts that it concerns.
    base : int
        The newest change set now: an edit made against it overwrites knowingly.
    entities, openings : frozenset of str, optional
        Tables and openings in which the others' values stand.
    """

    def __init__(
        self,
        clashes: Sequence[Clash],
        base: int,
        entities: frozenset[str] = frozenset(),
        openings: frozenset[str] = frozenset(),
    ) -> None:
        super().__init__("somebody else changed this meanwhile\n" + "\n".join(map(str, clashes)))
        self.clashes = tuple(clashes)
        self.base = base
        self.entities = entities
        self.openings = openings


class NotAllowedError(ChangeError):
    """The person's role does not do this."""


class NothingToUndoError(ChangeError):
    """The stack of steps to undo, or to redo, is empty."""


class NotUndoableError(ChangeError):
    """A step on which later ones depend.

    Parameters
    ----------
    message : str
        Sentence that names the later steps and their persons.
    dependents : sequence of int
        Numbers of the change sets that depend on it, oldest first.
    """

    def __init__(self, message: str, dependents: Sequence[int] = ()) -> None:
        super().__init__(message)
        self.dependents = tuple(dependents)
