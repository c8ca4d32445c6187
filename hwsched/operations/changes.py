"""What a verb touched: views refresh exactly that."""

from dataclasses import dataclass

from hwsched.model.journal import Change


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
