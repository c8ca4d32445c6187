"""What follows from declared fields: reading one JSON object, checking what comes from Python, writing, describing.

Here belong the fields of a record or function as a whole; shapes of single values stand in `shapes`, what can be said
of a field in `declaration`.
"""

import inspect
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import MISSING, dataclass, fields, is_dataclass, replace
from datetime import date
from functools import cache
from types import NoneType, UnionType
from typing import Annotated, Any, Final, Union, get_args, get_origin, get_type_hints

from msgspec import UNSET, UnsetType

from hwsched.calc import shapes
from hwsched.calc.declaration import INLINE, NO_DEFAULT, FieldsOf, Said, Values
from hwsched.calc.limits import ANY, InputError, Within
from hwsched.calc.shapes import Field, Shape, as_object


@dataclass(frozen=True)
class _Entry:
    """One field of a record."""

    attribute: str
    said: Said
    shape: Shape
    default: Any
    """MISSING where it must be given."""
    nullable: bool
    inline: "Record | None" = None
    derived: bool = False
    """A property: written, not read."""

    @property
    def at(self) -> list[str]:
        return (self.said.at or self.attribute).split(".")

    @property
    def path(self) -> str:
        return "" if self.inline is not None else ".".join(self.at)

    def read(self, data: Mapping[str, Any], path: str, place: int, before: Values) -> Any:
        """Value of the field in its object; every refusal names it by its full path."""
        if self.inline is not None:
            return self.inline.take(data, path, place)
        *groups, name = self.at
        for group in groups:
            path = joined(path, group)
            data = as_object(shapes.given(data, group, path), path)
        value, at = data.get(name, MISSING), joined(path, name)
        earlier = data.get(self.said.earlier) if self.said.earlier else None
        if earlier is not None:
            # Both names at once contradict each other: whichever were taken, the other would be lost in silence.
            if value is not MISSING and value is not None:
                raise InputError(at, f"is given beside {self.said.earlier}, its earlier name; give one of them")
            value, at = earlier, joined(path, self.said.earlier)
        if value is None and self.nullable and self.default not in (None, MISSING):
            return None
        if value is MISSING or value is None:
            return self._left_out(data, at, place, before)
        return self.shape.take(value, at, place)

    def _left_out(self, data: Mapping[str, Any], at: str, place: int, before: Values) -> Any:
        said = self.said
        if said.like:
            return before[said.like]
        if said.numbered:
            return said.numbered.format(place + 1)
        # False beside it is as good as not given: a switch that is off excuses nothing.
        beside = not said.unless or data.get(said.unless) not in (None, False)
        if self.default is MISSING or not beside:
            raise InputError(at, "is missing")
        return self.default

    @property
    def shown(self) -> str:
        """Default as people see it."""
        said, default = self.said, self.default
        if said.shown or said.like or default in (MISSING, UNSET) or said.unless:
            return said.shown or said.like
        if default is None:
            return "none"
        if isinstance(default, bool):
            return str(default).lower()
        if isinstance(default, int | float):
            return f"{default:g}"
        return default if isinstance(default, str) else str(list(default))

    @property
    def field(self) -> Field:
        """As help and forms show it."""
        said = self.said
        return Field(
            self.at[-1],
            said.kind or self.shape.kind,
            said.text,
            f'"{said.numbered.format(1)}" and so on' if said.numbered else self.shown,
            said.choices,
            self.shape.within,
            said.unless,
            said.earlier,
            tuple(said.earlier_words.items()),
            self.nullable,
            self.shape.fields,
            said.yes or said.text if self.shape.kind == "flag" else "",
            said.no,
        )


