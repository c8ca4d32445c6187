"""A fit as text and back, without loss.

Written is what differs from a field's default: half the length. Where a default or the meaning of a field changes, the
program's fingerprint changes with it, so that older fits count as of an earlier version.
"""

import dataclasses
import hashlib
import json
import types
from collections.abc import Callable, Mapping
from decimal import Decimal
from functools import cache
from operator import attrgetter
from typing import Any, Final, Literal, Union, cast, get_args, get_origin, get_type_hints

from hwsched.quantities.money import MoneyError, decimal_text, exact_decimal
from hwsched.values import BatteryLife, Fit

_Convert = Callable[[Any], Any]


class FitRecordError(ValueError):
    """A stored fit that is none: an unknown field, a missing one, a value of another type."""


COMMON: Final = "common"
"""Names in a content the hash of what it shares with those of other places."""
_OF_PLACE: Final = ("placement", "cable", "holes")
"""What differs between openings that get the same parts in other places."""
# Fields stand in the order of their declaration: the same fit has the same text.
_encode: Final = json.JSONEncoder(ensure_ascii=False, allow_nan=False, separators=(",", ":")).encode


def fit_text(fit: Fit) -> str:
    """Write a fit as JSON.

    Examples
    --------
    >>> fit_text(Fit("to-measure"))
    '{"status":"to-measure"}'
    """
    return _encode(_writer(Fit)(fit))


@dataclasses.dataclass(frozen=True, slots=True)
class FitTexts:
    """A fit as texts that openings share."""

    content: str
    """What openings alike share."""
    battery: str | None = None
    """How long its pack lasts; None for one without a pack. A busier opening would else have a content of its own."""
    common: str | None = None
    """Parts, refusals and what else openings share that get the same in other places; `content` names it by its hash.
    None for a fit without a place, whose content is whole."""


def fit_texts(fit: Fit) -> FitTexts:
    """Write a fit as texts.

    Examples
    --------
    >>> fit_texts(Fit("fits", battery=BatteryLife(100.0, 2.0, 500.0, 0.5))).battery
    '{"days":100.0,"mah_per_day":2.0,"capacity_mah":500.0,"usable_share":0.5}'
    >>> fit_texts(Fit("fits", battery=BatteryLife(100.0, 2.0, 500.0, 0.5))).content
    '{"status":"fits"}'
    """
    written = _writer(Fit)(fit)
    life = written.pop("battery", None)
    battery = None if life is None else _encode(life)
    if fit.placement is None:
        return FitTexts(_encode(written), battery)
    own = {name: written.pop(name) for name in _OF_PLACE if name in written}
    common = _encode(written)
    content = {"status": fit.status, COMMON: text_key(common), **own}
    return FitTexts(_encode(content), battery, common)


def text_key(content: str) -> str:
    """Return the key under which a content is held: 64 hexadecimal digits."""
    return hashlib.sha256(content.encode()).hexdigest()


def in_place(common: Fit, own: Fit) -> Fit:
    """Put a fit together from what it shares with those that get the same in other places, and what is its own."""
    return dataclasses.replace(common, **{name: getattr(own, name) for name in _OF_PLACE})


def with_battery(fit: Fit, content: object) -> Fit:
    """Put what `fit_texts` wrote apart, decoded, back into a fit.

    Raises
    ------
    FitRecordError
        As `fit_of`.
    """
    return dataclasses.replace(fit, battery=_reader(BatteryLife)(content))


def fit_of(content: object) -> Fit:
    """Read a fit from decoded JSON.

    Parameters
    ----------
    content : object
        As `fit_text` wrote it.

    Raises
    ------
    FitRecordError
        For an unknown field, a missing one, or a value of another type.

    Examples
    --------
    >>> fit_of({"status": "fits", "cost": "12.5"}).cost
    Decimal('12.5')
    """
    return cast(Fit, _reader(Fit)(content))


def _plain(kind: Any) -> bool:
    """Tell whether JSON takes values of this type as they are: numbers, texts, and tuples of them."""
    if get_origin(kind) in (Union, types.UnionType, tuple):
        return all(_plain(each) for each in get_args(kind) if each is not Ellipsis)
    return get_origin(kind) is not Mapping and kind is not Decimal and not dataclasses.is_dataclass(kind)


