"""Which facts were read while a fit was worked out, and the key of their values: what nobody read wakes nothing.

A fact is named by what it belongs to and its name; of leaves and existing items it counts as read on each of them once
it was read on one. Of the catalogue, part kinds that were listed and numbers that were asked for count whole. Choices
by hand, the lock point and what stands at earlier ones, and how many leaves and items there are always count.
"""

import hashlib
import json
from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import dataclass, field, fields, is_dataclass
from decimal import Decimal
from functools import cache
from operator import attrgetter
from typing import Any, Final

from hwsched.quantities.money import decimal_text
from hwsched.values.input_key import point_facts
from hwsched.values.opening_input import Catalogue, OpeningInput, Part, Settings

ALL: Final = "*"
"""Stands for everything of its kind, where it was read as a whole."""
RANKING: Final = ("stock", "preferred")
"""What a project may rank by that is read from the parts, and from nothing else."""
_PART_FACTS: Final = tuple(each.name for each in fields(Part) if each.name not in RANKING)
_encode: Final = json.JSONEncoder(separators=(",", ":"), sort_keys=True, ensure_ascii=True).encode


@dataclass(frozen=True, slots=True)
class FactsRead:
    """Names of what was read, each tuple sorted."""

    opening: tuple[str, ...] = ()
    leaf: tuple[str, ...] = ()
    item: tuple[str, ...] = ()
    settings: tuple[str, ...] = ()
    limits: tuple[str, ...] = ()
    """As ``rule-id.limit``."""
    rules: tuple[str, ...] = ()
    """Rules of which was asked whether they are off."""
    catalogue: tuple[str, ...] = ()
    """What was asked of the catalogue as a whole, such as in which currencies parts are priced."""
    kinds: tuple[str, ...] = ()
    """Part kinds that were listed."""
    parts: tuple[str, ...] = ()
    """Catalogue numbers that were asked for."""
    key: str = field(init=False)
    """32 hexadecimal digits; equal for equal names."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "key", hashlib.sha256(self.text.encode()).hexdigest()[:32])

    @property
    def names(self) -> tuple[tuple[str, ...], ...]:
        """What was read of each kind of thing, in the order in which it is declared here."""
        return (
            *(self.opening, self.leaf, self.item),
            *(self.settings, self.limits, self.rules, self.catalogue, self.kinds, self.parts),
        )

    @property
    def text(self) -> str:
        """The names as JSON."""
        held = {name: getattr(self, name) for name in _NAMES}
        return _encode({name: each for name, each in held.items() if each})

    @classmethod
    def of(cls, content: Mapping[str, Iterable[str]]) -> "FactsRead":
        """Return what `text` says, decoded; names of a kind that there is no more are left out."""
        return cls(**{name: tuple(each) for name, each in content.items() if name in _NAMES})


_NAMES: Final = tuple(each.name for each in fields(FactsRead) if each.init)


class FactsKeys:
    """Makes keys of facts; of what openings share, catalogue and settings, it remembers the hash.

    One belongs to one thread.
    """

    def __init__(self) -> None:
        self._catalogue: Catalogue | None = None
        self._settings: Settings | None = None
        self._around: dict[str, str] = {}
        self._kinds: dict[str, str] = {}
        self._getters: dict[str, list[Callable[[Any], Any]]] = {}
        """By the key of what is read."""
        self._told: dict[str, str] = {}
        """Parts by number, as they are hashed: the same few are asked for in ever other companies."""

    def key(self, given: OpeningInput, read: FactsRead) -> str:
        """Return the key of what the named facts hold at an opening.

        Parameters
        ----------
        given : OpeningInput
            The opening as it stands.
        read : FactsRead
            What counts.

        Returns
        -------
        str
            64 hexadecimal digits: 32 of survey and choices, then 32 of catalogue and settings.

        Raises
        ------
        AttributeError
            Where a name is no fact of this version.
        """
        of_opening, of_leaf, of_item = _getters(read.opening, read.leaf, read.item)
        facts: list[Any] = [
            of_opening(given.opening),
            [of_leaf(leaf) for leaf in given.leaves],
            [of_item(item) for item in given.items],
        ]
        chosen = {name: _plain(each) for name in _CHOSEN if (each := getattr(given, name)) not in (None, ())}
        if given.point.others:
            chosen["point"] = point_facts(given)
        if chosen:
            facts.append(chosen)
        # Two halves: what openings share is hashed once for all of them.
        return hashlib.sha256(_encode(facts).encode()).hexdigest()[:32] + self._surroundings(given, read)

    def values(self, given: OpeningInput, read: FactsRead) -> Hashable:
        """Return what the named facts hold at an opening, to be compared within this process only; else as `key`.

        Where a fact holds what cannot be looked up by its value it is the key itself.
        """
        getters = self._getters.get(read.key)
        if getters is None:
            getters = self._getters[read.key] = _getters(read.opening, read.leaf, read.item)
        of_opening, of_leaf, of_item = getters
        held = (
            _as_tuple(of_opening(given.opening)),
            tuple(_as_tuple(of_leaf(leaf)) for leaf in given.leaves),
            tuple(_as_tuple(of_item(item)) for item in given.items),
            given.chosen,
            given.placed,
            given.supply_link,
            _encode(point_facts(given)) if given.point.others else None,
            self._surroundings(given, read),
        )
        try:
            hash(held)
        except TypeError:
            return self.key(given, read)
        return held

    def _surroundings(self, given: OpeningInput, read: FactsRead) -> str:
        catalogue, settings = given.catalogue, given.settings
        if catalogue is not self._catalogue:
            self._catalogue, self._kinds, self._around, self._told = catalogue, {}, {}, {}
        # Identity first: settings are the same object for nearly all openings, and comparing them costs.
        if settings is not self._settings and settings != self._settings:
            # How parts are hashed hangs on what the project ranks by.
            self._settings, self._kinds, self._around, self._told = settings, {}, {}, {}
        found = self._around.get(read.key)
        if found is None:
            limits = settings.limits
            said = [
                [_plain(getattr(settings, name)) for name in read.settings],
                [_plain(getattr(catalogue, name)) for name in read.catalogue],
                sorted(limits.items()) if ALL in read.limits else [limits.get(name) for name in read.limits],
                sorted(settings.rules_off) if ALL in read.rules else sorted(settings.rules_off & {*read.rules}),
                [self._kind(kind) for kind in read.kinds],
            ]
            parts = ",".join([self._part(number, catalogue, settings) for number in read.parts])
            text = f"{_encode(said)[:-1]},[{parts}]]"
            found = self._around[read.key] = hashlib.sha256(text.encode()).hexdigest()[:32]
        return found

    def _part(self, number: str, catalogue: Catalogue, settings: Settings) -> str:
        found = self._told.get(number)
        if found is None:
            part = catalogue.get(number)
            found = self._told[number] = "null" if part is None else _encode(_part(part, settings))
        return found

    def _kind(self, kind: str) -> str:
        found = self._kinds.get(kind)
        if found is None and self._catalogue is not None and self._settings is not None:
            catalogue = self._catalogue
            parts = catalogue.of_kind(kind) if kind != ALL else [each for _, each in sorted(catalogue.parts.items())]
            said = _encode([_part(part, self._settings) for part in parts])
            found = self._kinds[kind] = hashlib.sha256(said.encode()).hexdigest()
        return found or ""


_CHOSEN: Final = ("chosen", "placed", "supply_link")
"""What a person chose, and on what the opening hangs: read as a whole."""


def _part(part: Part, settings: Settings) -> list[Any]:
    said = [_plain(getattr(part, name)) for name in _PART_FACTS]
    # Stock changes daily: it counts only where the project ranks by it.
    return said if settings.prefer not in RANKING else [*said, *(getattr(part, name) for name in RANKING)]


@cache
def _getters(*names: tuple[str, ...]) -> list[Callable[[Any], Any]]:
    return [_getter(each) for each in names]


def _getter(names: tuple[str, ...]) -> Callable[[Any], Any]:
    if len(names) > 1:
        return attrgetter(*names)
    # attrgetter takes no empty list, and gives one value bare where a list is wanted.
    return lambda thing: [getattr(thing, name) for name in names]


def _as_tuple(values: Any) -> tuple[Any, ...]:
    return values if isinstance(values, tuple) else tuple(values)


def _plain(value: Any) -> Any:
    """Put a value into what JSON holds; unknowns are left out, so that a fact which is added later wakes nothing."""
    if is_dataclass(value):
        held = {each.name: _plain(getattr(value, each.name)) for each in fields(value)}
        return {name: each for name, each in held.items() if each not in (None, [], {})}
    if isinstance(value, tuple | list):
        return [_plain(each) for each in value]
    # A set has another order in every process.
    if isinstance(value, frozenset):
        return sorted(value)
    if isinstance(value, Mapping):
        return {name: _plain(each) for name, each in value.items()}
    if isinstance(value, Decimal):
        # As it is worth, not as it is written: 12.1 and 12.10 are one price.
        return decimal_text(value)
    return value if value is None or isinstance(value, str | int | float | bool) else str(value)
