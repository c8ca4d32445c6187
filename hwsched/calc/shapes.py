"""What a value of a calculation looks like: reading it from JSON, writing it as JSON, checking one from Python.

Here belong the shapes of single values and of lists. Records, which have named fields, stand in `records`.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import Any, Final

from hwsched.calc.limits import ANY, InputError, Within, check_number, check_point

Names = dict[str, Any]
Quick = Callable[[str, Names], str]
"""Writes the Python expression that is true of a right value, of the variable named; adds to the names what it uses.

Fits check many thousand values that are all right. One expression for a whole record takes as long as if it were
written by hand; only what is wrong is looked at field by field, and told.
"""


@dataclass(frozen=True)
class Field:
    """One input or output of a calculator, for help and forms."""

    name: str
    """Key in the JSON object, with its unit as suffix."""
    kind: str
    """number, integer, text, choice, flag, point, box, object, list."""
    text: str = ""
    """In the trade's words."""
    default: str = ""
    """As shown to people; empty when the field must be given."""
    choices: tuple[str, ...] = ()
    within: Within = ANY
    """Limits of the number, or of the numbers in a list."""
    unless: str = ""
    """The field beside which this one may be left out."""
    earlier: str = ""
    """Name that it had before, which is still read."""
    earlier_words: tuple[tuple[str, str], ...] = ()
    """Words that a choice had before, each with the word of today."""
    null: bool = False
    """May be null; where a default is shown, null is the same as leaving it out."""
    fields: "tuple[Field, ...]" = ()
    """Of the object, or of each object in the list."""
    yes: str = ""
    """What an answer says where a flag is true; the text, where that says it."""
    no: str = ""
    """What an answer says where a flag is false."""

    @property
    def terms(self) -> str:
        """Kind, limits, choices and default on one line; fields that need no text of their own are named here."""
        plain = ", ".join(each.name for each in self.fields if not each.about)
        return ", ".join(
            part
            for part in (
                f"{self.kind} of {plain}" if plain else self.kind,
                self.within.text,
                f"one of {', '.join(self.choices)}" if self.choices else "",
                f"default {self.default}" if self.default else "",
                f"not needed with {self.unless}" if self.unless else "",
                "or null" if self.null and not self.default and not self.unless else "",
            )
            if part
        )

    @property
    def told(self) -> "tuple[Field, ...]":
        """Fields that have a line of their own in help."""
        return tuple(each for each in self.fields if each.about)

    @property
    def answered(self) -> "Field":
        """The same field where it is part of an answer: nothing is left out there."""
        return replace(self, default="", unless="", fields=tuple(each.answered for each in self.fields))

    @property
    def about(self) -> str:
        """Text, with the earlier name and words if it had others."""
        words = ", ".join(f"{old} for {new}" for old, new in self.earlier_words)
        return " ".join(
            part
            for part in (
                self.text,
                f"Earlier name, still read: {self.earlier}." if self.earlier else "",
                f"Earlier word, still read: {words}." if words else "",
            )
            if part
        )


def _same(value: Any) -> Any:
    return value


def _untouched(value: Any, path: str, place: int) -> Any:
    return value


def _unchecked(value: Any, path: str) -> None:
    return None


@dataclass(frozen=True)
class Shape:
    """How values of one shape are read, written, checked and described; by default any value, as it is."""

    kind: str = "object"
    take: Callable[[Any, str, int], Any] = _untouched
    """Reads a value of JSON at a path; the last is its index in a list."""
    tell: Callable[[Any], Any] = _same
    """Writes a value as JSON."""
    check: Callable[[Any, str], object] = _unchecked
    """Refuses a value from Python that cannot be taken."""
    quick: Quick | None = None
    """None where there is nothing to check."""
    within: Within = ANY
    fields: tuple[Field, ...] = ()
    """Of the object, or of each object in the list."""


def number(within: Within = ANY) -> Shape:
    """Return the shape of a finite number within limits."""
    low, high = within.bounds()
    return Shape(
        "number",
        lambda value, path, _: within.check(value, path),
        _same,
        within.check,
        # Yes and no are numbers for Python; nothing of a door is one.
        lambda value, _: f"{low!r} <= {value} <= {high!r} and {value} is not True and {value} is not False",
        within,
    )


def whole(within: Within = ANY) -> Shape:
    """Return the shape of a whole number within limits."""

    def take(value: Any, path: str, place: int) -> int:
        number = within.check(value, path)
        if number != int(number):
            raise InputError(path, f"must be a whole number, got {value}")
        return int(number)

    return replace(number(within), kind="integer", take=take)


