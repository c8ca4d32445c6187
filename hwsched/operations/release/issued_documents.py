"""Issuing documents: build from the project as it stands, lay out, write; each file appears whole or not at all."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Final

from hwsched.documents.documents import DOCUMENTS
from hwsched.documents.office_pages import dressed
from hwsched.documents.release.bound_packets import BOUND_PACKETS
from hwsched.documents.release.changes_marked import marked_since
from hwsched.documents.release.packet import PACKET
from hwsched.documents.view import DocumentKind, Format, OpeningView, ProjectView
from hwsched.language import in_language
from hwsched.model.errors import ValueRefusedError
from hwsched.operations.release.issued_templates import issue_templates
from hwsched.operations.release.opening_sheets import Files, OpeningSheet, Printing, after
from hwsched.operations.release.sheet_codes import sheet_code
from hwsched.operations.release.sheets_beside import write_sheets
from hwsched.render.file_names import safe_file_name
from hwsched.writing import made_folder

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]


TEMPLATES: Final = "templates"
PRINTS: Final[tuple[tuple[str, str, tuple[Format, ...]], ...]] = (
    *((kind.name, kind.title, kind.formats) for kind in DOCUMENTS),
    (BOUND_PACKETS.name, BOUND_PACKETS.title, BOUND_PACKETS.formats),
    (TEMPLATES, "True-size templates", ("pdf",)),
)
"""Name, title and formats of everything that is printed."""


def issue_by_name(
    view: ProjectView,
    name: str,
    folder: Path,
    formats: Sequence[Format] | None = None,
    *,
    paper: str = "",
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
    since: ProjectView | None = None,
) -> list[Path]:
    """Write a document, or the true-size templates; see `issue` for parameters and errors."""
    if name == TEMPLATES:
        return issue_templates(view, folder, paper=paper, progress=progress, cancelled=cancelled)
    kind = document_kind(name)
    return issue(view, kind, folder, formats, paper=paper, progress=progress, cancelled=cancelled, since=since)


def document_kind(name: str) -> DocumentKind:
    """Return the document of that name; raises ValueRefusedError."""
    for kind in (*DOCUMENTS, BOUND_PACKETS):
        if kind.name == name:
            return kind
    raise ValueRefusedError("document", f"there is no '{name}'; accepted: {', '.join(k.name for k in DOCUMENTS)}")


def issue(
    view: ProjectView,
    kind: DocumentKind,
    folder: Path,
    formats: Sequence[Format] | None = None,
    *,
    paper: str = "",
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
    since: ProjectView | None = None,
) -> list[Path]:
    """Write a document of a project view into a folder.

    Parameters
    ----------
    view : ProjectView
        The project as it stands, or the openings of it that are wanted.
    kind : DocumentKind
        Which document.
    folder : Path
        Made if need be; packets get a folder of their own inside.
    formats : sequence of {"pdf", "xlsx"}, optional
        All that the document has, when left out.
    paper : {"", "letter", "a4", "a5"}
        Sheet of the PDF; empty: what the office declared, else letter.
    since : ProjectView, optional
        A revision: what is otherwise than in it is marked by a bar in the margin and the letter that comes after it.

    Returns
    -------
    list of Path
        Files written.

    Raises
    ------
    ValueRefusedError
        For a format that the document does not have.
    UnwritableError
        For a folder that cannot be written.
    HeldFilesError
        For files that another program has open; the others are written.
    """
    wanted = tuple(formats) if formats else kind.formats
    for format_ in wanted:
        if format_ not in kind.formats:
            raise ValueRefusedError("format", f"{kind.title} has no {format_}; accepted: {', '.join(kind.formats)}")
    # A project's documents speak its office's language, whoever prints them.
    with in_language(view.office.language):
        return _issued(view, kind, folder, wanted, paper, progress, cancelled, since)


def _issued(
    view: ProjectView,
    kind: DocumentKind,
    folder: Path,
    wanted: Sequence[Format],
    paper: str,
    progress: Progress | None,
    cancelled: Cancelled | None,
    since: ProjectView | None,
) -> list[Path]:
    target = made_folder(folder / kind.name if kind.per_opening else folder)
    sheet = paper or view.office.paper_of(_declared_as(kind)) or "letter"
    view = replace(view, paper=sheet)
    since = None if since is None else replace(since, paper=sheet, template_pages=view.template_pages)
    if not kind.per_opening:
        sheets = Files()
        stem = safe_file_name(view.office.file_name.format(**_named(view, kind)), set())
        if kind.coded:
            view = replace(view, openings=tuple(replace(e, code=sheet_code(e.points)) for e in view.openings))
        for format_ in wanted:
            made = kind.build(view, None)
            if since is not None and format_ == "pdf":
                made = marked_since(made, kind.build(since, None), after(since))
            sheets.take(dressed(made, _declared_as(kind), view.office), target / stem, format_, sheet)
        if progress is not None:
            progress(1, 1)
        return sheets.all_written()
    return _per_opening(view, kind, target, wanted, sheet, progress, cancelled, since)


def _declared_as(kind: DocumentKind) -> str:
    """Return the document under whose name the office says how it looks."""
    return PACKET.name if kind is BOUND_PACKETS else kind.name


def _named(view: ProjectView, kind: DocumentKind) -> dict[str, str]:
    return {
        "document": kind.name,
        "title": kind.title,
        "project": view.title,
        "revision": view.revision,
        "date": view.date,
    }


def _opening_stem(view: ProjectView, kind: DocumentKind, opening: OpeningView) -> str:
    facts = opening.given.opening
    own = {"mark": opening.mark, "building": facts.building or "", "level": facts.level or ""}
    return view.office.opening_file_name.format(**_named(view, kind), **own)


def _per_opening(
    view: ProjectView,
    kind: DocumentKind,
    target: Path,
    formats: Sequence[Format],
    paper: str,
    progress: Progress | None,
    cancelled: Cancelled | None,
    since: ProjectView | None,
) -> list[Path]:
    then = {} if since is None else {each.given.opening.id: each for each in since.openings}
    taken: set[str] = set()
    sheets = [
        OpeningSheet(
            opening,
            target / safe_file_name(_opening_stem(view, kind, opening), taken),
            then.get(opening.given.opening.id),
        )
        for opening in view.openings
    ]
    bare = None if since is None else replace(since, openings=())
    printing = Printing(replace(view, openings=()), kind.name, formats, paper, bare)
    return write_sheets(printing, sheets, progress=progress, cancelled=cancelled).all_written()
