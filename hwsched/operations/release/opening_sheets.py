"""Writing the sheets of one opening, and any other document, into files: each appears whole or not at all."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from hwsched.documents.documents import DOCUMENTS
from hwsched.documents.office_pages import dressed
from hwsched.documents.release.changes_marked import marked_since
from hwsched.documents.view import Format, OpeningView, ProjectView
from hwsched.operations.release.sheet_codes import sheet_code
from hwsched.render.blocks import Document
from hwsched.render.ics import render_ics
from hwsched.render.pdf import render_pdf
from hwsched.render.xlsx import render_xlsx
from hwsched.values.revision import letter_at, place_of
from hwsched.writing import HeldFileError, HeldFilesError

_BY_NAME: Final = {kind.name: kind for kind in DOCUMENTS}


class Files:
    """Files of one printing: one that somebody has open in a viewer does not keep the others from being written."""

    def __init__(self) -> None:
        self.written: list[Path] = []
        self.held: list[Path] = []

    def take(self, document: Document, stem: Path, format_: Format, paper: str) -> None:
        """Write one; raises UnwritableError."""
        try:
            self.written.append(_write(document, stem, format_, paper))
        except HeldFileError as error:
            self.held.append(error.path)

    def add(self, other: "Files") -> None:
        """Count those of another printing too."""
        self.written += other.written
        self.held += other.held

    def all_written(self) -> list[Path]:
        """Return the files; raises HeldFilesError where some could not be replaced."""
        if self.held:
            raise HeldFilesError(self.held, self.written)
        return self.written


@dataclass(frozen=True, slots=True)
class Printing:
    """What the sheets of all openings have in common."""

    view: ProjectView
    """Without its openings."""
    kind: str
    """Name of the document."""
    formats: Sequence[Format]
    paper: str
    since: ProjectView | None = None
    """A revision, without its openings: what is otherwise since then is marked."""


@dataclass(frozen=True, slots=True)
class OpeningSheet:
    """What the sheet of one opening is made from."""

    opening: OpeningView
    stem: Path
    """Its file without the ending."""
    before: OpeningView | None = None
    """As the opening was in the revision; None where it was not there."""


def write_sheet(printing: Printing, sheet: OpeningSheet) -> Files:
    """Write the sheet of one opening in all its formats; raises UnwritableError."""
    kind, view, since = _BY_NAME[printing.kind], printing.view, printing.since
    document = kind.build(view, replace(sheet.opening, code=sheet_code(sheet.opening.points)))
    if since is not None:
        then = None if sheet.before is None else kind.build(since, sheet.before)
        document = marked_since(document, then, after(since))
    files = Files()
    for format_ in printing.formats:
        files.take(dressed(document, kind.name, view.office), sheet.stem, format_, printing.paper)
    return files


def after(since: ProjectView) -> str:
    """Return the letter that comes after that of a revision."""
    return letter_at(place_of(since.revision) + 1)


def _write(document: Document, stem: Path, format_: Format, paper: str) -> Path:
    path = stem.with_name(f"{stem.name}.{format_}")
    if format_ == "pdf":
        render_pdf(document, path, "a4" if paper == "a4" else "a5" if paper == "a5" else "letter")
    elif format_ == "ics":
        render_ics(document, path)
    else:
        render_xlsx(document, path)
    return path
