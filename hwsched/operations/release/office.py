"""How the office's documents look: taken in from its file, kept with the project, written out again.

The text is kept as it was taken in, so that a later version reads it as its own reader does; pictures are held by their
content.
"""

from dataclasses import replace
from pathlib import Path
from typing import Final

from sqlalchemy import Connection, select

from hwsched.documents import LINES
from hwsched.exchange.problems import FileProblem, InputRejected
from hwsched.exchange.release.office_file import read_office
from hwsched.model.blobs import hold_blob, read_blob
from hwsched.model.errors import MissingRowError
from hwsched.model.project import Project
from hwsched.model.tables import OFFICE
from hwsched.operations.changes import Changes
from hwsched.operations.release.attachments import read_file
from hwsched.values.office import Office, OfficeThen
from hwsched.writing import made_folder, replacing

_NAME: Final = "office"
FILE: Final = "office.toml"
"""What it is called where it is written out."""


def set_office(project: Project, path: Path, *, who: str) -> Changes:
    """Take in how documents look: the file, and the pictures that it names, which lie beside it.

    Raises
    ------
    InputRejected
        With all that is wrong; nothing is changed.
    """
    office, text = _read(path)
    problems: list[FileProblem] = []
    # Every view of a project asks how pages look, and pictures are only looked at here: their library takes longer to
    # load than a page of the window has.
    from hwsched.render.pictures import PictureRefusedError, checked_picture  # noqa: PLC0415

    pictures: dict[str, bytes] = {}
    for name in office.named_pictures:
        try:
            pictures[name] = checked_picture(read_file(path.parent / name))
        except InputRejected as error:
            problems += [each for each in error.problems if isinstance(each, FileProblem)]
        except PictureRefusedError as error:
            problems.append(FileProblem(name, str(error)))
    if problems:
        raise InputRejected(problems)
    with project.change("set-office", "Set how documents look", who) as change:
        files = {name: hold_blob(change.connection, content, "image/png") for name, content in pictures.items()}
        held = change.connection.execute(select(OFFICE.c.id).where(OFFICE.c.name == _NAME)).scalar()
        row = {"text": text, "files": files}
        if held is None:
            change.insert(OFFICE, [{"name": _NAME, **row}])
        else:
            change.update(OFFICE, [(held, row)])
    return Changes.of(change)


def clear_office(project: Project, *, who: str) -> Changes:
    """Let documents look as they do by default; raises MissingRowError where they do."""
    with project.change("set-office", "Documents look as by default", who) as change:
        held = change.connection.execute(select(OFFICE.c.id).where(OFFICE.c.name == _NAME)).scalar()
        if held is None:
            raise MissingRowError("nothing is declared of how documents look")
        change.delete(OFFICE, [held])
    return Changes.of(change)


def read_held_office(connection: Connection) -> Office:
    """Return what is declared, with its pictures; the default where nothing is."""
    return office_of(connection, read_declared(connection))


def read_declared(connection: Connection) -> OfficeThen:
    """Return what is declared as it is kept; an empty text where nothing is."""
    row = connection.execute(select(OFFICE.c.text, OFFICE.c.files).where(OFFICE.c.name == _NAME)).first()
    return OfficeThen() if row is None else OfficeThen(row.text, row.files)


def office_of(connection: Connection, declared: OfficeThen) -> Office:
    """Return how documents look by what is, or was, declared, with its pictures.

    Raises
    ------
    MissingRowError, DamagedProjectError
        Where a picture is gone, or is not what was taken in.
    """
    if not declared.text:
        return Office()
    office = read_office(declared.text, FILE, [line.name for line in LINES])
    return replace(office, pictures={name: read_blob(connection, key) for name, key in declared.files.items()})


def office_text(project: Project) -> str:
    """Return the text that is kept; empty where nothing is declared."""
    with project.reading() as connection:
        return str(connection.execute(select(OFFICE.c.text).where(OFFICE.c.name == _NAME)).scalar() or "")


def write_office(project: Project, folder: Path) -> list[Path]:
    """Write what is kept into a folder, so that another project can take it in; what is there is replaced.

    Raises
    ------
    MissingRowError
        Where nothing is declared.
    UnwritableError
        Where the folder cannot be written.
    """
    with project.reading() as connection:
        row = connection.execute(select(OFFICE.c.text, OFFICE.c.files).where(OFFICE.c.name == _NAME)).first()
        if row is None:
            raise MissingRowError("nothing is declared of how documents look")
        contents = {FILE: str(row.text).encode()} | {
            name: read_blob(connection, key) for name, key in row.files.items()
        }
    made_folder(folder)
    written = []
    for name, content in contents.items():
        with replacing(folder / name) as partial:
            partial.write_bytes(content)
        written.append(folder / name)
    return written


def _read(path: Path) -> tuple[Office, str]:
    content = read_file(path)
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        problem = FileProblem(path.name, "is no text in UTF-8", accepted="a text file saved as UTF-8")
        raise InputRejected([problem]) from error
    return read_office(text, path.name, [line.name for line in LINES]), text
