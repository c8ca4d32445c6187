"""Fitting: the verb that works out openings and stores what came of it, openings alike worked out once."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from hwsched.cases import Case, Fit, PointFit
from hwsched.cases.case_key import case_key
from hwsched.cases.fit import together
from hwsched.cases.lock_points import with_beside
from hwsched.fitting import fit
from hwsched.model.project import Project
from hwsched.model.queries import by_opening, read_cases, read_fits
from hwsched.operations.changes import Changes
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
    with project.reading() as connection:
        openings = list(by_opening(read_cases(connection, wanted, project.catalogue.read(connection))))
        stored = read_fits(connection, wanted)
    known = {found.case_key: found.fit for found in stored.values()}
    fitted: list[Fitted] = []
    fresh: dict[str, tuple[str, Fit]] = {}
    for done, cases in enumerate(openings, start=1):
        if cancelled is not None and cancelled():
            return Changes(), []
        points: list[PointFit] = []
        fits: list[Fit] = []
        for case in cases:
            here = with_beside(case, points)
            key = case_key(here)
            found = known.get(key)
            if found is None:
                found = known[key] = fit(here)
            points.append(PointFit(here, found))
            fits.append(found)
            before = stored.get(here.point.id)
            if before is None or before.case_key != key:
                fresh[here.point.id] = (key, found)
        whole = fits[0] if len(fits) == 1 else together(fits) or fits[0]
        fitted.append(Fitted(points[0].case, whole, tuple(points)))
        if progress is not None and (done % 16 == 0 or done == len(openings)):
            progress(done, len(openings))
    changed = [each for each in fitted if any(at.case.point.id in fresh for at in each.points)]
    with project.change("fit", f"Fit {len(changed)} openings", who) as change:
        store_fits(change, fresh)
    return Changes.of(change), fitted
