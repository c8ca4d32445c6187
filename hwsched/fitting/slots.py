"""The slots of the search, each asked through a memory of what it found for openings alike in what it reads."""

from collections.abc import Callable, Hashable
from typing import TypeVar

from hwsched.values import OpeningInput
from hwsched.values.facts_memory import FactsMemory
from hwsched.values.watching import Watch

_Found = TypeVar("_Found")


class Slots:
    """The slots of one opening, with or without a memory of what they found for others.

    Parameters
    ----------
    given : OpeningInput
        What is worked out from.
    watch : Watch, optional
        Over the input that `given` is the watched form of.
    memory : FactsMemory, optional
        Without it, or without a watch, each slot works out its own.
    """

    def __init__(self, given: OpeningInput, watch: Watch | None = None, memory: FactsMemory | None = None) -> None:
        self._given, self._watch, self._memory = given, watch, memory

    def of(self, slot: Hashable, on: object, make: Callable[[OpeningInput], _Found]) -> _Found:
        """As `FactsMemory.of`."""
        if self._watch is None or self._memory is None:
            return make(self._given)
        return self._memory.of(slot, self._watch.plain, make, on, self._watch)
