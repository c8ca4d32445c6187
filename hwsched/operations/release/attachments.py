"""Files at things: photographs, data sheets, what was issued; attached, listed, given back, taken off.

A content is held once, by its hash; what is attached to what is journalled. One that is taken off stays in the project,
so that an undo finds it.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from sqlalchemy import Connection, Row, func, select

from hwsched.attributes import Attribute
from hwsched.exchange.media_types import media_type_of
from hwsched.exchange.problems import FileProblem, InputRejected
from hwsched.model.blobs import hold_blob, read_blob
from hwsched.model.bulk import among
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.file.held_files import is_held
from hwsched.model.journal.journal import Change
from hwsched.model.project import Project
from hwsched.model.tables import ATTACHMENT, BLOB, JOURNALLED, OPENING_TABLE
from hwsched.operations.changes import Changes
from hwsched.operations.survey.accepted_values import accepted
from hwsched.operations.survey.things import Thing, names_of
from hwsched.render.file_names import safe_file_name
from hwsched.telling.natural import natural
from hwsched.writing import made_folder, replacing

MOST_BYTES: Final = 64 * 1024 * 1024
"""Of one file: a project is copied and sent whole."""
_TITLE: Final = Attribute("title", "Title")
_NOTE: Final = Attribute("note", "Note")
_NAME: Final = Attribute("name", "Name of the file", required=True)
_NONE_AT: Final = frozenset({ATTACHMENT.name, "project", "revision"})
"""Tables whose rows nothing is attached to."""


@dataclass(frozen=True, slots=True)
class Attached:
    """A file at a thing."""

    id: str
    """Empty of one that a revision holds."""
    entity: str
    """Name of the thing's table."""
    row_id: str
    opening_id: str | None
    """The opening that the thing is or belongs to."""
    about: str
    """What people call the thing."""
    name: str
    """Of the file as it was taken in."""
    title: str
    """Empty where nobody gave one."""
    note: str
    media_type: str
    """By how the content begins, whatever the name says."""
    size: int
    """Bytes."""
    hash: str
    """SHA-256 of the content."""


def attach(
    project: Project, entity: str, row_id: str, path: Path, *, who: str, title: str = "", note: str = ""
) -> Changes:
    """Attach a file to a thing.

    Parameters
    ----------
    project : Project
        Open project.
    entity, row_id : str
        Table and identifier of the thing, see `hwsched.operations.survey.things.thing_named`.
    path : Path
        The file; it is read whole and left alone.
    who : str
        For the journal.
    title, note : str
        What people should know of it.

    Returns
    -------
    Changes
        With the attachment's identifier in ``added``.

    Raises
    ------
    InputRejected
        For a file that cannot be read, is empty, or is larger than 64 MB.
    ValueRefusedError, MissingRowError
        For a thing that nothing can be attached to, or that is gone; for a content that hangs there already.
    """
    return attach_content(project, entity, row_id, path.name, read_file(path), who=who, title=title, note=note)


def attach_content(
    project: Project, entity: str, row_id: str, name: str, content: bytes, *, who: str, title: str = "", note: str = ""
) -> Changes:
    """Attach a content that is in hand, under a file name; otherwise as `attach`."""
    if entity not in JOURNALLED or entity in _NONE_AT:
        raise ValueRefusedError("attachment", f"nothing can be attached to {entity}")
    told = {
        "name": accepted(_NAME, name),
        "title": accepted(_TITLE, title),
        "note": accepted(_NOTE, note),
    }
    # By its content: a name may say anything, and what opens the file goes by its kind.
    kind = media_type_of(content)
    with project.change("attach", f"Attach {name}", who) as change:
        opening_id = _opening_of(change.connection, entity, row_id)
        key = hold_blob(change.connection, content, kind)
        here = (ATTACHMENT.c.entity == entity) & (ATTACHMENT.c.row_id == row_id)
        same = change.connection.execute(select(ATTACHMENT.c.name).where(here, ATTACHMENT.c.blob == key)).scalar()
        about = _about(change.connection, Thing(entity, row_id))
        if same is not None:
            raise ValueRefusedError("attachment", f"{about} has the same content already, as {same}")
        last = change.connection.execute(select(func.max(ATTACHMENT.c.ordinal)).where(here)).scalar()
        row = {"entity": entity, "row_id": row_id, "opening_id": opening_id, "blob": key, **told}
        change.insert(ATTACHMENT, [{**row, "ordinal": 0 if last is None else last + 1}], [f"file {name}"])
        change.summary = f"Attach {name} to {about}"
    return Changes.of(change)


def detach(project: Project, ids: Iterable[str], *, who: str) -> Changes:
    """Take files off their things; their contents stay for an undo.

    Raises
    ------
    MissingRowError
        For one that is not there (any more).
    """
    wanted = list(dict.fromkeys(ids))
    with project.change("detach", "Take files off", who) as change:
        found = {row.id: row for row in among(change.connection, select(ATTACHMENT), ATTACHMENT.c.id, wanted)}
        if missing := [each for each in wanted if each not in found]:
            raise MissingRowError(f"there is no attachment {', '.join(missing)} (any more)")
        change.summary = _took_off(change, [found[each] for each in wanted])
        change.delete(ATTACHMENT, wanted)
    return Changes.of(change)


