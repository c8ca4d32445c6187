"""What a piece of work has written so far: so that what is said when it fails is what has happened.

Here belongs taking note of change sets as they are committed. What is said of them stands above.
"""

from __future__ import annotations

import logging
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Iterator

    from hwsched.model.journal.journal import Change

_LOG: Final = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class Written:
    """A change set that was committed."""

    number: int
    verb: str
    summary: str
    openings: frozenset[str]
    """Identifiers."""
    parts: frozenset[str]
    """Catalogue numbers."""
    entities: frozenset[str]
    """Tables."""
    added: tuple[str, ...]
    """Identifiers of new rows, in order."""


_NOTED: Final[ContextVar[tuple[list[Written], ...]]] = ContextVar("noted", default=())


@contextmanager
def noting() -> Iterator[list[Written]]:
    """Take note of what is written in this thread until the block ends, however it ends.

    Yields
    ------
    list of Written
        Grows as change sets are committed, oldest first.
    """
    found: list[Written] = []
    token = _NOTED.set((*_NOTED.get(), found))
    try:
        yield found
    finally:
        _NOTED.reset(token)


@contextmanager
def apart() -> Iterator[None]:
    """Take no note of what is written: into a project that is still in the making, and thrown away where that fails."""
    token = _NOTED.set(())
    try:
        yield
    finally:
        _NOTED.reset(token)


def note(change: Change) -> None:
    """Take note of a change set that was committed; one without entries was not written."""
    if change.number is None:
        return
    written = Written(
        change.number,
        change.verb,
        change.summary,
        frozenset(change.openings),
        frozenset(change.parts),
        frozenset(change.entities),
        tuple(change.added),
    )
    _LOG.info(f"{change.verb}: change set %d written, %d openings", written.number, len(written.openings))
    for noted in _NOTED.get():
        noted.append(written)
