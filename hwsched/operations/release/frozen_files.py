"""Files at things as a revision holds them: of each its hash, since the content is held once and never thrown away."""

from collections.abc import Collection, Iterable, Mapping
from typing import Any, Final

from sqlalchemy import Connection, select

from hwsched.model.bulk import among
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import Project
from hwsched.model.tables import ATTACHMENT, BLOB
from hwsched.operations.release.attachments import Attached
from hwsched.operations.release.revisions import read_revision
from hwsched.operations.survey.things import OF_OPENINGS, Thing, names_of
from hwsched.telling.natural import natural
from hwsched.values.revision import FileThen, OpeningThen

_FILES: Final = select(
    ATTACHMENT.c.opening_id, ATTACHMENT.c.entity, ATTACHMENT.c.row_id, ATTACHMENT.c.name, ATTACHMENT.c.blob,
    ATTACHMENT.c.title, ATTACHMENT.c.note, ATTACHMENT.c.ordinal, ATTACHMENT.c.id, BLOB.c.media_type, BLOB.c.size,
).join(BLOB, ATTACHMENT.c.blob == BLOB.c.hash)  # fmt: skip
_NONE: Final[Mapping[Thing, str]] = {}


def files_of_openings(connection: Connection, ids: Collection[str] | None = None) -> dict[str, tuple[FileThen, ...]]:
    """Return the files at openings and all that is theirs, by opening, in the order in which they were attached.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    ids : collection of str, optional
        Openings; all when left out.
    """
    query = _FILES.where(ATTACHMENT.c.opening_id.is_not(None)) if ids is None else _FILES
    found: dict[str, list[Any]] = {}
    for row in among(connection, query, ATTACHMENT.c.opening_id, ids):
        found.setdefault(row.opening_id, []).append(row)
    return {opening_id: _files(rows, _NONE) for opening_id, rows in found.items()}


def other_files(connection: Connection) -> tuple[FileThen, ...]:
    """Return the files at what is no opening's: parts, supplies, sets."""
    rows = connection.execute(_FILES.where(ATTACHMENT.c.opening_id.is_(None))).all()
    return _files(rows, names_of(connection, {Thing(row.entity, row.row_id) for row in rows}))


def _files(rows: Iterable[Any], names: Mapping[Thing, str]) -> tuple[FileThen, ...]:
    return tuple(
        FileThen(
            row.entity, row.row_id, row.name, row.blob, row.media_type, row.size, row.title or "", row.note or "",
            names.get(Thing(row.entity, row.row_id), ""),
        )
        for row in sorted(rows, key=lambda row: (row.ordinal, row.id))
    )  # fmt: skip


def attachments_then(
    project: Project, letter: str, thing: Thing | None = None, *, opening_id: str | None = None
) -> tuple[Attached, ...]:
    """Return the files that a revision holds, as `attachments_of` does those of the project as it stands.

    They have no identifiers: what hangs at what may have been changed since, their contents are found by their hash.

    Raises
    ------
    MissingRowError
        For a letter that there is not.
    ValueRefusedError
        For a revision that an earlier version froze, which held no files.
    """
    then = read_revision(project, letter)
    if then.files is None:
        said = f"{then.letter} was frozen by an earlier version, which held no files; what hangs there now is not shown"
        raise ValueRefusedError("revision", said)
    found = [
        Attached(
            "", file.entity, file.row_id, each.given.opening.id, _about_then(each, file), file.name, file.title,
            file.note, file.media_type, file.size, file.hash,
        )
        for each in then.openings
        for file in each.files
    ]  # fmt: skip
    found += [
        Attached(
            "", file.entity, file.row_id, None, file.about, file.name, file.title, file.note, file.media_type,
            file.size, file.hash,
        )
        for file in then.files
    ]  # fmt: skip
    if thing is not None:
        found = [each for each in found if (each.entity, each.row_id) == (thing.entity, thing.row_id)]
    if opening_id is not None:
        found = [each for each in found if each.opening_id == opening_id]
    return tuple(sorted(found, key=lambda each: natural(each.about)))


def _about_then(then: OpeningThen, file: FileThen) -> str:
    word = OF_OPENINGS.get(file.entity, "")
    return f"{then.mark} {word}".rstrip()
