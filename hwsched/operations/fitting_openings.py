"""Fitting: the verb that works out openings and stores what came of it, openings alike worked out once."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from hwsched.cases import Case, Fit, PointFit
from hwsched.cases.fit import together
from hwsched.model.journal import Change
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, latest_change, read_cases, read_fits
from hwsched.model.touched import touched_since
from hwsched.operations.changes import Changes
from hwsched.operations.fits_within import FitMemory
from hwsched.operations.lock_points import worked
from hwsched.operations.prepared import NotReadyError, StoppedError, change_prepared, concern
from hwsched.operations.storing_fits import store_fits


@dataclass(frozen=True, slots=True)
class Fitted:
    """What was worked out for one opening."""

    case: Case
    """Of its first lock point."""
    fit: Fit
    """Of all its lock points together."""
    points: tuple[PointFit, ...]
    """Its lock points in their order."""


@dataclass(frozen=True, slots=True)
class _Ready:
    """What is to be stored."""

    state: int
    """Change set that it was read at."""
    fitted: list[Fitted]
    fresh: dict[str, tuple[str, Fit]]
    """By lock point."""
    changed: int
    """Openings whose fits are stored anew."""


def fit_openings(
    project: Project,
    ids: Iterable[str] | None = None,
    *,
    who: str,
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> tuple[Changes, list[Fitted]]:
    """Fit openings and store their fits as one change set.

    A fit that belongs to the facts as they stand is kept: the same case always has the same fit. When cancelled,
    nothing is stored.

    Returns
    -------
    changes : Changes
        What was touched.
    fitted : list of Fitted
        In the order of the project's openings.
    """
    wanted = None if ids is None else list(ids)
    memory = FitMemory()
    ready: list[_Ready] = []

    def look() -> None:
        ready[:] = [_worked_out(project, wanted, memory, progress, cancelled)]

    def write(change: Change, last: bool) -> None:
        if concern(touched_since(change.connection, ready[0].state), wanted):
            # Somebody changed what this stands on: what is still the same is remembered.
            if not last:
                raise NotReadyError(look)
            look()
        change.summary = f"Fit {ready[0].changed} openings"
        store_fits(change, ready[0].fresh)

    try:
        look()
        change, _ = change_prepared(project, "fit", "Fit openings", who, write)
    except StoppedError:
        return Changes(), []
    return Changes.of(change), ready[0].fitted


def _worked_out(
    project: Project,
    wanted: list[str] | None,
    memory: FitMemory,
    progress: Callable[[int, int], None] | None,
    cancelled: Callable[[], bool] | None,
) -> _Ready:
    with project.reading() as connection:
        state = latest_change(connection)
        openings = list(by_opening(read_cases(connection, wanted, project.catalogue.read(connection))))
        stored = read_fits(connection, wanted)
    for held in stored.values():
        memory.keep(held.case_key, held.fit)
    memory.work_out(openings, progress, cancelled)
    fitted: list[Fitted] = []
    fresh: dict[str, tuple[str, Fit]] = {}
    changed = 0
    for cases in openings:
        points = worked(cases, stored, memory.of)
        new = {each.at.case.point.id: (each.key, each.at.fit) for each in points if not each.stored and each.at.fit}
        fits = [each.at.fit for each in points if each.at.fit is not None]
        fitted.append(Fitted(points[0].at.case, together(fits) or fits[0], tuple(each.at for each in points)))
        fresh |= new
        changed += bool(new)
    return _Ready(state, fitted, fresh, changed)
