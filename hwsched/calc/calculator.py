"""What a calculator is, and how it reads its input.

Here belong the description of a calculator (for the command line, the desktop form and the reference page) and the
typed reading of one JSON object with errors that name the field. Calculations themselves have a file each.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Final


class InputError(ValueError):
    """A value that a calculator cannot take.

    Parameters
    ----------
    field : str
        Path of the field in the input object, such as ``keepouts[2].clearance_mm``.
    message : str
        What is wrong and what would be accepted.
    """

    def __init__(self, field: str, message: str) -> None:
        super().__init__(f"{field}: {message}")
        self.field = field
        self.message = message


@dataclass(frozen=True)
class Field:
    """One input or output of a calculator, for help and forms."""

    name: str
    """Key in the JSON object, with its unit as suffix."""
    kind: str
    """number, integer, text, choice, flag, point, box, object, list."""
    text: str
    """One sentence in the trade's words."""
    default: str = ""
    """As shown to people; empty when the field must be given."""
    choices: tuple[str, ...] = ()


@dataclass(frozen=True)
class Calculator:
    """One calculation as people and machines call it: a JSON object in, a JSON object out."""

    name: str
    title: str
    basis: str
    """Published source with edition and section, or "common practice", or "from memory, unverified"."""
    inputs: tuple[Field, ...]
    outputs: tuple[Field, ...]
    example: Mapping[str, Any]
    """An input that works; forms start from it and help prints it."""
    run: Callable[[Mapping[str, Any]], dict[str, Any]]
    """Raises InputError for a value that cannot be taken."""


class _Required:
    """Marks a field without default."""


REQUIRED: Final = _Required()
_MISSING: Final = object()
_LARGEST: Final = 1e12
"""No size, count or electrical value of a door is larger; sums and squares up to here stay finite."""


class Reader:
    """Typed access to one JSON object; every refusal names the field by its full path."""

    __slots__ = ("data", "path")

    def __init__(self, data: object, path: str = "") -> None:
        if not isinstance(data, Mapping):
            raise InputError(path or "input", f"expected an object, got {type(data).__name__}")
        self.data: Mapping[str, Any] = data
        self.path = path

    def at(self, name: str) -> str:
        """Full path of a field of this object."""
        return f"{self.path}.{name}" if self.path else name

    def raw(self, name: str, default: object = REQUIRED) -> Any:
        """Value as it stands; the default when absent or null."""
        value = self.data.get(name, _MISSING)
        if value is _MISSING or value is None:
            if isinstance(default, _Required):
                raise InputError(self.at(name), "is missing")
            return default
        return value

    def number(
        self,
        name: str,
        default: float | _Required = REQUIRED,
        *,
        above: float | None = None,
        at_least: float | None = None,
        at_most: float | None = None,
    ) -> float:
        """Finite number within limits."""
        value = self.raw(name, default)
        return check_number(value, self.at(name), above=above, at_least=at_least, at_most=at_most)

    def optional_number(
        self,
        name: str,
        *,
        above: float | None = None,
        at_least: float | None = None,
        at_most: float | None = None,
    ) -> float | None:
        """Finite number, or None when absent or null."""
        value = self.raw(name, None)
        if value is None:
            return None
        return check_number(value, self.at(name), above=above, at_least=at_least, at_most=at_most)

    def integer(
        self,
        name: str,
        default: int | _Required = REQUIRED,
        *,
        at_least: int | None = None,
        at_most: int | None = None,
    ) -> int:
        """Whole number within limits."""
        value = self.raw(name, default)
        number = check_number(value, self.at(name), at_least=at_least, at_most=at_most)
        if number != int(number):
            raise InputError(self.at(name), f"must be a whole number, got {value}")
        return int(number)

    def text(self, name: str, default: str | _Required = REQUIRED) -> str:
        """Text, not empty unless the default is."""
        value = self.raw(name, default)
        if not isinstance(value, str):
            raise InputError(self.at(name), f"must be text, got {type(value).__name__}")
        return value

    def choice(self, name: str, choices: tuple[str, ...], default: str | _Required = REQUIRED) -> str:
        """One of a few words."""
        value = self.text(name, default)
        if value not in choices:
            raise InputError(self.at(name), f"must be one of {', '.join(choices)}; got {value!r}")
        return value

    def flag(self, name: str, default: bool | _Required = REQUIRED) -> bool:
        """Return true or false."""
        value = self.raw(name, default)
        if not isinstance(value, bool):
            raise InputError(self.at(name), "must be true or false")
        return value

    def object(self, name: str) -> "Reader":
        """Nested object that must be there."""
        return Reader(self.raw(name), self.at(name))

    def items(self, name: str, default: list[Any] | _Required = REQUIRED) -> list[Any]:
        """List as it stands."""
        value = self.raw(name, default)
        if not isinstance(value, list | tuple):
            raise InputError(self.at(name), f"must be a list, got {type(value).__name__}")
        return list(value)

    def objects(self, name: str, default: list[Any] | _Required = REQUIRED) -> "list[Reader]":
        """List of objects."""
        return [Reader(item, f"{self.at(name)}[{i}]") for i, item in enumerate(self.items(name, default))]

    def point(self, name: str, size: int) -> tuple[float, ...]:
        """Point given as a list of `size` numbers."""
        return check_point(self.raw(name), self.at(name), size)


def check_number(
    value: object,
    field: str,
    *,
    above: float | None = None,
    at_least: float | None = None,
    at_most: float | None = None,
) -> float:
    """Return the value as a finite float within limits, or raise InputError naming the field."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise InputError(field, f"must be a number, got {value!r}")
    try:
        number = float(value)
    except OverflowError:
        raise InputError(field, "is too large") from None
    if not math.isfinite(number):
        raise InputError(field, f"must be a finite number, got {value}")
    if abs(number) > _LARGEST:
        raise InputError(field, f"is too large: {number:g}")
    if above is not None and not number > above:
        raise InputError(field, f"must be more than {above:g}, got {number:g}")
    if at_least is not None and number < at_least:
        raise InputError(field, f"must be at least {at_least:g}, got {number:g}")
    if at_most is not None and number > at_most:
        raise InputError(field, f"must be at most {at_most:g}, got {number:g}")
    return number


def check_point(value: object, field: str, size: int) -> tuple[float, ...]:
    """Return a point of `size` finite numbers, or raise InputError naming the field."""
    if not isinstance(value, list | tuple) or len(value) != size:
        raise InputError(field, f"must be a list of {size} numbers")
    return tuple(check_number(v, f"{field}[{i}]") for i, v in enumerate(value))
