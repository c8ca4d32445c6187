"""Fits that are part of a change set: what it changes and what follows from it are one step.

The facts of the step are written first and the openings read as they stand then, within its transaction: so there is no
second way of working out what would be. Fits that are not known yet are worked out outside the lock (`prepared`).
"""

from collections.abc import Callable, Collection, Iterable, Sequence
from typing import Final

from hwsched.fitting import fit_with_facts
from hwsched.model.journal.journal import Change
from hwsched.model.lock_points import settle
from hwsched.model.project import Project
from hwsched.model.queries import StoredFit, by_opening, read_fits, read_inputs
from hwsched.model.record_queries import read_packets
from hwsched.operations.changes import Changes
from hwsched.operations.opening.lock_points import Make, PointResult, afresh, point_results
from hwsched.operations.opening.standings import Standings
from hwsched.operations.opening.storing_fits import store_fits
from hwsched.operations.prepared import NotReadyError, StoppedError, change_prepared
from hwsched.operations.release.released import released_otherwise
from hwsched.values import Fit, OpeningInput
from hwsched.values.facts_memory import FactsMemory
from hwsched.values.input_key import input_key

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]

FEW: Final = 4
"""Different inputs that are worked out within the lock: some hundredths of a second."""


class FitMemory:
    """Fits of this program with the facts that were read for them.

    So openings alike cost once, and a change set that begins anew nothing twice.
    """

    def __init__(self) -> None:
        self.standings = Standings()
        self._made: dict[str, list[StoredFit]] = {}
        self._slots = FactsMemory()
        self.count = 0
        """How many it has worked out."""

    def keep(self, key: str, stored: StoredFit) -> None:
        """Remember the stored fit of an input with that key, which counts."""
        if key not in self._made:
            self._made[key] = [stored]

    def of(self, given: OpeningInput, key: str) -> Fit:
        """Return the fit of an input of that key; it is worked out where it is not known."""
        return self.made(given, key).fit

    def known(self, given: OpeningInput, key: str) -> Fit:
        """Return the fit of an input of that key that is known; raises UnknownFitError."""
        found = self._found(given, key)
        if found is None:
            raise UnknownFitError
        return found.fit

    def made(self, given: OpeningInput, key: str) -> StoredFit:
        """Return what is to be stored for an input of that key; it is worked out where it is not known."""
        found = self._found(given, key)
        if found is None:
            fit, read = fit_with_facts(given, self._slots)
            self.count += 1
            found = StoredFit(self.standings.facts_key(given, key, read), fit, self.standings.engine, read)
            self._made.setdefault(key, []).append(found)
        return found

    def to_store(self, points: Iterable[PointResult]) -> dict[str, StoredFit]:
        """Return what is to be stored for lock points that were worked out here; those that count are remembered."""
        found = {}
        for each in points:
            if each.stored and each.held is not None:
                self.keep(each.key, each.held)
            elif each.at.fit is not None:
                found[each.at.given.point.id] = self.made(each.at.given, each.key)
        return found

    def fits_of(
        self,
        openings: Iterable[Sequence[OpeningInput]],
        progress: Progress | None = None,
        cancelled: Cancelled | None = None,
    ) -> None:
        """Work out the fits of openings that are not known, given by their lock points; raises StoppedError."""
        wanted = list(openings)
        for done, inputs in enumerate(wanted, start=1):
            if cancelled is not None and cancelled():
                raise StoppedError
            afresh(inputs, self.of)
            if progress is not None and (done % 16 == 0 or done == len(wanted)):
                progress(done, len(wanted))

    def _found(self, given: OpeningInput, key: str) -> StoredFit | None:
        """Return what openings alike share, as far as what was read of them is alike too."""
        for each in self._made.get(key, ()):
            if each.read is not None and self.standings.facts_key(given, key, each.read) == each.input_key:
                return each
        return None


class UnknownFitError(Exception):
    """The fit of an input has not been worked out yet."""


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
    # Fitting is a verb of its own, which a role may be without, though an edit that it may make asks for it.
    change.require("fit")
    settle(change)
    connection = change.connection
    stored, packets = read_fits(connection, ids), read_packets(connection, ids)
    fresh: dict[str, StoredFit] = {}
    lacking: dict[tuple[str, ...], Sequence[OpeningInput]] = {}
    make = memory.of if last else memory.known

    def take(inputs: Sequence[OpeningInput], make: Make) -> None:
        points = point_results(inputs, stored, make, memory.standings)
        # What went out with a packet stays as it was released: the installer has that sheet in his hand.
        if released_otherwise(points, packets.get(inputs[0].opening.id)):
            return
        fresh.update(memory.to_store(points))

    later = []
    for inputs in by_opening(read_inputs(connection, ids, project.catalogue.read(connection))):
        try:
            take(inputs, make)
        except UnknownFitError:
            lacking[tuple(input_key(given) for given in inputs)] = inputs
            later.append(inputs)
    # All of them are named at once: asked one by one, each would cost another attempt.
    if len(lacking) > FEW:
        raise NotReadyError(lambda: memory.fits_of(lacking.values(), progress, cancelled))
    for inputs in later:
        take(inputs, memory.of)
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
        said = "; ".join(change.said)
        change.summary = f"{said}; fit {len(touched)} openings" if len(touched) != 1 else f"{said}; fit 1 opening"
        return touched

    return change_and_fit(project, verb, "Edit and fit", who, write, progress=progress, cancelled=cancelled)
