"""What is said when the database does not take a row: the words for what must be unique and what must be there."""

from collections.abc import Mapping
from typing import Final

from sqlalchemy import Table
from sqlalchemy.exc import IntegrityError

from hwsched.model.errors import DuplicateValueError, MissingRowError
from hwsched.model.tables import REFERENCES

_TAKEN: Final[Mapping[str, str]] = {
    "opening": "an opening with this mark is already in the project",
    "part": "a part with this catalogue number is already in the project",
    "building": "a building with this name is already in the project",
    "supply": "a supply with this name is already in the project",
    "circuit": "a circuit with this name is already on this supply",
    "hardware_set": "a hardware set with this name is already in the project",
    "own_field": "a field with this name is already in the project",
    "revision": "a revision with this letter is already in the project",
}


def refusal(table: Table, error: IntegrityError) -> Exception:
    """Return what is said of a row that the database did not take."""
    reason = str(error.orig).lower()
    if "unique" in reason:
        return DuplicateValueError(_TAKEN.get(table.name, f"this {said_table(table)} is already in the project"))
    if "foreign key" in reason:
        owners = " or ".join(sorted({name.replace("_", " ") for name in REFERENCES[table.name].values()}))
        return MissingRowError(f"the {owners} of this {said_table(table)} is not in the project any more")
    return error


def said_table(table: Table) -> str:
    """Return what people call a row of a table.

    Examples
    --------
    >>> from hwsched.model.tables import ITEM_TABLE
    >>> said_table(ITEM_TABLE)
    'existing item'
    """
    return str(table.name).replace("_", " ")
