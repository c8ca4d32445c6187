"""The last whole check of a project, for as long as somebody else keeps what it found.

Whoever wants to use it asks the journal which openings may be otherwise since: nothing is judged here.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date
from typing import Generic, TypeVar
from weakref import WeakValueDictionary, ref

from sqlalchemy import Connection

from hwsched.model.journal.history import newest
from hwsched.model.project import Project
from hwsched.model.state_memory import WRITING

_Found = TypeVar("_Found")


@dataclass(slots=True)
class LastCheck(Generic[_Found]):
    """What was found, by opening; it keeps nothing alive."""

    change_set: int = 0
    """The newest when it was found."""
    _project: "ref[Project] | None" = None
    _day: date | None = None
    _found: "WeakValueDictionary[str, _Found]" = field(default_factory=WeakValueDictionary)
    _count: int = 0
    """How many openings the project had."""

    def keep(self, project: Project, connection: Connection, day: date, found: Iterable[tuple[str, _Found]]) -> None:
        """Remember what was found of all openings.

        Parameters
        ----------
        project : Project
            Open project.
        connection : Connection
            On which it was found.
        day : date
            Against which waivers end.
        found : iterable of (str, value)
            By the opening's identifier.
        """
        # What a change set in the making sees may be rolled back, and its number be given to another one.
        if connection.get_execution_options().get(WRITING):
            return
        self.change_set, self._project, self._day = newest(connection), ref(project), day
        held = dict(found)
        self._found, self._count = WeakValueDictionary(held), len(held)

    def of(self, project: Project, day: date) -> dict[str, _Found]:
        """Return what is still there of it; nothing of another project or day."""
        if self._project is None or self._project() is not project or self._day != day:
            return {}
        return dict(self._found)

    def whole(self, project: Project, connection: Connection, day: date) -> list[_Found] | None:
        """Return all of it, in the order of the project's openings, where nothing has been written since; else None."""
        if connection.get_execution_options().get(WRITING):
            return None
        found = self.of(project, day)
        return list(found.values()) if len(found) == self._count > 0 and newest(connection) == self.change_set else None
