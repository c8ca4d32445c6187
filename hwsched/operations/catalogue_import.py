"""Taking in a catalogue workbook: new parts added, known ones changed, as one change set."""

from dataclasses import dataclass
from pathlib import Path

from hwsched.exchange.catalogue_book import read_catalogue as read_book
from hwsched.exchange.problems import CellProblem, InputRejected
from hwsched.model.catalogue_writing import write_parts
from hwsched.model.project import Project
from hwsched.model.queries import read_own_fields
from hwsched.operations.changes import Changes
from hwsched.operations.own_fields import own_attributes


@dataclass(frozen=True, slots=True)
class CatalogueImport:
    """What came in."""

    changes: Changes
    parts: int
    added: int
    changed: int
    problems: tuple[CellProblem, ...]


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
        When cells are refused and all were wanted; nothing is changed.
    """
    with project.reading() as connection:
        own = own_attributes(read_own_fields(connection), "part")
        known = frozenset(project.catalogue.read(connection).parts)
    read = read_book(path, own_fields=own, known=known)
    if read.problems and accept == "all":
        raise InputRejected(read.problems)
    with project.change("import-catalogue", f"Import catalogue {path.name}", who) as change:
        added, changed = write_parts(change, read.parts, path.name, read.extra)
        change.summary = f"Import catalogue {path.name}: {added} new, {changed} changed"
    return CatalogueImport(Changes.of(change), len(read.parts), added, changed, read.problems)
