"""The people of a project: who works on it, and in which role."""

from dataclasses import dataclass

from sqlalchemy import select

from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.project import Project
from hwsched.model.roles import ROLES, SPECIFIER
from hwsched.model.tables import PERSON
from hwsched.operations.changes import Changes


@dataclass(frozen=True, slots=True)
class Person:
    """One of the people of a project."""

    name: str
    """As the journal writes it down."""
    role: str


def people(project: Project) -> list[Person]:
    """Return the people by name; while there are none, the project is open to all."""
    with project.reading() as connection:
        query = select(PERSON.c.name, PERSON.c.role).order_by(PERSON.c.name)
        return [Person(*row) for row in connection.execute(query)]


def add_person(project: Project, name: str, role: str, *, who: str, base: int | None = None) -> Changes:
    """List a person, or give one who is listed another role.

    Parameters
    ----------
    project : Project
        Open project.
    name : str
        As it will be given by ``--who``, or as the login name is.
    role : str
        One of `hwsched.model.roles.ROLES`; the first person is a specifier, or nobody could add others.
    who : str
        For the journal.
    base : int, optional
        The newest change set that was seen; another role that others gave since is a conflict.

    Raises
    ------
    ValueRefusedError, NotAllowedError, ConflictError
        And nothing is changed.
    """
    known = _one_line(name)
    if role not in ROLES:
        raise ValueRefusedError("role", f"there is no '{role}'; accepted: {', '.join(ROLES)}")
    with project.change("add-person", f"List {known} as {role}", who, base=base) as change:
        if role != SPECIFIER and change.connection.execute(select(PERSON.c.id).limit(1)).first() is None:
            raise ValueRefusedError("role", "the first person is a specifier, or nobody could add others")
        held = _id_of(change, known)
        if held is None:
            change.insert(PERSON, [{"name": known, "role": role}])
        else:
            change.update(PERSON, [(held, {"role": role})])
    return Changes.of(change)


def remove_person(project: Project, name: str, *, who: str, base: int | None = None) -> Changes:
    """Take a person off the list; with the last one the project is open to all again.

    Raises
    ------
    MissingRowError
        For a name that is not listed.
    ValueRefusedError
        For the only specifier while others are listed.
    NotAllowedError, ConflictError
        As `add_person`; nothing is changed.
    """
    known = _one_line(name)
    with project.change("remove-person", f"Take {known} off the people", who, base=base) as change:
        held = _id_of(change, known)
        if held is None:
            raise MissingRowError(f"{known} is not among the people of this project")
        change.delete(PERSON, [held])
    return Changes.of(change)


def _id_of(change: Change, name: str) -> str | None:
    return change.connection.execute(select(PERSON.c.id).where(PERSON.c.name == name)).scalar()


def _one_line(name: str) -> str:
    line = " ".join(name.split())
    if not line:
        raise ValueRefusedError("name", "a person needs a name")
    return line
