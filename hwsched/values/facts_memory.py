"""What was worked out, remembered under the facts that were read for it: another duty does not place a unit anew."""

from collections.abc import Callable, Hashable
from typing import Any, Final, TypeVar

from hwsched.values.facts_read import FactsKeys, FactsRead
from hwsched.values.opening_input import OpeningInput
from hwsched.values.watching import Watch

_Found = TypeVar("_Found")
_Thing = TypeVar("_Thing", bound=Hashable)

_MOST: Final = 8192
"""Answers that are kept; of a building whose openings all differ none comes again, and each is large."""


class FactsMemory:
    """Answers by the facts that were read for them. One belongs to one thread."""

    def __init__(self) -> None:
        self._keys = FactsKeys()
        self._held: dict[Hashable, dict[FactsRead, dict[Hashable, Any]]] = {}
        self._kept: list[object] = []
        """What answers stand on, so that no other object takes its place in memory."""
        self._count = 0
        self._same: dict[Hashable, Any] = {}

    def same(self, thing: _Thing) -> _Thing:
        """Return the first of all equal things: what stands on it is then found by who it is.

        Where it cannot be looked up by its value it is returned itself.
        """
        try:
            found: _Thing = self._same.setdefault(thing, thing)
        except TypeError:
            return thing
        return found

    def of(
        self,
        key: Hashable,
        given: OpeningInput,
        make: Callable[[Watch], _Found],
        on: object = None,
        watch: Watch | None = None,
    ) -> _Found:
        """Return what was found for an input.

        Parameters
        ----------
        key : hashable
            What is asked, with what else its answer hangs on, compared by value.
        given : OpeningInput
            As it stands, unwatched.
        make : callable
            Works it out from the input that a watch is over; what it returns must not be changed by anybody.
        on : object
            What it stands on besides, compared by identity.
        watch : Watch, optional
            Over the input: what was read for the answer is noted in it.
        """
        known = self._held.setdefault((key, id(on)), {})
        for read, answers in known.items():
            found = answers.get(self._keys.values(given, read))
            if found is not None:
                if watch is not None:
                    watch.note(read)
                held: _Found = found
                return held
        inner = Watch(given)
        made = make(inner)
        read = inner.read()
        if self._count >= _MOST:
            self._held, self._kept, self._count, self._same = {(key, id(on)): known}, [], 0, {}
            known.clear()
        known.setdefault(read, {})[self._keys.values(given, read)] = made
        self._kept.append(on)
        self._count += 1
        if watch is not None:
            watch.note(read)
        return made