@cache
def _writer(kind: Any) -> _Convert:
    """Return what turns a value of that type into what JSON holds."""
    if dataclasses.is_dataclass(kind):
        return _dataclass_writer(cast(type, kind))
    if kind is Decimal:
        return lambda value: decimal_text(exact_decimal(value))
    if get_origin(kind) is Mapping and all(_plain(each) for each in get_args(kind)):
        return dict
    arguments = [each for each in get_args(kind) if each not in (Ellipsis, types.NoneType)]
    inner = [_writer(each) for each in arguments if not _plain(each)]
    if len(inner) != 1 or len(arguments) != 1:
        raise TypeError(f"no way to write {kind}")
    write = inner[0]
    if get_origin(kind) is tuple:
        return lambda value: [write(each) for each in value]
    return lambda value: None if value is None else write(value)


def _dataclass_writer(kind: type) -> _Convert:
    hints = get_type_hints(kind)
    fields = dataclasses.fields(kind)
    names = [field.name for field in fields]
    values_of = attrgetter(*names)
    defaults = [_default(field) for field in fields]
    writers = [None if _plain(hints[name]) else _writer(hints[name]) for name in names]

    def write(value: Any) -> dict[str, Any]:
        return {
            name: held if writer is None else writer(held)
            for name, held, default, writer in zip(names, values_of(value), defaults, writers, strict=True)
            if held != default
        }

    return write


def _default(field: dataclasses.Field[Any]) -> Any:
    if field.default_factory is not dataclasses.MISSING:
        return field.default_factory()
    return field.default


@cache
def _reader(kind: Any) -> _Convert:
    """Return what turns decoded JSON into a value of that type, or refuses it."""
    origin, arguments = get_origin(kind), get_args(kind)
    if dataclasses.is_dataclass(kind):
        return _dataclass_reader(cast(type, kind))
    if origin in (Union, types.UnionType):
        return _union_reader(kind, arguments)
    if origin is tuple:
        return _tuple_reader(kind, arguments)
    if origin is Mapping:
        read = _reader(arguments[1])
        return lambda value: {key: read(each) for key, each in _checked(value, dict, kind).items()}
    if origin is Literal:
        return lambda value: value if value in arguments else _refuse(value, kind)
    if kind is float:
        return lambda value: float(value) if type(value) in (float, int) else _refuse(value, kind)
    if kind is Decimal:
        return _decimal
    if kind in (str, int, bool):
        return lambda value: _checked(value, kind, kind)
    raise TypeError(f"no way to read {kind}")


def _decimal(value: Any) -> Decimal:
    # Earlier versions wrote floats, which are taken by their shortest text.
    try:
        return exact_decimal(value)
    except MoneyError:
        return cast(Decimal, _refuse(value, Decimal))


def _dataclass_reader(kind: type) -> _Convert:
    readers = {name: _reader(hint) for name, hint in get_type_hints(kind).items()}

    def read(content: Any) -> Any:
        try:
            return kind(**{name: readers[name](each) for name, each in _checked(content, dict, kind).items()})
        except KeyError as error:
            raise FitRecordError(f"{kind.__name__} has no field {error}") from error
        except TypeError as error:
            raise FitRecordError(str(error)) from error

    return read


def _union_reader(kind: Any, arguments: tuple[Any, ...]) -> _Convert:
    inner = [_reader(each) for each in arguments if each is not types.NoneType]
    if len(inner) != 1 or len(arguments) != 2:
        raise TypeError(f"no way to read {kind}")
    read = inner[0]
    return lambda value: None if value is None else read(value)


def _tuple_reader(kind: Any, arguments: tuple[Any, ...]) -> _Convert:
    if arguments[-1] is Ellipsis:
        read = _reader(arguments[0])
        return lambda value: tuple([read(each) for each in _checked(value, list, kind)])
    readers = [_reader(each) for each in arguments]

    def read_members(value: Any) -> tuple[Any, ...]:
        if type(value) is not list or len(value) != len(readers):
            _refuse(value, kind)
        return tuple([read(each) for read, each in zip(readers, value, strict=True)])

    return read_members


def _checked(value: Any, wanted: type, kind: Any) -> Any:
    return value if type(value) is wanted else _refuse(value, kind)


def _refuse(value: Any, kind: Any) -> Any:
    raise FitRecordError(f"{value!r} is no {getattr(kind, '__name__', kind)}")