class Record:
    """The declared fields of a class or function."""

    def __init__(self, declared: Callable[..., Any]) -> None:
        self.declared = declared
        self.entries = tuple(_entries(declared))
        self.of_class = inspect.isclass(declared)
        self.right = shapes.compiled(self.quick)

    def take(self, value: Any, path: str, place: int = 0) -> Any:
        """Read the object."""
        return self.declared(**self.values(value, path, place))

    def values(self, value: Any, path: str, place: int = 0) -> dict[str, Any]:
        """Read the fields of the object, by their names in Python."""
        data, found = as_object(value, path), dict[str, Any]()
        for entry in self.entries:
            if not entry.derived:
                found[entry.attribute] = entry.read(data, path, place, found)
        return found

    def tell(self, record: Any) -> dict[str, Any]:
        """Write the record, or its values by their names in Python, as an object."""
        told: dict[str, Any] = {}
        for entry in self.entries:
            value = record[entry.attribute] if isinstance(record, dict) else getattr(record, entry.attribute)
            if entry.inline is not None:
                told |= entry.inline.tell(value)
            elif value is not UNSET:
                *groups, name = entry.at
                at = told
                for group in groups:
                    at = at.setdefault(group, {})
                at[name] = None if value is None else entry.shape.tell(value)
        return told

    def check(self, record: Any, path: str = "") -> None:
        """Refuse a record whose values are beyond their limits, or the values of a function's arguments."""
        # The quick expression knows only what is right. What is not, and what it cannot even compare, goes the slow
        # way, that names the field.
        try:
            right = self.right(record)
        except TypeError:
            right = False
        if right:
            return
        for entry in self.entries:
            if entry.derived:
                continue
            value = getattr(record, entry.attribute) if self.of_class else record[entry.attribute]
            if value is not None or not entry.nullable:
                entry.shape.check(value, joined(path, entry.path) if entry.path else path)

    def quick(self, record: str, names: shapes.Names) -> str:
        """Write the expression that is true where every value is within its limits."""
        terms = []
        for entry in self.entries:
            value = f"{record}.{entry.attribute}" if self.of_class else f"{record}[{entry.attribute!r}]"
            if entry.shape.quick is not None and not entry.derived:
                term = entry.shape.quick(value, names)
                terms.append(f"({value} is None or {term})" if entry.nullable else term)
        return " and ".join(terms) or "True"

    def shape(self, kind: str = "object") -> Shape:
        """Return the record as the shape of a value within another."""
        return Shape(kind, self.take, self.tell, self.check, self.quick, fields=self.fields({}))

    def fields(self, groups: Mapping[str, str]) -> tuple[Field, ...]:
        """Fields as help and forms show them; `groups` has the texts of objects that only hold fields."""
        found: dict[str, Field] = {}
        for entry in self.entries:
            if entry.inline is not None:
                found |= {each.name: each for each in entry.inline.fields(groups)}
            elif len(entry.at) == 1:
                found[entry.at[0]] = entry.field
            else:
                group, _ = entry.at
                held = found.get(group, Field(group, "object", groups.get(group, "")))
                found[group] = replace(held, fields=(*held.fields, entry.field))
        return tuple(found.values())


def check(record: Any, path: str = "") -> None:
    """Refuse a record whose values are beyond their declared limits; raises InputError naming the field."""
    record_of(record.__class__).check(record, path)


def check_arguments(function: Callable[..., Any], arguments: Mapping[str, Any]) -> None:
    """Refuse arguments beyond the limits that the function declares: ``check_arguments(bore, locals())``."""
    record_of(function).check(arguments)


def joined(path: str, name: str) -> str:
    """Path of a field of an object."""
    return f"{path}.{name}" if path else name


@cache
def record_of(declared: Callable[..., Any]) -> Record:
    """Fields that a record declares in its annotations, or a function in those of its parameters."""
    return Record(declared)


def shape_of(hint: Any) -> Shape:
    """Shape that a type declares."""
    return _shaped(hint, Said(), ANY)[0]


def _entries(declared: Callable[..., Any]) -> Iterator[_Entry]:
    # A cached function hides the annotations of the one it wraps.
    bare = inspect.unwrap(declared)
    hints = get_type_hints(bare, include_extras=True)
    hints.pop("return", None)
    found = []
    defaults = _defaults(bare)
    for name, hint in hints.items():
        metas = _metas(hint)
        said = next((meta for meta in reversed(metas) if isinstance(meta, Said)), None)
        of = next((meta for meta in metas if isinstance(meta, FieldsOf)), None)
        if of is not None:
            found.append(_Entry(name, INLINE, Shape(), MISSING, False, _ValuesOf(of.declared)))
        elif said is None and len(defaults) == 1 and is_dataclass(hint):
            found.append(_entry(name, hint, INLINE, MISSING))
        elif said is not None:
            found.append(_entry(name, hint, said, defaults[name]))
        elif not inspect.isclass(bare) and any(isinstance(meta, Within) for meta in metas):
            found.append(_entry(name, hint, Said(), defaults[name]))
    properties = {name: each for name, each in vars(bare).items() if isinstance(each, property)}
    for name, each in properties.items():
        hint = get_type_hints(each.fget, include_extras=True).get("return") if each.fget else None
        said = next((meta for meta in _metas(hint) if isinstance(meta, Said)), None)
        if said is not None:
            said = replace(said, text=said.text or (each.__doc__ or "").split("\n")[0], written=said.written)
            found.append(replace(_entry(name, hint, said, MISSING), derived=True))
    if any(entry.derived for entry in found):
        # Python keeps fields and properties apart; the answer is to read in the order of the source.
        found.sort(key=lambda entry: entry.said.written)
    yield from found


