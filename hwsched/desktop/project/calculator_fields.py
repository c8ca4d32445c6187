"""A calculator's declared fields as people see them: labels, units, texts to values and back; no widgets here.

A field's name carries its unit, and its text says in the trade's words what it is; so form and answer follow from the
declaration, and another calculator needs nothing here.
"""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

from hwsched.attributes import Attribute, AttributeKind, CellError, Choice, Unit, read_value, show_value
from hwsched.calc.calculator import Calculator, Field, InputError
from hwsched.language import phrase
from hwsched.quantities import LengthStyle

Path = tuple[str, ...]
_UNITS: Final[Mapping[str, Unit]] = {
    "mm": "mm", "m": "m", "v": "V", "a": "A", "ma": "mA", "ua": "uA", "mah": "mAh", "ah": "Ah", "w": "W",
    "ohm": "ohm", "c": "degC", "s": "s", "h": "h", "deg": "deg",
}  # fmt: skip
_PLACES: Final = frozenset({"x", "y", "z", "x0", "x1", "y0", "y1"})
"""Names of lengths that say where something is; their unit goes without saying."""
_SAYS_LITTLE: Final = ("Its part", "What it is called")
"""How texts begin beside which the name says more."""
_FAR_MM: Final = 1e6
"""No place is farther from where it is counted."""
_BETWEEN: Final = ";"
"""Between the values of a list, or of a point, in one field: a comma may be part of a number."""
NESTED: Final = ("object", "box")
_NAME: Final = re.compile(r"\b[a-z0-9]+(?:_[a-z0-9]+)+\b")
"""How a field is called in JSON."""
_SAID: Final[Mapping[str, str]] = {"null": "nothing", "id": "name"}
"""What people call what has a word of its own in JSON."""
_OF_JSON: Final = re.compile(r"\b(null|id)\b")
_NUMBER: Final = re.compile(r"-?\d+(\.\d+)?")
"""A number of JSON as a default is declared."""
_SO: Final[Mapping[str, bool]] = {"true": True, "false": False}
"""What is so, as JSON has it."""
_SHAPE: Final = re.compile(r"\s*\{[^}]*\}")
"""How an object is written in JSON."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing that is typed: a field, or a column of a small table."""

    path: Path
    field: Field
    attribute: Attribute
    several: bool = False
    """A list or a point: values one behind the other."""
    size: int = 0
    """How many numbers a point has; 0: any."""

    def show(self, value: Any, style: LengthStyle) -> str:
        """Write a value of JSON as people type it; empty where it is not given."""
        if value is None:
            return ""
        if self.several:
            held = [value[key] for key in self._keys] if isinstance(value, Mapping) else value
            return f"{_BETWEEN} ".join(show_value(self.attribute, each, style) for each in held)
        return show_value(self.attribute, value, style)

    def left_out(self, style: LengthStyle) -> str:
        """Say what counts where nothing is typed, as people type it; empty where nothing does."""
        held = self.field.default
        if self.attribute.kind == "flag" and held in _SO:
            return phrase("yes") if _SO[held] else phrase("no")
        if self.attribute.kind not in ("length", "number") or not _NUMBER.fullmatch(held):
            return phrase(held) if held else ""
        value, shown = float(held), self.show(float(held), style)
        rounded = self.attribute.kind == "length" and style != "mm" and value
        return f"{shown} ({value:.4g} mm)" if rounded else shown

    def read(self, text: str, bare_unit: str | None) -> Any:
        """Read what was typed into a value of JSON; None where nothing was. Raises InputError naming the field."""
        if not text.strip():
            return None
        if not self.several:
            return self._one(text, bare_unit)
        found = [self._one(each, bare_unit) for each in text.split(_BETWEEN) if each.strip()]
        if self.size and len(found) != self.size:
            raise InputError(".".join(self.path), f"needs {self.size} values with {_BETWEEN} between them")
        return dict(zip(self._keys, found, strict=True)) if self._keys else found

    def _one(self, text: str, bare_unit: str | None) -> Any:
        try:
            unit = bare_unit if self.attribute.kind == "length" else None
            return read_value(self.attribute, text.strip(), bare_unit=unit).value
        except CellError as error:
            wanted = phrase("; accepted: {accepted}", accepted=error.accepted) if error.accepted else ""
            raise InputError(".".join(self.path), f"'{text.strip()}' {error.message}{wanted}") from error

    @property
    def _keys(self) -> list[str]:
        return [each.name for each in self.field.fields] if self.field.kind == "point" else []


