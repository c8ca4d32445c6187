"""Whether tables and journal hold what the change sets left there: what was changed past them, and taking it as it is.

Digests and chain find accidents and other programs, not a forger. Nothing is refused here: what was found is told, and
somebody may say that it shall stand. What a file declares is looked at in `sound_schema`, before all this.
"""

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from hashlib import sha256
from typing import Any, Final, get_args

import msgspec
from sqlalchemy import Connection, func, select

from hwsched.model import blobs
from hwsched.model.errors import DamagedProjectError
from hwsched.model.frozen import named_in, read_frozen
from hwsched.model.journal.chain import altered_sets, broken_links
from hwsched.model.journal.digests import Held, Sum, digests_of, held_sums, read_rows
from hwsched.model.journal.entry_writing import known, row_bytes
from hwsched.model.journal.journal import Change
from hwsched.model.tables import (
    BLANK,
    BLOB,
    CHANGE_ENTRY,
    CHANGE_SET,
    FACTS_READ,
    FIT_CONTENT,
    FROZEN,
    JOURNALLED,
    REVISION,
)
from hwsched.values.earlier_words import in_present_words
from hwsched.values.fit import Status

MOST: Final = 10_000
"""Up to so many rows and journal entries together are compared at each opening: a tenth of a second."""
_NAMED: Final = 5
_LABELS: Final = ("mark", "number", "name", "letter", "rule")


@dataclass(frozen=True, slots=True)
class RowDifference:
    """One row that is not as the journal left it."""

    entity: str
    row_id: str
    label: str
    """What people know it by, such as an opening's mark; its identifier where there is nothing else."""
    before: Mapping[str, Any] | None
    """What the journal says, of a changed row the columns that differ only; None: the row was put in."""
    now: Mapping[str, Any] | None
    """What is there; None: the row was taken out."""
    row: Mapping[str, Any]
    """The whole row, as it is or as it was."""

    def __str__(self) -> str:
        if self.before is None:
            return f"{self.label} was put in"
        if self.now is None:
            return f"{self.label} was taken out"
        names = sorted(self.before.keys() | self.now.keys())
        said = [f"{name} {_shown(self.before.get(name))} -> {_shown(self.now.get(name))}" for name in names]
        return f"{self.label}: {', '.join(said)}"


@dataclass(frozen=True, slots=True)
class TableDifference:
    """One table that is not as the journal left it."""

    entity: str
    since: int
    """The change set up to which it was as it should be."""
    rows_before: int
    rows_now: int
    rows: tuple[RowDifference, ...] = ()
    """As far as the journal tells; none where it was not asked."""
    all_told: bool = False
    """Whether those rows are all that differs."""

    def __str__(self) -> str:
        counted = "" if self.rows_before == self.rows_now else f", {self.rows_before} rows then and {self.rows_now} now"
        said = "; ".join(map(str, self.rows[:_NAMED]))
        more = f"; and {len(self.rows) - _NAMED} rows more" if len(self.rows) > _NAMED else ""
        told = f": {said}{more}" if said else ""
        rest = "" if self.all_told or not self.rows else "; what else differs the journal does not tell"
        return f"table {self.entity}, since change set {self.since}{counted}{told}{rest}"


@dataclass(frozen=True, slots=True)
class Foreign:
    """What was changed past the journal."""

    tables: tuple[TableDifference, ...] = ()
    sets: Mapping[int, str] = field(default_factory=dict)
    """Change sets of which the chain does not hold, with what is wrong there."""
    contents: tuple[str, ...] = ()
    """Contents known by their hash that do not have it any more, or are gone: table, key and what is wrong."""

    def __bool__(self) -> bool:
        return bool(self.tables or self.sets or self.contents)

    def sentences(self) -> list[str]:
        """Return what was found, for people, a sentence each."""
        found = [str(each) for each in self.tables]
        found += [f"change set {number} of the journal: {wrong}" for number, wrong in self.sets.items()]
        return found + list(self.contents)


