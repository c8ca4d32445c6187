"""Fits that are part of a change set: what it changes and what follows from it are one step.

The facts of the step are written first and the openings read as they stand then, within its transaction: so there is no
second way of working out what would be. Fits that are not known yet are worked out outside the lock (`prepared`).
"""

from collections.abc import Callable, Collection, Iterable, Sequence
from typing import Final

from hwsched.fitting import fit_with_facts
from hwsched.model.journal import Change
from hwsched.model.lock_points import settle
from hwsched.model.project import Project
from hwsched.model.queries import StoredFit, by_opening, read_cases, read_fits
from hwsched.model.record_queries import read_packets
from hwsched.operations.changes import Changes
from hwsched.operations.opening.lock_points import Worked, afresh, worked
from hwsched.operations.opening.standings import Standings
from hwsched.operations.opening.storing_fits import store_fits
from hwsched.operations.prepared import NotReadyError, StoppedError, change_prepared
from hwsched.operations.release.released import released_otherwise
from hwsched.values import Case, Fit
from hwsched.values.input_key import case_key

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]

FEW: Final = 4
"""Different cases that are worked out within the lock: some hundredths of a second."""


class FitMemory:
    """Fits of this program with the facts that were read for them.

    So openings alike cost once, and a change set that begins anew nothing twice.
    """

    def __init__(self) -> None:
        self.standings = Standings()
        self._made: dict[str, list[StoredFit]] = {}

    def keep(self, key: str, stored: StoredFit) -> None:
        """Remember the stored fit of a case with that key, which counts."""
        if key not in self._made:
            self._made[key] = [stored]

    def of(self, case: Case) -> Fit:
        """Return the fit of a case; it is worked out where it is not known."""
        return self.made(case, case_key(case)).fit

    def known(self, case: Case) -> Fit:
        """Return the fit of a case that is known; raises UnknownFitError."""
        found = self._found(case, case_key(case))
        if found is None:
            raise UnknownFitError
        return found.fit

    def made(self, case: Case, key: str) -> StoredFit:
        """Return what is to be stored for a case of that key; it is worked out where it is not known."""
        found = self._found(case, key)
        if found is None:
            fit, read = fit_with_facts(case)
            found = StoredFit(self.standings.facts_key(case, key, read), fit, self.standings.engine, read)
            self._made.setdefault(key, []).append(found)
        return found

    def to_store(self, points: Iterable[Worked]) -> dict[str, StoredFit]:
        """Return what is to be stored for lock points that were worked out here; those that count are remembered."""
        found = {}
        for each in points:
            if each.stored and each.held is not None:
                self.keep(each.key, each.held)
            elif each.at.fit is not None:
                found[each.at.case.point.id] = self.made(each.at.case, each.key)
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

    def _found(self, case: Case, key: str) -> StoredFit | None:
        """Return what openings alike share, as far as what was read of them is alike too."""
        for each in self._made.get(key, ()):
            if each.read is not None and self.standings.facts_key(case, key, each.read) == each.case_key:
                return each
        return None


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

    What went out in a packet keeps what it was released with, where only the program says otherwise.

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
    stored, packets = read_fits(connection, ids), read_packets(connection, ids)
    fresh: dict[str, StoredFit] = {}
    lacking: dict[tuple[str, ...], Sequence[Case]] = {}
    make = memory.of if last else memory.known

    def take(cases: Sequence[Case], make: Callable[[Case], Fit]) -> None:
        points = worked(cases, stored, make, memory.standings)
        if released_otherwise(points, packets.get(cases[0].opening.id)):
            return
        fresh.update(memory.to_store(points))

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
