"""The case of one opening: survey facts, catalogue and settings, all that a fit can depend on."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from hwsched.cases.facts import Item, Leaf, Opening


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
    list_price: float | None = None
    currency: str = ""
    superseded_by: str = ""
    attributes: Mapping[str, str | float | int | bool | None] = field(default_factory=dict)
    kit: tuple[tuple[str, float], ...] = ()
    """Part numbers and quantities in its box."""
    stock: float | None = None
    """On hand; None where nobody has counted."""
    preferred: int | None = None
    """Rank among parts that serve alike, 1 first; None: no preference."""

    def number_of(self, name: str) -> float | None:
        """Return a numeric attribute, None when unknown."""
        value = self.attributes.get(name)
        return float(value) if isinstance(value, int | float) and not isinstance(value, bool) else None

    def text_of(self, name: str) -> str | None:
        """Return a text or choice attribute, None when unknown."""
        value = self.attributes.get(name)
        return value if isinstance(value, str) else None

    def flag_of(self, name: str) -> bool | None:
        """Return a yes-or-no attribute, None when unknown."""
        value = self.attributes.get(name)
        return value if isinstance(value, bool) else None


class Catalogue:
    """All parts of a project, by number and by kind.

    Immutable once built; ``key`` changes when any part does, ``ranks`` when stock or preference does; ``ranked`` names
    the kinds in which some part is preferred.
    """

    __slots__ = ("_by_kind", "key", "parts", "ranked", "ranks")

    def __init__(self, parts: Mapping[str, Part], key: str, ranks: str = "") -> None:
        self.parts = parts
        self.key = key
        self.ranks = ranks
        self.ranked = frozenset(part.kind for part in parts.values() if part.preferred)
        by_kind: dict[str, list[Part]] = {}
        for part in parts.values():
            by_kind.setdefault(part.kind, []).append(part)
        self._by_kind = {kind: tuple(sorted(found, key=lambda p: p.number)) for kind, found in by_kind.items()}

    def of_kind(self, *kinds: str) -> tuple[Part, ...]:
        """Return parts of these kinds, kinds in the order given, numbers ascending in each."""
        return tuple(part for kind in kinds for part in self._by_kind.get(kind, ()))

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
class Feed:
    """The supply on whose circuit an opening hangs."""

    part: str | None
    """Its catalogue number; None while it is not chosen."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A unit placed by hand: lower left corner of its plate; kept and checked."""

    leaf: str
    face: str
    pattern: str
    x_mm: float
    y_mm: float


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


@dataclass(frozen=True, slots=True)
class Case:
    """All that a fit of one opening can depend on, as plain values."""

    opening: Opening
    leaves: tuple[Leaf, ...]
    items: tuple[Item, ...]
    catalogue: Catalogue
    settings: Settings = Settings()
    chosen: tuple[Chosen, ...] = ()
    placed: Placed | None = None
    feed: Feed | None = None
    """None: the opening hangs on no circuit."""
