"""Roles of the people at work, and which verbs each role may do.

Here belong the table and its judgement; it is asked in one place, where a change set is begun. Adding and removing
people stands in `hwsched.operations.project.people`. A name is taken at its word: passwords are a matter of the
office's database.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from sqlalchemy import Connection, bindparam, exists, select

from hwsched.choices import ROLES as ROLE_WORDS
from hwsched.model.errors import NotAllowedError, ValueRefusedError
from hwsched.model.tables import PERSON


@dataclass(frozen=True, slots=True)
class Role:
    """What a person is in a project."""

    name: str
    does: str
    """For people, after "a surveyor"."""
    verbs: frozenset[str] | None
    """Verbs that it may do; None: every verb."""


SPECIFIER: Final = "specifier"
"""The role that does everything, and lists the people."""

BATCH: Final = "batch"
"""Many verbs as one step: each of them is one that its maker may do."""
OTHERS_BATCH: Final = "others-batch"
"""To take back what another person did so, which may hold more than one may do oneself."""
_OWN_STEPS: Final = frozenset({"undo", "redo", BATCH})
"""Who may do something may take it back: a step is taken back by whoever may do that step."""
_FILES: Final = frozenset({"attach", "detach"})
"""Photographs come from everybody who stands at the door, data sheets from who orders."""
_SURVEY: Final = frozenset(
    {
        *("add-opening", "add-leaf", "add-item", "remove", "edit-facts", "set-own-value"),
        *("import-survey", "decide-survey", "retire", "restore"),
        *("set-level-height", "set-route"),
        *_FILES,
    }
)

# What is in stock comes with the catalogue's workbook, or is typed part by part.
_STORE: Final = (
    frozenset({"import-catalogue", "add-part", "edit-part", "withdraw-part", "issue-packets", "record-piece"}) | _FILES
)
_SITE: Final = frozenset({"issue-packets", "record-piece"}) | _FILES

ROLES: Final[Mapping[str, Role]] = {
    role.name: role
    for role in (
        Role("surveyor", ROLE_WORDS["surveyor"], _SURVEY | _OWN_STEPS),
        Role(SPECIFIER, ROLE_WORDS[SPECIFIER], None),
        Role("storekeeper", ROLE_WORDS["storekeeper"], _STORE | _OWN_STEPS),
        Role("installer", ROLE_WORDS["installer"], _SITE | _OWN_STEPS),
        Role("viewer", ROLE_WORDS["viewer"], frozenset()),
    )
}
"""The table: a verb that no row names is the specifier's alone."""


_ROLE: Final = select(
    select(PERSON.c.role).where(PERSON.c.name == bindparam("who")).scalar_subquery(), exists(select(PERSON.c.id))
)
"""The role of a person, and whether there are people at all."""


def require(connection: Connection, who: str, verb: str) -> None:
    """Refuse a verb that a person may not do.

    Parameters
    ----------
    connection : Connection
        In the transaction of the change.
    who : str
        Person at work.
    verb : str
        Of the change set that is begun, or of the step that it takes back.

    Raises
    ------
    NotAllowedError
        Says who may; never while the project lists nobody.
    """
    name, anybody = connection.execute(_ROLE, {"who": who}).one()
    if name is None:
        if not anybody:
            return
        raise NotAllowedError(
            f"{who} is not among the people of this project; {_said(specifiers(connection))} may add a person: "
            f'hwsched project people PROJECT --add "{who}" --role ROLE'
        )
    role = ROLES.get(name)
    if role is None:
        raise NotAllowedError(f"{who} is {name} in this project, a role that this version does not know")
    if role.verbs is None or verb in role.verbs:
        return
    may = [other.name for other in ROLES.values() if other.verbs is None or verb in other.verbs]
    raise NotAllowedError(
        f"{who} is {name} in this project, who {role.does}; '{verb}' is for: {', '.join(may)}. "
        f"{_said(specifiers(connection))} may give another role"
    )


def check_people(connection: Connection) -> None:
    """See that whoever is listed leaves somebody who can list others; raises ValueRefusedError."""
    roles = list(connection.execute(select(PERSON.c.role)).scalars())
    if roles and SPECIFIER not in roles:
        raise ValueRefusedError("role", "one of the people must be a specifier, or nobody could add others any more")


def specifiers(connection: Connection) -> list[str]:
    """Return the names of the specifiers."""
    query = select(PERSON.c.name).where(PERSON.c.role == SPECIFIER).order_by(PERSON.c.name)
    return list(connection.execute(query).scalars())


def _said(names: list[str]) -> str:
    return " or ".join(names)