def _entry(name: str, hint: Any, said: Said, default: Any) -> _Entry:
    shape, nullable = _shaped(hint, said, ANY)
    if said.default is not NO_DEFAULT:
        default = said.default
    elif default is MISSING and nullable:
        default = None
    elif said.needed:
        default = MISSING
    inline = record_of(_bare(hint)) if said.at == "" else None
    return _Entry(name, said, shape, default, nullable, inline)


def _defaults(bare: Any) -> dict[str, Any]:
    if is_dataclass(bare):
        return {
            each.name: each.default_factory() if each.default_factory is not MISSING else each.default
            for each in fields(bare)
        }
    if inspect.isclass(bare):
        held = getattr(bare, "_field_defaults", {})
        return {name: held.get(name, MISSING) for name in bare.__annotations__}
    parameters = inspect.signature(bare).parameters.values()
    return {p.name: MISSING if p.default is p.empty else p.default for p in parameters}


def _metas(hint: Any) -> tuple[Any, ...]:
    """Return what is said beside a type, also where it may be None as well."""
    arms = [arm for arm in get_args(hint) if arm is not NoneType]
    if get_origin(hint) in (Union, UnionType) and len(arms) == 1:
        return _metas(arms[0])
    return getattr(hint, "__metadata__", ())


def _bare(hint: Any) -> Any:
    return get_args(hint)[0] if get_origin(hint) is Annotated else hint


def _shaped(hint: Any, said: Said, within: Within) -> tuple[Shape, bool]:
    """Shape of a type, and whether it may be None."""
    origin, arguments = get_origin(hint), get_args(hint)
    if origin is Annotated:
        for meta in arguments[1:]:
            within = meta if isinstance(meta, Within) else within
        return _shaped(arguments[0], said, within)
    if origin in (Union, UnionType):
        arms = [arm for arm in arguments if arm not in (NoneType, UnsetType)]
        return _of_arms(arms, said, within), NoneType in arguments
    return _plain(hint, origin, arguments, said, within), False


def _of_arms(arms: list[Any], said: Said, within: Within) -> Shape:
    if len(arms) == 1:
        return _shaped(arms[0], said, within)[0]
    if set(arms) == {str, float}:
        return shapes.TEXT_OR_NUMBER
    if set(arms) == {bool, float}:
        return shapes.FLAG
    return _either([record_of(arm) for arm in arms])


def _either(records: list[Record]) -> Shape:
    """One of several records; it is the last one of which a field is given, else the first."""

    def chosen(value: Any, path: str) -> Record:
        keys = as_object(value, path).keys()
        return next((r for r in reversed(records[1:]) if keys & {e.at[0] for e in r.entries}), records[0])

    by_class = {record.declared: record for record in records}
    rights = {record.declared: record.right for record in records}
    return Shape(
        "object",
        lambda value, path, place: chosen(value, path).take(value, path, place),
        lambda value: by_class[type(value)].tell(value),
        lambda value, path: by_class[type(value)].check(value, path),
        lambda value, names: f"{shapes.named(rights, names)}[{value}.__class__]({value})",
        fields=tuple(each for record in records for each in record.fields({})),
    )


def _plain(hint: Any, origin: Any, arguments: tuple[Any, ...], said: Said, within: Within) -> Shape:
    if said.as_it_stands:
        return shapes.AS_IT_STANDS
    if hint is str:
        return shapes.choice(said.choices, said.earlier_words) if said.choices else shapes.TEXT
    if hint in _PLAIN:
        return _PLAIN[hint]
    if hint is float or hint is int:
        return shapes.number(within) if hint is float else shapes.whole(within)
    if origin is tuple and Ellipsis not in arguments:
        return shapes.point(len(arguments), said.keys)
    if inspect.isclass(origin) and issubclass(origin, Mapping):
        return shapes.texts_by_name(said.form)
    if inspect.isclass(origin) and issubclass(origin, Collection):
        return shapes.listed(shape_of(arguments[0]))
    return record_of(hint).shape(said.kind or "object")


_PLAIN: Final[dict[Any, Shape]] = {bool: shapes.FLAG, date: shapes.DAY}


class _ValuesOf(Record):
    """Fields of a record or function that stay values by name until the calculation has what else it needs."""

    def take(self, value: Any, path: str, place: int = 0) -> Any:
        return self.values(value, path, place)
