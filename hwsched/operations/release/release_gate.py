"""The release gate: what keeps an opening from being picked for and installed, beside its own fit and errors."""

from collections.abc import Iterable
from dataclasses import dataclass

from hwsched.documents.view import OpeningView, ProjectView
from hwsched.model.project import Project
from hwsched.operations.release.holding import Lack, asked_for, lack_of, own_lacks
from hwsched.operations.release.project_view import project_view
from hwsched.rules.wording import FIT, label_of


@dataclass(frozen=True, slots=True)
class Passage:
    """Whether an opening may go out, and what is missing until it may."""

    opening_id: str
    mark: str
    lacks: tuple[Lack, ...]
    """None: it may."""

    @property
    def missing(self) -> tuple[str, ...]:
        """What is missing, as sentences."""
        return tuple(each.said for each in self.lacks)

    @property
    def decisions(self) -> tuple[str, ...]:
        """The rules whose findings wait for a person who accepts them."""
        return tuple(dict.fromkeys(each.rule for each in self.lacks if each.decision))

    @property
    def free(self) -> bool:
        """Whether it may be picked for and installed."""
        return not self.lacks


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
    return tuple(Passage(each.given.opening.id, each.mark, lacks(each)) for each in view.openings)


def missing(view: OpeningView) -> tuple[str, ...]:
    """Return what is missing until an opening may go out, as sentences; nothing where it may.

    Examples
    --------
    >>> from hwsched.values import Fit, Finding, Opening, OpeningInput, Catalogue
    >>> given = OpeningInput(Opening("1", "M1"), (), (), Catalogue({}, ""))
    >>> missing(OpeningView(given, None, ()))
    ('no fit counts: none is stored',)
    """
    return tuple(each.said for each in lacks(view))


def lacks(view: OpeningView) -> tuple[Lack, ...]:
    """Return what is missing until an opening may go out, each with what is to be looked at."""
    if view.fit is None:
        found = [Lack(f"no fit counts: {view.unfitted}", "fit")]
    elif view.fit.status == "to-measure":
        found = [
            Lack(f"unknown: needs {need.label} ({need.blocks})", "fact", need=need.fact) for need in view.fit.needs
        ] or [Lack("facts are missing", "fit")]
    elif view.fit.status == "does-not-fit":
        found = [Lack("no combination of parts fits", "fit")]
    else:
        found = []
    # What the fit lacks is told with what it is wanted for; rules that ask for the same say nothing more.
    lacking = {need.label for need in view.fit.needs} if view.fit is not None else set()
    held = [line for line in view.held if not (asked := asked_for(line)) or not asked <= lacking]
    own = own_lacks(view.findings)
    if view.fit is None:
        # What only waits for that fit follows from it, and is said of it once.
        waits = {each.said for each in own_lacks(f for f in view.findings if set(f.needs) == {FIT})}
        held = [line for line in held if line not in waits and not line.endswith(f"; needs {label_of(FIT)}")]
    errors = (Lack(f"error: {finding.message}", "finding", finding.rule) for finding in view.blocking)
    return (*found, *errors, *(lack_of(line, own) for line in held))
