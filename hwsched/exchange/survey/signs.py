"""Cells that hold a sign instead of a word: dashes, zeros, crosses, boxes, and what a person said that they mean.

A sign counts where its company makes it plain: 0 beside 1, an empty box beside a ticked one, a cross where nothing but
crosses stands. Everywhere else it is unknown, and asked about once a column, however many cells hold it.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any, Final

from hwsched.attributes import Attribute, CellError, as_text, normal, reading_of
from hwsched.attributes.emptiness import UNKNOWN, marks_emptiness, other_meanings
from hwsched.exchange.survey.mapping import MappedColumn

_CROSSES: Final = frozenset({"x", "\u2612"})
_TICKED: Final = frozenset({"\u2611", "\u2612", "\u2713", "\u2714", "\u221a", "\u25cf"})
_EMPTY_BOXES: Final = frozenset({"\u2610", "\u25cb"})
_KINDS: Final = frozenset({"choice", "flag"})


@dataclass(slots=True)
class Signs:
    """What the signs and words of one column come to."""

    values: dict[object, Any] = field(default_factory=dict)
    """Value by cell of those that are settled here; None for unknown."""
    asked: tuple[object, ...] = ()
    """Cells whose sign may mean something else than unknown."""
    answers: tuple[str, ...] = ()
    """What they may mean, the one that is taken first."""
    answered: tuple[object, ...] = ()
    """Cells that were read as a person said."""
    also: dict[object, tuple[tuple[str, str], ...]] = field(default_factory=dict)
    """Other facts that a word says by the meaning that a person gave it."""


def settle(attribute: Attribute, column: MappedColumn, cells: Iterable[object], read: Callable[[object], Any]) -> Signs:
    """Settle the signs of a column and the words whose meaning a person gave.

    Parameters
    ----------
    attribute : Attribute
        The fact of the column.
    column : MappedColumn
        With what a person said of its signs and words.
    cells : iterable
        The different cells of the column.
    read : callable
        Reads one cell into its value; raises CellError.

    Raises
    ------
    CellError
        Where a meaning that was given is none that the fact can have.
    """
    found = Signs()
    words = {_word(word): meaning for word, meaning in column.words}
    known = list(cells)
    if words:
        for cell in known:
            meaning = words.get(_word(cell))
            if meaning is None:
                continue
            reading = reading_of(attribute, meaning)
            found.values[cell] = reading.value if reading is not None else meant(meaning, read)
            if reading is not None and reading.also:
                found.also[cell] = reading.also
        found.answered = tuple(found.values)
        known = [cell for cell in known if cell not in found.values]
    if not column.dash and attribute.kind not in _KINDS:
        return found
    doubtful = _doubtful(attribute, known, read)
    if column.dash:
        value = meant(column.dash, read)
        found.values |= dict.fromkeys(doubtful, value)
        found.answered += tuple(doubtful)
    else:
        found.values |= dict.fromkeys(doubtful)
        crossed = attribute.kind == "flag" and any(_text(cell) in _CROSSES for cell in doubtful)
        answers = ("no", "yes") if crossed else other_meanings(attribute)
        if doubtful and answers and _stands_beside_values(attribute, known, doubtful):
            found.asked, found.answers = tuple(doubtful), (UNKNOWN, *answers)
    return found


def meant(meaning: str, read: Callable[[object], Any]) -> Any:
    """Return the value that an answer names; raises CellError."""
    return None if meaning.strip().casefold() == UNKNOWN else read(meaning)


def shown(cells: Iterable[object], counts: Mapping[Any, int]) -> str:
    """Return signs as people see them, each with the number of its cells.

    Examples
    --------
    >>> shown(["-", 0.0], {"-": 12, 0.0: 3})
    '"-" (12), "0" (3)'
    """
    return ", ".join(f'"{as_text(cell).strip()}" ({counts[cell]})' for cell in cells)


def _word(cell: object) -> str:
    return normal(as_text(cell)) or _text(cell)


def _text(cell: object) -> str:
    return as_text(cell).strip().casefold()


def _doubtful(attribute: Attribute, cells: list[object], read: Callable[[object], Any]) -> list[object]:
    """Return the cells whose sign says nothing by itself; where a field declares the sign as a word it says that."""
    signs = [cell for cell in cells if marks_emptiness(cell) or _text(cell) in _EMPTY_BOXES]
    if attribute.kind == "choice":
        return [cell for cell in signs if _is_unknown(cell, read)]
    if attribute.kind != "flag":
        # A zero is a number, and a cross no word for one.
        return [cell for cell in signs if isinstance(cell, str) and _is_unknown(cell, read)]
    texts = {_text(cell) for cell in cells}
    signs += [cell for cell in cells if _text(cell) == "\u2612"]
    words = texts - {"", "?"} - {_text(cell) for cell in signs}
    plain: set[str] = set()
    if "1" in texts:
        plain |= {"0"}
    if texts & (_TICKED | _CROSSES):
        plain |= _EMPTY_BOXES
    if not words:
        plain |= _CROSSES
    return [cell for cell in signs if _text(cell) not in plain]


def _is_unknown(cell: object, read: Callable[[object], Any]) -> bool:
    try:
        return read(cell) is None
    except CellError:
        return False


def _stands_beside_values(attribute: Attribute, cells: list[object], doubtful: list[object]) -> bool:
    """Tell whether the column holds real values too; a flag's zeros and crosses are asked about alone as well."""
    if attribute.kind == "flag" and any(_text(cell) not in ("-", "\u2013", "\u2014") for cell in doubtful):
        return True
    signs = set(doubtful)
    return any(_text(cell).strip("?") for cell in cells if cell not in signs)
