"""The journal as a chain: each change set holds a hash of itself, and one that goes on from the set before it.

The own hash is over what a set says and did, without its number: a set that comes from another copy of the project
keeps it. The chained hash is over the place in this database: the set before, the number, what was seen, what is taken
back. Here belong making and checking the hashes; digests of tables have `digests`.
"""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from itertools import chain, groupby
from operator import attrgetter, itemgetter
from typing import Any, Final

from sqlalchemy import Connection, RowMapping, bindparam, func, select, update

from hwsched.model.bulk import execute_many
from hwsched.model.tables import CHANGE_ENTRY, CHANGE_SET, CHANGE_TARGET, TABLE_DIGEST

Header = Mapping[str, Any] | RowMapping
"""Of a change set, by column."""

_SAID: Final = ("uuid", "at", "who", "device", "session", "verb", "summary", "kind", "entries")
_COLUMNS: Final = ("row_id", "opening_id", "origin")


class SetHash:
    """The hash of a change set's entries in the making: each column for itself, so that many rows are quick."""

    __slots__ = ("_hashes",)

    def __init__(self) -> None:
        self._hashes = {name: sha256() for name in ("entity", "action", *_COLUMNS, "values")}

    def add(self, entries: Sequence[Mapping[str, Any]], digests: bytes) -> None:
        """Go on with entries of one table and one action.

        Parameters
        ----------
        entries : sequence of mapping
            As they are written.
        digests : bytes
            Of each entry's values, one behind the other, see `entry_digest`.
        """
        columns = [list(map(itemgetter(name), entries)) for name in _COLUMNS]
        self.go_on(entries[0]["entity"], entries[0]["action"], columns, digests)

    def go_on(self, entity: str, action: str, columns: Sequence[Sequence[Any]], digests: bytes) -> None:
        """Go on with entries of one table and one action, told as columns.

        Parameters
        ----------
        entity, action : str
            Of all of them.
        columns : sequence of sequence
            Of each entry the row, its opening and where the values came from: texts, or None.
        digests : bytes
            As `add`.
        """
        hashes = self._hashes
        hashes["entity"].update(f"{entity}\n".encode() * len(columns[0]))
        hashes["action"].update(f"{action}\n".encode() * len(columns[0]))
        for name, held in zip(_COLUMNS, columns, strict=True):
            # Where nothing is unknown the texts are taken as they are: it is asked for forty thousand entries.
            told = [value or "" for value in held] if None in held else held
            hashes[name].update("\n".join(told).encode())
            hashes[name].update(b"\n")
        hashes["values"].update(digests)

    def own(self, header: Header) -> str:
        """Return the own hash of the set, whose entries were added all."""
        whole = sha256(json.dumps([header[name] for name in _SAID], ensure_ascii=False).encode())
        for each in self._hashes.values():
            whole.update(each.digest())
        return whole.hexdigest()


def entry_digest(before: str | None, after: str | None) -> bytes:
    """Return the digest of an entry's values. Of a row that came or went it is the row's own."""
    return sha256(((before or "") + (after or "")).encode()).digest()


def chained(before: str, header: Header, own: str, further: Sequence[int] = ()) -> str:
    """Return the chained hash of a set behind the one with the chained hash ``before``.

    Parameters
    ----------
    before : str
        Chained hash of the set before it; empty where there is none.
    header : mapping
        Of the set.
    own : str
        Its own hash.
    further : sequence of int, optional
        Edits of which it speaks beside its target, ascending.
    """
    held = [before, header["number"], header["base"], header["target"], own, *further]
    return sha256(json.dumps(held).encode()).hexdigest()


@dataclass(frozen=True, slots=True)
class LastSet:
    """The newest change set."""

    number: int
    at: str
    chain_hash: str


_LAST: Final = (
    select(CHANGE_SET.c.number, CHANGE_SET.c.at, CHANGE_SET.c.chain_hash).order_by(CHANGE_SET.c.number.desc()).limit(1)
)


def last_set(connection: Connection) -> LastSet | None:
    """Return the newest change set; None in a new project."""
    row = connection.execute(_LAST).first()
    return None if row is None else LastSet(row.number, row.at, row.chain_hash or "")


def broken_links(connection: Connection) -> dict[int, str]:
    """Tell where the chain does not hold by what the headers say; entries are not looked at.

    Returns
    -------
    dict of int to str
        Number of the change set to what is wrong there.
    """
    columns = [CHANGE_SET.c[name] for name in ("number", "base", "target", "own_hash", "chain_hash")]
    found: dict[int, str] = {}
    further = _further(connection)
    before, last = "", 0
    for row in connection.execute(select(*columns).order_by(CHANGE_SET.c.number)).mappings():
        if row["number"] != last + 1:
            found[row["number"]] = f"change set {last + 1} is missing before it"
        elif row["chain_hash"] != chained(before, row, row["own_hash"] or "", further.get(row["number"], ())):
            found[row["number"]] = "it does not go on from the one before"
        # One break is told once: what follows goes on from what stands there.
        before, last = row["chain_hash"] or "", row["number"]
    # A digest is carried on by each set that touches its table.
    written = connection.execute(select(func.max(TABLE_DIGEST.c.change_set))).scalar() or 0
    if written > last:
        found[last] = f"change sets up to {written} were written after it and are gone"
    return found


def altered_sets(connection: Connection) -> dict[int, str]:
    """Tell which change sets do not say any more what they said, header and entries looked at whole."""
    found = {}
    for header, own in _own_hashes(connection):
        if header["own_hash"] != own:
            found[int(header["number"])] = "it does not say what it said when it was written"
    return found


def seal_chain(connection: Connection) -> None:
    """Hash all change sets as they stand: after an upgrade, when somebody takes them as they are."""
    rows = []
    further = _further(connection)
    before = ""
    for header, own in _own_hashes(connection):
        before = chained(before, header, own, further.get(header["number"], ()))
        rows.append({"here": header["number"], "own": own, "chain": before})
    statement = update(CHANGE_SET).where(CHANGE_SET.c.number == bindparam("here"))
    execute_many(connection, statement.values(own_hash=bindparam("own"), chain_hash=bindparam("chain")), rows)


def _further(connection: Connection) -> dict[int, list[int]]:
    """Return by undo or redo the edits of which it speaks beside its target, ascending."""
    found: dict[int, list[int]] = {}
    for number, target in connection.execute(select(CHANGE_TARGET).order_by(*CHANGE_TARGET.primary_key.columns)):
        found.setdefault(number, []).append(target)
    return found


def _own_hashes(connection: Connection) -> Iterator[tuple[Header, str]]:
    headers = connection.execute(select(CHANGE_SET).order_by(CHANGE_SET.c.number)).mappings().all()
    names = ("change_set", "entity", "action", *_COLUMNS, "before", "after")
    query = select(*(CHANGE_ENTRY.c[name] for name in names)).order_by(
        CHANGE_ENTRY.c.change_set, CHANGE_ENTRY.c.sequence
    )
    entries = {
        number: _hash_of(list(group))
        for number, group in groupby(
            chain.from_iterable(connection.execute(query).partitions(1000)), key=attrgetter("change_set")
        )
    }
    for header in headers:
        yield header, entries.get(header["number"], SetHash()).own(header)


def _hash_of(entries: Sequence[Any]) -> SetHash:
    found = SetHash()
    for _, group in groupby(entries, key=attrgetter("entity", "action")):
        run = list(group)
        found.add([row._mapping for row in run], b"".join([entry_digest(row.before, row.after) for row in run]))
    return found
