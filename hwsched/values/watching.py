"""An input that writes down what is read of it; it is an input like any other for whoever reads it.

Here belongs the watching only. What was read is noted at the first time and costs nothing from then on.
"""

from collections.abc import Iterator, Mapping, Set
from dataclasses import fields, replace
from functools import cache, lru_cache
from typing import Any, Final, cast

from hwsched.attributes.of_parts import TextName
from hwsched.values.facts import Item, Leaf, Opening
from hwsched.values.facts_read import ALL, FactsRead
from hwsched.values.opening_input import Catalogue, OpeningInput, Part, Settings

_QUIET: Final = frozenset({"id", "mark"})
"""Say which one it is, nothing of how it is."""
_OF_ALL_PARTS: Final = frozenset({"currencies", "ranked"})
"""What is known of all parts together: it counts by what it says."""
OPENING: Final = "opening"
LEAF: Final = "leaf"
ITEM: Final = "existing_item"


@lru_cache(maxsize=4096)
def _named(*names: frozenset[str]) -> FactsRead:
    """Return names in order; most are noted again and again, and to write them out costs."""
    return FactsRead(*(tuple(sorted(each)) for each in names))


class Watch:
    """Notes what is read of one input.

    Parameters
    ----------
    given : OpeningInput
        As it stands.
    """

    def __init__(self, given: OpeningInput) -> None:
        self.plain = given
        """As it stands, unwatched."""
        self.rows: dict[tuple[str, str, str], None] = {}
        """What was read of the survey, in order: opening, leaf or existing item, its identifier, the fact."""
        self._taken: dict[str, FactsRead] = {}
        """What others had read whose answers were taken, by its key."""
        self._settings: set[str] = set()
        self._limits: set[str] = set()
        self._rules: set[str] = set()
        self._catalogue: set[str] = set()
        self._kinds: set[str] = set()
        catalogue = _WatchedCatalogue.over(given.catalogue, self._catalogue, self._kinds)
        self._parts = catalogue.asked
        self.given = replace(
            given,
            opening=self._row(Opening, OPENING, given.opening),
            leaves=tuple(self._row(Leaf, LEAF, leaf) for leaf in given.leaves),
            items=tuple(self._row(Item, ITEM, item) for item in given.items),
            catalogue=catalogue,
            settings=self._of_settings(given.settings),
        )
        """The same input, watched."""

    def read(self) -> FactsRead:
        """Return the names of what was read so far."""
        names: dict[str, set[str]] = {OPENING: set(), LEAF: set(), ITEM: set()}
        for entity, _, name in self.rows:
            names[entity].add(name)
        noted = (
            *(names[each] for each in (OPENING, LEAF, ITEM)),
            *(set(each) for each in (self._settings, self._limits, self._rules, self._catalogue, self._kinds)),
            set(self._parts),
        )
        for read in self._taken.values():
            for held, more in zip(noted, read.names, strict=True):
                held.update(more)
        return _named(*(frozenset(each) for each in noted))

    def note(self, read: FactsRead) -> None:
        """Note what was read of an equal input by somebody else, whose answer is taken."""
        self._taken[read.key] = read

    def _row(self, kind: Any, entity: str, held: Any) -> Any:
        rows, row_id = self.rows, held.id

        def note(name: str) -> None:
            rows[entity, row_id, name] = None

        return _watched(kind, held, note)

    def _of_settings(self, settings: Settings) -> Settings:
        watched = _watched(_WatchedSettings, settings, self._settings.add)
        watched.__dict__.update(
            limits=_WatchedLimits(settings.limits, self._limits),
            rules_off=_WatchedOff(settings.rules_off, self._rules),
            _known={},
            _heard={},
            _asked=self._rules,
            _limited=self._limits,
        )
        return cast(Settings, watched)


def _watched(kind: Any, held: Any, note: Any) -> Any:
    made = object.__new__(_watcher(kind))
    made.__dict__.update(_held=held, _note=note)
    return made


@cache
def _watcher(kind: Any) -> Any:
    """Return a kind of thing whose facts are noted when they are read.

    Each fact is noted and copied at its first reading; from then on Python finds the copy by itself. (A method that is
    asked at every reading, or for what is missing, makes all readings slow.)
    """
    return type(f"Watched{kind.__name__}", (kind,), {each.name: _Fact(each.name) for each in fields(kind)})


