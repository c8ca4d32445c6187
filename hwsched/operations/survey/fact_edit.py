"""One fact of a thing as somebody wants it, as grids and forms hand it over; `many_facts` says how it is written."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FactEdit:
    """One fact of one thing, as somebody wants it."""

    entity: str
    """opening, leaf or existing_item."""
    row_id: str
    name: str
    """The fact, or a field of the project's own."""
    text: str
    """As typed; empty: unknown."""
