"""The input of a lock point: survey facts, catalogue and settings, all that a fit can depend on."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any, Final, Generic, Protocol, TypeVar

from hwsched.attributes.of_parts import FlagName, NumberName, TextName
from hwsched.quantities.money import Exchange, Money, exact_decimal
from hwsched.values.facts import Item, Leaf, Opening
from hwsched.values.fit import Fit


@dataclass(frozen=True, slots=True)
class Part:
    """A catalogue entry as a plain value."""

    number: str
    kind: str
    """Name of a part kind of `hwsched.catalogue`."""
    description: str = ""
    supplier: str = ""
    finish: str = ""
    unit: str = "EA"
    list_price: Decimal | None = None
    """Of one order unit, exact: a number of another type is taken as it is written. None where it is not known."""
    currency: str = ""
    superseded_by: str = ""
    attributes: Mapping[str, str | float | int | bool | None] = field(default_factory=dict)
    kit: tuple[tuple[str, float], ...] = ()
    """Part numbers and quantities in its box."""
    stock: float | None = None
    """On hand; None where nobody has counted."""
    preferred: int | None = None
    """Rank among parts that serve alike, 1 first; None: no preference."""

    def __post_init__(self) -> None:
        # No price may come in as a float, whoever makes the part: sums would be off by what binary digits leave out.
        if self.list_price is not None and type(self.list_price) is not Decimal:
            object.__setattr__(self, "list_price", exact_decimal(self.list_price))

    @property
    def price(self) -> Money | None:
        """List price with its currency; None where it is not known."""
        return None if self.list_price is None else Money(self.list_price, self.currency)

    def number_of(self, name: NumberName) -> float | None:
        """Return a numeric attribute, None when unknown."""
        value = self.attributes.get(name)
        # A yes is an int in Python, and would be taken for 1 mm; asked by its very type, since a fit asks thousands of
        # times.
        kind = type(value)
        return float(value) if kind is float or kind is int else None  # type: ignore[arg-type]

    def text_of(self, name: TextName) -> str | None:
        """Return a text or choice attribute, None when unknown."""
        value = self.attributes.get(name)
        return value if isinstance(value, str) else None

    def flag_of(self, name: FlagName) -> bool | None:
        """Return a yes-or-no attribute, None when unknown."""
        value = self.attributes.get(name)
        return value if isinstance(value, bool) else None


class Catalogue:
    """All parts of a project, by number and by kind.

    Immutable once built; ``key`` changes when any part does, ``ranks`` when stock or preference does; ``ranked`` names
    the kinds in which some part is preferred, ``currencies`` those in which parts are priced, in order.
    """

    __slots__ = ("_by_kind", "_by_value", "currencies", "key", "parts", "ranked", "ranks")

    def __init__(self, parts: Mapping[str, Part], key: str, ranks: str = "") -> None:
        self.parts = parts
        self.key = key
        self.ranks = ranks
        self.ranked = frozenset(part.kind for part in parts.values() if part.preferred)
        # Only of parts with a price: a currency beside no price decides nothing.
        told = {part.currency for part in parts.values() if part.list_price is not None}
        self.currencies = tuple(sorted(currency for currency in told if currency))
        by_kind: dict[str, list[Part]] = {}
        for part in parts.values():
            by_kind.setdefault(part.kind, []).append(part)
        self._by_kind = {kind: tuple(sorted(found, key=lambda p: p.number)) for kind, found in by_kind.items()}
        self._by_value: dict[tuple[str, str], dict[str | None, tuple[Part, ...]]] = {}

    def of_kind(self, *kinds: str) -> tuple[Part, ...]:
        """Return parts of these kinds, kinds in the order given, numbers ascending in each."""
        return tuple(part for kind in kinds for part in self._by_kind.get(kind, ()))

    def of_value(self, kind: str, name: TextName, value: str | None) -> tuple[Part, ...]:
        """Return parts of a kind of which an attribute is that word, numbers ascending.

        A search asks for the screws of one material at every place; they are sorted by it once.
        """
        found = self._by_value.get((kind, name))
        if found is None:
            by_value: dict[str | None, list[Part]] = {}
            for part in self.of_kind(kind):
                by_value.setdefault(part.text_of(name), []).append(part)
            found = self._by_value[kind, name] = {word: tuple(parts) for word, parts in by_value.items()}
        return found.get(value, ())

    def get(self, number: str) -> Part | None:
        """Return the part of that catalogue number."""
        return self.parts.get(number)


@dataclass(frozen=True, slots=True)
class Chosen:
    """A part chosen for a role, by hand or by the opening's hardware set; kept and checked."""

    role: str
    part: str
    quantity: float = 1.0
    source: str = "by-hand"
    """by-hand or set."""


@dataclass(frozen=True, slots=True)
class SupplyLink:
    """The supply on whose circuit an opening is."""

    part: str | None
    """Its catalogue number; None while it is not chosen."""


@dataclass(frozen=True, slots=True)
class HandPlacement:
    """A unit placed by hand: lower left corner of its plate; kept and checked."""

    leaf: str
    face: str
    pattern: str
    x_mm: float
    y_mm: float