def look(connection: Connection) -> Foreign:
    """Compare as much as an opening has time for: chain and tables of a small project, of a large one less.

    Up to `MOST` rows and entries tables and journal are compared whole; above that rows are counted, and of the chain
    it is seen whether its links hold. `verify` compares all.
    """
    held = held_sums(connection)
    entries = connection.execute(select(func.sum(CHANGE_SET.c.entries))).scalar() or 0
    if entries + sum(each.rows for each in held.values()) > MOST:
        tables = [
            TableDifference(name, each.change_set, each.rows, count)
            for name, each in _all(held)
            if (count := _count(connection, name)) != each.rows
        ]
        return Foreign(tuple(tables), broken_links(connection))
    return Foreign(tuple(_differing(connection, held)), _sets(connection), tuple(_altered_texts(connection)))


def verify(connection: Connection) -> Foreign:
    """Compare all: tables with their digests, what differs row by row with the journal, the chain, contents by hash."""
    contents = (*_altered_texts(connection), *_altered_bytes(connection))
    return Foreign(tuple(_differing(connection, held_sums(connection))), _sets(connection), contents)


def _sets(connection: Connection) -> dict[int, str]:
    return dict(sorted({**altered_sets(connection), **broken_links(connection)}.items()))


def _all(held: Mapping[str, Held]) -> Iterable[tuple[str, Held]]:
    return ((name, held.get(name) or Held()) for name in JOURNALLED)


def _count(connection: Connection, entity: str) -> int:
    return int(connection.exec_driver_sql(f'SELECT count(*) FROM "{entity}"').scalar() or 0)  # noqa: S608


def _differing(connection: Connection, held: Mapping[str, Held]) -> Iterable[TableDifference]:
    for entity, each in _all(held):
        there = {row["id"]: row for row in read_rows(connection, entity)}
        now = _sum(entity, there.values())
        if now.hex == each.digest and now.rows == each.rows:
            continue
        told, whole = told_rows(connection, entity)
        rows = tuple(_row_differences(entity, told, whole, there))
        yield TableDifference(
            entity, each.change_set, each.rows, now.rows, rows, _explained(each, now, rows, told, there)
        )


def _sum(entity: str, rows: Iterable[Mapping[str, Any]]) -> Sum:
    found = Sum()
    found.came(digests_of(row_bytes(entity, row) for row in rows))
    return found


def told_rows(connection: Connection, entity: str) -> tuple[dict[str, dict[str, Any]], set[str]]:
    """Return rows of a table as the journal leaves them, and which of them it tells whole."""
    columns = [CHANGE_ENTRY.c[name] for name in ("row_id", "action", "after")]
    query = select(*columns).where(CHANGE_ENTRY.c.entity == entity)
    rows: dict[str, dict[str, Any]] = {}
    whole: set[str] = set()
    # A migration may have added columns since, which hold what a new row holds.
    blank = {name: value for name, value in BLANK[entity].items() if value not in (None, {})}
    for row_id, action, after in connection.execute(query.order_by(CHANGE_ENTRY.c.change_set, CHANGE_ENTRY.c.sequence)):
        if action == "delete":
            rows.pop(row_id, None)
            whole.discard(row_id)
        elif action == "insert":
            rows[row_id] = {**blank, **_values(after)}
            whole.add(row_id)
        else:
            row = rows.setdefault(row_id, {"id": row_id})
            row.update(_values(after))
            if row_id in whole:
                row["version"] += 1
    return rows, whole


def _values(text: str | None) -> dict[str, Any]:
    try:
        found = json.loads(text or "{}")
    except (ValueError, RecursionError):
        # An entry that somebody altered is found by the chain.
        return {}
    return found if isinstance(found, dict) else {}


def _row_differences(
    entity: str, told: Mapping[str, dict[str, Any]], whole: set[str], there: Mapping[str, dict[str, Any]]
) -> Iterable[RowDifference]:
    for row_id in sorted(told.keys() | there.keys()):
        before, now = told.get(row_id), there.get(row_id)
        if before is None and now is not None:
            # Of rows that were there before the journal it tells what was changed only.
            if entity != "project":
                yield RowDifference(entity, row_id, _label(now), None, now, now)
        elif now is None and before is not None:
            yield RowDifference(entity, row_id, _label(before), known(before), None, before)
        elif before is not None and now is not None:
            names = [*before, *now] if row_id in whole else list(before)
            names = [name for name in dict.fromkeys(names) if _given(before.get(name)) != _given(now.get(name))]
            if names:
                was, is_ = ({name: row.get(name) for name in names} for row in (before, now))
                yield RowDifference(entity, row_id, _label(now), was, is_, now)


