"""What can be asked for: the declared facts of the survey, the project's own fields, and what was worked out.

A fact is called as the survey's columns have it, or by the name of its thing and a dot: ``Leaf thickness``, ``thk``,
``leaf.thickness``. Nothing is declared twice: names follow from `hwsched.survey` and the project's own fields.
"""

from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Final, Literal

from hwsched.attributes import Attribute, CellReader, Choice, normal
from hwsched.quantities import LengthStyle
from hwsched.survey import ENTITIES, ITEM, LEAF, OPENING
from hwsched.values import SEVERITIES

Source = Literal["survey", "fits", "findings"]
"""What has to be read before a fact is known: each takes much longer than the one before it."""
Names = Callable[[], Collection[str]]
"""Names that a project has; asked for only where a query needs them."""

_RESULT: Final = "result"
_HEADS: Final[Mapping[str, str]] = {
    "opening": "opening", "frame": "opening", "leaf": "leaf", "door": "leaf",
    "item": "existing_item", "existing_item": "existing_item", "existingitem": "existing_item",
}  # fmt: skip
"""What may stand before the dot."""
_HEAD_OF: Final[Mapping[str, str]] = {"opening": "opening", "leaf": "leaf", "existing_item": "item"}
_UNIT_ENDINGS: Final[Mapping[str, str]] = {"degC": "c"}
"""How a unit is written at the end of a name, where that is not the unit itself in small letters."""


@dataclass(frozen=True, slots=True)
class Fact:
    """Something that can be asked of an opening."""

    entity: str
    """``opening``, ``leaf``, ``existing_item``; ``result`` for what is worked out or put together."""
    attribute: Attribute
    source: Source = "survey"
    name: str = field(default="", compare=False)
    """How it is written, such as ``leaf.thickness``."""

    @property
    def several(self) -> bool:
        """Whether an opening can have it several times: of each leaf or item, or as a list."""
        return self.entity != OPENING.name

    @property
    def of_rows(self) -> bool:
        """Whether it belongs to a leaf or an item, of which an opening can have several."""
        return self.entity in (LEAF.name, ITEM.name)

    @property
    def listed(self) -> bool:
        """Whether it is put together of several words: what stands in the list is so, all else is not."""
        return self.entity == _RESULT

    @property
    def ranks(self) -> Mapping[object, float] | None:
        """Order of the values of a choice that counts something, such as minutes; None where none is more."""
        found: dict[object, float] = {}
        for choice in self.attribute.choices:
            if not (choice.value == "none" or choice.value.isdecimal()):
                return None
            found[choice.value] = 0.0 if choice.value == "none" else float(choice.value)
        return found or None

    @property
    def ordered(self) -> bool:
        """Whether less and more can be asked."""
        if self.listed or self.attribute.kind == "flag":
            return False
        return self.attribute.kind != "choice" or self.ranks is not None

    @property
    def searched(self) -> bool:
        """Whether a piece of its text can be asked for."""
        return self.attribute.kind == "text" and self not in (FINDING, WAIVED, USES)


HOLDING: Final = "holding"
"""Word of a finding that keeps an opening from going out: an error, a missing fact, what a person has to decide."""
STATUS: Final = Fact(
    _RESULT,
    Attribute(
        "status",
        "Status",
        "choice",
        choices=(
            Choice("fits", "Fits", ("fit", "ok")),
            Choice("does-not-fit", "Does not fit", ("no fit",)),
            Choice("to-measure", "To measure", ("unknown to fit", "facts missing")),
            Choice("not-judged", "Not judged", ("unjudged",)),
            Choice("stale", "Stale", ("out of date",)),
            Choice("facts-changed", "Facts changed", ()),
            Choice("earlier-version", "Of an earlier version", ("earlier version",)),
            Choice("not-worked-out", "Never worked out", ("not worked out",)),
        ),
        note="Not judged: no fit counts. Stale: not judged, since facts changed or an earlier version worked it out.",
    ),
    "fits",
    "status",
)
USES: Final = Fact(
    _RESULT,
    Attribute("uses", "Uses", note="Number of a part that stands in the fit, or that a person or a set chose."),
    "fits",
    "uses",
)
FINDING: Final = Fact(
    _RESULT,
    Attribute(
        "finding",
        "Finding",
        note=f"Identifier of a rule, {', '.join(SEVERITIES)}, or {HOLDING}: what keeps an opening from going out. What "
        "is waived does not count.",
    ),
    "findings",
    "finding",
)
WAIVED: Final = Fact(
    _RESULT, Attribute("waived", "Waived finding", note="As finding, of those that are waived."), "findings", "waived"
)
PLACE: Final = Fact(
    _RESULT,
    Attribute("place", "Place", note="Building, level, room from or room to, whichever holds it."),
    "survey",
    "place",
)
RESULTS: Final = (STATUS, USES, FINDING, WAIVED, PLACE)
"""What is asked for beside the facts of the survey."""
PLACES: Final = ("building", "level", "room_from", "room_to")
"""What a place is put together of."""
SEARCHED: Final = ("mark", "building", "room_from", "room_to")
"""Where a word alone is looked for."""


KEYWORDS: Final = ("and", "or", "not", "every", "uses", "is", "in", "contains", "between", "known", "unknown")
"""Words of the language itself."""
_TAKEN: Final = frozenset(
    {*KEYWORDS, *(normal(word) for each in RESULTS for word in (each.name, each.attribute.label))}
)


