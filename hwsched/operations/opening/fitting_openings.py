"""Fitting: the verb that works out openings and stores what came of it, openings alike worked out once."""

from collections.abc import Iterable
from dataclasses import dataclass

from hwsched.model.journal.journal import Change
from hwsched.model.journal.touched import touched_since
from hwsched.model.project import Project
from hwsched.model.queries import StoredFit, by_opening, latest_change, read_fits, read_inputs
from hwsched.model.record_queries import read_packets
from hwsched.operations.changes import Changes
from hwsched.operations.collector import collector_paused
from hwsched.operations.opening.fits_within import Cancelled, FitMemory, Progress
from hwsched.operations.opening.lock_points import point_results
from hwsched.operations.opening.several_cores import in_turn
from hwsched.operations.opening.storing_fits import store_fits
from hwsched.operations.prepared import NotReadyError, StoppedError, change_prepared, concern
from hwsched.operations.release.released import as_stored, released_otherwise
from hwsched.values import Fit, OpeningInput, PointFit
from hwsched.values.fit import together


@dataclass(frozen=True, slots=True)
class FitOutcome:
    """What was worked out for one opening."""

    given: OpeningInput
    """Of its first lock point."""
    fit: Fit
    """Of all its lock points together."""
    points: tuple[PointFit, ...]
    """Its lock points in their order."""
    kept: bool = False
    """True where an earlier version's fit is kept, since its packet went out, though this version says otherwise."""


@dataclass(frozen=True, slots=True)
class _Ready:
    """What is to be stored."""

    state: int
    """Change set that it was read at."""
    outcomes: list[FitOutcome]
    fresh: dict[str, StoredFit]
    """By lock point."""
    changed: int
    """Openings whose fits are stored anew."""


def fit_openings(
    project: Project,
    ids: Iterable[str] | None = None,
    *,
    who: str,
    released: bool = False,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> tuple[Changes, list[FitOutcome]]:
    """Fit openings and store their fits as one change set.

    A fit of this program that belongs to the facts as they stand is kept. When cancelled, nothing is stored.

    Parameters
    ----------
    project : Project
        Open project.
    ids : iterable of str, optional
        Openings; all when left out.
    who : str
        Person at work, for the journal.
    released : bool
        Whether openings whose packet went out get what this version says, where an earlier one said otherwise; else
        they keep what they were released with.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop.

    Returns
    -------
    changes : Changes
        What was touched.
    outcomes : list of FitOutcome
        In the order of the project's openings.
    """
    wanted = None if ids is None else list(ids)
    memory = FitMemory()
    ready: list[_Ready] = []

    def look() -> None:
        ready[:] = [_worked_out(project, wanted, memory, released, progress, cancelled)]

    def write(change: Change, last: bool) -> None:
        if concern(touched_since(change.connection, ready[0].state), wanted):
            # Somebody changed what this stands on: what is still the same is remembered.
            if not last:
                raise NotReadyError(look)
            look()
        change.summary = f"Fit {ready[0].changed} openings" if ready[0].changed != 1 else "Fit 1 opening"
        store_fits(change, ready[0].fresh)

    try:
        with collector_paused():
            look()
            change, _ = change_prepared(project, "fit", "Fit openings", who, write)
    except StoppedError:
        return Changes(), []
    return Changes.of(change), ready[0].outcomes


def _worked_out(
    project: Project,
    wanted: list[str] | None,
    memory: FitMemory,
    released: bool,
    progress: Progress | None,
    cancelled: Cancelled | None,
) -> _Ready:
    with project.reading() as connection:
        state = latest_change(connection)
        openings = list(by_opening(read_inputs(connection, wanted, project.catalogue.read(connection))))
        stored, packets = read_fits(connection, wanted), read_packets(connection, wanted)
    outcomes: list[FitOutcome] = []
    fresh: dict[str, StoredFit] = {}
    changed = 0
    with in_turn(openings, memory) as turns:
        for done, inputs in enumerate(turns, start=1):
            if cancelled is not None and cancelled():
                raise StoppedError
            points = point_results(inputs, stored, memory.of, memory.standings)
            kept = not released and released_otherwise(points, packets.get(inputs[0].opening.id))
            at = as_stored(points) if kept else tuple(each.at for each in points)
            fits = [each.fit for each in at if each.fit is not None]
            outcomes.append(FitOutcome(points[0].at.given, together(fits) or fits[0], at, kept))
            new = {} if kept else memory.to_store(points)
            fresh |= new
            changed += bool(new)
            if progress is not None and (done % 16 == 0 or done == len(openings)):
                progress(done, len(openings))
    return _Ready(state, outcomes, fresh, changed)
