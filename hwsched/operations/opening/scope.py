"""The openings that a person means by building, level and mark, as the project has them.

Marks are typed as one, as a list with commas, as a pattern as shells have it (``M1*``, ``M1[0-4]?``) or as a range in
the order in which people count (``M100..M120``). What is not there is refused, with the names that are nearly the same;
what is there in other letters, capital or small, is taken, and that is said. What is asked in the language of
`hwsched.query` stands in `asked_openings`.
"""

import fnmatch
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Any, Final, NamedTuple

from sqlalchemy import Column, Connection, Select, select

from hwsched.model.bulk import among
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.tables import BUILDING, IN_USE, LEVEL, OPENING_TABLE
from hwsched.telling.natural import natural, upward
from hwsched.telling.nearest import nearest

_PATTERN: Final = frozenset("*?[")
_RANGE: Final = ".."
_NAMED: Final = 5
"""Names that a refusal lists; of the first of them the nearest are looked for."""


@dataclass(frozen=True, slots=True)
class Scope:
    """What a verb works on. What is left empty leaves nothing out; the rest narrows, each what the others leave."""

    buildings: tuple[str, ...] = ()
    """Any of these."""
    levels: tuple[str, ...] = ()
    """Any of these."""
    marks: tuple[str, ...] = ()
    """As typed: marks, lists, patterns, ranges."""
    listed: tuple[str, ...] | None = None
    """Marks one by one, as a file lists them: nothing in them is a comma or a pattern. None: no file was named."""
    where: str = ""
    """A query."""

    @property
    def everything(self) -> bool:
        """Whether it leaves nothing out."""
        return not (self.buildings or self.levels or self.marks or self.listed is not None or self.where.strip())


class Row(NamedTuple):
    """An opening with its place, and further columns that were asked for."""

    id: str
    mark: str
    building: str | None
    level: str | None
    upward: tuple[bool, float, int]
    """Where its level comes in the building."""
    more: Sequence[Any] = ()


def opening_rows(
    connection: Connection, columns: Sequence[Column[Any]] = (), ids: Collection[str] | None = None
) -> list[Row]:
    """Return openings with the values of some columns, in no order."""
    # There are few levels: joined in the data base, each would be looked up again for every opening.
    levels = {row[0]: (row[1], row[2], upward(row[3], row[4])) for row in connection.execute(_LEVELS)}
    query = _OPENINGS.add_columns(*columns) if columns else _OPENINGS
    found = []
    for row in among(connection, query, OPENING_TABLE.c.id, ids):
        building, level, above = levels.get(row[2], _NOWHERE)
        found.append(Row(row[0], row[1], building, level, above, row[3:] if columns else ()))
    return found


_OPENINGS: Final[Select[Any]] = select(OPENING_TABLE.c.id, OPENING_TABLE.c.mark, OPENING_TABLE.c.level_id).where(IN_USE)
_LEVELS: Final[Select[Any]] = select(
    LEVEL.c.id, BUILDING.c.name, LEVEL.c.name, LEVEL.c.height_m, LEVEL.c.sort
).outerjoin(BUILDING, LEVEL.c.building_id == BUILDING.c.id)
_NOWHERE: Final = (None, None, upward(None, None))


def in_order(rows: Collection[Row]) -> list[Row]:
    """Put openings into the order of building, level and mark, as people count."""
    return sorted(rows, key=lambda row: (row.building or "", row.upward, row.level or "", natural(row.mark)))


def narrowed(rows: list[Row], scope: Scope, notes: list[str]) -> list[Row]:
    """Return the openings of the buildings, levels and marks of a scope.

    Parameters
    ----------
    rows : list of Row
        All openings of the project: against them is told what is not there.
    scope : Scope
        Its query is not looked at.
    notes : list of str
        Gets what is to be said: names that were found in other letters.

    Raises
    ------
    MissingRowError, ValueRefusedError
        For what is not there, or cannot be read.
    """
    kept = rows
    if scope.buildings:
        names = _places(scope.buildings, {row.building for row in rows} - {None}, "building", notes)
        kept = [row for row in kept if row.building in names]
    if scope.levels:
        names = _places(scope.levels, {row.level for row in rows} - {None}, "level", notes)
        kept = [row for row in kept if row.level in names]
    if scope.marks or scope.listed is not None:
        meant = marks_meant(scope.marks, scope.listed or (), [row.mark for row in rows], notes)
        kept = [row for row in kept if row.mark in meant]
    return kept


