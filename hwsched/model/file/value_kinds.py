"""What belongs in each column of a project file, as SQL that is true of any other value.

It is written down beside the shape of the newest schema by ``python -m tests.model.saved_projects``, and read from
there by `hwsched.model.file.sound_values`.
"""

import sys
from typing import Any, Final

from sqlalchemy import Boolean, Column, Float, Integer, LargeBinary
from sqlalchemy.types import TypeEngine

from hwsched.model.columns import ExactText, JsonText
from hwsched.model.file.sound_values import Checks
from hwsched.model.tables import METADATA

_LARGEST: Final = sys.float_info.max
_SMALLEST_WHOLE: Final = -(2**63)
_TEXTS: Final[dict[type, str]] = {ExactText: "an amount"}


def value_checks() -> Checks:
    """Return the checks of every table."""
    found: Checks = {}
    for table in METADATA.tables.values():
        key = next(iter(table.primary_key.columns))
        others = (each for each in table.columns if each is not key)
        found[str(table.name)] = [check_of(each) for each in (key, *others)]
    return found


def check_of(column: Column[Any]) -> tuple[str, str, str]:
    """Return the name of a column, SQL that is true of a wrong value, and what belongs there."""
    kinds, belongs = _kinds(column.type)
    name = f'"{column.name}"'
    # Every value of a file is asked as it is opened, and a call costs thrice as much as two comparisons: SQLite orders
    # values by their kinds, numbers before texts before blobs, and null is never wrong. sqlite.org/datatype3.html, 4.1
    plainly = f"typeof({name}) NOT IN ({kinds}, 'null')"
    wrong = f"({name} < '' OR {name} >= x'')" if kinds == "'text'" else plainly
    if isinstance(column.type, JsonText):
        # What a new row holds tells which of the two it is.
        kind = "array" if column.info.get("blank") == [] else "object"
        wrong = f"({wrong} OR NOT json_valid({name}) OR json_type({name}) <> '{kind}')"
        belongs = f"JSON, an {kind}"
    elif isinstance(column.type, ExactText):
        wrong = f"({wrong} OR {name} GLOB '*[^0-9.E+-]*' OR {name} NOT GLOB '*[0-9]*')"
    elif isinstance(column.type, Float):
        # SQLite turns what is not a number into null; infinity it keeps. Texts and blobs lie beyond all numbers.
        wrong = f"{name} NOT BETWEEN {-_LARGEST!r} AND {_LARGEST!r}"
    elif isinstance(column.type, Boolean):
        # What is equal to a whole number is held as one: the column is declared so.
        wrong = f"{name} NOT IN (0, 1)"
    elif isinstance(column.type, Integer):
        # The smallest is the one number that is held as a fraction too, and equal to what that is cut to.
        wrong = f"({name} IS NOT CAST({name} AS INTEGER) OR ({name} <= {_SMALLEST_WHOLE} AND {wrong}))"
    elif column.info.get("holds") == "date":
        wrong, belongs = f"({wrong} OR date({name}, '+0 days') IS NOT {name})", "a date as 2031-02-03"
    elif column.info.get("holds") == "json":
        # SQLite says of null that it is no JSON.
        wrong, belongs = f"({wrong} OR ({name} IS NOT NULL AND NOT json_valid({name})))", "JSON"
    return str(column.name), wrong, belongs


def _kinds(type_: TypeEngine[object]) -> tuple[str, str]:
    if isinstance(type_, Float):
        return "'real', 'integer'", "a number"
    if isinstance(type_, Boolean):
        return "'integer'", "yes or no"
    if isinstance(type_, Integer):
        return "'integer'", "a whole number"
    if isinstance(type_, LargeBinary):
        return "'blob'", "the content of a file"
    return "'text'", _TEXTS.get(type(type_), "text")