def stem(attribute: Attribute) -> str:
    """Return the name of a fact without the unit at its end.

    Examples
    --------
    >>> stem(Attribute("temperature_low_c", "", "number", "degC")), stem(Attribute("difficulty", "", "number"))
    ('temperature_low', 'difficulty')
    """
    unit = _UNIT_ENDINGS.get(attribute.unit, attribute.unit.casefold())
    return attribute.name.removesuffix(f"_{unit}") if unit else attribute.name


def no_names() -> Collection[str]:
    """Return the names of a project of which none are known."""
    return ()


@dataclass(frozen=True)
class Askable:
    """What can be asked of the openings of one project, and how its people write values.

    Parameters
    ----------
    own : iterable of tuple
        Fields of the project's own: entity and declaration.
    bare_unit : str or None
        Unit of a length that carries none, as in `hwsched.attributes.read_value`.
    length_style : LengthStyle
        How lengths are said.
    buildings, levels, parts, rules : callable
        Names that the project has; a name that is not among them is remarked on, and a rule's is refused.
    """

    own: tuple[tuple[str, Attribute], ...] = ()
    bare_unit: str | None = None
    length_style: LengthStyle = "fraction"
    buildings: Names = no_names
    levels: Names = no_names
    parts: Names = no_names
    rules: Names = no_names

    @cached_property
    def facts(self) -> tuple[Fact, ...]:
        """All facts, those of the opening first, what is worked out last."""
        return (*dict.fromkeys(self._spellings.values()), *RESULTS)

    def fact(self, name: str) -> Fact | None:
        """Return the fact of a name; None where there is none.

        Examples
        --------
        >>> [Askable().fact(name).name for name in ("Leaf thickness", "thk", "leaf.thickness_mm", "Item.Backset")]
        ['leaf.thickness', 'leaf.thickness', 'leaf.thickness', 'item.backset']
        """
        head, dot, tail = name.partition(".")
        entity = _HEADS.get(normal(head)) if dot else None
        if entity is not None:
            return self._named.get((entity, tail.strip())) or self._spellings.get((entity, normal(tail)))
        spelled = normal(name)
        for each in RESULTS:
            if spelled in (each.name, normal(each.attribute.label)):
                return each
        # The first entity that has one is meant, as for a survey's columns.
        found = (self._spellings.get((entity.name, spelled)) for entity in ENTITIES)
        return next(filter(None, found), None)

    def names(self, fact: Fact) -> Names:
        """Return the names that the project has for a fact."""
        if fact.entity == OPENING.name:
            return {"building": self.buildings, "level": self.levels}.get(fact.attribute.name, no_names)
        of_result = {USES: self.parts, FINDING: self._rules_and_words, WAIVED: self._rules_and_severities}
        return of_result.get(fact, no_names)

    def reader(self, fact: Fact) -> CellReader:
        """Return the reader of what is asked for a fact: that of a survey's cells."""
        return CellReader(fact.attribute, self.bare_unit if fact.attribute.kind == "length" else None)

    def said_names(self) -> tuple[str, ...]:
        """Return the names under which facts can be suggested: as they are written, and their labels."""
        return tuple(dict.fromkeys(name for fact in self.facts for name in (fact.name, fact.attribute.label)))

    def _rules_and_words(self) -> Collection[str]:
        return (*SEVERITIES, HOLDING, *self.rules())

    def _rules_and_severities(self) -> Collection[str]:
        return (*SEVERITIES, *self.rules())

    @cached_property
    def _named(self) -> dict[tuple[str, str], Fact]:
        """Fact by entity and the very name of its declaration."""
        return {(fact.entity, fact.attribute.name): fact for fact in self._spellings.values()}

    @cached_property
    def _spellings(self) -> dict[tuple[str, str], Fact]:
        """Fact by entity and spelling. Earlier lists win, as they do for the columns of a survey."""
        found: dict[tuple[str, str], Fact] = {}
        for entity in ENTITIES:
            own = [attribute for name, attribute in self.own if name == entity.name]
            every = (*entity.attributes, *own)
            mine: dict[str, Attribute] = {}
            _add(mine, ((a, (a.label,)) for a in entity.attributes))
            _add(mine, ((a, (a.label, a.name, *a.synonyms)) for a in own))
            _add(mine, ((a, a.synonyms) for a in entity.attributes))
            _add(mine, ((a, (a.name, stem(a), a.name.removeprefix("item_"))) for a in every))
            facts = {a.name: Fact(entity.name, a, name=_written(entity.name, a, mine)) for a in every}
            # Those that no spelling is left for are kept under their own name, which is asked for first.
            mine = {**mine, **{f"\0{a.name}": a for a in every}}
            found |= {(entity.name, spelling): facts[a.name] for spelling, a in mine.items()}
        return found


def _written(entity: str, attribute: Attribute, mine: Mapping[str, Attribute]) -> str:
    """Return how a fact is written: as short as still means it."""
    short = stem(attribute).removeprefix("item_")
    if mine.get(normal(short)) is not attribute:
        short = attribute.name
    elif entity == OPENING.name and normal(short) not in _TAKEN:
        return short
    return f"{_HEAD_OF[entity]}.{short}"


def _add(words: dict[str, Attribute], attributes: Iterable[tuple[Attribute, Iterable[str]]]) -> None:
    for attribute, spellings in attributes:
        for spelling in filter(None, map(normal, spellings)):
            words.setdefault(spelling, attribute)