class SpeaksBy(Protocol):
    """What has limits and may be switched off: a rule."""

    @property
    def id(self) -> str:
        """Known by it in the settings."""

    @property
    def declared(self) -> Mapping[str, float]:
        """Limits as they are without a change."""


_Speaks = TypeVar("_Speaks", bound=SpeaksBy)


@dataclass(frozen=True, slots=True)
class Settings:
    """What a project decides for its fits and checks."""

    length_style: str = "fraction"
    """fraction, decimal-inch, mm; see `hwsched.quantities`."""
    limits: Mapping[str, float] = field(default_factory=dict)
    """Changed limits, ``rule-id.limit`` to value."""
    rules_off: frozenset[str] = frozenset()
    prefer: str = "cost"
    """What ranks the alternatives first: cost, holes, stock, preferred."""
    currency: str = ""
    """Of the project; empty while nobody has told."""
    rates: Mapping[str, Decimal] = field(default_factory=dict)
    """Currency to what one unit of it is worth in the project's."""

    def limits_for(self, rule_id: str, declared: Mapping[str, float]) -> Mapping[str, float]:
        """Return a rule's limits, as declared but for what is changed."""
        changed = self.limits
        if not changed or not declared:
            return declared
        return {name: changed.get(f"{rule_id}.{name}", value) for name, value in declared.items()}

    def spoken(self, rules: Iterable[_Speaks]) -> Sequence[tuple[_Speaks, Mapping[str, float]]]:
        """Return those of some rules that are not switched off, each with its limits."""
        return self.asked_by(rules).spoken

    def asked_by(self, rules: "Iterable[_Speaks]") -> "Spoken[_Speaks]":
        """Do as `spoken`, and tell what is asked for it; for the same settings and rules it is told once."""
        fixed = tuple(rules)
        held = _TOLD.get(id(fixed))
        if held is None or held.settings is not self:
            off = self.rules_off
            spoken = [(rule, self.limits_for(rule.id, rule.declared)) for rule in fixed if rule.id not in off]
            limits = frozenset(f"{rule.id}.{name}" for rule, _ in spoken for name in rule.declared)
            held = Spoken(self, fixed, spoken, frozenset(rule.id for rule in fixed), limits)
            if len(_TOLD) >= _MOST:
                _TOLD.clear()
            _TOLD[id(fixed)] = held
        return held


@dataclass(frozen=True, slots=True)
class Spoken(Generic[_Speaks]):
    """Rules with their limits under some settings, and what of these was asked."""

    settings: Settings
    rules: tuple[_Speaks, ...]
    spoken: Sequence[tuple[_Speaks, Mapping[str, float]]]
    """Those that are not switched off."""
    asked: frozenset[str]
    """Rules of which was asked whether they are off."""
    limits: frozenset[str]
    """As ``rule-id.limit``."""


_MOST: Final = 64
_TOLD: Final[dict[int, Spoken[Any]]] = {}
"""By the identity of the rules, which the answer holds: nearly all are fixed tuples, asked thousands of times."""


@dataclass(frozen=True, slots=True)
class LockPoint:
    """A place on a leaf that is locked; an opening may have several: a deadlock above a latch, a lock in each leaf."""

    id: str = ""
    item_id: str | None = None
    """The existing lock that is converted here; None while the survey shows none."""
    number: int = 1
    """Counted as they are worked out."""
    name: str = ""
    """What people call it at its opening; empty where it is the only one."""
    others: tuple[str, ...] = ()
    """Existing locks that are converted at the opening's other points, in their order."""


@dataclass(frozen=True, slots=True)
class Beside:
    """What was worked out for an earlier lock point of the opening: it stands there when the next one is fitted."""

    point: LockPoint
    fit: Fit | None
    """What of it the next point meets; None: not worked out yet."""


@dataclass(frozen=True, slots=True)
class OpeningInput:
    """All that a fit of one lock point can depend on, as plain values; most openings have one point."""

    opening: Opening
    leaves: tuple[Leaf, ...]
    items: tuple[Item, ...]
    catalogue: Catalogue
    settings: Settings = Settings()
    chosen: tuple[Chosen, ...] = ()
    placed: HandPlacement | None = None
    supply_link: SupplyLink | None = None
    """None: the opening is on no circuit."""
    point: LockPoint = LockPoint()
    beside: tuple[Beside, ...] = ()
    """Earlier lock points of the opening, in their order."""
    closed_rooms: tuple[str, ...] = ()
    """Sides, room_to or room_from, on which every door of the room is said to be not on an egress path."""

    @property
    def exchange(self) -> Exchange:
        """In which currency costs are compared, and by which rates."""
        return exchange_of(self.catalogue, self.settings)


def exchange_of(catalogue: Catalogue, settings: Settings) -> Exchange:
    """Return in which currency costs are compared, and by which rates.

    Where all parts are priced in one currency it is that one, whatever the project pays in: no rate can change which of
    them is cheaper. Else it is the project's.
    """
    told = catalogue.currencies
    if len(told) < 2:
        # With one currency no rate is needed, and none can be missing.
        return Exchange(told[0] if told else "")
    return Exchange(settings.currency or None, settings.rates)


@dataclass(frozen=True, slots=True)
class PointFit:
    """A lock point with what is worked out for it."""

    given: OpeningInput
    fit: Fit | None
    """None: nothing is worked out for its facts as they stand."""
