"""What a person says stands there before an edit: the edit is made only where it does.

For edits without a view of the project, such as at the command line; views hand over the newest step that they had
seen.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import isclose
from typing import Any

from hwsched.attributes import Attribute, Value, said_value, show_value
from hwsched.attributes.unknown import unknown_word
from hwsched.language import phrase
from hwsched.model.errors import Clash, ConflictError, ValueRefusedError
from hwsched.model.journal.fact_words import FactWords
from hwsched.model.journal.facts import Path
from hwsched.model.journal.history import RowChange, changes_of, newest
from hwsched.model.journal.journal import Change

_CLOSE_MM = 1e-6
"""A millionth of a millimetre: lengths typed in other units differ by rounding only."""


@dataclass(frozen=True, slots=True)
class Expected:
    """A value as a person typed it."""

    text: str
    value: Value = None
    """As held; None is unknown."""
    unread: ValueRefusedError | None = None
    """Why it could not be read, where it could not; it may still be how the project shows the value."""


def check_expected(
    change: Change, entity: str, row: Mapping[str, Any], attribute: Attribute, path: Path, values: tuple[Value, Value],
    expected: Expected,
) -> None:  # fmt: skip
    """See that a fact is as a person says, or is already what is wanted.

    Parameters
    ----------
    change : Change
        In whose transaction it is edited.
    entity : str
        Table.
    row : mapping
        The row as it stands.
    attribute : Attribute
        Declaration of the fact.
    path : tuple of str
        Column, and keys within it.
    values : tuple of Value
        What the fact holds, and what it is to hold.
    expected : Expected
        What the person says that it holds: read as an equal value, or as the project shows it.

    Raises
    ------
    ConflictError
        It holds something else; with who set it and when.
    ValueRefusedError
        What was typed can be no value of this fact.
    """
    present, wanted = values
    if _same(present, wanted):
        return
    words = FactWords(change.connection)
    shown = show_value(attribute, present, words.style, unknown="unknown")
    if expected.text.strip() == shown or (expected.unread is None and _same(present, expected.value)):
        return
    if expected.unread is not None:
        raise expected.unread
    whose = words.whose(entity, row)
    source = _source(change, entity, str(row["id"]), path)
    clash = Clash(
        phrase("{fact} of {whose}", fact=phrase(attribute.label), whose=whose),
        expected.text.strip() or unknown_word(),
        said_value(attribute, present, words.style, unknown=unknown_word()),
        said_value(attribute, wanted, words.style, unknown=unknown_word()),
        source.who,
        source.when,
        source.change_set,
    )
    raise ConflictError([clash], newest(change.connection))


def _same(first: Value, second: Value) -> bool:
    if isinstance(first, float) and isinstance(second, float):
        return isclose(first, second, rel_tol=1e-12, abs_tol=_CLOSE_MM)
    return first == second


def _source(change: Change, entity: str, row_id: str, path: Path) -> RowChange:
    """Return the change that gave the fact its present value; that which made the row, where none ever did."""
    changes = [each for each in changes_of(change.connection, row_id) if each.entity == entity]
    touching = [each for each in changes if _at(each.before, path) != _at(each.after, path)]
    return (touching or changes)[-1]


def _at(values: Mapping[str, Any] | None, path: Path) -> Any:
    found: Any = values
    for key in path:
        found = found.get(key) if isinstance(found, Mapping) else None
    return found
