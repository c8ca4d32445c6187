"""The rows of a grid as they are to be shown: narrowed, filtered, in order, in groups; each known by its identity.

No widgets. Values of a column are read when rows are first ordered, filtered or grouped by it, texts only for cells
that are looked at: 50,000 rows cost nothing until somebody asks for something of all of them.
"""

from collections import Counter
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final, Generic

from hwsched.desktop.grid.arrangement import Arrangement
from hwsched.desktop.grid.column import Column, Row

_LAST: Final = (True, ())
"""Rows of which nobody knows the value come last, whichever way the others go."""


@dataclass(frozen=True, slots=True)
class Group:
    """A line above rows that have the same value."""

    value: Any
    title: str
    count: int


class Contents(Generic[Row]):
    """Rows with what decides which of them are shown, and where.

    Parameters
    ----------
    columns : sequence of Column
        All that there are; those of the standard are shown at first.
    identity : callable
        Returns by what a row is known.
    """

    def __init__(self, columns: Sequence[Column[Row]], identity: Callable[[Row], str]) -> None:
        self._identity = identity
        self.rows: list[Row] = []
        self.ids: list[str] = []
        self.arrangement = Arrangement()
        self.filters: dict[str, frozenset[Any]] = {}
        """Of some columns the values that are shown."""
        self.folded: set[Any] = set()
        """Values of groups whose rows are not shown."""
        self._kept: Collection[int] | None = None
        self._values: dict[str, list[Any]] = {}
        self._lines: list[int] = []
        """Of each line the place of its row; below zero it is a group's."""
        self._groups: list[Group] = []
        self._line_of: dict[str, int] = {}
        self.declare(columns)

    def declare(self, columns: Sequence[Column[Row]]) -> None:
        """Take other columns over; a project may have fields of its own."""
        self.known: Mapping[str, Column[Row]] = {each.name: each for each in columns}
        self._values.clear()
        self.arrange(self.arrangement)

    def arrange(self, arrangement: Arrangement) -> None:
        """Take over how a person has laid it out."""
        self.arrangement = arrangement.of_known(self.known)
        names = self.arrangement.columns or tuple(each.name for each in self.known.values() if each.standard)
        self.columns: list[Column[Row]] = [self.known[name] for name in names]
        frozen = max(0, min(self.arrangement.frozen, len(names) - 1))
        self.arrangement = replace(self.arrangement, frozen=frozen)
        self.filters = {name: values for name, values in self.filters.items() if name in self.known}
        self.choose()

    def load(self, rows: Iterable[Row], places: Collection[int] | None = None) -> None:
        """Hold these rows, and show only those at some places; all with None."""
        self.rows = list(rows)
        self.ids = [self._identity(each) for each in self.rows]
        self._place_of = {id_: place for place, id_ in enumerate(self.ids)}
        self._values.clear()
        self._kept = places
        self.choose()

    def renew(self, rows: Iterable[Row]) -> list[int]:
        """Hold changed rows in the place of those of the same identity, where they stand; returns their places."""
        places = []
        for row in rows:
            place = self._place_of.get(self._identity(row))
            if place is None:
                continue
            self.rows[place] = row
            for name, values in self._values.items():
                values[place] = self.known[name].value(row)
            places.append(place)
        return places

    _place_of: Mapping[str, int] = {}

    def values(self, name: str) -> list[Any]:
        """Return the values of a column, row by row."""
        found = self._values.get(name)
        if found is None:
            found = self._values[name] = list(map(self.known[name].value, self.rows))
        return found

    def narrow(self, places: Collection[int] | None) -> None:
        """Show only rows at some places; all with None."""
        self._kept = places
        self.choose()

    def allow(self, name: str, values: Collection[Any] | None) -> None:
        """Show only rows with some values of a column; all with None."""
        if values is None:
            self.filters.pop(name, None)
        else:
            self.filters[name] = frozenset(values)
        self.choose()

    def sort(self, name: str | None, *, down: bool = False) -> None:
        """Put the rows into the order of a column; into their own with None."""
        self.arrangement = replace(self.arrangement, sort=(name, down) if name is not None else None)
        self.choose()

    def group(self, name: str | None) -> None:
        """Let rows of one value stand together; none with None."""
        self.arrangement = replace(self.arrangement, group=name)
        self.folded.clear()
        self.choose()

    def fold(self, value: Any, *, folded: bool) -> None:
        """Hide or show the rows of a group."""
        (self.folded.add if folded else self.folded.discard)(value)
        self.choose()

    def choose(self) -> None:
        """Work out anew which rows are shown, and where."""
        shown = self._passing(None)
        sort, group = self.arrangement.sort, self.arrangement.group
        if sort is not None:
            shown = self._ordered(shown, *sort)
        self._groups = []
        if group is None:
            self._lines = list(shown)
        else:
            self._lines = self._grouped(shown, group)
        self._line_of = {self.ids[place]: line for line, place in enumerate(self._lines) if place >= 0}

    def _passing(self, besides: str | None) -> Sequence[int]:
        """Return the places of rows that are shown, whatever is asked of one column."""
        shown: Sequence[int] = range(len(self.rows)) if self._kept is None else sorted(self._kept)
        for name, allowed in self.filters.items():
            if name != besides:
                values = self.values(name)
                shown = [place for place in shown if values[place] in allowed]
        return shown

    def _ordered(self, places: Sequence[int], name: str, down: bool) -> list[int]:
        column, values = self.known[name], self.values(name)
        if column.row_key is not None:
            row_key, rows = column.row_key, self.rows
            return sorted(places, key=lambda place: row_key(rows[place]), reverse=down)
        # Columns repeat themselves: the key of each value is made once.
        keys = {value: column.order(value) for value in {values[place] for place in places} if value is not None}
        known = [place for place in places if values[place] is not None]
        known.sort(key=lambda place: keys[values[place]], reverse=down)
        return known + [place for place in places if values[place] is None]

    def _grouped(self, places: Sequence[int], name: str) -> list[int]:
        column, values = self.known[name], self.values(name)
        together: dict[Any, list[int]] = {}
        for place in places:
            together.setdefault(values[place], []).append(place)
        if column.row_key is not None:
            row_key, rows = column.row_key, self.rows
            order = sorted(together, key=lambda value: row_key(rows[together[value][0]]))
        else:
            order = sorted(together, key=lambda value: _LAST if value is None else (False, column.order(value)))
        lines: list[int] = []
        for value in order:
            self._groups.append(Group(value, column.said(value), len(together[value])))
            lines.append(-len(self._groups))
            lines += () if value in self.folded else together[value]
        return lines

    def __len__(self) -> int:
        """Return the number of lines."""
        return len(self._lines)

    def group_at(self, line: int) -> Group | None:
        """Return the group whose line it is; None for a row's."""
        place = self._lines[line] if 0 <= line < len(self._lines) else 0
        return self._groups[-place - 1] if place < 0 else None

    def row_at(self, line: int) -> Row | None:
        """Return the row of a line; None for a group's, and where there is no such line."""
        place = self._lines[line] if 0 <= line < len(self._lines) else -1
        return self.rows[place] if place >= 0 else None

    def id_at(self, line: int) -> str | None:
        """Return by what the row of a line is known."""
        place = self._lines[line] if 0 <= line < len(self._lines) else -1
        return self.ids[place] if place >= 0 else None

    def line_of(self, identity: str) -> int | None:
        """Return the line of a row; None where it is not shown."""
        return self._line_of.get(identity)

    def row_of(self, identity: str) -> Row | None:
        """Return a row by what it is known, be it shown or not."""
        place = self._place_of.get(identity)
        return self.rows[place] if place is not None else None

    def shown_ids(self) -> list[str]:
        """Return by what the shown rows are known, in order."""
        return [self.ids[place] for place in self._lines if place >= 0]

    def any_shown(self) -> bool:
        """Tell whether any row is shown; asked at each step in a list, so it counts none."""
        return any(place >= 0 for place in self._lines)

    def kept_ids(self) -> list[str]:
        """Return by what rows are known that are not narrowed or filtered away, be their group folded or not."""
        return [self.ids[place] for place in self._passing(None)]

    def counted(self, name: str) -> list[tuple[Any, int]]:
        """Return the values among which a filter of a column chooses, each with how many rows have it."""
        column, values = self.known[name], self.values(name)
        counts = Counter(values[place] for place in self._passing(name))
        if column.row_key is not None:
            first: dict[Any, Row] = {}
            for place in self._passing(name):
                first.setdefault(values[place], self.rows[place])
            row_key = column.row_key
            return sorted(counts.items(), key=lambda each: row_key(first[each[0]]))
        return sorted(counts.items(), key=lambda each: _LAST if each[0] is None else (False, column.order(each[0])))