@dataclass(frozen=True, slots=True)
class Table:
    """A list of things alike: a small table with a column for each of their fields."""

    path: Path
    field: Field
    columns: tuple[Entry, ...]
    """Their paths are those within a row."""
    rows_are: str = "objects"
    """objects; lists, where a row is a list of values; pairs, where the table is an object of texts by name."""


@dataclass(frozen=True, slots=True)
class Section:
    """What stands under one heading of the form."""

    title: str
    about: str
    items: tuple["Entry | Table | Section", ...] = ()


def form_of(calculator: Calculator) -> Section:
    """Return the form of a calculator."""
    inputs = in_words(calculator.inputs)
    return Section(calculator.title, "", tuple(_items(inputs, (), calculator.example)))


def in_words(fields: tuple[Field, ...]) -> tuple[Field, ...]:
    """Return fields whose texts call the others as people see them, not by their names in JSON."""
    words = worded(fields)

    def said(each: Field) -> Field:
        inner = tuple(said(one) for one in each.fields)
        return replace(each, text=words(each.text), default=words(each.default), earlier="", earlier_words=(),
                       fields=inner, yes=words(each.yes), no=words(each.no))  # fmt: skip

    return tuple(said(each) for each in fields)


def worded(fields: tuple[Field, ...], say: Callable[[str], str] = str) -> Callable[[str], str]:
    """Return what puts the words of fields, as they are said, in place of their names in JSON."""
    labels = {each.name: say(label_of(each)).lower() for each in _all(fields) if "_" in each.name}

    def words(text: str) -> str:
        said = _NAME.sub(lambda found: labels.get(found[0], found[0].replace("_", " ")), _SHAPE.sub("", text))
        return _OF_JSON.sub(lambda found: _SAID[found[0]], said)

    return words


def _all(fields: Iterable[Field]) -> Iterator[Field]:
    for each in fields:
        yield each
        yield from _all(each.fields)


def label_of(field_: Field) -> str:
    """Return the few words before a field: what its text says first.

    Examples
    --------
    >>> label_of(Field("trim_mm", "number", "Thickness of the outer trim; 0 when there is none."))
    'Thickness of the outer trim'
    """
    if field_.text.startswith(_SAYS_LITTLE):
        return _SAID.get(field_.name, field_.name).replace("_", " ").capitalize()
    text = field_.text.partition(" [")[0] if field_.text.endswith("].") else field_.text
    first = min((text.partition(stop)[0] for stop in (";", ":", ". ", ", such as", " [")), key=len).rstrip(".")
    return first or field_.name.replace("_", " ")


def object_word(name: str) -> str:
    """Return the word by which fields within an object of a row are told apart.

    Examples
    --------
    >>> object_word("hole")
    'Hole'
    """
    return name.replace("_", " ").capitalize()


def attribute_of(field_: Field) -> Attribute:
    """Return a field as a declared fact, for reading and showing."""
    name, label, note = field_.name, label_of(field_), field_.about
    if field_.choices:
        choices = tuple(Choice(each, each.replace("-", " ").replace("_", " ")) for each in field_.choices)
        return Attribute(name, label, "choice", choices=choices, note=note)
    if field_.kind == "flag":
        return Attribute(name, label, "flag", note=note)
    if field_.kind == "text":
        return Attribute(name, label, note=note)
    unit = unit_of(name)
    low = field_.within.bounds()[0]
    if unit == "mm":
        # Where something is may be on either side; what must be more than nothing the calculation says itself.
        return Attribute(name, label, "length", "mm", low=low if low < 0 else None, note=note)
    if field_.kind == "integer":
        return Attribute(name, label, "integer", note=note)
    return Attribute(name, label, "number", unit, note=note)


