"""The catalogue kept in memory, since a large one takes longer to read than an edited opening takes to check."""

from sqlalchemy import Connection

from hwsched.model.queries import read_catalogue
from hwsched.model.state_memory import StateMemory
from hwsched.model.tables import KIT_CONTENT, PART
from hwsched.values import Catalogue


class CatalogueMemory:
    """Reads the catalogue again only after a change set that touched it. Threads may share one."""

    def __init__(self, memory: StateMemory | None = None) -> None:
        self._memory = memory or StateMemory()

    def read(self, connection: Connection) -> Catalogue:
        """Return the catalogue as the connection's transaction sees it."""
        return self._memory.read(connection, read_catalogue, PART, KIT_CONTENT)
