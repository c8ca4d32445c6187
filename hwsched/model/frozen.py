"""Frozen contents by their hash: held once, shared between revisions, read back only whole; and the list of revisions.

What the contents are is for whoever freezes and reads them.
"""

import hashlib
import zlib
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from datetime import tzinfo
from typing import Any, Final

import msgspec
from sqlalchemy import Connection, insert, select

from hwsched.model.bulk import among, execute_many
from hwsched.model.errors import DamagedProjectError, MissingRowError
from hwsched.model.tables import FROZEN, REVISION
from hwsched.model.time_zone import read_zone, told_in

_LONG: Final = 2000
"""Bytes from which on compressing is worth its time: fits and findings shrink to a quarter."""
_ZLIB: Final = b"\x78"
"""How what zlib compresses begins (RFC 1950: method 8, window of 32 K)."""

Contents = Mapping[str, tuple[str, bytes]]
"""Hash to kind and content, JSON in UTF-8."""


@dataclass(frozen=True, slots=True)
class RevisionInfo:
    """A state of the project that was frozen under a letter."""

    letter: str
    at: str
    """When, ISO 8601 in the project's zone."""
    person: str
    purpose: str
    """What it is for; empty where nobody said."""
    scope: Mapping[str, Any]
    """What of the project; empty: all of it."""
    root: str
    """Hash of the content from which all others are found."""


def hash_of(kind: str, content: bytes) -> str:
    """Return the SHA-256 under which a content is held, as 64 hexadecimal digits."""
    return hashlib.sha256(b"%s\n%s" % (kind.encode(), content)).hexdigest()


def hold_frozen(connection: Connection, contents: Contents) -> int:
    """Hold contents, those that are held already left as they are; returns how many are new.

    Parameters
    ----------
    connection : Connection
        In a writing transaction.
    contents : mapping
        By their hash.
    """
    held = {row[0] for row in among(connection, select(FROZEN.c.hash), FROZEN.c.hash, list(contents))}
    fresh = [
        {"hash": key, "kind": kind, "content": _held(content)}
        for key, (kind, content) in contents.items()
        if key not in held
    ]
    execute_many(connection, insert(FROZEN), fresh)
    return len(fresh)


def read_frozen(connection: Connection, keys: Collection[str]) -> dict[str, bytes]:
    """Return contents by their hash.

    Raises
    ------
    DamagedProjectError
        Where one is gone, or is not what was frozen: the project was changed from outside.
    """
    wanted = list(dict.fromkeys(keys))
    query = select(FROZEN.c.hash, FROZEN.c.kind, FROZEN.c.content)
    found: dict[str, bytes] = {}
    for key, kind, held in among(connection, query, FROZEN.c.hash, wanted):
        try:
            content = _content(bytes(held))
        except zlib.error:
            content = b""
        if hash_of(kind, content) != key:
            raise DamagedProjectError(f"the project is damaged: the frozen {kind} {key} is not what was frozen")
        found[key] = content
    if missing := next((key for key in wanted if key not in found), None):
        raise DamagedProjectError(f"the project is damaged: it has lost the frozen content {missing}")
    return found


def named_in(kind: str, content: bytes) -> tuple[frozenset[str], frozenset[str]]:
    """Return the hashes of contents and of files that a frozen content names: all of them stay for as long as it does.

    Parameters
    ----------
    kind, content
        As they are held; see `hwsched.operations.release.frozen_record`.
    """
    if kind not in _NAMING:
        return _NONE, _NONE
    told = msgspec.json.decode(content)
    if kind == "revision":
        alone = (told.get(name) for name in _OF_ROOT)
        return frozenset(filter(None, (*alone, *told["openings"].values()))), _NONE
    if kind == "chunk":
        return frozenset(key for _, key in told.values()), _NONE
    if kind == "opening":
        fits = (point["fit"] for point in told["points"] if point.get("fit"))
        return frozenset((*fits, told["findings"])), frozenset(file["hash"] for file in told.get("files", ()))
    if kind == "files":
        return _NONE, frozenset(file["hash"] for file in told)
    if kind == "office":
        return _NONE, frozenset(told["files"].values())
    return frozenset(told["parts" if kind == "catalogue" else "supplies"].values()), _NONE


_NAMING: Final = frozenset({"revision", "chunk", "opening", "files", "office", "catalogue", "power"})
_OF_ROOT: Final = ("engine", "project", "catalogue", "rules", "power", "files", "office")
_NONE: Final[frozenset[str]] = frozenset()


def read_revisions(connection: Connection) -> list[RevisionInfo]:
    """Return all revisions, the oldest first."""
    query = select(REVISION)
    zone = read_zone(connection)
    found = [_info(row, zone) for row in connection.execute(query)]
    return sorted(found, key=lambda each: (len(each.letter), each.letter))


def revision_with(connection: Connection, letter: str) -> RevisionInfo:
    """Return the revision of a letter; raises MissingRowError, which says which there are."""
    revisions = read_revisions(connection)
    found = next((each for each in revisions if each.letter == letter.strip().upper()), None)
    if found is None:
        there = ", ".join(_letters(revisions)) or "none yet"
        raise MissingRowError(f"there is no revision {letter}; there are: {there}")
    return found


def _held(content: bytes) -> bytes:
    return zlib.compress(content, 1) if len(content) > _LONG else content


def _content(held: bytes) -> bytes:
    # No JSON begins like that.
    return zlib.decompress(held) if held.startswith(_ZLIB) else held


def _letters(revisions: Iterable[RevisionInfo]) -> list[str]:
    return [each.letter for each in revisions]


def _info(row: Any, zone: tzinfo) -> RevisionInfo:
    return RevisionInfo(row.letter, told_in(zone, row.at), row.person, row.purpose or "", row.scope, row.root)
