"""The catalogue kept in memory, since a large one takes longer to read than an edited opening takes to check."""

from typing import Final

from sqlalchemy import Connection, select

from hwsched.model.queries import latest_change, read_catalogue
from hwsched.model.tables import CHANGE_ENTRY, KIT_CONTENT, PART
from hwsched.values import Catalogue

WRITING: Final = "hwsched_writing"
"""Execution option of a connection whose transaction writes."""


class CatalogueMemory:
    """Reads the catalogue again only after a change set that touched it. Threads may share one."""

    def __init__(self) -> None:
        self._held: tuple[int, Catalogue] | None = None
        """Number of the latest change set that it was seen with, and the catalogue as of then."""

    def read(self, connection: Connection) -> Catalogue:
        """Return the catalogue as the connection's transaction sees it."""
        held = self._held
        latest = latest_change(connection)
        if held is not None and latest < held[0]:
            # A transaction that began before the change that others know already.
            return read_catalogue(connection)
        same = held is not None and not _touched(connection, held[0])
        catalogue = held[1] if held is not None and same else read_catalogue(connection)
        # What a change set in the making sees may be rolled back, and its number be given to another one.
        if not connection.get_execution_options().get(WRITING):
            self._held = (latest, catalogue)
        return catalogue


def _touched(connection: Connection, since: int) -> bool:
    query = select(CHANGE_ENTRY.c.change_set).where(
        CHANGE_ENTRY.c.change_set > since, CHANGE_ENTRY.c.entity.in_((PART.name, KIT_CONTENT.name))
    )
    return connection.execute(query.limit(1)).first() is not None
