"""How a state of the project is cut into contents that revisions share, and what each of them holds.

A revision is a tree: the root names the contents of everything that is one (project, catalogue, rules, circuits,
program) and the chunks of openings; a chunk names the contents of some openings, by a checksum of their identifiers; an
opening names its fits and its findings, which openings alike share. So what has not changed is held once, however often
it is frozen, and a small change adds its own openings and their chunks.

Contents are JSON, written by msgspec with its maps sorted: equal values are equal texts and so have one hash.
"""

from collections.abc import Callable, Mapping
from dataclasses import MISSING, Field, dataclass, field, fields
from operator import attrgetter
from typing import Any, Final, get_type_hints
from zlib import crc32

import msgspec

from hwsched.model.frozen import hash_of
from hwsched.values import Finding, Fit, Item, Leaf, Opening, OpeningInput, Part, Settings
from hwsched.values.earlier_words import in_present_words
from hwsched.values.office import OfficeThen
from hwsched.values.piece import PieceThen
from hwsched.values.power import PowerFacts, PowerFinding, SupplyResult
from hwsched.values.revision import FileThen, LevelThen, OwnFieldThen, OwnValueThen, RuleText
from hwsched.values.terms import CostTerms

FORMAT: Final = 1
"""Of the contents; raised when a name in them goes or changes its meaning."""
_MOST_BITS: Final = 16
_ONCE: Final = frozenset({"opening", "leaves", "items", "catalogue", "settings"})
"""Fields of an input that stand elsewhere: with the opening, or once for the whole revision."""


@dataclass(frozen=True, slots=True)
class ProjectRecord:
    """What is one for the whole project."""

    id: str
    title: str
    bare_unit: str | None
    settings: Settings
    terms: CostTerms
    own_fields: tuple[OwnFieldThen, ...] = ()
    levels: tuple[LevelThen, ...] = ()


@dataclass(frozen=True, slots=True)
class CatalogueRecord:
    """The catalogue: its keys, and the content of each part by its number."""

    key: str
    ranks: str
    parts: Mapping[str, str] = field(default_factory=dict)
    own: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    """Values of the project's own fields by part number."""


@dataclass(frozen=True, slots=True)
class PowerRecord:
    """What is laid, and the content of each supply as it was worked out, by its identifier."""

    present: PowerFacts
    supplies: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class SupplyRecord:
    """A supply with its circuits as worked out, and what the rules said of them."""

    result: SupplyResult
    findings: tuple[PowerFinding, ...] = ()


@dataclass(frozen=True, slots=True)
class Root:
    """From where everything of a revision is found; each text is a hash."""

    format: int
    change_set: int
    """Latest step of the journal that it holds."""
    day: str
    """On which it was judged."""
    scope: Mapping[str, Any]
    engine: str
    project: str
    catalogue: str
    rules: str
    power: str
    count: int
    """Openings."""
    bits: int
    """Of an opening's checksum that say in which chunk it stands, see `chunk_of`."""
    openings: Mapping[str, str] = field(default_factory=dict)
    """Chunks by their names."""
    files: str = ""
    """Those at what is no opening's. Empty: an earlier version made it, which held no files, no bench work, no open
    questions and not how documents look."""
    office: str = ""


def _default(of: Field[Any]) -> Any:
    if of.default_factory is not MISSING:
        return msgspec.field(default_factory=of.default_factory)
    return msgspec.NODEFAULT if of.default is MISSING else of.default


_HINTS: Final = get_type_hints(OpeningInput)
POINT_FACTS: Final = tuple(each.name for each in fields(OpeningInput) if each.name not in _ONCE)
"""What of an input is a lock point's own: whatever inputs hold besides opening, leaves and items follows by itself."""

PointRecord: Final[Any] = msgspec.defstruct(
    "PointRecord",
    [
        *((each.name, _HINTS[each.name], _default(each)) for each in fields(OpeningInput) if each.name in POINT_FACTS),
        ("fit", str | None, None),
    ],
    frozen=True,
    omit_defaults=True,
)
"""A lock point: its own facts and choices, and the content of its fit."""


def compacted(kind: Any) -> Callable[[Any], Any]:
    """Return what turns a dataclass of that kind into a record that is written without what stands at its default.

    Most facts of most openings are unknown; written out they would be half of a revision.
    """
    record: Any = msgspec.defstruct(
        kind.__name__, [(each.name, Any, _default(each)) for each in fields(kind)], frozen=True, omit_defaults=True
    )
    values = attrgetter(*(each.name for each in fields(kind)))
    return lambda value: record(*values(value))


