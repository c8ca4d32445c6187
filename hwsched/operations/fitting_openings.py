"""Fitting: the verb that works out openings and stores what came of it, openings alike worked out once."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from hwsched.cases import Case, Fit
from hwsched.cases.case_key import case_key
from hwsched.fitting import fit
from hwsched.model.project import Project
from hwsched.model.queries import read_cases, read_fits
from hwsched.operations.changes import Changes
from hwsched.operations.storing_fits import store_fits


@dataclass(frozen=True, slots=True)
class Fitted:
    """What was worked out for one opening."""

    case: Case
    fit: Fit


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
        cases = list(read_cases(connection, wanted, project.catalogue.read(connection)))
        stored = read_fits(connection, wanted)
    known = {found.case_key: found.fit for found in stored.values()}
    fitted: list[Fitted] = []
    fresh: dict[str, tuple[str, Fit]] = {}
    for done, case in enumerate(cases, start=1):
        if cancelled is not None and cancelled():
            return Changes(), []
        key = case_key(case)
        found = known.get(key)
        if found is None:
            found = known[key] = fit(case)
        fitted.append(Fitted(case, found))
        before = stored.get(case.opening.id)
        if before is None or before.case_key != key:
            fresh[case.opening.id] = (key, found)
        if progress is not None and (done % 16 == 0 or done == len(cases)):
            progress(done, len(cases))
    with project.change("fit", f"Fit {len(fresh)} openings", who) as change:
        store_fits(change, fresh)
    return Changes.of(change), fitted
