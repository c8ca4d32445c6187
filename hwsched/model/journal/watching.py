"""A watch over a project: has anybody written since it was last looked at? Cheap enough to be asked twice a second.

A file is asked for SQLite's ``data_version``, which differs after a commit of any other connection. A server tells by
itself (``LISTEN``), and is asked for its newest change set once a second, should a word of it be lost. What was written
is read by `touched`.
"""

from contextlib import suppress
from time import monotonic
from typing import Any, Final, Protocol

from sqlalchemy import func, select
from sqlalchemy.exc import SQLAlchemyError

from hwsched.model.errors import ProjectError
from hwsched.model.journal.touched import CHANNEL, Touched, touched_since
from hwsched.model.project import Project
from hwsched.model.queries import latest_change
from hwsched.model.tables import CHANGE_SET

_ASK_S: Final = 1.0
"""How long a server is believed that has told nothing."""
_FIRST_WAIT_S: Final = 0.5
_LONGEST_WAIT_S: Final = 8.0
"""Between two attempts to reach a project that has stopped answering: twice as long each time, up to this."""
_PATIENCE: Final = {
    "connect_timeout": 5,
    "keepalives_idle": 5,
    "keepalives_interval": 2,
    "keepalives_count": 3,
    "tcp_user_timeout": 10_000,
}
"""Of the connection that listens: a network that is gone is noticed within ten seconds, not within hours."""


class _Signal(Protocol):
    def rose(self) -> bool:
        """Tell whether something may have been written since it was asked last."""

    def close(self) -> None:
        """Let go of the connection."""


class Watch:
    """Tells what change sets were written, by whichever process, since it was made. It belongs to one thread at a time.

    Parameters
    ----------
    project : Project
        Open; it must outlive the watch.
    """

    def __init__(self, project: Project) -> None:
        self._project = project
        self._errors = (ProjectError, SQLAlchemyError, project.engine.dialect.loaded_dbapi.Error)
        self._signal: _Signal | None = None
        self._wait_s = 0.0
        self._again_at = 0.0
        with project.reading() as connection:
            self._known = latest_change(connection)

    @property
    def answers(self) -> bool:
        """Whether the project answered when it was looked at last."""
        return self._wait_s == 0.0

    def look(self) -> list[Touched]:
        """Return the change sets that were written since the last look, oldest first.

        A project that does not answer raises nothing: it is tried again later, and nothing is missed then.
        """
        if monotonic() < self._again_at:
            return []
        try:
            found = self._look()
        except self._errors:
            self.close()
            self._wait_s = min(max(2 * self._wait_s, _FIRST_WAIT_S), _LONGEST_WAIT_S)
            self._again_at = monotonic() + self._wait_s
            return []
        self._wait_s = 0.0
        if found:
            self._known = found[-1].number
        return found

    def close(self) -> None:
        """Let go of the connection; the next look makes a new one."""
        signal, self._signal = self._signal, None
        if signal is not None:
            with suppress(*self._errors):
                signal.close()

    def _look(self) -> list[Touched]:
        if self._signal is None:
            # What was written before it listened is asked for.
            self._signal = _FileSignal(self._project) if self._project.path else _ServerSignal(self._project)
        elif not self._signal.rose():
            return []
        with self._project.reading() as connection:
            return touched_since(connection, self._known)


class _FileSignal:
    def __init__(self, project: Project) -> None:
        # Outside of any transaction: within one nothing ever changes.
        made = project.engine.raw_connection()
        made.detach()
        self._connection: Any = made.dbapi_connection
        self._version = self._asked()

    def rose(self) -> bool:
        before, self._version = self._version, self._asked()
        return self._version != before

    def _asked(self) -> int:
        (version,) = self._connection.execute("PRAGMA data_version").fetchone()
        return int(version)

    def close(self) -> None:
        self._connection.close()


class _ServerSignal:
    def __init__(self, project: Project) -> None:
        dialect = project.engine.dialect
        stated, named = dialect.create_connect_args(project.engine.url)
        self._connection: Any = dialect.loaded_dbapi.connect(*stated, **{**_PATIENCE, **named}, autocommit=True)
        self._newest_of = str(select(func.max(CHANGE_SET.c.number)).compile(dialect=dialect))
        try:
            self._connection.execute(f"LISTEN {CHANNEL}")
            self._newest = self._asked()
        except BaseException:
            self._connection.close()
            raise

    def rose(self) -> bool:
        told = list(self._connection.notifies(timeout=0))
        if not told and monotonic() - self._asked_at < _ASK_S:
            return False
        before, self._newest = self._newest, self._asked()
        return self._newest != before

    def _asked(self) -> int:
        self._asked_at = monotonic()
        (newest,) = self._connection.execute(self._newest_of).fetchone()
        return int(newest or 0)

    def close(self) -> None:
        self._connection.close()