compact_opening: Final = compacted(Opening)
compact_leaf: Final = compacted(Leaf)
compact_item: Final = compacted(Item)

OpeningRecord: Final[Any] = msgspec.defstruct(
    "OpeningRecord",
    [
        ("opening", Opening),
        ("leaves", tuple[Leaf, ...]),
        ("items", tuple[Item, ...]),
        ("points", tuple[PointRecord, ...]),
        ("findings", str),
        ("set_name", str, ""),
        ("own", tuple[OwnValueThen, ...], ()),
        ("files", tuple[FileThen, ...], ()),
        ("pieces", tuple[PieceThen, ...], ()),
        ("asked", tuple[tuple[int, str], ...], ()),
    ],
    frozen=True,
    omit_defaults=True,
)
"""An opening: what was surveyed and chosen, and the contents of its fits and findings; what hangs at it, and what the
bench did for it."""

_TYPES: Final[Mapping[str, Any]] = {
    "revision": Root,
    "engine": dict[str, Any],
    "project": ProjectRecord,
    "catalogue": CatalogueRecord,
    "part": Part,
    "rules": tuple[RuleText, ...],
    "power": PowerRecord,
    "supply": SupplyRecord,
    "chunk": dict[str, tuple[str, str]],
    "opening": OpeningRecord,
    "fit": Fit,
    "findings": tuple[Finding, ...],
    "files": tuple[FileThen, ...],
    "office": OfficeThen,
}
"""Kind of content to what it holds. Of a chunk: identifier to mark and content of each opening."""
_MANY: Final = ("opening", "chunk")
_encode: Final = msgspec.json.Encoder(order="deterministic").encode
_decoders: Final = {kind: msgspec.json.Decoder(of) for kind, of in _TYPES.items()}


class Frozen(dict[str, tuple[str, bytes]]):
    """Contents in the making, by their hash."""

    def __init__(self) -> None:
        super().__init__()
        self._seen: dict[int, tuple[object, str]] = {}

    def shared(self, kind: str, value: object) -> str:
        """Add a value that openings alike share as one object; it is written once."""
        seen = self._seen.get(id(value))
        if seen is None:
            # The value is kept, so that its identity stays its own.
            seen = self._seen[id(value)] = value, self.put(kind, value)
        return seen[1]

    def put(self, kind: str, value: object) -> str:
        """Add a value; returns the hash of its content.

        Raises
        ------
        ValueError
            Where it would not be read back as the same: JSON knows no infinite number. What openings hold was looked at
            when it was taken in, and there are many.
        """
        content = _encode(value)
        key = hash_of(kind, content)
        if key not in self and kind not in _MANY and not _comes_back(kind, content, value):
            raise ValueError(f"a {kind} cannot be frozen as it is: {value!r}")
        self[key] = kind, content
        return key


def _comes_back(kind: str, content: bytes, value: object) -> bool:
    try:
        return bool(thawed(kind, content) == value)
    except msgspec.ValidationError:
        return False


def thawed(kind: str, content: bytes) -> Any:
    """Read a content back.

    Parameters
    ----------
    kind : str
        As it was put.
    content : bytes
        As it is held.

    Raises
    ------
    msgspec.ValidationError
        For a content that is none of that kind.
    """
    return _decoders[kind].decode(in_present_words(content.decode()))


def bits_for(count: int) -> int:
    """Return by how many bits openings are put into chunks: a chunk has 32 or fewer on the average.

    Examples
    --------
    >>> [bits_for(count) for count in (0, 32, 33, 1024, 1025, 10_000, 100_000)]
    [0, 0, 1, 5, 6, 9, 12]
    """
    bits = 0
    while count > 32 << bits and bits < _MOST_BITS:
        bits += 1
    return bits


def chunk_of(opening_id: str, bits: int) -> str:
    """Name the chunk in which an opening stands: the same for ever, whatever other openings there are.

    Examples
    --------
    >>> chunk_of("4b6848f4b8994fbcbf1bfd13638a49c7", 9), chunk_of("4b6848f4b8994fbcbf1bfd13638a49c7", 0)
    ('17c', '0')
    """
    return f"{crc32(opening_id.encode()) >> (32 - bits):x}"
