"""What is asked of a part, by its kind, and how what a person types into it becomes a part.

Nothing is read from a project and nothing written here: forms ask it at every stroke. Writing stands in `part_edits`.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import Any, Final

from hwsched.attributes import Attribute, CellError, Value, read_value, show_value
from hwsched.catalogue import KINDS, kind_of
from hwsched.catalogue.traits.entry import ENTRY, NUMBER, ON_HAND, SUPERSEDED_BY
from hwsched.catalogue.validation import PartProblem, problems_of
from hwsched.language import to_phrase
from hwsched.quantities import LengthStyle
from hwsched.telling.nearest import nearest_words
from hwsched.values import Catalogue, Part

KIT: Final = Attribute(
    "kit",
    "In its box",
    note="Part numbers, each with * and how many where there are several, such as SCREW-1*4; PLATE-2.",
)
OF_ORDER: Final[tuple[Attribute, ...]] = (*(each for each in ENTRY if each is not NUMBER), KIT, *ON_HAND)
"""What is asked of every part beside its number."""


@dataclass(frozen=True, slots=True)
class PartEdit:
    """What is asked of one entry of the catalogue."""

    number: str
    typed: Mapping[str, str] = field(default_factory=dict)
    """Texts by attribute, as typed; empty text means unknown, what is left out stays."""
    kind: str = ""
    """Of a new part."""
    like: str = ""
    """Number of the part that a new one begins as a copy of."""
    withdrawn: bool = False
    """It is taken out of the catalogue."""

    @property
    def new(self) -> bool:
        """Whether the part is to be added."""
        return bool(self.kind or self.like)


@dataclass(frozen=True, slots=True)
class PartRead:
    """A part as it would be, with all that is wrong with it."""

    part: Part
    extra: Mapping[str, Value]
    """Those of the project's own fields that were typed."""
    problems: tuple[PartProblem, ...]


def sections(kind: str, own: Sequence[Attribute]) -> tuple[tuple[str, tuple[Attribute, ...]], ...]:
    """Return what is asked of a part of a kind, under headings that are said where they are shown."""
    declared = kind_of(kind)
    found = [(to_phrase("Order"), OF_ORDER)]
    if declared is not None:
        found.append((declared.label, declared.attributes))
    if own:
        found.append((to_phrase("Fields of the project"), tuple(own)))
    return tuple(found)


def fields_of(kind: str, own: Sequence[Attribute]) -> dict[str, Attribute]:
    """Return what is asked of a part of a kind, by name."""
    return {each.name: each for _, attributes in sections(kind, own) for each in attributes}


def value_of(part: Part, name: str, extra: Mapping[str, Any]) -> Any:
    """Return what a part holds for a field of its form; None where unknown."""
    if name == KIT.name:
        return "; ".join(number if count == 1 else f"{number}*{count:g}" for number, count in part.kit) or None
    if name in _OF_ENTRY:
        return getattr(part, name) or None if name not in _COUNTS else getattr(part, name)
    return part.attributes[name] if name in part.attributes else extra.get(name)


def shown_value(part: Part, attribute: Attribute, extra: Mapping[str, Any], style: LengthStyle) -> str:
    """Write what a part holds as a form shows it; empty where unknown."""
    return show_value(attribute, value_of(part, attribute.name, extra), style)


def read_part(catalogue: Catalogue, own: Sequence[Attribute], bare_unit: str | None, edit: PartEdit) -> PartRead:
    """Read what a person typed into the form of a part.

    Parameters
    ----------
    catalogue : Catalogue
        As it stands.
    own : sequence of Attribute
        Fields of the project's own on parts.
    bare_unit : str
        What a length without a unit means.
    edit : PartEdit
        What was typed; one that withdraws a part has nothing to be read.
    """
    problems: list[PartProblem] = []
    part = _begun(catalogue, edit, problems)
    asked = fields_of(part.kind, own)
    values: dict[str, Value] = {}
    for name, text in edit.typed.items():
        attribute = asked.get(name)
        if attribute is None:
            labels = ", ".join(asked)
            problems.append(PartProblem(name, f"a part of this kind has no '{name}'", labels))
            continue
        try:
            unit = bare_unit if attribute.kind == "length" else None
            values[name] = read_value(attribute, text, bare_unit=unit).value
            if attribute.required and values[name] in (None, ""):
                problems.append(PartProblem(name, f"{attribute.label} must be filled in", attribute.note))
        except CellError as error:
            problems.append(PartProblem(name, f"'{text}' {error.message}", error.accepted))
    names = {each.name for each in own}
    part = _with(part, {name: value for name, value in values.items() if name not in names})
    if edit.new and not part.description and "description" not in values:
        problems.append(PartProblem("description", "Description must be filled in"))
    if KIT.name in values:
        part = _boxed(part, values[KIT.name], problems)
    refused = {each.attribute for each in problems}
    kind = kind_of(part.kind)
    if kind is not None:
        problems += [each for each in problems_of(part.attributes, kind) if each.attribute not in refused]
    problems += _others(catalogue, part, values)
    return PartRead(part, {name: value for name, value in values.items() if name in names}, tuple(problems))


