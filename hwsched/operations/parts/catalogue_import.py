"""Taking in a catalogue workbook: new parts added, known ones changed, as one change set."""

from dataclasses import dataclass
from pathlib import Path
from typing import Final

from hwsched.exchange.file_key import read_with_key
from hwsched.exchange.parts.catalogue_book import CatalogueRead
from hwsched.exchange.parts.catalogue_book import read_catalogue as read_book
from hwsched.exchange.problems import CellProblem, FileProblem, InputRejected
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.journal.journal import Change
from hwsched.model.journal.touched import touched_since
from hwsched.model.project import Project
from hwsched.model.queries import latest_change, read_own_fields
from hwsched.model.tables import KIT_CONTENT, OWN_FIELD, PART
from hwsched.operations.changes import Changes
from hwsched.operations.imports import TakenIn
from hwsched.operations.prepared import NotReadyError, change_prepared
from hwsched.operations.survey.own_fields import own_attributes

READ_WITH: Final = frozenset(str(table.name) for table in (PART, KIT_CONTENT, OWN_FIELD))
"""Tables that decide how a workbook is read: to which parts it may refer, which columns are fields of our own."""


@dataclass(frozen=True, slots=True)
class CatalogueFile:
    """A catalogue workbook as a project would take it in."""

    path: Path
    key: str
    """Of the file's content."""
    read: CatalogueRead
    state: int
    """Change set that it was read at."""


@dataclass(frozen=True, slots=True)
class CatalogueImport:
    """What came in."""

    changes: Changes
    parts: int
    added: int
    changed: int
    problems: tuple[CellProblem, ...]
    unread: tuple[str, ...] = ()
    """Names of the sheets that were not read."""


def take_in(project: Project, path: Path, *, who: str, accept: str) -> TakenIn:
    """Take in a catalogue workbook, as `IMPORTS` has it."""
    done = import_catalogue(project, path, who=who, accept=accept)
    said = f"{done.parts} parts read: {done.added} new, {done.changed} changed"
    counts = {"part_count": done.parts, "added_count": done.added, "changed_count": done.changed}
    return TakenIn(done.changes, said, counts, done.problems, done.unread)


def import_catalogue(project: Project, path: Path, *, who: str, accept: str = "all") -> CatalogueImport:
    """Take in a catalogue workbook; parts that it does not name stay, and it may refer to them.

    Parameters
    ----------
    project : Project
        Open project.
    path : Path
        Workbook.
    who : str
        For the journal.
    accept : {"all", "good-rows"}
        With "all" one refused cell refuses the file; with "good-rows" its part is left out.

    Raises
    ------
    InputRejected
        When cells are refused and all were wanted, or there is no part; nothing is changed.
    """
    held: list[CatalogueFile] = []

    def look() -> None:
        held[:] = [read_catalogue_file(project, path)]
        if not held[0].read.parts and not held[0].read.problems:
            raise InputRejected([FileProblem(path.name, "holds no part", accepted="a row a part below the headers")])
        if held[0].read.problems and accept == "all":
            raise InputRejected(held[0].read.problems)

    def write(change: Change, last: bool) -> tuple[int, int]:
        if any(each.entities & READ_WITH for each in touched_since(change.connection, held[0].state)):
            if not last:
                raise NotReadyError(look)
            look()
        return write_catalogue_file(change, held[0])

    look()
    change, (added, changed) = change_prepared(
        project, "import-catalogue", f"Import catalogue {path.name}", who, write
    )  # fmt: skip
    read = held[0].read
    return CatalogueImport(Changes.of(change), len(read.parts), added, changed, read.problems, read.unread)


def read_catalogue_file(project: Project, path: Path) -> CatalogueFile:
    """Read a catalogue workbook as the project would take it in; raises InputRejected for one that cannot be read."""
    with project.reading() as connection:
        state = latest_change(connection)
        own = own_attributes(read_own_fields(connection), "part")
        known = frozenset(project.catalogue.read(connection).parts)
    read, key = read_with_key(path, lambda: read_book(path, own_fields=own, known=known))
    return CatalogueFile(path, key, read, state)


def write_catalogue_file(change: Change, file: CatalogueFile) -> tuple[int, int]:
    """Write what was read of a workbook; returns how many parts were added, how many changed."""
    added, changed = write_parts(change, file.read.parts, file.path.name, file.read.extra)
    change.summary = f"Import catalogue {file.path.name}: {added} new, {changed} changed"
    return added, changed