def attachments_of(
    project: Project, thing: Thing | None = None, *, opening_id: str | None = None
) -> tuple[Attached, ...]:
    """Return the files of a thing, of an opening with all that belongs to it, or of the whole project.

    Parameters
    ----------
    project : Project
        Open project.
    thing : Thing, optional
        Only what hangs at this.
    opening_id : str, optional
        Only what hangs at this opening, its leaves and existing items.

    Returns
    -------
    tuple of Attached
        By thing, in the order in which they were attached.
    """
    query = select(ATTACHMENT, BLOB.c.size, BLOB.c.media_type).join(BLOB, ATTACHMENT.c.blob == BLOB.c.hash)
    if thing is not None:
        query = query.where(ATTACHMENT.c.entity == thing.entity, ATTACHMENT.c.row_id == thing.row_id)
    if opening_id is not None:
        query = query.where(ATTACHMENT.c.opening_id == opening_id)
    with project.reading() as connection:
        rows = connection.execute(query.order_by(ATTACHMENT.c.ordinal, ATTACHMENT.c.id)).all()
        names = names_of(connection, {Thing(row.entity, row.row_id) for row in rows})
    found = [_attached(row, names.get(Thing(row.entity, row.row_id), row.entity)) for row in rows]
    return tuple(sorted(found, key=lambda each: natural(each.about)))


def attachment_with(project: Project, short: str) -> Attached:
    """Return the attachment whose identifier begins like this; raises MissingRowError where it is none or several."""
    found = [each for each in attachments_of(project) if short and each.id.startswith(short)]
    if len(found) != 1:
        what = "no attachment begins" if not found else f"{len(found)} attachments begin"
        raise MissingRowError(f"{what} with {short}; hwsched release attachments lists them")
    return found[0]


def fetch(project: Project, attachment_id: str) -> bytes:
    """Return the content of an attachment; raises MissingRowError, DamagedProjectError."""
    with project.reading() as connection:
        key = connection.execute(select(ATTACHMENT.c.blob).where(ATTACHMENT.c.id == attachment_id)).scalar()
        if key is None:
            raise MissingRowError(f"there is no attachment {attachment_id} (any more)")
        return read_blob(connection, str(key))


def fetch_into(project: Project, attached: Iterable[Attached], folder: Path) -> list[Path]:
    """Write attachments into a folder under names that are safe everywhere; nothing there is overwritten.

    Those of a revision are found by their content.

    Returns
    -------
    list of Path
        The files, in the order given.

    Raises
    ------
    UnwritableError
        Where the folder cannot be written.
    """
    made_folder(folder)
    written: list[Path] = []
    for each in attached:
        written.append(write_under_free_name(folder, each.name, _content(project, each)))
    return written


def _content(project: Project, each: Attached) -> bytes:
    if each.id:
        return fetch(project, each.id)
    with project.reading() as connection:
        return read_blob(connection, each.hash)


def write_under_free_name(folder: Path, name: str, content: bytes) -> Path:
    """Write a content into a folder under a name that is safe everywhere and not taken; returns the file."""
    path = _free_name(folder, name)
    # Whole or not at all: half a photograph that opens is taken for the photograph.
    with replacing(path) as partial:
        partial.write_bytes(content)
    return path


def _free_name(folder: Path, name: str) -> Path:
    told = Path(name)
    suffix = "".join(c for c in told.suffix if c.isalnum() or c == ".")[:12]
    taken: set[str] = set()
    while True:
        # Each turn takes the next name, until one is free on the disk too.
        path = folder / f"{safe_file_name(told.stem, taken)}{suffix}"
        if not path.exists():
            return path


def read_file(path: Path) -> bytes:
    """Read a file that the project is to hold; raises InputRejected."""
    try:
        if path.is_dir():
            raise InputRejected([FileProblem(path.name, "is a folder", accepted="a file")])
        if is_held(path):
            raise InputRejected([FileProblem(path.name, "is the project itself", accepted="another file")])
        # Asked before it is read: a film of some gigabytes must not fill the memory only to be refused.
        size = path.stat().st_size
        if size > MOST_BYTES:
            shown = f"holds {size / 1e6:,.0f} MB"
            raise InputRejected([FileProblem(path.name, shown, accepted=f"at most {MOST_BYTES // 2**20} MB a file")])
        content = path.read_bytes()
    except OSError as error:
        problem = FileProblem(path.name, f"cannot be read: {error.strerror or error}", accepted="a file that is there")
        raise InputRejected([problem]) from error
    if not content:
        raise InputRejected([FileProblem(path.name, "is empty", accepted="a file with something in it")])
    return content


def _opening_of(connection: Connection, entity: str, row_id: str) -> str | None:
    table = JOURNALLED[entity]
    row = connection.execute(select(table).where(table.c.id == row_id)).first()
    if row is None:
        raise MissingRowError(f"this {entity.replace('_', ' ')} is not in the project any more")
    if table is OPENING_TABLE:
        return row_id
    found: str | None = getattr(row, "opening_id", None)
    return found


def _about(connection: Connection, thing: Thing) -> str:
    return names_of(connection, {thing}).get(thing, thing.entity.replace("_", " "))


def _took_off(change: Change, rows: list[Row[Any]]) -> str:
    if len(rows) != 1:
        return f"Take {len(rows)} files off"
    row = rows[0]
    return f"Take {row.name} off {_about(change.connection, Thing(row.entity, row.row_id))}"


def _attached(row: Row[Any], about: str) -> Attached:
    return Attached(
        row.id, row.entity, row.row_id, row.opening_id, about, row.name, row.title or "", row.note or "",
        row.media_type, row.size, row.blob,
    )  # fmt: skip
