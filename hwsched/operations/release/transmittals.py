"""Transmittals: which files went to whom, when and for what; their contents are kept in the project.

A file is held once by its content, however often it is sent, and can be fetched as it went out.
"""

from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path
from typing import Final

from sqlalchemy import Connection, func, select

from hwsched.attributes import Attribute
from hwsched.exchange.media_types import media_type_of
from hwsched.model.blobs import hold_blob, read_blob
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.frozen import revision_with
from hwsched.model.project import Project
from hwsched.model.tables import TRANSMITTAL
from hwsched.model.time_zone import read_zone, told_in
from hwsched.operations.changes import Changes
from hwsched.operations.release.attachments import read_file, write_under_free_name
from hwsched.operations.survey.accepted_values import accepted
from hwsched.values.transmittal import SentFile, Transmittal
from hwsched.writing import made_folder

_RECIPIENT: Final = Attribute("recipient", "Recipient", required=True)
_PURPOSE: Final = Attribute("purpose", "Purpose")
_NOTE: Final = Attribute("note", "Note")


def transmit(
    project: Project,
    recipient: str,
    files: Sequence[Path],
    *,
    who: str,
    purpose: str = "",
    note: str = "",
    revision: str | None = None,
) -> Changes:
    """Write down that files went to somebody, and keep their contents.

    Parameters
    ----------
    project : Project
        Open project.
    recipient : str
        To whom.
    files : sequence of Path
        What was printed and sent; each is read whole and left alone. Two of one name are told apart by their folder.
    who : str
        Who sent it, for the journal and the transmittal.
    purpose, note : str
        What for, such as "for approval"; what else should be known.
    revision : str, optional
        Letter of the revision that the files show; the project as it stands when left out.

    Returns
    -------
    Changes
        With the transmittal's identifier in ``added``.

    Raises
    ------
    InputRejected
        For a file that cannot be read, is empty, or is larger than 64 MB.
    ValueRefusedError
        Without a recipient or a file, or where one file is named twice.
    MissingRowError
        For a letter that there is not.
    """
    said = {
        "recipient": accepted(_RECIPIENT, recipient),
        "purpose": accepted(_PURPOSE, purpose),
        "note": accepted(_NOTE, note),
    }
    if not files:
        raise ValueRefusedError("transmittal", "nothing was sent: name the files")
    contents = {name: read_file(path) for name, path in _names(files).items()}
    with project.change("transmit", "Transmit", who) as change:
        letter = "" if revision is None else revision_with(change.connection, revision).letter
        held = {}
        for name, content in contents.items():
            key = hold_blob(change.connection, content, media_type_of(content))
            held[name] = {"hash": key, "size": len(content), "revision": letter}
        last = change.connection.execute(select(func.max(TRANSMITTAL.c.number))).scalar()
        number = (last or 0) + 1
        at = datetime.now(UTC).isoformat(timespec="seconds")
        change.insert(TRANSMITTAL, [{"number": number, "at": at, "person": who, "files": held, **said}])
        change.summary = (
            f"Transmittal {number}: {len(held)} files to {said['recipient']}"
            if len(held) != 1
            else f"Transmittal {number}: 1 file to {said['recipient']}"
        )
    return Changes.of(change)


def transmittals(project: Project) -> tuple[Transmittal, ...]:
    """Return all transmittals, the oldest first."""
    with project.reading() as connection:
        return read_transmittals(connection)


def read_transmittals(connection: Connection) -> tuple[Transmittal, ...]:
    """Return all transmittals, the oldest first."""
    zone = read_zone(connection)
    return tuple(
        Transmittal(
            row.number,
            told_in(zone, row.at),
            row.person,
            row.recipient,
            row.purpose or "",
            row.note or "",
            tuple(
                SentFile(name, str(held["hash"]), int(held["size"]), str(held.get("revision", "")))
                for name, held in row.files.items()
            ),
        )
        for row in connection.execute(select(TRANSMITTAL).order_by(TRANSMITTAL.c.number))
    )


def fetch_transmittal(project: Project, number: int, folder: Path) -> list[Path]:
    """Write the files of a transmittal into a folder, as they went out; nothing there is overwritten.

    Raises
    ------
    MissingRowError
        For a number that there is not.
    DamagedProjectError
        Where a content is not what went out.
    UnwritableError
        Where the folder cannot be written.
    """
    with project.reading() as connection:
        found = next((each for each in read_transmittals(connection) if each.number == number), None)
        if found is None:
            raise MissingRowError(f"there is no transmittal {number}")
        contents = [(each.name, read_blob(connection, each.hash)) for each in found.files]
    made_folder(folder)
    return [write_under_free_name(folder, name, content) for name, content in contents]


def _names(files: Sequence[Path]) -> dict[str, Path]:
    """Return what each file is called in the transmittal: its name, with its folder where that is not enough."""
    counts: dict[str, int] = {}
    for path in files:
        counts[path.name] = counts.get(path.name, 0) + 1
    named: dict[str, Path] = {}
    for path in files:
        whole = path.resolve()
        name = path.name if counts[path.name] == 1 else f"{whole.parent.name}-{path.name}"
        if name in named:
            raise ValueRefusedError("transmittal", f"{name} is named twice")
        named[name] = path
    return named