def put(into: dict[str, Any], path: Path, value: Any) -> None:
    """Put a value into an object of JSON, within objects by its path; what is not given is left out."""
    if value is None:
        return
    *groups, last = path
    for group in groups:
        into = into.setdefault(group, {})
    into[last] = value


def at(held: Any, path: Path) -> Any:
    """Return the value of JSON at a path; None where there is none."""
    for name in path:
        held = held.get(name) if isinstance(held, Mapping) else None
    return held


def is_vector(field_: Field) -> bool:
    """Tell whether a point says where something goes, not where it is."""
    return field_.name == "direction"


def unit_of(name: str) -> Unit:
    """Return the unit that the name of a field carries."""
    if name in _PLACES or name.endswith(("_x", "_y")):
        return "mm"
    head, _, last = name.rpartition("_")
    return _UNITS.get(last, "") if head and not head.endswith("_per") else ""


def _items(fields: tuple[Field, ...], path: Path, example: Any) -> Iterator[Entry | Table | Section]:
    for each in fields:
        here = (*path, each.name)
        given = at(example, (each.name,))
        if each.kind in NESTED and each.fields:
            yield Section(label_of(each), each.about, tuple(_items(each.fields, here, given)))
        elif each.kind == "object":
            columns = (_text_column("name", phrase("Which")), _text_column("value", phrase("On which")))
            yield Table(here, each, columns, "pairs")
        elif each.kind == "list" and each.fields:
            yield Table(here, each, tuple(_columns(each.fields, ())))
        elif each.kind == "list" and isinstance(given, list) and any(isinstance(row, list) for row in given):
            width = max(len(row) for row in given if isinstance(row, list))
            yield Table(here, each, tuple(_numbered(each, n) for n in range(width)), "lists")
        else:
            yield _entry(each, here, given)


def _columns(fields: tuple[Field, ...], path: Path) -> Iterator[Entry]:
    for each in fields:
        here = (*path, each.name)
        if each.kind in NESTED and each.fields:
            yield from _columns(each.fields, here)
        else:
            yield _entry(each, here, None)


def _entry(each: Field, path: Path, given: Any) -> Entry:
    attribute = attribute_of(each)
    if each.kind == "point":
        kind: AttributeKind = "number" if is_vector(each) else "length"
        unit: Unit = "" if is_vector(each) else "mm"
        places = Attribute(each.name, label_of(each), kind, unit, low=-_FAR_MM, note=each.about)
        return Entry(path, each, places, several=True, size=len(each.fields) or 3)
    if each.kind == "list":
        texts = isinstance(given, list) and any(isinstance(value, str) for value in given)
        names = Attribute(each.name, label_of(each), note=each.about) if texts or _names(each) else attribute
        return Entry(path, each, names, several=True)
    return Entry(path, each, attribute)


def _names(each: Field) -> bool:
    """Tell whether a list holds names: its numbers would have limits, or a unit in their name."""
    return not each.within.text and not unit_of(each.name)


def _numbered(each: Field, n: int) -> Entry:
    """Return a column of a list of lists; the third of three lengths is z."""
    points = unit_of(each.name) == "mm"
    name = "xyz"[n] if points and n < len("xyz") else f"{n + 1}"
    if points:
        return Entry((str(n),), each, Attribute(each.name, name, "length", "mm", low=-_FAR_MM))
    attribute = Attribute(each.name, name, "number", unit_of(each.name))
    return Entry((str(n),), each, attribute)


def _text_column(name: str, label: str) -> Entry:
    return Entry((name,), Field(name, "text"), Attribute(name, label))
