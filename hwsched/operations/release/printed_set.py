"""Printing several documents at once: what cannot be written of one keeps neither its rest nor the others."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from hwsched.documents.view import Format, ProjectView
from hwsched.model.errors import ValueRefusedError
from hwsched.operations.release.issued_documents import PRINTS, TEMPLATES, Cancelled, Progress, issue_by_name
from hwsched.operations.release.issued_templates import issue_templates_first
from hwsched.writing import HeldFilesError, StoppedWritingError, UnwritableError


@dataclass
class PrintedSet:
    """What became of documents that were printed together."""

    written: list[Path] = field(default_factory=list)
    """With the templates last."""
    tried: list[str] = field(default_factory=list)
    """Documents that were printed, whether all of their files could be replaced or not."""
    held: dict[str, list[Path]] = field(default_factory=dict)
    """By document files that another program has open or that are protected."""
    refused: ValueRefusedError | None = None
    """Why there are no templates, where no opening is drilled by one."""

    def went_out(self, *names: str) -> bool:
        """Tell whether one of these documents was printed to the end."""
        return any(each in self.tried and each not in self.held for each in names)

    def all_written(self) -> list[Path]:
        """Return the files; raises HeldFilesError, ValueRefusedError where there is something to be told."""
        if self.held:
            raise HeldFilesError([path for paths in self.held.values() for path in paths], self.written)
        if self.refused is not None:
            raise self.refused
        return self.written


def print_set(
    view: ProjectView,
    wanted: Mapping[str, Sequence[Format] | None],
    folder: Path,
    *,
    dressed: Callable[[ProjectView, str], ProjectView],
    paper: str = "",
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
    since: ProjectView | None = None,
) -> PrintedSet:
    """Print documents of a view into a folder; with templates first, so that steps and strips name their pages.

    Parameters
    ----------
    view : ProjectView
        The project as it stands, a revision, or the openings of it that are wanted.
    wanted : mapping
        Formats by the document's name; None: all that it has.
    folder : Path
        Made if need be.
    dressed : callable
        Gives the view from which a document of a name is built, see `printed_view`.
    paper, progress, cancelled, since
        As for `hwsched.operations.release.issued_documents.issue`.

    Returns
    -------
    PrintedSet
        What is held by another program does not keep the rest from being written.

    Raises
    ------
    StoppedWritingError
        For a folder that cannot be written, a disk that is full; says what was written before.
    ValueRefusedError
        For a document or a format that there is not.
    """
    done, templates = PrintedSet(), list[Path]()
    try:
        if TEMPLATES in wanted:
            try:
                view, templates = issue_templates_first(
                    view, folder, paper=paper, progress=progress, cancelled=cancelled
                )
            except HeldFilesError as error:
                done.held[TEMPLATES] = error.paths
            except ValueRefusedError as error:
                # Where none is drilled by one all else is printed before that is said.
                done.refused = error
        for name in (name for name, _, _ in PRINTS if name in wanted and name != TEMPLATES):
            try:
                done.written += issue_by_name(
                    dressed(view, name), name, folder, wanted[name], paper=paper, progress=progress,
                    cancelled=cancelled, since=since,
                )  # fmt: skip
            except HeldFilesError as error:
                done.written += error.written
                done.held[name] = error.paths
            done.tried.append(name)
    except StoppedWritingError as error:
        raise StoppedWritingError(error.error, [*done.written, *error.written, *templates]) from error
    except UnwritableError as error:
        raise StoppedWritingError(error, [*done.written, *templates]) from error
    done.written += templates
    return done
