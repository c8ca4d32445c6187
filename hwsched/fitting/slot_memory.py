"""What a slot of the search found, remembered under the facts that it read: another duty does not place a unit anew."""

from collections.abc import Callable
from typing import Any, Final, TypeVar

from hwsched.values import OpeningInput
from hwsched.values.facts_read import FactsKeys, FactsRead
from hwsched.values.watching import Watch

_Found = TypeVar("_Found")

_MOST: Final = 4096
"""Answers that are kept; of a building whose openings all differ none comes again, and each is large."""


class SlotMemory:
    """Answers of slots by the facts that were read for them. One belongs to one thread."""

    def __init__(self) -> None:
        self._keys = FactsKeys()
        self._held: dict[tuple[str, int], dict[FactsRead, dict[str, Any]]] = {}
        self._kept: list[object] = []
        """What answers stand on, so that no other object takes its place in memory."""
        self._count = 0

    def of(self, slot: str, watch: Watch, on: object, make: Callable[[OpeningInput], _Found]) -> _Found:
        """Return what a slot finds, and note in the watch what it read.

        Parameters
        ----------
        slot : str
            Which slot asks.
        watch : Watch
            Over the opening's input.
        on : object
            What earlier slots found, compared by identity.
        make : callable
            Works it out from a watched input; what it returns must not be changed by anybody.
        """
        given = watch.plain
        known = self._held.setdefault((slot, id(on)), {})
        for read, answers in known.items():
            found = answers.get(self._keys.key(given, read))
            if found is not None:
                watch.note(read)
                held: _Found = found
                return held
        inner = Watch(given)
        made = make(inner.given)
        read = inner.read()
        if self._count >= _MOST:
            self._held, self._kept, self._count = {(slot, id(on)): known}, [], 0
            known.clear()
        known.setdefault(read, {})[self._keys.key(given, read)] = made
        self._kept.append(on)
        self._count += 1
        watch.note(read)
        return made
