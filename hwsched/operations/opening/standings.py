"""How stored fits stand: the one place that tells whether a stored fit still counts, and if not, why."""

from functools import cached_property

from sqlalchemy import func, or_, select

from hwsched.fingerprint import Engine, engine
from hwsched.model.project import Project
from hwsched.model.queries import StoredFit
from hwsched.model.tables import IN_USE, OPENING_FIT, OPENING_TABLE
from hwsched.values import Fit, OpeningInput
from hwsched.values.facts_read import FactsKeys, FactsRead
from hwsched.values.input_key import IGNORED, input_key
from hwsched.values.standing import Standing

_SURVEY = 32
"""Digits of a key of facts that speak of survey and choices."""


class Standings:
    """Tells how stored fits stand to the facts as they are and to this program; what openings share is hashed once.

    One belongs to one thread.
    """

    def __init__(self) -> None:
        self._keys = FactsKeys()
        self._known: dict[tuple[str, str], str] = {}

    @cached_property
    def engine(self) -> Engine:
        """The program at work; asked for when it is needed, so never on the screen's thread."""
        return engine()

    def of(self, given: OpeningInput, key: str, stored: StoredFit | None) -> Standing:
        """Tell how a stored fit stands.

        Parameters
        ----------
        given : OpeningInput
            The opening as it stands.
        key : str
            Its `input_key`.
        stored : StoredFit or None
            What is stored for it.
        """
        if stored is None:
            return "not-worked-out"
        # A result that does not say what made it is never taken for current.
        if stored.engine is None or stored.read is None:
            return "earlier-version"
        if stored.engine.key == self.engine.key:
            return "current" if self.facts_key(given, key, stored.read) == stored.input_key else "facts-changed"
        if stored.engine.parts.get("keys") != self.engine.parts.get("keys"):
            # It hashed facts in another way: nobody can tell whether they have changed too.
            return "earlier-version"
        try:
            now = self.facts_key(given, key, stored.read)
        except AttributeError:
            # It read a fact that there is no more.
            return "earlier-version"
        # Of catalogue and settings this program may keep more or other things; of a surveyed fact only its value.
        return "earlier-version" if now[:_SURVEY] == stored.input_key[:_SURVEY] else "facts-changed"

    def current(self, given: OpeningInput, stored: StoredFit | None) -> Fit | None:
        """Return a stored fit where it counts."""
        return stored.fit if stored is not None and self.of(given, input_key(given), stored) == "current" else None

    def facts_key(self, given: OpeningInput, key: str, read: FactsRead) -> str:
        """Return the key of the facts that were read, as they are now."""
        if not IGNORED.isdisjoint((*read.opening, *read.leaf, *read.item)):
            # A rule from outside looks at what tells openings alike apart.
            return self._keys.key(given, read)
        found = self._known.get((key, read.key))
        if found is None:
            found = self._known[key, read.key] = self._keys.key(given, read)
        return found


def count_earlier(project: Project) -> int:
    """Return how many openings have a fit that an earlier version of the program has worked out."""
    query = select(func.count()).select_from(OPENING_FIT)
    with project.reading() as connection:
        other = or_(OPENING_FIT.c.engine.is_(None), OPENING_FIT.c.engine != engine().key)
        there = OPENING_FIT.c.opening_id.in_(select(OPENING_TABLE.c.id).where(IN_USE))
        return int(connection.execute(query.where(other, there)).scalar_one())