class _Fact:
    """Stands for a fact that was not read yet."""

    __slots__ = ("_name",)

    def __init__(self, name: str) -> None:
        self._name = name

    def __get__(self, thing: Any, _: Any) -> Any:
        held = thing.__dict__
        # Written into the thing's own dictionary, which Python looks into before it comes here again: each fact is
        # noted once.
        value = held[self._name] = getattr(held["_held"], self._name)
        if self._name not in _QUIET:
            held["_note"](self._name)
        return value


class _WatchedSettings(Settings):
    """Settings that ask for the limits of a rule once, since a fit asks hundreds of times."""

    _known: dict[str, Mapping[str, float]]
    _heard: dict[int, tuple[Any, Any]]
    _asked: set[str]
    _limited: set[str]

    def spoken(self, rules: Any) -> Any:
        """Ask once for the same rules: a fit lets those of a slot speak for each of its candidates."""
        found = self._heard.get(id(rules))
        if found is None:
            # The rules are held with the answer, so that no others take their place in memory.
            held: Settings = self.__dict__["_held"]
            answer = held.asked_by(rules)
            self._asked.update(answer.asked)
            self._limited.update(answer.limits)
            found = self._heard[id(rules)] = rules, answer.spoken
        return found[1]

    def limits_for(self, rule_id: str, declared: Mapping[str, float]) -> Mapping[str, float]:
        found = self._known.get(rule_id)
        if found is None:
            found = self._known[rule_id] = super().limits_for(rule_id, declared)
        return found


class _Asked(dict[str, Part | None]):
    """Parts that were asked for, each looked up and noted once."""

    def __init__(self, held: Catalogue) -> None:
        super().__init__()
        self._held = held

    def __missing__(self, number: str) -> Part | None:
        found = self[number] = self._held.get(number)
        return found


class _WatchedCatalogue(Catalogue):
    """A catalogue that notes kinds and numbers; whatever else is read of it counts as all of it, but for these."""

    __slots__ = ("_held", "_kinds", "_whole", "asked", "get")

    _held: Catalogue
    _kinds: set[str]
    _whole: set[str]
    asked: _Asked
    get: Any

    @classmethod
    def over(cls, held: Catalogue, whole: set[str], kinds: set[str]) -> "_WatchedCatalogue":
        made = object.__new__(cls)
        made._held, made._whole, made._kinds, made.asked = held, whole, kinds, _Asked(held)
        # The mapping's own access, without a function between: a fit asks for parts thousands of times.
        made.get = made.asked.__getitem__
        return made

    def of_kind(self, *kinds: str) -> tuple[Part, ...]:
        self._kinds.update(kinds)
        return self._held.of_kind(*kinds)

    def of_value(self, kind: str, name: TextName, value: str | None) -> tuple[Part, ...]:
        self._kinds.add(kind)
        return self._held.of_value(kind, name, value)

    def __getattr__(self, name: str) -> Any:
        # Python comes here only while the slot is empty: at its first reading.
        value = getattr(self._held, name)
        if name in _OF_ALL_PARTS:
            self._whole.add(name)
        else:
            # Whatever else was read of it may hang on any part: better woken once too often than never.
            self._kinds.add(ALL)
        setattr(self, name, value)
        return value


class _WatchedLimits(Mapping[str, float]):
    """Changed limits; never empty, so that who asks for one asks it by its name."""

    def __init__(self, held: Mapping[str, float], noted: set[str]) -> None:
        self._held, self._noted = held, noted

    def get(self, name: str, default: Any = None) -> Any:
        self._noted.add(name)
        return self._held.get(name, default)

    def __getitem__(self, name: str) -> float:
        self._noted.add(name)
        return self._held[name]

    def __contains__(self, name: object) -> bool:
        self._noted.add(str(name))
        return name in self._held

    def __iter__(self) -> Iterator[str]:
        self._noted.add(ALL)
        return iter(self._held)

    def __len__(self) -> int:
        self._noted.add(ALL)
        return len(self._held)

    def __bool__(self) -> bool:
        # Were it empty, whoever asks whether limits are changed at all would stop here, and nothing of it were noted.
        return True


class _WatchedOff(Set[str]):
    """Rules that are off; no frozenset, whose operators would pass by what is noted."""

    def __init__(self, held: frozenset[str], noted: set[str]) -> None:
        self._held, self._noted = held, noted

    @classmethod
    def _from_iterable(cls, it: Any) -> Any:
        return frozenset(it)

    def __contains__(self, rule: object) -> bool:
        self._noted.add(str(rule))
        return rule in self._held

    def __iter__(self) -> Iterator[str]:
        self._noted.add(ALL)
        return iter(self._held)

    def __len__(self) -> int:
        self._noted.add(ALL)
        return len(self._held)
