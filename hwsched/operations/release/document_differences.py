"""Which documents are otherwise between two states: of which openings the sheets, and which lists of the project.

Documents are built and compared by what they say; nothing is laid out.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Final

from hwsched.documents.documents import DOCUMENTS
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.model.project import Project
from hwsched.operations.findings.checking import Cancelled, Checker, Progress
from hwsched.operations.release.frozen_files import files_of_openings
from hwsched.operations.release.office import office_of
from hwsched.operations.release.photos import with_photos_unread
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.revision_differences import RevisionDifferences
from hwsched.operations.release.revision_view import revision_view
from hwsched.operations.release.revisions import read_revision
from hwsched.operations.release.sheet_codes import sheet_code
from hwsched.render.blocks import Block
from hwsched.telling.natural import natural
from hwsched.values.office import Office
from hwsched.values.revision import RevisionThen

_HEADLESS: Final = ""
"""For revision and day: they stand in every head and change nothing of what a sheet says."""


@dataclass(frozen=True, slots=True)
class DocumentDifference:
    """A document that says something else."""

    name: str
    title: str
    marks: tuple[str, ...] = ()
    """Openings whose sheets are otherwise, came or went; none where the document is one for the project."""


def document_differences(
    project: Project,
    found: RevisionDifferences,
    *,
    checker: Checker | None = None,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> tuple[DocumentDifference, ...]:
    """Return the documents that are otherwise between two states that were compared.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    found : RevisionDifferences
        What is otherwise, see `hwsched.operations.release.revision_differences.differences`.
    checker, progress, cancelled : optional
        As for `hwsched.operations.release.freezing.freeze`.
    """
    then = read_revision(project, found.before)
    was = _of_revision(project, then)
    gone_and_new = {each.opening_id for each in found.openings}
    newer = None if found.after == "present" else read_revision(project, found.after)
    if newer is None:
        there = {each.given.opening.id for each in was.openings}
        ids = [each for each in there | gone_and_new if each not in _gone(found)]
        now = project_view(project, ids, checker=checker)
        with project.reading() as connection:
            now = with_photos_unread(now, files_of_openings(connection, ids))
    else:
        now = _of_revision(project, newer)
    if then.files is None or (newer is not None and newer.files is None):
        # What one of them does not hold nobody can compare.
        was, now = (_without_files(view, now.office) for view in (was, now))
    # No revision holds what went to whom.
    was, now = (replace(view, revision=_HEADLESS, date=_HEADLESS, sent=()) for view in (was, now))
    touched = _touched(found, was, now)
    told = []
    for done, kind in enumerate(DOCUMENTS, start=1):
        if cancelled is not None and cancelled():
            break
        difference = _of_openings(kind, was, now, touched) if kind.per_opening else _of_project(kind, was, now)
        if difference is not None:
            told.append(difference)
        if progress is not None:
            progress(done, len(DOCUMENTS))
    return tuple(told)


def _of_revision(project: Project, then: RevisionThen) -> ProjectView:
    with project.reading() as connection:
        office = None if then.office is None else office_of(connection, then.office)
    return with_photos_unread(
        revision_view(then, office), {each.given.opening.id: each.files for each in then.openings}
    )  # fmt: skip


def _without_files(view: ProjectView, office: Office) -> ProjectView:
    bare = (replace(each, bench=frozenset(), unheld_by="", photo=None) for each in view.openings)
    return replace(view, openings=tuple(bare), office=office)


def _gone(found: RevisionDifferences) -> frozenset[str]:
    return frozenset(each.opening_id for each in found.openings if each.kind == "gone")


def _touched(found: RevisionDifferences, was: ProjectView, now: ProjectView) -> frozenset[str]:
    """Return the openings whose sheets may be otherwise: all of them where parts or settings are."""
    if found.on_every_page:
        return frozenset(each.given.opening.id for view in (was, now) for each in view.openings)
    on_them = (
        opening
        for view in (was, now)
        for supply in view.power.supplies
        for circuit in supply.circuits
        if any(each.circuit_id == circuit.circuit.id for each in found.circuits)
        or any(line.what.startswith(f"Supply {supply.supply.name}") for line in found.others)
        for opening in circuit.openings
    )
    return frozenset({each.opening_id for each in found.openings} | set(on_them))


def _of_openings(
    kind: DocumentKind, was: ProjectView, now: ProjectView, touched: frozenset[str]
) -> DocumentDifference | None:
    old, new = _by_id(was.openings, touched), _by_id(now.openings, touched)
    marks = []
    for each in old.keys() | new.keys():
        before, after = old.get(each), new.get(each)
        there = after or before
        assert there is not None
        if before is None or after is None or _said(kind, was, before) != _said(kind, now, after):
            marks.append(there.mark)
    return DocumentDifference(kind.name, kind.title, tuple(sorted(marks, key=natural))) if marks else None


def _of_project(kind: DocumentKind, was: ProjectView, now: ProjectView) -> DocumentDifference | None:
    if kind.coded:
        was, now = (
            replace(view, openings=tuple(replace(e, code=sheet_code(e.points)) for e in view.openings))
            for view in (was, now)
        )
    same = _said(kind, was, None) == _said(kind, now, None)
    return None if same else DocumentDifference(kind.name, kind.title)


def _by_id(openings: Iterable[OpeningView], wanted: frozenset[str]) -> Mapping[str, OpeningView]:
    return {each.given.opening.id: each for each in openings if each.given.opening.id in wanted}


def _said(kind: DocumentKind, view: ProjectView, opening: OpeningView | None) -> tuple[tuple[Block, ...], ...]:
    return tuple(section.blocks for section in kind.build(view, opening).sections)
