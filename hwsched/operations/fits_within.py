"""Fits that are part of a change set: what it changes and what follows from it are one step.

The facts of the step are written first and the openings read as they stand then, within its transaction: so there is no
second way of working out what would be. Fits that are not known yet are worked out outside the lock (`prepared`).
"""

from collections.abc import Callable, Collection, Iterable, Sequence
from typing import Final

from hwsched.cases import Case, Fit
from hwsched.cases.case_key import case_key
from hwsched.fitting import fit
from hwsched.model.journal import Change
from hwsched.model.lock_points import settle
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, read_cases, read_fits
from hwsched.operations.changes import Changes
from hwsched.operations.lock_points import afresh, worked
from hwsched.operations.prepared import NotReadyError, StoppedError, change_prepared
from hwsched.operations.storing_fits import store_fits

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]

FEW: Final = 4
"""Different cases that are worked out within the lock: some hundredths of a second."""


class FitMemory:
    """Fits that were worked out, so that openings alike cost once, and a change set that begins anew nothing twice."""

    def __init__(self) -> None:
        self._fits: dict[str, Fit] = {}

    def keep(self, key: str, found: Fit) -> None:
        """Remember the fit of a case with that key."""
        self._fits.setdefault(key, found)

    def of(self, case: Case) -> Fit:
        """Return the fit of a case; it is worked out where it is not known."""
        key = case_key(case)
        found = self._fits.get(key)
        if found is None:
            found = self._fits[key] = fit(case)
        return found

    def known(self, case: Case) -> Fit:
        """Return the fit of a case that is known; raises UnknownFitError."""
        found = self._fits.get(case_key(case))
        if found is None:
            raise UnknownFitError
        return found

    def work_out(
        self,
        openings: Iterable[Sequence[Case]],
        progress: Progress | None = None,
        cancelled: Cancelled | None = None,
    ) -> None:
        """Work out the fits of openings that are not known, given by their lock points; raises StoppedError."""
        wanted = list(openings)
        for done, cases in enumerate(wanted, start=1):
            if cancelled is not None and cancelled():
                raise StoppedError
            afresh(cases, self.of)
            if progress is not None and (done % 16 == 0 or done == len(wanted)):
                progress(done, len(wanted))


class UnknownFitError(Exception):
    """The fit of a case has not been worked out yet."""


def fit_within(
    project: Project,
    change: Change,
    ids: Collection[str],
    memory: FitMemory,
    *,
    last: bool,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> None:
    """Store the fits of openings as the change set in the making leaves them.

    Parameters
    ----------
    project : Project
        Of the change set.
    change : Change
        Its facts are written.
    ids : collection of str
        Openings; those that are gone are left out, and fits that belong to their facts stay.
    memory : FitMemory
        What is known already.
    last : bool
        Whether all is to be worked out here and now.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop.

    Raises
    ------
    NotReadyError
        Where more than a few are to be worked out.
    """
    change.require("fit")
    settle(change)
    connection = change.connection
    stored = read_fits(connection, ids)
    fresh: dict[str, tuple[str, Fit]] = {}
    lacking: dict[tuple[str, ...], Sequence[Case]] = {}
    make = memory.of if last else memory.known

    def take(cases: Sequence[Case], make: Callable[[Case], Fit]) -> None:
        for each in worked(cases, stored, make):
            if not each.stored and each.at.fit is not None:
                fresh[each.at.case.point.id] = each.key, each.at.fit

    later = []
    for cases in by_opening(read_cases(connection, ids, project.catalogue.read(connection))):
        try:
            take(cases, make)
        except UnknownFitError:
            lacking[tuple(case_key(case) for case in cases)] = cases
            later.append(cases)
    if len(lacking) > FEW:
        raise NotReadyError(lambda: memory.work_out(lacking.values(), progress, cancelled))
    for cases in later:
        take(cases, memory.of)
    store_fits(change, fresh)


def change_and_fit(
    project: Project,
    verb: str,
    summary: str,
    who: str,
    write: Callable[[Change, bool], Collection[str]],
    *,
    memory: FitMemory | None = None,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Changes:
    """Make one change set that changes facts and fits what follows from them: whole or not at all, one undo.

    Parameters
    ----------
    project : Project
        Open project.
    verb, summary, who : str
        As `Project.change`.
    write : callable
        Writes the facts and returns the openings to fit; as `change_prepared` calls it.
    memory : FitMemory, optional
        What is known already, such as from a preview.
    progress, cancelled : callable, optional
        Told how far the fits are; asked whether to stop: then nothing is changed.

    Returns
    -------
    Changes
        Of the one step; empty when stopped.
    """
    held = memory or FitMemory()

    def whole(change: Change, last: bool) -> None:
        ids = write(change, last)
        fit_within(project, change, ids, held, last=last, progress=progress, cancelled=cancelled)

    try:
        return Changes.of(change_prepared(project, verb, summary, who, whole)[0])
    except StoppedError:
        return Changes()


def and_fit(
    project: Project,
    act: Callable[[], Changes],
    *,
    verb: str,
    who: str,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Changes:
    """Make an edit and fit the openings that it touches, as one step.

    Parameters
    ----------
    project : Project
        Open project.
    act : callable
        Calls the verb that makes the edit; it may be called several times.
    verb : str
        Name of that verb, for the journal.
    who : str
        For the journal.
    progress, cancelled : callable, optional
        As `change_and_fit`.

    Raises
    ------
    ChangeError
        As the verb; nothing is changed.
    """

    def write(change: Change, _last: bool) -> Collection[str]:
        touched = act().openings
        change.summary = f"{'; '.join(change.said)}; fit {len(touched)} openings"
        return touched

    return change_and_fit(project, verb, "Edit and fit", who, write, progress=progress, cancelled=cancelled)
