"""How a declared fact becomes a column, and how lists and maps are held in one.

What the columns are stands in `tables`; which facts there are in `hwsched.survey`.
"""

import json
from collections.abc import Iterable, Mapping
from decimal import Decimal
from typing import Any, Final

from sqlalchemy import Boolean, Column, Dialect, Float, Integer, Text, TypeDecorator
from sqlalchemy.types import TypeEngine

from hwsched.attributes import Attribute, AttributeKind
from hwsched.quantities.money import decimal_text


def _plain(value: object) -> str:
    if isinstance(value, Decimal):
        return decimal_text(value)
    raise TypeError(f"{value!r} is no plain value")


_encode = json.JSONEncoder(
    ensure_ascii=False, allow_nan=False, sort_keys=True, separators=(",", ":"), default=_plain
).encode


def json_text(value: object) -> str:
    """Write a plain value as canonical JSON: keys sorted, no blanks, no NaN; exact decimals as text.

    Examples
    --------
    >>> json_text({"b": 1.5, "a": None})
    '{"a":null,"b":1.5}'
    """
    return _encode(value)


class JsonText(TypeDecorator[Any]):
    """A plain value held as canonical JSON text, the same on every database."""

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: object, dialect: Dialect) -> str | None:
        """Write the value; None stays null."""
        return None if value is None else json_text(value)

    def process_result_value(self, value: str | None, dialect: Dialect) -> object:
        """Read the value."""
        if value is None or value == "{}":
            # Most rows have no fields of the project's own.
            return None if value is None else {}
        return json.loads(value)


class ExactText(TypeDecorator[Decimal]):
    """An exact decimal held as text, the same on every database: no digit is lost, and none is added.

    A float is refused: it would have lost digits already.
    """

    impl = Text
    cache_ok = True

    def process_bind_param(self, value: Decimal | None, dialect: Dialect) -> str | None:
        """Write the decimal; None stays null."""
        return None if value is None else self.text(value)

    def process_result_value(self, value: str | None, dialect: Dialect) -> Decimal | None:
        """Read the decimal."""
        return None if value is None else Decimal(value)

    @staticmethod
    def text(value: object) -> str:
        """Return what is held; raises TypeError for anything but a decimal."""
        if not isinstance(value, Decimal):
            raise TypeError(f"{value!r} is no exact decimal")
        return decimal_text(value)


_TYPES: Final[Mapping[AttributeKind, type[TypeEngine[Any]]]] = {
    "text": Text,
    "length": Float,
    "number": Float,
    "integer": Integer,
    "choice": Text,
    "flag": Boolean,
    "date": Text,
    "money": ExactText,
}


def fact_columns(attributes: Iterable[Attribute], *, without: Iterable[str] = ()) -> list[Column[Any]]:
    """Make one column a declared fact; all may be null, which means unknown, save the required ones.

    Parameters
    ----------
    attributes : iterable of Attribute
        Declarations, in the order of the columns.
    without : iterable of str
        Names that are held otherwise.

    Returns
    -------
    list of Column
        Fresh columns for one table.
    """
    left_out = frozenset(without)
    return [
        Column(
            attribute.name,
            _TYPES[attribute.kind](),
            nullable=not attribute.required,
            info={"holds": "date"} if attribute.kind == "date" else {},
        )
        for attribute in attributes
        if attribute.name not in left_out
    ]