def _missing(catalogue: Catalogue, number: str) -> str:
    return f"the catalogue has no part '{number}'{nearest_words(number, catalogue.parts)}"


_OF_ENTRY: Final = frozenset(each.name for each in (*ENTRY, *ON_HAND))
_COUNTS: Final = frozenset({"list_price", "stock", "preferred"})
"""Fields of which nothing is another thing than zero."""


def _begun(catalogue: Catalogue, edit: PartEdit, problems: list[PartProblem]) -> Part:
    """Return the part that what is typed goes over."""
    number = edit.number.strip()
    held = catalogue.get(number)
    if not edit.new:
        if held is None:
            problems.append(PartProblem(NUMBER.name, _missing(catalogue, number)))
        return held or Part(number, "")
    if not number:
        problems.append(PartProblem(NUMBER.name, "Part number must be filled in", NUMBER.note))
    if held is not None:
        problems.append(PartProblem(NUMBER.name, f"{number} is in the catalogue already", "a number of its own"))
    if edit.like:
        model = catalogue.get(edit.like)
        if model is None:
            problems.append(PartProblem("like", _missing(catalogue, edit.like)))
            return Part(number, edit.kind)
        # What was counted, and what follows the other, is of the other.
        return replace(model, number=number, superseded_by="", stock=None)
    if kind_of(edit.kind) is None:
        problems.append(
            PartProblem("kind", f"there is no kind of part '{edit.kind}'", ", ".join(each.name for each in KINDS))
        )
    return Part(number, edit.kind)


def _with(part: Part, values: Mapping[str, Value]) -> Part:
    entry: dict[str, Any] = {}
    attributes = dict(part.attributes)
    for name, value in values.items():
        if name == KIT.name:
            continue
        if name not in _OF_ENTRY:
            if value in (None, ""):
                attributes.pop(name, None)
            elif not isinstance(value, Decimal):
                attributes[name] = value
        elif name in _COUNTS:
            entry[name] = float(value) if name == "stock" and isinstance(value, int | float) else value
        else:
            entry[name] = value or ("EA" if name == "unit" else "")
    return replace(part, attributes=attributes, **entry)


def _boxed(part: Part, text: Value, problems: list[PartProblem]) -> Part:
    kit: dict[str, float] = {}
    for piece in filter(None, (each.strip() for each in str(text or "").split(";"))):
        number, times, count = (each.strip() for each in piece.rpartition("*"))
        try:
            quantity = float(count) if times else 1.0
        except ValueError:
            quantity = 0.0
        number = number if times else piece
        if not 0 < quantity < 10_000:
            problems.append(PartProblem(KIT.name, f"'{piece}' cannot be read", KIT.note))
        elif number in kit:
            problems.append(PartProblem(KIT.name, f"{number} stands twice", "one entry with the sum"))
        else:
            kit[number] = quantity
    return replace(part, kit=tuple(sorted(kit.items())))


def _others(catalogue: Catalogue, part: Part, values: Mapping[str, Value]) -> Iterator[PartProblem]:
    """Yield what is wrong with what a part says of others."""
    if KIT.name in values:
        for number, _ in part.kit:
            if catalogue.get(number) is None and number != part.number:
                yield PartProblem(KIT.name, _missing(catalogue, number))
        if _leads_back(part.number, [number for number, _ in part.kit], lambda number: _box_of(catalogue, number)):
            yield PartProblem(KIT.name, "it would contain itself, directly or through what it contains")
    successor = part.superseded_by
    if SUPERSEDED_BY.name in values and successor:
        if catalogue.get(successor) is None and successor != part.number:
            yield PartProblem(SUPERSEDED_BY.name, _missing(catalogue, successor))
        if _leads_back(part.number, [successor], lambda number: _after(catalogue, number)):
            message = "it would follow itself, directly or through its successors"
            yield PartProblem(SUPERSEDED_BY.name, message, "a later part")


def _box_of(catalogue: Catalogue, number: str) -> list[str]:
    part = catalogue.get(number)
    return [each for each, _ in part.kit] if part is not None else []


def _after(catalogue: Catalogue, number: str) -> list[str]:
    part = catalogue.get(number)
    return [part.superseded_by] if part is not None and part.superseded_by else []


def _leads_back(start: str, first: Iterable[str], links: Any) -> bool:
    seen: set[str] = set()
    ahead = list(first)
    while ahead:
        number = ahead.pop()
        if number == start:
            return True
        if number not in seen:
            seen.add(number)
            ahead += links(number)
    return False
