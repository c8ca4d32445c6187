"""Whether a building that a person names is one of the project's: a slip of the pen must not make another one."""

from difflib import get_close_matches
from typing import Final

from sqlalchemy import Connection, select

from hwsched.model.errors import ValueRefusedError
from hwsched.model.tables import BUILDING

_NEAR: Final = 0.7
"""Likeness of two names from which on one may be meant by the other."""


def check_building(connection: Connection, name: str) -> None:
    """Refuse a building that the project does not have; where one has a name that is near, it is named.

    Raises
    ------
    ValueRefusedError
        Says how a new one is made.
    """
    known = [str(row) for row in connection.execute(select(BUILDING.c.name).order_by(BUILDING.c.name)).scalars()]
    if name in known:
        return
    folded = {each.casefold(): each for each in known}
    near = get_close_matches(name.casefold(), folded, n=1, cutoff=_NEAR)
    there = f"perhaps {folded[near[0]]} is meant" if near else f"there is {', '.join(known) or 'none yet'}"
    raise ValueRefusedError("building", f"there is no building '{name}'; {there}; --new-building makes a new one")
