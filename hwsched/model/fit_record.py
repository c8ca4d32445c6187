"""A fit as text and back, without loss."""

import dataclasses
import types
from collections.abc import Callable, Mapping
from functools import cache
from typing import Any, Literal, Union, cast, get_args, get_origin, get_type_hints

from hwsched.cases import Fit
from hwsched.model.columns import json_text


def fit_text(fit: Fit) -> str:
    """Write a fit as canonical JSON."""
    return json_text(_plain(fit))


def fit_of(content: Mapping[str, Any]) -> Fit:
    """Read a fit from decoded JSON.

    Raises
    ------
    KeyError, TypeError
        For a field that a fit does not have, or a value of another form.
    """
    return cast(Fit, _reader(Fit)(content))


def _plain(value: Any) -> Any:
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return {f.name: _plain(getattr(value, f.name)) for f in dataclasses.fields(value)}
    if isinstance(value, tuple | list):
        return [_plain(each) for each in value]
    if isinstance(value, Mapping):
        return {key: _plain(each) for key, each in value.items()}
    return value


@cache
def _reader(kind: Any) -> Callable[[Any], Any]:
    """Return what turns decoded JSON into a value of that type."""
    origin, arguments = get_origin(kind), get_args(kind)
    if dataclasses.is_dataclass(kind):
        readers = {name: _reader(hint) for name, hint in get_type_hints(kind).items()}
        make = cast(Callable[..., Any], kind)
        return lambda value: make(**{name: readers[name](each) for name, each in value.items()})
    if origin in (Union, types.UnionType):
        inner = [_reader(each) for each in arguments if each is not type(None)]
        if len(inner) == 1:
            only = inner[0]
            return lambda value: None if value is None else only(value)
        return lambda value: value
    if origin is tuple:
        if len(arguments) == 2 and arguments[1] is Ellipsis:
            each = _reader(arguments[0])
            return lambda value: tuple([each(one) for one in value])
        members = [_reader(one) for one in arguments]
        return lambda value: tuple([read(one) for read, one in zip(members, value, strict=True)])
    if kind is float:
        return float
    if origin is Literal or kind in (str, int, bool):
        return lambda value: value
    return lambda value: value
