"""The release gate: what keeps an opening from being picked for and installed, beside its own fit and errors."""

from collections.abc import Iterable
from dataclasses import dataclass

from hwsched.documents.view import OpeningView, ProjectView
from hwsched.model.project import Project
from hwsched.operations.release.holding import asked_for
from hwsched.operations.release.project_view import project_view


@dataclass(frozen=True, slots=True)
class Passage:
    """Whether an opening may go out, and what is missing until it may."""

    opening_id: str
    mark: str
    missing: tuple[str, ...]
    """Sentences; none: it may."""

    @property
    def free(self) -> bool:
        """Whether it may be picked for and installed."""
        return not self.missing


def gate(project: Project, ids: Iterable[str] | None = None) -> tuple[Passage, ...]:
    """Say of each opening whether it may be picked for and installed, and what is missing.

    Parameters
    ----------
    project : Project
        Open project.
    ids : iterable of str, optional
        Openings; all when left out. Those that may go out go out without the others.
    """
    return passages(project_view(project, ids))


def passages(view: ProjectView) -> tuple[Passage, ...]:
    """Say it of the openings of a view."""
    return tuple(Passage(each.given.opening.id, each.mark, missing(each)) for each in view.openings)


def missing(view: OpeningView) -> tuple[str, ...]:
    """Return what is missing until an opening may go out; nothing where it may.

    Examples
    --------
    >>> from hwsched.values import Fit, Finding, Opening, OpeningInput, Catalogue
    >>> given = OpeningInput(Opening("1", "M1"), (), (), Catalogue({}, ""))
    >>> missing(OpeningView(given, None, ()))
    ('no fit counts: none is stored',)
    """
    if view.fit is None:
        found = [f"no fit counts: {view.unfitted}"]
    elif view.fit.status == "to-measure":
        found = [f"unknown: needs {need.label} ({need.blocks})" for need in view.fit.needs] or ["facts are missing"]
    elif view.fit.status == "does-not-fit":
        found = ["no combination of parts fits"]
    else:
        found = []
    # What the fit lacks is told with what it is wanted for; rules that ask for the same say nothing more.
    lacking = {need.label for need in view.fit.needs} if view.fit is not None else set()
    held = [line for line in view.held if not (asked := asked_for(line)) or not asked <= lacking]
    return (*found, *(f"error: {finding.message}" for finding in view.blocking), *held)