def _given(value: Any) -> Any:
    return None if value == {} else value


def _explained(
    held: Held,
    now: Sum,
    rows: Sequence[RowDifference],
    told: Mapping[str, dict[str, Any]],
    there: Mapping[str, dict[str, Any]],
) -> bool:
    """Tell whether the digest would be right if those rows were as the journal says."""
    entity = rows[0].entity if rows else ""
    mended = Sum()
    mended.total, mended.rows = now.total, now.rows
    for row in rows:
        if row.now is not None:
            mended.went(digests_of([row_bytes(entity, there[row.row_id])]))
        if row.before is not None:
            mended.came(digests_of([row_bytes(entity, known(told[row.row_id]))]))
    return mended.hex == held.digest and mended.rows == held.rows


def _label(row: Mapping[str, Any]) -> str:
    return next((str(row[name]) for name in _LABELS if row.get(name) is not None), str(row["id"]))


def _shown(value: Any) -> str:
    text = "nothing" if value is None else str(value)
    return text if len(text) <= 40 else f"{text[:40]}..."


def _altered_texts(connection: Connection) -> Iterable[str]:
    for key, status, content in connection.execute(
        select(FIT_CONTENT.c.key, FIT_CONTENT.c.status, FIT_CONTENT.c.content)
    ):
        if sha256(content.encode()).hexdigest() != key or _status(content) != status:
            yield f"table fit_content, row {key}: {_ALTERED}"
    for key, names in connection.execute(select(FACTS_READ.c.key, FACTS_READ.c.names)):
        if sha256(names.encode()).hexdigest()[: len(key)] != key:
            yield f"table facts_read, row {key}: {_ALTERED}"


_STATUSES: Final = frozenset(get_args(Status))


class _Told(msgspec.Struct):
    status: str = ""


_told: Final = msgspec.json.Decoder(_Told).decode


def _status(content: str) -> Any:
    """Return the status that a stored fit tells; the rest of it is passed over, unless it is of an earlier version."""
    try:
        status = _told(content).status
    except msgspec.DecodeError:
        status = ""
    return status if status in _STATUSES else _values(in_present_words(content)).get("status")


def _altered_bytes(connection: Connection) -> Iterable[str]:
    files: set[str] = set()
    for key, content in connection.execute(select(BLOB.c.hash, BLOB.c.content)):
        files.add(key)
        if blobs.hash_of(bytes(content)) != key:
            yield f"table blob, row {key}: {_ALTERED}"
    rows = connection.execute(select(FROZEN.c.hash, FROZEN.c.kind)).all()
    contents, wanted, named = {key for key, _ in rows}, set[str](), set[str]()
    for key, kind in rows:
        try:
            further, of_files = named_in(kind, read_frozen(connection, [key])[key])
        except DamagedProjectError:
            yield f"table frozen, row {key}: {_ALTERED}"
        else:
            wanted |= further
            named |= of_files
    roots = set(connection.execute(select(REVISION.c.root)).scalars())
    yield from (f"table frozen, row {key}: {_GONE}" for key in sorted((wanted | roots) - contents))
    yield from (f"table blob, row {key}: {_GONE}" for key in sorted(named - files))


_ALTERED: Final = "its content is not what was taken in"
_GONE: Final = "it is gone, and a revision names it"


def accept(change: Change, found: Foreign) -> None:
    """Take what was changed past the journal as it is: told by the change set, which an undo takes back.

    Parameters
    ----------
    change : Change
        In which it is told; its summary is set here.
    found : Foreign
        As `verify` found it in the same transaction.
    """
    for table in found.tables:
        change.tell(table.entity, [(row.row, row.before, row.now) for row in table.rows])
    counted = [f"table {each.entity} ({len(each.rows) or 'unknown'} rows)" for each in found.tables]
    counted += [f"change set {number}" for number in found.sets]
    counted += list(found.contents)
    more = f" and {len(counted) - _NAMED} more" if len(counted) > _NAMED else ""
    change.summary = f"Take as it is what was changed past the journal: {', '.join(counted[:_NAMED])}{more}"
    change.seal()
