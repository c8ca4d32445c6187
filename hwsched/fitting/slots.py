"""The slots of the search, each asked through a memory of what it found for openings alike in what it reads."""

from collections.abc import Callable, Hashable
from typing import TypeVar

from hwsched.values import Fit, OpeningInput
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
        self.given = given
        """What is worked out from."""
        self._watch, self._memory = watch, memory

    def of(self, slot: Hashable, on: object, make: "Callable[[Slots], _Found]") -> _Found:
        """As `FactsMemory.of`; ``make`` may ask through the slots that it gets for what is shared more widely."""
        memory = self._memory
        if self._watch is None or memory is None:
            return make(self)
        return memory.of(
            slot, self._watch.plain, lambda watch: make(Slots(watch.given, watch, memory)), on, self._watch
        )

    def same(self, fit: Fit) -> Fit:
        """Return the first of equal partial fits, so that openings share what stands on it."""
        return fit if self._memory is None else self._memory.same(fit)
