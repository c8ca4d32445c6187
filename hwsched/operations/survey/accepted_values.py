"""What a fact may hold, seen to before it is written; and the row that it stands on.

Reading what people type stands in `hwsched.attributes`; here values have their type already.
"""

import datetime as dt
from decimal import Decimal
from functools import cache
from math import isfinite
from typing import Any, Final

from sqlalchemy import Select, Table, bindparam, select

from hwsched.attributes import Attribute, Value, accepted_by, unfit_character, within_limits
from hwsched.model.errors import MissingRowError, ValueRefusedError, minute_of
from hwsched.model.journal.history import changes_of
from hwsched.model.journal.journal import Change
from hwsched.model.journal.refusals import said_table
from hwsched.model.tables import OPENING_TABLE
from hwsched.quantities.money import MoneyError, exact_decimal


def accepted(attribute: Attribute, value: object) -> Value:
    """Return a value as it is held.

    Parameters
    ----------
    attribute : Attribute
        Declaration of the fact.
    value : object
        A value of its kind (lengths in mm, choices by their value); None or an empty text is unknown.

    Returns
    -------
    Value
        Numbers as float, whole numbers as int, texts without blanks around.

    Raises
    ------
    ValueRefusedError
        For another type, a number out of limits or not finite, a word that is no choice, an unknown mark.

    Examples
    --------
    >>> accepted(Attribute("backset_mm", "Backset", "length", "mm", low=10), 70)
    70.0
    """
    if isinstance(value, str):
        value = value.strip() or None
    if value is None:
        if attribute.required:
            raise ValueRefusedError(attribute.label, "cannot be unknown")
        return None
    held = _typed(attribute, value)
    if isinstance(held, str) and (unfit := unfit_character(attribute, held.replace("\r", ""))):
        message = f"holds a character that cannot be shown ({unfit}); accepted: {accepted_by(attribute)} without it"
        raise ValueRefusedError(attribute.label, message)
    if held is None:
        raise ValueRefusedError(attribute.label, f"{value!r} cannot be held; accepted: {accepted_by(attribute)}")
    if isinstance(held, int | float | Decimal) and not within_limits(attribute, held):
        raise ValueRefusedError(attribute.label, f"{held:g} cannot be; accepted: {accepted_by(attribute)}")
    return held


def _typed(attribute: Attribute, value: object) -> Value:
    """Return the value in its kind's own type; None where it is of another."""
    kind = attribute.kind
    if kind == "flag":
        return value if isinstance(value, bool) else None
    if kind in ("length", "number", "integer"):
        if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
            return None
        if kind != "integer":
            return float(value)
        return int(value) if value == int(value) else None
    if kind == "money":
        try:
            return None if isinstance(value, str) else exact_decimal(value)
        except MoneyError:
            return None
    if not isinstance(value, str):
        return None
    if kind == "choice":
        return value if attribute.choice(value) else None
    if kind == "date":
        try:
            return dt.date.fromisoformat(value).isoformat()
        except ValueError:
            return None
    return value


def row_there(change: Change, table: Table, row_id: str) -> Any:
    """Return a row that is to be edited, or say who removed it.

    Parameters
    ----------
    change : Change
        In whose transaction the row will be edited.
    table : Table
        The row's.
    row_id : str
        Its identifier.

    Returns
    -------
    Row
        The whole row.

    Raises
    ------
    MissingRowError
        It is gone.
    """
    row = change.connection.execute(_row_of(table), {"row_id": row_id}).first()
    if row is None:
        raise MissingRowError(_gone(change, table, row_id))
    return row


@cache
def _row_of(table: Table) -> Select[Any]:
    return select(table).where(table.c.id == bindparam("row_id"))


def _gone(change: Change, table: Table, row_id: str) -> str:
    said = f"this {said_table(table)} is not in the project any more"
    changes = [each for each in changes_of(change.connection, row_id) if each.entity == table.name]
    if not changes or changes[-1].action != "delete":
        return said
    last = changes[-1]
    return f"{said}: {last.who} took it out in step {last.change_set}, {minute_of(last.when)}"


_MARK: Final = select(OPENING_TABLE.c.mark).where(OPENING_TABLE.c.id == bindparam("opening_id"))


def mark_of(change: Change, opening_id: str) -> str:
    """Return an opening's mark; raises MissingRowError."""
    mark = change.connection.execute(_MARK, {"opening_id": opening_id}).scalar()
    if mark is None:
        raise MissingRowError(_gone(change, OPENING_TABLE, opening_id))
    return str(mark)