def _text(value: Any, path: str, place: int = 0) -> str:
    if not isinstance(value, str):
        raise InputError(path, f"must be text, got {type(value).__name__}")
    return value


def _text_or_number(value: Any, path: str, place: int) -> str | float:
    if not isinstance(value, str | int | float) or isinstance(value, bool):
        raise InputError(path, f"must be text or a number, got {value!r}")
    return value


def _day(value: Any, path: str, place: int) -> date:
    text = _text(value, path)
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise InputError(path, f"must be a date such as 2025-03-01, got {text!r}") from None


def _flag(value: Any, path: str, place: int) -> bool:
    if not isinstance(value, bool):
        raise InputError(path, "must be true or false")
    return value


TEXT: Final = Shape("text", _text)
TEXT_OR_NUMBER: Final = Shape("text", _text_or_number)
DAY: Final = Shape("text", _day, date.isoformat)
FLAG: Final = Shape("flag", _flag)
AS_IT_STANDS: Final = Shape("list", lambda value, path, _: as_list(value, path))
"""A list whose entries the calculation checks itself, because they depend on other fields."""


def choice(choices: tuple[str, ...], earlier: Mapping[str, str]) -> Shape:
    """Return the shape of one of a few words; words of before are still read."""

    def check(value: Any, path: str) -> None:
        if value not in choices:
            raise InputError(path, f"must be one of {', '.join(choices)}; got {value!r}")

    def take(value: Any, path: str, place: int) -> str:
        text = _text(value, path)
        text = earlier.get(text, text)
        check(text, path)
        return text

    return Shape("choice", take, _same, check, lambda value, names: f"{value} in {named(choices, names)}")


def point(size: int, keys: tuple[str, ...] = ()) -> Shape:
    """Return the shape of so many finite numbers: a list, or an object with a key for each."""

    def take(value: Any, path: str, place: int) -> tuple[float, ...]:
        if not keys:
            return check_point(value, path, size)
        held = as_object(value, path)
        return tuple(check_number(given(held, key, f"{path}.{key}"), f"{path}.{key}") for key in keys)

    def check(value: Any, path: str) -> None:
        if not keys:
            check_point(value, path, size)
        for key, each in zip(keys, value, strict=False):
            check_number(each, f"{path}.{key}")

    right = number().quick
    return Shape(
        "point",
        take,
        (lambda value: dict(zip(keys, value, strict=True))) if keys else list,
        check,
        lambda value, names: " and ".join(
            [f"len({value}) == {size}", *(right(f"{value}[{i}]", names) for i in range(size) if right)]
        ),
        fields=tuple(Field(key, "number") for key in keys),
    )


def listed(each: Shape) -> Shape:
    """Return the shape of a list of values alike."""

    def check(value: Any, path: str) -> None:
        for i, item in enumerate(value):
            each.check(item, f"{path}[{i}]")

    right = each.quick
    return Shape(
        "list",
        lambda value, path, _: tuple(each.take(item, f"{path}[{i}]", i) for i, item in enumerate(as_list(value, path))),
        lambda value: [each.tell(item) for item in value],
        check,
        None if right is None else lambda value, names: f"all(map({named(compiled(right), names)}, {value}))",
        each.within,
        each.fields,
    )


def texts_by_name(form: str) -> Shape:
    """Return the shape of an object of texts by name; `form` is how people are told it."""

    def take(value: Any, path: str, place: int) -> dict[str, str]:
        if not isinstance(value, Mapping):
            raise InputError(path, f"must be an object {form}")
        return {name: _text(given(value, name, f"{path}.{name}"), f"{path}.{name}") for name in value}

    return Shape("object", take, dict)


def as_object(value: object, path: str) -> Mapping[str, Any]:
    """Return the value where it is an object."""
    if not isinstance(value, Mapping):
        raise InputError(path or "input", f"expected an object, got {type(value).__name__}")
    return value


def as_list(value: object, path: str) -> list[Any]:
    """Return the value where it is a list."""
    if not isinstance(value, list | tuple):
        raise InputError(path, f"must be a list, got {type(value).__name__}")
    return list(value)


def given(held: Mapping[str, Any], key: str, path: str) -> Any:
    """Return what stands under a key; absent and null are missing."""
    value = held.get(key)
    if value is None:
        raise InputError(path, "is missing")
    return value


def named(value: object, names: Names) -> str:
    """Name under which an expression finds a value."""
    name = f"_{len(names)}"
    names[name] = value
    return name


def compiled(quick: Quick) -> Callable[[Any], bool]:
    """Make a function of the expression."""
    names: Names = {}
    expression = quick("value", names)
    right: Callable[[Any], bool] = eval(f"lambda value: {expression}", names)
    return right
