"""What a verb touched: views refresh exactly that."""

from collections.abc import Sequence
from dataclasses import dataclass

from hwsched.model.journal.journal import Change
from hwsched.model.journal.touched import Touched


@dataclass(frozen=True, slots=True)
class Changes:
    """Openings and parts that an operation touched."""

    openings: frozenset[str] = frozenset()
    """Identifiers."""
    parts: frozenset[str] = frozenset()
    """Catalogue numbers."""
    entities: frozenset[str] = frozenset()
    """Tables."""
    number: int | None = None
    """The change set; None when nothing changed and none was written."""
    added: tuple[str, ...] = ()
    """Identifiers of the rows that are new, in the order in which they were made."""

    @classmethod
    def of(cls, change: Change) -> "Changes":
        """Return what a finished change set touched."""
        return cls(
            frozenset(change.openings),
            frozenset(change.parts),
            frozenset(change.entities),
            change.number,
            tuple(change.added),
        )

    @classmethod
    def by_others(cls, steps: Sequence[Touched]) -> "Changes":
        """Return what change sets touched together that were read from the journal; its number is the last one's."""
        return cls(
            frozenset[str]().union(*(each.openings for each in steps)),
            frozenset[str]().union(*(each.parts for each in steps)),
            frozenset[str]().union(*(each.entities for each in steps)),
            steps[-1].number if steps else None,
        )
