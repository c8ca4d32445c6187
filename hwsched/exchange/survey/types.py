"""Types of openings: what the row of a type says holds for each opening of the type, where its own row says nothing.

A type stands in a table of types beside the openings, or in a row above them. Here belong which row is that of which
type and what an opening takes from it; which sheet is a table of types stands in `sheets`, tables that count types by
level in `count_tables`.
"""

import re
from collections import Counter
from dataclasses import dataclass, field, replace
from typing import Final

from hwsched.exchange.survey.facts import agree
from hwsched.exchange.survey.mapping import plain_word
from hwsched.exchange.survey.row import Row

_TYPE_ROW: Final = re.compile(r"(?:door|opening|leaf|unit)?\s*type\b[\s:#.\-]*(\S.*)", re.IGNORECASE)
_NAMED: Final = 8


@dataclass(slots=True)
class Types:
    """The types of a file, and what became of them."""

    rows: dict[str, Row] = field(default_factory=dict)
    """Row by the type's name in plain form."""
    taken: Counter[str] = field(default_factory=Counter)
    """Openings by the name of the type that they take something from."""
    differing: int = 0
    """Facts that an opening's own row says otherwise than its type."""
    lacking: Counter[str] = field(default_factory=Counter)
    """Rows by the name of a type that stands nowhere."""
    above: Row | None = None
    """The type under which the rows of a sheet stand at present."""

    def find(self, name: str) -> Row | None:
        """Return the row of a type."""
        return self.rows.get(plain_word(name)) or self.rows.get(plain_word(_short(name)))

    def add(self, name: str, row: Row) -> None:
        """Take a type's row; of several the first counts."""
        self.rows.setdefault(plain_word(name), row)
        self.rows.setdefault(plain_word(_short(name)), row)

    def opening(self, row: Row) -> Row:
        """Return the first row of an opening with what its type says and it does not."""
        found = self.above
        if row.of_type is not None:
            found = self.find(row.of_type)
            if found is None:
                self.lacking[row.of_type] += 1
        if found is None:
            return row
        self.taken[_short(found.mark or found.of_type or "")] += 1
        for own, of_type in ((row.opening, found.opening), (row.leaf, found.leaf), (row.lock, found.lock)):
            self.differing += sum(name in own and not agree(name, own[name], value) for name, value in of_type.items())
        return replace(
            row,
            position=row.position or found.position,
            two_leaves=row.two_leaves or (found.two_leaves and "width_mm" not in row.leaf),
            opening={**found.opening, **row.opening},
            leaf={**found.leaf, **row.leaf},
            leaf_slots={**found.leaf_slots, **row.leaf_slots},
            lock={**found.lock, **row.lock},
            item=row.item or dict(found.item),
            item_slots={**found.item_slots, **row.item_slots},
        )

    def lines(self) -> list[tuple[str, int]]:
        """Return in words what openings took from types, each with its number of openings or facts."""
        lines = [(f"what their row lacks taken from type {name}", count) for name, count in sorted(self.taken.items())]
        if len(lines) > _NAMED:
            lines = [(f"what their row lacks taken from one of {len(lines)} types", self.taken.total())]
        if self.differing:
            lines.append(("facts that a row says otherwise than its type taken from the row", self.differing))
        return lines


def is_type_row(mark: str) -> bool:
    """Tell whether what stands in place of a mark names a type, whose openings stand below.

    Examples
    --------
    >>> is_type_row("Type A"), is_type_row("DOOR TYPE: D-3"), is_type_row("A-101"), is_type_row("Type")
    (True, True, False, False)
    """
    return _TYPE_ROW.fullmatch(mark.strip()) is not None


def _short(name: str) -> str:
    """Return a type's name without the word type in front.

    Examples
    --------
    >>> _short("Type A"), _short("A")
    ('A', 'A')
    """
    match = _TYPE_ROW.fullmatch(name.strip())
    return match[1] if match else name