def marks_meant(texts: Sequence[str], listed: Sequence[str], marks: Collection[str], notes: list[str]) -> set[str]:
    """Return the marks that are meant by what was typed.

    Parameters
    ----------
    texts : sequence of str
        Marks, lists, patterns, ranges.
    listed : sequence of str
        Marks alone.
    marks : collection of str
        Those of the project.
    notes : list of str
        Gets what was found in other letters.

    Examples
    --------
    >>> marks = ["M2", "M10", "M11", "A,1"]
    >>> sorted(marks_meant(["A,1", "m2", "M1?"], [], marks, []))
    ['A,1', 'M10', 'M11', 'M2']
    >>> sorted(marks_meant(["M2..M10"], [], marks, []))
    ['M10', 'M2']
    """
    known = _Known(marks)
    found: set[str] = set()
    missing: list[str] = []
    for text in texts:
        # A mark may hold what else divides a list.
        if text.strip() in known.names:
            found.add(text.strip())
            continue
        for piece in map(str.strip, text.split(",")):
            if not piece:
                raise ValueRefusedError("mark", f"there is nothing between two commas, or before one, in '{text}'")
            some = known.meant(piece, notes) or _like(piece, marks)
            found |= some
            missing += [] if some else [piece]
    for mark in listed:
        one = known.meant(mark, notes)
        found |= one
        missing += [] if one else [mark]
    if missing:
        raise MissingRowError(missing_words(missing, marks))
    return found


def missing_words(missing: Sequence[str], marks: Collection[str]) -> str:
    """Say which marks are not there, and which are nearly the same.

    Examples
    --------
    >>> missing_words(["M1O1"], ["M101", "A1"])
    'no opening has the mark M1O1; nearest: M101'
    """
    named = ", ".join(missing[:_NAMED]) + (f" and {len(missing) - _NAMED} more" if len(missing) > _NAMED else "")
    near = dict.fromkeys(name for mark in missing[:_NAMED] for name in nearest(mark, marks, 1))
    return f"no opening has the mark {named}" + (f"; nearest: {', '.join(near)}" if near else "")


class _Known:
    """Names of a project, found as they are written or in other letters."""

    def __init__(self, names: Collection[str]) -> None:
        self.names = frozenset(names)
        self._folded: dict[str, list[str]] | None = None

    def meant(self, name: str, notes: list[str]) -> set[str]:
        """Return the one that is meant, or none; raises ValueRefusedError where two could be."""
        if name in self.names:
            return {name}
        if self._folded is None:
            self._folded = {}
            for each in sorted(self.names):
                self._folded.setdefault(each.casefold(), []).append(each)
        found = self._folded.get(name.casefold(), [])
        if len(found) > 1:
            raise ValueRefusedError(name, f"could be any of {', '.join(found)}; type it as it is written")
        if found and (note := f"'{name}' is taken for {found[0]}") not in notes:
            notes.append(note)
        return set(found)


def _like(piece: str, marks: Collection[str]) -> set[str]:
    """Return the marks of a pattern or a range; none where there is none like it."""
    if _PATTERN & set(piece):
        pattern = piece.casefold()
        return {mark for mark in marks if fnmatch.fnmatchcase(mark.casefold(), pattern)}
    low, between, high = (each.strip().casefold() for each in piece.partition(_RANGE))
    if not (low and between and high):
        return set()
    first, last = natural(low), natural(high)
    if last < first:
        raise ValueRefusedError("mark", f"nothing lies in {piece}: the lower mark goes first")
    return {mark for mark in marks if first <= natural(mark.casefold()) <= last}


def _places(texts: Sequence[str], names: Collection[Any], what: str, notes: list[str]) -> set[str]:
    """Return the buildings or levels that are meant."""
    known = _Known(names)
    found: set[str] = set()
    for text in texts:
        pieces: Sequence[str] = [text] if known.meant(text, []) else [each.strip() for each in text.split(",")]
        for piece in pieces:
            some = known.meant(piece, notes)
            if not some:
                near = nearest(piece, names)
                where = f"stands in {piece}" if what == "building" else f"stands on a level {piece}"
                raise MissingRowError(f"no opening {where}" + (f"; nearest: {', '.join(near)}" if near else ""))
            found |= some
    return found
