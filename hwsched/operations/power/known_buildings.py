"""Whether a building that a person names is one of the project's: a slip of the pen must not make another one."""

from sqlalchemy import Connection, select

from hwsched.model.errors import ValueRefusedError
from hwsched.model.tables import BUILDING
from hwsched.telling.nearest import nearest_words


def check_building(connection: Connection, name: str) -> None:
    """Refuse a building that the project does not have; where one has a name that is near, it is named.

    Raises
    ------
    ValueRefusedError
        Says how a new one is made.
    """
    unknown = _unknown(connection, name)
    if unknown:
        raise ValueRefusedError("building", f"{unknown}; --new-building makes a new one")


def no_supply(connection: Connection, name: str) -> ValueRefusedError:
    """Return what is said of a building that has nothing to supply from: it may be none of the project's."""
    there = f"{name} has no supply and no place for one; lay one first"
    return ValueRefusedError("building", _unknown(connection, name) or there)


def _unknown(connection: Connection, name: str) -> str:
    known = [str(row) for row in connection.execute(select(BUILDING.c.name).order_by(BUILDING.c.name)).scalars()]
    if name in known:
        return ""
    there = nearest_words(name, known) or f"; there is {', '.join(known) or 'none yet'}"
    return f"there is no building '{name}'{there}"
