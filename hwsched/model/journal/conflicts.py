"""Two people at one fact: whether a change set overwrites what others changed and its maker had not seen.

An edit carries the newest change set that was known when what it is about was shown. At the end of its transaction the
journal is asked what others did since to the same facts: rolled back from the rows as they stand, it tells what was
seen, what was there, and what is wanted. Different facts of one row do not meet; equal values merge. So every verb is
guarded in one place, whatever it writes.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from sqlalchemy import Connection, select

from hwsched.language import phrase
from hwsched.model.bulk import among, rows_by_id
from hwsched.model.errors import Clash, ConflictError
from hwsched.model.journal.fact_words import FactWords
from hwsched.model.journal.facts import Path, differing, flat
from hwsched.model.journal.history import Entry, entries_after, entries_of
from hwsched.model.tables import CHANGE_ENTRY, CHANGE_REFERENCE, CHANGE_SET, JOURNALLED, LOCK_POINT, OPENING_FIT
from hwsched.model.time_zone import read_zone, told_in

Values = dict[str, Any]
Rows = dict[str, Values]
"""By identifier."""
Slot = tuple[str, Path]
"""Table, and the values of the columns that make the place."""

_SLOTS: Final[Mapping[str, tuple[str, ...]]] = {
    "chosen_part": ("opening_id", "lock_point_id", "role"),
    "placed_unit": ("opening_id", "lock_point_id"),
    "set_line": ("set_id", "role"),
    "route": ("opening_id", "supply_id"),
    "run": ("opening_id",),
}
"""Tables of which rows take one place in turn, so that a new row overwrites what a removed one said."""
_FOLLOWS: Final = frozenset({OPENING_FIT.name, LOCK_POINT.name})
"""Tables whose rows follow from others: what they follow from is compared."""
_ONE_FACT: Final = frozenset({"chosen_part", "placed_unit", "set_line"})
"""Tables of which a whole place is one fact, however it is written."""


@dataclass(frozen=True, slots=True)
class _Maker:
    who: str
    at: str


def check_unseen(connection: Connection, number: int, base: int, maker: tuple[str, str]) -> None:
    """Refuse a change set that overwrites what others changed and its maker had not seen.

    Parameters
    ----------
    connection : Connection
        In the transaction of the change set, its rows and entries written.
    number : int
        The change set.
    base : int
        The newest one that its maker had seen.
    maker : tuple of str
        Person and session that make it: what they did themselves they have seen.

    Raises
    ------
    ConflictError
        With every fact that clashes.
    """
    headers = select(CHANGE_SET.c.number, CHANGE_SET.c.who, CHANGE_SET.c.session, CHANGE_SET.c.at)
    since = connection.execute(headers.where(CHANGE_SET.c.number > base, CHANGE_SET.c.number < number)).all()
    # One's own steps from another window count as another's: what they changed was not seen in this one.
    theirs = [row for row in since if (row.who, row.session) != maker]
    if not theirs:
        return
    zone = read_zone(connection)
    others = {row.number: _Maker(row.who, told_in(zone, row.at)) for row in theirs}
    own = [entry for entry in entries_of(connection, number) if entry.entity not in _FOLLOWS]
    gone = {(entry.entity, entry.row_id): entry.before or {} for entry in own if entry.action == "delete"}
    search = _Search(connection, base, number, others, FactWords(connection, gone))
    clashes = [*search.rows(own), *search.slots(own)]
    if clashes:
        raise ConflictError(
            list(dict.fromkeys(clashes)), number - 1, frozenset(search.entities), frozenset(search.openings)
        )


class _Search:
    """What others did since, beside what one change set did."""

    def __init__(
        self, connection: Connection, base: int, number: int, others: Mapping[int, _Maker], words: FactWords
    ) -> None:
        self.connection, self.base, self.number, self.others = connection, base, number, others
        self.words = words
        self.entities: set[str] = set()
        self.openings: set[str] = set()

    def rows(self, own: Sequence[Entry]) -> Iterator[Clash]:
        """Compare rows fact by fact."""
        by_row: dict[tuple[str, str], list[Entry]] = {}
        for entry in own:
            if entry.entity not in _ONE_FACT and not (entry.entity in _SLOTS and entry.action != "update"):
                by_row.setdefault((entry.entity, entry.row_id), []).append(entry)
        later: dict[tuple[str, str], list[Entry]] = {}
        for entry in self._later(CHANGE_ENTRY.c.row_id, {row_id for _, row_id in by_row}):
            later.setdefault((entry.entity, entry.row_id), []).append(entry)
        met = {key: later[key] for key in by_row if key in later}
        now = self._rows(met)
        for (entity, row_id), since in met.items():
            row = now.get((entity, row_id))
            wanted: Rows = {} if row is None else {row_id: row}
            present = _rolled_back(wanted, by_row[entity, row_id])
            seen = _rolled_back(present, since)
            yield from self._facts(entity, since, seen.get(row_id), present.get(row_id), wanted.get(row_id))

    def slots(self, own: Sequence[Entry]) -> Iterator[Clash]:
        """Compare places that rows take in turn."""
        in_slots = [
            entry for entry in own if entry.entity in _ONE_FACT or (entry.entity in _SLOTS and entry.action != "update")
        ]
        now = self._rows({(entry.entity, entry.row_id): () for entry in in_slots})
        by_slot: dict[Slot, list[Entry]] = {}
        for entry in in_slots:
            row = entry.before if entry.action == "delete" else now.get((entry.entity, entry.row_id), entry.after)
            slot = _slot_of(entry.entity, row)
            if slot is not None:
                by_slot.setdefault(slot, []).append(entry)
        if not by_slot:
            return
        later = self._later_in_slots(by_slot)
        standing = self._standing(by_slot)
        for slot, entries in by_slot.items():
            entity, key = slot
            wanted = standing.get(slot, {})
            present = _rolled_back(wanted, entries, slot)
            ids = set(present) | {each.row_id for each in later if _slot_of(entity, _whole(each)) == slot}
            since = [each for each in later if each.entity == entity and each.row_id in ids]
            seen = _rolled_back(present, since, slot)
            theirs = [each for each in since if each.change_set in self.others]
            # Changed and changed back, or changed by both to the same: nobody's word is lost.
            if not theirs or _alike(seen, present) or _alike(present, wanted):
                continue
            said = [self.words.content(entity, rows.values()) for rows in (seen, present, wanted)]
            yield self._clash(self.words.slot(entity, key), said, theirs[-1], key[0])

    def _facts(
        self, entity: str, since: Sequence[Entry], seen: Values | None, present: Values | None, wanted: Values | None
    ) -> Iterator[Clash]:
        words = self.words
        by_others = [entry for entry in since if entry.change_set in self.others]
        if present is None or not by_others:
            return
        opening = present["id"] if entity == "opening" else present.get("opening_id")
        if seen is None and wanted is None:
            said = [phrase("not there"), phrase("there"), phrase("removed")]
            yield self._clash(words.row(entity, present), said, by_others[-1], opening)
            return
        before, now = _facts_of(seen), _facts_of(present)
        after = _facts_of(wanted)
        paths = [path for path in {**now, **before} if now.get(path) != before.get(path)]
        for path in paths if wanted is None else [path for path in paths if now.get(path) != after.get(path)]:
            touched = [entry for entry in by_others if _touches(entry, path)]
            if not touched:
                continue
            texts = [words.value(entity, path, values.get(path)) for values in (before, now, after)]
            if seen is None:
                texts[0] = phrase("not there")
            if wanted is None:
                texts[2] = phrase("removed")
            yield self._clash(words.fact(entity, path, present), texts, touched[-1], opening)

    def _clash(self, fact: str, said: Sequence[str], entry: Entry, opening: str | None) -> Clash:
        self.entities.add(entry.entity)
        if opening is not None and entry.entity != "set_line":
            self.openings.add(opening)
        maker = self.others[entry.change_set]
        seen, present, wanted = said
        return Clash(fact, seen, present, wanted, maker.who, maker.at, entry.change_set)

    def _later(self, column: Any, ids: Iterable[str]) -> list[Entry]:
        found = entries_after(self.connection, self.base, column, set(ids), before=self.number)
        return sorted(found, key=lambda entry: (entry.change_set, entry.sequence))

    def _later_in_slots(self, slots: Iterable[Slot]) -> list[Entry]:
        """Return the entries since of rows that took these places, those that are gone again included."""
        of_openings = {key[0] for entity, key in slots if _SLOTS[entity][0] == "opening_id"}
        of_sets = {key[0] for entity, key in slots if _SLOTS[entity][0] == "set_id"}
        found = self._later(CHANGE_ENTRY.c.opening_id, of_openings) if of_openings else []
        if of_sets:
            # Lines are no opening's: the sets that they stand on lead to them.
            query = select(CHANGE_REFERENCE.c.change_set).distinct().where(CHANGE_REFERENCE.c.change_set > self.base)
            steps = {row[0] for row in among(self.connection, query, CHANGE_REFERENCE.c.row_id, of_sets)}
            ids = {row_id for row_id, _ in self._lines_of(of_sets)}
            ids |= {entry.row_id for step in steps if step < self.number for entry in entries_of(self.connection, step)}
            found += self._later(CHANGE_ENTRY.c.row_id, ids)
        return [entry for entry in found if entry.entity in _SLOTS]

    def _lines_of(self, sets: Iterable[str]) -> Iterator[tuple[str, str]]:
        table = JOURNALLED["set_line"]
        yield from among(self.connection, select(table.c.id, table.c.set_id), table.c.set_id, list(sets))

    def _standing(self, slots: Iterable[Slot]) -> dict[Slot, Rows]:
        """Return the rows that stand in these places now."""
        wanted = set(slots)
        found: dict[Slot, Rows] = {}
        for entity in {entity for entity, _ in wanted}:
            table, first = JOURNALLED[entity], _SLOTS[entity][0]
            firsts = {key[0] for each, key in wanted if each == entity}
            for row in among(self.connection, select(table), table.c[first], firsts):
                values = dict(row._mapping)
                slot = _slot_of(entity, values)
                if slot is not None and slot in wanted:
                    found.setdefault(slot, {})[values["id"]] = values
        return found

    def _rows(self, keys: Iterable[tuple[str, str]]) -> dict[tuple[str, str], Values]:
        """Return rows as they stand now; those that are gone are left out."""
        by_entity: dict[str, list[str]] = {}
        for entity, row_id in keys:
            by_entity.setdefault(entity, []).append(row_id)
        found: dict[tuple[str, str], Values] = {}
        for entity, ids in by_entity.items():
            table = JOURNALLED[entity]
            names = [column.name for column in table.columns]
            for row_id, row in rows_by_id(self.connection, table, list(table.columns), ids).items():
                found[entity, row_id] = dict(zip(names, row[1:], strict=True))
        return found


def _rolled_back(rows: Rows, entries: Sequence[Entry], slot: Slot | None = None) -> Rows:
    """Return rows as they were before some entries; of a place, only what stood in it."""
    found = {row_id: dict(row) for row_id, row in rows.items()}
    for entry in reversed(entries):
        if entry.action == "insert":
            found.pop(entry.row_id, None)
        elif entry.action == "delete":
            if slot is None or _slot_of(entry.entity, entry.before) == slot:
                found[entry.row_id] = dict(entry.before or {})
        elif entry.row_id in found:
            found[entry.row_id].update(entry.before or {})
    return found


def _touches(entry: Entry, path: Path) -> bool:
    return entry.action != "update" or path in differing(entry.before, entry.after)


def _facts_of(row: Mapping[str, Any] | None) -> dict[Path, Any]:
    return {path: value for path, value in flat(row).items() if path[0] not in ("id", "version")}


def _whole(entry: Entry) -> Mapping[str, Any] | None:
    return entry.before if entry.action == "delete" else entry.after if entry.action == "insert" else None


def _slot_of(entity: str, row: Mapping[str, Any] | None) -> Slot | None:
    if row is None:
        return None
    key = tuple(row.get(column) for column in _SLOTS[entity])
    # A run that ends at a junction feeds no opening by itself.
    return (entity, tuple(map(str, key))) if None not in key else None


def _alike(first: Rows, second: Rows) -> bool:
    """Tell whether the same stands in a place, be it in other rows."""
    return sorted(map(_said, first.values())) == sorted(map(_said, second.values()))


def _said(row: Mapping[str, Any]) -> str:
    return repr(sorted((k, v) for k, v in row.items() if k not in ("id", "version") and v is not None))
