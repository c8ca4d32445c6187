"""Facts that cannot be true: numbers outside what the survey declares, or no numbers at all.

Such a fact is put aside, so that the opening counts as unknown in it and is never worked out wrong; a rule names it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import isfinite
from operator import attrgetter
from typing import Any, Final

from hwsched.rules.last import last
from hwsched.survey import ITEM, LEAF, OPENING, Entity
from hwsched.values import Item, Leaf, Opening, OpeningInput

_NUMERIC: Final = ("length", "number", "integer")


@dataclass(frozen=True, slots=True)
class ImpossibleFact:
    """A fact that cannot be true."""

    fact: str
    """As ``entity.attribute``."""
    label: str
    value: float
    low: float | None
    high: float | None
    about: str
    """Kind of item, or position of the leaf."""


class _Limits:
    """The numeric facts of one kind of surveyed thing, with their limits."""

    def __init__(self, entity: Entity) -> None:
        numeric = [a for a in entity.attributes if a.kind in _NUMERIC]
        self.entity = entity.name
        self.names = tuple(a.name for a in numeric)
        self.labels = tuple(a.label for a in numeric)
        self.spans = tuple((a.low, a.high) for a in numeric)
        self.values = attrgetter(*self.names)

    def impossible_facts(self, thing: Opening | Leaf | Item, about: str) -> Iterator[ImpossibleFact]:
        """Yield what cannot be true of one thing."""
        for i, value in enumerate(self.values(thing)):
            if value is None:
                continue
            low, high = self.spans[i]
            # Infinite and not a number come from spreadsheets and other programs; every comparison with the latter is
            # false.
            if not isfinite(value) or (low is not None and value < low) or (high is not None and value > high):
                yield ImpossibleFact(f"{self.entity}.{self.names[i]}", self.labels[i], value, low, high, about)


_OPENING: Final = _Limits(OPENING)
_LEAF: Final = _Limits(LEAF)
_ITEM: Final = _Limits(ITEM)


def impossible_facts(given: OpeningInput) -> tuple[ImpossibleFact, ...]:
    """Return the facts of a case that cannot be true."""
    # Asked before anything is judged, and once more by the rule that names them.
    return last("impossible facts", (given,), lambda: _impossible_facts(given))


def _impossible_facts(given: OpeningInput) -> tuple[ImpossibleFact, ...]:
    return tuple(
        impossible
        for limits, things in (
            (_OPENING, ((given.opening, ""),)),
            (_LEAF, tuple((leaf, leaf.position or "leaf") for leaf in given.leaves)),
            (_ITEM, tuple((item, (item.kind or "item").replace("-", " ")) for item in given.items)),
        )
        for thing, about in things
        for impossible in limits.impossible_facts(thing, about)
    )


def without_impossible(given: OpeningInput) -> OpeningInput:
    """Return the case with what cannot be true put aside as unknown."""
    if not impossible_facts(given):
        return given
    return replace(
        given,
        opening=_cleared(_OPENING, given.opening),
        leaves=tuple(_cleared(_LEAF, leaf) for leaf in given.leaves),
        items=tuple(_cleared(_ITEM, item) for item in given.items),
    )


def _cleared(limits: _Limits, thing: Any) -> Any:
    # To unknown, and not to the nearest limit: a fact that cannot be true says nothing of the one that is.
    wrong = {impossible.fact.partition(".")[2]: None for impossible in limits.impossible_facts(thing, "")}
    return replace(thing, **wrong) if wrong else thing
